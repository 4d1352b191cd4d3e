package stepmesh

import (
	"bytes"
	"context"
	"errors"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"ramnest/fixture/envelope/meshfile"
)

// needMesher ends a test where gmsh is not installed: the program does without it too.
// The checks of a change install it.
func needMesher(t *testing.T) {
	t.Helper()
	if _, err := exec.LookPath("gmsh"); err != nil {
		t.Skip("gmsh is not installed")
	}
}

var usual = Limits{Bytes: 256 << 20, Memory: 4 << 30}

// cup is a STEP file that gmsh itself writes: a round cup, 50 mm across and 30 high, bore
// 44, floor 3.
func cup(t *testing.T) []byte {
	t.Helper()
	dir := t.TempDir()
	geo, step := filepath.Join(dir, "cup.geo"), filepath.Join(dir, "cup.step")
	const shape = `SetFactory("OpenCASCADE");
Cylinder(1) = {0,0,0, 0,0,30, 25};
Cylinder(2) = {0,0,3, 0,0,30, 22};
BooleanDifference(3) = { Volume{1}; Delete; }{ Volume{2}; Delete; };
`
	if err := os.WriteFile(geo, []byte(shape), 0o600); err != nil {
		t.Fatal(err)
	}
	if said, err := exec.Command("gmsh", geo, "-0", "-o", step, "-v", "1").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	data, err := os.ReadFile(step)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func meshOf(t *testing.T, data []byte) (meshfile.Report, *meshfile.Mesh, Result) {
	t.Helper()
	r := bytes.NewReader(data)
	if !Is(r) {
		t.Fatal("not taken for STEP")
	}
	got, err := Mesh(t.Context(), r, int64(len(data)), usual)
	if err != nil {
		t.Fatal(err)
	}
	m, err := meshfile.Read(bytes.NewReader(got.STL), int64(len(got.STL)), "part.stl", meshfile.Limits{})
	if err != nil {
		t.Fatal(err)
	}
	return meshfile.Defects(m), m, got
}

// The mesh is closed and holds the volume of the cup; no corner lies off the true faces,
// no chord further than is said.
func TestCup(t *testing.T) {
	needMesher(t)
	d, m, got := meshOf(t, cup(t))
	want := math.Pi * (25*25*30 - 22*22*27)
	if !d.Closed || d.Shells != 1 || math.Abs(d.Volume/want-1) > 0.005 {
		t.Errorf("closed %v, %d shells, %.1f mm3; want %.1f", d.Closed, d.Shells, d.Volume, want)
	}
	for _, tri := range m.Triangles {
		for k := range 3 {
			p, q := m.Vertices[tri[k]], m.Vertices[tri[(k+1)%3]]
			a, b := math.Hypot(p[0], p[1]), math.Hypot(q[0], q[1])
			for _, r := range []float64{22, 25} {
				if math.Abs(a-r) > 1e-4 || math.Abs(b-r) > 1e-4 {
					continue // not a chord of that round
				}
				if mid := math.Hypot((p[0]+q[0])/2, (p[1]+q[1])/2); r-mid > 0.001*r {
					t.Fatalf("a chord lies %.4f mm off a radius of %g mm", r-mid, r)
				}
			}
		}
	}
	if !strings.HasPrefix(got.How, "STEP by gmsh ") || !strings.Contains(got.How, "0.1 %") {
		t.Errorf("said %q", got.How)
	}
}

// A printed part of open hardware; its source and licence stand in testdata/jobs/parts.
func TestRealPart(t *testing.T) {
	needMesher(t)
	data, err := os.ReadFile("../../../testdata/jobs/parts/leg-fork.step")
	if err != nil {
		t.Fatal(err)
	}
	d, _, _ := meshOf(t, data)
	for k, want := range []float64{13.5, 16.78, 62.5} {
		if got := d.High[k] - d.Low[k]; math.Abs(got-want) > 0.02 {
			t.Errorf("size along %c %.3f mm, want %.2f", "xyz"[k], got, want)
		}
	}
	if !d.Closed || d.Shells != 1 {
		t.Errorf("closed %v, %d shells", d.Closed, d.Shells)
	}
}

func TestRefused(t *testing.T) {
	small := []byte("ISO-10303-21;\nHEADER;\nENDSEC;\nDATA;\nENDSEC;\nEND-ISO-10303-21;\n")
	try := func(ctx context.Context, data []byte, l Limits) error {
		_, err := Mesh(ctx, bytes.NewReader(data), int64(len(data)), l)
		return err
	}
	fault := func(name string, err error, want string) {
		t.Helper()
		if f, ok := errors.AsType[*meshfile.Fault](err); !ok || !strings.Contains(f.Error(), want) {
			t.Errorf("%s: %v, want %q", name, err, want)
		}
	}
	fault("too large", try(t.Context(), small, Limits{Bytes: 10}), "at most 10")
	t.Run("no mesher", func(t *testing.T) {
		t.Setenv("PATH", t.TempDir())
		fault("no mesher", try(t.Context(), small, usual), "gmsh, which would mesh it, is not installed; want gmsh")
	})
	needMesher(t)
	fault("empty", try(t.Context(), small, usual), "STEP")
	fault("a mesh over the bound", try(t.Context(), cup(t), Limits{Bytes: 60_000, Memory: 4 << 30}), "becomes a mesh of")
	fault("no memory", try(t.Context(), cup(t), Limits{Bytes: 1 << 20, Memory: 1 << 20}), "STEP")
	stopped, stop := context.WithCancel(t.Context())
	stop()
	if err := try(stopped, cup(t), usual); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped: %v", err)
	}
	for _, other := range []string{"", "solid x", "PK\x03\x04", "ISO-1030"} {
		if Is(strings.NewReader(other)) {
			t.Errorf("%q is taken for STEP", other)
		}
	}
}
