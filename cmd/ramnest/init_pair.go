package main

import (
	"cmp"
	"fmt"
	"path/filepath"
	"strings"

	"ramnest/cmd/internal/starter"
	"ramnest/fixture/envelope"
)

// fromPair writes the job from two meshes. Nothing is asked: what they do not say is a
// default that the file names.
func (i *initCommand) fromPair(c *console) error {
	switch {
	case i.Lower == "" || i.Upper == "":
		return badUse{"init: --lower and --upper go together: two meshes make a pair"}
	case i.Latch != "":
		return badUse{"init: --latch is for a job without meshes; with --lower and --upper the latches are measured"}
	case i.Units != "" && i.Units != "mm":
		return badUse{"init: --units: in; what is measured is written in mm"}
	}
	lower, err := c.part(i.Lower, envelope.MeshSpec{Unit: i.Unit})
	if err != nil {
		return err
	}
	upper, err := c.part(i.Upper, envelope.MeshSpec{Unit: i.Unit, Up: string(i.Up), Move: i.Move})
	if err != nil {
		return err
	}
	found, err := c.latches(lower, upper)
	if err != nil {
		return err
	}
	if len(found.Latches) == 0 {
		text := "init: no latch was found between the two as they stand"
		for k, d := range found.Doubtful {
			if k < 3 {
				text += fmt.Sprintf("; in doubt at %.2f, %.2f: %s", d.At.X, d.At.Y, d.Reason)
			}
		}
		return badUse{text + "; is the upper part at its seat? --up and --move put it there, and inspect --with shows what is found"}
	}
	p := starter.Pair{Unit: i.Unit, Up: string(i.Up), Move: i.Move, Found: found}
	if p.Lower, err = i.below(i.Lower); err != nil {
		return err
	}
	if p.Upper, err = i.below(i.Upper); err != nil {
		return err
	}
	name := func(file string) string { return strings.TrimSuffix(filepath.Base(file), filepath.Ext(file)) }
	text := starter.FromPair(starter.Answers{
		Number: cmp.Or(i.Number, "JOB-1"), Title: cmp.Or(i.Title, name(i.Upper)+" on "+name(i.Lower)), Date: cmp.Or(i.Date, "2000-01-01"),
		Material: cmp.Or(i.Material, "PA12"), Process: cmp.Or(i.Process, "PBF"), Rate: cmp.Or(i.Rate, "20"),
	}, p)
	if err := i.write(c, text); err != nil {
		return err
	}
	places, look := 0, 0
	for _, l := range found.Latches {
		places, look = places+len(l.At), look+len(l.Ask)
	}
	return c.print(fmt.Sprintf("%s is written: %d latch design%s at %d places, measured in the two meshes; %d in doubt,\n%d to look at. Material, process, build direction and use are defaults. Next:\n\n    ramnest check %s\n    ramnest make %s -o out\n",
		i.File, len(found.Latches), map[bool]string{true: "s"}[len(found.Latches) != 1], places, len(found.Doubtful), look, shellWord(i.File), shellWord(i.File)))
}

// below is a mesh file as the job file names it: from its own folder down.
func (i *initCommand) below(file string) (string, error) {
	name, err := filepath.Rel(filepath.Dir(i.File), file)
	if err != nil || strings.HasPrefix(filepath.ToSlash(name), "../") {
		return "", badUse{fmt.Sprintf("init: %s: lies outside the folder of %s, from which a job reads; write the job above its parts", file,
			i.File)}
	}
	return filepath.ToSlash(name), nil
}
