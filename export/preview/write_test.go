package preview

import (
	"bytes"
	"encoding/base64"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"ramnest/fixture/mesh"
	"ramnest/force/fault"
	"ramnest/force/unit"
)

// tetrahedron is closed and faces outward.
func tetrahedron(name string) Body {
	return Body{
		Name: name,
		Mesh: mesh.Mesh{
			Vertices:  [][3]float64{{-10, 0, 0}, {30, 0, 0}, {0, 20.001, 0}, {0, 0, 7.5}},
			Triangles: [][3]int32{{0, 2, 1}, {0, 1, 3}, {1, 2, 3}, {2, 0, 3}},
		},
	}
}

const evil = "</script><script>alert(1)</script><!--<img src=x onerror='alert(2)'>\u2028"

func sample() Document {
	return Document{
		Job: "J-1" + evil, Title: evil, Revision: "A", Fingerprint: "ABCDE", Tool: "tool", Sheet: "J-1" + evil + ".pdf", Override: evil,
		Facts:  []Fact{{"Author", evil}},
		Bodies: []Body{tetrahedron(evil)},
		Steps: []Step{{
			Name: evil, Curve: [][2]float64{{2, 0}, {1, 100}, {1, 40}, {0, 40}}, Band: [][4]float64{{2.5, 0, 1, 2}, {1, 80, 100, 130}, {0, 30, 40, 50}}, Design: 130,
			Reason: evil, Options: []Option{{Method: "hand", Verdict: "pass", Used: "50 %", Nearest: evil, How: evil, Chosen: true}},
			Facts: []Fact{{evil, evil}},
			Scene: []Placed{{Body: 0, Name: evil, Tone: Accent, Moves: true}},
		}},
	}
}

func written(t *testing.T, d Document) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, d); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestNamesStayText(t *testing.T) {
	t.Parallel()
	text := written(t, sample())
	for what, want := range map[string]int{"<script": 2, "</script": 2, "<img": 0, "<!--": 0, "alert(1)</script": 0} {
		if got := strings.Count(strings.ToLower(text), what); got != want {
			t.Errorf("%q stands there %d times, not %d", what, got, want)
		}
	}
	// The data give the names back as they were.
	from := strings.Index(text, `id="data">`) + len(`id="data">`)
	var d data
	if err := json.Unmarshal([]byte(text[from:from+strings.Index(text[from:], "</script")]), &d); err != nil {
		t.Fatal(err)
	}
	if d.Steps[0].Name != evil || d.Steps[0].Scene[0].Name != evil {
		t.Errorf("names come back as %q and %q", d.Steps[0].Name, d.Steps[0].Scene[0].Name)
	}
}

// Nothing in the file names a place elsewhere, and its policy forbids to ask for one.
func TestFileStandsAlone(t *testing.T) {
	t.Parallel()
	d := sample()
	text := written(t, d)
	for _, word := range []string{"http:", "https:", "src=", "href=", "url(", "@import", "fetch(", "XMLHttpRequest", "WebSocket"} {
		if n := strings.Count(text, word) - strings.Count(text, "src=x"); word == "src=" && n > 0 || word != "src=" && strings.Contains(text, word) {
			t.Errorf("the file says %q", word)
		}
	}
	if !strings.Contains(text, "default-src &#39;none&#39;") {
		t.Error("no policy that forbids the network")
	}
}

func TestSameDocumentSameBytes(t *testing.T) {
	t.Parallel()
	if a, b := written(t, sample()), written(t, sample()); a != b {
		t.Error("two runs differ")
	}
}

func TestInchJobIsShownInInches(t *testing.T) {
	t.Parallel()
	d := sample()
	d.Units = unit.System{Inch: true, Pound: true}
	d.Steps[0].Curve = [][2]float64{{25.4, 0}, {12.7, 444.82216152605}, {0, 0}}
	d.Steps[0].Band, d.Steps[0].Design = nil, 444.82216152605
	text := written(t, d)
	for _, want := range []string{"travel from first contact, in", "force, lbf", "design force 100 lbf", "rises to 100 lbf at a travel of 0.5 in of 1 in", `"lengthName":"in"`} {
		if !strings.Contains(text, want) {
			t.Errorf("the file does not say %q", want)
		}
	}
}

