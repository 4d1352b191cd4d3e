package jobfile

import (
	"fmt"
	"reflect"
	"strings"

	"ramnest/force/fault"

	"gopkg.in/yaml.v3"
)

// DefaultMaxBytes is the largest file that is read unless [Options] say otherwise.
const DefaultMaxBytes = 1 << 20

// Options say how to read a file.
type Options struct {
	// MaxBytes is the largest size accepted [bytes]; 0: [DefaultMaxBytes].
	MaxBytes int
	// Set holds overrides, "latches.rim.annular.undercut=0.7": the path of a
	// field and the value that takes the place of the one in the file, written
	// as in the file. An entry of a list is named by its id or by its index,
	// counted from 0 ("latches.0", "latches[0]"); the id goes first. A key that
	// the file does not have is added, an entry is not.
	Set []string
}

// Decode reads the file called name, whose content is data, into the struct that
// into points to. It fills what it can even when something is wrong, so that a
// Validate method can complain about the rest; the struct is fit for use only if
// there are no Problems. The Document is never nil.
//
// It panics if into is not a pointer to a struct or a tag of the struct is
// wrong: that is a mistake in the program, not in the file.
func Decode(name string, data []byte, into any, opt Options) (*Document, Problems) {
	shape := shapeOf(into)
	doc := &Document{name: name, sets: opt.Set, Units: metric, faulted: map[string]bool{}}
	maxBytes := opt.MaxBytes
	if maxBytes <= 0 {
		maxBytes = DefaultMaxBytes
	}
	if len(data) > maxBytes {
		return doc, doc.refused(flaw{fault: fault.Fault{Given: fmt.Sprintf("%d bytes", len(data)), Problem: "are too many for one file",
			Want: fmt.Sprintf("%d bytes at most", maxBytes)}})
	}
	root, flaws := parse(data)
	if len(flaws) > 0 {
		return doc, doc.refused(flaws...)
	}
	root, tangle := expand(root)
	if tangle != nil {
		return doc, doc.refused(*tangle)
	}
	if root.Kind != yaml.MappingNode {
		return doc, doc.refused(rootFlaw(root))
	}
	doc.root = root
	f := &filler{doc: doc, top: shape}
	f.override(opt.Set)
	f.units(root)
	f.value(root, shape, reflect.ValueOf(into).Elem(), "", root.Line)
	return doc, f.finish()
}

// rootFlaw says what stands where the keys of the file should.
func rootFlaw(root *yaml.Node) flaw {
	if isNull(root) {
		return emptyFile
	}
	return flaw{line: root.Line, fault: fault.Fault{Given: described(root), Problem: "is not a section of keys",
		Want: "one \"key: value\" a line"}}
}

// isNull says whether a node was left without a value.
func isNull(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.ShortTag() == "!!null" }

// isPlain says whether a scalar stands in the file without quotes.
func isPlain(n *yaml.Node) bool {
	return n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) == 0
}

// described names a node for the person who wrote it.
func described(n *yaml.Node) string {
	switch n.Kind {
	case yaml.MappingNode:
		return "a section of keys"
	case yaml.SequenceNode:
		return fmt.Sprintf("a list of %d", len(n.Content))
	}
	return shown(n.Value)
}

// join puts a key behind the path of its section.
func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// below says whether a field path lies under another.
func below(field, path string) bool {
	rest, ok := strings.CutPrefix(field, path)
	return ok && (path == "" || rest != "" && (rest[0] == '.' || rest[0] == '['))
}
