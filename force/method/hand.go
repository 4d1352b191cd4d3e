package method

import (
	"ramnest/force"

	"ramnest/force/unit"
)

// A HandAction is a way to push with hands.
type HandAction struct {
	Name       string
	Base       float64 // force for one exertion [N]
	Source     string
	Population string     // whom the base is for
	Mark       force.Mark // of the base
}

// Who the base forces are for.
const (
	p15Both  = "85 of 100 of the working population of both sexes can give it (P15)"
	p15Women = "85 of 100 women can give it (P15)"
)

// HandActions gives the actions in the order they are tried, least first. A palm or
// fist used as a hammer is never one: trained workers struck 600 N where 220 would
// do (read), and repeated strikes injure the ulnar artery (read).
func HandActions() []HandAction {
	return []HandAction{
		{"one thumb", 75, "75 N, P15 of women from a read mean of 100.6 N and an assumed spread of 25 % (own)", p15Women, force.MarkOwn},
		{"one palm, pushing down", ArmDownSeated, "75 N, EN 1005-3 one arm down, P15 (read)", p15Both, force.MarkRead},
		{"two thumbs", 112.5, "1.5 times one thumb: two hands do not double (own)", p15Women, force.MarkOwn},
		{"both palms, standing", BodyPush, "200 N, EN 1005-3 whole-body push, P15 (read); its use downward is own", p15Both, force.MarkOwn},
	}
}

// assessHand takes the least action that passes, else the best there is.
func assessHand(d Demand) Assessment {
	best, action := weighHand(d)
	best.Effort, best.Shift = d.effort(d.DesignForce, action.Base, action.Population)
	return best.worded(unit.Text{}).tilted(d)
}

// tilted says of hands that cannot push a ring in straight that they may roll it in. It
// stays a remark: nest and anvil press straight, and the figure is a model of our own.
func (a Assessment) tilted(d Demand) Assessment {
	if a.Verdict != Fail || d.Tilted <= 0 || d.Tilted >= d.DesignForce {
		return a
	}
	if t, _ := weighHand(d.atForce(d.Tilted)); t.Verdict != Fail {
		a.Reason = a.Reason.Plus("; by hand only if tilted in, one edge first and without the anvil: about ", unit.Force.Of(d.Tilted),
			" of both hands (our own model), a condition that "+engineer+" must agree to")
	}
	return a
}

// weighHand is assessHand without the words.
func weighHand(d Demand) (best Assessment, action HandAction) {
	for i, a := range HandActions() {
		got := Assessment{Method: ByHand, Action: unit.Say(a.Name), Hand: a.Name, Limits: handLimits(d, a)}.weigh()
		if i == 0 || got.betterThan(best) {
			best, action = got, a
		}
	}
	return best.jams(d), action
}

func handLimits(d Demand, a HandAction) []Limit {
	limits := exertion("hand force", d.DesignForce, a.Base, basis{a.Source, a.Mark, true}, d)
	if d.Worst > 0 {
		limits = append(limits, newLimit("worst case", d.Worst, a.Base, "N",
			basis{"basic force of the action, one exertion; " + a.Source, a.Mark, true}).soft(ergonomist))
	}
	return limits
}
