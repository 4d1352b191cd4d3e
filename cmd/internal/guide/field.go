package guide

import (
	_ "embed" // the comments of the fields
	"strings"

	"ramnest/cmd/internal/jobfile"
)

//go:embed fields.txt
var fields string

// About gives what the keys of the files are for: the comments of the Go fields that
// take them. A test holds fields.txt in step with the source.
func About() jobfile.About {
	out := jobfile.About{}
	for line := range strings.Lines(fields) {
		if field, text, ok := strings.Cut(strings.TrimSuffix(line, "\n"), "\t"); ok {
			out[field] = text
		}
	}
	return out
}
