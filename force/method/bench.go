package method

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ramnest/force/fault"
)

// A Bench is what the shop has. An empty list stands for the generic ones of
// [GenericPresses], [GenericMallets] and [GenericVise]; every default that was used
// is listed in [Decision.Defaults].
type Bench struct {
	Presses     []Press  `yaml:"presses" unit:"none"`
	Mallets     []Mallet `yaml:"mallets" unit:"none"`
	Vises       []Vise   `yaml:"vises" unit:"none"`
	Without     []string `yaml:"without" unit:"none"`      // what the shop has not got: mallet, press
	PressMargin float64  `yaml:"press_margin" unit:"pct"`  // share of the rated force that is used [1]; 0: 0.6
	GuideMu     float64  `yaml:"ram_friction" unit:"none"` // friction of the ram in its guide [1]; 0: 0.15
}

// A Press is a manual arbor press. Zero geometry is not known yet: that limit stays
// open.
type Press struct {
	Name        string  `yaml:"name" unit:"none"`
	Rated       float64 `yaml:"rated_force" unit:"N"`
	Ratio       float64 `yaml:"ratio" unit:"none"`      // force on the ram over force on the lever, no friction [1]; 0: from lever and pinion
	Efficiency  float64 `yaml:"efficiency" unit:"pct"`  // of rack and ram [1]; 0: 0.85
	RamSquare   float64 `yaml:"ram_square" unit:"mm"`   // side of the ram
	RamBore     float64 `yaml:"ram_bore" unit:"mm"`     // hole in its end; 0: none
	DaylightMax float64 `yaml:"daylight_max" unit:"mm"` // table to raised ram; 0: not known
	RamStroke   float64 `yaml:"ram_stroke" unit:"mm"`   // travel of the ram; 0: 0.8 of the daylight
	Throat      float64 `yaml:"throat" unit:"mm"`       // ram axis to the column; 0: not known
	Guide       float64 `yaml:"guide_length" unit:"mm"` // length of the ram guide; 0: three ram squares
	Lever       float64 `yaml:"lever" unit:"mm"`        // length of the lever; 0: not known
	Mass        float64 `yaml:"mass" unit:"kg"`         // 0: not known
	Generic     bool    `yaml:"-"`                      // a class, not a machine at hand

	// The pinion, by its pitch radius or by module and teeth, where the ratio is not
	// stated.
	PinionRadius float64 `yaml:"pinion_radius" unit:"mm"`
	PinionModule float64 `yaml:"pinion_module" unit:"mm"`
	PinionTeeth  int     `yaml:"pinion_teeth"`
	Gear         float64 `yaml:"gear_ratio" unit:"none"` // of a further stage; 0: none

	TableSlot   float64 `yaml:"table_slot" unit:"mm"`   // width of the slot of the table under the ram; 0: not known
	NotBolted   bool    `yaml:"not_bolted"`             // it stands loose on the bench
	BaseDepth   float64 `yaml:"base_depth" unit:"mm"`   // of its foot, in the direction of the pull; 0: 150
	LeverHeight float64 `yaml:"lever_height" unit:"mm"` // of the hand over the bench; 0: 450
}

// A Mallet is a head on a handle.
type Mallet struct {
	Name          string  `yaml:"name" unit:"none"`
	Mass          float64 `yaml:"mass" unit:"kg"`                  // of the head
	Speed         float64 `yaml:"speed_m_s" unit:"none"`           // at impact [m/s]; 0: a tap of 2, then a firm blow of 3 is tried
	FaceStiffness float64 `yaml:"face_stiffness_n_mm" unit:"none"` // [N/mm]; 0: 70 to 490, the unfavourable end for each limit
	Restitution   float64 `yaml:"restitution" unit:"none"`         // [1]; 0: no rebound, as of soft and dead blow heads
}

// A Vise is a bench vise, bolted through the bench over a leg.
type Vise struct {
	Name     string  `yaml:"name" unit:"none"`
	JawWidth float64 `yaml:"jaw_width" unit:"mm"` // 0: not known
	Opening  float64 `yaml:"opening" unit:"mm"`   // 0: not known
	Depth    float64 `yaml:"depth" unit:"mm"`     // jaw top to screw; 0: not known

	ClampForce float64 `yaml:"clamp_force" unit:"N"` // of the jaws, tightened by hand; 0: 4712
}

// Validate returns everything wrong with the bench.
func (b Bench) Validate() []fault.Fault {
	var c checker
	c.share("press_margin", b.PressMargin, 1)
	c.share("ram_friction", b.GuideMu, 1)
	for i, w := range b.Without {
		if w != string(ByMallet) && w != string(ByPress) {
			c.add(fmt.Sprintf("without[%d]", i), w, "is not a method one can be without", "mallet or press")
		}
	}
	c.count("presses", len(b.Presses))
	c.count("mallets", len(b.Mallets))
	c.count("vises", len(b.Vises))
	if len(c.faults) > 0 && max(len(b.Presses), len(b.Mallets), len(b.Vises)) > maxTools {
		return c.faults
	}
	for i, p := range b.Presses {
		c.faults = append(c.faults, fault.Under(fmt.Sprintf("presses[%d]", i), p.Validate())...)
	}
	for i, m := range b.Mallets {
		c.faults = append(c.faults, fault.Under(fmt.Sprintf("mallets[%d]", i), m.Validate())...)
	}
	for i, v := range b.Vises {
		c.faults = append(c.faults, fault.Under(fmt.Sprintf("vises[%d]", i), v.Validate())...)
	}
	c.names("presses", len(b.Presses), func(i int) string { return b.Presses[i].Name })
	c.names("mallets", len(b.Mallets), func(i int) string { return b.Mallets[i].Name })
	c.names("vises", len(b.Vises), func(i int) string { return b.Vises[i].Name })
	return c.faults
}

