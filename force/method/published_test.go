package method

import (
	"math"
	"testing"
)

// TestPublished holds the formulas against check values written down elsewhere.
// mark: read, memory or own, that of formula or answer, the weaker. check:
// published_answer, cross_checked (by hand or another route), or self (a regression
// value only).
func TestPublished(t *testing.T) {
	for _, c := range published(t) {
		t.Run(c.id, func(t *testing.T) {
			t.Logf("%s; %s; %s; want %g, got %g", c.source, c.mark, c.check, c.want, c.got)
			if !(math.Abs(c.got-c.want) <= c.relTol*math.Abs(c.want)) {
				t.Errorf("got %g, want %g within %g", c.got, c.want, c.relTol)
			}
		})
	}
}

type entry struct {
	id, source, mark, check string
	want, got, relTol       float64
}

func published(t *testing.T) []entry {
	t.Helper()
	var out []entry
	add := func(id, source, mark, check string, want, got, relTol float64) {
		out = append(out, entry{id, source, mark, check, want, got, relTol})
	}
	one := func(x float64, ok bool) float64 {
		t.Helper()
		if !ok {
			t.Fatal("refused an argument that is in range")
		}
		return x
	}

	const en = "EN 1005-3:2002+A1:2008 Table 1 and zones; multipliers 4.2.2"
	for _, z := range []struct {
		id                                                          string
		base, perMinute, minutes, hours, mf, md, reduced, good, bad float64
	}{
		{"en-seated-down-line", ArmDownSeated, 6, 0.02, 7.5, 0.5, 0.5, 15, 7.5, 10.5},
		{"en-seated-down-occasional", ArmDownSeated, 0.2, 0.02, 1, 1, 1, 60, 30, 42},
		{"en-standing-push-line", BodyPush, 6, 0.02, 7.5, 0.5, 0.5, 40, 20, 28},
		{"en-standing-push-occasional", BodyPush, 0.2, 0.02, 1, 1, 1, 160, 80, 112},
		{"en-standing-push-batch", BodyPush, 1, 0.03, 1.5, 0.8, 0.8, 102.4, 51.2, 71.68},
		{"en-standing-pull-lever-line", BodyPull, 6, 0.02, 7.5, 0.5, 0.5, 29, 14.5, 20.3},
		{"en-standing-pull-lever-occasional", BodyPull, 0.2, 0.02, 1, 1, 1, 116, 58, 81.2},
		{"en-long-hold-line", ArmDownSeated, 6, 0.08, 7.5, 0.2, 0.5, 6, 3, 4.2},
	} {
		got, ok := ZoneOf(z.base, z.perMinute*60, z.minutes*60, z.hours)
		if !ok {
			t.Fatalf("%s: refused", z.id)
		}
		add(z.id+" m_v", en, "memory", "self", 0.8, got.Speed, 1e-3)
		add(z.id+" m_f", en, "memory", "self", z.mf, got.Frequency, 1e-3)
		add(z.id+" m_d", en, "memory", "self", z.md, got.Duration, 1e-3)
		add(z.id+" F_Br", en, "memory", "self", z.reduced, got.Reduced, 1e-3)
		add(z.id+" recommended", en, "memory", "self", z.good, got.Recommended, 1e-3)
		add(z.id+" avoid", en, "memory", "self", z.bad, got.Avoid, 1e-3)
	}

	const annex = "EN 1005-3:2002 Annex A.3.3 and A.4 as printed in its identical adoption GOST R EN 1005-3-2010, p. 10"
	add("en-annexA-professional", annex, "read", "published_answer", 200, one(StrengthPercentile(5.45, 0.30, 0.30)), 0.01)
	add("en-annexA-domestic", annex, "read", "published_answer", 126, one(StrengthPercentile(5.45, 0.30, 0.02)), 0.01)
	add("en-annexA-z professional", annex, "read", "cross_checked", 0.5244, -one(NormalQuantile(0.3)), 5e-4)
	add("en-annexA-z domestic", annex, "read", "cross_checked", 2.0537, -one(NormalQuantile(0.02)), 5e-4)
	add("thumb-sex-ratio", "Choi, Kim, Shim, Kong 2020, Applied Sciences 10(1) 194, abstract; arithmetic on its means", "read", "published_answer", 73.6, 100*100.6/136.7, 1e-3)
	const thumb = "mean Choi et al. 2020 (read), spread 25 % assumed, log-normal as EN 1005-3 Annex A"
	m, s, ok := LogMoments(100.6, 0.25)
	if !ok {
		t.Fatal("thumb moments refused")
	}
	add("thumb-percentiles P30", thumb, "own", "cross_checked", 85.77, one(StrengthPercentile(m, s, 0.30)), 1e-3)
	add("thumb-percentiles P15", thumb, "own", "cross_checked", 75.61, one(StrengthPercentile(m, s, 0.15)), 1e-3)
	add("thumb-percentiles P5", thumb, "own", "cross_checked", 65.09, one(StrengthPercentile(m, s, 0.05)), 1e-3)
	add("thumb base in the table", thumb+", rounded down", "own", "cross_checked", 75.61, HandActions()[0].Base, 0.01)
	add("hose-mvf", "Ergonomics 57(9) 2014, doi 10.1080/00140139.2014.924575, abstract; both palms take its rounded value", "read", "cross_checked", 202.2, HandActions()[3].Base, 0.015)
	add("palm-strike-overshoot", "Hausmanninger et al. 2023, J. Applied Biomechanics 39(4) 246-253, abstract; arithmetic", "read", "published_answer", 2.73, 600.0/220, 5e-3)

	const potvin = "Potvin 2012, Human Factors 54(2) 175-188"
	add("mae-dc-10", potvin, "memory", "self", 0.425, one(AcceptableEffort(DutyCycle(360, 1))), 5e-3)
	add("mae-dc-2", potvin, "memory", "self", 0.609, one(AcceptableEffort(DutyCycle(72, 1))), 5e-3)
	add("mae-once-a-shift", potvin, "memory", "cross_checked", 1, one(AcceptableEffort(1.0/28800)), 1e-4)
	const cz = "Czech decree 361/2007 Sb. as tabled in a thesis; arithmetic"
	add("cz-10pct-rate", cz, "read", "published_answer", 41, 19800.0/480, 0.01)
	add("cz-50pct-rate", cz, "read", "cross_checked", 5.625, 2700.0/480, 1e-3)
	hal := one(HandActivity(0.1, 10))
	add("hal-6-per-min", "Radwin et al. 2015", "memory", "self", 0.64, hal, 0.015)
	limit, action, ok := PeakForceLimits(0.64)
	if !ok {
		t.Fatal("peak force limits refused")
	}
	add("hal-npf TLV", "ACGIH hand activity 2018", "memory", "self", 5.24, limit, 2e-3)
	add("hal-npf AL", "ACGIH hand activity 2018", "memory", "self", 3.24, action, 2e-3)

	ata, rta, index, ok := Ocra{0.35, 1, 1, 1, 0.6, 1}.Index(20, 420)
	if !ok {
		t.Fatal("OCRA refused")
	}
	const ocra = "ISO 11228-3:2007 Table 2; multipliers"
	add("ocra-index ATA", ocra, "memory", "self", 8400, ata, 1e-3)
	add("ocra-index RTA", ocra, "memory", "self", 2646, rta, 1e-3)
	add("ocra-index", ocra, "memory", "self", 3.175, index, 1e-3)

	const hiley = "Hiley formula, geotechnical textbook page"
	add("mallet-energy", "elementary mechanics, by hand", "own", "cross_checked", 2025, BlowEnergy(0.45, 3), 5e-4)
	add("mallet-drop-speed", "free fall", "own", "cross_checked", 1.9806, DropSpeed(200), 1e-3)
	add("mallet-oz light", "rubber mallet 12 to 28 oz; generic heads in kg", "read", "cross_checked", 12*0.028349523, GenericMallets()[0].Mass, 5e-3)
	add("mallet-oz heavy", "rubber mallet 12 to 28 oz; generic heads in kg", "read", "cross_checked", 28*0.028349523, GenericMallets()[2].Mass, 5e-3)
	add("blow-efficiency", hiley, "read", "cross_checked", 0.79, one(BlowEfficiency(0.45, 0.15, 0.4)), 1e-3)
	add("blow-efficiency-plastic", hiley, "read", "cross_checked", 0.75, one(BlowEfficiency(0.45, 0.15, 0)), 1e-3)
	add("blow-efficiency-heavy-anvil", hiley, "read", "cross_checked", 0.44, one(BlowEfficiency(0.45, 0.9, 0.4)), 1e-3)
	add("blow-to-driven-mass", "momentum and restitution", "own", "cross_checked", 0.3675, one(DrivenShare(0.45, 0.15, 0.4)), 1e-3)
	const shigley = "Shigley, Mechanical Engineering Design"
	add("impact-force-energy", shigley+", impact", "memory", "cross_checked", 1000, PeakOfBlow(1000, 500), 5e-4)
	add("impact-force-speed force", shigley+", impact; re-done by time steps", "memory", "cross_checked", 600, PeakOfBlow(BlowEnergy(0.45, 2), 200), 2e-3)
	add("impact-force-speed contact", shigley+", impact; re-done by time steps", "memory", "cross_checked", 4.712e-3, one(ContactTime(0.45, 200)), 2e-3)
	add("stiffness-series", "springs in series", "own", "cross_checked", 142.857, one(SeriesStiffness(500, 200)), 1e-4)
	blows, ok := BlowsNeeded(3000, 0.79*2025)
	if !ok {
		t.Fatal("blows refused")
	}
	add("blow-count", "work balance", "own", "self", 2, float64(blows), 0)

	add("screw-textbook torque", shigley+", Example 8-1", "memory", "published_answer", 26180, one(ScrewTorque(6400, 30, 8, 0.08, 0, 0.08, 40)), 3e-3)
	add("screw-textbook efficiency", shigley+", Example 8-1", "memory", "published_answer", 0.311, one(ScrewEfficiency(30, 8, 0.08, 0, 0.08, 40)), 3e-3)
	half := 15 * math.Pi / 180
	torque := one(ScrewTorque(1000, 18, 4, 0.15, half, 0, 0))
	add("vise-clamp-friction force", shigley+", eq. 8-5; inputs own", "own", "self", 7260, 1000*100*150/torque, 5e-3)
	add("vise-clamp-friction efficiency", shigley+", eq. 8-5; inputs own", "own", "self", 0.308, one(ScrewEfficiency(18, 4, 0.15, half, 0, 0)), 5e-3)
	add("vise-clamp-eta", "2 pi T eta / lead, by hand", "own", "cross_checked", 4712.4, one(ClampForce(15000, 5, 0.25)), 5e-4)
	add("hand-tight clamp", "100 N on 150 mm, lead 5, efficiency 0.25; the constant of this package", "own", "cross_checked", handTight, one(ClampForce(15000, 5, 0.25)), 1e-3)
	add("vise-ideal-page", "a woodworker's vise page, without friction", "read", "published_answer", 1000*poundForce, one(ClampForce(10*poundForce*4*25.4, 25.4/4, 1)), 0.01)

	add("tons short", "definition", "own", "cross_checked", 8896.44, ShortTon, 1e-5)
	add("tons metric", "definition", "own", "cross_checked", 9806.65, MetricTon, 1e-5)
	add("tons long", "definition", "own", "cross_checked", 9964.02, LongTon, 1e-5)
	add("tons metric over short", "definition", "own", "cross_checked", 1.10231, MetricTon/ShortTon, 1e-5)
	add("lever-ratio", "rack and pinion", "own", "cross_checked", 20, one(LeverRatio(400, 20, 1)), 1e-4)
	add("pinion-radius", "gear geometry", "own", "cross_checked", 18, PitchRadius(3, 12), 5e-4)
	add("pinion-radius travel", "gear geometry; a turn swings the lever by 2 pi", "own", "cross_checked", 2*math.Pi, one(LeverSwing(113.1, PitchRadius(3, 12))), 5e-4)
	add("rating-effort-read-press", "owner's notes on a generic 1-ton press, 20:1", "read", "cross_checked", 444.8, one(LeverEffort(ShortTon, 20, 1)), 5e-4)
	add("lever-effort", "F/(ratio eta)", "own", "cross_checked", 58.82, one(LeverEffort(1000, 20, 0.85)), 5e-4)
	add("ram-from-en-occasional", "recommended pull times ratio and efficiency", "own", "self", 58, one(LeverEffort(986, 20, 0.85)), 1e-3)
	add("ram-from-en-line", "recommended pull times ratio and efficiency", "own", "self", 14.5, one(LeverEffort(246.5, 20, 0.85)), 1e-3)
	add("ram-from-mae-line", "Potvin at duty cycle 0.10 on 145 N", "own", "self", BodyPull*0.425, one(LeverEffort(1047.6, 20, 0.85)), 1e-3)
	add("compound-ratio", "two stages", "own", "self", 40, one(LeverRatio(400, 20, 2)), 1e-4)
	swing := one(LeverSwing(10, 20))
	add("lever-swing angle", "stroke over pitch radius", "own", "cross_checked", 28.65, swing*180/math.Pi, 5e-4)
	add("lever-swing travel", "stroke over pitch radius", "own", "cross_checked", 200, swing*400, 5e-4)
	side, lost, push, ok := RamBinding(1000, 20, 100, 0.15)
	if !ok {
		t.Fatal("binding refused")
	}
	const guide = "moment balance on a two-point guide"
	add("ram-eccentric side", guide, "own", "cross_checked", 200, side, 1e-3)
	add("ram-eccentric lost", guide, "own", "cross_checked", 0.06, lost, 1e-3)
	add("ram-eccentric push", guide, "own", "cross_checked", 1063.8, push, 1e-3)
	add("ram-binding-2to1", "2:1 rule of plain linear bearings at mu 0.25", "read", "published_answer", 2, bindsAt(100, 0.25)/100, 1e-3)
	tilt, lateral, ok := RamTilt(0.05, 100, 80)
	if !ok {
		t.Fatal("tilt refused")
	}
	add("ram-tilt", "play over guide", "own", "cross_checked", 0.5e-3, tilt, 1e-3)
	add("ram-tilt lateral", "play over guide", "own", "cross_checked", 0.04, lateral, 1e-3)
	tipping, holding := TippingMoments(200, 450, 15, 75)
	add("bench-tip tipping", "moment balance", "own", "cross_checked", 90000, tipping, 1e-3)
	add("bench-tip holding", "moment balance", "own", "cross_checked", 11030, holding, 1e-3)
	return out
}

// bindsAt searches the eccentricity from which the ram binds [mm].
func bindsAt(guide, mu float64) float64 {
	lo, hi := 0.0, 10*guide
	for range 60 {
		mid := (lo + hi) / 2
		if _, _, _, ok := RamBinding(1, mid, guide, mu); ok {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}
