package workinstructions

import (
	"fmt"
	"slices"
	"strings"

	"ramnest/work-instructions/internal/page"
)

// cautionPage collects all cautions before the first step.
func (c *composer) cautionPage() []page.Item {
	all := collect(c.sheet.facts())
	head := c.heading("Cautions", 0)
	head.Break = true
	items := []page.Item{head}
	rows := c.inPairs(len(all.list), func(i int, width, least float64) page.Block {
		return c.message(all.list[i], width, least, "Bites at "+strings.Join(c.where(all.list[i], all.steps[i]), "; ")+".")
	})
	for k, b := range rows {
		items = append(items, page.Item{Block: b, Gap: 1.8, Keep: k == 0})
	}
	return append(items, c.hurt()...)
}

// hurt is what to do when someone is hurt.
func (c *composer) hurt() []page.Item {
	what := "Stop, and get help."
	for _, t := range c.steps {
		if byPress(t.facts) {
			what = "Stop. Free a caught hand by raising the ram with the lever, never by pulling at the hand. Get help."
		}
	}
	items := c.text(sizeBody, strong(what)+" Emergency call: ______________________ First aid: ______________________")
	items[0].Gap = 0
	return append([]page.Item{c.heading("If someone is hurt", 1)}, items...)
}

// where names the set-ups and actions at which a caution bites.
func (c *composer) where(m Caution, steps []int) []string {
	var out []string
	for _, i := range steps {
		t := c.steps[i]
		var at []string
		places := slices.Clone(m.Places)
		slices.SortFunc(places, func(a, b Place) int { return order[a] - order[b] })
		for _, p := range places {
			name := "set-up"
			if p != AtSetUp {
				name = t.actions[actionAt(t.actions, p)].number
			}
			if !slices.Contains(at, name) {
				at = append(at, name)
			}
		}
		var acts []string
		set := ""
		for _, a := range at {
			if a == "set-up" {
				set = a
				if len(c.steps) > 1 {
					set = fmt.Sprintf("set-up of step %d", i+1)
				}
			} else {
				acts = append(acts, a)
			}
		}
		if set != "" {
			out = append(out, set)
		}
		if len(acts) > 0 {
			word := "action"
			if len(acts) > 1 {
				word = "actions"
			}
			out = append(out, word+nbsp+strings.Join(acts, ", "))
		}
	}
	return out
}
