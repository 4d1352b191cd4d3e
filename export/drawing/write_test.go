package drawing

import (
	"bufio"
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/pdfcpu/pdfcpu/pkg/api"

	"ramnest/export/page"
	"ramnest/force/fault"
)

// cuboid adds a box to a body.
func cuboid(b *Body, low, high [3]float64) {
	n := int32(len(b.Vertices))
	for i := range 8 {
		v := low
		for k := range 3 {
			if i>>k&1 == 1 {
				v[k] = high[k]
			}
		}
		b.Vertices = append(b.Vertices, v)
	}
	for _, q := range [6][4]int32{{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}} {
		b.Triangles = append(b.Triangles, [3]int32{n + q[0], n + q[1], n + q[2]}, [3]int32{n + q[0], n + q[2], n + q[3]})
	}
}

func sample() Set {
	b := Body{Name: "block <&>", Cut: [2]float64{30, 20}, Material: "PA12", Process: "PBF", Build: "along Z", Tolerance: "±0.2 mm", Mass: "0.1 kg", Mark: "J"}
	cuboid(&b, [3]float64{0, 0, 0}, [3]float64{60, 40, 12})
	b.Dims = []Dim{
		{PlanBelow, [3]float64{0, 0, 0}, [3]float64{60, 0, 0}, "length"}, {PlanLeft, [3]float64{0, 0, 0}, [3]float64{0, 40, 0}, "width"},
		{SectionA, [3]float64{0, 0, 0}, [3]float64{0, 0, 12}, "height"}, {PlanBelow, [3]float64{0, 0, 0}, [3]float64{2, 0, 0}, "narrow"},
		{SectionB, [3]float64{0, 0, 0}, [3]float64{0, 0, 12}, "height"}, {SectionAUp, [3]float64{10, 0, 12}, [3]float64{50, 0, 12}, "part"}, {SectionBUp, [3]float64{0, 10, 12}, [3]float64{0, 30, 12}, "part"},
	}
	b.Features = []Feature{{Tag: "H1", Name: "hole", At: [2]float64{30, 20}, Diameter: 8, Z: [2]float64{0, 12}}}
	return Set{Job: "J-1 </svg>", Title: "Ä title & <more>", Revision: "A", Fingerprint: "ABCDE", Tool: "tool", Date: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC), Paper: page.A4, Bodies: []Body{b}}
}

func written(t *testing.T, s Set, format string) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := s.Write(&b, format); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestSameSetSameBytes(t *testing.T) {
	t.Parallel()
	for _, f := range Formats {
		if a, b := written(t, sample(), f), written(t, sample(), f); !bytes.Equal(a, b) {
			t.Errorf("%s: two runs differ", f)
		}
	}
}

func TestPDFIsValid(t *testing.T) {
	t.Parallel()
	file := written(t, sample(), "pdf")
	if err := api.Validate(bytes.NewReader(file), nil); err != nil {
		t.Error(err)
	}
	if !bytes.Contains(file, []byte("/MediaBox [0 0 841.89 595.28]")) { // A4 lying
		t.Error("the page is no A4 on its side")
	}
}

func TestSVGIsWellFormed(t *testing.T) {
	t.Parallel()
	d := xml.NewDecoder(bytes.NewReader(written(t, sample(), "svg")))
	seen := map[string]int{}
	said := ""
	for {
		k, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		switch k := k.(type) {
		case xml.StartElement:
			seen[k.Name.Local]++
		case xml.CharData:
			said += string(k) + "|"
		}
	}
	if seen["svg"] != 1 || seen["path"] < 5 || seen["text"] < 30 {
		t.Errorf("%v", seen)
	}
	for _, want := range []string{"block <&>: Ä title & <more>", "J-1 </svg>", "A–A", "B–B", "60", "First-angle projection", "1:1", "Ø8"} {
		if !strings.Contains(said, "|"+want+"|") {
			t.Errorf("the drawing does not say %q", want)
		}
	}
}

// groups reads the pairs of a DXF file, by the rule of the format: a code on a line, a
// value on the next.
func groups(t *testing.T, file []byte) (out [][2]string) {
	t.Helper()
	in := bufio.NewScanner(bytes.NewReader(file))
	for in.Scan() {
		code := strings.TrimSpace(in.Text())
		if _, err := strconv.Atoi(code); err != nil || !in.Scan() {
			t.Fatalf("group code %q", code)
		}
		out = append(out, [2]string{code, in.Text()})
	}
	return out
}

