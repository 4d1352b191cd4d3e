package deliver_test

import (
	"archive/zip"
	"bytes"
	"encoding/binary"
	"encoding/xml"
	"io"
	"math"
	"strings"
	"sync"
	"testing"

	"ramnest/cmd/internal/deliver"
	"ramnest/cmd/internal/solve"
	"ramnest/cmd/internal/solve/solvetest"
)

// content renders a set and gives its files by name.
func content(t *testing.T, set deliver.Set) map[string][]byte {
	t.Helper()
	out := map[string][]byte{}
	for _, f := range set.Files {
		var b bytes.Buffer
		if err := f.Write(&b); err != nil {
			t.Fatal(err)
		}
		out[f.Name] = b.Bytes()
	}
	return out
}

// An example is an example job, worked out and rendered.
type example struct {
	*solve.Solution
	files map[string][]byte
}

// exampleOf gives an example job, rendered once for all tests.
func exampleOf(t *testing.T, name string) example {
	t.Helper()
	once, _ := examples.LoadOrStore(name, sync.OnceValue(func() example {
		s, doc := solvetest.Example(t, name)
		set, err := deliver.Files(t.Context(), s, "tool", doc.Inputs(s.Job))
		if err != nil {
			t.Fatal(err)
		}
		return example{s, content(t, set)}
	}))
	return once.(func() example)()
}

var examples sync.Map

type corner [3]float32

// readSTL reads a binary STL by its definition alone: 80 bytes of header, a count,
// and 50 bytes a triangle.
func readSTL(t *testing.T, b []byte) [][3]corner {
	t.Helper()
	n := int(binary.LittleEndian.Uint32(b[80:]))
	if len(b) != 84+50*n {
		t.Fatalf("%d bytes for %d triangles", len(b), n)
	}
	out := make([][3]corner, n)
	for i := range out {
		for k := range 3 {
			for c := range 3 {
				out[i][k][c] = math.Float32frombits(binary.LittleEndian.Uint32(b[84+50*i+12+12*k+4*c:]))
			}
		}
	}
	return out
}

// TestSolidsAsWritten checks the files themselves, with nothing of the code that made
// them: every edge once each way, one volume, the size and the volume of the report.
func TestSolidsAsWritten(t *testing.T) {
	t.Parallel()
	for _, name := range solvetest.Jobs() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s := exampleOf(t, name)
			files := s.files
			for _, p := range s.Pieces() {
				base := s.Job.Number + "-" + strings.ReplaceAll(p.Name, " ", "-")
				triangles := readSTL(t, files[base+".stl"])
				edges := map[[2]corner]int{}
				volume := 0.0
				least, most := triangles[0][0], triangles[0][0]
				for _, q := range triangles {
					var v [3][3]float64
					for k := range 3 {
						edges[[2]corner{q[k], q[(k+1)%3]}]++
						for c := range 3 {
							v[k][c] = float64(q[k][c])
							least[c], most[c] = min(least[c], q[k][c]), max(most[c], q[k][c])
						}
					}
					volume += (v[0][0]*(v[1][1]*v[2][2]-v[1][2]*v[2][1]) - v[0][1]*(v[1][0]*v[2][2]-v[1][2]*v[2][0]) + v[0][2]*(v[1][0]*v[2][1]-v[1][1]*v[2][0])) / 6
				}
				for e, n := range edges {
					if n != 1 || edges[[2]corner{e[1], e[0]}] != 1 {
						t.Fatalf("%s: an edge from %v to %v is there %d times, and %d times back", base, e[0], e[1], n, edges[[2]corner{e[1], e[0]}])
					}
				}
				if math.Abs(volume-p.Volume) > 1e-5*p.Volume || volume <= 0 {
					t.Errorf("%s: %g mm3 in the file, %g in the report", base, volume, p.Volume)
				}
				for c := range 3 {
					if got := float64(most[c] - least[c]); math.Abs(got-p.Size[c]) > 1e-3 {
						t.Errorf("%s: %g mm along axis %d, %g in the report", base, got, c, p.Size[c])
					}
				}
				checkThreeMF(t, base, files[base+".3mf"], triangles)
			}
		})
	}
}

// checkThreeMF reads a 3MF by its definition and compares it with the STL.
func checkThreeMF(t *testing.T, name string, b []byte, stl [][3]corner) {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(b), int64(len(b)))
	if err != nil {
		t.Fatal(err)
	}
	f, err := z.Open("3D/3dmodel.model")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	text, err := io.ReadAll(f)
	if err != nil {
		t.Fatal(err)
	}
	var m struct {
		Unit     string `xml:"unit,attr"`
		Metadata []struct {
			Name string `xml:"name,attr"`
			Text string `xml:",chardata"`
		} `xml:"metadata"`
		Vertices []struct {
			X float32 `xml:"x,attr"`
			Y float32 `xml:"y,attr"`
			Z float32 `xml:"z,attr"`
		} `xml:"resources>object>mesh>vertices>vertex"`
		Triangles []struct {
			A int `xml:"v1,attr"`
			B int `xml:"v2,attr"`
			C int `xml:"v3,attr"`
		} `xml:"resources>object>mesh>triangles>triangle"`
	}
	if err := xml.Unmarshal(text, &m); err != nil {
		t.Fatal(err)
	}
	if m.Unit != "millimeter" || len(m.Triangles) != len(stl) {
		t.Fatalf("%s: %s, %d triangles, %d in the STL", name, m.Unit, len(m.Triangles), len(stl))
	}
	for i, q := range m.Triangles {
		for k, v := range []int{q.A, q.B, q.C} {
			if got := (corner{m.Vertices[v].X, m.Vertices[v].Y, m.Vertices[v].Z}); got != stl[i][k] {
				t.Fatalf("%s: triangle %d is not that of the STL: %v, %v", name, i, got, stl[i][k])
			}
		}
	}
	about := map[string]string{}
	for _, e := range m.Metadata {
		about[e.Name] = e.Text
	}
	for _, want := range []string{"Title", "Designer", "Description", "CreationDate", "Application", "job:number", "job:revision", "job:engraved"} {
		if about[want] == "" {
			t.Errorf("%s: the 3MF says no %s: %v", name, want, about)
		}
	}
}
