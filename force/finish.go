package force

import (
	"slices"
	"strings"

	"ramnest/force/fault"
)

// finishes are what may be done to the surfaces of a printed part, the rawest first.
var finishes = []string{"as_printed", "blasted", "tumbled", "smoothed"}

// finishFaults refuses a finish that is not known; empty is none stated.
func finishFaults(finish string) []fault.Fault {
	if finish == "" || slices.Contains(finishes, finish) {
		return nil
	}
	return []fault.Fault{{Field: "finish", Given: finish, Problem: "is not known", Want: strings.Join(finishes, ", ")}}
}

// A roughness is the mean roughness depth Rz of a surface, the ends of what is known
// of it [mm].
type roughness struct {
	low, high float64
	mark      Mark
}

// roughnessTable is Rz by process, as printed. Powder bed: Ra 6 to 15 um on faces, Rz
// 6 to 7 times that (memory; laser over fused powder 1.33, abstract, lies inside).
// Extruded: Ra 6 to 18 um (excerpt, PLA), Rz 5 to 6 times that (own). Vat: Ra 0.5 to
// 4 um on sides (memory), Rz 6 times that (own). Moulded and machined: common
// practice, no source; reamed bores count as machined.
var roughnessTable = map[string]roughness{
	"PBF":      {0.040, 0.100, MarkMemory},
	"MEX":      {0.030, 0.100, MarkOwn},
	"VPP":      {0.003, 0.025, MarkOwn},
	"moulded":  {0.002, 0.010, MarkPractice},
	"machined": {0.0016, 0.0063, MarkPractice},
}

// finishFactor is the roughness after finishing over that as printed [1]: of Sa, powder
// bed PA12, two mechanical and two chemical methods each (abstract); taken for Rz and
// for the other processes as well (own).
var finishFactor = map[string]float64{"as_printed": 1, "blasted": 0.58, "tumbled": 0.58, "smoothed": 0.20}

// Roughness gives the ends of the mean roughness depth Rz of the part's surfaces [mm]:
// as stated, or by process and finish.
func (m Material) Roughness() (low, high float64, mark Mark) {
	if m.Rz.Mark != "" {
		return m.Rz.Value, m.Rz.Value, m.Rz.Mark
	}
	r := roughnessTable[m.Process]
	f := 1.0
	if m.Layered() {
		f = finishFactor[m.Finish]
	}
	return f * r.low, f * r.high, r.mark
}

// machined is the part where it is machined after printing.
func (m Material) machined() Material {
	m.Process = "machined"
	return m
}

// Shares of the summed Rz by which the asperities that flatten take interference off
// a press fit [1]: DIN 7190-1:2017 and the edition before, as quoted by a bearing
// calculation manual (read), for metals. For plastics nobody published one: it is
// drawn between the two, the least decides how hard to press, the most what holds.
const (
	leastFlattened = 0.4
	mostFlattened  = 0.8
)

// Flattened gives the ends of the interference that two rough surfaces lose [mm],
// diametral.
//
//	G = 0.4 (Rz_o + Rz_i)  to  0.8 (Rz_o + Rz_i)
//
// outer, inner: both surfaces. Source: see leastFlattened. Leaves out that softer
// asperities flatten more, and that a caliper measures over the peaks (Persson, Tribology
// Letters 2023, abstract).
func Flattened(outer, inner Material) (least, most float64) {
	lo, ho, _ := outer.Roughness()
	li, hi, _ := inner.Roughness()
	return leastFlattened * (lo + li), mostFlattened * (ho + hi)
}
