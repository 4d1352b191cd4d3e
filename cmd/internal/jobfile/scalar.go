package jobfile

import (
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"

	"gopkg.in/yaml.v3"

	"ramnest/force"
)

// scalar decodes a single value.
func (d *decoder) scalar(n *yaml.Node, v reflect.Value, path string, line int, r rule) bool {
	if n.Kind != yaml.ScalarNode {
		d.fault(path, line, force.Fault{Given: given(n), Problem: "must be a single value"})
		return false
	}
	var fault *force.Fault
	switch v.Kind() {
	case reflect.Float64:
		var x float64
		if x, fault = d.system.number(n.Value, r.unit, isQuoted(n)); fault == nil {
			v.SetFloat(x)
		}
	case reflect.String:
		if fault = textFault(n, r); fault == nil {
			v.SetString(n.Value)
		}
	case reflect.Bool:
		if n.ShortTag() != "!!bool" {
			fault = &force.Fault{Given: given(n), Problem: "must be true or false"}
		} else {
			v.SetBool(strings.EqualFold(n.Value, "true"))
		}
	default:
		fault = whole(n, v)
	}
	if fault != nil {
		d.fault(path, line, *fault)
		if rootChoices(path) != nil {
			d.doc.bad = append(d.doc.bad, "") // no length or force in the file can be relied on
		}
	}
	return fault == nil
}

var decimalInteger = regexp.MustCompile(`^[-+]?(?:0|[1-9][0-9]*)$`)

// whole decodes an integer, signed or not, of any width.
func whole(n *yaml.Node, v reflect.Value) *force.Fault {
	bits := v.Type().Bits()
	if v.CanUint() {
		x, err := strconv.ParseUint(strings.TrimPrefix(n.Value, "+"), 10, bits)
		if err != nil || isQuoted(n) || !decimalInteger.MatchString(n.Value) {
			return &force.Fault{Given: given(n), Problem: "must be a whole number", Want: fmt.Sprintf("0 to %d", ^uint64(0)>>(64-bits))}
		}
		v.SetUint(x)
		return nil
	}
	x, err := strconv.ParseInt(n.Value, 10, bits)
	if err != nil || isQuoted(n) || !decimalInteger.MatchString(n.Value) {
		most := int64(^uint64(0) >> (65 - bits))
		return &force.Fault{Given: given(n), Problem: "must be a whole number", Want: fmt.Sprintf("%d to %d", -most-1, most)}
	}
	v.SetInt(x)
	return nil
}

// textFault tells what is wrong with a text. A number or date without quotes is
// taken as written, so that revision: 1.10 stays 1.10.
func textFault(n *yaml.Node, r rule) *force.Fault {
	switch n.ShortTag() {
	case "!!str", "!!int", "!!float", "!!timestamp":
	default:
		return &force.Fault{Given: given(n), Problem: "must be text", Want: strconv.Quote(n.Value) + " in quotes, if that is meant"}
	}
	if strings.ContainsFunc(n.Value, func(c rune) bool { return unicode.IsControl(c) && c != '\n' && c != '\t' }) {
		return &force.Fault{Given: given(n), Problem: "holds control characters", Want: "printable text"}
	}
	if len(r.oneof) > 0 && !slices.Contains(r.oneof, n.Value) {
		return &force.Fault{Given: given(n), Problem: "is not a choice here", Want: orList(r.oneof)}
	}
	if r.isDate {
		if _, err := time.Parse(time.DateOnly, n.Value); err != nil {
			return &force.Fault{Given: given(n), Problem: "is not a date", Want: "year, month, day: 2026-03-31"}
		}
	}
	return nil
}

// isEmpty tells whether a scalar says nothing: no text, blanks, ~ or null.
func isEmpty(n *yaml.Node) bool {
	return n.ShortTag() == "!!null" || strings.TrimSpace(n.Value) == ""
}

func isQuoted(n *yaml.Node) bool {
	return n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) != 0
}

// given says what stands in the file.
func given(n *yaml.Node) string {
	switch n.Kind {
	case yaml.MappingNode:
		return "a block of keys"
	case yaml.SequenceNode:
		return fmt.Sprintf("a list of %d", len(n.Content))
	}
	return show(n.Value)
}

// show gives a text of the file fit for a line on a terminal: at most 40
// letters, quoted if it holds anything but plain printable letters.
func show(text string) string {
	runes := []rune(text)
	if len(runes) > 40 {
		text = string(runes[:40]) + "..."
	}
	if text != strings.TrimSpace(text) || strings.ContainsFunc(text, func(r rune) bool { return !unicode.IsPrint(r) }) {
		return strconv.Quote(text)
	}
	return text
}

// orList joins words as a choice: "a, b or c".
func orList(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// known lists the keys that a block accepts.
func known(keys []string) string { return "known keys: " + strings.Join(keys, ", ") }
