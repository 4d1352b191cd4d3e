// Package report says what was computed of a job: as a JSON report that repeats
// every input, default, formula, result, margin and warning, and as text of 80
// columns for a terminal.
//
// The central calls are [Of], for the JSON, and [Summary], [Forces] and [Defaults]
// for the text. The JSON is in mm, N, MPa, mJ, kg and rad always, and names the unit
// in its keys or beside the value; the text is in the job's own units.
//
// It computes nothing and opens no file.
package report
