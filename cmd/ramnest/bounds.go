package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"maps"
	"math"
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strconv"
	"strings"
	"time"

	"ramnest/cmd/internal/stepmesh"
	"ramnest/fixture/envelope"
	"ramnest/fixture/envelope/meshfile"
)

// bounds are what a file may cost. Memory and time have a flag; the others are raised
// together, by one variable of the environment. See ramnest help limits.
type bounds struct {
	MaxMemory int64         `group:"Limits" default:"4096" placeholder:"MB" help:"Memory that the program tries to stay under, in MB: 4096."`
	MaxTime   time.Duration `group:"Limits" placeholder:"TIME" help:"Stop after so long, such as 30s, and write nothing. The other limits: ramnest help limits."`

	jobBytes, shopBytes, rows, places, outlines, triangles int
	meshBytes, unpackedBytes                               int64
	outside                                                bool // meshes outside the folder of the job are read too
}

// limitsVariable names the variable of the environment that raises bounds:
// "triangles=8000000 outside=yes".
const limitsVariable = "RAMNEST_LIMITS"

// standing are the bounds when nobody raises one.
func standing() bounds {
	return bounds{
		jobBytes: 1 << 20, shopBytes: 1 << 20, rows: 2000, places: 2000, outlines: 400,
		meshBytes: 256 << 20, triangles: 5_000_000, unpackedBytes: 1 << 30,
	}
}

// raise sets bounds as a text of name=value, parted by spaces or commas, says.
func (b *bounds) raise(text string) error {
	ints := map[string]struct {
		to   *int
		most int
	}{
		"job-bytes": {&b.jobBytes, 1 << 30}, "shop-bytes": {&b.shopBytes, 1 << 30}, "rows": {&b.rows, 1_000_000},
		"places": {&b.places, 1_000_000}, "outlines": {&b.outlines, 1_000_000}, "triangles": {&b.triangles, math.MaxInt32 / 4},
	}
	longs := map[string]*int64{"mesh-bytes": &b.meshBytes, "unpacked-bytes": &b.unpackedBytes}
	for _, item := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' }) {
		name, value, _ := strings.Cut(item, "=")
		n, err := strconv.ParseInt(value, 10, 64)
		most := int64(1 << 40)
		i, isInt := ints[name]
		long, isLong := longs[name]
		if isInt {
			most = int64(i.most)
		}
		switch {
		case name == "outside" && (value == "yes" || value == "no"):
			b.outside = value == "yes"
		case name == "outside":
			return fmt.Errorf("%s: outside=%s; is not known (yes or no)", limitsVariable, value)
		case !isInt && !isLong:
			names := append(slices.Sorted(maps.Keys(ints)), slices.Sorted(maps.Keys(longs))...)
			return fmt.Errorf("%s: %s; is no limit (one of %s, outside)", limitsVariable, item, strings.Join(names, ", "))
		case err != nil || n < 1 || n > most:
			return fmt.Errorf("%s: %s; is out of range (1 to %d)", limitsVariable, item, most)
		case isInt:
			*i.to = int(n)
		default:
			*long = n
		}
	}
	return nil
}

// mesh gives the bounds on a mesh file.
func (b bounds) mesh() meshfile.Limits {
	return meshfile.Limits{Bytes: b.meshBytes, Triangles: b.triangles, Unpacked: b.unpackedBytes}
}

// Validate judges the bounds of the command line: kong calls it.
func (b bounds) Validate() error {
	const mostMemory = 1 << 24 // MB
	if b.MaxMemory < 1 || b.MaxMemory > mostMemory {
		return fmt.Errorf("--max-memory: %d; is out of range (1 to %d)", b.MaxMemory, mostMemory)
	}
	if b.MaxTime < 0 {
		return fmt.Errorf("--max-time: %v; is out of range (above 0)", b.MaxTime)
	}
	return nil
}

// AfterApply sets the bound on memory of the process.
func (b bounds) AfterApply() error {
	debug.SetMemoryLimit(b.MaxMemory << 20)
	return nil
}

// stoppedReader reads until a context ends.
type stoppedReader struct {
	ctx context.Context
	r   io.ReaderAt
}

// ReadAt is that of the reader, or the error of the context.
func (s stoppedReader) ReadAt(p []byte, at int64) (int, error) {
	if err := s.ctx.Err(); err != nil {
		return 0, err
	}
	return s.r.ReadAt(p, at)
}

// opener opens meshes that the job file in a folder names: those below the folder, also
// behind symbolic links, and no others, unless the bounds allow it.
func (c *console) opener(folder string, root *os.Root) envelope.Opener {
	return func(name string) (io.ReaderAt, int64, io.Closer, error) {
		name = filepath.FromSlash(name)
		stat, open := root.Stat, root.Open
		if c.outside {
			if !filepath.IsAbs(name) {
				name = filepath.Join(folder, name)
			}
			stat, open = os.Stat, os.Open
		}
		info, err := stat(name) // a pipe must not be opened: that would wait for a writer
		if slashed := strings.ReplaceAll(name, `\`, "/"); errors.Is(err, os.ErrNotExist) && slashed != name {
			name = slashed // written on Windows
			info, err = stat(name)
		}
		if err != nil {
			return nil, 0, nil, err
		}
		if !info.Mode().IsRegular() {
			return nil, 0, nil, errors.New("is not a plain file")
		}
		f, err := open(name)
		if err != nil {
			return nil, 0, nil, err
		}
		if info, err = f.Stat(); err != nil {
			f.Close()
			return nil, 0, nil, err
		}
		if stepmesh.Is(f) {
			defer f.Close()
			m, err := c.meshed(f, info)
			if err != nil {
				return nil, 0, nil, err
			}
			return m, m.Size(), io.NopCloser(m), nil
		}
		return stoppedReader{c.ctx, f}, info.Size(), f, nil
	}
}

// A meshedStep is a STEP file as triangles; it tells how it came to them.
type meshedStep struct {
	*bytes.Reader
	how string
}

// Origin is where the triangles come from.
func (m meshedStep) Origin() string { return m.how }

// meshed meshes a STEP file, once in a run.
func (c *console) meshed(f *os.File, info os.FileInfo) (meshedStep, error) {
	c.stepping.Lock()
	defer c.stepping.Unlock()
	for _, s := range c.steps {
		if os.SameFile(s.file, info) {
			return meshedStep{bytes.NewReader(s.mesh.STL), s.mesh.How}, nil
		}
	}
	done := c.stage("meshing " + info.Name())
	defer done()
	m, err := stepmesh.Mesh(c.ctx, f, info.Size(), stepmesh.Limits{Bytes: c.meshBytes, Memory: c.MaxMemory << 20})
	if err != nil {
		return meshedStep{}, err
	}
	c.steps = append(c.steps, stepped{info, m})
	return meshedStep{bytes.NewReader(m.STL), m.How}, nil
}

// A stepped file has been meshed in this run.
type stepped struct {
	file os.FileInfo
	mesh stepmesh.Result
}
