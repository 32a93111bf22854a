package importers

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"math/rand"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

// mutate changes a few bytes of a log's rows to what damaged files hold.
func mutate(random *rand.Rand, body []byte) []byte {
	const letters = "0123456789:-. ,;T\"\n\r+eNA°"
	out := bytes.Clone(body)
	for range 1 + random.Intn(6) {
		at := 20 + random.Intn(len(out)-20)
		c := letters[random.Intn(len(letters))]
		switch random.Intn(3) {
		case 0:
			out[at] = c
		case 1:
			out = slices.Insert(out, at, c)
		default:
			out = slices.Delete(out, at, at+1)
		}
	}
	return out
}

// The quick path and the plain path give the same bits, remarks and refusals on damaged rows: 3,000 logs of
// ten rows or so, in four layouts.
func TestQuickPathIsThePlainPath(t *testing.T) {
	logs := [][]byte{
		manyRows(12),
		[]byte("Zeit;Nr;Temp °C;RH %;x\n" + "13.01.2026 10:00;1;4,5;80,5;a\n13.01.2026 10:10;2;4,25;;b\n13.01.2026 10:20;3;-0,5;81;c\n14.01.2026 00:00;4;5;82;d\n14.01.2026 00:10;5;5,0;82;e\n14.01.2026 00:20;6;5,1;82;\n"),
		[]byte("n\ttemp C\ttime\n1\t4.5\t2026-01-13T10:00:00\n2\t4.25\t2026-01-13T10:00:10\n3\t-4.25\t2026-01-13T10:00:20\r\n4\t\t2026-01-13T10:00:30\n5\t1e1\t2026-01-13T10:00:40\n"),
		[]byte("No.,Time,Temp C\n1,01/13/2026 11:59:40 AM,4.5\n2,01/13/2026 12:00:40 PM,4.25\n3,01/13/2026 01:00:40 pm,4\n4,01/14/2026 12:00:40 AM,4.1\n5,01/14/2026 12:30:40 am,\n6,01/14/2026 01:00:40 Am,4.2\n"),
	}
	random := rand.New(rand.NewSource(1))
	quickRows := 0
	for i := range 3000 {
		body := mutate(random, logs[i%len(logs)])
		quickRows += samePaths(t, body)
	}
	if quickRows < 15_000 {
		t.Errorf("only %d rows were compared", quickRows)
	}
}

func sameBits(a, b *Export) bool {
	for i, s := range a.Series {
		o := b.Series[i]
		if !slices.Equal(s.FaceMS, o.FaceMS) || s.Decimals != o.Decimals {
			return false
		}
		for k, v := range s.Val {
			if math.Float64bits(v) != math.Float64bits(o.Val[k]) {
				return false
			}
		}
	}
	return true
}

