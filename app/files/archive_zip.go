package files

import (
	"archive/zip"
	"bytes"
	"cmp"
	"compress/flate"
	"encoding/binary"
	"errors"
	"io"
	"slices"
	"strings"
	"unicode/utf8"
)

// Bounds of an archive: what a keeper packs stays a hundred times below them (common practice, no source).
const (
	// MaxMembers is the most members an archive may list, folders and all.
	MaxMembers = 10_000
	// MaxUnpacked is the most bytes that all members of an archive may declare together: 16 GiB.
	MaxUnpacked = 16 << 30

	maxDirectory = 16 << 20 // bytes of a list of members: 1,600 for each of the most there may be
)

// openZip lists a zip archive.
func openZip(name string, in io.ReaderAt, size int64) (*Archive, error) {
	if declaredMembers(in, size) > MaxMembers {
		return nil, &Error{Path: name, Code: TooMany}
	}
	directory := &bounded{in: in, left: maxDirectory}
	list, err := zip.NewReader(directory, size)
	switch {
	case errors.Is(err, errDirectory):
		return nil, &Error{Path: name, Code: TooMany, Err: err}
	case err != nil && !errors.Is(err, zip.ErrInsecurePath): // names are judged here
		return nil, &Error{Path: name, Code: Damaged, Err: err}
	case isDocument(list.File):
		return nil, nil
	case len(list.File) > MaxMembers:
		return nil, &Error{Path: name, Code: TooMany}
	}
	directory.read = true
	list.RegisterDecompressor(zip.Deflate, func(packed io.Reader) io.ReadCloser {
		u := &unpacking{packed: packed}
		u.plain = flate.NewReader(intake{u})
		return u
	})
	a := &Archive{name: name}
	if code := a.list(list.File, uint64(size)); code != "" {
		return nil, &Error{Path: name, Code: code}
	}
	return a, nil
}

// isDocument knows a spreadsheet or text by the member every such container has: [Content_Types].xml
// (ECMA-376 part 2) or mimetype (OpenDocument 1.3 part 2).
func isDocument(all []*zip.File) bool {
	return slices.ContainsFunc(all, func(f *zip.File) bool {
		return f.Name == "[Content_Types].xml" || f.Name == "mimetype"
	})
}

// list sorts out the members and adds up what those that can be opened declare. The code is why the archive
// is refused as a whole, or "".
func (a *Archive) list(all []*zip.File, size uint64) Code {
	var packed, unpacked uint64
	known := map[string]bool{}
	for _, f := range all {
		m, listed := a.judge(f, known)
		if !listed {
			continue
		}
		a.members = append(a.members, m)
		if m.fault == nil {
			packed += min(f.CompressedSize64, size+1)
			unpacked += f.UncompressedSize64
		}
	}
	slices.SortFunc(a.members, func(x, y member) int { return cmp.Compare(x.name, y.name) })
	switch {
	case packed > size:
		return Overlap
	case unpacked > MaxUnpacked:
		return TooMuch
	}
	return ""
}

// judge makes an entry of the list a member, leaves it out, or refuses it.
func (a *Archive) judge(f *zip.File, known map[string]bool) (member, bool) {
	if strings.HasSuffix(f.Name, "/") || !f.Mode().IsRegular() {
		return member{}, false
	}
	written := legible(f)
	name, plain := plainName(written)
	switch {
	case !plain:
		a.refuse(written, UnsafeName)
		return member{}, false
	case hidden(name):
		return member{}, false
	case known[name]:
		a.refuse(name, SameName)
		return member{}, false
	}
	known[name] = true
	m := member{name: name, size: int64(f.UncompressedSize64), open: f.Open}
	if code := unopenable(f); code != "" {
		m.fault = &Error{Path: a.full(name), Code: code}
	}
	return m, true
}

// codePage437 are the characters of the bytes from 0x80 on in the code page of names without a flag (APPNOTE.TXT
// 6.3.10, appendix D).
var codePage437 = []rune("ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜ¢£¥₧ƒáíóúñÑªº¿⌐¬½¼¡«»░▒▓│┤╡╢╖╕╣║╗╝╜╛┐" +
	"└┴┬├─┼╞╟╚╔╩╦╠═╬╧╨╤╥╙╘╒╓╫╪┘┌█▄▌▐▀αßΓπΣσµτΦΘΩδ∞φε∩≡±≥≤⌠⌡÷≈°∙·√ⁿ²■\u00a0")

// legible is a member's name as it was written: in UTF-8, whether it says so or not, or else in code page 437.
func legible(f *zip.File) string {
	if !f.NonUTF8 || utf8.ValidString(f.Name) {
		return f.Name
	}
	var name []rune
	for _, c := range []byte(f.Name) {
		if c < utf8.RuneSelf {
			name = append(name, rune(c))
		} else {
			name = append(name, codePage437[c-utf8.RuneSelf])
		}
	}
	return string(name)
}

// unopenable is why a member cannot be read, or "".
func unopenable(f *zip.File) Code {
	const encrypted = 1 // bit 0 of the general purpose flags: APPNOTE.TXT 6.3.10, 4.4.4
	switch {
	case f.Flags&encrypted != 0:
		return Encrypted
	case f.Method != zip.Store && f.Method != zip.Deflate:
		return Method
	case f.UncompressedSize64 > MaxBytes:
		return TooLarge
	}
	return ""
}

// refuse keeps why a member is not listed.
func (a *Archive) refuse(name string, code Code) {
	a.refused = append(a.refused, &Error{Path: printable(a.full(name)), Code: code})
}

// declaredMembers is how many members a zip's end says it has, before memory is set aside for so many; 0
// when there is no end. Records: APPNOTE.TXT 6.3.10, 4.3.14 to 4.3.16.
func declaredMembers(in io.ReaderAt, size int64) uint64 {
	const endLen, locatorLen, mostComment = 22, 20, 1 << 16
	tail := make([]byte, min(size, locatorLen+endLen+mostComment))
	if _, err := in.ReadAt(tail, size-int64(len(tail))); err != nil && err != io.EOF {
		return 0
	}
	end := bytes.LastIndex(tail, []byte("PK\x05\x06"))
	if end < 0 || len(tail)-end < endLen {
		return 0
	}
	count := uint64(binary.LittleEndian.Uint16(tail[end+10:]))
	if end < locatorLen || string(tail[end-locatorLen:][:4]) != "PK\x06\x07" {
		return count
	}
	large := make([]byte, 56)
	at := int64(binary.LittleEndian.Uint64(tail[end-locatorLen+8:]))
	if n, _ := io.NewSectionReader(in, 0, size).ReadAt(large, at); n < len(large) {
		return count
	}
	return binary.LittleEndian.Uint64(large[32:])
}

// errDirectory ends the reading of a list of members that goes on too long.
var errDirectory = errors.New("the list of members is larger than 16 MiB")

// bounded gives out a limited number of bytes until the list of members is read, and all after that.
type bounded struct {
	in   io.ReaderAt
	left int
	read bool
}

// ReadAt reads, as io.ReaderAt.
func (b *bounded) ReadAt(p []byte, at int64) (int, error) {
	if b.read {
		return b.in.ReadAt(p, at)
	}
	if b.left < len(p) {
		return 0, errDirectory
	}
	b.left -= len(p)
	return b.in.ReadAt(p, at)
}
