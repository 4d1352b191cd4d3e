package quote

import (
	"encoding/csv"
	"fmt"
	"io"
	"strings"
)

// WriteCSV writes the quote as comma-separated values: a head, the lines, the total
// with its note. Text that a spreadsheet would take for a formula gets an apostrophe.
func WriteCSV(w io.Writer, q Quote) error {
	out := csv.NewWriter(w)
	rows := [][]string{{"item", "count", "each", "amount", "currency", "note"}}
	for _, l := range q.Lines {
		rows = append(rows, []string{plain(l.Text), fmt.Sprint(l.Count), money(l.Each), money(l.Amount), plain(q.Currency), ""})
	}
	rows = append(rows, []string{"total", "", "", money(q.Total), plain(q.Currency), plain(q.Note)})
	if err := out.WriteAll(rows); err != nil {
		return fmt.Errorf("write quote: %w", err)
	}
	return nil
}

func money(x float64) string { return fmt.Sprintf("%.2f", x) }

func plain(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}
