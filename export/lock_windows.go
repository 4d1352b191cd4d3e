package export

import (
	"errors"
	"os"
	"path/filepath"
	"syscall"
)

// tryLock holds a file that nobody else can open meanwhile, and that the system removes
// when it is closed, also by the end of the process.
func tryLock(root *os.Root) (unlock func(), err error) {
	const (
		deleteAccess      = 0x00010000
		deleteOnClose     = 0x04000000
		sharingViolation  = syscall.Errno(32)
		hidden, temporary = 0x2, 0x100
	)
	name, err := syscall.UTF16PtrFromString(filepath.Join(root.Name(), ".ramnest.lock"))
	if err != nil {
		return nil, err
	}
	h, err := syscall.CreateFile(name, syscall.GENERIC_READ|deleteAccess, 0, nil, syscall.OPEN_ALWAYS, deleteOnClose|hidden|temporary, 0)
	if errors.Is(err, sharingViolation) {
		return nil, errTaken
	}
	if err != nil {
		return nil, err
	}
	return func() { syscall.CloseHandle(h) }, nil
}
