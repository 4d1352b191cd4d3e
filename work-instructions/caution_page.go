package workinstructions

import (
	"slices"
	"strconv"
	"strings"

	"ramnest/export/page"
)

// cautionPage collects all cautions before the first step.
func (c *composer) cautionPage() []page.Item {
	all := collect(c.sheet.facts(), c.sheet.Language)
	head := c.heading(c.fig.say("caution"), 0)
	items := []page.Item{head}
	rows := c.inPairs(len(all.list), func(i int, width, least float64) page.Block {
		return c.message(all.list[i], width, least, c.fig.say("caution.at", strings.Join(c.where(all.list[i], all.steps[i]), "; ")))
	})
	for k, b := range rows {
		items = append(items, page.Item{Block: b, Gap: 1.8, Keep: k == 0})
	}
	return items
}

// hurt is what to do when someone is hurt, on the first page.
func (c *composer) hurt() []page.Item {
	what := "hurt"
	for _, t := range c.steps {
		if byPress(t.facts) {
			what = "hurt.press"
		}
	}
	const line = "______________________"
	items := c.text(sizeBody, strong(c.fig.say(what))+" "+c.fig.say("hurt.call", line, line))
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
		out = append(out, c.fig.say("caution.set-up"))
	default:
		out = append(out, c.fig.say("caution.set-up of", c.listOf("count.step", setUps)))
	}
	if len(acts) > 0 {
		out = append(out, c.listOf("count.action", acts))
	}
	return out
}

// listOf puts a word before numbers.
func (c *composer) listOf(key string, numbers []string) string {
	return c.fig.words.Count(key, len(numbers), strings.Join(numbers, ", "))
}
