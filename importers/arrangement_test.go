package importers

import (
	"context"
	"strings"
	"testing"
)

// arrangements holds one small file per way of arranging variables and loggers in rows, columns and tables.
// What is wanted follows from the text by hand.
var arrangements = []struct{ name, in, want string }{
	{"a value a row, with device, variable and unit, devices by turns",
		"time,device,variable,value,unit\n2026-01-13 10:00,alder,temperature,41,°F\n2026-01-13 10:00,alder,humidity,80,%\n2026-01-13 10:00,rowan,temperature,50,°F\n2026-01-13 10:00,rowan,humidity,70,%\n" +
			"2026-01-13 11:00,alder,temperature,32,°F\n2026-01-13 11:00,alder,humidity,81,%\n2026-01-13 11:00,rowan,temperature,,°F\n2026-01-13 11:00,rowan,humidity,lost,%\n",
		`utf-8 "," "" line 2 rows 8 bad 0 clock [1] ymd
alder|value|4 air_temperature degF column n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0..5
alder|value|4 relative_humidity percent column n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81
rowan|value|4 air_temperature degF column n1 m1 u0 2026-01-13T10:00:00..2026-01-13T10:00:00 10..10
rowan|value|4 relative_humidity percent column n1 m0 u1 2026-01-13T10:00:00..2026-01-13T10:00:00 0.7..0.7
note unreadable_cell 9:4 x1`},
	{"a value a row, series stacked one after another",
		"timestamp;entity;property;reading\n2026-01-13 10:00;alder;temp;4,5\n2026-01-13 11:00;alder;temp;4,0\n2026-01-13 10:00;alder;rh;80\n2026-01-13 11:00;alder;rh;81\n2026-01-13 10:00;rowan;temp;5,5\n2026-01-13 11:00;rowan;temp;6,0\n",
		`utf-8 ";" "," line 2 rows 6 bad 0 clock [1] ymd
alder|reading|4 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
alder|reading|4 relative_humidity percent values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81
rowan|reading|4 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 5.5..6`},
	{"a value a row, sensors named after what they measure, a switch among them",
		"time,sensor,state\n2026-01-13 10:00,barn_temperature,4.5\n2026-01-13 10:00,barn_humidity,80\n2026-01-13 10:01,fan_1,on\n2026-01-13 10:30,fan_1,off\n2026-01-13 11:00,barn_temperature,4.0\n2026-01-13 11:00,barn_humidity,81\n",
		`utf-8 "," "." line 2 rows 6 bad 0 clock [1] ymd
barn|state|3 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
barn|state|3 relative_humidity percent values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81
f|state|3 state n2 m0 u0 2026-01-13T10:01:00..2026-01-13T10:30:00 0..1`},
	{"two columns name the logger, one of them alone telling all apart",
		"site,device,time,temp °C\nbarn,alder,2026-01-13 10:00,4.5\nbarn,rowan,2026-01-13 10:00,5.5\nyard,elder,2026-01-13 10:00,-5.5\nbarn,alder,2026-01-13 11:00,4\nbarn,rowan,2026-01-13 11:00,5\nyard,elder,2026-01-13 11:00,-5\n",
		`utf-8 "," "." line 2 rows 6 bad 0 clock [3] ymd
alder|temp °C|4 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
rowan|temp °C|4 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 5..5.5
elder|temp °C|4 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 -5.5..-5`},
	{"two columns name the logger, together",
		"barn,sensor,time,temp °C\na,top,2026-01-13 10:00,4.5\na,low,2026-01-13 10:00,3.5\nb,top,2026-01-13 10:00,5.5\nb,low,2026-01-13 10:00,2.5\na,top,2026-01-13 11:00,4.5\na,low,2026-01-13 11:00,3.5\nb,top,2026-01-13 11:00,5.5\nb,low,2026-01-13 11:00,2.5\n",
		`utf-8 "," "." line 2 rows 8 bad 0 clock [3] ymd
a top|temp °C|4 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.5..4.5
a low|temp °C|4 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 3.5..3.5
b top|temp °C|4 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 5.5..5.5
b low|temp °C|4 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 2.5..2.5`},
	{"tables below one another, each with its title",
		"Logger: alder\ntime,temp °C,rh %\n2026-01-13 10:00,4.5,80\n2026-01-13 11:00,4.0,81\n\nLogger: rowan\ntime,temp °C,rh %\n2026-01-13 10:00,5.5,70\n2026-01-13 11:00,6.0,71\n",
		`utf-8 "," "." line 3 rows 4 bad 0 clock [1] ymd
alder|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
alder|rh %|3 relative_humidity percent header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81
rowan|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 5.5..6
rowan|rh %|3 relative_humidity percent header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.7..0.71`},
	{"tables of other columns, the day's place in the date decided by the second",
		"North wall\ntime;temp °C;state of fan\n03.01.2026 10:00;4,5;on\n03.01.2026 11:00;4,0;off\nMin;4,0;\nMax;4,5;\n\nSouth wall\nInterval;60 min\nno;date;hour;RH %\n1;12.01.2026;9:00;80\n2;13.01.2026;9:00;81\n3;14.01.2026;9:00;82\n",
		`utf-8 ";" "," line 3 rows 5 bad 0 clock [1] dmy
North wall|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-03T10:00:00..2026-01-03T11:00:00 4..4.5
North wall|state of fan|3 state n2 m0 u0 2026-01-03T10:00:00..2026-01-03T11:00:00 0..1
South wall|RH %|4 relative_humidity percent header n3 m0 u0 2026-01-12T09:00:00..2026-01-14T09:00:00 0.8..0.82
note foot 5:0 x2`},
	{"a header that comes again page by page is one table",
		"time,temp °C\n2026-01-13 10:00,4.5\nPage 2\ntime,temp °C\n2026-01-13 11:00,4.0\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
note foot 3:0 x1`},
	{"rows with names of their own, which the header leaves out",
		"\"time\",\"temp\",\"rh\"\n\"1\",\"2026-01-13 10:00\",4.5,80\n\"2\",\"2026-01-13 11:00\",4.0,81\n\"3\",\"2026-01-13 12:00\",4.0,82\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [2] ymd
f|temp|3 air_temperature degC values n3 m0 u0 2026-01-13T10:00:00..2026-01-13T12:00:00 4..4.5
f|rh|4 relative_humidity percent values n3 m0 u0 2026-01-13T10:00:00..2026-01-13T12:00:00 0.8..0.82`},
	{"thousands of empty rows below, and empty cells at the end of each",
		"time;temp °C;rh %;;;\n2026-01-13 10:00;4,5;80;;;\n2026-01-13 11:00;4,0;81;;;\n" + strings.Repeat(";;;;;\n", 3000),
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
f|rh %|3 relative_humidity percent header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81`},
	{"statistics below, more lines than the table has",
		"time,temp °C,rh %\n2026-01-13 10:00,4.5,80\n2026-01-13 11:00,4.0,81\n\nStatistics,temp °C,rh %\nMinimum,4.0,80\nMaximum,4.5,81\nAverage,4.25,80.5\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
f|rh %|3 relative_humidity percent header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81
note foot 5:0 x4`},
	{"places named above the header, each over its columns",
		";North;;South;\ntime;Temp °C;RH %;Temp °C;RH %\n2026-01-13 10:00;4,5;80;5,5;70\n2026-01-13 11:00;4,0;81;6,0;71\n",
		`utf-8 ";" "," line 3 rows 2 bad 0 clock [1] ymd
North|Temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
North|RH %|3 relative_humidity percent header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81
South|Temp °C|4 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 5.5..6
South|RH %|5 relative_humidity percent header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.7..0.71`},
	{"units in a second row tell humidity from temperature",
		"Timestamp,Air,Air,Wall\n,(°C),(%),(°C)\n2026-01-13 10:00,4.5,80,3\n2026-01-13 11:00,4.0,81,3.1\n",
		`utf-8 "," "." line 3 rows 2 bad 0 clock [1] ymd
Air|Air|2 air_temperature degC units_row n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
Air|Air|3 relative_humidity percent units_row n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81
f|Wall|4 air_temperature degC units_row n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 3..3.1`},
	{"grades behind each value, unnamed",
		"time;air °C;;humidity %;\n2026-01-13 10:00;4,5;1;80;1\n2026-01-13 11:00;4,0;1;81;1\n2026-01-13 12:00;4,0;5;81;1\n",
		`utf-8 ";" "," line 2 rows 3 bad 0 clock [1] ymd
f|air °C|2 air_temperature degC header n3 m0 u0 2026-01-13T10:00:00..2026-01-13T12:00:00 4..4.5
f|humidity %|4 relative_humidity percent header n3 m0 u0 2026-01-13T10:00:00..2026-01-13T12:00:00 0.8..0.81`},
	{"grades behind each value, under one word, by letter",
		"time,TEMP,chk,RH,chk\n2026-01-13 10:00,4.5,A,80,A\n2026-01-13 11:00,4.0,2,81,3\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|TEMP|2 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
f|RH|4 relative_humidity percent values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81`},
	{"grades with names of their own",
		"time,temp,valid,rh,rh_ok,T_FLAG,RH quality\n2026-01-13 10:00,4.5,true,80,1,0,9\n2026-01-13 11:00,4.0,false,81,1,1,9\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp|2 air_temperature degC values n1 m1 u0 2026-01-13T10:00:00..2026-01-13T10:00:00 4.5..4.5
f|rh|4 relative_humidity percent values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81
note graded 3:2 x1`},
	{"a column without a name that is no grade",
		"time,temp °C,\n2026-01-13 10:00,4.5,80\n2026-01-13 11:00,4.0,81\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
f||3 other n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 80..81`},
	{"an event list, several fans by turns",
		"Zeit;Ereignis;Gerät\n13.01.2026 10:00;Ein;Lüfter 1\n13.01.2026 10:20;Aus;Lüfter 1\n13.01.2026 10:25;Ein;Lüfter 2\n13.01.2026 12:00;Ein;Lüfter 1\n",
		`utf-8 ";" "" line 2 rows 4 bad 0 clock [1] dmy
Lüfter 1|Ereignis|2 state n3 m0 u0 2026-01-13T10:00:00..2026-01-13T12:00:00 0..1
Lüfter 2|Ereignis|2 state n1 m0 u0 2026-01-13T10:25:00..2026-01-13T10:25:00 1..1`},
	{"doors, lights, motors and alarms, each in words of its own",
		"time,door,light,motor,High temp alarm,Power fail,siren\n2026-01-13 10:00,OPEN,TRUE,run,0,0,normal\n2026-01-13 10:20,CLOSED,FALSE,stop,1,0,alarm\n2026-01-13 12:00,open,TRUE,start,0,1,normal\n",
		`utf-8 "," "" line 2 rows 3 bad 0 clock [1] ymd
f|door|2 state n3 m0 u0 2026-01-13T10:00:00..2026-01-13T12:00:00 0..1
f|light|3 state n3 m0 u0 2026-01-13T10:00:00..2026-01-13T12:00:00 0..1
f|motor|4 state n3 m0 u0 2026-01-13T10:00:00..2026-01-13T12:00:00 0..1
f|High temp alarm|5 state n3 m0 u0 2026-01-13T10:00:00..2026-01-13T12:00:00 0..1
f|Power fail|6 state n3 m0 u0 2026-01-13T10:00:00..2026-01-13T12:00:00 0..1
f|siren|7 state n3 m0 u0 2026-01-13T10:00:00..2026-01-13T12:00:00 0..1`},
	{"a temperature of nought and one is no state",
		"time,temp,fan power W\n2026-01-13 10:00,0,1\n2026-01-13 10:20,1,0\n",
		`utf-8 "," "" line 2 rows 2 bad 0 clock [1] ymd
f|temp|2 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T10:20:00 0..1
f|fan power W|3 power W header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T10:20:00 0..1`},
	{"current, power, and a meter that counts up",
		"time,fan current (A),motor power W,energy kWh,meter reading\n2026-01-13 10:00,0.02,3,1000.1,17\n2026-01-13 10:20,2.2,500,1000.2,18\n2026-01-13 12:00,0.02,3,1000.3,20\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] ymd
f|fan current (A)|2 current A header n3 m0 u0 2026-01-13T10:00:00..2026-01-13T12:00:00 0.02..2.2
f|motor power W|3 power W header n3 m0 u0 2026-01-13T10:00:00..2026-01-13T12:00:00 3..500
f|energy kWh|4 other kWh header n3 m0 u0 2026-01-13T10:00:00..2026-01-13T12:00:00 1000.1..1000.3
f|meter reading|5 other n3 m0 u0 2026-01-13T10:00:00..2026-01-13T12:00:00 17..20`},
	{"a value a row, loggers under a name that says nothing",
		"_time,_field,_value,host\n2026-01-13 10:00,temperature,4.5,node0\n2026-01-13 10:00,humidity,80,node0\n2026-01-13 10:00,temperature,5.5,node1\n2026-01-13 10:00,humidity,70,node1\n",
		`utf-8 "," "." line 2 rows 4 bad 0 clock [1] ymd
node0|_value|3 air_temperature degC values n1 m0 u0 2026-01-13T10:00:00..2026-01-13T10:00:00 4.5..4.5
node0|_value|3 relative_humidity percent values n1 m0 u0 2026-01-13T10:00:00..2026-01-13T10:00:00 0.8..0.8
node1|_value|3 air_temperature degC values n1 m0 u0 2026-01-13T10:00:00..2026-01-13T10:00:00 5.5..5.5
node1|_value|3 relative_humidity percent values n1 m0 u0 2026-01-13T10:00:00..2026-01-13T10:00:00 0.7..0.7`},
	{"loggers by turns without a header",
		"alder,2026-01-13 10:00,4.5\nrowan,2026-01-13 10:00,5.5\nalder,2026-01-13 10:10,4.0\nrowan,2026-01-13 10:10,5.0\n",
		`utf-8 "," "." line 1 rows 4 bad 0 clock [2] ymd
alder||3 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T10:10:00 4..4.5
rowan||3 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T10:10:00 5..5.5
ask quantity [air_temperature other]`},
	{"events of several fans without a header",
		"2026-01-13 10:00;Fan 1;ON\n2026-01-13 10:20;Fan 1;OFF\n2026-01-13 10:30;Fan 2;ON\n2026-01-13 10:50;Fan 2;OFF\n",
		`utf-8 ";" "" line 1 rows 4 bad 0 clock [1] ymd
Fan 1||3 state n2 m0 u0 2026-01-13T10:00:00..2026-01-13T10:20:00 0..1
Fan 2||3 state n2 m0 u0 2026-01-13T10:30:00..2026-01-13T10:50:00 0..1`},
	{"units glued to short names",
		"station,valid,tmpf,dwpf,relh\nshed,2026-01-13 10:00,41,32,80\nshed,2026-01-13 11:00,50,32,81\n",
		`utf-8 "," "" line 2 rows 2 bad 0 clock [2] ymd
shed|tmpf|3 air_temperature degF header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 5..10
shed|dwpf|4 dew_point degF header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0..0
shed|relh|5 relative_humidity percent values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81`},
	{"a mark that ends the text, and counts below the table",
		"time;t;rh\n2026-01-13 10:00;4,5;80\n2026-01-13 10:10;4,0;81\nAnzahl;2;2\nMittelwert;4,3;80\n\x1a",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] ymd
f|t|2 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T10:10:00 4..4.5
f|rh|3 relative_humidity percent values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T10:10:00 0.8..0.81
note foot 4:0 x2`},
	{"blocks under one header, each below its logger's name",
		"Barn 1\ntime;temp °C\n2026-01-13 10:00;4,5\n2026-01-13 11:00;4,0\n\nBarn 2\n2026-01-13 10:00;5,5\n2026-01-13 11:00;6,0\n",
		`utf-8 ";" "," line 3 rows 4 bad 0 clock [1] ymd
Barn 1|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
Barn 2|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 5.5..6`},
	{"a remark between rows is no name",
		"time;temp °C\n2026-01-13 10:00;4,5\nbattery changed\n2026-01-13 11:00;4,0\n",
		`utf-8 ";" "," line 2 rows 3 bad 1 clock [1] ymd
f|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
note bad_time 3:1 x1`},
	{"a column of units behind each column of values",
		"time,temp,temp unit,rh,rh unit\n2026-01-13 10:00,41,°F,80,%\n2026-01-13 11:00,50,°F,81,%\n",
		`utf-8 "," "" line 2 rows 2 bad 0 clock [1] ymd
f|temp|2 air_temperature degF column n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 5..10
f|rh|4 relative_humidity percent column n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81`},
	{"letters that grade a value are no units",
		"time,reading,remark\n2026-01-13 10:00,41,A\n2026-01-13 11:00,50,V\n2026-01-13 12:00,50,A\n2026-01-13 13:00,50,A\n",
		`utf-8 "," "" line 2 rows 4 bad 0 clock [1] ymd
f|reading|2 other n4 m0 u0 2026-01-13T10:00:00..2026-01-13T13:00:00 41..50`},
	{"a remark on the clock between rows is no header",
		"time;temp °C;note\n2026-01-13 10:00;4,5;\nclock set;to winter time;\n2026-01-13 11:00;4,0;\n",
		`utf-8 ";" "," line 2 rows 3 bad 1 clock [1] ymd
f|temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
note bad_time 3:1 x1`},
}

func TestArrangements(t *testing.T) {
	for _, c := range arrangements {
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
