package importers

import (
	"context"
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
	{"day, month, year and hour in ten digits", "date;temp;rh\n1301202622;4,5;80\n1301202623;4,0;81\n1401202600;3,5;82\n", "f air_temperature 3 0 0 22:00..00:00 3.5..4.5|f relative_humidity 3 0 0 22:00..00:00 0.8..0.82"},
	{"a short word for temperature", "Дата;Темп.;Влажн.\n2026-01-13 10:00;4,5;80\n2026-01-13 10:10;4,0;81\n", "f air_temperature 2 0 0 10:00..10:10 4..4.5|f relative_humidity 2 0 0 10:00..10:10 0.8..0.81"},
}

func TestHouseForms(t *testing.T) {
	for _, f := range houseForms {
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
