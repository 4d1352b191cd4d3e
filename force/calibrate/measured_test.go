package calibrate

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"ramnest/force"
	"ramnest/force/fault"
)

func TestReadMeasurements(t *testing.T) {
	const comma = "\ufeff# week 12\nlatch,coupon,size,force,note\nrim,1,0.3,84.5,go\nrim, 2,0.4,,\nrim,3,0.5,210,No-go: stopped\n\npin,piece,,0,fell in\n"
	const semicolon = "Latch;Coupon;Force;Note\r\nrim;1;84,5;go\r\nrim;3;210;no go, stopped\r\n\"pin\";piece;0;fell in\r\n"
	want := []Measurement{{Latch: "rim", Coupon: "1", Force: 84.5}, {Latch: "rim", Coupon: "3", Force: 210, NoGo: true}, {Latch: "pin", Coupon: Piece}}
	for name, text := range map[string]string{"comma": comma, "semicolon": semicolon} {
		t.Run(name, func(t *testing.T) {
			got, err := ReadMeasurements(strings.NewReader(text), 1)
			if err != nil || len(got) != len(want) {
				t.Fatalf("got %v, %v", got, err)
			}
			for i, m := range got {
				w := want[i]
				if m.Latch != w.Latch || m.Coupon != w.Coupon || m.Force != w.Force || m.NoGo != w.NoGo || m.Line == 0 || name == "comma" && m.Coupon != Piece && m.Size == 0 {
					t.Errorf("got %+v, want %+v", m, w)
				}
			}
		})
	}
	got, err := ReadMeasurements(strings.NewReader("latch,coupon,force\nrim,1,10\n"), 4.4482216152605)
	if err != nil || math.Abs(got[0].Force-44.482216152605) > 1e-9 {
		t.Errorf("10 lbf: %v, %v", got, err)
	}
}

func TestFaultsOfATable(t *testing.T) {
	const head = "latch,coupon,force,note\n"
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", "line 1: file: is empty"},
		{"no head", "rim,1,84\n", "line 1: latch: is missing in the head"},
		{"double column", "latch,coupon,force,force\n", "line 1: force: stands twice"},
		{"word", head + "rim,1,84\nrim,2,hard,\n", `line 3: force: "hard"; is not a number`},
		{"unit", head + "rim,1,84 N\n", "line 2: force"},
		{"hex", head + "rim,1,0x10p2\n", "line 2: force"},
		{"not a number", head + "rim,1,NaN\n", "line 2: force"},
		{"infinite", head + "rim,1,Inf\n", "line 2: force"},
		{"negative", head + "rim,1,-3\n", "line 2: force: -3; is out of range"},
		{"huge", head + "rim,1,1e9\n", "line 2: force"},
		{"no latch", head + ",1,84\n", "line 2: latch: is empty"},
		{"no coupon", head + "rim,,84\n", "line 2: coupon: is empty"},
		{"no-go without force", head + "rim,1,,no-go\n", "line 2: force: is empty"},
		{"no-go at nothing", head + "rim,1,0,no-go\n", "line 2: force"},
		{"size of letters", "latch,coupon,size,force\nrim,1,wide,84\n", `line 2: size: "wide"; is no size in mm`},
		{"two forces", "latch,coupon,force_lbf,force_n\nrim,1,84,3\n", "line 1: force: stands twice"},
		{"size in inches", "latch,coupon,size_in,force\nrim,1,wide,84\n", `line 2: size: "wide"; is no size in in`},
		{"large size in inches", "latch,coupon,size_in,force\nrim,1,4,84\n", `line 2: size`},
		{"infinite size", "latch,coupon,size,force\nrim,1,Inf,84\n", "line 2: size"},
		{"quotes", head + "rim,\"1,84\n", "file: is not comma-separated"},
		{"long", head + "rim,1,84," + strings.Repeat("x", 300) + "\n", "line 2: note: 300 characters; is too long"},
		{"many", head + strings.Repeat("rim,1,84,\n", MostRows+1), "too many rows"},
		{"large", head + strings.Repeat("#", MostBytes), "too large"},
		{"bytes", head + "rim,1,\xff84\n", "UTF-8"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := ReadMeasurements(strings.NewReader(c.text), 1)
			if err == nil || !strings.Contains(err.Error(), c.want) || got != nil {
				t.Errorf("got %v, %v; want %q", got, err, c.want)
			}
			var f fault.Fault
			if !errors.As(err, &f) {
				t.Errorf("%v is no fault", err)
			}
		})
	}
	many := head + strings.Repeat("rim,1,x,\n", 200)
	if _, err := ReadMeasurements(strings.NewReader(many), 1); strings.Count(err.Error(), "\n") != mostFaults || !strings.Contains(err.Error(), "150; more faults") {
		t.Errorf("200 faults: %v", err)
	}
	if _, err := ReadMeasurements(strings.NewReader(head), math.NaN()); err == nil {
		t.Error("no unit was taken")
	}
}

