package jobfile

import "unicode/utf8"

// nearest gives the known word with the smallest edit distance to word, the
// first of equals; none if more than a third of the word (at least two letters)
// would have to change.
func nearest(word string, known []string) string {
	n := utf8.RuneCountInString(word)
	if n == 0 || n > maxKey {
		return ""
	}
	best, bestDistance := "", max(2, n/3)+1
	if n <= 2 {
		bestDistance = 2
	}
	for _, k := range known {
		if d := distance([]rune(word), []rune(k)); d < bestDistance {
			best, bestDistance = k, d
		}
	}
	return best
}

// distance counts the letters to insert, delete, replace or swap with their
// neighbour to make b of a.
func distance(a, b []rune) int {
	var before []int
	last := make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range a {
		row := make([]int, len(b)+1)
		row[0] = i + 1
		for j := range b {
			change := 1
			if a[i] == b[j] {
				change = 0
			}
			row[j+1] = min(last[j+1]+1, row[j]+1, last[j]+change)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last = last, row
	}
	return last[len(b)]
}
