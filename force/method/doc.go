// Package method says how two parts are pushed together: by hand, with a mallet
// on a nest in a vise, with a manual arbor press, or not with any of them.
//
// It is for the engineer who signs the decision: [Choose] assesses all three
// methods, every time, each as a list of limits with demand, capacity and source,
// and takes the least one that passes. The central types are [Demand] (what the
// joint and the line ask for), [Bench] (what the shop has) and [Decision]. [Advise]
// says what a change of the joint would bring, once its forces are computed.
//
// Units: mm, N, mJ, kg, s; hours and rates an hour. It knows manual work only: no
// powered press, no heat, no ultrasound. Figures for hands come from EN 1005-3 and
// a few papers, most of them read in extracts; each limit names its source and how
// far that can be trusted, and what is the package's own is marked so. Local law
// and the site's own assessment come first.
package method
