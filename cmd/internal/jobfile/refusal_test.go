package jobfile

import (
	"reflect"
	"strings"
	"testing"
)

const lengthUnits = "mm, in, thou, cm, m, um, µm or μm"

func TestDecodeRefusals(t *testing.T) {
	number := "a number like 2.5, or with its unit, " + lengthUnits
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"unknown key", "job: a\nwidht: 3\n", []string{"job.yaml:2: widht: unknown key; nearest known key: width"}},
		{"unknown key deep", "latches:\n- id: a\n  at: [[0, 0]]\n  annular:\n    land: 1\n    undercutt: 1\n", []string{
			"job.yaml:6: latches[0].annular.undercutt: unknown key; nearest known key: undercut",
		}},
		{"key unlike any", "latches:\n- id: a\n  at: [[0, 0]]\n  annular:\n    undercut: 1\n    bananas: 1\n", []string{
			"job.yaml:6: latches[0].annular.bananas: unknown key (known keys: undercut, land)",
		}},
		{"key not of the file", "Computed: 1\n", []string{"job.yaml:1: Computed: unknown key (known keys: " + strings.Join(schemaKeys(), ", ") + ")"}},
		{"duplicate key", "width: 1\njob: a\nwidth: 2\n", []string{"job.yaml:3: width: key is there twice (once; the first is on line 1)"}},
		{"duplicate name", "walls: {a: 1, a: 2}\n", []string{"job.yaml:1: walls.a: key is there twice (once; the first is on line 1)"}},
		{"list as key", "? [a, b]\n: 1\n", []string{"job.yaml:1: ?: a key must be a word"}},
		{"empty key", "\"\": 1\n", []string{"job.yaml:1: ?: a key is empty"}},
		{"control character in a key", "\"a\\eb\": 1\n", []string{"job.yaml:1: ?: a key has letters that cannot be printed"}},
		{"long key", strings.Repeat("k", 65) + ": 1\n", []string{"job.yaml:1: ?: a key has more than 64 letters"}},
		{"merge key", "job: a\n<<: {width: 1}\n", []string{"job.yaml:2: ?: merge key << is not accepted"}},
		{"missing", "latches:\n  - at: [[0, 0]]\n    annular: {land: 1}\n", []string{
			"job.yaml:2: latches[0].id: is missing",
			"job.yaml:3: latches[0].annular.undercut: is missing (a length in mm)",
		}},
		{"required list empty", "latches:\n- id: a\n  at: []\n", []string{"job.yaml:3: latches[0].at: is empty (at least one entry)"}},
		{"empty scalar", "job: a\nwidth:\n", []string{"job.yaml:2: width: has no value (a value, or leave the key out)"}},
		{"null", "width: ~\n", []string{"job.yaml:1: width: has no value (a value, or leave the key out)"}},
		{"empty text", "job: \" \"\n", []string{"job.yaml:1: job: has no value (a value, or leave the key out)"}},
		{"empty block", "latches:\n", []string{"job.yaml:1: latches: has no value (a value, or leave the key out)"}},
		{"word for a number", "width: wide\n", []string{"job.yaml:1: width: wide; must be a number (" + number + ")"}},
		{"true for a number", "width: true\n", []string{"job.yaml:1: width: true; must be a number (" + number + ")"}},
		{"list for a number", "width: [1]\n", []string{"job.yaml:1: width: a list of 1; must be a single value"}},
		{"block for a text", "job: {a: 1}\n", []string{"job.yaml:1: job: a block of keys; must be a single value"}},
		{"number for a block", "latches: [3]\n", []string{"job.yaml:1: latches[0]: 3; must be a block of keys (known keys: id, at, use, annular)"}},
		{"number for a list", "latches: 3\n", []string{"job.yaml:1: latches: 3; must be a list ([...] or one line with a dash for each entry)"}},
		{"list for names", "walls: [1]\n", []string{"job.yaml:1: walls: a list of 1; must be a block of names, each with its value"}},
		{"true for a text", "job: true\n", []string{"job.yaml:1: job: true; must be text (\"true\" in quotes, if that is meant)"}},
		{"text for a bool", "brittle: yes\n", []string{"job.yaml:1: brittle: yes; must be true or false"}},
		{"quoted bool", "brittle: \"true\"\n", []string{"job.yaml:1: brittle: true; must be true or false"}},
		{"control character in a text", "job: \"a\\e[2Jb\"\n", []string{`job.yaml:1: job: "a\x1b[2Jb"; holds control characters (printable text)`}},
		{"NaN", "width: .nan\n", []string{"job.yaml:1: width: .nan; must be a finite number (" + number + ")"}},
		{"infinite", "width: -.inf\n", []string{"job.yaml:1: width: -.inf; must be a finite number (" + number + ")"}},
		{"NaN by word", "width: NaN\n", []string{"job.yaml:1: width: NaN; must be a number (" + number + ")"}},
		{"too large", "width: 1e400\n", []string{"job.yaml:1: width: 1e400; is too large or too small to compute with"}},
		{"too large in mm", "width: 1e308 in\n", []string{"job.yaml:1: width: 1e308 in; is too large or too small to compute with"}},
		{"vanishes", "width: 1e-400\n", []string{"job.yaml:1: width: 1e-400; is too large or too small to compute with"}},
		{"too many digits", "width: 0." + strings.Repeat("1", 64) + "\n", []string{"job.yaml:1: width: 0.11111111111111111111111111111111111111...; has too many digits (at most 64 characters)"}},
		{"decimal comma", "width: 0,5\n", []string{"job.yaml:1: width: 0,5; must be a decimal number with a point, without leading zeros or separators (" + number + ")"}},
		{"leading zero", "width: 010\n", []string{"job.yaml:1: width: 010; must be a decimal number with a point, without leading zeros or separators (" + number + ")"}},
		{"hexadecimal", "width: 0x10\n", []string{"job.yaml:1: width: 0x10; x10 is not a unit of length (" + lengthUnits + ")"}},
		{"quoted number", "width: \"3\"\n", []string{"job.yaml:1: width: 3; is in quotes and has no unit (no quotes, or a unit: " + lengthUnits + ")"}},
		{"quoted plain number", "ratio: \"3\"\n", []string{"job.yaml:1: ratio: 3; must be a number, not text (no quotes)"}},
		{"unit of another dimension", "width: 5 lbf\n", []string{"job.yaml:1: width: 5 lbf; lbf is not a unit of length (" + lengthUnits + ")"}},
		{"mass for a force", "push: 25 lb\n", []string{"job.yaml:1: push: 25 lb; lb is not a unit of force (N, lbf, kN or kgf)"}},
		{"unknown unit", "width: 5 furlong\n", []string{"job.yaml:1: width: 5 furlong; furlong is not a unit of length (" + lengthUnits + ")"}},
		{"unit in other case", "modulus: 3 Mpa\n", []string{"job.yaml:1: modulus: 3 Mpa; Mpa is not a unit of stress (MPa, GPa, psi, ksi, kPa, N/mm2 or N/mm²)"}},
		{"unit where none belongs", "ratio: 35 %\n", []string{"job.yaml:1: ratio: 35 %; has a unit, where a plain number is needed (no unit)"}},
		{"unknown units", "units: foot\nwidth: 1\n", []string{"job.yaml:1: units: foot; is not a choice here (mm or in)"}},
		{"unknown force units", "force_units: kg\n", []string{"job.yaml:1: force_units: kg; is not a choice here (N or lbf)"}},
		{"no choice", "latches:\n- {id: a, at: [[0, 0]], use: once}\n", []string{"job.yaml:2: latches[0].use: once; is not a choice here (permanent or releasable)"}},
		{"no choice in a list", "words: [hand, hammer]\n", []string{"job.yaml:1: words[1]: hammer; is not a choice here (hand, mallet or press)"}},
		{"no date", "date: 31.03.2026\n", []string{"job.yaml:1: date: 31.03.2026; is not a date (year, month, day: 2026-03-31)"}},
		{"no such day", "date: 2026-02-30\n", []string{"job.yaml:1: date: 2026-02-30; is not a date (year, month, day: 2026-03-31)"}},
		{"fraction for a whole number", "quantity: 1.5\n", []string{"job.yaml:1: quantity: 1.5; must be a whole number (-9223372036854775808 to 9223372036854775807)"}},
		{"whole number too large", "small: 128\n", []string{"job.yaml:1: small: 128; must be a whole number (-128 to 127)"}},
		{"negative count", "seed: -1\n", []string{"job.yaml:1: seed: -1; must be a whole number (0 to 18446744073709551615)"}},
		{"count too large", "seed: 18446744073709551616\n", []string{"job.yaml:1: seed: 18446744073709551616; must be a whole number (0 to 18446744073709551615)"}},
		{"octal", "quantity: 0o17\n", []string{"job.yaml:1: quantity: 0o17; must be a whole number (-9223372036854775808 to 9223372036854775807)"}},
		{"quoted whole number", "small: \"12\"\n", []string{"job.yaml:1: small: 12; must be a whole number (-128 to 127)"}},
		{"point of three", "ram: [1, 2, 3]\n", []string{"job.yaml:1: ram: a list of 3; must be a position in plan ([x, y])"}},
		{"point of one number", "outline: [1, 2]\n", []string{
			"job.yaml:1: outline[0]: 1; must be a position in plan ([x, y])",
			"job.yaml:1: outline[1]: 2; must be a position in plan ([x, y])",
		}},
		{"point in the wrong unit", "outline:\n- [0, 0]\n- [1,\n   2 deg]\n", []string{"job.yaml:4: outline[1][1]: 2 deg; deg is not a unit of length (" + lengthUnits + ")"}},
		{"array too short", "box: [1, 2]\n", []string{"job.yaml:1: box: a list of 2; must be a list of 3 values"}},
		{"anchor", "width: &w 3\n", []string{"job.yaml:1: anchor &w is not accepted (the value written out)"}},
		{"alias", "width: &w 3\npush: *w\n", []string{
			"job.yaml:1: anchor &w is not accepted (the value written out)",
			"job.yaml:2: alias *w is not accepted (the value written out)",
		}},
		{"alias to nothing", "job: a\nwidth: *w\n", []string{"job.yaml:2: not valid YAML: unknown anchor 'w' referenced"}},
		{"tag", "width: !!float 3\n", []string{"job.yaml:1: tag !!float is not accepted (the plain value)"}},
		{"too deep", "a: " + strings.Repeat("[", 40) + strings.Repeat("]", 40) + "\n", []string{"job.yaml:1: nested deeper than 40 levels"}},
		{"two documents", "job: a\n---\njob: b\n", []string{"job.yaml:2: a second document starts (one document a file, one job a file)"}},
		{"empty file", "", []string{"job.yaml:1: the file is empty"}},
		{"only a comment", "# nothing\n", []string{"job.yaml:1: the file is empty"}},
		{"list for a job", "- a\n", []string{"job.yaml:1: a list of 1; must be a block of keys (known keys: " + strings.Join(schemaKeys(), ", ") + ")"}},
		{"too large a file", "#" + strings.Repeat("x", 1<<20), []string{"job.yaml: the file has 1048577 bytes (at most 1048576)"}},
		{"not text", "job: a\nwidth: \xff\n", []string{"job.yaml:2: the file is not plain text (UTF-8)"}},
		{"zero byte", "job: a\n\nwidth: \x00\n", []string{"job.yaml:3: the file is not plain text (UTF-8)"}},
		{"colon in a value", "job: a\nwidth: b: c\n", []string{"job.yaml:2: not valid YAML: mapping values are not allowed in this context"}},
		{"tab", "latches:\n\t- id: a\n", []string{"job.yaml:2: not valid YAML: found character that cannot start any token"}},
		{"bad indentation", "latches:\n- id: a\n  use: b\n at: 3\nwidth: 3\npush: 3\njob: 3\n", []string{"job.yaml:4: not valid YAML: did not find expected key"}},
		{"list not closed", "job: a\n\nbox: [1, 2\nwidth: 3\n", []string{"job.yaml:3: not valid YAML: did not find expected ',' or ']'"}},
		{"quote not closed", "width: 3\njob: \"a\nbrittle: true\n", []string{"job.yaml:2: not valid YAML: found unexpected end of stream"}},
		{"all at once, in file order", "push: 3 mm\nwidth: wide\nbanana_split_dessert: 1\njob: true\n", []string{
			"job.yaml:1: push: 3 mm; mm is not a unit of force (N, lbf, kN or kgf)",
			"job.yaml:2: width: wide; must be a number (" + number + ")",
			"job.yaml:3: banana_split_dessert: unknown key (known keys: " + strings.Join(schemaKeys(), ", ") + ")",
			"job.yaml:4: job: true; must be text (\"true\" in quotes, if that is meant)",
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, _, problems := decodeSample(t, c.text)
			if got, want := problems.Error(), strings.Join(c.want, "\n"); got != want {
				t.Errorf("%.200q\ngot  %s\nwant %s", c.text, got, want)
			}
		})
	}
}

func schemaKeys() []string {
	s := schema{}
	t := reflect.TypeFor[sample]()
	s.add(t, rule{})
	return s.keys(t)
}

// A refused value leaves its field as it was.
func TestDecodeRefusedValueIsNotTaken(t *testing.T) {
	s := sample{Width: 7, Box: [3]float64{1, 2, 3}, Job: "kept", Small: 5, Strain: nil}
	_, problems := Decode("job.yaml", []byte("width: 5 lbf\nbox: [9, 9, x]\njob: true\nsmall: 300\nstrain: 2 mm\n"), &s)
	if len(problems) != 5 || s.Width != 7 || s.Box != [3]float64{1, 2, 3} || s.Job != "kept" || s.Small != 5 || s.Strain != nil {
		t.Errorf("got %+v\n%v", s, problems)
	}
}

func TestDecodeManyFaultsAreCounted(t *testing.T) {
	_, _, problems := decodeSample(t, "words:\n"+strings.Repeat("- kick\n", 250))
	if len(problems) != maxProblems+1 {
		t.Fatalf("%d problems, want %d", len(problems), maxProblems+1)
	}
	const want = "job.yaml:101: 150 more faults from here on"
	if got := problems[maxProblems].String(); got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
