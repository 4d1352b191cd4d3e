package jobfile

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// Limits of a file. They are far above any job and keep a hostile file from
// costing more than a moment.
const (
	maxBytes    = 1 << 20
	maxDepth    = 40
	maxKey      = 64  // letters of a key
	maxProblems = 100 // reported of one file
)

// A refusal is a reason not to look into the file at all.
type refusal struct {
	line    int
	problem string
	want    string
}

// parse gives the root node of the one document in data.
func parse(data []byte) (*yaml.Node, *refusal) {
	if len(data) > maxBytes {
		return nil, &refusal{0, fmt.Sprintf("the file has %d bytes", len(data)), fmt.Sprintf("at most %d", maxBytes)}
	}
	if !utf8.Valid(data) || bytes.IndexByte(data, 0) >= 0 {
		return nil, &refusal{badTextLine(data), "the file is not plain text", "UTF-8"}
	}
	source := &lineReader{rest: data}
	dec := yaml.NewDecoder(source)
	doc, err := next(dec)
	if errors.Is(err, io.EOF) {
		return nil, &refusal{1, "the file is empty", ""}
	}
	if err != nil {
		return nil, syntaxRefusal(err, data, source.lines)
	}
	second, err := next(dec)
	switch {
	case err == nil:
		return nil, &refusal{second.Line, "a second document starts", "one document a file, one job a file"}
	case !errors.Is(err, io.EOF):
		return nil, syntaxRefusal(err, data, source.lines)
	case len(doc.Content) != 1:
		return nil, &refusal{1, "the file is empty", ""}
	}
	return doc.Content[0], nil
}

// next reads one document. A panic of the YAML library on hostile text becomes
// an error like any other.
func next(dec *yaml.Decoder) (doc *yaml.Node, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = errors.New("yaml: cannot be parsed")
		}
	}()
	doc = new(yaml.Node)
	err = dec.Decode(doc)
	return doc, err
}

var yamlMessage = regexp.MustCompile(`^yaml: (?:line ([0-9]+): )?(.*)$`)

// syntaxRefusal makes a refusal of an error of the YAML library. Errors of its
// scanner name the right line. Errors of its parser name the start of the block
// in which the mistake is; then the line is the first that the text can not be
// read with. Reached: the lines that the library had asked for.
func syntaxRefusal(err error, data []byte, reached int) *refusal {
	text, line := err.Error(), 0
	if m := yamlMessage.FindStringSubmatch(text); m != nil {
		line, _ = strconv.Atoi(m[1])
		text = m[2]
	}
	switch {
	case strings.HasPrefix(text, "did not find expected"):
		line = firstUnreadable(data, reached, line+1)
	case line == 0, strings.Contains(text, "unexpected end of stream"):
		line = firstUnreadable(data, reached, line)
	}
	line = max(1, min(line, 1+bytes.Count(data, []byte("\n"))))
	return &refusal{line, "not valid YAML: " + text, ""}
}

// firstUnreadable gives the line after the longest start of the text that can
// be read alone, searched a little way up from the line reached; otherwise the
// other line.
func firstUnreadable(data []byte, reached, otherwise int) int {
	const searched, work = 60, 4 << 20
	lines := bytes.SplitAfter(data, []byte("\n"))
	for n := min(reached, len(lines)); n > 0 && reached-n < searched; n-- {
		start := bytes.Join(lines[:n-1], nil)
		if len(start)*searched > work {
			break
		}
		_, err := next(yaml.NewDecoder(bytes.NewReader(start)))
		if err == nil || errors.Is(err, io.EOF) {
			return n
		}
	}
	return otherwise
}

// badTextLine gives the line of the first byte that is no UTF-8 text.
func badTextLine(data []byte) int {
	line := 1
	for len(data) > 0 {
		r, size := utf8.DecodeRune(data)
		if r == 0 || r == utf8.RuneError && size == 1 {
			break
		}
		if r == '\n' {
			line++
		}
		data = data[size:]
	}
	return line
}

// lineReader hands out one line a call and counts them.
type lineReader struct {
	rest  []byte
	lines int
}

func (r *lineReader) Read(p []byte) (int, error) {
	if len(r.rest) == 0 {
		return 0, io.EOF
	}
	line := r.rest
	if i := bytes.IndexByte(line, '\n'); i >= 0 {
		line = line[:i+1]
	}
	n := copy(p, line)
	if n == len(line) {
		r.lines++
	}
	r.rest = r.rest[n:]
	return n, nil
}

// structure lists what no job file may hold: anchors, aliases, tags and blocks
// nested too deep.
func structure(root *yaml.Node) []refusal {
	var out []refusal
	var visit func(n *yaml.Node, depth int)
	visit = func(n *yaml.Node, depth int) {
		switch {
		case len(out) >= maxProblems:
			return
		case depth > maxDepth:
			out = append(out, refusal{n.Line, fmt.Sprintf("nested deeper than %d levels", maxDepth), ""})
			return
		case n.Kind == yaml.AliasNode:
			out = append(out, refusal{n.Line, "alias " + show("*"+n.Value) + " is not accepted", "the value written out"})
			return
		case n.Anchor != "":
			out = append(out, refusal{n.Line, "anchor " + show("&"+n.Anchor) + " is not accepted", "the value written out"})
		case n.Style&yaml.TaggedStyle != 0:
			out = append(out, refusal{n.Line, "tag " + show(n.Tag) + " is not accepted", "the plain value"})
		}
		for _, c := range n.Content {
			visit(c, depth+1)
		}
	}
	visit(root, 1)
	return out
}
