package force

import (
	"flag"
	"fmt"
	"maps"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ramnest/force/planar"
)

var update = flag.Bool("update", false, "rewrite the page of published examples")

const (
	publishedPage = "../cmd/internal/guide/published.txt"
	// rowMoves is how far a figure of the page may move before it is out of date [1]:
	// above what other draws do to a percentile of 40,000, below what a change of the
	// model does that a reader should know of.
	rowMoves = 0.03
)

// A step is one thing in which the model differs from a source, and the force with it.
type step struct {
	why   string
	force float64 // [N]
}

// jointOf is a joint as an assembly; theirs takes the source's modulus and friction
// instead of the table's, and its smooth surfaces.
func jointOf(p published, theirs bool) Assembly {
	in := p.in
	m := MaterialSpec{Material: p.Inputs["material"].(string), Process: p.Inputs["process"].(string)}
	if theirs {
		m.Modulus, m.SecantZero, m.Friction = ptr(in("modulus_MPa")), ptr(10.0), ptr(in("mu"))
	}
	l := Latch{ID: "joint", At: []planar.Point{{X: 0, Y: 0}}}
	angle := rad(in("lead_angle_deg"))
	switch p.Kind {
	case "hook":
		l.At = make([]planar.Point, int(in("count")))
		l.Cantilever = &Cantilever{Flexes: "lower", Bends: "outward", Undercut: in("undercut_mm"), MatingAngle: angle, ReturnAngle: rad(45),
			Length: in("length_mm"), Thickness: in("root_thickness_mm"), TipThickness: in("tip_thickness_mm"), Width: in("width_mm")}
		if q := in("base_factor"); !math.IsNaN(q) {
			l.Cantilever.BaseFactor = &q
		}
	case "ring", "remote":
		l.Annular = &Annular{Outside: "lower", JointDiameter: in("joint_diameter_mm"), Undercut: in("undercut_mm"), MatingAngle: angle, ReturnAngle: angle,
			OuterDiameter: in("outer_diameter_mm"), InnerDiameter: in("inner_diameter_mm"), EndDistance: in("end_distance_mm"), EndDistanceInner: ptr(in("end_distance_mm"))}
	case "pin":
		l.PressFit = &PressFit{Outside: "lower", PinDiameter: in("pin_diameter_mm"), BoreDiameter: in("bore_diameter_mm"), OuterDiameter: in("outer_diameter_mm"),
			EngagementLength: in("length_mm"), BoreBeyond: ptr(0.0), LeadInAngle: ptr(rad(15))}
		if theirs {
			l.PressFit.RoughnessLoss = ptr(0.0)
		}
	}
	return Assembly{Lower: m, Upper: m, Latches: []Latch{l}, Seed: 1, Draws: 40_000}
}

// steps go from the published force to the middle of the draws, one cause after another.
// Each force is computed; a reason is the ratio of two that stand beside each other, so
// that the ratios of a row multiply to its last one.
func steps(t *testing.T, p published, r Result) []step {
	nominal := func(a Assembly) float64 { a.Draws = 100; return mustAnalyse(t, a).Peak }
	theirs := jointOf(p, true)
	v, n, whole := explained(theirs), float64(len(theirs.Latches[0].At)), nominal(theirs)
	out := []step{{"published", p.Expected["mating_force_N"]}}
	switch p.Kind {
	case "hook":
		arm, q := *theirs.Latches[0].Cantilever, 1.0
		if arm.BaseFactor != nil {
			q = *arm.BaseFactor
		}
		hook := bentAs(arm, q, p.in("mu"))
		hook.modulus, hook.root = p.in("modulus_MPa"), hook.root*hook.modulus/p.in("modulus_MPa")
		mate := hook
		mate.upright = true
		out = append(out, step{"its figures unrounded", n * v["W_guide"]},
			step{"the axial force has a lever and bends the arm further", n * mate.force(arm.Undercut)},
			step{"the arm leans as it bends, so its flank stands steeper", n * hook.force(arm.Undercut)},
			step{"what our formula asks beyond the arm's true bent shape", whole})
	case "ring":
		out = append(out, step{"its figures unrounded", v["W_guide"]},
			step{"shell theory for its geometric factor", v["P"] * v["f"]},
			step{"the axial force turns the walls and adds to the spread", whole})
	case "pin":
		out = append(out, step{"its figures unrounded", PressForce(p.in("mu"), v["p0"], p.in("bore_diameter_mm"), p.in("length_mm"))},
			step{"lead-in, and the pressed pin swells", whole})
		rough := jointOf(p, true)
		rough.Latches[0].PressFit.RoughnessLoss = nil
		out = append(out, step{"asperities flattened in pressing", nominal(rough)})
	}
	mixed := jointOf(p, false)
	m, _ := Resolve(mixed.Lower)
	mixed.Lower.Friction, mixed.Upper.Friction = ptr(p.in("mu")), ptr(p.in("mu"))
	return append(out, step{"modulus of the table, at the strain reached", nominal(mixed)},
		step{fmt.Sprintf("friction of the table, %.2g for %.2g", pairFriction(m, m).Value, p.in("mu")), r.Peak},
		step{fmt.Sprintf("middle of the draws, whose spread comes most from %s, %.0f %%", r.Spread[0].Input, 100*r.Spread[0].Share), r.P50})
}

