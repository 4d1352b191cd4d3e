package quote

import (
	"fmt"

	"ramnest/force/fault"
)

// SecondsPerTMU is a hundred-thousandth of an hour [s] (MTM-1, memory).
const SecondsPerTMU = 0.036

// Elements of MTM-1 [TMU] (memory; no copy of the card was found).
const (
	ReachR30B    = 12.8
	GraspG1A     = 2.0
	MoveM30B     = 13.3
	PositionP1SE = 5.6
	ReleaseRL1   = 2.0
	LeverStroke  = 54.0 // lever down and up with pressure (own)
)

// PressCycle gives the bare time of one assembly at an arbor press [s]: load lower and
// upper part, lever down and up, unload. Source: MTM-1 elements (memory), sequence own.
// Left out: looking over, allowance; with them 10 to 15 s (common practice).
func PressCycle() float64 {
	place := ReachR30B + GraspG1A + MoveM30B + PositionP1SE + ReleaseRL1
	return SecondsPerTMU * (2*place + LeverStroke + place)
}

// HandSnap gives handling one part and snapping it home by hand, the long end [s]:
// 1.95 + 5 (handling table read; insertion a range from memory).
const HandSnap = 6.95

// MalletCycle gives the time with a mallet [s]: handling two parts at 1.95, unloading
// the same, 1.5 to place the head and 1 a blow. blows: 1 or more. Source: common
// practice, handling read.
func MalletCycle(blows int) (float64, error) {
	if blows < 1 || blows > 1000 {
		return 0, fault.Fault{Field: "blows", Given: fmt.Sprint(blows), Problem: "is out of range", Want: "1 to 1000"}
	}
	return 3*1.95 + 1.5 + float64(blows), nil
}
