package calibrate

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"ramnest/force/fault"
	"ramnest/force/unit"
)

// A Measurement is one pair pressed together.
type Measurement struct {
	Line   int     // in the file; 0: none
	Latch  string  // its id
	Coupon string  // number of the step as marked, or "piece" for a first piece as drawn
	Size   float64 // as drawn, where the table states it [mm]; 0: not stated
	Force  float64 // peak [N]; of all joints of the pair
	NoGo   bool    // it did not go together: the force is what was reached in vain
	Note   string
}

// Piece is the coupon's name for a first piece of the job itself, as drawn.
const Piece = "piece"

// Limits bound a table of measurements. A zero field means the default.
type Limits struct {
	Bytes int // size of the file; default [MostBytes]
	Rows  int // default [MostRows]
}

// Limits of a table of measurements unless a caller says otherwise.
const (
	MostBytes = 1 << 20
	MostRows  = 2000
)

func (l Limits) orDefault() Limits {
	if l.Bytes == 0 {
		l.Bytes = MostBytes
	}
	if l.Rows == 0 {
		l.Rows = MostRows
	}
	return l
}

const (
	mostText  = 200
	mostForce = 1e6 // [N]
)

// A LineFault is what is wrong with one line of a table of measurements.
type LineFault struct {
	Line int
	fault.Fault
}

// Error gives the line and the fault.
func (f LineFault) Error() string { return fmt.Sprintf("line %d: %s", f.Line, f.Fault.Error()) }

// Unwrap gives the fault.
func (f LineFault) Unwrap() error { return f.Fault }

var columns = []string{"latch", "coupon", "force", "note", "size"}

// headsWithUnit are the heads that state their unit.
var headsWithUnit = map[string]struct {
	column string
	one    float64 // what one of the unit is in mm or N
}{
	"size_mm": {"size", 1}, "size_in": {"size", unit.Inch},
	"force_n": {"force", 1}, "force_lbf": {"force", unit.PoundForce},
}

// Heads gives the heads of size and force for a table in the units of a job.
func Heads(s unit.System) (size, force string) {
	return "size_" + strings.ToLower(s.Name(unit.Length)), "force_" + strings.ToLower(s.Name(unit.Force))
}

// ReadMeasurements reads a table of measured forces: comma-separated values with a
// head that names the columns latch, coupon, force and, if wanted, note and size (as
// drawn, so that a table of another ladder is found out); others are left alone. A head
// may state the unit: force_n or force_lbf, size_mm or size_in, see [Heads]; force alone
// is in the caller's unit, size alone in mm. A note that begins with "no-go" says that the pair did not go together;
// anything else that it went. Rows without a force have not been measured and are
// skipped. A file with semicolons may write decimals with a comma. newtons is what one
// unit of force is [N] where the head states none, 1 or that of a pound-force.
//
// Everything wrong with the file is returned at once, as LineFault values joined.
func ReadMeasurements(r io.Reader, newtons float64) ([]Measurement, error) {
	return ReadMeasurementsWithin(r, newtons, Limits{})
}

// ReadMeasurementsWithin is [ReadMeasurements] with limits of the caller's.
func ReadMeasurementsWithin(r io.Reader, newtons float64, limits Limits) ([]Measurement, error) {
	limits = limits.orDefault()
	if !(newtons > 0 && newtons <= mostForce) {
		return nil, fault.Fault{Field: "newtons", Given: fmt.Sprint(newtons), Problem: "is no unit of force", Want: "above 0"}
	}
	data, err := io.ReadAll(io.LimitReader(r, int64(limits.Bytes)+1))
	if err != nil {
		return nil, fmt.Errorf("read measurements: %w", err)
	}
	if len(data) > limits.Bytes {
		return nil, LineFault{1, fault.Fault{Field: "file", Problem: "is too large for a table of measurements",
			Want: fmt.Sprintf("up to %d bytes, or a higher limit", limits.Bytes)}}
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if !utf8.Valid(data) {
		return nil, LineFault{1, fault.Fault{Field: "file", Problem: "is not text in UTF-8", Want: "the table saved as CSV, UTF-8"}}
	}
	t := table{newtons: newtons, mm: 1, rows: limits.Rows, csv: csv.NewReader(bytes.NewReader(data))}
	t.csv.Comment, t.csv.TrimLeadingSpace, t.csv.FieldsPerRecord = '#', true, -1
	head, _, _ := bytes.Cut(data, []byte("\n"))
	for line := range bytes.Lines(data) {
		if head = bytes.TrimSpace(line); len(head) > 0 && head[0] != '#' {
			break
		}
	}
	if bytes.ContainsRune(head, ';') && !bytes.ContainsRune(head, ',') {
		t.csv.Comma, t.decimalComma = ';', true
	}
	return t.read()
}

// table reads row by row and collects faults.
type table struct {
	csv          *csv.Reader
	newtons      float64 // one unit of force of the file
	mm           float64 // one unit of length of the file
	rows         int     // at most
	decimalComma bool
	at           map[string]int // column by name
	faults       []error
	unlisted     int
}

const mostFaults = 50

func (t *table) fault(line int, f fault.Fault) {
	if len(t.faults) >= mostFaults {
		t.unlisted++
		return
	}
	t.faults = append(t.faults, LineFault{line, f})
}

func (t *table) read() ([]Measurement, error) {
	var out []Measurement
	rows := 0
	for {
		row, err := t.csv.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			line := 1
			if p, ok := errors.AsType[*csv.ParseError](err); ok {
				line = p.Line
			}
			t.fault(line, fault.Fault{Field: "file", Problem: "is not comma-separated values from here on: quotes do not match"})
			break
		}
		line, _ := t.csv.FieldPos(0)
		if t.at == nil {
			if !t.head(line, row) {
				break
			}
			continue
		}
		if rows++; rows > t.rows {
			t.fault(line, fault.Fault{Field: "file", Problem: "has too many rows", Want: fmt.Sprintf("%d at most, or a higher limit", t.rows)})
			break
		}
		if m, ok := t.row(line, row); ok {
			out = append(out, m)
		}
	}
	if t.at == nil && len(t.faults) == 0 {
		t.fault(1, fault.Fault{Field: "file", Problem: "is empty", Want: "a head: " + strings.Join(columns[:4], ",")})
	}
	if t.unlisted > 0 {
		t.faults = append(t.faults, fault.Fault{Field: "file", Given: fmt.Sprint(t.unlisted), Problem: "more faults are not listed"})
	}
	if len(t.faults) > 0 {
		return nil, errors.Join(t.faults...)
	}
	return out, nil
}

