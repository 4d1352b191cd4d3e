package deliver

import (
	"bytes"
	"testing"

	"ramnest/cmd/internal/solve/solvetest"
	workinstructions "ramnest/work-instructions"
)

// From the solution to the bytes of the PDF, pictures and all.
func BenchmarkSheet(b *testing.B) {
	for _, job := range []string{"rim-cap", "shell-pair"} {
		b.Run(job, func(b *testing.B) {
			s, _ := solvetest.Example(b, job)
			n := 0
			for b.Loop() {
				sheet, err := sheet(b.Context(), s, "tool")
				if err != nil {
					b.Fatal(err)
				}
				var out bytes.Buffer
				if err := workinstructions.Write(&out, sheet); err != nil {
					b.Fatal(err)
				}
				n = out.Len()
			}
			b.ReportMetric(float64(n), "bytes")
		})
	}
}
