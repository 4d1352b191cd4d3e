// Package job is the job file: what an engineer states about one assembly, joined
// from the structs of the packages that own its sections.
//
// The central type is [File]. jobfile fills it from YAML, [File.Validate] says what
// is wrong with it, and [File.Steps] gives its press steps with everything that
// the file says once put where it is needed. What only shows when the parts are
// read, such as a latch beside them, is found by [Step.Placed].
//
// Lengths are mm, forces N, angles rad, whatever the file was written in. It reads
// no file and computes no force.
package job
