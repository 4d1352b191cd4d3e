package report

import (
	"ramnest/cmd/internal/solve"
	"ramnest/fixture/envelope"
	"ramnest/force"
)

// A Step is one press step.
type Step struct {
	Name    string   `json:"name"`
	Lower   Part     `json:"lower"`
	Upper   Part     `json:"upper"`
	Contact *Contact `json:"contact,omitzero"` // of the seated parts; none if an open mesh hides it
	Force   Force    `json:"force"`
	Method  Method   `json:"method"`
	Cycle   float64  `json:"cycle_s,omitzero"`
	Source  string   `json:"cycle_source,omitzero"`

	Acceptance *Acceptance `json:"acceptance,omitzero"` // once there is tooling
}

// A Part is one of the two parts, as it was read.
type Part struct {
	Name     string     `json:"name"`
	Source   string     `json:"source"` // outlines, or the mesh file
	Min      [3]float64 `json:"min_mm"`
	Max      [3]float64 `json:"max_mm"`
	Material Material   `json:"material"`
}

// A Material is every figure of a material, with the mark of its source.
type Material struct {
	Name    string   `json:"name"`
	Process string   `json:"process"`
	Build   string   `json:"build,omitzero"`
	Finish  string   `json:"finish,omitzero"`
	Source  string   `json:"source,omitzero"`
	Figures []Figure `json:"figures"`
}

