package force

// A plausibleRange is what sources give for a figure of a material by a process, the
// extremes of them. The mark is that of the weaker end.
type plausibleRange struct {
	material, process, figure string
	lo, hi                    float64 // [MPa], [1]
	mark                      Mark
	source                    string
}

const (
	sheets   = "data sheets, recalled"
	practice = "usual range of data sheets, no source"
	measured = "measured prints and data sheets"
	table3   = "Snap-Fit Joints for Plastics - A Design Guide, table 3"
	breaking = "from the least usual permitted strain to the strain at the top of the curve"
)

// plausibleRanges holds the ranges, material by material. A modulus reaches down to
// thin sections (sintered below 3 mm: 0.55 of the bulk, abstract) and to moist
// polyamide (memory), a strain up to that at the top of the curve.
var plausibleRanges = [...]plausibleRange{
	{"PA12", "PBF", "modulus", 800, 2000, MarkMemory, "1482 measured, 0.55 of it in thin sections; 2000 by a printing reference"},
	{"PA12", "PBF", "strength", 40, 50.1, MarkRead, "43.1 to 50.1 measured"},
	{"PA12", "PBF", "strain", 0.015, 0.12, MarkRead, "top of four measured curves at 10 to 12 %"},
	{"PA12", "PBF", "friction", 0.20, 0.60, MarkRead, table3 + ", PA; smoothed lower"},
	{"PA11", "PBF", "modulus", 850, 1800, MarkMemory, sheets},
	{"PA11", "PBF", "strength", 40, 55, MarkMemory, sheets},
	{"PA11", "PBF", "strain", 0.02, 0.20, MarkMemory, sheets},
	{"PA11", "PBF", "friction", 0.20, 0.60, MarkRead, table3 + ", PA"},
	{"PA12-GB", "PBF", "modulus", 1500, 3300, MarkMemory, sheets},
	{"PA12-GB", "PBF", "strength", 25, 40, MarkMemory, sheets},
	{"PA12-GB", "PBF", "strain", 0.008, 0.06, MarkMemory, sheets},
	{"PA12-GB", "PBF", "friction", 0.20, 0.60, MarkRead, table3 + ", PA"},
	{"PLA", "MEX", "modulus", 1880, 3500, MarkRead, measured},
	{"PLA", "MEX", "strength", 33, 65, MarkRead, "seven filaments, in the layers"},
	{"PLA", "MEX", "strain", 0.005, 0.03, MarkPractice, breaking},
	{"PLA", "MEX", "friction", 0.30, 0.76, MarkRead, "0.62 to 0.76 measured on prints; lower end common practice"},
	{"PETG", "MEX", "modulus", 1630, 3000, MarkRead, measured},
	{"PETG", "MEX", "strength", 34.8, 55, MarkRead, "ten filaments, in the layers"},
	{"PETG", "MEX", "strain", 0.0075, 0.05, MarkPractice, breaking},
	{"PETG", "MEX", "friction", 0.13, 0.45, MarkPractice, "0.13 to 0.21 measured on prints; upper end common practice"},
	{"ABS", "MEX", "modulus", 1500, 2400, MarkPractice, practice},
	{"ABS", "MEX", "strength", 22, 45, MarkPractice, practice},
	{"ABS", "MEX", "strain", 0.006, 0.04, MarkPractice, breaking},
	{"ABS", "MEX", "friction", 0.35, 0.78, MarkRead, table3},
	{"ASA", "MEX", "modulus", 1500, 2400, MarkPractice, practice},
	{"ASA", "MEX", "strength", 25, 50, MarkPractice, practice},
	{"ASA", "MEX", "strain", 0.006, 0.04, MarkPractice, breaking},
	{"ASA", "MEX", "friction", 0.35, 0.78, MarkRead, table3 + ", ABS"},
	{"PC", "MEX", "modulus", 1700, 2450, MarkPractice, practice},
	{"PC", "MEX", "strength", 40, 70, MarkPractice, practice},
	{"PC", "MEX", "strain", 0.01, 0.07, MarkPractice, breaking},
	{"PC", "MEX", "friction", 0.30, 0.66, MarkRead, table3},
	{"PA", "MEX", "modulus", 1000, 3000, MarkMemory, "0.37 of the dry modulus when moist"},
	{"PA", "MEX", "strength", 30, 85, MarkPractice, practice},
	{"PA", "MEX", "strain", 0.0125, 0.10, MarkPractice, breaking},
	{"PA", "MEX", "friction", 0.30, 1.10, MarkRead, table3 + "; 0.66 to 1.10 measured on prints"},
	{"PA-GF", "MEX", "modulus", 1500, 7000, MarkPractice, practice},
	{"PA-GF", "MEX", "strength", 40, 115, MarkRead, "66 and 111 measured on prints"},
	{"PA-GF", "MEX", "strain", 0.005, 0.05, MarkPractice, breaking},
	{"PA-GF", "MEX", "friction", 0.30, 1.10, MarkOwn, "as PA"},
	{"PA-CF", "MEX", "modulus", 2500, 8000, MarkMemory, "5000 to 8000 dry, 2500 to 4500 moist"},
	{"PA-CF", "MEX", "strength", 40, 90, MarkRead, "62 to 70 measured on prints"},
	{"PA-CF", "MEX", "strain", 0.005, 0.03, MarkPractice, breaking},
	{"PA-CF", "MEX", "friction", 0.30, 1.10, MarkOwn, "as PA"},
	{"RESIN", "VPP", "modulus", 1000, 3200, MarkMemory, sheets + "; green a third"},
	{"RESIN", "VPP", "strength", 30, 70, MarkPractice, practice},
	{"RESIN", "VPP", "strain", 0.005, 0.06, MarkPractice, breaking},
	{"RESIN", "VPP", "friction", 0.30, 0.60, MarkPractice, practice},
	{"RESIN-TOUGH", "VPP", "modulus", 700, 2300, MarkMemory, sheets + "; green a third"},
	{"RESIN-TOUGH", "VPP", "strength", 25, 60, MarkPractice, practice},
	{"RESIN-TOUGH", "VPP", "strain", 0.01, 0.08, MarkPractice, breaking},
	{"RESIN-TOUGH", "VPP", "friction", 0.30, 0.60, MarkPractice, practice},
	{"RESIN-DURABLE", "VPP", "modulus", 450, 1300, MarkExcerpt, "450 green, 1260 cured"},
	{"RESIN-DURABLE", "VPP", "strength", 18.6, 32, MarkExcerpt, "18.6 green, 31.8 cured"},
	{"RESIN-DURABLE", "VPP", "strain", 0.02, 0.15, MarkPractice, breaking},
	{"RESIN-DURABLE", "VPP", "friction", 0.30, 0.60, MarkPractice, practice},
	{"PP", "moulded", "modulus", 1000, 1700, MarkMemory, sheets},
	{"PP", "moulded", "strength", 25, 40, MarkPractice, practice},
	{"PP", "moulded", "strain", 0.03, 0.12, MarkPractice, breaking},
	{"PP", "moulded", "friction", 0.25, 0.45, MarkRead, table3},
	{"POM", "moulded", "modulus", 2400, 3200, MarkPractice, practice},
	{"POM", "moulded", "strength", 55, 75, MarkPractice, practice},
	{"POM", "moulded", "strain", 0.03, 0.10, MarkPractice, breaking},
	{"POM", "moulded", "friction", 0.20, 0.53, MarkRead, table3},
	{"PA", "moulded", "modulus", 1000, 3300, MarkMemory, "0.37 of the dry modulus when moist"},
	{"PA", "moulded", "strength", 40, 90, MarkPractice, practice},
	{"PA", "moulded", "strain", 0.03, 0.10, MarkPractice, breaking},
	{"PA", "moulded", "friction", 0.30, 0.60, MarkRead, table3},
	{"PC", "moulded", "modulus", 2200, 2450, MarkRead, "chart of the same guide, and blends"},
	{"PC", "moulded", "strength", 55, 72, MarkPractice, practice},
	{"PC", "moulded", "strain", 0.02, 0.07, MarkRead, "4 % once in the same guide; yield at 6 to 7 %"},
	{"PC", "moulded", "friction", 0.45, 0.66, MarkRead, table3},
	{"ABS", "moulded", "modulus", 1800, 2700, MarkPractice, practice},
	{"ABS", "moulded", "strength", 35, 55, MarkPractice, practice},
	{"ABS", "moulded", "strain", 0.015, 0.04, MarkPractice, breaking},
	{"ABS", "moulded", "friction", 0.50, 0.78, MarkRead, table3},
	{"PBT", "moulded", "modulus", 2200, 2800, MarkPractice, practice},
	{"PBT", "moulded", "strength", 45, 60, MarkPractice, practice},
	{"PBT", "moulded", "strain", 0.02, 0.08, MarkPractice, breaking},
	{"PBT", "moulded", "friction", 0.35, 0.60, MarkPractice, table3 + ", on steel; on itself common practice"},
	{"steel", "machined", "modulus", 180e3, 215e3, MarkPractice, "handbooks"},
	{"steel", "machined", "strength", 180, 2000, MarkPractice, "handbooks, soft to hard"},
	{"steel", "machined", "strain", 0.0005, 0.01, MarkPractice, "handbooks"},
	{"steel", "machined", "friction", 0.10, 0.60, MarkPractice, "handbooks"},
	{"brass", "machined", "modulus", 90e3, 125e3, MarkPractice, "handbooks"},
	{"brass", "machined", "strength", 100, 600, MarkPractice, "handbooks"},
	{"brass", "machined", "strain", 0.0005, 0.01, MarkPractice, "handbooks"},
	{"brass", "machined", "friction", 0.10, 0.60, MarkPractice, "handbooks"},
	{"aluminium", "machined", "modulus", 65e3, 75e3, MarkPractice, "handbooks"},
	{"aluminium", "machined", "strength", 30, 600, MarkPractice, "handbooks"},
	{"aluminium", "machined", "strain", 0.0005, 0.01, MarkPractice, "handbooks"},
	{"aluminium", "machined", "friction", 0.10, 1.0, MarkPractice, "handbooks"},
}

// plausibleFor finds a range.
func plausibleFor(material, process, figure string) (plausibleRange, bool) {
	for _, r := range plausibleRanges {
		if r.figure == figure && r.material == material && r.process == process {
			return r, true
		}
	}
	return plausibleRange{}, false
}

// A usualSize is a length [mm] or a ratio of two [1] of a latch, with what latches of
// its kind have. The ranges are wide on purpose: they are to find a slip of the unit or
// the point, not to judge a design. Common practice, no source, but for the ring of 200
// mm (a worked example of the guide above) and ISO 286 fits at the low end of pressed ones.
type usualSize struct {
	key, what, of string
	unit          string
	lo, hi        float64
	mark          Mark
	v             float64
}
