package force

import (
	"fmt"

	"ramnest/force/planar"
)

// A Latch is one entry of the job's list of latches: one joint design, at one
// or several places.
type Latch struct {
	ID string         `yaml:"id" required:"true"`
	At []planar.Point `yaml:"at" unit:"mm" required:"true"`
	// Z is the height of the joint line with the parts seated [mm]: the bead of
	// an annular joint, the lip of a ball's socket, the hook of an arm, the middle
	// of the engaged length of what is pressed.
	Z float64 `yaml:"z" unit:"mm" required:"true"`
	// Engage is the lift at first contact [mm]; left out, the latch's own stroke.
	Engage *float64 `yaml:"engage" unit:"mm"`
	// Use is permanent (the default) or releasable.
	Use string `yaml:"use" oneof:"permanent releasable"`

	// Exactly one of these. A kind that is added leaves the fingerprint of jobs without it
	// as it was: json omitempty.
	Annular    *Annular    `yaml:"annular"`
	Ball       *Ball       `yaml:"ball"`
	Cantilever *Cantilever `yaml:"cantilever"`
	PressFit   *PressFit   `yaml:"press_fit"`
	CrushRib   *CrushRib   `yaml:"crush_rib"`
	Torsional  *Torsional  `yaml:"torsional" json:",omitempty"`
}

// A Visitor does for each kind what only the kind and another room together can, as
// drawing a coupon of it. A new kind gets a line here, and then no visitor compiles that
// does not know it.
type Visitor interface {
	Annular(Annular)
	Ball(Ball)
	Cantilever(Cantilever)
	PressFit(PressFit)
	CrushRib(CrushRib)
	Torsional(Torsional)
}

// registry is every kind of latch by its key in the job file. A kind that misses one of
// its duties does not compile here.
var registry = [...]entry{
	of("annular", func(l *Latch) **Annular { return &l.Annular }),
	of("ball", func(l *Latch) **Ball { return &l.Ball }),
	of("cantilever", func(l *Latch) **Cantilever { return &l.Cantilever }),
	of("press_fit", func(l *Latch) **PressFit { return &l.PressFit }),
	of("crush_rib", func(l *Latch) **CrushRib { return &l.CrushRib }),
	of("torsional", func(l *Latch) **Torsional { return &l.Torsional }),
}

// entry is one kind in the registry.
type entry struct {
	name string
	zero Kind
	get  func(*Latch) Kind // nil: the latch does not state it
	set  func(*Latch, Kind) bool
}

// of makes an entry from the field of a latch that holds the kind.
func of[K Kind](name string, field func(*Latch) **K) entry {
	var zero K
	return entry{name, zero, func(l *Latch) Kind {
		if p := *field(l); p != nil {
			return *p
		}
		return nil
	}, func(l *Latch, k Kind) bool {
		v, ok := k.(K)
		if ok {
			*field(l) = &v
		}
		return ok
	}}
}

// Kinds lists the kinds of latches by their keys in the job file.
func Kinds() []string {
	var out []string
	for _, e := range registry {
		out = append(out, e.name)
	}
	return out
}

// stated lists the joints that the latch states.
func (l Latch) stated() (names []string, kinds []Kind) {
	for _, e := range registry {
		if k := e.get(&l); k != nil {
			names, kinds = append(names, e.name), append(kinds, k)
		}
	}
	return names, kinds
}

// Kind is the trade name of the joint as the job file writes it; empty if the
// latch states none or several.
func (l Latch) Kind() string {
	if names, _ := l.stated(); len(names) == 1 {
		return names[0]
	}
	return ""
}

// Joint is the joint design of the latch; nil if it states none or several.
func (l Latch) Joint() Kind {
	if _, kinds := l.stated(); len(kinds) == 1 {
		return kinds[0]
	}
	return nil
}

// With is the latch with another joint of the kind that it has.
func (l Latch) With(k Kind) Latch {
	for _, e := range registry {
		if e.set(&l, k) {
			return l
		}
	}
	panic(fmt.Sprintf("force: %T is not registered", k))
}
