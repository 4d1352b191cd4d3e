package job

import (
	"fmt"
	"slices"

	"ramnest/fixture/envelope"
	"ramnest/force"
	"ramnest/force/fault"
)

// A Part is one of the two parts that are pushed together.
type Part struct {
	Name string `yaml:"name" required:"true"`

	force.MaterialSpec `yaml:",inline"`

	Envelope       envelope.Spec      `yaml:"envelope" required:"true"` // in the seated pose, z up along the press axis
	KeepOuts       []envelope.KeepOut `yaml:"keep_outs"`                // places on which nothing may press
	Brittle        bool               `yaml:"brittle"`                  // shatters under a blow
	ShockSensitive bool               `yaml:"shock_sensitive"`          // takes no blow at all
}

// Electronics says whether a place of the part is marked as electronics.
func (p *Part) Electronics() bool {
	return slices.ContainsFunc(p.KeepOuts, func(k envelope.KeepOut) bool { return k.Reason == "electronics" })
}

// Validate returns what is wrong with the part, but for its material, which is
// judged with the shop's table.
func (p *Part) Validate() []fault.Fault {
	out := fault.Under("envelope", p.Envelope.Validate())
	for i, k := range p.KeepOuts {
		out = append(out, fault.Under(fmt.Sprintf("keep_outs[%d]", i), k.Validate())...)
	}
	return out
}
