package force

import (
	"math"
	"slices"

	"ramnest/force/fault"
	"ramnest/force/planar"
	"ramnest/force/unit"
)

// A Torsional is a hook on a lever that turns on bars, which twist and spring back. A
// second lever beyond the bars opens it where it is pressed.
type Torsional struct {
	Flexes string         `yaml:"flexes" oneof:"lower upper" required:"true"`   // the part whose bars twist
	Bends  string         `yaml:"bends" oneof:"outward inward" required:"true"` // the hook moves away from the middle of the part or towards it
	Toward []planar.Point `yaml:"toward" unit:"none"`                           // plan direction of "outward", one for all places or one each; left out: away from the plan's origin

	Undercut    float64  `yaml:"undercut" unit:"mm" required:"true"`      // how far the hook must move aside [mm]
	UndercutTol *float64 `yaml:"undercut_tol" unit:"mm"`                  // plus or minus [mm]; left out: both parts' process tolerance
	MatingAngle float64  `yaml:"mating_angle" unit:"deg" required:"true"` // of the lead-in flank to the press axis [rad]
	ReturnAngle float64  `yaml:"return_angle" unit:"deg" required:"true"` // of the holding flank to the press axis [rad]
	Land        float64  `yaml:"land" unit:"mm"`                          // flat crest between the flanks [mm]; 0 if left out

	Length     float64  `yaml:"length" unit:"mm" required:"true"`     // of the lever, middle of the bars to hook [mm]
	BarRadius  float64  `yaml:"bar_radius" unit:"mm" required:"true"` // of the round bars [mm]
	BarLength  float64  `yaml:"bar_length" unit:"mm" required:"true"` // of one bar, lever to stand [mm]
	BarTol     *float64 `yaml:"bar_tol" unit:"mm"`                    // plus or minus on the bar's diameter [mm]; left out: half the floor of the process tolerance
	Bars       int      `yaml:"bars" unit:"none"`                     // 1 or 2; 0 or left out: 2
	RootRadius *float64 `yaml:"root_radius" unit:"mm"`                // fillet where a bar ends [mm]; left out: taken as sharp, 0.1 of its diameter
	Thickness  float64  `yaml:"thickness" unit:"mm"`                  // of the lever, in the direction of bending [mm]; 0 or left out: it is stiff
	Width      float64  `yaml:"width" unit:"mm"`                      // of the lever, along the bars [mm]; with thickness
	PushLength float64  `yaml:"push_length" unit:"mm"`                // from the bars to where the second lever is pressed to open it [mm]; 0 or left out: none
}

