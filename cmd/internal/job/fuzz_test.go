package job_test

import (
	"os"
	"path/filepath"
	"testing"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/jobfile"
)

// FuzzValidate holds that whatever stands in a file, also one that Decode has
// complained about, is judged without a panic, and that a file without faults has
// steps that can be computed.
func FuzzValidate(f *testing.F) {
	names, err := filepath.Glob("../../../testdata/jobs/*.yaml")
	if err != nil || len(names) == 0 {
		f.Fatal("no example jobs", err)
	}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	f.Add([]byte(flat))
	f.Add([]byte(steps))
	f.Add([]byte("steps: [{}]"))
	f.Add([]byte("latches: [{}]\nlower: {}\nupper: {}"))
	f.Fuzz(func(t *testing.T, text []byte) {
		var j job.File
		doc, problems := jobfile.Decode("x.yaml", text, &j, jobfile.Options{})
		faults := j.Validate()
		doc.Problems(faults)
		if len(problems) > 0 || len(faults) > 0 {
			return
		}
		for _, s := range j.Steps() {
			if s.Lower == nil || s.Upper == nil || len(s.Latches) == 0 {
				t.Fatalf("a step lacks a part or a latch: %+v", s)
			}
			if faults := j.Assembly(s).Validate(); len(faults) > 0 {
				t.Fatalf("the assembly of a good job has faults: %v", faults)
			}
		}
	})
}
