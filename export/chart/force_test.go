package chart

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"ramnest/export/page"
)

func sample() Force {
	return Force{
		Curve:  [][2]float64{{2, 0}, {1, 300}, {1, 100}, {0, 100}},
		Band:   [][4]float64{{2.2, 0, 0, 0}, {1, 150, 300, 480}, {0, 50, 100, 160}},
		Levels: []Level{{Name: "design force", Force: 480, Strong: true}, {Name: "P95", Force: 480}, {Name: "P50", Force: 470}},
		Length: 1, Push: 1,
		Words:  Words{Push: "force, N", Travel: "travel from first contact, mm", Stop: "seat", Band: "90 of 100"},
		Number: func(v float64, d int) string { return strconv.FormatFloat(v, 'f', d, 64) },
	}
}

func draw(t *testing.T, f Force, format string) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, "press on the <cap>", f, format); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestFormats(t *testing.T) {
	for _, format := range Formats() {
		one := draw(t, sample(), format)
		if !bytes.Equal(one, draw(t, sample(), format)) {
			t.Errorf("%s: not the same bytes twice", format)
		}
		other := sample()
		other.Curve[1][1] = 330
		if bytes.Equal(one, draw(t, other, format)) {
			t.Errorf("%s: another peak gives the same picture", format)
		}
	}
	svg := draw(t, sample(), "svg")
	d := xml.NewDecoder(bytes.NewReader(svg))
	for {
		if _, err := d.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatalf("not XML: %v", err)
		}
	}
	for _, want := range []string{"press on the &lt;cap&gt;", ">force, N<", ">travel from first contact, mm<", ">design force, P95<", ">P50<", ">seat<", ">90 of 100<"} {
		if !strings.Contains(string(svg), want) {
			t.Errorf("svg does not say %q", want)
		}
	}
	img, err := png.Decode(bytes.NewReader(draw(t, sample(), "png")))
	if err != nil || img.Bounds().Dx() != fileWidth*dotsToTheMM {
		t.Fatalf("png of %v: %v", img.Bounds(), err)
	}
}

// The line of the curve goes through the points it is given, by the axes that Draw tells,
// in the SVG and among the dots.
func TestCurveStandsWhereTheAxesSay(t *testing.T) {
	f := sample()
	p, at, err := Page("", f)
	if err != nil {
		t.Fatal(err)
	}
	most := 600.0 // the axis goes on to a round figure above the highest force
	x := at.Left + (2.2-1)/2.2*(at.Right-at.Left)
	y := at.Bottom - 300/most*(at.Bottom-at.Top)
	want := "L" + short(x) + " " + short(y)
	if svg := p.SVG(page.SVG{}); !strings.Contains(svg, want) {
		t.Errorf("the peak does not stand at %s in %s", want, svg)
	}
	img, err := p.Image(10)
	if err != nil {
		t.Fatal(err)
	}
	if v := img.GrayAt(int(x*10), int(y*10)).Y; v > 100 {
		t.Errorf("no ink at the peak: %d", v)
	}
	inch := sample()
	inch.Length, inch.Push = 25.4, 4.4482216152605
	if q, other, err := Page("", inch); err != nil || other != at {
		t.Errorf("in inches the axes move: %v to %v, %v", at, other, err)
	} else if !strings.Contains(q.SVG(page.SVG{}), ">100<") {
		t.Error("no tick at 100 lbf")
	}
}

func short(v float64) string { return strconv.FormatFloat(math.Round(v*1000)/1000, 'f', -1, 64) }

func TestLabelsDoNotStandOnEachOther(t *testing.T) {
	places := []float64{10, 10.5, 11, 40}
	spread(places, labelGap, 6, 41)
	for i := 1; i < len(places); i++ {
		if places[i]-places[i-1] < labelGap-1e-9 {
			t.Errorf("labels at %v are nearer than %g", places, labelGap)
		}
	}
}

func TestRefused(t *testing.T) {
	bad := sample()
	bad.Band[1][3] = math.Inf(1)
	nan := sample()
	nan.Curve[0][0] = math.NaN()
	for name, c := range map[string]struct {
		f    Force
		want error
	}{"no curve": {Force{}, ErrNoCurve}, "no number": {nan, ErrNumber}, "endless band": {bad, ErrNumber}} {
		if err := Write(io.Discard, "", c.f, "svg"); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", name, err, c.want)
		}
	}
	if err := Write(io.Discard, "", sample(), "gif"); err == nil {
		t.Error("gif was drawn")
	}
}
