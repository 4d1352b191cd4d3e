package force

import "slices"

// mainRanges are the upper ends of the ranges of nominal size [mm], included.
var mainRanges = [...]float64{3, 6, 10, 18, 30, 50, 80, 120, 180}

// fineRanges divide them for the deviations from r on, and c.
var fineRanges = [...]float64{3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180}

const lowestGrade = 5

// grades are the standard tolerances IT5 to IT13 over mainRanges [um].
var grades = [...][len(mainRanges)]float64{
	{4, 5, 6, 8, 9, 11, 13, 15, 18},
	{6, 8, 9, 11, 13, 16, 19, 22, 25},
	{10, 12, 15, 18, 21, 25, 30, 35, 40},
	{14, 18, 22, 27, 33, 39, 46, 54, 63},
	{25, 30, 36, 43, 52, 62, 74, 87, 100},
	{40, 48, 58, 70, 84, 100, 120, 140, 160},
	{60, 75, 90, 110, 130, 160, 190, 220, 250},
	{100, 120, 150, 180, 210, 250, 300, 350, 400},
	{140, 180, 220, 270, 330, 390, 460, 540, 630},
}

// deviations are the fundamental deviations of shafts [um]: the upper one up to
// h, the lower one from k on. absent: not in the standard for that size. Read in a
// copy, see testdata/iso286.csv.
var deviations = [...]struct {
	letter string
	um     []float64 // over mainRanges or fineRanges, by its length
}{
	{"c", []float64{-60, -70, -80, -95, -95, -110, -110, -120, -130, -140, -150, -170, -180, -200, -210, -230}},
	{"d", []float64{-20, -30, -40, -50, -65, -80, -100, -120, -145}},
	{"e", []float64{-14, -20, -25, -32, -40, -50, -60, -72, -85}},
	{"f", []float64{-6, -10, -13, -16, -20, -25, -30, -36, -43}},
	{"g", []float64{-2, -4, -5, -6, -7, -9, -10, -12, -14}},
	{"h", []float64{0, 0, 0, 0, 0, 0, 0, 0, 0}},
	{"k", []float64{0, 1, 1, 1, 2, 2, 2, 3, 3}},
	{"m", []float64{2, 4, 6, 7, 8, 9, 11, 13, 15}},
	{"n", []float64{4, 8, 10, 12, 15, 17, 20, 23, 27}},
	{"p", []float64{6, 12, 15, 18, 22, 26, 32, 37, 43}},
	{"r", []float64{10, 15, 19, 23, 23, 28, 28, 34, 34, 41, 43, 51, 54, 63, 65, 68}},
	{"s", []float64{14, 19, 23, 28, 28, 35, 35, 43, 43, 53, 59, 71, 79, 92, 100, 108}},
	{"t", []float64{absent, absent, absent, absent, absent, absent, 41, 48, 54, 66, 75, 91, 104, 122, 134, 146}},
	{"u", []float64{18, 23, 28, 33, 33, 41, 48, 60, 70, 87, 102, 124, 144, 170, 190, 210}},
	{"x", []float64{20, 28, 34, 40, 45, 54, 64, 80, 97, 122, 146, 178, 210, 248, 280, 310}},
}

const absent = 1e9

func mainRange(size float64) int { i, _ := slices.BinarySearch(mainRanges[:], size); return i }

// fundamental gives the fundamental deviation of a shaft [um].
func fundamental(size float64, letter string) (um float64, ok bool) {
	for _, d := range deviations {
		if d.letter != letter {
			continue
		}
		i := mainRange(size)
		if len(d.um) == len(fineRanges) {
			i, _ = slices.BinarySearch(fineRanges[:], size)
		}
		return d.um[i], d.um[i] != absent
	}
	return 0, false
}
