package method

import (
	"strings"
	"testing"

	"ramnest/force/planar"
	"ramnest/force/unit"
)

// lid is an invented small lid: 60 N, occasional, everything known.
func lid() Demand {
	return Demand{
		DesignForce: 60, P50: 52, Worst: 70, PeakForce: 55, Work: 90, Stroke: 3, SeatForce: 0,
		RatePerHour: 12, HoursPerDay: 1, ActionSeconds: 1,
		NestSize: [3]float64{60, 50, 25}, AnvilHeight: 20, PartStackHeight: 10, AnvilMass: 0.1, UpperMass: 0.02,
		ShockLimit: 2000, JointStiffness: 500,
	}
}

func with(change func(*Demand)) Demand {
	d := lid()
	change(&d)
	return d
}

// push sets force, worst case and work together.
func push(d *Demand, f float64) {
	d.P50, d.Worst, d.PeakForce, d.Work, d.DesignForce = 0.9*f, 1.15*f, 0.92*f, 1.5*f, f
}

// pair is a bench with a press to skip and one that does the work.
func pair(small Press) Bench {
	return Bench{Presses: []Press{{Name: "good press", Rated: 8896, Ratio: 20, RamSquare: 28, DaylightMax: 140, Throat: 70}, small}}
}

func TestDecisions(t *testing.T) {
	shop := Bench{Presses: []Press{{Name: "bench press", Rated: 8896, Ratio: 20, RamSquare: 28, DaylightMax: 140, Throat: 70}}}
	compound := Bench{Presses: []Press{{Name: "compound press", Rated: 9800, Ratio: 40, RamSquare: 28, DaylightMax: 140, Throat: 70}}}
	for _, c := range []struct {
		name    string
		d       Demand
		b       Bench
		forced  *Forced
		chosen  Method
		verdict map[Method]Verdict
		reason  string // part of the decision's reason
		of      Method // part is looked for in this option's reason; empty: in the decision's
	}{
		{"a thumb does it", with(func(d *Demand) { push(d, 20) }), Bench{}, nil, ByHand, map[Method]Verdict{ByHand: Pass}, "by hand: one thumb, within every limit; the nearest is ", ""},
		{"two thumbs", with(func(d *Demand) { push(d, 40) }), Bench{}, nil, ByHand, map[Method]Verdict{ByHand: Pass}, "two thumbs, within every limit; the nearest is hand force, 40 of 45 N", ""},
		{"both palms", lid(), Bench{}, nil, ByHand, map[Method]Verdict{ByHand: Pass}, "by hand: both palms, standing, within every limit; the nearest is hand force, 60 of 80 N", ""},
		{"the worst case is more than the action gives", with(func(d *Demand) { d.Worst = 250 }), Bench{Without: []string{"mallet", "press"}}, nil, ByHand, map[Method]Verdict{ByHand: Conditional}, "both palms, standing, only if an ergonomist agrees, because of worst case, 250 N where 200 N is the most", ""},
		{"the same lid once a minute for 90 min", with(func(d *Demand) { d.RatePerHour, d.HoursPerDay = 60, 1.5 }), Bench{}, nil, ByPress, map[Method]Verdict{ByHand: Conditional, ByMallet: Conditional}, "arbor press: 0.5 ton class, one hand on the lever, within every limit; ", ""},
		{"the same lid on a line", with(func(d *Demand) { d.RatePerHour, d.HoursPerDay = 360, 7.5 }), Bench{}, nil, ByPress, map[Method]Verdict{ByHand: Conditional, ByMallet: Fail}, "both palms, standing, zone to be avoided, only if an ergonomist agrees, because of hand force, 60 N where 20 N is the most", ByHand},
		{"too much for hands, one blow", with(func(d *Demand) { push(d, 240) }), Bench{}, nil, ByMallet, map[Method]Verdict{ByHand: Fail}, "light rubber mallet 0.34 kg at 3 m/s, nest in the bench vise 100 mm, within every limit; ", ""},
		{"brittle", with(func(d *Demand) { push(d, 240); d.Brittle = true }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused, brittle part", ByMallet},
		{"shock-sensitive", with(func(d *Demand) { push(d, 240); d.ShockSensitive = true }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused, shock-sensitive part", ByMallet},
		{"electronics", with(func(d *Demand) { push(d, 240); d.Electronics = true }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused, electronics", ByMallet},
		{"latch across layers", with(func(d *Demand) { push(d, 240); d.AcrossLayers = true }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused, a latch bends across", ByMallet},
		{"permanent joint", with(func(d *Demand) { push(d, 240); d.Permanent = true }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Conditional}, "only if the engineer responsible agrees, permanent joint", ByMallet},
		{"a blow over the shock limit", with(func(d *Demand) { push(d, 240); d.ShockLimit = 150 }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused for shock, 825 N where 150 N is the most", ByMallet},
		{"the head bounces", with(func(d *Demand) { push(d, 1200); d.Work = 1000 }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused for force a blow must reach, 1200 N where 617 N is the most", ByMallet},
		{"too many blows", with(func(d *Demand) { push(d, 240); d.Work = 30000 }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused for blows, 11 where 5 is the most", ByMallet},
		{"a heavy anvil wastes the blow", with(func(d *Demand) { push(d, 240); d.AnvilMass = 1.2 }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Conditional}, "only if the engineer responsible agrees, because of weight of anvil and upper part, 1.22 kg where 0.794 kg is the most", ByMallet},
		{"vise too narrow", with(func(d *Demand) { push(d, 240) }), Bench{Vises: []Vise{{Name: "toy vise", JawWidth: 60, Opening: 15, Depth: 30}}}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused for vise opening, 20 mm where 15 mm is the most", ByMallet},
		{"vise too shallow", with(func(d *Demand) { push(d, 240) }), Bench{Vises: []Vise{{Name: "toy vise", JawWidth: 60, Opening: 50, Depth: 10}}}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused for vise depth, 25 mm where 10 mm is the most", ByMallet},
		{"nest wider than the jaws hold", with(func(d *Demand) { push(d, 240); d.NestSize[0] = 260 }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused for vise jaws, 260 mm where 200 mm is the most (our own limit)", ByMallet},
		{"nothing to strike with", with(func(d *Demand) { push(d, 240) }), Bench{Without: []string{"mallet"}}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "the shop has no mallet and vise", ByMallet},
		{"the plate decides", with(func(d *Demand) { push(d, 6000) }), Bench{Presses: []Press{{Name: "strong lever", Rated: 8896, Ratio: 300, RamSquare: 28, DaylightMax: 140, Throat: 70}}}, nil, None, map[Method]Verdict{ByPress: Fail}, "refused for rated force with margin, 6000 N where 5338 N is the most", ByPress},
		{"the worst case decides", with(func(d *Demand) { push(d, 5000); d.Worst = 9500 }), Bench{Presses: []Press{{Name: "strong lever", Rated: 8896, Ratio: 300, RamSquare: 28, DaylightMax: 140, Throat: 70}}}, nil, None, map[Method]Verdict{ByPress: Fail}, "refused for worst case against the plate, 9500 N where 8896 N is the most", ByPress},
		{"the lever decides at the line", with(func(d *Demand) { push(d, 300); d.RatePerHour, d.HoursPerDay = 360, 7.5 }), shop, nil, ByPress, map[Method]Verdict{ByPress: Conditional}, "bench press, zone not recommended, only if an ergonomist agrees, because of lever effort, 17.6 N where 14.5 N is the most", ""},
		{"a compound lever brings it back", with(func(d *Demand) { push(d, 300); d.RatePerHour, d.HoursPerDay = 360, 7.5 }), compound, nil, ByPress, map[Method]Verdict{ByPress: Pass}, "compound press, both hands on the lever, within every limit", ""},
		{"nothing manual", with(func(d *Demand) { push(d, 3000); d.RatePerHour, d.HoursPerDay = 360, 7.5 }), Bench{}, nil, None, map[Method]Verdict{ByHand: Fail, ByMallet: Fail, ByPress: Fail}, "no manual method passes. By hand: both palms, standing, refused for largest hand force, 3000 N where 84.9 N is the most", ""},
		{"no daylight", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.NestSize[2] = 110 }), shop, nil, None, map[Method]Verdict{ByPress: Fail}, "refused for daylight, 153 mm where 140 mm is the most", ByPress},
		{"no stroke", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.Work = 2000 }), Bench{Presses: []Press{{Name: "short press", Rated: 8896, Ratio: 20, RamSquare: 28, DaylightMax: 140, RamStroke: 8, Throat: 70}}}, nil, None, map[Method]Verdict{ByPress: Fail}, "refused for ram stroke, 13 mm where 8 mm is the most", ByPress},
		{"no throat", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.NestSize = [3]float64{200, 180, 25} }), shop, nil, None, map[Method]Verdict{ByPress: Fail}, "refused for throat, 90 mm where 70 mm is the most", ByPress},
		{"an off-centre thrust line helps the throat", with(func(d *Demand) {
			push(d, 900)
			d.Brittle = true
			d.NestSize = [3]float64{200, 180, 25}
			d.Thrust = planar.Point{Y: -30}
		}), shop, nil, ByPress, map[Method]Verdict{ByPress: Pass}, "within every limit", ""},
		{"the thrust line leaves the ram", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.ThrustWander = 20 }), shop, nil, None, map[Method]Verdict{ByPress: Fail}, "refused for ram face, 20 mm where 14 mm is the most (our own limit)", ByPress},
		{"the ram binds", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.ThrustWander = 150 }), Bench{Presses: []Press{{Name: "wide ram", Rated: 8896, Ratio: 20, RamSquare: 300, Guide: 80, DaylightMax: 140, Throat: 70}}}, nil, None, map[Method]Verdict{ByPress: Fail}, "refused for thrust line off the ram axis, 150 mm where 133 mm is the most (our own limit)", ByPress},
		{"no press", with(func(d *Demand) { push(d, 900); d.Brittle = true }), Bench{Without: []string{"press"}}, nil, None, map[Method]Verdict{ByPress: Fail}, "the shop has no arbor press", ByPress},
		{"geometry not known yet", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.NestSize, d.AnvilHeight = [3]float64{}, 0 }), shop, nil, ByPress, map[Method]Verdict{ByPress: Pass}, ". Not known yet: daylight, throat", ""},
		{"no time at all", with(func(d *Demand) { push(d, 10); d.RatePerHour, d.ActionSeconds = 1300, 3 }), Bench{}, nil, None, map[Method]Verdict{ByHand: Fail, ByPress: Fail}, "time under force in an hour", ByHand},
		{"past eight hours", with(func(d *Demand) { d.HoursPerDay = 9 }), Bench{Without: []string{"mallet"}}, nil, None, map[Method]Verdict{ByHand: Fail, ByPress: Fail}, "no published limit for 12 an hour of 1 s over 9 h", ByHand},
		{"a mallet forty times an hour", with(func(d *Demand) { push(d, 240); d.RatePerHour = 40 }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Conditional}, "only if an ergonomist and the engineer responsible agree, because of repetition, 40 an hour where 30 an hour is the most (our own limit)", ByMallet},
		{"a mallet on a line", with(func(d *Demand) { push(d, 240); d.RatePerHour = 200 }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused for largest repetition, 200 an hour where 60 an hour is the most (our own limit)", ByMallet},
		{"a blow tips the nest out of the vise", with(func(d *Demand) {
			push(d, 240)
			d.NestSize, d.Thrust = [3]float64{120, 100, 25}, planar.Point{Y: 45}
		}), Bench{Vises: []Vise{{Name: "weak vise", JawWidth: 100, Opening: 80, Depth: 55, ClampForce: 300}}}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused for tip-out across the jaws, 55 mm where 26.8 mm is the most (our own limit)", ByMallet},
		{"a blow off the end of the jaws", with(func(d *Demand) {
			push(d, 240)
			d.NestSize, d.Thrust = [3]float64{120, 60, 25}, planar.Point{X: 50}
		}), Bench{Vises: []Vise{{Name: "weak vise", JawWidth: 70, Opening: 80, Depth: 55, ClampForce: 300}}}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused for tip-out along the jaws, 60 mm where 37.5 mm is the most (our own limit)", ByMallet},
		{"a press that is not bolted down tips", with(func(d *Demand) { push(d, 900); d.Brittle = true }), Bench{Presses: []Press{{Name: "loose press", Rated: 8896, Ratio: 20, RamSquare: 28, DaylightMax: 140, Throat: 70, Mass: 16, NotBolted: true}}}, nil, None, map[Method]Verdict{ByPress: Fail}, "refused for tipping of a press that is not bolted down, 52.9 N where 26.2 N is the most (our own limit)", ByPress},
		{"a loose press of unknown mass", with(func(d *Demand) { push(d, 900); d.Brittle = true }), Bench{Presses: []Press{{Name: "loose press", Rated: 8896, Ratio: 20, RamSquare: 28, DaylightMax: 140, Throat: 70, NotBolted: true}}}, nil, None, map[Method]Verdict{ByPress: Fail}, "the press is not bolted down and its mass is not known", ByPress},
		{"a heavy loose press with a wide base stands", with(func(d *Demand) { push(d, 900); d.Brittle = true }), Bench{Presses: []Press{{Name: "loose press", Rated: 8896, Ratio: 20, RamSquare: 28, DaylightMax: 140, Throat: 70, Mass: 80, BaseDepth: 300, LeverHeight: 500, NotBolted: true}}}, nil, ByPress, map[Method]Verdict{ByPress: Pass}, "loose press, both hands on the lever, within every limit", ""},
		{"a plate over a wide slot", with(func(d *Demand) { push(d, 900); d.Brittle = true }), Bench{Presses: []Press{{Name: "slotted press", Rated: 8896, Ratio: 20, RamSquare: 28, DaylightMax: 140, Throat: 70, TableSlot: 40}}}, nil, ByPress, map[Method]Verdict{ByPress: Pass}, "slotted press, both hands on the lever, a steel plate of 9 mm under the nest, within every limit", ""},
		{"the plate over the slot takes the daylight", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.NestSize[2] = 90 }), Bench{Presses: []Press{{Name: "slotted press", Rated: 8896, Ratio: 20, RamSquare: 28, DaylightMax: 140, Throat: 70, TableSlot: 40}}}, nil, None, map[Method]Verdict{ByPress: Fail}, "refused for daylight, 142 mm where 140 mm is the most", ByPress},
		{"a long pull of the lever", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.Stroke = 40 }), Bench{Presses: []Press{{Name: "short lever", Rated: 8896, Ratio: 20, RamSquare: 28, DaylightMax: 240, Throat: 70, Lever: 300}}}, nil, ByPress, map[Method]Verdict{ByPress: Conditional}, "only if the engineer responsible agrees, because of swing of the lever under force, 153 deg where 115 deg is the most (our own limit)", ByPress},
		{"a ram that marks the anvil", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.AnvilBearing = 2 }), Bench{Presses: []Press{{Name: "thin ram", Rated: 8896, Ratio: 20, RamSquare: 20, RamBore: 8, DaylightMax: 140, Throat: 70}}}, nil, None, map[Method]Verdict{ByPress: Fail}, "refused for pressure under the ram, 2.57 MPa where 2 MPa is the most", ByPress},
		{"work not known, so the blow was not reckoned", with(func(d *Demand) { push(d, 240); d.Work = 0 }), Bench{Without: []string{"press"}}, nil, ByMallet, map[Method]Verdict{ByMallet: Conditional}, "only if the engineer responsible agrees, work or stroke of the joint not known: the blow was not reckoned. Not known yet: blows", ""},
		{"two people must agree", with(func(d *Demand) { push(d, 240); d.Permanent = true; d.RatePerHour = 40 }), Bench{Without: []string{"press"}}, nil, ByMallet, map[Method]Verdict{ByMallet: Conditional}, "only if the engineer responsible and an ergonomist agree, permanent joint", ""},
		{"the plate skips a press", with(func(d *Demand) { push(d, 950); d.Brittle = true }), pair(Press{Name: "weak press", Rated: 1500, Ratio: 40, RamSquare: 28, DaylightMax: 140, Throat: 70}), nil, ByPress, map[Method]Verdict{ByPress: Pass}, ". Skipped: weak press for rated force with margin", ""},
		{"the daylight skips a press", with(func(d *Demand) { push(d, 900); d.Brittle = true }), pair(Press{Name: "low press", Rated: 4448, Ratio: 40, RamSquare: 28, DaylightMax: 60, Throat: 70}), nil, ByPress, map[Method]Verdict{ByPress: Pass}, ". Skipped: low press for daylight", ""},
		{"the throat skips a press", with(func(d *Demand) { push(d, 900); d.Brittle = true }), pair(Press{Name: "shallow press", Rated: 4448, Ratio: 40, RamSquare: 28, DaylightMax: 140, Throat: 20}), nil, ByPress, map[Method]Verdict{ByPress: Pass}, ". Skipped: shallow press for throat", ""},
		{"the ram skips a press", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.ThrustWander = 9 }), pair(Press{Name: "thin press", Rated: 4448, Ratio: 40, RamSquare: 16, DaylightMax: 140, Throat: 70}), nil, ByPress, map[Method]Verdict{ByPress: Pass}, ". Skipped: thin press for ram face", ""},
		{"the lever skips a press", with(func(d *Demand) { push(d, 900); d.Brittle = true }), pair(Press{Name: "direct press", Rated: 4448, Ratio: 5, RamSquare: 28, DaylightMax: 140, Throat: 70}), nil, ByPress, map[Method]Verdict{ByPress: Pass}, ". Skipped: direct press for lever effort", ""},
		{"a ratio from lever and pinion", with(func(d *Demand) { push(d, 900); d.Brittle = true }), Bench{Presses: []Press{{Name: "measured press", Rated: 8896, Lever: 400, PinionModule: 3, PinionTeeth: 12, RamSquare: 28, DaylightMax: 140, Throat: 70}}}, nil, ByPress, map[Method]Verdict{ByPress: Pass}, "the nearest is lever effort, 47.6 of 58 N", ""},
		{"forced and fine", lid(), Bench{}, &Forced{Method: ByPress}, ByPress, nil, "as the job asks, arbor press", ""},
		{"forced and refused", with(func(d *Demand) { push(d, 240); d.Brittle = true }), Bench{}, &Forced{Method: ByMallet, Override: "  "}, None, nil, "gives no reason to override. Mallet and vise: light rubber mallet", ""},
		{"forced and overridden", with(func(d *Demand) { push(d, 900) }), Bench{}, &Forced{Method: ByHand, Override: "trial on scrap"}, ByHand, nil, "OVERRIDE by the job (trial on scrap). ", ""},
		{"a plain refusal is not overridden", with(func(d *Demand) { push(d, 240); d.Brittle = true }), Bench{}, &Forced{Method: ByMallet, Override: "trial on scrap"}, None, nil, "a plain refusal, which no reason lifts: brittle part", ""},
		{"forced to what is no method", lid(), Bench{}, &Forced{Method: "hammer", Override: "why not"}, None, nil, `asks for "hammer", which is no method`, ""},
		{"forced to none", lid(), Bench{}, &Forced{Method: None}, None, nil, "the job asks for no manual method", ""},
		{"no force", with(func(d *Demand) { d.DesignForce = 0 }), Bench{}, nil, None, map[Method]Verdict{ByHand: Fail, ByMallet: Fail, ByPress: Fail}, "demand.design_force: 0 N; must be above 0", ""},
		{"thrust line outside the nest", with(func(d *Demand) { d.Thrust.X = 31 }), Bench{}, nil, None, map[Method]Verdict{ByHand: Fail}, "demand.thrust.x: 31 mm; lies outside the nest", ""},
		{"a press without a ratio", lid(), Bench{Presses: []Press{{Name: "p", Rated: 5000}}}, nil, None, map[Method]Verdict{ByHand: Fail}, "bench.presses[0].ratio: 0; is missing or out of range", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := Choose(c.d, c.b, c.forced)
			if got.Chosen != c.chosen {
				t.Errorf("chosen %q, want %q: %s", got.Chosen, c.chosen, got.Reason)
			}
			checkShape(t, got)
			text := got.Reason
			for _, a := range got.Options {
				if want, ok := c.verdict[a.Method]; ok && a.Verdict != want {
					t.Errorf("%s: %s, want %s: %s", a.Method, a.Verdict, want, a.Reason)
				}
				if a.Method == c.of {
					text = a.Reason
				}
			}
			if !strings.Contains(text.String(), c.reason) {
				t.Errorf("reason %q does not say %q", text, c.reason)
			}
		})
	}
}

// checkShape holds what every decision promises.
func checkShape(t *testing.T, d Decision) {
	t.Helper()
	if len(d.Options) != 3 || d.Options[0].Method != ByHand || d.Options[1].Method != ByMallet || d.Options[2].Method != ByPress {
		t.Fatalf("options are not hand, mallet, press: %+v", d.Options)
	}
	if d.Reason.String() == "" {
		t.Error("no reason")
	}
	for _, a := range d.Options {
		if a.Reason.String() == "" || a.Governing == "" || a.Action.String() == "" {
			t.Errorf("%s: reason, governing limit or action is empty: %+v", a.Method, a)
		}
		if a.Method == d.Chosen && a.Verdict == Fail && !d.Overridden {
			t.Errorf("%s was chosen although it fails", a.Method)
		}
		for _, l := range a.Limits {
			if l.Source == "" || l.Name == "" {
				t.Errorf("limit without name or source: %+v", l)
			}
			if !(l.Utilisation >= 0 && l.Utilisation <= Beyond) {
				t.Errorf("%s: utilisation %g", l.Name, l.Utilisation)
			}
			if l.Open && l.OK {
				t.Errorf("%s: open and passed", l.Name)
			}
			if a.Verdict == Pass && !l.OK && !l.Open {
				t.Errorf("%s passes over its limit %s", a.Method, l.Name)
			}
		}
	}
}

func TestDecisionSaysWhatTipsIt(t *testing.T) {
	got := Choose(lid(), Bench{}, nil)
	if want := "by hand passes up to 80 N, the design force is 60 N; above that force the answer is mallet and vise; above 120 an hour the answer is arbor press"; got.Tipping.String() != want {
		t.Errorf("tipping %q, want %q", got.Tipping, want)
	}
	if got.RunnerUp != ByMallet {
		t.Errorf("runner-up %q, want mallet", got.RunnerUp)
	}
	if want := "next is mallet and vise: light rubber mallet 0.34 kg at 2 m/s, nest in the bench vise 100 mm, within every limit; the nearest is "; !strings.HasPrefix(got.Next.String(), want) {
		t.Errorf("next %q, want %q", got.Next, want)
	}
	if want := "the answer changes with the rate: a batch (60 an hour for 1.5 h) arbor press, a line (360 an hour for 7.5 h) arbor press; ten prototypes (12 an hour for 1 h) as here"; got.RateMatters != want {
		t.Errorf("rate %q, want %q", got.RateMatters, want)
	}
	if len(got.Sensitivity) != 3 || got.Sensitivity[0].Name != "P50" || got.Sensitivity[2].Force != 70 {
		t.Errorf("sensitivity %+v", got.Sensitivity)
	}
	if len(got.Advice) != 0 {
		t.Errorf("advice where the choice passes: %q", got.Advice)
	}
}

func TestTippingInWords(t *testing.T) {
	for _, c := range []struct {
		name string
		d    Demand
		want string
	}{
		// 145 N times 0.8, 0.5 of it for 4 h, half of that recommended, on 33:1 at 0.85.
		{"a pass that becomes a matter of judgement", with(func(d *Demand) { push(d, 800); d.Brittle = true; d.RatePerHour, d.HoursPerDay = 12, 4 }),
			"arbor press passes up to 813 N, the design force is 800 N; above that force the answer is arbor press on a condition; above 12 an hour the answer is arbor press on a condition"},
		{"conditional already", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.RatePerHour, d.HoursPerDay = 60, 4 }),
			"by hand would pass up to 32 N; arbor press would pass up to 651 N; the design force is 900 N"},
		{"none", with(func(d *Demand) { push(d, 9000); d.Brittle = true }), "by hand would pass up to 80 N; arbor press would pass up to 1627 N; the design force is 9000 N"},
		{"none, whatever the force", with(func(d *Demand) { d.Brittle, d.HoursPerDay = true, 9 }), "no force is small enough for any method as things stand"},
	} {
		if got := Choose(c.d, Bench{}, nil).Tipping; got.String() != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// A job whose verdict changes with the rate is told so, even where the method stays.
func TestRateMattersByVerdictToo(t *testing.T) {
	d := with(func(d *Demand) { push(d, 800); d.Brittle = true })
	got := Choose(d, Bench{}, nil)
	if want := "the answer changes with the rate: a line (360 an hour for 7.5 h) arbor press on a condition; ten prototypes (12 an hour for 1 h) and a batch (60 an hour for 1.5 h) as here"; got.RateMatters != want {
		t.Errorf("%q, want %q", got.RateMatters, want)
	}
	if r := got.ByRate[2]; r.Method != ByPress || r.Verdict != Conditional {
		t.Errorf("%+v", r)
	}
}

func TestNothingKnownPassesNothing(t *testing.T) {
	a := Assessment{Action: unit.Say("a press"), Limits: []Limit{newLimit("x", 1, 2, "N", own("y")).unknown("z")}}.weigh().worded(unit.Say(""))
	if a.Verdict != Fail || a.Governing != "nothing known" || a.Reason.String() != "a press, no limit could be computed" {
		t.Errorf("%+v", a)
	}
	if a := weigh(None, lid(), Bench{}); a.Verdict != Fail || a.Method != None {
		t.Errorf("none is %+v", a)
	}
	if s := malletShift(Demand{RatePerHour: 10, HoursPerDay: 0.01}); s != nil {
		t.Errorf("half a minute of work a day: %+v", s)
	}
}

func TestAdviceIsTrue(t *testing.T) {
	d := with(func(d *Demand) { push(d, 700); d.Brittle = true; d.RatePerHour, d.HoursPerDay = 360, 7.5 })
	got := Choose(d, Bench{}, nil)
	text := unit.Join(got.Advice, "\n").String()
	for _, want := range []string{"arbor press passes", "12 an hour for one hour a day"} {
		if !strings.Contains(text, want) {
			t.Errorf("advice does not say %q:\n%s", want, text)
		}
	}
	d.RatePerHour, d.HoursPerDay = 12, 1
	if again := Choose(d, Bench{}, nil); again.Chosen != ByPress {
		t.Errorf("the advice was followed and gave %q: %s", again.Chosen, again.Reason)
	}
}

func TestDefaultsAreListed(t *testing.T) {
	got := unit.Join(Choose(Demand{DesignForce: 50}, Bench{}, nil).Defaults, "\n").String()
	for _, want := range []string{"rate: 60", "hours of this work a day: 8", "time under force", "mallets: generic", "vise: generic", "presses: generic", "rated force that is used: 0.6", "efficiency of rack", "guide length", "usable ram stroke", "mallet face", "vise jaws: 15 mm", "clamp force of the vise", "bolted to a bench", "speed of the blow", "stiffness of the joint"} {
		if !strings.Contains(got, want) {
			t.Errorf("defaults do not say %q:\n%s", want, got)
		}
	}
}