// rowOf is a joint's row: figures, source, what was assumed, why it differs.
func rowOf(t *testing.T, p published) string {
	want := p.Expected["mating_force_N"]
	under := fmt.Sprintf("%s: %s. Assumed: %s.", p.Mark, p.Source, p.Note)
	r, err := Analyse(jointOf(p, false))
	if err != nil {
		return fmt.Sprintf("  %-35s%8.4g  refused\n", p.ID, want) + set(under+" ramnest: "+strings.TrimPrefix(err.Error(), "latches[0].cantilever.")+".")
	}
	p5, p95 := rounded(r.P5, 3), rounded(r.P95, 3)
	if r.P5 == 0 && r.Loose > 0.05 {
		p5 = "loose"
	}
	if r.NoP95 {
		p95, under = "jams", under+fmt.Sprintf(" Of the draws %.2g %% jam.", 100*r.Jammed)
	}
	var why []string
	all := steps(t, p, r)
	for i, s := range all[1:] {
		if f := s.force / all[i].force; math.Abs(f-1) >= 0.005 {
			why = append(why, fmt.Sprintf("%.2f %s", f, s.why))
		}
	}
	return fmt.Sprintf("  %-35s%8.4g%7s%7s%7s%7.2f%7.2f\n", p.ID, want, p5, rounded(r.P50, 3), p95, r.P5/want, r.P50/want) + set(under) +
		set("P50 over published: "+strings.Join(why, "; ")+".")
}

// partOf is an entry that has no force of a whole joint: each figure beside ours.
func partOf(p published, got answers) string {
	var b strings.Builder
	off := false
	for _, k := range slices.Sorted(maps.Keys(p.Expected)) {
		want := p.Expected[k]
		words := strings.NewReplacer("_per_", "/", "_", " ").Replace(k)
		fmt.Fprintf(&b, "  %-54s%8s%9s%7.3f\n", p.ID+", "+words, rounded(want, 4), rounded(got[k], 4), got[k]/want)
		off = off || math.Abs(got[k]/want-1) >= 0.005
	}
	under := p.Mark + ": " + p.Source + "."
	if off {
		under += " " + p.Note
	}
	return b.String() + set(under)
}

// rounded is a figure to some digits.
func rounded(v float64, digits int) string {
	if v == 0 {
		return "0"
	}
	after := digits - 1 - int(math.Floor(math.Log10(math.Abs(v))))
	scale := math.Pow(10, float64(after))
	return strconv.FormatFloat(math.Round(v*scale)/scale, 'f', max(0, after), 64)
}

// set sets a text below its row, in lines of 80 characters.
func set(text string) string { return indented("     ", text) }

func indented(indent, text string) string {
	var b strings.Builder
	line := indent
	for _, word := range strings.Fields(text) {
		if len(line)+1+len(word) > 80 {
			b.WriteString(line + "\n")
			line = indent
		}
		line += " " + word
	}
	return b.String() + line + "\n"
}

// page is the whole page below its introduction.
func page(t *testing.T) string {
	joints, checks := publishedIn(t, "testdata/joints.yaml"), publishedIn(t, "testdata/force-checks.yaml")
	var b strings.Builder
	of := func(mark, heading, column string) {
		fmt.Fprintf(&b, "%s\n\n  %-35s%8s%7s%7s%7s%7s%7s\n", heading, "", column, "P5", "P50", "P95", "P5", "P50")
		fmt.Fprintf(&b, "  %-35s%8s%7s%7s%7s%7s%7s\n", "", "N", "N", "N", "N", "ratio", "ratio")
		for _, p := range joints {
			if p.Expected["mating_force_N"] > 0 && p.Mark == mark {
				b.WriteString("\n" + rowOf(t, p))
			}
		}
		if mark == "read" {
			b.WriteString("\n" + indented(" ", lowEnd(t, joints)))
		}
		fmt.Fprintf(&b, "\n  %-54s%8s%9s%7s\n\n", "Parts of the way to a force", column, "ramnest", "ratio")
		for _, p := range joints {
			if p.Kind == "remote" && p.Mark == mark {
				b.WriteString(partOf(p, answers{"ratio": remoteOverNear(t, p)}))
			}
		}
		for _, p := range checks {
			if p.Check == "published_answer" && p.Mark == mark {
				b.WriteString(partOf(p, answer(p)))
			}
		}
	}
	of("read", "READ IN THEIR SOURCE", "publ.")
	b.WriteString("\n")
	of("memory", "HINTS: RECALLED, NOT READ, NOT COUNTED", "recalled")
	b.WriteString("\nMEASURED, BUT NOT AT HAND\n")
	for _, p := range joints {
		if p.Kind == "seen" {
			b.WriteString("\n  " + p.ID + "\n" + set(fmt.Sprintf("%s: %s. %s.", p.Mark, p.Source, p.Note)))
			if want := p.Expected["modulus_over_bulk"]; want > 0 {
				m, _ := Resolve(MaterialSpec{Material: p.Inputs["material"].(string), Process: p.Inputs["process"].(string)})
				fmt.Fprintf(&b, "      modulus over that of the bulk: %.2f by the source, down to %.2f here\n", want, math.Exp(-thinness(m, p.in("thickness_mm"))))
			}
		}
	}
	return b.String()
}

