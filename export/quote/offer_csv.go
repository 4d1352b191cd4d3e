package quote

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// offerHead are the columns of an offer as comma-separated values.
var offerHead = []string{"item", "process", "material", "orientation", "count", "volume_mm3", "mass_g", "x_mm", "y_mm", "z_mm",
	"pieces_per_build", "build_height_mm", "height_share_pct",
	"machine_hours", "machine", "material_cost", "finishing", "each", "amount", "currency", "note"}

// WriteOffer writes an offer as comma-separated values: the items, what comes on top,
// the total, the quantity breaks, and the break-even, or why there is none. Text that a
// spreadsheet would take for a formula gets an apostrophe. The note, which says so if
// the card is invented, stands on every row.
func WriteOffer(w io.Writer, o Offer, p *Payback, open string) error {
	out := csv.NewWriter(w)
	rows := [][]string{offerHead}
	row := func(item string) []string {
		r := make([]string, len(offerHead))
		r[0], r[len(r)-2], r[len(r)-1] = plain(item), plain(o.Currency), plain(o.Note)
		return r
	}
	short := func(v float64) string { return strconv.FormatFloat(v, 'f', 3, 64) }
	for _, l := range o.Items {
		r := row(l.Name)
		copy(r[1:], []string{l.Process, plain(l.Material), plain(l.Orientation), fmt.Sprint(l.Count), short(l.Volume), short(l.Mass),
			short(l.Box[0]), short(l.Box[1]), short(l.Box[2]),
			fmt.Sprint(l.PiecesPerBuild), short(l.BuildHeight), short(100 * l.HeightShare), short(l.Hours), money(l.Machine), money(l.Stuff), money(l.Finishing), money(l.Each), money(l.Amount)})
		rows = append(rows, r)
	}
	sum := func(item string, amount float64) {
		r := row(item)
		r[len(r)-3] = money(amount)
		rows = append(rows, r)
	}
	sum("handling", o.Handling)
	sum("margin", o.Margin)
	if o.ToMinimum > 0 {
		sum("up to the minimum", o.ToMinimum)
	}
	sum("total", o.Total)
	for _, b := range o.Breaks {
		r := row(fmt.Sprintf("quantity %d", b.Quantity))
		r[len(r)-4], r[len(r)-3] = money(b.Each), money(b.Total)
		rows = append(rows, r)
	}
	switch {
	case p != nil:
		r := row("break-even")
		if p.Pays {
			r[4] = fmt.Sprint(p.Assemblies)
			if p.Hours > 0 {
				r[13] = short(p.Hours)
			}
		}
		r[len(r)-1] = plain(p.Text)
		rows = append(rows, r)
	case open != "":
		r := row("break-even")
		r[len(r)-1] = plain("not known: " + open)
		if o.Invented {
			r[len(r)-1] += " (INVENTED rates)"
		}
		rows = append(rows, r)
	}
	if err := out.WriteAll(rows); err != nil {
		return fmt.Errorf("write offer: %w", err)
	}
	return nil
}

func money(x float64) string { return fmt.Sprintf("%.2f", x) }

// plain keeps a spreadsheet from taking a text for a formula.
func plain(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}
