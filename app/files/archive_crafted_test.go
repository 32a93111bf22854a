package files

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"io"
	"strings"
	"testing"
)

// raw packs one member whose header is taken as it is, whatever the packed bytes are.
func raw(t *testing.T, packed string, headers ...zip.FileHeader) []byte {
	t.Helper()
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for i := range headers {
		in, err := w.CreateRaw(&headers[i])
		if err != nil {
			t.Fatal(err)
		}
		if _, err := io.WriteString(in, packed); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// refusedArchive checks that an archive is refused as a whole, in one sentence that names it.
func refusedArchive(t *testing.T, content []byte, want Code) {
	t.Helper()
	a, err := OpenArchive("o.zip", bytes.NewReader(content), int64(len(content)))
	if a != nil || codeOf(err) != want || !strings.HasPrefix(err.Error(), "o.zip ") {
		t.Errorf("archive %v, %v, want %s", a != nil, err, want)
	}
}

func TestUnsafeNamesAreRefused(t *testing.T) {
	unsafe := []string{"../up.csv", "a/../../up.csv", "a/..", "/root.csv", `C:\x.csv`, "c:x.csv", `a\b.csv`, `..\up.csv`, "nul\x00.csv", "line\nbreak.csv", ""}
	for _, name := range unsafe {
		a := opened(t, "o.zip", zipOf(t, named("good.csv", "x"), named(name, "x")))
		if got := strings.Join(a.Members(), " "); got != "o.zip!good.csv" {
			t.Errorf("with %q the members are %q", name, got)
		}
		if err := a.Refused(); codeOf(err) != UnsafeName || !strings.HasPrefix(err.Error(), "o.zip!") || strings.ContainsAny(err.Error(), "\x00\n") {
			t.Errorf("%q: %v", name, err)
		}
	}
	for _, name := range []string{"a..b.csv", "12:30.csv", "ü.csv", "a!b.csv", "..."} {
		if a := opened(t, "o.zip", zipOf(t, named(name, "x"))); a.Refused() != nil {
			t.Errorf("%q is refused: %v", name, a.Refused())
		}
	}
}

func TestTwoMembersOfOneName(t *testing.T) {
	a := opened(t, "o.zip", zipOf(t, named("a/x.csv", "1"), named("a/./x.csv", "2"), named("A/x.csv", "3")))
	if got := strings.Join(a.Members(), " "); got != "o.zip!A/x.csv o.zip!a/x.csv" {
		t.Errorf("members %s", got)
	}
	if err := a.Refused(); codeOf(err) != SameName || !strings.Contains(err.Error(), "o.zip!a/x.csv stands in its archive more than once") {
		t.Errorf("got %v", err)
	}
}

func TestManyRefusalsAreOneSentence(t *testing.T) {
	var entries []entry
	for i := range 5 {
		entries = append(entries, named(fmt.Sprintf("../%d.csv", i), "x"))
	}
	text := opened(t, "o.zip", zipOf(t, entries...)).Refused().Error()
	if strings.Count(text, "o.zip!") != 3 || !strings.HasSuffix(text, "and 2 more like these") || strings.Contains(text, "\n") {
		t.Errorf("it says %q", text)
	}
}

func TestHeadersThatLie(t *testing.T) {
	const text = "time,temp\n"
	sum, size := crc32.ChecksumIEEE([]byte(text)), uint64(len(text))
	for _, c := range []struct {
		name   string
		header zip.FileHeader
		want   Code
		says   string
	}{
		{"true", zip.FileHeader{CRC32: sum, CompressedSize64: size, UncompressedSize64: size}, "", ""},
		{"wrong sum", zip.FileHeader{CRC32: sum + 1, CompressedSize64: size, UncompressedSize64: size}, Failed, "could not be read: its checksum is wrong"},
		{"more comes", zip.FileHeader{CRC32: sum, CompressedSize64: size, UncompressedSize64: size - 1}, Failed, "its packed data is damaged"},
		{"less comes", zip.FileHeader{CRC32: sum, CompressedSize64: size, UncompressedSize64: size + 1}, CutOff, "is cut off"},
		{"not deflated", zip.FileHeader{Method: zip.Deflate, CRC32: sum, CompressedSize64: size, UncompressedSize64: size}, Failed, "its packed data is damaged"},
		{"bzip2", zip.FileHeader{Method: 12, CRC32: sum, CompressedSize64: size, UncompressedSize64: size}, Method, "packed by a method"}, // APPNOTE.TXT 4.4.5
		{"too large", zip.FileHeader{CRC32: sum, CompressedSize64: size, UncompressedSize64: MaxBytes + 1}, TooLarge, "larger than 4 GiB"},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.header.Name = "a.csv"
			a := opened(t, "o.zip", raw(t, text, c.header))
			if got := strings.Join(a.Members(), " "); got != "o.zip!a.csv" {
				t.Errorf("members %s", got)
			}
			got, err := textOf(a, "a.csv")
			if c.want == "" && (err != nil || got != text) || c.want != "" && (codeOf(err) != c.want || !strings.Contains(err.Error(), c.says)) {
				t.Errorf("got %q, %v", got, err)
			}
		})
	}
}

