package importers

import (
	"context"
	"fmt"
	"strconv"
	"strings"
	"testing"
	"time"
)

// drawer holds small files of our own as they lie together in a keeper's drawer: printed in pages, from loggers told
// to go on in another unit, from clocks that print no noughts, from sheets of hours; each with what a person reads in it.
var drawer = []struct{ name, in, want string }{
	{"the comma of a date, outside quotes",
		"Time,Temp C,RH %\nNov 8, 2025 06:00:00,4.5,80\nNov 8, 2025 06:30:00,4.0,81\nNov 18, 2025 06:30:00,3.5,82\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] mdy
f|Temp C|2 air_temperature degC header n3 m0 u0 2025-11-08T06:00:00..2025-11-18T06:30:00 3.5..4.5
f|RH %|3 relative_humidity percent header n3 m0 u0 2025-11-08T06:00:00..2025-11-18T06:30:00 0.8..0.82`},
	{"both commas of a date behind its weekday, outside quotes; other words before it stay a column",
		"Room,Time,Temp C\nsouth,Saturday, November 8, 2025 6:00 AM,4.5\nsouth,Saturday, November 8, 2025 6:30 PM,4.0\nsouth,Sunday, November 9, 2025 12:00 AM,3.5\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [2] mdy
south|Temp C|3 air_temperature degC header n3 m0 u0 2025-11-08T06:00:00..2025-11-09T00:00:00 3.5..4.5`},
	{"two values to a cell, with their units",
		"Time;Barn\n08.11.2025 06:00;4.5 °C / 80 %\n08.11.2025 18:00;4.0 °C / 81 %\n18.11.2025 06:00;3.5 °C / 82 %\n",
		`utf-8 ";" "." line 2 rows 3 bad 0 clock [1] dmy
Barn|Barn|2 air_temperature degC values n3 m0 u0 2025-11-08T06:00:00..2025-11-18T06:00:00 3.5..4.5
Barn|Barn|3 relative_humidity percent values n3 m0 u0 2025-11-08T06:00:00..2025-11-18T06:00:00 0.8..0.82`},
	{"a value beside codes and limits, what it is said by a description, its unit behind it",
		"Station,Code,Time,ValorObservado,Latitud,Limit,Descripcion,Unidad\nX1,68,2026-01-13 00:00,41.0,5.8,-20,Temp Aire 2 m,Degrees Fahrenheit\nX1,68,2026-01-13 01:00,50.0,5.8,-20,Temp Aire 2 m,Degrees Fahrenheit\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [3] ymd
X1|ValorObservado|4 air_temperature degF column n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 5..10
X1|Latitud|5 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 5.8..5.8
X1|Limit|6 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 -20..-20`},
	{"indoors and outdoors of two barns in one table are four loggers",
		"Time,Barn,Indoor T,Indoor RH,Outdoor T,Outdoor RH\n2026-01-13 00:00,A,4.5,80,-5.5,70\n2026-01-13 00:00,B,5.5,81,-5.5,70\n2026-01-13 01:00,A,4.0,82,-5.0,71\n2026-01-13 01:00,B,5.0,83,-5.0,71\n",
		`utf-8 "," "." line 2 rows 4 bad 0 clock [1] ymd
A Indoor|Indoor T|3 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
A Indoor|Indoor RH|4 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.82
A Outdoor|Outdoor T|5 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 -5.5..-5
A Outdoor|Outdoor RH|6 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.7..0.71
B Indoor|Indoor T|3 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 5..5.5
B Indoor|Indoor RH|4 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.81..0.83
B Outdoor|Outdoor T|5 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 -5.5..-5
B Outdoor|Outdoor RH|6 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.7..0.71`},
	{"letters behind both are places",
		"TIME,T_A,RH_A,T_B,RH_B\n202601130000,4.5,80,6.5,70\n202601130030,4.0,81,6.0,71\n202601130100,3.5,82,5.5,72\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] ymd
A|T_A|2 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 3.5..4.5
A|RH_A|3 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.82
B|T_B|4 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 5.5..6.5
B|RH_B|5 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.7..0.72`},
	{"states in words of other languages",
		"czas;wentylator;风机\n2026-01-13 00:00;włączony;开\n2026-01-13 01:00;wyłączony;关\n",
		`utf-8 ";" "" line 2 rows 2 bad 0 clock [1] ymd
f|wentylator|2 state n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0..1
f|风机|3 state n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0..1`},
	{"two values to a cell under a name that says nothing",
		"time,reading\n2025-11-08 06:00,4.5°C / 80%\n2025-11-08 18:00,4.0°C / 81%\n2025-11-09 06:00,3.5°C / 82%\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] ymd
f|reading|2 air_temperature degC values n3 m0 u0 2025-11-08T06:00:00..2025-11-09T06:00:00 3.5..4.5
f|reading|3 relative_humidity percent values n3 m0 u0 2025-11-08T06:00:00..2025-11-09T06:00:00 0.8..0.82`},
	{"two values to a cell as the names over them, beside a column of one",
		"Date,Time,T/RH barn,T/RH outside,Fan 1 A\n08.11.2025,06:00,4.5/80,-1.5/70,0.1\n08.11.2025,18:00,4.0/81,-2.5/71,2.9\n18.11.2025,06:00,3.5/82,-3.5/72,2.8\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1 2] dmy
barn|T|3 air_temperature degC values n3 m0 u0 2025-11-08T06:00:00..2025-11-18T06:00:00 3.5..4.5
barn|RH barn|4 relative_humidity percent values n3 m0 u0 2025-11-08T06:00:00..2025-11-18T06:00:00 0.8..0.82
outside|T|5 air_temperature degC values n3 m0 u0 2025-11-08T06:00:00..2025-11-18T06:00:00 -3.5..-1.5
outside|RH outside|6 relative_humidity percent values n3 m0 u0 2025-11-08T06:00:00..2025-11-18T06:00:00 0.7..0.72
f|Fan 1 A|7 current A header n3 m0 u0 2025-11-08T06:00:00..2025-11-18T06:00:00 0.1..2.9`},
	{"a unit of its own for every row, which changes half-way: 41 °F is 5 °C, 50 °F 10 °C",
		"Time,Temp,Unit,RH\n2026-01-13 00:00,4.5,C,80\n2026-01-13 00:10,4.0,C,81\n2026-01-13 00:20,41.0,F,82\n2026-01-13 00:30,50.0,F,83\n",
		`utf-8 "," "." line 2 rows 4 bad 0 clock [1] ymd
f|Temp|2 air_temperature degC column n4 m0 u0 2026-01-13T00:00:00..2026-01-13T00:30:00 4..10
f|RH|4 relative_humidity percent values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T00:30:00 0.8..0.83`},
	{"a unit that a later row does not name",
		"Time,Temp,Unit\n2026-01-13 00:00,4.5,C\n2026-01-13 00:10,41.0,F\n2026-01-13 00:20,7.0,\n2026-01-13 00:30,50.0,F\n",
		`utf-8 "," "." line 2 rows 4 bad 0 clock [1] ymd
f|Temp|2 air_temperature degC column n3 m0 u1 2026-01-13T00:00:00..2026-01-13T00:30:00 4.5..10`},
	{"times without noughts, blanks behind the commas",
		"13/1/2026 8:0:0, 4.5, 80.5\n13/1/2026 8:0:30, 4.0, 81.5\n13/1/2026 8:1:0, 3.5, 82.5\n13/1/2026 8:10:5, 3.0, 83.5\n",
		`utf-8 "," "." line 1 rows 4 bad 0 clock [1] dmy
f||2 air_temperature degC values n4 m0 u0 2026-01-13T08:00:00..2026-01-13T08:10:05 3..4.5
f||3 relative_humidity percent values n4 m0 u0 2026-01-13T08:00:00..2026-01-13T08:10:05 0.805..0.835
ask pairing [in_order apart]`},
	{"a header of units and a clock's name is a header",
		"\"Date/Time\",\"Deg. F\",\"RH\"\n\"1/13/2026 08:00:00am\",\"41.0\",\"80\"\n\"1/13/2026 08:10:00am\",\"50.0\",\"81\"\n\"1/13/2026 08:20:00am\",\"32.0\",\"82\"\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] mdy
f|Deg. F|2 air_temperature degF header n3 m0 u0 2026-01-13T08:00:00..2026-01-13T08:20:00 0..10
f|RH|3 relative_humidity percent values n3 m0 u0 2026-01-13T08:00:00..2026-01-13T08:20:00 0.8..0.82`},
	{"limits of an alarm beside the readings",
		"Time,Temp °C,Low limit °C,High limit °C,RH %\n2026-01-13 00:00,4.5,0.0,10.0,80\n2026-01-13 01:00,4.0,0.0,10.0,81\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|Temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|Low limit °C|3 other degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0..0
f|High limit °C|4 other degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 10..10
f|RH %|5 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"hours across, the day in three columns",
		"TEMPERATURE DEG C HOURLY\nYEAR MO DY 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20 21 22 23 24\n2026 01 13 1 2 3 4 5 6 7 8 9 10 11 12 11 10 9 8 7 6 5 4 3 2.5 2 1\n2026 01 14 2 2 3 4 5 6 7 8 9 10 11 12 11 10 9 8 7 6 5 4 3 1.5 1 0\n",
		`utf-8 "blanks" "." line 3 rows 2 bad 0 clock [1 2 3] ymd
f|TEMPERATURE DEG C HOURLY|4 air_temperature degC header n48 m0 u0 2026-01-13T01:00:00..2026-01-15T00:00:00 0..12`},
	{"hours across, each with its letter",
		"Air temperature (°C)\nDate,H00,H01,H02,H03,H04,H05,H06,H07,H08,H09,H10,H11,H12,H13,H14,H15,H16,H17,H18,H19,H20,H21,H22,H23\n2026-01-13,1,2,3,4,5,6,7,8,9,10,11,12,11,10,9,8,7,6,5,4,3,2.5,2,1\n2026-01-14,2,2,3,4,5,6,7,8,9,10,11,12,11,10,9,8,7,6,5,4,3,1.5,1,0\n",
		`utf-8 "," "." line 3 rows 2 bad 0 clock [1] ymd
f|Air temperature (°C)|2 air_temperature degC header n48 m0 u0 2026-01-13T00:00:00..2026-01-14T23:00:00 0..12`},
	{"hours across, each with its letter and a grade behind, the day in three columns",
		"CODIGO;ANO;MES;DIA;H01;V01;H02;V02;H03;V03;H04;V04;H05;V05;H06;V06;H07;V07;H08;V08;H09;V09;H10;V10;H11;V11;H12;V12;H13;V13;H14;V14;H15;V15;H16;V16;H17;V17;H18;V18;H19;V19;H20;V20;H21;V21;H22;V22;H23;V23;H24;V24\n7;2026;01;13;2,5;V;3,5;V;4,5;V;5,5;V;6,5;V;7,5;V;8,5;V;9,5;V;10,5;V;11,5;V;12,5;V;13,5;V;14,5;V;13,5;V;12,5;V;11,5;V;10,5;V;9,5;V;8,5;V;7,5;V;6,5;V;5,5;V;4,5;V;3,5;V\n7;2026;01;14;1,5;V;2,5;V;3,5;V;4,5;V;5,5;V;6,5;V;7,5;V;8,5;V;9,5;V;10,5;V;11,5;V;12,5;V;13,5;V;12,5;V;11,5;V;10,5;V;9,5;V;8,5;V;7,5;V;6,5;V;5,5;V;4,5;V;3,5;V;2,5;V\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [2 3 4] ymd
f|CODIGO|1 other n2 m0 u0 2026-01-13T01:00:00..2026-01-14T01:00:00 7..7
f||5 other n48 m0 u0 2026-01-13T01:00:00..2026-01-15T00:00:00 1.5..14.5`},
	{"places, quantities and units in three rows, each row named in its corner",
		"Position,north,north,bay 3,bay 3\nParameter,T,RH,T,RH\nUnit,°C,%,°C,%\n2026-01-13 00:00,4.5,80,6.5,70\n2026-01-13 01:00,4.0,81,6.0,71\n",
		`utf-8 "," "." line 4 rows 2 bad 0 clock [1] ymd
north|T|2 air_temperature degC units_row n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
north|RH|3 relative_humidity percent units_row n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81
bay 3|T|4 air_temperature degC units_row n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 6..6.5
bay 3|RH|5 relative_humidity percent units_row n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.7..0.71`},
	{"the clock's name alone in the last line of the header",
		"what,humidity,humidity,temperature,temperature\nroom,pantry,loft,pantry,loft\ntime,,,,\n2026-01-13 00:00,80.5,70.5,4.5,6.5\n2026-01-13 01:00,81.0,71.0,4.0,6.0\n",
		`utf-8 "," "." line 4 rows 2 bad 0 clock [1] ymd
pantry|pantry|2 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.805..0.81
pantry|pantry|4 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
loft|loft|3 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.705..0.71
loft|loft|5 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 6..6.5`},
	{"the clock's name alone below places, quantities and units, with its zone; no words in the corners",
		";North;North;South;South\n;Lufttemperatur;Relative Feuchte;Lufttemperatur;Relative Feuchte\n;°C;%;°C;%\nZeitpunkt (MEZ);;;;\n13.01.2026 00:00;4,5;80;6,5;70\n13.01.2026 01:00;4,0;81;6,0;71\n",
		`utf-8 ";" "," line 5 rows 2 bad 0 clock [1] dmy +01:00 file
North|Lufttemperatur|2 air_temperature degC units_row n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
North|Relative Feuchte|3 relative_humidity percent units_row n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81
South|Lufttemperatur|4 air_temperature degC units_row n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 6..6.5
South|Relative Feuchte|5 relative_humidity percent units_row n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.7..0.71`},
	{"words under a few of the names, grades under others, places above them",
		",北町,北町,北町,北町,北町,北町,北町\n日時,気温(℃),気温(℃),風速(m/s),風速(m/s),風速(m/s),相対湿度(％),相対湿度(％)\n,,,,,風向,,\n,,品質情報,,品質情報,,,品質情報\n2026/1/13 1:00,4.5,8,1.5,8,北,80,8\n2026/1/13 2:00,4.0,8,2.5,8,南,81,8\n",
		`utf-8 "," "." line 5 rows 2 bad 0 clock [1] ymd
北町|気温(℃)|2 air_temperature degC header n2 m0 u0 2026-01-13T01:00:00..2026-01-13T02:00:00 4..4.5
北町|相対湿度(％)|7 relative_humidity percent header n2 m0 u0 2026-01-13T01:00:00..2026-01-13T02:00:00 0.8..0.81
f|風速(m/s)|4 other m/s header n2 m0 u0 2026-01-13T01:00:00..2026-01-13T02:00:00 1.5..2.5`},
	{"the number of a plot below each of the names, which come again; near the soil is no temperature of it",
		"Time,Air temperature 20 cm above soil (°C),Air temperature 20 cm above soil (°C),Relative humidity (%),Relative humidity (%),Soil temperature (°C),Soil temperature (°C)\nPlot,1,2,1,2,1,2\n2026-01-13 00:00,4.5,6.5,80,70,3.5,3.4\n2026-01-13 01:00,4.0,6.0,81,71,3.4,3.3\n",
		`utf-8 "," "." line 3 rows 2 bad 0 clock [1] ymd
Plot 1|Air temperature 20 cm above soil (°C)|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
Plot 1|Relative humidity (%)|4 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81
Plot 1|Soil temperature (°C)|6 other degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 3.4..3.5
Plot 2|Air temperature 20 cm above soil (°C)|3 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 6..6.5
Plot 2|Relative humidity (%)|5 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.7..0.71
Plot 2|Soil temperature (°C)|7 other degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 3.3..3.4`},
	{"a logger below each of the names, which come again",
		"Time,Temp °C,Temp °C,RH %,RH %\nLogger,loft,barn,loft,barn\n2026-01-13 00:00,4.5,6.5,80,70\n2026-01-13 01:00,4.0,6.0,81,71\n",
		`utf-8 "," "." line 3 rows 2 bad 0 clock [1] ymd
loft|Temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
loft|RH %|4 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81
barn|Temp °C|3 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 6..6.5
barn|RH %|5 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.7..0.71`},
	{"units over the columns they stand over in a printed table, from the second column on, places of two words",
		"  FECHA     HORA  TEMP   HUM    PNM   DD     FF     NOMBRE\n          [HOA]  [ºC]   [%]  [hPa]  [gr] [km/hr]\n 13012026     0   4.5   80  1012.9  180   14     CASA NORTE\n 13012026     1   4.0   81  1013.4  160    5     CASA NORTE\n 13012026     2   3.5   82  1013.2   20   11     CASA NORTE\n 13012026     3   3.0   83  1013.7  260   15     CASA NORTE\n",
		`utf-8 "blanks" "." line 3 rows 4 bad 0 clock [1 2] dmy
f|TEMP|3 air_temperature degC units_row n4 m0 u0 2026-01-13T00:00:00..2026-01-13T03:00:00 3..4.5
f|HUM|4 relative_humidity percent units_row n4 m0 u0 2026-01-13T00:00:00..2026-01-13T03:00:00 0.8..0.83
f|PNM|5 other hPa units_row n4 m0 u0 2026-01-13T00:00:00..2026-01-13T03:00:00 1012.9..1013.7
f|DD|6 other n4 m0 u0 2026-01-13T00:00:00..2026-01-13T03:00:00 20..260
f|FF|7 other km/h units_row n4 m0 u0 2026-01-13T00:00:00..2026-01-13T03:00:00 5..15`},
	{"an hour beside kilometres is no humidity",
		"Time,Temp °C,Viento km/hr,HR %\n2026-01-13 00:00,4.5,12,80\n2026-01-13 01:00,4.0,15,81\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|Temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|Viento km/hr|3 other km/h header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 12..15
f|HR %|4 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"names behind the word that leads to them, in a comment; of two temperatures one is of the ground",
		"% trial at the shed\n% columns: year month day hour minute second Tair[degC] RH[%] Tground[degC]\n2026 1 13 0 0 0 4.5 80.5 2.5\n2026 1 13 0 30 0 4.0 81.0 2.6\n2026 1 13 1 0 0 3.5 82.0 2.7\n",
		`utf-8 "blanks" "." line 3 rows 3 bad 0 clock [1 2 3 4 5] ymd
f|Tair[degC]|7 air_temperature degC header n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 3.5..4.5
f|RH[%]|8 relative_humidity percent header n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.805..0.82
f|Tground[degC]|9 other degC header n3 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 2.5..2.7`},
	{"no names, and of three columns only two may be of air",
		"2026-01-13 00:00,4.5,80.5,3.0\n2026-01-13 01:00,4.6,80.3,3.0\n2026-01-13 02:00,4.7,80.1,3.0\n2026-01-13 03:00,4.8,79.9,3.0\n2026-01-13 04:00,4.9,79.7,3.0\n2026-01-13 05:00,5.0,79.5,3.0\n2026-01-13 06:00,5.1,79.3,3.0\n2026-01-13 07:00,5.2,79.1,3.0\n2026-01-13 08:00,5.3,78.9,3.0\n2026-01-13 09:00,5.4,78.7,3.0\n2026-01-13 10:00,5.5,78.5,3.0\n2026-01-13 11:00,5.6,78.3,3.0\n2026-01-13 12:00,5.7,78.1,3.0\n",
		`utf-8 "," "." line 1 rows 13 bad 0 clock [1] ymd
f||2 air_temperature degC values n13 m0 u0 2026-01-13T00:00:00..2026-01-13T12:00:00 4.5..5.7
f||3 relative_humidity percent values n13 m0 u0 2026-01-13T00:00:00..2026-01-13T12:00:00 0.7809999999999999..0.805
f||4 other n13 m0 u0 2026-01-13T00:00:00..2026-01-13T12:00:00 3..3
note nameless 1:0 x1`},
	{"no names, and of three columns two may be temperatures",
		"2026-01-13 00:00,4.5,80.5,7.5\n2026-01-13 01:00,4.6,80.3,7.6\n2026-01-13 02:00,4.7,80.1,7.7\n2026-01-13 03:00,4.8,79.9,7.8\n2026-01-13 04:00,4.9,79.7,7.9\n2026-01-13 05:00,5.0,79.5,8.0\n2026-01-13 06:00,5.1,79.3,8.1\n2026-01-13 07:00,5.2,79.1,8.2\n2026-01-13 08:00,5.3,78.9,8.3\n2026-01-13 09:00,5.4,78.7,8.4\n2026-01-13 10:00,5.5,78.5,8.5\n2026-01-13 11:00,5.6,78.3,8.6\n2026-01-13 12:00,5.7,78.1,8.7\n",
		`utf-8 "," "." line 1 rows 13 bad 0 clock [1] ymd
f||2 air_temperature degC values n13 m0 u0 2026-01-13T00:00:00..2026-01-13T12:00:00 4.5..5.7
f||3 relative_humidity percent values n13 m0 u0 2026-01-13T00:00:00..2026-01-13T12:00:00 0.7809999999999999..0.805
f||4 other n13 m0 u0 2026-01-13T00:00:00..2026-01-13T12:00:00 7.5..8.7
ask pairing [in_order apart]
note nameless 1:0 x1`},
	{"places in the header, what they hold in the title, with words beside",
		"Stundas vidējā gaisa temperatūra, °C\nDatums/laiks;Jaunciems;Vecpils\n13.01.2026 00:00;4,5;5,5\n13.01.2026 01:00;4,0;5,0\n",
		`utf-8 ";" "," line 3 rows 2 bad 0 clock [1] dmy
f|Jaunciems|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|Vecpils|3 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 5..5.5`},
	{"places in the header, a title of two quantities",
		"Air temperature, °C, and its humidity\nTime;North;South\n13.01.2026 00:00;4,5;5,5\n13.01.2026 01:00;4,0;5,0\n",
		`utf-8 ";" "," line 3 rows 2 bad 0 clock [1] dmy
f|North|2 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|South|3 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 5..5.5
ask quantity [air_temperature other]`},
	{"a limit and a unit in the lines above name no quantity of the columns",
		"High limit: temperature 30 °C\nTemperature unit: °C\nTime;North;South\n13.01.2026 00:00;4,5;5,5\n13.01.2026 01:00;4,0;5,0\n",
		`utf-8 ";" "," line 4 rows 2 bad 0 clock [1] dmy
f|North|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|South|3 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 5..5.5
ask quantity [air_temperature other]`},
	{"treatments in words and their numbered repetitions at the same times",
		"year,month,day,hour,minute,treatment,rep,Ta,RH\n2026,1,13,0,0,open,1,4.6,81.5\n2026,1,13,0,0,open,2,4.7,82.5\n2026,1,13,0,0,shade,1,5.6,81.5\n2026,1,13,0,0,shade,2,5.7,82.5\n2026,1,13,0,30,open,1,4.6,84.5\n2026,1,13,0,30,open,2,4.7,85.5\n2026,1,13,0,30,shade,1,5.6,84.5\n2026,1,13,0,30,shade,2,5.7,85.5\n2026,1,13,1,0,open,1,5.6,81.5\n2026,1,13,1,0,open,2,5.7,82.5\n2026,1,13,1,0,shade,1,6.6,81.5\n2026,1,13,1,0,shade,2,6.7,82.5\n2026,1,13,1,30,open,1,5.6,84.5\n2026,1,13,1,30,open,2,5.7,85.5\n2026,1,13,1,30,shade,1,6.6,84.5\n2026,1,13,1,30,shade,2,6.7,85.5\n",
		`utf-8 "," "." line 2 rows 16 bad 0 clock [1 2 3 4 5] ymd
open 1|Ta|8 air_temperature degC values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 4.6..5.6
open 1|RH|9 relative_humidity percent values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 0.815..0.845
open 2|Ta|8 air_temperature degC values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 4.7..5.7
open 2|RH|9 relative_humidity percent values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 0.825..0.855
shade 1|Ta|8 air_temperature degC values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 5.6..6.6
shade 1|RH|9 relative_humidity percent values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 0.815..0.845
shade 2|Ta|8 air_temperature degC values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 5.7..6.7
shade 2|RH|9 relative_humidity percent values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 0.825..0.855`},
	{"numbers of blocks and of treatments at the same times",
		"Time,block,treatment,T,RH\n2026-01-13 00:00,1,1,5.6,81.5\n2026-01-13 00:00,1,2,6.6,81.5\n2026-01-13 00:00,1,3,7.6,81.5\n2026-01-13 00:00,2,1,5.7,82.5\n2026-01-13 00:00,2,2,6.7,82.5\n2026-01-13 00:00,2,3,7.7,82.5\n2026-01-13 00:30,1,1,5.6,84.5\n2026-01-13 00:30,1,2,6.6,84.5\n2026-01-13 00:30,1,3,7.6,84.5\n2026-01-13 00:30,2,1,5.7,85.5\n2026-01-13 00:30,2,2,6.7,85.5\n2026-01-13 00:30,2,3,7.7,85.5\n2026-01-13 01:00,1,1,6.6,81.5\n2026-01-13 01:00,1,2,7.6,81.5\n2026-01-13 01:00,1,3,8.6,81.5\n2026-01-13 01:00,2,1,6.7,82.5\n2026-01-13 01:00,2,2,7.7,82.5\n2026-01-13 01:00,2,3,8.7,82.5\n2026-01-13 01:30,1,1,6.6,84.5\n2026-01-13 01:30,1,2,7.6,84.5\n2026-01-13 01:30,1,3,8.6,84.5\n2026-01-13 01:30,2,1,6.7,85.5\n2026-01-13 01:30,2,2,7.7,85.5\n2026-01-13 01:30,2,3,8.7,85.5\n",
		`utf-8 "," "." line 2 rows 24 bad 0 clock [1] ymd
1 1|T|4 air_temperature degC values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 5.6..6.6
1 1|RH|5 relative_humidity percent values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 0.815..0.845
1 2|T|4 air_temperature degC values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 6.6..7.6
1 2|RH|5 relative_humidity percent values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 0.815..0.845
1 3|T|4 air_temperature degC values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 7.6..8.6
1 3|RH|5 relative_humidity percent values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 0.815..0.845
2 1|T|4 air_temperature degC values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 5.7..6.7
2 1|RH|5 relative_humidity percent values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 0.825..0.855
2 2|T|4 air_temperature degC values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 6.7..7.7
2 2|RH|5 relative_humidity percent values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 0.825..0.855
2 3|T|4 air_temperature degC values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 7.7..8.7
2 3|RH|5 relative_humidity percent values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 0.825..0.855`},
	{"several readings at each time that nothing tells apart",
		"Time,T,RH\n2026-01-13 00:00,5.5,81.5\n2026-01-13 00:00,6.5,82.5\n2026-01-13 00:00,7.5,83.5\n2026-01-13 00:30,5.5,84.5\n2026-01-13 00:30,6.5,85.5\n2026-01-13 00:30,7.5,86.5\n2026-01-13 01:00,6.5,81.5\n2026-01-13 01:00,7.5,82.5\n2026-01-13 01:00,8.5,83.5\n2026-01-13 01:30,6.5,84.5\n2026-01-13 01:30,7.5,85.5\n2026-01-13 01:30,8.5,86.5\n",
		`utf-8 "," "." line 2 rows 12 bad 0 clock [1] ymd
f|T|2 air_temperature degC values n12 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 5.5..8.5
f|RH|3 relative_humidity percent values n12 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 0.815..0.865
note same_times 2:1 x1`},
	{"a code of where rows are from, beside the station's name",
		"STATION,SOURCE,DATE,T,RH\nN1,7,2026-01-13 00:00,4.5,80.5\nN1,6,2026-01-13 01:00,5.5,81.5\nN1,7,2026-01-13 02:00,6.5,82.5\nN1,7,2026-01-13 03:00,7.5,83.5\n",
		`utf-8 "," "." line 2 rows 4 bad 0 clock [3] ymd
N1|T|4 air_temperature degC values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T03:00:00 4.5..7.5
N1|RH|5 relative_humidity percent values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T03:00:00 0.805..0.835`},
	{"a code of the unit of each variable, beside the station's name",
		"date,id_station,id_parameter,value,unit\n2026-01-13 00:00,N1,TMP,4.5,5\n2026-01-13 00:00,N1,RH,80.5,6\n2026-01-13 01:00,N1,TMP,5.5,5\n2026-01-13 01:00,N1,RH,81.5,6\n2026-01-13 02:00,N1,TMP,6.5,5\n2026-01-13 02:00,N1,RH,82.5,6\n2026-01-13 03:00,N1,TMP,7.5,5\n2026-01-13 03:00,N1,RH,83.5,6\n",
		`utf-8 "," "." line 2 rows 8 bad 0 clock [1] ymd
N1|value|4 air_temperature degC values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T03:00:00 4.5..7.5
N1|value|4 relative_humidity percent values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T03:00:00 0.805..0.835`},
	{"a number without which times come again tells loggers apart",
		"station,unit,time,T,RH\nN1,1,2026-01-13 00:00,5.5,81.5\nN1,2,2026-01-13 00:00,6.5,82.5\nN1,1,2026-01-13 01:00,6.5,82.5\nN1,2,2026-01-13 01:00,7.5,83.5\nN1,1,2026-01-13 02:00,7.5,83.5\nN1,2,2026-01-13 02:00,8.5,84.5\n",
		`utf-8 "," "." line 2 rows 6 bad 0 clock [3] ymd
1|T|4 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 5.5..7.5
1|RH|5 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.815..0.835
2|T|4 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 6.5..8.5
2|RH|5 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.825..0.845`},
	{"three lines of names above the clock's",
		"what,temperature,temperature,humidity,humidity\nof,air,air,air,air\nroom,pantry,loft,pantry,loft\ntime,,,,\n2026-01-13 00:00,4.5,6.5,80.5,70.5\n2026-01-13 01:00,4.0,6.0,81.0,71.0\n",
		`utf-8 "," "." line 5 rows 2 bad 0 clock [1] ymd
pantry|pantry|2 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
pantry|pantry|4 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.805..0.81
loft|loft|3 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 6..6.5
loft|loft|5 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.705..0.71`},
	{"empty columns to the right, empty rows below",
		"Time,Temp C,RH %,,,,,\n2026-01-13 00:00,4.5,80,,,,,\n2026-01-13 01:00,4.0,81,,,,,\n,,,,,,,\n,,,,,,,\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|Temp C|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|RH %|3 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"printed in pages, each begun with a form feed, its number, the header and a rule",
		"Page 1\nDate       Time   Temp  RH\n--------------------------\n13-01-2026 00:00  4.5  80\n13-01-2026 00:30  4.0  81\n\fPage 2\nDate       Time   Temp  RH\n--------------------------\n13-01-2026 01:00  3.5  82\n13-01-2026 01:30  3.0  83\n",
		`utf-8 "blanks" "." line 4 rows 4 bad 0 clock [1 2] dmy
f|Temp|3 air_temperature degC values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 3..4.5
f|RH|4 relative_humidity percent values n4 m0 u0 2026-01-13T00:00:00..2026-01-13T01:30:00 0.8..0.83
note foot 6:0 x2`},
	{"words of the logger's own in the last rows are no logger's name",
		"Time,Temp C,RH %,Host Connected\n2026-01-13 00:00,4.5,80,\n2026-01-13 01:00,4.0,81,\n2026-01-13 02:00,3.5,82,\n2026-01-13 02:05,,,Logged\n",
		`utf-8 "," "." line 2 rows 4 bad 0 clock [1] ymd
f|Temp C|2 air_temperature degC header n3 m1 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3.5..4.5
f|RH %|3 relative_humidity percent header n3 m1 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.8..0.82`},
	{"differences and a fan's own limits are no air's temperature",
		"Date,Temp C,Delta T C,Temp offset,Fan on temp C\n2026-01-13 00:00,4.5,0.3,0.1,5.0\n2026-01-13 01:00,4.0,0.2,0.1,5.0\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|Temp C|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|Delta T C|3 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.2..0.3
f|Temp offset|4 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.1..0.1
f|Fan on temp C|5 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 5..5`},
	{"a letter behind a place casts no doubt on the unit behind the others",
		"Date,Fan temp setpoint F,Room temp F,Room F,RH\n2026-01-13 00:00,40.0,41.0,41.0,80\n2026-01-13 01:00,40.0,50.0,50.0,81\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|Fan temp setpoint F|2 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 40..40
f|Room temp F|3 air_temperature degF header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 5..10
f|Room F|4 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 41..50
f|RH|5 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"places in the header, what they hold in the title",
		"Temperatures (°C)\nTime,North,South\n2026-01-13 00:00,4.5,5.5\n2026-01-13 01:00,4.0,5.0\n",
		`utf-8 "," "." line 3 rows 2 bad 0 clock [1] ymd
f|North|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|South|3 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 5..5.5`},
	{"the same table twice, its dates written in two ways",
		"Date,Temp C\n13/01/2026 10:00,4.5\n13/01/2026 11:00,4.0\nDate,Temp C\n2026-01-13 12:00,3.5\n2026-01-13 13:00,3.0\n2026-01-13 14:00,2.5\n",
		`utf-8 "," "." line 2 rows 5 bad 0 clock [1] dmy
f|Temp C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4..4.5
f|Temp C|2 air_temperature degC header n3 m0 u0 2026-01-13T12:00:00..2026-01-13T14:00:00 2.5..3.5`},
	{"dates written in another way above most of the rows: those rows are read as well, and the header is found",
		"Date,Temp C\n13/01/2026 00:00,4.5\n13/01/2026 00:10,4.5\n13/01/2026 00:20,4.5\n13/01/2026 00:30,4.5\n13/01/2026 00:40,4.5\n13/01/2026 00:50,4.5\n13/01/2026 01:00,4.5\n13/01/2026 01:10,4.5\n13/01/2026 01:20,4.5\n13/01/2026 01:30,4.5\n13/01/2026 01:40,4.5\n13/01/2026 01:50,4.5\n13/01/2026 02:00,4.5\n13/01/2026 02:10,4.5\n13/01/2026 02:20,4.5\n13/01/2026 02:30,4.5\n13/01/2026 02:40,4.5\n13/01/2026 02:50,4.5\n13/01/2026 03:00,4.5\n13/01/2026 03:10,4.5\n13/01/2026 03:20,4.5\n13/01/2026 03:30,4.5\n13/01/2026 03:40,4.5\n13/01/2026 03:50,4.5\n2026-01-13 04:00,3.5\n2026-01-13 04:10,3.5\n2026-01-13 04:20,3.5\n2026-01-13 04:30,3.5\n2026-01-13 04:40,3.5\n2026-01-13 04:50,3.5\n2026-01-13 05:00,3.5\n2026-01-13 05:10,3.5\n2026-01-13 05:20,3.5\n2026-01-13 05:30,3.5\n2026-01-13 05:40,3.5\n2026-01-13 05:50,3.5\n2026-01-13 06:00,3.5\n2026-01-13 06:10,3.5\n2026-01-13 06:20,3.5\n2026-01-13 06:30,3.5\n2026-01-13 06:40,3.5\n2026-01-13 06:50,3.5\n2026-01-13 07:00,3.5\n2026-01-13 07:10,3.5\n2026-01-13 07:20,3.5\n2026-01-13 07:30,3.5\n2026-01-13 07:40,3.5\n2026-01-13 07:50,3.5\n2026-01-13 08:00,3.5\n2026-01-13 08:10,3.5\n2026-01-13 08:20,3.5\n2026-01-13 08:30,3.5\n2026-01-13 08:40,3.5\n2026-01-13 08:50,3.5\n",
		`utf-8 "," "." line 2 rows 54 bad 0 clock [1] ymd
f|Temp C|2 air_temperature degC header n54 m0 u0 2026-01-13T00:00:00..2026-01-13T08:50:00 3.5..4.5`},
	{"names with blanks in a printed table",
		"  Date      Time    Temp A    Temp B     RH A   RH B\n01-13-26  08:00AM      4.5      5.5    80.0   70.0\n01-13-26  09:00AM      4.0      5.0    81.0   71.0\n",
		`utf-8 "blanks" "." line 2 rows 2 bad 0 clock [1 2] mdy
A|Temp A|3 air_temperature n2 m0 u0 2026-01-13T08:00:00..2026-01-13T09:00:00 4..4.5
A|RH A|5 relative_humidity percent values n2 m0 u0 2026-01-13T08:00:00..2026-01-13T09:00:00 0.8..0.81
B|Temp B|4 air_temperature n2 m0 u0 2026-01-13T08:00:00..2026-01-13T09:00:00 5..5.5
B|RH B|6 relative_humidity percent values n2 m0 u0 2026-01-13T08:00:00..2026-01-13T09:00:00 0.7..0.71
ask temperature_unit [degC degF]`},
	{"Norwegian",
		"Tid;Lufttemperatur;Relativ luftfuktighet;Duggpunkt\n13.01.2026 00:00;4,5;80;1,4\n13.01.2026 01:00;4,0;81;1,1\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] dmy
f|Lufttemperatur|2 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|Relativ luftfuktighet|3 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81
f|Duggpunkt|4 dew_point degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 1.1..1.4`},
	{"Ukrainian",
		"Дата і час;Температура, °C;Вологість, %\n13.01.2026 00:00;4,5;80\n13.01.2026 01:00;4,0;81\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] dmy
f|Температура, °C|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|Вологість, %|3 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"Korean",
		"일시,기온(°C),습도(%)\n2026-01-13 00:00,4.5,80\n2026-01-13 01:00,4.0,81\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|기온(°C)|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|습도(%)|3 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"lines that a spreadsheet took for one cell each",
		"\"Date,Temp (°C),Note,RH (%)\"\n\"2026-01-13 00:00,4.5,\"\"calm, dry\"\",80\"\n\"2026-01-13 01:00,4.0,,81\"\n\"2026-01-13 02:00,3.5,,82\"\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] ymd
f|Temp (°C)|2 air_temperature degC header n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3.5..4.5
f|RH (%)|4 relative_humidity percent header n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.8..0.82`},
	{"names that but number the columns",
		"created_at,entry_id,field1,field2\n2026-01-13 00:00:00 UTC,1,4.5,80.5\n2026-01-13 01:00:00 UTC,2,4.0,81.0\n2026-01-13 02:00:00 UTC,3,3.5,82.0\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] ymd +00:00 file
f|field1|3 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00Z..2026-01-13T02:00:00Z 3.5..4.5
f|field2|4 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00Z..2026-01-13T02:00:00Z 0.805..0.82
ask pairing [in_order apart]`},
	{"Turkish",
		"Tarih;Saat;Sıcaklık (°C);Nem (%)\n13.01.2026;00:00;4,5;80\n13.01.2026;01:00;4,0;81\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1 2] dmy
f|Sıcaklık (°C)|3 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|Nem (%)|4 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"a column of °C and one of %, named by a letter and by a level",
		"time,t2m [K],d2m [K],r [%]\n2026-01-13 00:00:00,277.65,274.15,80\n2026-01-13 01:00:00,278.15,273.15,81\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|t2m [K]|2 air_temperature K header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4.5..5
f|d2m [K]|3 dew_point K header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0..1
f|r [%]|4 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"names of places over numbers that may be a humidity and a temperature, or two temperatures in °F",
		"timestamp,north,south\n2026-01-13 00:00,52.0,21.0\n2026-01-13 01:00,52.1,21.5\n2026-01-13 02:00,52.2,22.0\n2026-01-13 03:00,52.3,21.0\n2026-01-13 04:00,52.4,21.5\n2026-01-13 05:00,52.5,22.0\n2026-01-13 06:00,52.6,21.0\n2026-01-13 07:00,52.0,21.5\n2026-01-13 08:00,52.1,22.0\n2026-01-13 09:00,52.2,21.0\n2026-01-13 10:00,52.3,21.5\n2026-01-13 11:00,52.4,22.0\n2026-01-13 12:00,52.5,21.0\n2026-01-13 13:00,52.6,21.5\n",
		`utf-8 "," "." line 2 rows 14 bad 0 clock [1] ymd
f|north|2 relative_humidity percent values n14 m0 u0 2026-01-13T00:00:00..2026-01-13T13:00:00 0.52..0.526
f|south|3 air_temperature degC values n14 m0 u0 2026-01-13T00:00:00..2026-01-13T13:00:00 21..22
ask pairing [in_order apart]`},
	{"what meters of electricity print, by letters",
		"ts,V,I,f,P\n2026-01-13 00:00,230.5,8.5,60.5,962\n2026-01-13 01:00,231.0,6.5,60.0,773\n2026-01-13 02:00,230.0,7.5,60.0,880\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] ymd
f|V|2 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 230..231
f|I|3 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 6.5..8.5
f|f|4 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 60..60.5
f|P|5 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 773..962`},
	{"meters told apart by numbers",
		"building_id,meter,timestamp,meter_reading\n1,0,2026-01-13 00:00:00,60.1\n1,1,2026-01-13 00:00:00,20.1\n1,0,2026-01-13 01:00:00,65.0\n1,1,2026-01-13 01:00:00,25.0\n1,0,2026-01-13 02:00:00,70.5\n1,1,2026-01-13 02:00:00,30.5\n",
		`utf-8 "," "." line 2 rows 6 bad 0 clock [3] ymd
0|meter_reading|4 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 60.1..70.5
1|meter_reading|4 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 20.1..30.5`},
	{"a column that never changes is no humidity",
		"time,value1,value2\n2026-01-13 00:00,4.5,60.0\n2026-01-13 01:00,4.0,60.0\n2026-01-13 02:00,3.5,60.0\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] ymd
f|value1|2 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3.5..4.5
f|value2|3 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 60..60`},
	{"a small t for a time, and a depth, beside the temperature",
		"Date;T;U;tR;T10\n2026-01-13 00:00;4.5;80;12;6.5\n2026-01-13 01:00;4.0;81;12;6.5\n2026-01-13 02:00;3.5;82;12;6.0\n",
		`utf-8 ";" "." line 2 rows 3 bad 0 clock [1] ymd
f|T|2 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3.5..4.5
f|U|3 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.8..0.82
f|tR|4 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 12..12
f|T10|5 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 6..6.5`},
	{"the temperature of a sensor of humidity, and what was made of several readings, in one remark",
		"start,RHMean,RHMinimum,tempRHMean,tempRHMaximum,tempRHVariance\n2026-01-13T00:00:00Z,82.5,81.5,1.5,2.0,0.1\n2026-01-13T00:30:00Z,81.5,80.5,-0.5,0.5,0.1\n2026-01-13T01:00:00Z,80.5,79.5,1.0,1.5,0.1\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] ymd +00:00 file
f|RHMean|2 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00Z..2026-01-13T01:00:00Z 0.805..0.825
f|RHMinimum|3 other n3 m0 u0 2026-01-13T00:00:00Z..2026-01-13T01:00:00Z 79.5..81.5
f|tempRHMean|4 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00Z..2026-01-13T01:00:00Z -0.5..1.5
f|tempRHMaximum|5 other n3 m0 u0 2026-01-13T00:00:00Z..2026-01-13T01:00:00Z 0.5..2
f|tempRHVariance|6 other n3 m0 u0 2026-01-13T00:00:00Z..2026-01-13T01:00:00Z 0.1..0.1
note statistic 2:3 x1`},
	{"the temperature of a sensor of humidity beside that of the air",
		"time,T,RH,T_RH\n2026-01-13 00:00,4.5,80,5.5\n2026-01-13 01:00,4.0,81,5.0\n2026-01-13 02:00,3.5,82,4.5\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] ymd
f|T|2 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3.5..4.5
f|RH|3 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.8..0.82
f|T_RH|4 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 4.5..5.5`},
	{"a counter counts nothing of the readings",
		"Time;Energy counter [kWh];T [°C]\n2026-01-13 00:00;812.5;4.5\n2026-01-13 01:00;813.5;4.0\n",
		`utf-8 ";" "." line 2 rows 2 bad 0 clock [1] ymd
f|Energy counter [kWh]|2 other kWh header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 812.5..813.5
f|T [°C]|3 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5`},
	{"uncertainties of readings, in five ways",
		"time,T,u_T,T_se,T_unc,sigma_T,RH,u_RH\n2026-01-13 00:00,4.5,0.2,0.1,0.2,0.3,80,1.5\n2026-01-13 01:00,4.0,0.2,0.1,0.2,0.4,81,1.5\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|T|2 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|u_T|3 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.2..0.2
f|T_se|4 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.1..0.1
f|T_unc|5 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.2..0.2
f|sigma_T|6 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.3..0.4
f|RH|7 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81
f|u_RH|8 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 1.5..1.5
note statistic 2:3 x1`},
	{"a place called se beside another",
		"time,T_nw,RH_nw,T_se,RH_se\n2026-01-13 00:00,4.5,80,5.5,70\n2026-01-13 01:00,4.0,81,5.0,71\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
nw|T_nw|2 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
nw|RH_nw|3 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81
se|T_se|4 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 5..5.5
se|RH_se|5 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.7..0.71`},
}

