package workinstructions

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"ramnest/export/page/pagetest"
	"ramnest/force/unit"
)

func testSheet() TestSheet {
	return TestSheet{Job: "FWL-1042", Title: "Rim cap", Revision: "B", Date: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC), Tool: "ramnest 0.1.0",
		Latch: "rim", Kind: "annular", SizeName: "undercut", StepSize: 0.1, Stepped: "upper", Lower: "PA12 PBF", Upper: "PA12 PBF", Places: 1, Table: "FWL-1042-ladder-rim-test.csv", Snaps: true,
		Pairs: []TestPair{{Number: 1, Size: 0.4, P5: 100, P95: 200}, {Number: 2, Size: 0.5, Nominal: true, P5: 200, P95: 400}, {Number: 3, Size: 0.6, P5: 300, P95: 600, Overstrain: true}}}
}

func writtenTest(t *testing.T, s TestSheet) ([]byte, string) {
	t.Helper()
	var out bytes.Buffer
	if err := WriteTest(&out, s); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(t.ArtifactDir(), "test.pdf"), out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	pagetest.Validate(t, out.Bytes())
	pages := pagetest.Texts(t, out.Bytes())
	for i, p := range pages {
		if !strings.Contains(p, "FWL-1042") || !strings.Contains(p, "Local law") {
			t.Errorf("page %d does not say whose it is", i+1)
		}
	}
	return out.Bytes(), strings.Join(pages, " ")
}

// What resists and what may happen decides which cautions stand on the sheet.
func TestCautionsOfATestFollowFromTheLadder(t *testing.T) {
	t.Parallel()
	const (
		crush, kick, palm = "The ram closes with more force", "When a latch snaps in, the resistance drops", "The palm or the fist used as a hammer"
		strain, eyes      = "strain the latch beyond what its material is permitted", "Eye protection with side protection."
		permanent         = "This joint is permanent"
	)
	for _, c := range []struct {
		name      string
		change    func(s *TestSheet)
		with, not []string
	}{
		{"a strong ladder", func(*TestSheet) {}, []string{crush, kick, strain, eyes, "reads to 750 N or more", "OVERSTRAINED", "raising the ram"}, []string{palm, permanent}},
		{"a light one", func(s *TestSheet) {
			for i := range s.Pairs {
				s.Pairs[i].P5, s.Pairs[i].P95, s.Pairs[i].Overstrain = 4, 20, false
			}
		}, []string{palm, "reads to 25 N or more"}, []string{crush, kick, strain, eyes, "raising the ram"}},
		{"a light one of which a pair may lock", func(s *TestSheet) {
			s.Pairs = []TestPair{{Number: 1, Size: 0.4, P5: 4, P95: 20}, {Number: 2, Size: 0.5, Word: locks}}
		}, []string{crush, "may lock at first hold", "Do not force it."}, []string{palm}},
		{"one without interference", func(s *TestSheet) { s.Pairs[0] = TestPair{Number: 1, Size: -0.1, Word: loose} }, []string{"loose at first hold", "−0.100"}, nil},
		{"a permanent press fit", func(s *TestSheet) { s.Snaps, s.Permanent = false, true }, []string{permanent, "Let go of under load, the lever flies back."}, []string{kick}},
		{"brittle by hand", func(s *TestSheet) {
			s.Brittle, s.Pairs = true, []TestPair{{Number: 1, Size: 0.4, P5: 4, P95: 20}}
		}, []string{eyes, "The parts are brittle"}, []string{crush}},
		{"inch and pounds", func(s *TestSheet) { s.Units = unit.System{Inch: true, Pound: true} }, []string{"Size, in", "0.0197", "Force, lbf", "90", "0.0039 in"}, []string{"Force, N"}},
		{"mm and pounds", func(s *TestSheet) { s.Units.Pound = true }, []string{"Size, mm", "0.500", "Force, lbf"}, []string{"Force, N"}},
		{"several joints", func(s *TestSheet) { s.Places = 6 }, []string{"Each pair has 6 joints"}, nil},
		{"letters that cannot be set", func(s *TestSheet) { s.Title = "\u4e2d" }, []string{"are printed as □"}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			s := testSheet()
			c.change(&s)
			file, text := writtenTest(t, s)
			for _, w := range c.with {
				if !strings.Contains(text, strings.ReplaceAll(w, nbsp, " ")) {
					t.Errorf("%q is missing:\n%s", w, text)
				}
			}
			for _, n := range c.not {
				if strings.Contains(text, n) {
					t.Errorf("%q stands there", n)
				}
			}
			if again, _ := writtenTest(t, s); !bytes.Equal(file, again) {
				t.Error("other bytes the second time")
			}
		})
	}
}

// Every pair has its line in the grid, also of the longest ladder.
func TestGridOfTheLongestLadder(t *testing.T) {
	t.Parallel()
	s := testSheet()
	s.Pairs = nil
	for i := range 15 {
		s.Pairs = append(s.Pairs, TestPair{Number: i + 1, Size: 0.1 * float64(i+1), P5: 100, P95: 1000 + float64(i)})
	}
	_, text := writtenTest(t, s)
	for i := range 15 {
		if want := fine(s.Pairs[i].Size).Number(unit.System{}, nil); !strings.Contains(text, want) {
			t.Errorf("pair %d, %s, has no line", i+1, want)
		}
	}
}

func TestFaultsOfATestSheet(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		want   string
		change func(s *TestSheet)
	}{
		{"job: is empty", func(s *TestSheet) { s.Job = " " }},
		{"latch: is empty", func(s *TestSheet) { s.Latch = "" }},
		{"pairs: 0", func(s *TestSheet) { s.Pairs = nil }},
		{"places: 0", func(s *TestSheet) { s.Places = 0 }},
		{"pairs[1].p95: NaN", func(s *TestSheet) { s.Pairs[1].P95 = math.NaN() }},
		{"pairs[1].size: +Inf", func(s *TestSheet) { s.Pairs[1].Size = math.Inf(-1) }},
		{"pairs[0].p95: 50; is below P5", func(s *TestSheet) { s.Pairs[0].P95 = 50 }},
		{"pairs[0].word", func(s *TestSheet) { s.Pairs[0] = TestPair{Number: 1} }},
	} {
		s := testSheet()
		c.change(&s)
		var out bytes.Buffer
		if err := WriteTest(&out, s); err == nil || !strings.Contains(err.Error(), c.want) || out.Len() > 0 {
			t.Errorf("want %q, got %v", c.want, err)
		}
	}
}
