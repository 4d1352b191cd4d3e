package calibrate

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"ramnest/force/fault"
	"ramnest/force/unit"
)

// A Fit is what measurements say of a model.
type Fit struct {
	Friction  Estimate   // coefficient of friction between the parts [1]
	Stiffness Estimate   // factor on the modulus of what is no metal, and on the flow stress of ribs [1]
	Scatter   Estimate   // factor on the scatter from pair to pair that the tolerances let expect [1]
	Offsets   []Estimate // by latch: how much more the size comes out than drawn [mm]

	// Correlation of ln friction and ln stiffness, -1 to 1. Near -1 the coupons tell
	// only their product: each alone is as good as its prior.
	Correlation float64
	Residuals   []Residual
	Measured    int         // pairs that counted
	Effective   float64     // independent points that the sampling is worth
	Remarks     []unit.Text // for the reader, each a sentence

	model  *Model
	points []theta
}

// An Estimate is a figure with its interval.
type Estimate struct {
	Name                string
	Unit                unit.Kind
	Prior               float64 // by the table
	PriorLow, PriorHigh float64 // 95 % before anything was measured
	Value               float64 // median
	Low, High           float64 // 95 %
}

// A Residual compares one measurement with the fit.
type Residual struct {
	Measurement
	Size      float64 // as drawn [mm]
	Predicted float64 // [N]
	Low, High float64 // 95 % of pairs of that size [N]
	Deviation float64 // measured less predicted, in standard deviations of a pair [1]; of a no-go 0
	Outlier   bool    // more likely wrong than right
	Doubt     float64 // probability that it is [1]
}

// Fit fits measurements. Faults name the line of the measurement.
func (m *Model) Fit(measured []Measurement) (*Fit, error) {
	return m.FitContext(context.Background(), measured)
}

// FitContext is [Model.Fit] that can be stopped: then it gives the error of the context.
func (m *Model) FitContext(ctx context.Context, measured []Measurement) (*Fit, error) {
	data, err := m.match(measured)
	if err != nil {
		return nil, err
	}
	f := &Fit{model: m, Measured: len(data)}
	if f.points, f.Effective, err = m.sample(ctx, data); err != nil {
		return nil, err
	}
	f.estimate()
	if err := f.residuals(ctx, data); err != nil {
		return nil, err
	}
	f.remark(data)
	return f, nil
}

// match finds the coupon of every measurement.
func (m *Model) match(measured []Measurement) ([]datum, error) {
	var data []datum
	var faults []fault.Fault
	var lines []int
	wrong := func(line int, f fault.Fault) { faults, lines = append(faults, f), append(lines, line) }
	if most := (Limits{Rows: m.input.MostRows}).orDefault().Rows; len(measured) > most {
		return nil, fault.Fault{Field: "measured", Given: fmt.Sprint(len(measured)), Problem: "are too many",
			Want: fmt.Sprintf("%d at most, or a higher limit", most)}
	}
	for _, x := range measured {
		k := slices.IndexFunc(m.coupons, func(c Coupon) bool { return c.Latch == x.Latch && c.Name == x.Coupon })
		switch {
		case k >= 0:
		case !slices.ContainsFunc(m.coupons, func(c Coupon) bool { return c.Latch == x.Latch }):
			wrong(x.Line, fault.Fault{Field: "latch", Given: x.Latch, Problem: "has no coupons", Want: "a latch of the ladder"})
			continue
		default:
			wrong(x.Line, fault.Fault{Field: "coupon", Given: x.Coupon, Problem: "is not in the ladder of " + x.Latch, Want: m.names(x.Latch)})
			continue
		}
		if !(x.Force >= 0 && x.Force <= mostForce) {
			wrong(x.Line, fault.Fault{Field: "force", Given: fmt.Sprintf("%g N", x.Force), Problem: "is out of range", Want: "0 N to 1 MN"})
			continue
		}
		// The table of a ladder has three digits behind the point.
		if drawn := m.coupons[k].Size; x.Size != 0 && math.Abs(x.Size-drawn) > 0.0006 {
			wrong(x.Line, fault.Fault{Field: "size", Given: mm(x.Size),
				Problem: fmt.Sprintf("is not that of coupon %s of %s, drawn with %.4g mm", x.Coupon, x.Latch,
					drawn), Want: "the job, steps and step that the ladder was made with"})
			continue
		}
		data = append(data, datum{Measurement: x, coupon: k, latch: m.couponLatch[k], on: m.coupons[k].form(), size: m.coupons[k].Size,
			places: float64(m.coupons[k].Places)})
	}
	if len(faults) > 0 {
		var out []error
		for i, f := range faults {
			out = append(out, LineFault{lines[i], f})
		}
		return nil, errors.Join(out...)
	}
	if len(data) == 0 {
		return nil, fault.Fault{Field: "measured", Problem: "is empty", Want: "one measured pair or more"}
	}
	return data, nil
}

