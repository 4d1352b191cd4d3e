package workinstructions

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"ramnest/force/method"
)

func ids(list []Caution) []string {
	var out []string
	for _, c := range list {
		out = append(out, c.ID)
	}
	return out
}

// From facts to the exact set of cautions, none missing and none that does not
// apply. The sets are written out by hand from the published lists of hazards
// that the design collects for press, mallet and hand.
func TestCautionsFollowFromFacts(t *testing.T) {
	press := Facts{Method: method.ByPress, Anvil: true, RatedForce: 8896, WorstForce: 1500}
	mallet := Facts{Method: method.ByMallet, Anvil: true}
	hand := Facts{Method: method.ByHand}
	with := func(f Facts, change func(*Facts)) Facts {
		change(&f)
		return f
	}
	const (
		onPress  = "crush, dead stop, kick-back, lever extension, tipping, falling ram, guards, fragments, competent person"
		onMallet = "struck hand, dead stop, fragments, competent person"
	)
	for _, row := range []struct {
		name                     string
		facts                    Facts
		warning, caution, notice string
	}{
		{"no method", Facts{}, "", "", ""},
		{"method none", Facts{Method: method.None, Brittle: true}, "", "", ""},
		{"press", press, onPress, "strange sound", ""},
		{"press without anvil", Facts{Method: method.ByPress}, strings.Replace(onPress, "dead stop, ", "", 1), "strange sound", ""},
		{"mallet", mallet, onMallet, "bystanders, noise, vise, strange sound", ""},
		{"hand", hand, "", "palm strike, strain, pinch, strange sound, competent person", ""},
		{"hand with anvil", with(hand, func(f *Facts) { f.Anvil = true }), "", "palm strike, strain, pinch, dead stop, strange sound, competent person", ""},

		{"press, brittle", with(press, func(f *Facts) { f.Brittle = true }), onPress, "strange sound", "brittle"},
		{"mallet, brittle", with(mallet, func(f *Facts) { f.Brittle = true }), onMallet, "bystanders, noise, vise, strange sound", "brittle"},
		{"hand, brittle", with(hand, func(f *Facts) { f.Brittle = true }), "", "palm strike, strain, pinch, fragments, strange sound, competent person", "brittle"},
		{"press, shock", with(press, func(f *Facts) { f.ShockSensitive = true }), onPress, "strange sound", "shock"},
		{"press, electronics", with(press, func(f *Facts) { f.Electronics = true }), onPress, "strange sound", "electronics"},
		{"press, keep-outs", with(press, func(f *Facts) { f.KeepOuts = true }), onPress, "strange sound", "keep-out"},
		{"press, across layers", with(press, func(f *Facts) { f.AcrossLayers = true }), onPress, "strange sound", "across layers"},
		{"press, permanent", with(press, func(f *Facts) { f.Permanent = true }), onPress, "permanent, strange sound", ""},
		{"hand, permanent", with(hand, func(f *Facts) { f.Permanent = true }), "", "palm strike, strain, pinch, permanent, strange sound, competent person", ""},
		{"press, sharp", with(press, func(f *Facts) { f.SharpOrUncured = true }), onPress, "sharp or uncured, strange sound", ""},
		{"press, narrow opening", with(press, func(f *Facts) { f.Opening = 9.5 }), strings.Replace(onPress, "fragments", "fragments, narrow opening", 1), "strange sound", ""},
		{"press, opening too narrow for a finger", with(press, func(f *Facts) { f.Opening = 4 }), onPress, "strange sound", ""},
		{"press, wide opening", with(press, func(f *Facts) { f.Opening = 26 }), onPress, "strange sound", ""},
		{"press, latches overstrained", with(press, func(f *Facts) { f.Overstrained = 0.35 }), strings.Replace(onPress, "fragments", "fragments, overstrained latch", 1), "strange sound", ""},
		{"press, one in ten thousand jams", with(press, func(f *Facts) { f.Jammed = 0.0001 }), strings.Replace(onPress, "fragments", "fragments, jam", 1), "strange sound", ""},
		{"hand, some jam", with(hand, func(f *Facts) { f.Jammed = 0.02 }), "jam", "palm strike, strain, pinch, strange sound, competent person", ""},
		{"press, heavy anvil for the joint", with(press, func(f *Facts) { f.AnvilCloses = true }), onPress, "anvil closes latches, strange sound", ""},
		{"press, few overstrained", with(press, func(f *Facts) { f.Overstrained = 0.005 }), onPress, "strange sound", ""},
		{"press, eccentric", with(press, func(f *Facts) { f.EccentricThrust = true }), "crush, dead stop, kick-back, lever extension, tipping, falling ram, off centre, guards, fragments, competent person", "strange sound", ""},
		{"mallet, eccentric", with(mallet, func(f *Facts) { f.EccentricThrust = true }), onMallet, "off centre, bystanders, noise, vise, strange sound", ""},
		{"hand, eccentric", with(hand, func(f *Facts) { f.EccentricThrust = true }), "", "palm strike, strain, pinch, strange sound, competent person", "off centre"},
		{"light tooling", with(press, func(f *Facts) { f.ToolMassKg = 2.99 }), onPress, "strange sound", ""},
		{"heavy tooling", with(press, func(f *Facts) { f.ToolMassKg = 3 }), onPress, "heavy tooling, strange sound", ""},
		{"hand, heavy tooling", with(hand, func(f *Facts) { f.ToolMassKg = 5 }), "", "palm strike, strain, pinch, heavy tooling, strange sound, competent person", ""},
		{"worst case at the rated force", with(press, func(f *Facts) { f.WorstForce = 8896 }), onPress, "strange sound", ""},
		{"worst case above the rated force", with(press, func(f *Facts) { f.WorstForce = 8897 }), "above rated, " + onPress, "strange sound", ""},
		{"rated force not known", with(press, func(f *Facts) { f.RatedForce, f.WorstForce = 0, 9000 }), onPress, "strange sound", ""},
		{"condition", with(press, func(f *Facts) { f.Conditional = true }), "condition, " + onPress, "strange sound", ""},
		{"override", with(hand, func(f *Facts) { f.Overridden = true }), "override", "palm strike, strain, pinch, strange sound, competent person", ""},
		{"override says more than a condition", with(hand, func(f *Facts) { f.Overridden, f.Conditional = true, true }), "override", "palm strike, strain, pinch, strange sound, competent person", ""},
		{"everything by press", Facts{Method: method.ByPress, Overridden: true, Brittle: true, ShockSensitive: true, Electronics: true, KeepOuts: true, SharpOrUncured: true, Permanent: true, AcrossLayers: true, EccentricThrust: true, Anvil: true, AnvilHeld: true, ToolMassKg: 9, RatedForce: 100, WorstForce: 101},
			"override, above rated, crush, dead stop, kick-back, lever extension, tipping, falling ram, off centre, guards, fragments, competent person",
			"heavy tooling, sharp or uncured, permanent, strange sound", "brittle, shock, electronics, keep-out, across layers"},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := Cautions(row.facts)
			for _, g := range []struct {
				signal Signal
				want   string
			}{{Warning, row.warning}, {Careful, row.caution}, {Notice, row.notice}} {
				of := slices.DeleteFunc(slices.Clone(got), func(c Caution) bool { return c.Signal != g.signal })
				if have := strings.Join(ids(of), ", "); have != g.want {
					t.Errorf("%s\n got %s\nwant %s", g.signal, have, g.want)
				}
			}
		})
	}
}

