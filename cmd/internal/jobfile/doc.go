// Package jobfile reads a YAML job file into a struct of the caller and keeps
// the line of every value, so that each fault can name its place.
//
// The struct says what the file may hold, by tags: `yaml:"name"` or
// `yaml:",inline"`, `unit:"mm|N|deg|MPa|kg|J|s|pct|none"`, `required:"true"`,
// `oneof:"a b c"`, `format:"date"`. A field without a yaml tag is not of the
// file. Values come out in the units of the program: mm, N, rad, MPa, kg, J, s
// and shares as fractions.
//
// The reader is strict: whatever is not understood in full is a fault, and all
// faults of a file are reported together. It does not know what a job is; the
// ranges of values are checked by the Validate methods of the structs, whose
// faults [Document.Problems] puts in their place in the file.
package jobfile
