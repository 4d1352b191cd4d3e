package main

import (
	"fmt"
	"strings"

	"github.com/alecthomas/kong"

	"ramnest/cmd/internal/guide"
)

// firstCommands are for whoever meets the program for the first time.
type firstCommands struct {
	Init       initCommand       `cmd:"" help:"Write a job file with comments that runs as it stands."`
	Help       helpCommand       `cmd:"" help:"Print a page of the reference; help topics lists them."`
	Completion completionCommand `cmd:"" help:"Print a script by which a shell completes commands and flags."`
	Man        manCommand        `cmd:"" help:"Print the manual page, for man."`
}

type helpCommand struct {
	Topic string `arg:"" optional:"" help:"A topic, or a command."`
}

// Help says what there is.
func (helpCommand) Help() string {
	return `The reference is in the program: a page a topic, and one a command.

    ramnest help topics
    ramnest help latches
    ramnest help make`
}

// Run prints the page.
func (h *helpCommand) Run(c *console, parsed *kong.Context) error {
	if t, ok := guide.TopicOf(h.Topic); ok {
		return c.print(t.String())
	}
	if w, ok := guide.WarningNumber(h.Topic); ok {
		return (&explainCommand{calibrated: calibrated{source: source{Job: fmt.Sprintf("W%d", w)}}}).Run(c)
	}
	switch h.Topic {
	case "topics":
		return c.print(topics())
	case "":
		whole, err := kong.Trace(parsed.Kong, nil)
		if err != nil {
			return err
		}
		return whole.PrintUsage(false)
	}
	var known []string
	for _, n := range parsed.Model.Children {
		if n.Name == h.Topic {
			one, err := kong.Trace(parsed.Kong, []string{n.Name})
			if err != nil {
				return err
			}
			return one.PrintUsage(false)
		}
		known = append(known, n.Name)
	}
	for _, t := range guide.Topics() {
		known = append(known, t.Name)
	}
	return badUse{fmt.Sprintf("help %s: neither a topic nor a command (topics, %s)", h.Topic, strings.Join(known, ", "))}
}

// topics lists the pages.
func topics() string {
	var b strings.Builder
	b.WriteString("Pages of the reference, by ramnest help TOPIC:\n\n")
	for _, t := range guide.Topics() {
		fmt.Fprintf(&b, "  %-12s %s\n", t.Name, t.Title)
	}
	b.WriteString("\nA page on a command: ramnest help COMMAND. On a warning: ramnest explain W12.\n")
	return b.String()
}
