// Package calibrate learns from measured peak forces how a shop's prints differ from
// the table: friction, stiffness, and how much larger or smaller an interference comes
// out than drawn.
//
// The central types are [Model], an assembly with its coupons made ready, and
// [Fit], what the measurements say of it: estimates with their intervals, residuals,
// outliers, bands of force. [Fit.Advise] says which step of a ladder to take and
// whether another round is worth its price; [Sheet] puts the result into later jobs.
// For the engineer who has printed a ladder of coupons and pressed it together.
//
// Sizes mm, forces N, shares as fractions. It measures nothing, knows no meshes and
// no files but the table of measurements; the laws of force are those of package force.
package calibrate
