package importers

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"
)

// describe prints an export so that a table of tests can be read: the layout on the first line, a series on
// each further one, then questions and remarks.
func describe(e *Export) string {
	var b strings.Builder
	l := e.Layout
	fmt.Fprintf(&b, "%s %q %q line %d rows %d bad %d clock %v %s", l.Encoding, l.Delimiter, l.DecimalMark, l.FirstDataLine, e.Rows, e.BadTime, l.Clock.Columns, l.Clock.Order)
	if !l.Clock.OrderCertain {
		b.WriteString("?")
	}
	if l.Clock.Zone != "" {
		fmt.Fprintf(&b, " %s %s", l.Clock.Zone, l.Clock.ZoneSource)
	}
	for _, s := range e.Series {
		sum := s.Summary()
		fmt.Fprintf(&b, "\n%s|%s|%d %s", s.Logger, s.Column, s.ColumnIndex, s.Quantity)
		if s.Unit != "" {
			fmt.Fprintf(&b, " %s %s", s.Unit, s.UnitSource)
		}
		fmt.Fprintf(&b, " n%d m%d u%d", sum.Readings, s.Missing, s.Unreadable)
		if sum.Readings > 0 {
			fmt.Fprintf(&b, " %s..%s %g..%.6g", face(s, sum.FirstMS, sum.FirstOffsetMS), face(s, sum.LastMS, sum.LastOffsetMS), sum.Min, sum.Max)
		}
	}
	for _, q := range e.Questions {
		fmt.Fprintf(&b, "\nask %s %v", q.ID, q.Options)
	}
	for _, r := range e.Remarks {
		fmt.Fprintf(&b, "\nnote %s %d:%d x%d", r.Code, r.Line, r.Column, r.Count)
	}
	return b.String()
}

func face(s Series, ms, offset int64) string {
	text := time.UnixMilli(ms).UTC().Format("2006-01-02T15:04:05.999")
	if s.Instant {
		text = time.UnixMilli(ms).In(time.FixedZone("", int(offset/1000))).Format("2006-01-02T15:04:05.999Z07:00")
	}
	return text
}

