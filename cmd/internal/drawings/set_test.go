package drawings

import (
	"bytes"
	"encoding/xml"
	"math"
	"strconv"
	"strings"
	"testing"

	"ramnest/cmd/internal/solve"
	"ramnest/cmd/internal/solve/solvetest"
	"ramnest/export/drawing"
	"ramnest/export/page"
)

// solutions are the example jobs, and one whose nest goes into a vise.
func solutions(t *testing.T) map[string]*solve.Solution {
	out := map[string]*solve.Solution{}
	for _, name := range solvetest.Jobs() {
		out[name], _ = solvetest.Example(t, name)
	}
	out["mallet"], _ = solvetest.Example(t, "rim-cap", "method.force=mallet", "method.override=trial")
	return out
}

// fromSurface is how far a point lies from the nearest triangle of a body [mm]. Ericson,
// Real-Time Collision Detection, 5.1.5 (from memory), apart from the drawing's own code.
func fromSurface(b drawing.Body, p [3]float64) float64 {
	sub := func(a, b [3]float64) [3]float64 { return [3]float64{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
	dot := func(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
	along := func(a, b [3]float64) [3]float64 { // nearest on a side
		d := sub(b, a)
		s := min(1, max(0, dot(sub(p, a), d)/max(dot(d, d), 1e-18)))
		return [3]float64{a[0] + s*d[0], a[1] + s*d[1], a[2] + s*d[2]}
	}
	least := math.Inf(1)
	for _, t := range b.Triangles {
		q := [3][3]float64{b.Vertices[t[0]], b.Vertices[t[1]], b.Vertices[t[2]]}
		for k := range 3 {
			d := sub(along(q[k], q[(k+1)%3]), p)
			least = min(least, math.Sqrt(dot(d, d)))
		}
		u, v, w := sub(q[1], q[0]), sub(q[2], q[0]), sub(p, q[0])
		n := [3]float64{u[1]*v[2] - u[2]*v[1], u[2]*v[0] - u[0]*v[2], u[0]*v[1] - u[1]*v[0]}
		uu, uv, vv, wu, wv := dot(u, u), dot(u, v), dot(v, v), dot(w, u), dot(w, v)
		den := uu*vv - uv*uv
		if den < 1e-15 {
			continue
		}
		if s, r := (vv*wu-uv*wv)/den, (uu*wv-uv*wu)/den; s >= 0 && r >= 0 && s+r <= 1 {
			least = min(least, math.Abs(dot(w, n))/math.Sqrt(dot(n, n)))
		}
	}
	return least
}

// What a drawing states is there on the mesh: both ends of every dimension lie on its
// surface, the longest dimensions are those of its box, and every round feature has its
// wall where its diameter says.
func TestDimensionsAreThoseOfTheMesh(t *testing.T) {
	t.Parallel()
	for name, s := range solutions(t) {
		set, err := SetOf(s, "test")
		if err != nil {
			t.Fatal(err)
		}
		for i, b := range set.Bodies {
			size := s.Pieces()[i].Size
			most := [3]float64{}
			for _, d := range b.Dims {
				axis := map[drawing.Place]int{drawing.PlanBelow: 0, drawing.SectionAUp: 0, drawing.PlanLeft: 1, drawing.SectionBUp: 1, drawing.SectionA: 2, drawing.SectionB: 2}[d.Place]
				most[axis] = max(most[axis], d.Value())
				for _, p := range [][3]float64{d.From, d.To} {
					if off := fromSurface(b, p); off > 0.011 {
						t.Errorf("%s, %s, %s %.3f: its end %v lies %.3f mm off the surface", name, b.Name, d.What, d.Value(), p, off)
					}
				}
			}
			for k := range 3 {
				if math.Abs(most[k]-size[k]) > 0.0015 {
					t.Errorf("%s, %s: longest dimension along axis %d is %.3f, the mesh has %.3f", name, b.Name, k, most[k], size[k])
				}
			}
			for _, f := range b.Features {
				if f.Name == "ram socket" || f.Name == "tongue" {
					for _, side := range [4][2]float64{{-1, 0}, {1, 0}, {0, -1}, {0, 1}} {
						p := [3]float64{f.At[0] + side[0]*f.Size[0]/2, f.At[1] + side[1]*f.Size[1]/2, (f.Z[0] + f.Z[1]) / 2}
						if off := fromSurface(b, p); off > 0.011 {
							t.Errorf("%s, %s, %s: no wall at %v, %.3f mm off", name, b.Name, f.Name, p, off)
						}
					}
				}
				if f.Diameter == 0 {
					continue
				}
				met := 0
				for turn := range 12 {
					sin, cos := math.Sincos(2 * math.Pi * float64(turn) / 12)
					p := [3]float64{f.At[0] + f.Diameter/2*cos, f.At[1] + f.Diameter/2*sin, f.Z[0] + 0.3*(f.Z[1]-f.Z[0])}
					if fromSurface(b, p) < 0.045 { // a chord and a rounded middle
						met++
					}
				}
				if met < 8 {
					t.Errorf("%s, %s, %s %s: a wall on %d of 12 sides of its diameter %.2f", name, b.Name, f.Tag, f.Name, met, f.Diameter)
				}
			}
		}
	}
}

type text struct {
	X         float64 `xml:"x,attr"`
	Y         float64 `xml:"y,attr"`
	Size      float64 `xml:"font-size,attr"`
	Anchor    string  `xml:"text-anchor,attr"`
	Weight    string  `xml:"font-weight,attr"`
	Transform string  `xml:"transform,attr"`
	Text      string  `xml:",chardata"`
}

// box is the room of a text, its letters without the white round them [mm].
func (x text) box(b *page.Book) (x0, y0, x1, y1 float64) {
	f := page.Font{Size: x.Size * 72 / 25.4}
	if x.Weight == "bold" {
		f.Face = page.Bold
	}
	w := b.Width(f, x.Text)
	left := x.X - map[string]float64{"start": 0, "middle": 0.5, "end": 1}[x.Anchor]*w
	if strings.HasPrefix(x.Transform, "rotate(-90") {
		return x.X - 0.7*x.Size, x.Y - w, x.X, x.Y
	}
	return left, x.Y - 0.7*x.Size, left + w, x.Y
}

// No text on another, none beyond the frame.
func TestTextsKeepApart(t *testing.T) {
	t.Parallel()
	book := page.New(page.A4, nil)
	defer book.Wait()
	for name, s := range solutions(t) {
		set, err := SetOf(s, "test")
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		if err := set.Write(&out, "svg"); err != nil {
			t.Fatal(err)
		}
		var svg struct {
			ViewBox string `xml:"viewBox,attr"`
			Sheets  []struct {
				Title string `xml:"title"`
				Texts []text `xml:"text"`
			} `xml:"g"`
		}
		if err := xml.Unmarshal(out.Bytes(), &svg); err != nil {
			t.Fatal(err)
		}
		wide, err := strconv.ParseFloat(strings.Fields(svg.ViewBox)[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		for _, sheet := range svg.Sheets {
			if len(sheet.Texts) < 40 {
				t.Errorf("%s, %s: %d texts", name, sheet.Title, len(sheet.Texts))
			}
			for i, a := range sheet.Texts {
				ax0, ay0, ax1, ay1 := a.box(book)
				if ax0 < 20 || ay0 < 10 || ax1 > wide-10 || ax1 < ax0 {
					t.Errorf("%s, %s: %q stands beyond the frame", name, sheet.Title, a.Text)
				}
				for _, b := range sheet.Texts[:i] {
					bx0, by0, bx1, by1 := b.box(book)
					if ax0 < bx1 && bx0 < ax1 && ay0 < by1 && by0 < ay1 {
						t.Errorf("%s, %s: %q and %q overlap", name, sheet.Title, a.Text, b.Text)
					}
				}
			}
		}
	}
}
