package files

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"time"
)

// tempFile is what writing needs of a file.
type tempFile interface {
	io.Writer
	Name() string
	Chmod(fs.FileMode) error
	Sync() error
	Close() error
}

// tempPrefix begins the names of temporary files.
const tempPrefix = ".thawbook-"

// createTemp makes the temporary file; tests put a full disk in its place.
var createTemp = func(dir string) (tempFile, error) { return os.CreateTemp(dir, tempPrefix+"*") }

// WriteAtomic writes a file so that afterwards either the old one stands untouched or the new one whole:
// a temporary file in the same folder, write, sync, close, rename, sync of the folder. After any error, or
// a panic of write, the temporary file is gone. An existing file keeps its mode and a link its target.
// The error write returned, or the system's, can be found with errors.Is.
func WriteAtomic(path string, write func(io.Writer) error) error {
	return placed(path, os.Rename, func(temp tempFile) error { return fill(temp, mode(path), write) })
}

// MakeAtomic is WriteAtomic for somebody who makes the file himself, by its temporary name.
func MakeAtomic(path string, make func(temp string) error) error {
	return placed(path, os.Rename, func(temp tempFile) error { return made(temp, mode(path), make) })
}

// MakeNew is MakeAtomic for a name that nothing bears yet: of several who want it at once one gets it, and the
// others an error that is fs.ErrExist.
func MakeNew(path string, make func(temp string) error) error {
	return placed(path, linked, func(temp tempFile) error { return made(temp, 0o644, make) })
}

// made has a file made under a temporary name, and has it on the disk.
func made(temp tempFile, mode fs.FileMode, make func(temp string) error) error {
	err := temp.Close()
	if err == nil {
		err = make(temp.Name())
	}
	if err != nil {
		return err
	}
	file, err := os.OpenFile(temp.Name(), os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return fill(file, mode, func(io.Writer) error { return nil })
}

// linked gives a file another name that nothing bears, and takes the first from it. Where a disk knows no second
// names the new one is claimed by an empty file first.
func linked(temp, path string) error {
	err := os.Link(temp, path)
	if err == nil {
		return os.Remove(temp)
	}
	if errors.Is(err, fs.ErrExist) {
		return err
	}
	claim, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
	if err != nil {
		return err
	}
	claim.Close()
	if err = os.Rename(temp, path); err != nil {
		os.Remove(path)
	}
	return err
}

// placed puts a temporary file that was finished and closed in its place.
func placed(path string, place func(temp, path string) error, finish func(tempFile) error) error {
	if target, err := filepath.EvalSymlinks(path); err == nil {
		path = target
	}
	clearLeft(filepath.Dir(path))
	temp, err := createTemp(filepath.Dir(path))
	if err != nil {
		return notWritten(path, err)
	}
	done := false
	defer func() {
		if !done {
			temp.Close()
			os.Remove(temp.Name())
		}
	}()
	if err := finish(temp); err != nil {
		return notWritten(path, err)
	}
	if err := place(temp.Name(), path); err != nil {
		return notWritten(path, err)
	}
	done = true
	return syncFolder(filepath.Dir(path))
}

// leftAfter is how long a temporary file lies untouched before it counts as left by a program that was killed.
const leftAfter = time.Hour

// clearLeft clears away what killed programs left in a folder.
func clearLeft(dir string) {
	entries, _ := os.ReadDir(dir)
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), tempPrefix) || !e.Type().IsRegular() {
			continue
		}
		if info, err := e.Info(); err == nil && time.Since(info.ModTime()) > leftAfter {
			os.Remove(filepath.Join(dir, e.Name()))
		}
	}
}

// fill writes the temporary file, has it on the disk and closes it.
func fill(temp tempFile, mode fs.FileMode, write func(io.Writer) error) error {
	err := write(temp)
	if err == nil {
		err = temp.Chmod(mode)
	}
	if err == nil {
		err = temp.Sync()
	}
	if closing := temp.Close(); err == nil {
		err = closing
	}
	return err
}

// mode is that of the file to be replaced, else the usual one of a new file.
func mode(path string) fs.FileMode {
	if info, err := os.Stat(path); err == nil {
		return info.Mode().Perm()
	}
	return 0o644
}

// syncFolder has the new name on the disk. Windows, and a file system that knows no such call, keep names
// without being asked.
func syncFolder(dir string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	folder, err := os.Open(dir)
	if err == nil {
		defer folder.Close()
		err = folder.Sync()
	}
	if err == nil || errors.Is(err, syscall.EINVAL) || errors.Is(err, errors.ErrUnsupported) {
		return nil
	}
	return fmt.Errorf("the new file stands, but its folder %s could not be put on the disk: %w", dir, cause(err))
}

// notWritten is the error of a file that could not be written.
func notWritten(path string, err error) error {
	return &Error{Path: path, Code: NotWritten, Err: err}
}
