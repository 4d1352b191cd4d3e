package workinstructions

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"ramnest/export/page"
	"ramnest/export/page/pagetest"
	"ramnest/export/picture"
	"ramnest/force/method"
	"ramnest/force/planar"
)

// A clash is what an action asks for and what forbids it, in English.
type clash struct{ asks, forbids string }

// clashes are the pairs, by hand from every action and every order of a caution.
var clashes = []clash{
	{`[Pp]ut your hands on the (anvil|[A-Z])`, `[Hh]ands (are |stay )?off the (tooling|anvil)|take your hands off`},
	{`[Pp]ut your hands on the [A-Z]`, `never on the part itself|through the tooling`},
	{`with one hand`, `[Bb]oth hands on the lever|lever with both hands`},
	{`with both hands`, `lever with one hand|[Kk]eep one hand`},
	{`[Ss]trike square on the strike face`, `[Nn]ever strike( with a mallet|\.)|[Uu]se no mallet( at all|\.)|[Pp]ush steadily`},
	{`[Pp]ush down steadily`, `[Dd]o not push (down|by hand)|[Hh]ands (are )?off`},
	{`[Pp]ull the lever`, `([Nn]ever|[Dd]o not) (touch|pull) the lever`},
	{`[Ll]et go of everything but the lever`, `[Hh]old the (anvil|part)s? (down|while)`},
	{`[Gg]uide the lever back`, `[Ll]et go of the lever`},
	{`[Ss]hims? (go|of)`, `[Pp]ut nothing under the anvil`},
	{`push the product out`, `[Nn]ever push the product`},
	{`[Ss]top earlier`, `[Pp]ush on(,|\.| until)|[Nn]ever stop|do not stop (before|until)`},
	{`read the gauge; above: see reject`, `Outside one limit, it is a reject`},
}

// against gives the clashes of a text that asks with one that forbids.
func against(asks, forbids string) []string {
	var out []string
	for _, c := range clashes {
		a := regexp.MustCompile(c.asks).FindString(asks)
		// "do not push on" orders no pushing on.
		f := regexp.MustCompile(c.forbids).FindString(strings.ReplaceAll(forbids, "do not push on", ""))
		if a != "" && f != "" {
			out = append(out, fmt.Sprintf("%q against %q", a, f))
		}
	}
	return out
}

// The law has teeth: words that once stood there are found.
func TestClashesAreFound(t *testing.T) {
	for _, c := range [][2]string{
		{"Put your hands on the anvil.", "Hold nothing between anvil and nest. Hands are off the tooling before it moves."},
		{"Put your hands on the Rim cap.", "Press through the tooling on this sheet only, never on the part itself."},
		{"Pull the lever, in one steady move, with one hand.", "Keep both hands on the lever until the ram is up again."},
		{"read the gauge; above: see reject", "Outside one limit, it is a reject."},
	} {
		if against(c[0], c[1]) == nil {
			t.Errorf("%q against %q is not found", c[0], c[1])
		}
	}
}

// tools are what an action or a criterion may name, and what the list of the bench must then
// say.
var tools = map[string]string{
	`feeler gauge`: `feeler gauge`, `caliper`: `caliper`, `depth gauge`: `depth gauge`, `spring balance`: `spring balance`, `\bshims?\b`: `shims`,
	`\bscrew (M6|1/4)`: `two screws .*wrench`, `\bmallet`: `mallet: `, `\bvise\b`: `vise: `, `\bram\b|\blever\b`: `arbor press`, `step pin`: `step pin: `, `stops are faced`: `\bfile\b`,
}

// random is a sheet of any method, tooling, parts, latches and way to measure.
func randomSheet(t *testing.T, r *rand.Rand) Sheet {
	s := demoSheet(t)
	d := demoDemand()
	d.DesignForce = []float64{20, 38, 60, 140, 320, 600, 1180, 2600}[r.IntN(8)] * (0.8 + 0.4*r.Float64())
	d.P50, d.PeakForce, d.Worst, d.SeatForce = 0.7*d.DesignForce, 0.7*d.DesignForce, d.DesignForce*(1+r.Float64()), 0.05*d.DesignForce
	d.Work, d.ShockLimit, d.RatePerHour, d.HoursPerDay = d.DesignForce*2, 3000, float64(5+r.IntN(200)), 1+6*r.Float64()
	d.Permanent, d.Thrust = r.IntN(3) == 0, planar.Point{X: float64(r.IntN(2) * 4)}
	var forced *method.Forced
	if r.IntN(3) == 0 {
		forced = &method.Forced{Method: []method.Method{method.ByHand, method.ByMallet, method.ByPress}[r.IntN(3)], Override: "a trial of five parts"}
	}
	st := &s.Steps[0]
	st.Pictures = Pictures{}
	for i := range s.Parts {
		s.Parts[i].Picture = nil
	}
	for i := range s.Tooling {
		s.Tooling[i].Picture = nil
	}
	st.Decision = method.Choose(d, method.Bench{}, forced)
	st.Facts, st.Thrust, st.Usable, st.Lever = anyFacts(r), d.Thrust, 0, 0
	st.Facts.Method, st.Facts.Conditional, st.Facts.Overridden, st.Facts.Coupons = "", false, false, false
	st.Facts.AnvilHeld = st.Facts.AnvilHeld && st.Decision.Chosen == method.ByPress
	st.Facts.Opening, st.Facts.Overstrained, st.Facts.Jammed = 30*r.Float64(), 0.02*r.Float64(), 0.01*float64(r.IntN(2))
	if st.Decision.Overridden {
		s.Override = "a trial of five parts"
	}
	if a := st.chosen(); a != nil && a.Lever != nil {
		st.Lever = a.Lever.Pull
	}
	st.Force = Force{Design: d.DesignForce, Peak: d.PeakForce, P5: 0.5 * d.P50, P50: d.P50, P95: d.DesignForce, Worst: d.Worst, Seat: d.SeatForce, Stroke: 4.2, Work: d.Work, Humps: r.IntN(4)}
	st.Seat = Gap{Low: 0.05, High: 0.25, Between: [2]string{"Housing", "Rim cap"}, Kind: []GapKind{BetweenParts, OverAll, BelowRim, OnPair, UnderAnvil}[r.IntN(5)]}
	if st.Decision.Chosen == method.ByHand && r.IntN(2) == 0 {
		st.Anvil, st.Guided, st.Facts.Anvil = "", false, false
		s.Tooling = s.Tooling[:1]
		if st.Seat.Kind == UnderAnvil {
			st.Seat.Kind = OverAll
		}
	}
	if r.IntN(2) == 0 {
		st.Pull = 0
	}
	if st.Anvil != "" && r.IntN(3) == 0 {
		st.Pin = Pin{Hole: 1 + r.IntN(2), Wide: 4, Long: 30}
	}
	return s
}

