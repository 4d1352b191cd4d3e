package workinstructions

import (
	"slices"
	"strings"

	"ramnest/force/method"
	"ramnest/force/unit"
	"ramnest/work-instructions/catalogue"
)

// Signal is the word at the head of a caution, in the meaning of ANSI Z535 and
// ISO 3864-2. DANGER is not used: nothing here kills for sure.
type Signal string

// The signal words.
const (
	Warning Signal = "WARNING" // death or serious injury could follow
	Careful Signal = "CAUTION" // minor or moderate injury could follow
	Notice  Signal = "NOTICE"  // no injury: damage to parts or tooling; without the alert triangle
)

// Symbol is the meaning of a pictogram by ISO 7010.
type Symbol string

// The symbols.
const (
	General    Symbol = "W001" // warning
	HandCrush  Symbol = "W024" // crushing of hands
	ReadManual Symbol = "M002" // refer to the instruction
	EarGuard   Symbol = "M003" // wear ear protection
	EyeGuard   Symbol = "M004" // wear eye protection
	Footwear   Symbol = "M008" // wear safety footwear
	Gloves     Symbol = "M009" // wear protective gloves
)

// Place is where in the work a caution bites.
type Place string

// The places, in the order of the work.
const (
	AtSetUp    Place = "set-up"
	AtLoad     Place = "load"     // lower part into the nest
	AtPosition Place = "position" // upper part on
	AtAnvil    Place = "anvil"    // anvil on
	AtAim      Place = "aim"      // ram, mallet or hands on the anvil
	AtPress    Place = "press"
	AtRetract  Place = "retract" // ram up, tool away
	AtTakeOut  Place = "take out"
	AtCheck    Place = "check"
)

// A Caution is one safety message: the hazard, what follows, how to avoid it.
type Caution struct {
	ID          string // the same for the same hazard in every job
	Number      int    // from 1
	Signal      Signal
	Symbol      Symbol      // empty for a notice
	words       string      // key of its words in the catalogue; empty: the ID
	fill        string      // what is filled into the hazard; empty: nothing
	size        unit.Figure // a length that is filled in instead; of no kind: none
	Hazard      string
	Consequence string
	Avoid       []string // one sentence for one avoidance
	Places      []Place  // where it bites; at the first it is printed in full, at the others in short
}

// A rule gives a caution where it applies.
type rule struct {
	applies func(Facts) bool
	caution func(Facts) Caution
}

// Cautions gives the cautions that follow from the facts, in English, those and no
// others, the graver signal words first and otherwise in a fixed order. It gives none
// for method.None: there is nothing to caution of where nothing may be done.
func Cautions(f Facts) []Caution { return cautions(f, catalogue.English) }

func cautions(f Facts, in catalogue.Language) []Caution {
	if f.Method != method.ByHand && f.Method != method.ByMallet && f.Method != method.ByPress {
		return nil
	}
	var out []Caution
	for _, r := range slices.Concat(decisionRules, pressRules, malletRules, handRules, partRules, everyoneRules) {
		if r.applies(f) {
			out = append(out, r.caution(f).of(f, in).said(figures{f.Units, in}))
		}
	}
	slices.SortStableFunc(out, func(a, b Caution) int { return a.Signal.rank() - b.Signal.rank() })
	for i := range out {
		out[i].Number = i + 1
	}
	return out
}

// of is the caution in the words for coupons, where there are such: a sheet for coupons
// speaks of no tooling.
func (c Caution) of(f Facts, in catalogue.Language) Caution {
	words := strings.TrimSuffix(c.ID, " latch") + " coupons"
	if _, ok := in.Find("c." + words + ".h"); f.Coupons && ok && c.words == "" {
		c.words, c.fill, c.size = words, "", unit.Figure{}
	}
	return c
}

// said is the caution with its words.
func (c Caution) said(f figures) Caution {
	in := f.words
	key := "c." + c.ID
	if c.words != "" {
		key = "c." + c.words
	}
	c.Hazard = in.Say(key + ".h")
	if c.size.Kind != unit.Plain {
		c.fill = f.text(c.size.Inward(f.units, false))
	}
	if c.fill != "" {
		c.Hazard = in.Say(key+".h", c.fill)
	}
	c.Consequence, c.Avoid = in.Say(key+".c"), in.Sentences(key+".a")
	return c
}

func (s Signal) rank() int { return slices.Index([]Signal{Warning, Careful, Notice}, s) }

// fixed makes a rule of a caution that does not depend on the facts.
func fixed(applies func(Facts) bool, c Caution) rule {
	return rule{applies, func(Facts) Caution { return c }}
}

func byPress(f Facts) bool  { return f.Method == method.ByPress }
func byMallet(f Facts) bool { return f.Method == method.ByMallet }
func byHand(f Facts) bool   { return f.Method == method.ByHand }
func always(Facts) bool     { return true }
