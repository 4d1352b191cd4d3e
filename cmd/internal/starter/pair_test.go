package starter

import (
	"io"
	"math"
	"os"
	"strings"
	"testing"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/jobfile"
	"ramnest/fixture/coupon"
	"ramnest/fixture/envelope"
	"ramnest/fixture/mesh"
	"ramnest/fixture/witness"
	"ramnest/force"
	"ramnest/force/planar"
)

var pa12 = force.MaterialSpec{Material: "PA12", Process: "PBF", Build: "along"}

func rad(deg float64) float64 { return deg / 180 * math.Pi }

// written decodes the job that is written of a find.
func written(t *testing.T, f witness.Find) *job.File {
	t.Helper()
	text := FromPair(Answers{Number: "T-1", Title: "a: b", Date: "2026-11-25", Material: "PA12", Process: "PBF", Rate: "20"},
		Pair{Lower: "parts/a.stl", Upper: "parts/b.stl", Up: "-z", Move: [3]float64{-4.4, 0, 0}, Found: f})
	var j job.File
	doc, problems := jobfile.Decode("job.yaml", text, &j, jobfile.Options{})
	if problems = problems.And(doc.Problems(j.Validate())); len(problems) > 0 {
		t.Fatalf("%v\n%s", problems, text)
	}
	return &j
}

func peak(t *testing.T, l force.Latch) float64 {
	t.Helper()
	r, err := force.Analyse(force.Assembly{Lower: pa12, Upper: pa12, Latches: []force.Latch{l}, Draws: 200})
	if err != nil {
		t.Fatal(err)
	}
	return r.Peak
}

func couponLatches() map[string]force.Latch {
	arm := force.Cantilever{Flexes: "upper", Bends: "inward", Undercut: 0.8, MatingAngle: rad(30), ReturnAngle: rad(45), Length: 14, Thickness: 1.6, Width: 6, RootRadius: new(0.8)}
	taper, mate, segment := arm, arm, arm
	taper.TipThickness, taper.TipWidth, taper.RootRadius = 0.8, 3, nil
	mate.LeadIn = "mate"
	segment.Section, segment.Arc, segment.InnerRadius, segment.OuterRadius, segment.Thickness, segment.Width, segment.RootRadius = "ring_segment", rad(75), 8, 9.5, 0, 0, new(0.5)
	ring := force.Annular{Outside: "upper", JointDiameter: 32, Undercut: 0.5, MatingAngle: rad(20), ReturnAngle: rad(45), Land: 0.5, GrooveFloat: 0.3,
		OuterDiameter: 35.2, InnerDiameter: 28, EndDistance: 3, EndDistanceInner: new(7.0)}
	split := ring
	split.Split, split.Slots, split.SlotWidth, split.SlotDepth = "outer", 6, 1.2, 14
	ball := force.Ball{Socket: "lower", BallDiameter: 6, MouthDiameter: 5.6, OuterDiameter: 8.5, StemDiameter: 3.5, SocketDiameter: 6.4, Slots: 4, SlotWidth: 0.8, SlotDepth: 7}
	closed := ball
	closed.Slots, closed.SlotWidth, closed.SlotDepth, closed.MouthDiameter = 0, 0, 0, 5.8
	pin := force.PressFit{Outside: "lower", JointDiameter: 6, Interference: 0.1, OuterDiameter: 12, InnerDiameter: 2, EngagementLength: 5, LeadInAngle: new(rad(15)), BoreBeyond: new(2.0)}
	rib := force.CrushRib{Ribs: "lower", JointDiameter: 4, Count: 3, Height: 0.4, Width: 0.5, Crush: 0.15, EngagementLength: 3, LeadInAngle: new(rad(20))}
	out := map[string]force.Latch{
		"arm": {Cantilever: &arm}, "taper": {Cantilever: &taper}, "mate": {Cantilever: &mate}, "segment": {Cantilever: &segment},
		"ring": {Annular: &ring}, "split": {Annular: &split}, "ball": {Ball: &ball}, "closed": {Ball: &closed}, "pin": {PressFit: &pin}, "rib": {CrushRib: &rib},
	}
	for name, l := range out {
		l.ID, l.At = name, []planar.Point{{}}
		out[name] = l
	}
	return out
}

// A job that is written from the meshes of a coupon gives the force of the latch that the
// coupon was drawn from, within 3 per cent.
func TestForceOfAWrittenJob(t *testing.T) {
	for name, l := range couponLatches() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			set, err := coupon.Make(coupon.Ladder{Latch: l, Lower: pa12, Upper: pa12, Steps: 3, Draws: 100})
			if err != nil {
				t.Fatal(err)
			}
			j := written(t, seated(t, l, set.Bodies[2], set.Bodies[3]))
			if len(j.Latches) != 1 {
				t.Fatalf("%d latches", len(j.Latches))
			}
			got := j.Latches[0]
			want := set.Steps[1].Latch
			if len(got.At) != len(want.At) {
				t.Fatalf("%d places, want %d", len(got.At), len(want.At))
			}
			if a, b := peak(t, got), peak(t, want); !(math.Abs(a/b-1) < 0.03) {
				t.Errorf("peak %.2f N, want %.2f", a, b)
			}
		})
	}
}

