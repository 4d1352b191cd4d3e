package main

import (
	"strings"
	"testing"

	"ramnest/cmd/internal/guide"
)

// The topic about limits names every limit, with the name by which it is raised.
func TestLimitsAreInTheGuide(t *testing.T) {
	t.Parallel()
	topic, ok := guide.TopicOf("limits")
	if !ok {
		t.Fatal("no topic limits")
	}
	b := standing()
	_, names, _ := strings.Cut(b.raise("?").Error(), "one of ")
	all := strings.Split(strings.TrimSuffix(names, ")"), ", ")
	if len(all) != 9 {
		t.Errorf("%d limits: %v", len(all), all)
	}
	for _, name := range append(all, "--max-memory=", "--max-time=") {
		if !strings.Contains(topic.String(), "\n    "+name) {
			t.Errorf("%s is not in ramnest help limits", name)
		}
	}
}

// A limit that is raised is the one that was named, and no other.
func TestLimitsAreRaised(t *testing.T) {
	t.Parallel()
	b := standing()
	if err := b.raise("job-bytes=1 shop-bytes=2,rows=3 places=4 outlines=5 triangles=6 mesh-bytes=7 unpacked-bytes=8 outside=yes"); err != nil {
		t.Fatal(err)
	}
	want := bounds{jobBytes: 1, shopBytes: 2, rows: 3, places: 4, outlines: 5, triangles: 6, meshBytes: 7, unpackedBytes: 8, outside: true}
	if b != want {
		t.Errorf("raised to %+v, want %+v", b, want)
	}
	for _, bad := range []string{"rows", "rows=0", "rows=x", "rows=1000001", "triangles=536870912", "outside=1", "row=4"} {
		b := standing()
		if err := b.raise(bad); err == nil {
			t.Errorf("%q was taken", bad)
		}
	}
}
