package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"

	"ramnest/fixture/envelope"
	"ramnest/fixture/envelope/meshfile"
)

// bounds are what a file may cost; every bound can be raised for one run. See ramnest
// help limits.
type bounds struct {
	MaxJobBytes      int   `group:"Limits" default:"1048576" placeholder:"N" help:"Largest job file in bytes: 1048576."`
	MaxShopBytes     int   `group:"Limits" default:"1048576" placeholder:"N" help:"Largest bench, card, calibration or table of measurements in bytes: 1048576."`
	MaxRows          int   `group:"Limits" default:"2000" placeholder:"N" help:"Most rows of a table of measurements: 2000."`
	MaxPlaces        int   `group:"Limits" default:"2000" placeholder:"N" help:"Most places of the latches of a step: 2000."`
	MaxOutlines      int   `group:"Limits" default:"400" placeholder:"N" help:"Most outlines of a part given by layers: 400."`
	MaxMeshBytes     int64 `group:"Limits" default:"268435456" placeholder:"N" help:"Largest mesh file in bytes: 268435456."`
	MaxTriangles     int   `group:"Limits" default:"5000000" placeholder:"N" help:"Most triangles of a mesh: 5000000."`
	MaxUnpackedBytes int64 `group:"Limits" default:"1073741824" placeholder:"N" help:"Most bytes that a 3MF unpacks to: 1073741824."`
	AllowOutside     bool  `group:"Limits" help:"Read meshes that lie outside the folder of the job file, too."`
	MaxMemory        int64 `group:"Limits" default:"4096" placeholder:"MB" help:"Memory that the program tries to stay under, in MB: 4096."`
}

// mesh gives the bounds on a mesh file.
func (b bounds) mesh() meshfile.Limits {
	return meshfile.Limits{Bytes: b.MaxMeshBytes, Triangles: b.MaxTriangles, Unpacked: b.MaxUnpackedBytes}
}

// Validate judges the bounds, and sets that on memory: kong calls it.
func (b bounds) Validate() error {
	for _, n := range []struct {
		flag string
		v    int64
		most int64
	}{
		{"max-job-bytes", int64(b.MaxJobBytes), 1 << 30}, {"max-shop-bytes", int64(b.MaxShopBytes), 1 << 30},
		{"max-rows", int64(b.MaxRows), 1_000_000}, {"max-places", int64(b.MaxPlaces), 1_000_000},
		{"max-outlines", int64(b.MaxOutlines), 1_000_000},
		{"max-mesh-bytes", b.MaxMeshBytes, 1 << 40}, {"max-triangles", int64(b.MaxTriangles), math.MaxInt32 / 4},
		{"max-unpacked-bytes", b.MaxUnpackedBytes, 1 << 40}, {"max-memory", b.MaxMemory, 1 << 24},
	} {
		if n.v < 1 || n.v > n.most {
			return fmt.Errorf("--%s: %d; is out of range (1 to %d)", n.flag, n.v, n.most)
		}
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
		if c.AllowOutside {
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
		return stoppedReader{c.ctx, f}, info.Size(), f, nil
	}
}
