package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/jobfile"
	"ramnest/cmd/internal/starter"
	"ramnest/force"
)

type initCommand struct {
	File     string `arg:"" optional:"" default:"job.yaml" name:"job.yaml" help:"File to write."`
	Number   string `placeholder:"NUMBER" help:"Number of the job: engraved, and first part of every file name."`
	Title    string `placeholder:"TEXT" help:"What is assembled."`
	Date     string `placeholder:"YYYY-MM-DD" help:"Date of the first revision."`
	Latch    string `placeholder:"KIND" help:"${kinds}."`
	Units    string `placeholder:"UNIT" help:"mm or in. Left out where nobody can be asked: mm."`
	Material string `placeholder:"NAME" help:"Material of the printed parts. Left out where nobody can be asked: PA12."`
	Process  string `placeholder:"NAME" help:"PBF, MEX, VPP, moulded or machined. Left out where nobody can be asked: PBF."`
	Rate     string `placeholder:"N" help:"Assemblies an hour. Left out where nobody can be asked: 20."`
	Lower    string `placeholder:"FILE" help:"Mesh of the lower part: with --upper the job is written from the two, its latches measured."`
	Upper    string `placeholder:"FILE" help:"Mesh of the upper part."`
	Unit     string `enum:",mm,cm,m,in,ft,um" default:"" placeholder:"UNIT" help:"Unit of the two files. Left out: as the files say, else mm."`
	Up       axis   `enum:",+x,-x,+y,-y,+z,-z" default:"" placeholder:"AXIS" help:"Axis of the upper file that points up. Left out: +z."`
	Move     shift  `placeholder:"X,Y,Z" help:"Way of the upper part to its seat, mm. Left out: both are seated as stored."`
	Force    bool   `help:"Replace a file that is there."`
}

// Help says what is written.
func (initCommand) Help() string {
	return `Asks what it must know, in a terminal; what a flag states is not asked. Writes a
job of made-up dimensions with a comment on each line, which check and make take
as it stands. A file that is there is kept, unless --force is given.

From two meshes it writes a job with the latches between them found and measured;
what no mesh can say is a default, and named as one.

    ramnest init
    ramnest init job.yaml --lower parts/box.stl --upper parts/lid.stl --up=-z --move=0,0,12.5
    ramnest init cap.yaml --number FWL-1 --title "Cap on housing" --date 2026-11-25 --latch annular`
}

// A question is one answer that is needed.
type question struct {
	flag, ask string
	answer    *string
	usual     string   // taken for an empty line; empty: there must be an answer
	words     []string // that it may be; nil: judged with the job
}

// Run writes the file.
func (i *initCommand) Run(c *console) error {
	_, err := os.Lstat(i.File)
	switch {
	case err == nil && !i.Force:
		return badUse{fmt.Sprintf("%s: is there already, and was kept; --force replaces it", i.File)}
	case err != nil && !errors.Is(err, os.ErrNotExist):
		return badUse{fmt.Sprintf("cannot write %s: %s", i.File, innermost(err))}
	}
	if i.Lower != "" || i.Upper != "" {
		return i.fromPair(c)
	}
	questions := []question{
		{"number", "Number of the job, such as FWL-1", &i.Number, "", nil},
		{"title", "What is assembled, such as cap on housing", &i.Title, "", nil},
		{"date", "Date of the first revision, such as 2026-11-25", &i.Date, "", nil},
		{"latch", "Latch: " + strings.Join(force.Kinds(), ", "), &i.Latch, "", force.Kinds()},
		{"units", "Units, mm or in", &i.Units, "mm", []string{"mm", "in"}},
		{"material", "Material of the printed parts", &i.Material, "PA12", nil},
		{"process", "Process: PBF, MEX, VPP, moulded, machined", &i.Process, "PBF", []string{"PBF", "MEX", "VPP", "moulded", "machined"}},
		{"rate", "Assemblies an hour", &i.Rate, "20", nil},
	}
	if err := c.answer(questions); err != nil {
		return err
	}
	for _, q := range questions {
		if err := q.judge(); err != nil {
			return err
		}
	}
	text, err := starter.Write(starter.Answers{Number: i.Number, Title: i.Title, Date: i.Date, Units: i.Units, Kind: i.Latch,
		Material: i.Material, Process: i.Process, Rate: i.Rate})
	if err != nil {
		return err
	}
	if err := i.write(c, text); err != nil {
		return err
	}
	return c.print(fmt.Sprintf("%s is written: a job of made-up dimensions that runs as it stands. Next:\n\n    ramnest check %s\n    ramnest make %s -o out\n", i.File, shellWord(i.File), shellWord(i.File)))
}

