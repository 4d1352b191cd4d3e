package drawing

import (
	"math"

	"ramnest/export/page"
)

// A layout is a body at a scale on a sheet.
type layout struct {
	drafter
	views [3]picture
	scale scale
	size  page.Size
	k     float64 // mm on the sheet for one of the body
	sides [places]side
	table table

	wide, deep, high             float64 // of the body on the sheet
	left, right, top, below, gap float64 // room round the views
}

func (d drafter) layOut(views [3]picture, s scale, size page.Size) *layout {
	l := &layout{drafter: d, views: views, scale: s, size: size, k: s.sheet / s.body}
	l.wide, l.deep = l.k*(views[0].high[0]-views[0].low[0]), l.k*(views[0].high[1]-views[0].low[1])
	l.high = l.k * (views[1].high[1] - views[1].low[1])
	for p := range places {
		l.sides[p] = laid(l.rungs(p))
	}
	l.table = d.tableOf()
	depth := func(p Place, first float64) float64 { return l.sides[p].depth(first) }
	l.left = max(depth(PlanLeft, lettersOut), depth(SectionA, firstTrack), lettersOut)
	l.right = max(depth(SectionB, firstTrack), 6)
	l.top = max(depth(SectionAUp, firstTrack), depth(SectionBUp, firstTrack), 3) + captionHigh
	l.below = max(depth(PlanBelow, lettersOut), lettersOut)
	// Texts that stand beyond the ends of their view.
	for p, length := range map[Place]float64{PlanBelow: l.wide, SectionAUp: l.wide} {
		before, after := l.sides[p].reach(length)
		l.left, l.gap = max(l.left, before+2), max(l.gap, after+2)
	}
	before, after := l.sides[SectionBUp].reach(l.deep)
	l.gap, l.right = max(l.gap, before+2, apartViews), max(l.right, after+2)
	for _, p := range []Place{SectionA, SectionB} {
		before, after := l.sides[p].reach(l.high)
		l.top = max(l.top, after+2+captionHigh)
		l.below = max(l.below, before-lettersOut)
	}
	before, after = l.sides[PlanLeft].reach(l.deep)
	l.below, l.top = max(l.below, before+2), max(l.top, after-lettersOut)
	return l
}

// Room needed in the two columns and the two rows [mm].
func (l *layout) columns() (first, second float64) {
	return l.left + l.wide + l.gap, max(l.deep+l.right, l.table.wide)
}

func (l *layout) rows() (section, plan float64) {
	return l.top + l.high + 5, max(lettersOut+l.deep+l.below, l.table.high+4)
}

func (l *layout) fits() bool {
	a, b := l.columns()
	c, d := l.rows()
	return a+b <= l.size.Width-marginLeft-margin-4 && c+d <= l.size.Height-2*margin-stripHigh-2
}

// rungs are the dimensions of a place, on the sheet.
func (l *layout) rungs(p Place) []rung {
	var out []rung
	for _, d := range l.body.Dims {
		if d.Place != p {
			continue
		}
		v := l.views[viewOf(p)]
		a, b := v.view.turn(d.From), v.view.turn(d.To)
		h, x := 0, 1 // along, across
		if p == PlanLeft || p == SectionA || p == SectionB {
			h, x = 1, 0
		}
		if a[h] > b[h] {
			a, b = b, a
		}
		inward := func(q [3]float64) float64 { // from the side on which it stands
			if p == SectionAUp || p == SectionBUp || p == SectionB {
				return l.k * (v.high[x] - q[x])
			}
			return l.k * (q[x] - v.low[x])
		}
		r := rung{a: l.k * (a[h] - v.low[h]), b: l.k * (b[h] - v.low[h]), from: inward(a), to: inward(b), text: l.set.length(d.Value())}
		r.width = l.book.Width(page.Font{Size: dimType}, r.text)
		out = append(out, r)
	}
	return out
}

