package force

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// A LifeFactor is the share of the hold that one influence leaves, at its low end [1].
// What is not known has no value, and then there is no hold at the end of life.
type LifeFactor struct {
	Name  string // time, set, openings, temperature or moisture
	Value float64
	Known bool
	Mark  Mark
	Why   string // what it rests on, or what is missing
}

func leaves(v float64, m Mark, format string, args ...any) LifeFactor {
	return LifeFactor{Value: v, Known: true, Mark: m, Why: fmt.Sprintf(format, args...)}
}

func unknown(format string, args ...any) LifeFactor {
	return LifeFactor{Why: fmt.Sprintf(format, args...)}
}

// less gives the factor of a pair: the lower of both parts', not known if one is not.
func less(a, b LifeFactor) LifeFactor {
	if !a.Known || b.Known && a.Value <= b.Value {
		return a
	}
	return b
}

// LifeShare multiplies factors, K [1]; known is false if one of them is not.
//
//	K = K_time K_set K_openings K_temperature K_moisture
//
// Source: own, that they act independently. Leaves out chemicals, sunlight, vibration and
// what a heated or wet part loses faster with time.
func LifeShare(factors []LifeFactor) (k float64, known bool) {
	k = 1
	for _, f := range factors {
		if !f.Known {
			return 0, false
		}
		k *= f.Value
	}
	return k, true
}

// Relaxation gives the share of the hold that is left after a time under strain or
// load, at the low end of a coarse rule, K_time [1].
//
//	K = 1 at t = 0,  0.75 up to 1 h,  0.75 - 0.25/3 lg t  up to 10 000 h
//
// t: hours, 0 or above. Source: from memory, unfilled thermoplastics: 0.75 to 0.85
// after 1 h, 0.5 to 0.6 after 1000 h; the line between and one decade further are own.
// ok is false beyond: nothing is known there. A latch that stands free of strain at
// home loses less, which is not credited.
func Relaxation(t float64) (k float64, ok bool) {
	switch {
	case !within(t, 0, 10000):
		return 0, false
	case t == 0:
		return 1, true
	}
	return 0.75 - 0.25/3*math.Log10(max(1, t)), true
}

// lifeFactors gives the factors of one latch, with its strains at nominal size.
func lifeFactors(v Service, l Latch, j *joint, s state, outer, inner Material) []LifeFactor {
	both := func(of func(Material) LifeFactor) LifeFactor { return less(of(outer), of(inner)) }
	pick := func(name string, measured *float64, f LifeFactor) LifeFactor {
		if measured != nil {
			f = leaves(*measured, MarkJob, "as measured on samples")
		}
		f.Name = name
		return f
	}
	return []LifeFactor{
		pick("time", v.Keeps.Time, both(func(m Material) LifeFactor { return m.overTime(v.Time()) })),
		pick("set", v.Keeps.Set, setLeft(j, s)),
		pick("openings", v.Keeps.Openings, worn(v.Openings)),
		pick("temperature", v.Keeps.Temperature, both(func(m Material) LifeFactor { return m.warm(v.Warmest()) })),
		pick("moisture", v.Keeps.Moisture, both(func(m Material) LifeFactor { return m.moist(v.Air()) })),
	}
}

// thermoplastics are those that the rule for relaxation was recalled for, and their
// filled kinds, which creep less.
var thermoplastics = []string{"PA12", "PA11", "PA", "PA6", "PA66", "PLA", "PETG", "ABS", "ASA", "PC", "PP", "POM", "PBT"}

// kin is the polymer without its filler: PA12 of PA12-GB. A name that the built-in table
// does not have may be anything.
func (m Material) kin() string {
	if _, ok, _ := findRow(m.Name, ""); !ok {
		return ""
	}
	name, _, _ := strings.Cut(strings.ToUpper(m.Name), "-")
	return name
}

func (m Material) overTime(t float64) LifeFactor {
	if m.Metal() || t == 0 {
		return leaves(1, MarkPractice, "no time passes, or a metal")
	}
	if !slices.Contains(thermoplastics, m.kin()) {
		return unknown("no relaxation of %s was found", m.Name)
	}
	k, ok := Relaxation(t)
	if !ok {
		return unknown("no relaxation beyond 10000 h was found")
	}
	return leaves(k, MarkMemory, "low end of a coarse rule for held plastic joints, after %s h", figure(t))
}

