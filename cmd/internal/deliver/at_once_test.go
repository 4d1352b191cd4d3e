package deliver_test

import (
	"bytes"
	"os"
	"sync"
	"testing"

	"ramnest/cmd/internal/deliver"
	"ramnest/cmd/internal/solve/solvetest"
)

// Different jobs worked out at once, each by several, give the bytes of one after the
// other. Run with -race, it also shows what they would share.
func TestManyJobsAtOnce(t *testing.T) {
	jobs := solvetest.Jobs()
	work := func(t testing.TB, name string) map[string][]byte {
		s, doc := solvetest.Example(t, name)
		set, err := deliver.Files(t.Context(), s, "tool", doc.Inputs(s.Job))
		if err != nil {
			t.Error(err)
			return nil
		}
		out := map[string][]byte{}
		for _, f := range set.Files {
			var b bytes.Buffer
			if err := f.Write(&b); err != nil {
				t.Error(err)
			}
			out[f.Name] = b.Bytes()
		}
		return out
	}
	alone := map[string]map[string][]byte{}
	for _, name := range jobs {
		alone[name] = work(t, name)
	}
	each := 1
	if os.Getenv("RAMNEST_LONG") != "" {
		each = 2
	}
	got := make([]map[string][]byte, each*len(jobs))
	var group sync.WaitGroup
	for i := range got {
		group.Go(func() { got[i] = work(t, jobs[i%len(jobs)]) })
	}
	group.Wait()
	for i, files := range got {
		want := alone[jobs[i%len(jobs)]]
		if len(files) != len(want) || len(files) == 0 {
			t.Errorf("%s: %d files, want %d", jobs[i%len(jobs)], len(files), len(want))
		}
		for name, b := range files {
			if !bytes.Equal(b, want[name]) {
				t.Errorf("%s: other bytes beside other jobs", name)
			}
		}
	}
}
