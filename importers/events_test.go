package importers

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"
)

// undecided hold small files of our own that say what they hold in words, by from and to, by a header that comes
// again or by their values alone, each with what a person reads in it. The dew points are Magnus's, by hand.
var undecided = []struct{ name, in, want string }{
	{"runs from and to, one of them still on",
		"begin;end\n2026-01-13T00:30:00+01:00;2026-01-13T01:10:00+01:00\n2026-01-13T02:30:00+01:00;2026-01-13T03:10:00+01:00\n2026-01-13T04:30:00+01:00;\n",
		`utf-8 ";" "" line 2 rows 3 bad 0 clock [1] ymd +01:00 file
f|end|2 state n5 m0 u0 2026-01-13T00:30:00+01:00..2026-01-13T04:30:00+01:00 0..1`},
	{"runs over midnight, dates day first by a 13th, by fan",
		"Datum;Beginn;Ende;Gerät\n13.01.2026;20:30;22:10;Lüfter 1\n13.01.2026;21:30;00:10;Lüfter 2\n14.01.2026;23:30;01:10;Lüfter 1\n14.01.2026;23:45;23:50;Lüfter 2\n",
		`utf-8 ";" "" line 2 rows 4 bad 0 clock [1 2] dmy
Lüfter 1|Ende|3 state n4 m0 u0 2026-01-13T20:30:00..2026-01-15T01:10:00 0..1
Lüfter 2|Ende|3 state n4 m0 u0 2026-01-13T21:30:00..2026-01-14T23:50:00 0..1`},
	{"runs with date and time apart on both sides",
		"on date,on time,off date,off time\n2026-01-13,20:30,2026-01-13,22:10\n2026-01-14,23:30,2026-01-15,01:10\n",
		`utf-8 "," "" line 2 rows 2 bad 0 clock [1 2] ymd
f|off date|3 state n4 m0 u0 2026-01-13T20:30:00..2026-01-15T01:10:00 0..1`},
	{"from and to, a device alone",
		"start,end,device\n2026-01-13 10:00,2026-01-13 10:20,fan 1\n2026-01-13 11:00,2026-01-13 11:20,fan 1\n",
		`utf-8 "," "" line 2 rows 2 bad 0 clock [1] ymd
fan 1|end|2 state n4 m0 u0 2026-01-13T10:00:00..2026-01-13T11:20:00 0..1`},
	{"runs without a header",
		"2026-01-13 00:30,2026-01-13 01:10\n2026-01-13 01:30,2026-01-13 02:10\n2026-01-13 02:30,2026-01-13 03:10\n",
		`utf-8 "," "" line 1 rows 3 bad 0 clock [1] ymd
f||2 state n6 m0 u0 2026-01-13T00:30:00..2026-01-13T03:10:00 0..1`},
	{"an average from and to is no run",
		"start,end,temp\n2026-01-13 00:30,2026-01-13 01:30,4.5\n2026-01-13 01:30,2026-01-13 02:30,4.0\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp|3 air_temperature degC values n2 m0 u0 2026-01-13T00:30:00..2026-01-13T01:30:00 4..4.5`},
	{"events in words, a fan and a door",
		"Date,Time,Description\n01/13/2026,1:30:00 AM,Fan stage 2: ON\n01/14/2026,2:30:00 AM,Door was opened\n01/15/2026,3:30:00 PM,Fan stage 2: OFF\n01/15/2026,4:30:00 PM,Door closed\n",
		`utf-8 "," "" line 2 rows 4 bad 0 clock [1 2] mdy
Fan stage 2|Description|3 state n2 m0 u0 2026-01-13T01:30:00..2026-01-15T15:30:00 0..1
Door|Description|3 state n2 m0 u0 2026-01-14T02:30:00..2026-01-15T16:30:00 0..1`},
	{"events in German, one of them of nothing that goes on or off",
		"Zeit;Meldung\n13.01.2026 10:00;Lüfter 1 EIN\n13.01.2026 11:00;Lüfter 1 AUS\n13.01.2026 12:00;Wartung\n13.01.2026 13:00;Lüfter 1 EIN\n",
		`utf-8 ";" "" line 2 rows 4 bad 0 clock [1] dmy
Lüfter 1|Meldung|2 state n3 m0 u1 2026-01-13T10:00:00..2026-01-13T13:00:00 0..1
note unreadable_cell 4:2 x1`},
	{"events in French",
		"Date;Événement\n13/01/2026 10:00;Ventilateur 1 marche\n13/01/2026 11:00;Ventilateur 1 arrêt\n13/01/2026 12:00;Porte ouverte\n13/01/2026 13:00;Porte fermée\n",
		`utf-8 ";" "" line 2 rows 4 bad 0 clock [1] dmy
Ventilateur 1|Événement|2 state n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0..1
Porte|Événement|2 state n2 m0 u0 2026-01-13T12:00:00..2026-01-13T13:00:00 0..1`},
	{"calls of an alarm",
		"time,message\n2026-01-13 10:00,Temperature high: 8.4 °C in shed 2\n2026-01-13 12:30,Call acknowledged\n2026-01-14 02:10,Power failure\n",
		`utf-8 "," "" line 2 rows 3 bad 0 clock [1] ymd
f|message|2 other n3 m0 u0 2026-01-13T10:00:00..2026-01-14T02:10:00 1..1
note words 2:2 x3`},
	{"the header again above other values of the same times",
		"time,temp °C\n2026-01-13 00:00,4.5\n2026-01-13 01:00,4.6\n\ntime,temp °C\n2026-01-13 00:00,5.5\n2026-01-13 01:00,5.6\n\ntime,temp °C\n2026-01-13 00:00,6.5\n2026-01-13 01:00,6.6\n",
		`utf-8 "," "." line 2 rows 6 bad 0 clock [1] ymd
f 1|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4.5..4.6
f 2|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 5.5..5.6
f 3|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 6.5..6.6`},
	{"the header again above earlier rows",
		"time,temp °C\n2026-01-14 00:00,4.5\n2026-01-14 01:00,4.6\ntime,temp °C\n2026-01-13 00:00,5.5\n2026-01-13 01:00,5.6\n",
		`utf-8 "," "." line 2 rows 4 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n4 m0 u0 2026-01-13T00:00:00..2026-01-14T01:00:00 4.5..5.6
note out_of_order 5:1 x1`},
	{"the same read-out twice",
		"time,temp °C\n2026-01-14 00:00,4.5\n2026-01-14 01:00,4.6\ntime,temp °C\n2026-01-14 00:00,4.5\n2026-01-14 01:00,4.6\n",
		`utf-8 "," "." line 2 rows 4 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n4 m0 u0 2026-01-14T00:00:00..2026-01-14T01:00:00 4.5..4.6
note out_of_order 5:1 x1`},
	{"no header, but a dew point that follows from the two columns before it",
		"2026-01-13 00:00,4.5,80,1.4\n2026-01-13 01:00,5.0,82,2.2\n2026-01-13 02:00,3.0,90,1.5\n2026-01-13 03:00,6.2,75,2.1\n",
		`utf-8 "," "." line 1 rows 4 bad 0 clock [1] ymd
f||2 air_temperature degC values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T03:00:00 3..6.2
f||3 relative_humidity percent values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T03:00:00 0.75..0.9
f||4 dew_point degC values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T03:00:00 1.4..2.2`},
	{"a column that is named by an initial, but fits temperature and dew point",
		"time;T;TD;U\n2026-01-13 00:00;4.5;1.4;80\n2026-01-13 01:00;5.0;2.2;82\n2026-01-13 02:00;3.0;1.5;90\n",
		`utf-8 ";" "." line 2 rows 3 bad 0 clock [1] ymd
f|T|2 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3..5
f|TD|3 dew_point degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 1.4..2.2
f|U|4 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.8..0.9`},
	{"an initial that does not fit",
		"time;T;TD;U\n2026-01-13 00:00;4.5;1.4;60\n2026-01-13 01:00;5.0;2.2;62\n2026-01-13 02:00;3.0;1.5;60\n",
		`utf-8 ";" "." line 2 rows 3 bad 0 clock [1] ymd
f|T|2 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3..5
f|TD|3 dew_point degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 1.4..2.2
f|U|4 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 60..62`},
	{"no header, one column that no humidity can be",
		"2026-01-13 00:00,4.5\n2026-01-13 01:00,5.0\n2026-01-13 02:00,3.0\n",
		`utf-8 "," "." line 1 rows 3 bad 0 clock [1] ymd
f||2 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3..5
ask quantity [air_temperature other]`},
	{"no header, two columns that could each be a humidity",
		"2026-01-13 00:00,4.5,80,41.5\n2026-01-13 01:00,5.0,82,41.5\n2026-01-13 02:00,3.0,90,41.4\n",
		`utf-8 "," "." line 1 rows 3 bad 0 clock [1] ymd
f||2 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3..5
f||3 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.8..0.9
f||4 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 41.4..41.5
ask pairing [in_order apart]
note nameless 1:0 x1`},
	{"thousands or ones with three digits",
		"time;value\n2026-01-13 00:00;1,100\n2026-01-13 01:00;1,105\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] ymd
f|value|2 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 1.1..1.105
ask decimal_mark [. ,]`},
	{"thousands, for no air holds so little",
		"time,CO2 ppm,temp\n2026-01-13 00:00,\"1,100\",4\n2026-01-13 01:00,\"1,105\",5\n",
		`utf-8 "," "" line 2 rows 2 bad 0 clock [1] ymd
f|CO2 ppm|2 co2 ppm header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 1100..1105
f|temp|3 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..5`},
	{"ones, for the temperature has the same mark",
		"time;value;temp °C\n2026-01-13 00:00;1,100;4,5\n2026-01-13 01:00;1,105;5,0\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] ymd
f|value|2 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 1.1..1.105
f|temp °C|3 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4.5..5`},
	{"ones, for one is below one",
		"time;flow\n2026-01-13 00:00;1,100\n2026-01-13 01:00;0,905\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] ymd
f|flow|2 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.905..1.1`},
	{"thousands, for others are whole hundreds",
		"time;value\n2026-01-13 00:00;1,100\n2026-01-13 01:00;905\n",
		`utf-8 ";" "" line 2 rows 2 bad 0 clock [1] ymd
f|value|2 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 905..1100`},
	{"beginnings and how long each run took, in minutes",
		"Beginn;Laufzeit (min)\n13.01.2026 10:00;25\n13.01.2026 23:50;20\n",
		`utf-8 ";" "" line 2 rows 2 bad 0 clock [1] dmy
f|Beginn|1 state n4 m0 u0 2026-01-13T10:00:00..2026-01-14T00:10:00 0..1
f|Laufzeit (min)|2 other n2 m0 u0 2026-01-13T10:00:00..2026-01-13T23:50:00 20..25`},
	{"beginnings and how long each run took, as times, by fan",
		"start,fan,duration\n2026-01-13 10:00,Fan 1,0:25:00\n2026-01-13 11:00,Fan 2,0:20:00\n2026-01-13 12:00,Fan 1,1:00:00\n2026-01-13 13:00,Fan 2,\n",
		`utf-8 "," "" line 2 rows 4 bad 0 clock [1] ymd
Fan 1|start|1 state n4 m0 u0 2026-01-13T10:00:00..2026-01-13T13:00:00 0..1
Fan 2|start|1 state n3 m0 u0 2026-01-13T11:00:00..2026-01-13T13:00:00 0..1`},
}

func TestEventsRunsAndUndecided(t *testing.T) { checkShapes(t, undecided) }

// The keeper's answer settles what the values leave open, and no column changes but those it is about.
func TestUndecidedAnswered(t *testing.T) {
	headless := "2026-01-13 00:00,4.5,80.5,905\n2026-01-13 01:00,5.0,82.5,910\n2026-01-13 02:00,3.0,90.5,920\n"
	for _, c := range []struct{ in, id, answer, want string }{
		{"time;flow\n2026-01-13 00:00;1,100\n2026-01-13 01:00;1,105\n", "decimal_mark", ",", "f other 2 0 0 00:00..01:00 1.1..1.105"},
		{"time;value\n2026-01-13 00:00;1,100\n2026-01-13 01:00;1,105\n", "decimal_mark", ".", "f other 2 0 0 00:00..01:00 1100..1105"},
		{lone("41.5", "42.0"), "quantity", "air_temperature", "f air_temperature 2 0 0 00:00..01:00 41.5..42"},
		{lone("41.5", "42.0"), "quantity", "relative_humidity", "f relative_humidity 2 0 0 00:00..01:00 0.415..0.42"},
		{lone("41.5", "42.0"), "quantity", "other", "f other 2 0 0 00:00..01:00 41.5..42"},
		{"time;value\n" + lone("4.5", "5.0"), "quantity", "air_temperature", "f air_temperature 2 0 0 00:00..01:00 4.5..5"},
		{headless, "pairing", "in_order", "f air_temperature 3 0 0 00:00..02:00 3..5|f relative_humidity 3 0 0 00:00..02:00 0.805..0.905|f other 3 0 0 00:00..02:00 905..920"},
		{headless, "pairing", "apart", "f other 3 0 0 00:00..02:00 3..5|f other 3 0 0 00:00..02:00 80.5..90.5|f other 3 0 0 00:00..02:00 905..920"},
	} {
		e, err := Read(context.Background(), strings.NewReader(c.in), "f.csv", nil)
		if err != nil || len(e.Questions) != 1 || e.Questions[0].ID != c.id {
			t.Fatalf("%v, questions %v", err, e.Questions)
		}
		if e, err = Read(context.Background(), strings.NewReader(c.in), "f.csv", Answers{c.id: c.answer, "temperature_unit": "degC"}); err != nil || len(e.Questions) > 0 || said(e) != c.want {
			t.Errorf("%s %s: %v, questions %v, got\n%s\nwant\n%s", c.id, c.answer, err, e.Questions, said(e), c.want)
		}
	}
}

// lone is a log of two rows and one column that nothing names.
func lone(first, second string) string {
	return "2026-01-13 00:00;" + first + "\n2026-01-13 01:00;" + second + "\n"
}

// What the only column of numbers may be hangs on its values: below 5 is no humidity in percent, above 113 °F no air, and
// what never changes is nothing to ask about.
func TestWhatALoneColumnMayBe(t *testing.T) {
	for _, c := range []struct{ first, second, want string }{
		{"4.5", "5.0", "air_temperature other"}, {"-12", "3", "air_temperature other"}, {"41.5", "42.0", "air_temperature relative_humidity other"},
		{"0.55", "0.6", "air_temperature relative_humidity other"}, {"905", "920", ""}, {"20.5", "20.5", ""},
	} {
		e := readText(t, lone(c.first, c.second))
		got := ""
		for _, q := range e.Questions {
			got += strings.Join(q.Options, " ")
		}
		if got != c.want || (c.want == "") != (len(e.Remarks) == 1 && e.Remarks[0].Code == RemarkNameless) {
			t.Errorf("%s, %s: %q, want %q; %v", c.first, c.second, got, c.want, e.Remarks)
		}
	}
	for _, named := range []string{"time;flow\n", "time;pressure (hPa)\n", "time;wet bulb\n"} {
		if e := readText(t, named+lone("4.5", "5.0")); len(e.Questions) > 0 {
			t.Errorf("%s: %v", named, e.Questions)
		}
	}
}

// Columns of 0 and 1 whose names say nothing are states where the table holds nothing else, and not beside a temperature, nor
// where one holds a 2.
func TestATableOfZeroAndOneIsARecord(t *testing.T) {
	for _, c := range []struct {
		in   string
		want Quantity
	}{
		{"time,S1,S2\n2026-01-13 10:00,0,1\n2026-01-13 10:05,1,1\n2026-01-13 10:10,0,0\n", State},
		{"2026-01-13 10:00,0\n2026-01-13 10:05,1\n2026-01-13 10:10,0\n", State},
		{"time,value\n2026-01-13 10:00,0\n2026-01-13 10:05,1\n2026-01-13 10:10,0\n", State},
		{"time,S1,S2,S3\n" + strings.Join(onOff(400), ""), State}, // which could be a dew point of −17 °C and its humidity
		{"time,S1,T\n2026-01-13 10:00,0,4.1\n2026-01-13 10:05,1,4.2\n2026-01-13 10:10,0,4.1\n", Other},
		{"time,S1,S2\n2026-01-13 10:00,0,1\n2026-01-13 10:05,1,2\n2026-01-13 10:10,0,0\n", Other},
		{"time,S1,S2\n2026-01-13 10:00,0,0\n2026-01-13 10:05,0,0\n2026-01-13 10:10,0,0\n", Other},
	} {
		x, err := Read(context.Background(), strings.NewReader(c.in), "f.csv", nil)
		if err != nil {
			t.Fatal(err)
		}
		if got := x.Series[0].Quantity; got != c.want {
			t.Errorf("%.60q: %s, want %s", c.in, got, c.want)
		}
	}
}

// onOff are rows of three fans that go on one after another, a minute apart.
func onOff(n int) (rows []string) {
	start := time.Date(2026, 1, 13, 0, 0, 0, 0, time.UTC)
	for i := range n {
		rows = append(rows, fmt.Sprintf("%s,%d,%d,%d\n", start.Add(time.Duration(i)*time.Minute).Format("2006-01-02 15:04"), one(i%10 < 4), one(i%50 > 0), one(i%10 < 6)))
	}
	return rows
}
