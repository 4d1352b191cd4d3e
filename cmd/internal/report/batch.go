package report

import (
	"encoding/csv"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"ramnest/cmd/internal/batch"
	"ramnest/cmd/internal/solve"
)

// A Batch is the table of many jobs: N, and the card's currency.
type Batch struct {
	Schema    string      `json:"schema"` // "ramnest batch"
	Tool      string      `json:"tool"`
	Jobs      int         `json:"jobs"`
	Tooling   int         `json:"with_tooling"`
	NoTooling int         `json:"without_method"`
	Failed    int         `json:"failed"`
	Broken    int         `json:"broken"`
	Note      string      `json:"note,omitzero"`
	Rows      []batch.Row `json:"rows"`
}

// BatchOf counts the rows.
func BatchOf(rows []batch.Row, tool string) Batch {
	b := Batch{Schema: "ramnest batch", Tool: tool, Jobs: len(rows), Rows: rows}
	for _, r := range rows {
		switch r.Outcome {
		case batch.Tooling:
			b.Tooling++
		case batch.NoTooling:
			b.NoTooling++
		case batch.Failed:
			b.Failed++
		case batch.Broken:
			b.Broken++
		}
		if r.Invented {
			b.Note = "Totals marked INVENTED are of invented round rates: no prices."
		}
	}
	return b
}

// BatchRow takes from a solution what the table says of it.
func BatchRow(s *solve.Solution) batch.Row {
	r := batch.Row{Job: s.Job.Number, Revision: s.Job.Revision, Title: s.Job.Title, Outcome: batch.NoTooling, Steps: len(s.Steps),
		Pieces: len(s.Pieces()), Warnings: len(warnings(s)), Fingerprint: s.Fingerprint}
	if s.Tooled() {
		r.Outcome = batch.Tooling
	}
	var methods []string
	var locks, none bool
	for i := range s.Steps {
		st := &s.Steps[i]
		if m := string(st.Decision.Chosen); !slices.Contains(methods, m) {
			methods = append(methods, m)
		}
		r.Peak, r.P95, r.Design = max(r.Peak, st.Result.Peak), max(r.P95, st.Result.P95), max(r.Design, st.Result.Design)
		locks, none = locks || st.Result.Locks, none || st.Result.NoP95
	}
	// What one step has no figure of, the job has none of.
	if locks {
		r.Peak = 0
	}
	if none {
		r.P95, r.Design = 0, 0
	}
	r.Method = strings.Join(methods, ", ")
	if q := s.Quote; q != nil {
		r.Total, r.Currency, r.Invented = new(q.Total), q.Currency, q.Invented
	}
	if c := CalibrationOf(s); c != nil {
		r.Calibration = c.Words()
	}
	return r
}

// WriteBatch writes the table as comma-separated values. Text that a spreadsheet would
// take for a formula gets an apostrophe.
func WriteBatch(w io.Writer, b Batch) error {
	out := csv.NewWriter(w)
	rows := [][]string{{"file", "job", "revision", "title", "outcome", "method", "steps", "peak_N", "p95_N", "design_force_N", "pieces",
		"total", "currency", "rates", "warnings", "calibration", "fingerprint", "folder", "stale_files", "faults"}}
	plain := func(s string) string {
		if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
			return "'" + s
		}
		return s
	}
	for _, r := range b.Rows {
		worked := r.Outcome == batch.Tooling || r.Outcome == batch.NoTooling
		number := func(v float64) string {
			if !worked || v == 0 {
				return ""
			}
			return strconv.FormatFloat(v, 'f', 1, 64)
		}
		count := func(n int) string {
			if !worked {
				return ""
			}
			return fmt.Sprint(n)
		}
		total, rates, stale := "", "", ""
		if r.Total != nil {
			total, rates = money(*r.Total), "the card's"
		}
		if r.Invented {
			rates = "INVENTED"
		}
		if r.Stale {
			stale = "yes"
		}
		rows = append(rows, []string{plain(r.File), plain(r.Job), plain(r.Revision), plain(r.Title), r.Outcome, r.Method, count(r.Steps),
			number(r.Peak), number(r.P95), number(r.Design), count(r.Pieces),
			total, plain(r.Currency), rates, count(r.Warnings), plain(r.Calibration), r.Fingerprint, plain(r.Folder), stale, plain(strings.Join(r.Faults, "; "))})
	}
	if err := out.WriteAll(rows); err != nil {
		return fmt.Errorf("write table: %w", err)
	}
	return nil
}

// BatchText is the table for a terminal. unchanged is how many jobs had been done in an
// earlier run.
func BatchText(b Batch, folder string, unchanged int) string {
	p := &page{}
	p.head("BATCH  %d jobs", b.Jobs)
	rows := [][]string{{"file", "job", "method", "design N", "total", ""}}
	var currencies []string
	short := func(s string, n int) string {
		if r := []rune(s); len(r) > n {
			return string(r[:n-2]) + ".."
		}
		return s
	}
	for _, r := range b.Rows {
		row := []string{short(strings.TrimSuffix(r.File, filepath.Ext(r.File)), 18), short(r.Job, 13), r.Method,
			unless(r.Design == 0, number(r.Design), "none"), "-", ""}
		switch {
		case r.Outcome == batch.Failed || r.Outcome == batch.Broken:
			row[2], row[3], row[5] = "-", "-", strings.ToUpper(r.Outcome)
		case r.Outcome == batch.NoTooling:
			row[5] = "no manual method"
		case r.Total != nil:
			row[4] = money(*r.Total)
			if !slices.Contains(currencies, r.Currency) {
				currencies = append(currencies, r.Currency)
			}
			switch {
			case r.Invented:
				row[5] = "INVENTED"
			case len(currencies) > 1:
				row[5] = short(r.Currency, 12)
			}
		default:
			row[5] = "not priced"
		}
		rows = append(rows, row)
	}
	p.table("lllrrl", rows)
	p.line("")
	if len(currencies) > 0 {
		p.wrap("  ", "  ", "Totals are in "+joined(currencies)+", each by the card of its job.")
	}
	p.wrap("  ", "  ", fmt.Sprintf("%d with tooling, %d without a manual method, %d failed, %d broken; %d unchanged since an earlier run.",
		b.Tooling, b.NoTooling, b.Failed, b.Broken, unchanged))
	if b.Note != "" {
		p.wrap("  ", "  ", b.Note)
	}
	if i := slices.IndexFunc(b.Rows, func(r batch.Row) bool { return r.Calibration != "" }); i >= 0 {
		p.wrap("  ", "  ", "CALIBRATION: "+b.Rows[i].Calibration)
	}
	p.faults(b)
	p.files(folder, []string{"batch.csv", "batch.json"})
	return p.b.String()
}

// faults tells why jobs came to nothing.
func (p *page) faults(b Batch) {
	if b.Failed+b.Broken == 0 {
		return
	}
	p.head("FAILED")
	for _, r := range b.Rows {
		if r.Outcome != batch.Failed && r.Outcome != batch.Broken {
			continue
		}
		for _, f := range r.Faults {
			if r.Outcome == batch.Broken {
				f = r.File + ": " + f
			}
			p.wrap("  - ", "    ", f)
		}
		if r.Stale {
			p.wrap("    ", "    ", "the files in its folder are of an earlier version of the job and no longer hold")
		}
	}
}
