package importers

import (
	"context"
	"slices"
	"strings"
	"testing"
)

// forms are the ways in which weather services, building controls and programs print their tables, one small file for
// each, with what a person reads in it: series as said has them, what must be asked, and remarks.
var forms = []struct {
	name, file, want string
}{
	{"a dew point before its temperature proves °F", "time,dew point,temp,rh\n20260113T1000,14.5,19.4,80\n20260113T1010,15.1,20.3,79\n20260113T1020,16.5,21.2,81\n",
		"f dew_point 3 0 0 10:00..10:20 -9.72222..-8.61111|f air_temperature 3 0 0 10:00..10:20 -7..-6|f relative_humidity 3 0 0 10:00..10:20 0.79..0.81"},
	{"tenths of a degree with their grades, as archives of weather have them", "STATION,DATE,TMP,DEW,SLP\nA1,2026-01-13T10:00:00,\"+0045,1\",\"-0006,1\",\"10132,1\"\nA1,2026-01-13T10:10:00,\"-0040,5\",\"-0051,1\",\"99999,9\"\nA1,2026-01-13T10:20:00,\"+9999,9\",\"+9999,9\",\"10130,1\"\n",
		"A1 air_temperature 2 1 0 10:00..10:10 -4..4.5|A1 dew_point 2 1 0 10:00..10:10 -5.1..-0.6|note sentinel|note sentinel|note graded_tenths|note graded_tenths"},
	{"signed numbers with a decimal comma are no tenths", "time;T;p\n2026-01-13 10:00;+0004,5;+1013,2\n2026-01-13 10:10;-0004,0;+1013,3\n", "f air_temperature 2 0 0 10:00..10:10 -4..4.5|f other 2 0 0 10:00..10:10 1013.2..1013.3"},
	{"tenths with their grades, points elsewhere", "time,lat,TMP\n2026-01-13 10:00,55.1,\"+0045,1\"\n2026-01-13 10:10,55.1,\"-0040,1\"\n2026-01-13 10:20,55.1,\"+0041,1\"\n", "f other 3 0 0 10:00..10:20 55.1..55.1|f air_temperature 3 0 0 10:00..10:20 -4..4.5|note graded_tenths"},
	{"a column that says on, and nothing for off", "time,Fan 1,temp °C\n2026-01-13 10:00,ON,4.5\n2026-01-13 10:10,-,4.0\n2026-01-13 10:20,,4.5\n2026-01-13 10:30,ON,4.0\n",
		"f state 4 0 0 10:00..10:30 0..1|f air_temperature 4 0 0 10:00..10:30 4..4.5|note blank_off"},
	{"a column that says off as well, sometimes nothing", "time,Fan 1\n2026-01-13 10:00,ON\n2026-01-13 10:10,-\n2026-01-13 10:20,OFF\n", "f state 2 1 0 10:00..10:20 0..1"},
	{"other words for states", "time,Relay,Heater,Room\n2026-01-13 10:00,Energized,Activated,Occupied\n2026-01-13 10:10,De-energized,Deactivated,Unoccupied\n", "f state 2 0 0 10:00..10:10 0..1|f state 2 0 0 10:00..10:10 0..1|f state 2 0 0 10:00..10:10 0..1"},
	{"grades named in other tongues", "时间,气温,气温质量\n2026-01-13 10:00,4.5,8\n2026-01-13 10:10,4.0,8\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5"},
	{"codes of how values came about", "time,temperature,temperature_Measurement_Code,temperature_Report_Type\n2026-01-13 10:00,4.5,,FM-12\n2026-01-13 10:10,4.0,,FM-12\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5"},
	{"numbers of records that come with two values", "id,parameter,time,value\na0,temp,2026-01-13 10:00,4.5\na0,humidity,2026-01-13 10:00,80\na1,temp,2026-01-13 10:10,4.0\na1,humidity,2026-01-13 10:10,81\n",
		"f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"statistics in one word with their sign", "time,RHMean,RHMinimum,RHMaximum\n2026-01-13 10:00,80,79,82\n2026-01-13 10:10,81,80,82\n",
		"f relative_humidity 2 0 0 10:00..10:10 0.8..0.81|f other 2 0 0 10:00..10:10 79..80|f other 2 0 0 10:00..10:10 82..82|note statistic"},
	{"elements by their letters", "STATION,ELEMENT,DATE,VALUE\n7,T,2026-01-13 10:00,4.5\n7,H,2026-01-13 10:00,80\n7,T,2026-01-13 10:10,4.0\n7,H,2026-01-13 10:10,81\n",
		"7 air_temperature 2 0 0 10:00..10:10 4..4.5|7 relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"a sign that means humidity elsewhere", "time,T_1,RH_1,rv1\n2026-01-13 10:00,4.5,80,13.3\n2026-01-13 10:10,4.0,81,18.6\n",
		"1 air_temperature 2 0 0 10:00..10:10 4..4.5|1 relative_humidity 2 0 0 10:00..10:10 0.8..0.81|f other 2 0 0 10:00..10:10 13.3..18.6"},
	{"names with their numbers", "# 1:Date 2:Time 3:Temperature_Hall 4:Temperature_Room 5:Humidity_Hall 6:Humidity_Room\n13/01/2026 10:00 4.5 5.5 80 70\n13/01/2026 10:10 4.0 5.0 81 71\n",
		"Hall air_temperature 2 0 0 10:00..10:10 4..4.5|Hall relative_humidity 2 0 0 10:00..10:10 0.8..0.81|Room air_temperature 2 0 0 10:00..10:10 5..5.5|Room relative_humidity 2 0 0 10:00..10:10 0.7..0.71"},
	{"the words of a state where a unit stands", "time,SF-S [On/Off]\n2026-01-13 10:00,On\n2026-01-13 10:10,Off\n", "f state 2 0 0 10:00..10:10 0..1"},
	{"units behind values, under no name", "time,Temp,,RH,\n2026-01-13 10:00,41,°F,80,%\n2026-01-13 10:10,50,°F,81,%\n", "f air_temperature 2 0 0 10:00..10:10 5..10|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"a place with a temperature alone", "time,T_in,T_out,RH_in\n2026-01-13 10:00,4.5,-6.0,80\n2026-01-13 10:10,4.0,-6.5,81\n",
		"in air_temperature 2 0 0 10:00..10:10 4..4.5|in relative_humidity 2 0 0 10:00..10:10 0.8..0.81|out air_temperature 2 0 0 10:00..10:10 -6.5..-6"},
	{"h beside temperatures", "time,t_in,t_out,h\n2026-01-13 10:00,4.5,-6.0,80\n2026-01-13 10:10,4.0,-6.5,81\n",
		"f air_temperature 2 0 0 10:00..10:10 4..4.5|f air_temperature 2 0 0 10:00..10:10 -6.5..-6|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"a report of pages", "  CLIMATE            Page 1 of 2\n\n  Date        Time    Temp C   RH %\n  2026-01-13  10:00     4.5    80\n  2026-01-13  10:10     4.0    81\n\f  CLIMATE            Page 2 of 2\n\n  Date        Time    Temp C   RH %\n  2026-01-13  10:20     3.5    82\n  2026-01-13  10:30     3.0    83\n",
		"CLIMATE air_temperature 2 0 0 10:00..10:10 4..4.5|CLIMATE relative_humidity 2 0 0 10:00..10:10 0.8..0.81|CLIMATE air_temperature 2 0 0 10:20..10:30 3..3.5|CLIMATE relative_humidity 2 0 0 10:20..10:30 0.82..0.83"},
	{"how long a fan ran in a day", "Date,Fan 1 run time,Avg temp (°C)\n2026-01-13,00:15,4.5\n2026-01-14,01:25,4.0\n", "f air_temperature 2 0 0 00:00..00:00 4..4.5"},
	{"each value with its time", "Temp Time;Temp Value;Hum Time;Hum Value\n13.01.2026 10:00;4,5;13.01.2026 10:04;80\n13.01.2026 10:10;4,0;13.01.2026 10:14;81\n",
		"f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:04..10:14 0.8..0.81"},
	{"no name over the times", "                     temp  hum\n2026-01-13 10:00:00   4.5   80\n2026-01-13 10:10:00   4.0   81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"no name over the rows' numbers, one over date and time", "                 time  temp  hum\n0 2026-01-13 10:00:00   4.5   80\n1 2026-01-13 10:10:00   4.0   81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"loggers' numbers for names", "Date/time,00123456,00123457\n2026-01-13 10:00,4.5,5.5\n2026-01-13 10:10,4.0,5.0\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f air_temperature 2 0 0 10:00..10:10 5..5.5|ask quantity"},
	{"air in °C and °F by two letters, a sign for humidity", "TIMESTAMP,AirTC_Avg,AirTF_Avg,HMD\n2026-01-13 10:00,4.5,40.1,80\n2026-01-13 10:10,5.0,41,81\n",
		"f air_temperature 2 0 0 10:00..10:10 4.5..5|f air_temperature 2 0 0 10:00..10:10 4.5..5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"a program's log, its own words before a dash", "2026-01-13 10:00:00,123 INFO sensor - Temperature: 4.5 C, Humidity: 80 %\n2026-01-13 10:10:00,124 INFO sensor - Temperature: 4.0 C, Humidity: 81 %\n2026-01-13 10:20:00,123 INFO sensor - Temperature: 3.5 C, Humidity: 82 %\n",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"attributes of elements", "<r t=\"2026-01-13 10:00:00\" temp=\"4.5\" hum=\"80\"/>\n<r t=\"2026-01-13 10:10:00\" temp=\"4.0\" hum=\"81\"/>\n<r t=\"2026-01-13 10:20:00\" temp=\"3.5\" hum=\"82\"/>\n",
		"f air_temperature 3 0 0 10:00..10:20 3.5..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.82"},
	{"minutes since midnight", "Date,Minute of day,Temp C\n2026-01-13,600,4.5\n2026-01-13,610,4.0\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5"},
	{"seconds since midnight", "date;seconds since midnight;Temp C\n20260113;36000;4,5\n20260113;36600;4,0\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5"},
	{"blanks for a value of a printed table", "Date       Time   Temp    RH   CO2\n2026-01-13 10:00   4.5  80.0   900\n2026-01-13 10:10        81.0   910\n2026-01-13 10:20  -3.5         920\n2026-01-13 10:30   3.0  83.0\n",
		"f air_temperature 3 1 0 10:00..10:30 -3.5..4.5|f relative_humidity 3 1 0 10:00..10:30 0.8..0.83|f co2 3 1 0 10:00..10:20 900..920"},
	{"signs of East Asian type behind numbers", "時刻,温度,湿度\n2026-01-13 10:00,4.5℃,80％\n2026-01-13 10:10,4.0℃,81％\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"a humidity and a temperature under each other's names are no °F", "time,temp,rh\n2026-01-13 10:00,80.5,4.5\n2026-01-13 10:10,70.5,4.0\n", "f air_temperature 2 0 0 10:00..10:10 70.5..80.5|f relative_humidity 2 0 0 10:00..10:10 0.04..0.045"},
	{"a dew point by its letters", "time,Temp (°C),DPT(°C)\n2026-01-13 10:00,4.5,1.3\n2026-01-13 10:10,4.0,1.0\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f dew_point 2 0 0 10:00..10:10 1..1.3"},
	{"yes and no in one letter", "time,heater,door open\n2026-01-13 10:00,Y,N\n2026-01-13 10:10,N,N\n", "f state 2 0 0 10:00..10:10 0..1|f state 2 0 0 10:00..10:10 0..0"},
	{"letters that may say anything", "time,temp °C,mark\n2026-01-13 10:00,4.5,T\n2026-01-13 10:10,4.0,F\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5"},
	{"what was so at an event", "Time,Event\n2026-01-13 10:00,Fan 1 turned ON (temp 4.5)\n2026-01-13 10:10,Fan 1 turned OFF (temp 4.0)\n2026-01-13 10:20,Fan 1 turned ON (temp 4.5)\n", "Fan 1 state 3 0 0 10:00..10:20 0..1"},
	{"a unit named above the table", "Temperature unit:,°F\n\ntime,temp\n2026-01-13 10:00,41\n2026-01-13 10:10,50\n", "f air_temperature 2 0 0 10:00..10:10 5..10"},
	{"names for date and time over one cell of both", "DATE,TIME,TEMP C,RH\n2026-01-13 10:00,4.5,80\n2026-01-13 10:10,4.0,81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"channels listed above", "Channel 1\tTemperature\nChannel 2\tHumidity\n\nNo\tDate\tTime\tCh1\tCh2\n1\t13.01.2026\t10:00:00\t4,5\t80\n2\t13.01.2026\t10:10:00\t4,0\t81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"codes explained above, parted by blanks", "tre2  °C    Air temperature\nure2  %     Relative humidity\n\ntime;tre2;ure2\n2026-01-13 10:00;4.5;80\n2026-01-13 10:10;4.0;81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"a number that the end of the file cut", "time,rh %\n" + strings.Repeat("2026-01-13 10:00,80.5\n", 12) + "2026-01-13 10:10,81.2\n2026-01-13 10:20,8", "f relative_humidity 13 1 0 10:00..10:10 0.805..0.812|note cut_line"},
	{"tags of which only the numbers tell", "Tag,Time,Value\nX1,2026-01-13 10:00,4.5\nX2,2026-01-13 10:00,80.5\nX1,2026-01-13 10:10,4.0\nX2,2026-01-13 10:10,81.5\n", "X1 air_temperature 2 0 0 10:00..10:10 4..4.5|X2 relative_humidity 2 0 0 10:00..10:10 0.805..0.815|ask pairing"},
	{"a humidity and a voltage without names", strings.Repeat("2026-01-13 10:00,80.5,3.05\n2026-01-13 10:10,81.5,3.04\n", 6), "f relative_humidity 12 0 0 10:00..10:10 0.805..0.815|f air_temperature 12 0 0 10:00..10:10 3.04..3.05|ask pairing|note out_of_order"},
	{"two columns of air without names", strings.Repeat("2026-01-13 10:00,4.5,80.5\n2026-01-13 10:10,4.0,81.5\n", 6), "f air_temperature 12 0 0 10:00..10:10 4..4.5|f relative_humidity 12 0 0 10:00..10:10 0.805..0.815|note out_of_order"},
	{"tabs between, remarks in few rows", "Zeit\tInnen\trF %\tNotiz\n13.01.2026 10:00\t4,5\t80,5\t\n13.01.2026 10:10\t4,0\t81,5\t\n13.01.2026 10:20\t4,5\t80,5\tTor offen\n13.01.2026 10:30\t4,0\t81,5\t\n13.01.2026 10:40\t4,5\t80,5\t\n",
		"f air_temperature 5 0 0 10:00..10:40 4..4.5|f relative_humidity 5 0 0 10:00..10:40 0.805..0.815|ask quantity"},
	{"zones and sensors by letters and numbers, what they measure by units alone", "Date,z1_S1(degC),z1_S1(RH%),z1_S1(lux)\n2026-01-13 10:00,4.5,80,3\n2026-01-13 10:10,4.0,81,0\n",
		"z1 S1 air_temperature 2 0 0 10:00..10:10 4..4.5|z1 S1 relative_humidity 2 0 0 10:00..10:10 0.8..0.81|z1 S1 light 2 0 0 10:00..10:10 0..3"},
	{"rain of an hour", "time,temp °C,precip_depth_1_hr\n2026-01-13 10:00,4.5,0\n2026-01-13 10:10,4.0,3\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f other 2 0 0 10:00..10:10 0..3"},
	{"how far a value may be off", "time,temp °C\n2026-01-13 10:00,4.5 ± 0.2\n2026-01-13 10:10,-4.0±0.2\n", "f air_temperature 2 0 0 10:00..10:10 -4..4.5"},
	{"numbers of loggers over their columns", ";1;;02;\nTime;Air temp °C;RH %;Air temp °C;RH %\n2026-01-13 10:00;4,5;80;5,5;70\n2026-01-13 10:10;4,0;81;5,0;71\n",
		"1 air_temperature 2 0 0 10:00..10:10 4..4.5|1 relative_humidity 2 0 0 10:00..10:10 0.8..0.81|02 air_temperature 2 0 0 10:00..10:10 5..5.5|02 relative_humidity 2 0 0 10:00..10:10 0.7..0.71"},
	{"one place over all columns", ";Hall;\nTime;T °C;RH %\n2026-01-13 10:00;4,5;80\n2026-01-13 10:10;4,0;81\n", "Hall air_temperature 2 0 0 10:00..10:10 4..4.5|Hall relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"units before places", "Time;Temp °F - west;RH % - west\n2026-01-13 10:00;41;80\n2026-01-13 10:10;50;81\n", "west air_temperature 2 0 0 10:00..10:10 5..10|west relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"a letter in brackets that is a place", "Time,Temp (A),RH (A)\n2026-01-13 10:00,4.5,80\n2026-01-13 10:10,4.0,81\n", "A air_temperature 2 0 0 10:00..10:10 4..4.5|A relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"a unit's letter behind a place", "Time,Barn Temp F,Outside F\n2026-01-13 10:00,41,23\n2026-01-13 10:10,50,14\n", "f air_temperature 2 0 0 10:00..10:10 5..10|f air_temperature 2 0 0 10:00..10:10 -10..-5"},
	{"how far fans are open, in percent", "Time,Ventilation %\n2026-01-13 10:00,0\n2026-01-13 10:10,35\n", "f speed 2 0 0 10:00..10:10 0..35"},
	{"signs whose legend says otherwise, in another tongue", "T = Temperatuur (in 0.1 graden Celsius)\nRH = Uursom van de neerslag (in 0.1 mm)\nU = Relatieve vochtigheid (in procenten)\n\nSTN,YYYYMMDD,HH,T,RH,U\n7,20260113,10,-45,0,80\n7,20260113,11,-40,2,81\n",
		"7 air_temperature 2 0 0 10:00..11:00 -4.5..-4|7 other 2 0 0 10:00..11:00 0..2|7 relative_humidity 2 0 0 10:00..11:00 0.8..0.81"},
	{"a row of parts and units below the names", "#YY  MM DD hh mm WDIR PRES ATMP WTMP DEWP\n#yr  mo dy hr mn degT hPa degC degC degC\n2026 01 13 10 00 120 1012.1 4.5 6.1 1.2\n2026 01 13 10 10 130 1012.2 4.0 6.1 1.3\n",
		"f other 2 0 0 10:00..10:10 120..130|f other 2 0 0 10:00..10:10 1012.1..1012.2|f air_temperature 2 0 0 10:00..10:10 4..4.5|f other 2 0 0 10:00..10:10 6.1..6.1|f dew_point 2 0 0 10:00..10:10 1.2..1.3"},
	{"names of parts are no units", "yyyy mm dd hh mm T RH CO2\n2026 01 13 10 00 4.5 80 900\n2026 01 13 10 10 4.0 81 910\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81|f co2 2 0 0 10:00..10:10 900..910"},
	{"u beside t", "time;t;u\n2026-01-13 10:00;4,5;80\n2026-01-13 10:10;4,0;81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"the highest of an hour, in more words than the reading", "time,air temp °C,highest temp in the hour before °C\n2026-01-13 10:00,4.5,4.9\n2026-01-13 10:10,4.0,4.5\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f other 2 0 0 10:00..10:10 4.5..4.9|note statistic"},
	{"an hour behind a date in signs", "时间,气温\n2026年01月13日10时,4.5\n2026年01月13日11时,4.0\n", "f air_temperature 2 0 0 10:00..11:00 4..4.5"},
	{"loggers by their addresses, a second apart", "mac,time,temp °C\nA4:C1,2026-01-13 10:00:00,4.5\nA4:C2,2026-01-13 10:00:01,5.5\nA4:C1,2026-01-13 10:10:00,4.0\nA4:C2,2026-01-13 10:10:01,5.0\n", "A4:C1 air_temperature 2 0 0 10:00..10:10 4..4.5|A4:C2 air_temperature 2 0 0 10:00..10:10 5..5.5"},
	{"words that take turns, a second apart", "who,time,temp °C\n" + strings.Repeat("alder,2026-01-13 10:00:00,4.5\nrowan,2026-01-13 10:00:01,5.5\nalder,2026-01-13 10:10:00,4.0\nrowan,2026-01-13 10:10:01,5.0\n", 2), "alder air_temperature 4 0 0 10:00..10:10 4..4.5|rowan air_temperature 4 0 0 10:00..10:10 5..5.5|note out_of_order"},
	{"numbered clocks", "Time1;T1;RH1;Time2;T2;RH2\n2026-01-13 10:00;4,5;80;2026-01-13 10:05;5,5;70\n2026-01-13 10:10;4,0;81;2026-01-13 10:15;5,0;71\n",
		"1 air_temperature 2 0 0 10:00..10:10 4..4.5|1 relative_humidity 2 0 0 10:00..10:10 0.8..0.81|2 air_temperature 2 0 0 10:05..10:15 5..5.5|2 relative_humidity 2 0 0 10:05..10:15 0.7..0.71"},
	{"years of two digits in a column", "Year,Mo,Da,Time,Temp(C)\n26,01,13,10:00,4.5\n26,01,13,10:10,4.0\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5"},
	{"a colon behind the time of a log", "2026-01-13 10:00:00: temp 4.5 hum 80\n2026-01-13 10:10:00: temp 4.0 hum 81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"commas behind units of a log", "2026-01-13 10:00:00.000001 [INFO] T=4.50°C, RH=80.00%\n2026-01-13 10:10:00.000001 [INFO] T=4.00°C, RH=81.00%\n2026-01-13 10:20:00.000001 [INFO] T=4.00°C, RH=81.00%\n", "f air_temperature 3 0 0 10:00..10:20 4..4.5|f relative_humidity 3 0 0 10:00..10:20 0.8..0.81"},
	{"an hour and its half", "Date,Time,Temp C\n13/01/2026,8am,4.5\n14/01/2026,9 pm,4.0\n", "f air_temperature 2 0 0 08:00..21:00 4..4.5"},
	{"dates of six digits, times with hundredths", "date,utc,temp C\n" + strings.Repeat("130126,100000.00,4.5\n130126,101000.00,4.0\n", 6), "f air_temperature 12 0 0 10:00..10:10 4..4.5|ask day_month|note out_of_order"},
	{"days of a sheet, without their year", "Date,Temp C\n13-Jan,4.5\n14-Jan,4.0\n", "f air_temperature 2 0 0 00:00..00:00 4..4.5|ask year"},
	{"what is set", "Time,Room °F,Set °F\n2026-01-13 10:00,41,39\n2026-01-13 10:10,50,39\n", "f air_temperature 2 0 0 10:00..10:10 5..10|f other 2 0 0 10:00..10:10 39..39"},
	{"°C and again in °F", "2026-01-13 10:00:00\tHumidity: 80.00 %\tTemperature: 4.50 *C 40.10 *F\n2026-01-13 10:10:00\tHumidity: 81.00 %\tTemperature: -4.00 *C 24.80 *F\n", "f relative_humidity 2 0 0 10:00..10:10 0.8..0.81|f air_temperature 2 0 0 10:00..10:10 -4..4.5"},
	{"°F and °C after a stroke", "time,temp\n2026-01-13 10:00,40.1°F / 4.5°C\n2026-01-13 10:10,39.2°F / 4.0°C\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5"},
	{"a state that does not change for long, under any name", "time,Solar loop\n" + strings.Repeat("2026-01-13 10:00,OFF\n", 3000) + "2026-01-13 10:10,ON\n", "f state 3001 0 0 10:00..10:10 0..1"},
	{"a remark that all is well", "time,temp C,Notes\n2026-01-13 10:00,4.5,ok\n2026-01-13 10:10,4.0,ok\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5"},
	{"readings that no air has", "time,temp °C,rh %\n" + strings.Repeat("2026-01-13 10:00,4.5,80.5\n2026-01-13 10:10,4.0,81.5\n", 6) + "2026-01-13 10:20,-46.85,-6.0\n2026-01-13 10:30,3276.7,255\n",
		"f air_temperature 12 2 0 10:00..10:10 4..4.5|f relative_humidity 12 2 0 10:00..10:10 0.805..0.815|note sentinel|note sentinel|note out_of_order"},
	{"a night that comes to what a sensor gives that was not read", "time,temp °C\n2026-01-13 10:00,-38.5\n2026-01-13 10:10,-40.1\n2026-01-13 10:20,-42.2\n2026-01-13 10:30,-44.0\n2026-01-13 10:40,-45.0\n", "f air_temperature 5 0 0 10:00..10:40 -45..-38.5"},
	{"a frost point is no dew point", "time,temp °C,frost point °C\n2026-01-13 10:00,4.5,-1.0\n2026-01-13 10:10,4.0,-1.2\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f other 2 0 0 10:00..10:10 -1.2..-1"},
	{"readings over several lines, in an array", "[\n  {\n    \"time\": \"2026-01-13 10:00\",\n    \"temperature\": 4.5,\n    \"humidity\": 80\n  },\n  {\n    \"time\": \"2026-01-13 10:10\",\n    \"temperature\": null,\n    \"humidity\": 81\n  }\n]\n",
		"f air_temperature 1 1 0 10:00..10:00 4.5..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
	{"readings on one line, in an array of an object", `{"place":"shed","rows":[{"time":"2026-01-13 10:00","temperature":4.5},{"time":"2026-01-13 10:10","temperature":4.0}]}`, "f air_temperature 2 0 0 10:00..10:10 4..4.5"},
	{"an array for each column, units beside them", `{"at":[59.4,24.7],"box":[58,61],"hourly_units":{"time":"iso8601","temperature_2m":"°C"},"hourly":{"time":["2026-01-13T10:00","2026-01-13T11:00","2026-01-13T12:00"],"temperature_2m":[4.5,4.0,3.5]}}`, "f air_temperature 3 0 0 10:00..12:00 3.5..4.5"},
	{"loggers by a letter in one word", "time,TA,RHA,TB,RHB\n2026-01-13 10:00,4.5,80,5.5,70\n2026-01-13 10:10,4.0,81,5.0,71\n",
		"A air_temperature 2 0 0 10:00..10:10 4..4.5|A relative_humidity 2 0 0 10:00..10:10 0.8..0.81|B air_temperature 2 0 0 10:00..10:10 5..5.5|B relative_humidity 2 0 0 10:00..10:10 0.7..0.71"},
	{"a fan's turns", "time,fan1_rpm\n2026-01-13 10:00,0\n2026-01-13 10:10,1420\n", "f speed 2 0 0 10:00..10:10 0..1420"},
	{"hours that end, behind what they hold", "date,parameter,HE1,HE2,HE3,HE4,HE5,HE6,HE7,HE8,HE9,HE10,HE11,HE12,HE13,HE14,HE15,HE16,HE17,HE18,HE19,HE20,HE21,HE22,HE23,HE24\n2026-01-13,temp,2.0,2.1,2.2,2.3,2.4,2.5,2.6,2.7,2.8,2.9,3.0,3.1,3.2,3.3,3.4,3.5,3.6,3.7,3.8,3.9,4.0,4.1,4.2,4.3\n2026-01-13,rh,70.0,70.1,70.2,70.3,70.4,70.5,70.6,70.7,70.8,70.9,71.0,71.1,71.2,71.3,71.4,71.5,71.6,71.7,71.8,71.9,72.0,72.1,72.2,72.3\n2026-01-14,temp,2.0,2.1,2.2,2.3,2.4,2.5,2.6,2.7,2.8,2.9,3.0,3.1,3.2,3.3,3.4,3.5,3.6,3.7,3.8,3.9,4.0,4.1,4.2,4.3\n2026-01-14,rh,71.0,71.1,71.2,71.3,71.4,71.5,71.6,71.7,71.8,71.9,72.0,72.1,72.2,72.3,72.4,72.5,72.6,72.7,72.8,72.9,73.0,73.1,73.2,73.3\n",
		"f air_temperature 48 0 0 01:00..00:00 2..4.3|f relative_humidity 48 0 0 01:00..00:00 0.7..0.733"},
}

func TestForms(t *testing.T) {
	for _, f := range slices.Concat(forms, houseForms) {
		for _, quick := range []bool{true, false} {
			e, err := read(context.Background(), strings.NewReader(f.file), "f.csv", nil, quick)
			if err != nil {
				t.Errorf("%s: %v", f.name, err)
				continue
			}
			if got := allSaid(e); got != f.want {
				t.Errorf("%s: got\n%s\nwant\n%s\n%s", f.name, got, f.want, f.file)
			}
		}
	}
}

// What a file holds that names nothing else, its own name may say: one word of two.
func TestNamesOfFiles(t *testing.T) {
	for name, want := range map[string]string{
		"Barn 2 Temperatur.csv": "air_temperature|", "rel. humidity.csv": "relative_humidity|", "temp and humidity.csv": "air_temperature|quantity", "log.csv": "air_temperature|quantity", "rain.csv": "air_temperature|quantity",
	} {
		e, err := Read(context.Background(), strings.NewReader("time,value\n2026-01-13 10:00,70.5\n2026-01-13 10:10,71.0\n"), name, nil)
		if err != nil {
			t.Fatal(err)
		}
		got := string(e.Series[0].Quantity) + "|"
		for _, q := range e.Questions {
			got += q.ID
		}
		if got != want {
			t.Errorf("%s: %s, want %s", name, got, want)
		}
	}
	kelvin := "time,North,South\n2026-01-13 10:00,277.65,277.15\n2026-01-13 10:10,277.15,276.65\n"
	if e, err := Read(context.Background(), strings.NewReader(kelvin), "temperature.csv", nil); err != nil || said(e) != "temperature air_temperature 2 0 0 10:00..10:10 4..4.5|temperature air_temperature 2 0 0 10:00..10:10 3.5..4" {
		t.Error(said(e), err)
	}
}
