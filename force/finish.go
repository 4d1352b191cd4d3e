package force

import (
	"slices"
	"strings"
)

// finishes are what may be done to the surfaces of a printed part, the rawest first.
var finishes = []string{"as_printed", "blasted", "tumbled", "smoothed"}

// finishFaults refuses a finish that is not known; empty is none stated.
func finishFaults(finish string) []Fault {
	if finish == "" || slices.Contains(finishes, finish) {
		return nil
	}
	return []Fault{{Field: "finish", Given: finish, Problem: "is not known", Want: strings.Join(finishes, ", ")}}
}
