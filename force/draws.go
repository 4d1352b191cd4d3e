package force

import (
	"context"
	"math"
	"runtime"
	"sync"
	"sync/atomic"
)

// blockDraws is how many assemblies are drawn at a stretch; blocks are shared out among
// the cores, and what they give is put together in their order.
const blockDraws = 512

// draws are the drawn assemblies of a press step.
type draws struct {
	assembly Assembly
	joints   []joint
	counts   []int
	band     band

	peaks, works []float64 // of each assembly [N], [mJ]; infinite where a joint jams
	tally
}

// A tally counts what drawn assemblies were like.
type tally struct {
	loose, over int
	jams        jamCount
	spread      *variance
}

func (d *draws) newTally() tally {
	return tally{jams: jamCount{each: make([]int, len(d.joints))}, spread: newVariance(d.assembly.Latches)}
}

// run draws all assemblies. It gives the error of the context if that ends.
func (d *draws) run(ctx context.Context) error {
	blocks := (len(d.peaks) + blockDraws - 1) / blockDraws
	tallies := make([]tally, blocks)
	var next atomic.Int32
	var group sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), blocks) {
		group.Go(func() {
			t, s := newTrial(d.joints, d.counts), newStreams(d.assembly.Seed, "tolerance", d.assembly.Latches)
			for k := int(next.Add(1)) - 1; k < blocks && ctx.Err() == nil; k = int(next.Add(1)) - 1 {
				tallies[k] = d.block(k, t, s)
			}
		})
	}
	group.Wait()
	if err := ctx.Err(); err != nil {
		return err
	}
	d.tally = tallies[0]
	for _, one := range tallies[1:] {
		d.loose, d.over = d.loose+one.loose, d.over+one.over
		d.jams.join(one.jams)
		d.spread.join(one.spread)
	}
	return nil
}

// block draws one block.
func (d *draws) block(k int, t *trial, s *streams) tally {
	out := d.newTally()
	s.begin(k)
	x := out.spread.x
	for i := k * blockDraws; i < min((k+1)*blockDraws, len(d.peaks)); i++ {
		c, common := d.band.draw(s.common)
		copy(x, common[:])
		t.draw(&c, s.own, apartShare, x[len(commonInputs):])
		out.jams.add(t)
		out.loose, out.over = out.loose+one(t.loose), out.over+one(t.over)
		if t.jam {
			d.peaks[i], d.works[i] = math.Inf(1), math.Inf(1)
			continue
		}
		d.peaks[i], d.works[i] = t.peak(), t.work()
		out.spread.add(d.peaks[i])
	}
	return out
}
