package jobfile

import (
	"fmt"

	"ramnest/force"
	"ramnest/force/fault"
	"ramnest/force/planar"
)

// sample is a struct with everything that a job file can hold.
type sample struct {
	Units `yaml:",inline"`

	Job      string            `yaml:"job" required:"true"`
	Date     string            `yaml:"date" format:"date"`
	Quantity int               `yaml:"quantity"`
	Small    int8              `yaml:"small"`
	Count    uint16            `yaml:"count"`
	Brittle  bool              `yaml:"brittle"`
	Share    float64           `yaml:"share" unit:"none"`
	Parts    []samplePart      `yaml:"parts"`
	Shops    map[string]rate   `yaml:"shops"`
	Names    map[string]string `yaml:"names"`
	Corner   *planar.Point     `yaml:"corner" unit:"mm"`
	Outline  []planar.Point    `yaml:"outline" unit:"mm"`
	Sizes    []float64         `yaml:"sizes" unit:"mm"`
	Box      [3]float64        `yaml:"box" unit:"mm"`
	Wall     float64           `yaml:"wall" unit:"mm"`
	Push     float64           `yaml:"push" unit:"N"`
	Lead     *float64          `yaml:"lead" unit:"deg"`
	Modulus  float64           `yaml:"modulus" unit:"MPa"`
	Mass     float64           `yaml:"mass" unit:"kg"`
	Energy   float64           `yaml:"energy" unit:"J"`
	Time     float64           `yaml:"time" unit:"s"`
	Strain   *float64          `yaml:"strain" unit:"pct"`
	Methods  []string          `yaml:"methods" oneof:"hand mallet press"`
	Latches  []force.Latch     `yaml:"latches"`

	Computed float64 `yaml:"-"`
}

type samplePart struct {
	ID      string `yaml:"id" required:"true"`
	Process string `yaml:"process" oneof:"PBF MEX VPP"`
	Extent  `yaml:",inline"`
	Ring    *ring `yaml:"ring"`
}

// Extent is inlined in samplePart.
type Extent struct {
	Height float64 `yaml:"height" unit:"mm"`
}

type ring struct {
	Undercut float64 `yaml:"undercut" unit:"mm" required:"true"`
	Land     float64 `yaml:"land" unit:"mm"`
}

type rate struct {
	PerHour float64 `yaml:"per_hour" unit:"none" required:"true"`
}

// decoded reads a text into a sample.
func decoded(text string, set ...string) (sample, *Document, Problems) {
	var s sample
	d, p := Decode("job.yaml", []byte(text), &s, Options{Set: set})
	return s, d, p
}

// forceFaults are the faults that latch i of a sample has by itself.
func forceFaults(i int, l force.Latch) []fault.Fault {
	return fault.Under(fmt.Sprintf("latches[%d]", i), l.Validate())
}
