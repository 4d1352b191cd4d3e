package jobfile

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"
	"unicode/utf8"

	"ramnest/force/fault"

	"gopkg.in/yaml.v3"
)

// A flaw is a fault with a line, before the file's name is known.
type flaw struct {
	line  int
	fault fault.Fault
}

var emptyFile = flaw{fault: fault.Fault{Problem: "the file is empty", Want: "one \"key: value\" a line"}}

// parse turns bytes into the node tree of one YAML document.
func parse(data []byte) (*yaml.Node, []flaw) {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if flaws := unreadable(data); len(flaws) > 0 {
		return nil, flaws
	}
	data = withoutTabs(data)
	root, second, err := documents(bytes.NewReader(data))
	switch {
	case err != nil:
		line, placed := placeError(data)
		if placed != nil {
			err = placed
		}
		return nil, []flaw{{line: line, fault: syntaxFault(err.Error(), lineText(data, line))}}
	case root == nil:
		return nil, []flaw{emptyFile}
	case second > 0:
		return nil, []flaw{{line: second, fault: fault.Fault{Problem: "a second document starts here",
			Want: "one document a file, without --- between its parts"}}}
	}
	return root, nil
}

// withoutTabs puts spaces for tabs before a comment on the first line: there alone the YAML
// library takes them for a fault.
func withoutTabs(data []byte) []byte {
	first, _, _ := bytes.Cut(data, []byte("\n"))
	rest := bytes.TrimLeft(first, " \t")
	blank := first[:len(first)-len(rest)]
	if !bytes.ContainsRune(blank, '\t') || len(rest) == 0 || rest[0] != '#' {
		return data
	}
	return append(bytes.Repeat([]byte(" "), len(blank)), data[len(blank):]...)
}

// unreadable finds the lines with bytes that are no text, or characters that
// nobody sees.
func unreadable(data []byte) []flaw {
	var out []flaw
	number := 0
	for line := range bytes.SplitSeq(data, []byte("\n")) {
		number++
		line = bytes.TrimSuffix(line, []byte("\r"))
		if !utf8.Valid(line) {
			out = append(out, flaw{line: number, fault: fault.Fault{Problem: "this line is not UTF-8 text", Want: "the file saved as UTF-8"}})
		} else if at := bytes.IndexFunc(line, unseen); at >= 0 {
			r, _ := utf8.DecodeRune(line[at:])
			out = append(out, flaw{line: number, fault: fault.Fault{Given: fmt.Sprintf("character U+%04X", r),
				Problem: "cannot be seen and is not read", Want: "the line without it"}})
		}
		if len(out) == maxListed {
			break
		}
	}
	return out
}

// documents reads the first document, and the line where a second one starts.
// The YAML library panics on some broken input instead of returning an error.
func documents(data io.Reader) (root *yaml.Node, second int, err error) {
	defer func() {
		if r := recover(); r != nil {
			root, second, err = nil, 0, fmt.Errorf("yaml: %v", r)
		}
	}()
	decoder := yaml.NewDecoder(data)
	var first, next yaml.Node
	if err := decoder.Decode(&first); errors.Is(err, io.EOF) {
		return nil, 0, nil
	} else if err != nil {
		return nil, 0, err
	}
	if err := decoder.Decode(&next); errors.Is(err, io.EOF) {
		return first.Content[0], 0, nil
	} else if err != nil {
		return nil, 0, err
	}
	return first.Content[0], max(next.Line, 1), nil
}

var libraryError = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)$`)

// syntaxFault says in other words what the library found on a line.
func syntaxFault(message, written string) fault.Fault {
	message = harmless(message)
	if m := libraryError.FindStringSubmatch(message); m != nil {
		message = m[2]
	}
	indent := written[:len(written)-len(strings.TrimLeft(written, " \t-?:"))]
	if strings.Contains(indent, "\t") || strings.Contains(message, "tab character") {
		return fault.Fault{Problem: "a tab stands where only spaces may", Want: "spaces, two for each level"}
	}
	for _, s := range sayings {
		if strings.Contains(message, s.library) {
			return fault.Fault{Problem: s.problem, Want: s.want}
		}
	}
	return fault.Fault{Problem: "this is not YAML: " + shown(message)}
}

// sayings put the library's messages into other words; the first that is
// contained is taken.
var sayings = []struct{ library, problem, want string }{
	{"mapping values are not allowed", "a colon too many, another indent than the line above, or no colon in the line above",
		"\"key: value\" a line, the same indent, a text with a colon in quotes"},
	{"did not find expected key", "this line does not go on from the lines above it: another indent, or a text behind a closing quote",
		"\"key: value\", indented as its neighbours"},
	{"could not find expected ':'", "a key without a colon", "\"key: value\""},
	{"did not find expected '-' indicator", "this line does not belong to the list above it", "a dash, or another indent"},
	{"expected ',' or ']'", "a list in square brackets is not closed, or lacks a comma", "[1, 2]"},
	{"expected ',' or '}'", "a section in braces is not closed, or lacks a comma", "{key: value, key: value}"},
	{"found unexpected end of stream", "the quote that opens on this line is never closed", "a closing quote"},
	{"unexpected document indicator", "a document ends inside a quoted text", "a closing quote"},
	{"did not find expected node content", "a value is missing, or a bracket or comma stands alone", "a value"},
	{"cannot start any token", "a text cannot start with this character", "the text in quotes"},
	{"unknown escape character", "a backslash in double quotes that means nothing", "single quotes, or two backslashes"},
	{"hexdecimal number", "a backslash code that is not complete", "single quotes, or two backslashes"},
	{"Unicode character escape", "a backslash code that is no character", "single quotes, or two backslashes"},
	{"block sequence entries are not allowed", "a dash where no list can start", "the list on the lines below its key"},
	{"unknown anchor", "an alias (*) to an anchor (&) that is not defined above it", "the value written out"},
	{"exceeded max depth", "sections are nested far too deep", depthWant},
	{"expected <document start>", "something stands after the end of the document", "one document a file"},
	{"alphabetic or numeric character", "an anchor (&) or alias (*) without a name", "quotes round a text that starts with & or *"},
	{"indentation indicator", "a text block (| or >) with an indent of 0", "no digit after | or >"},
	{"block scalar", "something stands behind | or >", "the text on the lines below"},
	{"comment or line break", "something stands behind | or >, or behind a directive (%)", "the text on the lines below"},
	{"directive", "a directive (%) that is not read", "no line that starts with %"},
	{"YAML document", "a version of YAML that is not read", "no line that starts with %"},
	{"expected '>'", "a tag (!) that cannot be read", "quotes round a text that starts with !"},
	{"tag", "a tag (!) that cannot be read", "quotes round a text that starts with !"},
	{"whitespace", "a quoted text, an anchor or an alias runs on without a space", "a space, or quotes round the whole text"},
}
