package workinstructions

import (
	"image"
	"math"

	"ramnest/force/method"
	"ramnest/force/planar"
)

// A Step is one press step: a lower part or the assembly so far, and an upper
// part that is pushed onto it.
type Step struct {
	Name  string // "rim cap onto housing"
	Lower string // name of the lower part
	SoFar bool   // the lower part is the assembly so far; then Lower is not printed in sentences
	Upper string
	Nest  string // name of the nest, as in the list of tooling
	Anvil string // name of the anvil; may be empty by hand only

	OneWay bool // the lower part goes into the nest in one way only
	AnyWay bool // it goes in turned as well, and that is as good
	Guided bool // posts of the nest guide the anvil
	Pin    Pin  // loose in the nest, that lets on the anvil of this step only

	Decision method.Decision // its chosen method is the one described
	Usable   float64         // share of the press's rated force that is used [N]; 0: not printed
	Lever    float64         // at the lever at the design force [N]; 0: not printed
	Facts    Facts           // what the cautions follow from; method, decision and what Latches, Thrust and Tooling say need not be repeated

	Force   Force
	Latches []Latch
	Hold    Hold         // what the joint is meant to hold
	Thrust  planar.Point // where the ram goes, from the middle between the dead stops, in plan [mm]

	Seat Gap     // the seated height, at the dead stop
	Pull float64 // force that a finished joint must hold when pulled by hand [N]; 0: no pull test

	Pictures Pictures
}

// A Pin tells the anvils of several steps apart.
type Pin struct {
	Hole       int     // number beside its hole at this step; 0: there is no pin
	Wide, Long float64 // [mm]
}

// Force is what pressing takes. Zero means not known, and is not printed.
type Force struct {
	Design       float64      // for which tooling and method are chosen [N]; above 0
	Peak         float64      // at nominal dimensions [N]
	P5, P50, P95 float64      // of the peak over the tolerances [N]
	Worst        float64      // at the worst tolerances [N]
	WorstJams    bool         // at the worst tolerances a joint jams: Worst is a bound, and not printed
	Jammed       float64      // share of assemblies with a joint that jams [1]
	Seat         float64      // still needed at the seat [N]
	Stroke       float64      // from first contact to the seat [mm]
	Work         float64      // down to the seat [mJ]
	Humps        int          // how often the force rises and drops
	Curve        [][2]float64 // lift [mm] and nominal force [N], lift falling
}

// A Latch is a row of the table of latches.
type Latch struct {
	ID, Kind    string
	Count       int
	PeakEach    float64 // [N]
	Strain      float64 // largest [1]
	Permitted   float64 // [1]; 0: none stated
	Permanent   bool    // not meant to come apart
	Separation  float64 // to pull one apart [N]; 0: not known
	SelfLocking bool    // cannot be pulled apart without damage
}

// A Hold is what the finished joint is meant to hold in a straight pull.
type Hold struct {
	Wanted float64 // at the end of its life [N]; 0: none is wanted, and nothing printed
	Now    float64 // P5 right after pressing [N]; 0: not known
	Life   float64 // P5 at the end of its life [N]; no meaning unless Known
	Known  bool
}

// A Picture with what it shows.
type Picture struct {
	Image   image.Image // nil: none
	Caption string      // in words of the job; empty: what the sheet says of such a picture
}

// Pictures of a step; any may be missing.
type Pictures struct {
	Load    Picture // the lower part goes into the nest
	Place   Picture // the upper part is set on
	Anvil   Picture // the anvil is put on
	Press   Picture // the closed stack under the force
	Section Picture // the closed stack, cut
	Plan    Picture // the nest from above with the thrust line

	Cut string // the latch that Section goes through beside the press axis; empty: not stated

	Exploded Picture       // apart along the press axis
	Layers   [4][2]float64 // where anvil, upper part, lower part and nest end to the right in it, and the middle of their height [share of width and height, from the upper left]
}

// offCentre is how far the thrust line lies off the middle between the dead stops before
// the sheet warns of it [mm]: about what the eye cannot be trusted to see (own).
const offCentre = 2

// chosen is the assessment of the chosen method; nil if it is not among those
// assessed.
func (s Step) chosen() *method.Assessment {
	for i, o := range s.Decision.Options {
		if o.Method == s.Decision.Chosen {
			return &s.Decision.Options[i]
		}
	}
	return nil
}

// facts are the Facts with everything taken into account that step and tooling
// say beside them.
func (s Step) facts(tooling []Tool) Facts {
	f := s.Facts
	f.Method = s.Decision.Chosen
	f.Overridden = f.Overridden || s.Decision.Overridden
	f.Anvil = f.Anvil || s.Anvil != ""
	f.EccentricThrust = f.EccentricThrust || math.Hypot(s.Thrust.X, s.Thrust.Y) > offCentre
	f.Jammed = max(f.Jammed, s.Force.Jammed)
	f.WorstForce = max(f.WorstForce, s.Force.Worst, s.Force.Design)
	for _, l := range s.Latches {
		f.Permanent = f.Permanent || l.Permanent
	}
	for _, t := range tooling {
		f.ToolMassKg = max(f.ToolMassKg, t.Mass)
	}
	if a := s.chosen(); a != nil {
		f.Conditional = f.Conditional || a.Verdict == method.Conditional
		if a.Press != nil && f.RatedForce == 0 {
			f.RatedForce = a.Press.Rated
		}
	}
	return f
}
