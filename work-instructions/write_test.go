package workinstructions

import (
	"bytes"
	"os"
	"testing"
)

func TestLook(t *testing.T) {
	var out bytes.Buffer
	if err := Write(&out, demoSheet(t)); err != nil {
		t.Fatal(err)
	}
	t.Log(out.Len())
	os.MkdirAll("/tmp/wipages", 0o755)
	os.WriteFile("/tmp/wipages/demo.pdf", out.Bytes(), 0o644)
}
