package workinstructions

import (
	"fmt"
	"strings"

	"ramnest/export/page"
	"ramnest/force/unit"
)

// testItems is the test sheet in order: what it is, cautions, how to press, the grid.
func (c *composer) testItems(s TestSheet) []page.Item {
	facts := s.facts()
	items := []page.Item{c.heading("What is tested", 0)}
	text := func(gap float64, t string) {
		rows := c.text(sizeBody, t)
		rows[0].Gap = gap
		items = append(items, rows...)
	}
	joints := ""
	if s.Places > 1 {
		joints = fmt.Sprintf(" Each pair has %d joints; every force here is that of the whole pair.", s.Places)
	}
	text(0, fmt.Sprintf("A ladder of %d pairs of coupons of latch %s (%s). From pair to pair the %s changes by %s, in the %s part. Each body carries the number of its pair. Lower part: %s; upper part: %s.%s",
		len(s.Pairs), strong(s.Latch), s.Kind, s.SizeName, c.fig.text(fine(s.StepSize)), s.Stepped, s.Lower, s.Upper, joints))
	what := "Stop, and get help."
	if byPress(facts) {
		what = "Stop. Free a caught hand by raising the ram with the lever, never by pulling at the hand. Get help."
	}
	text(3, strong("If someone is hurt: "+what)+" Emergency call: ______________________ First aid: ______________________")

	items = append(items, c.heading("Cautions", 0))
	list := Cautions(facts)
	rows := c.inPairs(len(list), func(i int, width, least float64) page.Block { return c.message(list[i], width, least, "") })
	for k, b := range rows {
		items = append(items, page.Item{Block: b, Gap: 1.8, Keep: k == 0})
	}

	head := c.heading("What is needed", 0)
	items = append(items, head, page.Item{Block: c.checkList(c.testNeeds(s, facts), c.frame.Width, sizeBody), Gap: 1})
	head = c.heading("How to press", 0)
	items = append(items, head)
	for i, a := range c.testActions(s, facts) {
		f := page.Font{Size: sizeBody}
		no := page.Font{Face: page.Bold, Size: sizeBody}
		b := page.Inset(c.book.Paragraph(f, c.frame.Width-8, a), 8, 0, 0)
		items = append(items, page.Item{Gap: 1.4, Keep: i == 0, Block: page.Block{Height: b.Height, Draw: func(p *page.Page, x, y float64) {
			p.Text(x, y+no.Ascent(), no, fmt.Sprint(i+1))
			b.Draw(p, x, y)
		}}})
	}
	items = append(items, c.testGrid(s)...)
	for k, r := range append(append([]string{}, s.Warnings...), s.Remarks...) {
		if k == 0 {
			items = append(items, c.heading("Remarks", 1))
		}
		rows := c.text(sizeSmall, "– "+r)
		rows[0].Gap = 0.8
		items = append(items, rows...)
	}
	return items
}

// testNeeds lists what lies ready.
func (c *composer) testNeeds(s TestSheet, f Facts) []string {
	most := 0.0
	for _, p := range s.Pairs {
		most = max(most, p.P95)
	}
	out := []string{"All pairs, printed in one build, cleaned, free of powder, chips and supports."}
	switch {
	case most == 0:
		out = append(out, "A force gauge that keeps its peak.")
	case byHand(f):
		out = append(out, "A force gauge that keeps its peak and reads to "+c.fig.force(stopAbove*most)+" or more, with a flat tip.")
	default:
		out = append(out, "A press or test stand, bolted down, with a force gauge that keeps its peak and reads to "+c.fig.force(stopAbove*most)+" or more. An arbor press alone shows no force.")
	}
	if !byHand(f) || f.Overstrained > 0 || f.Brittle {
		out = append(out, "Eye protection with side protection.")
	}
	return append(append(out, s.Bought...), "A caliper, good light, and a pen: write at once, not afterwards.")
}

