package method

import (
	"math"
	"strings"
	"testing"
)

func TestGenericToolsAreValid(t *testing.T) {
	b := Bench{Presses: GenericPresses(), Mallets: GenericMallets(), Vises: []Vise{GenericVise()}}
	if faults := b.Validate(); len(faults) > 0 {
		t.Errorf("faults in the generic bench: %v", faults)
	}
	for i, p := range b.Presses[1:] {
		if p.Rated <= b.Presses[i].Rated {
			t.Errorf("%s is not stronger than the class before", p.Name)
		}
	}
}

func TestBenchFaults(t *testing.T) {
	good := Press{Name: "a", Rated: 8896, Ratio: 20}
	change := func(do func(*Press)) Bench {
		p := good
		do(&p)
		return Bench{Presses: []Press{p}}
	}
	for _, c := range []struct {
		want string // start of the fault
		b    Bench
	}{
		{"presses[0].name", change(func(p *Press) { p.Name = " " })},
		{"presses[0].rated_force", change(func(p *Press) { p.Rated = math.NaN() })},
		{"presses[0].ratio", change(func(p *Press) { p.Ratio = 0.5 })},
		{"presses[0].efficiency", change(func(p *Press) { p.Efficiency = 1.2 })},
		{"presses[0].ram_square", change(func(p *Press) { p.RamSquare = -3 })},
		{"presses[0].ram_bore", change(func(p *Press) { p.RamSquare, p.RamBore = 20, 20 })},
		{"presses[0].daylight_max", change(func(p *Press) { p.DaylightMax = math.Inf(1) })},
		{"presses[0].ram_stroke", change(func(p *Press) { p.DaylightMax, p.RamStroke = 100, 120 })},
		{"presses[0].throat", change(func(p *Press) { p.Throat = 1 })},
		{"presses[0].guide_length", change(func(p *Press) { p.Guide = -1 })},
		{"presses[0].lever", change(func(p *Press) { p.Lever = 1e6 })},
		{"presses[0].mass", change(func(p *Press) { p.Mass = -1 })},
		{"presses[0].table_slot", change(func(p *Press) { p.TableSlot = -4 })},
		{"presses[0].base_depth", change(func(p *Press) { p.BaseDepth = 5 })},
		{"presses[0].lever_height", change(func(p *Press) { p.LeverHeight = math.Inf(1) })},
		{"presses[1].name", Bench{Presses: []Press{good, good}}},
		{"mallets[0].mass", Bench{Mallets: []Mallet{{Name: "m"}}}},
		{"mallets[0].speed_m_s", Bench{Mallets: []Mallet{{Name: "m", Mass: 0.4, Speed: 7}}}},
		{"mallets[0].face_stiffness_n_mm", Bench{Mallets: []Mallet{{Name: "m", Mass: 0.4, FaceStiffness: -7}}}},
		{"mallets[0].restitution", Bench{Mallets: []Mallet{{Name: "m", Mass: 0.4, Restitution: 2}}}},
		{"vises[0].jaw_width", Bench{Vises: []Vise{{Name: "v", JawWidth: -1}}}},
		{"vises[0].opening", Bench{Vises: []Vise{{Name: "v", Opening: 1}}}},
		{"vises[0].depth", Bench{Vises: []Vise{{Name: "v", Depth: math.NaN()}}}},
		{"vises[0].clamp_force", Bench{Vises: []Vise{{Name: "v", ClampForce: 5}}}},
		{"without[0]", Bench{Without: []string{"hand"}}},
		{"press_margin", Bench{PressMargin: 1.5}},
		{"ram_friction", Bench{GuideMu: -0.1}},
		{"presses: 1001", Bench{Presses: make([]Press, 1001)}},
	} {
		faults := c.b.Validate()
		if len(faults) != 1 || !strings.HasPrefix(faults[0].Error(), c.want) {
			t.Errorf("want one fault at %s, got %v", c.want, faults)
		}
	}
}

func TestFormulasRefuseWhatIsOutOfRange(t *testing.T) {
	nan := math.NaN()
	refused := func(name string, ok bool) {
		t.Helper()
		if ok {
			t.Errorf("%s was taken", name)
		}
	}
	_, ok := FrequencyMultiplier(21, 4)
	refused("long actions above 20 a minute", ok)
	_, ok = DurationMultiplier(8.1)
	refused("more than 8 h", ok)
	_, ok = ZoneOf(nan, 6, 1, 1)
	refused("NaN base", ok)
	_, ok = AcceptableEffort(-1)
	refused("negative duty", ok)
	_, ok = HandActivity(0, 10)
	refused("no exertion", ok)
	_, _, ok = PeakForceLimits(11)
	refused("HAL 11", ok)
	_, ok = NormalQuantile(1)
	refused("whole population", ok)
	_, ok = StrengthPercentile(1e9, 1, 0.5)
	refused("past numbers", ok)
	_, _, ok = LogMoments(0, 1)
	refused("no mean", ok)
	_, ok = BlowEfficiency(0, 1, 0)
	refused("no head", ok)
	_, ok = DrivenShare(1, 1, 1.1)
	refused("restitution above 1", ok)
	_, ok = SeriesStiffness()
	refused("no spring", ok)
	_, ok = ContactTime(1, 0)
	refused("no stiffness", ok)
	_, ok = BlowsNeeded(1, 0)
	refused("no energy", ok)
	_, ok = ClampForce(1, 0, 0.2)
	refused("no lead", ok)
	_, ok = ScrewTorque(1, 1, 30, 0.5, 0, 0, 0)
	refused("a thread that jams", ok)
	_, ok = ScrewEfficiency(nan, 4, 0.1, 0, 0, 0)
	refused("NaN diameter", ok)
	_, ok = LeverRatio(1, 0, 1)
	refused("no radius", ok)
	_, ok = LeverEffort(1, 20, 1.01)
	refused("efficiency above 1", ok)
	_, ok = RamForce(nan, 20, 0.9)
	refused("NaN at the lever", ok)
	_, ok = LeverSwing(-1, 1)
	refused("negative stroke", ok)
	_, _, ok = RamTilt(1, 0, 1)
	refused("no guide", ok)
	_, _, _, ok = Ocra{}.Index(20, 420)
	refused("multipliers of 0", ok)
	_, _, _, ok = Ocra{1, 1, 1, 1, 1, 1}.Index(20, nan)
	refused("NaN minutes", ok)
}
