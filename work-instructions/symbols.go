package workinstructions

import "ramnest/export/page"

// Pictograms, own drawings in the meaning of ISO 7010, for print in black and
// white: a warning is a triangle on its base, an order a black disc. Drawn in a
// square of 100 units.

// symbol draws a pictogram into a square of the given side.
func symbol(p *page.Page, s Symbol, x, y, side float64) {
	k := side / 100
	put := func(path *page.Path, st page.Style) {
		st.Stroke *= k
		p.Draw(path.Placed(x, y, k), st)
	}
	black := page.Style{Filled: true, Fill: page.Black}
	white := page.Style{Filled: true, Fill: page.White}
	switch s {
	case General, HandCrush:
		put(new(page.Path).Polygon(50, 10, 94, 86, 6, 86), page.Style{Filled: true, Fill: page.White, Stroke: 9})
	default:
		put(new(page.Path).Ellipse(50, 50, 48, 48), black)
	}
	switch s {
	case General:
		put(new(page.Path).Polygon(44.5, 35, 55.5, 35, 53, 63, 47, 63), black)
		put(new(page.Path).Ellipse(50, 72.5, 5, 5), black)
	case HandCrush:
		put(new(page.Path).Polygon(47, 29, 53, 29, 53, 37, 61, 37, 61, 52, 39, 52, 39, 37, 47, 37), black)
		put(hand(), black)
		put(new(page.Path).Polygon(25, 75, 75, 75, 75, 79, 25, 79), black)
	case ReadManual:
		put(new(page.Path).Move(50, 34).Curve(42, 27, 30, 26, 20, 29).Line(20, 69).Curve(30, 66, 42, 67, 50, 74).Curve(58, 67, 70, 66, 80,
			69).Line(80, 29).Curve(70, 26, 58, 27, 50, 34).Close(), white)
		put(new(page.Path).Move(50, 34).Line(50, 74), page.Style{Stroke: 3})
		for _, dy := range []float64{0, 9, 18} {
			put(new(page.Path).Move(27, 37+dy).Curve(33, 36.5+dy, 39, 38+dy, 44, 41+dy).Move(73, 37+dy).Curve(67, 36.5+dy, 61, 38+dy, 56, 41+dy),
				page.Style{Stroke: 3})
		}
	case EyeGuard:
		put(new(page.Path).Ellipse(50, 50, 27, 33), white)
		put(new(page.Path).Round(20, 39, 60, 5, 1), black)
		put(new(page.Path).Round(26, 37, 22, 18, 7).Round(52, 37, 22, 18, 7), black)
		put(new(page.Path).Round(46, 41, 8, 5, 1), black)
		put(new(page.Path).Round(30, 41, 14, 10, 4).Round(56, 41, 14, 10, 4), white)
	case EarGuard:
		put(new(page.Path).Ellipse(50, 54, 22, 28), white)
		put(new(page.Path).Move(22, 52).Curve(22, 12, 78, 12, 78, 52), page.Style{Stroke: 6, Line: page.White})
		put(new(page.Path).Round(13, 42, 17, 28, 7).Round(70, 42, 17, 28, 7), page.Style{Filled: true, Fill: page.White, Stroke: 4})
	case Gloves:
		g := new(page.Path).Round(33, 40, 34, 32, 8)
		for i, top := range []float64{24, 18, 20, 27} {
			g.Round(33+8.7*float64(i), top, 7.9, 34, 3.9)
		}
		put(g, white)
		put(new(page.Path).Move(36, 62).Line(22, 48).Curve(17, 43, 23, 37, 28, 41).Line(40, 51).Close(), white)
		put(new(page.Path).Round(36, 76, 28, 9, 2), white)
	case Footwear:
		put(new(page.Path).Move(32, 22).Line(54, 22).Line(54, 46).Curve(56, 54, 66, 54, 75, 58).Curve(82, 61, 82, 66, 82, 70).Line(30,
			70).Curve(27, 58, 33, 48, 32, 22).Close(), white)
		put(new(page.Path).Round(29, 73, 54, 7, 2), white)
	}
}

// hand is a hand from the side, flat under what comes down on it.
func hand() *page.Path {
	return new(page.Path).Move(28, 68).Curve(27.5, 64, 31, 63, 34, 63).Line(49, 62).Curve(53, 57.5, 58, 55.5, 63, 57).Line(70, 61).Line(75,
		72).
		Line(62, 72.5).Curve(54, 72.5, 46, 72, 40, 71.5).Line(32, 71.5).Curve(29, 71.5, 28, 70, 28, 68).Close()
}

// alert draws the safety alert sign that stands before a signal word.
func alert(p *page.Page, x, y, side float64, dark bool) {
	fill, mark := page.Black, page.White
	if dark {
		fill, mark = page.White, page.Black
	}
	k := side / 100
	p.Draw(new(page.Path).Polygon(50, 8, 97, 90, 3, 90).Placed(x, y, k), page.Style{Filled: true, Fill: fill})
	p.Draw(new(page.Path).Polygon(44, 36, 56, 36, 53.5, 66, 46.5, 66).Placed(x, y, k), page.Style{Filled: true, Fill: mark})
	p.Draw(new(page.Path).Ellipse(50, 77, 5.6, 5.6).Placed(x, y, k), page.Style{Filled: true, Fill: mark})
}
