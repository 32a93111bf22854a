package importers

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/japanese"
	"golang.org/x/text/encoding/korean"
	"golang.org/x/text/encoding/simplifiedchinese"
	"golang.org/x/text/encoding/traditionalchinese"
)

// quirks are files with one oddity each, and what a person reads in them: their series as said has them, what must be
// asked, and remarks.
var quirks = []struct {
	name, file, want string
}{
	{"a sensor just switched on, not yet read", "time,temp °C,rh %\n2026-01-13 10:00,85.0,80\n2026-01-13 10:10,4.5,81\n2026-01-13 10:20,4.4,80\n2026-01-13 10:30,85,81\n2026-01-13 10:40,4.4,82\n",
		"f air_temperature 3 2 0 10:10..10:40 4.4..4.5|f relative_humidity 5 0 0 10:00..10:40 0.8..0.82|note sentinel"},
	{"a room that is hot", "time,temp °C\n2026-01-13 10:00,80.5\n2026-01-13 10:10,85.0\n2026-01-13 10:20,86.5\n", "f air_temperature 3 0 0 10:00..10:20 80.5..86.5"},
	{"a humidity that could not be read, and the same number beside it", "time,temp °C,rh %\n2026-01-13 10:00,4.5,80\n2026-01-13 10:10,-1,-1\n2026-01-13 10:20,-1,81\n2026-01-13 10:30,0.0,0.0\n",
		"f air_temperature 2 2 0 10:00..10:20 -1..4.5|f relative_humidity 2 2 0 10:00..10:20 0.8..0.81|note sentinel|note sentinel"},
	{"air without carbon dioxide", "time,co2 ppm\n2026-01-13 10:00,0\n2026-01-13 10:10,900\n2026-01-13 10:20,910\n", "f co2 2 1 0 10:10..10:20 900..910|note sentinel"},
	{"an object in a cell, its names in any order", "id,time,payload\n1,2026-01-13 10:00,\"{\"\"temp\"\": 4.5, \"\"hum\"\": 80}\"\n2,2026-01-13 10:10,\"{\"\"hum\"\": 81, \"\"temp\"\": 4.0}\"\n3,2026-01-13 10:20,\"{\"\"temp\"\": 3.5}\"\n",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 2 1 0 10:00..10:10 0.8..0.81"},
	{"objects a line, a name left out", "{\"time\":\"2026-01-13 10:00\",\"temp\":4.5,\"hum\":80}\n{\"time\":\"2026-01-13 10:10\",\"hum\":81}\n{\"time\":\"2026-01-13 10:20\",\"temp\":3.5,\"hum\":82}\n",
		"f air_temperature 2 1 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"names before the values of a log", "2026-01-13 10:00:00 INFO shed temp=4.5C hum=80%\n2026-01-13 10:10:00 INFO shed temp=4.0C hum=81%\n2026-01-13 10:20:00 INFO shed hum=82% temp=3.5C\n",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"names and colons, the time in brackets", "[2026-01-13 10:00:00] T:4.5 H:80 CO2:900\n[2026-01-13 10:10:00] T:4.0 H:81 CO2:910\n[2026-01-13 10:20:00] T:3.5 H:82 CO2:920\n",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82|f co2 3 0 0 10:00..10:20 900..920"},
	{"names and colons with blanks behind them, the time in brackets", "[2026-01-13 10:00:00] Temp: 4.5C  Humidity: 80%\n[2026-01-13 10:10:00] Temp: 4.0C  Humidity: 81%\n[2026-01-13 10:20:00] Temp: -3.5C  Humidity: 82%\n",
		"f air_temperature 3 0 0 10:00..10:20 -3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"the time in quotes behind its name", "time=\"2026-01-13 10:00\" temp=4.5 rh=80\ntime=\"2026-01-13 10:10\" temp=4.0 rh=81\ntime=\"2026-01-13 10:20\" temp=3.5 rh=82\n",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"a log of a system, without a year", "Jan  9 10:00:00 pi log[4]: temp=4.5 hum=80\nJan  9 10:10:00 pi log[5]: temp=4.0 hum=81\nJan  9 10:20:00 pi log[6]: temp=3.5 hum=82\n",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82|ask year"},
	{"an hour behind a day is no year", "time,temp °C\nJan 13 10:00:00,4.5\nJan 13 10:10:00,4.0\nJan 13 10:20:00,3.5\n", "f air_temperature 3 0 0 10:00..10:20 3.5..4.5|ask year"},
	{"the date of a log of words, its year behind the time", "Jan 13 10:00:00 2026 temp=4.5 hum=80\nJan 13 10:10:00 2026 temp=4.0 hum=81\nJan 13 10:20:00 2026 temp=3.5 hum=82\n",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"in and out in one word with their signs", "time,Tin,Tout,RHin,RHout\n2026-01-13 10:00,4.5,-6.0,80,90\n2026-01-13 10:10,4.0,-6.5,81,91\n",
		"in air_temperature 2 0 0 10:00..10:10 4..4.5|in relative_humidity 2 0 0 10:00..10:10 0.8..0.81|out air_temperature 2 0 0 10:00..10:10 -6.5..-6|out relative_humidity 2 0 0 10:00..10:10 0.9..0.91"},
	{"hours and minutes with their signs beside the date", "日付,時刻,温度,湿度\n2026/01/13,10時00分,4.5,80\n2026/01/13,10時10分,4.0,81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"date and time with their signs, nothing between", "日時,温度,湿度\n2026年1月13日10時00分00秒,4.5,80\n2026年1月13日10時10分00秒,4.0,81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"days from a year 0", "datenum,temp °C\n739995.416667,4.5\n739995.423611,4.0\n739995.430556,3.5\n", "f air_temperature 3 0 0 10:00..10:20 3.5..4.5"},
	{"a dew point proves °F", "time,temp,rh,dew point\n20260113T1000,19.4,80,14.5\n20260113T1010,20.3,79,15.1\n20260113T1020,21.2,81,16.5\n", "f air_temperature 3 0 0 10:00..10:20 -7..-6|f relative_humidity 3 0 0 10:00..10:20 0.79..0.81|f dew_point 3 0 0 10:00..10:20 -9.72222..-8.61111"},
	{"a dew point proves what is called u, in kelvin", "time;t;td;u\n20260113T1000;277.65;274.45;80\n20260113T1010;278.15;274.75;79\n20260113T1020;277.15;274.15;81\n",
		"f air_temperature 3 0 0 10:00..10:20 4..5|f dew_point 3 0 0 10:00..10:20 1..1.6|f relative_humidity 3 0 0 10:00..10:20 0.79..0.81"},
	{"miles where °C or °F is not said", "time,temp,wind mph\n2026-01-13 10:00,14.5,3\n2026-01-13 10:10,14.0,4\n", "f air_temperature 2 0 0 10:00..10:10 14..14.5|f other 2 0 0 10:00..10:10 3..4|ask temperature_unit"},
	{"a place over the only column", "time,Shed 4\n2026-01-13 10:00,4.5\n2026-01-13 10:10,4.0\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|ask quantity"},
	{"a place over each column", "time,North,South\n2026-01-13 10:00,4.5,5.5\n2026-01-13 10:10,4.0,5.0\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f air_temperature 2 0 0 10:00..10:10 5..5.5|ask quantity"},
	{"units for names", "time,°C,%\n2026-01-13 10:00,4.5,80\n2026-01-13 10:10,4.0,81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"the letter of a unit for a name", "time,F,RH\n2026-01-13 10:00,41,80\n2026-01-13 10:10,50,81\n", "f air_temperature 2 0 0 10:00..10:10 5..10|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"letters for names, beside a humidity", "time,C,D,RH\n2026-01-13 10:00,41,4,80\n2026-01-13 10:10,50,5,81\n", "f other 2 0 0 10:00..10:10 41..50|f other 2 0 0 10:00..10:10 4..5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"names that say nothing, beside one that says what it is", "stn;time;aaa;bbb;pressure hPa\nA;202601131000;4.5;80;960.1\nA;202601131010;4.0;81;960.2\nA;202601131020;3.5;82;960.2\n",
		"A air_temperature 3 0 0 10:00..10:20 3.5..4.5|A relative_humidity 3 0 0 10:00..10:20 0.8..0.82|A other 3 0 0 10:00..10:20 960.1..960.2|ask pairing"},
	{"the signs of a weather service", "stn;time;tre200s0;tde200s0;ure200s0\nA;202601131000;4.5;1.4;80\nA;202601131010;4.0;1.0;81\n",
		"A air_temperature 2 0 0 10:00..10:10 4..4.5|A dew_point 2 0 0 10:00..10:10 1..1.4|A relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"initials for the parts of a date", "Year,m,d,Time,Time zone,Air temperature (degC),Relative humidity (%)\n2026,1,13,10:00,UTC,4.5,80\n2026,1,13,10:10,UTC,4.0,81\n",
		"f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"initials for all parts of a time", "y,m,d,h,m,s,T,RH\n2026,1,13,10,0,0,4.5,80\n2026,1,13,10,10,0,4.0,81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"comments between two tables, the time far from where lines begin", "#kind,string,time,double,string\n,n,time,value,field\n,0,2026-01-13 10:00,4.5,temperature\n,0,2026-01-13 10:10,4.0,temperature\n\n#kind,string,time,double,string\n,n,time,value,field\n,1,2026-01-13 10:00,80,humidity\n,1,2026-01-13 10:10,81,humidity\n",
		"f other 2 0 0 10:00..10:10 0..0|f air_temperature 2 0 0 10:00..10:10 4..4.5|f other 2 0 0 10:00..10:10 1..1|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"objects in objects, each with a value", "{\"ts\":\"2026-01-13T10:00:00\",\"data\":{\"temperature\":{\"value\":4.5,\"unit\":\"C\"},\"humidity\":{\"value\":80,\"unit\":\"%\"}}}\n{\"ts\":\"2026-01-13T10:10:00\",\"data\":{\"temperature\":{\"value\":4.0,\"unit\":\"C\"},\"humidity\":{\"value\":81,\"unit\":\"%\"}}}\n",
		"f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"what numbered fans draw, the unit a letter", "time,fan 1 A,fan 2 A\n2026-01-13 10:00,3.1,0.0\n2026-01-13 10:10,0.1,2.9\n2026-01-13 10:20,3.2,3.0\n", "f current 3 0 0 10:00..10:20 0.1..3.2|f current 3 0 0 10:00..10:20 0..3"},
	{"runs of fans that are numbered", "Start,End,Fan\n2026-01-13 10:00,2026-01-13 10:10,2\n2026-01-13 10:20,2026-01-13 10:30,2\n2026-01-13 10:40,2026-01-13 10:50,3\n",
		"2 state 4 0 0 10:00..10:30 0..1|3 state 2 0 0 10:40..10:50 0..1"},
	{"units for names, of two loggers", "time,°C,%,°C,%\n2026-01-13 10:00,4.5,80,-5.5,90\n2026-01-13 10:10,4.0,81,-5.0,91\n",
		"f 1 air_temperature 2 0 0 10:00..10:10 4..4.5|f 1 relative_humidity 2 0 0 10:00..10:10 0.8..0.81|f 2 air_temperature 2 0 0 10:00..10:10 -5.5..-5|f 2 relative_humidity 2 0 0 10:00..10:10 0.9..0.91"},
	{"units in words for names", "id|recorded_at|deg_c|pct\n1|2026-01-13 10:00:00|4.5|80\n2|2026-01-13 10:10:00|4.0|81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"rain is not asked for", "time,rain\n2026-01-13 10:00,0.5\n2026-01-13 10:10,0.0\n", "f other 2 0 0 10:00..10:10 0..0.5"},
	{"a channel that says what it measures", "VarName;TimeString;VarValue\nShed_Temp;2026-01-13 10:00;4,5\nShed_Temp;2026-01-13 10:10;4,0\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5"},
	{"whole hundredths", "time;temperature;humidity\n2026-01-13 10:00;450;8000\n2026-01-13 10:10;400;8100\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81|note unit_by_values"},
	{"year, day of the year, hours and minutes without names", "7,2026,13,1000,4.5,80\n7,2026,13,1010,4.0,81\n7,2026,13,1020,3.5,82\n",
		"f other 3 0 0 10:00..10:20 7..7|f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82|ask pairing|note nameless"},
	{"units in columns of one name", "time,temp,unit,rh,unit\n2026-01-13 10:00,41,F,80,%\n2026-01-13 10:10,50,F,81,%\n2026-01-13 10:20,32,F,82,%\n", "f air_temperature 3 0 0 10:00..10:20 0..10|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"units under names of two words", "  Date       Time   Air Temp   Rel Hum\n                     (deg F)       (%)\n13/01/2026  10:00       41.0      80.0\n13/01/2026  10:10       50.0      81.0\n", "f air_temperature 2 0 0 10:00..10:10 5..10|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"a clock that falls back to 1 January in December", "time,temp °C\n2025-12-13 10:00,4.5\n2025-12-13 10:10,4.0\n2000-01-01 00:00,3.5\n2000-01-01 00:10,3.5\n", "f air_temperature 4 0 0 00:00..10:10 3.5..4.5|note clock_anew"},
	{"what only identifies", "id,value,feed_id,time\nA0,4.5,77,2026-01-13 10:00\nA1,4.0,77,2026-01-13 10:10\nA2,3.5,77,2026-01-13 10:20\n", "f air_temperature 3 0 0 10:00..10:20 3.5..4.5|ask quantity"},
	{"weeks", "time,temp °C\n2026-W03-2 10:00,4.5\n2026-W03-2 10:10,4.0\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5"},
}

func TestQuirks(t *testing.T) {
	for _, q := range quirks {
		for _, quick := range []bool{true, false} {
			e, err := read(context.Background(), strings.NewReader(q.file), "f.csv", nil, quick)
			if err != nil {
				t.Errorf("%s: %v", q.name, err)
				continue
			}
			if got := allSaid(e); got != q.want {
				t.Errorf("%s: got\n%s\nwant\n%s\n%s", q.name, got, q.want, q.file)
			}
		}
	}
}

// allSaid is what an export says: its series as said has them, what is asked, and remarks.
func allSaid(e *Export) string {
	out := []string{said(e)}
	for _, k := range e.Questions {
		out = append(out, "ask "+k.ID)
	}
	for _, r := range e.Remarks {
		out = append(out, "note "+r.Code)
	}
	return strings.Join(out, "|")
}

// Weeks of years that begin and end within them. Source: ISO 8601:2004, 3.2.2, and its example of 2008-12-29.
func TestWeeks(t *testing.T) {
	for printed, want := range map[string]string{"2009-W01-1": "2008-12-29", "2009-W53-7": "2010-01-03", "2004W537": "2005-01-02"} {
		e := readText(t, "time,temp °C\n"+printed+" 10:00,4.5\n"+printed+" 10:10,4.4\n")
		if got := face(e.Series[0], e.Series[0].FaceMS[0], 0)[:10]; got != want {
			t.Errorf("%s: %s, want %s", printed, got, want)
		}
	}
}

// worded are headers that only their words tell how they are encoded; x/text does the writing.
var worded = []struct {
	name, header string
	to           encoding.Encoding
}{
	{"shift_jis", "日時,温度(℃),湿度(%)", japanese.ShiftJIS},
	{"euc-jp", "日時,温度(℃),湿度(%)", japanese.EUCJP},
	{"gbk", "时间,温度(℃),湿度(%)", simplifiedchinese.GBK},
	{"big5", "時間,溫度(℃),濕度(%)", traditionalchinese.Big5},
	{"euc-kr", "시간,온도(℃),습도(%)", korean.EUCKR},
	{"windows-1251", "Дата и время,Температура,Влажность", charmap.Windows1251},
	{"koi8-r", "Дата и время,Температура,Влажность", charmap.KOI8R},
	{"windows-1250", "Data i godzina,Temperatura,Wilgotność", charmap.Windows1250},
	{"iso-8859-2", "Data i godzina,Temperatura,Wilgotność", charmap.ISO8859_2},
	{"windows-1250", "Dátum és idő,Hőmérséklet,Páratartalom", charmap.Windows1250},
	{"windows-1254", "Tarih ve saat,Sıcaklık,Nem", charmap.Windows1254},
	{"windows-1257", "Data ir laikas,Temperatūra,Drėgmė", charmap.Windows1257},
	{"windows-1253", "Ημερομηνία,Θερμοκρασία,Υγρασία", charmap.Windows1253},
}

func TestEncodingByWords(t *testing.T) {
	for _, w := range worded {
		text, err := w.to.NewEncoder().String(w.header + "\n2026-01-13 10:00,4.5,80\n2026-01-13 10:10,4.0,81\n")
		if err != nil {
			t.Fatal(err)
		}
		e := readText(t, text)
		const want = "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"
		if got := said(e); got != want || e.Layout.Encoding != w.name || e.Layout.Header != w.header {
			t.Errorf("%s: %s %q %s", w.name, e.Layout.Encoding, e.Layout.Header, got)
		}
	}
}

// States tell an encoding by their words where no header does.
func TestEncodingByWordsOfStates(t *testing.T) {
	text, err := charmap.Windows1250.NewEncoder().String("czas;nawiew\n2026-01-13 10:00;włączony\n2026-01-13 10:10;wyłączony\n")
	if err != nil {
		t.Fatal(err)
	}
	if e := readText(t, text); e.Layout.Encoding != "windows-1250" || len(e.Series) != 1 || e.Series[0].Quantity != State || e.Series[0].Val[0] != 1 || e.Series[0].Val[1] != 0 {
		t.Errorf("%s %+v", e.Layout.Encoding, e.Series)
	}
}

// A dew point proves its columns among many without names: of three rows the Magnus formula (WMO-No. 8, 2018, annex 4.B) has
// 1.35, 1.48 and 0.86 °C at 4.5, 5.0 and 4.0 °C and 80, 78 and 80 %. Nothing is asked.
func TestADewPointProvesItsColumnsAmongMany(t *testing.T) {
	text := ""
	for i, air := range []string{"4.5,1.3,80", "5.0,1.5,78", "4.0,0.9,80"} {
		text += fmt.Sprintf("2026,1,13,10,%d,x,%s,101325%s,%d.5\n", 10*i, air, strings.Repeat(",9000", 16), 7+i)
	}
	e := readText(t, text)
	for i, want := range []Quantity{AirTemperature, DewPoint, RelativeHumidity, Other} {
		if got := e.Series[i].Quantity; got != want {
			t.Errorf("column %d: %s, want %s", e.Series[i].ColumnIndex, got, want)
		}
	}
	if len(e.Questions) > 0 {
		t.Errorf("asked %+v", e.Questions)
	}
}
