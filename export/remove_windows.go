package export

import (
	"errors"
	"os"
	"path/filepath"
	"syscall"
)

// remove removes a file of the folder. Where the system cannot remove one through the
// folder that is held open (older Wine, some drives), it does so by name.
func remove(root *os.Root, name string) error {
	const invalidFunction = syscall.Errno(1)
	err := root.Remove(name)
	if errors.Is(err, invalidFunction) {
		return os.Remove(filepath.Join(root.Name(), name))
	}
	return err
}