func TestTooManyMembers(t *testing.T) {
	var entries []entry
	for i := range MaxMembers + 1 {
		entries = append(entries, entry{FileHeader: zip.FileHeader{Name: fmt.Sprint(i)}})
	}
	refusedArchive(t, zipOf(t, entries...), TooMany)
	if a := opened(t, "o.zip", zipOf(t, entries[1:]...)); len(a.Members()) != MaxMembers {
		t.Errorf("%d members, want %d", len(a.Members()), MaxMembers)
	}
	for i := range 300 { // 300 comments of 60,000 bytes are more than 16 MiB
		entries[i].Comment = strings.Repeat("x", 60_000)
	}
	refusedArchive(t, zipOf(t, entries[:300]...), TooMany)
}

// The end of a zip counts to 65,535 (APPNOTE.TXT 4.4.21 and 4.4.22): one that says 1 may follow 65,537 members.
func TestMoreMembersThanTheEndCounts(t *testing.T) {
	content := zipOf(t, make([]entry, 1<<16+1)...)
	const large, locator, ordinary = 56, 20, 22 // lengths of the three records at the end
	end := len(content) - large - locator - ordinary
	start := bytes.Index(content, []byte("PK\x01\x02"))
	content = append(content[:end], "PK\x05\x06\x00\x00\x00\x00\x01\x00\x01\x00"...)
	content = binary.LittleEndian.AppendUint32(content, uint32(end-start))
	content = binary.LittleEndian.AppendUint32(content, uint32(start))
	refusedArchive(t, append(content, 0, 0), TooMany)
}

func TestAnArchiveLargerThanAFileMayBe(t *testing.T) {
	for _, head := range []string{"PK\x03\x04", "\x1f\x8b\x08\x00"} {
		a, err := OpenArchive("o", strings.NewReader(head), MaxBytes+1)
		if a != nil || codeOf(err) != TooLarge {
			t.Errorf("%q: %v, %v", head, a, err)
		}
	}
}

// The bound on the list of members is none on the members.
func TestALargeMemberIsReadWhole(t *testing.T) {
	text := strings.Repeat("0123456789", 2<<20)
	a := opened(t, "o.zip", zipOf(t, entry{zip.FileHeader{Name: "a"}, text}))
	if got, err := textOf(a, "a"); err != nil || got != text {
		t.Errorf("%d bytes of %d, %v", len(got), len(text), err)
	}
}

