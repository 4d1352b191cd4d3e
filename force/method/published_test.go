package method

import (
	"fmt"
	"maps"
	"math"
	"os"
	"slices"
	"testing"

	"gopkg.in/yaml.v3"
	"ramnest/force/unit"
)

// published is one entry of testdata/method-checks.yaml.
type published struct {
	ID        string         `yaml:"id"`
	Topic     string         `yaml:"topic"`
	Source    string         `yaml:"source"`
	Mark      string         `yaml:"mark"`
	Inputs    map[string]any `yaml:"inputs"`
	Expected  map[string]any `yaml:"expected"`
	Tolerance float64        `yaml:"tolerance_pct"`
	Check     string         `yaml:"check"`
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

// expected gives what the entry expects, lists as "kg[0]", "kg[1]".
func (p published) expected() answers {
	out := answers{}
	put := func(key string, v any) {
		switch v := v.(type) {
		case float64:
			out[key] = v
		case int:
			out[key] = float64(v)
		}
	}
	for key, v := range p.Expected {
		put(key, v)
		if list, ok := v.([]any); ok {
			for i, v := range list {
				put(fmt.Sprintf("%s[%d]", key, i), v)
			}
		}
	}
	return out
}

type answers map[string]float64

// background are figures that stand behind a choice but that no formula of this
// package computes: they are not tested.
var background = map[string]string{
	"thumb-sex-ratio":       "why the thumb's base force is that of women: a base from men only is not usable",
	"hose-mvf":              "why both palms are not given more than 200 N, about the mean of what was measured there",
	"palm-strike-overshoot": "why a palm or fist used as a hammer is never a method",
}

// elsewhere are the topics that other packages compute and test.
var elsewhere = map[string]string{"nest_strength": "fixture/strength", "quote": "export/quote", "standard_time": "export/quote"}

// TestPublished holds the formulas against check values written down elsewhere.
// mark: read, memory or own, that of formula or answer, the weaker. check:
// published_answer, cross_checked (by hand or another route), or self (a regression
// value only).
func TestPublished(t *testing.T) {
	text, err := os.ReadFile("testdata/method-checks.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var entries []published
	if err := yaml.Unmarshal(text, &entries); err != nil {
		t.Fatal(err)
	}
	held, not := 0, 0
	for _, p := range entries {
		if where := elsewhere[p.Topic]; where != "" {
			t.Logf("%s: tested in %s", p.ID, where)
			continue
		}
		if why := background[p.ID]; why != "" {
			t.Logf("%s: background figure, not tested: %s", p.ID, why)
			not++
			continue
		}
		held++
		t.Run(p.ID, func(t *testing.T) {
			got, want := answer(p), p.expected()
			if len(want) == 0 {
				t.Fatal("expects nothing")
			}
			for _, key := range slices.Sorted(maps.Keys(want)) {
				w := want[key]
				g, ok := got[key]
				t.Logf("%s: want %g, got %g; %s; mark %s; %s", key, w, g, p.Source, p.Mark, p.Check)
				if !ok || !(math.Abs(g-w) <= p.Tolerance/100*math.Abs(w)+1e-12) {
					t.Errorf("%s: got %g, want %g within %g %%", key, g, w, p.Tolerance)
				}
			}
		})
	}
	if held != 49 || not != len(background) {
		t.Errorf("%d entries held and %d in the background, want 49 and %d", held, not, len(background))
	}
}

// answer computes what an entry expects.
func answer(p published) answers {
	in := p.in
	switch p.Topic {
	case "hand_en1005_3":
		z, _ := ZoneOf(in("F_B_N"), in("rate_per_min")*60, in("action_time_min")*60, in("hours"))
		if z.Speed != in("m_v") || z.Frequency != in("m_f") || z.Duration != in("m_d") {
			return nil // the multipliers are part of the entry
		}
		return answers{"F_Br_N": z.Reduced, "recommended_max_N": z.Recommended, "avoid_above_N": z.Avoid}
	case "hand_percentile":
		if p.ID == "en-annexA-z" {
			professional, _ := NormalQuantile(in("p_professional"))
			domestic, _ := NormalQuantile(in("p_domestic"))
			return answers{"z_professional": -professional, "z_domestic": -domestic}
		}
		share := map[float64]float64{0.5244: 0.30, 2.0537: 0.02}[in("z")]
		f, _ := StrengthPercentile(in("mean_ln"), in("sd_ln"), share)
		return answers{"F_N": f}
	case "hand_thumb":
		mean, sd, _ := LogMoments(in("mean_N"), in("cv"))
		of := func(share float64) float64 { f, _ := StrengthPercentile(mean, sd, share); return f }
		return answers{"P30_N": of(0.30), "P15_N": of(0.15), "P5_N": of(0.05)}
	case "hand_duty_cycle":
		duty := in("duty_cycle")
		if p.Inputs["duty_cycle"] == "1/28800" {
			duty = DutyCycle(1.0/8, 1) // one second in eight hours
		}
		share, _ := AcceptableEffort(duty)
		return answers{"MAE_fraction": share}
	case "hand_rate_limit":
		most, _ := MostMovements(in("force_pct_Fmax") / 100)
		perMinute := float64(most) / in("shift_min")
		return answers{"per_min": perMinute, "mean_per_min": perMinute}
	case "hand_hal":
		hal, _ := HandActivity(in("F_per_s"), in("duty_cycle_pct"))
		limit, action, _ := PeakForceLimits(in("HAL"))
		return answers{"HAL": hal, "NPF_TLV": limit, "NPF_AL": action}
	case "hand_ocra":
		ata, rta, index, _ := Ocra{in("FM"), in("PM"), in("ReM"), in("AM"), in("RcM"), in("tM")}.Index(in("actions_per_min"), in("duration_min"))
		return answers{"ATA": ata, "RTA": rta, "index": index}
	case "mallet":
		return malletAnswer(p)
	case "vise":
		return viseAnswer(p)
	case "press":
		return pressAnswer(p)
	}
	return nil
}

func malletAnswer(p published) answers {
	in := p.in
	switch p.ID {
	case "mallet-energy":
		return answers{"E_J": BlowEnergy(in("mass_kg"), in("speed_m_s")) / 1000}
	case "mallet-drop-speed":
		return answers{"v_m_s": DropSpeed(in("drop_m") * 1000)}
	case "mallet-oz":
		heads := GenericMallets()
		return answers{"kg[0]": heads[0].Mass, "kg[1]": heads[2].Mass}
	case "blow-to-driven-mass":
		eta, _ := DrivenShare(in("m_head_kg"), in("m_driven_kg"), in("e"))
		return answers{"eta2": eta}
	case "impact-force-energy":
		return answers{"F_peak_N": PeakOfBlow(in("E_J")*1000, in("k_N_mm"))}
	case "impact-force-speed":
		contact, _ := ContactTime(in("mass_kg"), in("k_N_mm"))
		return answers{"F_peak_N": PeakOfBlow(BlowEnergy(in("mass_kg"), in("v_m_s")), in("k_N_mm")), "contact_ms": 1000 * contact}
	case "stiffness-series":
		k, _ := SeriesStiffness(in("k1_N_mm"), in("k2_N_mm"))
		return answers{"k_N_mm": k}
	case "blow-count":
		n, _ := BlowsNeeded(in("W_seat_J")*1000, in("eta")*in("E_blow_J")*1000)
		return answers{"blows": float64(n)}
	}
	eta, _ := BlowEfficiency(in("m_head_kg"), in("m_driven_kg"), in("e"))
	return answers{"eta": eta}
}

func viseAnswer(p published) answers {
	in := p.in
	or0 := func(x float64) float64 {
		if math.IsNaN(x) {
			return 0
		}
		return x
	}
	switch p.ID {
	case "vise-clamp-eta":
		f, _ := ClampForce(in("T_Nm")*1000, in("lead_mm"), in("eta"))
		return answers{"F_clamp_N": f}
	case "vise-ideal-page":
		f, _ := ClampForce(in("rim_force_lbf")*unit.PoundForce*in("wheel_diameter_in")/2*25.4, 25.4/in("threads_per_inch"), 1)
		return answers{"F_lbf": f / unit.PoundForce}
	}
	angle := or0(in("half_angle_deg")) * math.Pi / 180
	collar, across := or0(in("mu_collar")), or0(in("d_collar_mm"))
	torque, _ := ScrewTorque(1000, in("d_mean_mm"), in("lead_mm"), in("mu"), angle, collar, across)
	eta, _ := ScrewEfficiency(in("d_mean_mm"), in("lead_mm"), in("mu"), angle, collar, across)
	return answers{"T_raise_Nm": torque * in("F_N") / 1000 / 1000, "F_clamp_N": 1000 * in("handle_N") * in("handle_mm") / torque, "efficiency": eta}
}

func pressAnswer(p published) answers {
	in := p.in
	ratioOf := func(p Press) float64 { r, _ := p.leverRatio(); return r }
	switch p.ID {
	case "tons":
		return answers{"short_N": ShortTon, "metric_N": MetricTon, "long_N": LongTon, "metric_over_short": MetricTon / ShortTon}
	case "lever-ratio":
		return answers{"ratio": ratioOf(Press{Lever: in("lever_mm"), PinionRadius: in("pitch_radius_mm")})}
	case "compound-ratio":
		return answers{"ratio": ratioOf(Press{Lever: in("lever_mm"), PinionRadius: in("pitch_radius_mm"), Gear: in("gear_ratio")})}
	case "pinion-radius":
		r := PitchRadius(in("module_mm"), int(in("teeth")))
		swing, _ := LeverSwing(1, r)
		return answers{"pitch_radius_mm": r, "ram_travel_per_turn_mm": 2 * math.Pi / swing}
	case "rating-effort-read-press":
		n, _ := LeverEffort(in("rated_lbf")*unit.PoundForce, in("ratio"), 1)
		return answers{"lever_N": n, "lever_lbf": n / unit.PoundForce}
	case "lever-effort":
		n, _ := LeverEffort(in("F_ram_N"), in("ratio"), in("eta"))
		return answers{"F_lever_N": n}
	case "ram-from-en-occasional", "ram-from-en-line":
		n, _ := RamForce(in("F_lever_N"), in("ratio"), in("eta"))
		return answers{"F_ram_N": n}
	case "ram-from-mae-line":
		e, _ := EffortOf(0, in("F_base_N"), 360, 1, 7.5)
		n, _ := RamForce(e.Acceptable, in("ratio"), in("eta"))
		return answers{"F_ram_N": n}
	case "lever-swing":
		angle, _ := LeverSwing(in("stroke_mm"), in("pitch_radius_mm"))
		l := Demand{DesignForce: 1, Stroke: in("stroke_mm")}.lever(Press{Rated: 1000, Lever: in("lever_mm"), PinionRadius: in("pitch_radius_mm")}, 0.15)
		if math.Abs(l.Swing-angle) > 1e-9 {
			return nil // two ways to the same swing
		}
		return answers{"angle_deg": angle * 180 / math.Pi, "handle_travel_mm": l.Travel}
	case "ram-eccentric":
		side, lost, push, _ := RamBinding(in("F_N"), in("e_mm"), in("guide_mm"), in("mu"))
		return answers{"side_force_N": side, "lost_share": lost, "push_N": push}
	case "ram-binding-2to1":
		return answers{"e_over_guide": bindsAt(100, in("mu")) / 100}
	case "ram-tilt":
		tilt, lateral, _ := RamTilt(in("play_mm"), in("guide_mm"), in("overhang_mm"))
		return answers{"tilt_mrad": 1000 * tilt, "lateral_mm": lateral}
	case "bench-tip":
		tipping, holding := TippingMoments(in("pull_N"), in("height_mm"), in("mass_kg"), in("half_base_mm"))
		return answers{"tipping_Nm": tipping / 1000, "holding_Nm": holding / 1000}
	}
	return nil
}

// bindsAt searches the eccentricity from which the ram binds [mm].
func bindsAt(guide, mu float64) float64 {
	lo, hi := 0.0, 10*guide
	for range 60 {
		mid := (lo + hi) / 2
		if _, _, _, ok := RamBinding(1, mid, guide, mu); ok {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// The tables of the package against the figures they were taken from.
func TestBasesComeFromTheirSources(t *testing.T) {
	mean, sd, _ := LogMoments(100.6, 0.25) // thumbs of women: mean read, spread assumed
	p15, _ := StrengthPercentile(mean, sd, 0.15)
	clamp, _ := ClampForce(100*150, 5, 0.25)
	for _, c := range []struct {
		name, source    string
		got, want, near float64
	}{
		{"one thumb", "mean of 8 women 100.6 N (read), spread 25 % (own), P15 rounded down", HandActions()[0].Base, p15, 0.01},
		{"two thumbs", "1.5 times one thumb (own)", HandActions()[2].Base, 1.5 * HandActions()[0].Base, 1e-12},
		{"both palms", "mean largest insertion force of a hose with grip, 202 N (read)", HandActions()[3].Base, 202.2, 0.015},
		{"hand-tight vise", "100 N on 150 mm, lead 5, efficiency 0.25 (common practice)", handTight, clamp, 1e-3},
		{"one short ton", "2000 lbf", GenericPresses()[1].Rated, ShortTon, 1e-3},
		{"one ton class, ram", "owner's notes: 1 1/8 in (read)", GenericPresses()[1].RamSquare, 1.125 * 25.4, 1e-3},
		{"one ton class, daylight", "owner's notes: 5 1/2 in (read)", GenericPresses()[1].DaylightMax, 5.5 * 25.4, 2.5e-3},
		{"one ton class, mass", "owner's notes: 35.25 lb as shipped (read)", GenericPresses()[1].Mass, 35.25 * 0.45359237, 1e-2},
		{"half a ton class, mass", "owner's notes: 25 lb (read)", GenericPresses()[0].Mass, 25 * 0.45359237, 3.1e-2},
	} {
		if !(math.Abs(c.got-c.want) <= c.near*c.want) {
			t.Errorf("%s: %g, want %g within %g; %s", c.name, c.got, c.want, c.near, c.source)
		}
	}
	if !slices.IsSortedFunc(movements[:], func(a, b struct {
		share float64
		most  int
	}) int {
		return b.most - a.most
	}) {
		t.Error("movements do not fall with the share")
	}
}
