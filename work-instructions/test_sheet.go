package workinstructions

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"reflect"
	"strings"
	"time"

	"ramnest/export/page"
	"ramnest/export/picture"
	"ramnest/force/fault"
	"ramnest/force/method"
	"ramnest/force/unit"
)

// A TestSheet says how a ladder of coupons is pressed, and takes what was measured.
type TestSheet struct {
	Paper    Paper // "" is A4
	Job      string
	Title    string
	Revision string
	Author   string // empty: a line to fill in
	Date     time.Time
	Tool     string      // what made it
	Units    unit.System // that figures are printed in, as in the table that is filled in

	Latch        string // its id
	Kind         string // "annular", in words
	SizeName     string // of the figure that is stepped
	StepSize     float64
	Stepped      string // the part that carries the step, lower or upper
	Lower, Upper string // material and process of each part
	Places       int    // joints in one pair
	Pairs        []TestPair
	Table        string   // name of the file that the forces go into
	Bought       []string // what is needed and not printed
	Remarks      []string
	Warnings     []string
	Brittle      bool // a material breaks without yielding
	Snaps        bool // the latch springs in
	Permanent    bool // the latch is not meant to come apart
}

// A TestPair is one pair of coupons.
type TestPair struct {
	Number     int     // as marked on both bodies
	Size       float64 // [mm]
	Nominal    bool
	P5, P95    float64 // expected peak of the whole pair [N]; 0, 0: none, see Word
	Word       string  // "loose" or "locks" where nothing is computed; else empty
	Overstrain bool    // strained beyond what is permitted
}

// handTest is the peak up to which a ladder may be pressed by hand against a gauge [N]
// (own): a thumb gives it without strain.
const handTest = 45

// stopAbove is how far above the P95 a test is stopped (own): beyond it something else
// than the latch resists.
const stopAbove = 1.25

// facts are those that the cautions of the test follow from.
func (s TestSheet) facts() Facts {
	f := Facts{Coupons: true, Method: method.ByPress, Brittle: s.Brittle, Snaps: s.Snaps, Permanent: s.Permanent}
	most, unknown := 0.0, false
	for _, p := range s.Pairs {
		most, unknown = max(most, p.P95), unknown || p.Word == locks
		if p.Overstrain {
			f.Overstrained = 1
		}
	}
	if most <= handTest && !unknown {
		f.Method = method.ByHand
	}
	return f
}

// Words of pairs without a computed force.
const (
	loose = "loose"
	locks = "locks"
)

// Validate returns everything wrong with the sheet.
func (s TestSheet) Validate() []fault.Fault {
	var out []fault.Fault
	for _, t := range []struct{ field, text string }{{"job", s.Job}, {"latch", s.Latch}, {"size_name", s.SizeName}, {"table", s.Table}} {
		if strings.TrimSpace(t.text) == "" {
			out = append(out, fault.Fault{Field: t.field, Problem: "is empty", Want: "a text to print"})
		}
	}
	if n := len(s.Pairs); n < 1 || n > 15 {
		out = append(out, fault.Fault{Field: "pairs", Given: fmt.Sprint(n), Problem: "is no ladder", Want: "1 to 15 pairs"})
	}
	if s.Places < 1 {
		out = append(out, fault.Fault{Field: "places", Given: fmt.Sprint(s.Places), Problem: "is out of range", Want: "1 or more"})
	}
	for i, p := range s.Pairs {
		for _, v := range []struct {
			field string
			x     float64
		}{{"size", math.Abs(p.Size)}, {"p5", p.P5}, {"p95", p.P95}} {
			if !(v.x >= 0 && v.x <= 1e7) {
				out = append(out, fault.Fault{Field: fmt.Sprintf("pairs[%d].%s", i, v.field), Given: fmt.Sprint(v.x), Problem: "is out of range",
					Want: "0 to 1e7"})
			}
		}
		if p.P95 < p.P5 {
			out = append(out, fault.Fault{Field: fmt.Sprintf("pairs[%d].p95", i), Given: fmt.Sprint(p.P95), Problem: "is below P5",
				Want: "P5 or more"})
		}
		if p.Word == "" && p.P95 == 0 || p.Word != "" && p.Word != loose && p.Word != locks {
			out = append(out, fault.Fault{Field: fmt.Sprintf("pairs[%d].word", i), Given: p.Word, Problem: "is not understood",
				Want: "empty with a force, loose or locks without"})
		}
	}
	return out
}

// WriteTest writes the sheet as a PDF. Whatever is wrong with it comes back as
// force.Fault values joined, and nothing is written then. The same sheet gives the same
// bytes.
func WriteTest(w io.Writer, s TestSheet) error {
	if err := join(s.Validate()); err != nil {
		return err
	}
	out := reflect.New(reflect.TypeFor[TestSheet]()).Elem()
	replaced := false
	cleanInto(out, reflect.ValueOf(s), &replaced)
	s = out.Interface().(TestSheet)
	if replaced {
		s.Remarks = append(s.Remarks, fmt.Sprintf("Characters that the font of this sheet has not got are printed as %c.", page.Missing))
	}
	size := page.A4
	if s.Paper == Letter {
		size = page.Letter
	}
	book := page.New(size, picture.EncodePNG)
	defer book.Wait()
	c := emptyComposer(book, Sheet{Job: s.Job, Title: s.Title, Revision: s.Revision, Author: s.Author, Date: s.Date, Tool: s.Tool,
		Units: s.Units}, "Test sheet, job", [2]string{"Latch", s.Latch})
	if err := book.Flow(c.frame, c.testItems(s)); err != nil {
		return fmt.Errorf("lay out the test sheet: %w", err)
	}
	for i, p := range book.Pages {
		c.frameOf(p, i+1, len(book.Pages))
	}
	var file bytes.Buffer
	err := book.Write(&file, page.Info{
		Title: "Test sheet " + s.Job + ": latch " + s.Latch, Author: s.Author, Subject: "Pressing a ladder of coupons",
		Keywords: s.Job + ", " + s.Latch,
		Creator:  s.Tool, Language: "en", Date: s.Date.UTC().Truncate(time.Second),
	})
	if err != nil {
		return fmt.Errorf("write the test sheet: %w", err)
	}
	_, err = w.Write(file.Bytes())
	return err
}
