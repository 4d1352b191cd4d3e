// Package deliver turns what was computed of a job into the files that `ramnest
// make` writes: solids, quote, report.
//
// The central call is [Files]. Everything is rendered in memory first, so that a
// fault of the program shows before the folder is touched, and what can still go
// wrong while writing is the folder's own trouble. The same job gives the same
// bytes.
package deliver
