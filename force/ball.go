package force

import (
	"math"

	"ramnest/force/fault"
)

// A Ball is a ball on a stem that snaps through a ring-shaped mouth into a
// socket. The mouth may be slotted into fingers. The ball is taken as rigid.
type Ball struct {
	Socket         string   `yaml:"socket" oneof:"lower upper" required:"true"` // the part with the socket
	BallDiameter   float64  `yaml:"ball_diameter" unit:"mm" required:"true"`    // D [mm]
	BallTol        *float64 `yaml:"ball_tol" unit:"mm"`                         // plus or minus [mm]; left out: the process tolerance
	MouthDiameter  float64  `yaml:"mouth_diameter" unit:"mm" required:"true"`   // d, inside the lip [mm]
	MouthTol       *float64 `yaml:"mouth_tol" unit:"mm"`                        // plus or minus [mm]; left out: the process tolerance
	OuterDiameter  float64  `yaml:"outer_diameter" unit:"mm" required:"true"`   // of the socket at its mouth [mm]
	WallTol        *float64 `yaml:"wall_tol" unit:"mm"`                         // plus or minus on the socket's wall [mm]; left out: half the floor of the process tolerance
	StemDiameter   float64  `yaml:"stem_diameter" unit:"mm"`                    // [mm]; 0: not checked
	SocketDiameter float64  `yaml:"socket_diameter" unit:"mm"`                  // inside, behind the lip [mm]; 0: not checked
	SocketDepth    float64  `yaml:"socket_depth" unit:"mm"`                     // from the lip to the floor that stiffens the socket [mm]; 0: long
	SeatDepth      float64  `yaml:"seat_depth" unit:"mm"`                       // of the ball's centre below the lip when home [mm]; 0: where the lip comes free
	Land           *float64 `yaml:"land" unit:"mm"`                             // crest of the lip along the axis [mm]; left out: a sharp lip that bears over a quarter of the wall
	EntryAngle     *float64 `yaml:"entry_angle" unit:"deg"`                     // half-angle of an entry cone to the press axis [rad]; left out: a sharp lip

	Slots     int     `yaml:"slots" unit:"none"`    // number of slots, and of fingers; 0: a closed ring
	SlotWidth float64 `yaml:"slot_width" unit:"mm"` // [mm]
	SlotDepth float64 `yaml:"slot_depth" unit:"mm"` // from the lip [mm]
}

// Room to start from round a ball and round its stem, radial [mm]; common
// practice, no source: expect to print it more than once.
const (
	ballRoom = 0.13
	stemRoom = 0.06
)

// Validate returns what is wrong with the joint, field paths relative to it.
func (b Ball) Validate() []fault.Fault {
	out := sideFault("socket", b.Socket)
	size := lengthFault("ball_diameter", b.BallDiameter, 0.5, 500)
	out = append(out, size...)
	if len(size) > 0 {
		return out
	}
	d := b.BallDiameter
	mouth := lengthFault("mouth_diameter", b.MouthDiameter, 0.8*d, d-smallest)
	out = append(out, mouth...)
	for _, t := range []struct {
		field string
		v     *float64
	}{{"ball_tol", b.BallTol}, {"mouth_tol", b.MouthTol}, {"wall_tol", b.WallTol}} {
		if t.v != nil {
			out = append(out, lengthFault(t.field, *t.v, 0, 0.2*d)...)
		}
	}
	out = append(out, lengthFault("outer_diameter", b.OuterDiameter, 1.002*d, 20*d)...)
	if b.StemDiameter != 0 && len(mouth) == 0 {
		out = append(out, lengthFault("stem_diameter", b.StemDiameter, 0.1, b.MouthDiameter)...)
	}
	if b.SocketDiameter != 0 {
		out = append(out, lengthFault("socket_diameter", b.SocketDiameter, d, max(d, b.OuterDiameter*0.998))...)
	}
	if b.SocketDepth != 0 {
		out = append(out, lengthFault("socket_depth", b.SocketDepth, d/4, maxLength)...)
	}
	if b.SeatDepth != 0 {
		out = append(out, lengthFault("seat_depth", b.SeatDepth, 0.01, maxLength)...)
	}
	if b.Land != nil {
		most := d / 2
		if b.SocketDepth > 0 {
			most = min(most, b.SocketDepth/2)
		}
		out = append(out, lengthFault("land", *b.Land, 0, most)...)
	}
	if b.EntryAngle != nil {
		out = append(out, angleFault("entry_angle", *b.EntryAngle, 2, 80)...)
	}
	if len(out) > 0 {
		return out
	}
	if b.Slots == 0 {
		if b.SlotWidth != 0 || b.SlotDepth != 0 {
			out = append(out, countFault("slots", 0, 2, 48)...)
		}
		return out
	}
	f := b.fingers()
	out = append(out, fingerFaults("", f)...)
	return append(out, lengthFault("slot_depth", b.SlotDepth, (f.outer-f.inner)/2, maxLength)...)
}

