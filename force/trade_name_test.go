package force

import (
	"strings"
	"testing"
)

// Each term that a trade name is answered with is one that the job file takes, and no name
// stands for two.
func TestTradeNamesLeadToTheTable(t *testing.T) {
	t.Parallel()
	for _, table := range [][]tradeName{processNames, materialNames} {
		seen := map[string]string{}
		for _, row := range table {
			for name := range strings.FieldsSeq(row.names) {
				if seen[name] != "" {
					t.Errorf("%s is %s and %s", name, seen[name], row.term)
				}
				if name != foldedName(name) {
					t.Errorf("%s is not folded, and is never found", name)
				}
				seen[name] = row.term
			}
		}
	}
	for _, row := range materialNames {
		if _, ok, _ := findRow(row.term, ""); !ok {
			t.Errorf("%s is not in the table", row.term)
		}
	}
	for _, b := range byProcess {
		if _, ok, _ := findRow(b.pbf, "PBF"); !ok {
			t.Errorf("%s is not printed by PBF", b.pbf)
		}
		if _, ok, _ := findRow(b.others, "MEX"); !ok {
			t.Errorf("%s is not printed by MEX", b.others)
		}
	}
	for _, row := range processNames {
		found := false
		for _, r := range table {
			found = found || r.process == row.term
		}
		if !found {
			t.Errorf("%s is no process of the table", row.term)
		}
	}
	// No name of the table, and no term, is taken for a trade name.
	for _, r := range table {
		if term := MaterialTerm(r.name, r.process); term != "" {
			t.Errorf("%s is said to be %s", r.name, term)
		}
		if term := ProcessTerm(r.process); term != "" {
			t.Errorf("%s is said to be %s", r.process, term)
		}
	}
}

func TestTradeNamesAreAnswered(t *testing.T) {
	t.Parallel()
	for name, want := range map[string]string{"SLS": "PBF", "MJF": "PBF", "FDM": "MEX", "fff": "MEX", "SLA": "VPP", "DLP": "VPP", "Multi Jet Fusion": "PBF",
		"injection moulding": "moulded", "CNC": "machined", "": "", "PBF": "", "glue": ""} {
		if got := ProcessTerm(name); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
	for _, c := range []struct{ name, process, want string }{
		{"Nylon 12", "PBF", "PA12"}, {"PA-12", "", "PA12"}, {"pa 12", "MEX", "PA12"}, {"GF nylon", "MEX", "PA-GF"}, {"GF nylon", "PBF", "PA12-GB"},
		{"glass-filled nylon", "", "PA12-GB (PBF) or PA-GF (MEX)"}, {"Nylon", "PBF", "PA12"}, {"Nylon", "moulded", "PA"}, {"carbon-filled nylon", "MEX", "PA-CF"},
		{"aluminum", "machined", "aluminium"}, {"pa12", "PBF", ""}, {"PA13", "PBF", ""}, {"", "", ""},
	} {
		if got := MaterialTerm(c.name, c.process); got != c.want {
			t.Errorf("%q by %s: %q, want %q", c.name, c.process, got, c.want)
		}
	}
	_, faults := Resolve(MaterialSpec{Material: "Nylon 12", Process: "PBF"})
	if len(faults) != 1 || !strings.HasPrefix(faults[0].Error(), "material: Nylon 12; is not in the table, which calls it PA12 (PA12, PA11, ") {
		t.Error(faults)
	}
}
