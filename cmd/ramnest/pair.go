package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"ramnest/fixture/envelope"
	"ramnest/fixture/witness"
)

// A shift is a way in the axes of the assembly, as typed: x,y,z [mm].
type shift [3]float64

// UnmarshalText reads a shift.
func (s *shift) UnmarshalText(b []byte) error {
	words := strings.Split(string(b), ",")
	if len(words) != 3 {
		return fmt.Errorf("%q is no way: want x,y,z in mm, such as 0,0,12.5", b)
	}
	for k, w := range words {
		v, err := strconv.ParseFloat(strings.TrimSpace(w), 64)
		if err != nil || !(v >= -1e4 && v <= 1e4) {
			return fmt.Errorf("%q is no length in mm", w)
		}
		s[k] = v
	}
	return nil
}

// read reads the mesh of a part and places it.
func (c *console) part(file string, spec envelope.MeshSpec) (*envelope.Envelope, error) {
	c.inputs.Add(file)
	root, err := os.OpenRoot(filepath.Dir(file))
	if err != nil {
		return nil, badUse{fmt.Sprintf("%s: its folder cannot be opened: %s", file, innermost(err))}
	}
	defer root.Close()
	spec.File = filepath.Base(file)
	open := c.opener(filepath.Dir(file), root)
	done := c.stage("reading " + spec.File)
	defer done()
	e, err := until(c.ctx, func() (*envelope.Envelope, error) {
		return envelope.BuildWithin(envelope.Spec{Mesh: &spec}, open, c.mesh())
	})
	if err != nil {
		return nil, badUse{fmt.Sprintf("%s: %s", file, err)}
	}
	return e, nil
}

// latches finds what has to give way between two parts as they stand.
func (c *console) latches(lower, upper *envelope.Envelope) (witness.Find, error) {
	done := c.stage("measuring latches")
	defer done()
	return until(c.ctx, func() (witness.Find, error) { return witness.Latches(lower, upper), nil })
}
