package force

// Point is a place in the plan, seen along the press axis from above [mm].
type Point struct{ X, Y float64 }
