package solve

import (
	"cmp"

	"ramnest/fixture"
	"ramnest/fixture/envelope"
	"ramnest/fixture/strength"
	"ramnest/force"
	"ramnest/force/method"
	"ramnest/force/planar"
)

// demand is what a step asks of a method, as far as it is known without tooling.
// The lower part carries what earlier steps pressed on, so it is as brittle and as
// easily shocked as that.
func (s *Solution) demand(i int) method.Demand {
	st := &s.Steps[i]
	r := st.Result
	d := method.Demand{
		DesignForce: r.Design, Jammed: r.Jammed, NoP95: r.NoP95, Tilted: r.Tilted, P50: r.P50, Worst: r.Worst, PeakForce: r.Peak,
		Work: r.Work, SeatForce: r.SeatForce, Stroke: r.Stroke,
		RatePerHour: s.Job.RatePerHour, HoursPerDay: s.Job.HoursPerShift, ActionSeconds: s.Job.ActionSeconds,
		ThrustWander: r.ThrustWander, ShockLimit: s.Job.ShockLimit,
		UpperMass: mass(st.UpperEnvelope, st.UpperMaterial),
	}
	for k := range s.Steps[:i+1] {
		if k < i && s.Steps[k].Lower != st.Lower {
			continue
		}
		for _, p := range []struct {
			brittle, shock, electronics bool
		}{
			{s.Steps[k].Lower.Brittle, s.Steps[k].Lower.ShockSensitive, s.Steps[k].Lower.Electronics()},
			{s.Steps[k].Upper.Brittle, s.Steps[k].Upper.ShockSensitive, s.Steps[k].Upper.Electronics()},
		} {
			d.Brittle = d.Brittle || p.brittle
			d.ShockSensitive = d.ShockSensitive || p.shock
			d.Electronics = d.Electronics || p.electronics
		}
	}
	for k, l := range st.Latches {
		d.Permanent = d.Permanent || l.Use != "releasable" || r.Latches[k].SelfLocking
		d.AcrossLayers = d.AcrossLayers || l.AcrossLayers(st.LowerMaterial, st.UpperMaterial)
	}
	return d
}

// sized is the demand with the sizes of the tooling.
func (s *Solution) sized(i int, t fixture.Tooling) method.Demand {
	d := s.demand(i)
	a := t.Anvils[i]
	n := t.Nests[a.Nest]
	st := &s.Steps[i]
	d.NestSize = [3]float64{n.Size[0], n.Size[1], n.Body}
	d.Thrust = planar.Point{X: st.Result.Thrust.X - n.Middle.X, Y: st.Result.Thrust.Y - n.Middle.Y}
	seated := max(st.LowerEnvelope.Max[2], st.UpperEnvelope.Max[2])
	d.PartStackHeight = max(0, seated-n.Top)
	// Both heights together are what stands between the nest and the ram.
	d.AnvilHeight = a.Above - n.Top - d.PartStackHeight
	if n.Feet {
		// The anvil goes in over the guide pins of a nest that stays where it is.
		pins := n.Shift[2] + n.Size[2] - (n.Top - n.Body)
		d.AnvilHeight = max(d.AnvilHeight, pins+a.Size[2]+overPins-n.Body-d.PartStackHeight)
	}
	d.AnvilMass = a.Mass
	d.JawThickness = cmp.Or(s.Job.Fixture.JawThickness, 15)
	limit, _ := strength.ContactLimitOf(s.Material.Name, s.Material.Process)
	d.AnvilBearing = limit.Pressure
	return d
}

// overPins is the play over the guide pins when the anvil goes in [mm] (own).
const overPins = 5

// mass gives the mass of a part [kg], 0 where its surface is not closed or inside out, so
// that nobody knows its volume.
func mass(e *envelope.Envelope, m force.Material) float64 {
	v := e.Volume()
	if v <= 0 || !e.Closed() {
		return 0
	}
	return v * m.Density.Value * 1e-6
}
