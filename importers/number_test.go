package importers

import (
	"bytes"
	"math"
	"math/rand"
	"strconv"
	"strings"
	"testing"
)

// plainNumber says what strconv makes of a cell, for cells of digits, signs, a mark and an exponent.
func plainNumber(s string, mark byte) (v float64, ok bool) {
	if strings.Trim(s, "0123456789+-eE"+string(mark)) != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(strings.ReplaceAll(s, string(mark), "."), 64)
	return v, err == nil
}

// sameNumber holds the parser to strconv, bit for bit.
func sameNumber(t *testing.T, s string, mark byte) {
	t.Helper()
	got, _, ok := parseNumber([]byte(s), mark)
	want, wanted := plainNumber(s, mark)
	if ok != wanted || ok && math.Float64bits(got) != math.Float64bits(want) {
		t.Errorf("%q with %q: got %v %v, want %v %v", s, mark, got, ok, want, wanted)
	}
}

// Seeds are what loggers print and where parsers go wrong: halfway cases, the largest exact integer, limits
// of the exponent.
var numberSeeds = []string{"", "-", "+", ".", "-.", "5", "-5", "+5", "5.", ".5", "-.5", "5.25", "-0", "-0.0", "007.50", "1e5", "1E-5", "1.5e+3", "1e", "1e400",
	"1e-400", "9007199254740993", "9007199254740992.5", "0.1", "123456789012345", "1234567890123456", "0.000000000000001", "1.7976931348623157e308",
	"4.9e-324", "2.2250738585072011e-308", "NaN", "Inf", "0x1p-2", "1_000", "1.2.3", "--5", "5-", "1,5", "99999999999999999999.5", "12.3456789012345678901234567890"}

func TestNumberSeeds(t *testing.T) {
	for _, s := range numberSeeds {
		sameNumber(t, s, '.')
		sameNumber(t, strings.ReplaceAll(s, ".", ","), ',')
	}
}

func TestNumberMutations(t *testing.T) {
	random := rand.New(rand.NewSource(1))
	const letters = "0123456789.,-+eE x"
	for range 100_000 {
		s := []byte(numberSeeds[random.Intn(len(numberSeeds))])
		for range random.Intn(4) {
			at := random.Intn(len(s) + 1)
			switch c := letters[random.Intn(len(letters))]; {
			case random.Intn(2) == 0 || at == len(s):
				s = append(s[:at], append([]byte{c}, s[at:]...)...)
			default:
				s[at] = c
			}
		}
		sameNumber(t, string(s), '.')
		sameNumber(t, string(s), ',')
	}
}

func TestNumberDecimals(t *testing.T) {
	for s, want := range map[string]int{"5": 0, "5.": 0, "5.0": 1, "-12.345": 3, "1.25e3": 2, "0.1234567890123456789": 19} {
		if _, d, ok := parseNumber([]byte(s), '.'); !ok || d != want {
			t.Errorf("%s: %d decimals, want %d", s, d, want)
		}
	}
}

// FuzzNumber holds the parser to strconv on any bytes, and the lenient path to its own promise: what the plain
// path reads it reads too, to the same value.
func FuzzNumber(f *testing.F) {
	for _, s := range append(numberSeeds, "4.5 °C", "−4.5", "\x964.5%", " 80 %RH", "1,234.5", "1.234,5", "1 234", "12\u202f345,5", "1'234.5", "12\xa0345", "<0.5", ">= 99 %", "+ 4.5", "\u22120.0", "4.5°", "61 % rH", "40.1F", "0,125") {
		f.Add([]byte(s), false)
	}
	f.Fuzz(func(t *testing.T, cell []byte, comma bool) {
		mark := byte('.')
		if comma {
			mark = ','
		}
		sameNumber(t, string(cell), mark)
		before := bytes.Clone(cell)
		v, _, ok := parseNumber(cell, mark)
		w, _, _, ok2 := numberInText(cell, mark)
		if ok && (!ok2 || math.Float64bits(v) != math.Float64bits(w)) {
			t.Errorf("%q: %v, in text %v %v", cell, v, w, ok2)
		}
		if !bytes.Equal(cell, before) {
			t.Errorf("%q was changed", before)
		}
	})
}
