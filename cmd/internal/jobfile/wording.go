package jobfile

import (
	"fmt"
	"strings"
)

// noun names what a shape takes, for "is not ...".
func (s *shape) noun() string {
	switch s.kind {
	case section, table:
		return "a section of keys"
	case list, tuple:
		return "a list"
	case point:
		return "a point"
	case number:
		return s.dimension.noun
	case whole:
		return "a whole number"
	case truth:
		return "true or false"
	}
	if s.date {
		return "a date"
	}
	return "a text"
}

// wanted says how a value of the shape is written.
func (s *shape) wanted() string {
	switch s.kind {
	case section, table:
		return "keys on the lines below, indented"
	case list:
		return "a list of " + s.elem.plural()
	case tuple:
		return fmt.Sprintf("a list of %d %s", s.goType.Len(), s.elem.plural())
	case point:
		return "[x, y]"
	case number:
		return s.dimension.wanted()
	case whole:
		return "a whole number such as 12"
	case truth:
		return "true or false"
	}
	switch {
	case len(s.oneOf) > 1:
		last := len(s.oneOf) - 1
		return strings.Join(s.oneOf[:last], ", ") + " or " + s.oneOf[last]
	case len(s.oneOf) == 1:
		return s.oneOf[0]
	case s.date:
		return "a date such as 2026-11-25"
	}
	return "a text"
}

// plural names several of what a shape takes.
func (s *shape) plural() string {
	switch s.kind {
	case section, table:
		return "sections"
	case list, tuple:
		return "lists"
	case point:
		return "points [x, y]"
	case number:
		return strings.TrimPrefix(strings.TrimPrefix(strings.TrimPrefix(s.dimension.noun, "an "), "a "), "plain ") + "s"
	case whole:
		return "whole numbers"
	case truth:
		return "true and false"
	}
	if s.date {
		return "dates"
	}
	if len(s.oneOf) > 0 {
		return "words out of " + strings.Join(s.oneOf, ", ")
	}
	return "texts"
}
