package importers

import (
	"context"
	"strings"
	"testing"
)

// shapes hold small files of our own in the shapes that open data, self-built loggers, databases and
// spreadsheets come in, each with what a person reads in it. These, and those of sheets and drawer, were gone over line by
// line by a second reader from the text alone: columns, units, spans, extremes (°F and K by hand), counts and remarks.
var shapes = []struct{ name, in, want string }{
	{"a grade behind each value, named by what it grades, a station's number before, the row's end marked",
		"STATION_ID;OBS_DATE;QN_9;TT_TU;RF_TU;eor\n     44;2026011300;    3;   4.5;  86.0;eor\n     44;2026011301;    3;  -0.5;  87.0;eor\n     44;2026011302;    3;  -999;  88.0;eor\n",
		`utf-8 ";" "." line 2 rows 3 bad 0 clock [2] ymd
44|TT_TU|4 air_temperature degC values n2 m1 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 -0.5..4.5
44|RF_TU|5 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.86..0.88
note sentinel 4:4 x1`},
	{"grades named by a Q and the name of what they grade",
		"POSTE;AAAAMMJJHH;RR;QRR;T;QT;HUM;QHUM\n1001;2026011300;0.0;1;4.5;1;86;1\n1001;2026011301;0.2;1;4.0;2;87;9\n1001;2026011302;0.0;1;3.5;1;88;1\n",
		`utf-8 ";" "." line 2 rows 3 bad 0 clock [2] ymd
1001|RR|3 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0..0.2
1001|T|5 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3.5..4.5
1001|HUM|7 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.86..0.88`},
	{"a legend above the header in comments, values in tenths, an empty comment below the header",
		"# Hourly values\n# YYYYMMDD : date\n# HH : hour\n# T  : Temperature (in 0.1 degrees Celsius) at 1.50 m\n# U  : Relative humidity (in percents)\n#\n# STN,YYYYMMDD,   HH,    T,    U\n#\n  260,20260113,    1,   45,   86\n  260,20260113,    2,   -5,   87\n  260,20260113,    3,    0,   88\n",
		`utf-8 "," "." line 9 rows 3 bad 0 clock [2 3] ymd
260|T|4 air_temperature degC header n3 m0 u0 2026-01-13T01:00:00..2026-01-13T03:00:00 -0.5..4.5
260|U|5 relative_humidity percent header n3 m0 u0 2026-01-13T01:00:00..2026-01-13T03:00:00 0.86..0.88`},
	{"keys of points above the header, the report's end below",
		"Key,Name\nPoint_1:,BARN.ROOM TEMP (°F)\nPoint_2:,BARN.ROOM HUMIDITY\n\nDate,Time,Point_1,Point_2\n1/13/2026,00:00:00,41.0,80\n1/13/2026,00:30:00,50.0,81\n1/13/2026,01:00:00,32.0,82\n***** End of Report *****\n",
		`utf-8 "," "." line 6 rows 3 bad 0 clock [1 2] mdy
f|Point_1|3 air_temperature degF header n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0..10
f|Point_2|4 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.82
note foot 9:0 x1`},
	{"three header rows: names, units, what was made of the readings",
		"\"table\",\"shed\",\"hourly\"\n\"TIMESTAMP\",\"RECORD\",\"BattV_Min\",\"AirTC_Avg\",\"AirTC_Max\",\"RH\"\n\"TS\",\"RN\",\"Volts\",\"Deg C\",\"Deg C\",\"%\"\n\"\",\"\",\"Min\",\"Avg\",\"Max\",\"Smp\"\n\"2026-01-13 00:00:00\",0,12.5,4.5,4.9,80\n\"2026-01-13 01:00:00\",1,12.4,4.0,\"NAN\",81\n\"2026-01-13 02:00:00\",2,12.4,3.5,3.9,82\n",
		`utf-8 "," "." line 5 rows 3 bad 0 clock [1] ymd
f|BattV_Min|3 other V units_row n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 12.4..12.5
f|AirTC_Avg|4 air_temperature degC units_row n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3.5..4.5
f|AirTC_Max|5 other degC units_row n2 m1 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3.9..4.9
f|RH|6 relative_humidity percent units_row n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.8..0.82
note statistic 5:5 x1`},
	{"units with low lines, the zone among them",
		"time,station,air_temperature,relative_humidity\nUTC,,degree_C,percent\n2026-01-13T00:00:00Z,A1,4.5,80\n2026-01-13T01:00:00Z,A1,NaN,81\n2026-01-13T02:00:00Z,A1,3.5,82\n",
		`utf-8 "," "." line 3 rows 3 bad 0 clock [1] ymd +00:00 file
A1|air_temperature|3 air_temperature degC units_row n2 m1 u0 2026-01-13T00:00:00Z..2026-01-13T02:00:00Z 3.5..4.5
A1|relative_humidity|4 relative_humidity percent units_row n3 m0 u0 2026-01-13T00:00:00Z..2026-01-13T02:00:00Z 0.8..0.82`},
	{"average, lowest and highest of one sensor, and its spread",
		"time,Temp avg (°C),Temp min (°C),Temp max (°C),Temp std,RH mean (%),RH min (%)\n2026-01-13 00:00,4.5,4.1,4.9,0.2,80,78\n2026-01-13 01:00,4.0,3.8,4.4,0.1,81,80\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|Temp avg (°C)|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|Temp min (°C)|3 other degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 3.8..4.1
f|Temp max (°C)|4 other degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4.4..4.9
f|Temp std|5 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.1..0.2
f|RH mean (%)|6 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81
f|RH min (%)|7 other percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 78..80
note statistic 2:3 x1`},
	{"averages in other words",
		"Datum;Temperatur Mittel [°C];Temperatur Minimum [°C];Temperatur Maximum [°C];Feuchte Mittel [%]\n13.01.2026 00:00;4,5;4,1;4,9;80\n13.01.2026 01:00;4,0;3,8;4,4;81\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] dmy
f|Temperatur Mittel [°C]|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|Temperatur Minimum [°C]|3 other degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 3.8..4.1
f|Temperatur Maximum [°C]|4 other degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4.4..4.9
f|Feuchte Mittel [%]|5 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81
note statistic 2:3 x1`},
	{"an average over ten minutes is no lowest value, nor is a logger called max",
		"time,Temp 10 min (°C),Temp Max (°C)\n2026-01-13 00:00,4.5,6.5\n2026-01-13 00:10,4.0,3.0\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|Temp 10 min (°C)|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T00:10:00 4..4.5
f|Temp Max (°C)|3 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T00:10:00 3..6.5`},
	{"the header's words over two lines",
		"\t\tTemp\tHi\tLow\tOut\tDew\nDate\tTime\tOut\tTemp\tTemp\tHum\tPt.\n13/01/26\t00:00\t4.5\t4.9\t4.1\t80\t1.4\n13/01/26\t00:30\t4.0\t4.4\t3.8\t81\t1.1\n13/01/26\t01:00\t4.0\t4.1\t3.9\t82\t1.3\n",
		`utf-8 "\t" "." line 3 rows 3 bad 0 clock [1 2] dmy?
Out|Out|3 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
Out|Hum|6 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.82
f|Temp|4 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4.1..4.9
f|Temp|5 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 3.8..4.1
f|Pt.|7 dew_point degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 1.1..1.4
ask day_month [dmy ymd]
note statistic 3:4 x1`},
	{"the header's words over two lines, between blanks, a line of strokes below",
		"                Temp    Hi    Out\n  Date    Time   Out  Temp    Hum\n---------------------------------\n13/01/26  00:00   4.5   4.9    80\n13/01/26  00:30   4.0   4.4    81\n",
		`utf-8 "blanks" "." line 4 rows 2 bad 0 clock [1 2] dmy?
Out|Out|3 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T00:30:00 4..4.5
Out|Hum|5 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T00:30:00 0.8..0.81
f|Temp|4 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T00:30:00 4.4..4.9
ask day_month [dmy ymd]
note statistic 4:4 x1`},
	{"letters at the ends of names that are no units",
		"TIMESTAMP_START,TA_F,TA_F_QC,VPD_F,RH\n202601130000,4.5,0,1.2,80\n202601130030,4.0,0,-9999,81\n202601130100,3.5,0,1.1,82\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] ymd
f|TA_F|2 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 3.5..4.5
f|VPD_F|4 vapour_pressure_deficit n2 m1 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 1.1..1.2
f|RH|5 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.82
note sentinel 3:4 x1`},
	{"statistics by name alone",
		"startDateTime,tempMean,tempMinimum,tempMaximum,tempVariance,tempNumPts,finalQF\n2026-01-13T00:00:00Z,4.5,4.1,4.9,0.0012,1800,0\n2026-01-13T00:30:00Z,4.0,3.8,4.4,0.0011,1800,0\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd +00:00 file
f|tempMean|2 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00Z..2026-01-13T00:30:00Z 4..4.5
f|tempMinimum|3 other n2 m0 u0 2026-01-13T00:00:00Z..2026-01-13T00:30:00Z 3.8..4.1
f|tempMaximum|4 other n2 m0 u0 2026-01-13T00:00:00Z..2026-01-13T00:30:00Z 4.4..4.9
f|tempVariance|5 other n2 m0 u0 2026-01-13T00:00:00Z..2026-01-13T00:30:00Z 0.0011..0.0012
f|tempNumPts|6 other n2 m0 u0 2026-01-13T00:00:00Z..2026-01-13T00:30:00Z 1800..1800
note statistic 2:3 x1`},
	{"a value a row, with places and units, names in one word",
		"location,utc,parameter,value,unit,latitude,longitude\nYard,2026-01-13T00:00:00Z,temperature,4.5,c,1.5,2.5\nYard,2026-01-13T00:00:00Z,relativehumidity,80,%,1.5,2.5\nYard,2026-01-13T01:00:00Z,temperature,4,c,1.5,2.5\nYard,2026-01-13T01:00:00Z,relativehumidity,81,%,1.5,2.5\n",
		`utf-8 "," "." line 2 rows 4 bad 0 clock [2] ymd +00:00 file
Yard|value|4 air_temperature degC column n2 m0 u0 2026-01-13T00:00:00Z..2026-01-13T01:00:00Z 4..4.5
Yard|latitude|6 other n2 m0 u0 2026-01-13T00:00:00Z..2026-01-13T01:00:00Z 1.5..1.5
Yard|longitude|7 other n2 m0 u0 2026-01-13T00:00:00Z..2026-01-13T01:00:00Z 2.5..2.5
Yard|value|4 relative_humidity percent column n2 m0 u0 2026-01-13T00:00:00Z..2026-01-13T01:00:00Z 0.8..0.81
Yard|latitude|6 other n2 m0 u0 2026-01-13T00:00:00Z..2026-01-13T01:00:00Z 1.5..1.5
Yard|longitude|7 other n2 m0 u0 2026-01-13T00:00:00Z..2026-01-13T01:00:00Z 2.5..2.5`},
	{"a status and a unit behind each value, one unit unknown",
		",,Town,,,,\nDate,time,Nitric oxide,status,unit,Air Temperature,status,unit\n13-01-2026,23:00:00,5.2,P,ugm-3,4.5,P,deg C\n13-01-2026,24:00:00,5.3,P,ugm-3,4.0,P,deg C\n14-01-2026,01:00:00,5.1,P,ugm-3,3.5,P,deg C\n",
		`utf-8 "," "." line 3 rows 3 bad 0 clock [1 2] dmy
f|Nitric oxide|3 other ugm-3 column n3 m0 u0 2026-01-13T23:00:00..2026-01-14T01:00:00 5.1..5.3
f|Air Temperature|6 air_temperature degC column n3 m0 u0 2026-01-13T23:00:00..2026-01-14T01:00:00 3.5..4.5`},
	{"a serial number in brackets behind the unit",
		"\"#\",\"Date Time, GMT+02:00\",\"Temp, °C (S/N: 123)\",\"RH, % (S/N: 124)\",\"Stopped (S/N: 123)\"\n1,01/13/26 11:00:00 PM,4.5,80,\n2,01/13/26 11:30:00 PM,4.0,81,\n3,01/14/26 12:00:00 AM,,,Logged\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [2] mdy +02:00 file
f|Temp, °C (S/N: 123)|3 air_temperature degC header n2 m1 u0 2026-01-13T23:00:00..2026-01-13T23:30:00 4..4.5
f|RH, % (S/N: 124)|4 relative_humidity percent header n2 m1 u0 2026-01-13T23:00:00..2026-01-13T23:30:00 0.8..0.81`},
	{"a place that names no column below the table, in its first cell",
		"Navn;Stasjon;Tid(norsk normaltid);Lufttemperatur;Relativ luftfuktighet\nBy;SN1;13.01.2026 00:00;4,5;80\nBy;SN1;13.01.2026 01:00;4,0;81\nData er gyldig per 14.01.2026, Instituttet;;;;\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [3] dmy +01:00 file
SN1|Lufttemperatur|4 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
SN1|Relativ luftfuktighet|5 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81
note foot 4:0 x1`},
	{"bars between the cells",
		"station|year|month|day|hour|minute|temperature|temperature_Quality_Code|relative_humidity\nXX1|2026|01|13|00|00|4.5|1|80\nXX1|2026|01|13|00|30|4.0|1|81\nXX1|2026|01|13|01|00|3.5|1|82\n",
		`utf-8 "|" "." line 2 rows 3 bad 0 clock [2 3 4 5 6] ymd
XX1|temperature|7 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 3.5..4.5
XX1|relative_humidity|9 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.82`},
	{"a printed table, bars between the cells, strokes below the header",
		" id |        time      | temp | rh\n----+------------------+------+----\n  1 | 2026-01-13 00:00 |  4.5 | 80\n  2 | 2026-01-13 01:00 |  4.0 | 81\n(2 rows)\n",
		`utf-8 "|" "." line 3 rows 2 bad 0 clock [2] ymd
f|temp|3 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|rh|4 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81
note foot 5:0 x1`},
	{"rows of a database's dump",
		"INSERT INTO `log` (`id`, `created_at`, `temp`, `hum`) VALUES\n(7, '2026-01-13 00:00:00', 4.50, 80),\n(8, '2026-01-13 01:00:00', NULL, 81),\n(9, '2026-01-13 02:00:00', 3.50, 82);\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [2] ymd
f|temp|3 air_temperature degC values n2 m1 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3.5..4.5
f|hum|4 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.8..0.82`},
	{"a statement for each row",
		"INSERT INTO log VALUES (7,'2026-01-13 00:00:00','alder',4.50);\nINSERT INTO log VALUES (8,'2026-01-13 01:00:00','alder',4.00);\n",
		`utf-8 "," "." line 1 rows 2 bad 0 clock [2] ymd
f||4 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
ask quantity [air_temperature other]`},
	{"an object in each line",
		"{\"ts\":\"2026-01-13T00:00:00\",\"air\":{\"temp\":4.50,\"hum\":80}}\n{\"ts\":\"2026-01-13T01:00:00\",\"air\":{\"temp\":4.00,\"hum\":null}}\n{\"ts\":\"2026-01-13T02:00:00\",\"air\":{\"temp\":3.50,\"hum\":82}}\n",
		`utf-8 "," "." line 1 rows 3 bad 0 clock [1] ymd
f|temp|2 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3.5..4.5
f|hum|3 relative_humidity percent values n2 m1 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.8..0.82`},
	{"names before the values",
		"2026-01-13 00:00:00,T=4.50,H=80\n2026-01-13 01:00:00,T=4.00,H=81\n",
		`utf-8 "," "." line 1 rows 2 bad 0 clock [1] ymd
f|T|2 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|H|3 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"names and units around the values, blanks between",
		"2026-01-13 00:00:00 Temperature: 41.0 *F Humidity: 80 %\n2026-01-13 01:00:00 Temperature: 50.0 *F Humidity: 81 %\n",
		`utf-8 "blanks" "." line 1 rows 2 bad 0 clock [1 2] ymd
f|Temperature (*F)|4 air_temperature degF header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 5..10
f|Humidity (%)|7 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"equals signs before cells in quotes",
		"=\"time\",=\"temp C\",=\"rh %\"\n=\"2026-01-13 00:00\",=\"4.5\",=\"80\"\n=\"2026-01-13 01:00\",=\"4.0\",=\"81\"\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp C|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|rh %|3 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"single quotes",
		"'time','temp C','rh %'\n'2026-01-13 00:00','4.5','80'\n'2026-01-13 01:00','4.0','81'\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp C|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|rh %|3 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"zeros up to the end of a file set up in advance",
		"time,temp C,rh %\n2026-01-13 00:00,4.5,80\n2026-01-13 01:00,4.0,81\n\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp C|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|rh %|3 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"a row that the zeros cut",
		"time,temp C,rh %\n2026-01-13 00:00,4.5,80\n2026-01-13 01:00,4.0,8\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp C|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|rh %|3 relative_humidity percent header n1 m0 u1 2026-01-13T00:00:00..2026-01-13T00:00:00 0.8..0.8
note unreadable_cell 3:3 x1`},
	{"degree signs of other code pages",
		"time,Temp (øC),Wall (°С),Roof (ï¿½C)\n2026-01-13 00:00,4.5,3,2\n2026-01-13 01:00,4.0,3,2\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|Temp (øC)|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|Wall (°С)|3 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 3..3
f|Roof (ï¿½C)|4 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 2..2`},
	{"lines that begin with two strokes",
		"// station: yard\n// time;temp;hum\n2026-01-13 00:00;4.5;80\n2026-01-13 01:00;4.0;81\n",
		`utf-8 ";" "." line 3 rows 2 bad 0 clock [1] ymd
f|temp|2 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|hum|3 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"a description between comment marks above the table",
		"/* DESCRIPTION:\nParameters:\tDATE/TIME\n\tTemperature, air [°C] (TTT)\n*/\nDate/Time\tTTT [°C]\tRH [%]\n2026-01-13T00:00\t4.5\t80\n2026-01-13T01:00\t4.0\t81\n",
		`utf-8 "\t" "." line 6 rows 2 bad 0 clock [1] ymd
f|TTT [°C]|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|RH [%]|3 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"the separator named in the first line",
		"sep=;\nZeit;Temp;Feuchte\n13.01.2026 00:00;4,5;80\n13.01.2026 01:00;4,0;81\n",
		`utf-8 ";" "," line 3 rows 2 bad 0 clock [1] dmy
f|Temp|2 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|Feuchte|3 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"a table of one row about the place above the readings",
		"latitude,longitude,elevation,utc_offset_seconds,timezone\n52.5,13.4,38.0,0,GMT\n\ntime,temperature_2m (°C),relative_humidity_2m (%)\n2026-01-13T00:00,4.5,80\n2026-01-13T01:00,4.0,81\n2026-01-13T02:00,3.5,82\n",
		`utf-8 "," "." line 5 rows 3 bad 0 clock [1] ymd +00:00 file
f|temperature_2m (°C)|2 air_temperature degC header n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3.5..4.5
f|relative_humidity_2m (%)|3 relative_humidity percent header n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.8..0.82`},
	{"people in the room, a light that is on or dark",
		"date,Temperature,Light,Occupancy,lamp\n2026-01-13 00:00,4.5,426,0,dark\n2026-01-13 01:00,4.0,0,1,light\n2026-01-13 02:00,3.5,0,0,dark\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] ymd
f|Temperature|2 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3.5..4.5
f|Light|3 light n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0..426
f|Occupancy|4 state n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0..1
f|lamp|5 state n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0..1`},
	{"mixed line ends",
		"time,temp C,rh %\r\n2026-01-13 00:00,4.5,80\n2026-01-13 01:00,4.0,81\r\r\n2026-01-13 02:00,3.5,82\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] ymd
f|temp C|2 air_temperature degC header n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3.5..4.5
f|rh %|3 relative_humidity percent header n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.8..0.82`},
}

func TestShapes(t *testing.T) { checkShapes(t, shapes) }

// checkShapes reads files by the quick path and by the plain one.
func checkShapes(t *testing.T, shapes []struct{ name, in, want string }) {
	t.Helper()
	for _, c := range shapes {
		t.Run(c.name, func(t *testing.T) {
			for _, quick := range []bool{true, false} {
				e, err := read(context.Background(), strings.NewReader(c.in), "folder/f.csv", nil, quick)
				if err != nil {
					t.Fatal(err)
				}
				if got := describe(e); got != c.want {
					t.Errorf("got\n%s\nwant\n%s", got, c.want)
				}
			}
		})
	}
}