func (m *Model) names(latch string) string {
	var out []string
	for _, c := range m.coupons {
		if c.Latch == latch {
			out = append(out, c.Name)
		}
	}
	return fmt.Sprint(out)
}

// estimate reads intervals off the points.
func (f *Fit) estimate() {
	m := f.model
	of := func(name string, k unit.Kind, prior, spread float64, logarithmic bool, value func(theta) float64) Estimate {
		e := Estimate{Name: name, Unit: k, Prior: prior, PriorLow: prior - 1.96*spread, PriorHigh: prior + 1.96*spread}
		if logarithmic {
			e.PriorLow, e.PriorHigh = prior*math.Exp(-1.96*spread), prior*math.Exp(1.96*spread)
		}
		e.Low, e.Value, e.High = f.interval(0.025, 0.975, value)
		return e
	}
	f.Friction = of("friction", unit.Plain, m.friction, m.frictionSpread, true, m.frictionOf)
	f.Stiffness = of("stiffness", unit.Plain, 1, m.stiffnessSpread, true, m.stiffnessOf)
	f.Scatter = of("scatter", unit.Plain, 1, scatterSpread, true, scatterOf)
	for i := range m.latches {
		s := &m.latches[i]
		f.Offsets = append(f.Offsets, of(s.latch.ID, "mm", 0, s.offsetSpread(), false, func(t theta) float64 { return m.offsetOf(t, i) }))
	}
	var sx, sy, sxx, syy, sxy float64
	n := float64(len(f.points))
	for _, t := range f.points {
		x, y := t[atFriction], t[atStiffness]
		sx, sy, sxx, syy, sxy = sx+x, sy+y, sxx+x*x, syy+y*y, sxy+x*y
	}
	if d := math.Sqrt((n*sxx - sx*sx) * (n*syy - sy*sy)); d > 0 {
		f.Correlation = (n*sxy - sx*sy) / d
	}
}

// interval gives two quantiles and the median of a figure over the points.
func (f *Fit) interval(lo, hi float64, value func(theta) float64) (low, median, high float64) {
	v := make([]float64, len(f.points))
	for i, t := range f.points {
		v[i] = value(t)
	}
	slices.Sort(v)
	return quantile(v, lo), quantile(v, 0.5), quantile(v, hi)
}

// quantile of sorted values, linear between them.
func quantile(sorted []float64, q float64) float64 {
	x := q * float64(len(sorted)-1)
	i := min(int(x), len(sorted)-2)
	return sorted[i] + (x-float64(i))*(sorted[i+1]-sorted[i])
}

func (m *Model) gripAt(t theta, latch int, on form) grip {
	return m.latches[latch].curves[on].at(math.Log(m.friction)+m.frictionSpread*t[atFriction], m.stiffnessSpread*t[atStiffness])
}

// residuals compares every measurement with the fit.
func (f *Fit) residuals(ctx context.Context, data []datum) error {
	m := f.model
	for i := range data {
		if err := ctx.Err(); err != nil {
			return err
		}
		d := &data[i]
		r := Residual{Measurement: d.Measurement, Size: d.size}
		var forces, deviations []float64
		for _, t := range f.points {
			g := m.gripAt(t, d.latch, d.on)
			p, sd := m.expect(&g, &m.latches[d.latch], d.size, m.offsetOf(t, d.latch), scatterOf(t), d.places, true)
			good, bad := likelihood(d, p, sd)
			r.Doubt += bad / (good + bad) / float64(len(f.points))
			forces, deviations = append(forces, p), append(deviations, sd)
		}
		slices.Sort(forces)
		slices.Sort(deviations)
		r.Predicted = quantile(forces, 0.5)
		sd := quantile(deviations, 0.5)
		half := 1.96 * math.Hypot(sd, (quantile(forces, 0.84)-quantile(forces, 0.16))/2)
		r.Low, r.High = max(0, r.Predicted-half), r.Predicted+half
		if !d.NoGo {
			r.Deviation = (d.Force - r.Predicted) / sd
		}
		r.Outlier = r.Doubt > 0.5
		f.Residuals = append(f.Residuals, r)
	}
	return nil
}

