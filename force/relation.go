package force

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"ramnest/force/fault"
)

// A relation is a formula as data: one definition computes a figure, explains it with
// the numbers put in, and stands in the list of formulas.
type relation struct {
	id, symbol, unit string
	arithmetic       string // over symbols, as [Line.Numbers] is over numbers
	note             string // after the formula: what a symbol means, what is left out
	gives            string // for the list of formulas
	source           string
	mark             Mark
}

// A dimension of a job is an input of relations, with its valid range.
type dimension struct {
	key, symbol, what string
	v, lo, hi         float64 // [mm]
	optional          bool    // 0: left out
}

// dimensionFaults says which lie outside their range.
func dimensionFaults(all []dimension) (out []fault.Fault) {
	for _, d := range all {
		if !d.optional || d.v != 0 {
			out = append(out, lengthFault(d.key, d.v, d.lo, d.hi)...)
		}
	}
	return out
}

// A working is figures by their symbols, and the lines by which they were found.
type working struct {
	value map[string]float64
	lines []Line
}

// with notes a figure that relations may use.
func (w *working) with(symbol string, v float64) {
	if w.value == nil {
		w.value = map[string]float64{}
	}
	w.value[symbol] = v
}

// by works relations out, in order.
func (w *working) by(all ...relation) {
	for _, r := range all {
		p := reckoner{words: words(r.arithmetic), value: w.value}
		v := p.sum()
		if p.at != len(p.words) {
			panic(fmt.Sprintf("force: %s: %q is no arithmetic", r.id, r.arithmetic))
		}
		formula := r.symbol + " = " + strings.ReplaceAll(r.arithmetic, "*", " ")
		if r.note != "" {
			formula += ", " + r.note
		}
		w.with(r.symbol, v)
		w.lines = append(w.lines, Line{ID: r.id, Symbol: r.symbol, Value: v, Unit: r.unit, Formula: formula,
			Numbers: p.numbers.String(), Source: r.source, Mark: r.mark})
	}
}

// words parts arithmetic into names, numbers, operators and the spaces between.
func words(s string) []string {
	var out []string
	for len(s) > 0 {
		n := 1
		if !strings.ContainsRune("+-*/^() ", rune(s[0])) {
			if n = strings.IndexAny(s, "+-*/^() "); n < 0 {
				n = len(s)
			}
		}
		out, s = append(out, s[:n]), s[n:]
	}
	return out
}

// reckoner evaluates arithmetic and writes it with the numbers put in.
type reckoner struct {
	words   []string
	at      int
	value   map[string]float64
	numbers strings.Builder
}

// take passes a word if it is the next one; spaces before it are written too.
func (p *reckoner) take(word string) bool {
	k := p.at
	for k < len(p.words) && p.words[k] == " " {
		k++
	}
	if k == len(p.words) || p.words[k] != word {
		return false
	}
	for ; p.at <= k; p.at++ {
		p.numbers.WriteString(p.words[p.at])
	}
	return true
}

func (p *reckoner) sum() float64 {
	v := p.product()
	for {
		switch {
		case p.take("+"):
			v += p.product()
		case p.take("-"):
			v -= p.product()
		default:
			return v
		}
	}
}

func (p *reckoner) product() float64 {
	v := p.power()
	for {
		switch {
		case p.take("*"):
			v *= p.power()
		case p.take("/"):
			v /= p.power()
		default:
			return v
		}
	}
}

func (p *reckoner) power() float64 {
	v := p.figure()
	if p.take("^") {
		v = math.Pow(v, p.power())
	}
	return v
}

// figure is what stands between operators: a bracket, a number or a symbol.
func (p *reckoner) figure() float64 {
	if p.take("(") {
		v := p.sum()
		if !p.take(")") {
			panic("force: a bracket stays open")
		}
		return v
	}
	for ; p.at < len(p.words) && p.words[p.at] == " "; p.at++ {
		p.numbers.WriteString(" ")
	}
	if p.at == len(p.words) {
		panic("force: arithmetic ends too soon")
	}
	word := p.words[p.at]
	p.at++
	if v, ok := p.value[word]; ok {
		p.numbers.WriteString(number(v, false))
		return v
	}
	p.numbers.WriteString(word)
	if word == "pi" {
		return math.Pi
	}
	v, err := strconv.ParseFloat(word, 64)
	if err != nil {
		panic("force: no symbol " + word)
	}
	return v
}

// dimensions states those that the job has.
func (e *explainer) dimensions(all []dimension) {
	for _, d := range all {
		if !d.optional || d.v != 0 {
			e.size(d.symbol, d.v, d.what)
		}
	}
}
