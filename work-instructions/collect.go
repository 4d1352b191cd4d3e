package workinstructions

import (
	"slices"
	"strings"

	"ramnest/work-instructions/catalogue"
)

// A collection is the cautions of all steps, each wording once.
type collection struct {
	list  []Caution
	steps [][]int // for each caution the steps it holds for, from 0
}

// collect joins the cautions of the steps and numbers them through. The same
// words under two signal words stand under the graver one.
func collect(steps []Facts, in catalogue.Language) collection {
	var c collection
	at := map[string]int{}
	for i, f := range steps {
		for _, m := range cautions(f, in) {
			key := strings.Join(append([]string{m.ID, m.Hazard, m.Consequence}, m.Avoid...), "\x00")
			k, ok := at[key]
			if !ok {
				k = len(c.list)
				at[key] = k
				c.list = append(c.list, m)
				c.steps = append(c.steps, nil)
			}
			c.steps[k] = append(c.steps[k], i)
			c.list[k].Places = union(c.list[k].Places, m.Places)
			if m.Signal.rank() < c.list[k].Signal.rank() {
				c.list[k].Signal = m.Signal
			}
		}
	}
	index := make([]int, len(c.list))
	for i := range index {
		index[i] = i
	}
	slices.SortStableFunc(index, func(a, b int) int { return c.list[a].Signal.rank() - c.list[b].Signal.rank() })
	var out collection
	for n, i := range index {
		m := c.list[i]
		m.Number = n + 1
		out.list = append(out.list, m)
		out.steps = append(out.steps, c.steps[i])
	}
	return out
}

// of gives the cautions of one step.
func (c collection) of(step int) []Caution {
	var out []Caution
	for k, m := range c.list {
		if slices.Contains(c.steps[k], step) {
			out = append(out, m)
		}
	}
	return out
}

func union(a, b []Place) []Place {
	for _, p := range b {
		if !slices.Contains(a, p) {
			a = append(slices.Clip(a), p)
		}
	}
	return a
}