// largeEnd ends a zip in the form for large archives: the record with the count, the place of that record,
// and an end that says one member and leaves the rest to the record (APPNOTE.TXT 4.3.14 to 4.3.16).
func largeEnd(at, count, size, offset uint64) []byte {
	le := binary.LittleEndian
	out := le.AppendUint64([]byte("PK\x06\x06"), 44)
	out = append(out, make([]byte, 12)...)
	for _, v := range []uint64{count, count, size, offset} {
		out = le.AppendUint64(out, v)
	}
	out = le.AppendUint64(append(out, "PK\x06\x07\x00\x00\x00\x00"...), at)
	out = le.AppendUint32(out, 1)
	return append(out, "PK\x05\x06\x00\x00\x00\x00\x01\x00\x01\x00\xff\xff\xff\xff\xff\xff\xff\xff\x00\x00"...)
}

func TestAnnouncedMembersTakeNoMemory(t *testing.T) {
	refusedArchive(t, append([]byte("PK\x03\x04"), largeEnd(4, 1<<40, 0, 4)...), TooMany)
	whole := zipOf(t, named("a.csv", "x"))
	end := uint64(len(whole) - 22)
	start := uint64(bytes.Index(whole, []byte("PK\x01\x02")))
	a := opened(t, "o.zip", append(whole[:end], largeEnd(end, 1, end-start, start)...))
	if text, err := textOf(a, "a.csv"); err != nil || text != "x" {
		t.Errorf("a sound one gives %q, %v", text, err)
	}
}

func TestAnArchiveThatUnpacksToTooMuch(t *testing.T) {
	var headers []zip.FileHeader
	for i := range 5 { // five of 4 GiB are 20 GiB
		headers = append(headers, zip.FileHeader{Name: fmt.Sprint(i), Method: zip.Deflate, CompressedSize64: 1, UncompressedSize64: MaxBytes})
	}
	refusedArchive(t, raw(t, "x", headers...), TooMuch)
	opened(t, "o.zip", raw(t, "x", headers[:4]...))
}

// The list of members names one member twice, under two names.
func TestMembersThatOverlap(t *testing.T) {
	content := zipOf(t, entry{zip.FileHeader{Name: "a.csv"}, strings.Repeat("0123456789", 100)})
	end := len(content) - 22
	start := bytes.Index(content, []byte("PK\x01\x02"))
	again := bytes.Replace(content[start:end], []byte("a.csv"), []byte("b.csv"), 1)
	tail := bytes.Clone(content[end:])
	binary.LittleEndian.PutUint16(tail[8:], 2)
	binary.LittleEndian.PutUint16(tail[10:], 2)
	binary.LittleEndian.PutUint32(tail[12:], uint32(2*(end-start)))
	refusedArchive(t, append(append(bytes.Clone(content[:end]), again...), tail...), Overlap)
}

// Two members that claim 2^63 packed bytes each claim none together, in 64 bits.
func TestPackedSizesThatWrapAround(t *testing.T) {
	claim := zip.FileHeader{Name: "a", CompressedSize64: 1 << 63, UncompressedSize64: 1}
	other := claim
	other.Name = "b"
	refusedArchive(t, raw(t, "x", claim, other), Overlap)
}

