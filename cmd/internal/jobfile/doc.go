// Package jobfile reads a YAML file into a Go struct, strictly, and remembers on
// which line everything stood. It is for cmd, which joins the structs that the
// other packages own; it knows no latch, no part and no press, only their tags.
//
// The central call is [Decode]. What it gives back beside the filled struct is a
// [Document], which finds the line of a field later, when a Validate method
// complains about it, and [Problems], all that is wrong, in file order.
//
// Every number has a unit tag and leaves this package in the house's units: mm,
// N, rad, MPa, kg, J, s, and percent as a fraction. In the file a plain number
// is in the job's own unit and a text with a unit is taken as it says. Figures
// are converted exactly and rounded once, so that a job in inches gives the very
// float64 of its metric twin.
//
// The tags are yaml, unit, oneof, required and format; see [Key]. A struct that
// uses them wrongly makes Decode panic at once, whatever the file holds.
//
// It opens no file, writes none, and does not judge a value: that is the work of
// Validate. No other package imports the YAML library.
package jobfile
