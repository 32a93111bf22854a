package importers

import (
	"bytes"
	"math"
	"strconv"
)

// pow10 holds the powers of ten that a float64 represents exactly and the fast path divides by.
var pow10 = [16]float64{1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15}

// fastDigits is how many decimal digits always fit a float64's 53-bit significand. A significand and a
// power of ten that are both exact give a correctly rounded quotient (W. D. Clinger, "How to read
// floating point numbers accurately", 1990), so the fast path equals strconv.ParseFloat bit for bit.
const fastDigits = 15

// parseNumber reads a decimal number whose fraction follows mark. It accepts what strconv.ParseFloat
// accepts of digits, one mark and an exponent, and nothing else; the number must be finite. decimals is
// how many digits follow the mark.
func parseNumber(s []byte, mark byte) (v float64, decimals int, ok bool) {
	i, point := 0, len(s)
	if len(s) > 0 && (s[0] == '-' || s[0] == '+') {
		i = 1
	}
	first := i
	var digits uint64
	for ; i < len(s); i++ {
		if c := s[i] - '0'; c <= 9 {
			digits = digits*10 + uint64(c)
			continue
		}
		if s[i] != mark || point < len(s) {
			return exactNumber(s, mark)
		}
		point = i
	}
	count := len(s) - first
	if point < len(s) {
		decimals = len(s) - 1 - point
		count--
	}
	if count == 0 || count > fastDigits {
		return exactNumber(s, mark)
	}
	v = float64(digits) / pow10[decimals]
	if s[0] == '-' {
		v = -v
	}
	return v, decimals, true
}

// exactNumber is the plain path: long numbers, exponents, and everything that is no number at all.
func exactNumber(s []byte, mark byte) (v float64, decimals int, ok bool) {
	var room [64]byte
	text := room[:0]
	point, exponent := -1, -1
	for i, c := range s {
		switch {
		case c == mark && point < 0 && exponent < 0:
			point = i
			c = '.'
		case c == 'e' || c == 'E':
			exponent = i
		case c != '-' && c != '+' && (c < '0' || c > '9'):
			return 0, 0, false
		}
		text = append(text, c)
	}
	v, err := strconv.ParseFloat(string(text), 64)
	if err != nil || math.IsInf(v, 0) {
		return 0, 0, false
	}
	if point >= 0 {
		end := len(s)
		if exponent >= 0 {
			end = exponent
		}
		decimals = end - 1 - point
	}
	return v, decimals, true
}

// lowerASCII appends s to dst with A–Z in lower case.
func lowerASCII(dst, s []byte) []byte {
	for _, c := range s {
		if c >= 'A' && c <= 'Z' {
			c += 'a' - 'A'
		}
		dst = append(dst, c)
	}
	return dst
}

func isDigit(c byte) bool { return c-'0' <= 9 }

// trim cuts blanks, tabs, carriage returns and noBreaks off both ends.
func trim(s []byte) []byte {
	if n := len(s); n > 0 && isInk(s[0]) && isInk(s[n-1]) {
		return s
	}
	for len(s) > 0 && isBlank(s[0]) {
		s = s[1:]
	}
	for len(s) > 0 && isBlank(s[len(s)-1]) {
		s = s[:len(s)-1]
	}
	for _, blank := range noBreaks {
		if bytes.HasPrefix(s, blank) || bytes.HasSuffix(s, blank) {
			return trim(bytes.TrimSuffix(bytes.TrimPrefix(s, blank), blank))
		}
	}
	return s
}

// noBreaks are the no-break space, the narrow one and the thin space.
var noBreaks = [][]byte{[]byte("\u00a0"), []byte("\u202f"), []byte("\u2009")}

// isInk says whether a byte is a printed ASCII character.
func isInk(c byte) bool { return c > ' ' && c < 0x7F }

func isBlank(c byte) bool { return c == ' ' || c == '\t' || c == '\r' || c == '\n' }
