// Package batch works many jobs out beside one another, each into a folder of its own
// that stands whole or not at all, and goes on where an earlier run was stopped.
//
// The central type is [Plan]; [Run] gives one [Row] for each job, in the order of the
// plan. A job is done again only if its fingerprint changed or a file of it is not as
// it was written. For bureaus with hundreds of jobs; for the command batch only.
//
// It does not know what a job is: [Plan.Ready] reads one and says how to work it out.
package batch
