package force

import (
	"math"
	"os"
	"slices"
	"testing"

	"gopkg.in/yaml.v3"
)

// published is one entry of testdata/force-checks.yaml.
type published struct {
	ID        string             `yaml:"id"`
	Kind      string             `yaml:"kind"`
	Source    string             `yaml:"source"`
	Mark      string             `yaml:"mark"`
	Inputs    map[string]any     `yaml:"inputs"`
	Expected  map[string]float64 `yaml:"expected"`
	Tolerance float64            `yaml:"tolerance_pct"`
	Check     string             `yaml:"check"`
	Note      string             `yaml:"note"`
}

// in gives an input as a number.
func (p published) in(key string) float64 {
	switch v := p.Inputs[key].(type) {
	case float64:
		return v
	case int:
		return float64(v)
	}
	return math.NaN()
}

type answers map[string]float64

const inch = 25.4

// snapHump is a hump with a flat land through the whole road of a joint.
func snapHump(k, y, angle, mu, land float64) profile {
	j := joint{path: hump, size: y, half: 1, alpha: rad(angle), back: rad(90), land: land, outer: member{stiffness: k, limit: 1}, inner: member{limit: 1}}
	j.engage = y/math.Tan(j.alpha) + land
	p, _ := j.nominalAt(mu)
	return p
}

// pressRamp is a slide to a final force, its lead-in too short to count.
func pressRamp(final, length float64) Curve {
	j := joint{path: slide, size: 1e-6, half: 1, length: length, engage: length, outer: member{stiffness: final / length / 0.3 / 1e-6, limit: 1}, inner: member{limit: 1}}
	p, _ := j.nominalAt(0.3)
	return sumCurve([]profile{p}, []int{1})
}

// lameFit reads the inputs of a fit of two materials.
func lameFit(p published) Fit {
	f := Fit{Joint: p.in("joint_diameter_mm"), HubOuter: p.in("hub_outer_mm"), ShaftBore: p.in("shaft_bore_mm"),
		HubModulus: p.in("hub_modulus_MPa"), HubPoisson: p.in("hub_poisson"), ShaftModulus: p.in("shaft_modulus_MPa"), ShaftPoisson: p.in("shaft_poisson")}
	if math.IsNaN(f.HubModulus) {
		f.HubModulus, f.HubPoisson = p.in("modulus_MPa"), p.in("poisson")
		f.ShaftModulus, f.ShaftPoisson = f.HubModulus, f.HubPoisson
	}
	return f
}

// ballJoint is the ball of the table, on a mouth of the stiffness given there.
func ballJoint(p published) (joint, profile) {
	j := joint{path: ball, size: p.in("ball_diameter_mm") - p.in("mouth_diameter_mm"), half: 0.5, ballR: p.in("ball_diameter_mm") / 2,
		outer: member{stiffness: p.in("K_N_per_mm_radial"), limit: 1}, inner: member{limit: 1}}
	from := BallStroke(p.in("mouth_diameter_mm"), p.in("ball_diameter_mm"))
	j.seated = from
	if angle := p.in("cone_half_angle_deg"); !math.IsNaN(angle) {
		j.alpha = rad(angle)
		from, _ = ConeContact(p.in("mouth_diameter_mm"), p.in("ball_diameter_mm"), j.alpha)
	}
	j.stroke = from + j.seated
	j.engage = j.stroke
	q, _ := j.nominalAt(p.in("mu"))
	return j, q
}

