// Package starter writes a first job file, with comments, that runs as it stands: for
// somebody who has never seen one. It knows one small assembly for each kind of latch,
// all of made-up dimensions, in millimetres or inches.
package starter

import (
	"embed"
	"fmt"
	"io/fs"
	"ramnest/force/unit"
	"regexp"
	"strconv"
	"strings"
)

//go:embed *.yaml
var templates embed.FS

// Answers are what a person says of the job.
type Answers struct {
	Number, Title, Date string
	Units               string // mm or in
	Kind                string // of the latch, one of force.Kinds
	Material, Process   string // of the printed parts
	Rate                string // assemblies an hour
}

// length is a length of a template: "<12.5>" [mm].
var length = regexp.MustCompile(`<(-?[0-9.]+)>`)

// Write gives the job file.
func Write(a Answers) ([]byte, error) {
	head, err := fs.ReadFile(templates, "head.yaml")
	if err != nil {
		return nil, err
	}
	parts, err := fs.ReadFile(templates, a.Kind+".yaml")
	if err != nil {
		return nil, err
	}
	tail, err := fs.ReadFile(templates, "tail.yaml")
	if err != nil {
		return nil, err
	}
	text := strings.NewReplacer(
		"{number}", quoted(a.Number), "{title}", quoted(a.Title), "{date}", quoted(a.Date), "{units}", a.Units,
		"{material}", quoted(a.Material), "{process}", quoted(a.Process), "{rate}", a.Rate,
	).Replace(string(head) + string(parts) + string(tail))
	return []byte(length.ReplaceAllStringFunc(text, func(s string) string {
		mm := s[1 : len(s)-1]
		if a.Units != "in" {
			return mm
		}
		v, err := strconv.ParseFloat(mm, 64)
		if err != nil {
			panic("starter: " + err.Error()) // the templates are part of the program
		}
		return strings.TrimRight(strings.TrimRight(strconv.FormatFloat(v/unit.Inch, 'f', 4, 64), "0"), ".")
	})), nil
}

// plain is a word that YAML reads as the text it is.
var plain = regexp.MustCompile(`^[A-Za-z0-9][A-Za-z0-9 _./-]*$`)

// quoted puts a text into quotes where YAML could read it as something else.
func quoted(s string) string {
	if plain.MatchString(s) && strings.TrimSpace(s) == s {
		return s
	}
	return fmt.Sprintf("'%s'", strings.ReplaceAll(s, "'", "''"))
}
