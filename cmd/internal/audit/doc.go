// Package audit reads what was worked out of a job as an outsider would, and doubts it.
//
// It holds each figure against plain order, against the figures beside it and against a
// computation of its own: the sum of the latches taken at other lifts, the band from
// other draws, the verdict from demand and capacity, the papers against what they are
// drawn from. What disagrees is a [Contradiction]: a fault of the program, never of the
// job, and the run ends with it before anything is written.
//
// The central calls are [Forces], [Choices] and [Solution], by how far the job was worked
// out, then [Papers] for what is about to be written and [Terminal] for what is about to
// be printed. It imports what it judges; only the command imports it. It computes no
// figure that anybody is shown, and it does not doubt the formulas behind one joint: those
// have tests of their own.
package audit