// The body is in its own size in the file, whatever the scale; each entity on a layer of
// the table.
func TestDXFHoldsTheBodyInItsOwnSize(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		inches bool
		unit   float64
		grow   float64
	}{{false, 1, 1}, {false, 1, 5}, {true, 25.4, 1}} {
		s := sample()
		s.Units.Inch = c.inches
		for i := range s.Bodies[0].Vertices {
			for k := range 3 {
				s.Bodies[0].Vertices[i][k] *= c.grow
			}
		}
		s.Bodies[0].Cut = [2]float64{30 * c.grow, 20 * c.grow}
		g := groups(t, written(t, s, "dxf"))
		var layers, depth []string
		var spans []float64
		for i, p := range g {
			switch {
			case p[0] == "0" && p[1] == "LAYER":
				layers = append(layers, g[i+1][1])
			case p[0] == "0" && p[1] == "SECTION":
				depth = append(depth, g[i+1][1])
			case p[0] == "8" && !slices.Contains(layers, p[1]):
				t.Errorf("layer %s is not in the table", p[1])
			case p[0] == "0" && p[1] == "LINE" && g[i+1][1] == "VISIBLE":
				x0, _ := strconv.ParseFloat(g[i+2][1], 64)
				x1, _ := strconv.ParseFloat(g[i+4][1], 64)
				spans = append(spans, math.Abs(x1-x0)*c.unit)
			case p[0] == "8" || p[0] == "0":
			}
			for _, r := range p[1] {
				if r < 0x20 || r > 0x7e {
					t.Fatalf("%q is not plain ASCII", p[1])
				}
			}
		}
		if want := []string{"HEADER", "TABLES", "BLOCKS", "ENTITIES"}; !slices.Equal(depth, want) {
			t.Errorf("sections %v, want %v", depth, want)
		}
		if g[len(g)-1] != [2]string{"0", "EOF"} {
			t.Error("no end of file")
		}
		// A rectangle is chained to a closed line, so its sides stand in the vertices.
		low, high := math.Inf(1), math.Inf(-1)
		first := true
		for i, p := range g {
			if p[0] == "0" && p[1] == "POLYLINE" && g[i+1][1] == "VISIBLE" && first {
				first = false
				for k := i + 7; g[k+1][1] != "SEQEND"; k++ {
					if g[k][0] == "10" {
						x, _ := strconv.ParseFloat(g[k][1], 64)
						low, high = min(low, x*c.unit), max(high, x*c.unit)
					}
					if g[k][0] == "0" && g[k][1] == "SEQEND" {
						break
					}
				}
			}
		}
		if math.Abs(high-low-60*c.grow) > 0.03 {
			t.Errorf("inches %v: the block is %.3f mm long in the file, want %.3f; level lines %v", c.inches, high-low, 60*c.grow, spans)
		}
	}
}

func TestInchJobsAreThirdAngleInInches(t *testing.T) {
	t.Parallel()
	s := sample()
	s.Units.Inch, s.Paper = true, page.Letter
	text := string(written(t, s, "svg"))
	for _, want := range []string{">2.362<", ">Third-angle projection<", ">inch<"} {
		if !strings.Contains(text, want) {
			t.Errorf("the drawing does not say %q", want)
		}
	}
}

func TestWhatCannotBeDrawnIsRefused(t *testing.T) {
	t.Parallel()
	for name, spoil := range map[string]func(*Set) string{
		"no body":     func(s *Set) string { s.Bodies = nil; return "pdf" },
		"format":      func(*Set) string { return "dwg" },
		"paper":       func(s *Set) string { s.Paper = page.Size{}; return "pdf" },
		"no number":   func(s *Set) string { s.Bodies[0].Vertices[3][1] = math.NaN(); return "pdf" },
		"no vertex":   func(s *Set) string { s.Bodies[0].Triangles[0][1] = 99; return "svg" },
		"far too big": func(s *Set) string { s.Bodies[0].Vertices[7] = [3]float64{9000, 9000, 9000}; return "dxf" },
	} {
		s := sample()
		format := spoil(&s)
		var out bytes.Buffer
		err := s.Write(&out, format)
		if _, ours := err.(fault.Fault); !ours || out.Len() > 0 {
			t.Errorf("%s: %v, %d bytes; want a fault and none", name, err, out.Len())
		}
	}
}

func BenchmarkSheet(b *testing.B) {
	s := sample()
	for b.Loop() {
		if err := s.Write(io.Discard, "pdf"); err != nil {
			b.Fatal(err)
		}
	}
}
