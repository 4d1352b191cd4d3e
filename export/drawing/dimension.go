package drawing

import (
	"cmp"
	"math"
	"slices"
)

// Sizes of dimensions on the sheet [mm], of type [pt].
const (
	dimType    = 9.0
	firstTrack = 9.0 // from the view to the first dimension line
	nextTrack  = 7.0
	pastTracks = 4.5 // room beyond the last
	lettersOut = 17.0
)

// A rung is a dimension laid out: along the side of its view.
type rung struct {
	a, b     float64 // ends along the side, on the sheet and from the start of the view [mm]
	from, to float64 // how far inside the view the points lie that it runs to [mm]
	text     string
	width    float64
	low      float64 // where the text begins, along [mm]
	outside  bool    // the text stands beyond an end
	tight    bool    // the arrows point inward from outside
	track    int
}

// A side is the dimensions along one side of a view.
type side []rung

// laid chooses the place of each text and the distance of each line. Short ones lie
// nearer, so that no dimension line crosses an extension line of another that it need not.
func laid(rungs []rung) side {
	slices.SortStableFunc(rungs, func(p, q rung) int { return cmp.Or(cmp.Compare(p.b-p.a, q.b-q.a), cmp.Compare(p.a, q.a)) })
	var out side
	for _, r := range rungs {
		r.tight = r.b-r.a < 2*arrowLong+1.5
		r.track = math.MaxInt
		best := r
		for _, low := range r.places() {
			try := r
			try.low = low
			try.outside = low > r.b || low+r.width < r.a
			try.track = 0
			for slices.ContainsFunc(out, func(o rung) bool { return o.track == try.track && o.touches(try) }) {
				try.track++
			}
			// A text on an extension line of another is worse than one further out.
			try.track += 2 * try.crossed(rungs)
			if try.track < best.track {
				best = try
			}
		}
		best.track -= 2 * best.crossed(rungs)
		out = append(out, best)
	}
	return out
}

// places are where the text of a rung may begin, the best first.
func (r rung) places() []float64 {
	room := r.b - r.a - 2*arrowLong - r.width
	var out []float64
	if room >= 0.5 && !r.tight {
		mid := (r.a+r.b)/2 - r.width/2
		out = append(out, mid, mid-room/6, mid+room/6, mid-room/3, mid+room/3)
	}
	past := 1.5
	if room < 0.5 || r.tight {
		past += arrowLong + 2
	}
	return append(out, r.b+past, r.a-past-r.width)
}

// crossed counts ends of longer dimensions under the text: these lie further out, and
// their extension lines pass.
func (r rung) crossed(all []rung) int {
	n := 0
	for _, o := range all {
		if o.b-o.a <= r.b-r.a {
			continue
		}
		for _, at := range []float64{o.a, o.b} {
			if at > r.low-0.5 && at < r.low+r.width+0.5 && at != r.a && at != r.b {
				n++
			}
		}
	}
	return n
}

// taken is the room along the side.
func (r rung) taken() (low, high float64) {
	low, high = min(r.a, r.low), max(r.b, r.low+r.width)
	if r.tight {
		low, high = min(low, r.a-arrowLong-2), max(high, r.b+arrowLong+2)
	}
	return low, high
}

func (r rung) touches(o rung) bool {
	a, b := r.taken()
	c, d := o.taken()
	return a < d+1 && c < b+1
}

// depth is how far a side reaches out from its view [mm].
func (s side) depth(first float64) float64 {
	tracks := 0
	for _, r := range s {
		tracks = max(tracks, r.track+1)
	}
	if tracks == 0 {
		return 0
	}
	return first + float64(tracks-1)*nextTrack + pastTracks
}

// reach is how far the texts reach beyond the ends of a view of some length [mm].
func (s side) reach(length float64) (before, after float64) {
	for _, r := range s {
		low, high := r.taken()
		before, after = max(before, -low), max(after, high-length)
	}
	return before, after
}

// A rail is where a side is drawn: a point of the sheet, the direction along it, and
// the direction out of the view.
type rail struct {
	start      point
	along, out point
	first      float64
}

func (l rail) at(along, out float64) point {
	return point{l.start[0] + float64(along*l.along[0]) + float64(out*l.out[0]),
		l.start[1] + float64(along*l.along[1]) + float64(out*l.out[1])}
}

// draw puts a side on the sheet.
func (s side) draw(k *ink, l rail) {
	for _, r := range s {
		far := l.first + float64(r.track)*nextTrack
		for _, e := range [2][2]float64{{r.a, r.from}, {r.b, r.to}} {
			k.line(Thin, l.at(e[0], 1-e[1]), l.at(e[0], far+1.5))
		}
		a, b := min(r.a, r.low), max(r.b, r.low+r.width)
		if !r.outside {
			a, b = r.a, r.b
		}
		ahead := 1.0
		if r.tight {
			ahead = -1
			a, b = min(a, r.a-arrowLong-2), max(b, r.b+arrowLong+2)
		}
		k.line(Thin, l.at(a, far), l.at(b, far))
		k.arrows = append(k.arrows,
			arrow{l.at(r.a, far), point{-ahead * l.along[0], -ahead * l.along[1]}},
			arrow{l.at(r.b, far), point{ahead * l.along[0], ahead * l.along[1]}})
		t := label{align: 0, size: dimType, text: r.text, blank: true}
		if l.along[0] != 0 { // level: over its line
			t.at = l.at(r.low, far)
			t.at[1] -= 0.9
		} else { // upright: left of its line, read from the right
			t.up = true
			t.at = l.at(r.low, far)
			t.at[0] -= 0.9
		}
		k.labels = append(k.labels, t)
	}
}
