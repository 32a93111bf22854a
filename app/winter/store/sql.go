package store

import (
	"github.com/ncruces/go-sqlite3"
)

// within does work in one transaction that takes hold of the file at once: afterwards all of it is kept, or
// none.
func within(conn *sqlite3.Conn, work func() error) (err error) {
	txn, err := conn.BeginImmediate()
	if err != nil {
		return err
	}
	defer txn.End(&err)
	return work()
}

// rows calls each for every row a query gives.
func rows(conn *sqlite3.Conn, sql string, each func(*sqlite3.Stmt) error, args ...any) error {
	stmt, _, err := conn.Prepare(sql)
	if err != nil {
		return err
	}
	defer stmt.Close()
	if err := bind(stmt, args); err != nil {
		return err
	}
	for stmt.Step() {
		if err := each(stmt); err != nil {
			return err
		}
	}
	return stmt.Err()
}

// exec runs one statement with its arguments.
func exec(conn *sqlite3.Conn, sql string, args ...any) error {
	return rows(conn, sql, func(*sqlite3.Stmt) error { return nil }, args...)
}

// bind sets a statement's arguments: int, int64, string or bytes.
func bind(stmt *sqlite3.Stmt, args []any) error {
	for i, arg := range args {
		var err error
		switch v := arg.(type) {
		case int:
			err = stmt.BindInt(i+1, v)
		case int64:
			err = stmt.BindInt64(i+1, v)
		case string:
			err = stmt.BindText(i+1, v)
		case []byte:
			err = stmt.BindBlob(i+1, v)
		default:
			panic("store: an argument of no known type")
		}
		if err != nil {
			return err
		}
	}
	return nil
}
