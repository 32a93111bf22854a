package importers

import (
	"strings"
	"testing"
)

// houseForms are sheets as a keeper's office has them, with what a person reads in each. Values are invented.
var houseForms = []struct{ name, file, want string }{
	{"a place in one word with an initial of humidity", "time;Tint;Hint;Text;Hext\n2026-01-13 10:00;4.5;80;-6.0;90\n2026-01-13 10:10;4.0;81;-6.5;91\n",
		"int air_temperature 2 0 0 10:00..10:10 4..4.5|int relative_humidity 2 0 0 10:00..10:10 0.8..0.81|ext air_temperature 2 0 0 10:00..10:10 -6.5..-6|ext relative_humidity 2 0 0 10:00..10:10 0.9..0.91"},
	{"wood, by its word", "tijd;Temp;Luchtvochtigheid;Hout\n2026-01-13 10:00;4.5;80;14.5\n2026-01-13 10:10;4.0;81;14.0\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81|f other 2 0 0 10:00..10:10 14..14.5"},
	{"the F of the north behind a T", "tid;T-200;F-200;T-50;F-50\n2026-01-13 10:00;4.5;80;3.5;82\n2026-01-13 10:10;4.0;84;3.0;86\n",
		"200 air_temperature 2 0 0 10:00..10:10 4..4.5|200 relative_humidity 2 0 0 10:00..10:10 0.8..0.84|50 air_temperature 2 0 0 10:00..10:10 3..3.5|50 relative_humidity 2 0 0 10:00..10:10 0.82..0.86"},
	{"an F that is °F", "time;T1;F1\n2026-01-13 10:00;4.5;40.1\n2026-01-13 10:10;7.0;44.6\n", "f air_temperature 2 0 0 10:00..10:10 4.5..7|f other 2 0 0 10:00..10:10 40.1..44.6"},
	{"an F that is the mains'", "time;T1;F1\n2026-01-13 10:00;4.5;49.98\n2026-01-13 10:10;7.0;50.02\n", "f air_temperature 2 0 0 10:00..10:10 4.5..7|f other 2 0 0 10:00..10:10 49.98..50.02"},
	{"two heights in brackets", "Zeit;Temperatur (5cm);Temperatur (200cm);Feuchte (200cm)\n2026-01-13 10:00;3.5;4.5;80\n2026-01-13 10:10;3.0;4.0;81\n",
		"f air_temperature 2 0 0 10:00..10:10 3..3.5|200cm air_temperature 2 0 0 10:00..10:10 4..4.5|200cm relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"one height", "Zeit;Temperatur (200cm);Feuchte (200cm)\n2026-01-13 10:00;4.5;80\n2026-01-13 10:10;4.0;81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"pipes beside the air", "tid;rörtemp;lufttemp;fukt\n2026-01-13 10:00;24.5;4.5;80\n2026-01-13 10:10;24.0;4.0;81\n", "f other 2 0 0 10:00..10:10 24..24.5|f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"what goes to a heating and comes back, beside the room", "time,Supply temp,Return temp,Room temp,RH\n2026-01-13 10:00,36.5,29.5,4.5,80\n2026-01-13 10:10,36.0,29.0,4.0,81\n",
		"f other 2 0 0 10:00..10:10 36..36.5|f other 2 0 0 10:00..10:10 29..29.5|f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"pipes under a sign, beside the surroundings", "Heure;T départ;T retour;T ambiante;HR\n13/01/2026 10:00;36,5;29,5;4,5;80\n13/01/2026 10:10;36,0;29,0;4,0;81\n",
		"f other 2 0 0 10:00..10:10 36..36.5|f other 2 0 0 10:00..10:10 29..29.5|f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"pipes beside a room, named as no temperature", "Zeit;Vorlauf;Rücklauf;Raum;rF\n13.01.2026 10:00;36,5;29,5;4,5;80\n13.01.2026 10:10;36,0;29,0;4,0;81\n",
		"f other 2 0 0 10:00..10:10 36..36.5|f other 2 0 0 10:00..10:10 29..29.5|f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81|ask quantity"},
	{"ducts of air, by their humidities", "time,Supply temp,Supply RH,Return temp,Return RH\n2026-01-13 10:00,6.5,70,4.5,80\n2026-01-13 10:10,6.0,71,4.0,81\n",
		"Supply air_temperature 2 0 0 10:00..10:10 6..6.5|Supply relative_humidity 2 0 0 10:00..10:10 0.7..0.71|Return air_temperature 2 0 0 10:00..10:10 4..4.5|Return relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"a depth and a height beside the room's own", "time,T -10cm,T +2m,Temperature,RH\n2026-01-13 10:00,5.5,6.5,4.5,80\n2026-01-13 10:10,5.0,6.0,4.0,81\n",
		"f other 2 0 0 10:00..10:10 5..5.5|f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81|2m air_temperature 2 0 0 10:00..10:10 6..6.5"},
	{"out of doors before the room", "time,Outdoor temp,Room temp,RH\n2026-01-13 10:00,-5.5,4.5,80\n2026-01-13 10:10,-5.0,4.0,81\n",
		"Outdoor air_temperature 2 0 0 10:00..10:10 -5.5..-5|f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"another place before what names none", "time,Attic temp,Temperature,Humidity\n2026-01-13 10:00,-5.5,4.5,80\n2026-01-13 10:10,-5.0,4.0,81\n",
		"Attic air_temperature 2 0 0 10:00..10:10 -5.5..-5|f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"air at two heights, named as no temperature", "Zeit;Boden -20 cm;Luft 5 cm;Luft 200 cm;rF 200 cm\n2026-01-13 10:00;6,5;3,5;4,5;80\n2026-01-13 10:10;6,0;3,0;4,0;81\n",
		"f other 2 0 0 10:00..10:10 6..6.5|f air_temperature 2 0 0 10:00..10:10 3..3.5|Luft 200 cm air_temperature 2 0 0 10:00..10:10 4..4.5|Luft 200 cm relative_humidity 2 0 0 10:00..10:10 0.8..0.81|ask quantity"},
	{"lowest, highest and now", "Päivä;Klo;Min;Max;Nyt;RH\n13.01.2026;08:00;3,5;5,5;4,5;80\n14.01.2026;08:00;3,0;5,0;4,0;81\n",
		"f other 2 0 0 08:00..08:00 3..3.5|f other 2 0 0 08:00..08:00 5..5.5|f air_temperature 2 0 0 08:00..08:00 4..4.5|f relative_humidity 2 0 0 08:00..08:00 0.8..0.81|ask quantity|note statistic"},
	{"a log that was started again", "Logger started 2026-01-13 10:00\ntime,temp,rh\n2026-01-13 10:00,4.5,80\n2026-01-13 10:10,4.0,81\n\nLogger restarted after power loss\ntime,temp,rh\n2026-01-13 12:00,4.5,80\n2026-01-13 12:10,4.0,81\n",
		"f air_temperature 4 0 0 10:00..12:10 4..4.5|f relative_humidity 4 0 0 10:00..12:10 0.8..0.81|note foot"},
	{"a depth beside a height", "time,T_2m,T_-10cm,RH\n2026-01-13 10:00,4.5,6.5,80\n2026-01-13 10:10,4.0,6.0,81\n",
		"f air_temperature 2 0 0 10:00..10:10 4..4.5|f other 2 0 0 10:00..10:10 6..6.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"grades in words under a letter", "time,temp,F,rh,F\n2026-01-13 10:00,4.5,yes,80,no\n2026-01-13 10:10,4.0,no,81,yes\n",
		"f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"whole humidities under a letter are no grades", "time,temp,H\n2026-01-13 10:00,4.5,80\n2026-01-13 10:10,4.0,81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"day, month, year and hour in ten digits", "date;temp;rh\n1301202622;4,5;80\n1301202623;4,0;81\n1401202600;3,5;82\n", "f air_temperature 3 0 0 22:00..00:00 3.5..4.5|f relative_humidity 3 0 0 22:00..00:00 0.8..0.82"},
	{"words beside numbers", "Datum;Zeit;Temp.;Feuchte\n13.01.2026;10:00;4,5 (Tür offen);80\n13.01.2026;11:00;ca. 5;80 (geschätzt)\n13.01.2026;12:00;~6,5;81\n13.01.2026;13:00;4,5*;81\n13.01.2026;14:00;5-6;82\n13.01.2026;15:00;4,5 (max);82\n13.01.2026;16:00;3,5 (38 F);82\n13.01.2026;17:00;?;n.d.\n13.01.2026;18:00;4,0;82\n",
		"f air_temperature 5 1 3 10:00..18:00 4..6.5|f relative_humidity 8 1 0 10:00..18:00 0.8..0.82|note remarked|note remarked|note unreadable_cell"},
	{"a reading that the file calls none", "time,temp,rh,flag\n2026-01-13 10:00,4.5,80,valid\n2026-01-13 10:10,94.5,0,invalid\n2026-01-13 10:20,4.0,81,valid\n2026-01-13 10:30,4.0,81,suspect\n",
		"f air_temperature 3 1 0 10:00..10:30 4..4.5|f relative_humidity 3 1 0 10:00..10:30 0.8..0.81|note graded|note graded"},
	{"readings each with its own verdict", "time,temp,temp_qc,rh,rh_qc\n2026-01-13 10:00,4.5,good,80,good\n2026-01-13 10:10,94.5,bad,80,good\n2026-01-13 10:20,4.0,good,81,good\n",
		"f air_temperature 2 1 0 10:00..10:20 4..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.81|note graded"},
	{"yes and no to whether a reading is valid", "Zeit;Temp °C;gültig\n2026-01-13 10:00;4,5;ja\n2026-01-13 10:10;94,5;nein\n2026-01-13 10:20;4,0;ja\n", "f air_temperature 2 1 0 10:00..10:20 4..4.5|note graded"},
	{"a verdict on nearly all says something else", "time,temp °C,flag\n2026-01-13 10:00,4.5,bad\n2026-01-13 10:10,4.0,bad\n2026-01-13 10:20,4.0,good\n", "f air_temperature 3 0 0 10:00..10:20 4..4.5"},
	{"hours across, each with its verdict", "Temp °C,00:00,flag,06:00,flag,12:00,flag,18:00,flag\n2026-01-13,4.5,valid,4.0,valid,3.5,valid,3.0,valid\n2026-01-14,4.5,valid,94.0,invalid,3.5,valid,3.0,valid\n",
		"f air_temperature 7 1 0 00:00..18:00 3..4.5|note graded"},
	{"a column for each day", "Temperatur °C;13.01.2026;14.01.2026;15.01.2026;16.01.2026;Mittel\n00:00;4,5;4,0;3,5;3,0;3,75\n06:00;5,5;5,0;;4,0;4,8\n12:00;6,5;6,0;5,5;5,0;5,75\n18:00;7,5;7,0;6,5;6,0;6,75\n",
		"f air_temperature 15 1 0 00:00..18:00 3..7.5"},
	{"a column for each day, the hours numbered", "Humidity %,2026-01-13,2026-01-14,2026-01-15,2026-01-16\n0,80,81,82,83\n1,80,81,82,83\n2,80,81,82,83\n3,80,81,82,84\n",
		"f relative_humidity 16 0 0 00:00..03:00 0.8..0.84"},
	{"one logger, numbered 1", "time,logger,temp,rh\n2026-01-13 10:00,1,4.5,80\n2026-01-13 10:10,1,4.0,81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"numbers that take turns, under no name", strings.Repeat("2026-01-13 10:00,1,4.5,80.5\n2026-01-13 10:07,2,5.5,70.5\n", 3) + "2026-01-13 10:20,1,4.0,81.5\n2026-01-13 10:27,2,5.0,71.5\n",
		"1 air_temperature 4 0 0 10:00..10:20 4..4.5|1 relative_humidity 4 0 0 10:00..10:20 0.805..0.815|2 air_temperature 4 0 0 10:07..10:27 5..5.5|2 relative_humidity 4 0 0 10:07..10:27 0.705..0.715|ask pairing"},
	{"a unit in the head of an object on one line", `{"place":"barn","unit":"°F","data":[{"time":"2026-01-13T10:00","temperature":41,"humidity":80},{"time":"2026-01-13T10:10","temperature":50,"humidity":81}]}`,
		"f air_temperature 2 0 0 10:00..10:10 5..10|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"a block for each quantity", "Temperature (°C)\nTime,North,South\n2026-01-13 10:00,4.5,5.5\n2026-01-13 10:10,4.0,5.0\n\nHumidity (%)\nTime,North,South\n2026-01-13 10:00,80,70\n2026-01-13 10:10,81,71\n",
		"North air_temperature 2 0 0 10:00..10:10 4..4.5|North relative_humidity 2 0 0 10:00..10:10 0.8..0.81|South air_temperature 2 0 0 10:00..10:10 5..5.5|South relative_humidity 2 0 0 10:00..10:10 0.7..0.71"},
	{"a block for each quantity, without units", "Temperatur\nZeit;Nord;Süd\n13.01.2026 10:00;4,5;5,5\n13.01.2026 10:10;4,0;5,0\n\nFeuchte\nZeit;Nord;Süd\n13.01.2026 10:00;80;70\n13.01.2026 10:10;81;71\n",
		"Nord air_temperature 2 0 0 10:00..10:10 4..4.5|Nord relative_humidity 2 0 0 10:00..10:10 0.8..0.81|Süd air_temperature 2 0 0 10:00..10:10 5..5.5|Süd relative_humidity 2 0 0 10:00..10:10 0.7..0.71"},
	{"sheets of months below one another", "November 2025\nDate,Temp C,RH\n2025-11-29 10:00,4.5,80\n2025-11-30 10:00,4.0,81\n\nDecember 2025\nDate,Temp C,RH\n2025-12-01 10:00,3.5,82\n2025-12-02 10:00,3.0,83\n",
		"f air_temperature 4 0 0 10:00..10:00 3..4.5|f relative_humidity 4 0 0 10:00..10:00 0.8..0.83|note foot"},
	{"sheets of barns below one another", "Marten\nDate,Temp C,RH\n2025-11-29 10:00,4.5,80\n2025-11-30 10:00,4.0,81\n\nJuniper\nDate,Temp C,RH\n2025-11-29 10:00,3.5,82\n2025-11-30 10:00,3.0,83\n",
		"Marten air_temperature 2 0 0 10:00..10:00 4..4.5|Marten relative_humidity 2 0 0 10:00..10:00 0.8..0.81|Juniper air_temperature 2 0 0 10:00..10:00 3..3.5|Juniper relative_humidity 2 0 0 10:00..10:00 0.82..0.83"},
	{"changes of several relays as 1 and 0", "timestamp;relay;value\n2026-01-13 10:00:05;fan1;1\n2026-01-13 10:07:11;fan2;1\n2026-01-13 10:20:30;fan1;0\n2026-01-13 10:25:00;fan2;0\n2026-01-13 10:41:00;fan1;1\n",
		"fan1 state 3 0 0 10:00..10:41 0..1|fan2 state 2 0 0 10:07..10:25 0..1"},
	{"a pipe beside the ambient air", "time,pipe_temp_c,ambient_temp_c,ambient_rh\n2026-01-13 10:00,24.5,4.5,80\n2026-01-13 10:10,24.0,4.0,81\n",
		"f other 2 0 0 10:00..10:10 24..24.5|ambient air_temperature 2 0 0 10:00..10:10 4..4.5|ambient relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"a word before each time", "Päivä;Klo;Lämpötila;Kosteus\n13.1.2026;klo 10.00;4,5;80\n13.1.2026;klo 11.00;4,0;81\n14.1.2026;klo 10.00;3,5;82\n14.1.2026;klo 11.00;3,0;83\n",
		"f air_temperature 4 0 0 10:00..11:00 3..4.5|f relative_humidity 4 0 0 10:00..11:00 0.8..0.83"},
	{"weekdays beside a door are no doors", "Date,Time,Weekday,Door\n2026-01-12,08:05,Mon,open\n2026-01-12,08:15,Mon,closed\n2026-01-13,09:05,Tue,open\n2026-01-13,09:15,Tue,closed\n", "f state 4 0 0 08:05..09:15 0..1"},
	{"who switched is no switch", "time,mode,fan\n2026-01-13 08:05,auto,1\n2026-01-13 08:15,auto,0\n2026-01-13 09:05,manual,1\n2026-01-13 09:15,auto,0\n", "f state 4 0 0 08:05..09:15 0..1"},
	{"words for the time of day are no loggers", "Datum;Tageszeit;Temp;Feuchte\n13.01.2026;morgens;4,5;80\n13.01.2026;abends;4,0;81\n14.01.2026;morgens;3,5;82\n14.01.2026;abends;3,0;83\n",
		"f air_temperature 4 0 0 00:00..00:00 3..4.5|f relative_humidity 4 0 0 00:00..00:00 0.8..0.83|note no_times"},
	{"states with the sensors' numbers and names", "entity_id,state,unit,friendly_name,last_changed\na1,4.5,°C,North temperature,2026-01-13T10:00:00\na2,80,%,North humidity,2026-01-13T10:00:00\na3,5.5,°C,South temperature,2026-01-13T10:00:00\na4,70,%,South humidity,2026-01-13T10:00:00\na1,4.0,°C,North temperature,2026-01-13T10:10:00\na2,81,%,North humidity,2026-01-13T10:10:00\na3,5.0,°C,South temperature,2026-01-13T10:10:00\na4,71,%,South humidity,2026-01-13T10:10:00\n",
		"North air_temperature 2 0 0 10:00..10:10 4..4.5|North relative_humidity 2 0 0 10:00..10:10 0.8..0.81|South air_temperature 2 0 0 10:00..10:10 5..5.5|South relative_humidity 2 0 0 10:00..10:10 0.7..0.71"},
	{"two pairs and a battery under no names", "2026-01-13 10:00;4,5;80,5;5,5;70,5;3,02\n2026-01-13 10:10;4,0;81,5;5,0;71,5;3,01\n2026-01-13 10:20;3,5;82,5;4,5;72,5;3,00\n",
		"f 1 air_temperature 3 0 0 10:00..10:20 3.5..4.5|f 1 relative_humidity 3 0 0 10:00..10:20 0.805..0.825|f 2 air_temperature 3 0 0 10:00..10:20 4.5..5.5|f 2 relative_humidity 3 0 0 10:00..10:20 0.705..0.725|f other 3 0 0 10:00..10:20 3..3.02|ask pairing|note nameless"},
	{"read-outs of two programs that part cells otherwise", "time;temp C;rh %\n2026-01-13 10:00;4,5;80\n2026-01-13 10:10;4,0;81\n2026-01-13 10:20;3,5;82\n2026-01-13 10:30;3,0;83\ntime,temp C,rh %\n2026-01-13 10:40,2.5,84\n2026-01-13 10:50,2.0,85\n2026-01-13 11:00,1.5,86\n2026-01-13 11:10,1.0,87\n2026-01-13 11:20,0.5,88\n",
		"f air_temperature 4 0 0 10:00..10:30 3..4.5|f relative_humidity 4 0 0 10:00..10:30 0.8..0.83|f air_temperature 5 0 0 10:40..11:20 0.5..2.5|f relative_humidity 5 0 0 10:40..11:20 0.84..0.88"},
	{"the longer one first", "time,temp C,rh %\n2026-01-13 10:40,2.5,84\n2026-01-13 10:50,2.0,85\n2026-01-13 11:00,1.5,86\n2026-01-13 11:10,1.0,87\n2026-01-13 11:20,0.5,88\ntime;temp C;rh %\n2026-01-13 12:00;4,5;80\n2026-01-13 12:10;4,0;81\n",
		"f air_temperature 5 0 0 10:40..11:20 0.5..2.5|f relative_humidity 5 0 0 10:40..11:20 0.84..0.88|f air_temperature 2 0 0 12:00..12:10 4..4.5|f relative_humidity 2 0 0 12:00..12:10 0.8..0.81"},
	{"letters behind places", "Date,Barn F,Barn RH,Outside F\n2026-01-13 10:00,41,80,14\n2026-01-13 10:10,50,81,5\n", "Barn air_temperature 2 0 0 10:00..10:10 5..10|Barn relative_humidity 2 0 0 10:00..10:10 0.8..0.81|Outside air_temperature 2 0 0 10:00..10:10 -15..-10"},
	{"sheds with letters", "Date,Shed C,Shed D,Shed RH,Temp\n2026-01-13 10:00,4.5,5.5,80,3.5\n2026-01-13 10:10,4.0,5.0,81,3.0\n", "f other 2 0 0 10:00..10:10 4..4.5|f other 2 0 0 10:00..10:10 5..5.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81|f air_temperature 2 0 0 10:00..10:10 3..3.5"},
	{"within and without", "Time,Inside,Outside,RH\n2026-01-13 10:00,4.5,-6.5,80\n2026-01-13 10:10,4.0,-6.0,81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f air_temperature 2 0 0 10:00..10:10 -6.5..-6|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"within and without, never below zero", "Time,Inside,Outside,RH\n2026-01-13 10:00,4.5,6.5,80\n2026-01-13 10:10,4.0,6.0,81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f air_temperature 2 0 0 10:00..10:10 6..6.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81|ask quantity"},
	{"what goes in and out beside the air", "Time,In,Out,Temp,RH\n2026-01-13 10:00,12.5,14.5,4.5,80\n2026-01-13 10:10,9.5,8.5,4.0,81\n", "f other 2 0 0 10:00..10:10 9.5..12.5|f other 2 0 0 10:00..10:10 8.5..14.5|f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"brackets around what is not sure", "time,temp C,rh %\n2026-01-13 10:00,4.5,80\n2026-01-13 10:10,(4.4),81\n2026-01-13 10:20,4.0,(82)\n2026-01-13 10:30,3.5,83\n", "f air_temperature 4 0 0 10:00..10:30 3.5..4.5|f relative_humidity 4 0 0 10:00..10:30 0.8..0.83|note remarked|note remarked"},
	{"brackets of a ledger", "time,temp C,rh %\n2026-01-13 10:00,0.5,80\n2026-01-13 10:10,(0.4),81\n2026-01-13 10:20,(3.0),82\n2026-01-13 10:30,(0.5),83\n2026-01-13 10:40,0.5,83\n", "f air_temperature 5 0 0 10:00..10:40 -3..0.5|f relative_humidity 5 0 0 10:00..10:40 0.8..0.83"},
	{"a short word for temperature", "Дата;Темп.;Влажн.\n2026-01-13 10:00;4,5;80\n2026-01-13 10:10;4,0;81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
}

// Over columns 02/01 to 05/01 are four days in a row with the day first, and the second of four months with the month
// first, which no sheet of days is. The third of the rows of the first two days is at 12:00 of each.
func TestDaysAcross(t *testing.T) {
	e := readText(t, "Temp °C,02/01/2026,03/01/2026,04/01/2026,05/01/2026\n00:00,1.5,2.5,3.5,4.5\n06:00,1.6,2.6,3.6,4.6\n12:00,1.7,2.7,x,4.7\n18:00,1.8,2.8,3.8,4.8\n24:00,1.9,2.9,3.9,4.9\n")
	s := e.Series[0]
	if got := face(s, s.FaceMS[2], 0) + " " + face(s, s.FaceMS[7], 0) + " " + face(s, s.FaceMS[18], 0); got != "2026-01-02T12:00:00 2026-01-03T12:00:00 2026-01-06T00:00:00" {
		t.Error(got)
	}
	if s.Val[2] != 1.7 || s.Val[7] != 2.7 || s.Val[18] != 4.9 || s.Missing != 1 || e.Layout.Clock.Order != "dmy" || s.OutOfOrder > 0 {
		t.Errorf("%+v", s)
	}
}
