package store

import (
	"os"

	"github.com/gofrs/flock"
)

// lockSuffix names the file beside a winter file whose lock says who may write. It is gone again when the
// winter is closed; what a killed program leaves behind holds nobody up, for its lock ended with it.
const lockSuffix = "-lock"

// lockOf takes the lock of a winter file. It is nil when another window holds it; an error means that no
// lock can be taken there at all, as on a disk that may not be written.
func lockOf(path string) (*flock.Flock, error) {
	for {
		lock := flock.New(path+lockSuffix, flock.SetFlag(os.O_CREATE|os.O_RDWR))
		held, err := lock.TryLock()
		if err != nil || !held {
			lock.Close()
			return nil, err
		}
		if stands(lock) {
			return lock, nil
		}
		lock.Close() // taken on a file that its last holder was just clearing away
	}
}

// stands says whether the file that was locked is still the one that bears the name.
func stands(lock *flock.Flock) bool {
	own, err := lock.Stat()
	if err != nil {
		return false
	}
	named, err := os.Stat(lock.Path())
	return err == nil && os.SameFile(own, named)
}

// release gives the lock up and clears its file away: first, so that nobody takes it on a file about to go;
// where a system does not let go of open files, after.
func release(lock *flock.Flock) {
	if lock == nil {
		return
	}
	cleared := os.Remove(lock.Path()) == nil
	lock.Close()
	if !cleared {
		os.Remove(lock.Path())
	}
}
