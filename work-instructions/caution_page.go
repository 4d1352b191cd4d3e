package workinstructions

import (
	"slices"
	"strconv"
	"strings"

	"ramnest/export/page"
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
	return items
}

// hurt is what to do when someone is hurt, on the first page.
func (c *composer) hurt() []page.Item {
	what := "Stop, and get help."
	for _, t := range c.steps {
		if byPress(t.facts) {
			what = "Stop. Free a caught hand by raising the ram with the lever, never by pulling at the hand. Get help."
		}
	}
	items := c.text(sizeBody, strong("If someone is hurt: "+what)+" Emergency call: ______________________ First aid: ______________________")
	items[0].Gap = 3
	return items
}

// where names the set-ups and actions at which a caution bites.
func (c *composer) where(m Caution, steps []int) []string {
	places := slices.Clone(m.Places)
	slices.SortFunc(places, func(a, b Place) int { return order[a] - order[b] })
	var setUps, acts []string
	for _, i := range steps {
		for _, p := range places {
			if p == AtSetUp {
				setUps = append(setUps, strconv.Itoa(i+1))
				continue
			}
			if n := c.steps[i].actions[actionAt(c.steps[i].actions, p)].number; !slices.Contains(acts, n) {
				acts = append(acts, n)
			}
		}
	}
	var out []string
	switch {
	case len(setUps) == 0:
	case len(c.steps) == 1:
		out = append(out, "set-up")
	default:
		out = append(out, listed("set-up of step", "set-up of steps", setUps))
	}
	if len(acts) > 0 {
		out = append(out, listed("action", "actions", acts))
	}
	return out
}

// listed puts a word before numbers.
func listed(one, many string, numbers []string) string {
	if len(numbers) == 1 {
		many = one
	}
	return many + nbsp + strings.Join(numbers, ", ")
}