// remark says what a reader must know of the fit.
func (f *Fit) remark(data []datum) {
	say := func(format string, v ...any) { f.Remarks = append(f.Remarks, unit.Textf(format, v...)) }
	for _, r := range f.Residuals {
		if r.Outlier {
			where := ""
			if r.Line > 0 {
				where = fmt.Sprintf(" on line %d", r.Line)
			}
			say("coupon %s of %s%s is an outlier: %v measured, %v expected (%v to %v); it hardly counts",
				r.Coupon, r.Latch, where, unit.Force.Of(r.Force), unit.Force.Of(r.Predicted), unit.Force.Of(r.Low), unit.Force.Of(r.High))
		}
	}
	if f.Effective < fewestPoints {
		say("the measurements contradict the model or each other so much that the intervals are rough (worth %.0f points)", f.Effective)
	}
	if f.Correlation < -0.7 {
		say("friction and stiffness show together only: their product is known, each alone hardly better than by the table")
	}
	for i, e := range f.Offsets {
		sizes := map[float64]bool{}
		for _, d := range data {
			if d.latch == i {
				sizes[d.size] = true
			}
		}
		if len(sizes) < 2 {
			say("latch %s was measured at one size or none: its offset rests on the prior", e.Name)
		}
	}
	for _, e := range append([]Estimate{f.Friction, f.Stiffness}, f.Offsets...) {
		if e.Value < e.PriorLow || e.Value > e.PriorHigh {
			say("%s lies outside what the table lets expect, %v to %v: check the gauge, the unit and the material", e.Name, e.Unit.Of(e.PriorLow),
				e.Unit.Of(e.PriorHigh))
		}
	}
}

// A Band is the force of a latch at one size by a fit.
type Band struct {
	Size           float64 // as drawn [mm]
	Low, Mid, High float64 // 95 % of the force of the mean pair, and its median [N]
	P5, P95        float64 // of single pairs [N]
	Loose          float64 // share of pairs without interference [1]
}

// Band gives the force of so many joints of a latch in the job's own part, drawn with a
// size [mm]. ok is false for a latch that the model has not, or a
// size that is none.
func (f *Fit) Band(latch string, size float64, places int) (b Band, ok bool) {
	m := f.model
	i := slices.IndexFunc(m.latches, func(s subject) bool { return s.latch.ID == latch })
	if i < 0 || places < 1 || !(size >= -5 && size <= 50) {
		return Band{}, false
	}
	s := &m.latches[i]
	var mean, single []float64
	for k, t := range f.points {
		g := m.gripAt(t, i, inJob)
		p, sd := m.expect(&g, s, size, m.offsetOf(t, i), scatterOf(t), float64(places), false)
		mean = append(mean, p)
		single = append(single, max(0, p+sd*evenNormal(k, len(f.points))))
		b.Loose += normalCDF(-(size+m.offsetOf(t, i))/(s.own()*scatterOf(t)+1e-12)) / float64(len(f.points))
	}
	slices.Sort(mean)
	slices.Sort(single)
	b.Size = size
	b.Low, b.Mid, b.High = quantile(mean, 0.025), quantile(mean, 0.5), quantile(mean, 0.975)
	b.P5, b.P95 = quantile(single, 0.05), quantile(single, 0.95)
	return b, true
}

// evenNormal gives standard normal values that fill their range evenly and in no order
// that the points have: the golden ratio's sequence through the inverse of the normal.
func evenNormal(k, n int) float64 {
	const golden = 0.6180339887498949
	_, u := math.Modf((float64(k) + 0.5) * golden)
	u = max(0.25/float64(n), min(1-0.25/float64(n), u))
	return math.Sqrt2 * math.Erfinv(2*u-1)
}
