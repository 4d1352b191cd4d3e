package force

import "strings"

// A tradeName is what a shop or a data sheet calls a process or a material, folded, with
// the term that the job file takes.
type tradeName struct {
	names string // folded, with spaces between
	term  string
}

// processNames are names of processes by the category of ISO/ASTM 52900 (memory; which
// name belongs to which category is common practice), and of the two that are no
// additive ones.
var processNames = []tradeName{
	{"sls ls mjf lpbf slm dmls lasersintering selectivelasersintering multijetfusion powderbed powderbedfusion sintered", "PBF"},
	{"fdm fff fffprinting filament extruded extrusion fuseddeposition fuseddepositionmodeling fuseddepositionmodelling fusedfilament fusedfilamentfabrication " +
		"materialextrusion", "MEX"},
	{"sla dlp msla lcd stereolithography resin photopolymer vat vatphotopolymerization vatphotopolymerisation", "VPP"},
	{"molded moulding molding injection injectionmolded injectionmoulded injectionmolding injectionmoulding", "moulded"},
	{"cnc milled turned machining milling turning", "machined"},
}

// materialNames are names of materials by the symbol of the table, most of them as
// ISO 1043-1 has it (memory).
var materialNames = []tradeName{
	{"nylon12 polyamide12 nylonpa12 pa12nylon", "PA12"},
	{"nylon11 polyamide11 nylonpa11 pa11nylon", "PA11"},
	{"gb glassbead glassbeads glassfilledpa12 glassfillednylon12 nylon12gf nylon12gb nylon12glass pa12gf", "PA12-GB"},
	{"cfnylon nyloncf nylon12cf carbonnylon carbonfillednylon carbonfibernylon carbonfibrenylon cfpa pa12cf pa6cf", "PA-CF"},
	{"nylon6 nylon66 polyamide6 polyamide66 pa6 pa66", "PA"},
	{"polylacticacid polylactide", "PLA"},
	{"pet polyethyleneterephthalateglycol", "PETG"},
	{"polycarbonate", "PC"},
	{"polypropylene", "PP"},
	{"acetal polyacetal polyoxymethylene", "POM"},
	{"polybutyleneterephthalate", "PBT"},
	{"standardresin photopolymer acrylate", "RESIN"},
	{"toughresin", "RESIN-TOUGH"},
	{"durableresin", "RESIN-DURABLE"},
	{"aluminum alu", "aluminium"},
	{"stainless stainlesssteel mildsteel carbonsteel toolsteel", "steel"},
}

// A material may be called the same in two processes, and is another one in the table.
var byProcess = []struct{ names, pbf, others string }{
	{"gfnylon nylongf glassnylon glassfillednylon glassfiberfillednylon glassfiberednylon gfpa glassfilledpolyamide", "PA12-GB", "PA-GF"},
	{"nylon polyamide", "PA12", "PA"},
}

// ProcessTerm gives the job file's term for a common name of a process: the category of
// ISO/ASTM 52900 for a printed one, else moulded or machined. It is empty for a name that
// is not known as one, and for the terms themselves.
func ProcessTerm(name string) string { return termOf(processNames, name) }

// MaterialTerm gives the table's name for a common name of a material, or for one that is
// written with other spaces and dashes. process is that of the part; where it decides and
// is not stated, both are named. It is empty for a name that is not known as one.
func MaterialTerm(name, process string) string {
	f := foldedName(name)
	for _, m := range Materials() {
		if f == foldedName(m) && !strings.EqualFold(name, m) {
			return m
		}
	}
	for _, b := range byProcess {
		if !listed(b.names, f) {
			continue
		}
		switch process {
		case "PBF":
			return b.pbf
		case "":
			return b.pbf + " (PBF) or " + b.others + " (MEX)"
		}
		return b.others
	}
	return termOf(materialNames, name)
}

func termOf(table []tradeName, name string) string {
	f := foldedName(name)
	for _, t := range table {
		if listed(t.names, f) {
			return t.term
		}
	}
	return ""
}

// listed says whether a folded name stands among others.
func listed(names, folded string) bool {
	return folded != "" && !strings.Contains(folded, " ") && strings.Contains(" "+names+" ", " "+folded+" ")
}

// foldedName is a name without case, spaces and dashes, which everybody sets otherwise.
func foldedName(s string) string {
	return strings.NewReplacer(" ", "", "-", "", "_", "", ".", "").Replace(strings.ToLower(s))
}

// CalledHere says in a fault what a trade name is called in a job file.
func CalledHere(term string) string {
	switch term {
	case "PBF", "MEX", "VPP":
		return "is a trade name: ISO/ASTM 52900 calls it " + term
	case "moulded", "machined":
		return "is called " + term + " here"
	}
	return "is not in the table, which calls it " + term
}
