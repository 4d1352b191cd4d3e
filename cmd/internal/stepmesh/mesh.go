package stepmesh

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"ramnest/fixture/envelope/meshfile"
)

// How fine a round is meshed: so many chords to a turn, none shorter than least [mm]. A
// chord lies off the true face by s = r (1 - cos(pi/n)), or s = c^2/(8 r): 0.0004 of the
// radius, or 0.02 mm on rounds of half a millimetre. The mesher lets edges grow by up to
// half as much again, so a thousandth of the radius is what is said: a tenth of what is
// left between part and tooling.
const (
	chords = 120
	least  = 0.3
)

// patience is how long one file may take.
const patience = 2 * time.Minute

// Limits bound what a file may cost.
type Limits struct {
	Bytes  int64 // of the STEP file and of the mesh
	Memory int64 // that the mesher may take [bytes]; held where the system can
}

// start is what a STEP file begins with. Source: ISO 10303-21 (from memory).
var start = []byte("ISO-10303-21;")

// Is tells whether a file is STEP, by its content.
func Is(r io.ReaderAt) bool {
	head := make([]byte, 64)
	n, err := r.ReadAt(head, 0)
	return (err == nil || errors.Is(err, io.EOF)) && bytes.HasPrefix(bytes.TrimLeft(head[:n], "\xef\xbb\xbf \t\r\n"), start)
}

// A Result is the mesh of a STEP file.
type Result struct {
	STL []byte // binary, in mm
	How string // "STEP by gmsh 4.8.4, within 0.1 % of a radius or 0.02 mm"
}

// Mesh meshes the file. What is wrong with it, or that there is no mesher, is a
// [*meshfile.Fault]; the error of the context if that ends.
func Mesh(ctx context.Context, r io.ReaderAt, size int64, limits Limits) (Result, error) {
	if size > limits.Bytes {
		return Result{}, wrong(fmt.Sprintf("%d bytes", size), fmt.Sprintf("at most %d, or a higher limit", limits.Bytes))
	}
	gmsh, err := exec.LookPath("gmsh")
	if err != nil {
		return Result{}, wrong("gmsh, which would mesh it, is not installed",
			"gmsh (on Debian: apt-get install gmsh), or the part exported as STL or 3MF")
	}
	dir, err := os.MkdirTemp("", "ramnest-step-")
	if err != nil {
		return Result{}, err
	}
	defer os.RemoveAll(dir)
	in, out := filepath.Join(dir, "part.step"), filepath.Join(dir, "part.stl")
	if err := put(in, io.NewSectionReader(r, 0, size)); err != nil {
		return Result{}, err
	}
	ctx, stop := context.WithTimeout(ctx, patience)
	defer stop()
	said, err := run(ctx, dir, limits.Memory, gmsh, in, "-2", "-format", "stl", "-bin", "-o", out, "-nt", "1", "-v", "1",
		"-setnumber", "Mesh.MeshSizeFromCurvature", strconv.Itoa(chords), "-setnumber", "Mesh.MeshSizeMin", fmt.Sprint(least),
		"-setstring", "Geometry.OCCTargetUnit", "MM")
	switch {
	case errors.Is(ctx.Err(), context.DeadlineExceeded):
		return Result{}, wrong(fmt.Sprintf("is not meshed within %v", patience), "a simpler part, or an STL or 3MF of it")
	case ctx.Err() != nil:
		return Result{}, ctx.Err()
	case err != nil:
		return Result{}, wrong("gmsh cannot mesh it: "+firstLine(said, err), "a part with a body, or an STL or 3MF of it")
	}
	info, err := os.Stat(out)
	if err != nil || info.Size() <= 84 { // the head of an STL and no triangle
		return Result{}, wrong("holds no surface that gmsh could mesh", "a part with a body")
	}
	if info.Size() > limits.Bytes {
		return Result{}, wrong(fmt.Sprintf("becomes a mesh of %d bytes", info.Size()), fmt.Sprintf("at most %d, or a higher limit", limits.Bytes))
	}
	stl, err := os.ReadFile(out)
	if err != nil {
		return Result{}, err
	}
	version, err := run(ctx, dir, limits.Memory, gmsh, "--version")
	if err != nil {
		version = []byte("of unknown version")
	}
	return Result{stl, fmt.Sprintf("STEP by gmsh %s, within 0.1 %% of a radius or 0.02 mm", strings.TrimSpace(string(version)))}, nil
}

func wrong(problem, want string) error {
	return &meshfile.Fault{Format: "STEP", Offset: -1, Problem: problem, Want: want}
}

// run runs a program in a folder that is its home too, within a bound of memory where the
// system has prlimit, and gives what it says.
func run(ctx context.Context, dir string, memory int64, program string, args ...string) ([]byte, error) {
	if limit, err := exec.LookPath("prlimit"); err == nil && memory > 0 {
		args = append([]string{fmt.Sprintf("--as=%d", memory), program}, args...)
		program = limit
	}
	cmd := exec.CommandContext(ctx, program, args...)
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "HOME="+dir, "TMPDIR="+dir)
	cmd.WaitDelay = 2 * time.Second
	return cmd.CombinedOutput()
}

func firstLine(said []byte, err error) string {
	for line := range strings.Lines(string(said)) {
		if line = strings.TrimSpace(line); line != "" {
			return line[:min(len(line), 200)]
		}
	}
	return err.Error()
}

// put writes a file.
func put(name string, from io.Reader) error {
	f, err := os.OpenFile(name, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
	if err != nil {
		return err
	}
	if _, err := io.Copy(f, from); err != nil {
		f.Close()
		return err
	}
	return f.Close()
}
