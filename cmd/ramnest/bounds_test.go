package main

import (
	"reflect"
	"strings"
	"testing"
	"unicode"

	"ramnest/cmd/internal/guide"
)

// The topic about limits names every flag of them.
func TestLimitsAreInTheGuide(t *testing.T) {
	t.Parallel()
	topic, ok := guide.TopicOf("limits")
	if !ok {
		t.Fatal("no topic limits")
	}
	for f := range reflect.TypeFor[bounds]().Fields() {
		var flag strings.Builder
		for i, r := range f.Name {
			if unicode.IsUpper(r) && i > 0 {
				flag.WriteByte('-')
			}
			flag.WriteRune(unicode.ToLower(r))
		}
		if !strings.Contains(topic.String(), "    --"+flag.String()) {
			t.Errorf("--%s is not in ramnest help limits", &flag)
		}
	}
}
