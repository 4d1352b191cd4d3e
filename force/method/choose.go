package method

import (
	"cmp"
	"strings"

	"ramnest/force/fault"
	"ramnest/force/unit"
)

// Forced is a method the job insists on.
type Forced struct {
	Method   Method
	Override string // reason to take it although it fails; printed on every page. Empty: a failing method is refused
}

// A Decision is what [Choose] found.
type Decision struct {
	Options  []Assessment // hand, mallet, press, always all three
	Chosen   Method
	Reason   unit.Text // in short sentences
	RunnerUp Method    // the next best; None if there is none
	Next     unit.Text // one sentence about it
	Tipping  unit.Text // what would change the choice

	Sensitivity  []AtForce
	ByRate       []AtRate
	RateMatters  string      // one sentence: how the answer changes with the rate
	Advice       []unit.Text // computed ways to bring a method into range
	Alternatives []Outcome   // of [Decision.Advised], what helps most first
	Defaults     []unit.Text // every default that was used
	Overridden   bool        // a failing method, taken at the job's word
}

// AtForce is the free choice at another design force.
type AtForce struct {
	Name    string  // P50, P95, worst
	Force   float64 // [N]
	Method  Method
	Verdict Verdict // Fail for none
}

// Choose assesses all three methods and takes the least that passes; if none passes,
// the least that passes on a condition; else none. Where so many
// assemblies jam that there is no design force it is none too, forced or not. forced may be nil. A demand or a
// bench with faults gives None, with the faults as the reason.
func Choose(d Demand, b Bench, forced *Forced) Decision {
	if faults := append(fault.Under("demand", d.Validate()), fault.Under("bench", b.Validate())...); len(faults) > 0 {
		return refuse(faults)
	}
	if d.NoP95 {
		return withoutForce(d)
	}
	d, used := d.filled()
	b, more := b.filled()
	out := Decision{Options: assess(d, b), Defaults: append(used, more...)}
	least := pick(out.Options, None)
	out.Chosen = least
	out.Reason = out.reason(out.Chosen)
	if forced != nil {
		out.force(*forced)
	}
	out.RunnerUp, out.Next = out.next()
	out.Defaults = append(out.Defaults, toolDefaults(out.Options, d)...)
	out.Sensitivity = sensitivity(d, b)
	most := edges(d, b)
	out.Tipping = tipping(d, b, out.option(least), most)
	out.ByRate, out.RateMatters = byRate(d, b, out.option(least))
	if out.option(least).Verdict != Pass {
		out.Advice = advice(d, b, most)
	}
	return out
}

func assess(d Demand, b Bench) []Assessment {
	if d.NoP95 {
		return withoutForce(d).Options
	}
	var out []Assessment
	for _, m := range []Method{ByHand, ByMallet, ByPress} {
		out = append(out, assessOne(m, d, b))
	}
	return out
}

// weigh is assessOne without the words.
func weigh(m Method, d Demand, b Bench) Assessment {
	switch m {
	case ByHand:
		best, _ := weighHand(d)
		return best
	case ByMallet:
		return weighMallet(d, b)
	case ByPress:
		return weighPress(d, b)
	}
	return Assessment{Method: None, Verdict: Fail}
}

// free is the method that is taken if nobody insists on one, with its assessment.
func free(d Demand, b Bench) Assessment {
	best := Assessment{Method: None, Verdict: Fail}
	for _, m := range []Method{ByHand, ByMallet, ByPress} {
		if a := weigh(m, d, b); a.Verdict.better(best.Verdict) {
			best = a
		}
	}
	return best
}

// assessOne assesses one method; what is none fails.
func assessOne(m Method, d Demand, b Bench) Assessment {
	switch m {
	case ByHand:
		return assessHand(d)
	case ByMallet:
		return assessMallet(d, b)
	case ByPress:
		return assessPress(d, b)
	}
	return Assessment{Method: None, Verdict: Fail}
}

// pick gives the least method that passes, else the least conditional one, but not.
func pick(options []Assessment, not Method) Method {
	for _, v := range []Verdict{Pass, Conditional} {
		for _, a := range options {
			if a.Method != not && a.Verdict == v {
				return a.Method
			}
		}
	}
	return None
}

func (d Decision) option(m Method) Assessment {
	for _, a := range d.Options {
		if a.Method == m {
			return a
		}
	}
	return Assessment{Method: None, Verdict: Fail}
}

// reason says why m was taken, or why nothing was.
func (d Decision) reason(m Method) unit.Text {
	if m != None {
		return unit.Say(m.Title()).Plus(led(d.option(m)))
	}
	say := []unit.Text{unit.Say("no manual method passes")}
	for _, a := range d.Options {
		say = append(say, unit.Say(a.Method.Title()).Capital().Plus(led(a)))
	}
	return unit.Join(say, ". ")
}

// led is the reason of an assessment as it follows the title of its method.
func led(a Assessment) unit.Text {
	reason := a.Reason
	if a.Action.String() == a.Method.Title() {
		reason = reason.Without(a.Method.Title() + ", ")
	}
	return unit.Say(": ").Plus(reason)
}

