package jobfile

import (
	"encoding/json"
	"testing"
)

func TestKeysAreDescribed(t *testing.T) {
	t.Parallel()
	type described struct {
		Job  string  `yaml:"job"`
		Wall float64 `yaml:"wall" unit:"mm"`
	}
	const owner = "ramnest/cmd/internal/jobfile.described."
	about := About{owner + "Job": "what it is called", owner + "Wall": "how thick it is; 0: as it comes"}
	var got struct {
		Properties map[string]struct{ Description string }
	}
	if err := json.Unmarshal(Schema(new(described), about), &got); err != nil {
		t.Fatal(err)
	}
	if d := got.Properties["job"].Description; d != "what it is called" {
		t.Errorf("job: %q", d)
	}
	if d := got.Properties["wall"].Description; d != "how thick it is; 0: as it comes. A length, such as 12.5 mm; units: mm, in, thou, um, cm, m" {
		t.Errorf("wall: %q", d)
	}
	keys := Keys(new(described), about)
	if keys[1].About != "how thick it is; 0: as it comes" {
		t.Errorf("keys: %+v", keys)
	}
}