// write judges the job as check would, and writes it.
func (i *initCommand) write(c *console, text []byte) error {
	var j job.File
	doc, problems := jobfile.Decode(i.File, text, &j, jobfile.Options{})
	if problems = problems.And(doc.Problems(j.Validate())); len(problems) > 0 {
		for k := range problems {
			problems[k].File, problems[k].Line = "ramnest: init: the job would not do, and was not written", 0
		}
		return problems
	}
	return c.writeFile(i.File, func(w io.Writer) error {
		_, err := w.Write(text)
		return err
	})
}

// judge holds an answer to the words that it may be.
func (q question) judge() error {
	if q.flag == "material" && *q.answer != "" {
		if _, faults := force.Resolve(force.MaterialSpec{Material: *q.answer}); len(faults) > 0 {
			faults[0].Field = "init: --material"
			return badUse{faults[0].Error()}
		}
	}
	if q.words == nil {
		return nil
	}
	for _, w := range q.words {
		if *q.answer == w {
			return nil
		}
	}
	problem := "is not known"
	if term := force.ProcessTerm(*q.answer); slices.Contains(q.words, term) {
		problem = force.CalledHere(term)
	}
	return badUse{fmt.Sprintf("init: --%s: %s; %s (%s)", q.flag, *q.answer, problem, strings.Join(q.words, ", "))}
}

// answer asks what no flag states: of a person at a terminal; else it takes the usual
// and says what is missing.
func (c *console) answer(questions []question) error {
	terminal := isTerminal(c.in)
	lines := bufio.NewReader(io.LimitReader(orEmpty(c.in), 1<<16))
	var missing []string
	for _, q := range questions {
		if *q.answer != "" {
			continue
		}
		for terminal && *q.answer == "" {
			usual := ""
			if q.usual != "" {
				usual = " [" + q.usual + "]"
			}
			fmt.Fprintf(c.err, "%s%s: ", q.ask, usual)
			line, err := lines.ReadString('\n')
			if *q.answer = strings.TrimSpace(line); *q.answer == "" {
				*q.answer = q.usual
			}
			if err != nil { // the terminal is closed
				terminal = false
			} else if wrong := q.judge(); wrong != nil && *q.answer != "" {
				fmt.Fprintln(c.err, "  "+strings.TrimPrefix(wrong.Error(), "init: --"))
				*q.answer = ""
			}
		}
		if *q.answer == "" {
			*q.answer = q.usual
		}
		if *q.answer == "" {
			missing = append(missing, "--"+q.flag)
		}
	}
	if len(missing) > 0 {
		return badUse{fmt.Sprintf("init: nobody can be asked (no terminal), so these must be stated: %s; see ramnest init --help",
			strings.Join(missing, ", "))}
	}
	return nil
}

// isTerminal says whether somebody may sit at the other end.
func isTerminal(in io.Reader) bool {
	f, ok := in.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	if err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return false
	}
	null, err := os.Stat(os.DevNull)
	return err != nil || !os.SameFile(info, null)
}

func orEmpty(in io.Reader) io.Reader {
	if in == nil {
		return strings.NewReader("")
	}
	return in
}

// shellWord is a file name as it is typed.
func shellWord(s string) string {
	if strings.ContainsAny(s, " '\"$&;()<>|*?\\`") {
		return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'"
	}
	return s
}
