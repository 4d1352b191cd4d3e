// Package force computes the force it takes to push two plastic parts together
// over the whole stroke: annular snap joints, balls in sockets, cantilever hooks,
// press fits and crush ribs, their sum, the line on which the ram has to push, and
// the band that tolerances make of it. For whoever designs the tooling.
//
// The central call is [Analyse] on an [Assembly]; [Assembly.Validate] says first
// what is wrong with the input, [Explain] writes out every formula with the numbers
// put in, [Stagger] takes latches one after another. A latch becomes two springs in
// series and a law that turns their load into a force along the stroke.
//
// Inside, lengths are mm, forces N, moduli and stresses MPa, angles rad, work mJ
// (N mm) and strains fractions. Lift is the distance of the upper part above its
// seat; it falls to 0 while pressing.
//
// Left out: speed, temperature, humidity, creep and wear. The material table is
// a starting point; a shop's own coupon values belong in the job.
package force
