package main

import (
	"fmt"
	"strings"

	"github.com/alecthomas/kong"

	"ramnest/cmd/internal/guide"
)

type manCommand struct{}

// Help says where the page goes.
func (manCommand) Help() string {
	return `One page, in the language of man (roff), on every command and topic:

    ramnest man > ~/.local/share/man/man1/ramnest.1
    ramnest man | man -l -`
}

// Run prints the page.
func (manCommand) Run(c *console, parsed *kong.Context) error {
	return c.print(manPage(parsed.Model.Node))
}

// manPage writes the manual from the grammar and the topics.
func manPage(app *kong.Node) string {
	m := &roff{}
	m.line(`.TH RAMNEST 1 "%s" "%s" "User commands"`, versionDate, tool)
	m.line(".SH NAME\nramnest \\- %s", roffText("tooling for printed parts that go together hard"))
	m.line(".SH SYNOPSIS\n.B ramnest\n.I command\n.RI [ argument ...]\n.RI [ flag ...]")
	m.line(".SH DESCRIPTION")
	m.text(about)
	m.text("People press with a ton of force near their fingers. The figures do not replace local codes, the site's own assessment and a competent person.")
	m.line(".SH COMMANDS")
	for _, n := range app.Children {
		m.line(".SS %s", roffText(synopsis(n)))
		m.text(n.Help)
		if n.Detail != "" {
			m.block(n.Detail)
		}
		for _, f := range n.Flags {
			if !f.Hidden {
				m.flag(f)
			}
		}
	}
	m.line(".SH FLAGS OF EVERY COMMAND")
	for _, f := range app.Flags {
		if !f.Hidden {
			m.flag(f)
		}
	}
	for _, name := range []string{"exit-codes", "outputs", "limits", "safety"} {
		t, _ := guide.TopicOf(name)
		title, rest, _ := strings.Cut(t.String(), "\n\n")
		m.line(".SH %s", roffText(title))
		m.block(rest)
	}
	m.line(".SH WARNINGS")
	for _, w := range guide.Warnings() {
		m.line(".TP\n.B W%d\n%s", w.Number, roffText(w.Title+". "+w.Means+" "+w.Do))
	}
	m.line(".SH SEE ALSO")
	m.text(`"ramnest help topics" lists the reference that stands in the program, the keys of a job file among it.`)
	return m.b.String()
}

// synopsis is a command with its arguments.
func synopsis(n *kong.Node) string {
	out := n.Name
	for _, p := range n.Positional {
		if p.Required {
			out += " " + p.Name
		} else {
			out += " [" + p.Name + "]"
		}
	}
	return out
}

// A roff collects lines of a manual page.
type roff struct {
	b     strings.Builder
	fresh bool // a heading was the last line: a paragraph begins by itself
}

// line adds a line as it is.
func (m *roff) line(format string, args ...any) {
	text := fmt.Sprintf(format, args...) + "\n"
	if m.fresh {
		text = strings.TrimPrefix(text, ".PP\n")
	}
	m.b.WriteString(text)
	m.fresh = text == "" || strings.HasPrefix(text, ".S") && strings.Count(text, "\n") == 1
}

// text adds a paragraph.
func (m *roff) text(s string) { m.line(".PP\n%s", roffText(s)) }

// block adds a text of paragraphs and of indented lines, which stay as they are.
func (m *roff) block(s string) {
	literal := false
	keep := func(on bool) {
		switch {
		case on && !literal:
			m.line(".PP\n.nf")
		case !on && literal:
			m.line(".fi")
		}
		literal = on
	}
	fresh := true
	for line := range strings.Lines(strings.TrimSpace(s) + "\n") {
		line = strings.TrimRight(line, "\n ")
		switch {
		case line == "":
			keep(false)
			fresh = true
			continue
		case strings.HasPrefix(line, "    "):
			keep(true)
		default:
			keep(false)
			if fresh {
				m.line(".PP")
			}
		}
		fresh = false
		m.line("%s", roffText(line))
	}
	keep(false)
}

// flag adds a flag with its help.
func (m *roff) flag(f *kong.Flag) {
	name := "--" + f.Name
	if f.Short != 0 {
		name = "-" + string(f.Short) + ", " + name
	}
	if !f.IsBool() {
		name += "=" + f.FormatPlaceHolder()
	}
	m.line(".TP\n.B %s\n%s", roffText(name), roffText(f.Help))
}

// roffText makes a text safe: no line is taken for a request, no character for an
// escape, and hyphens stay such as are typed.
func roffText(s string) string {
	s = strings.NewReplacer(`\`, `\e`, "-", `\-`).Replace(s)
	if strings.HasPrefix(s, ".") || strings.HasPrefix(s, "'") {
		s = `\&` + s
	}
	return s
}
