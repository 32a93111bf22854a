package importers

import (
	"bytes"
	"io"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/japanese"
	"golang.org/x/text/encoding/korean"
	"golang.org/x/text/encoding/simplifiedchinese"
	"golang.org/x/text/encoding/traditionalchinese"
	"golang.org/x/text/encoding/unicode"
)

// codings are how a text that is not UTF-8 may be encoded, and, for those that only its words tell from others, some
// of these.
var codings = []struct {
	name    string
	is      encoding.Encoding
	telling []string
}{
	{"utf-16le", unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM), nil},
	{"utf-16be", unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM), nil},
	{"windows-1252", charmap.Windows1252, nil},
	{"shift_jis", japanese.ShiftJIS, []string{"温度", "湿度", "気温", "日時", "日付", "時刻", "露点"}},
	{"euc-jp", japanese.EUCJP, []string{"温度", "湿度", "気温", "日時", "日付", "時刻", "露点"}},
	{"gbk", simplifiedchinese.GBK, []string{"温度", "湿度", "气温", "时间", "日期", "露点"}},
	{"big5", traditionalchinese.Big5, []string{"溫度", "濕度", "氣溫", "時間", "日期", "露點"}},
	{"euc-kr", korean.EUCKR, []string{"온도", "습도", "기온", "시간", "날짜", "일시", "이슬점"}},
	{"windows-1251", charmap.Windows1251, []string{"темпер", "влажн", "дата", "время", "волог"}},
	{"koi8-r", charmap.KOI8R, []string{"темпер", "влажн", "дата", "время"}},
	{"windows-1253", charmap.Windows1253, []string{"θερμοκρ", "υγρασ", "ημερομην"}},
	{"windows-1250", charmap.Windows1250, centralWords},
	{"iso-8859-2", charmap.ISO8859_2, centralWords},
	{"windows-1254", charmap.Windows1254, []string{"sıcak", "ışık"}},
	{"windows-1257", charmap.Windows1257, []string{"temperatūr", "drėgm", "slėg"}},
}

// centralWords have letters of the languages between German and Russian.
var centralWords = []string{"wilgotność", "włącz", "wyłącz", "ključen", "zavře", "otevře", "zwilż", "ciśnien", "prędko", "dzień", "nasłon", "měřen", "průměr", "vítř", "zařízen", "hőm", "őmérs", "idő", "temperatură", "vlhkosť", "stupň"}

// Decoded is a text as UTF-8 by the name of its encoding, as Layout has it; UTF-8 under a name that says no other.
func Decoded(r io.Reader, name string) io.Reader {
	for _, e := range codings {
		if e.name == name {
			return e.is.NewDecoder().Reader(r)
		}
	}
	return r
}

// encodingByWords is the encoding in which most telling words stand in the head of a text that is not UTF-8; "" where
// there are none, or no encoding needs them.
func encodingByWords(head []byte) (name string) {
	head = head[:bytes.LastIndexByte(head, '\n')+1]
	if utf8.Valid(head) {
		return ""
	}
	most := 0
	for _, e := range codings {
		if e.telling == nil {
			continue
		}
		decoded, err := e.is.NewDecoder().Bytes(head)
		if err != nil {
			continue
		}
		low, found := strings.ToLower(string(decoded)), 0
		for _, word := range e.telling {
			found += strings.Count(low, word)
		}
		if found > most {
			name, most = e.name, found
		}
	}
	return name
}