// seated lowers the upper body until it is held as it was drawn. Plates are so many tenths
// of a millimetre thick, and the body with the opening ends on the plate of the other.
func seated(t *testing.T, latch force.Latch, lower, upper coupon.Body) witness.Find {
	t.Helper()
	shape := func(m *mesh.Mesh) *envelope.Envelope {
		b := m.Bounds()
		return &envelope.Envelope{Mesh: *m, Min: b.Min, Max: b.Max}
	}
	ax, ay := lower.Axis()
	bx, by := upper.Axis()
	l := shape(lower.Mesh.Shifted(mesh.Vector{-ax, -ay, 0}))
	open, tenths := lower.Size[2], 60
	if latch.Joint().Opening() == "upper" {
		open = upper.Size[2]
	}
	if latch.Annular != nil {
		tenths = 300
	}
	for ; tenths >= 40; tenths-- {
		at := open + float64(tenths)/10
		u := shape(upper.Mesh.Moved(func(v mesh.Vector) mesh.Vector { return mesh.Vector{bx - v[0], v[1] - by, at - v[2]} }))
		f := witness.Latches(l, u)
		if len(f.Latches) != 1 {
			continue
		}
		g := f.Latches[0]
		switch g.Kind {
		case "press_fit", "crush_rib": // home where the whole length is engaged
			if v := g.Get("engagement_length"); v < map[string]float64{"press_fit": 5, "crush_rib": 3}[g.Kind]-0.03 {
				continue
			}
		default:
			if g.Get("float")+g.Get("groove_float") < 0.1 {
				continue
			}
		}
		return f
	}
	t.Fatal("no latch at any height")
	return witness.Find{}
}

// The shipped pair: what init writes has the force of the job that a person wrote, where
// what no mesh can say is taken from that one.
func TestSnapCaseAsWrittenByHand(t *testing.T) {
	const jobs = "../../../testdata/jobs/"
	text, err := os.ReadFile(jobs + "snap-case.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var hand job.File
	if doc, problems := jobfile.Decode("snap-case.yaml", text, &hand, jobfile.Options{}); len(problems.And(doc.Problems(hand.Validate()))) > 0 {
		t.Fatal(problems)
	}
	read := func(s envelope.Spec) *envelope.Envelope {
		e, err := envelope.Build(s, func(name string) (io.ReaderAt, int64, io.Closer, error) {
			f, err := os.Open(jobs + name)
			if err != nil {
				return nil, 0, nil, err
			}
			info, err := f.Stat()
			return f, info.Size(), f, err
		})
		if err != nil {
			t.Fatal(err)
		}
		return e
	}
	j := written(t, witness.Latches(read(hand.Lower.Envelope), read(hand.Upper.Envelope)))
	if len(j.Latches) != 1 || len(j.Latches[0].At) != 7 || j.Upper.Envelope.Mesh.Up != "-z" || j.Upper.Envelope.Mesh.Move != [3]float64{-4.4, 0, 0} {
		t.Fatalf("%+v", j.Latches)
	}
	got := j.Latches[0]
	told := *hand.Latches[0].Cantilever
	got.Cantilever.BaseFactor, got.Cantilever.RootRadius, got.Cantilever.UndercutTol = told.BaseFactor, told.RootRadius, told.UndercutTol
	if a, b := peak(t, got), peak(t, hand.Latches[0]); !(math.Abs(a/b-1) < 0.03) {
		t.Errorf("peak %.2f N, by hand %.2f", a, b)
	}
}

// What the find does not know stands in the file as a default, what it asks as a comment.
func TestWrittenJobSaysWhatNoMeshCanSay(t *testing.T) {
	f := witness.Find{
		Latches:  []witness.Latch{{Kind: "press_fit", At: []planar.Point{{X: 1}}, Part: "lower", Ask: []string{"is it?"}, Figures: []witness.Figure{{Name: "pin_diameter", Value: 6.1}, {Name: "lift at release", Value: 5}}}},
		Doubtful: []witness.Doubt{{At: planar.Point{X: 3, Y: 4}, Area: 1, Reason: "a speck"}},
	}
	text := string(FromPair(Answers{Number: "1", Title: "t", Date: "2026-11-25", Material: "PA12", Process: "PBF", Rate: "20"}, Pair{Lower: "a.stl", Upper: "b.stl", Found: f}))
	for _, want := range []string{"NO MESH CAN SAY", "material: PA12   # default", "build: along      # default", "use: permanent    # default", "# LOOK: is it?", "pin_diameter: 6.1   # measured", "# measured besides: lift at release 5 mm", "[3, 4], 1.00 mm2: a speck"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
}