func (b Ball) fingers() fingers {
	return fingers{count: b.Slots, inner: b.MouthDiameter / 2, outer: b.OuterDiameter / 2, slot: b.SlotWidth, reach: b.SlotDepth,
		outward: true}
}

// LipBearing gives the width over which the lip bears, c [mm]: the land, if the job
// states one, else a quarter of the wall at the mouth. A printed lip is no knife edge,
// and a wide one makes the mouth stiffer: a third from 0.1 to 0.4 of the wall. Source:
// own; less than 0.03 of the wall is not told apart, see [Tube.LocalGive].
func (b Ball) LipBearing() float64 {
	if b.Land != nil {
		return max(*b.Land, leastBand*(b.OuterDiameter-b.MouthDiameter)/2)
	}
	return (b.OuterDiameter - b.MouthDiameter) / 8
}

// mouth is the socket seen as a shell, loaded at its end over the lip.
func (b Ball) mouth(m Material) Tube {
	t := Tube{Radius: (b.OuterDiameter + b.MouthDiameter) / 4, Wall: (b.OuterDiameter - b.MouthDiameter) / 2, Modulus: m.Modulus.Value,
		Poisson: m.Poisson.Value}
	t.Band = b.LipBearing()
	t.Mouth = t.Band / 2
	if b.SocketDepth > 0 {
		t.Far, t.Beyond = Floored, b.SocketDepth-t.Mouth
	}
	return t
}

// BallContactAngle gives the latitude at which a ball first touches a sharp lip,
// phi0 = acos(d/D) [rad]. d: mouth, D: ball diameter [mm], d below D. The local
// lead angle of the ball there is phi0 itself. Source: own, geometry.
func BallContactAngle(mouth, ballDiameter float64) float64 { return math.Acos(mouth / ballDiameter) }

// BallStroke gives the way of a ball from first contact with a sharp lip to its
// equator, sqrt(D^2 - d^2)/2 [mm]. Arguments and source as [BallContactAngle].
func BallStroke(mouth, ballDiameter float64) float64 {
	return math.Sqrt(ballDiameter*ballDiameter-mouth*mouth) / 2
}

// ConeContact gives heights of the ball's centre above the lip [mm]: at first
// contact with an entry cone, and where the contact goes over to the lip.
//
//	z1 = (R/cos ac - d/2)/tan ac,  z2 = R sin ac
//
// angle: half-angle of the cone ac [rad], below [BallContactAngle]; a wider cone
// is never touched. Source: own, geometry.
func ConeContact(mouth, ballDiameter, angle float64) (first, hand float64) {
	r := ballDiameter / 2
	return (r/math.Cos(angle) - mouth/2) / math.Tan(angle), r * math.Sin(angle)
}

// coned says whether the entry cone is touched.
func (b Ball) coned() bool {
	return b.EntryAngle != nil && *b.EntryAngle < BallContactAngle(b.MouthDiameter, b.BallDiameter)
}