func viewOf(p Place) int {
	switch p {
	case PlanBelow, PlanLeft:
		return 0
	case SectionA, SectionAUp:
		return 1
	}
	return 2
}

// ink draws the sheet.
func (l *layout) ink() ink {
	var k ink
	w, h := l.size.Width, l.size.Height
	first, second := l.columns()
	sectionRow, planRow := l.rows()
	// What is left over goes round the views.
	spareX := (w - marginLeft - margin - 4 - first - second) / 3
	spareY := (h - 2*margin - stripHigh - 2 - sectionRow - planRow) / 3
	x0 := marginLeft + 2 + spareX + l.left
	x1 := x0 + l.wide + l.gap + spareX
	// Heights of the upper edges of the views.
	sectionY := margin + spareY + l.top
	planY := sectionY + l.high + 5 + spareY + lettersOut
	tableY := planY - lettersOut + 4
	if l.thirdAngle() {
		planY = margin + spareY + lettersOut
		sectionY = margin + planRow + 2*spareY + l.top
		tableY = margin + 4
	}
	at := [3]point{{x0, planY}, {x0, sectionY}, {x1, sectionY}}
	for i := range l.views {
		l.drawView(&k, i, at[i])
	}
	l.marks(&k, at)
	l.drawSides(&k, at)
	l.table.draw(&k, w-margin-3-l.table.wide, tableY)
	l.strip(&k)
	return k
}

// on gives a point of a view on the sheet.
func (l *layout) on(i int, at point, p point) point {
	v := &l.views[i]
	return point{at[0] + float64(l.k*(p[0]-v.low[0])), at[1] + float64(l.k*(v.high[1]-p[1]))}
}

// hatchPitch is the distance of hatching lines on the sheet [mm].
const hatchPitch = 2.5

func (l *layout) drawView(k *ink, i int, at point) {
	v := &l.views[i]
	put := func(kind Kind, all []stroke) {
		for _, s := range all {
			t := stroke{kind: kind, closed: s.closed}
			for _, p := range s.points {
				t.points = append(t.points, l.on(i, at, p))
			}
			k.strokes = append(k.strokes, t)
		}
	}
	for _, s := range hatched(v.rims, hatchPitch/l.k) {
		k.line(Hatching, l.on(i, at, s[0]), l.on(i, at, s[1]))
	}
	put(Hidden, v.hidden)
	put(Visible, v.seen)
	if i > 0 {
		name := []string{"A–A", "B–B"}[i-1]
		up := []Place{SectionAUp, SectionBUp}[i-1]
		y := at[1] - max(l.sides[up].depth(firstTrack), 3) - 1.5
		k.labels = append(k.labels, label{at: point{at[0] + l.k*(v.high[0]-v.low[0])/2, y}, align: 0.5, size: 11, bold: true, text: name})
	}
}

func (l *layout) drawSides(k *ink, at [3]point) {
	planFoot, left, up, right, down := at[0][1]+l.deep, point{-1, 0}, point{0, -1}, point{1, 0}, point{0, 1}
	l.sides[PlanBelow].draw(k, rail{point{at[0][0], planFoot}, right, down, lettersOut})
	l.sides[PlanLeft].draw(k, rail{point{at[0][0], planFoot}, up, left, lettersOut})
	l.sides[SectionA].draw(k, rail{point{at[1][0], at[1][1] + l.high}, up, left, firstTrack})
	l.sides[SectionAUp].draw(k, rail{at[1], right, up, firstTrack})
	l.sides[SectionB].draw(k, rail{point{at[2][0] + l.deep, at[2][1] + l.high}, up, right, firstTrack})
	l.sides[SectionBUp].draw(k, rail{at[2], right, up, firstTrack})
}

// roundTo keeps places on the sheet to a hundredth of a millimetre.
func roundTo(v float64) float64 { return math.Round(v*100)/100 + 0 }
