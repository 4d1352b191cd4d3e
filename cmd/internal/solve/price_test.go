package solve_test

import (
	"math"
	"strings"
	"testing"

	"ramnest/cmd/internal/solve"
	"ramnest/cmd/internal/solve/solvetest"
	"ramnest/export/quote"
	"ramnest/fixture/plan"
)

// The quote of a solution is the card's offer of its own pieces, whatever the job.
func TestTheQuoteIsThatOfThePieces(t *testing.T) {
	t.Parallel()
	for _, name := range solvetest.Jobs() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s, _ := solvetest.Example(t, name)
			items := s.ToolingItems()
			pieces := s.Pieces()
			if len(items) != len(pieces) || len(items) < 2 {
				t.Fatalf("%d items of %d pieces", len(items), len(pieces))
			}
			for i, it := range items {
				if p := pieces[i]; it.Name != p.Name || it.Volume != p.Volume+p.Marked || !(p.Marked > 0 && p.Marked < p.Volume/100) || it.Box != p.Size || it.Process != s.Material.Process {
					t.Errorf("%+v of %s", it, p.Name)
				}
			}
			o, err := quote.InventedRateCard().Offer(items)
			if err != nil || s.Quote == nil || o.Total != s.Quote.Total || !s.Quote.Invented || s.Unpriced != "" {
				t.Errorf("%v: %v, offered %v; %q", err, s.Quote, o.Total, s.Unpriced)
			}
			if (s.Payback == nil) == (s.NoPayback == "") {
				t.Errorf("break-even %v, open %q", s.Payback, s.NoPayback)
			}
		})
	}
}

// The price is that of the way in which the tooling is built: lying, the same piece has
// another box, another height of the build, other words, and by a machine that is paid by
// its height another price.
func TestThePriceFollowsTheWayOfBuilding(t *testing.T) {
	t.Parallel()
	const rates = "rates={name: x, currency: y, pbf: {build_volume: [300, 300, 300], spacing: 5, layer: 0.1, machine_hour: 20, material_kg: 60, density: 1, recoat: 10}}"
	up, _ := solvetest.Example(t, "rim-cap", rates, "fixture.printed_in={material: PA12, process: PBF, build: along}")
	plain, _ := solvetest.Example(t, "rim-cap", rates)
	lying, _ := solvetest.Example(t, "rim-cap", rates, "fixture.printed_in={material: PA12, process: PBF, build: across}")
	if up.Quote.Total != plain.Quote.Total {
		t.Errorf("built along %g, as usual %g", up.Quote.Total, plain.Quote.Total)
	}
	pieces := lying.Pieces()
	height := 0.0
	for i, it := range lying.ToolingItems() {
		s := pieces[i].Size
		want, way := [3]float64{s[0], s[2], s[1]}, "y of the file up"
		if s[0] < s[1] {
			want, way = [3]float64{s[2], s[1], s[0]}, "x of the file up"
		}
		if it.Box != want || it.Orientation != way || it.Volume != pieces[i].Volume+pieces[i].Marked {
			t.Errorf("%+v of %v: want %v, %s", it, s, want, way)
		}
		height = max(height, it.Box[2])
	}
	for _, b := range lying.Quote.Builds {
		if b.Height < height-1e-9 && len(lying.Quote.Builds) == 1 {
			t.Errorf("a build of %g mm holds %g mm", b.Height, height)
		}
	}
	// By hand: the hours of a bed go with its height, so lying pieces that stand higher cost
	// more, and the other way round.
	if a, b := up.Quote.Builds[0], lying.Quote.Builds[0]; len(up.Quote.Builds) == 1 && len(lying.Quote.Builds) == 1 && (a.Height < b.Height) != (up.Quote.Total < lying.Quote.Total) {
		t.Errorf("%g mm cost %g, %g mm cost %g", a.Height, up.Quote.Total, b.Height, lying.Quote.Total)
	}
	if up.Quote.Total == lying.Quote.Total {
		t.Errorf("both ways cost %g", up.Quote.Total)
	}
}

// The same design under other numbers is the same tooling but for what is cut into it, and
// costs the same to the cent.
func TestTheNumberOfAJobCostsNothing(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"rim-cap", "sensor-hood", "shell-pair"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			first, _ := solvetest.Example(t, name)
			for _, number := range []string{"1", "WWWWWWWW", "Q-1042-0077-WWWWWW", strings.Repeat("M", 40)} {
				s, _ := solvetest.Example(t, name, "job="+number)
				for i, p := range s.Pieces() {
					if was := first.Pieces()[i]; p.Size != was.Size || math.Abs(p.Volume+p.Marked-was.Volume-was.Marked) > 0.05 {
						t.Errorf("%s of job %s: %v, %.6f mm3 without marks; was %v, %.6f", p.Name, number, p.Size, p.Volume+p.Marked, was.Size, was.Volume+was.Marked)
					}
				}
				if s.Quote.Total != first.Quote.Total {
					t.Errorf("job %s costs %g, was %g", number, s.Quote.Total, first.Quote.Total)
				}
			}
		})
	}
}

