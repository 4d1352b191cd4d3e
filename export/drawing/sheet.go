package drawing

import (
	"math"
	"strconv"
	"strings"

	"ramnest/export/page"
	"ramnest/fixture/mesh"
	"ramnest/force/fault"
	"ramnest/force/unit"
)

// A sheet is one drawing, laid out.
type sheet struct {
	ink
	name  string
	size  page.Size
	scale scale
}

// A scale is the size on the sheet over the size of the body.
type scale struct{ sheet, body float64 }

func (s scale) String() string {
	return strconv.FormatFloat(s.sheet, 'f', -1, 64) + ":" + strconv.FormatFloat(s.body, 'f', -1, 64)
}

// scales of ISO 5455 (from memory) that suit what a person can carry.
var scales = []scale{{5, 1}, {2, 1}, {1, 1}, {1, 2}, {1, 5}, {1, 10}}

// Of the sheet [mm]: margins after ISO 5457 (from memory), wider at the left for filing.
const (
	marginLeft, margin = 20.0, 10.0
	stripHigh          = 30.0
	apartViews         = 17.0
	captionHigh        = 7.0
)

// A drafter lays out one body.
type drafter struct {
	set    *Set
	body   Body
	book   *page.Book // measures text
	number int        // of the sheet, from 1
}

// draw lays a body out on the smallest sheet, at the largest scale, that takes it.
func (d drafter) draw() (sheet, error) {
	views := d.lines()
	for _, s := range scales {
		sizes := []page.Size{d.set.Paper.Lying(), d.set.Paper.Doubled().Lying()}
		if s.sheet > s.body { // nothing is enlarged on a large sheet
			sizes = sizes[:1]
		}
		for _, size := range sizes {
			if l := d.layOut(views, s, size); l.fits() {
				return sheet{ink: l.ink(), name: d.body.Name, size: size, scale: s}, nil
			}
		}
	}
	last := scales[len(scales)-1]
	return sheet{}, fault.Fault{Field: "bodies", Given: d.body.Name, Problem: "does not go on the sheet at " + last.String(),
		Want: "a larger paper"}
}

// A picture is the lines of one view, in mm of the body.
type picture struct {
	view         view
	low, high    point
	seen, hidden []stroke
	rims         []segment // of the cut, closed
}

// lines finds the lines of plan, section A and section B.
func (d drafter) lines() [3]picture {
	out := [3]picture{{view: fromAbove}, {view: fromFront}, {view: d.sideView()}}
	for i := range out {
		p := &out[i]
		m := p.view.of(d.body)
		p.low, p.high = boxOf(m)
		plane := 0.0
		if i > 0 {
			m, plane = cutBehind(m, mesh.Dot(p.view.toward, [3]float64{d.body.Cut[0], d.body.Cut[1], 0}))
		}
		seen, hidden, rims := sight(m, edgesOf(m), plane)
		if i > 0 {
			hidden = nil // sections show what is seen
		}
		seen, hidden = tidied(append(seen, rims...), hidden)
		p.seen, p.hidden, p.rims = chained(seen), chained(hidden), rims
	}
	return out
}

// sideView is that of section B.
func (d drafter) sideView() view {
	if d.thirdAngle() {
		return fromRight
	}
	return fromLeft
}

func (d drafter) thirdAngle() bool { return d.set.Units.Inch }

// length writes a length in the unit of the set, without it.
func (s *Set) length(v float64) string {
	if s.Units.Inch {
		return unit.Length.Of(v).To(unit.Fine).Number(s.Units, nil)
	}
	// By way of the grid, so that a half is a half.
	t := unit.Length.Of(math.Round(math.Round(v*1000)/10)/100).To(unit.Fine).Number(s.Units, nil)
	return strings.TrimSuffix(strings.TrimRight(t, "0"), ".")
}

// unit names the unit of the set.
func (s *Set) unit() string {
	if s.Units.Inch {
		return "inch"
	}
	return "mm"
}

// sheets draws every body.
func (s *Set) sheets() ([]sheet, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	book := page.New(s.Paper, nil)
	defer book.Wait()
	var out []sheet
	for i, b := range s.Bodies {
		l, err := drafter{set: s, body: b, book: book, number: i + 1}.draw()
		if err != nil {
			return nil, err
		}
		out = append(out, l)
	}
	return out, nil
}
