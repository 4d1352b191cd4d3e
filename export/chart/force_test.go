package chart

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"math"
	"strings"
	"testing"

	"ramnest/force"
)

func sample() Force {
	return Force{
		Title:  "press on the cap",
		Curve:  [][2]float64{{2, 0}, {1, 300}, {1, 100}, {0, 100}},
		Band:   [][4]float64{{2.2, 0, 0, 0}, {1, 150, 300, 480}, {0, 50, 100, 160}},
		Design: 480,
	}
}

// SVG is XML with the words on it, PNG decodes; both the same each time, and a
// changed figure changes them.
func TestCharts(t *testing.T) {
	for _, format := range []string{"svg", "png"} {
		draw := func(f Force) []byte {
			var b bytes.Buffer
			if err := Write(&b, f, format); err != nil {
				t.Fatal(err)
			}
			return b.Bytes()
		}
		one := draw(sample())
		if !bytes.Equal(one, draw(sample())) {
			t.Errorf("%s: not the same bytes twice", format)
		}
		other := sample()
		other.Curve[1][1] = 330
		if bytes.Equal(one, draw(other)) {
			t.Errorf("%s: another peak gives the same picture", format)
		}
		switch format {
		case "svg":
			d := xml.NewDecoder(bytes.NewReader(one))
			for {
				if _, err := d.Token(); err == io.EOF {
					break
				} else if err != nil {
					t.Fatalf("not XML: %v", err)
				}
			}
			for _, want := range []string{"press on the cap", "force, N", "travel from first contact, mm", "design force"} {
				if !strings.Contains(string(one), want) {
					t.Errorf("svg does not say %q", want)
				}
			}
		case "png":
			img, err := png.Decode(bytes.NewReader(one))
			if err != nil || img.Bounds().Dx() < 400 {
				t.Errorf("png of %v: %v", img.Bounds(), err)
			}
		}
	}
	inches := sample()
	inches.Inches = true
	var b bytes.Buffer
	if err := Write(&b, inches, "svg"); err != nil || !strings.Contains(b.String(), "force, lbf") {
		t.Errorf("inches: %v", err)
	}
}

func TestChartsRefuse(t *testing.T) {
	for name, f := range map[string]Force{"no curve": {}, "no number": {Curve: [][2]float64{{1, 0}, {0, math.NaN()}}}} {
		var fault force.Fault
		if err := Write(io.Discard, f, "svg"); !errors.As(err, &fault) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := Write(io.Discard, sample(), "gif"); err == nil {
		t.Error("gif was drawn")
	}
}