// The relations of a hook on bars that twist: G to Ip, bars and their strain by the
// published formula; the lever's own bending in series, beam theory. They leave out the
// shear of the lever, the bending of the bars and the give of their stands.
var (
	torsionBars = []relation{
		{"torsion.shear", "G", "MPa", "E/(2*(1 + nu))", "", "shear modulus", sourceGuide + ", p. 18-19", MarkRead},
		{"torsion.inertia", "Ip", "mm^4", "pi*r^4/2", "", "polar second moment of a bar", sourceGuide + ", p. 18-19", MarkRead},
		{"torsion.twist", "C_t", "1/(N mm)", "l/(n*G*Ip)",
			"twist of the bars per moment", "twist of the bars", sourceGuide + ", p. 18-19", MarkRead},
	}
	torsionStiff = []relation{
		{"torsion.stiffness", "K", "N/mm", "1/(C_t*L^2)",
			"the lever being stiff", "stiffness of the hook", sourceGuide + ", p. 18-19", MarkRead},
		{"torsion.slope", "theta_y", "1/mm", "K*C_t*L",
			"slope of the hook per deflection", "slope of the hook by a force across the lever", sourceGeometry, MarkOwn},
		{"torsion.turn", "turn_y", "1/mm", "theta_y",
			"by a moment at the hook no other", "slope of the hook by a moment", sourceGeometry, MarkOwn},
		{"torsion.face", "c", "mm", "r",
			"the lever counts as thick as its bars", "neutral axis to the face that the mate pushes on", "own", MarkPractice},
	}
	torsionBent = []relation{
		{"torsion.lever_inertia", "I", "mm^4", "b*t^3/12", "", "second moment of the lever", sourceBeam, MarkMemory},
		{"torsion.stiffness", "K", "N/mm", "1/(C_t*L^2 + L^3/(3*E*I))",
			"bars and lever in series", "stiffness of the hook", "own, Castigliano", MarkOwn},
		{"torsion.slope", "theta_y", "1/mm", "K*(C_t*L + L^2/(2*E*I))",
			"slope of the hook per deflection", "slope of the hook by a force across the lever", "own, Castigliano", MarkOwn},
		{"torsion.turn", "turn_y", "1/mm", "K*(C_t + L/(E*I))/theta_y",
			"the same by a moment at the hook", "slope of the hook by a moment", "own, Castigliano", MarkOwn},
		{"torsion.face", "c", "mm", "t/2", "", "neutral axis to the face that the mate pushes on", sourceBeam, MarkMemory},
		{"torsion.lever_strain", "eps_b", "1/mm", "K*L*t/(2*E*I)",
			"strain of the lever at the bars per deflection", "strain of the lever per deflection", sourceBeam, MarkMemory},
	}
	torsionStrain = relation{"torsion.bar_strain", "eps_t", "1/mm", "K*L*r/(n*G*Ip)/(1 + nu)",
		"gamma/(1 + nu) at the surface of a bar per deflection: permitted is gamma = (1 + nu) eps", "strain of the bars per deflection", sourceGuide + ", p. 18-19", MarkRead}
	torsionLever = relation{"torsion.lever", "kappa", "1", "c*theta_y",
		"lever of the axial part of the contact force", "lever of the axial force", "own", MarkOwn}
	torsionBase = []relation{
		{"torsion.base", "K_Q", "N/mm", "K/Q", "on stands that give", "stiffness on a base that gives", "job", MarkJob},
		{"torsion.base_strain", "eps_Q", "1/mm", "eps_t/Q", "", "strain on a base that gives", "job", MarkJob},
	}
	torsionSharp = relation{"torsion.root", "Kt", "1", "0.9072*q^(0 - 0.33333)",
		"q = fillet/(2 r), unstated 0.1", "strain at the fillet over the nominal one", "Norton, Machine Design, appendix, as for an arm in bending", MarkMemory}
	torsionFillet = relation{"torsion.root", "Kt", "1", "1",
		"of a large fillet", "strain at the fillet over the nominal one", "Norton, Machine Design, appendix", MarkMemory}
	torsionGoverns = [2]relation{
		{"torsion.strain", "eps", "1", "Kt*eps_t*y", "in the bars, nearest its limit", "strain nearest its limit", "own", MarkOwn},
		{"torsion.strain", "eps", "1", "eps_b*y", "in the lever, nearest its limit", "strain nearest its limit", "own", MarkOwn},
	}
	torsionOpen = relation{"torsion.open", "F_open", "N", "P*L/l_p",
		"pressed on the second lever until the hook is free, without friction at the hook", "force of a finger that opens it", "moments about the bars", MarkOwn}
)

// dimensions are its lengths with their valid ranges.
func (t Torsional) dimensions() []dimension {
	return []dimension{
		{"length", "L", "lever, middle of the bars to hook", t.Length, 0.5, 500, false},
		{"bar_radius", "r", "radius of the bars", t.BarRadius, 0.1, min(50, t.Length), false},
		{"bar_length", "l", "length of one bar", t.BarLength, 0.1, 500, false},
		{"undercut", "y", "undercut", t.Undercut, smallest, 0.5 * t.Length, false},
		{"land", "land", "flat crest", t.Land, 0, 100, true},
		{"thickness", "t", "thickness of the lever", t.Thickness, 0.05, t.Length, true},
		{"width", "b", "width of the lever", t.Width, 0.05, 1000, true},
		{"push_length", "l_p", "from the bars to where it is pressed to open", t.PushLength, 0.5, 500, true},
	}
}

// Validate returns what is wrong with the joint, field paths relative to it.
func (t Torsional) Validate() []fault.Fault {
	out := lengthFault("length", t.Length, 0.5, 500)
	if len(out) == 0 {
		out = dimensionFaults(t.dimensions())
	}
	if len(out) > 0 {
		return append(sideFault("flexes", t.Flexes), out...)
	}
	out = t.Rocker().Validate()
	if t.BarTol != nil {
		out = append(out, lengthFault("bar_tol", *t.BarTol, 0, t.BarRadius)...)
	}
	if (t.Thickness == 0) != (t.Width == 0) {
		out = append(out, fault.Fault{Field: "thickness", Given: figure(t.Thickness) + " mm", Problem: "and width are stated by one alone",
			Want: "both, or neither for a stiff lever"})
	}
	return out
}