// No order of a caution, of the set-up or of a reject forbids what an action or a criterion
// asks; what they name lies ready; the force from which to stop is one figure; and a verdict on
// condition has its line to sign on page 1.
func TestSheetsDoNotContradictThemselves(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 2))
	seen, signed := map[method.Method]int{}, 0
	for range 300 {
		s := randomSheet(t, r)
		st := s.Steps[0]
		if st.Decision.Chosen == method.None {
			continue
		}
		seen[st.Decision.Chosen]++
		book := page.New(page.A4, picture.EncodePNG)
		c := newComposer(book, s, false)
		step := c.steps[0]
		facts := step.facts
		var asks, forbids []string
		for _, a := range step.actions {
			asks = append(append(asks, a.title), a.detail...)
		}
		asks = append(asks, step.setUp...)
		for _, k := range criteria(c.fig, st) {
			asks = append(asks, k.measured(), k.Limit, k.With)
		}
		for _, m := range Cautions(facts) {
			forbids = append(forbids, m.Avoid...)
		}
		forbids = append(forbids, reject(c.fig, st, facts)...)
		asked, forbidden := plain(strings.Join(asks, " ")), plain(strings.Join(forbids, " "))
		what := fmt.Sprintf("%s, %+v", st.Decision.Chosen, facts)
		for _, bad := range against(asked, forbidden) {
			t.Fatalf("%s: %s\n%s\n%s", what, bad, asked, forbidden)
		}
		ready := strings.ToLower(plain(strings.Join(c.bench(), "\n")))
		for named, listed := range tools {
			if n := regexp.MustCompile(named).FindString(strings.ToLower(asked)); n != "" && !regexp.MustCompile(listed).MatchString(ready) && !regexp.MustCompile(named).MatchString(ready) {
				t.Fatalf("%s: %q is used and not listed:\n%s", what, n, ready)
			}
		}
		limits := map[string]bool{}
		for _, m := range regexp.MustCompile(`(?:takes more than|More than) ([0-9.]+ N)(?:: what| needed)`).FindAllStringSubmatch(asked+" "+forbidden, -1) {
			limits[m[1]] = true
		}
		if st.Decision.Chosen != method.ByMallet && len(limits) != 1 {
			t.Fatalf("%s: the sheet says to stop from %v:\n%s\n%s", what, limits, asked, forbidden)
		}
		book.Wait()
		if !facts.Conditional && !facts.Overridden {
			continue
		}
		if signed++; signed > 25 {
			continue
		}
		var out bytes.Buffer
		if err := Write(&out, s); err != nil {
			t.Fatal(err)
		}
		if first := flat(pagetest.Lines(t, out.Bytes())[0]); !strings.Contains(first, "Agreed, competent person: ____") || !regexp.MustCompile(`Condition\.|Override\.`).MatchString(first) {
			t.Fatalf("%s: page 1 has no line to sign:\n%s", what, first)
		}
	}
	if len(seen) < 3 || min(seen[method.ByHand], seen[method.ByMallet], seen[method.ByPress]) < 20 || signed < 10 {
		t.Errorf("too little was tried: %v, %d on condition", seen, signed)
	}
}

// A sheet for coupons speaks of what it uses: no nest, anvil or dead stop.
func TestCouponsAreNoTooling(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 3))
	for range 300 {
		s := testSheet()
		s.Brittle, s.Snaps, s.Permanent = r.IntN(2) == 0, r.IntN(2) == 0, r.IntN(2) == 0
		for i := range s.Pairs {
			k := []float64{0.1, 1, 5}[r.IntN(3)]
			s.Pairs[i].P5, s.Pairs[i].P95, s.Pairs[i].Overstrain = k*s.Pairs[i].P5, k*s.Pairs[i].P95, r.IntN(3) == 0
		}
		for _, m := range Cautions(s.facts()) {
			text := strings.Join(append([]string{m.Hazard, m.Consequence}, m.Avoid...), " ")
			if w := regexp.MustCompile(`(?i)\b(anvil|nest|tooling|dead stop|series|the action|thrust mark)\b`).FindString(text); w != "" {
				t.Fatalf("%s speaks of %q: %s", m.ID, w, text)
			}
		}
	}
}
