package files

import (
	"io/fs"
	"path/filepath"
	"slices"
	"strings"
)

// Walk lists the files under a path in byte order of path, with forward slashes: the path itself when it
// is no folder, else every ordinary file below it, and in place of an archive its members. What begins with
// a dot is left out, and links to folders are not followed. A folder without files is an error of code
// Empty. Archives and members that are refused are an error beside the files: an *Error, or several in one.
func Walk(root string) ([]string, error) {
	info, err := statFile(root)
	if err != nil {
		return listedMember(root, refused(root, err))
	}
	if !info.IsDir() {
		return membersAt(root)
	}
	var found []string
	err = filepath.WalkDir(root, func(at string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return refused(at, err)
		case at != root && strings.HasPrefix(entry.Name(), "."):
			return skip(entry)
		case isFile(at, entry):
			found = append(found, filepath.ToSlash(at))
		}
		return nil
	})
	if err == nil && len(found) == 0 {
		err = &Error{Path: root, Code: Empty}
	}
	found, faults := membersOf(found)
	if err != nil {
		faults = append(faults, err)
	}
	slices.Sort(found)
	return found, joined(faults)
}

// skip leaves out a folder with all it holds, or one file.
func skip(entry fs.DirEntry) error {
	if entry.IsDir() {
		return fs.SkipDir
	}
	return nil
}

// isFile says whether an entry is an ordinary file, or a link to one.
func isFile(at string, entry fs.DirEntry) bool {
	if entry.Type()&fs.ModeSymlink == 0 {
		return entry.Type().IsRegular()
	}
	info, err := statFile(at)
	return err == nil && info.Mode().IsRegular()
}