// quickForms print a row of a log in the ways that share the quick path's shortcuts or must be kept from them:
// a header, and a row by its time and number.
var quickForms = []struct {
	header string
	row    func(at time.Time, i int) string
}{
	{"time,temp °C,rh %\n", func(at time.Time, i int) string { return at.Format("2006-01-02T15:04:05") + number2(i) }},
	{"time,temp °C,rh %\n", func(at time.Time, i int) string { return at.Format("2006-01-02 15:04") + number2(i) }},
	{"time,temp °C,rh %\r\n", func(at time.Time, i int) string { return at.Format("02.01.2006 15:04:05") + number2(i) + "\r" }},
	{"time,temp °C,rh %\n", func(at time.Time, i int) string { return at.Format("01/02/2006 03:04:05 PM") + number2(i) }},
	{"time,temp °C,rh %\n", func(at time.Time, i int) string { return at.Format("2-Jan-2006 15:04") + number2(i) }},
	{"time,temp °C,rh %\n", func(at time.Time, i int) string { return at.Format("2006010215") + number2(i) }},
	{"time,temp °C,rh %\n", func(at time.Time, i int) string { return at.Format("200601021504") + number2(i) }},
	{"time,temp °C,rh %\n", func(at time.Time, i int) string { return at.Format("20060102:1504") + number2(i) }},
	{"time,temp °C,rh %\n", func(at time.Time, i int) string { return at.Format("20060102T15:04:05Z") + number2(i) }},
	{"time,temp °C,rh %\n", func(at time.Time, i int) string { return at.Format("2006-01-02T15:04:05.000") + number2(i) }},
	{"Pvm;Klo;temp °C;rh %\n", func(at time.Time, i int) string {
		return at.Format("02.01.2006;15.04") + strings.NewReplacer(",", ";", ".", ",").Replace(number2(i))
	}},
	{"date,time,temp °C,rh %\n", func(at time.Time, i int) string { return at.Format("2006-01-02,15:04") + number2(i) }},
	{"date,hour,temp °C,rh %\n", func(at time.Time, i int) string { return at.Format("2006-01-02,15") + number2(i) }},
	{"year,month,day,hour,minute,temp °C,rh %\n", func(at time.Time, i int) string { return at.Format("2006,1,2,15,4") + number2(i) }},
	{"year,doy,hhmm,temp °C,rh %\n", func(at time.Time, i int) string { return at.Format("2006,__2,1504") + number2(i) }},
	{"time|temp (0.1 °C)|rh %\n", func(at time.Time, i int) string {
		return at.Format("2006-01-02 15:04") + strings.ReplaceAll(number2(i), ",", "|")
	}},
	{"time,temp avg °C,temp min °C\n", func(at time.Time, i int) string { return at.Format("2006-01-02 15:04") + number2(i) }},
	{"time,temp °C,time,temp °C\n", func(at time.Time, i int) string {
		return at.Format("2006-01-02 15:04,") + fmt.Sprint(i%7) + at.Add(time.Minute).Format(",2006-01-02 15:04,") + fmt.Sprint(i%5)
	}},
	{"start,end\n", func(at time.Time, i int) string {
		return at.Format("2006-01-02 15:04,") + at.Add(time.Duration(i)*time.Second).Format("2006-01-02 15:04:05")
	}},
	{"ts,temp °C,rh %\n", func(at time.Time, i int) string { return fmt.Sprint(at.Unix()) + number2(i) }},
	{"temp °C,rh %,time\n", func(at time.Time, i int) string { return number2(i)[1:] + at.Format(",2006-01-02 15:04:05") }},
	{"time\tlight lux\ttemp °C\n", func(at time.Time, i int) string {
		return fmt.Sprintf("%s\t1,%03d.5\t%d.5", at.Format("2006-01-02 15:04"), i, i%7)
	}},
}

// number2 is a temperature and a humidity, some dressed or missing.
func number2(i int) string {
	return []string{",4.5,80", ",-0.5,81.25", ",,82", ",5,", ",1e1,80", ",<0.5,99", ",NA,80", ",-999,80", ", 4.5, 80", ",4.75 °C,80 %", ",0.5-,80", ",(0.5),80"}[i%12]
}

// The same on 30,000 rows that are each damaged in a byte or two, below as many that are not, in every form.
func TestQuickPathIsThePlainPathInEveryForm(t *testing.T) {
	const rows, logs = 40, 750
	random := rand.New(rand.NewSource(2))
	read1, damaged := 0, 0
	for i := range logs {
		form := quickForms[i%len(quickForms)]
		body := []byte(form.header)
		at := time.Date(2026, 1, 13, 20, 0, 0, 0, time.UTC)
		for k := range 2 * rows {
			row := []byte(form.row(at, k) + "\n")
			if k >= rows {
				row = damage(random, row)
				damaged++
			}
			body = append(body, row...)
			at = at.Add(time.Hour)
		}
		read1 += samePaths(t, body)
	}
	if damaged != 30_000 || read1 < 50_000 {
		t.Errorf("%d rows damaged, %d read", damaged, read1)
	}
}