// head reads the names of the columns.
func (t *table) head(line int, row []string) bool {
	t.at = map[string]int{}
	for i, name := range row {
		name = strings.ToLower(strings.TrimSpace(name))
		stated, ok := headsWithUnit[name]
		switch {
		case ok && stated.column == "size":
			name, t.mm = stated.column, stated.one
		case ok:
			name, t.newtons = stated.column, stated.one
		case !slices.Contains(columns, name):
			continue
		}
		if _, double := t.at[name]; double {
			t.fault(line, fault.Fault{Field: name, Problem: "stands twice in the head", Want: "one column of that name"})
		}
		t.at[name] = i
	}
	for _, name := range columns[:3] {
		if _, ok := t.at[name]; !ok {
			t.fault(line, fault.Fault{Field: name, Problem: "is missing in the head", Want: strings.Join(columns[:4], ",")})
		}
	}
	return len(t.faults) == 0
}

// row reads one measurement; ok is false for a fault and for a row not measured.
func (t *table) row(line int, row []string) (Measurement, bool) {
	cell := func(name string) string {
		i, ok := t.at[name]
		if !ok || i >= len(row) {
			return ""
		}
		return strings.TrimSpace(row[i])
	}
	m := Measurement{Line: line, Latch: cell("latch"), Coupon: cell("coupon"), Note: cell("note")}
	written := cell("force")
	if m.Latch == "" && m.Coupon == "" && written == "" && m.Note == "" {
		return m, false
	}
	before := len(t.faults) + t.unlisted
	for _, name := range columns {
		if n := utf8.RuneCountInString(cell(name)); n > mostText {
			t.fault(line, fault.Fault{Field: name, Given: fmt.Sprint(n, " characters"), Problem: "is too long",
				Want: fmt.Sprint(mostText, " or fewer")})
		}
	}
	if m.Latch == "" {
		t.fault(line, fault.Fault{Field: "latch", Problem: "is empty", Want: "the id of a latch"})
	}
	if m.Coupon == "" {
		t.fault(line, fault.Fault{Field: "coupon", Problem: "is empty", Want: "the number on the coupon, or " + Piece})
	}
	if size := cell("size"); size != "" && written != "" && len(size) <= mostText {
		m.Size = t.size(line, size)
	}
	m.NoGo = noGo(m.Note)
	if written == "" {
		if m.NoGo {
			t.fault(line, fault.Fault{Field: "force", Problem: "is empty, and what was reached in vain counts",
				Want: "the largest force that was tried"})
		}
		return m, false
	}
	if len(written) <= mostText {
		m.Force = t.number(line, written)
	}
	if m.NoGo && m.Force == 0 {
		t.fault(line, fault.Fault{Field: "force", Given: written, Problem: "says nothing of a pair that did not go together",
			Want: "the largest force that was tried"})
	}
	return m, before == len(t.faults)+t.unlisted
}

// size reads a size as drawn, and gives it in mm.
func (t *table) size(line int, s string) float64 {
	name := "mm"
	if t.mm != 1 {
		name = "in"
	}
	plain := s
	if t.decimalComma {
		plain = strings.Replace(s, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(plain, 64)
	v *= t.mm
	if err != nil || strings.ContainsAny(plain, "xXpP_nN") || !(math.Abs(v) <= 100) {
		t.fault(line, fault.Fault{Field: "size", Given: strconv.Quote(s), Problem: "is no size in " + name,
			Want: "as the table of the ladder has it, or nothing"})
		return 0
	}
	return v
}

func (t *table) number(line int, s string) float64 {
	plain := s
	if t.decimalComma {
		plain = strings.Replace(s, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(plain, 64)
	v *= t.newtons
	switch {
	case err != nil || strings.ContainsAny(plain, "xXpP_nN"):
		t.fault(line, fault.Fault{Field: "force", Given: strconv.Quote(s), Problem: "is not a number", Want: "such as 84.5, without its unit"})
	case !(v >= 0 && v <= mostForce) || math.Signbit(v):
		t.fault(line, fault.Fault{Field: "force", Given: s, Problem: "is out of range", Want: "0 N to 1 MN"})
	default:
		return v
	}
	return 0
}

// noGo reads the verdict at the head of a note.
func noGo(note string) bool {
	n := strings.ToLower(note)
	for _, w := range []string{"no-go", "no go", "nogo"} {
		if strings.HasPrefix(n, w) {
			return true
		}
	}
	return false
}