// lowEnd says where the snaps that were read lie in the band: at its low end, as the
// introduction of the page has it.
func lowEnd(t *testing.T, joints []published) string {
	var own, theirs []float64
	for _, p := range joints {
		want := p.Expected["mating_force_N"]
		if want == 0 || p.Mark != "read" || p.Kind == "pin" {
			continue
		}
		r, err := Analyse(jointOf(p, false))
		with, errWith := Analyse(jointOf(p, true))
		if err == nil && errWith == nil {
			if want > with.P50 || want > r.P50 || want < 0.6*r.P5 {
				t.Errorf("%s: %g N published is not at the low end of P5 %.3g, P50 %.3g N: the introduction of the page says so", p.ID, want, r.P5, r.P50)
			}
			own, theirs = append(own, r.P5/want), append(theirs, with.P5/want)
		}
	}
	return fmt.Sprintf("P5 of the %d snaps is %.2f to %.2f of the published force; with the source's modulus and friction in place of the table's, %.2f to %.2f.",
		len(own), slices.Min(own), slices.Max(own), slices.Min(theirs), slices.Max(theirs))
}

// remoteOverNear is the force of a ring far from the ends over that at them [1].
func remoteOverNear(t *testing.T, p published) float64 {
	far, near := jointOf(p, true), jointOf(p, true)
	near.Latches[0].Annular.EndDistance, near.Latches[0].Annular.EndDistanceInner = 0, ptr(0.0)
	return mustAnalyse(t, far).Peak / mustAnalyse(t, near).Peak
}

// moved tells the words in which two pages differ: other words, or figures further apart
// than rowMoves and more than one unit of their last digit.
func moved(old, new string) []string {
	a, b := strings.Fields(old), strings.Fields(new)
	if len(a) != len(b) {
		return []string{fmt.Sprintf("%d words for %d", len(b), len(a))}
	}
	var out []string
	for i := range a {
		if a[i] == b[i] {
			continue
		}
		wordA, wordB := strings.TrimRight(a[i], ".,;"), strings.TrimRight(b[i], ".,;")
		x, errX := strconv.ParseFloat(wordA, 64)
		y, errY := strconv.ParseFloat(wordB, 64)
		_, decimals, _ := strings.Cut(wordA, ".")
		if errX != nil || errY != nil || math.Abs(x-y) > max(rowMoves*math.Abs(x), 1.01*math.Pow(10, -float64(len(decimals)))) {
			out = append(out, fmt.Sprintf("%q for %q after %q", b[i], a[i], strings.Join(a[max(0, i-4):i], " ")))
		}
	}
	return out
}

// TestPublishedPageIsInStep: the page of the help that sets published figures beside ours
// says what the model says now.
func TestPublishedPageIsInStep(t *testing.T) {
	now := page(t)
	if *update {
		if err := os.WriteFile(publishedPage, []byte(now), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	old, err := os.ReadFile(publishedPage)
	if err != nil {
		t.Fatal(err)
	}
	if diff := moved(string(old), now); len(diff) > 0 {
		t.Errorf("the page is out of date by more than %g %%, in %d words, the first of them %s\ngo test ./force -run PublishedPage -update, and read the reasons", 100*rowMoves, len(diff), strings.Join(diff[:min(5, len(diff))], "; "))
	}
}

// TestMovedSeesWhatMoved: a figure of a row past the limit, another word, a row more; not
// what is within the limit or in the last digit.
func TestMovedSeesWhatMoved(t *testing.T) {
	const row = "hook of PC 58.5 63.0 142 231 1.08 2.42; friction 0.66 for 0.6."
	for now, want := range map[string]int{
		row: 0, strings.Replace(row, "142", "145", 1): 0, strings.Replace(row, "2.42", "2.43", 1): 0,
		strings.Replace(row, "142", "147", 1): 1, strings.Replace(row, "63.0", "60.9", 1): 1, strings.Replace(row, "2.42;", "2.51;", 1): 1,
		strings.Replace(row, "friction", "modulus", 1): 1, strings.Replace(row, "231", "jams", 1): 1, row + " more": 1,
	} {
		if got := moved(row, now); len(got) != want {
			t.Errorf("%q: %q, want %d", now, got, want)
		}
	}
}
