package files

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// Walk lists the files under a path in byte order of path, with forward slashes: the path itself when it
// is no folder, else every ordinary file below it. What begins with a dot is left out, and links to
// folders are not followed. A folder without files is an error of code Empty.
func Walk(root string) ([]string, error) {
	info, err := statFile(root)
	if err != nil {
		return nil, refused(root, err)
	}
	if !info.IsDir() {
		return []string{filepath.ToSlash(root)}, nil
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
	slices.Sort(found)
	return found, err
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

// Expand lists the files a pattern stands for, in byte order of path. A pattern is written with forward
// slashes, relative to dir, and each of its parts may hold *, ? and [a-z] as package path matches them; a
// file that bears the very name of the pattern is that file. Errors are of type *Error: NoMatch, Missing
// where the pattern holds no sign, Directory where it names a folder.
func Expand(dir, pattern string) ([]string, error) {
	full := filepath.ToSlash(pattern)
	if !filepath.IsAbs(pattern) {
		full = path.Join(filepath.ToSlash(dir), full)
	}
	if info, err := statFile(full); err == nil {
		return single(full, pattern, info)
	} else if !hasSigns(pattern) {
		return nil, refused(full, err)
	}
	if _, err := path.Match(pattern, ""); err != nil {
		return nil, &Error{Path: pattern, Code: BadPattern, Err: err}
	}
	found, err := expandParts(dir, filepath.ToSlash(pattern))
	if err != nil {
		return nil, err
	}
	if len(found) == 0 {
		return nil, &Error{Path: full, Code: NoMatch}
	}
	slices.Sort(found)
	return found, nil
}

// single accepts a file named outright and refuses a folder.
func single(full, pattern string, info fs.FileInfo) ([]string, error) {
	if info.IsDir() {
		hint := fmt.Sprintf("write %q for the files in it", path.Join(filepath.ToSlash(pattern), "*.csv"))
		return nil, &Error{Path: full, Code: Directory, Err: errors.New(hint)}
	}
	return []string{full}, nil
}

// expandParts matches a pattern part by part, folders first, and keeps the ordinary files.
func expandParts(dir, pattern string) ([]string, error) {
	at := []string{filepath.ToSlash(dir)}
	if filepath.IsAbs(pattern) {
		volume := filepath.VolumeName(pattern)
		at, pattern = []string{volume + "/"}, strings.TrimLeft(pattern[len(volume):], "/")
	}
	for part := range strings.SplitSeq(path.Clean(pattern), "/") {
		next, err := expandPart(at, part)
		if err != nil {
			return nil, err
		}
		at = next
	}
	return slices.DeleteFunc(at, func(p string) bool {
		info, err := statFile(p)
		return err == nil && info.IsDir()
	}), nil
}

// expandPart goes one step down from every place reached so far.
func expandPart(at []string, part string) ([]string, error) {
	var next []string
	for _, dir := range at {
		if !hasSigns(part) {
			next = append(next, existing(path.Join(dir, part))...)
			continue
		}
		names, err := namesIn(dir)
		if err != nil {
			return nil, err
		}
		for _, name := range names {
			if ok, _ := path.Match(part, name); ok && (name[0] != '.' || part[0] == '.') {
				next = append(next, path.Join(dir, name))
			}
		}
	}
	return next, nil
}

// existing keeps a path that is there.
func existing(p string) []string {
	if _, err := statFile(p); err != nil {
		return nil
	}
	return []string{p}
}

// namesIn lists what a folder holds; a file holds nothing.
func namesIn(dir string) ([]string, error) {
	info, err := statFile(dir)
	if err != nil || !info.IsDir() {
		return nil, nil
	}
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, refused(dir, err)
	}
	names := make([]string, len(entries))
	for i, entry := range entries {
		names[i] = entry.Name()
	}
	return names, nil
}

// hasSigns says whether a pattern holds a sign that stands for other characters.
func hasSigns(pattern string) bool { return strings.ContainsAny(pattern, `*?[\`) }
