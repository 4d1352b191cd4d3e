package main

import (
	"fmt"
	"strings"

	"github.com/alecthomas/kong"

	"ramnest/cmd/internal/guide"
)

type completionCommand struct {
	Shell string `arg:"" enum:"bash,zsh,fish" help:"bash, zsh or fish."`
}

// Help says where the script goes.
func (completionCommand) Help() string {
	return `Put the line for your shell where it reads its settings:

    bash   source <(ramnest completion bash)
    zsh    source <(ramnest completion zsh)     after compinit
    fish   ramnest completion fish | source`
}

// Run prints the script, made from the commands and flags that there are.
func (k *completionCommand) Run(c *console, parsed *kong.Context) error {
	var all []completed
	for _, n := range parsed.Model.Children {
		all = append(all, completedOf(n))
	}
	switch k.Shell {
	case "bash":
		return c.print(bashCompletion(all))
	case "zsh":
		return c.print(zshCompletion(all))
	}
	return c.print(fishCompletion(all))
}

// A completed command is what a shell must know of it.
type completed struct {
	name, help string
	flags      []completedFlag
	words      []string // of its argument; none: file names
	noFiles    bool     // takes no argument at all
}

type completedFlag struct {
	long, short, help string
	takes             bool     // a value
	words             []string // that the value may be
}

// completedOf reads a command out of the grammar.
func completedOf(n *kong.Node) completed {
	out := completed{name: n.Name, help: n.Help, noFiles: len(n.Positional) == 0}
	for _, group := range n.AllFlags(true) {
		for _, f := range group {
			g := completedFlag{long: f.Name, help: f.Help, takes: !f.IsBool()}
			if f.Short != 0 {
				g.short = string(f.Short)
			}
			for w := range strings.SplitSeq(f.Enum, ",") {
				if w != "" {
					g.words = append(g.words, w)
				}
			}
			out.flags = append(out.flags, g)
		}
	}
	switch n.Name {
	case "help":
		out.words = append(out.words, "topics")
		for _, t := range guide.Topics() {
			out.words = append(out.words, t.Name)
		}
		for _, sibling := range n.Parent.Children {
			out.words = append(out.words, sibling.Name)
		}
	case "completion":
		out.words = []string{"bash", "zsh", "fish"}
	}
	return out
}

// names lists the flags as they are typed.
func (k completed) names() []string {
	var out []string
	for _, f := range k.flags {
		out = append(out, "--"+f.long)
		if f.short != "" {
			out = append(out, "-"+f.short)
		}
	}
	return out
}

// bashCompletion is the script for bash.
func bashCompletion(all []completed) string {
	var b strings.Builder
	p := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	var names []string
	for _, k := range all {
		names = append(names, k.name)
	}
	p("# bash completion for ramnest: source <(ramnest completion bash)")
	p("_ramnest() {")
	p("  local cur=${COMP_WORDS[COMP_CWORD]} prev=${COMP_WORDS[COMP_CWORD-1]} command=${COMP_WORDS[1]} flags= words= files=yes")
	p("  COMPREPLY=()")
	p("  if ((COMP_CWORD == 1)); then")
	p("    COMPREPLY=($(compgen -W '%s --help --version' -- \"$cur\"))", strings.Join(names, " "))
	p("    return")
	p("  fi")
	p("  case $command in")
	for _, k := range all {
		p("    %s)", k.name)
		p("      flags='%s'", strings.Join(k.names(), " "))
		if len(k.words) > 0 || k.noFiles {
			p("      words='%s' files=", strings.Join(k.words, " "))
		}
		p("      case $prev in")
		for _, f := range k.flags {
			if len(f.words) > 0 {
				p("        --%s) flags= words='%s' files= ;;", f.long, strings.Join(f.words, " "))
			} else if f.takes {
				p("        %s) flags= words= files=yes ;;", strings.Join(completed{flags: []completedFlag{f}}.names(), "|"))
			}
		}
		p("      esac ;;")
	}
	p("  esac")
	p("  if [[ $cur == -* && -n $flags ]]; then")
	p("    COMPREPLY=($(compgen -W \"$flags\" -- \"$cur\"))")
	p("  elif [[ -n $words ]]; then")
	p("    COMPREPLY=($(compgen -W \"$words\" -- \"$cur\"))")
	p("  elif [[ -n $files ]]; then")
	p("    compopt -o filenames 2>/dev/null")
	p("    local name")
	p("    while IFS= read -r name; do COMPREPLY+=(\"$name\"); done < <(compgen -f -- \"$cur\")")
	p("  fi")
	p("}")
	p("complete -F _ramnest ramnest")
	return b.String()
}

