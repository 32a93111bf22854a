package importers

import "bytes"

// foreign are the starts of files that are no tables of text, whatever their names say; within, where it is named, must
// stand near the start too. Sources: zip APPNOTE.TXT 6.3.10, 4.3.7, and what workbooks in a zip hold first (ISO/IEC
// 29500-2, 8.2; ISO/IEC 26300-3, 3.3); RFC 1952, 2.3.1; ISO 32000-1, 7.5.2; the others from memory.
var foreign = []struct{ start, within, code string }{
	{"pk\x03\x04", "[content_types].xml", RefusedWorkbook},
	{"pk\x03\x04", "mimetypeapplication/vnd.oasis", RefusedWorkbook},
	{"pk\x03\x04", "", RefusedArchive},
	{"\x1f\x8b\x08", "", RefusedArchive},
	{"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", "", RefusedWorkbook},
	{"%pdf-", "", RefusedDocument},
	{"{\\rtf", "", RefusedDocument},
	{"<!doctype html", "", RefusedPage},
	{"<html", "", RefusedPage},
	{"<table", "", RefusedPage},
}

// foreignCode is the code of the refusal of what begins as no table of text does; "" when nothing is known of it.
func foreignCode(head []byte) string {
	const near = 4096
	low := lowerASCII(nil, bytes.TrimLeft(head[:min(len(head), near)], " \t\r\n"))
	for _, f := range foreign {
		if bytes.HasPrefix(low, []byte(f.start)) && bytes.Contains(low, []byte(f.within)) {
			return f.code
		}
	}
	return ""
}
