package report

import (
	"fmt"

	"ramnest/force"
)

// Explain gives the computation of one latch line by line, for a second engineer to
// redo by hand. It stays in mm, N, MPa and degrees, as the numbers put in are.
func Explain(id string, lines []force.Line) string {
	p := &page{}
	p.head("LATCH  %s, in mm, N, MPa and degrees", id)
	for _, l := range lines {
		unit := l.Unit
		if unit == "1" {
			unit = ""
		}
		head := fmt.Sprintf("  %-10s %12s %-7s ", l.Symbol, precise(l.Value), unit)
		if l.ID == "" {
			p.wrap(head, "      ", fmt.Sprintf("%s [%s]", l.Source, l.Mark))
			continue
		}
		p.line("")
		p.wrap(head, "      ", "= "+l.Formula)
		if l.Numbers != "" {
			p.wrap("      = ", "        ", l.Numbers)
		}
		p.wrap("      ", "      ", fmt.Sprintf("%s: %s [%s]", l.ID, l.Source, l.Mark))
	}
	return p.b.String()
}

// precise writes a figure with the seven digits that the numbers put in have.
func precise(v float64) string { return fmt.Sprintf("%.7g", v) }
