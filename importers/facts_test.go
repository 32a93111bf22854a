package importers

import (
	"context"
	"fmt"
	"strings"
	"testing"
)

// facts are small files of our own as public measurements come, each with what a person reads off it: by column,
// its quantity, how many values, the first and last time of day and the extremes as printed (°F in °C: 41 is 5, 50 is
// 10). They were written down before the reader saw the file. All are of 13 January 2026; another day shows in full.
var facts = []struct{ name, in, want string }{
	{"gases counted in ppm are not all carbon dioxide", "time,NH3 (ppm),CO (ppm),CO2 (ppm),gas (ppm)\n2026-01-13 10:00,8.125,1,1500,900\n2026-01-13 10:10,9.250,2,1600,950\n",
		"NH3 (ppm) other 2 10:00..10:10 8.125..9.25|CO (ppm) other 2 10:00..10:10 1..2|CO2 (ppm) co2 2 10:00..10:10 1500..1600|gas (ppm) co2 2 10:00..10:10 900..950"},
	{"people in a room are no loggers", "date,temp °C,room occupancy count\n2026-01-13 10:00,4.5,0\n2026-01-13 10:10,4.0,1\n2026-01-13 10:20,3.5,1\n2026-01-13 10:30,3.0,0\n",
		"temp °C air_temperature 4 10:00..10:30 3..4.5|room occupancy count state 4 10:00..10:30 0..1"},
	{"a station's pressure is not its name", "time,temp °C,station pressure\n2026-01-13 10:00,4.5,1010\n2026-01-13 10:10,4.0,1010\n2026-01-13 10:20,3.5,1011\n2026-01-13 10:30,3.0,1011\n",
		"temp °C air_temperature 4 10:00..10:30 3..4.5|station pressure other 4 10:00..10:30 1010..1011"},
	{"commas before the units of a header without quotes", "time,temp, °C,RH, %\n2026-01-13 10:00,4.5,80\n2026-01-13 10:10,4.0,81\n",
		"temp, °C air_temperature 2 10:00..10:10 4..4.5|RH, % relative_humidity 2 10:00..10:10 80..81"},
	{"an h between hours and minutes", "date;temp;HR\n2026-01-13 10 h 00;4,5;80\n2026-01-13 10 h 10;4,0;81\n2026-01-13 16 h 20;3,5;82\n",
		"temp air_temperature 3 10:00..16:20 3.5..4.5|HR relative_humidity 3 10:00..16:20 80..82"},
	{"hours and minutes with their Chinese signs", "日時,気温,湿度\n2026年1月13日 10時00分,4.5,80\n2026年1月13日 16時20分,4.0,81\n",
		"気温 air_temperature 2 10:00..16:20 4..4.5|湿度 relative_humidity 2 10:00..16:20 80..81"},
	{"hours and minutes with their Korean signs", "시간,온도,습도\n2026년 1월 13일 10시 00분 00초,4.5,80\n2026년 1월 13일 16시 20분 00초,4.0,81\n",
		"온도 air_temperature 2 10:00..16:20 4..4.5|습도 relative_humidity 2 10:00..16:20 80..81"},
	{"offsets of three kinds, faces as printed", "time,temp °C\n2026-01-13T10:00:00Z,4.5\n2026-01-13T11:10:00+01:00,4.0\n2026-01-13T12:20:00+02:00,3.5\n",
		"temp °C air_temperature 3 10:00..12:20 3.5..4.5"},
	{"minutes from a start above the table", "Start: 2026-01-13 10:00\nminutes,temp °C\n0,4.5\n10,4.0\n20,3.5\n",
		"temp °C air_temperature 3 10:00..10:20 3.5..4.5"},
	{"an average, its spread, its error and its count", "time,T mean (°C),T sd (°C),T n,T err\n2026-01-13 10:00,4.5,0.2,60,0.1\n2026-01-13 10:10,4.0,0.1,60,0.1\n",
		"T mean (°C) air_temperature 2 10:00..10:10 4..4.5|T sd (°C) other 2 10:00..10:10 0.1..0.2|T n other 2 10:00..10:10 60..60|T err other 2 10:00..10:10 0.1..0.1"},
	{"a building and its rooms", "building,room,time,temp °C\nA,1,2026-01-13 10:00,4.5\nA,1,2026-01-13 10:10,4.0\nA,2,2026-01-13 10:00,3.5\nA,2,2026-01-13 10:10,3.0\nB,1,2026-01-13 10:00,2.5\nB,1,2026-01-13 10:10,2.0\n",
		"temp °C air_temperature 2 10:00..10:10 4..4.5|temp °C air_temperature 2 10:00..10:10 3..3.5|temp °C air_temperature 2 10:00..10:10 2..2.5"},
	{"depths that come with every time", "time,depth cm,temp °C\n2026-01-13 10:00,5,4.5\n2026-01-13 10:00,20,5.5\n2026-01-13 10:10,5,4.0\n2026-01-13 10:10,20,5.0\n2026-01-13 10:20,5,3.5\n2026-01-13 10:20,20,5.0\n",
		"temp °C air_temperature 3 10:00..10:20 3.5..4.5|temp °C air_temperature 3 10:00..10:20 5..5.5"},
	{"a zone among the units below the header", "Time,Temp,Hum,Wind\n(UTC),(deg F),(%),(mph)\n2026-01-13 10:00,41,80,3\n2026-01-13 10:10,50,81,4\n",
		"Temp air_temperature 2 10:00..10:10 5..10|Hum relative_humidity 2 10:00..10:10 80..81|Wind other 2 10:00..10:10 3..4"},
	{"a factor at the end of the name", "time,temp_x100,rh_x10\n2026-01-13 10:00,450,800\n2026-01-13 10:10,400,810\n",
		"temp_x100 air_temperature 2 10:00..10:10 4..4.5|rh_x10 relative_humidity 2 10:00..10:10 80..81"},
	{"averages and extremes, each in one word", "Zeit;Minimumtemperatur;Maximumtemperatur;Mitteltemperatur\n13.01.2026 10:00;4,1;4,9;4,5\n13.01.2026 10:10;3,8;4,4;4,0\n",
		"Minimumtemperatur other 2 10:00..10:10 3.8..4.1|Maximumtemperatur other 2 10:00..10:10 4.4..4.9|Mitteltemperatur air_temperature 2 10:00..10:10 4..4.5"},
	{"lowest, highest and average in Swedish", "Tid;Lägsta temperatur;Högsta temperatur;Medeltemperatur\n2026-01-13 10:00;4,1;4,9;4,5\n2026-01-13 10:10;3,8;4,4;4,0\n",
		"Lägsta temperatur other 2 10:00..10:10 3.8..4.1|Högsta temperatur other 2 10:00..10:10 4.4..4.9|Medeltemperatur air_temperature 2 10:00..10:10 4..4.5"},
	{"units in a column of their own behind a grade", "Date,Air temperature,status,unit\n2026-01-13 10:00,41.0,V,deg F\n2026-01-13 10:10,50.0,V,deg F\n",
		"Air temperature air_temperature 2 10:00..10:10 5..10"},
	{"the unit in the middle of the title", "TEMPERATURE DEG F HOURLY\nDATE,00:00,06:00,12:00,18:00\n2026-01-13,41,41,50,50\n",
		"TEMPERATURE DEG F HOURLY air_temperature 4 00:00..18:00 5..10"},
	{"half past four in the afternoon, as Norwegians write it", "Tid;Temperatur;Fuktighet\n13. januar 2026 kl. 10.00;4,5;80\n13. januar 2026 kl. 16.30;4,0;81\n",
		"Temperatur air_temperature 2 10:00..16:30 4..4.5|Fuktighet relative_humidity 2 10:00..16:30 80..81"},
	{"Danish, dots in times", "Dato og tid;Temperatur;Luftfugtighed\n13-01-2026 10.00;4,5;80\n13-01-2026 16.30;4,0;81\n",
		"Temperatur air_temperature 2 10:00..16:30 4..4.5|Luftfugtighed relative_humidity 2 10:00..16:30 80..81"},
	{"Ukrainian, January by name", "Час;Температура;Вологість\n13 січня 2026 р. 10:00;4,5;80\n13 січня 2026 р. 16:30;4,0;81\n",
		"Температура air_temperature 2 10:00..16:30 4..4.5|Вологість relative_humidity 2 10:00..16:30 80..81"},
	{"Korean, before noon and after", "시간,온도(℃),습도(%)\n2026. 1. 13. 오전 10:00,4.5,80\n2026. 1. 13. 오후 4:30,4.0,81\n",
		"온도(℃) air_temperature 2 10:00..16:30 4..4.5|습도(%) relative_humidity 2 10:00..16:30 80..81"},
	{"Chinese, before noon and after", "时间,温度,湿度\n2026/1/13 上午10:00:00,4.5,80\n2026/1/13 下午4:30:00,4.0,81\n",
		"温度 air_temperature 2 10:00..16:30 4..4.5|湿度 relative_humidity 2 10:00..16:30 80..81"},
	{"Greek, before noon and after", "Ημερομηνία;Θερμοκρασία;Υγρασία\n13/1/2026 10:00 πμ;4,5;80\n13/1/2026 4:30 μμ;4,0;81\n",
		"Θερμοκρασία air_temperature 2 10:00..16:30 4..4.5|Υγρασία relative_humidity 2 10:00..16:30 80..81"},
	{"Polish, January in the genitive", "Data;Temperatura;Wilgotność\n13 stycznia 2026 10:00;4,5;80\n13 stycznia 2026 16:30;4,0;81\n",
		"Temperatura air_temperature 2 10:00..16:30 4..4.5|Wilgotność relative_humidity 2 10:00..16:30 80..81"},
	{"Hungarian, the year first, January by name", "Dátum;Hőmérséklet;Páratartalom\n2026. január 13. 10:00;4,5;80\n2026. január 13. 16:30;4,0;81\n",
		"Hőmérséklet air_temperature 2 10:00..16:30 4..4.5|Páratartalom relative_humidity 2 10:00..16:30 80..81"},
	{"Austrian January, Uhr behind the time", "Zeitpunkt;Temperatur;Luftfeuchtigkeit\n13. Jänner 2026, 10:00 Uhr;4,5;80\n13. Jänner 2026, 16:30 Uhr;4,0;81\n",
		"Temperatur air_temperature 2 10:00..16:30 4..4.5|Luftfeuchtigkeit relative_humidity 2 10:00..16:30 80..81"},
	{"commas within the brackets of a header without quotes", "time,temp (avg, °C),temp (max, °C),RH (avg, %)\n2026-01-13 10:00,4.5,4.9,80\n2026-01-13 10:10,4.0,4.4,81\n",
		"temp (avg, °C) air_temperature 2 10:00..10:10 4..4.5|temp (max, °C) other 2 10:00..10:10 4.4..4.9|RH (avg, %) relative_humidity 2 10:00..10:10 80..81"},
	{"lowest, average and highest of the variable a row names", "time,variable,min,avg,max\n2026-01-13 10:00,temperature,4.1,4.5,4.9\n2026-01-13 10:00,humidity,78,80,82\n2026-01-13 10:10,temperature,3.8,4.0,4.4\n2026-01-13 10:10,humidity,79,81,83\n",
		"temperature other 2 10:00..10:10 3.8..4.1|temperature air_temperature 2 10:00..10:10 4..4.5|temperature other 2 10:00..10:10 4.4..4.9|" +
			"humidity other 2 10:00..10:10 78..79|humidity relative_humidity 2 10:00..10:10 80..81|humidity other 2 10:00..10:10 82..83"},
	{"numbers behind what keeps or rounds them", "time,wall temp °C,roof temp °C,room temp °C\n2026-01-13 10:00,'4.5,~3.5,=\"2.5\"\n2026-01-13 10:10,'4.0,~3.0,=\"2.0\"\n",
		"wall temp °C air_temperature 2 10:00..10:10 4..4.5|roof temp °C air_temperature 2 10:00..10:10 3..3.5|room temp °C air_temperature 2 10:00..10:10 2..2.5"},
	{"north and south are no counts", "time,T n,T s\n2026-01-13 10:00,4.5,3.5\n2026-01-13 10:10,4.0,3.0\n",
		"T n air_temperature 2 10:00..10:10 4..4.5|T s air_temperature 2 10:00..10:10 3..3.5"},
	{"a value a row, several at each time counted from 1970", "ts,device,key,value\n1768298400000,n1,temperature,4.5\n1768298400000,n1,humidity,80\n1768298400000,n1,battery,3.6\n1768299000000,n1,temperature,4.0\n1768299000000,n1,humidity,81\n1768299000000,n1,battery,3.6\n",
		"temperature air_temperature 2 10:00..10:10 4..4.5|humidity relative_humidity 2 10:00..10:10 80..81|battery other 2 10:00..10:10 3.6..3.6"},
	{"a value a row, named by letters", "time;type;value\n2026-01-13 10:00;T;4,5\n2026-01-13 10:00;H;80\n2026-01-13 10:10;T;4,0\n2026-01-13 10:10;H;81\n",
		"T air_temperature 2 10:00..10:10 4..4.5|H relative_humidity 2 10:00..10:10 80..81"},
	{"the state before a change and after it", "time,object,from,to\n2026-01-13 10:00,fan 1,off,on\n2026-01-13 10:10,fan 1,on,off\n2026-01-13 10:20,fan 1,off,on\n",
		"to state 3 10:00..10:20 0..1"},
}

