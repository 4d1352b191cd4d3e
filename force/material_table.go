package force

// A Mark says how far a figure can be trusted.
type Mark string

// The marks of a figure's source.
const (
	MarkRead     Mark = "read"            // read in a copy of the document
	MarkExcerpt  Mark = "excerpt"         // read in an excerpt of the document, the rest not seen
	MarkAbstract Mark = "abstract"        // read in the abstract only
	MarkMemory   Mark = "memory"          // recalled from a named source, not re-read
	MarkPractice Mark = "common practice" // no source
	MarkOwn      Mark = "own"             // worked out here
	MarkJob      Mark = "job"             // written in the job file
	MarkShop     Mark = "shop"            // from the shop's own table
)

// row is one printed line of the built-in table; its friction is in frictionTable.
// Strain once, in the layers and across them.
type row struct {
	name, process string
	modulus       float64 // middle [MPa]
	modulusSpread float64 // half width of the draw, share of it [1]
	modulusMark   Mark
	poisson       float64
	strainIn      float64 // in the plane of the layers [1]
	strainOut     float64 // across the layers [1]
	strainMark    Mark
	density       float64 // [g/cm3]
	strength      float64 // [MPa]
	filler        filler
}

// table holds the built-in materials in order of process. The modulus is the middle
// of what is published, its spread reaches the ends of that; strengths are the lower
// end. Moduli: powder bed PA12 1482 and 1505 MPa measured (excerpt), 1650 to 1800 by
// sheets (memory), 2000 as upper end (read); extruded PLA flexural 2704, 2837, 2911
// and tensile 2680, PETG 1667 and 1630, measured (read); durable resin cured 1260 in
// tension and 820 in bending (excerpt); PC from the chart of the guide, see pcLaw
// (read); polyamide extruded with 20 % carbon 7500 by its sheet (read), which prints
// do not reach, 5000 to 8000 dry and 2500 to 4500 moist (memory). Strains of PC and of
// its kind: the guide, table 2 (read); of the other moulded ones from memory. PA-CF
// and PA-GF strength: medians of prints (read). All else common practice, no source.
var table = [...]row{
	{"PA12", "PBF", 1700, 0.20, MarkExcerpt, 0.40, 0.035, 0.020, MarkPractice, 0.95, 44, sintered},
	{"PA11", "PBF", 1650, 0.20, MarkMemory, 0.40, 0.050, 0.030, MarkPractice, 1.03, 45, sintered},
	{"PA12-GB", "PBF", 2850, 0.17, MarkMemory, 0.38, 0.015, 0.010, MarkPractice, 1.30, 28, beads},
	{"PLA", "MEX", 2800, 0.17, MarkRead, 0.36, 0.010, 0.005, MarkPractice, 1.24, 45, plain},
	{"PETG", "MEX", 1650, 0.20, MarkRead, 0.38, 0.015, 0.0075, MarkPractice, 1.27, 40, plain},
	{"ABS", "MEX", 2050, 0.15, MarkPractice, 0.37, 0.012, 0.006, MarkPractice, 1.04, 30, plain},
	{"ASA", "MEX", 2100, 0.15, MarkPractice, 0.37, 0.012, 0.006, MarkPractice, 1.07, 35, plain},
	{"PC", "MEX", 2200, 0.15, MarkPractice, 0.37, 0.020, 0.010, MarkPractice, 1.20, 55, plain},
	{"PA", "MEX", 2000, 0.25, MarkPractice, 0.40, 0.025, 0.009, MarkPractice, 1.14, 45, plain},
	{"PA-GF", "MEX", 4000, 0.35, MarkPractice, 0.38, 0.012, 0.0035, MarkPractice, 1.30, 66, glass},
	{"PA-CF", "MEX", 5000, 0.45, MarkMemory, 0.38, 0.010, 0.0018, MarkPractice, 1.17, 62, carbon},
	{"RESIN", "VPP", 2750, 0.15, MarkMemory, 0.38, 0.010, 0.010, MarkPractice, 1.18, 55, cured},
	{"RESIN-TOUGH", "VPP", 1850, 0.20, MarkMemory, 0.40, 0.025, 0.025, MarkPractice, 1.18, 40, cured},
	{"RESIN-DURABLE", "VPP", 1000, 0.26, MarkExcerpt, 0.43, 0.040, 0.040, MarkPractice, 1.13, 28, cured},
	{"PP", "moulded", 1300, 0.16, MarkPractice, 0.42, 0.060, 0.060, MarkMemory, 0.91, 30, whole},
	{"POM", "moulded", 2650, 0.15, MarkPractice, 0.37, 0.060, 0.060, MarkMemory, 1.41, 60, whole},
	{"PA", "moulded", 2150, 0.31, MarkPractice, 0.39, 0.040, 0.040, MarkMemory, 1.13, 60, whole},
	{"PC", "moulded", pcModulus, 0.10, MarkRead, 0.37, 0.040, 0.040, MarkRead, 1.20, 60, whole},
	{"ABS", "moulded", 2200, 0.15, MarkPractice, 0.37, 0.025, 0.025, MarkMemory, 1.05, 40, whole},
	{"PBT", "moulded", 2450, 0.15, MarkPractice, 0.38, 0.050, 0.050, MarkMemory, 1.31, 50, whole},
	{"steel", "machined", 208000, 0.02, MarkPractice, 0.30, 0.001, 0.001, MarkPractice, 7.85, 235, whole},
	{"brass", "machined", 95000, 0.06, MarkPractice, 0.35, 0.001, 0.001, MarkPractice, 8.5, 200, whole},
	{"aluminium", "machined", 69500, 0.02, MarkPractice, 0.33, 0.0015, 0.0015, MarkPractice, 2.70, 120, whole},
}

