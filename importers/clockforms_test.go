package importers

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"
	_ "time/tzdata" // the zone rules, so that the machine's own don't matter
)

// clockForms hold one small file per way a time is printed in loggers' files, and what a person reads in it: the
// order of the date's parts (? where nothing tells it for certain), the zone, the instants or faces of the rows,
// and what is asked and remarked. Where a file can't be read for its clock: the code of the refusal.
var clockForms = []struct{ name, in, want string }{
	// Where the time stands.
	{"time column before the date's", "time,date,temp C\n23:50,2025-11-15,4.5\n00:00,2025-11-16,4.4\n", "ymd - 2025-11-15T23:50:00 2025-11-16T00:00:00"},
	{"time before the date, blanks", "23:50 15.11.2025 4.5\n00:00 16.11.2025 4.4\n", "dmy - 2025-11-15T23:50:00 2025-11-16T00:00:00; ask quantity"},
	{"time before the date in one cell", "when,temp C\n23:50:00 15.11.2025,4.5\n00:00:00 16.11.2025,4.4\n", "dmy - 2025-11-15T23:50:00 2025-11-16T00:00:00"},
	{"half-day time before the date in one cell", "when,temp C\n11:50 PM 11/15/2025,4.5\n12:00 AM 11/16/2025,4.4\n", "mdy - 2025-11-15T23:50:00 2025-11-16T00:00:00"},
	{"the year behind the time", "when,temp C\nSat Nov 15 23:50:00 2025,4.5\nSun Nov 16 00:00:00 2025,4.4\n", "mdy - 2025-11-15T23:50:00 2025-11-16T00:00:00"},
	{"the year behind the zone", "when,temp C\nSat Nov 15 23:50:00 CET 2025,4.5\nSun Nov 16 00:00:00 CET 2025,4.4\n", "mdy +01:00 2025-11-15T22:50:00 2025-11-15T23:00:00"},
	{"one date for a day's rows", "Datum;Zeit;T °C\n15.11.2025;23:40;4,5\n;23:50;4,5\n16.11.2025;00:00;4,4\n;00:10;4,4\n;00:20;4,4\n", "dmy - 2025-11-15T23:40:00 2025-11-15T23:50:00 2025-11-16T00:00:00 2025-11-16T00:10:00 2025-11-16T00:20:00"},

	{"a time on the day from which spreadsheets count", "Date,Time,temp C\n2025-11-15 00:00:00,1899-12-30 23:50:00,4.5\n2025-11-16 00:00:00,1899-12-30 00:00:00,4.4\n", "ymd - 2025-11-15T23:50:00 2025-11-16T00:00:00"},
	{"dates alone, several a day", "date,temp C\n2025-11-15,4.5\n2025-11-15,4.4\n2025-11-15,4.4\n2025-11-16,4.4\n", "ymd - 2025-11-15T00:00:00 2025-11-15T00:00:00 2025-11-15T00:00:00 2025-11-16T00:00:00; note no_times"},

	{"how long it has run, from a start above", "Start,2025-11-15 13:05:00\nElapsed,temp C\n0:00:00,4.5\n23:55:00,4.4\n240:05:10,4.4\n", "ymd - 2025-11-15T13:05:00 2025-11-16T13:00:00 2025-11-25T13:10:10"},
	{"the year above", "Year: 2025\nmonth,day,hour,temp C\n12,31,22,4.5\n12,31,23,4.4\n1,1,0,4.4\n", "ymd - 2025-12-31T22:00:00 2025-12-31T23:00:00 2026-01-01T00:00:00"},
	{"the year of a start above", "Start;30.12.2025 22:00\nZeit;T °C\n30.12. 22:00;4,5\n31.12. 22:00;4,4\n01.01. 22:00;4,4\n", "dmy - 2025-12-30T22:00:00 2025-12-31T22:00:00 2026-01-01T22:00:00"},
	{"a start whose day may be its month", "Start: 05/11/2025 13:05\nElapsed (min),temp C\n0,4.5\n10,4.4\n20,4.4\n", "dmy? - 2025-11-05T13:05:00 2025-11-05T13:15:00 2025-11-05T13:25:00; ask day_month"},
	{"a start and an interval, and rows that are only counted", "Start Time: 11/15/2025 1:05:00 PM\nInterval: 600 s\nReading,temp F\n" + strings.Repeat("1,40.1\n2,40.2\n3,40.1\n", 20), "refused no_clock"},

	// Printed dates.
	{"newest first, two-digit year", "when,temp C\n16/11/25 01:00,4.5\n16/11/25 00:00,4.5\n15/11/25 23:00,4.5\n15/11/25 22:00,4.5\n", "dmy - 2025-11-16T01:00:00 2025-11-16T00:00:00 2025-11-15T23:00:00 2025-11-15T22:00:00"},
	{"days counted in English", "when,temp C\n15th Nov 2025 23:50,4.5\n1st Dec 2025 00:00,4.4\n2nd Dec 2025 00:10,4.4\n", "dmy - 2025-11-15T23:50:00 2025-12-01T00:00:00 2025-12-02T00:10:00"},
	{"a spreadsheet's mark for text", "when;temp C\n'15.11.2025 23:50;4,5\n'16.11.2025 00:00;4,4\n", "dmy - 2025-11-15T23:50:00 2025-11-16T00:00:00"},
	{"blanks, and names for date and time but not for AM and PM", "Date Time RH Temp_C\n11/15/2025 11:50 PM 80 4.5\n11/16/2025 12:00 AM 81 4.4\n", "mdy - 2025-11-15T23:50:00 2025-11-16T00:00:00"},
	{"two-digit year, named month", "when,temp C\n15-Nov-25 23:50,4.5\n16-Nov-25 00:00,4.4\n", "dmy - 2025-11-15T23:50:00 2025-11-16T00:00:00"},
	{"capital month, dotted half-day time", "when,temp C\n15-NOV-25 11.50.00 PM,4.5\n16-NOV-25 12.00.00 AM,4.4\n", "dmy - 2025-11-15T23:50:00 2025-11-16T00:00:00"},
	{"a browser's way to print a time", "when,temp C\nSat Nov 15 2025 13:05:00 GMT+0100 (Central European Standard Time),4.5\nSat Nov 15 2025 13:15:00 GMT+0100 (Central European Standard Time),4.4\n", "mdy +01:00 2025-11-15T12:05:00 2025-11-15T12:15:00"},
	{"the same in German words", "when;temp C\nSat Nov 15 2025 13:05:00 GMT+0100 (Mitteleuropäische Normalzeit);4,5\nSat Nov 15 2025 13:15:00 GMT+0100 (Mitteleuropäische Normalzeit);4,4\n", "mdy +01:00 2025-11-15T12:05:00 2025-11-15T12:15:00"},
	{"the internet's mail date (RFC 5322)", "when;temp C\nSat, 15 Nov 2025 13:05:00 +0100;4.5\nSat, 15 Nov 2025 13:15:00 +0100;4.4\n", "dmy +01:00 2025-11-15T12:05:00 2025-11-15T12:15:00"},
	{"colon between date and time, offset", "when;temp C\n15/Nov/2025:13:05:00 +0100;4.5\n15/Nov/2025:13:15:00 +0100;4.4\n", "dmy +01:00 2025-11-15T12:05:00 2025-11-15T12:15:00"},
	{"year first, two digits", "when;temp C\n25-11-15 13:05;4.5\n25-11-16 13:15;4.4\n", "ymd - 2025-11-15T13:05:00 2025-11-16T13:15:00"},
	{"year first with dots behind each part", "when;temp C\n2025. 11. 15. 13:05;4.5\n2025. 11. 15. 13:15;4.4\n", "ymd - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"year first, a dot at the end", "when;temp C\n2025.11.15. 13:05;4.5\n2025.11.15. 13:15;4.4\n", "ymd - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"year, named month, day in Hungarian", "when;temp C\n2025. november 30. 23:50;4.5\n2025. december 1. 0:00;4.4\n", "ymd - 2025-11-30T23:50:00 2025-12-01T00:00:00"},
	{"signs for year, month and day", "when,temp C\n2025年11月15日 13:05,4.5\n2025年11月15日 13:15,4.4\n", "ymd - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"weekday in two letters", "when;temp C\nSa 15.11.2025 13:05;4,5\nSa 15.11.2025 13:15;4,4\n", "dmy - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"weekday with a dot and a comma", "when;temp C\nSa., 15.11.2025 13:05;4,5\nSa., 15.11.2025 13:15;4,4\n", "dmy - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"weekday behind the date", "when;temp C\n15.11.2025 Sa 13:05;4,5\n15.11.2025 Sa 13:15;4,4\n", "dmy - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"weekday behind the date in brackets", "when;temp C\n2025-11-15 (Sat) 13:05;4.5\n2025-11-15 (Sat) 13:15;4.4\n", "ymd - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"weekday column between", "date,day,time,temp C\n2025-11-15,Sat,13:05,4.5\n2025-11-15,Sat,13:15,4.4\n", "ymd - 2025-11-15T13:05:00 2025-11-15T13:15:00"},

	{"two prints, no header, the fewer rows above", "15.11.2025 23:40;4,5\n15.11.2025 23:50;4,4\n2025-11-16 00:00;4,4\n2025-11-16 00:10;4,4\n2025-11-16 00:20;4,3\n", "ymd - 2025-11-15T23:40:00 2025-11-15T23:50:00 2025-11-16T00:00:00 2025-11-16T00:10:00 2025-11-16T00:20:00; ask quantity"},
	{"two prints, the date in a column of its own", "date;time;T °C\n2025-11-15;23:40;4,5\n2025-11-15;23:50;4,4\n11/16/2025;00:00;4,4\n11/16/2025;00:10;4,4\n", "ymd - 2025-11-15T23:40:00 2025-11-15T23:50:00 2025-11-16T00:00:00 2025-11-16T00:10:00"},
	{"two prints, one of which leaves the day open", "05/11/2025 23:40;4,5\n05/11/2025 23:50;4,4\n2025-11-06 00:00;4,4\n2025-11-06 00:10;4,4\n2025-11-06 00:20;4,3\n", "ymd - 2025-11-06T00:00:00 2025-11-06T00:10:00 2025-11-06T00:20:00; ask quantity; note bad_time; 2 lost"},

	{"year to hour printed as a number with a fraction", "when,temp C\n2025111523.0,4.5\n2025111600.0,4.4\n2025111601.0,4.4\n", "ymd - 2025-11-15T23:00:00 2025-11-16T00:00:00 2025-11-16T01:00:00"},
	{"year to minute printed as a number with a fraction", "when,temp C\n202511152350.0,4.5\n202511160000.0,4.4\n", "ymd - 2025-11-15T23:50:00 2025-11-16T00:00:00"},
	{"year to day printed as a number with a fraction, the hour beside", "date,hour,temp C\n20251115.0,23.0,4.5\n20251116.0,0.0,4.4\n", "ymd - 2025-11-15T23:00:00 2025-11-16T00:00:00"},
	// 2,511,152,350 seconds after 1970 it is July 2049.
	{"ten digits that are dates, or seconds to a time to come", "when,temp C\n2511152350,4.5\n2511160000,4.4\n2511160010,4.4\n", "ymd - 2025-11-15T23:50:00 2025-11-16T00:00:00 2025-11-16T00:10:00"},
	{"hours and minutes in one number under a name of clocks, some below ten", "date,stamp,temp C\n2025-11-15,2355,4.5\n2025-11-16,955,4.4\n2025-11-17,1000,4.4\n", "ymd - 2025-11-15T23:55:00 2025-11-16T09:55:00 2025-11-17T10:00:00"},
	{"minima beside dates that come twice are no minutes", "date,min,max\n2025-11-15,61,65\n2025-11-15,62,66\n2025-11-16,63,67\n2025-11-16,64,68\n", "ymd - 2025-11-15T00:00:00 2025-11-15T00:00:00 2025-11-16T00:00:00 2025-11-16T00:00:00; note statistic; note no_times"},
	{"seconds since 1970 with a fraction", "when,temp C\n1763211000.0,4.5\n1763211600.0,4.4\n", "epoch_s +00:00 2025-11-15T12:50:00 2025-11-15T13:00:00"},

	// What stands between date and time, and behind.
	{"an at sign between", "when;temp C\n15.11.2025 @ 13:05;4,5\n15.11.2025 @ 13:15;4,4\n", "dmy - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"a dash between", "when;temp C\n15.11.2025 - 13:05;4,5\n15.11.2025 - 13:15;4,4\n", "dmy - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"an underscore between", "when;temp C\n2025-11-15_13:05:00;4.5\n2025-11-15_13:15:00;4.4\n", "ymd - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"the word at between", "when;temp C\n\"November 15, 2025 at 1:05 PM\";4.5\n\"November 15, 2025 at 1:15 PM\";4.4\n", "mdy - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"the word um between", "when;temp C\n15.11.2025 um 13:05 Uhr;4,5\n15.11.2025 um 13:15 Uhr;4,4\n", "dmy - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"the word kl. between", "when;temp C\n15. november 2025 kl. 13.05;4,5\n15. november 2025 kl. 13.15;4,4\n", "dmy - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"the word klo between", "when;temp C\n15.11.2025 klo 13.05;4,5\n15.11.2025 klo 13.15;4,4\n", "dmy - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"the word à between", "when;temp C\n15 novembre 2025 à 13:05;4,5\n15 novembre 2025 à 13:15;4,4\n", "dmy - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"hour behind T", "when,temp C\n2025-11-15T13,4.5\n2025-11-15T14,4.4\n", "ymd - 2025-11-15T13:00:00 2025-11-15T14:00:00"},
	{"fractions behind a comma", "when;temp C\n2025-11-15 13:05:00,250;4.5\n2025-11-15 13:15:00,500;4.4\n", "ymd - 2025-11-15T13:05:00.25 2025-11-15T13:15:00.5"},
	{"nanoseconds and an offset", "when,temp C\n2025-11-15T13:05:00.123456789+01:00,4.5\n2025-11-15T13:15:00.123456789+01:00,4.4\n", "ymd +01:00 2025-11-15T12:05:00.123 2025-11-15T12:15:00.123"},
	{"midnight printed as a date alone", "when,temp C\n2025-11-15 23:50:00,4.5\n2025-11-16,4.4\n2025-11-16 00:10:00,4.4\n2025-11-16 00:20:00,4.4\n", "ymd - 2025-11-15T23:50:00 2025-11-16T00:00:00 2025-11-16T00:10:00 2025-11-16T00:20:00"},

	// Days and hours counted.
	{"year and day of the year in seven digits, a time beside", "date,time,temp C\n2025319,23:50,4.5\n2025320,00:00,4.4\n", "doy - 2025-11-15T23:50:00 2025-11-16T00:00:00"},
	{"year and day of the year with a dash and T", "when,temp C\n2025-319T23:50:00,4.5\n2025-320T00:00:00,4.4\n", "doy - 2025-11-15T23:50:00 2025-11-16T00:00:00"},
	{"fraction of the day of the year without a year", "doy,temp C\n319.9931,4.5\n320.0,4.4\n320.0069,4.4\n", "doy - 2000-11-14T23:50:00 2000-11-15T00:00:00 2000-11-15T00:10:00; ask year"},
	{"a leap second", "when,temp C\n2016-12-31 23:59:59,4.5\n2016-12-31 23:59:60,4.4\n2017-01-01 00:00:01,4.4\n", "ymd - 2016-12-31T23:59:59 2017-01-01T00:00:00 2017-01-01T00:00:01"},
	{"24:00:00", "when;temp C\n15.11.2025 23:50:00;4,5\n15.11.2025 24:00:00;4,4\n16.11.2025 00:10:00;4,4\n", "dmy - 2025-11-15T23:50:00 2025-11-16T00:00:00 2025-11-16T00:10:00"},
	{"hours 1 to 24, minutes 60", "2025,11,15,23,60,4.5,80\n2025,11,15,24,60,4.4,81\n2025,11,16,1,60,4.4,81\n", "ymd - 2025-11-15T23:00:00 2025-11-16T00:00:00 2025-11-16T01:00:00; ask pairing"},
	{"hours and minutes, noughts left out", "date,time,temp C\n2025-11-15,2355,4.5\n2025-11-16,0,4.4\n2025-11-16,5,4.4\n2025-11-16,10,4.4\n", "ymd - 2025-11-15T23:55:00 2025-11-16T00:00:00 2025-11-16T00:05:00 2025-11-16T00:10:00"},
	{"hours, minutes and seconds in one number, noughts left out", "date,time,temp C\n20251115,235000,4.5\n20251116,0,4.4\n20251116,1000,4.4\n20251116,10000,4.4\n20251116,95000,4.4\n", "ymd - 2025-11-15T23:50:00 2025-11-16T00:00:00 2025-11-16T00:10:00 2025-11-16T01:00:00 2025-11-16T09:50:00"},
	{"hours with their sign", "date;heure;temp C\n15/11/2025;22h;4,5\n15/11/2025;23h;4,4\n16/11/2025;0h;4,4\n", "dmy - 2025-11-15T22:00:00 2025-11-15T23:00:00 2025-11-16T00:00:00"},
	{"hour and minute beside a station's name", "Station;Datum;Stunde;Minute;T °C\nX1;15.11.2025;23;30;4,5\nX1;16.11.2025;0;0;4,4\nX1;16.11.2025;0;30;4,4\n", "dmy - 2025-11-15T23:30:00 2025-11-16T00:00:00 2025-11-16T00:30:00"},
	{"a decimal day beside a year", "year,decimal_day,temp C\n2025,319.5,4.5\n2025,319.5417,4.4\n", "doy - 2025-11-15T12:00:00 2025-11-15T13:00:00"},
	{"an hour from and to behind its date", "when;temp C\n15.11.2025 00:00-01:00;4,5\n15.11.2025 01:00-02:00;4,4\n15.11.2025 02:00-03:00;4,4\n15.11.2025 03:00-04:00;4,4\n", "dmy - 2025-11-15T00:00:00 2025-11-15T01:00:00 2025-11-15T02:00:00 2025-11-15T03:00:00"},
	{"from and to, each with its date", "when;temp C\n15.11.2025 22:00 - 15.11.2025 23:00;4,5\n15.11.2025 23:00 - 16.11.2025 00:00;4,4\n", "dmy - 2025-11-15T22:00:00 2025-11-15T23:00:00"},
	{"from and to as ISO 8601 has it", "when;temp C\n2025-11-15T22:00/2025-11-15T23:00;4.5\n2025-11-15T23:00/2025-11-16T00:00;4.4\n", "ymd - 2025-11-15T22:00:00 2025-11-15T23:00:00"},
	{"an hour from and to", "date;hour;temp C\n15.11.2025;22:00-23:00;4,5\n15.11.2025;23:00-24:00;4,4\n", "dmy - 2025-11-15T22:00:00 2025-11-15T23:00:00"},

	// Half days.
	{"a.m. in capitals", "when,temp C\n11/15/2025 11:50 A.M.,4.5\n11/15/2025 12:00 P.M.,4.4\n", "mdy - 2025-11-15T11:50:00 2025-11-15T12:00:00"},
	{"half days in German", "when;temp C\n15.11.2025 11:50 vorm.;4,5\n15.11.2025 12:00 nachm.;4,4\n", "dmy - 2025-11-15T11:50:00 2025-11-15T12:00:00"},
	{"half days in Greek", "when;temp C\n15/11/2025 11:50 π.μ.;4,5\n15/11/2025 12:00 μ.μ.;4,4\n", "dmy - 2025-11-15T11:50:00 2025-11-15T12:00:00"},
	{"half days in Hungarian, before the time", "when;temp C\n2025.11.15. de. 11:50;4,5\n2025.11.15. du. 12:00;4,4\n", "ymd - 2025-11-15T11:50:00 2025-11-15T12:00:00"},
	{"half days in Czech", "when;temp C\n15.11.2025 11:50 dop.;4,5\n15.11.2025 12:00 odp.;4,4\n", "dmy - 2025-11-15T11:50:00 2025-11-15T12:00:00"},
	{"half days in Chinese, before the time", "when,temp C\n2025/11/15 上午 11:50:00,4.5\n2025/11/15 下午 12:00:00,4.4\n", "ymd - 2025-11-15T11:50:00 2025-11-15T12:00:00"},

	// Counts.
	{"epoch seconds in scientific notation", "time,temp C\n1.7632110e9,4.5\n1.7632116e9,4.4\n1.7632122e9,4.4\n", "epoch_s +00:00 2025-11-15T12:50:00 2025-11-15T13:00:00 2025-11-15T13:10:00"},
	{"tenths of a microsecond since the year 1", "Ticks,temp C\n638988078000000000,4.5\n638988084000000000,4.4\n", "serial - 2025-11-15T12:50:00 2025-11-15T13:00:00"},
	{"tenths of a microsecond since 1601", "time,temp C\n134076846000000000,4.5\n134076852000000000,4.4\n", "epoch_ms +00:00 2025-11-15T12:50:00 2025-11-15T13:00:00"},
	{"epoch nanoseconds", "time,temp C\n1763211000000000000,4.5\n1763211600000000000,4.4\n", "epoch_ms +00:00 2025-11-15T12:50:00 2025-11-15T13:00:00"},
	{"a spreadsheet's day and the day's fraction beside", "date,time,temp C\n45976,0.99306,4.5\n45977,0,4.4\n45977,0.00694,4.4\n", "serial - 2025-11-15T23:50:00 2025-11-16T00:00:00 2025-11-16T00:10:00"},
	{"a few days far apart, none above 12", "date,temp C\n01/04/2025,4.5\n02/05/2025,4.4\n03/08/2025,4.4\n05/09/2025,4.4\n", "dmy? - 2025-04-01T00:00:00 2025-05-02T00:00:00 2025-08-03T00:00:00 2025-09-05T00:00:00; ask day_month"},
	{"days from 1904, said above", "Day 0 is 1904-01-01\ndate,temp C\n44514.99306,4.5\n44515,4.4\n44515.00694,4.4\n", "serial - 2025-11-15T23:50:00 2025-11-16T00:00:00 2025-11-16T00:10:00"},
	{"days from 1904, their dates beside them", "date,day,temp C\n44514.99306,15/11/2025,4.5\n44515,16/11/2025,4.4\n44515.00694,16/11/2025,4.4\n", "serial - 2025-11-15T23:50:00 2025-11-16T00:00:00 2025-11-16T00:10:00"},
	{"days under a year that is near those from 1904 alone", "Shed, winter 2025/26\ndate,temp C\n44514.99306,4.5\n44515,4.4\n44515.00694,4.4\n", "serial - 2021-11-14T23:50:00 2021-11-15T00:00:00 2021-11-15T00:10:00; ask day_zero"},
	{"days under their year", "Shed, winter 2025/26\ndate,temp C\n45976.99306,4.5\n45977,4.4\n45977.00694,4.4\n", "serial - 2025-11-15T23:50:00 2025-11-16T00:00:00 2025-11-16T00:10:00"},
	{"days under the day of a much later export", "Exported 20310102\ndate,temp C\n45976.99306,4.5\n45977,4.4\n45977.00694,4.4\n", "serial - 2025-11-15T23:50:00 2025-11-16T00:00:00 2025-11-16T00:10:00"},
	{"Julian day numbers", "Julian date,temp C\n2460995.4931,4.5\n2460995.5,4.4\n2460995.5069,4.4\n", "serial +00:00 2025-11-15T23:50:00 2025-11-16T00:00:00 2025-11-16T00:10:00"},
	{"modified Julian days", "MJD,temp C\n60994.99306,4.5\n60995.0,4.4\n60995.00694,4.4\n", "serial +00:00 2025-11-15T23:50:00 2025-11-16T00:00:00 2025-11-16T00:10:00"},
	{"years with their fraction", "decimal year,temp C\n2025.500000,4.5\n2025.500114,4.4\n2025.500228,4.4\n", "doy - 2025-07-02T12:00:00 2025-07-02T13:00:00 2025-07-02T14:00:00"},
	{"hours since a date in the header", "hours since 2025-11-15 13:00:00,temp C\n0,4.5\n0.5,4.4\n1,4.4\n", "ymd - 2025-11-15T13:00:00 2025-11-15T13:30:00 2025-11-15T14:00:00"},
	{"days since a date in brackets, UTC", "time (days since 1970-01-01 00:00 UTC),temp C\n20407.5,4.5\n20407.75,4.4\n20408,4.4\n", "ymd +00:00 2025-11-15T12:00:00 2025-11-15T18:00:00 2025-11-16T00:00:00"},
	{"seconds from a start above", "Start: 2025-11-15 13:05:00\nElapsed (s),temp C\n0,4.5\n600,4.4\n1200,4.4\n", "ymd - 2025-11-15T13:05:00 2025-11-15T13:15:00 2025-11-15T13:25:00"},
	{"minutes from a start above, its date apart from its time", "Startdatum;15.11.2025\nStartzeit;13:05\nt [min];T °C\n0;4,5\n10;4,4\n20;4,4\n", "dmy - 2025-11-15T13:05:00 2025-11-15T13:15:00 2025-11-15T13:25:00"},
	{"seconds without a start", "Elapsed (s),temp C\n0,4.5\n600,4.4\n1200,4.4\n", "refused no_start"},
	{"minutes of a time without a start", "time (min),temp C\n0,4.5\n10,4.4\n20,4.4\n", "refused no_start"},
	{"clock times from a start, none named", "elapsed,temp C\n0:00:00,4.5\n0:10:00,4.4\n0:20:00,4.4\n", "refused no_start"},
	{"times of day under a date above", "Date: 2025-11-15\ntime,temp C\n23:40,4.5\n23:50,4.4\n00:00,4.4\n", "ymd - 2025-11-15T23:40:00 2025-11-15T23:50:00 2025-11-16T00:00:00"},
	{"times of day, no date", "time,temp C\n23:40,4.5\n23:50,4.4\n00:00,4.4\n", "? - 2000-01-01T23:40:00 2000-01-01T23:50:00 2000-01-02T00:00:00; ask first_day"},
	{"times of day under a title with its day", "Barn log of 15 November 2025\ntime,temp C\n23:40,4.5\n23:50,4.4\n00:00,4.4\n", "dmy - 2025-11-15T23:40:00 2025-11-15T23:50:00 2025-11-16T00:00:00; note day_above"},
	{"times of day under a day that was printed, and the log's", "Printed 2026-04-03\n15.11.2025;T °C\n23:40;4,5\n23:50;4,4\n00:00;4,4\n", "dmy - 2025-11-15T23:40:00 2025-11-15T23:50:00 2025-11-16T00:00:00; note day_above"},
	{"times of day under a day alone, no header", "2025-11-15\n23:40;4,5;80\n23:50;4,4;81\n00:00;4,4;81\n", "ymd - 2025-11-15T23:40:00 2025-11-15T23:50:00 2025-11-16T00:00:00; ask pairing; note day_above"},
	{"times of day under a day that may be a month", "Shed, 05/11/2025\ntime,temp C\n23:40,4.5\n23:50,4.4\n00:00,4.4\n", "dmy? - 2025-11-05T23:40:00 2025-11-05T23:50:00 2025-11-06T00:00:00; ask day_month"},
	{"times of day under the day of the export", "Exported 2026-04-03 10:12\ntime,temp C\n23:40,4.5\n23:50,4.4\n00:00,4.4\n", "? - 2000-01-01T23:40:00 2000-01-01T23:50:00 2000-01-02T00:00:00; ask first_day"},
	{"times of half days in two columns, no date", "time,,temp C\n11:50:00,PM,4.5\n12:00:00,AM,4.4\n12:10:00,AM,4.4\n", "? - 2000-01-01T23:50:00 2000-01-02T00:00:00 2000-01-02T00:10:00; ask first_day"},
	{"times of day, newest first, no date", "time,temp C\n00:10,4.4\n00:00,4.4\n23:50,4.4\n23:40,4.5\n", "? - 2000-01-01T00:10:00 2000-01-01T00:00:00 1999-12-31T23:50:00 1999-12-31T23:40:00; ask first_day"},
	{"times of day, a night without rows", "time,temp C\n16:00,4.4\n17:00,4.4\n18:00,4.4\n08:00,4.5\n09:00,4.5\n", "? - 2000-01-01T16:00:00 2000-01-01T17:00:00 2000-01-01T18:00:00 2000-01-02T08:00:00 2000-01-02T09:00:00; ask first_day"},
	{"times of day, put back by the hour of winter time", "time,temp C\n01:30,4.4\n02:00,4.4\n02:30,4.4\n02:00,4.5\n02:30,4.5\n03:00,4.5\n", "? - 2000-01-01T01:30:00 2000-01-01T02:00:00 2000-01-01T02:30:00 2000-01-01T02:00:00 2000-01-01T02:30:00 2000-01-01T03:00:00; ask first_day; note out_of_order"},
	{"times of half days without AM and PM, no date", "time,temp C\n11:00,4.4\n12:00,4.4\n1:00,4.4\n2:00,4.5\n", "refused no_date"},
	{"times of day beside weekdays", "date,time,temp C\nSaturday,23:40,4.5\nSaturday,23:50,4.4\nSunday,00:00,4.4\n", "refused no_date"},
	{"one time of day for all rows", "time,temp C\n10:00,4.4\n10:00,4.5\n10:00,4.6\n", "refused no_date"},
	{"months alone", "month,temp C\n2025-11,4.5\n2025-12,4.4\n2026-01,4.4\n", "refused no_days"},
	{"year and month in columns", "year,month,temp C\n2025,11,4.5\n2025,12,4.4\n2026,1,4.4\n", "refused no_days"},
	{"named months alone", "month,temp C\nNov 2025,4.5\nDec 2025,4.4\nJan 2026,4.4\n", "refused no_days"},

	// Zones.
	{"summer and winter time in the cells", "when;temp C\n26.10.2025 02:50 CEST;4,5\n26.10.2025 02:00 CET;4,4\n26.10.2025 02:10 CET;4,4\n", "dmy - 2025-10-26T00:50:00 2025-10-26T01:00:00 2025-10-26T01:10:00"},
	{"summer and winter time in a column", "when;tz;temp C\n26.10.2025 02:50;CEST;4,5\n26.10.2025 02:00;CET;4,4\n26.10.2025 02:10;CET;4,4\n", "dmy - 2025-10-26T00:50:00 2025-10-26T01:00:00 2025-10-26T01:10:00"},
	{"offsets in a column", "time,utc_offset,temp C\n2025-11-02 01:50,-04:00,4.5\n2025-11-02 01:00,-05:00,4.4\n2025-11-02 01:10,-05:00,4.4\n", "ymd - 2025-11-02T05:50:00 2025-11-02T06:00:00 2025-11-02T06:10:00"},
	{"one zone of the database in a column", "time,timezone,temp C\n2025-11-02 01:50,America/New_York,4.5\n2025-11-02 01:00,America/New_York,4.4\n", "ymd America/New_York 2025-11-02T01:50:00 2025-11-02T01:00:00; note out_of_order"},
	{"a zone of the database behind each time", "time,temp C\n2025-11-15 13:05 Europe/Berlin,4.5\n2025-11-15 13:15 Europe/Berlin,4.4\n", "ymd Europe/Berlin 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"an offset and the zone's name in brackets", "time,temp C\n2025-11-15T13:05+01:00[Europe/Berlin],4.5\n2025-11-15T13:15+01:00[Europe/Berlin],4.4\n", "ymd +01:00 2025-11-15T12:05:00 2025-11-15T12:15:00"},
	{"a German abbreviation in brackets behind", "when;temp C\n15.11.2025 13:05 Uhr (MEZ);4,5\n15.11.2025 13:15 Uhr (MEZ);4,4\n", "dmy +01:00 2025-11-15T12:05:00 2025-11-15T12:15:00"},
	{"half-day time with an abbreviation", "when,temp C\n11/15/2025 1:05 PM EST,4.5\n11/15/2025 1:15 PM EST,4.4\n", "mdy -05:00 2025-11-15T18:05:00 2025-11-15T18:15:00"},
	{"UTC with an offset in the cell", "when,temp C\n2025-11-15 13:05 UTC+1,4.5\n2025-11-15 13:15 UTC+1,4.4\n", "ymd +01:00 2025-11-15T12:05:00 2025-11-15T12:15:00"},
	{"seconds of offset in a column", "time,tz_offset,temp C\n2025-11-15 13:05,3600,4.5\n2025-11-15 13:15,3600,4.4\n", "ymd +01:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"the zone in the row of units", "time,temp,rh\n(UTC),(C),(%)\n2025-11-15 13:05,4.5,80\n2025-11-15 13:15,4.4,80\n", "ymd +00:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"offset without a colon in the header", "\"Date Time, GMT-0500\",temp C\n2025-11-15 13:05,4.5\n2025-11-15 13:15,4.4\n", "ymd -05:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"abbreviation without brackets in the header", "Time EST,temp C\n2025-11-15 13:05,4.5\n2025-11-15 13:15,4.4\n", "ymd -05:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"abbreviation behind an underscore", "time_cet,temp C\n2025-11-15 13:05,4.5\n2025-11-15 13:15,4.4\n", "ymd +01:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"a sentence above", "All times are UTC\ntime,temp C\n2025-11-15 13:05,4.5\n2025-11-15 13:15,4.4\n", "ymd +00:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"winter's and summer's abbreviation in the header", "Time (CET/CEST),temp C\n2025-11-15 13:05,4.5\n2025-11-15 13:15,4.4\n", "ymd CET 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"winter's and summer's abbreviation above", "All times GMT/BST\nwhen,temp C\n2025-11-15 13:05,4.5\n2025-11-15 13:15,4.4\n", "ymd Europe/London 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"a clock in the west is none of western Europe's", "Zeit West;T °C\n15.11.2025 13:05;4,5\n15.11.2025 13:15;4,4\n", "dmy - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"a German sentence above", "Alle Zeiten in MEZ\nZeit;T °C\n15.11.2025 13:05;4,5\n15.11.2025 13:15;4,4\n", "dmy +01:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"seconds of offset above", "utc_offset_seconds,3600\ntime,temp C\n2025-11-15 13:05,4.5\n2025-11-15 13:15,4.4\n", "ymd +01:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"a zone with its towns above", "Time zone: (UTC+01:00) Amsterdam; Bern; Rome\ntime;temp C\n2025-11-15 13:05;4.5\n2025-11-15 13:15;4.4\n", "ymd +01:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"a table above, the zone's name beside its offset", "latitude,longitude,utc_offset_seconds,timezone,timezone_abbreviation\n52.5,13.4,3600,Europe/Berlin,GMT+1\n\ntime,temp C\n2025-11-15T13:05,4.5\n2025-11-15T13:15,4.4\n", "ymd Europe/Berlin 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"a table above, seconds west of UTC", "latitude,longitude,utc_offset_seconds,timezone,timezone_abbreviation\n40.5,-73.5,-18000,America/New_York,EST\n\ntime,temp C\n2025-11-15T13:05,4.5\n2025-11-15T13:15,4.4\n", "ymd America/New_York 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"a table above, five hours and a half", "latitude,longitude,utc_offset_seconds,timezone\n22.5,88.5,19800,Asia/Kolkata\n\ntime,temp C\n2025-11-15T13:05,4.5\n2025-11-15T13:15,4.4\n", "ymd Asia/Kolkata 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"a table above, the zone only as an offset", "latitude,utc_offset_seconds,timezone\n52.5,28800,GMT+8\n\ntime,temp C\n2025-11-15T13:05,4.5\n2025-11-15T13:15,4.4\n", "ymd +08:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	// Berlin is one hour from UTC in winter and two in summer, by the time zone database.
	{"a table above, the offset of another season than the readings'", "latitude,utc_offset_seconds,timezone,timezone_abbreviation\n52.5,7200,Europe/Berlin,CEST\n\ntime,temp C\n2025-11-15T13:05,4.5\n2025-11-15T13:15,4.4\n", "ymd +02:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"a table above, one offset in summer and winter", "latitude,utc_offset_seconds,timezone\n52.5,7200,Europe/Berlin\n\ntime,temp C\n2025-10-25T13:05,4.5\n2025-10-26T13:05,4.4\n", "ymd +02:00 2025-10-25T13:05:00 2025-10-26T13:05:00"},
	{"a table above, of places in one zone", "place,utc_offset_seconds,timezone\n0,3600,Europe/Berlin\n1,3600,Europe/Berlin\n\nplace,time,temp C\n0,2025-11-15T13:05,4.5\n1,2025-11-15T13:15,4.4\n", "ymd Europe/Berlin 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"a table above, of places in several zones", "place,utc_offset_seconds,timezone\n0,3600,Europe/Berlin\n1,32400,Asia/Tokyo\n\nplace,time,temp C\n0,2025-11-15T13:05,4.5\n1,2025-11-15T13:15,4.4\n", "ymd - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"what the times are not", "Hours are in local time, not UTC\ntime,temp C\n2025-11-15 13:05,4.5\n2025-11-15 13:15,4.4\n", "ymd - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"the word for an offset between UTC and the offset", "Time (UTC offset +02:00),temp C\n2025-11-15 13:05,4.5\n2025-11-15 13:15,4.4\n", "ymd +02:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"a zone that a line about hours names", "All data GMT hour ending\nwhen,temp C\n2025-11-15 13:05,4.5\n2025-11-15 13:15,4.4\n", "ymd +00:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"standard time of New Zealand", "Date(NZST),temp C\n2025-11-15 13:05,4.5\n2025-11-15 13:15,4.4\n", "ymd +12:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"Moscow's time in Russian", "Время (МСК);temp C\n15.11.2025 13:05;4,5\n15.11.2025 13:15;4,4\n", "dmy +03:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"western Europe's time in German", "Zeit WEZ;temp C\n15.11.2025 13:05;4,5\n15.11.2025 13:15;4,4\n", "dmy +00:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"Japan's and Korea's time behind the times", "when,temp C\n2025-11-15 13:05 JST,4.5\n2025-11-15 13:15 KST,4.4\n", "ymd +09:00 2025-11-15T04:05:00 2025-11-15T04:15:00"},
	{"local time before UTC", "local time,UTC time,temp C\n2025-11-15 14:05,2025-11-15 13:05,4.5\n2025-11-15 14:15,2025-11-15 13:15,4.4\n", "ymd +00:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"UTC before local time", "time_utc,time_local,temp C\n2025-11-15 13:05,2025-11-15 14:05,4.5\n2025-11-15 13:15,2025-11-15 14:15,4.4\n", "ymd +00:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"local time before one with its offset", "time,stamp,temp C\n2025-11-15 14:05,2025-11-15T13:05:00Z,4.5\n2025-11-15 14:15,2025-11-15T13:15:00Z,4.4\n", "ymd +00:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"local date and time before UTC's", "Date (local),Time (local),Date (UTC),Time (UTC),temp C\n2025-11-15,14:05,2025-11-15,13:05,4.5\n2025-11-15,14:15,2025-11-15,13:15,4.4\n", "ymd +00:00 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"when a reading was sent on is not when it was taken", "measured,received,temp C\n2025-11-15 14:05:00,2025-11-15T13:17:20Z,4.5\n2025-11-15 14:15:00,2025-11-15T13:19:01Z,4.4\n2025-11-15 14:25:00,2025-11-15T13:36:50Z,4.4\n", "ymd - 2025-11-15T14:05:00 2025-11-15T14:15:00 2025-11-15T14:25:00"},
	{"east and is in French are no zone", "Hangar est, heure locale\ntime,temp C\n2025-11-15 13:05,4.5\n2025-11-15 13:15,4.4\n", "ymd - 2025-11-15T13:05:00 2025-11-15T13:15:00"},
	{"an epoch beside its local face", "when,unix,temp C\n2025-11-15 14:50,1763211000,4.5\n2025-11-15 15:00,1763211600,4.4\n", "epoch_s +00:00 2025-11-15T12:50:00 2025-11-15T13:00:00"},

	// Day or month first where the days don't tell.
	{"dots are day first", "when;temp C\n05.11.2025 13:05;4,5\n05.11.2025 13:15;4,4\n", "dmy? - 2025-11-05T13:05:00 2025-11-05T13:15:00"},
	{"dots with a two-digit year", "when;temp C\n05.11.25 13:05;4,5\n05.11.25 13:15;4,4\n", "dmy? - 2025-11-05T13:05:00 2025-11-05T13:15:00"},
	{"strokes may be either", "when,temp C\n05/11/2025 13:05,4.5\n05/11/2025 13:15,4.4\n", "dmy? - 2025-11-05T13:05:00 2025-11-05T13:15:00; ask day_month"},
	{"the header's letters say month first", "Date (mm/dd/yyyy),time,temp C\n05/11/2025,13:05,4.5\n05/11/2025,13:15,4.4\n", "mdy - 2025-05-11T13:05:00 2025-05-11T13:15:00"},
	{"the header's letters say day first", "DD/MM/YYYY hh:mm;temp C\n05/11/2025 13:05;4.5\n05/11/2025 13:15;4.4\n", "dmy - 2025-11-05T13:05:00 2025-11-05T13:15:00"},
	{"the German header's letters", "Datum (TT/MM/JJJJ);Zeit;T °C\n05/11/2025;13:05;4,5\n05/11/2025;13:15;4,4\n", "dmy - 2025-11-05T13:05:00 2025-11-05T13:15:00"},

	// Twelve hours without a word for the half: they go back from 12 to 1 within a day.
	{"twelve hours, from morning to evening", "when,temp C\n2025-11-15 9:00,4.5\n2025-11-15 10:30,4.4\n2025-11-15 12:00,4.4\n2025-11-15 12:59,4.4\n2025-11-15 1:30,4.3\n2025-11-15 11:00,4.3\n2025-11-16 12:30,4.3\n2025-11-16 2:00,4.3\n", "ymd - 2025-11-15T09:00:00 2025-11-15T10:30:00 2025-11-15T12:00:00 2025-11-15T12:59:00 2025-11-15T13:30:00 2025-11-15T23:00:00 2025-11-16T00:30:00 2025-11-16T02:00:00; note half_days"},
	{"twelve hours, begun in an afternoon", "when,temp C\n2025-11-15 9:00,4.5\n2025-11-15 10:30,4.4\n2025-11-16 12:00,4.4\n2025-11-16 1:30,4.3\n2025-11-16 11:00,4.3\n2025-11-16 12:30,4.3\n2025-11-16 2:00,4.3\n", "ymd - 2025-11-15T21:00:00 2025-11-15T22:30:00 2025-11-16T00:00:00 2025-11-16T01:30:00 2025-11-16T11:00:00 2025-11-16T12:30:00 2025-11-16T14:00:00; note half_days"},
	{"a morning tells no twelve hours", "when,temp C\n2025-11-15 9:00,4.5\n2025-11-15 10:30,4.4\n2025-11-15 12:00,4.4\n", "ymd - 2025-11-15T09:00:00 2025-11-15T10:30:00 2025-11-15T12:00:00"},

	// Clocks that go wrong.
	{"a clock begun anew", "when,temp C\n2025-11-15 13:05,4.5\n2025-11-15 13:15,4.4\n2000-01-01 00:00,4.4\n2000-01-01 00:10,4.3\n", "ymd - 2025-11-15T13:05:00 2025-11-15T13:15:00 2000-01-01T00:00:00 2000-01-01T00:10:00; note clock_anew"},
	{"a clock that was set late", "when,temp C\n1970-01-01 00:00,4.4\n1970-01-01 00:10,4.3\n2025-11-15 13:05,4.5\n2025-11-15 13:15,4.4\n", "ymd - 1970-01-01T00:00:00 1970-01-01T00:10:00 2025-11-15T13:05:00 2025-11-15T13:15:00; note clock_unset"},
	{"months of different years put together", "year,month,day,hour,temp C\n2015,11,30,22,4.5\n2015,11,30,23,4.4\n2009,12,1,0,4.4\n2009,12,1,1,4.4\n", "ymd - 2015-11-30T22:00:00 2015-11-30T23:00:00 2009-12-01T00:00:00 2009-12-01T01:00:00; note typical_year"},
	{"a memory that went round", "when,temp C\n2025-11-20 13:00,4.5\n2025-11-20 14:00,4.4\n2025-11-20 15:00,4.4\n2025-11-20 11:00,4.5\n2025-11-20 12:00,4.4\n", "ymd - 2025-11-20T13:00:00 2025-11-20T14:00:00 2025-11-20T15:00:00 2025-11-20T11:00:00 2025-11-20T12:00:00; note out_of_order"},
}

// clockSays is what was understood of a file's clock.
func clockSays(file string) string {
	e, err := Read(context.Background(), strings.NewReader(file), "f.csv", nil)
	var why *Refusal
	if errors.As(err, &why) {
		return "refused " + why.Code
	}
	c := e.Layout.Clock
	said := c.Order
	if !c.OrderCertain {
		said += "?"
	}
	said += " " + c.Zone
	if c.Zone == "" {
		said += "-"
	}
	s := e.Series[len(e.Series)-1]
	for _, ms := range s.FaceMS {
		said += " " + time.UnixMilli(ms).UTC().Format("2006-01-02T15:04:05.999")
	}
	for _, q := range e.Questions {
		said += "; ask " + q.ID
	}
	for _, r := range e.Remarks {
		if r.Code != RemarkNameless {
			said += "; note " + r.Code
		}
	}
	if e.BadTime > 0 {
		said += fmt.Sprintf("; %d lost", e.BadTime)
	}
	return said
}

func TestClockForms(t *testing.T) {
	for _, c := range clockForms {
		if got := clockSays(c.in); got != c.want {
			t.Errorf("%s:\n got  %s\n want %s", c.name, got, c.want)
		}
	}
}

// months are each language's names, short and long, from January on, parted by blanks; a long one stands behind a
// stroke. Source: the locale data of the GNU C library, version 2.36.
var months = map[string]string{
	"English":    "Jan|January Feb|February Mar|March Apr|April May Jun|June Jul|July Aug|August Sep|September Oct|October Nov|November Dec|December",
	"German":     "Jan|Januar Feb|Februar Mär|März Apr|April Mai Jun|Juni Jul|Juli Aug|August Sep|September Okt|Oktober Nov|November Dez|Dezember",
	"French":     "janv.|janvier févr.|février mars avril mai juin juil.|juillet août sept.|septembre oct.|octobre nov.|novembre déc.|décembre",
	"Spanish":    "ene|enero feb|febrero mar|marzo abr|abril may|mayo jun|junio jul|julio ago|agosto sep|septiembre oct|octubre nov|noviembre dic|diciembre",
	"Italian":    "gen|gennaio feb|febbraio mar|marzo apr|aprile mag|maggio giu|giugno lug|luglio ago|agosto set|settembre ott|ottobre nov|novembre dic|dicembre",
	"Portuguese": "jan|janeiro fev|fevereiro mar|março abr|abril mai|maio jun|junho jul|julho ago|agosto set|setembro out|outubro nov|novembro dez|dezembro",
	"Dutch":      "jan|januari feb|februari mrt|maart apr|april mei jun|juni jul|juli aug|augustus sep|september okt|oktober nov|november dec|december",
	"Swedish":    "jan|januari feb|februari mar|mars apr|april maj jun|juni jul|juli aug|augusti sep|september okt|oktober nov|november dec|december",
	"Danish":     "jan|januar feb|februar mar|marts apr|april maj jun|juni jul|juli aug|august sep|september okt|oktober nov|november dec|december",
	"Norwegian":  "jan.|januar feb.|februar mars april mai juni juli aug.|august sep.|september okt.|oktober nov.|november des.|desember",
	"Finnish":    "tammi|tammikuu helmi|helmikuu maalis|maaliskuu huhti|huhtikuu touko|toukokuu kesä|kesäkuu heinä|heinäkuu elo|elokuu syys|syyskuu loka|lokakuu marras|marraskuu joulu|joulukuu",
	"Estonian":   "jaan|jaanuar veebr|veebruar märts apr|aprill mai juuni juuli aug|august sept|september okt|oktoober nov|november dets|detsember",
	"Latvian":    "jan|janvāris feb|februāris mar|marts apr|aprīlis mai|maijs jūn|jūnijs jūl|jūlijs aug|augusts sep|septembris okt|oktobris nov|novembris dec|decembris",
	"Lithuanian": "saus.|sausio vas.|vasario kov.|kovo bal.|balandžio geg.|gegužės birž.|birželio liep.|liepos rugp.|rugpjūčio rugs.|rugsėjo spal.|spalio lapkr.|lapkričio gruod.|gruodžio",
	"Polish":     "sty|stycznia lut|lutego mar|marca kwi|kwietnia maj|maja cze|czerwca lip|lipca sie|sierpnia wrz|września paź|października lis|listopada gru|grudnia",
	"Czech":      "led|ledna úno|února bře|března dub|dubna kvě|května čen|června čec|července srp|srpna zář|září říj|října lis|listopadu pro|prosince",
	"Slovak":     "jan|január feb|február mar|marec apr|apríl máj jún júl aug|august sep|september okt|október nov|november dec|december",
	"Slovene":    "jan|januar feb|februar mar|marec apr|april maj jun|junij jul|julij avg|avgust sep|september okt|oktober nov|november dec|december",
	"Hungarian":  "jan|január febr|február márc|március ápr|április máj|május jún|június júl|július aug|augusztus szept|szeptember okt|október nov|november dec|december",
	"Romanian":   "ian|ianuarie feb|februarie mar|martie apr|aprilie mai iun|iunie iul|iulie aug|august sep|septembrie oct|octombrie nov|noiembrie dec|decembrie",
	"Turkish":    "Oca|Ocak Şub|Şubat Mar|Mart Nis|Nisan May|Mayıs Haz|Haziran Tem|Temmuz Ağu|Ağustos Eyl|Eylül Eki|Ekim Kas|Kasım Ara|Aralık",
	"Greek":      "Ιαν|Ιανουαρίου Φεβ|Φεβρουαρίου Μάρ|Μαρτίου Απρ|Απριλίου Μάι|Μαΐου Ιούν|Ιουνίου Ιούλ|Ιουλίου Αύγ|Αυγούστου Σεπ|Σεπτεμβρίου Οκτ|Οκτωβρίου Νοέ|Νοεμβρίου Δεκ|Δεκεμβρίου",
	"Icelandic":  "jan|janúar feb|febrúar mar|mars apr|apríl maí jún|júní júl|júlí ágú|ágúst sep|september okt|október nóv|nóvember des|desember",
	"Russian":    "янв|января фев|февраля мар|марта апр|апреля мая|май июн|июня июл|июля авг|августа сен|сентября окт|октября ноя|ноября дек|декабря",
	"Bulgarian":  "яну|януари фев|февруари мар|март апр|април май юни юли авг|август сеп|септември окт|октомври ное|ноември дек|декември",
}

// A date with the name of every month, short and long, as it is and in capitals, in the languages of Europe.
func TestMonthsInEveryLanguage(t *testing.T) {
	c := &clock{read: readStamp, columns: []int{0}}
	for language, all := range months {
		for i, names := range strings.Fields(all) {
			want := time.Date(2025, time.Month(i+1), 15, 13, 5, 0, 0, time.UTC).UnixMilli()
			for _, name := range append(strings.Split(names, "|"), strings.Split(strings.ToUpper(names), "|")...) {
				c.form = formOf(t, "# b Y")
				at, _, ok := c.read(c, [][]byte{[]byte("15 " + name + " 2025 13:05")})
				if !ok || at != want {
					t.Errorf("%s: %s gives %s, %v", language, name, time.UnixMilli(at).UTC(), ok)
				}
			}
		}
	}
}

// Twelve rows of ten digits that are all dates and times are no seconds since 1970; so few that might be either are.
// 2511152200 is 22:00 of 15 November 2025, and as a count of seconds some day of 2049.
func TestCompactDatesOfTwoDigitYears(t *testing.T) {
	at := time.Date(2025, 11, 15, 22, 0, 0, 0, time.UTC)
	for form, header := range map[string]string{"0601021504": "ts,temp C\n", "060102150405": "ts,temp C\n", "060102,150405": "date,time,temp C\n", "020106,15:04": "date,time,temp C\n"} {
		var file strings.Builder
		file.WriteString(header)
		for i := range 100 {
			fmt.Fprintf(&file, "%s,%d.5\n", at.Add(time.Duration(i)*time.Hour).Format(form), i%7)
		}
		got := readText(t, file.String()).Series[0].FaceMS
		if len(got) != 100 || got[0] != at.UnixMilli() || got[99] != at.Add(99*time.Hour).UnixMilli() {
			t.Errorf("%s: %d rows from %s", form, len(got), time.UnixMilli(got[0]).UTC())
		}
	}
	var file strings.Builder
	file.WriteString("ts,temp C\n")
	for i := range 100 {
		fmt.Fprintf(&file, "%d,%d.5\n", 1701120000+600*i, i%7) // 27 November 2023, 21:20
	}
	if e := readText(t, file.String()); e.Layout.Clock.Order != "epoch_s" || e.Series[0].FaceMS[0] != 1701120000_000 {
		t.Errorf("seconds since 1970 are taken for dates: %+v", e.Layout.Clock)
	}
}
