package guide

import (
	"embed"
	"fmt"
	"strings"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/jobfile"
	"ramnest/force"
)

//go:embed topics
var texts embed.FS

// published is the tables of the page of that name: [force]'s test of the published page
// makes it.
//
//go:embed published.txt
var published string

// A Topic is one page of the reference.
type Topic struct {
	Name  string // as it is asked for
	Title string
	more  func() string // behind the text; nil: nothing
}

// Topics lists the pages in the order in which one would read them.
func Topics() []Topic {
	return []Topic{
		{"job", "the job file and its keys", func() string {
			return keys("", "steps[].lower", "steps[].upper", "steps[].latches", "latches[].", "bench.")
		}},
		{"latches", "kinds of latches and their keys", func() string { return keys("latches[]") }},
		{"materials", "the built-in materials", materials},
		{"bench", "what the shop has", func() string { return keys("bench") }},
		{"units", "units of a job, of results, of single numbers", unitTable},
		{"outputs", "the files of a run", nil},
		{"exit-codes", "exit codes and how faults are written", nil},
		{"warnings", "numbered warnings, all of them", warningTable},
		{"published", "published forces beside those of ramnest, and why they differ", func() string { return published }},
		{"safety", "what the figures do not replace", nil},
		{"limits", "bounds on what a file may cost, and how to raise them", nil},
	}
}

// TopicOf finds a page by its name.
func TopicOf(name string) (Topic, bool) {
	for _, t := range Topics() {
		if t.Name == name {
			return t, true
		}
	}
	return Topic{}, false
}

// String gives the page as text.
func (t Topic) String() string {
	text, err := texts.ReadFile("topics/" + t.Name + ".txt")
	if err != nil {
		panic("guide: " + err.Error()) // the files are part of the program
	}
	out := strings.ToUpper(t.Title) + "\n\n" + string(text)
	if t.more != nil {
		out += t.more()
	}
	return out
}

// keys lists the keys of a job file below a path, but for those below others.
func keys(below string, without ...string) string {
	var b strings.Builder
next:
	for _, k := range jobfile.Keys(new(job.File), About()) {
		if !strings.HasPrefix(k.Path, below) {
			continue
		}
		for _, w := range without {
			if strings.HasPrefix(k.Path, w) && k.Path != w {
				continue next
			}
		}
		what := k.Type
		switch {
		case len(k.OneOf) > 0:
			what = strings.Join(k.OneOf, " | ")
		case k.Unit != "" && k.Unit != "none":
			what += ", " + unitWord(k.Unit)
		}
		mark := ""
		if k.Required {
			mark = " *"
		}
		if head := fmt.Sprintf("  %s%s  (%s)\n", k.Path, mark, what); len(head) <= width+1 {
			b.WriteString(head)
		} else {
			b.WriteString("  " + k.Path + mark + "\n" + filled("        ", "("+what+")"))
		}
		if k.About != "" {
			b.WriteString(filled("        ", k.About))
		}
		for _, w := range without {
			if k.Path == strings.TrimSuffix(strings.TrimSuffix(w, "."), "[]") && w != k.Path {
				b.WriteString("        keys: ramnest help " + k.Path + "\n")
			} else if k.Path == w {
				b.WriteString("        keys as at the top of the file\n")
			}
		}
	}
	return b.String()
}

// unitWord is a unit tag as a person writes it.
func unitWord(tag string) string {
	if tag == "pct" {
		return "%"
	}
	return tag
}

// materials is the built-in table.
func materials() string {
	var b strings.Builder
	fmt.Fprintf(&b, "  %-14s %-9s %11s %9s %10s %15s\n", "material", "process", "modulus MPa", "friction", "on steel", "strain %")
	for _, name := range force.Materials() {
		for _, process := range []string{"PBF", "MEX", "VPP", "moulded", "machined"} {
			m, faults := force.Resolve(force.MaterialSpec{Material: name, Process: process})
			if len(faults) > 0 {
				continue
			}
			strain := "-"
			if m.StrainOnce.Value > 0 {
				strain = fmt.Sprintf("%.3g, %.3g", 100*m.StrainOnce.Value, 100*m.StrainOnceZ.Value)
			}
			fmt.Fprintf(&b, "  %-14s %-9s %11.4g %9.2g %10.2g %15s\n", name, process, m.Modulus.Value, m.Friction.Value, m.FrictionSteel.Value,
				strain)
		}
	}
	return b.String()
}

// unitTable lists every dimension with its units.
func unitTable() string {
	var b strings.Builder
	for _, d := range jobfile.Dimensions() {
		fmt.Fprintf(&b, "    %-22s %s\n", d.Noun, strings.Join(d.Units, "  "))
	}
	return b.String()
}

// warningTable lists every warning by its title.
func warningTable() string {
	var b strings.Builder
	for _, w := range Warnings() {
		fmt.Fprintf(&b, "  W%-4d %s\n", w.Number, w.Title)
	}
	for _, w := range Warnings() {
		b.WriteString("\n" + w.String())
	}
	return b.String()
}
