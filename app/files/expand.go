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

// Expand lists the files a pattern stands for, in byte order of path. A pattern is written with forward
// slashes, relative to dir, and each of its parts may hold *, ? and [a-z] as package path matches them; a
// file that bears the very name of the pattern is that file. An archive stands for its members, and what
// follows an exclamation mark, as in outer.zip!*.csv, is matched with the whole name of each member. Errors
// are of type *Error: NoMatch, Missing where the pattern holds no sign, Directory where it names a folder;
// those of Walk on archives come beside the files.
func Expand(dir, pattern string) ([]string, error) {
	full := below(dir, pattern)
	if info, err := statFile(full); err == nil {
		return single(full, pattern, info)
	} else if !hasSigns(pattern) {
		return listedMember(full, refused(full, err))
	}
	if member, err := listedMember(full, refused(full, fs.ErrNotExist)); err == nil {
		return member, nil // a member's own name, whatever signs it holds
	}
	if _, err := path.Match(pattern, ""); err != nil {
		return nil, &Error{Path: pattern, Code: BadPattern, Err: err}
	}
	found, err := expandParts(dir, filepath.ToSlash(pattern))
	found, faults := membersOf(found)
	if err == nil && len(found) == 0 && len(faults) == 0 {
		found, faults, err = expandMembers(dir, filepath.ToSlash(pattern))
	}
	if err != nil {
		return nil, err
	}
	if len(found) == 0 && len(faults) == 0 {
		return nil, &Error{Path: full, Code: NoMatch}
	}
	slices.Sort(found)
	return found, joined(faults)
}

// expandMembers takes an exclamation mark of the pattern, the last that leads to a member, for the end of
// an archive's name.
func expandMembers(dir, pattern string) (found []string, faults []error, err error) {
	for at := strings.LastIndexByte(pattern, '!'); at >= 0; at = strings.LastIndexByte(pattern[:at], '!') {
		archives := existing(below(dir, pattern[:at]))
		if len(archives) == 0 {
			if archives, err = expandParts(dir, pattern[:at]); err != nil {
				return nil, nil, err
			}
		}
		members, refused := membersOf(archives)
		faults = append(faults, refused...)
		for _, m := range members {
			if matchesMember(m, archives, pattern[at+1:]) {
				found = append(found, m)
			}
		}
		if len(found)+len(faults) > 0 {
			return found, faults, nil
		}
	}
	return nil, nil, nil
}

// below is a pattern as a path, from dir on where it is relative.
func below(dir, pattern string) string {
	if filepath.IsAbs(pattern) {
		return filepath.ToSlash(pattern)
	}
	return path.Join(filepath.ToSlash(dir), filepath.ToSlash(pattern))
}

// matchesMember says whether a name is that of a member in one of the archives that matches the pattern.
func matchesMember(name string, archives []string, pattern string) bool {
	return slices.ContainsFunc(archives, func(archive string) bool {
		inner, within := strings.CutPrefix(name, archive+"!")
		matched, _ := path.Match(pattern, inner)
		return within && matched
	})
}

// single lists what a file named outright stands for, and refuses a folder.
func single(full, pattern string, info fs.FileInfo) ([]string, error) {
	if info.IsDir() {
		hint := fmt.Sprintf("write %q for the files in it", path.Join(filepath.ToSlash(pattern), "*.csv"))
		return nil, &Error{Path: full, Code: Directory, Err: errors.New(hint)}
	}
	return membersAt(full)
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
