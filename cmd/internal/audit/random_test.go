package audit

import (
	"context"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"ramnest/force"
	"ramnest/force/planar"
)

var (
	jobs    = flag.Int("jobs", 400, "random assemblies that the audit must have nothing to say of")
	designs = flag.Int("designs", 4, "most latch designs in one of them")
)

// drawn makes random assemblies: one to four designs of every kind, materials and
// processes, from gentle to past what can be joined.
type drawn struct{ *rand.Rand }

func (d drawn) between(lo, hi float64) float64 { return lo + (hi-lo)*d.Float64() }
func (d drawn) deg(lo, hi float64) float64     { return d.between(lo, hi) * math.Pi / 180 }
func (d drawn) of(names ...string) string      { return names[d.IntN(len(names))] }
func (d drawn) yes(share float64) bool         { return d.Float64() < share }

func (d drawn) material() force.MaterialSpec {
	m := force.MaterialSpec{Material: d.of("PA12", "PA11", "ABS", "PLA", "PETG", "PC", "POM", "PP", "TPU", "steel", "aluminium"), Build: d.of("", "along", "across")}
	if d.yes(0.6) {
		m.Friction = new(d.between(0.1, 0.7))
	}
	if d.yes(0.2) {
		m.FrictionSpread = new(d.between(0, 0.4))
	}
	if d.yes(0.2) {
		m.ModulusSpread = new(d.between(0, 0.4))
	}
	return m
}

func (d drawn) latch(id string) force.Latch {
	l := force.Latch{ID: id, Z: 20, Use: d.of("", "permanent", "releasable")}
	for range 1 + d.IntN(6) {
		l.At = append(l.At, planar.Point{X: d.between(-40, 40), Y: d.between(-40, 40)})
	}
	if d.yes(0.3) {
		l.Engage = new(d.between(0.5, 8))
	}
	size := d.between(6, 60)
	switch d.IntN(5) {
	case 0:
		a := &force.Annular{Outside: d.of("upper", "lower"), JointDiameter: size, Undercut: size * d.between(0.003, 0.03), MatingAngle: d.deg(15, 50), ReturnAngle: d.deg(20, 80),
			Land: d.of0(0.5, d.between(0.1, 1)), OuterDiameter: size * d.between(1.04, 1.3), InnerDiameter: size * d.between(0.6, 0.95), EndDistance: d.between(0, 8)}
		if d.yes(0.5) {
			a.EndDistanceInner = new(d.between(0, 9))
		}
		if d.yes(0.3) {
			a.Split, a.Slots, a.SlotWidth, a.SlotDepth = d.of("outer", "inner"), 4+d.IntN(6), d.between(0.8, 2), d.between(8, 16)
			a.EndDistance = d.between(0, 3)
		}
		l.Annular = a
	case 1:
		ball := d.between(3, 14)
		b := &force.Ball{Socket: d.of("upper", "lower"), BallDiameter: ball, MouthDiameter: ball * d.between(0.86, 0.985), OuterDiameter: ball * d.between(1.2, 1.9)}
		b.BallTol, b.MouthTol = new(d.between(0, 0.012)*ball), new(d.between(0, 0.012)*ball)
		if d.yes(0.4) {
			b.EntryAngle = new(d.deg(10, 40))
		}
		if d.yes(0.3) {
			b.Slots, b.SlotWidth, b.SlotDepth = 3+d.IntN(4), 0.6, ball*d.between(0.6, 1.2)
		}
		l.Ball = b
	case 2:
		long := d.between(5, 25)
		l.Cantilever = &force.Cantilever{Flexes: d.of("upper", "lower"), Bends: d.of("outward", "inward"), Undercut: long * d.between(0.01, 0.07), MatingAngle: d.deg(15, 50), ReturnAngle: d.deg(20, 85),
			Land: d.of0(0.5, d.between(0.1, 0.8)), Length: long, Thickness: long * d.between(0.06, 0.15), Width: d.between(2, 8)}
		if d.yes(0.7) {
			l.Cantilever.RootRadius = new(long * d.between(0.02, 0.1))
		}
	case 3:
		bore := d.between(2, 12)
		p := &force.PressFit{Outside: d.of("upper", "lower"), JointDiameter: bore, Interference: d.between(0.01, 0.12), OuterDiameter: bore * d.between(1.6, 3), EngagementLength: bore * d.between(0.6, 3)}
		if d.yes(0.7) {
			p.InterferenceTol = new(d.between(0.005, 0.05))
		}
		if d.yes(0.8) {
			p.LeadInAngle = new(d.deg(5, 40))
		}
		l.PressFit = p
	default:
		bore := d.between(4, 12)
		l.CrushRib = &force.CrushRib{Ribs: d.of("upper", "lower"), JointDiameter: bore, Count: 3 + d.IntN(3), Height: bore * 0.08, Width: bore * 0.1, Crush: bore * d.between(0.01, 0.05), EngagementLength: bore * d.between(0.5, 2), LeadInAngle: new(d.deg(10, 40))}
	}
	return l
}

// of0 is 0, or a value with a probability.
func (d drawn) of0(share, v float64) float64 {
	if d.yes(share) {
		return v
	}
	return 0
}

// assembly draws until one has no faults.
func (d drawn) assembly() force.Assembly {
	for {
		a := force.Assembly{Lower: d.material(), Upper: d.material(), Seed: d.Uint64(), Draws: []int{100, 500, 1000, 1000, 3000}[d.IntN(5)]}
		for k := range 1 + d.IntN(*designs) {
			l := d.latch(fmt.Sprint("latch ", k+1))
			if k > 0 && d.yes(0.3) { // peaks at the lift of another, but for rounding
				l.Engage = a.Latches[0].Engage
			}
			a.Latches = append(a.Latches, l)
		}
		if len(a.Validate()) == 0 {
			return a
		}
	}
}

// TestRandomAssemblies: the audit stops no run that is right.
func TestRandomAssemblies(t *testing.T) {
	d := drawn{newRand()}
	kinds, jam, locked := map[string]int{}, 0, 0
	for i := range *jobs {
		a := d.assembly()
		r, err := force.Analyse(a)
		if err != nil {
			t.Fatal(err)
		}
		found, err := Force(context.Background(), fmt.Sprint("assembly ", i), a, r)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range found {
			t.Error(c)
		}
		for _, l := range a.Latches {
			kinds[l.Kind()]++
		}
		jam, locked = jam+one(r.Jammed > 0), locked+one(r.Locks)
	}
	t.Logf("%d assemblies, kinds %v; %d jam in part, %d lock", *jobs, kinds, jam, locked)
}

func newRand() *rand.Rand { return rand.New(rand.NewPCG(13, 1)) }