// testActions are the actions in their order.
func (c *composer) testActions(s TestSheet, f Facts) []string {
	push := "Bring the ram down slowly, without a jerk, about a millimetre a second."
	if byHand(f) {
		push = "Push slowly, without a jerk, about a millimetre a second."
	}
	out := []string{
		"Let the coupons lie where they are tested until they have the temperature of the room, resin fully cured, as dry or moist as the parts will be. Do not try them: " + strong("each pair is pressed once") + ".",
		"Before you press, measure the stepped dimension of the coupon where a caliper reaches it. It tells how the printer makes it.",
		"Begin with the smallest number. Set the lower coupon flat on the table, number in sight. Set the upper coupon of the same number on it, straight, so that the plates are parallel.",
		"Set the gauge to zero and to keep its peak, over the middle of the upper plate.",
		push + " Go on until the latch is home: a click, a sudden drop, or the plates as far as they go. " +
			strong("Stop at the force in the column Stop at") + ", home or not.",
		"Write the largest force into the grid. Not home: write the force that was reached, and no-go. Then what was heard and seen: click, white lines, cracks, a pair that falls apart again.",
	}
	if f.Overstrained > 0 {
		out = append(out, "A pair marked OVERSTRAINED is computed to be strained beyond what its material is permitted: white lines or a crack may come. Wear the eye protection, and keep your face out of line.")
	}
	return append(out, "When all are done, copy the forces into "+s.Table+", column force_"+strings.ToLower(s.Units.Name(unit.Force))+", with a note that begins with no-go where a pair did not go together; then run ramnest calibrate with the job and that table.")
}

// fine gives a length of which small steps count.
func fine(mm float64) unit.Figure { return unit.Length.Of(mm).To(unit.Grid) }

// testGrid is where everything is written.
func (c *composer) testGrid(s TestSheet) []page.Item {
	head := c.heading("Measured", 0)
	items := []page.Item{head}
	length, push := c.fig.units.Name(unit.Length), c.fig.units.Name(unit.Force)
	table := page.Table{Font: page.Font{Size: sizeTable}, Pad: 1.3, Least: 9.5, Columns: []page.Column{
		{Title: "Pair", Width: 12}, {Title: "Size, " + length, Width: 17}, {Title: "Measured, " + length, Width: 20},
		{Title: "Expected, " + push, Width: 27}, {Title: "Stop at, " + push, Width: 19},
		{Title: "Force, " + push, Width: 20}, {Title: "Go / no-go", Width: 19}, {Title: "Seen, heard"}}}.Widths(c.frame.Width)
	bare := func(n float64) string { return unit.Force.Of(n).Number(c.fig.units, nil) }
	var rows [][]string
	for _, p := range s.Pairs {
		number := strong(fmt.Sprint(p.Number))
		if p.Nominal {
			number += " *"
		}
		expected, stop, seen := bare(p.P5)+" to "+bare(p.P95), bare(stopAbove*p.P95), ""
		switch p.Word {
		case loose:
			expected, stop, seen = "loose", "at first hold", ""
		case locks:
			expected, stop, seen = "may lock", "at first hold", "Do not force it."
		}
		if p.Overstrain {
			seen = strings.TrimSpace("OVERSTRAINED. " + seen)
		}
		rows = append(rows, []string{number, fine(p.Size).Number(c.fig.units, c.fig.minus), "", expected, stop, "", "", seen})
	}
	rest := c.lined(table, table.Items(c.book, rows))
	rest[0].Gap = 2
	for i := range rest {
		rest[i].Keep = i < len(rest)-1
	}
	items = append(items, rest...)
	note := c.text(sizeSmall, "* as drawn in the job. Expected: 90 of 100 pairs, computed from the material table, never measured. Pressed by: ____________________  Date: ______________  Gauge: ____________________")
	note[0].Gap = 2
	return append(items, note...)
}
