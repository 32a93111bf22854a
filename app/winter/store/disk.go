package store

import (
	"errors"
	"runtime"
	"syscall"

	"github.com/ncruces/go-sqlite3"
	"github.com/ncruces/go-sqlite3/vfs"
)

// disk is the machine's own file system, but for one thing: a write that finds no room on the disk says so.
// Beneath, it is an I/O error like any other, and the reason is gone once the change was rolled back.
type disk struct{ vfs.VFSFilename }

// diskFile is a file on it.
type diskFile struct{ vfs.File }

// onDisk names the disk for SQLite.
const onDisk = "thawbook"

func init() { vfs.Register(onDisk, disk{vfs.Find("").(vfs.VFSFilename)}) }

// OpenFilename is that of vfs.VFSFilename.
func (d disk) OpenFilename(name *vfs.Filename, flags vfs.OpenFlag) (vfs.File, vfs.OpenFlag, error) {
	file, flags, err := d.VFSFilename.OpenFilename(name, flags)
	if err != nil {
		return nil, flags, withRoom(err)
	}
	return diskFile{file}, flags, nil
}

// WriteAt is io.WriterAt's.
func (f diskFile) WriteAt(p []byte, at int64) (int, error) {
	n, err := f.File.WriteAt(p, at)
	return n, withRoom(err)
}

// Sync is that of vfs.File: some systems look for room only then.
func (f diskFile) Sync(flags vfs.SyncFlag) error { return withRoom(f.File.Sync(flags)) }

// SizeHint is that of vfs.FileSizeHint.
func (f diskFile) SizeHint(size int64) error {
	if hinted, ok := f.File.(vfs.FileSizeHint); ok {
		return hinted.SizeHint(size)
	}
	return nil
}

// HasMoved is that of vfs.FileHasMoved: nothing is written to a file that no longer bears its name.
func (f diskFile) HasMoved() (bool, error) {
	if moving, ok := f.File.(vfs.FileHasMoved); ok {
		return moving.HasMoved()
	}
	return false, nil
}

// DeviceCharacteristics is that of vfs.File, without writes in batches, which a diskFile does not pass on.
func (f diskFile) DeviceCharacteristics() vfs.DeviceCharacteristic {
	return f.File.DeviceCharacteristics() &^ vfs.IOCAP_BATCH_ATOMIC
}

// withRoom gives an error of a full disk SQLite's code for it.
func withRoom(err error) error {
	if noRoom(err) {
		return vfs.SystemError(err, sqlite3.FULL)
	}
	return err
}

// Windows says ERROR_HANDLE_DISK_FULL and ERROR_DISK_FULL of a full disk
// (learn.microsoft.com, System Error Codes 0-499).
const (
	windowsHandleDiskFull = syscall.Errno(39)
	windowsDiskFull       = syscall.Errno(112)
)

// noRoom says whether the system's error is that of a full disk, or of a user's share of it.
func noRoom(err error) bool {
	if runtime.GOOS == "windows" {
		return errors.Is(err, windowsHandleDiskFull) || errors.Is(err, windowsDiskFull)
	}
	return errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT)
}