// answer computes what an entry expects, by its kind.
func answer(p published) answers {
	in := p.in
	switch p.Kind {
	case "friction_factor":
		f, _ := MatingFactor(in("mu"), rad(in("lead_angle_deg")))
		return answers{"factor": f}
	case "mating_force":
		load := in("deflection_force_N")
		if math.IsNaN(load) {
			load = in("transverse_force_N")
		}
		f, _ := MatingFactor(in("mu"), rad(in("lead_angle_deg")))
		return answers{"mating_force_N": load * f}
	case "cantilever_taper_half":
		// y = eps L^2 T/(3 c), c = h/2, solved for h.
		return answers{"root_thickness_mm": 2 * in("strain") * in("length_mm") * in("length_mm") * TaperFactor(0.5, 1) / (3 * in("undercut_mm"))}
	case "cantilever_force":
		s := Rectangle(in("width_mm"), in("root_thickness_mm"))
		return answers{"deflection_force_N": DeflectionForce(s.Inertia/s.Inner, in("secant_modulus_MPa"), in("strain"), in("length_mm"))}
	case "cantilever_ring_segment":
		s := RingSegment(in("inner_radius_mm"), in("outer_radius_mm"), rad(in("arc_angle_deg")))
		taper := 1.0
		if k := in("tip_to_root_thickness"); !math.IsNaN(k) {
			taper = TaperFactor(k, 1)
		}
		return answers{"undercut_mm": PermittedDeflection(in("strain"), s.Outer, in("length_mm"), taper), "c_outer_mm": s.Outer}
	case "section_properties":
		if h := in("height_mm"); !math.IsNaN(h) {
			s := Trapezoid(in("wide_side_mm"), in("narrow_side_mm"), h)
			return answers{"c_narrow_mm": s.Inner, "c_wide_mm": s.Outer, "I_mm4": s.Inertia, "Z_narrow_mm3": s.Inertia / s.Inner, "Z_wide_mm3": s.Inertia / s.Outer}
		}
		r := in("outer_radius_mm")
		s := RingSegment(in("inner_radius_mm"), r, rad(in("arc_angle_deg")))
		return answers{"area_mm2": s.Area, "centroid_radius_mm": r - s.Outer, "second_moment_mm4": s.Inertia, "c_outer_mm": s.Outer, "c_inner_mm": s.Inner,
			"Z_outer_mm3": s.Inertia / s.Outer, "Z_inner_mm3": s.Inertia / s.Inner, "coef_C_outer": r / (3 * s.Outer)}
	case "taper_factor":
		kt, kw := in("tip_to_root_thickness"), in("tip_to_root_width")
		if math.IsNaN(kt) {
			kt = 1
		}
		if math.IsNaN(kw) {
			kw = 1
		}
		return answers{"deflection_factor": TaperFactor(kt, kw), "max_strain_over_root_strain": PeakStrainFactor(kt, kw)}
	case "cantilever_taper_half_Q":
		return worksheet(p)
	case "Q_factor":
		return answers{"Q": BaseFactor(in("length_over_thickness"), 1, 1)}
	case "cantilever_uniform":
		s := Rectangle(in("width_mm"), in("thickness_mm"))
		eps := RootStrain(s.Inner, in("undercut_mm"), in("length_mm"), 1)
		load := DeflectionForce(s.Inertia/s.Inner, in("secant_modulus_MPa"), eps, in("length_mm"))
		f, _ := MatingFactor(in("mu"), rad(in("lead_angle_deg")))
		return answers{"strain": eps, "deflection_force_N": load, "mating_force_N": load * f}
	case "cantilever_L":
		c := Cantilever{Shape: "l_arm", Length: in("arm_length_mm"), Thickness: in("arm_thickness_mm"), Width: in("width_mm"), BaseLength: in("base_strip_length_mm"), BaseThickness: in("base_thickness_mm")}
		a := c.spring(Material{Modulus: Figure{Value: in("modulus_MPa")}})
		y := in("force_N") / a.stiffness
		return answers{"deflection_mm": y, "arm_root_strain": a.axial * y, "base_strain": a.across * y}
	case "cantilever_U":
		c := Cantilever{Shape: "u_arm", Length: in("leg_length_mm"), Thickness: in("thickness_mm"), Width: in("width_mm"), BendRadius: in("bend_radius_mm")}
		a := c.spring(Material{Modulus: Figure{Value: in("modulus_MPa")}})
		y := in("force_N") / a.stiffness
		return answers{"deflection_mm": y, "max_strain": a.across * y}
	case "stress_concentration":
		return answers{"Kt": RootConcentration(in("radius_over_thickness"))}
	case "annular_X_outer_elastic":
		return answers{"X_N": GeometricFactorOuter(in("joint_diameter_mm"), in("outer_diameter_mm"), in("poisson"))}
	case "annular_X_inner_elastic":
		return answers{"X_W": GeometricFactorInner(in("joint_diameter_mm"), in("inner_diameter_mm"), in("poisson"))}
	case "annular_P":
		return answers{"transverse_force_N": GuideTransverse(in("undercut_per_part_mm"), in("joint_diameter_mm"), in("secant_modulus_MPa"), in("X_N"))}
	case "annular_remote":
		return answers{"mating_force_remote_N": in("mating_force_near_N") * GuideRemoteFactor}
	case "annular_remote_distance":
		return answers{"min_distance_mm": GuideRemoteDistance(in("joint_diameter_mm"), in("wall_thickness_mm"))}
	case "annular_undercut":
		return answers{"undercut_rigid_mate_mm": PermittedUndercut(in("strain"), in("joint_diameter_mm"), false), "undercut_equal_flex_mm": PermittedUndercut(in("strain"), in("joint_diameter_mm"), true)}
	case "annular_bias":
		d, t := in("joint_diameter_mm"), in("wall_thickness_mm")
		shell := Tube{Radius: (d + t) / 2, Wall: t, Modulus: in("modulus_MPa"), Poisson: in("poisson")}.ShellStiffness()
		guide := 2 * GuideTransverse(1, d, in("modulus_MPa"), GeometricFactorOuter(d, d+2*t, in("poisson")))
		return answers{"shell_P_per_radial_mm_N": shell, "guide_P_per_radial_mm_diametral_reading_N": guide, "ratio": guide / shell}
	}
	return answerPressed(p)
}

