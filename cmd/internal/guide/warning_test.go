package guide

import (
	"go/ast"
	"go/token"
	"maps"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ramnest/work-instructions/catalogue"
)

// Every number that the program gives has a page, every page a number that is given,
// and no number is given for two matters.
func TestEveryWarningHasAPage(t *testing.T) {
	t.Parallel()
	given := map[int]string{} // the constant of each number
	used := map[string]int{}
	for path, files := range sources(t) {
		for _, f := range files {
			ast.Inspect(f, func(n ast.Node) bool {
				switch n := n.(type) {
				case *ast.GenDecl:
					if n.Tok != token.CONST {
						return true
					}
					for _, s := range n.Specs {
						v := s.(*ast.ValueSpec)
						for i, name := range v.Names {
							if !strings.HasPrefix(name.Name, "warn") {
								continue
							}
							if i >= len(v.Values) {
								t.Errorf("%s.%s has no number written behind it", path, name.Name)
								continue
							}
							number, err := strconv.Atoi(v.Values[i].(*ast.BasicLit).Value)
							if err != nil || given[number] != "" {
								t.Errorf("%s.%s: %v, taken by %q", path, name.Name, err, given[number])
							}
							given[number] = path + "." + name.Name
						}
					}
					return false
				case *ast.Ident:
					if strings.HasPrefix(n.Name, "warn") {
						used[path+"."+n.Name]++
					}
				}
				return true
			})
		}
	}
	var pages []int
	for _, w := range Warnings() {
		pages = append(pages, w.Number)
		if w.Title == "" || w.Means == "" || w.Do == "" {
			t.Errorf("the page on W%d lacks a part", w.Number)
		}
	}
	if !slices.IsSorted(pages) || len(pages) < 40 {
		t.Errorf("pages out of order, or too few: %v", pages)
	}
	if numbers := slices.Sorted(maps.Keys(given)); !slices.Equal(pages, numbers) {
		t.Errorf("pages on\n%v, numbers given\n%v", pages, numbers)
	}
	for number, constant := range given {
		if used[constant] == 0 {
			t.Errorf("W%d, %s, is never given", number, constant)
		}
	}
}

func TestWarningNumber(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		word string
		want int
		ok   bool
	}{{"W12", 12, true}, {"w1", 1, true}, {"12", 0, false}, {"W", 0, false}, {"W0", 0, false}, {"W1234", 0, false}, {"Wx", 0, false}, {"W-1", 0, false}} {
		if n, ok := WarningNumber(c.word); ok != c.ok || ok && n != c.want {
			t.Errorf("%q: %d, %v", c.word, n, ok)
		}
	}
}

// Pages fit a terminal of 80 columns and hold what every terminal shows.
func TestPagesFitATerminal(t *testing.T) {
	t.Parallel()
	for _, topic := range Topics() {
		text := topic.String()
		if strings.Count(text, "\n") < 8 {
			t.Errorf("%s: only\n%s", topic.Name, text)
		}
		for line := range strings.Lines(text) {
			line = strings.TrimSuffix(line, "\n")
			if len(line) > width && strings.Contains(strings.TrimSpace(line), " ") {
				t.Errorf("%s: %d columns: %s", topic.Name, len(line), line)
			}
		}
	}
	if _, ok := TopicOf("unheard"); ok {
		t.Error("a topic that nobody wrote")
	}
}

// Every number has words in the languages of the sheet.
func TestEveryWarningHasWords(t *testing.T) {
	t.Parallel()
	keys := catalogue.Keys()
	for _, w := range Warnings() {
		if key := "warn." + strconv.Itoa(w.Number); !slices.Contains(keys, key) {
			t.Errorf("the catalogue of the sheet has no %s", key)
		}
	}
}