// filler is what decides the strength across the layers.
type filler int

const (
	whole    filler = iota // no layers
	plain                  // extruded, nothing in it
	glass                  // extruded, with glass fibre
	carbon                 // extruded, with carbon fibre
	sintered               // powder bed
	beads                  // powder bed, with glass beads
	cured                  // vat
)

// layering is the strength across the layers over that in them, and how far it
// scatters within one spool, standard deviation over mean. Extruded: medians of 30
// filaments, five specimens each way (read): plain PLA 0.40, PETG 0.39; glass 0.25 to
// 0.34; carbon 0.13 to 0.27; scatter 12 % across, 3.6 % in the layers. There was no plain
// ABS, ASA, PC or PA among them: they count as plain. The others common practice.
var layering = [...]struct {
	ratio, scatter float64
	mark           Mark
}{
	whole:    {1, 0, MarkOwn},
	plain:    {0.40, 0.12, MarkRead},
	glass:    {0.25, 0.12, MarkRead},
	carbon:   {0.15, 0.12, MarkRead},
	sintered: {0.85, 0, MarkPractice},
	beads:    {0.80, 0, MarkPractice},
	cured:    {0.95, 0, MarkPractice},
}

// across is the strength across the layers that 95 of 100 prints reach, over the mean in
// the layers [1].
func (f filler) across() float64 {
	a := layering[f]
	return a.ratio * (1 - 1.645*a.scatter)
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
	repeatFactor    = 0.6    // strain of frequent over single joining [1]; read in a published snap-fit design guide, table 2
	frictionSpread  = 0.25   // of a stated friction, two standard deviations [1]; common practice
	metalModulus    = 30e3   // [MPa] above it a material counts as metal
	stiffestModulus = 1.0e6  // [MPa] above any engineering material
	softestModulus  = 1      // [MPa] below it nothing holds a shape
	maxStrain       = 1.0    // [1]
	maxFriction     = 2.0    // [1]
	noBound         = 1e8    // secant line so flat that it is none [1]
	maxPoisson      = 0.4999 // [1]
)