const maxTools = 1000

// Validate returns everything wrong with the press.
func (p Press) Validate() []fault.Fault {
	var c checker
	c.name(p.Name)
	c.needed("rated_force", p.Rated, 100, 200000, "N")
	p.checkRatio(&c)
	c.share("efficiency", p.Efficiency, 1)
	c.optional("ram_square", p.RamSquare, 5, 300, "mm")
	c.optional("ram_bore", p.RamBore, 1, 200, "mm")
	if p.RamSquare > 0 && p.RamBore >= p.RamSquare {
		c.add("ram_bore", num(p.RamBore)+" mm", "must be below the ram", "below "+num(p.RamSquare)+" mm")
	}
	c.optional("daylight_max", p.DaylightMax, 10, 3000, "mm")
	c.optional("ram_stroke", p.RamStroke, 1, 3000, "mm")
	if p.DaylightMax > 0 && p.RamStroke > p.DaylightMax {
		c.add("ram_stroke", num(p.RamStroke)+" mm", "is more than the daylight", "at most "+num(p.DaylightMax)+" mm")
	}
	c.optional("throat", p.Throat, 5, 3000, "mm")
	c.optional("guide_length", p.Guide, 5, 3000, "mm")
	c.optional("lever", p.Lever, 20, 5000, "mm")
	c.optional("mass", p.Mass, 0.5, 5000, "kg")
	c.optional("table_slot", p.TableSlot, 1, 500, "mm")
	c.optional("base_depth", p.BaseDepth, 20, 3000, "mm")
	c.optional("lever_height", p.LeverHeight, 50, 3000, "mm")
	return c.faults
}

// checkRatio holds the stated ratio against lever and pinion, and asks for one.
func (p Press) checkRatio(c *checker) {
	before := len(c.faults)
	c.optional("ratio", p.Ratio, 1, maxRatio, "")
	c.optional("pinion_radius", p.PinionRadius, 2, 500, "mm")
	c.optional("pinion_module", p.PinionModule, 0.2, 30, "mm")
	if p.PinionTeeth != 0 && (p.PinionTeeth < 5 || p.PinionTeeth > 500) {
		c.add("pinion_teeth", fmt.Sprint(p.PinionTeeth), "is out of range", "5 to 500")
	}
	c.optional("gear_ratio", p.Gear, 0.1, 100, "")
	if len(c.faults) > before {
		return
	}
	derived, ok := p.pinionRatio()
	switch {
	case p.Ratio == 0 && !ok:
		c.add("ratio", "0", "is missing or out of range", "1 to 500, or lever with pinion_radius, or lever with pinion_module and pinion_teeth")
	case p.Ratio == 0 && (derived < 1 || derived > maxRatio):
		c.add("ratio", num(derived)+" by lever and pinion", "is out of range", "1 to 500")
	case p.Ratio != 0 && ok && math.Abs(derived/p.Ratio-1) > ratioAgree:
		c.add("ratio", num(p.Ratio), "does not agree with lever and pinion, which give "+num(derived), "one of them put right or left out")
	}
}

// ratioAgree is how far a stated ratio may be from lever and pinion [1] (own).
const ratioAgree = 0.1

// Validate returns everything wrong with the mallet.
func (m Mallet) Validate() []fault.Fault {
	var c checker
	c.name(m.Name)
	c.needed("mass", m.Mass, 0.02, 5, "kg")
	c.optional("speed_m_s", m.Speed, 0.2, maxSpeed, "m/s")
	c.optional("face_stiffness_n_mm", m.FaceStiffness, 1, 1e6, "N/mm")
	c.share("restitution", m.Restitution, 1)
	return c.faults
}

// Validate returns everything wrong with the vise.
func (v Vise) Validate() []fault.Fault {
	var c checker
	c.name(v.Name)
	c.optional("jaw_width", v.JawWidth, 20, 1000, "mm")
	c.optional("opening", v.Opening, 5, 2000, "mm")
	c.optional("depth", v.Depth, 5, 1000, "mm")
	c.optional("clamp_force", v.ClampForce, 100, 100000, "N")
	return c.faults
}

// A checker collects faults.
type checker struct{ faults []fault.Fault }

func (c *checker) add(field, given, problem, want string) {
	c.faults = append(c.faults, fault.Fault{Field: field, Given: given, Problem: problem, Want: want})
}

func (c *checker) name(s string) {
	if strings.TrimSpace(s) == "" {
		c.add("name", "", "is empty", "a name that is written on the tool")
	}
}

func (c *checker) needed(field string, x, lo, hi float64, unit string) {
	if !(x >= lo && x <= hi) {
		c.add(field, strings.TrimSpace(fmt.Sprintf("%g %s", x, unit)), "is missing or out of range",
			strings.TrimSpace(fmt.Sprintf("%g to %g %s", lo, hi, unit)))
	}
}

func (c *checker) optional(field string, x, lo, hi float64, unit string) {
	if x != 0 {
		c.needed(field, x, lo, hi, unit)
	}
}

func (c *checker) share(field string, x, hi float64) { c.optional(field, x, 0.01, hi, "") }

func (c *checker) count(field string, n int) {
	if n > maxTools {
		c.add(field, fmt.Sprint(n), "are too many", fmt.Sprintf("%d at most", maxTools))
	}
}

// names reports a name that is used twice.
func (c *checker) names(list string, n int, name func(int) string) {
	var seen []string
	for i := range n {
		s := strings.TrimSpace(name(i))
		if s != "" && slices.Contains(seen, s) {
			c.add(fmt.Sprintf("%s[%d].name", list, i), s, "is taken by an earlier one", "a name of its own")
		}
		seen = append(seen, s)
	}
}
