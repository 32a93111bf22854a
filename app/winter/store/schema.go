package store

import (
	"fmt"

	"github.com/ncruces/go-sqlite3"
)

// What a winter file's header says of itself.
const (
	applicationID = 0x54686177 // "Thaw"
	pageSize      = 8192
	magic         = "SQLite format 3\x00"
)

// migrations make a file of each version one of the next: the first of an empty one. None is ever changed
// once files of its version exist; the last one's number is the version this program writes.
var migrations = []string{`
CREATE TABLE step(id INTEGER PRIMARY KEY, at INTEGER NOT NULL, what TEXT NOT NULL, field TEXT NOT NULL, doc BLOB NOT NULL);
CREATE TABLE export(id INTEGER PRIMARY KEY, sha256 BLOB NOT NULL UNIQUE, name TEXT NOT NULL UNIQUE, came TEXT NOT NULL, size INTEGER NOT NULL, at INTEGER NOT NULL);
CREATE TABLE piece(id INTEGER PRIMARY KEY, export INTEGER NOT NULL, n INTEGER NOT NULL, data BLOB NOT NULL, UNIQUE(export, n));
CREATE TABLE mark(name TEXT PRIMARY KEY, value BLOB NOT NULL) WITHOUT ROWID;
`}

// version is the schema's version of this program.
func version() int { return len(migrations) }

// migrate brings an open file from a version to this program's, all or nothing.
func migrate(conn *sqlite3.Conn, from int) error {
	return within(conn, func() error {
		for _, step := range migrations[from:] {
			if err := conn.Exec(step); err != nil {
				return err
			}
		}
		return conn.Exec(fmt.Sprintf("PRAGMA user_version=%d", version()))
	})
}

// schemaOf lists the statements a file's schema consists of, in order of their text.
func schemaOf(conn *sqlite3.Conn) (out []string, err error) {
	err = rows(conn, "SELECT type || ' ' || name || ' ' || tbl_name || ' ' || coalesce(sql, '') FROM sqlite_schema ORDER BY 1", func(s *sqlite3.Stmt) error {
		out = append(out, s.ColumnText(0))
		return nil
	})
	return out, err
}

// expectedSchema is the schema of a file of a version, made by its own migrations in memory.
func expectedSchema(version int) ([]string, error) {
	conn, err := sqlite3.Open(":memory:")
	if err != nil {
		return nil, err
	}
	defer conn.Close()
	for _, step := range migrations[:version] {
		if err := conn.Exec(step); err != nil {
			return nil, err
		}
	}
	return schemaOf(conn)
}
