package method

import (
	"strings"
	"testing"

	"ramnest/force"
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
		{"a thumb does it", with(func(d *Demand) { push(d, 20) }), Bench{}, nil, ByHand, map[Method]Verdict{ByHand: Pass}, "one thumb: within every limit", ""},
		{"two thumbs", with(func(d *Demand) { push(d, 40) }), Bench{}, nil, ByHand, map[Method]Verdict{ByHand: Pass}, "two thumbs: within every limit, nearest hand force: 40 of 45 N", ""},
		{"both palms", lid(), Bench{}, nil, ByHand, map[Method]Verdict{ByHand: Pass}, "both palms, standing: within every limit, nearest hand force: 60 of 80 N", ""},
		{"the same lid once a minute for 90 min", with(func(d *Demand) { d.RatePerHour, d.HoursPerDay = 60, 1.5 }), Bench{}, nil, ByPress, map[Method]Verdict{ByHand: Conditional, ByMallet: Conditional}, "0.5 ton class: within every limit", ""},
		{"the same lid on a line", with(func(d *Demand) { d.RatePerHour, d.HoursPerDay = 360, 7.5 }), Bench{}, nil, ByPress, map[Method]Verdict{ByHand: Conditional, ByMallet: Fail}, "hand force: 60 of 20 N", ByHand},
		{"too much for hands, one blow", with(func(d *Demand) { push(d, 240) }), Bench{}, nil, ByMallet, map[Method]Verdict{ByHand: Fail}, "rubber mallet 340 g at 2 m/s, nest in the 100 mm bench vise: within every limit", ""},
		{"brittle", with(func(d *Demand) { push(d, 240); d.Brittle = true }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused, brittle part", ByMallet},
		{"shock-sensitive", with(func(d *Demand) { push(d, 240); d.ShockSensitive = true }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused, shock-sensitive part", ByMallet},
		{"electronics", with(func(d *Demand) { push(d, 240); d.Electronics = true }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused, electronics", ByMallet},
		{"latch across layers", with(func(d *Demand) { push(d, 240); d.AcrossLayers = true }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused, a latch bends across", ByMallet},
		{"permanent joint", with(func(d *Demand) { push(d, 240); d.Permanent = true }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Conditional}, "only if a competent person agrees, over permanent joint", ByMallet},
		{"a blow over the shock limit", with(func(d *Demand) { push(d, 240); d.ShockLimit = 150 }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused, shock:", ByMallet},
		{"the head bounces", with(func(d *Demand) { push(d, 1200); d.Work = 1000 }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "force a blow must reach: 1200 of", ByMallet},
		{"too many blows", with(func(d *Demand) { push(d, 240); d.Work = 30000 }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused, blows:", ByMallet},
		{"a heavy anvil wastes the blow", with(func(d *Demand) { push(d, 240); d.AnvilMass = 1.2 }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Conditional}, "weight of anvil and upper part", ByMallet},
		{"vise too narrow", with(func(d *Demand) { push(d, 240) }), Bench{Vises: []Vise{{Name: "toy vise", JawWidth: 60, Opening: 15, Depth: 30}}}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused, vise opening: 20 of 15 mm", ByMallet},
		{"vise too shallow", with(func(d *Demand) { push(d, 240) }), Bench{Vises: []Vise{{Name: "toy vise", JawWidth: 60, Opening: 50, Depth: 10}}}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused, vise depth: 25 of 10 mm", ByMallet},
		{"nest wider than the jaws hold", with(func(d *Demand) { push(d, 240); d.NestSize[0] = 260 }), Bench{}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "refused, vise jaws: 260 of 200 mm", ByMallet},
		{"nothing to strike with", with(func(d *Demand) { push(d, 240) }), Bench{Without: []string{"mallet"}}, nil, ByPress, map[Method]Verdict{ByMallet: Fail}, "the shop has no mallet and vise", ByMallet},
		{"the plate decides", with(func(d *Demand) { push(d, 6000) }), Bench{Presses: []Press{{Name: "strong lever", Rated: 8896, Ratio: 300, RamSquare: 28, DaylightMax: 140, Throat: 70}}}, nil, None, map[Method]Verdict{ByPress: Fail}, "rated force with margin: 6000 of 5338 N", ByPress},
		{"the worst case decides", with(func(d *Demand) { push(d, 5000); d.Worst = 9500 }), Bench{Presses: []Press{{Name: "strong lever", Rated: 8896, Ratio: 300, RamSquare: 28, DaylightMax: 140, Throat: 70}}}, nil, None, map[Method]Verdict{ByPress: Fail}, "worst case against the plate: 9500 of 8896 N", ByPress},
		{"the lever decides at the line", with(func(d *Demand) { push(d, 300); d.RatePerHour, d.HoursPerDay = 360, 7.5 }), shop, nil, ByPress, map[Method]Verdict{ByPress: Conditional}, "over lever effort: 17.6 of 14.5 N", ""},
		{"a compound lever brings it back", with(func(d *Demand) { push(d, 300); d.RatePerHour, d.HoursPerDay = 360, 7.5 }), compound, nil, ByPress, map[Method]Verdict{ByPress: Pass}, "compound press: within every limit", ""},
		{"nothing manual", with(func(d *Demand) { push(d, 3000); d.RatePerHour, d.HoursPerDay = 360, 7.5 }), Bench{}, nil, None, map[Method]Verdict{ByHand: Fail, ByMallet: Fail, ByPress: Fail}, "no manual method: by hand:", ""},
		{"no daylight", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.NestSize[2] = 110 }), shop, nil, None, map[Method]Verdict{ByPress: Fail}, "refused, daylight: 153 of 140 mm", ByPress},
		{"no stroke", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.Work = 2000 }), Bench{Presses: []Press{{Name: "short press", Rated: 8896, Ratio: 20, RamSquare: 28, DaylightMax: 140, RamStroke: 8, Throat: 70}}}, nil, None, map[Method]Verdict{ByPress: Fail}, "refused, ram stroke: 13 of 8 mm", ByPress},
		{"no throat", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.NestSize = [3]float64{200, 180, 25} }), shop, nil, None, map[Method]Verdict{ByPress: Fail}, "refused, throat: 90 of 70 mm", ByPress},
		{"an off-centre thrust line helps the throat", with(func(d *Demand) {
			push(d, 900)
			d.Brittle = true
			d.NestSize = [3]float64{200, 180, 25}
			d.Thrust = force.Point{Y: -30}
		}), shop, nil, ByPress, map[Method]Verdict{ByPress: Pass}, "within every limit", ""},
		{"the thrust line leaves the ram", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.ThrustWander = 20 }), shop, nil, None, map[Method]Verdict{ByPress: Fail}, "refused, ram face: 20 of 14 mm", ByPress},
		{"the ram binds", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.ThrustWander = 400 }), shop, nil, None, map[Method]Verdict{ByPress: Fail}, "the ram binds", ByPress},
		{"no press", with(func(d *Demand) { push(d, 900); d.Brittle = true }), Bench{Without: []string{"press"}}, nil, None, map[Method]Verdict{ByPress: Fail}, "the shop has no arbor press", ByPress},
		{"geometry not known yet", with(func(d *Demand) { push(d, 900); d.Brittle = true; d.NestSize, d.AnvilHeight = [3]float64{}, 0 }), shop, nil, ByPress, map[Method]Verdict{ByPress: Pass}, "still open: daylight, throat", ""},
		{"no time at all", with(func(d *Demand) { push(d, 10); d.RatePerHour, d.ActionSeconds = 1300, 3 }), Bench{}, nil, None, map[Method]Verdict{ByHand: Fail, ByPress: Fail}, "time under force in an hour", ByHand},
		{"past eight hours", with(func(d *Demand) { d.HoursPerDay = 9 }), Bench{Without: []string{"mallet"}}, nil, None, map[Method]Verdict{ByHand: Fail, ByPress: Fail}, "no published limit for 12 an hour of 1 s over 9 h", ByHand},
		{"forced and fine", lid(), Bench{}, &Forced{Method: ByPress}, ByPress, nil, "as the job asks, arbor press", ""},
		{"forced and refused", with(func(d *Demand) { push(d, 240); d.Brittle = true }), Bench{}, &Forced{Method: ByMallet, Override: "  "}, None, nil, "gives no reason to override: mallet and vise", ""},
		{"forced and overridden", with(func(d *Demand) { push(d, 240); d.Brittle = true }), Bench{}, &Forced{Method: ByMallet, Override: "trial on scrap"}, ByMallet, nil, "OVERRIDE by the job (trial on scrap): mallet and vise", ""},
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
			if !strings.Contains(text, c.reason) {
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
	if d.Reason == "" {
		t.Error("no reason")
	}
	for _, a := range d.Options {
		if a.Reason == "" || a.Governing == "" || a.Action == "" {
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
	if want := "by hand passes up to 80 N, the design force is 60 N; above 120 an hour the answer is arbor press"; got.Tipping != want {
		t.Errorf("tipping %q, want %q", got.Tipping, want)
	}
	if got.RunnerUp != ByMallet {
		t.Errorf("runner-up %q, want mallet", got.RunnerUp)
	}
	if len(got.Sensitivity) != 3 || got.Sensitivity[0].Name != "P50" || got.Sensitivity[2].Force != 70 {
		t.Errorf("sensitivity %+v", got.Sensitivity)
	}
	if len(got.Advice) != 0 {
		t.Errorf("advice where the choice passes: %q", got.Advice)
	}
}

func TestAdviceIsTrue(t *testing.T) {
	d := with(func(d *Demand) { push(d, 700); d.Brittle = true; d.RatePerHour, d.HoursPerDay = 360, 7.5 })
	got := Choose(d, Bench{}, nil)
	text := strings.Join(got.Advice, "\n")
	for _, want := range []string{"arbor press passes", "12 an hour for one hour a day", "powered press"} {
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
	got := strings.Join(Choose(Demand{DesignForce: 50}, Bench{}, nil).Defaults, "\n")
	for _, want := range []string{"rate: 60", "hours of this work a day: 8", "time under force", "mallets: generic", "vise: generic", "presses: generic", "rated force that is used: 0.6", "efficiency of rack", "guide length", "usable ram stroke", "mallet face", "speed of the blow", "stiffness of the joint"} {
		if !strings.Contains(got, want) {
			t.Errorf("defaults do not say %q:\n%s", want, got)
		}
	}
}