func FuzzReadMeasurements(f *testing.F) {
	f.Add("latch,coupon,force,note\nrim,1,84.5,go\n")
	f.Add("latch;coupon;force\nrim;1;84,5\n")
	f.Fuzz(func(t *testing.T, text string) {
		got, err := ReadMeasurements(strings.NewReader(text), 1)
		if err != nil {
			return
		}
		// What was read comes back when written out and read again.
		var b strings.Builder
		b.WriteString("latch,coupon,force,note\n")
		q := func(s string) string { return `"` + strings.ReplaceAll(s, `"`, `""`) + `"` }
		for _, m := range got {
			if m.Latch == "" || m.Coupon == "" || !(m.Force >= 0 && m.Force <= mostForce) {
				t.Fatalf("read %+v", m)
			}
			fmt.Fprintf(&b, "%s,%s,%v,%s\n", q(m.Latch), q(m.Coupon), m.Force, q(m.Note))
		}
		again, err := ReadMeasurements(strings.NewReader(b.String()), 1)
		if err != nil || len(again) != len(got) {
			t.Fatalf("%v of %q", err, b.String())
		}
		for i := range got {
			got[i].Line, again[i].Line = 0, 0
			if got[i] != again[i] {
				t.Errorf("%+v came back as %+v", got[i], again[i])
			}
		}
	})
}

// A caller may raise or lower the limits of a table.
func TestLimitsOfATable(t *testing.T) {
	t.Parallel()
	text := "latch,coupon,force\n" + strings.Repeat("rim,1,84\n", MostRows+1)
	long := text + strings.Repeat("#", MostBytes)
	for _, c := range []struct {
		text   string
		limits Limits
		good   bool
	}{
		{text, Limits{}, false}, {text, Limits{Rows: MostRows + 1}, true}, {text, Limits{Rows: MostRows + 1, Bytes: 100}, false},
		{long, Limits{Rows: MostRows + 1}, false}, {long, Limits{Rows: MostRows + 1, Bytes: 2 * MostBytes}, true},
	} {
		if rows, err := ReadMeasurementsWithin(strings.NewReader(c.text), 1, c.limits); (err == nil) != c.good || c.good && len(rows) != MostRows+1 {
			t.Errorf("%d bytes within %+v: %d rows, %v", len(c.text), c.limits, len(rows), err)
		}
	}
	in := Input{Assembly: force.Assembly{Lower: pa12, Upper: pa12, Latches: []force.Latch{rim()}}, Coupons: ladder(rim(), 0.5, 0.1, 5)}
	rows := make([]Measurement, 3)
	for i := range rows {
		rows[i] = Measurement{Latch: "rim", Coupon: "1", Force: 20}
	}
	for most, good := range map[int]bool{0: true, 2: false, 3: true} {
		in.MostRows = most
		m, err := NewModel(in)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := m.Fit(rows); (err == nil) != good {
			t.Errorf("%d rows, at most %d: %v", len(rows), most, err)
		}
	}
}
