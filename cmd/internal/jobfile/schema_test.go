package jobfile

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"ramnest/force/planar"
)

// station is a small file for the golden schema: each kind of value once.
type station struct {
	Units  `yaml:",inline"`
	Name   string             `yaml:"name" required:"true"`
	Built  string             `yaml:"built" format:"date"`
	Use    string             `yaml:"use" oneof:"permanent releasable"`
	Count  int                `yaml:"count"`
	Guided bool               `yaml:"guided"`
	Daylit *float64           `yaml:"daylight" unit:"mm"`
	Share  float64            `yaml:"share" unit:"none"`
	At     []planar.Point     `yaml:"at" unit:"mm" required:"true"`
	Span   [2]float64         `yaml:"span" unit:"N"`
	Rates  map[string]float64 `yaml:"rates" unit:"pct"`
	Rams   []ram              `yaml:"rams"`
}

type ram struct {
	ID string `yaml:"id" required:"true"`
}

func TestSchemaGolden(t *testing.T) {
	t.Parallel()
	golden := filepath.Join("testdata", "schema.json")
	got := Schema(&station{}, nil)
	if *update {
		if err := os.WriteFile(golden, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != string(want) {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestKeys(t *testing.T) {
	t.Parallel()
	var got []string
	for _, k := range Keys(&station{}, nil) {
		got = append(got, fmt.Sprintf("%s|%s|%s|%v|%s", k.Path, k.Type, k.Unit, k.Required, strings.Join(k.OneOf, " ")))
	}
	want := []string{
		"units|text||false|mm in",
		"force_units|text||false|N lbf",
		"name|text||true|",
		"built|date||false|",
		"use|text||false|permanent releasable",
		"count|whole number||false|",
		"guided|true or false||false|",
		"daylight|number|mm|false|",
		"share|number|none|false|",
		"at|list of points|mm|true|",
		"span|list of numbers|N|false|",
		"rates|table of numbers|pct|false|",
		"rams|list of sections||false|",
		"rams[].id|text||true|",
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	for _, k := range Keys(&station{}, nil) {
		if k.Path == "daylight" && !slices.Equal(k.Accepts, []string{"mm", "in", "thou", "um", "cm", "m"}) {
			t.Errorf("daylight accepts %v", k.Accepts)
		}
	}
}

// The schema and the list of keys come from one walk, and the schema knows no
// key that the list does not.
func TestSchemaHasEveryKey(t *testing.T) {
	t.Parallel()
	var root map[string]any
	if err := json.Unmarshal(Schema(&sample{}, nil), &root); err != nil {
		t.Fatal(err)
	}
	var got []string
	var walk func(path string, s map[string]any)
	walk = func(path string, s map[string]any) {
		if items, ok := s["items"].(map[string]any); ok {
			walk(path+"[]", items)
		}
		if others, ok := s["additionalProperties"].(map[string]any); ok {
			walk(join(path, "<name>"), others)
		}
		properties, _ := s["properties"].(map[string]any)
		if len(properties) > 0 && s["additionalProperties"] != false {
			t.Errorf("%s takes unknown keys", path)
		}
		for key, below := range properties {
			got = append(got, join(path, key))
			walk(join(path, key), below.(map[string]any))
		}
	}
	walk("", root)
	var want []string
	for _, k := range Keys(&sample{}, nil) {
		want = append(want, k.Path)
	}
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("got %v\nwant %v", got, want)
	}
}

// The pattern of the schema takes a text exactly if Decode takes it.
func TestSchemaPatternAgreesWithDecode(t *testing.T) {
	t.Parallel()
	d, _ := dimensionOf("mm")
	pattern := regexp.MustCompile(d.schema().AnyOf[1].Pattern)
	for _, text := range []string{
		"1 mm", "1mm", " 1  mm ", "-1.5e3 in", ".5 thou", "5. um", "+3 µm", "3 inches", "3\"", "0 mm", "0.0 mm", "1e+2cm", "1E-2m",
		"1", "mm", "", "1 kg", "01 mm", "1,5 mm", "1_0 mm", "0x1 mm", "1 mm mm", "1e mm", ". mm", "- mm", "1..2 mm", "1.2.3 mm", "nan mm", "inf", "1 MM", "1/2 in", "1:30 mm", "--1 mm", "+-1 mm",
	} {
		_, fault, _ := quantity(text, true, d, metric)
		if got, want := pattern.MatchString(text), fault == nil; got != want {
			t.Errorf("%q: pattern takes it: %v, Decode takes it: %v (%v)", text, got, want, fault)
		}
	}
}
