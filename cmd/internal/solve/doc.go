// Package solve works a job out: forces, method, tooling and quote of every press
// step, in that order, by the packages that know each.
//
// The central call is [Run], which gives a [Solution]. Method and tooling depend on
// each other (a tall nest needs a taller press, a press needs another base), so the
// method is chosen without sizes first and again with those of the tooling, until
// both agree. Where no manual method is good enough, the Solution has no tooling.
//
// What is wrong with a job comes back as [Refused], faults with their paths in the
// file. It prints nothing and writes no file.
package solve
