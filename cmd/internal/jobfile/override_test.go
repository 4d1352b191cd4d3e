package jobfile

import (
	"testing"
)

const overridden = `job: x
wall: 1
parts:
  - id: cap
    height: 1
    ring: &ring
      undercut: 0.3
  - id: tray
    ring: *ring
  - id: "7"
  - id: v1.2
  - id: twin
  - id: twin
  - process: PBF
    id: end
`

func TestOverrides(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name string
		set  []string
		got  func(sample) any
		want any
	}{
		{"a value", []string{"wall=0.5 in"}, func(s sample) any { return s.Wall }, 12.7},
		{"the last one counts", []string{"wall=2", "wall=3"}, func(s sample) any { return s.Wall }, 3.0},
		{"a new key", []string{"share=0.2"}, func(s sample) any { return s.Share }, 0.2},
		{"an entry by id", []string{"parts.cap.height=4"}, func(s sample) any { return s.Parts[0].Height }, 4.0},
		{"by index", []string{"parts[1].height=4"}, func(s sample) any { return s.Parts[1].Height }, 4.0},
		{"by index with a dot", []string{"parts.1.height=4"}, func(s sample) any { return s.Parts[1].Height }, 4.0},
		{"the id goes first", []string{"parts.7.height=4"}, func(s sample) any { return s.Parts[2].Height }, 4.0},
		{"an id with a dot", []string{"parts.v1.2.height=4"}, func(s sample) any { return s.Parts[3].Height }, 4.0},
		{"a twin by index", []string{"parts[5].height=4"}, func(s sample) any { return s.Parts[5].Height }, 4.0},
		{"only one end of an alias", []string{"parts.tray.ring.undercut=0.7"}, func(s sample) any { return [2]float64{s.Parts[0].Ring.Undercut, s.Parts[1].Ring.Undercut} }, [2]float64{0.3, 0.7}},
		{"only the other end", []string{"parts.cap.ring.undercut=0.7"}, func(s sample) any { return [2]float64{s.Parts[0].Ring.Undercut, s.Parts[1].Ring.Undercut} }, [2]float64{0.7, 0.3}},
		{"a new section", []string{"parts.end.ring.undercut=0.7"}, func(s sample) any { return s.Parts[6].Ring.Undercut }, 0.7},
		{"a list", []string{"sizes=[1, 2 in]"}, func(s sample) any { return s.Sizes[1] }, 50.8},
		{"an entry of a new list", []string{"sizes=[1, 2]", "sizes[1]=5"}, func(s sample) any { return s.Sizes[1] }, 5.0},
		{"a section", []string{"parts.cap.ring={undercut: 9}"}, func(s sample) any { return s.Parts[0].Ring.Undercut }, 9.0},
		{"a text with an equals sign", []string{"job=a=b"}, func(s sample) any { return s.Job }, "a=b"},
		{"a name of the job's choice", []string{"shops.hall.per_hour=5"}, func(s sample) any { return s.Shops["hall"].PerHour }, 5.0},
		{"the units of the job", []string{"units=in"}, func(s sample) any { return s.Wall }, 25.4},
	} {
		s, _, p := decoded(overridden, c.set...)
		if len(p) > 0 {
			t.Errorf("%s, %q: %v", c.name, c.set, p)
		} else if got := c.got(s); got != c.want {
			t.Errorf("%s, %q: got %v, want %v", c.name, c.set, got, c.want)
		}
	}
}

func TestOverrideRefusals(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ set, want string }{
		{"wall", `set wall: is not an override (path=value, such as latches.rim.annular.undercut=0.7)`},
		{"=3", `set =3: is not an override (path=value, such as latches.rim.annular.undercut=0.7)`},
		{"wall=", `set wall=: wall: has no value (a value behind the =)`},
		{"wall=~", `set wall=~: wall: has no value (such as 12.5 mm; units: mm, in, thou, um, cm, m, or no such key)`},
		{"wall=thick", `set wall=thick: wall: thick; is not a number (such as 12.5 mm; units: mm, in, thou, um, cm, m)`},
		{"wall=[1", `set wall=[1: wall: a list in square brackets is not closed, or lacks a comma ([1, 2])`},
		{"wall=*ring", `set wall=*ring: wall: an alias (*) to an anchor (&) that is not defined above it (the value written out)`},
		{"wal=3", `set wal=3: wal: is not a known key (nearest: wall)`},
		{"parts.cpa.height=3", `set parts.cpa.height=3: parts.cpa.height: cpa; names no entry of the list (7 entries, by id or by index from 0; nearest: cap)`},
		{"parts[9].height=3", `set parts[9].height=3: parts[9].height: [9]; names no entry of the list (7 entries, by id or by index from 0)`},
		{"parts.twin.height=3", `set parts.twin.height=3: parts.twin.height: twin; is the id of 2 entries (an index such as [0])`},
		{"wall.x=3", `set wall.x=3: wall.x: has nothing below 1 (the path of a key in the file)`},
		{".wall=3", `set .wall=3: .wall: is not a path (such as latches.rim.annular.undercut)`},
		{"parts.cap.ring.land=-", `set parts.cap.ring.land=-: parts[0].ring.land: a list of 1; is not a length (such as 12.5 mm; units: mm, in, thou, um, cm, m)`},
	} {
		if _, _, p := decoded(overridden, c.set); p.Error() != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.set, p.Error(), c.want)
		}
	}
}

// An override does not hide a fault elsewhere, and mends one where it stands.
func TestOverrideMendsAFault(t *testing.T) {
	t.Parallel()
	if _, _, p := decoded("job: x\nwall: thick\n"); len(p) != 1 {
		t.Fatalf("got %v, want 1 problem", p)
	}
	if s, _, p := decoded("job: x\nwall: thick\n", "wall=2"); len(p) != 0 || s.Wall != 2 {
		t.Errorf("got wall %v, %v, want 2 and no problem", s.Wall, p)
	}
}
