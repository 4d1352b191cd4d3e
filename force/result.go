package force

import (
	"ramnest/force/planar"
	"ramnest/force/warning"
)

// A Swing is the room a latch needs beside it while the parts come together.
type Swing struct {
	Part    string         // whose material moves: lower or upper
	Outward float64        // how far its outer surface moves outward there [mm]
	Inward  float64        // how far an arm moves inward there [mm]
	Radius  float64        // outer radius of the moving ring [mm]; 0 if it is no ring
	Width   float64        // of a moving arm, across its direction [mm]; 0 for a ring
	Toward  []planar.Point // unit direction of "outward" in the plan at each place of an arm
	ZLow    float64        // [mm]
	ZHigh   float64        // [mm]
}

// A LatchResult is what one latch design does.
type LatchResult struct {
	ID, Kind    string
	Count       int
	PeakEach    float64 // largest force of one joint [N]
	PeakAll     float64 // of all of them [N]
	PeakLift    float64 // lift at that peak [mm]
	Work        float64 // of all of them down to the seat [mJ]
	SeatForce   float64 // of all of them, still needed at the seat [N]
	Stroke      float64 // lift from first contact to home [mm]
	Home        float64 // lift at which it has dropped [mm]; 0: it takes force to the seat
	HomeLeast   float64 // the least of that over sizes and friction, see the acceptance [mm]
	Transverse  float64 // force of one joint across the axis at full size, its axial force acting [N]; pressed: over the whole engaged length
	Strain      float64 // of the part nearest its limit [1]
	StrainOf    string  // what strain that is
	Permitted   float64 // what that part may take [1]
	ElasticPart string  // lower, upper or both: who gives way
	Separation  float64 // force to pull one joint apart [N]; 0 and no meaning if SelfLocking
	SelfLocking bool

	// Jammed is the share of assemblies in which such a joint jams [1], see
	// [JamsForP95]. Locks says that it does at the nominal size and friction: then
	// PeakEach, PeakAll, PeakLift, Work and SeatForce are 0 and the curve is empty, for
	// no force joins it. LocksFrom is the friction from which on the nominal joint
	// locks [1]; 0: at none that a pair of parts can have.
	Jammed    float64
	Locks     bool
	LocksFrom float64

	// Separation with size, walls, friction, moduli and model all at the end that holds
	// least, or most. Low 0: it may be loose, or locks even so. High 0: it may lock.
	SeparationLow, SeparationHigh float64 // [N]

	Hold Hold // in a straight pull, now and at the end of life

	Humps    int
	Curve    Curve // of one joint
	Swing    Swing
	Formulas []string // ids of the formulas used, see [Explain]
	Warnings []warning.Warning
}

// A Result is what the whole press step does.
type Result struct {
	Latches    []LatchResult
	Curve      Curve   // nominal; where a latch locks at its nominal friction, it ends at the first contact of that
	Locks      bool    // a latch locks at its nominal friction
	Peak       float64 // nominal [N]; 0 if a latch locks, as work, force at the seat and humps
	PeakLift   float64 // [mm]
	PeakStack  float64 // if every latch peaked at one lift [N]
	Work       float64 // [mJ]
	SeatForce  float64 // still needed at the seat [N]
	Springback float64 // with which the parts rise again if the ram lets go at the seat [N]
	Stroke     float64 // [mm]
	Humps      int

	Thrust       planar.Point  // force-weighted centre at the peak; the mean latch position if a latch locks
	TiltMoment   float64       // about the mean latch position at the peak [N mm]
	ThrustWander float64       // how far the thrust line moves from Thrust along the stroke [mm]
	ThrustPath   []ThrustPoint // along the stroke, both sides of every break

	// Of the peak of the total over the draws [N], Design being P95. An assembly with a
	// joint that jams has no force: it counts as above any other, so that P5, P50 or
	// P95 is 0, and none, if more than 95, 50 or 5 % jam. NoP95 says so of P95 and
	// Design, and is set too where a latch locks at its nominal friction. Worst is with
	// everything at its bad end at once; if that jams, WorstJams is set, and Worst is no
	// force but the bound with the flank at 85 deg: none that goes together needs more.
	P5, P50, P95, Worst, Design float64
	NoP95, WorstJams            bool
	P95StdErr                   float64     // standard error of P95 [N]; 0: not known, too many of the heaviest jam
	Tilted, TiltedFar           float64     // by hand, one closed ring rolled in from one edge: of both hands together, and of the one at the far edge, beside Design [N]; own model, see [TiltedEntry]; 0: does not apply
	WorkP95                     float64     // of the work over the draws [mJ]; 0 without P95
	Band                        []BandPoint // of the force along the stroke, in order of falling lift; ends where P95 does
	Loose, Overstrained, Jammed float64     // share of assemblies with such a latch [1]
	Spread                      []Share     // what drives the spread of those that go together, largest first

	// The latch that holds the most holds the step: latches of other designs need not
	// resist at the same lift, so they are not added. HoldLatch is its place in Latches,
	// that of the end of life HoldLifeLatch; -1: none, too many jam, or it is not known.
	HoldLatch, HoldLifeLatch int
	HoldWanted               float64 // at the end of life [N]; 0: none stated

	Warnings []warning.Warning
}

// A ThrustPoint is the thrust line at one lift.
type ThrustPoint struct {
	Lift  float64      // [mm]
	Force float64      // [N]
	At    planar.Point // force-weighted centre [mm]
}

// A Share is the part of the variance of the peak that one input alone
// explains, by its first order [1].
type Share struct {
	Input string
	Share float64
}