// damage changes, adds or takes away a byte or two of a row.
func damage(random *rand.Rand, row []byte) []byte {
	const letters = "0123456789:-. ,;T\"\n\r+eNAhPpMm/\t<°"
	for range 1 + random.Intn(2) {
		at := random.Intn(len(row))
		c := letters[random.Intn(len(letters))]
		switch random.Intn(3) {
		case 0:
			row[at] = c
		case 1:
			row = slices.Insert(row, at, c)
		default:
			row = append(slices.Delete(row, at, at+1), ' ')
		}
	}
	return row
}

// samePaths holds the quick path to the plain one and says how many rows were read.
func samePaths(t *testing.T, body []byte) (rows int) {
	t.Helper()
	quick, err := read(context.Background(), bytes.NewReader(body), "f.csv", nil, true)
	plain, errPlain := read(context.Background(), bytes.NewReader(body), "f.csv", nil, false)
	if (err == nil) != (errPlain == nil) || err != nil && err.Error() != errPlain.Error() {
		t.Fatalf("%q: %v, plain %v", body, err, errPlain)
	}
	if err != nil {
		return 0
	}
	if describe(quick) != describe(plain) || !sameBits(quick, plain) {
		t.Fatalf("%q:\n%s\nplain\n%s", body, describe(quick), describe(plain))
	}
	return quick.Rows
}

// A number read in passing is the one strconv.ParseFloat reads: every text of up to four letters of what numbers and
// their ends are made of, and 200,000 longer ones.
func TestNumbersReadInPassingAreTheLibrarys(t *testing.T) {
	const letters = "0159-.,;\n \xff"
	same := func(text string, mark byte) {
		b := []byte("," + text + ",1.5,99")
		v, d, next, ok := quickNumber(b, 1, mark)
		v2, d2, next2, ok2 := libraryNumber(t, string(b[1:]), mark)
		if ok != ok2 || ok && (math.Float64bits(v) != math.Float64bits(v2) || d != d2 || next != next2) {
			t.Fatalf("%q: %v %d %d %v, by the library %v %d %d %v", text, v, d, next, ok, v2, d2, next2, ok2)
		}
	}
	var grow func(text string)
	grow = func(text string) {
		same(text, '.')
		same(text, ',')
		for i := 0; i < len(letters) && len(text) < 4; i++ {
			grow(text + letters[i:i+1])
		}
	}
	grow("")
	random := rand.New(rand.NewSource(2))
	for range 200_000 {
		text := make([]byte, 5+random.Intn(14))
		for i := range text {
			text[i] = letters[random.Intn(len(letters))]
			if random.Intn(3) > 0 {
				text[i] = byte('0' + random.Intn(10))
			}
		}
		same(string(text), '.')
	}
}

// numberStart is the longest start of a text that can be a number, with its digits before and behind the mark.
var numberStart = map[byte]*regexp.Regexp{'.': regexp.MustCompile(`^-?([0-9]*)(\.[0-9]*)?`), ',': regexp.MustCompile(`^-?([0-9]*)(,[0-9]*)?`)}

// libraryNumber is what quickNumber is to say of a text at 1, by strconv.ParseFloat.
func libraryNumber(t *testing.T, text string, mark byte) (v float64, decimals, next int, ok bool) {
	t.Helper()
	m := numberStart[mark].FindStringSubmatch(text)
	next = 1 + len(m[0])
	if m[0] == "" {
		return missing, -1, next, true
	}
	decimals = max(len(m[2])-1, 0)
	if n := len(m[1]) + decimals; n == 0 || n > fastDigits {
		return 0, 0, next, false
	}
	v, err := strconv.ParseFloat(strings.Replace(m[0], ",", ".", 1), 64)
	if err != nil {
		t.Fatal(err)
	}
	return v, decimals, next, true
}

// Behind a date that could not be parted from its time the next row's time is not glued on either.
func TestATimeGluedToItsDateIsNone(t *testing.T) {
	file := "time,temp °C\n01/16/2026 08:00:00 PM,4.5\n01/16/2026 09:00:00 PM,4.5\n01/17/2026\xc2 08:00:00 PM,4.5\n01/17/202609:00:00 PM,4.5\n"
	if samePaths(t, []byte(file)); readText(t, file).BadTime != 2 {
		t.Error("a glued time was read")
	}
}
