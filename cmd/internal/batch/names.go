package batch

import (
	"path/filepath"
	"strings"
)

// folderNames gives each job its folder: the name of its file without the ending.
// Where two would share one, also on a disk that takes upper and lower case for the
// same, the later is refused.
func folderNames(files []string) (names, clashes []string) {
	names, clashes = make([]string, len(files)), make([]string, len(files))
	owner := map[string]string{}
	for i, file := range files {
		base := filepath.Base(file)
		names[i] = strings.TrimSuffix(base, filepath.Ext(base))
		at := strings.ToLower(names[i])
		if first, taken := owner[at]; taken {
			clashes[i] = file + ": its folder would be that of " + first + "; give the files names of their own"
			continue
		}
		owner[at] = file
	}
	return names, clashes
}
