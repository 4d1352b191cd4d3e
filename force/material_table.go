package force

// A Mark says how far a figure can be trusted.
type Mark string

// The marks of a figure's source.
const (
	MarkRead     Mark = "read"            // read in a copy of the document
	MarkExcerpt  Mark = "excerpt"         // read in an excerpt, the rest not seen
	MarkAbstract Mark = "abstract"        // read in the abstract only
	MarkMemory   Mark = "memory"          // recalled from a named source, not re-read
	MarkPractice Mark = "common practice" // no source
	MarkOwn      Mark = "own"             // worked out here
	MarkJob      Mark = "job"             // written in the job file
	MarkShop     Mark = "shop"            // from the shop's own table
)

// row is one printed line of the built-in table. Friction is the polymer on
// itself and on steel, upper end of the published moulded range because printed
// surfaces are rough. Strain once, in the layers and across them.
type row struct {
	name, process string
	modulus       float64 // [MPa]
	modulusMark   Mark
	poisson       float64
	frictionSelf  float64
	frictionSteel float64
	frictionMark  Mark
	strainIn      float64 // in the plane of the layers [1]
	strainOut     float64 // across the layers [1]
	strainMark    Mark
	density       float64 // [g/cm3]
	strength      float64 // [MPa]
	strengthOut   float64 // strength across the layers over that in the layers [1]
	secantZero    float64 // Es = E (1 - eps/this); 0: no secant data [1]
}

// table holds the built-in materials in order of process. Ranges are entered
// where they make the force higher (modulus upper end), strengths at their
// lower end. Powder bed PA12 modulus: read, materials data page of a printing
// reference; friction and moulded strains: recalled from the tables of a
// published snap-fit design guide, as is the PC secant line; all else common
// practice, no source.
var table = [...]row{
	{"PA12", "PBF", 2000, MarkRead, 0.40, 0.60, 0.40, MarkMemory, 0.035, 0.020, MarkPractice, 0.95, 44, 0.85, 0},
	{"PA11", "PBF", 1800, MarkPractice, 0.40, 0.60, 0.40, MarkMemory, 0.050, 0.030, MarkPractice, 1.03, 45, 0.85, 0},
	{"PA12-GB", "PBF", 3300, MarkPractice, 0.38, 0.60, 0.40, MarkMemory, 0.015, 0.010, MarkPractice, 1.30, 28, 0.80, 0},
	{"PLA", "MEX", 3500, MarkPractice, 0.36, 0.50, 0.50, MarkPractice, 0.010, 0.005, MarkPractice, 1.24, 45, 0.50, 0},
	{"PETG", "MEX", 2100, MarkPractice, 0.38, 0.45, 0.45, MarkPractice, 0.015, 0.0075, MarkPractice, 1.27, 40, 0.50, 0},
	{"ABS", "MEX", 2300, MarkPractice, 0.37, 0.78, 0.65, MarkMemory, 0.012, 0.006, MarkPractice, 1.04, 30, 0.40, 0},
	{"ASA", "MEX", 2300, MarkPractice, 0.37, 0.78, 0.65, MarkMemory, 0.012, 0.006, MarkPractice, 1.07, 35, 0.40, 0},
	{"PC", "MEX", 2400, MarkPractice, 0.37, 0.66, 0.55, MarkMemory, 0.020, 0.010, MarkPractice, 1.20, 55, 0.50, 0.0933},
	{"PA", "MEX", 2500, MarkPractice, 0.40, 0.60, 0.40, MarkMemory, 0.025, 0.0125, MarkPractice, 1.14, 45, 0.50, 0},
	{"RESIN", "VPP", 3000, MarkPractice, 0.38, 0.60, 0.60, MarkPractice, 0.010, 0.010, MarkPractice, 1.18, 55, 0.95, 0},
	{"RESIN-TOUGH", "VPP", 2200, MarkPractice, 0.40, 0.60, 0.60, MarkPractice, 0.025, 0.025, MarkPractice, 1.18, 40, 0.95, 0},
	{"RESIN-DURABLE", "VPP", 1300, MarkPractice, 0.43, 0.60, 0.60, MarkPractice, 0.040, 0.040, MarkPractice, 1.13, 28, 0.95, 0},
	{"PP", "moulded", 1500, MarkPractice, 0.42, 0.45, 0.30, MarkMemory, 0.060, 0.060, MarkMemory, 0.91, 30, 1, 0},
	{"POM", "moulded", 2800, MarkPractice, 0.37, 0.53, 0.35, MarkMemory, 0.060, 0.060, MarkMemory, 1.41, 60, 1, 0},
	{"PA", "moulded", 2800, MarkPractice, 0.39, 0.60, 0.40, MarkMemory, 0.040, 0.040, MarkMemory, 1.13, 60, 1, 0},
	{"PC", "moulded", 2310, MarkMemory, 0.37, 0.66, 0.55, MarkMemory, 0.040, 0.040, MarkMemory, 1.20, 60, 1, 0.0933},
	{"ABS", "moulded", 2400, MarkPractice, 0.37, 0.78, 0.65, MarkMemory, 0.025, 0.025, MarkMemory, 1.05, 40, 1, 0},
	{"PBT", "moulded", 2600, MarkPractice, 0.38, 0.60, 0.40, MarkMemory, 0.050, 0.050, MarkMemory, 1.31, 50, 1, 0},
	{"steel", "machined", 210000, MarkPractice, 0.30, 0.20, 0.20, MarkPractice, 0.001, 0.001, MarkPractice, 7.85, 235, 1, 0},
	{"brass", "machined", 100000, MarkPractice, 0.35, 0.20, 0.20, MarkPractice, 0.001, 0.001, MarkPractice, 8.5, 200, 1, 0},
	{"aluminium", "machined", 70000, MarkPractice, 0.33, 0.30, 0.30, MarkPractice, 0.0015, 0.0015, MarkPractice, 2.70, 120, 1, 0},
}

// processTolerance is the plus or minus tolerance of one diameter: the larger of
// share times the diameter and floor. Common practice, no source.
type processTolerance struct {
	process string
	share   float64 // of the dimension [1]
	floor   float64 // [mm]
}

var processTolerances = [...]processTolerance{
	{"PBF", 0.003, 0.20},
	{"MEX", 0.005, 0.30},
	{"VPP", 0.003, 0.15}, // beyond the steps
	{"moulded", 0.002, 0.05},
	{"machined", 0.0005, 0.01},
}

// toleranceStep is the plus or minus on dimensions up to a size.
type toleranceStep struct{ upTo, share, floor float64 } // [mm], [1], [mm]

// vatSteps are those of vat printing: a university's specification of its printer, up
// to 150 mm (excerpt). Beyond, the last step goes on (own).
var vatSteps = [...]toleranceStep{{30, 0.0015, 0.02}, {80, 0.002, 0.06}, {150, 0.003, 0.15}}

const (
	repeatFactor    = 0.6    // strain of frequent over single joining [1]; recalled from a published snap-fit design guide, table 2
	modulusSpread   = 0.15   // half width of the draw of the modulus [1]; common practice
	frictionSpread  = 0.25   // half width of the draw of the friction [1]; common practice
	metalModulus    = 30e3   // [MPa] above it a material counts as metal
	stiffestModulus = 1.0e6  // [MPa] above any engineering material
	softestModulus  = 1      // [MPa] below it nothing holds a shape
	maxStrain       = 1.0    // [1]
	maxFriction     = 2.0    // [1]
	maxPoisson      = 0.4999 // [1]
)
