package method

import (
	"ramnest/force/unit"
	"slices"
)

// GenericPresses gives the classes of manual arbor presses assumed where the shop
// names none, smallest first. Of each range the careful end is taken: least ratio,
// ram, daylight and throat. Source: common practice, but ratio, ram, daylight and
// mass of the 1-ton class and the mass of the half-ton class read in owners' notes.
func GenericPresses() []Press {
	return []Press{
		{Name: "0.5 ton class", Rated: 4448, Ratio: 10, RamSquare: 19, DaylightMax: 90, Throat: 55, Lever: 200, Mass: 11, Generic: true},
		{Name: "1 ton class", Rated: 8896, Ratio: 20, RamSquare: 28.6, RamBore: 8, DaylightMax: 140, Throat: 70, Lever: 300, Mass: 16,
			Generic: true},
		{Name: "2 ton class", Rated: 17793, Ratio: 20, RamSquare: 32, RamBore: 10, DaylightMax: 180, Throat: 100, Lever: 400, Mass: 25,
			Generic: true},
		{Name: "3 ton class", Rated: 26689, Ratio: 22, RamSquare: 38, RamBore: 12, DaylightMax: 280, Throat: 140, Lever: 500, Mass: 55,
			Generic: true},
		{Name: "5 ton class, compound", Rated: 44482, Ratio: 33, RamSquare: 45, RamBore: 12, DaylightMax: 380, Throat: 200, Lever: 600, Mass: 120,
			Generic: true},
	}
}

// GenericMallets gives the heads assumed where the shop names none, lightest first.
// Source: rubber heads of 12 and 28 oz (read), one between (common practice).
func GenericMallets() []Mallet {
	return []Mallet{
		{Name: "light rubber mallet", Mass: 12 * ounce},
		{Name: "rubber mallet", Mass: 0.45},
		{Name: "heavy rubber mallet", Mass: 28 * ounce},
	}
}

const ounce = 0.028349523125 // [kg], by definition

// GenericVise gives the vise assumed where the shop names none: 100 mm jaws, opening
// 0.8 of that, depth the least of its range. Source: common practice.
func GenericVise() Vise {
	return Vise{Name: "bench vise", JawWidth: 100, Opening: 80, Depth: 55}
}

// Defaults of the bench.
const (
	defaultMargin     = 0.6  // share of the rated force, of 0.5 to 0.7 (common practice)
	defaultEfficiency = 0.85 // rack, pinion and guided ram, of 0.75 to 0.9 (common practice)
	defaultGuideMu    = 0.15 // greased iron on iron (common practice)
	softFace          = 70   // softest and stiffest face [N/mm] (memory: pulses of 3 to 8 ms of soft
	stiffFace         = 490  // tips, at 0.45 kg; no measurement of mallets was found)
	guidePerRam       = 3    // guide length over ram square (own)
	strokePerDaylight = 0.8  // usable ram stroke over daylight, of 0.8 to 0.9 (common practice)
	tapSpeed          = 2    // [m/s]; a head let fall 200 mm arrives at 1.98 (own)
	firmSpeed         = 3    // [m/s] (common practice)
	maxSpeed          = 5    // [m/s] (common practice)
)

// filled puts the generic tools in where the lists are empty and says so.
func (b Bench) filled() (Bench, []unit.Text) {
	var used []unit.Text
	if len(b.Mallets) == 0 && !b.lacks(ByMallet) {
		b.Mallets = GenericMallets()
		used = append(used, unit.Textf("mallets: generic rubber heads, %v to %v (none stated)", unit.Mass.Of(b.Mallets[0].Mass),
			unit.Mass.Of(b.Mallets[2].Mass)))
	}
	if len(b.Vises) == 0 && !b.lacks(ByMallet) {
		b.Vises = []Vise{GenericVise()}
		used = append(used, unit.Textf("vise: generic, %v jaws, opening %v, depth %v (none stated)", unit.Length.Of(b.Vises[0].JawWidth),
			unit.Length.Of(b.Vises[0].Opening), unit.Length.Of(b.Vises[0].Depth)))
	}
	if len(b.Presses) == 0 && !b.lacks(ByPress) {
		b.Presses = GenericPresses()
		used = append(used, unit.Say("presses: generic classes of 0.5 to 5 short tons (none stated); measure the press before trusting them"))
	}
	b.Presses = slices.Clone(b.Presses)
	for i, p := range b.Presses {
		b.Presses[i].Ratio, _ = p.leverRatio()
	}
	if b.PressMargin == 0 {
		b.PressMargin = defaultMargin
		used = append(used, unit.Textf("share of the rated force that is used: %g", defaultMargin))
	}
	if b.GuideMu == 0 {
		b.GuideMu = defaultGuideMu
		used = append(used, unit.Textf("friction of the ram in its guide: %g", defaultGuideMu))
	}
	return b, used
}

func (b Bench) lacks(m Method) bool {
	for _, w := range b.Without {
		if w == string(m) {
			return true
		}
	}
	return false
}
