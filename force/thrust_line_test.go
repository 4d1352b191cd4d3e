package force

import (
	"math"
	"testing"

	"ramnest/force/planar"
)

// lopsided is a job whose thrust line wanders: four kinds at four corners.
func lopsided() Assembly {
	a := mixed24()
	for i, p := range []planar.Point{{X: 30, Y: 20}, {X: -30, Y: 20}, {X: -30, Y: -20}, {X: 30, Y: -20}} {
		a.Latches[i].At = []planar.Point{p}
	}
	a.Latches[0].Annular.Undercut = 0.1
	a.Latches[0].Annular.UndercutTol = ptr(0.02)
	a.Latches[1].Ball.MouthDiameter = 5.85
	a.Latches[2].Engage = ptr(4.5)
	return a
}

// TestTiltAgainstADenseScan: moment, thrust line and its wandering, latch by latch at
// 20,000 lifts.
func TestTiltAgainstADenseScan(t *testing.T) {
	for _, a := range []Assembly{lopsided(), mixed()} {
		r := mustAnalyse(t, a)
		about := planar.Point{X: 3, Y: -4}
		var most, wander float64
		at := func(lift float64) (f float64, c planar.Point) {
			for k, l := range r.Latches {
				each := l.Curve.At(lift)
				for _, p := range a.Latches[k].At {
					f, c.X, c.Y = f+each, c.X+each*p.X, c.Y+each*p.Y
				}
			}
			return f, planar.Point{X: c.X / f, Y: c.Y / f}
		}
		for i := range 20000 {
			f, c := at(r.Stroke * (float64(i) + 0.5) / 20000)
			if f <= 0 {
				continue
			}
			most = max(most, f*math.Hypot(c.X-about.X, c.Y-about.Y))
			if f >= r.Peak/5 {
				wander = max(wander, math.Hypot(c.X-r.Thrust.X, c.Y-r.Thrust.Y))
			}
		}
		if got := r.TiltAbout(about); got < 0.998*most || got > 1.002*most {
			t.Errorf("largest moment %g N mm, scan %g", got, most)
		}
		if r.ThrustWander < 0.99*wander {
			t.Errorf("thrust line wanders %g mm, scan %g", r.ThrustWander, wander)
		}
		f, c := at(r.PeakLift)
		near(t, "force at the peak", f, r.Peak, 1e-6)
		near(t, "thrust x", r.Thrust.X, c.X, 1e-6)
		near(t, "thrust y", r.Thrust.Y, c.Y, 1e-6)
	}
}

// TestTiltMomentAboutTheMeanPlace: three pins, one with twice the interference.
func TestTiltMomentAboutTheMeanPlace(t *testing.T) {
	a := pinJob()
	off := a.Latches[0]
	tight := *off.PressFit
	tight.Interference = 0.1
	off.ID, off.At, off.PressFit = "off", []planar.Point{{X: 0, Y: 30}}, &tight
	a.Latches = append(a.Latches, off)
	r := mustAnalyse(t, a)
	single := r.Latches[0].PeakEach
	// Their force-weighted centre, and the mean place at y = 10.
	y := 30 * r.Latches[1].PeakEach / (2*single + r.Latches[1].PeakEach)
	near(t, "thrust y", r.Thrust.Y, y, 1e-9)
	near(t, "tilt", r.TiltMoment, r.Peak*(y-10), 1e-9)
}

// TestWanderCountsFromAFifthOfThePeak: a weak ring at the side that is through before
// the strong one begins.
func TestWanderCountsFromAFifthOfThePeak(t *testing.T) {
	for share, counts := range map[float64]bool{0.19: false, 0.21: true} {
		a := capJob()
		weak := a.Latches[0]
		v := *weak.Annular
		weak.ID, weak.At, weak.Annular, weak.Engage = "weak", []planar.Point{{X: 40, Y: 0}}, &v, ptr(8.0)
		a.Latches = append(a.Latches, weak)
		for range 30 { // the undercut that makes the share
			r := mustAnalyse(t, a)
			v.Undercut *= share * r.Latches[0].PeakEach / r.Latches[1].PeakEach
		}
		if r := mustAnalyse(t, a); (r.ThrustWander > 30) != counts {
			t.Errorf("a fifth of the peak and %g: wanders %g mm", share, r.ThrustWander)
		}
	}
}
