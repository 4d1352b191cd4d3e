package method

import (
	"math"
	"slices"
	"strings"
	"testing"

	"ramnest/force"
	"ramnest/force/unit"
)

// hard is a lid that nothing manual passes at the line rate.
func hard() Demand {
	return with(func(d *Demand) { push(d, 900); d.Brittle = true; d.RatePerHour, d.HoursPerDay = 360, 7.5 })
}

func at(f float64) Demand {
	d := hard()
	push(&d, f)
	return d
}

func TestAdviseSortsByWhatHelpsMost(t *testing.T) {
	got := Advise(hard(), 60, Bench{}, []Alternative{
		{Change: FewerLatches, What: unit.Say("3 instead of 6"), Demand: at(450), Holds: 30},
		{Change: SlotCollar, Undone: "the collar has slots already"},
		{Change: Lubricate, What: unit.Say("friction 0.3"), Demand: at(620)},
		{Change: StaggerDepths, What: unit.Say("hooks 2 mm later"), Demand: at(380)},
		{Change: LeadAngle, What: unit.Say("30 deg"), Demand: at(950)},
		{Change: LessInterference, What: unit.Say("0.3 mm less"), Demand: at(15)},
		{Change: StaggerDepths, Demand: Demand{}},
	})
	want := []string{
		"less interference, 0.3 mm less: 15 N instead of 900 N (-98 %), by hand passes",
		"stagger depths, hooks 2 mm later: 380 N instead of 900 N (-58 %), arbor press passes",
		"fewer latches, 3 instead of 6: 450 N instead of 900 N (-50 %), arbor press if an ergonomist agrees; it comes apart at 30 N instead of 60 N",
		"lubricated friction, friction 0.3: 620 N instead of 900 N (-31 %), arbor press if an ergonomist agrees",
		"lead angle, 30 deg: 950 N instead of 900 N (+6 %), arbor press if an ergonomist agrees",
		"slots in the collar: not worked out, the collar has slots already",
		"stagger depths: not worked out, design_force: 0 N; must be above 0 (above 0, at most 1e+06 N)",
	}
	for i, o := range got {
		if o.Text.String() != want[i] {
			t.Errorf("%d: %q\nwant %q", i, o.Text, want[i])
		}
	}
	if len(got) != len(want) {
		t.Fatalf("%d outcomes, want %d", len(got), len(want))
	}
}

// A pass goes before a condition, and a lesser method before a greater one, whatever
// the force.
func TestAdvisePutsVerdictAndMethodBeforeForce(t *testing.T) {
	rare, often := at(60), at(350)
	rare.RatePerHour, rare.HoursPerDay = 12, 1
	often.RatePerHour = 1300
	got := Advise(hard(), 0, Bench{}, []Alternative{{What: unit.Say("often"), Demand: often}, {What: unit.Say("press"), Demand: at(40)}, {What: unit.Say("hand"), Demand: rare}, {What: unit.Say("more force"), Demand: at(400)}})
	var order []string
	for _, o := range got {
		order = append(order, o.What.String()+" "+string(o.Method)+" "+string(o.Verdict))
	}
	if want := []string{"hand hand pass", "press press pass", "more force press pass", "often press conditional"}; !slices.Equal(order, want) {
		t.Errorf("%q, want %q", order, want)
	}
}

// Every outcome is what Choose says of the changed joint, whatever order they come in.
func TestAdviseAgreesWithChoose(t *testing.T) {
	var alts []Alternative
	for i, c := range Changes() {
		alts = append(alts, Alternative{Change: c, Demand: at(900 / float64(i+1))}, Alternative{Change: c, Demand: at(7 * float64(i+1))})
	}
	got := Advise(hard(), 0, Bench{}, alts)
	for _, o := range got {
		free := Choose(o.Demand, Bench{}, nil)
		if o.Method != free.Chosen || o.Verdict != free.option(free.Chosen).Verdict {
			t.Errorf("%s: %s %s, Choose says %s", o.Text, o.Method, o.Verdict, free.Chosen)
		}
		if math.Abs(o.Saved-(1-o.Demand.DesignForce/900)) > 1e-12 {
			t.Errorf("%s: saved %g", o.Text, o.Saved)
		}
	}
	slices.Reverse(alts)
	for i, o := range Advise(hard(), 0, Bench{}, alts) {
		if o.Text.String() != got[i].Text.String() {
			t.Errorf("%d: %q, in another order %q", i, got[i].Text, o.Text)
		}
	}
	for i := range got[1:] {
		if got[i+1].Verdict.better(got[i].Verdict) || got[i+1].Verdict == got[i].Verdict && got[i+1].Method.rank() < got[i].Method.rank() {
			t.Errorf("%q stands before %q", got[i].Text, got[i+1].Text)
		}
	}
}

