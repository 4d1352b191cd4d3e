package quote

import (
	"fmt"
	"slices"
	"strings"

	"ramnest/force/fault"
)

// A RateCard is a shop's rate card, a file of its own: what printing costs by process.
// Money is in the card's currency, as text, and never converted. A process without
// rates cannot be quoted.
type RateCard struct {
	Name     string `yaml:"name" required:"true"`
	Currency string `yaml:"currency" required:"true"` // printed as it stands

	Handling   float64 `yaml:"handling" unit:"none"`    // an order: preparing the files, packing
	LabourHour float64 `yaml:"labour_hour" unit:"none"` // of assembly, for the break-even
	Reject     float64 `yaml:"reject" unit:"pct"`       // share of prints thrown away [1], below 0.9
	Margin     float64 `yaml:"margin" unit:"pct"`       // on top of cost [1]
	Minimum    float64 `yaml:"minimum" unit:"none"`     // least price of an order
	Quantities []int   `yaml:"quantities"`              // for the table of quantity breaks; left out: 1, 2, 5, 10

	PBF *PBFRates `yaml:"pbf"`
	MEX *MEXRates `yaml:"mex"`
	VPP *VPPRates `yaml:"vpp"`

	Invented bool `yaml:"-"` // not a shop's rates: see InventedRateCard
}

// A Machine is what all processes have.
type Machine struct {
	Build       [3]float64 `yaml:"build_volume" unit:"mm" required:"true"`   // [mm]
	Spacing     float64    `yaml:"spacing" unit:"mm" required:"true"`        // between pieces [mm]
	Layer       float64    `yaml:"layer" unit:"mm" required:"true"`          // [mm]
	MachineHour float64    `yaml:"machine_hour" unit:"none" required:"true"` // rate
	BuildSetUp  float64    `yaml:"build_set_up" unit:"none"`                 // a build: loading, emptying, cleaning the machine
	PieceWork   float64    `yaml:"piece_work" unit:"none"`                   // a piece: supports, blasting, washing
	MaterialKg  float64    `yaml:"material_kg" unit:"none" required:"true"`  // a kilogram
	Density     float64    `yaml:"density" unit:"none" required:"true"`      // of the print [g/cm3]
}

// PBFRates are those of powder bed fusion. A build is paid for its height, whether
// full or not, and that is shared over the pieces by the volume of their boxes.
type PBFRates struct {
	Machine       `yaml:",inline"`
	Recoat        float64 `yaml:"recoat" unit:"s" required:"true"` // between layers [s]
	ScanRate      float64 `yaml:"scan_cm3_h" unit:"none"`          // volume melted an hour [cm3/h]; 0: counts no time
	WarmHours     float64 `yaml:"warm_up_hours" unit:"none"`       // heating and cooling in the machine, a build [h]
	PowderDensity float64 `yaml:"powder_density" unit:"none"`      // of the bed [g/cm3]
	Refresh       float64 `yaml:"refresh" unit:"pct"`              // share of the unused powder that is replaced [1]
	// SharedFill says that builds are filled with other work up to this share of the
	// build volume in boxes [1], so that a piece pays its part of a full build. 0: the
	// order has its builds to itself.
	SharedFill float64 `yaml:"shared_fill" unit:"pct"`
}

// MEXRates are those of material extrusion: mass and time, linear in the count.
type MEXRates struct {
	Machine     `yaml:",inline"`
	Deposit     float64 `yaml:"deposit_cm3_h" unit:"none" required:"true"` // [cm3/h]
	LayerChange float64 `yaml:"layer_change" unit:"s"`                     // [s]
	Support     float64 `yaml:"support" unit:"pct"`                        // on top of the volume [1]
}

// VPPRates are those of vat photopolymerization with a mask: height decides, hardly
// the count.
type VPPRates struct {
	Machine   `yaml:",inline"`
	LayerTime float64 `yaml:"layer_time" unit:"s" required:"true"` // exposure and peel [s]
	Support   float64 `yaml:"support" unit:"pct"`                  // on top of the volume [1]
}

// InventedRateCard is a card of invented round numbers. It is nobody's price: it
// stands in until the shop writes its own, and every offer made from it says so.
func InventedRateCard() RateCard {
	return RateCard{Name: "INVENTED round numbers, not a price", Currency: "units", Handling: 20, LabourHour: 40, Reject: 0.05, Margin: 0.3,
		Minimum: 50, Invented: true,
		PBF: &PBFRates{Machine: Machine{Build: [3]float64{300, 300, 300}, Spacing: 5, Layer: 0.1, MachineHour: 20, BuildSetUp: 40, PieceWork: 3,
			MaterialKg: 60, Density: 0.95},
			Recoat: 10, ScanRate: 500, WarmHours: 4, PowderDensity: 0.45, Refresh: 0.4, SharedFill: 0.5},
		MEX: &MEXRates{Machine: Machine{Build: [3]float64{250, 250, 250}, Spacing: 10, Layer: 0.2, MachineHour: 4, BuildSetUp: 5, PieceWork: 3,
			MaterialKg: 30, Density: 1.25}, Deposit: 20, LayerChange: 2, Support: 0.1},
		VPP: &VPPRates{Machine: Machine{Build: [3]float64{200, 120, 200}, Spacing: 5, Layer: 0.05, MachineHour: 6, BuildSetUp: 15, PieceWork: 5,
			MaterialKg: 80, Density: 1.15}, LayerTime: 8, Support: 0.15},
	}
}

