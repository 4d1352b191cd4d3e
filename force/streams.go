package force

import (
	"hash/fnv"
	"math/rand/v2"
)

// streams are the sources of random numbers of a block of draws: one for what an assembly
// has in common, one for each latch, named by its id. So the draws of a latch are the same
// whatever else is in the job and in whatever order, and those of a block whichever core
// works on it.
type streams struct {
	seed   uint64
	common *rand.Rand
	own    []*rand.Rand // of each design
	names  []uint64
	pcgs   []*rand.PCG // common first
}

// newStreams makes them for a job of that seed; purpose keeps two sets of draws apart.
func newStreams(seed uint64, purpose string, latches []Latch) *streams {
	s := &streams{seed: seed ^ nameOf(purpose), names: []uint64{0}, pcgs: []*rand.PCG{{}}}
	s.common = rand.New(s.pcgs[0])
	for i := range latches {
		pcg := new(rand.PCG)
		s.names, s.pcgs, s.own = append(s.names, nameOf("latch "+latches[i].ID)), append(s.pcgs, pcg), append(s.own, rand.New(pcg))
	}
	return s
}

func nameOf(text string) uint64 {
	h := fnv.New64a()
	h.Write([]byte(text))
	return h.Sum64()
}

// begin goes to the start of a block.
func (s *streams) begin(block int) {
	for i, pcg := range s.pcgs {
		pcg.Seed(s.seed^s.names[i], 0x9E3779B97F4A7C15*uint64(block+1))
	}
}
