package engine

import (
	"bytes"
	"io"
	"strings"
	"sync"

	"thawbook/app/files"
	"thawbook/app/winter/store"
)

// Source is where the files of a winter's loggers lie: in a folder beside its plan, or in the winter file.
type Source interface {
	// Find lists the files a pattern stands for, each as Open takes it.
	Find(pattern string) ([]string, error)
	// Size is how many bytes Open would give, without reading them; 0 when that is not known.
	Size(name string) int64
	// SHA256 is a file's checksum in lower hex where it is known without reading it, else "".
	SHA256(name string) string
	// Open opens a file at its start.
	Open(name string) (*files.Source, error)
}

// Folder is the files on the disk; patterns are relative to the folder.
type Folder string

// Find is Source's.
func (f Folder) Find(pattern string) ([]string, error) { return files.Expand(string(f), pattern) }

// Size is Source's.
func (f Folder) Size(name string) int64 {
	size, _ := files.Size(name)
	return size
}

// SHA256 is Source's.
func (Folder) SHA256(string) string { return "" }

// Open is Source's.
func (Folder) Open(name string) (*files.Source, error) { return files.Open(name) }

// maxArchiveBytes bounds an archive that is unpacked from the winter file: it is held in memory meanwhile.
const maxArchiveBytes = 512 << 20

// Kept is the files in a winter file, each by the name it bears there; NewKept makes one.
type Kept struct {
	store    *store.Store
	guard    sync.Mutex
	archives map[string]*files.Archive
	sums     map[string]string // of members that were read; what is kept never changes
}

// NewKept is the files of an open winter.
func NewKept(s *store.Store) *Kept {
	return &Kept{store: s, archives: map[string]*files.Archive{}, sums: map[string]string{}}
}

// Find is Source's: the very name of a file, or of a member, outer.zip!inner.csv; an archive stands for its
// members. Names are no patterns here: what a file is called later must not hang it on a logger.
func (k *Kept) Find(name string) (found []string, err error) {
	e, member := k.given(name)
	switch {
	case e.Name == "":
		return nil, &files.Error{Path: name, Code: files.NoMatch}
	case member == "":
		return k.members(e)
	}
	return []string{name}, nil
}

// given is the export a name lies in, and the member of it that is meant.
func (k *Kept) given(name string) (e store.Export, member string) {
	outer, member, _ := strings.Cut(name, "!") // no export's name holds one
	e, _ = k.store.ByName(outer)
	return e, member
}

// members are the files of an export: itself, or those of the archive it is.
func (k *Kept) members(e store.Export) ([]string, error) {
	archive, err := k.archive(e)
	if archive == nil || err != nil {
		return []string{e.Name}, err
	}
	return archive.Members(), nil
}

// archive opens an export as an archive; nil when it is none. Exports are told by their beginning, so that a
// log is not read whole for it.
func (k *Kept) archive(e store.Export) (*files.Archive, error) {
	k.guard.Lock()
	defer k.guard.Unlock()
	if a, known := k.archives[e.Name]; known {
		return a, nil
	}
	in, err := k.store.OpenExport(e.Name)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	head := make([]byte, 4)
	n, _ := io.ReadFull(in, head)
	var archive *files.Archive
	if files.IsArchive(head[:n]) {
		if e.Size > maxArchiveBytes {
			return nil, &files.Error{Path: e.Name, Code: files.TooLarge}
		}
		whole, err := io.ReadAll(io.MultiReader(bytes.NewReader(head[:n]), in))
		if err != nil {
			return nil, err
		}
		if archive, err = files.OpenArchive(e.Name, bytes.NewReader(whole), int64(len(whole))); err != nil {
			return nil, err
		}
	}
	k.archives[e.Name] = archive
	return archive, nil
}

// Size is Source's.
func (k *Kept) Size(name string) int64 {
	e, member := k.given(name)
	if member == "" {
		return e.Size
	}
	if archive, err := k.archive(e); err == nil && archive != nil {
		return archive.Size(name)
	}
	return 0
}

// SHA256 is Source's.
func (k *Kept) SHA256(name string) string {
	e, member := k.given(name)
	if member == "" {
		return e.SHA256
	}
	k.guard.Lock()
	defer k.guard.Unlock()
	return k.sums[name]
}

// learnSum remembers the checksum of a member that was read, so that it need not be unpacked for it again.
func (k *Kept) learnSum(name, sum string) {
	k.guard.Lock()
	defer k.guard.Unlock()
	k.sums[name] = sum
}

// Open is Source's.
func (k *Kept) Open(name string) (*files.Source, error) {
	e, member := k.given(name)
	if e.Name == "" {
		return nil, &files.Error{Path: name, Code: files.NoMatch}
	}
	if member != "" {
		archive, err := k.archive(e)
		if err != nil {
			return nil, err
		}
		if archive == nil {
			return nil, &files.Error{Path: name, Code: files.NoMatch}
		}
		return archive.Open(name)
	}
	in, err := k.store.OpenExport(name)
	if err != nil {
		return nil, err
	}
	return files.NewSource(in, e.Size, e.SHA256), nil
}