// Rocker is the joint as a stiff lever on its bars: the same hook at the same place.
func (t Torsional) Rocker() Cantilever {
	return Cantilever{Flexes: t.Flexes, Bends: t.Bends, Shape: "rocker", Toward: t.Toward,
		Undercut: t.Undercut, UndercutTol: t.UndercutTol, MatingAngle: t.MatingAngle, ReturnAngle: t.ReturnAngle, Land: t.Land,
		Length: t.Length, BarRadius: t.BarRadius, BarLength: t.BarLength, Bars: t.Bars, RootRadius: t.RootRadius}
}

// springs works out bars and lever.
func (t Torsional) springs(m Material) (w working) {
	for _, d := range t.dimensions() {
		w.with(d.symbol, d.v)
	}
	w.with("n", 2)
	if t.Bars == 1 {
		w.with("n", 1)
	}
	w.with("E", m.Modulus.Value)
	w.with("nu", m.Poisson.Value)
	w.by(torsionBars...)
	w.with("eps_b", 0)
	if t.Thickness > 0 {
		w.by(torsionBent...)
	} else {
		w.by(torsionStiff...)
	}
	w.by(torsionStrain)
	return w
}

// work goes on to the strain; bars says that theirs is nearer its limit.
func (t Torsional) work(m Material, use string) (w working, bars bool) {
	w = t.springs(m)
	w.by(torsionLever)
	root := torsionSharp
	w.with("q", sharpRoot)
	if t.RootRadius != nil {
		w.with("q", *t.RootRadius/(2*t.BarRadius))
	}
	if RootConcentration(w.value["q"]) == 1 {
		root = torsionFillet
	}
	w.by(root)
	bars = w.value["Kt"]*w.value["eps_t"]/m.PermittedHoop(use).Value >= w.value["eps_b"]/m.PermittedAxial(use).Value
	if bars {
		w.by(torsionGoverns[0])
	} else {
		w.by(torsionGoverns[1])
	}
	return w, bars
}

// ready makes the joint ready to be evaluated. The mate is taken as rigid.
func (t Torsional) ready(arm, mate Material, use string) joint {
	w, bars := t.work(arm, use)
	v := w.value
	s := hookSizing(t.Undercut, t.UndercutTol, t.Length, arm, mate)
	j := joint{
		strained: "shear of the torsion bars over 1 + nu, with the root's concentration",
		arm:      true, path: hump, outerIsLower: t.Flexes == "lower",
		size: s.size, drawn: s.size, half: 1, fromOuter: s.outer, fromInner: s.inner, worst: s.worst,
		alpha: t.MatingAngle, back: t.ReturnAngle, land: t.Land,
		outer: member{stiffness: v["K"], strain: v["eps"] / t.Undercut, limit: arm.PermittedHoop(use).Value,
			wall: wallShare(t.BarTol, arm, 2*t.BarRadius), law: barWall},
		inner:    member{limit: 1},
		rotation: v["theta_y"], turning: v["turn_y"] - v["theta_y"], lever: v["kappa"], thin: thinness(arm, 2*t.BarRadius),
		modelUp: math.Log(armModel), modelDown: math.Log(armModel * farBent(t.Undercut/t.Length)),
	}
	if !bars {
		j.strained, j.outer.limit = "bending of the lever", arm.PermittedAxial(use).Value
	}
	// The secant modulus follows the nominal strain, not that in the fillet.
	j.outer = j.outer.follow(arm, max(v["eps_t"], v["eps_b"]), barReserve)
	j.stroke = s.size/math.Tan(t.MatingAngle) + t.Land + cotDeeper(s.size, t.ReturnAngle)
	return j
}

func (t Torsional) relations() []relation {
	return slices.Concat(torsionBars, torsionBent, torsionGoverns[:],
		[]relation{torsionStrain, torsionLever, torsionSharp, torsionOpen})
}

