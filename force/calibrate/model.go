package calibrate

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"sync"

	"ramnest/force"
	"ramnest/force/fault"
	"ramnest/force/unit"
)

// A Coupon is a pair that can be pressed.
type Coupon struct {
	Latch  string  // id of a latch of the assembly
	Name   string  // the number marked on it, or Piece
	Size   float64 // its interference as drawn [mm]
	Places int     // joints in it; 0: 1
}

// An Input is what a model is made of.
type Input struct {
	Assembly force.Assembly
	Coupons  []Coupon
	Stepped  map[string]force.Member // which member carries the step, by latch; left out: the outer one
	Gauge    float64                 // standard deviation of the force gauge and the hand, share of the force [1]; 0: 0.05
	MostRows int                     // measurements of a fit; 0: [MostRows]
}

// Of the prior. A table is not the shop, so its plus or minus counts as one standard
// deviation, not as a bound (own).
const (
	modelSpread   = 0.075 // of ln stiffness: half of the model error that package force keeps for rings and arms [1]
	offsetShare   = 0.5   // of the tolerance of a size: standard deviation of its offset in a build [1]
	ownShare      = 0.354 // of the tolerance: standard deviation from pair to pair in one build, half the variance, as in package force [1]
	scatterSpread = 0.6   // standard deviation of ln of the factor on all scatter [1]
	usualGauge    = 0.05  // [1]
	mostLatches   = 6     // of one fit
	floorForce    = 0.3   // standard deviation below which no force is known [N]
)

// A Model is an assembly made ready to be fitted: friction, stiffness and sizes in,
// peak forces out, tabulated once from package force.
type Model struct {
	input           Input
	lower, upper    force.Material
	friction        float64   // nominal [1]
	frictionSpread  float64   // of ln [1]
	stiffnessSpread float64   // of ln [1]
	gauge           float64   // [1]
	latches         []subject // those that have coupons
	coupons         []Coupon
	couponLatch     []int // index into latches
}

// A subject is a latch under test.
type subject struct {
	latch     force.Latch
	size      force.Size
	member    force.Member
	tolerance float64        // [mm]
	latches   [2]force.Latch // by form
	softer    bool           // in the part than on the plate of a coupon
	curves    [2]*surface    // by form; one and the same where the forms do not differ
}

// A form is what a joint stands on.
type form int

const (
	inJob    form = iota // the part itself
	onCoupon             // the plate of a coupon
)

// offsetSpread is the prior standard deviation of the offset [mm].
func (s *subject) offsetSpread() float64 { return offsetShare * s.tolerance }

// own is the standard deviation of the size from pair to pair before any scatter is
// learned [mm].
func (s *subject) own() float64 { return ownShare * s.tolerance }

// NewModel tabulates the forces of every latch that has coupons. It returns the
// faults of the input joined.
func NewModel(in Input) (*Model, error) { return NewModelContext(context.Background(), in) }

// NewModelContext is [NewModel] that can be stopped: then it gives the error of the
// context.
func NewModelContext(ctx context.Context, in Input) (*Model, error) {
	faults := in.Assembly.Validate()
	if in.Gauge == 0 {
		in.Gauge = usualGauge
	}
	if !(in.Gauge > 0 && in.Gauge <= 0.5) {
		faults = append(faults, fault.Fault{Field: "gauge", Given: fmt.Sprint(in.Gauge), Problem: "is out of range",
			Want: "up to 0.5, or 0 for 0.05"})
	}
	if len(faults) > 0 {
		return nil, joined(faults)
	}
	m := &Model{input: in, gauge: in.Gauge}
	m.lower, _ = in.Assembly.Shop.Resolve(in.Assembly.Lower)
	m.upper, _ = in.Assembly.Shop.Resolve(in.Assembly.Upper)
	m.friction = pairFriction(in.Assembly)
	m.frictionSpread = max(0.02, m.lower.FrictionSpread.Value, m.upper.FrictionSpread.Value)
	m.stiffnessSpread = modelSpread
	for _, p := range []force.Material{m.lower, m.upper} {
		if !p.Metal() {
			m.stiffnessSpread = max(m.stiffnessSpread, math.Hypot(p.ModulusSpread.Value, modelSpread))
		}
	}
	for i, c := range in.Coupons {
		field := fmt.Sprintf("coupons[%d]", i)
		k := slices.IndexFunc(in.Assembly.Latches, func(l force.Latch) bool { return l.ID == c.Latch })
		switch {
		case k < 0:
			faults = append(faults, fault.Fault{Field: field + ".latch", Given: c.Latch, Problem: "is no latch of the job",
				Want: ids(in.Assembly.Latches)})
			continue
		case !(c.Size >= -5 && c.Size <= 50):
			faults = append(faults, fault.Fault{Field: field + ".size", Given: mm(c.Size), Problem: "is no interference", Want: "-5 to 50 mm"})
			continue
		case c.Places < 0 || c.Places > 1000:
			faults = append(faults, fault.Fault{Field: field + ".places", Given: fmt.Sprint(c.Places), Problem: "is out of range",
				Want: "1 to 1000"})
			continue
		}
		c.Places = max(1, c.Places)
		l := in.Assembly.Latches[k]
		at := slices.IndexFunc(m.latches, func(s subject) bool { return s.latch.ID == l.ID })
		if at < 0 {
			at = len(m.latches)
			size := l.Size(m.lower, m.upper)
			plate, note := l.OnPlate()
			m.latches = append(m.latches, subject{latch: l, size: size, member: in.Stepped[l.ID], tolerance: size.Tolerance(),
				latches: [2]force.Latch{l.Alone(), plate}, softer: note != ""})
		}
		m.coupons, m.couponLatch = append(m.coupons, c), append(m.couponLatch, at)
	}
	switch {
	case len(faults) > 0:
	case len(m.coupons) == 0:
		faults = append(faults, fault.Fault{Field: "coupons", Problem: "is empty", Want: "a ladder, or first pieces"})
	case len(m.latches) > mostLatches:
		faults = append(faults, fault.Fault{Field: "coupons", Given: fmt.Sprint(len(m.latches), " latches"), Problem: "are too many for one fit",
			Want: fmt.Sprintf("%d at most", mostLatches)})
	}
	if len(faults) > 0 {
		return nil, joined(faults)
	}
	if err := m.tabulate(ctx); err != nil {
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		return m, err
	}
	return m, nil
}

