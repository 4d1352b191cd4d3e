//go:build !windows

package export

import "os"

// remove removes a file of the folder.
func remove(root *os.Root, name string) error { return root.Remove(name) }
