package deliver

import (
	"os"
	"regexp"
	"slices"

	"ramnest/cmd/internal/job"
)

// Leftovers lists files in a folder that an earlier run for the same job left there
// and that are not in the set: tooling that no longer holds. The folder may be
// missing.
func Leftovers(folder, number string, set Set) []string {
	ours := regexp.MustCompile(`^` + regexp.QuoteMeta(job.Stem(number)) +
		`-((nest|anvil)(-\d+)?\.(stl|3mf)|quote\.csv|work-instruction\.pdf|report\.json)$`)
	entries, err := os.ReadDir(folder)
	if err != nil {
		return nil // nothing can be said of it
	}
	var out []string
	for _, e := range entries {
		if ours.MatchString(e.Name()) && !slices.Contains(set.Names, e.Name()) {
			out = append(out, e.Name())
		}
	}
	return out
}
