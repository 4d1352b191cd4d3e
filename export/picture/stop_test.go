package picture

import (
	"context"
	"errors"
	"math"
	"testing"
)

// A lookContext ends at the look of a given number.
type lookContext struct {
	context.Context
	looks, end int
}

func (c *lookContext) Err() error {
	if c.looks++; c.looks > c.end {
		return context.Canceled
	}
	return nil
}

// bumpy is a closed body of many triangles.
func bumpy(n int) Body {
	b := Body{Tone: Medium}
	for i := range n {
		for k := range n {
			a, e := 2*math.Pi*float64(i)/float64(n), math.Pi*float64(k)/float64(n-1)
			r := 20 + math.Sin(7*a)*math.Sin(5*e)
			b.Vertices = append(b.Vertices, [3]float64{r * math.Sin(e) * math.Cos(a), r * math.Sin(e) * math.Sin(a), r * math.Cos(e)})
		}
	}
	for i := range n {
		for k := range n - 1 {
			p, q := int32(i*n+k), int32((i+1)%n*n+k)
			b.Triangles = append(b.Triangles, [3]int32{p, p + 1, q}, [3]int32{q, p + 1, q + 1})
		}
	}
	return b
}

// A picture is given up at whichever look the context has ended, and there is one at
// least at every 64th triangle that is filled and every 64th edge that is drawn.
func TestRenderStops(t *testing.T) {
	t.Parallel()
	s := Scene{Bodies: []Body{bumpy(60)}, View: View{Azimuth: 0.5, Elevation: 0.5}, Width: 300, Height: 200, Section: &Section{Normal: [3]float64{0, -1, 0}}}
	all := &lookContext{context.Background(), 0, math.MaxInt}
	if _, err := RenderContext(all, s); err != nil {
		t.Fatal(err)
	}
	n := len(s.Bodies[0].Triangles)
	if least := n/64 + 3*n/2/64; all.looks < least {
		t.Errorf("%d looks at the context for %d triangles, want %d", all.looks, n, least)
	}
	for end := range all.looks {
		if img, err := RenderContext(&lookContext{context.Background(), 0, end}, s); !errors.Is(err, context.Canceled) || img != nil {
			t.Fatalf("ended at look %d of %d: %v", end, all.looks, err)
		}
	}
}