// anyFacts draws facts at random.
func anyFacts(r *rand.Rand) Facts {
	b := func() bool { return r.IntN(2) == 0 }
	return Facts{
		Method:     []method.Method{method.ByHand, method.ByMallet, method.ByPress}[r.IntN(3)],
		Overridden: b(), Conditional: b(), Brittle: b(), ShockSensitive: b(), Electronics: b(), KeepOuts: b(), SharpOrUncured: b(),
		Permanent: b(), AcrossLayers: b(), EccentricThrust: b(), Anvil: b(), AnvilHeld: b(),
		ToolMassKg: 6 * r.Float64(), RatedForce: 2000 * r.Float64(), WorstForce: 2000 * r.Float64(),
	}
}

// What a caution must look like, whatever the facts: the parts that the
// standards for safety messages ask for, in their order of severity.
func TestCautionsAreComplete(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 5000 {
		f := anyFacts(r)
		list := Cautions(f)
		seen := map[string]bool{}
		rank := 0
		for i, c := range list {
			switch {
			case c.Number != i+1:
				t.Fatalf("%+v: caution %d has number %d", f, i+1, c.Number)
			case seen[c.ID]:
				t.Fatalf("%+v: %q twice", f, c.ID)
			case c.Signal.rank() < rank:
				t.Fatalf("%+v: %s after a less grave one", f, c.ID)
			case c.Hazard == "" || c.Consequence == "" || len(c.Avoid) == 0 || len(c.Places) == 0:
				t.Fatalf("%q is not complete: %+v", c.ID, c)
			case (c.Symbol == "") != (c.Signal == Notice):
				t.Fatalf("%q: signal %s with symbol %q", c.ID, c.Signal, c.Symbol)
			}
			for _, a := range c.Avoid {
				low := strings.ToLower(a)
				if !strings.HasSuffix(a, ".") || strings.Contains(low, "please") || strings.Contains(low, "should") {
					t.Fatalf("%q: %q is no order", c.ID, a)
				}
			}
			seen[c.ID], rank = true, c.Signal.rank()
		}
	}
}