// What is named as a temperature and can't be read is listed with what is lost, not passed over.
func TestGarbledColumn(t *testing.T) {
	e, err := Read(context.Background(), strings.NewReader("time,temp °C,rh %\n2026-01-13 10:00,4·5,80\n2026-01-13 10:10,4·0,81\n"), "f.csv", nil)
	if err != nil || len(e.Series) != 2 {
		t.Fatal(err, e)
	}
	if s := e.Series[0]; s.Quantity != AirTemperature || s.Unreadable != 2 || s.Summary().Readings != 0 || len(e.Remarks) != 1 {
		t.Errorf("%s, %d unreadable, %d remarks", s.Quantity, s.Unreadable, len(e.Remarks))
	}
}

func TestFacts(t *testing.T) {
	for _, f := range facts {
		e, err := Read(context.Background(), strings.NewReader(f.in), "f.csv", nil)
		if err != nil {
			t.Errorf("%s: %v", f.name, err)
			continue
		}
		var got []string
		for _, s := range e.Series {
			got = append(got, factsOf(s))
		}
		if g := strings.Join(got, "|"); g != f.want {
			t.Errorf("%s\ngot  %s\nwant %s", f.name, g, f.want)
		}
	}
}

// factsOf is a series in the words of facts.
func factsOf(s Series) string {
	sum, name, scale := s.Summary(), s.Column, 1.0
	if s.Variable != "" {
		name = s.Variable
	}
	if s.Quantity == RelativeHumidity {
		scale = 100
	}
	clock := func(ms, offset int64) string {
		at, today := strings.CutPrefix(face(s, ms, offset), "2026-01-13T")
		if today {
			at = at[:len("10:00")]
		}
		return at
	}
	return fmt.Sprintf("%s %s %d %s..%s %.6g..%.6g", name, s.Quantity, sum.Readings, clock(sum.FirstMS, sum.FirstOffsetMS), clock(sum.LastMS, sum.LastOffsetMS), sum.Min*scale, sum.Max*scale)
}
