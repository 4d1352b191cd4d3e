package force

import (
	"math"
)

// A Friction is a coefficient of friction as it is drawn: log-normal, each side of the
// middle for itself, since what is published is skewed. Stated or read ends count as
// two standard deviations of the logarithm.
type Friction struct {
	Value     float64 // half of the pairs lie above [1]
	Low, High float64 // two standard deviations to either side [1]
	Mark      Mark
	Source    string
}

// Figure is the middle with its mark.
func (f Friction) Figure() Figure { return Figure{f.Value, f.Mark} }

// At gives the coefficient z standard deviations from the middle, mu [1].
//
//	mu = mu50 (mu_high/mu50)^(z/2)   z of 0 or above
//	mu = mu50 (mu50/mu_low)^(z/2)    below
//
// The high end decides what presses, the low end what holds.
func (f Friction) At(z float64) float64 {
	switch {
	case f.Value == 0 || f.Low == f.High:
		return f.Value
	case z >= 0:
		return f.Value * math.Exp(z/2*math.Log(f.High/f.Value))
	}
	return f.Value * math.Exp(z/2*math.Log(f.Value/f.Low))
}

// A frictionRow is one line of the table of frictions: sliding, dry, surfaces as they
// come from the process.
type frictionRow struct {
	material, process string     // process empty: any
	itself, steel     [3]float64 // low, middle, high; on itself and on steel
	mark              Mark
	source            string
}

const (
	guideTable = sourceGuide + ", table 3: range on steel and its factor for itself, which counts as one standard deviation, 25 % of spread at the least"
	roughTable = "moulded polyamide of " + sourceGuide +
		", table 3, the high end raised for a rough surface; for sintered PA12 only trends are published: falls with load, rises with speed"
	noNumber    = "no number found for it, common practice"
	slidingPLA  = "Materials Science-Poland, msp-2025-0039: 0.62 to 0.76, each 0.08 at most, 0.05-0.10 MPa, counterface not seen; the low end common practice"
	slidingPA6  = "Materials Science-Poland, msp-2025-0039: PA6 0.66 to 1.10, falls with load; the low end that of moulded polyamide"
	slidingPETG = "published 0.13 to 0.21, recalled, counterface not known; the middle and the high end common practice"
)

// frictionTable holds what is known of dry sliding. Not known, and not made up: static
// against sliding friction (the one figure stands for both), along against across the
// layers, after tumbling or blasting (as printed), resins.
var frictionTable = [...]frictionRow{
	{"PA12", "PBF", [3]float64{0.40, 0.58, 0.80}, [3]float64{0.26, 0.38, 0.53}, MarkOwn, roughTable},
	{"PA11", "PBF", [3]float64{0.40, 0.58, 0.80}, [3]float64{0.26, 0.38, 0.53}, MarkOwn, roughTable},
	{"PA12-GB", "PBF", [3]float64{0.40, 0.58, 0.80}, [3]float64{0.26, 0.38, 0.53}, MarkOwn, roughTable},
	{"PLA", "MEX", [3]float64{0.45, 0.62, 0.85}, [3]float64{0.45, 0.62, 0.85}, MarkExcerpt, slidingPLA},
	{"PETG", "MEX", [3]float64{0.13, 0.38, 0.56}, [3]float64{0.13, 0.38, 0.56}, MarkPractice, slidingPETG},
	{"ABS", "MEX", [3]float64{0.53, 0.71, 0.95}, [3]float64{0.44, 0.59, 0.80}, MarkRead,
		guideTable + "; the high end raised for a rough surface"},
	{"ASA", "MEX", [3]float64{0.53, 0.71, 0.95}, [3]float64{0.44, 0.59, 0.80}, MarkOwn, "taken as ABS; no number found for it"},
	{"PC", "MEX", [3]float64{0.48, 0.63, 0.82}, [3]float64{0.40, 0.52, 0.69}, MarkRead,
		guideTable + "; the high end raised for a rough surface"},
	{"PA", "MEX", [3]float64{0.45, 0.70, 1.10}, [3]float64{0.26, 0.48, 1.10}, MarkExcerpt, slidingPA6},
	{"PA-GF", "MEX", [3]float64{0.45, 0.70, 1.10}, [3]float64{0.26, 0.48, 1.10}, MarkOwn, "taken as PA; no number found for it"},
	{"PA-CF", "MEX", [3]float64{0.40, 0.65, 1.10}, [3]float64{0.26, 0.48, 1.10}, MarkOwn, "taken as PA; no number found for it"},
	{"RESIN", "VPP", [3]float64{0.35, 0.52, 0.75}, [3]float64{0.35, 0.52, 0.75}, MarkPractice, noNumber},
	{"RESIN-TOUGH", "VPP", [3]float64{0.35, 0.52, 0.75}, [3]float64{0.35, 0.52, 0.75}, MarkPractice, noNumber},
	{"RESIN-DURABLE", "VPP", [3]float64{0.35, 0.52, 0.75}, [3]float64{0.35, 0.52, 0.75}, MarkPractice, noNumber},
	{"PP", "moulded", [3]float64{0.33, 0.41, 0.52}, [3]float64{0.22, 0.27, 0.34}, MarkRead, guideTable},
	{"POM", "moulded", [3]float64{0.23, 0.40, 0.69}, [3]float64{0.15, 0.26, 0.46}, MarkRead, guideTable},
	{"PA", "moulded", [3]float64{0.39, 0.52, 0.69}, [3]float64{0.26, 0.35, 0.46}, MarkRead, guideTable},
	{"PC", "moulded", [3]float64{0.48, 0.60, 0.75}, [3]float64{0.40, 0.50, 0.62}, MarkRead, guideTable},
	{"ABS", "moulded", [3]float64{0.53, 0.68, 0.89}, [3]float64{0.44, 0.57, 0.74}, MarkRead, guideTable},
	{"PBT", "moulded", [3]float64{0.45, 0.56, 0.70}, [3]float64{0.30, 0.37, 0.47}, MarkMemory, guideTable + "; on itself 1.5 times, recalled"},
	{"steel", "machined", [3]float64{0.15, 0.20, 0.27}, [3]float64{0.15, 0.20, 0.27}, MarkPractice, noNumber},
	{"brass", "machined", [3]float64{0.15, 0.20, 0.27}, [3]float64{0.15, 0.20, 0.27}, MarkPractice, noNumber},
	{"aluminium", "machined", [3]float64{0.24, 0.30, 0.40}, [3]float64{0.24, 0.30, 0.40}, MarkPractice, noNumber},
}

