package page

import (
	"strings"
	"testing"
)

// At no width does a line end between a number and its unit, whatever stands round it.
func TestUnitsStayWhole(t *testing.T) {
	b := New(A4, nil)
	defer b.Wait()
	text := "Stop at 1154 N, or 5.5 mm past it; the lever takes 44.8 N (10.1 lbf in 0.25 in), the moment is 12 N mm, of 99.4 % and 3 × 4 × 20 mm; 25 mm would be safe. In 5 inches 7 people."
	for width := 12.0; width < 180; width += 1.7 {
		for _, line := range b.Wrap(Font{Size: 10}, width, text) {
			last := strings.TrimRight(line, " ")
			if last == "" || strings.ContainsRune(line, '\u00a0') && width < 40 {
				continue
			}
			words := strings.Fields(last)
			w := words[len(words)-1]
			for _, n := range []string{"1154", "5.5", "44.8", "10.1", "0.25", "99.4", "25", "20"} {
				if w == n || w == "("+n {
					t.Errorf("at %.1f mm a line ends with %q: %q", width, n, line)
				}
			}
		}
	}
	if got := whole("5 N mm and 7 people"); got != "5\u00a0N\u00a0mm and 7 people" {
		t.Errorf("whole: %q", got)
	}
}