// layouts holds one small file of our own per way of writing. What is wanted follows from the text by hand.
var layouts = []struct{ name, in, want string }{
	{"iso with T", "timestamp,temperature,rh\n2025-10-01T00:00:30,5.25,86.1\n2025-10-01T00:01:30,5.5,86.2\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temperature|2 air_temperature degC values n2 m0 u0 2025-10-01T00:00:30..2025-10-01T00:01:30 5.25..5.5
f|rh|3 relative_humidity percent values n2 m0 u0 2025-10-01T00:00:30..2025-10-01T00:01:30 0.861..0.862`},
	{"semicolon, decimal comma, day first by a 13th", "Zeitpunkt;Temperatur (°C);Relative Feuchte (%)\n13.10.2025 00:00;5,12;88,1\n13.10.2025 00:10;5,20;88,0\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] dmy
f|Temperatur (°C)|2 air_temperature degC header n2 m0 u0 2025-10-13T00:00:00..2025-10-13T00:10:00 5.12..5.2
f|Relative Feuchte (%)|3 relative_humidity percent header n2 m0 u0 2025-10-13T00:00:00..2025-10-13T00:10:00 0.88..0.881`},
	{"preamble, index, month first with AM and PM, °F",
		"Report,Climate record\nSite,Store 1\nFirst sample,10/14/2025 11:59:00 PM\nSamples,3\nUnits,\"Fahrenheit, percent\"\nNo.,Date and time,\"Temp, °F\",\"RH, %\"\n1,10/14/2025 11:59:00 PM,41.00,86.1\n2,10/15/2025 12:00:00 AM,50.00,86.2\n3,10/15/2025 12:01:00 PM,32.00,86.3\n",
		`utf-8 "," "." line 7 rows 3 bad 0 clock [2] mdy
f|Temp, °F|3 air_temperature degF header n3 m0 u0 2025-10-14T23:59:00..2025-10-15T12:01:00 0..10
f|RH, %|4 relative_humidity percent header n3 m0 u0 2025-10-14T23:59:00..2025-10-15T12:01:00 0.861..0.863`},
	{"tab, slashes, year first", "Date\tT [°C]\n2025/12/01 06:00\t3.5\n2025/12/01 07:00\t3.0\n",
		`utf-8 "\t" "." line 2 rows 2 bad 0 clock [1] ymd
f|T [°C]|2 air_temperature degC header n2 m0 u0 2025-12-01T06:00:00..2025-12-01T07:00:00 3..3.5`},
	{"blanks, date and time apart under one name", "# time temp rh\n2025-12-01 06:00:00   3.5  80\n2025-12-01 06:05:00  -0.5  81\n",
		`utf-8 "blanks" "." line 2 rows 2 bad 0 clock [1 2] ymd
f|temp|3 air_temperature degC values n2 m0 u0 2025-12-01T06:00:00..2025-12-01T06:05:00 -0.5..3.5
f|rh|4 relative_humidity percent values n2 m0 u0 2025-12-01T06:00:00..2025-12-01T06:05:00 0.8..0.81`},
	{"date and time in two columns, two-digit year", "Datum;Uhrzeit;Temp °C\n30.11.25;23:50;4,0\n01.12.25;00:00;4,5\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1 2] dmy
f|Temp °C|3 air_temperature degC header n2 m0 u0 2025-11-30T23:50:00..2025-12-01T00:00:00 4..4.5`},
	{"AM and PM in a column of its own", "date,time,half,temp C\n12/31/2025,11:59:00,PM,4.0\n01/01/2026,12:00:00,AM,4.5\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1 2 3] mdy
f|temp C|4 air_temperature degC header n2 m0 u0 2025-12-31T23:59:00..2026-01-01T00:00:00 4..4.5`},
	{"a date printed as midnight beside its time", "Date,Time,T °C\n13/01/2026 00:00:00,10:00,4.5\n13/01/2026 00:00:00,10:10,4.0\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1 2] dmy
f|T °C|3 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T10:10:00 4..4.5`},
	{"daily readings at midnight", "Date,T °C\n2026-01-13 00:00:00,4.5\n2026-01-14 00:00:00,4.0\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|T °C|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-14T00:00:00 4..4.5`},
	{"no header, and numbers that count up", "2026-01-13 10:00,4.5,80\n2026-01-13 10:10,4.0,81\n2026-01-13 10:20,4.0,82\n",
		`utf-8 "," "." line 1 rows 3 bad 0 clock [1] ymd
f||2 air_temperature degC values n3 m0 u0 2026-01-13T10:00:00..2026-01-13T10:20:00 4..4.5
f||3 relative_humidity percent values n3 m0 u0 2026-01-13T10:00:00..2026-01-13T10:20:00 0.8..0.82
ask pairing [in_order apart]`},
	{"short rows, the first of all", "time,t °C,rh %\n2026-01-13 10:00,4.5\n2026-01-13 10:10,4.0,81\n2026-01-13 10:20\n2026-01-13 10:30,5.0,82\n",
		`utf-8 "," "." line 2 rows 4 bad 0 clock [1] ymd
f|t °C|2 air_temperature degC header n3 m1 u0 2026-01-13T10:00:00..2026-01-13T10:30:00 4..5
f|rh %|3 relative_humidity percent header n2 m2 u0 2026-01-13T10:10:00..2026-01-13T10:30:00 0.81..0.82
note short_line 2:0 x2`},
	{"epoch in seconds", "ts,temp_c\n1760000000,4.5\n1760000600,4.25\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] epoch_s +00:00 file
f|temp_c|2 air_temperature degC header n2 m0 u0 2025-10-09T08:53:20Z..2025-10-09T09:03:20Z 4.25..4.5`},
	{"epoch in milliseconds with a fraction of a second", "time,temp_c\n1760000000250,4.5\n1760000600000,4.25\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] epoch_ms +00:00 file
f|temp_c|2 air_temperature degC header n2 m0 u0 2025-10-09T08:53:20.25Z..2025-10-09T09:03:20Z 4.25..4.5`},
	{"offsets in the rows, summer time ending", "time,t °C\n2025-10-26T03:30:00+03:00,4.5\n2025-10-26T03:00:00+02:00,4.25\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|t °C|2 air_temperature degC header n2 m0 u0 2025-10-26T03:30:00+03:00..2025-10-26T03:00:00+02:00 4.25..4.5`},
	{"Z in the rows", "time,t °C\n2025-10-26T03:30:00.5Z,4.5\n2025-10-26T04:00:00Z,4.25\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd +00:00 file
f|t °C|2 air_temperature degC header n2 m0 u0 2025-10-26T03:30:00.5Z..2025-10-26T04:00:00Z 4.25..4.5`},
	{"zone in the header", "Date Time (GMT-05:00),T °C\n2025-10-26 03:30,4.5\n2025-10-26 04:00,4.25\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd -05:00 file
f|T °C|2 air_temperature degC header n2 m0 u0 2025-10-26T03:30:00..2025-10-26T04:00:00 4.25..4.5`},
	{"zone in a key–value line", "Time zone: Europe/Tallinn\ntime,T °C\n2025-10-26 03:30,4.5\n2025-10-26 04:00,4.25\n",
		`utf-8 "," "." line 3 rows 2 bad 0 clock [1] ymd Europe/Tallinn file
f|T °C|2 air_temperature degC header n2 m0 u0 2025-10-26T03:30:00..2025-10-26T04:00:00 4.25..4.5`},
	{"named months", "when;T °C\n05-Jan-2026 03:30;4,5\n05-Feb-2026 04:00;4,25\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] dmy
f|T °C|2 air_temperature degC header n2 m0 u0 2026-01-05T03:30:00..2026-02-05T04:00:00 4.25..4.5`},
	{"named months, month first", "when;T °C\n\"Jan 5, 2026 3:30 PM\";4.5\n\"Feb 5, 2026 4:00 AM\";4.25\n",
		`utf-8 ";" "." line 2 rows 2 bad 0 clock [1] mdy
f|T °C|2 air_temperature degC header n2 m0 u0 2026-01-05T15:30:00..2026-02-05T04:00:00 4.25..4.5`},
	{"dotted time, 24:00", "Datum;T °C\n13.01.2026 23.00;4,5\n13.01.2026 24.00;4,25\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] dmy
f|T °C|2 air_temperature degC header n2 m0 u0 2026-01-13T23:00:00..2026-01-14T00:00:00 4.25..4.5`},
	{"compact", "Datum;T °C\n20260113 2300;4,5\n20260113 2330;4,25\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] ymd
f|T °C|2 air_temperature degC header n2 m0 u0 2026-01-13T23:00:00..2026-01-13T23:30:00 4.25..4.5`},
	{"hour beside the date", "date,hour,T °C\n2026-01-13,23,4.5\n2026-01-13,24,4.25\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1 2] ymd
f|T °C|3 air_temperature degC header n2 m0 u0 2026-01-13T23:00:00..2026-01-14T00:00:00 4.25..4.5`},
	{"day of the year", "date;T °C\n2026-032 10:00;4.5\n2026-032 11:00;4.25\n",
		`utf-8 ";" "." line 2 rows 2 bad 0 clock [1] doy
f|T °C|2 air_temperature degC header n2 m0 u0 2026-02-01T10:00:00..2026-02-01T11:00:00 4.25..4.5`},
	{"spreadsheet serial", "date,T °C\n45931.25,4.5\n45931.5,4.25\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] serial
f|T °C|2 air_temperature degC header n2 m0 u0 2025-10-01T06:00:00..2025-10-01T12:00:00 4.25..4.5`},
	{"date alone", "date,T °C\n2026-01-13,4.5\n2026-01-14,4.25\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|T °C|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-14T00:00:00 4.25..4.5`},
	{"units row", "time;Temp;RH;Light\n;°C;%;lux\n2026-01-13 10:00;4,5;80;3\n2026-01-13 11:00;4,25;81;4\n",
		`utf-8 ";" "," line 3 rows 2 bad 0 clock [1] ymd
f|Temp|2 air_temperature degC units_row n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.25..4.5
f|RH|3 relative_humidity percent units_row n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81
f|Light|4 light lux units_row n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 3..4`},
	{"kelvin, and humidity as a fraction", "time,temp,rh\n2026-01-13 10:00,273.15,0.80\n2026-01-13 11:00,283.15,0.81\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp|2 air_temperature K values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0..10
f|rh|3 relative_humidity fraction values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81`},
	{"°F or °C", "time,temp\n2026-01-13 10:00,38.5\n2026-01-13 11:00,39.0\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp|2 air_temperature n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 38.5..39
ask temperature_unit [degC degF]`},
	{"missing words", "time,temp C,rh %\n2026-01-13 10:00,NA,NaN\n2026-01-13 11:00,,null\n2026-01-13 12:00,---,n/a\n2026-01-13 13:00,4.5, 80 \n",
		`utf-8 "," "." line 2 rows 4 bad 0 clock [1] ymd
f|temp C|2 air_temperature degC header n1 m3 u0 2026-01-13T13:00:00..2026-01-13T13:00:00 4.5..4.5
f|rh %|3 relative_humidity percent header n1 m3 u0 2026-01-13T13:00:00..2026-01-13T13:00:00 0.8..0.8`},
	{"quotes, with the delimiter and doubled quotes inside", "\"time\",\"temp, °C\",\"the \"\"north\"\" note\"\n\"2026-01-13 10:00\",\"4.5\",\"dry, cold\"\n\"2026-01-13 11:00\",\"5.5\",\"a \"\"b\"\", c\"\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp, °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.5..5.5`},
	{"a line end in quotes", "time,\"temp\n°C\",note\n2026-01-13 10:00,4.5,\"two\nlines\"\n2026-01-13 11:00,5.5,x\n",
		`utf-8 "," "." line 3 rows 2 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.5..5.5`},
	{"decimal comma in quotes between commas", "time,\"temp °C\"\n\"2026-01-13 10:00\",\"4,5\"\n\"2026-01-13 11:00\",\"5,25\"\n",
		`utf-8 "," "," line 2 rows 2 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.5..5.25`},
	{"byte order mark, carriage returns", "\ufefftime,temp °C\r\n2026-01-13 10:00,4.5\r\n2026-01-13 11:00,5.5\r\n",
		`utf-8-bom "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.5..5.5`},
	{"carriage returns alone", "time,temp °C\r2026-01-13 10:00,4.5\r2026-01-13 11:00,5.5\r",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.5..5.5`},
	{"Windows-1252", "time;L\xe4mp\xf6tila \xb0C\n2026-01-13 10:00;4,5\n2026-01-13 11:00;5,5\n",
		`windows-1252 ";" "," line 2 rows 2 bad 0 clock [1] ymd
f|Lämpötila °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.5..5.5`},
	{"a unit glued to the numbers", "time;inside\n2026-01-13 10:00;4,5 °C\n2026-01-13 11:00;\u22125,5 °C\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] ymd
f|inside|2 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 -5.5..4.5`},
	{"states by words", "time,Fan 1,Door\n2026-01-13 10:00,on,closed\n2026-01-13 11:00,off,open\n2026-01-13 12:00,,jammed\n",
		`utf-8 "," "" line 2 rows 3 bad 0 clock [1] ymd
f|Fan 1|2 state n2 m1 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0..1`},
	{"states by numbers", "time,Stage 2,temp °C\n2026-01-13 10:00,1,4.5\n2026-01-13 11:00,0,4.0\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|Stage 2|2 state n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0..1
f|temp °C|3 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5`},
	{"pairs that share a name", "time,Shed A Temp (°C),Shed B Temp (°C),Shed A RH (%),Shed B RH (%)\n2026-01-13 10:00,4.5,5,80,70\n2026-01-13 11:00,4.0,6,81,71\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
Shed A|Shed A Temp (°C)|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
Shed A|Shed A RH (%)|4 relative_humidity percent header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81
Shed B|Shed B Temp (°C)|3 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 5..6
Shed B|Shed B RH (%)|5 relative_humidity percent header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.7..0.71`},
	{"loggers named row by row", "device,time,temp °C\nalder,2026-01-13 10:00,4.5\nrowan,2026-01-13 10:00,5.5\nalder,2026-01-13 11:00,4.0\nrowan,2026-01-13 11:00,5.0\n",
		`utf-8 "," "." line 2 rows 4 bad 0 clock [2] ymd
alder|temp °C|3 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
rowan|temp °C|3 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 5..5.5`},
	{"all of it listed but index and flag", "row,time,temp °C,flag,battery,CO2 ppm,dew point\n1,2026-01-13 10:00,4.5,0,3.1,800,1.5\n2,2026-01-13 11:00,4.0,0,3.0,900,1.0\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [2] ymd
f|temp °C|3 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
f|battery|5 other n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 3..3.1
f|CO2 ppm|6 co2 ppm header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 800..900
f|dew point|7 dew_point degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 1..1.5`},
	{"day or month, undecided", "time;temp °C\n03/04/2026 10:00;4,5\n03/04/2026 11:00;4,0\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] dmy?
f|temp °C|2 air_temperature degC header n2 m0 u0 2026-04-03T10:00:00..2026-04-03T11:00:00 4..4.5
ask day_month [dmy mdy]`},
	{"day first by a steady midnight", "time;temp °C\n03/04/2026 23:00;4,5\n04/04/2026 00:00;4,0\n04/04/2026 01:00;4,0\n",
		`utf-8 ";" "," line 2 rows 3 bad 0 clock [1] dmy
f|temp °C|2 air_temperature degC header n3 m0 u0 2026-04-03T23:00:00..2026-04-04T01:00:00 4..4.5`},
	{"month first by a steady midnight", "time;temp °C\n04/03/2026 23:00;4,5\n04/04/2026 00:00;4,0\n04/04/2026 01:00;4,0\n",
		`utf-8 ";" "," line 2 rows 3 bad 0 clock [1] mdy
f|temp °C|2 air_temperature degC header n3 m0 u0 2026-04-03T23:00:00..2026-04-04T01:00:00 4..4.5`},
	{"two-digit year first by steady days", "time;temp °C\n25-10-09 12:00;4,5\n25-10-10 00:00;4,0\n25-10-10 12:00;4,0\n",
		`utf-8 ";" "," line 2 rows 3 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n3 m0 u0 2025-10-09T12:00:00..2025-10-10T12:00:00 4..4.5`},
	{"rows that can't be read cost themselves", "time,temp °C\n2026-01-13 10:00,4.5\n2026-13-13 11:00,5.0\n2026-01-13 12:00,warm\n2026-01-13 13:00,6.0\n",
		`utf-8 "," "." line 2 rows 4 bad 1 clock [1] ymd
f|temp °C|2 air_temperature degC header n2 m0 u1 2026-01-13T10:00:00..2026-01-13T13:00:00 4.5..6
note bad_time 3:1 x1
note unreadable_cell 4:2 x1`},
	{"a first row without a time", "time,temp °C\nlost,4.5\n2026-01-13 11:00,5.0\n2026-01-13 13:00,6.0\n",
		`utf-8 "," "." line 2 rows 3 bad 1 clock [1] ymd
f|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T11:00:00..2026-01-13T13:00:00 5..6
note bad_time 2:1 x1`},
	{"blank lines, the header again, a foot", "time,temp °C\n2026-01-13 10:00,4.5\n\n,\ntime,temp °C\n2026-01-13 11:00,5.0\nMin,4.5\nEnd of file\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.5..5
note foot 7:0 x2`},
	{"a last line that breaks off", "time,temp °C,rh %\n2026-01-13 10:00,4.5,80\n2026-01-13 11:00,5.0,81\n2026-01-13 12:00,6.",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n2 m0 u1 2026-01-13T10:00:00..2026-01-13T11:00:00 4.5..5
f|rh %|3 relative_humidity percent header n2 m1 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81
note cut_line 4:2 x1
note unreadable_cell 4:2 x1`},
	{"a clock that was set back", "time,temp °C\n2026-01-13 10:00,4.5\n2026-01-13 09:00,5.0\n2026-01-13 09:00,5.5\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n3 m0 u0 2026-01-13T09:00:00..2026-01-13T10:00:00 4.5..5.5
note out_of_order 3:1 x1`},
	{"humidity in fractions under a percent sign", "time,RH %\n2026-01-13 10:00,0.81\n2026-01-13 11:00,0.82\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|RH %|2 relative_humidity fraction values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.81..0.82
note unit_by_values 2:2 x1`},
	{"the first fraction long after the head's whole numbers", "time;temp °C\n" + strings.Repeat("2026-01-13 10:00;4\n", 40000) + "2026-01-13 11:00;5,5\n",
		`utf-8 ";" "," line 2 rows 40001 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n40001 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..5.5`},
}

func TestLayouts(t *testing.T) {
	for _, c := range layouts {
		t.Run(c.name, func(t *testing.T) {
			e, err := Read(context.Background(), strings.NewReader(c.in), "folder/f.csv", nil)
			if err != nil {
				t.Fatal(err)
			}
			if got := describe(e); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}