func TestAdviseRefusesWhatItCannotHold(t *testing.T) {
	bad := Bench{Presses: []Press{{Name: "p"}}}
	for _, c := range []struct {
		name string
		now  Demand
		b    Bench
		a    Alternative
		want string
	}{
		{"NaN", hard(), Bench{}, Alternative{Change: LeadAngle, Demand: at(math.NaN())}, "design_force: NaN N"},
		{"a bench with faults", hard(), bad, Alternative{Change: LeadAngle, Demand: at(400)}, "presses[0].rated_force"},
		{"nothing to compare with", Demand{}, Bench{}, Alternative{Change: LeadAngle, Demand: at(400)}, "the force without it is not known"},
	} {
		o := Advise(c.now, 0, c.b, []Alternative{c.a})[0]
		if o.Verdict != Fail || o.Method != None || !strings.Contains(o.Text.String(), "lead angle: not worked out, "+c.want) {
			t.Errorf("%s: %+v", c.name, o)
		}
	}
	if got := Advise(hard(), 0, Bench{}, nil); len(got) != 0 {
		t.Errorf("outcomes of nothing: %v", got)
	}
}

func TestAdvisedPutsTheJointFirst(t *testing.T) {
	d := hard()
	dec := Choose(d, Bench{}, nil)
	before := len(dec.Advice)
	got := dec.Advised(d, 0, Bench{}, []Alternative{
		{Change: Lubricate, Demand: at(1000)}, {Change: LeadAngle, Demand: at(400)}, {Change: SlotCollar, Undone: "no collar"},
	})
	if len(got.Alternatives) != 3 || len(got.Advice) != before+1 || !strings.HasPrefix(got.Advice[0].String(), "lead angle: 400 N instead of 900 N") {
		t.Errorf("%q", got.Advice)
	}
	if len(dec.Advice) != before || len(dec.Alternatives) != 0 {
		t.Error("the decision that was given has changed")
	}
}

// A computed joint goes in by its result, and nothing else of the demand changes.
func TestWithResult(t *testing.T) {
	r := force.Result{Design: 400, P50: 350, Worst: 480, Peak: 360, Work: 600, SeatForce: 5, Stroke: 4, ThrustWander: 1.5}
	got := hard().WithResult(r)
	want := hard()
	want.DesignForce, want.P50, want.Worst, want.PeakForce, want.Work, want.SeatForce, want.Stroke, want.ThrustWander = 400, 350, 480, 360, 600, 5, 4, 1.5
	if got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
}

// The advice of taking turns is true: with so many people it passes, with one less not.
func TestTurnsAreTrue(t *testing.T) {
	d := with(func(d *Demand) { push(d, 500); d.Brittle = true; d.RatePerHour, d.HoursPerDay = 240, 7.5 })
	b, _ := Bench{}.filled()
	n := turns(ByPress, d, b)
	if n != 2 {
		t.Fatalf("%d people, want 2: at 120 an hour the next step of the stair begins", n)
	}
	if text := unit.Join(Choose(d, Bench{}, nil).Advice, "\n").String(); !strings.Contains(text, "2 people taking turns, each at most 120 an hour: arbor press passes") {
		t.Errorf("advice does not say so:\n%s", text)
	}
	pass := func(n int) Verdict {
		at := d
		at.RatePerHour /= float64(n)
		return Choose(at, Bench{}, nil).option(ByPress).Verdict
	}
	if pass(n) != Pass || pass(n-1) == Pass {
		t.Errorf("%d people: %s, one less: %s", n, pass(n), pass(n-1))
	}
}

// A powered press is named only where nothing that was tried helps.
func TestPoweredPressIsTheLastWord(t *testing.T) {
	d := hard()
	push(&d, 5000)
	d.HoursPerDay = 9 // no table reaches past eight hours, so no force is small enough
	got := Choose(d, Bench{Without: []string{"mallet", "press"}}, nil).Advice
	if len(got) != 1 || !strings.HasPrefix(got[0].String(), "a powered press is another machine") {
		t.Errorf("%q", got)
	}
	for _, a := range Choose(hard(), Bench{}, nil).Advice {
		if strings.Contains(a.String(), "powered") {
			t.Errorf("%q, where other things help", a)
		}
	}
}
