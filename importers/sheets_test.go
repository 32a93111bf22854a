package importers

import (
	"slices"
	"testing"
)

// sheets hold small files of our own as spreadsheets and printed tables have them: words over several columns, tables
// side by side, rows of units, hours by days; each with what a person reads in it.
var sheets = []struct{ name, in, want string }{
	{"a row of units with dates and times spelt out, the clock last",
		"temperatura;humedad;latitud;altitud;fecha;hora;\n*C;%;*;m;aa/mm/dd;h:m:s;\n4.5;80;-34.6;25;26/01/13;23:30:00;\n4.0;81;-34.6;25;26/01/14;00:00:00;\n3.5;82;-34.6;25;26/01/14;00:30:00;\n3.0;82;-34.6;25;26/01/14;01:00:00;\n",
		`utf-8 ";" "." line 3 rows 4 bad 0 clock [5 6] ymd
f|temperatura|1 air_temperature degC units_row n4 m0 u0 2026-01-13T23:30:00..2026-01-14T01:00:00 3..4.5
f|humedad|2 relative_humidity percent units_row n4 m0 u0 2026-01-13T23:30:00..2026-01-14T01:00:00 0.8..0.82
f|latitud|3 other n4 m0 u0 2026-01-13T23:30:00..2026-01-14T01:00:00 -34.6..-34.6
f|altitud|4 other n4 m0 u0 2026-01-13T23:30:00..2026-01-14T01:00:00 25..25`},
	{"two marks between cells where the header has one",
		"Fecha;Hora;Temperatura;Humedad;CO2\n13/01/2026;12:00:00 AM;;4.5;;80;;600\n13/01/2026;01:00:00 AM;;4.0;;81;;610\n",
		`utf-8 ";" "." line 2 rows 2 bad 0 clock [1 2] dmy
f|Temperatura|4 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|Humedad|6 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81
f|CO2|8 co2 n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 600..610`},
	{"a list of columns in a comment is no header",
		"#columns: 1 date, 2 time, 3 air temperature [C], 4 relative humidity [%]\n2026-01-13 00:00 4.5 80\n2026-01-13 01:00 4.0 81\n2026-01-13 02:00 3.5 82\n",
		`utf-8 "blanks" "." line 2 rows 3 bad 0 clock [1 2] ymd
f||3 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3.5..4.5
f||4 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.8..0.82
ask pairing [in_order apart]`},
	{"initials and numbers",
		"DATE,TIME,T1,T2,H1,H2\n2026/01/13,00:00,4.5,5.5,80,70\n2026/01/13,01:00,4.0,5.0,81,71\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1 2] ymd
1|T1|3 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
1|H1|5 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81
2|T2|4 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 5..5.5
2|H2|6 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.7..0.71`},
	{"an initial and a place",
		"time,T_hive_1,T_ambient,H_ambient,weight_1\n2026-01-13 00:00,34.5,4.5,80,41.2\n2026-01-13 01:00,34.0,4.0,81,41.1\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|T_hive_1|2 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 34..34.5
f|weight_1|5 other n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 41.1..41.2
ambient|T_ambient|3 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
ambient|H_ambient|4 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"units with the values under names that say nothing",
		"Time,Ch1 Value,Ch2 Value\n2026-01-13 00:00,4.5 °C,80 %RH\n2026-01-13 01:00,4.0 °C,81 %RH\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|Ch1 Value|2 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|Ch2 Value|3 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"a current named with its unit in small letters",
		"time,current_ma\n2026-01-13 00:00,1300\n2026-01-13 01:00,20\n",
		`utf-8 "," "" line 2 rows 2 bad 0 clock [1] ymd
f|current_ma|2 current mA header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 20..1300`},
	{"daily means and extremes in short",
		"date;tmin;tmax;tmean;rhmean\n2026-01-13;1.5;7.5;4.5;80\n2026-01-14;1.0;7.0;4.0;81\n",
		`utf-8 ";" "." line 2 rows 2 bad 0 clock [1] ymd
f|tmin|2 other n2 m0 u0 2026-01-13T00:00:00..2026-01-14T00:00:00 1..1.5
f|tmax|3 other n2 m0 u0 2026-01-13T00:00:00..2026-01-14T00:00:00 7..7.5
f|tmean|4 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-14T00:00:00 4..4.5
f|rhmean|5 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-14T00:00:00 0.8..0.81
note statistic 2:2 x1`},
	{"names of channels in a block above",
		"[Header]\nDevice=alder\n[Channels]\nCH1=Temperature,°C\nCH2=Humidity,%\n[Data]\nDate,Time,CH1,CH2\n2026-01-13,00:00,4.5,80\n2026-01-13,01:00,4.0,81\n",
		`utf-8 "," "." line 8 rows 2 bad 0 clock [1 2] ymd
f|CH1|3 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|CH2|4 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"fields of a document database",
		"_id,payload.temperature,payload.humidity,received_at,device_id\n65a10001,4.5,80,2026-01-13T00:00:00.123456789Z,n1\n65a10002,4.0,81,2026-01-13T01:00:00.123456789Z,n1\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [4] ymd +00:00 file
n1|payload.temperature|2 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00.123Z..2026-01-13T01:00:00.123Z 4..4.5
n1|payload.humidity|3 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00.123Z..2026-01-13T01:00:00.123Z 0.8..0.81`},
	{"a sensor's name and a unit, each in brackets",
		"time,Temperature (air)(C),Temperature (wall)(C),Relative Humidity (%)\n2026-01-13 00:00,4.5,3.5,80\n2026-01-13 01:00,4.0,3.0,81\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|Temperature (air)(C)|2 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4..4.5
f|Temperature (wall)(C)|3 air_temperature degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 3..3.5
f|Relative Humidity (%)|4 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81`},
	{"a pivot of hours by days",
		"Temperature °C\nDate,00:00,06:00,12:00,18:00\n2026-01-13,4.5,4.0,5.0,4.2\n2026-01-14,4.4,,5.1,4.3\n2026-01-15,4.3,4.1,5.2,4.4\n",
		`utf-8 "," "." line 3 rows 3 bad 0 clock [1] ymd
f|Temperature °C|2 air_temperature degC header n11 m1 u0 2026-01-13T00:00:00..2026-01-15T18:00:00 4..5.2`},
	{"a pivot of hours by days, hours counted to 24, quantity in the corner",
		"Temp (°C);1;2;3;4;5;6;7;8;9;10;11;12;13;14;15;16;17;18;19;20;21;22;23;24\n13.01.2026;4,0;4,1;4,2;4,3;4,4;4,5;4,6;4,7;4,8;4,9;4,0;4,1;4,2;4,3;4,4;4,5;4,6;4,7;4,8;4,9;4,0;4,1;4,2;4,3\n14.01.2026;5,0;5,1;5,2;5,3;5,4;5,5;5,6;5,7;5,8;5,9;5,0;5,1;5,2;5,3;5,4;5,5;5,6;5,7;5,8;5,9;5,0;5,1;5,2;5,3\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] dmy
f|Temp (°C)|2 air_temperature degC header n48 m0 u0 2026-01-13T01:00:00..2026-01-15T00:00:00 4..5.9`},
	{"tables side by side, each with its time, the second shorter",
		"Time;Temp;RH;Time;Temp;RH\n2026-01-13 00:00;4.5;80;2026-01-13 00:07;5.5;70\n2026-01-13 01:00;4.4;81;2026-01-13 01:07;5.4;71\n2026-01-13 02:00;4.3;81;;;\n",
		`utf-8 ";" "." line 2 rows 3 bad 0 clock [1] ymd
f 1|Temp|2 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 4.3..4.5
f 1|RH|3 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.8..0.81
f 2|Temp|5 air_temperature degC values n2 m0 u0 2026-01-13T00:07:00..2026-01-13T01:07:00 5.4..5.5
f 2|RH|6 relative_humidity percent values n2 m0 u0 2026-01-13T00:07:00..2026-01-13T01:07:00 0.7..0.71`},
	{"tables side by side under their names, the first shorter",
		"North;;;South;;\nTime;Temp;RH;Time;Temp;RH\n2026-01-13 00:00;4.5;80;2026-01-13 00:07;5.5;70\n2026-01-13 01:00;4.4;81;2026-01-13 01:07;5.4;71\n;;;2026-01-13 02:07;5.3;72\n",
		`utf-8 ";" "." line 3 rows 3 bad 0 clock [1] ymd
North|Temp|2 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4.4..4.5
North|RH|3 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81
South|Temp|5 air_temperature degC values n3 m0 u0 2026-01-13T00:07:00..2026-01-13T02:07:00 5.3..5.5
South|RH|6 relative_humidity percent values n3 m0 u0 2026-01-13T00:07:00..2026-01-13T02:07:00 0.7..0.72`},
	{"tables side by side, date and time apart, the order of dates decided by a 13th",
		"Datum;Uhrzeit;T;Datum;Uhrzeit;T\n13.01.2026;00:00;4,5;13.01.2026;00:07;5,5\n13.01.2026;01:00;4,4;13.01.2026;01:07;5,4\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1 2] dmy
f 1|T|3 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4.4..4.5
f 2|T|6 air_temperature degC values n2 m0 u0 2026-01-13T00:07:00..2026-01-13T01:07:00 5.4..5.5`},
	{"a place over each column of one name",
		"Date & Time,1: Barn,2: Hall,3: Out\n,Temp(F),Temp(F),Temp(F)\n01/13/2026 10:00,41,50,23\n01/13/2026 11:00,50,41,14\n",
		`utf-8 "," "" line 3 rows 2 bad 0 clock [1] mdy
1 Barn|Temp(F)|2 air_temperature degF header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 5..10
2 Hall|Temp(F)|3 air_temperature degF header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 5..10
3 Out|Temp(F)|4 air_temperature degF header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 -10..-5`},
	{"places over pairs, the clock named above",
		"Timestamp,Barn,,Hall,\n,Temp °C,RH %,Temp °C,RH %\n2026-01-13 10:00,4.5,80,5.5,70\n2026-01-13 11:00,4.4,81,5.4,71\n",
		`utf-8 "," "." line 3 rows 2 bad 0 clock [1] ymd
Barn|Temp °C|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.4..4.5
Barn|RH %|3 relative_humidity percent header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81
Hall|Temp °C|4 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 5.4..5.5
Hall|RH %|5 relative_humidity percent header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.7..0.71`},
	{"one name for two columns",
		"time,Temp (C),Temp (C)\n2026-01-13 10:00,4.5,5.5\n2026-01-13 11:00,4.4,5.4\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f 1|Temp (C)|2 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.4..4.5
f 2|Temp (C)|3 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 5.4..5.5`},
	{"places in one word with what was measured",
		"Zeitstempel;Innentemperatur;Innenfeuchte;Außentemperatur;Außenfeuchte;Luftdruck\n13.01.2026 10:00;4,5;80;-3,5;90;1013\n13.01.2026 11:00;4,4;81;-3,6;91;1012\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] dmy
Innen|Innentemperatur|2 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.4..4.5
Innen|Innenfeuchte|3 relative_humidity percent values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81
Außen|Außentemperatur|4 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 -3.6..-3.5
Außen|Außenfeuchte|5 relative_humidity percent values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.9..0.91
f|Luftdruck|6 other n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 1012..1013`},
	{"the air of the room is no place",
		"Zeit;Lufttemperatur;Luftfeuchte\n13.01.2026 10:00;4,5;80\n13.01.2026 11:00;4,4;81\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] dmy
f|Lufttemperatur|2 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.4..4.5
f|Luftfeuchte|3 relative_humidity percent values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81`},
	{"short words in Polish",
		"Data;Temp. wewn.;Temp. zewn.;Wilg. wewn.;Wilg. zewn.\n2026-01-13 10:00;4,5;-3,5;80;90\n2026-01-13 11:00;4,4;-3,6;81;91\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] ymd
wewn|Temp. wewn.|2 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.4..4.5
wewn|Wilg. wewn.|4 relative_humidity percent values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81
zewn|Temp. zewn.|3 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 -3.6..-3.5
zewn|Wilg. zewn.|5 relative_humidity percent values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.9..0.91`},
	{"raised letters in Spanish",
		"Fecha y hora;Tª interior;Tª exterior;HR interior;HR exterior\n13/01/2026 10:00;4,5;-3,5;80;90\n13/01/2026 11:00;4,4;-3,6;81;91\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] dmy
interior|Tª interior|2 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.4..4.5
interior|HR interior|4 relative_humidity percent values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81
exterior|Tª exterior|3 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 -3.6..-3.5
exterior|HR exterior|5 relative_humidity percent values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.9..0.91`},
	{"points in thousands, commas in fractions",
		"time;Licht (Lux);Temp (°C)\n2026-01-13 10:00;1.000;4,5\n2026-01-13 11:00;1.005;4,4\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] ymd
f|Licht (Lux)|2 light lux header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 1000..1005
f|Temp (°C)|3 air_temperature degC header n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.4..4.5`},
	{"marks that grade behind numbers",
		"time,temp,rh\n2026-01-13 10:00,4.5*,80pct\n2026-01-13 11:00,4.4 ),81pct\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp|2 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.4..4.5
f|rh|3 relative_humidity percent values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81`},
	{"movement, a heater, a door in German",
		"time,motion,heater,Tür\n2026-01-13 10:00,detected,heating,geöffnet\n2026-01-13 11:00,clear,idle,geschlossen\n",
		`utf-8 "," "" line 2 rows 2 bad 0 clock [1] ymd
f|motion|2 state n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0..1
f|heater|3 state n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0..1
f|Tür|4 state n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0..1`},
	{"a table between bars and strokes, as a database prints it",
		"+------------------+------+----+\n| time             | temp | rh |\n+------------------+------+----+\n| 2026-01-13 10:00 |  4.5 | 80 |\n| 2026-01-13 11:00 |  4.4 | 81 |\n+------------------+------+----+\n2 rows in set\n",
		`utf-8 "|" "." line 4 rows 2 bad 0 clock [2] ymd
f|temp|3 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.4..4.5
f|rh|4 relative_humidity percent values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 0.8..0.81
note foot 6:0 x2`},
	{"more names than columns, the clock's among them",
		"time;temp;rh;time;\n2026-01-13 10:00;4,5\n2026-01-13 11:00;4,4\n",
		`utf-8 ";" "," line 2 rows 2 bad 0 clock [1] ymd
f|temp|2 air_temperature degC values n2 m0 u0 2026-01-13T10:00:00..2026-01-13T11:00:00 4.4..4.5`},
	{"a legend with places before the names, a degree sign from a web page",
		"SOURCE OF DATA\n 08-15 DATE : Date YYYYMMDD\n 17-21 TG   : Mean temperature in 0.1 &#176;C\n 23-27 Q_TG : quality code for TG\n\nSOUID,    DATE,   TG, Q_TG\n 35381,20260113,   45,    0\n 35381,20260114,  -38,    0\n 35381,20260115,-9999,    9\n",
		`utf-8 "," "." line 7 rows 3 bad 0 clock [2] ymd
f|SOUID|1 other n3 m0 u0 2026-01-13T00:00:00..2026-01-15T00:00:00 35381..35381
f|TG|3 air_temperature degC header n2 m1 u0 2026-01-13T00:00:00..2026-01-14T00:00:00 -3.8..4.5
note sentinel 9:3 x1`},
	{"letters and stars that grade, names with how often",
		"STATION,DATE,HourlyDryBulbTemperature,HourlyRelativeHumidity\nA1,2026-01-13T00:53:00,61s,80\nA1,2026-01-13T01:53:00,62,81*\nA1,2026-01-13T02:53:00,*,82\n",
		`utf-8 "," "" line 2 rows 3 bad 0 clock [2] ymd
A1|HourlyDryBulbTemperature|3 air_temperature degF values n2 m1 u0 2026-01-13T00:53:00..2026-01-13T01:53:00 16.11111111111111..16.6667
A1|HourlyRelativeHumidity|4 relative_humidity percent values n3 m0 u0 2026-01-13T00:53:00..2026-01-13T02:53:00 0.8..0.82`},
	{"averages and extremes in Finnish",
		"Vuosi,Kuukausi,Päivä,Aika [Paikallinen aika],Lämpötilan keskiarvo [°C],Lämpötilan minimi [°C],Ylin lämpötila [°C],Suhteellinen kosteus keskiarvo [%]\n2026,1,13,00:00,4.5,4.1,4.9,80\n2026,1,13,01:00,-,3.8,4.4,81\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1 2 3 4] ymd
f|Lämpötilan keskiarvo [°C]|5 air_temperature degC header n1 m1 u0 2026-01-13T00:00:00..2026-01-13T00:00:00 4.5..4.5
f|Lämpötilan minimi [°C]|6 other degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 3.8..4.1
f|Ylin lämpötila [°C]|7 other degC header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 4.4..4.9
f|Suhteellinen kosteus keskiarvo [%]|8 relative_humidity percent header n2 m0 u0 2026-01-13T00:00:00..2026-01-13T01:00:00 0.8..0.81
note statistic 2:6 x1`},
	{"HR for the hour and for humidity",
		"UTC_DATE UTC_TIME T_CALC T_HR_AVG T_MAX RH_HR_AVG RH_HR_AVG_FLAG\n20260113 0000 4.0 4.1 4.5 80 0\n20260113 0100 3.9 4.0 4.4 81 0\n20260113 0200 3.8 3.9 4.3 82 0\n",
		`utf-8 "blanks" "." line 2 rows 3 bad 0 clock [1 2] ymd +00:00 file
f|T_CALC|3 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3.8..4
f|T_HR_AVG|4 air_temperature degC values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 3.9..4.1
f|T_MAX|5 other n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 4.3..4.5
f|RH_HR_AVG|6 relative_humidity percent values n3 m0 u0 2026-01-13T00:00:00..2026-01-13T02:00:00 0.8..0.82
note statistic 2:5 x1`},
	{"a quantity among names that may be units",
		"time,ratio,temp\n2025-11-15 00:00,0:00,4.0\n2025-11-15 01:00,0:00,4.1\n",
		`utf-8 "," "." line 2 rows 2 bad 0 clock [1] ymd
f|temp|3 air_temperature degC values n2 m0 u0 2025-11-15T00:00:00..2025-11-15T01:00:00 4..4.1`},
	{"lines of another table's kind above rows without a header",
		"LOCATION,Yard,1.5,2.5\nDATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\n2025,11,15,1,60,A7A7,4.0,1.9,86,101325\n2025,11,15,2,60,A7A7,4.2,2.2,87,101325\n2025,11,15,3,60,A7A7,4.4,2.1,85,101325\n2025,11,15,4,60,A7A7,4.9,2.3,83,101325\n",
		`utf-8 "," "." line 3 rows 4 bad 0 clock [1 2 3 4] ymd
f||5 other n4 m0 u0 2025-11-15T01:00:00..2025-11-15T04:00:00 60..60
f||7 air_temperature degC values n4 m0 u0 2025-11-15T01:00:00..2025-11-15T04:00:00 4..4.9
f||8 dew_point degC values n4 m0 u0 2025-11-15T01:00:00..2025-11-15T04:00:00 1.9..2.3
f||9 relative_humidity percent values n4 m0 u0 2025-11-15T01:00:00..2025-11-15T04:00:00 0.83..0.87
f||10 other n4 m0 u0 2025-11-15T01:00:00..2025-11-15T04:00:00 101325..101325
note nameless 3:0 x1`},
	{"a dump of series with a comment of kinds above, constant times and a table's number beside the value",
		"#datatype,string,long,dateTime,dateTime,dateTime,double,string,string\n,result,table,_start,_stop,_time,_value,_field,host\n,,0,2026-01-13T00:00:00Z,2026-01-15T00:00:00Z,2026-01-13T00:00:00Z,4.5,temperature,n1\n,,0,2026-01-13T00:00:00Z,2026-01-15T00:00:00Z,2026-01-13T01:00:00Z,4.0,temperature,n1\n,,1,2026-01-13T00:00:00Z,2026-01-15T00:00:00Z,2026-01-13T00:00:00Z,80,humidity,n1\n,,1,2026-01-13T00:00:00Z,2026-01-15T00:00:00Z,2026-01-13T01:00:00Z,81,humidity,n1\n",
		`utf-8 "," "." line 3 rows 4 bad 0 clock [6] ymd +00:00 file
n1|table|3 other n2 m0 u0 2026-01-13T00:00:00Z..2026-01-13T01:00:00Z 0..0
n1|_value|7 air_temperature degC values n2 m0 u0 2026-01-13T00:00:00Z..2026-01-13T01:00:00Z 4..4.5
n1|table|3 other n2 m0 u0 2026-01-13T00:00:00Z..2026-01-13T01:00:00Z 1..1
n1|_value|7 relative_humidity percent values n2 m0 u0 2026-01-13T00:00:00Z..2026-01-13T01:00:00Z 0.8..0.81`},
}