// next gives the runner-up and a sentence about it.
func (d Decision) next() (Method, unit.Text) {
	if d.Chosen == None {
		return None, unit.Say("there is no runner-up")
	}
	m := pick(d.Options, d.Chosen)
	if m == None {
		return None, unit.Say("no other method passes")
	}
	return m, unit.Say("next is " + m.Title()).Plus(led(d.option(m)))
}

// force puts the job's own choice in, or refuses it.
func (d *Decision) force(f Forced) {
	a := d.option(f.Method)
	word := strings.TrimSpace(f.Override)
	switch {
	case f.Method == None:
		d.Chosen, d.Reason = None, unit.Say("the job asks for no manual method")
	case a.Method == None:
		d.Chosen, d.Reason = None, unit.Textf("the job asks for %q, which is no method; hand, mallet, press or none", string(f.Method))
	case a.Verdict != Fail:
		d.Chosen, d.Reason = f.Method, unit.Say("as the job asks, ").Plus(d.reason(f.Method))
	case word == "":
		d.Chosen, d.Reason = None, unit.Say("the job asks for a method that fails and gives no reason to override. ").Plus(d.reason(f.Method).Capital())
	case a.refused() != "":
		d.Chosen, d.Reason = None, unit.Say("the job overrides a plain refusal, which no reason lifts: "+a.refused())
	default:
		d.Chosen, d.Overridden = f.Method, true
		d.Reason = unit.Say("OVERRIDE by the job (" + word + "). ").Plus(d.reason(f.Method).Capital())
	}
}

// refused names a limit that is a plain no, such as a brittle part under a mallet;
// empty if the method only goes over figures.
func (a Assessment) refused() string {
	for _, l := range a.Limits {
		if !l.OK && !l.Open && !l.Soft && l.Utilisation >= Beyond && l.Capacity == 0 && l.Unit == "" {
			return l.Name
		}
	}
	return ""
}

// refuse is the decision where nothing could be computed.
func refuse(faults []fault.Fault) Decision {
	text := make([]string, len(faults))
	for i, f := range faults {
		text[i] = f.Error()
	}
	why := unit.Say("nothing was computed: " + strings.Join(text, "; "))
	out := Decision{Chosen: None, RunnerUp: None, Reason: why}
	for _, m := range []Method{ByHand, ByMallet, ByPress} {
		out.Options = append(out.Options, Assessment{Method: m, Verdict: Fail, Governing: "faults", Utilisation: Beyond, Reason: why,
			Action: unit.Say(m.Title())})
	}
	return out
}

// toolDefaults lists what was assumed about the tools that were assessed.
func toolDefaults(options []Assessment, d Demand) []unit.Text {
	var used []unit.Text
	for _, a := range options {
		if p := a.Press; p != nil {
			if p.Efficiency == 0 {
				used = append(used, unit.Textf("efficiency of rack and ram: %g", defaultEfficiency))
			}
			if p.Guide == 0 && p.RamSquare > 0 {
				used = append(used, unit.Textf("guide length of the ram: %d ram squares", guidePerRam))
			}
			if p.RamStroke == 0 && p.DaylightMax > 0 {
				used = append(used, unit.Textf("usable ram stroke: %g of the daylight", strokePerDaylight))
			}
			switch {
			case !p.NotBolted:
				used = append(used, unit.Say("the press is bolted to a bench that does not tip"))
			case p.BaseDepth == 0 || p.LeverHeight == 0:
				used = append(used, unit.Textf("base of the press %v, lever %v over the bench", unit.Length.Of(cmp.Or(p.BaseDepth, defaultBase)),
					unit.Length.Of(cmp.Or(p.LeverHeight, defaultLeverHeight))))
			}
			if p.TableSlot == 0 && a.Placement != nil {
				used = append(used, unit.Textf("slots of the press table: %v or narrower under the nest, which bridges that",
					unit.Length.Of(a.Placement.Bridges)))
			}
		}
		if m := a.Mallet; m != nil {
			if m.FaceStiffness == 0 {
				used = append(used, unit.Textf("stiffness of the mallet face: %v to %v, the unfavourable end for each limit",
					unit.Stiffness.Of(softFace), unit.Stiffness.Of(stiffFace)))
			}
			if d.JawThickness == 0 {
				used = append(used, unit.Textf("thickness of the vise jaws: %v", unit.Length.Of(defaultJaw)))
			}
			if a.Vise.ClampForce == 0 {
				used = append(used, unit.Textf("clamp force of the vise, tightened by hand: %v", unit.Force.Of(handTight)))
			}
			used = append(used, unit.Textf("speed of the blow: %v; no measurement of mallet taps is known", unit.Speed.Of(m.Speed)))
			if d.JointStiffness == 0 {
				used = append(used, unit.Say("stiffness of the joint under a blow: force over stroke to reach the seat, any for the shock"))
			}
		}
	}
	return used
}