// answerPressed computes the pressed kinds, balls and strokes.
func answerPressed(p published) answers {
	in := p.in
	switch p.Kind {
	case "lame_same_material":
		f := Fit{Joint: 2 * in("interface_radius_in") * inch, HubOuter: 2 * in("outer_radius_in") * inch, ShaftBore: 2 * in("inner_radius_in") * inch,
			HubModulus: in("modulus_psi") * psi, HubPoisson: 0.3, ShaftModulus: in("modulus_psi") * psi, ShaftPoisson: 0.3}
		pressure := f.Pressure(2 * in("radial_interference_in") * inch)
		return answers{"pressure_psi": pressure / psi, "outer_bore_hoop_psi": f.HubHoop(pressure) / psi, "inner_bore_hoop_psi": f.ShaftBoreHoop(pressure) / psi}
	case "lame":
		f := lameFit(p)
		pressure := f.Pressure(in("diametral_interference_mm"))
		force := PressForce(in("mu"), pressure, f.Joint, in("length_mm"))
		return answers{"pressure_MPa": pressure, "hub_bore_hoop_MPa": f.HubHoop(pressure), "shaft_joint_hoop_MPa": f.ShaftHoop(pressure),
			"insertion_force_N": force, "energy_J": pressRamp(force, in("length_mm")).Work() / 1000}
	case "plastic_hub_geometry":
		return answers{"W": lameRatio(in("hub_outer_in"), in("shaft_diameter_in"))}
	case "plastic_hub_hoop":
		return answers{"hoop_stress_psi": HubHoopRigidShaft(in("shaft_diameter_in"), in("hub_outer_in"), in("modulus_psi"), in("poisson"), in("diametral_interference_in"))}
	case "iso286_fit":
		return isoAnswers(p)
	case "ball_socket":
		return ballAnswers(p)
	case "force_stroke":
		if final := in("final_force_N"); !math.IsNaN(final) {
			c := pressRamp(final, in("engagement_mm"))
			return answers{"energy_J": c.Work() / 1000, "force_at_half_stroke_N": c.At(in("travel_mm") / 2)}
		}
		q := snapHump(in("stiffness_N_per_mm"), in("undercut_mm"), in("lead_angle_deg"), in("mu"), in("land_length_mm"))
		peak, _ := sumCurve([]profile{q}, []int{1}).Peak()
		return answers{"ramp_stroke_mm": q.p[0].Hi - q.p[0].Lo, "peak_force_N": peak, "land_force_N": q.at(in("land_length_mm") / 2),
			"ramp_energy_J": q.p[0].work() / 1000, "land_energy_J": q.p[1].work() / 1000}
	case "self_locking":
		return answers{"max_separable_return_angle_deg": SeparableLimit(in("mu")) * degree}
	case "press_axial":
		f := PressForce(in("mu"), in("pressure_MPa"), 2*in("shaft_radius_mm"), in("length_mm"))
		return answers{"axial_force_N": f, "torque_Nmm": f * in("shaft_radius_mm")}
	case "torsion":
		lever := Torsional{Length: in("lever_mm"), BarRadius: in("bar_radius_mm"), BarLength: in("bar_length_mm"), Bars: 1}
		v := lever.springs(Material{Modulus: Figure{Value: in("modulus_MPa")}, Poisson: Figure{Value: in("poisson")}}).value
		y := in("shear_strain") / (v["eps_t"] * (1 + v["nu"]))
		return answers{"twist_deg": y * v["theta_y"] * degree, "torque_Nmm": v["K"] * y * lever.Length, "lever_force_N": v["K"] * y}
	case "secant_modulus":
		slope := (in("Es_a_MPa") - in("Es_b_MPa")) / (in("strain_b") - in("strain_a"))
		e := in("Es_a_MPa") + slope*in("strain_a")
		return answers{"Es_MPa": SecantModulus(e, in("strain"), e/slope, 0)}
	case "allowable_strain":
		return answers{"repeated_strain": RepeatedStrain(in("single_strain"))}
	}
	return nil
}