// No engraving runs into another, on any piece of any example.
func TestEngravingsStandApart(t *testing.T) {
	t.Parallel()
	for _, name := range solvetest.Jobs() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s, _ := solvetest.Example(t, name)
			for _, p := range s.Pieces() {
				var boxes []plan.Box
				for _, f := range p.Body.Features {
					if f.Name != "mark" && f.Name != "step mark" && f.Name != "arrow" && f.Name != "step number" {
						continue
					}
					b, _ := plan.BoxOf(f.Loops...)
					for _, o := range boxes {
						if b.Min.X < o.Max.X && o.Min.X < b.Max.X && b.Min.Y < o.Max.Y && o.Min.Y < b.Max.Y {
							t.Errorf("%s: %s runs into another engraving", p.Name, f.Name)
						}
					}
					boxes = append(boxes, b)
				}
				if p.Mark == "" {
					t.Errorf("%s bears no mark", p.Name)
				}
			}
		})
	}
}

// A time by hand that is stated outweighs the table's, and counts for the whole job.
func TestPaybackByTheTimesOfTheSteps(t *testing.T) {
	t.Parallel()
	s, _ := solvetest.Example(t, "shell-pair", "rate_per_hour=20", "hours_per_shift=2")
	card := s.Job.Card()
	back, open, err := s.PaybackOf(card, *s.Quote, 120)
	if err != nil || open != "" {
		t.Fatal(open, err)
	}
	then := 0.0
	for i := range s.Steps {
		then += s.Steps[i].Cycle.Seconds
	}
	n, _, err := quote.BreakEven(s.Quote.Total, 120, then, card.LabourHour, 0)
	if err != nil || back.Assemblies != n || back.Then != then || back.Hours != float64(n)/20 {
		t.Errorf("%+v, want %d assemblies, %g s with it, %g h", back, n, then, float64(n)/20)
	}
	// Where a hand may not push, its time in a table says nothing.
	if _, open, err = s.PaybackOf(card, *s.Quote, 0); err != nil || !strings.Contains(open, "too hard for a hand") {
		t.Errorf("%q, %v", open, err)
	}
	hood, _ := solvetest.Example(t, "sensor-hood")
	if hood.Payback == nil || hood.Payback.Now != quote.HandSnap {
		t.Errorf("pushed by hand: %+v, %q", hood.Payback, hood.NoPayback)
	}
}

// What a card cannot price is said by the name of the piece, and spoils no tooling.
func TestACardThatCannotPrice(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ name, set, want string }{
		{"no rates for the process", "rates={name: x, currency: y, mex: {build_volume: [300, 300, 300], spacing: 5, layer: 0.1, machine_hour: 4, material_kg: 30, density: 1.2, deposit_cm3_h: 20}}", "nest: process: PBF; has no rates on the card"},
		{"too small a machine", "rates={name: x, currency: y, pbf: {build_volume: [50, 50, 50], spacing: 5, layer: 0.1, machine_hour: 4, material_kg: 30, density: 1, recoat: 10}}", "nest: box: 78 x "},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			s, _ := solvetest.Example(t, "rim-cap", c.set)
			if !s.Tooled() || s.Quote != nil || s.Payback != nil || !strings.HasPrefix(s.Unpriced, c.want) {
				t.Errorf("tooled %v, quote %v, %q; want %q", s.Tooled(), s.Quote, s.Unpriced, c.want)
			}
		})
	}
}

func TestLadderOfALatchThatIsNotThere(t *testing.T) {
	t.Parallel()
	s, _ := solvetest.Example(t, "rim-cap")
	if _, err := solve.Ladder(s.Job, solve.Rung{Latch: "hem"}); err == nil || !strings.Contains(err.Error(), "latch: hem; is no latch of the job (rim)") {
		t.Error(err)
	}
	// What is wrong with a latch is told in the paths of the file.
	two, _ := solvetest.Example(t, "shell-pair")
	if _, err := solve.Ladder(two.Job, solve.Rung{Latch: "stud", Steps: 99}); err == nil {
		t.Error("99 pairs were made")
	}
}