// zshQuoted puts a text into single quotes for the arguments of zsh's own function.
func zshQuoted(s string) string {
	return strings.NewReplacer("'", `'\''`, "[", `\[`, "]", `\]`, ":", `\:`).Replace(s)
}

// zshCompletion is the script for zsh.
func zshCompletion(all []completed) string {
	var b strings.Builder
	p := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	p("#compdef ramnest")
	p("# zsh completion for ramnest: source <(ramnest completion zsh)")
	p("_ramnest() {")
	p("  if ((CURRENT == 2)); then")
	p("    local -a commands=(")
	for _, k := range all {
		p("      '%s:%s'", k.name, zshQuoted(k.help))
	}
	p("    )")
	p("    _describe command commands")
	p("    return")
	p("  fi")
	p("  local command=$words[2]")
	p("  shift words")
	p("  ((CURRENT--))")
	p("  case $command in")
	for _, k := range all {
		p("    %s)", k.name)
		line := "      _arguments -S"
		for _, f := range k.flags {
			value := ""
			switch {
			case len(f.words) > 0:
				value = ":value:(" + strings.Join(f.words, " ") + ")"
			case f.takes:
				value = ":value:_files"
			}
			line += fmt.Sprintf(" \\\n        '*--%s[%s]%s'", f.long, zshQuoted(f.help), value)
			if f.short != "" {
				line += fmt.Sprintf(" \\\n        '*-%s[%s]%s'", f.short, zshQuoted(f.help), value)
			}
		}
		switch {
		case len(k.words) > 0:
			line += fmt.Sprintf(" \\\n        '*:word:(%s)'", strings.Join(k.words, " "))
		case !k.noFiles:
			line += " \\\n        '*:file:_files'"
		}
		p("%s ;;", line)
	}
	p("  esac")
	p("}")
	p("compdef _ramnest ramnest")
	return b.String()
}

// fishCompletion is the script for fish.
func fishCompletion(all []completed) string {
	var b strings.Builder
	quoted := func(s string) string { return "'" + strings.NewReplacer(`\`, `\\`, "'", `\'`).Replace(s) + "'" }
	b.WriteString("# fish completion for ramnest: ramnest completion fish | source\ncomplete -c ramnest -e\n")
	for _, k := range all {
		fmt.Fprintf(&b, "complete -c ramnest -f -n __fish_use_subcommand -a %s -d %s\n", k.name, quoted(k.help))
		on := quoted("__fish_seen_subcommand_from " + k.name)
		for _, f := range k.flags {
			line := fmt.Sprintf("complete -c ramnest -n %s -l %s", on, f.long)
			if f.short != "" {
				line += " -s " + f.short
			}
			switch {
			case len(f.words) > 0:
				line += " -x -a " + quoted(strings.Join(f.words, " "))
			case f.takes:
				line += " -r"
			}
			b.WriteString(line + " -d " + quoted(f.help) + "\n")
		}
		switch {
		case len(k.words) > 0:
			fmt.Fprintf(&b, "complete -c ramnest -f -n %s -a %s\n", on, quoted(strings.Join(k.words, " ")))
		case k.noFiles:
			fmt.Fprintf(&b, "complete -c ramnest -f -n %s\n", on)
		}
	}
	return b.String()
}