// printed is the joint with its mouth as it comes out; hold is how much less of it
// counts for what holds [mm]. The wall that opens is taken as drawn all the same: its
// tolerance is one of its own.
func (b Ball) printed(socket Material) (p Ball, hold float64) {
	if b.MouthTol != nil {
		return b, 0
	}
	s := sizing{}
	s.hole(socket, b.MouthDiameter)
	b.MouthDiameter -= s.tight
	return b, s.hold
}

// ready makes the joint ready to be evaluated.
func (b Ball) ready(socket, stem Material, use string) joint {
	made, hold := b.printed(socket)
	t := b.mouth(socket)
	d := b.MouthDiameter
	j := joint{
		path: ball, outerIsLower: b.Socket == "lower",
		size: b.BallDiameter - made.MouthDiameter, drawn: b.BallDiameter - d, half: 0.5, fromOuter: socket.ToleranceOn(d),
		fromInner: stem.ToleranceOn(b.BallDiameter),
		outer: member{stiffness: RingStiffness(t, b.OuterDiameter, d, true), strain: 2 / d, limit: socket.PermittedHoop(use).Value,
			wall: wallShare(b.WallTol, socket, t.Wall)}.follow(socket, 2/d, bodyReserve),
		inner: member{limit: 1},
		ballR: b.BallDiameter / 2, hold: hold,
	}
	if b.MouthTol != nil {
		j.fromOuter = *b.MouthTol
	}
	if b.BallTol != nil {
		j.fromInner = *b.BallTol
	}
	j.worst = j.fromOuter + j.fromInner
	if b.Land != nil {
		j.land = *b.Land
	}
	end := t
	end.Far, end.Band = Long, 0
	_, r0, _, _ := GuideRatio(end, b.OuterDiameter, d, true, d, GeometricFactorOuter(d, b.OuterDiameter, socket.Poisson.Value))
	j.modelUp = math.Log(memberModel(t))
	// The guide speaks of a load on a line.
	r0 *= j.outer.stiffness / RingStiffness(Tube{Radius: t.Radius, Wall: t.Wall, Modulus: t.Modulus, Poisson: t.Poisson}, b.OuterDiameter, d,
		true)
	j.modelDown = max(j.modelUp, math.Log(r0))
	if b.Slots > 0 {
		j.outer = b.fingers().soften(j.outer, socket, use)
	}
	j.lever = max(0, RingLever(t, b.OuterDiameter, d, true))
	if j.outer.law == armWall {
		j.lever = b.fingers().lever(j.size / 2)
		j.modelDown = max(j.modelUp, math.Log(b.fingers().baseFactor()))
		j.thin = thinness(socket, b.fingers().outer-b.fingers().inner)
	}
	from := BallStroke(made.MouthDiameter, b.BallDiameter)
	j.seated = b.SeatDepth
	if b.SeatDepth == 0 {
		j.seated = from + j.land
	}
	if made.coned() {
		j.alpha = *b.EntryAngle
		from, _ = ConeContact(made.MouthDiameter, b.BallDiameter, j.alpha)
	}
	j.stroke = from + j.seated
	return j
}

// swing is the room the socket needs while the ball passes.
func (b Ball) swing(l *Latch, outward float64, socket Material) Swing {
	z := l.Z
	t := b.mouth(socket)
	reach := math.Pi / Beta(t.Radius, t.Wall, t.Poisson)
	if b.SocketDepth > 0 {
		reach = min(reach, b.SocketDepth)
	}
	if b.Slots > 0 {
		reach = b.SlotDepth
	}
	s := Swing{Part: b.Socket, Outward: outward, Radius: b.OuterDiameter / 2, ZLow: z - reach, ZHigh: z}
	if b.Socket == "upper" {
		s.ZLow, s.ZHigh = z, z+reach
	}
	return s
}