// worn is what openings leave: no figure of printed latches was found. One moulded
// stud pair of ABS failed after 37 112 joinings, which tells no share before.
func worn(openings int) LifeFactor {
	if openings == 0 {
		return leaves(1, MarkOwn, "never opened")
	}
	return unknown("no wear of printed latches over openings was found")
}

// setLeft is what is left of the size after the strain of joining, all that the secant
// line lies below the modulus at small strain counted as lasting.
//
//	K = 1 - w/a, of the member with the larger w/a; a ball: to the power 1.5
//
// w: movement, a: movement at which the secant line meets zero [mm]. The hold of a snap
// falls no faster than its size, that of a ball with the slope of its flank too. Source:
// own, an upper bound of the set. Beyond the permitted strain, or without a secant line
// beyond 0.6 of it, nothing is known.
func setLeft(j *joint, s state) LifeFactor {
	if j.flows {
		return leaves(1, MarkOwn, "ribs flow on the way in: the flow stress counts it")
	}
	worst := leaves(1, MarkPractice, "within 0.6 of the permitted strain, it springs back")
	for _, m := range []struct {
		spring       member
		move, strain float64
	}{{j.outer, s.outerMove, s.outerStrain}, {j.inner, s.move - s.outerMove, s.innerStrain}} {
		f := worst
		switch {
		case m.spring.stiffness == 0:
			continue
		case m.strain > m.spring.limit*(1+1e-9):
			f = unknown("strained beyond the permitted: what set it takes is not known")
		case m.spring.zero > 0 && m.move >= m.spring.zero/2:
			f = unknown("strained to the top of its secant line: what set it takes is not known")
		case m.spring.zero > 0:
			k := 1 - m.move/m.spring.zero
			if j.path == ball {
				k = math.Pow(k, 1.5)
			}
			f = leaves(k, MarkOwn, "all that the secant line lies below the modulus at small strain counted as set")
		case m.strain > repeatFactor*m.spring.limit:
			f = unknown("strained beyond 0.6 of the permitted, and no secant data: what set it takes is not known")
		}
		worst = less(f, worst)
	}
	return worst
}

// warm is the share at a temperature. PA12 keeps 0.3 at the least at 60 deg C; from the
// low end of its glass transition at 40 on that is taken, and a line from 23 to there.
func (m Material) warm(t float64) LifeFactor {
	const glass, hot, kept = 40.0, 60.0, 0.3
	switch {
	case t < 0:
		return unknown("brittleness below 0 deg C was not found")
	case t <= room:
		return leaves(1, MarkPractice, "no warmer than the figures of the table; that cold stiffens is not credited")
	case m.Metal() && t <= 100:
		return leaves(1, MarkPractice, "a metal up to 100 deg C")
	case m.kin() == "PA12" && t <= hot:
		return leaves(1-(1-kept)*min(1, (t-room)/(glass-room)), MarkMemory,
			"PA12 keeps 0.3 to 0.5 of its modulus at 60 deg C; the low end, from 40 deg C on, a line to there")
	}
	return unknown("no figure for %s at %s deg C was found", m.Name, figure(t))
}

// dryToRoom are moduli at 50 % relative humidity over dry, from memory [1]; a polyamide
// of no stated kind counts as PA6.
var dryToRoom = []struct {
	name  string
	share float64
}{{"PA6", 1100.0 / 3000}, {"PA66", 1600.0 / 3100}, {"PA12", 1100.0 / 1450}, {"PA11", 1050.0 / 1300}, {"PA", 1100.0 / 3000}}

func (m Material) moist(air string) LifeFactor {
	if m.Metal() || air == "dry" {
		return leaves(1, MarkPractice, "dry, or a metal")
	}
	if air == "immersed" {
		return unknown("no figure for %s in water was found", m.Name)
	}
	for _, p := range dryToRoom {
		if m.kin() == p.name {
			return leaves(p.share, MarkMemory, "modulus of %s at 50 %% relative humidity over dry; the table's figures count as dry", p.name)
		}
	}
	if slices.Contains(thermoplastics, m.kin()) {
		return leaves(1, MarkPractice, "takes up little water")
	}
	return unknown("no figure for %s at 50 %% relative humidity was found", m.Name)
}
