package importers

import (
	"math"
	"slices"
	"testing"
)

// What a person reads in a cell, by the mark its file uses for fractions. An empty unit is none.
func TestNumbersInText(t *testing.T) {
	for _, c := range []struct {
		cell string
		mark byte
		v    float64
		unit string
	}{
		{" 4.5", '.', 4.5, ""}, {"  -0.5 ", '.', -0.5, ""}, {"+4.5", '.', 4.5, ""}, {"+ 4.5", '.', 4.5, ""}, {"- 0,4", ',', -0.4, ""},
		{"4.5E+00", '.', 4.5, ""}, {"-1.5e-01", '.', -0.15, ""}, {"4,5E+01", ',', 45, ""},
		{"\u22124.25", '.', -4.25, ""}, {"\u20134,25", ',', -4.25, ""}, {"\x964.25", '.', -4.25, ""}, {"\u2212 3", '.', -3, ""},
		{"4.5-", '.', -4.5, ""}, {"4,5 -", ',', -4.5, ""}, {"4.5\u2212", '.', -4.5, ""}, {"4.5\x96", '.', -4.5, ""}, {"(4.5)", '.', -4.5, ""}, {"( 1,234.5 )", '.', -1234.5, ""}, {"4.5)", '.', 4.5, ""},
		{"4.5\u00b0C", '.', 4.5, "degC"}, {"4.5 \u00b0 C", '.', 4.5, "degC"}, {"4,5\u00a0\u00b0C", ',', 4.5, "degC"}, {"4.5\u00baC", '.', 4.5, "degC"}, {"4.5\xb0C", '.', 4.5, "degC"},
		{"40.1F", '.', 40.1, "degF"}, {"40.1 \u00b0f", '.', 40.1, "degF"}, {"4.5\u00b0", '.', 4.5, ""}, {"\u22124.5\u00b0C", '.', -4.5, "degC"},
		{"61 %", '.', 61, "percent"}, {"61%RH", '.', 61, "%RH"}, {"61 % rH", '.', 61, "%RH"}, {"61,5\u202f%", ',', 61.5, "percent"}, {"812 ppm", '.', 812, "ppm"},
		{"<0.5", '.', 0.5, ""}, {"> 99", '.', 99, ""}, {">=99 %", '.', 99, "percent"}, {"\u226499", '.', 99, ""}, {"<-20", '.', -20, ""},
		{"1,234.5", '.', 1234.5, ""}, {"12,345", '.', 12345, ""}, {"1.234,5", ',', 1234.5, ""}, {"1.234.567", ',', 1234567, ""}, {"-1.234,5", ',', -1234.5, ""},
		{"1 234,5", ',', 1234.5, ""}, {"12\u2009345,5", ',', 12345.5, ""}, {"12\u202f345", '.', 12345, ""}, {"12\u00a0345", '.', 12345, ""}, {"12\xa0345", '.', 12345, ""},
		{"1'234.5", '.', 1234.5, ""}, {"12\u2019345.5", '.', 12345.5, ""}, {"12 345 lux", '.', 12345, "lux"},
	} {
		v, _, unit, ok := numberInText([]byte(c.cell), c.mark)
		if !ok || v != c.v || unit != c.unit {
			t.Errorf("%q: %v %q %v, want %v %q", c.cell, v, unit, ok, c.v, c.unit)
		}
	}
	for _, cell := range []string{"", " ", "\u2212", "<", "--4", "-+4", "1,23", "1,2345", "0,125", "1,234,56", "1 2", "12 34", "1234,567", "1,234.5.6", "1.234,5", "4.5 furlongs", "4..5", "1, 234", "12C3", "-4.5-", "(-4.5)", "(4.5", "4.5--", "()", "(-)"} {
		if v, _, _, ok := numberInText([]byte(cell), '.'); ok {
			t.Errorf("%q is taken for %v", cell, v)
		}
	}
}

// A person reads −1.5, −0.5 and −2 in the rows of these logs, whose other rows hold numbers as usual.
func TestNumbersBelowNoughtAsLedgersPrintThem(t *testing.T) {
	for _, rows := range [][3]string{{"1.5-", "0.5-", "2-"}, {"(1.5)", "(0.5)", "(2)"}} {
		e := readText(t, "time,temp °C\n2026-01-13 10:00,4.5\n2026-01-13 10:10,"+rows[0]+"\n2026-01-13 10:20,"+rows[1]+"\n2026-01-13 10:30,"+rows[2]+"\n2026-01-13 10:40,3.5\n")
		if got, want := e.Series[0].Val, []float64{4.5, -1.5, -0.5, -2, 3.5}; !slices.Equal(got, want) || len(e.Remarks) > 0 {
			t.Errorf("%q: %v %+v", rows, got, e.Remarks)
		}
	}
}

// Minus nought stays what it is.
func TestMinusNought(t *testing.T) {
	for _, cell := range []string{"-0.0", "\u22120.0", "- 0"} {
		if v, _, _, ok := numberInText([]byte(cell), '.'); !ok || v != 0 || !math.Signbit(v) {
			t.Errorf("%q: %v %v", cell, v, ok)
		}
	}
}

func TestMissingWords(t *testing.T) {
	for _, cell := range []string{"", "NA", "N/A", "#N/A", "null", "NULL", "NaN", "nan", "M", "M1", "ERR", "Error", "LOW", "Hi", "OL", "O.L", "---", "--", "-", ".", "-.-", "--.-", "?", "***",
		"____", "\u2013", "\u2014", "\x97", "No Data", "#DIV/0!", "Fehler", "unavailable", "-1.#IND"} {
		if !isMissing([]byte(cell)) {
			t.Errorf("%q is not missing", cell)
		}
	}
	for _, cell := range []string{"0", "-0", "on", "off", "open", "closed", "4.5", "-4", "M2", "warm", "north", "a word too long to be one"} {
		if isMissing([]byte(cell)) {
			t.Errorf("%q is missing", cell)
		}
	}
}
