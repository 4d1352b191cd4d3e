package chart

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "rewrite what the tests compare with")

// The whole drawing, mark by mark: something to look at after a change that is meant.
func TestDrawingAsItWas(t *testing.T) {
	file := filepath.Join("testdata", "sample.svg")
	got := draw(t, sample(), "svg")
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("the drawing is another: look at it, and write it anew with -update if that is meant\n%s", got)
	}
}
