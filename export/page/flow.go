package page

import (
	"errors"
	"fmt"
)

// ErrTooHigh is returned when a block is higher than a page.
var ErrTooHigh = errors.New("a block is higher than the page")

// An Item is a block in a flow.
type Item struct {
	Block
	Gap   float64 // free room above, not at the top of a page [mm]
	Keep  bool    // on one page with the next
	Break bool    // begins a new page
	Head  *Block  // drawn again above it where it comes first on a page
	Rule  float64 // length of a hairline in the middle of the gap [mm]; 0: none
	Title string  // entry in the document's outline; empty: none
}

// Flow puts items one below the other on as many pages as they need. Items kept
// together move to the next page together; only a chain that is higher than a
// whole page is broken.
func (b *Book) Flow(frame Frame, items []Item) error {
	page, y := b.newPage(), frame.Y
	top := true
	next := func() { page, y, top = b.newPage(), frame.Y, true }
	for i := 0; i < len(items); {
		j := i
		for j < len(items)-1 && items[j].Keep && !items[j+1].Break {
			j++
		}
		group := items[i : j+1]
		if group[0].Break && !top {
			next()
		}
		if y+height(group, top) > frame.Y+frame.Height+0.01 {
			if !top {
				next()
			}
			if height(group, top) > frame.Height+0.01 {
				group = group[:1]
				if k := fitting(items[i:j+1], frame.Height); k > 1 {
					group = items[i : i+k]
				}
			}
		}
		for _, it := range group {
			if top && it.Head != nil {
				it.Head.draw(page, frame.X, y)
				y += it.Head.Height
			} else if !top {
				if it.Rule > 0 {
					page.Line(frame.X, y+it.Gap/2, frame.X+it.Rule, y+it.Gap/2, Hairline)
				}
				y += it.Gap
			}
			if y+it.Height > frame.Y+frame.Height+0.01 {
				return fmt.Errorf("%w: %.0f mm of %.0f mm", ErrTooHigh, it.Height, frame.Height)
			}
			it.draw(page, frame.X, y)
			if it.Title != "" {
				b.outline = append(b.outline, entry{it.Title, len(b.Pages), y})
			}
			y += it.Height
			top = false
		}
		i += len(group)
	}
	return nil
}

// height is that of a group, the first item at the top of a page or not.
func height(group []Item, top bool) float64 {
	h := 0.0
	for k, it := range group {
		switch {
		case k == 0 && top && it.Head != nil:
			h += it.Head.Height
		case k > 0 || !top:
			h += it.Gap
		}
		h += it.Height
	}
	return h
}

// fitting is how many items of a chain go on one page.
func fitting(chain []Item, room float64) int {
	n := 0
	for n < len(chain) && height(chain[:n+1], true) <= room+0.01 {
		n++
	}
	return n
}

// TextItems makes a paragraph of any length ready for a flow, line by line, with
// no line left alone on either side of a page break.
func (b *Book) TextItems(f Font, width, gap float64, s string) []Item {
	lines := b.Wrap(f, width, s)
	items := make([]Item, len(lines))
	for i, l := range lines {
		items[i] = Item{Block: SetLines(f, []string{l}), Keep: i == 0 && len(lines) > 1 || i == len(lines)-2}
	}
	items[0].Gap = gap
	return items
}
