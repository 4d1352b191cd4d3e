package report

import (
	"fmt"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/solve"
	"ramnest/export/quote"
	"ramnest/force/method"
	"ramnest/force/unit"
)

// An Offered is an offer for a job. Its JSON is in mm, g, h and the card's currency.
type Offered struct {
	Schema string         `json:"schema"` // "ramnest quote"
	Tool   string         `json:"tool"`
	Number string         `json:"number"`
	Title  string         `json:"title"`
	Offer  quote.Offer    `json:"offer"`
	Back   *quote.Payback `json:"payback,omitzero"`
	Open   string         `json:"payback_open,omitzero"` // why there is no break-even

	Calibration *Calibration `json:"calibration,omitzero"`
}

// OfferText is an offer for a terminal.
func OfferText(s *solve.Solution, o Offered, folder string, files []string) string {
	p := &page{}
	u := unitsOf(s.Job)
	p.title(s)
	p.offer(u, "QUOTE", o.Offer)
	p.head("QUANTITIES  of the whole order")
	rows := [][]string{{"orders", "total", "each", ""}}
	for _, b := range o.Offer.Breaks {
		rows = append(rows, []string{fmt.Sprint(b.Quantity), money(b.Total), money(b.Each), ""})
	}
	p.table("rrrl", rows)
	p.head("BREAK-EVEN  against assembly by hand")
	if o.Back != nil {
		p.wrap("  ", "  ", o.Back.Text)
	} else {
		p.wrap("  ", "  ", "not known: "+o.Open)
	}
	p.calibration(u, s)
	p.files(folder, files)
	return p.b.String()
}

// offer says what an order costs, and how that comes about.
func (p *page) offer(u units, name string, o quote.Offer) {
	p.head("%s  in %s", name, o.Currency)
	p.wrap("  ", "  ", o.Note)
	p.line("")
	l := u.Name("mm")
	rows := [][]string{{"item", "count", "size " + l, u.Name(unit.Volume), u.Name(unit.Mass), "each", "amount"}}
	for _, i := range o.Items {
		rows = append(rows, []string{i.Name, fmt.Sprint(i.Count), u.size(i.Box),
			u.bare(i.Volume/1000, unit.Volume), u.bare(i.Mass/1000, unit.Mass), money(i.Each), money(i.Amount)})
	}
	p.table("lrlrrrr", rows)
	p.line("")
	rows = [][]string{{"of one", "machine", "material", "finish", "share %", "a build", "printed in, standing"}}
	for _, i := range o.Items {
		rows = append(rows, []string{i.Name, money(i.Machine), money(i.Stuff), money(i.Finishing), fmt.Sprintf("%.1f", 100*i.HeightShare),
			fmt.Sprint(i.PiecesPerBuild), i.Material + " " + i.Process + ", " + i.Orientation})
	}
	p.table("lrrrrrl", rows)
	p.wrap("  ", "  ", "Share: of the height of its build that one pays. A build: how many of it alone stand in one.")
	p.line("")
	for k, b := range o.Builds {
		p.wrap("  ", "    ", fmt.Sprintf("build %d, %s: %d pieces, %s high, %.1f h, %s, %.1f %% of its room printed", k+1, b.Process, b.Pieces,
			u.say(b.Height, "mm"), b.Hours, money(b.Cost), 100*b.Density))
	}
	if len(o.Builds) == 0 {
		p.line("  builds are shared with other work")
	}
	p.line("")
	sum := func(what string, v float64) { p.line("  %-30s%12s %s", what, money(v), o.Currency) }
	sum("handling of the order", o.Handling)
	sum("margin", o.Margin)
	if o.ToMinimum > 0 {
		sum("up to the minimum", o.ToMinimum)
	}
	sum("TOTAL", o.Total)
}

// files lists what was written.
func (p *page) files(folder string, names []string) {
	if len(names) == 0 {
		return
	}
	p.head("FILES in %s", folder)
	for _, f := range names {
		p.line("  %s", f)
	}
}

func money(v float64) string { return fmt.Sprintf("%.2f", v) }

// OfferFact says for a customer what the tooling of a step is for.
func OfferFact(j *job.File, st *solve.Step) string {
	u := unitsOf(j)
	way := map[method.Method]string{method.ByHand: "by hand", method.ByMallet: "with mallet and vise",
		method.ByPress: "on an arbor press"}[st.Decision.Chosen]
	text := fmt.Sprintf("For %s: %s on %s, pushed %s; design force %s, nominal %s", st.Name, st.Upper.Name, st.Lower.Name, way,
		u.design(st.Result), u.say(st.Result.Peak, "N"))
	if j.RatePerHour > 0 {
		text += fmt.Sprintf(", %.4g an hour", j.RatePerHour)
	}
	return text + "."
}

// headOf says whose job it is.
func headOf(j *job.File) *page {
	p := &page{}
	p.title(&solve.Solution{Job: j})
	return p
}
