package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"

	"ramnest/cmd/internal/jobfile"
	"ramnest/cmd/internal/pictures"
	"ramnest/cmd/internal/report"
	"ramnest/export"
	"ramnest/export/picture"
	"ramnest/fixture/envelope"
	"ramnest/fixture/envelope/meshfile"
)

type inspectCommand struct {
	Mesh    string `arg:"" name:"part.stl" help:"Mesh file: STL, 3MF or OBJ."`
	Unit    string `enum:",mm,cm,m,in,ft,um" default:"" placeholder:"UNIT" help:"Unit of the file: mm, cm, m, in, ft or um. Left out: as the file says, else mm."`
	Object  string `placeholder:"NAME" help:"One object of a 3MF."`
	With    string `placeholder:"upper.stl" help:"Its upper part: find and measure the latches between the two, both as stored."`
	Move    shift  `placeholder:"X,Y,Z" help:"With --with: way of the upper part to its seat, mm."`
	Body    []int  `placeholder:"N" help:"Number of a body to look at, of those that do not touch. Left out: all."`
	Up      axis   `enum:",+x,-x,+y,-y,+z,-z" default:"" placeholder:"AXIS" help:"Axis that points up for --circles and the picture. Left out: the suggested one. With --with: that of the upper part; left out: +z."`
	Circles bool   `help:"List round features seen along the axis, ready to paste into a job."`
	Picture string `placeholder:"FILE" help:"Write a picture of the part, standing as suggested, as PNG."`
	Seat    bool   `help:"With --with: rank the poses in which the upper part closes, in place of the latches at one; --picture draws each."`
	JSON    bool   `name:"json" help:"Print all of it as JSON."`
}

// An axis points up. Its plus sign may be left out, as in a job file.
type axis string

// UnmarshalText takes an axis from the command line, which judges it then.
func (a *axis) UnmarshalText(b []byte) error {
	*a = axis(b)
	if word, ok := jobfile.Word(string(b), []string{"+x", "-x", "+y", "-y", "+z", "-z"}); ok {
		*a = axis(word)
	}
	return nil
}

// Help says what is found.
func (inspectCommand) Help() string {
	return `Says what a mesh holds: size, shells, defects, and for each of the six axes that
can point up how well the part would lie in a nest. Ground is level ground on the
underside, where pads can bear; held is how much of the pocket's wall the part
touches over its height; clean is the height up to which it touches all round.

With an upper part, everything that must give way on the way in is found, measured
in sections of the two meshes, and listed; what is doubtful apart, with the reason.
With --seat or --picture the poses in which it closes are ranked instead, by what both
shadows share, guidance, seat and what gives way, and each is drawn.

    ramnest inspect parts/lid.stl
    ramnest inspect parts/lid.stl --circles --up=-z --unit in
    ramnest inspect parts/box.stl --with parts/lid.stl --up=-z --move=0,0,12.5
    ramnest inspect parts/box.stl --with parts/lid.stl --seat --picture poses.png`
}

// Run inspects the mesh.
func (i *inspectCommand) Run(c *console) error {
	if i.With != "" && (i.Seat || i.Picture != "") {
		return i.seat(c)
	}
	if i.With != "" {
		return i.pair(c)
	}
	if i.Seat {
		return badUse{"inspect: --seat needs --with, the upper part"}
	}
	c.inputs.Add(i.Mesh)
	root, err := os.OpenRoot(filepath.Dir(i.Mesh))
	if err != nil {
		return badUse{fmt.Sprintf("%s: its folder cannot be opened: %s", i.Mesh, innermost(err))}
	}
	defer root.Close()
	open := c.opener(filepath.Dir(i.Mesh), root)
	name := filepath.Base(i.Mesh)
	done := c.stage("reading the mesh")
	r, size, file, err := open(name)
	if err != nil {
		done()
		return badUse{fmt.Sprintf("%s: cannot be read: %s", i.Mesh, innermost(err))}
	}
	m, err := until(c.ctx, func() (*meshfile.Mesh, error) {
		defer file.Close()
		return meshfile.Read(r, size, i.Mesh, c.mesh())
	})
	done()
	if err != nil {
		return badUse{err.Error()}
	}
	whole := m
	if object := i.Object; object != "" {
		if whole, err = m.Only(object); err != nil {
			return badUse{fmt.Sprintf("%s: %s", i.Mesh, err)}
		}
	}
	spec := envelope.MeshSpec{File: name, Unit: i.Unit, Object: i.Object, Body: i.Body}
	if len(spec.Body) == 0 {
		for n := range meshfile.Bodies(whole) {
			spec.Body = append(spec.Body, n+1)
		}
	}
	done = c.stage("looking along six axes")
	aspects, err := until(c.ctx, func() ([]envelope.Aspect, error) { return envelope.AspectsWithin(spec, open, c.mesh()) })
	done()
	if err != nil {
		return badUse{fmt.Sprintf("%s: %s", i.Mesh, err)}
	}
	spec.Up = aspects[0].Up
	if i.Up != "" {
		spec.Up = string(i.Up)
	}
	part, err := until(c.ctx, func() (*envelope.Envelope, error) {
		return envelope.BuildWithin(envelope.Spec{Mesh: &spec}, open, c.mesh())
	})
	if err != nil {
		return badUse{fmt.Sprintf("%s: %s", i.Mesh, err)}
	}
	if len(i.Body) > 0 { // the numbers were judged as the part was built
		all := meshfile.Bodies(whole)
		var take []meshfile.Body
		for _, n := range i.Body {
			take = append(take, all[n-1])
		}
		whole = whole.Keep(take...)
	}
	found := report.Inspection{File: i.Mesh, Format: m.Format, Unit: part.Source, Objects: m.Objects, Aspects: aspects, Up: spec.Up}
	found.Fill(whole, part)
	if i.Circles {
		if found.Rounds, err = until(c.ctx, part.Rounds); err != nil {
			return fmt.Errorf("round features: %w", err)
		}
	}
	if i.Picture != "" {
		if err := i.draw(c, part); err != nil {
			return err
		}
	}
	if i.JSON {
		return export.WriteJSON(c.out, found)
	}
	return c.print(report.Inspected(found, i.Circles))
}

// draw writes the picture, whole or not at all.
func (i *inspectCommand) draw(c *console, part *envelope.Envelope) error {
	img, err := pictures.OfPart(c.ctx, part)
	if err != nil {
		return fmt.Errorf("picture: %w", err)
	}
	return c.writeFile(i.Picture, func(w io.Writer) error { return picture.EncodePNG(w, img) })
}

// pair prints the latches between two parts.
func (i *inspectCommand) pair(c *console) error {
	if i.Circles || i.Object != "" {
		return badUse{"inspect: --circles and --object are for one part, without --with"}
	}
	lower, err := c.part(i.Mesh, envelope.MeshSpec{Unit: i.Unit})
	if err != nil {
		return err
	}
	upper, err := c.part(i.With, envelope.MeshSpec{Unit: i.Unit, Up: string(i.Up), Move: i.Move})
	if err != nil {
		return err
	}
	found, err := c.latches(lower, upper)
	if err != nil {
		return err
	}
	if i.JSON {
		return export.WriteJSON(c.out, report.PairOf(i.Mesh, i.With, found))
	}
	return c.print(report.Paired(report.PairOf(i.Mesh, i.With, found)))
}
