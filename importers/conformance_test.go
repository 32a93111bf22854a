package importers

import (
	"context"
	"fmt"
	"strings"
	"testing"
)

// conforming are small files, one per way of arranging a log: the lines down to the header, the rows, and the
// series that a person reads in them: logger, quantity, readings, missing, unreadable, span, extremes in house
// units. Each must say the same however a file of its kind may come.
var conforming = []struct {
	name, delimiter, head, rows, want string
}{
	{"a logger, its times in one cell", ",", "time,temp °C,rh %", "2026-01-13 10:00,4.5,80|2026-01-13 10:10,4.0,81|2026-01-13 10:20,,82|2026-01-13 10:30,-0.5,83",
		"f air_temperature 3 1 0 10:00..10:30 -0.5..4.5|f relative_humidity 4 0 0 10:00..10:30 0.8..0.83"},
	{"decimal commas, date and time apart", ";", "Datum;Uhrzeit;Temp (°C);Feuchte (%)", "13.01.2026;10:00;4,5;80|13.01.2026;10:10;4,0;81|13.01.2026;10:20;3,5;82",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"rows counted, a header of names and one of units", "\t", "no\ttime\ttemp\trh|\t\t°F\t%", "1\t2026-01-13 10:00\t41\t80|2\t2026-01-13 10:10\t50\t81|3\t2026-01-13 10:20\t32\t82",
		"f air_temperature 3 0 0 10:00..10:20 0..10|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"pairs side by side", ",", "time,RH north,Temp north,battery,RH south,Temp south", "2026-01-13 10:00,80,4.5,3.1,70,5.5|2026-01-13 10:10,81,4,3.1,71,6|2026-01-13 10:20,82,4,3.1,71,6",
		"north relative_humidity 3 0 0 10:00..10:20 0.8..0.82|north air_temperature 3 0 0 10:00..10:20 4..4.5|f other 3 0 0 10:00..10:20 3.1..3.1|south relative_humidity 3 0 0 10:00..10:20 0.7..0.71|south air_temperature 3 0 0 10:00..10:20 5.5..6"},
	{"loggers by turns", ";", "logger;time;temp °C", "alder;2026-01-13 10:00;4,5|rowan;2026-01-13 10:00;5,5|alder;2026-01-13 10:10;4,0|rowan;2026-01-13 10:10;5,0",
		"alder air_temperature 2 0 0 10:00..10:10 4..4.5|rowan air_temperature 2 0 0 10:00..10:10 5..5.5"},
	{"a value a row", ",", "time,device,variable,value,unit",
		"2026-01-13 10:00,alder,temperature,4.5,°C|2026-01-13 10:00,alder,humidity,80,%|2026-01-13 10:10,alder,temperature,4,°C|2026-01-13 10:10,alder,humidity,n/a,%|2026-01-13 10:20,alder,temperature,3,°C",
		"alder air_temperature 3 0 0 10:00..10:20 3..4.5|alder relative_humidity 1 1 0 10:00..10:00 0.8..0.8"},
	{"grades behind values", ";", "time;temp °C;;rh %;", "2026-01-13 10:00;4,5;1;80;1|2026-01-13 10:10;4,0;2;81;1|2026-01-13 10:20;4,0;1;82;1",
		"f air_temperature 3 0 0 10:00..10:20 4..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"a list of events", ",", "time,fan 1,door", "2026-01-13 10:00,on,open|2026-01-13 10:10,off,closed|2026-01-13 10:20,on,closed",
		"f state 3 0 0 10:00..10:20 0..1|f state 3 0 0 10:00..10:20 0..1"},
	{"blanks", "blanks", "date time temp rh", "2026-01-13 10:00 4.5 80|2026-01-13 10:10 4.0 81|2026-01-13 10:20 3.5 82",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"a degree sign, a word for nothing, a word that is none", ",", "time,inside (°C),light (lux)", "2026-01-13 10:00,4.5 °C,0|2026-01-13 10:10,NaN,1500|2026-01-13 10:20,warm,3",
		"f air_temperature 1 1 1 10:00..10:00 4.5..4.5|f light 3 0 0 10:00..10:20 0..1500"},
	{"runs from and to", ";", "begin;end", "2026-01-13 10:00;2026-01-13 10:05|2026-01-13 10:10;2026-01-13 10:15|2026-01-13 10:20;2026-01-13 10:30",
		"f state 6 0 0 10:00..10:30 0..1"},
	{"runs of several fans, from and to on one date, how long each took", ";", "date;start;end;minutes;device",
		"13.01.2026;10:00;10:05;5;fan 1|13.01.2026;10:10;10:20;10;fan 2|13.01.2026;10:20;10:30;10;fan 1",
		"fan 1 state 4 0 0 10:00..10:30 0..1|fan 1 other 2 0 0 10:00..10:20 5..10|fan 2 state 2 0 0 10:10..10:20 0..1|fan 2 other 1 0 0 10:10..10:10 10..10"},
	{"events in words", ",", "time,message", "2026-01-13 10:00,Fan 1 started|2026-01-13 10:10,Door was opened|2026-01-13 10:20,Fan 1 stopped",
		"Fan 1 state 2 0 0 10:00..10:20 0..1|Door state 1 0 0 10:10..10:10 1..1"},
	{"an alarm's calls", ";", "Zeit;Meldung", "13.01.2026 10:00;Temperatur hoch|13.01.2026 10:10;Stromausfall|13.01.2026 10:20;quittiert",
		"f other 3 0 0 10:00..10:20 1..1"},
	{"average, lowest and highest", ",", "time,temp avg °C,temp min °C,temp max °C", "2026-01-13 10:00,4.5,4.1,4.9|2026-01-13 10:10,4.0,3.8,4.4|2026-01-13 10:20,3.5,3.5,3.9",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f other 3 0 0 10:00..10:20 3.5..4.1|f other 3 0 0 10:00..10:20 3.9..4.9"},
	{"names, units, and what was made of the readings", "\t", "time\ttemp\ttemp_high\trh|\tdeg C\tdeg C\t%|\tAvg\tMax\tSmp", "2026-01-13 10:00\t4.5\t4.9\t80|2026-01-13 10:10\t4.0\t4.4\t81|2026-01-13 10:20\t3.5\t3.9\t82",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f other 3 0 0 10:00..10:20 3.9..4.9|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"grades named after what they grade", ",", "stn,time,T,QT,U (%),QU", "12,2026-01-13 10:00,4.5,1,80,1|12,2026-01-13 10:10,4.0,9,81,1|12,2026-01-13 10:20,3.5,1,82,1",
		"12 air_temperature 3 0 0 10:00..10:20 3.5..4.5|12 relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"bars between cells", "|", "id|time|temp °C|rh %", "1|2026-01-13 10:00|4.5|80\n2|2026-01-13 10:10|4.0|81\n3|2026-01-13 10:20|3.5|82",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"a day a row, an hour a column", ";", "temp °C;00:00;00:10;00:20;00:30", "13.01.2026;4,5;4,0;;3,5|14.01.2026;4,4;4,1;4,2;3,9|15.01.2026;4,4;4,1;4,2;3,9|16.01.2026;4,4;4,1;4,2;3,9",
		"f air_temperature 15 1 0 00:00..00:30 3.5..4.5"},
	{"tables side by side", ";", "time;temp °C;rh %;time;temp °C;rh %", "2026-01-13 10:00;4,5;80;2026-01-13 10:05;5,5;70|2026-01-13 10:10;4,0;81;2026-01-13 10:15;5,0;71|2026-01-13 10:20;3,5;82;2026-01-13 10:25;4,5;72",
		"f 1 air_temperature 3 0 0 10:00..10:20 3.5..4.5|f 1 relative_humidity 3 0 0 10:00..10:20 0.8..0.82|f 2 air_temperature 3 0 0 10:05..10:25 4.5..5.5|f 2 relative_humidity 3 0 0 10:05..10:25 0.7..0.72"},
	{"half days in a column of their own", ",", "date,time,half,temp °C,rh %", "2026-01-13,10:00,AM,4.5,80|2026-01-13,10:10,AM,4.0,81|2026-01-13,10:20,AM,3.5,82",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"the parts of a time in columns", ",", "year,month,day,hour,minute,temp °C,rh %", "2026,1,13,10,0,4.5,80|2026,1,13,10,10,4.0,81|2026,1,13,10,20,3.5,82",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"the day of the year, hours and minutes in one number", ",", "year,doy,hhmm,temp °C,rh %", "2026,13,1000,4.5,80|2026,13,1010,4.0,81|2026,13,1020,3.5,82",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"an hour beside the date", ";", "Datum;Stunde;temp °C", "13.01.2026;10;4,5|13.01.2026;11;4,0|13.01.2026;12;3,5",
		"f air_temperature 3 0 0 10:00..12:00 3.5..4.5"},
	{"date and time in digits", ",", "time,temp °C,rh %", "20260113:1000,4.5,80|20260113:1010,4.0,81|20260113:1020,3.5,82",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"dots in times", ";", "Datum;Uhrzeit;temp °C;rh %", "13.01.2026;10.00.00;4,5;80|13.01.2026;10.10.00;4,0;81|13.01.2026;10.20.00;3,5;82",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"months by name", ",", "time,temp °C,rh %", "13-Jan-2026 10:00,4.5,80|13-Jan-2026 10:10,4.0,81|13-Jan-2026 10:20,3.5,82",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"seconds since 1970", ",", "ts,temp °C,rh %", "1768298400,4.5,80|1768299000,4.0,81|1768299600,3.5,82",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"days of a spreadsheet", ";", "Date;temp °C;rh %", "46035,41667;4,5;80|46035,42361;4,0;81|46035,43056;3,5;82",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"times of day under their day", ",", "Climate on 13 January 2026|time,temp °C,rh %", "10:00,4.5,80|10:10,4.0,81|10:20,3.5,82",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"a zone in the header", ",", "time (UTC+02:00),temp °C,rh %", "2026-01-13 10:00,4.5,80|2026-01-13 10:10,4.0,81|2026-01-13 10:20,3.5,82",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"points and commas before fractions", ";", "time;temp °C;rh %", "2026-01-13 10:00;4,5;80|2026-01-13 10:10;4.0;81|2026-01-13 10:20;3,5;82",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"loggers one after the other", ",", "logger,time,temp °C", "alder,2026-01-13 10:00,4.5|alder,2026-01-13 10:10,4|rowan,2026-01-13 10:00,5.5|rowan,2026-01-13 10:10,5",
		"alder air_temperature 2 0 0 10:00..10:10 4..4.5|rowan air_temperature 2 0 0 10:00..10:10 5..5.5"},
	{"words and numbers for nothing", ",", "time,temp °C,rh %", "2026-01-13 10:00,4.5,80|2026-01-13 10:10,-999.9,M1|2026-01-13 10:20,3.5,82|2026-01-13 10:30,ERR,---",
		"f air_temperature 2 2 0 10:00..10:20 3.5..4.5|f relative_humidity 2 2 0 10:00..10:20 0.8..0.82"},
	{"a sensor of the same kind more, in other words", ",", "time,temp °C,rh %,probe temp °C,battery V", "2026-01-13 10:00,4.5,80,3,3.1|2026-01-13 10:10,4.0,81,3,3.1|2026-01-13 10:20,3.5,82,3,3.1",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82|f air_temperature 3 0 0 10:00..10:20 3..3|f other 3 0 0 10:00..10:20 3.1..3.1"},
	{"places over pairs", ";", ";North;;South;|time;temp °C;rh %;temp °C;rh %", "2026-01-13 10:00;4,5;80;5,5;70|2026-01-13 10:10;4,0;81;5,0;71",
		"North air_temperature 2 0 0 10:00..10:10 4..4.5|North relative_humidity 2 0 0 10:00..10:10 0.8..0.81|South air_temperature 2 0 0 10:00..10:10 5..5.5|South relative_humidity 2 0 0 10:00..10:10 0.7..0.71"},
	{"numbers in every dress", ";", "time;co2 ppm;light lux;temp (0,1 °C)", "2026-01-13 10:00;1.200,5;1,5E+3;45|2026-01-13 10:10; 900 ;<1490,0;-0|2026-01-13 10:20;1 050,0;-9999;\u22125",
		"f co2 3 0 0 10:00..10:20 900..1200.5|f light 2 1 0 10:00..10:10 1490..1500|f air_temperature 3 0 0 10:00..10:20 -0.5..4.5"},
}

// linesOf are the lines of a log as it stands in conforming: parted by bars, or, where cells are, by line ends.
func linesOf(text, delimiter string) []string {
	if delimiter == "|" {
		return strings.Split(text, "\n")
	}
	return strings.Split(text, "|")
}

// ways are how one and the same log may come: changes to its lines that change nothing it says. head and rows are
// the lines; a way that makes no sense with a delimiter leaves them as they are.
var ways = []struct {
	name string
	text func(delimiter string, head, rows []string) string
}{
	{"as it is", func(_ string, head, rows []string) string { return lined(head, rows) }},
	{"byte order mark", func(_ string, head, rows []string) string { return "\ufeff" + lined(head, rows) }},
	{"carriage returns", func(_ string, head, rows []string) string {
		return strings.ReplaceAll(lined(head, rows), "\n", "\r\n")
	}},
	{"carriage returns alone", func(_ string, head, rows []string) string { return strings.ReplaceAll(lined(head, rows), "\n", "\r") }},
	{"no end to the last line", func(_ string, head, rows []string) string { return strings.TrimSuffix(lined(head, rows), "\n") }},
	{"blanks at the ends of lines", func(_ string, head, rows []string) string {
		return strings.ReplaceAll(lined(head, rows), "\n", "  \n")
	}},
	{"blanks around cells", func(d string, head, rows []string) string {
		if d == "blanks" || d == "\t" {
			return lined(head, rows)
		}
		return strings.ReplaceAll(lined(head, rows), d, " "+d+" ")
	}},
	{"empty lines between", func(_ string, head, rows []string) string { return strings.ReplaceAll(lined(head, rows), "\n", "\n\n") }},
	{"empty cells at the ends of lines", func(d string, head, rows []string) string {
		if d == "blanks" {
			return lined(head, rows)
		}
		return strings.ReplaceAll(lined(head, rows), "\n", d+d+"\n")
	}},
	{"a thousand empty rows below", func(d string, head, rows []string) string {
		if d == "blanks" {
			d = " "
		}
		return lined(head, rows) + strings.Repeat(strings.Repeat(d, 4)+"\n", 1000)
	}},
	{"the header again in the middle", func(_ string, head, rows []string) string {
		half := len(rows) / 2
		return lined(head, rows[:half], head[:1], rows[half:])
	}},
	{"a last line cut in its first cell", func(_ string, head, rows []string) string {
		last := rows[len(rows)-1]
		return lined(head, rows) + last[:4]
	}},
	{"every cell in quotes", func(d string, head, rows []string) string {
		if d == "blanks" {
			return lined(head, rows)
		}
		return quotedCells(d, head) + quotedCells(d, rows)
	}},
	{"lines about the log above", func(_ string, head, rows []string) string {
		return "Climate record\n\nOperator: nobody\nInterval: 10 min\n" + lined(head, rows)
	}},
	{"statistics below", func(d string, head, rows []string) string {
		if d == "blanks" {
			d = " "
		}
		return lined(head, rows) + "\nMinimum" + d + "3\nMaximum" + d + "5\nAverage" + d + "4\nEnd of record\n"
	}},
}

// lined puts lines together, each with its end.
func lined(parts ...[]string) string {
	var b strings.Builder
	for _, lines := range parts {
		for _, line := range lines {
			b.WriteString(line + "\n")
		}
	}
	return b.String()
}

// quotedCells puts every cell in quotes.
func quotedCells(delimiter string, lines []string) string {
	var b strings.Builder
	for _, line := range lines {
		cells := strings.Split(line, delimiter)
		fmt.Fprintf(&b, "\"%s\"\n", strings.Join(cells, `"`+delimiter+`"`))
	}
	return b.String()
}

// Every log says the same in every way it may come, by the quick path and by the plain one.
func TestConformance(t *testing.T) {
	for _, c := range conforming {
		for _, w := range ways {
			text := w.text(c.delimiter, linesOf(c.head, c.delimiter), linesOf(c.rows, c.delimiter))
			for _, quick := range []bool{true, false} {
				e, err := read(context.Background(), strings.NewReader(text), "f.csv", nil, quick)
				if err != nil {
					t.Errorf("%s, %s: %v", c.name, w.name, err)
					continue
				}
				if got := said(e); got != c.want {
					t.Errorf("%s, %s: got\n%s\nwant\n%s\n%s", c.name, w.name, got, c.want, text)
				}
			}
		}
	}
}

// said is what an export's series say.
func said(e *Export) string {
	var out []string
	for _, s := range e.Series {
		sum := s.Summary()
		span := face(s, sum.FirstMS, 0)[len("2026-01-13T"):][:5] + ".." + face(s, sum.LastMS, 0)[len("2026-01-13T"):][:5]
		out = append(out, fmt.Sprintf("%s %s %d %d %d %s %.6g..%.6g", s.Logger, s.Quantity, sum.Readings, s.Missing, s.Unreadable, span, sum.Min, sum.Max))
	}
	return strings.Join(out, "|")
}