func TestSheets(t *testing.T) { checkShapes(t, sheets) }

// A list printed in columns, each going on where the one before it ended, is one logger's; three that hung at the same time,
// and two of which the second begins a day later, are not.
func TestColumnsThatGoOnAreOneList(t *testing.T) {
	header := "time,T °C,RH %,time,T °C,RH %\n"
	for _, c := range []struct {
		name, in string
		want     []string
		first    []float64
	}{
		{"goes on", header + "2026-01-13 00:00,4.0,60.0,2026-01-13 01:30,4.3,63.0\n2026-01-13 00:30,4.1,61.0,2026-01-13 02:00,4.4,64.0\n2026-01-13 01:00,4.2,62.0,,,\n",
			[]string{"f"}, []float64{4.0, 4.1, 4.2, 4.3, 4.4}},
		{"goes on beyond an empty column, the rows numbered", "No,time,T °C,RH %,,No,time,T °C,RH %\n1,2026-01-13 00:00,4.0,60.0,,4,2026-01-13 01:30,4.3,63.0\n2,2026-01-13 00:30,4.1,61.0,,5,2026-01-13 02:00,4.4,64.0\n3,2026-01-13 01:00,4.2,62.0,,,,,\n",
			[]string{"f"}, []float64{4.0, 4.1, 4.2, 4.3, 4.4}},
		{"the same hours", header + "2026-01-13 00:00,4.0,60.0,2026-01-13 00:00,4.3,63.0\n2026-01-13 00:30,4.1,61.0,2026-01-13 00:30,4.4,64.0\n",
			[]string{"f 1", "f 2"}, []float64{4.0, 4.1}},
		{"a day later", header + "2026-01-13 00:00,4.0,60.0,2026-01-14 00:00,4.3,63.0\n2026-01-13 00:30,4.1,61.0,2026-01-14 00:30,4.4,64.0\n",
			[]string{"f 1", "f 2"}, []float64{4.0, 4.1}},
		{"other names", "time,T1 °C,time,T2 °C\n2026-01-13 00:00,4.0,2026-01-13 01:00,4.3\n2026-01-13 00:30,4.1,2026-01-13 01:30,4.4\n",
			[]string{"f"}, []float64{4.0, 4.1}},
	} {
		x := readText(t, c.in)
		var loggers []string
		for _, s := range x.Series {
			if s.Quantity == AirTemperature && !slices.Contains(loggers, s.Logger) {
				loggers = append(loggers, s.Logger)
			}
		}
		if !slices.Equal(loggers, c.want) || !slices.Equal(x.Series[0].Val, c.first) {
			t.Errorf("%s: loggers %q, want %q; %v, want %v", c.name, loggers, c.want, x.Series[0].Val, c.first)
		}
	}
}
