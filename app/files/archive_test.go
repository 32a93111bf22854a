package files

import (
	"archive/zip"
	"bytes"
	"compress/gzip"
	"encoding/hex"
	"io"
	"io/fs"
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/encoding/charmap"
)

// entry is a member to be packed: its header as it shall stand, and its text.
type entry struct {
	zip.FileHeader
	text string
}

// named is an entry like most.
func named(name, text string) entry {
	return entry{zip.FileHeader{Name: name, Method: zip.Deflate}, text}
}

// zipOf packs entries with the standard library's writer.
func zipOf(t testing.TB, entries ...entry) []byte {
	t.Helper()
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for i := range entries {
		in, err := w.CreateHeader(&entries[i].FileHeader)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := io.WriteString(in, entries[i].text); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// gzipOf packs a text with the standard library's writer, under a name of its own.
func gzipOf(t testing.TB, text string) []byte {
	t.Helper()
	var out bytes.Buffer
	w := gzip.NewWriter(&out)
	w.Name = "../../elsewhere"
	if _, err := io.WriteString(w, text); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// opened is an archive in memory that must be one.
func opened(t testing.TB, name string, content []byte) *Archive {
	t.Helper()
	a, err := OpenArchive(name, bytes.NewReader(content), int64(len(content)))
	if err != nil || a == nil {
		t.Fatalf("%s: archive %v, %v", name, a, err)
	}
	return a
}

// textOf reads a member to its end.
func textOf(a *Archive, name string) (string, error) {
	source, err := a.Open(name)
	if err != nil {
		return "", err
	}
	defer source.Close()
	text, err := io.ReadAll(source)
	return string(text), err
}

// unhex are bytes written as hex.
func unhex(t *testing.T, text string) []byte {
	t.Helper()
	out, err := hex.DecodeString(text)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestMembersOfAZip(t *testing.T) {
	link := named("link.csv", "a.csv")
	link.SetMode(fs.ModeSymlink | 0o777)
	inner := string(zipOf(t, named("deep.csv", "deep")))
	a := opened(t, "in/outer.zip", zipOf(t, named("b.csv", "b"), named("a/", ""), named("a/x.csv", "abc"), named("a-b.csv", "ab"),
		named("./B.csv", "B"), named("inner.zip", inner), named(".hidden", "x"), named("a/.git/x", "x"), named("__MACOSX/b.csv", "x"), link))
	// 'B' comes before 'a', '-' is 0x2d, '/' 0x2f (ASCII).
	want := []string{"B.csv", "a-b.csv", "a/x.csv", "b.csv", "inner.zip"}
	for i := range want {
		want[i] = "in/outer.zip!" + want[i]
	}
	if got := a.Members(); !slices.Equal(got, want) || a.Refused() != nil {
		t.Errorf("got %v, %v, want %v", got, a.Refused(), want)
	}
	if text, err := textOf(a, "in/outer.zip!inner.zip"); err != nil || text != inner {
		t.Errorf("the archive within gives %d bytes, %v, want %d", len(text), err, len(inner))
	}
}

func TestAMemberIsSummedAndCounted(t *testing.T) {
	for name, content := range map[string][]byte{"o.zip": zipOf(t, named("o.csv", "abc")), "o.csv.gz": gzipOf(t, "abc")} {
		source, err := opened(t, name, content).Open("o.csv")
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(source)
		if err != nil || string(text) != "abc" {
			t.Errorf("%s: read %q, %v", name, text, err)
		}
		// The SHA-256 of "abc": FIPS 180-4 examples, published by NIST.
		const want = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
		if source.SHA256() != want || source.Bytes() != 3 || source.Size != 3 {
			t.Errorf("%s: sum %s, %d bytes of %d", name, source.SHA256(), source.Bytes(), source.Size)
		}
		if err := source.Close(); err != nil {
			t.Error(err)
		}
	}
}

// Packed by Info-ZIP zip 3.0 and GNU gzip 1.12: the text below as a.csv and d/b.csv, the folder d between
// them; as gzip; and as a.csv behind a password.
const (
	systemText = "time,temp\n2024-01-01 00:00,4.5\n"
	systemZip  = "504b03040a000000000000002158386c531f1f0000001f00000005000000612e63737674696d652c74656d700a323032342d30312d30312030303a30302c342e350a" +
		"504b03040a00000000000000215800000000000000000000000002000000642f" +
		"504b03040a000000000000002158386c531f1f0000001f00000007000000642f622e63737674696d652c74656d700a323032342d30312d30312030303a30302c342e350a" +
		"504b01021e030a000000000000002158386c531f1f0000001f000000050000000000000001000000a48100000000612e637376" +
		"504b01021e030a000000000000002158000000000000000000000000020000000000000000001000ed4142000000642f" +
		"504b01021e030a000000000000002158386c531f1f0000001f000000070000000000000001000000a48162000000642f622e637376" +
		"504b0506000000000300030098000000a60000000000"
	systemGzip   = "1f8b0808800092650003612e637376002bc9cc4dd52949cd2de032323032d1353004220503032b03031d133d532e00386c531f1f000000"
	systemLocked = "504b03040a000900000000002158386c531f2b0000001f00000005000000612e63737605cff1bb2dcc03c94196762303a6cac952b9951a0a304d3af436fd230e485f" +
		"d96a2635c86aafdb9e7fb6a4504b0708386c531f2b0000001f000000" +
		"504b01021e030a000900000000002158386c531f2b0000001f000000050000000000000001000000a48100000000612e637376" +
		"504b05060000000001000100330000005e0000000000"
)

func TestArchivesOfCommonTools(t *testing.T) {
	for _, c := range []struct{ name, content, members string }{
		{"o.zip", systemZip, "o.zip!a.csv o.zip!d/b.csv"},
		{"o.csv.GZ", systemGzip, "o.csv.GZ!o.csv"},
		{"dir.gz/readings.log", systemGzip, "dir.gz/readings.log!readings.log"},
		{"...gz", systemGzip, "...gz!unpacked"},
	} {
		a := opened(t, c.name, unhex(t, c.content))
		if got := strings.Join(a.Members(), " "); got != c.members {
			t.Errorf("%s holds %s, want %s", c.name, got, c.members)
		}
		for _, m := range a.Members() {
			if text, err := textOf(a, m); err != nil || text != systemText {
				t.Errorf("%s: %q, %v", m, text, err)
			}
		}
	}
}

func TestContentTellsWhatIsAnArchive(t *testing.T) {
	for _, c := range []struct {
		name    string
		content []byte
		archive bool
		want    Code
	}{
		{"text.zip", []byte("time,temp\n"), false, ""},
		{"nothing.gz", nil, false, ""},
		{"short.gz", []byte("\x1f\x8b"), false, ""},
		{"other-method.gz", []byte("\x1f\x8b\x07\x00"), false, ""},
		{"zip.csv", zipOf(t, named("a.csv", "x")), true, ""},
		{"gzip.csv", gzipOf(t, "x"), true, ""},
		{"no-members", zipOf(t), true, ""},
		{"workbook.xlsx", zipOf(t, named("[Content_Types].xml", "<Types/>"), named("xl/workbook.xml", "<w/>")), false, ""},
		{"table.ods", zipOf(t, named("mimetype", "application/vnd.oasis.opendocument.spreadsheet")), false, ""},
		{"junk.zip", []byte("PK\x03\x04 and nothing of a zip after that"), false, Damaged},
	} {
		a, err := OpenArchive(c.name, bytes.NewReader(c.content), int64(len(c.content)))
		if (a != nil) != c.archive || codeOf(err) != c.want || (err != nil) != (c.want != "") {
			t.Errorf("%s: archive %v, %v", c.name, a, err)
		}
	}
}

func TestMembersThatCannotBeOpened(t *testing.T) {
	a := opened(t, "o.zip", zipOf(t, named("empty.csv", ""), named("a.csv", "x"), named("a.csv", "y"), named("../b.csv", "z")))
	locked := opened(t, "o.zip", unhex(t, systemLocked))
	for _, c := range []struct {
		in   *Archive
		name string
		want Code
		says string
	}{
		{a, "empty.csv", Empty, "o.zip!empty.csv is empty"},
		{a, "none.csv", Missing, "o.zip!none.csv does not exist"},
		{a, "../b.csv", UnsafeName, "o.zip!../b.csv has a name"},
		{locked, "a.csv", Encrypted, "o.zip!a.csv is locked with a password"},
		{opened(t, "e.gz", gzipOf(t, "")), "e", Empty, "e.gz!e is empty"},
	} {
		if text, err := textOf(c.in, c.name); codeOf(err) != c.want || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %q, %v", c.name, text, err)
		}
	}
	if text, err := textOf(a, "a.csv"); err != nil || text != "x" {
		t.Errorf("the first of two gives %q, %v", text, err)
	}
}

// A name that is not in UTF-8 is shown as code page 437 has it, by the table of golang.org/x/text. A name in UTF-8
// without its flag, as some packers write it, stays.
func TestNamesOfOtherCodePages(t *testing.T) {
	for i, r := range codePage437 {
		if want := charmap.CodePage437.DecodeByte(byte(0x80 + i)); r != want {
			t.Errorf("%#x: %q, want %q", 0x80+i, r, want)
		}
	}
	a := opened(t, "logs.zip", zipOf(t,
		entry{zip.FileHeader{Name: "L\x81fter/St\x84lle.csv", Method: zip.Deflate, NonUTF8: true}, "a"},
		entry{zip.FileHeader{Name: "Lüfter.csv", Method: zip.Deflate, NonUTF8: true}, "b"}))
	for name, want := range map[string]string{"Lüfter/Ställe.csv": "a", "Lüfter.csv": "b"} {
		if got, err := textOf(a, name); err != nil || got != want {
			t.Errorf("%s: %q, %v", name, got, err)
		}
	}
}
