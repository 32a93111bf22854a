package files

import (
	"io"
	"io/fs"
	"os"
	"sync"
)

// shared is an archive on the disk together with its file, which is open only while a member is: a folder
// of ten thousand members would else be listed anew for each of them.
type shared struct {
	path    string
	info    fs.FileInfo // of the file that was listed
	archive *Archive

	lock  sync.Mutex
	file  fs.File // nil while users is 0
	users int
}

// recent is the archive that was last listed, or nil.
var recent struct {
	lock sync.Mutex
	last *shared
}

// shareArchive lists the archive a file is, or takes up the one just listed when the file is still the same;
// nil when it is no archive or cannot be opened. Closing ends its use.
func shareArchive(path string) (*shared, error) {
	recent.lock.Lock()
	last := recent.last
	recent.lock.Unlock()
	if last != nil && last.path == path && last.use() {
		return last, nil
	}
	s := &shared{path: path}
	if !s.use() {
		return nil, nil
	}
	var err error
	if s.archive, err = OpenArchive(path, s, s.info.Size()); s.archive == nil {
		s.Close()
		return nil, err
	}
	recent.lock.Lock()
	recent.last = s
	recent.lock.Unlock()
	return s, nil
}

// use opens the file unless it is open already, and says whether it can be read and is the one listed.
func (s *shared) use() bool {
	s.lock.Lock()
	defer s.lock.Unlock()
	info, err := statFile(s.path)
	if err != nil || !s.same(info) {
		return false
	}
	if s.users == 0 {
		if s.file, err = openFile(s.path); err != nil {
			return false
		}
		if info, err = s.file.Stat(); err != nil || !s.same(info) {
			s.file.Close()
			return false
		}
	}
	s.info = info
	s.users++
	return true
}

// same says whether a file is an ordinary one and, once the archive is listed, the one it was listed from.
func (s *shared) same(info fs.FileInfo) bool {
	if s.info == nil {
		return acceptable(s.path, info) == nil
	}
	return os.SameFile(s.info, info) && s.info.Size() == info.Size() && s.info.ModTime().Equal(info.ModTime())
}

// ReadAt reads from the file while it is in use, as io.ReaderAt.
func (s *shared) ReadAt(p []byte, at int64) (int, error) {
	s.lock.Lock()
	file := s.file
	s.lock.Unlock()
	in, able := file.(io.ReaderAt)
	if !able {
		return 0, fs.ErrClosed
	}
	return in.ReadAt(p, at)
}

// Close ends one use of the file.
func (s *shared) Close() error {
	s.lock.Lock()
	defer s.lock.Unlock()
	s.users--
	if s.users > 0 {
		return nil
	}
	file := s.file
	s.file = nil
	return file.Close()
}