func TestDrawer(t *testing.T) { checkShapes(t, drawer) }

// One date may stand for all rows of its day.
func TestDateOfTheDayAlone(t *testing.T) {
	var log strings.Builder
	log.WriteString("Date,Time,Temp (°C)\n")
	for minute := 0; minute < 3*24*60; minute += 10 {
		date := ""
		if minute%(24*60) == 0 {
			date = "2026-01-" + strconv.Itoa(13+minute/(24*60))
		}
		fmt.Fprintf(&log, "%s,%02d:%02d,4.5\n", date, minute/60%24, minute%60)
	}
	e, err := Read(context.Background(), strings.NewReader(log.String()), "f.csv", nil)
	if err != nil {
		t.Fatal(err)
	}
	got := e.Series[0].Summary() // 144 readings a day for three days, ten minutes apart
	last := time.Date(2026, 1, 15, 23, 50, 0, 0, time.UTC).UnixMilli()
	if got.Readings != 432 || got.LastMS != last || got.IntervalMS != 10*minuteMS || got.Gaps != 0 {
		t.Errorf("got %+v", got)
	}
}

// started hold files whose rows tell no time of their own: it follows from what stands above them.
var started = []struct{ name, in, want string }{
	{"rows that are numbered, the start and the interval above",
		"Start: 2026-01-13 08:00:00\nInterval: 00:10:00\nNo;Temp °C;RH %\n1;4.5;80\n2;4.0;81\n3;3.5;82\n", `utf-8 ";" "." line 4 rows 3 bad 0 clock [1] ymd
f|Temp °C|2 air_temperature degC header n3 m0 u0 2026-01-13T08:00:00..2026-01-13T08:20:00 3.5..4.5
f|RH %|3 relative_humidity percent header n3 m0 u0 2026-01-13T08:00:00..2026-01-13T08:20:00 0.8..0.82`},
	{"the start's date and time and the interval's unit each in a cell",
		"Start date:,13/01/2026\nStart time:,08:00:00\nSample interval (s):,600\n\nSample,Temp (°C),RH (%)\n1,4.5,80\n2,4.0,81\n3,3.5,82\n", `utf-8 "," "." line 6 rows 3 bad 0 clock [1] dmy
f|Temp (°C)|2 air_temperature degC header n3 m0 u0 2026-01-13T08:00:00..2026-01-13T08:20:00 3.5..4.5
f|RH (%)|3 relative_humidity percent header n3 m0 u0 2026-01-13T08:00:00..2026-01-13T08:20:00 0.8..0.82`},
	{"an interval in minutes, rows numbered from nought",
		"Begin=13.01.2026 08:00\nMeasuring interval=15 min\nNo\tTemp °C\n0\t4.5\n1\t4.0\n2\t3.5\n3\t3.0\n", `utf-8 "\t" "." line 4 rows 4 bad 0 clock [1] dmy
f|Temp °C|2 air_temperature degC header n4 m0 u0 2026-01-13T08:00:00..2026-01-13T08:45:00 3..4.5`},
	{"seconds from a start that has no mark behind its word",
		"Start 2026-01-13 08:00:00\nsec\ttemp\trh\n0\t4.5\t80\n600\t4.0\t81\n1200\t3.5\t82\n", `utf-8 "\t" "." line 3 rows 3 bad 0 clock [1] ymd
f|temp|2 air_temperature degC values n3 m0 u0 2026-01-13T08:00:00..2026-01-13T08:20:00 3.5..4.5
f|rh|3 relative_humidity percent values n3 m0 u0 2026-01-13T08:00:00..2026-01-13T08:20:00 0.8..0.82`},
}

func TestStarted(t *testing.T) { checkShapes(t, started) }
