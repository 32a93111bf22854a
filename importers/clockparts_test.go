package importers

import (
	"strings"
	"testing"
	"time"
)

// timeLayouts hold one small file per way to print a time: the order and zone that are wanted, and each row's
// time as a person reads it.
var timeLayouts = []struct{ name, in, order, zone, want string }{
	{"year to second in columns", "year,month,day,hour,minute,second,temp C\n2025,11,12,23,50,30,4.5\n2025,11,13,0,0,0,4.25\n", "ymd", "", "2025-11-12T23:50:30 2025-11-13T00:00:00"},
	{"day first, hours to 24", "Day,Month,Year,Hour,temp C\n12,11,2025,23,4.5\n12,11,2025,24,4.0\n13,11,2025,1,4.0\n", "ymd", "", "2025-11-12T23:00:00 2025-11-13T00:00:00 2025-11-13T01:00:00"},
	{"named months in a column, two-digit years", "yy;mon;dd;hh;T °C\n25;Nov.;30;23;4,5\n25;Dez;1;0;4,0\n", "ymd", "", "2025-11-30T23:00:00 2025-12-01T00:00:00"},
	{"a printed time beside year, month and day", "year,month,day,time,T °C\n2025,11,12,23:50,4.5\n2025,11,13,00:00,4.0\n", "ymd", "", "2025-11-12T23:50:00 2025-11-13T00:00:00"},
	{"fractions of an hour", "year month day hour temp\n2025 11 12 22.5 4.5\n2025 11 12 22.75 4.4\n2025 11 12 23.3333 4.4\n", "ymd", "", "2025-11-12T22:30:00 2025-11-12T22:45:00 2025-11-12T23:20:00"},
	{"half days beside hours in columns", "year,month,day,hour,ampm,T °C\n2025,11,12,11,PM,4.5\n2025,11,13,12,am,4.0\n", "ymd", "", "2025-11-12T23:00:00 2025-11-13T00:00:00"},
	// 12 November is the 316th day of a year of 365 (304 days to the end of October, and 12).
	{"day of the year and hours with minutes", "year,doy,hhmm,temp C\n2025,316,2350,4.5\n2025,317,0,4.25\n2025,317,10,4.0\n", "doy", "", "2025-11-12T23:50:00 2025-11-13T00:00:00 2025-11-13T00:10:00"},
	{"day of the year and hour, blanks", "YEAR DOY HR T RH\n2024 60 22 4.5 70\n2024 60 23 4.25 71\n2024 61 0 4.25 71\n", "doy", "", "2024-02-29T22:00:00 2024-02-29T23:00:00 2024-03-01T00:00:00"},
	{"day of the year under the name of a day", "Year;Day;Time;T °C\n2025;365;23:30;4,5\n2026;1;00:00;4,0\n", "doy", "", "2025-12-31T23:30:00 2026-01-01T00:00:00"},
	{"day of the year with its fraction", "year,day of year,T °C\n2025,316.25,4.5\n2025,316.5000,4.0\n2025,316.5069,4.0\n", "doy", "", "2025-11-12T06:00:00 2025-11-12T12:00:00 2025-11-12T12:10:00"},
	{"hours beside a date, 24 the last", "Datum;Stunde;Temp °C\n12.11.2025;23;4,5\n12.11.2025;24;4,25\n13.11.2025;1;4,0\n", "dmy", "", "2025-11-12T23:00:00 2025-11-13T00:00:00 2025-11-13T01:00:00"},
	{"the hour a mean ends", "Date,Hour Ending,T (°C)\n2025-11-12,1,4.5\n2025-11-12,2,4.25\n2025-11-12,24,4.0\n", "ymd", "", "2025-11-12T01:00:00 2025-11-12T02:00:00 2025-11-13T00:00:00"},
	{"hours and minutes in one number beside a date", "Date,HrMn,T (°C)\n20251112,0100,4.5\n20251112,0230,4.25\n20251112,2400,4.0\n", "ymd", "", "2025-11-12T01:00:00 2025-11-12T02:30:00 2025-11-13T00:00:00"},
	{"the same without noughts in front", "date,time,T °C\n2025-11-12,2300,4.5\n2025-11-12,2400,4.25\n2025-11-13,30,4.0\n2025-11-13,100,4.0\n", "ymd", "", "2025-11-12T23:00:00 2025-11-13T00:00:00 2025-11-13T00:30:00 2025-11-13T01:00:00"},
	{"hour and minute beside a date", "Date;Hour;Min;T °C\n13.11.2025;22;50;4,5\n13.11.2025;23;0;4,0\n", "dmy", "", "2025-11-13T22:50:00 2025-11-13T23:00:00"},
	{"dotted times under a name", "Pvm;Klo;Lämpötila °C\n13.11.2025;18.00;4,5\n13.11.2025;18.10;4,25\n", "dmy", "", "2025-11-13T18:00:00 2025-11-13T18:10:00"},
	{"dotted times without a name", "13.11.2025;18.00;4,5\n13.11.2025;18.10;4,25\n", "dmy", "", "2025-11-13T18:00:00 2025-11-13T18:10:00"},
	{"dotted seconds", "Datum;Uhrzeit;Temp °C\n13.11.2025;18.00.00;4,5\n13.11.2025;18.00.30;4,25\n", "dmy", "", "2025-11-13T18:00:00 2025-11-13T18:00:30"},
	{"date, colon, time", "time(UTC),T2m\n20251112:0010,4.5\n20251112:0110,4.25\n", "ymd", "+00:00", "2025-11-12T00:10:00 2025-11-12T01:10:00"},
	{"twelve digits", "stamp,temp C\n202511122350,4.5\n202511130000,4.25\n", "ymd", "", "2025-11-12T23:50:00 2025-11-13T00:00:00"},
	{"fourteen digits", "stamp;temp C\n20251112235030;4,5\n20251113000000;4,25\n", "ymd", "", "2025-11-12T23:50:30 2025-11-13T00:00:00"},
	{"ten digits", "date;temp C\n2025111223;4,5\n2025111300;4,25\n2025111224;4,25\n", "ymd", "", "2025-11-12T23:00:00 2025-11-13T00:00:00 2025-11-13T00:00:00"},
	{"an hour behind the date", "date;temp C\n13.11.2025 8;4,5\n13.11.2025 12 Uhr;4,25\n", "dmy", "", "2025-11-13T08:00:00 2025-11-13T12:00:00"},
	{"basic form with Z", "time,temp C\n20251112T235000Z,4.5\n20251113T000000Z,4.25\n", "ymd", "+00:00", "2025-11-12T23:50:00 2025-11-13T00:00:00"},
	{"hours and minutes parted by h", "date;temp C\n13/11/2025 8h05;4,5\n13/11/2025 12h30;4,25\n", "dmy", "", "2025-11-13T08:05:00 2025-11-13T12:30:00"},
	{"times with a word behind", "Zeit;temp C\n13.11.2025 8:05 Uhr;4,5\n13.11.2025 12:30 Uhr;4,25\n", "dmy", "", "2025-11-13T08:05:00 2025-11-13T12:30:00"},
	{"month name with dashes", "date,temp C\n12-Nov-2025 23:50,4.5\n13-Nov-2025 00:00,4.25\n", "dmy", "", "2025-11-12T23:50:00 2025-11-13T00:00:00"},
	{"shortened months, French", "date;temp °C\n12 janv. 2026 23:50;4,5\n13 févr. 2026 00:00;4,25\n", "dmy", "", "2026-01-12T23:50:00 2026-02-13T00:00:00"},
	{"shortened months, Spanish", "fecha;temp °C\n12-nov.-2025 23:50;4,5\n1-dic.-2025 00:00;4,25\n", "dmy", "", "2025-11-12T23:50:00 2025-12-01T00:00:00"},
	{"months in words, Spanish", "fecha;temp °C\nmiércoles, 12 de noviembre de 2025 23:50;4,5\nlunes, 1 de diciembre de 2025 00:00;4,25\n", "dmy", "", "2025-11-12T23:50:00 2025-12-01T00:00:00"},
	{"month first with commas", "date,temp C\n\"Nov 12, 2025, 11:50 PM\",4.5\n\"Nov. 13, 2025, 12:00 AM\",4.25\n", "mdy", "", "2025-11-12T23:50:00 2025-11-13T00:00:00"},
	{"a weekday before an ISO date", "time,temp C\nWed 2025-11-12 23:50,4.5\nThu 2025-11-13 00:00,4.25\n", "ymd", "", "2025-11-12T23:50:00 2025-11-13T00:00:00"},
	{"a.m. and p.m.", "date,temp C\n11/12/2025 11:50:00 p.m.,4.5\n11/13/2025 12:00:00 a.m.,4.25\n", "mdy", "", "2025-11-12T23:50:00 2025-11-13T00:00:00"},
	{"am and pm glued on", "date,time,temp C\n12/31/25,11:59pm,4.0\n01/01/26,12:09am,4.5\n", "mdy", "", "2025-12-31T23:59:00 2026-01-01T00:09:00"},
	{"epoch seconds with fractions", "ts,temp_c\n1762991400.125,4.5\n1762992000.25,4.25\n", "epoch_s", "+00:00", "2025-11-12T23:50:00.125 2025-11-13T00:00:00.25"},
	{"epoch microseconds", "ts,temp_c\n1762991400125000,4.5\n1762992000250000,4.25\n", "epoch_ms", "+00:00", "2025-11-12T23:50:00.125 2025-11-13T00:00:00.25"},
	// Day 45931 of the 1900 system is 2025-10-01; 1/1440 of a day, 0.000694, is a minute.
	{"serial days of few decimals", "date,T °C\n45931.0069,4.5\n45931.01389,4.25\n45931.0208333333,4.25\n", "serial", "", "2025-10-01T00:10:00 2025-10-01T00:20:00 2025-10-01T00:30:00"},
	{"AM and PM before the time", "time,temp C\n2025-11-12 AM 11:50,4.5\n2025-11-12 PM 12:00,4.4\n", "ymd", "", "2025-11-12T11:50:00 2025-11-12T12:00:00"},
	{"narrow blanks before AM and PM", "time,temp C\n\"11/12/2025, 11:50:00\u202fPM\",4.5\n\"11/13/2025, 12:00:00\u202fAM\",4.25\n", "mdy", "", "2025-11-12T23:50:00 2025-11-13T00:00:00"},
	{"Spanish half days", "fecha;temp C\n13/11/2025 11:50:00 p.\u00a0m.;4,5\n14/11/2025 12:00:00 a. m.;4,25\n", "dmy", "", "2025-11-13T23:50:00 2025-11-14T00:00:00"},
	{"times parted by dashes", "time;temp C\n2025-11-12_23-50-30;4.5\n2025-11-13_00-00-00;4.4\n", "ymd", "", "2025-11-12T23:50:30 2025-11-13T00:00:00"},
	{"milliseconds behind a colon", "time,temp C\n2025-11-12 23:50:00:250,4.5\n2025-11-13 00:00:00:000,4.4\n", "ymd", "", "2025-11-12T23:50:00.25 2025-11-13T00:00:00"},
	{"a true minus before the offset", "time,temp C\n2025-11-12T23:50:00\u221205:00,4.5\n2025-11-13T00:00:00\u221205:00,4.4\n", "ymd", "-05:00", "2025-11-13T04:50:00 2025-11-13T05:00:00"},
	{"an offset and its name", "time,temp C\nWed Nov 12 2025 23:50:00 GMT+0200 (EET),4.5\nThu Nov 13 2025 00:00:00 GMT+0200 (EET),4.4\n", "mdy", "+02:00", "2025-11-12T21:50:00 2025-11-12T22:00:00"},
	{"hour and minute as hh and mm", "YY  MM DD hh mm WDIR ATMP\n2025 11 12 23 50 170 4.5\n2025 11 13 00 00 180 4.4\n", "ymd", "", "2025-11-12T23:50:00 2025-11-13T00:00:00"},
	{"parts without names", "2025 11 12 23 50 4.5 70\n2025 11 13 00 00 4.5 70\n2025 11 13 00 10 4.4 71\n2025 11 13 01 00 4.4 71\n", "ymd", "", "2025-11-12T23:50:00 2025-11-13T00:00:00 2025-11-13T00:10:00 2025-11-13T01:00:00"},
	{"parts to the hour without names", "2025,11,12,22,4,70\n2025,11,12,23,5,70\n2025,11,13,0,4,71\n2025,11,13,1,4,71\n", "ymd", "", "2025-11-12T22:00:00 2025-11-12T23:00:00 2025-11-13T00:00:00 2025-11-13T01:00:00"},
	{"days without names, and whole degrees", "2025,11,12,4,70\n2025,11,13,5,70\n2025,11,14,5,71\n", "ymd", "", "2025-11-12T00:00:00 2025-11-13T00:00:00 2025-11-14T00:00:00"},
	{"hours without a name beside a date", "2025-11-12,22,4.5\n2025-11-12,23,4.5\n2025-11-13,0,4.4\n2025-11-13,1,4.4\n", "ymd", "", "2025-11-12T22:00:00 2025-11-12T23:00:00 2025-11-13T00:00:00 2025-11-13T01:00:00"},
	{"hours and minutes without a name", "7 20251112 2200 4.5\n7 20251112 2300 4.5\n7 20251113 0000 4.4\n", "ymd", "", "2025-11-12T22:00:00 2025-11-12T23:00:00 2025-11-13T00:00:00"},
	{"two clocks of numbers, side by side", "id UTC_DATE UTC_TIME LST_DATE LST_TIME temp\n7 20251112 2300 20251112 1600 4.5\n7 20251113 0000 20251112 1700 4.4\n", "ymd", "+00:00", "2025-11-12T23:00:00 2025-11-13T00:00:00"},
	{"parts and a zone in Finnish", "Vuosi,Kk,Pv,Klo,Aikavyöhyke,Lämpötila (degC)\n2025,11,12,23:00,UTC,4.5\n2025,11,13,00:00,UTC,4.4\n", "ymd", "+00:00", "2025-11-12T23:00:00 2025-11-13T00:00:00"},
	{"parts and a time with its zone in Estonian", "Aasta;Kuu;Päev;Kell (UTC);Temp °C\n2025;11;12;23:00;4,5\n2025;11;13;00:00;4,4\n", "ymd", "+00:00", "2025-11-12T23:00:00 2025-11-13T00:00:00"},
	{"a printed time under a name nobody knows", "year,month,day,x1,T °C\n2025,11,12,23:50,4.5\n2025,11,13,00:00,4.0\n", "ymd", "", "2025-11-12T23:50:00 2025-11-13T00:00:00"},
	{"zone above the table, keys above values", "Site,Number,Time Zone,Height\nFar field,12,-7,120\nYear,Month,Day,Hour,Temp °C\n2025,11,12,23,4.5\n2025,11,13,0,4.4\n", "ymd", "-07:00", "2025-11-12T23:00:00 2025-11-13T00:00:00"},
	{"a zone of a house is no zone of time", "Zone: 3\nTime,Temp °C\n2025-11-12 23:00,4.5\n2025-11-13 00:00,4.4\n", "ymd", "", "2025-11-12T23:00:00 2025-11-13T00:00:00"},
	{"year, day of the year and time in one number", "stamp,temp °C\n20253162350,4.5\n20253170000,4.4\n", "doy", "", "2025-11-12T23:50:00 2025-11-13T00:00:00"},
	{"an hour shown twice", "time,temp C\n2025-10-26 02:30,4.5\n2025-10-26 02:00,4.25\n2025-10-26 02:30,4.25\n", "ymd", "", "2025-10-26T02:30:00 2025-10-26T02:00:00 2025-10-26T02:30:00"},
	{"a clock set back by weeks", "time,temp C\n2025-11-12 10:00,4.5\n2025-10-01 10:00,4.25\n2025-10-01 10:10,4.25\n", "ymd", "", "2025-11-12T10:00:00 2025-10-01T10:00:00 2025-10-01T10:10:00"},
	{"a zone of the database in the header", "Time (America/New_York),temp C\n2025-10-26 02:30,4.5\n2025-10-26 02:40,4.5\n", "ymd", "America/New_York", "2025-10-26T02:30:00 2025-10-26T02:40:00"},
	{"an abbreviation in the header", "Time (CET),temp C\n2025-10-26 02:30,4.5\n2025-10-26 02:40,4.5\n", "ymd", "+01:00", "2025-10-26T02:30:00 2025-10-26T02:40:00"},
	{"local standard time is no zone", "Local Standard Time (LST),temp C\n2025-10-26 02:30,4.5\n2025-10-26 02:40,4.5\n", "ymd", "", "2025-10-26T02:30:00 2025-10-26T02:40:00"},
	// A column of hours on a daily sheet counts hours; it says no time of day.
	{"hours of a day's work", "date,hr,T °C\n2025-11-12 10:00,7,4.5\n2025-11-13 10:00,9,4.25\n", "ymd", "", "2025-11-12T10:00:00 2025-11-13T10:00:00"},
	{"hours run on a daily sheet", "date,time on,T °C\n2025-11-12,7,4.5\n2025-11-13,9,4.25\n2025-11-14,9,4.25\n", "ymd", "", "2025-11-12T00:00:00 2025-11-13T00:00:00 2025-11-14T00:00:00"},
}

