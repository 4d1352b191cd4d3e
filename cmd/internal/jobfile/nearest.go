package jobfile

import "strings"

// nearest gives the one of known that word was perhaps meant to be, or nothing
// if none is near. Of two equally near the first is taken.
func nearest(word string, known []string) string {
	if len(word) > maxName {
		return ""
	}
	best, found := 0, ""
	for _, k := range known {
		d := distance(folded(word), folded(k))
		if limit := max(len(word), len(k)) * 2 / 5; d <= limit && d < len(k) && (found == "" || d < best) {
			best, found = d, k
		}
	}
	return found
}

// folded is a name without what is merely a way of writing: case, dashes, and
// the humps of camelCase.
func folded(s string) string {
	return strings.NewReplacer("_", "", "-", "", " ", "").Replace(strings.ToLower(s))
}

// distance counts the letters to add, drop, change or swap with a neighbour to
// get from a to b: the restricted Damerau-Levenshtein distance.
func distance(a, b string) int {
	s, t := []rune(a), []rune(b)
	before, above, row := make([]int, len(t)+1), make([]int, len(t)+1), make([]int, len(t)+1)
	for j := range above {
		above[j] = j
	}
	for i := 1; i <= len(s); i++ {
		row[0] = i
		for j := 1; j <= len(t); j++ {
			change := 1
			if s[i-1] == t[j-1] {
				change = 0
			}
			row[j] = min(above[j]+1, row[j-1]+1, above[j-1]+change)
			if i > 1 && j > 1 && s[i-1] == t[j-2] && s[i-2] == t[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, above, row = above, row, before
	}
	return above[len(t)]
}
