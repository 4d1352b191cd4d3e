package jobfile

import "ramnest/force"

// sample has a field of every kind that the decoder knows.
type sample struct {
	Units      string            `yaml:"units"`
	ForceUnits string            `yaml:"force_units"`
	Job        string            `yaml:"job"`
	Date       string            `yaml:"date" format:"date"`
	Quantity   int               `yaml:"quantity"`
	Small      int8              `yaml:"small"`
	Seed       uint64            `yaml:"seed"`
	Brittle    bool              `yaml:"brittle"`
	Ratio      float64           `yaml:"ratio" unit:"none"`
	Width      float64           `yaml:"width" unit:"mm"`
	Push       float64           `yaml:"push" unit:"N"`
	Modulus    float64           `yaml:"modulus" unit:"MPa"`
	Mass       float64           `yaml:"mass" unit:"kg"`
	Work       float64           `yaml:"work" unit:"J"`
	Pause      float64           `yaml:"pause" unit:"s"`
	Strain     *float64          `yaml:"strain" unit:"pct"`
	Angle      *float64          `yaml:"angle" unit:"deg"`
	Box        [3]float64        `yaml:"box" unit:"mm"`
	Size       *[2]float64       `yaml:"size" unit:"mm"`
	Ram        force.Point       `yaml:"ram"`
	Outline    []force.Point     `yaml:"outline" unit:"mm"`
	Words      []string          `yaml:"words" oneof:"hand mallet press"`
	Walls      map[string]length `yaml:"walls" unit:"mm"`
	Latches    []sampleLatch     `yaml:"latches"`
	Parts      map[string]part   `yaml:"parts"`
	Computed   float64           // not of the file
}

type length float64

type part struct {
	Material string `yaml:"material" required:"true"`
	figures  `yaml:",inline"`
}

// figures are inlined in part.
type figures struct {
	Modulus *float64 `yaml:"modulus" unit:"MPa"`
}

type sampleLatch struct {
	ID      string        `yaml:"id" required:"true"`
	At      []force.Point `yaml:"at" unit:"mm" required:"true"`
	Use     string        `yaml:"use" oneof:"permanent releasable"`
	Annular *sampleRing   `yaml:"annular"`
}

type sampleRing struct {
	Undercut float64 `yaml:"undercut" unit:"mm" required:"true"`
	Land     float64 `yaml:"land" unit:"mm"`
}