// frictionOf looks a material of the built-in table up.
func frictionOf(material, process string) (itself, steel Friction) {
	of := func(r frictionRow, v [3]float64) Friction { return Friction{v[1], v[0], v[2], r.mark, r.source} }
	for _, r := range frictionTable {
		if r.material == material && r.process == process {
			return of(r, r.itself), of(r, r.steel)
		}
	}
	return Friction{}, Friction{}
}

// What a film and a finish make of a dry friction of the table [1]. A film of silicone
// or PTFE: from memory, coarse. Vapour smoothing lowers the friction of sintered PA12
// snaps (abstract, no figure): what presses gets no relief for it, what holds counts
// with less; how much less is common practice, no source.
const (
	filmLow, filmValue, filmHigh = 0.30, 0.45, 0.60
	smoothedLow                  = 0.70
)

// pairFriction is the coefficient of friction of two materials [1]: a figure from the
// job first; a plastic on metal by the plastic's on steel; two plastics by the one that
// is higher on itself, from the lower of both low ends to the higher of both high ends.
// A stated figure is that of the pair as it is; finish and lubrication act on the table.
func pairFriction(a, b Material) Friction {
	stated := func(m Material) bool { return m.Friction.Mark == MarkJob }
	var f Friction
	switch {
	case stated(a) && stated(b):
		f = a.Friction
		if b.Friction.Value > f.Value {
			f = b.Friction
		}
		f.Low, f.High = min(f.Value, a.Friction.Low, b.Friction.Low), max(f.Value, a.Friction.High, b.Friction.High)
		return f
	case stated(a):
		return a.Friction
	case stated(b):
		return b.Friction
	case a.Metal() && !b.Metal():
		f = b.FrictionSteel
	case b.Metal() && !a.Metal():
		f = a.FrictionSteel
	default:
		f = a.Friction
		if b.Friction.Value > f.Value {
			f = b.Friction
		}
		f.Low, f.High = min(a.Friction.Low, b.Friction.Low), max(a.Friction.High, b.Friction.High)
	}
	if a.Finish == "smoothed" || b.Finish == "smoothed" {
		f.Low *= smoothedLow
	}
	if a.Lubrication == "film" || b.Lubrication == "film" {
		f.Low, f.Value, f.High = filmLow*f.Low, filmValue*f.Value, filmHigh*f.High
		f.Mark, f.Source = MarkMemory, f.Source+"; times 0.30 to 0.60 for a film"
	}
	return f
}

// restate puts a stated friction, a stated spread, or both, over those of the table. A
// friction without a spread gets frictionSpread.
func (m *Material) restate(s Figures, stated Figure) {
	if stated.Mark == "" && s.FrictionSpread == nil {
		return
	}
	spread := m.FrictionSpread
	if s.FrictionSpread == nil {
		spread = Figure{frictionSpread, MarkPractice}
		m.FrictionSpread = spread
	}
	for _, f := range [2]*Friction{&m.Friction, &m.FrictionSteel} {
		if stated.Mark != "" {
			f.Value, f.Mark, f.Source = stated.Value, stated.Mark, "stated"
		}
		f.Low, f.High = f.Value/(1+spread.Value), f.Value*(1+spread.Value)
	}
}