// worksheet redoes the case of the user-made worksheet: its Q is read from a
// chart and kept, its stiffness constant is our taper factor.
func worksheet(p published) answers {
	in := p.in
	l, t, eps := in("length_mm"), in("root_thickness_mm"), in("permissible_strain")
	n := in("safety_factor")
	c := Cantilever{Length: l, Thickness: t, TipThickness: t / 2, Width: in("width_mm"), BaseFactor: ptr(in("Q"))}
	a := c.spring(Material{Modulus: Figure{Value: in("flexural_modulus_MPa")}})
	y := eps / a.root
	f, _ := MatingFactor(in("mu"), rad(in("lead_angle_deg")))
	out := answers{"stiffness_rigid_base_N_per_mm": a.stiffness * a.q, "max_deflection_mm": y, "max_deflection_force_N": a.stiffness * y, "max_mating_force_N": a.stiffness * y * f}
	if !math.IsNaN(n) {
		total := in("count") * a.stiffness * y / n
		out = answers{"strain": eps / n, "deflection_mm": y / n, "total_deflection_force_N": total, "total_mating_force_N": total * f}
	}
	return out
}

func isoAnswers(p published) answers {
	hole, ok := p.Inputs["hole"].(string)
	shaft, _ := p.Inputs["shaft"].(string)
	if !ok {
		hole, shaft = "H11", "c11"
	}
	d := p.in("nominal_mm")
	holeLetter, holeGrade, _ := toleranceClass(hole)
	shaftLetter, shaftGrade, _ := toleranceClass(shaft)
	holeLower, holeUpper, _ := holeDeviations(d, holeLetter, holeGrade)
	shaftLower, shaftUpper, _ := shaftDeviations(d, shaftLetter, shaftGrade)
	return answers{"shaft_upper_um": 1000 * shaftUpper, "shaft_lower_um": 1000 * shaftLower, "hole_upper_um": 1000 * holeUpper,
		"max_interference_um": 1000 * (shaftUpper - holeLower), "min_interference_um": 1000 * (shaftLower - holeUpper),
		"hole_max_mm": d + holeUpper, "hole_min_mm": d + holeLower, "shaft_max_mm": d + shaftUpper, "shaft_min_mm": d + shaftLower}
}

func ballAnswers(p published) answers {
	in := p.in
	d, big := in("mouth_diameter_mm"), in("ball_diameter_mm")
	if outer := in("socket_outer_mm"); !math.IsNaN(outer) && math.IsNaN(in("K_N_per_mm_radial")) {
		b := Ball{BallDiameter: big, MouthDiameter: d, OuterDiameter: outer}
		m := Material{Modulus: Figure{Value: in("modulus_MPa")}, Poisson: Figure{Value: in("poisson")}}
		j := b.ready(m, Material{}, "")
		_, s := j.nominalAt(in("mu"))
		return answers{"X_N": GeometricFactorOuter(d, outer, in("poisson")), "K_N_per_mm_radial": 2 * GuideTransverse(1, d, in("modulus_MPa"), GeometricFactorOuter(d, outer, in("poisson"))),
			"contact_angle_start_deg": BallContactAngle(d, big) * degree, "stroke_to_equator_mm": BallStroke(d, big), "hoop_strain_max": s.outerStrain}
	}
	j, q := ballJoint(p)
	last := q.p[q.n-1]
	peak, at := q.lip.peak(last.Hi, last.Lo)
	out := answers{"peak_force_N": peak, "peak_angle_deg": math.Asin((at-q.lip.zero)/j.ballR) * degree, "force_at_equator_N": q.lip.force(q.lip.zero),
		"energy_to_equator_J": q.lip.work(last.Hi, q.lip.zero) / 1000}
	if j.alpha > 0 {
		first, hand := ConeContact(d, big, j.alpha)
		out["first_contact_z_mm"], out["handover_z_mm"], out["force_at_handover_N"] = first, hand, q.at(q.lip.zero+hand)
	}
	return out
}

// publishedIn reads a table of entries.
func publishedIn(t *testing.T, name string) []published {
	t.Helper()
	raw, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	var out []published
	if err := yaml.Unmarshal(raw, &out); err != nil {
		t.Fatal(err)
	}
	return out
}

func TestPublished(t *testing.T) {
	entries := publishedIn(t, "testdata/force-checks.yaml")
	if len(entries) != 61 {
		t.Errorf("%d entries, want 61", len(entries))
	}
	for _, e := range entries {
		t.Run(e.ID, func(t *testing.T) {
			got := answer(e)
			t.Logf("[%s, %s] %s", e.Mark, e.Check, e.Source)
			keys := make([]string, 0, len(e.Expected))
			for k := range e.Expected {
				keys = append(keys, k)
			}
			slices.Sort(keys)
			for _, k := range keys {
				v, ok := got[k]
				if !ok {
					t.Errorf("%s is not computed", k)
					continue
				}
				t.Logf("    %-42s expected %-10.6g got %-12.7g within %g %%", k, e.Expected[k], v, e.Tolerance)
				if e.Expected[k] == 0 {
					if math.Abs(v) > 1e-9 {
						t.Errorf("%s: got %g, want 0", k, v)
					}
					continue
				}
				near(t, k, v, e.Expected[k], e.Tolerance/100)
			}
		})
	}
}
