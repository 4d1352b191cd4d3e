package jobfile

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// Every refusal, one a row. A text without "job:" at its start gets one on a
// first line, so that what is tested stands on line 2.
func TestRefusals(t *testing.T) {
	t.Parallel()
	deep := strings.Repeat("[", 45) + strings.Repeat("]", 45)
	for _, c := range []struct{ name, text, want string }{
		{"unknown key", "wal: 3\n", `job.yaml:2: wal: is not a known key (nearest: wall)`},
		{"unknown key in a section", "parts:\n  - id: a\n    hieght: 3\n", `job.yaml:4: parts[0].hieght: is not a known key (nearest: height)`},
		{"misspelt required key is said once", "parts:\n  - id: a\n    ring:\n      undrcut: 3\n", `job.yaml:5: parts[0].ring.undrcut: is not a known key (nearest: undercut)`},
		{"key of another section", "per_hour: 3\n", `job.yaml:2: per_hour: is not a known key (belongs under shops.<name>)`},
		{"key of the top in a section", "parts:\n  - id: a\n    wall: 3\n", `job.yaml:4: parts[0].wall: is not a known key (belongs at the top of the file)`},
		{"nothing near", "parts:\n  - id: a\n    ring:\n      undercut: 1\n      xylophone: 3\n", `job.yaml:6: parts[0].ring.xylophone: is not a known key (one of undercut, land)`},
		{"other way of writing", "forceUnits: N\n", `job.yaml:2: forceUnits: is not a known key (nearest: force_units)`},
		{"double key", "wall: 1\nwall: 2\n", `job.yaml:3: wall: is written twice, first on line 2 (one of them)`},
		{"double name in a table", "names:\n  a: x\n  a: y\n", `job.yaml:4: names.a: is written twice, first on line 3 (one of them)`},
		{"missing", "parts:\n  - process: PBF\n", `job.yaml:3: parts[0].id: is missing (a text)`},
		{"missing in a table", "shops:\n  a: {}\n", `job.yaml:3: shops.a.per_hour: is missing (a decimal number such as 0.3)`},
		{"missing word", "latches:\n  - id: a\n    at: [[0, 0]]\n    z: 1\n    press_fit: {joint_diameter: 3, interference: 0.1, outer_diameter: 6, engagement_length: 4}\n", `job.yaml:6: latches[0].press_fit.outside: is missing (lower or upper)`},
		{"empty required list", "latches:\n  - id: a\n    at: []\n    z: 1\n", `job.yaml:4: latches[0].at: is empty (a list of points [x, y])`},
		{"no value", "wall:\n", `job.yaml:2: wall: has no value (such as 12.5 mm; units: mm, in, thou, um, cm, m, or no such key)`},
		{"null", "brittle: ~\n", `job.yaml:2: brittle: has no value (true or false, or no such key)`},
		{"no value in a list", "sizes:\n  - 1\n  -\n", `job.yaml:4: sizes[1]: has no value (such as 12.5 mm; units: mm, in, thou, um, cm, m, or no such key)`},
		{"empty text", "date: \"\"\n", `job.yaml:2: date: is empty (a date such as 2026-11-25, or no such key)`},
		{"not a number", "wall: thick\n", `job.yaml:2: wall: thick; is not a number (such as 12.5 mm; units: mm, in, thou, um, cm, m)`},
		{"not a number", "wall: .nan\n", `job.yaml:2: wall: .nan; is nothing that can be measured (a finite number)`},
		{"infinite", "wall: -.inf\n", `job.yaml:2: wall: -.inf; is nothing that can be measured (a finite number)`},
		{"infinite spelt out", "wall: Infinity\n", `job.yaml:2: wall: Infinity; is nothing that can be measured (a finite number)`},
		{"overflow", "wall: 1e999\n", `job.yaml:2: wall: 1e999; is too large to be a number here (such as 12.5 mm; units: mm, in, thou, um, cm, m)`},
		{"overflow by the unit", "wall: 1e308 in\n", `job.yaml:2: wall: 1e308 in; is too large to be a number here (such as 12.5 mm; units: mm, in, thou, um, cm, m)`},
		{"underflow", "wall: 1e-999 in\n", `job.yaml:2: wall: 1e-999 in; is too small to be a number here (such as 12.5 mm; units: mm, in, thou, um, cm, m)`},
		{"endless digits", "wall: 0." + strings.Repeat("3", 90) + "\n", `job.yaml:2: wall: 0.` + strings.Repeat("3", 58) + `...; has too many digits (60 characters at most)`},
		{"decimal comma", "wall: 0,5 mm\n", `job.yaml:2: wall: 0,5 mm; has a comma (a decimal point: 0.5 mm)`},
		{"hexadecimal", "wall: 0x10\n", `job.yaml:2: wall: 0x10; is not a decimal number (such as 1000.5)`},
		{"octal", "wall: 010\n", `job.yaml:2: wall: 010; has a leading zero and could be read in two ways (a decimal number without it)`},
		{"underscore", "wall: 1_000\n", `job.yaml:2: wall: 1_000; is not a decimal number (such as 1000.5)`},
		{"sixties", "time: 1:30\n", `job.yaml:2: time: 1:30; is not a decimal number (such as 1000.5)`},
		{"wrong unit", "wall: 3 kg\n", `job.yaml:2: wall: 3 kg; kg is the unit of a mass, not of a length (such as 12.5 mm; units: mm, in, thou, um, cm, m)`},
		{"unknown unit", "wall: 3 furlongs\n", `job.yaml:2: wall: 3 furlongs; furlongs is not a unit of a length (such as 12.5 mm; units: mm, in, thou, um, cm, m)`},
		{"nearly a unit", "push: 25 lbs\n", `job.yaml:2: push: 25 lbs; lbs is not a unit of a force (such as 110 N; units: N, lbf, kN, ozf, kgf; nearest: lbf)`},
		{"pound is a mass", "push: 25 lb\n", `job.yaml:2: push: 25 lb; lb is the unit of a mass, not of a force (such as 110 N; units: N, lbf, kN, ozf, kgf; nearest: lbf)`},
		{"unit in another case", "wall: 3 MM\n", `job.yaml:2: wall: 3 MM; MM is not a unit of a length (such as 12.5 mm; units: mm, in, thou, um, cm, m; nearest: mm)`},
		{"unit where none is", "share: 3 mm\n", `job.yaml:2: share: 3 mm; has a unit, but is a plain number (the number alone)`},
		{"number in quotes", "wall: \"3\"\n", `job.yaml:2: wall: 3; is a text, not a length (such as 12.5 mm; units: mm, in, thou, um, cm, m)`},
		{"plain modulus in an inch job", "units: in\nmodulus: 1700\n", `job.yaml:3: modulus: 1700; needs its unit in a job that is not all metric (such as 1700 MPa; units: MPa, GPa, kPa, psi, ksi)`},
		{"wrong job units", "units: cm\nwall: 3\n", `job.yaml:2: units: cm; is not known (mm or in)`},
		{"wrong force units", "force_units: lb\n", `job.yaml:2: force_units: lb; is not known (N or lbf; nearest: lbf)`},
		{"list for a number", "wall: [1]\n", `job.yaml:2: wall: a list of 1; is not a length (such as 12.5 mm; units: mm, in, thou, um, cm, m)`},
		{"number for a list", "sizes: 3\n", `job.yaml:2: sizes: 3; is not a list (a list of lengths)`},
		{"section for a list", "parts:\n  id: a\n", `job.yaml:2: parts: a section of keys; is not a list (a list of sections)`},
		{"list for a section", "parts:\n  - [1]\n", `job.yaml:3: parts[0]: a list of 1; is not a section of keys (keys on the lines below, indented)`},
		{"list for a table", "names: [a]\n", `job.yaml:2: names: a list of 1; is not a section of keys (keys on the lines below, indented)`},
		{"short array", "box: [1, 2]\n", `job.yaml:2: box: a list of 2; has the wrong length (a list of 3 lengths)`},
		{"point of three", "corner: [1, 2, 3]\n", `job.yaml:2: corner: a list of 3; is not a point ([x, y])`},
		{"point of keys", "corner: {x: 1, y: 2}\n", `job.yaml:2: corner: a section of keys; is not a point ([x, y])`},
		{"bad coordinate", "outline: [[0, 0], [0, up]]\n", `job.yaml:2: outline[1][1]: up; is not a number (such as 12.5 mm; units: mm, in, thou, um, cm, m)`},
		{"yes", "brittle: yes\n", `job.yaml:2: brittle: yes; is not true or false (true or false, without quotes; nearest: true)`},
		{"true in quotes", "brittle: \"true\"\n", `job.yaml:2: brittle: true; is not true or false (true or false, without quotes; nearest: true)`},
		{"half a piece", "quantity: 2.5\n", `job.yaml:2: quantity: 2.5; is not a whole number (a whole number such as 12)`},
		{"whole number in quotes", "quantity: \"2\"\n", `job.yaml:2: quantity: 2; is a text, not a whole number (a whole number such as 12)`},
		{"whole number with a unit", "quantity: 2 mm\n", `job.yaml:2: quantity: 2 mm; is not a whole number (a whole number such as 12)`},
		{"whole number too large", "small: 128\n", `job.yaml:2: small: 128; is too large to be a number here (a whole number such as 12)`},
		{"count below 0", "count: -1\n", `job.yaml:2: count: -1; must be 0 or more (a whole number such as 12)`},
		{"octal whole number", "quantity: 010\n", `job.yaml:2: quantity: 010; has a leading zero and could be read in two ways (a decimal number without it)`},
		{"word not in the list", "parts:\n  - id: a\n    process: FDM\n", `job.yaml:4: parts[0].process: FDM; is a trade name: ISO/ASTM 52900 calls it MEX (PBF, MEX or VPP)`},
		{"word nearly in the list", "methods: [hand, malet]\n", `job.yaml:2: methods[1]: malet; is not known (hand, mallet or press; nearest: mallet)`},
		{"word in another case", "parts:\n  - id: a\n    process: pbf\n", `job.yaml:4: parts[0].process: pbf; is not known (PBF, MEX or VPP; nearest: PBF)`},
		{"no such day", "date: 2026-02-30\n", `job.yaml:2: date: 2026-02-30; is not a date (a date such as 2026-11-25)`},
		{"date in another order", "date: 25.11.2026\n", `job.yaml:2: date: 25.11.2026; is not a date (a date such as 2026-11-25)`},
		{"tag", "wall: !!float 3\n", `job.yaml:2: wall: 3; has a tag, !!float, and tags are not read (the value alone, or in quotes)`},
		{"merge key", "parts:\n  - &a {id: a}\n  - {<<: *a}\n", "job.yaml:4: parts[1]: <<; is not read (the keys written out)\njob.yaml:4: parts[1].id: is missing (a text)"},
		{"list as a key", "[a]: 3\n", `job.yaml:2: a list of 1; cannot be a key (a word)`},
		{"empty name", "names: {\"\": x}\n", `job.yaml:2: names: ""; is not a name (one line of up to 100 characters)`},
		{"long name", "names: {" + strings.Repeat("n", 101) + ": x}\n", `job.yaml:2: names: ` + strings.Repeat("n", 60) + `...; is not a name (one line of up to 100 characters)`},
		{"long text", "names: {a: " + strings.Repeat("x", 2001) + "}\n", `job.yaml:2: names.a: ` + strings.Repeat("x", 60) + `...; is too long (2000 characters at most)`},
		{"escape code for a terminal", "names: {a: \"\\e[31m\"}\n", `job.yaml:2: names.a: "\x1b[31m"; holds a character that cannot be seen (a text)`},
		{"key that turns text round", "\"wa\\u202ell\": 3\n", `job.yaml:2: "wa\u202ell": is not a known key (nearest: wall)`},
		{"ring of aliases", "parts: &a [*a]\n", `job.yaml:2: *a; refers to the section it stands in (the values written out)`},
		{"unknown alias", "wall: *w\n", `job.yaml:2: an alias (*) to an anchor (&) that is not defined above it (the value written out)`},
		{"too deep", "parts: " + deep + "\n", `job.yaml:2: sections are nested too deep (40 levels at most)`},
		{"far too deep", "parts: " + strings.Repeat("[", 20000) + "\n", `job.yaml:2: sections are nested far too deep (40 levels at most)`},
		{"tab", "parts:\n\t- id: a\n", `job.yaml:3: a tab stands where only spaces may (spaces, two for each level)`},
		{"tab further down", "parts:\n  - id: a\n  \tring:\n", `job.yaml:4: a tab stands where only spaces may (spaces, two for each level)`},
		{"open quote", "names: {a: \"x}\nwall: 3\n", `job.yaml:2: the quote that opens on this line is never closed (a closing quote)`},
		{"open quote on line 1", "job: \"x\nwall: 3\n", `job.yaml:1: the quote that opens on this line is never closed (a closing quote)`},
		{"open bracket", "wall: 3\nsizes: [1, 2\nshare: 1\n", `job.yaml:3: a list in square brackets is not closed, or lacks a comma ([1, 2])`},
		{"open brace", "wall: 3\nnames: {a: b\nshare: 1\n", `job.yaml:3: a section in braces is not closed, or lacks a comma ({key: value, key: value})`},
		{"no colon", "wall 3\nshare: 1\n", `job.yaml:2: a key without a colon ("key: value")`},
		{"indent", "parts:\n  - id: a\n wall: 3\n", `job.yaml:4: this line does not go on from the lines above it: another indent, or a text behind a closing quote ("key: value", indented as its neighbours)`},
		{"indent in a list", "parts:\n  - id: a\n  wall: 3\n", `job.yaml:4: this line does not belong to the list above it (a dash, or another indent)`},
		{"indent far down", "parts:\n" + strings.Repeat("  - id: a\n", 500) + "  wall: 3\n" + strings.Repeat("  - id: a\n", 500), `job.yaml:503: this line does not belong to the list above it (a dash, or another indent)`},
		{"two colons", "wall: 3: 4\n", `job.yaml:2: a colon too many, another indent than the line above, or no colon in the line above ("key: value" a line, the same indent, a text with a colon in quotes)`},
		{"at sign", "wall: @3\n", `job.yaml:2: a text cannot start with this character (the text in quotes)`},
		{"backslash", "names: {a: \"C:\\q\"}\n", `job.yaml:2: a backslash in double quotes that means nothing (single quotes, or two backslashes)`},
		{"directive", "%FOO\n---\njob: x\n", `job.yaml:1: a directive (%) that is not read (no line that starts with %)`},
		{"second document", "---\njob: y\n", `job.yaml:2: a second document starts here (one document a file, without --- between its parts)`},
		{"broken second document", "---\njob: [\n", `job.yaml:3: a value is missing, or a bracket or comma stands alone (a value)`},
		{"text behind the end", "...\nwall: 3\n", `job.yaml:3: something stands after the end of the document (one document a file)`},
		{"zero byte", "wall: 3\x00\n", `job.yaml:2: character U+0000; cannot be seen and is not read (the line without it)`},
		{"not UTF-8", "names: {a: \xff}\n", `job.yaml:2: this line is not UTF-8 text (the file saved as UTF-8)`},
		{"UTF-16", "\xff\xfej\x00o\x00b\x00", `job.yaml:1: this line is not UTF-8 text (the file saved as UTF-8)`},
		{"only a comment", "# nothing\n", `job.yaml: the file is empty (one "key: value" a line)`},
		{"only a null", "~", `job.yaml: the file is empty (one "key: value" a line)`},
		{"a list", "- a\n", `job.yaml:1: a list of 1; is not a section of keys (one "key: value" a line)`},
		{"a word", "hello", `job.yaml:1: hello; is not a section of keys (one "key: value" a line)`},
	} {
		text := "job: x\n" + c.text
		if strings.HasPrefix(c.text, "job:") || strings.Contains("#~-h\xff%", c.text[:1]) && c.text[:min(3, len(c.text))] != "---" {
			text = c.text
		}
		if _, _, p := decoded(text); p.Error() != c.want {
			t.Errorf("%s, %.80q:\n got %s\nwant %s", c.name, text, p.Error(), c.want)
		}
	}
}

func TestEmptyFileIsRefused(t *testing.T) {
	t.Parallel()
	for _, text := range []string{"", "\ufeff", "\n\n", "---\n", "   "} {
		if _, _, p := decoded(text); len(p) != 1 || p[0].Problem != "the file is empty" {
			t.Errorf("%q: got %v, want one problem, the file is empty", text, p)
		}
	}
}

// All faults of a file in file order, as a person sees them.
func TestAllFaultsInFileOrder(t *testing.T) {
	t.Parallel()
	in, golden := filepath.Join("testdata", "faults.yaml"), filepath.Join("testdata", "faults.txt")
	data, err := os.ReadFile(in)
	if err != nil {
		t.Fatal(err)
	}
	var s sample
	d, p := Decode("faults.yaml", data, &s, Options{})
	for i, l := range s.Latches {
		p = p.And(d.Problems(forceFaults(i, l)))
	}
	got := p.Error() + "\n"
	if *update {
		if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
