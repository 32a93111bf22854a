package store

import (
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/ncruces/go-sqlite3"
)

// errClosed is a call on a winter that was closed.
var errClosed = errors.New("the winter is closed")

// system is the file system SQLite works on; tests put one that fails in its place.
var system = onDisk

// maxValueBytes bounds one value of the database: a document, or a piece of an export.
const maxValueBytes = 32 << 20

// busyMS is how long a reader waits for a writer in another window.
const busyMS = 2000

// header is what the first 100 bytes of a file say (sqlite.org/fileformat2.html, section 1.3).
type header struct{ version int }

// headerOf reads a file's header and refuses what is no winter file.
func headerOf(path string) (header, error) {
	file, err := os.Open(path)
	if err != nil {
		return header{}, err
	}
	defer file.Close()
	info, err := file.Stat()
	if err == nil && !info.Mode().IsRegular() {
		return header{}, &Error{Path: path, Code: NotAWinter}
	}
	first := make([]byte, 100)
	if _, err := io.ReadFull(file, first); err != nil || string(first[:16]) != magic {
		return header{}, &Error{Path: path, Code: foreign(path)}
	}
	be := binary.BigEndian
	if be.Uint32(first[68:]) != applicationID {
		return header{}, &Error{Path: path, Code: foreign(path)}
	}
	v := int(be.Uint32(first[60:]))
	journal := first[18] == 1 && first[19] == 1
	if v < 1 || v > 1e6 || !journal || v <= version() && be.Uint16(first[16:]) != pageSize {
		return header{}, &Error{Path: path, Code: Damaged}
	}
	return header{v}, nil
}

// Ending is that of a winter file's name.
const Ending = ".thawbook"

// foreign is what a file without our header is: damaged where its name says that it was ours.
func foreign(path string) Code {
	if strings.EqualFold(filepath.Ext(path), Ending) {
		return Damaged
	}
	return NotAWinter
}

// mayWrite says whether the system lets us write the file, without touching it.
func mayWrite(path string) bool {
	file, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return false
	}
	file.Close()
	return true
}

// connect opens the database beneath. Nothing in the file can make it run, load or reach anything.
func connect(path string, write bool) (*sqlite3.Conn, error) {
	flags := sqlite3.OPEN_READONLY
	if write {
		flags = sqlite3.OPEN_READWRITE
	}
	return connectAs(path, flags)
}

func connectAs(path string, flags sqlite3.OpenFlag) (*sqlite3.Conn, error) {
	conn, err := sqlite3.OpenFlags(uri(path), flags|sqlite3.OPEN_URI|sqlite3.OPEN_EXRESCODE)
	if err != nil {
		return nil, err
	}
	if err := harden(conn); err != nil {
		conn.Close()
		return nil, err
	}
	return conn, nil
}

// uri is a path as SQLite takes it, whatever signs it holds.
func uri(path string) string {
	full, err := filepath.Abs(path)
	if err != nil {
		full = path
	}
	slashed := filepath.ToSlash(full)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed // C:/winters
	}
	u := url.URL{Scheme: "file", Path: slashed, RawQuery: url.Values{"vfs": {system}}.Encode()}
	return u.String()
}

// harden switches off what a winter file has no use for (sqlite.org/security.html).
func harden(conn *sqlite3.Conn) error {
	for _, option := range []struct {
		name sqlite3.DBConfig
		on   bool
	}{
		{sqlite3.DBCONFIG_DEFENSIVE, true}, {sqlite3.DBCONFIG_TRUSTED_SCHEMA, false}, {sqlite3.DBCONFIG_ENABLE_TRIGGER, false},
		{sqlite3.DBCONFIG_ENABLE_VIEW, false}, {sqlite3.DBCONFIG_DQS_DML, false}, {sqlite3.DBCONFIG_DQS_DDL, false},
	} {
		if _, err := conn.Config(option.name, option.on); err != nil {
			return err
		}
	}
	conn.Limit(sqlite3.LIMIT_LENGTH, maxValueBytes)
	conn.Limit(sqlite3.LIMIT_ATTACHED, 0)
	// Some of these read the file, so the patience with a writer comes first.
	return conn.Exec(fmt.Sprintf(`PRAGMA busy_timeout=%d; PRAGMA trusted_schema=OFF; PRAGMA cell_size_check=ON; PRAGMA mmap_size=0;
		PRAGMA temp_store=MEMORY; PRAGMA foreign_keys=OFF; PRAGMA secure_delete=ON; PRAGMA synchronous=EXTRA`, busyMS))
}

// whole makes sure that an open file is sound in every page and that its schema is ours to the letter.
func whole(conn *sqlite3.Conn, path string, v int) error {
	damaged := func(err error) error { return &Error{Path: path, Code: Damaged, Err: err} }
	found, err := schemaOf(conn)
	if err != nil {
		return err
	}
	if v > version() {
		return newerSchema(found, path)
	}
	want, err := expectedSchema(v)
	if err != nil {
		return err
	}
	if !slices.Equal(found, want) {
		return damaged(errors.New("its tables are not those of a winter"))
	}
	return rows(conn, "PRAGMA quick_check(1)", func(s *sqlite3.Stmt) error {
		if said := s.ColumnText(0); said != "ok" {
			return damaged(errors.New(said))
		}
		return nil
	})
}

// newerSchema accepts tables and indexes alone: reading them runs nothing.
func newerSchema(found []string, path string) error {
	for _, line := range found {
		kind, _, _ := strings.Cut(line, " ")
		if kind != "table" && kind != "index" || strings.Contains(strings.ToUpper(line), "VIRTUAL") || strings.Contains(strings.ToUpper(line), "GENERATED") {
			return &Error{Path: path, Code: TooNew}
		}
	}
	return nil
}
