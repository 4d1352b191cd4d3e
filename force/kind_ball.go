package force

import (
	"math"
	"ramnest/force/unit"
)

func (b Ball) First() string               { return b.Socket }
func (b Ball) Opening() string             { return b.Socket }
func (b Ball) Carrier() string             { return "" }
func (b Ball) Snaps() bool                 { return true }
func (b Ball) Searched() bool              { return true }
func (b Ball) Play() float64               { return 0 }
func (b Ball) Aside() float64              { return 0 }
func (b Ball) Kept([]int) Kind             { return b }
func (b Ball) OnPlate() (Kind, string)     { return b, "" }
func (b Ball) Slotted() (Kind, unit.Text)  { return nil, unit.Text{} }
func (b Ball) Accept(v Visitor)            { v.Ball(b) }
func (b Ball) relations() []relation       { return nil }
func (b Ball) sizeKey() string             { return "mouth_diameter" }
func (b Ball) writtenAs(key string) string { return key }

func (b Ball) Stiffened(Material, float64) (Kind, string, float64) { return b, "", 0 }

func (b Ball) Assumed() (key string, text unit.Text) {
	if b.Land != nil {
		return "", unit.Text{}
	}
	return "land", unit.Textf("a sharp lip that bears over %v, a quarter of the wall", unit.Length.Of(b.LipBearing()).To(2))
}

func (b Ball) Size(socket, stem Material) Size {
	return sizeApart("ball_diameter less mouth_diameter", b.MouthDiameter, b.BallDiameter, b.MouthTol, b.BallTol, socket, stem)
}

func (b Ball) Resized(size float64, m Member) Kind {
	m.change(&b.MouthDiameter, &b.BallDiameter, size)
	return b
}

func (b Ball) Toleranced(tol float64) Kind {
	b.BallTol, b.MouthTol = each(tol), each(tol)
	return b
}

func (b Ball) Largest() (float64, bool) { return 0.2 * b.BallDiameter, false }

// Deeper of a ball is the difference of its stroke.
func (b Ball) Deeper(size, offset float64, m Member) float64 {
	free := func(b Ball) float64 {
		if b.MouthDiameter >= b.BallDiameter {
			return 0
		}
		return BallStroke(b.MouthDiameter, b.BallDiameter)
	}
	return free(b.Resized(max(1e-6, size+offset), m).(Ball)) - free(b)
}

func (b Ball) Footprint() Footprint {
	return Footprint{Radius: b.MouthDiameter / 2, Size: b.OuterDiameter / 2, Hole: true}
}

func (b Ball) AcrossLayers(socket, _ Material) bool {
	if b.Slots > 0 {
		return armAcross(socket)
	}
	return ringAcross(socket)
}

func (b Ball) Looser(share float64) (Kind, unit.Text) {
	b.MouthDiameter = b.BallDiameter - (b.BallDiameter-b.MouthDiameter)*share
	return b, unit.Textf("mouth %v", unit.Length.Of(b.MouthDiameter).To(4))
}

func (b Ball) Gentler(angle float64) (Kind, string, bool) {
	if !steeper(b.EntryAngle, angle) {
		return nil, "", false
	}
	b.EntryAngle = new(angle)
	return b, "entry_angle", false
}

func (b Ball) strengths(s *bounds) {
	share := 1.0
	if b.Slots > 0 {
		share = float64(b.Slots) * b.fingers().arc() / (2 * math.Pi)
	}
	s.pressed(share * math.Pi / 4 * (b.BallDiameter*b.BallDiameter - b.MouthDiameter*b.MouthDiameter))
	w := (b.OuterDiameter - b.MouthDiameter) / 2
	s.section("section of the socket", true, share*math.Pi*(b.OuterDiameter-w)*neck(w,
		(max(b.BallDiameter, b.SocketDiameter)-b.MouthDiameter)/2))
	if b.StemDiameter > 0 {
		s.section("section of the stem", false, math.Pi/4*b.StemDiameter*b.StemDiameter)
	}
}

func (b Ball) warn(w *warner) {
	if b.SocketDiameter > 0 && (b.SocketDiameter-b.BallDiameter)/2 < ballRoom-1e-9 {
		w.add(warnBallRoom, "room round the ball is %v; start near %v (common practice) and expect to iterate",
			unit.Length.Of((b.SocketDiameter-b.BallDiameter)/2), unit.Length.Of(ballRoom))
	}
	if b.StemDiameter > 0 && (b.MouthDiameter-b.StemDiameter)/2 < stemRoom-1e-9 {
		w.add(warnStemRoom, "room round the stem is %v; start near %v (common practice) and expect to iterate",
			unit.Length.Of((b.MouthDiameter-b.StemDiameter)/2), unit.Length.Of(stemRoom))
	}
	if b.EntryAngle != nil && !b.coned() {
		w.add(warnCone, "the ball meets the lip at %.3g deg, before an entry cone of %.3g deg is touched",
			BallContactAngle(b.MouthDiameter, b.BallDiameter)*degree, *b.EntryAngle*degree)
	}
	if b.Slots > 0 {
		w.fingers(b.fingers())
	}
}

func (b Ball) usual() []usualSize {
	return []usualSize{
		{"ball_diameter", "ball diameter", "ball joints", "mm", 2, 40, MarkPractice, b.BallDiameter},
		{"mouth_diameter", "undercut over ball diameter", "ball joints", "", 0.005, 0.15, MarkPractice, 1 - b.MouthDiameter/b.BallDiameter},
		{"outer_diameter", "wall of the socket", "ball joints", "mm", 0.4, 10, MarkPractice, (b.OuterDiameter - b.MouthDiameter) / 2},
	}
}
