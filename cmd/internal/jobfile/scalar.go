package jobfile

import (
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"ramnest/force"
	"ramnest/force/fault"

	"gopkg.in/yaml.v3"
)

// maxText is the longest text of a field [characters]: a long note on a work
// instruction, not a book.
const maxText = 2000

// scalar fills v, of a shape that takes a single value.
func (f *filler) scalar(n *yaml.Node, s *shape, v reflect.Value, path string, line int) {
	var wrong *fault.Fault
	near := ""
	switch s.kind {
	case number:
		var x float64
		if x, wrong, near = quantity(n.Value, !isPlain(n), s.dimension, f.doc.Units); wrong == nil {
			v.SetFloat(x)
		}
	case whole:
		wrong = setWhole(n.Value, !isPlain(n), s, v)
	case truth:
		wrong, near = setTruth(n.Value, !isPlain(n), v)
	default:
		if wrong, near = textFault(n.Value, s); wrong == nil {
			if word, ok := Word(n.Value, s.oneOf); ok {
				v.SetString(word)
			} else {
				v.SetString(n.Value)
			}
		}
	}
	if wrong != nil {
		wrong.Field = path
		f.add(line, near, *wrong)
	}
}

// setWhole sets an integer of any size.
func setWhole(written string, quoted bool, s *shape, v reflect.Value) *fault.Fault {
	wrong := &fault.Fault{Given: shown(written), Problem: "is not a whole number", Want: s.wanted()}
	figure, rest := cutNumber(written)
	if quoted {
		wrong.Problem = "is a text, not a whole number"
		return wrong
	}
	if problem, want := figureFault(figure, rest); problem != "" && figure != "" {
		wrong.Problem, wrong.Want = problem, want
		return wrong
	}
	if rest != "" || figure == "" || strings.ContainsAny(figure, ".eE") {
		return wrong
	}
	var err error
	if v.CanInt() {
		var x int64
		if x, err = strconv.ParseInt(figure, 10, v.Type().Bits()); err == nil {
			v.SetInt(x)
		}
	} else {
		var x uint64
		if x, err = strconv.ParseUint(strings.TrimPrefix(figure, "+"), 10, v.Type().Bits()); err == nil {
			v.SetUint(x)
		}
	}
	switch {
	case errors.Is(err, strconv.ErrRange):
		wrong.Problem = "is too large to be a number here"
	case err != nil:
		wrong.Problem = "must be 0 or more"
	default:
		return nil
	}
	return wrong
}

// setTruth sets a bool; only the words true and false say one. near is the one
// that another word for it means.
func setTruth(written string, quoted bool, v reflect.Value) (wrong *fault.Fault, near string) {
	if !quoted && (written == "true" || written == "false") {
		v.SetBool(written == "true")
		return nil, ""
	}
	switch strings.ToLower(written) {
	case "true", "yes", "on", "y":
		near = "true"
	case "false", "no", "off", "n":
		near = "false"
	}
	return &fault.Fault{Given: shown(written), Problem: "is not true or false", Want: "true or false, without quotes"}, near
}

// Word finds which of the known words was written. The plus sign of one that has it may
// be left out, as in z for +z.
func Word(written string, known []string) (word string, ok bool) {
	for _, w := range [2]string{written, "+" + written} {
		if slices.Contains(known, w) {
			return w, true
		}
	}
	return "", false
}

// textFault says what is wrong with a text. Numbers and dates are texts as they
// are written: revision 1.10 stays 1.10.
func textFault(written string, s *shape) (wrong *fault.Fault, near string) {
	wrong = &fault.Fault{Given: shown(written), Want: s.wanted()}
	switch {
	case strings.TrimSpace(written) == "":
		wrong.Given, wrong.Problem, wrong.Want = "", "is empty", s.wanted()+", or no such key"
	case len(s.oneOf) > 0:
		if _, ok := Word(written, s.oneOf); ok {
			return nil, ""
		}
		wrong.Problem = "is not known"
		if term := force.ProcessTerm(written); slices.Contains(s.oneOf, term) {
			wrong.Problem = force.CalledHere(term)
			return wrong, ""
		}
		return wrong, nearest(written, s.oneOf)
	case strings.ContainsFunc(written, unseen):
		wrong.Problem = "holds a character that cannot be seen"
	case utf8.RuneCountInString(written) > maxText:
		wrong.Problem, wrong.Want = "is too long", fmt.Sprintf("%d characters at most", maxText)
	case s.date:
		if _, err := time.Parse(time.DateOnly, written); err == nil {
			return nil, ""
		}
		wrong.Problem = "is not a date"
	default:
		return nil, ""
	}
	return wrong, ""
}
