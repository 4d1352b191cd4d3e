package force

import (
	"errors"
	"iter"
	"math"
)

// A Doubt is an assembly made ready to be put together a second time, by somebody who
// doubts a [Result] of it. It hands out what the sum is made of: the force of each place
// in each assembly. How those are added, and which assemblies are drawn, is for the one
// who doubts: by the draws of [Analyse] ([Doubt.Redraw]), or by draws of one's own
// ([Doubt.Under], [Doubt.Place]).
type Doubt struct {
	Designs []Design // in the order of the latches

	trial  *trial
	band   band
	from   *streams
	means  []float64
	shared []shared
	state  state
}

// A Design is what the sizes of one latch design are drawn from. Each plus or minus
// stands for two standard deviations; half of each variance is common to all that is
// made of one part, half is each place's own.
type Design struct {
	ID                   string
	Count                int     // places
	Size                 float64 // undercut or interference as the job writes it [mm]
	FromOuter, FromInner float64 // plus or minus on it by either member [mm]
	Worst                float64 // plus or minus on it, all limits at once [mm]
	Flatten              float64 // that asperities may take off it, evenly from none to all, the same share for all [mm]
	Unheld               float64 // size up to which nothing holds, Flatten included [mm]
	OuterWall, InnerWall float64 // plus or minus on each wall, share of it [1]
	OuterIsLower         bool    // the outer member is of the lower part
}

// Causes are what all latches of one assembly share.
type Causes struct {
	Friction     float64 // [1]
	Lower, Upper float64 // modulus of either part over its nominal one [1]
	Model        float64 // error of the model in units of two standard deviations, plus for more force [1]
}

// Own is what one place has of its own.
type Own struct {
	Size         float64 // [mm] as the job writes it
	Outer, Inner float64 // change of each wall, share of it [1]
}

// NewDoubt makes an assembly ready. It gives the faults of [Analyse].
func NewDoubt(a Assembly) (*Doubt, error) {
	if faults := a.Validate(); len(faults) > 0 {
		errs := make([]error, len(faults))
		for i, f := range faults {
			errs[i] = f
		}
		return nil, errors.Join(errs...)
	}
	lower, _ := a.Shop.Resolve(a.Lower)
	upper, _ := a.Shop.Resolve(a.Upper)
	mu := pairFriction(lower, upper).Value
	joints, counts := make([]joint, len(a.Latches)), make([]int, len(a.Latches))
	b := bandOf(lower, upper)
	for i, l := range a.Latches {
		joints[i], counts[i] = readyJoint(l, lower, upper), len(l.At)
		joints[i].findNodes(mu)
		b.rough = b.rough || joints[i].flatten > 0
	}
	joints = drifting(joints, keepsApart(lower, upper), mu)
	d := &Doubt{band: b, trial: newTrial(joints, counts), from: newStreams(a.Seed, "tolerance", a.Latches),
		means: make([]float64, 2*len(joints)), shared: make([]shared, len(joints))}
	d.from.begin(0)
	for i := range joints {
		j := &joints[i]
		d.Designs = append(d.Designs, Design{ID: a.Latches[i].ID, Count: counts[i], Size: j.size, FromOuter: j.fromOuter, FromInner: j.fromInner,
			Worst: j.worst, Flatten: j.flatten, Unheld: j.hold,
			OuterWall: j.outer.wall, InnerWall: j.inner.wall, OuterIsLower: j.outerIsLower})
	}
	return d, nil
}

// Common gives causes by the shares of assemblies that lie below them, each from 0 to 1
// and friction first; model is a standard normal.
func (d *Doubt) Common(friction, lower, upper, model float64) Causes {
	b := d.band
	even := func(share float64) float64 { return 2*share - 1 }
	z := max(-3, min(3, math.Sqrt2*math.Erfinv(even(friction))))
	return Causes{Friction: b.mu.At(z), Lower: 1 + b.lower*even(lower), Upper: 1 + b.upper*even(upper), Model: model / 2}
}

// Redraw draws the next assembly just as [Analyse] does, the first 512, and gives the
// peak of the sum as it is found there, with the force of each place, design by design.
// places: as many as the designs count together. jams: a joint does, so there is no peak.
func (d *Doubt) Redraw(places []Push) (peak float64, jams bool) {
	c, _ := d.band.draw(d.from.common)
	d.trial.draw(&c, d.from.own, apartShare, d.means)
	for i := range places {
		places[i] = Push{profile: d.trial.profiles[i]}
	}
	if d.trial.jam {
		return 0, true
	}
	return d.trial.peak(), false
}

// Under takes the causes of an assembly, for the places asked for next.
func (d *Doubt) Under(c Causes) {
	of := causes{mu: c.Friction, lower: c.Lower, upper: c.Upper, model: c.Model}
	for i := range d.shared {
		d.shared[i] = d.trial.joints[i].share(&of)
	}
}

// Place gives the force of one place of a design, by its number, under the causes taken.
func (d *Doubt) Place(design int, o Own, p *Push) {
	j := &d.trial.joints[design]
	j.at(&d.shared[design], own{size: o.Size, outer: o.Outer, inner: o.Inner}, &p.profile, &d.state)
	p.Jams = d.state.jam
	p.Overstrained = d.state.outerStrain > j.outer.limit || d.state.innerStrain > j.inner.limit
}

// A Push is the force of one joint at one place over the stroke.
type Push struct {
	profile
	Jams         bool // no force moves it
	Overstrained bool // a member is strained beyond what is permitted
}

// A Stretch is a piece of a [Push]: the force from lift Hi down to Lo [mm], without a
// break between. It may jump at either end, and reach below the seat.
type Stretch struct {
	Hi, Lo float64
	Round  bool // a ball on its lip: the force may have its summit inside
	push   *profile
	piece  *piece  // nil: the largest force, over the range of depth
	shift  float64 // by which it comes later [mm]
}

// Stretches gives the pieces in order of falling lift.
func (p *Push) Stretches() iter.Seq[Stretch] {
	return func(yield func(Stretch) bool) {
		shift := 0.0
		for i := range p.n {
			q := &p.p[i]
			if !yield(Stretch{Hi: q.Hi - shift, Lo: q.Lo - shift, Round: q.lip, push: &p.profile, piece: q, shift: shift}) {
				return
			}
			if i != p.top || p.drift == 0 {
				continue
			}
			if shift = p.drift; !yield(Stretch{Hi: q.Lo, Lo: q.Lo - shift, push: &p.profile}) {
				return
			}
		}
	}
}

// At gives the force within a stretch, both ends included [N].
func (s Stretch) At(lift float64) float64 {
	if s.piece == nil {
		return s.push.most
	}
	return s.push.of(s.piece, lift+s.shift)
}
