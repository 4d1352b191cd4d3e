package force

import (
	"fmt"
	"strconv"
	"strings"
)

// An ISOFit is a fit of a hole and a shaft by ISO 286, "12 H7/s6".
type ISOFit struct {
	Nominal      float64 // [mm]
	Hole, Shaft  string  // tolerance classes, "H7", "s6"
	HoleUpper    float64 // deviations from the nominal size [mm]
	HoleLower    float64
	ShaftUpper   float64
	ShaftLower   float64
	Interference float64 // of the two mean sizes, diametral [mm]; below 0: a clearance
	HoleTol      float64 // half the hole's tolerance [mm]
	ShaftTol     float64 // half the shaft's tolerance [mm]
}

// ParseISOFit reads "12 H7/s6": nominal size in mm, hole, shaft. Sizes up to
// 180 mm; holes D to H and JS, and K to X; shafts c to x as in the table.
//
// Source: ISO 286-1 and -2. The values are the standard's table; where its
// formulas hold, they are compared with it in the tests.
func ParseISOFit(s string) (ISOFit, error) {
	fields := strings.Fields(strings.NewReplacer("/", " / ", "mm", " ").Replace(s))
	bad := func(format string, v ...any) (ISOFit, error) {
		return ISOFit{}, fmt.Errorf("fit %q: %s", s, fmt.Sprintf(format, v...))
	}
	if len(fields) != 4 || fields[2] != "/" {
		return bad("must read like 12 H7/s6")
	}
	size, err := strconv.ParseFloat(fields[0], 64)
	if err != nil || !within(size, 1, 180) {
		return bad("the nominal size must be 1 to 180 mm")
	}
	f := ISOFit{Nominal: size, Hole: fields[1], Shaft: fields[3]}
	holeLetter, holeGrade, ok := toleranceClass(f.Hole)
	if !ok || holeLetter != strings.ToUpper(holeLetter) {
		return bad("%q is not a hole, such as H7", f.Hole)
	}
	shaftLetter, shaftGrade, ok := toleranceClass(f.Shaft)
	if !ok || shaftLetter != strings.ToLower(shaftLetter) {
		return bad("%q is not a shaft, such as s6", f.Shaft)
	}
	if f.ShaftLower, f.ShaftUpper, ok = shaftDeviations(size, shaftLetter, shaftGrade); !ok {
		return bad("%q is not in the table at %.6g mm", f.Shaft, size)
	}
	if f.HoleLower, f.HoleUpper, ok = holeDeviations(size, holeLetter, holeGrade); !ok {
		return bad("%q is not in the table at %.6g mm", f.Hole, size)
	}
	f.Interference = (f.ShaftUpper+f.ShaftLower)/2 - (f.HoleUpper+f.HoleLower)/2
	f.HoleTol, f.ShaftTol = (f.HoleUpper-f.HoleLower)/2, (f.ShaftUpper-f.ShaftLower)/2
	return f, nil
}

// toleranceClass splits "s6" into letter and grade.
func toleranceClass(s string) (letter string, grade int, ok bool) {
	i := strings.IndexAny(s, "0123456789")
	if i < 1 {
		return "", 0, false
	}
	grade, err := strconv.Atoi(s[i:])
	return s[:i], grade, err == nil && grade >= lowestGrade && grade < lowestGrade+len(grades)
}

// StandardTolerance gives the standard tolerance IT5 to IT13 of a size up to 180
// mm [mm]. A size on the limit of two ranges belongs to the lower one.
//
//	i = 0.45 D^(1/3) + 0.001 D [um], D: geometric mean of the range [mm]
//	IT6 = 10 i, IT7 = 16 i, IT8 = 25 i, ...
//
// Source: ISO 286-1, table (read in a copy, see testdata/iso286.csv); the
// formula gives the table but for its rounding. ok is false outside.
func StandardTolerance(size float64, grade int) (tol float64, ok bool) {
	g := grade - lowestGrade
	if g < 0 || g >= len(grades) || !within(size, 1e-9, 180) {
		return 0, false
	}
	return grades[g][mainRange(size)] / 1000, true
}

// shaftDeviations gives lower and upper deviation of a shaft [mm].
func shaftDeviations(size float64, letter string, grade int) (lower, upper float64, ok bool) {
	it, ok := StandardTolerance(size, grade)
	if !ok {
		return 0, 0, false
	}
	if letter == "js" {
		return -it / 2, it / 2, true
	}
	um, ok := fundamental(size, letter)
	if !ok {
		return 0, 0, false
	}
	if letter == "k" && (grade < 4 || grade > 7) {
		um = 0
	}
	dev := um / 1000
	if letter <= "h" {
		return dev - it, dev, true
	}
	return dev, dev + it, true
}

// holeDeviations gives lower and upper deviation of a hole [mm]: the mirror of
// the shaft of the same letter, for K to X of fine grades moved by
// Delta = IT(n) - IT(n-1) above 3 mm.
func holeDeviations(size float64, letter string, grade int) (lower, upper float64, ok bool) {
	it, ok := StandardTolerance(size, grade)
	if !ok {
		return 0, 0, false
	}
	small := strings.ToLower(letter)
	if small == "js" {
		return -it / 2, it / 2, true
	}
	um, ok := fundamental(size, small)
	if !ok {
		return 0, 0, false
	}
	dev := -um / 1000
	if small <= "h" {
		return dev, dev + it, true
	}
	// The rule of Delta: K, M, N up to IT8, P to ZC up to IT7.
	moved := grade <= 7 || (grade == 8 && (small == "k" || small == "m" || small == "n"))
	if !moved && (small == "k" || small == "n" && size > 3) {
		dev = 0
	}
	if moved && size > 3 {
		finer, fine := StandardTolerance(size, grade-1)
		if !fine {
			return 0, 0, false
		}
		dev += it - finer
	}
	return dev - it, dev, true
}