// A Figure is one figure of a material.
type Figure struct {
	Name  string  `json:"name"`
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`
	Mark  string  `json:"mark"` // read, memory, common practice, own, job or shop
}

// A Force is what a step takes. A figure that is left out does not exist: of the
// nominal ones, if a latch locks, of the others, if so many assemblies jam.
type Force struct {
	Peak       float64      `json:"nominal_peak_n,omitzero"`
	PeakLift   float64      `json:"peak_lift_mm,omitzero"`
	PeakStack  float64      `json:"peak_if_all_at_one_lift_n,omitzero"`
	Design     float64      `json:"design_n,omitzero"`
	P5         float64      `json:"p5_n,omitzero"`
	P50        float64      `json:"p50_n,omitzero"`
	P95        float64      `json:"p95_n,omitzero"`
	P95StdErr  float64      `json:"p95_standard_error_n,omitzero"`
	Worst      float64      `json:"worst_n,omitzero"`
	Work       float64      `json:"work_mj,omitzero"`
	WorkP95    float64      `json:"work_p95_mj,omitzero"`
	Seat       float64      `json:"at_seat_n"`
	Springback float64      `json:"springback_n"`
	Stroke     float64      `json:"stroke_mm"`
	Humps      int          `json:"humps"`
	Tilted     float64      `json:"tilted_in_by_hand_n,omitzero"`     // both hands, by a model of our own; never what a press needs
	TiltedFar  float64      `json:"tilted_in_at_far_edge_n,omitzero"` // the hand at the far edge, at most
	Thrust     [2]float64   `json:"thrust_line_mm"`
	Wander     float64      `json:"thrust_wander_mm"`
	Tilt       float64      `json:"tilt_moment_n_mm"`
	Loose      float64      `json:"share_loose"`
	Over       float64      `json:"share_overstrained"`
	Jammed     float64      `json:"share_jammed"`
	Locks      bool         `json:"locks,omitzero"`           // a latch, at its nominal friction
	NoP95      bool         `json:"no_p95,omitzero"`          // too many jam
	WorstJams  bool         `json:"worst_case_jams,omitzero"` // then there is no worst_n
	HoldWanted float64      `json:"hold_wanted_n,omitzero"`
	HoldLatch  string       `json:"hold_latch,omitzero"` // that holds the step: see the hold of it
	LifeLatch  string       `json:"hold_end_of_life_latch,omitzero"`
	Spread     []Share      `json:"spread"`
	Curve      [][2]float64 `json:"curve_lift_mm_force_n"`
	Latches    []Latch      `json:"latches"`

	// Replaced are the figures of the file that the shop's calibration replaced; in the
	// report of a whole job they stand under calibration.
	Replaced    []Changed `json:"replaced_by_calibration,omitzero"`
	Calibration string    `json:"calibration,omitzero"` // that replaced them
}

// A Share is the part of the spread that one input explains.
type Share struct {
	Input string  `json:"input"`
	Share float64 `json:"share"`
}

// A Latch is one latch design with the formulas behind it.
type Latch struct {
	ID          string     `json:"id"`
	Kind        string     `json:"kind"`
	Count       int        `json:"count"`
	PeakEach    float64    `json:"peak_each_n"`
	PeakAll     float64    `json:"peak_all_n"`
	PeakLift    float64    `json:"peak_lift_mm"`
	Work        float64    `json:"work_mj"`
	Seat        float64    `json:"at_seat_n"`
	Stroke      float64    `json:"stroke_mm"`
	Home        float64    `json:"home_below_lift_mm"`
	HomeLeast   float64    `json:"home_below_lift_worst_mm"` // over sizes and friction
	Transverse  float64    `json:"transverse_each_n"`
	Strain      float64    `json:"strain"`
	StrainOf    string     `json:"strain_of"`
	Permitted   float64    `json:"strain_permitted"`
	Elastic     string     `json:"elastic_part"`
	Separation  float64    `json:"separation_each_n"`
	SelfLocking bool       `json:"self_locking"`  // then separation has no meaning
	Hold        *Hold      `json:"hold,omitzero"` // of all of them; none if too many jam
	Formulas    []string   `json:"formula_ids"`
	Jammed      float64    `json:"share_jammed"`
	Locks       bool       `json:"locks,omitzero"`      // at its nominal friction; then no figure of its force has a meaning
	LocksFrom   float64    `json:"locks_from_friction"` // at nominal size; 0: at none that materials have
	Explained   []FormLine `json:"explained"`
}

// A FormLine is one step of a computation; one without an id states an input.
type FormLine struct {
	ID      string  `json:"id,omitzero"`
	Symbol  string  `json:"symbol"`
	Value   float64 `json:"value"`
	Unit    string  `json:"unit"`
	Formula string  `json:"formula,omitzero"`
	Numbers string  `json:"numbers,omitzero"`
	Source  string  `json:"source"`
	Mark    string  `json:"mark"`
}

func stepOf(u units, st *solve.Step) Step {
	return Step{
		Name:  st.Name,
		Lower: partOf(st.Lower.Name, st.LowerEnvelope, st.LowerMaterial), Upper: partOf(st.Upper.Name, st.UpperEnvelope, st.UpperMaterial),
		Contact: contactOf(st.Contact),
		Force:   forceOf(st), Method: methodOf(u, st),
		Cycle: st.Cycle.Seconds, Source: st.Cycle.Source,
	}
}

func partOf(name string, e *envelope.Envelope, m force.Material) Part {
	return Part{Name: name, Source: e.Source, Min: e.Min, Max: e.Max, Material: materialOf(m)}
}

func materialOf(m force.Material) Material {
	out := Material{Name: m.Name, Process: m.Process, Build: m.Build, Finish: m.Finish, Source: m.Source}
	add := func(name, unit string, f force.Figure) {
		if f.Mark != "" {
			out.Figures = append(out.Figures, Figure{name, f.Value, unit, string(f.Mark)})
		}
	}
	add("modulus", "MPa", m.Modulus)
	add("poisson", "1", m.Poisson)
	add("friction", "1", m.Friction.Figure())
	add("friction on steel", "1", m.FrictionSteel.Figure())
	add("strain once", "1", m.StrainOnce)
	add("strain once across the layers", "1", m.StrainOnceZ)
	add("strain repeated", "1", m.StrainRepeated)
	add("strain repeated across the layers", "1", m.StrainRepeatedZ)
	add("density", "g/cm3", m.Density)
	add("strength", "MPa", m.Strength)
	add("strength across the layers", "MPa", m.StrengthZ)
	if m.SecantZero.Value != 0 {
		add("strain at which the secant line meets zero", "1", m.SecantZero)
	}
	if m.Straight.Value != 0 {
		add("strain up to which stress is in proportion", "1", m.Straight)
	}
	add("tolerance at least", "mm", m.LeastTolerance())
	add("change of a small hole's diameter", "mm", m.HoleBias)
	low, high, mark := m.Roughness()
	add("roughness Rz, least", "mm", force.Figure{Value: low, Mark: mark})
	add("roughness Rz, most", "mm", force.Figure{Value: high, Mark: mark})
	add("tolerance, share of the dimension", "1", m.ToleranceShare)
	add("spread of the friction", "1", m.FrictionSpread)
	add("spread of the modulus", "1", m.ModulusSpread)
	return out
}

// curvePoints is about how many places of the curve the report has between its
// breaks.
const curvePoints = 40

func forceOf(st *solve.Step) Force {
	r := st.Result
	f := Force{
		Peak: r.Peak, PeakLift: r.PeakLift, PeakStack: r.PeakStack, Design: r.Design,
		P5: r.P5, P50: r.P50, P95: r.P95, P95StdErr: r.P95StdErr, Worst: r.Worst,
		Work: r.Work, WorkP95: r.WorkP95, Seat: r.SeatForce, Springback: r.Springback, Stroke: r.Stroke, Humps: r.Humps, Tilted: r.Tilted,
		TiltedFar: r.TiltedFar,
		Thrust:    [2]float64{r.Thrust.X, r.Thrust.Y}, Wander: r.ThrustWander, Tilt: r.TiltMoment,
		Loose: r.Loose, Over: r.Overstrained, Jammed: r.Jammed, Locks: r.Locks, NoP95: r.NoP95, WorstJams: r.WorstJams,
		Spread: []Share{}, Curve: append([][2]float64{}, r.Curve.Points(curvePoints)...),
	}
	if r.WorstJams {
		f.Worst = 0
	}
	f.HoldWanted, f.HoldLatch, f.LifeLatch = r.HoldWanted, latchAt(r, r.HoldLatch), latchAt(r, r.HoldLifeLatch)
	for _, s := range r.Spread {
		f.Spread = append(f.Spread, Share{s.Input, s.Share})
	}
	for _, l := range r.Latches {
		q := Latch{
			ID: l.ID, Kind: l.Kind, Count: l.Count, PeakEach: l.PeakEach, PeakAll: l.PeakAll, PeakLift: l.PeakLift,
			Work: l.Work, Seat: l.SeatForce, Stroke: l.Stroke, Home: l.Home, HomeLeast: l.HomeLeast, Transverse: l.Transverse,
			Strain: l.Strain, StrainOf: l.StrainOf, Permitted: l.Permitted, Elastic: l.ElasticPart,
			Separation: l.Separation, SelfLocking: l.SelfLocking, Jammed: l.Jammed, Locks: l.Locks, LocksFrom: l.LocksFrom, Formulas: l.Formulas,
		}
		if r.HoldLatch >= 0 {
			q.Hold = holdOf(l.Hold)
		}
		for _, e := range force.Explain(st.Assembly, l.ID) {
			q.Explained = append(q.Explained, FormLine{e.ID, e.Symbol, e.Value, e.Unit, e.Formula, e.Numbers, e.Source, string(e.Mark)})
		}
		f.Latches = append(f.Latches, q)
	}
	return f
}