var usualQuantities = []int{1, 2, 5, 10}

// Validate returns everything wrong with the card.
func (c RateCard) Validate() []fault.Fault {
	var k check
	k.word("name", c.Name)
	k.word("currency", c.Currency)
	k.number("handling", c.Handling, 0, mostMoney, "")
	k.number("labour_hour", c.LabourHour, 0, mostMoney, "")
	k.share("reject", c.Reject, 0.9)
	k.share("margin", c.Margin, 10)
	k.number("minimum", c.Minimum, 0, mostMoney, "")
	if len(c.Quantities) > 20 {
		k.add("quantities", fmt.Sprint(len(c.Quantities)), "are too many", "20 at most")
	}
	for i, q := range c.Quantities {
		if q < 1 || q > mostPieces || i > 0 && q <= c.Quantities[i-1] {
			k.add(fmt.Sprintf("quantities[%d]", i), fmt.Sprint(q), "is no rising quantity",
				fmt.Sprintf("1 to %d, each larger than the one before", mostPieces))
		}
	}
	if c.PBF == nil && c.MEX == nil && c.VPP == nil {
		k.add("pbf", "", "is missing, and so are mex and vpp", "the rates of one process at least")
	}
	if r := c.PBF; r != nil {
		k.machine("pbf.", r.Machine)
		k.number("pbf.recoat", r.Recoat, 0, 3600, " s")
		k.number("pbf.scan_cm3_h", r.ScanRate, 0, 1e6, " cm3/h")
		k.number("pbf.warm_up_hours", r.WarmHours, 0, 1000, " h")
		k.number("pbf.powder_density", r.PowderDensity, 0, 25, " g/cm3")
		k.share("pbf.refresh", r.Refresh, 1)
		k.share("pbf.shared_fill", r.SharedFill, 1)
		if r.SharedFill > 0 && r.SharedFill < 0.01 {
			k.add("pbf.shared_fill", fmt.Sprintf("%g %%", 100*r.SharedFill), "is no full build", "1 to 100 %, or 0 for builds of their own")
		}
	}
	if r := c.MEX; r != nil {
		k.machine("mex.", r.Machine)
		k.number("mex.deposit_cm3_h", r.Deposit, 0.1, 1e5, " cm3/h")
		k.number("mex.layer_change", r.LayerChange, 0, 3600, " s")
		k.share("mex.support", r.Support, 10)
	}
	if r := c.VPP; r != nil {
		k.machine("vpp.", r.Machine)
		k.number("vpp.layer_time", r.LayerTime, 0.05, 3600, " s")
		k.share("vpp.support", r.Support, 10)
	}
	return k.faults
}

const (
	mostMoney  = 1e9
	mostPieces = 10000 // of an order
)

// check collects faults.
type check struct{ faults []fault.Fault }

func (k *check) add(field, given, problem, want string) {
	k.faults = append(k.faults, fault.Fault{Field: field, Given: given, Problem: problem, Want: want})
}

func (k *check) word(field, s string) {
	if strings.TrimSpace(s) == "" || strings.ContainsAny(s, "\n\r") || len(s) > 200 {
		k.add(field, "", "is empty, too long or has several lines", "a word to print")
	}
}

func (k *check) number(field string, v, lo, hi float64, unit string) {
	if !(v >= lo && v <= hi) {
		k.add(field, fmt.Sprintf("%g%s", v, unit), "is out of range", fmt.Sprintf("%g to %g%s", lo, hi, unit))
	}
}

// share checks a share that files write in percent.
func (k *check) share(field string, v, hi float64) {
	if !(v >= 0 && v <= hi) {
		k.add(field, fmt.Sprintf("%g %%", 100*v), "is out of range", fmt.Sprintf("0 to %g %%", 100*hi))
	}
}

func (k *check) machine(at string, m Machine) {
	for i, v := range m.Build {
		k.number(fmt.Sprintf("%sbuild_volume[%d]", at, i), v, 10, 5000, " mm")
	}
	k.number(at+"spacing", m.Spacing, 0, 200, " mm")
	k.number(at+"layer", m.Layer, 0.005, 5, " mm")
	k.number(at+"machine_hour", m.MachineHour, 0, mostMoney, "")
	k.number(at+"build_set_up", m.BuildSetUp, 0, mostMoney, "")
	k.number(at+"piece_work", m.PieceWork, 0, mostMoney, "")
	k.number(at+"material_kg", m.MaterialKg, 0, mostMoney, "")
	k.number(at+"density", m.Density, 0.01, 25, " g/cm3")
}

// quantities are those of the table of breaks.
func (c RateCard) quantities() []int {
	if len(c.Quantities) > 0 {
		return slices.Clone(c.Quantities)
	}
	return usualQuantities
}