func TestTimeLayouts(t *testing.T) {
	for _, c := range timeLayouts {
		t.Run(c.name, func(t *testing.T) {
			e := readText(t, c.in)
			s := e.Series[len(e.Series)-1]
			var got []string
			for _, ms := range s.FaceMS {
				got = append(got, time.UnixMilli(ms).UTC().Format("2006-01-02T15:04:05.999"))
			}
			if l := e.Layout.Clock; strings.Join(got, " ") != c.want || l.Order != c.order || l.Zone != c.zone || e.BadTime > 0 {
				t.Errorf("%v, order %s, zone %q, %d bad; want %s, %s, %q", got, l.Order, l.Zone, e.BadTime, c.want, c.order, c.zone)
			}
		})
	}
}

// A second clock in numbers is no variable.
func TestSecondClocksAreNoSeries(t *testing.T) {
	for _, file := range []string{
		"UTC_DATE UTC_TIME LST_DATE LST_TIME temp\n20251112 2300 20251112 1600 4.5\n20251113 0000 20251112 1700 4.4\n",
		"TIMESTAMP_START,TIMESTAMP_END,temp\n202511122300,202511122330,4.5\n202511122330,202511130000,4.5\n",
	} {
		if s := readText(t, file).Series; len(s) != 1 || s[0].Column != "temp" {
			t.Errorf("%q: %+v", file, s)
		}
	}
}
