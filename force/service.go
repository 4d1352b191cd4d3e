package force

import (
	"fmt"

	"ramnest/force/fault"
)

// A Service is what a finished joint goes through before it must still hold.
type Service struct {
	Hold        float64  `yaml:"hold" unit:"N"`                          // pull along the press axis that the parts of each step must hold at the end [N]; 0 or left out: none stated
	After       *float64 `yaml:"after" unit:"d"`                         // time after pressing [d]; left out: 1000 h
	Openings    int      `yaml:"openings" unit:"none"`                   // how often it is opened and joined again; 0 or left out: never
	Temperature *float64 `yaml:"temperature" unit:"none"`                // warmest that it must hold at [deg C]; left out: 23
	Moisture    string   `yaml:"moisture" oneof:"dry room_air immersed"` // left out: room_air, 50 % relative humidity
	Keeps       Keeps    `yaml:"keeps"`                                  // shares of the hold that samples were measured to keep
}

// Keeps are shares of the hold that samples were measured to keep; nil is not
// measured. They stand in for the figures of the tool and for those that are not known.
type Keeps struct {
	Time        *float64 `yaml:"time" unit:"pct"`        // after that time [1]
	Set         *float64 `yaml:"set" unit:"pct"`         // after the joining itself [1]
	Openings    *float64 `yaml:"openings" unit:"pct"`    // after so many openings [1]
	Temperature *float64 `yaml:"temperature" unit:"pct"` // at that temperature [1]
	Moisture    *float64 `yaml:"moisture" unit:"pct"`    // at that moisture [1]
}

const (
	defaultAfter = 1000.0 // [h] as far as the rule for relaxation goes; own
	room         = 23.0   // temperature of the figures of the material table [deg C]
)

// Time is the time after pressing, with its default [h].
func (s Service) Time() float64 {
	if s.After == nil {
		return defaultAfter
	}
	return 24 * *s.After
}

// Warmest is the temperature with its default [deg C].
func (s Service) Warmest() float64 {
	if s.Temperature == nil {
		return room
	}
	return *s.Temperature
}

// Air is the moisture with its default.
func (s Service) Air() string {
	if s.Moisture == "" {
		return "room_air"
	}
	return s.Moisture
}

// Validate returns what is wrong with the service, field paths relative to it.
func (s Service) Validate() []fault.Fault {
	var out []fault.Fault
	check := func(field, unit string, v, lo, hi float64) {
		if !within(v, lo, hi) {
			out = append(out, fault.Fault{Field: field, Given: figure(v) + unit, Problem: "is outside what a joint goes through",
				Want: figure(lo) + " to " + figure(hi) + unit})
		}
	}
	check("hold", " N", s.Hold, 0, 1e6)
	check("after", " d", s.Time()/24, 0, 40000)
	check("openings", "", float64(s.Openings), 0, 1e6)
	check("temperature", " deg C", s.Warmest(), -60, 300)
	out = append(out, choiceFault("moisture", s.Air(), "dry", "room_air", "immersed")...)
	for _, k := range []struct {
		field string
		v     *float64
	}{{"time", s.Keeps.Time}, {"set", s.Keeps.Set}, {"openings", s.Keeps.Openings}, {"temperature", s.Keeps.Temperature}, {"moisture",
		s.Keeps.Moisture}} {
		if k.v != nil && !within(*k.v, 0, 1) {
			out = append(out, fault.Fault{Field: "keeps." + k.field, Given: fmt.Sprintf("%.6g %%", 100**k.v), Problem: "is no share of a hold",
				Want: "0 to 100 %"})
		}
	}
	return out
}