func TestWhatCannotBeShownIsRefused(t *testing.T) {
	t.Parallel()
	for name, spoil := range map[string]func(*Document){
		"no step":            func(d *Document) { d.Steps = nil },
		"no curve":           func(d *Document) { d.Steps[0].Curve = nil },
		"force no number":    func(d *Document) { d.Steps[0].Curve[1][1] = math.NaN() },
		"place no number":    func(d *Document) { d.Bodies[0].Vertices[1][2] = math.Inf(1) },
		"corner of nowhere":  func(d *Document) { d.Bodies[0].Triangles[0][1] = 4 },
		"body of nowhere":    func(d *Document) { d.Steps[0].Scene[0].Body = 1 },
		"body without faces": func(d *Document) { d.Bodies[0].Triangles = nil },
	} {
		d := sample()
		spoil(&d)
		var out bytes.Buffer
		err := Write(&out, d)
		if _, ours := err.(fault.Fault); !ours || out.Len() > 0 {
			t.Errorf("%s: %v, %d bytes written; want a fault and none", name, err, out.Len())
		}
	}
}

// A body comes back within half a step of its grid.
func TestPackedBodyComesBack(t *testing.T) {
	t.Parallel()
	b := tetrahedron("t")
	p := pack(b)
	v, err := base64.StdEncoding.DecodeString(p.Vertices)
	if err != nil {
		t.Fatal(err)
	}
	tri, err := base64.StdEncoding.DecodeString(p.Triangles)
	if err != nil {
		t.Fatal(err)
	}
	if !p.Closed || p.Wide || p.Of != 0 || len(tri) != 2*3*len(b.Triangles) {
		t.Fatalf("%+v", p)
	}
	for i, want := range b.Triangles {
		for k, c := range want {
			at := int(tri[2*(3*i+k)]) | int(tri[2*(3*i+k)+1])<<8
			for x := range 3 {
				got := p.Origin[x] + p.Step*float64(int(v[6*at+2*x])|int(v[6*at+2*x+1])<<8)
				if math.Abs(got-b.Vertices[c][x]) > p.Step/2*1.0001 || p.Step > 40.0/65535*1.0001 {
					t.Errorf("triangle %d corner %d: %g, want %g", i, k, got, b.Vertices[c][x])
				}
			}
		}
	}
}

// ball is a sphere of n by n quarters.
func ball(n int) Body {
	b := Body{Name: "ball"}
	at := func(i, k int) int32 {
		if i == 0 || i == n { // a pole is one vertex
			k = 0
		}
		return int32(i*n + k%n)
	}
	for i := range n + 1 {
		for k := range n {
			s, c := math.Sincos(math.Pi * float64(i) / float64(n))
			t, d := math.Sincos(2 * math.Pi * float64(k) / float64(n))
			b.Vertices = append(b.Vertices, [3]float64{50 * s * d, 50 * s * t, 50 * c})
		}
	}
	for i := range n {
		for k := range n {
			b.Triangles = append(b.Triangles, [3]int32{at(i, k), at(i+1, k), at(i+1, k+1)}, [3]int32{at(i, k), at(i+1, k+1), at(i, k+1)})
		}
	}
	return b
}

// A mesh of any size gives a file of bounded size, and stays closed.
func TestLargeBodyIsCoarsened(t *testing.T) {
	t.Parallel()
	b := ball(600) // 720,000 triangles
	p := pack(b)
	if p.shown > mostTriangles || p.shown < mostTriangles/4 || p.Of != len(b.Triangles) || !p.Closed {
		t.Errorf("%d of %d triangles, closed %v", p.shown, p.Of, p.Closed)
	}
	if n := len(p.Vertices) + len(p.Triangles); n > 2_000_000 {
		t.Errorf("%d bytes", n)
	}
	d := sample()
	d.Bodies[0] = ball(240) // 115,200 triangles: stays whole
	if text := written(t, d); len(text) > 2_000_000 || strings.Contains(text, "coarser") {
		t.Errorf("%d bytes", len(text))
	}
}