// A further hazard adds cautions and takes none away, but for a condition that
// an override outranks.
func TestFurtherHazardTakesNoCautionAway(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 5000 {
		f := anyFacts(r)
		g := f
		more := anyFacts(r)
		g.Brittle, g.ShockSensitive, g.Electronics, g.KeepOuts = f.Brittle || more.Brittle, f.ShockSensitive || more.ShockSensitive, f.Electronics || more.Electronics, f.KeepOuts || more.KeepOuts
		g.SharpOrUncured, g.Permanent, g.AcrossLayers, g.EccentricThrust = f.SharpOrUncured || more.SharpOrUncured, f.Permanent || more.Permanent, f.AcrossLayers || more.AcrossLayers, f.EccentricThrust || more.EccentricThrust
		g.Anvil, g.Overridden, g.ToolMassKg, g.WorstForce = f.Anvil || more.Anvil, f.Overridden || more.Overridden, max(f.ToolMassKg, more.ToolMassKg), max(f.WorstForce, more.WorstForce)
		after := ids(Cautions(g))
		for _, id := range ids(Cautions(f)) {
			if !slices.Contains(after, id) && !(id == "condition" && g.Overridden) {
				t.Fatalf("%q is gone\nfrom %+v\nto   %+v", id, f, g)
			}
		}
	}
}

func TestEquipmentFollowsFromFacts(t *testing.T) {
	press, mallet, hand := Facts{Method: method.ByPress}, Facts{Method: method.ByMallet}, Facts{Method: method.ByHand}
	for _, row := range []struct {
		name    string
		facts   []Facts
		symbols []Symbol
		atPress bool
	}{
		{"hand", []Facts{hand}, []Symbol{EyeGuard}, false},
		{"mallet", []Facts{mallet}, []Symbol{EyeGuard, EarGuard}, false},
		{"press", []Facts{press}, []Symbol{EyeGuard}, true},
		{"hand and mallet", []Facts{hand, mallet}, []Symbol{EyeGuard, EarGuard}, false},
		{"heavy, sharp", []Facts{{Method: method.ByPress, ToolMassKg: 4, SharpOrUncured: true}}, []Symbol{EyeGuard, Footwear, Gloves}, true},
	} {
		var got []Symbol
		atPress := false
		for _, g := range Equipment(row.facts...) {
			if g.Symbol != "" {
				got = append(got, g.Symbol)
			}
			atPress = atPress || strings.Contains(g.Text, "no gloves while the lever moves")
		}
		if !slices.Equal(got, row.symbols) || atPress != row.atPress {
			t.Errorf("%s: %v, order for the press %v; want %v, %v", row.name, got, atPress, row.symbols, row.atPress)
		}
	}
}

// What step and tooling say beside the facts is not forgotten.
func TestFactsAreGathered(t *testing.T) {
	s := demoSheet(t)
	s.Tooling[1].Mass = 3.5
	s.Steps[0].Force.Worst = 50_000
	have := ids(s.Cautions())
	for _, want := range []string{"dead stop", "off centre", "permanent", "heavy tooling", "above rated"} {
		if !slices.Contains(have, want) {
			t.Errorf("no caution %q; there are %v", want, have)
		}
	}
	s = malletSheet(t)
	s.Steps[0].Decision.Options[1].Verdict = method.Conditional
	if have := ids(s.Cautions()); !slices.Contains(have, "condition") {
		t.Errorf("a conditional verdict brings no caution; there are %v", have)
	}
	if have := ids(overrideSheet(t).Cautions()); !slices.Contains(have, "override") {
		t.Errorf("an override brings no caution; there are %v", have)
	}
}

// Two steps with the same hazard share a caution; another wording is another
// caution.
func TestStepsShareCautions(t *testing.T) {
	list := twoStepSheet(t).Cautions()
	n := map[string]int{}
	for i, c := range list {
		n[c.ID]++
		if c.Number != i+1 {
			t.Errorf("caution %d has number %d", i+1, c.Number)
		}
	}
	if n["strange sound"] != 1 || n["competent person"] != 1 || n["dead stop"] != 2 {
		t.Errorf("strange sound %d, competent person %d, dead stop %d times; want 1, 1, 2", n["strange sound"], n["competent person"], n["dead stop"])
	}
}

// Every caution of a sheet stands on the pages before the first step and again
// beside the step; no other one stands anywhere.
func TestCautionsOnThePages(t *testing.T) {
	all := map[string]bool{}
	r := rand.New(rand.NewPCG(5, 6))
	for range 3000 {
		for _, c := range Cautions(anyFacts(r)) {
			all[c.Hazard] = true
		}
	}
	for name, s := range variants(t) {
		w := write(t, name, s)
		before, after, found := strings.Cut(flat(strings.Join(w.pages, "\n")), " Set-up ")
		if !found {
			t.Fatalf("%s: no set-up", name)
		}
		want := map[string]bool{}
		for _, c := range s.Cautions() {
			want[c.Hazard] = true
			for _, text := range append([]string{c.Hazard, c.Consequence}, c.Avoid...) {
				if !strings.Contains(before, text) {
					t.Errorf("%s: %q does not stand up front", name, text)
				}
			}
			if !strings.Contains(after, c.Hazard) || !strings.Contains(after, c.Avoid[0]) {
				t.Errorf("%s: %q does not stand where it bites", name, c.Hazard)
			}
		}
		for hazard := range all {
			if !want[hazard] && strings.Contains(before+after, hazard) {
				t.Errorf("%s: %q does not apply", name, hazard)
			}
		}
	}
}
