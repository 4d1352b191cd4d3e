package quote

import (
	"fmt"
	"math"

	"ramnest/force/fault"
)

// Packing gives how many equal boxes stand in a build in straight rows, not turned.
//
//	n = product over x, y, z of floor((build + spacing) / (box + spacing))
//
// build, box: [mm], above 0. spacing: between the boxes [mm], 0 or more. Source: own;
// no margin at the edge of the build is taken.
func Packing(build, box [3]float64, spacing float64) (int, error) {
	n := 1.0
	for i := range build {
		if err := positive(fmt.Sprintf("build[%d]", i), build[i], "mm"); err != nil {
			return 0, err
		}
		if err := positive(fmt.Sprintf("box[%d]", i), box[i], "mm"); err != nil {
			return 0, err
		}
		if !(spacing >= 0 && spacing <= limit) {
			return 0, fault.Fault{Field: "spacing", Given: fmt.Sprintf("%g mm", spacing), Problem: "is out of range", Want: "0 mm or more"}
		}
		n *= math.Floor((build[i]+spacing)/(box[i]+spacing) + 1e-9)
	}
	if n > 1e9 {
		return 0, fault.Fault{Field: "box", Problem: "is so small that counting has no meaning", Want: "the box of a part"}
	}
	return int(n), nil
}

// Layers gives the number of layers of a height: height over layer, rounded up, both
// [mm], above 0.
func Layers(height, layer float64) (int, error) {
	if err := positive("height", height, "mm"); err != nil {
		return 0, err
	}
	if err := positive("layer", layer, "mm"); err != nil {
		return 0, err
	}
	n := math.Ceil(height/layer - 1e-9)
	if n > 1e8 {
		return 0, fault.Fault{Field: "layer", Given: fmt.Sprintf("%g mm", layer), Problem: "is too thin to count", Want: "0.02 mm or more"}
	}
	return int(n), nil
}

// RecoatTime gives the time between layers over a build [s], layers times recoat.
// recoat: [s] a layer, above 0. Source: Gibson, Rosen, Stucker, Additive Manufacturing
// Technologies, eq. 16.7 and 16.8 (read). The height alone sets it, so all pieces of a
// build share it.
func RecoatTime(height, layer, recoat float64) (float64, error) {
	n, err := Layers(height, layer)
	if err != nil {
		return 0, err
	}
	if err := positive("recoat", recoat, "s"); err != nil {
		return 0, err
	}
	return float64(n) * recoat, nil
}

const limit = 1e12

// positive is the fault of a figure that is not above 0 or is absurd.
func positive(field string, x float64, unit string) error {
	if x > 0 && x <= limit {
		return nil
	}
	given := fmt.Sprint(x)
	if unit != "" {
		given += " " + unit
	}
	return fault.Fault{Field: field, Given: given, Problem: "is out of range", Want: "above 0"}
}