// zeros is as many zero bytes, deflated: about 1,030 to 1.
func zeros(t *testing.T, n int) string {
	t.Helper()
	var out bytes.Buffer
	w, err := flate.NewWriter(&out, flate.BestCompression)
	if err == nil {
		_, err = w.Write(make([]byte, n))
	}
	if err == nil {
		err = w.Close()
	}
	if err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestABombEndsEarly(t *testing.T) {
	const size = 100 << 20
	packed := zeros(t, size)
	bomb := raw(t, packed, zip.FileHeader{Name: "a", Method: zip.Deflate, CompressedSize64: uint64(len(packed)), UncompressedSize64: size})
	for name, content := range map[string][]byte{"o.zip": bomb, "a.gz": []byte("\x1f\x8b\x08\x00\x00\x00\x00\x00\x00\x03" + packed)} {
		source, err := opened(t, name, content).Open("a")
		if err != nil {
			t.Fatal(err)
		}
		n, err := io.Copy(io.Discard, source)
		if codeOf(err) != Bomb || n < 60<<20 || n > 70<<20 || !strings.Contains(err.Error(), name+"!a unpacks to more than 1,000 times") {
			t.Errorf("%s: %d MiB, then %v", name, n>>20, err)
		}
		source.Close()
	}
}

func TestAlikeBytesBelowTheBoundAreRead(t *testing.T) {
	const size = 60 << 20
	packed := zeros(t, size)
	sum := crc32.ChecksumIEEE(make([]byte, size))
	a := opened(t, "o.zip", raw(t, packed, zip.FileHeader{Name: "a", Method: zip.Deflate, CRC32: sum, CompressedSize64: uint64(len(packed)), UncompressedSize64: size}))
	source, err := a.Open("a")
	if err != nil {
		t.Fatal(err)
	}
	defer source.Close()
	if n, err := io.Copy(io.Discard, source); err != nil || n != size {
		t.Errorf("%d bytes, %v", n, err)
	}
}

// Stored blocks of no bytes (RFC 1951, 3.2.4) one after the other, 80 MiB of them, hold nothing.
func TestPackedDataThatHoldsNothing(t *testing.T) {
	packed := "\x1f\x8b\x08\x00\x00\x00\x00\x00\x00\x03" + strings.Repeat("\x00\x00\x00\xff\xff", 16<<20)
	text, err := textOf(opened(t, "a.gz", []byte(packed)), "a")
	if codeOf(err) != Failed || !strings.Contains(err.Error(), "holds nothing") {
		t.Errorf("%d bytes, %v", len(text), err)
	}
}

// endless gives bytes for ever, as fast as they are taken.
type endless struct{}

func (endless) Read(p []byte) (int, error) { return len(p), nil }

func TestAMemberEndsAtMaxBytes(t *testing.T) {
	in := &unpacked{name: "a.gz!a", in: endless{}}
	chunk, got := make([]byte, 1<<20), int64(0)
	for {
		n, err := in.Read(chunk)
		got += int64(n)
		if err == nil && got <= MaxBytes {
			continue
		}
		if codeOf(err) != TooLarge || got != MaxBytes {
			t.Errorf("%d bytes, then %v", got, err)
		}
		return
	}
}

func TestEveryCutIsNoticed(t *testing.T) {
	whole := gzipOf(t, strings.Repeat("2024-01-01 00:00,4.5\n", 50))
	for cut := 4; cut < len(whole); cut++ {
		text, err := textOf(opened(t, "a.csv.gz", whole[:cut]), "a.csv")
		if codeOf(err) != CutOff || !strings.Contains(err.Error(), "a.csv.gz!a.csv is cut off") {
			t.Fatalf("cut after %d of %d bytes: %q, %v", cut, len(whole), text, err)
		}
	}
	whole = zipOf(t, named("a.csv", "x"), named("b.csv", "y"))
	for cut := 4; cut < len(whole); cut++ {
		refusedArchive(t, whole[:cut], Damaged)
	}
}

func TestStreamsOneAfterTheOther(t *testing.T) {
	two := append(gzipOf(t, "first,"), gzipOf(t, "second")...)
	if text, err := textOf(opened(t, "a.gz", two), "a"); err != nil || text != "first,second" {
		t.Errorf("got %q, %v", text, err)
	}
	if text, err := textOf(opened(t, "a.gz", append(two, "and no third"...)), "a"); codeOf(err) != Failed {
		t.Errorf("with something else behind them: %q, %v", text, err)
	}
	bad := bytes.Clone(two)
	bad[len(bad)-8]++ // the sum of the second stream (RFC 1952, 2.3.1)
	if text, err := textOf(opened(t, "a.gz", bad), "a"); codeOf(err) != Failed || !strings.Contains(err.Error(), "its checksum is wrong") {
		t.Errorf("with a wrong sum: %q, %v", text, err)
	}
}
