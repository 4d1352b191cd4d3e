package jobfile

import (
	"fmt"
	"slices"

	"ramnest/force/fault"

	"gopkg.in/yaml.v3"
)

const (
	maxDepth    = 40     // levels of sections and lists; a job has about ten
	maxRepeated = 10_000 // nodes that aliases may add to what is written
)

const depthWant = "40 levels at most"

// expand gives the tree with a copy of its anchor in the place of each alias, so
// that whatever comes after sees a plain tree. It refuses aliases that run in a
// ring or multiply without bound, and nesting deeper than any job.
func expand(root *yaml.Node) (*yaml.Node, *flaw) {
	e := expander{open: map[*yaml.Node]bool{}}
	out := e.node(root, 1, false, root.Line)
	return out, e.flaw
}

type expander struct {
	open     map[*yaml.Node]bool // anchors that are being copied or walked
	repeated int
	flaw     *flaw // the first, after which nothing more is done
}

func (e *expander) refuse(line int, f fault.Fault) *yaml.Node {
	if e.flaw == nil {
		e.flaw = &flaw{line: line, fault: f}
	}
	return &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!null", Line: line}
}

// node expands n at a depth. Below an alias it copies, and line is that of the
// alias, which is to blame if there is too much.
func (e *expander) node(n *yaml.Node, depth int, copying bool, line int) *yaml.Node {
	if e.flaw != nil {
		return n
	}
	if !copying {
		line = n.Line
	}
	if n.Kind == yaml.AliasNode {
		if e.open[n.Alias] {
			return e.refuse(line, fault.Fault{Given: "*" + shown(n.Value), Problem: "refers to the section it stands in",
				Want: "the values written out"})
		}
		return e.node(n.Alias, depth, true, line)
	}
	original := n
	if copying {
		if e.repeated++; e.repeated > maxRepeated {
			return e.refuse(line, fault.Fault{Problem: "aliases repeat too much", Want: fmt.Sprintf("%d values at most", maxRepeated)})
		}
		n = new(*n)
		n.Content = slices.Clone(n.Content)
	}
	if len(n.Content) > 0 && depth > maxDepth {
		return e.refuse(n.Line, fault.Fault{Problem: "sections are nested too deep", Want: depthWant})
	}
	e.open[original] = true
	for i, c := range n.Content {
		n.Content[i] = e.node(c, depth+1, copying, line)
	}
	delete(e.open, original)
	return n
}