func (t Torsional) explain(e *explainer) {
	e.dimensions(t.dimensions())
	e.angle("alpha", t.MatingAngle, "mating angle")
	e.angle("alpha'", t.ReturnAngle, "return angle")
	e.modulus("s", e.outer)
	w, _ := t.work(e.outer, e.use)
	e.lines = append(e.lines, w.lines...)
	e.step("arm.deflection", "w", e.s.move, "mm", "w = y, the mate being rigid", sourceGeometry, MarkOwn, "%s", t.Undercut)
	e.series(w.value["K"], 0, "N")
	e.leans(t.MatingAngle, t.Undercut, t.Land)
	if t.PushLength > 0 {
		open := working{}
		for symbol, v := range map[string]float64{"P": e.s.load, "L": t.Length, "l_p": t.PushLength} {
			open.with(symbol, v)
		}
		open.by(torsionOpen)
		e.lines = append(e.lines, open.lines...)
	}
	e.separation()
}

func (t Torsional) First() string                                                 { return t.Flexes }
func (t Torsional) Opening() string                                               { return otherPart(t.Flexes) }
func (t Torsional) Carrier() string                                               { return "" }
func (t Torsional) Searched() bool                                                { return false }
func (t Torsional) Snaps() bool                                                   { return true }
func (t Torsional) Play() float64                                                 { return 0 }
func (t Torsional) Aside() float64                                                { return t.Length }
func (t Torsional) Accept(v Visitor)                                              { v.Torsional(t) }
func (t Torsional) sizeKey() string                                               { return "undercut" }
func (t Torsional) writtenAs(key string) string                                   { return key }
func (t Torsional) Assumed() (string, unit.Text)                                  { return "", unit.Text{} }
func (t Torsional) Slotted() (Kind, unit.Text)                                    { return nil, unit.Text{} }
func (t Torsional) OnPlate() (Kind, string)                                       { return t, "" }
func (t Torsional) Stiffened(Material, float64) (k Kind, key string, now float64) { return t, "", 0 }
func (t Torsional) Largest() (most float64, loose bool)                           { return 0.5 * t.Length, false }
func (t Torsional) strengths(b *bounds)                                           { t.Rocker().strengths(b) }
func (t Torsional) Size(ledge, arm Material) Size                                 { return t.Rocker().Size(ledge, arm) }

func (t Torsional) Deeper(size, offset float64, m Member) float64 {
	return t.Rocker().Deeper(size, offset, m)
}

func (t Torsional) swing(l *Latch, aside float64, m Material) Swing {
	return t.Rocker().swing(l, aside, m)
}

func (t Torsional) Footprint() Footprint {
	return Footprint{Slack: t.Undercut + 2*t.BarRadius, Size: t.BarLength + 2*t.BarRadius + t.Undercut}
}

// AcrossLayers of a torsional latch: of its bars, or of its lever where that is strained more.
func (t Torsional) AcrossLayers(arm, _ Material) bool {
	if _, bars := t.work(arm, ""); bars {
		return ringAcross(arm)
	}
	return armAcross(arm)
}

func (t Torsional) Resized(size float64, _ Member) Kind {
	t.Undercut = size
	return t
}

func (t Torsional) Toleranced(tol float64) Kind {
	t.UndercutTol = new(tol)
	return t
}

func (t Torsional) Kept(places []int) Kind {
	t.Toward = kept(t.Toward, places)
	return t
}

func (t Torsional) Looser(share float64) (Kind, unit.Text) {
	t.Undercut *= share
	return t, unit.Textf("undercut %v", unit.Length.Of(t.Undercut))
}

func (t Torsional) Gentler(angle float64) (k Kind, key string, first bool) {
	if t.MatingAngle <= angle {
		return nil, "", false
	}
	t.MatingAngle = angle
	return t, "mating_angle", true
}

func (t Torsional) warn(w *warner) {
	t.Rocker().warn(w)
	if w.outer.Layered() && w.outer.Build != "along" && w.outer.StrainOnceZ.Value < w.outer.StrainOnce.Value {
		w.add(warnBendsAcross, "its bars twist across the layers, or may: turn the part so that the bars lie in the layers and say build: along, or enlarge their fillet and expect a short life")
	}
}

func (t Torsional) usual() []usualSize {
	out := append(t.Rocker().usual(), []usualSize{
		{"bar_radius", "radius of the bars", "torsional latches", "mm", 0.4, 8, MarkPractice, t.BarRadius},
		{"bar_length", "length of a bar", "torsional latches", "mm", 1, 60, MarkPractice, t.BarLength},
	}...)
	if t.Thickness > 0 {
		out = append(out, usualSize{"thickness", "thickness of the lever", "torsional latches", "mm", 0.4, 12, MarkPractice, t.Thickness})
	}
	return out
}
