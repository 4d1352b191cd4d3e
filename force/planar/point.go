// Package planar has the point of the plan, across the press axis, that all rooms share.
package planar

// Point is a place in the plan, seen along the press axis from above [mm].
type Point struct{ X, Y float64 }