// tabulate fills the curves, latch beside latch.
func (m *Model) tabulate(ctx context.Context) error {
	errs := make([]error, len(m.latches))
	var group sync.WaitGroup
	for i := range m.latches {
		group.Go(func() {
			s := &m.latches[i]
			largest := s.size.Value
			coupons := false
			for k, c := range m.coupons {
				if m.couponLatch[k] == i {
					largest, coupons = max(largest, c.Size), coupons || c.form() == onCoupon
				}
			}
			largest += 4 * s.offsetSpread()
			s.curves[inJob] = &surface{}
			s.curves[onCoupon] = s.curves[inJob]
			errs[i] = s.curves[inJob].fill(ctx, m, s, inJob, largest)
			if errs[i] == nil && coupons && s.softer {
				s.curves[onCoupon] = &surface{}
				errs[i] = s.curves[onCoupon].fill(ctx, m, s, onCoupon, largest)
			}
		})
	}
	group.Wait()
	return errors.Join(errs...)
}

// form is what the joints of the coupon stand on.
func (c Coupon) form() form {
	if c.Name == Piece {
		return inJob
	}
	return onCoupon
}

// assembly is one joint of a latch with another friction [1], stiffness as a share
// of the table's [1] and size [mm].
func (m *Model) assembly(s *subject, on form, friction, stiffness, size float64) force.Assembly {
	l := s.latches[on].Resized(size, s.member).Toleranced(s.tolerance)
	a := m.input.Assembly
	l, _, _ = l.Stiffened(m.lower, m.upper, stiffness)
	a.Latches, a.Draws = []force.Latch{l}, 100
	a.Lower, a.Upper = retuned(a.Lower, m.lower, friction, stiffness), retuned(a.Upper, m.upper, friction, stiffness)
	return a
}

// retuned gives a part another friction, and if it is no metal another modulus.
func retuned(spec force.MaterialSpec, m force.Material, friction, stiffness float64) force.MaterialSpec {
	spec.Friction = &friction
	if !m.Metal() {
		spec.Modulus, spec.SecantZero = new(m.Modulus.Value*stiffness), new(m.SecantZero.Value)
	}
	return spec
}

// pairFriction reads the friction that package force takes between two parts.
func pairFriction(a force.Assembly) float64 {
	for _, line := range force.Explain(a, a.Latches[0].ID) {
		if line.Symbol == "mu" {
			return line.Value
		}
	}
	return 0
}

func ids(ls []force.Latch) string {
	var out []string
	for _, l := range ls {
		out = append(out, l.ID)
	}
	return fmt.Sprint(out)
}

func joined(faults []fault.Fault) error {
	errs := make([]error, len(faults))
	for i, f := range faults {
		errs[i] = f
	}
	return errors.Join(errs...)
}

// coupon is a size of which small steps count.
func coupon(v float64) unit.Figure { return unit.Length.Of(v).To(4) }

func mm(v float64) string { return fmt.Sprintf("%.4g mm", v) }
