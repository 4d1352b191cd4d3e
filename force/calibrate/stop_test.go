package calibrate

import (
	"context"
	"errors"
	"math"
	"sync/atomic"
	"testing"
	"time"

	"ramnest/force"
)

// A lookContext ends at the look of a given number, and notes the longest time between
// two looks.
type lookContext struct {
	context.Context
	looks, end atomic.Int64
	last       atomic.Int64
	longest    atomic.Int64
}

func lookingTo(end int64) *lookContext {
	c := &lookContext{Context: context.Background()}
	c.end.Store(end)
	c.last.Store(time.Now().UnixNano())
	return c
}

func (c *lookContext) Err() error {
	now := time.Now().UnixNano()
	if gap := now - c.last.Swap(now); gap > c.longest.Load() {
		c.longest.Store(gap)
	}
	if c.looks.Add(1) > c.end.Load() {
		return context.Canceled
	}
	return nil
}

// Each stage of a calibration is given up wherever its context ends, and looks often.
func TestStops(t *testing.T) {
	t.Parallel()
	in := Input{Assembly: force.Assembly{Lower: pa12, Upper: pa12, Latches: []force.Latch{rim()}}, Coupons: ladder(rim(), 0.5, 0.1, 5)}
	rows := []Measurement{{Latch: "rim", Coupon: "1", Force: 20}, {Latch: "rim", Coupon: "4", Force: 60}}
	model, err := NewModel(in)
	if err != nil {
		t.Fatal(err)
	}
	fit, err := model.Fit(rows)
	if err != nil {
		t.Fatal(err)
	}
	stages := []struct {
		name   string
		fewest int64
		run    func(ctx context.Context) error
	}{
		{"NewModel", 700, func(ctx context.Context) error { m, err := NewModelContext(ctx, in); return orResult(m != nil, err) }},
		{"Fit", 2000, func(ctx context.Context) error {
			f, err := model.FitContext(ctx, rows)
			return orResult(f != nil, err)
		}},
		{"Advise", 60, func(ctx context.Context) error {
			a, err := fit.AdviseContext(ctx, Goal{Latch: rows[0].Latch})
			return orResult(!a.Text.Empty(), err)
		}},
	}
	for _, s := range stages {
		t.Run(s.name, func(t *testing.T) {
			all := lookingTo(math.MaxInt64)
			start := time.Now()
			if err := s.run(all); err != nil {
				t.Fatal(err)
			}
			looks := all.looks.Load()
			t.Logf("%d looks in %v, %v without one", looks, time.Since(start), time.Duration(all.longest.Load()))
			if looks < s.fewest {
				t.Errorf("%d looks, want %d or more", looks, s.fewest)
			}
			for k := range int64(4) {
				end := k * (looks - 1) / 3
				ctx := lookingTo(end)
				if err := s.run(ctx); !errors.Is(err, context.Canceled) {
					t.Errorf("ended at look %d of %d: %v", end, looks, err)
				}
				// Beside each other the latches look once more each.
				if more := ctx.looks.Load() - end; more > 20 {
					t.Errorf("ended at look %d of %d, looked %d times more", end, looks, more)
				}
			}
		})
	}
}

// orResult is the error, or that a stage gave a result beside one.
func orResult(some bool, err error) error {
	if some && err != nil {
		return errors.New("a result beside an error")
	}
	return err
}
