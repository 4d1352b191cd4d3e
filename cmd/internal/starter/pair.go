package starter

import (
	"fmt"
	"math"
	"reflect"
	"strings"

	"ramnest/fixture/witness"
	"ramnest/force"
	"ramnest/force/planar"
)

// A Pair is two part meshes as they stand when seated, and what was found between them.
type Pair struct {
	Lower, Upper string     // mesh files, below the folder of the job
	Unit         string     // of both; empty: as the files say
	Up           string     // axis of the upper file that points up; empty: +z
	Move         [3]float64 // of the upper part [mm]
	Found        witness.Find
}

const pairHead = `# Written from two meshes. Figures marked "measured" were read off them, with how far they
# may be off; places in doubt stand at the end of the latches.
#
# NO MESH CAN SAY, so these are defaults: put in yours.
#   job, title, date, quantity and rate
#   material, process and build direction of both parts (and so friction and tolerances)
#   use of each latch: permanent, or releasable
# and what of this is left out is assumed, as check lists it: tolerances by process,
# friction by material, a sharp root where no fillet is seen, the bench.
#
#     ramnest check THIS FILE          what is wrong, or what is assumed
#     ramnest make THIS FILE -o out    nest, anvil, work instruction, quote, report

job: {number}   # default
title: {title}
revision: A
date: {date}    # default: the tool reads no clock
units: mm

rate_per_hour: {rate}    # default
hours_per_shift: 1   # default

`

// FromPair gives the job file of a pair.
func FromPair(a Answers, p Pair) []byte {
	var b strings.Builder
	b.WriteString(strings.NewReplacer("{number}", quoted(a.Number), "{title}", quoted(a.Title), "{date}", quoted(a.Date), "{rate}",
		a.Rate).Replace(pairHead))
	for _, part := range []struct{ key, file string }{{"lower", p.Lower}, {"upper", p.Upper}} {
		fmt.Fprintf(&b, "%s:\n  name: %s\n  material: %s   # default\n  process: %s       # default\n  build: along      # default: or across; no mesh can say\n", part.key, quoted(nameOf(part.file)), quoted(a.Material), quoted(a.Process))
		fmt.Fprintf(&b, "  envelope:\n    mesh:\n      file: %s\n", quoted(part.file))
		if p.Unit != "" {
			fmt.Fprintf(&b, "      unit: %s\n", p.Unit)
		}
		if part.key == "upper" {
			if p.Up != "" {
				fmt.Fprintf(&b, "      up: %s\n", p.Up)
			}
			if p.Move != ([3]float64{}) {
				fmt.Fprintf(&b, "      move: [%s, %s, %s]\n", short(p.Move[0]), short(p.Move[1]), short(p.Move[2]))
			}
		}
		b.WriteString("\n")
	}
	b.WriteString("latches:\n")
	for i, l := range p.Found.Latches {
		writeLatch(&b, fmt.Sprintf("%s-%d", l.Kind, i+1), l)
	}
	if len(p.Found.Doubtful) > 0 {
		b.WriteString("  # In doubt, so not among the latches:\n")
		for _, d := range p.Found.Doubtful {
			fmt.Fprintf(&b, "  #   [%s, %s], %.2f mm2: %s\n", short(d.At.X), short(d.At.Y), d.Area, d.Reason)
		}
	}
	return []byte(b.String())
}

// nameOf is the name of a part: its file without folder and ending.
func nameOf(file string) string {
	name := file[strings.LastIndexAny(file, `/\`)+1:]
	if k := strings.LastIndex(name, "."); k > 0 {
		name = name[:k]
	}
	return name
}

// short is a length to the micron, without zeros at its end.
func short(v float64) string {
	s := strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.3f", v), "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

// writeLatch writes one entry of the list of latches.
func writeLatch(b *strings.Builder, id string, l witness.Latch) {
	line := func(indent int, format string, v ...any) {
		b.WriteString(strings.Repeat(" ", indent) + fmt.Sprintf(format, v...) + "\n")
	}
	for _, a := range l.Ask {
		line(2, "# LOOK: %s", a)
	}
	line(2, "- id: %s", id)
	line(4, "at:               # measured")
	for _, p := range l.At {
		line(6, "- [%s, %s]", short(p.X), short(p.Y))
	}
	line(4, "z: %s          # measured", short(l.Z))
	line(4, "use: permanent    # default")
	line(4, "%s:", l.Kind)
	for _, w := range words(l) {
		line(6, "%s", w)
	}
	known := keysOf(l.Kind)
	// What two diameters say is not written a second way.
	written := map[string]bool{"interference": l.Kind == "press_fit", "bead_diameter": l.Kind == "annular"}
	var beside []string
	for _, f := range l.Figures {
		v, off, unit := f.Value, f.Off, "mm"
		if f.Angle {
			v, off, unit = v*180/math.Pi, off*180/math.Pi, "deg"
		}
		switch {
		case !known[f.Name], written[f.Name]:
			beside = append(beside, fmt.Sprintf("%s %s %s", f.Name, short(v), unit))
		case short(v) != "0":
			line(6, "%s: %s   # measured, +- %.3f %s", f.Name, short(v), off, unit)
		}
	}
	if len(beside) > 0 {
		line(6, "# measured besides: %s", strings.Join(beside, ", "))
	}
	b.WriteString("\n")
}

// words are the keys of a latch that are no figures.
func words(l witness.Latch) (out []string) {
	add := func(key, value string) {
		if value != "" {
			out = append(out, key+": "+value)
		}
	}
	switch l.Kind {
	case "cantilever":
		add("flexes", l.Part+"   # measured: the softer of the two")
		add("bends", l.Bends)
		if len(l.Toward) > 0 {
			add("toward", places(l.Toward))
		}
		add("lead_in", l.LeadIn)
		if l.Section != "rectangle" {
			add("section", l.Section)
			add("tension", l.Tension)
		}
	case "ball":
		add("socket", l.Part)
	case "crush_rib":
		add("ribs", l.Part)
		add("rib_count", fmt.Sprint(l.Ribs))
	default:
		add("outside", l.Part)
		if l.Slots > 0 {
			add("split", l.Split)
		}
	}
	if l.Slots > 0 {
		add("slots", fmt.Sprint(l.Slots))
	}
	return out
}

// places is a list of directions.
func places(of []planar.Point) string {
	var out []string
	for _, p := range of {
		out = append(out, fmt.Sprintf("[%s, %s]", short(p.X), short(p.Y)))
	}
	return "[" + strings.Join(out, ", ") + "]"
}

// keysOf are the keys of a kind of latch in the job file.
func keysOf(kind string) map[string]bool {
	out := map[string]bool{}
	t := reflect.TypeFor[force.Latch]()
	for i := range t.NumField() {
		if t.Field(i).Tag.Get("yaml") != kind {
			continue
		}
		k := t.Field(i).Type.Elem()
		for j := range k.NumField() {
			out[k.Field(j).Tag.Get("yaml")] = true
		}
	}
	return out
}
