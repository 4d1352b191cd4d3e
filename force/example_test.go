package force_test

import (
	"fmt"

	"ramnest/force"
	"ramnest/force/planar"
)

// lid is a round lid with a bead on a housing, both of powder bed PA12.
func lid() force.Assembly {
	pa12 := force.MaterialSpec{Material: "PA12", Process: "PBF", Build: "along"}
	return force.Assembly{Lower: pa12, Upper: pa12, Seed: 1, Latches: []force.Latch{{
		ID: "bead", At: []planar.Point{{X: 0, Y: 0}}, Z: 20,
		Annular: &force.Annular{Outside: "lower", JointDiameter: 60, Undercut: 0.5, MatingAngle: 0.35, ReturnAngle: 0.79, Land: 0.4, GrooveFloat: 0.2,
			OuterDiameter: 63, InnerDiameter: 56, EndDistance: 3},
	}}}
}

func ExampleAnalyse() {
	r, err := force.Analyse(lid())
	if err != nil {
		fmt.Println(err)
		return
	}
	l := r.Latches[0]
	fmt.Printf("peak %.0f N at a lift of %.2f mm, design force %.0f N\n", r.Peak, r.PeakLift, r.Design)
	fmt.Printf("strain %.2f of %.2f %%, holds %.0f N\n", 100*l.Strain, 100*l.Permitted, l.Separation)
	// Output:
	// peak 798 N at a lift of 0.86 mm, design force 1293 N
	// strain 0.59 of 3.50 %, holds 1985 N
}

func ExampleExplain() {
	for _, l := range force.Explain(lid(), "bead") {
		if l.Symbol == "f" || l.Symbol == "kappa" || l.Symbol == "F" || l.Symbol == "W" {
			fmt.Printf("%s: %s = %.4g %s [%s]\n    %s\n    = %s\n", l.ID, l.Symbol, l.Value, l.Unit, l.Mark, l.Formula, l.Numbers)
		}
	}
	// Output:
	// contact.series: kappa = 0.05296 1 [own]
	//     kappa = (kappa_o/K_o + kappa_i/K_i)/(1/K_o + 1/K_i), either not below 0
	//     = (0.03980974/3609.115 + 0.08491719/8768.013)/(1/3609.115 + 1/8768.013)
	// flank.factor: f = 1.199 1 [read]
	//     f = tan(alpha + rho) = (mu + tan alpha)/(1 - mu tan alpha)
	//     = (0.58 + tan(20.05352))/(1 - 0.58*tan(20.05352))
	// contact.factor: F = 1.28 1 [own]
	//     F = f/(1 - f kappa): the axial force turns the wall against its way
	//     = 1.198843/(1 - 1.198843*0.05296287)
	// snap.force: W = 797.5 N [read]
	//     W = P F, at the end of the lead-in
	//     = 622.9866*1.280124
}

func ExampleAssembly_Validate() {
	a := lid()
	a.Latches[0].Annular.Undercut = 15
	a.Upper.Material = "PA13"
	for _, f := range a.Validate() {
		fmt.Println(f.Field, "|", f.Given, "|", f.Problem)
	}
	// Output:
	// upper.material | PA13 | is not in the table
	// latches[0].annular.undercut | 15 mm | must be 12 mm or less
}

func ExampleStagger() {
	a := lid()
	second := a.Latches[0]
	second.ID = "second bead"
	a.Latches = append(a.Latches, second)
	before, _ := force.Analyse(a)
	apart, what, ok := force.Stagger(a)
	if !ok {
		fmt.Println("nothing to gain")
		return
	}
	after, _ := force.Analyse(apart)
	fmt.Printf("%s: %.0f N instead of %.0f N over %.2f mm instead of %.2f mm\n", what, after.Design, before.Design, after.Stroke, before.Stroke)
	// Output:
	// second bead 0.95 mm earlier: 1460 N instead of 2505 N over 2.48 mm instead of 1.53 mm
}
