package store

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"testing"

	"github.com/ncruces/go-sqlite3"
)

func TestWhatIsNoWinter(t *testing.T) {
	dir := t.TempDir()
	plain := filepath.Join(dir, "plain.db")
	conn, err := sqlite3.Open(plain)
	if err != nil {
		t.Fatal(err)
	}
	if err := conn.Exec("CREATE TABLE t(x)"); err != nil {
		t.Fatal(err)
	}
	conn.Close()
	for name, content := range map[string]string{"log.csv": "time,T\n", "empty.csv": "", "winter.thawbook": "", "cut.thawbook": magic} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for name, want := range map[string]Code{"log.csv": NotAWinter, "empty.csv": NotAWinter, "plain.db": NotAWinter, "none": Missing, ".": NotAWinter, "winter.thawbook": Damaged, "cut.thawbook": Damaged} {
		if _, err := Open(filepath.Join(dir, name)); code(err) != want {
			t.Errorf("%s: %v, want %s", name, err, want)
		}
	}
}

// craft changes a closed winter by SQL, as somebody with ill will could.
func craft(t *testing.T, sql string) string {
	t.Helper()
	s := begun(t)
	s.Close()
	conn, err := sqlite3.Open(uri(s.Path()))
	if err != nil {
		t.Fatal(err)
	}
	defer conn.Close()
	if err := conn.Exec(sql); err != nil {
		t.Fatal(err)
	}
	return s.Path()
}

// A file whose schema is not ours to the letter is not opened: nothing in it gets to run.
func TestACraftedFileRunsNothing(t *testing.T) {
	for _, sql := range []string{
		"CREATE TRIGGER evil AFTER INSERT ON step BEGIN DELETE FROM export; END",
		"CREATE VIEW evil AS SELECT randomblob(1000000000)",
		"CREATE TABLE more(x)",
		"CREATE INDEX evil ON step(abs(id))",
		"ALTER TABLE step RENAME TO old; CREATE VIEW step AS WITH RECURSIVE c(id, at, what, field, doc) AS (SELECT 1,1,'','',x'' UNION ALL SELECT id+1,1,'','',x'' FROM c) SELECT * FROM c",
		"ALTER TABLE export ADD COLUMN evil TEXT",
		"DROP TABLE piece",
		"PRAGMA journal_mode=WAL; DELETE FROM mark",
		"DELETE FROM mark",
		"DELETE FROM step",
		"UPDATE step SET doc=x'00'",
		"UPDATE step SET doc=zeroblob(40000000)",
	} {
		path := craft(t, sql)
		before, _ := os.ReadFile(path)
		s, err := Open(path)
		if code(err) != Damaged {
			t.Errorf("%s: %v", sql, err)
		}
		if err == nil {
			s.Close()
		}
		if after, _ := os.ReadFile(path); !bytes.Equal(before, after) {
			t.Errorf("%s: the file was written to", sql)
		}
	}
}

func TestAConnectionReachesNothingElse(t *testing.T) {
	s := begun(t)
	other := filepath.Join(t.TempDir(), "other.db")
	for _, sql := range []string{"ATTACH '" + other + "' AS other", "SELECT load_extension('x')", "VACUUM INTO '" + other + "'", "SELECT readfile('/etc/passwd')", "SELECT writefile('" + other + "','x')", "PRAGMA writable_schema=ON; DELETE FROM sqlite_schema"} {
		if err := s.conn.Exec(sql); err == nil {
			t.Errorf("%s goes through", sql)
		}
	}
	if _, err := os.Stat(other); err == nil {
		t.Error("another file was made")
	}
	if again(t, s).Winter().Name != "first" {
		t.Error("the winter is not what it was")
	}
}

// An export's name that is no plain one is none of ours: given back it could land anywhere.
func TestACraftedNameIsRefused(t *testing.T) {
	for _, name := range []string{"../../autostart", "/etc/x", `..\x`, "a/b", "", ".", "..", "x\ny"} {
		s := begun(t)
		if _, err := s.Take(context.Background(), []Arrival{arrival("a.csv", "x")}); err != nil {
			t.Fatal(err)
		}
		if err := exec(s.conn, "UPDATE export SET name=?", name); err != nil {
			t.Fatal(err)
		}
		s.Close()
		if _, err := Open(s.Path()); code(err) != Damaged {
			t.Errorf("%q: %v", name, err)
		}
	}
}
