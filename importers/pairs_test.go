package importers

import (
	"context"
	"fmt"
	"strings"
	"testing"
)

// pairings hold the headers of rows with several temperatures and humidities, and which logger each column is
// to be of, in column order; f is the file's name. In the columns' place stand their values.
var pairings = []struct{ name, header, want string }{
	{"numbers behind", "Temp_1,RH_1,Temp_2,RH_2", "1 1 2 2"},
	{"kinds in blocks, numbers with and without zeros", "T1 (°C),T02 (°C),RH 01 (%),RH 2 (%)", "1 02 1 02"},
	{"humidity first", "RH north,Temp north,RH south,Temp south", "north north south south"},
	{"padded names", "  Temp   north ,  RH   north,Temp  SOUTH,RH south ", "north north SOUTH SOUTH"},
	{"unrelated columns between", "north temp,battery,north hum,south temp,pressure hPa,south hum", "north f north south f south"},
	{"outdoors and indoors", "Outdoor Temperature(°C),Outdoor Humidity(%),Indoor Temperature(°C),Indoor Humidity(%)", "Outdoor Outdoor Indoor Indoor"},
	{"a plain pair and a named one", "Temp (°C),RH (%),Outdoor Temp (°C),Outdoor RH (%)", "f f Outdoor Outdoor"},
	{"one name for all, by turns", "Temp °C,RH %,Temp °C,RH %", "f 1|f 1|f 2|f 2"},
	{"one name for all, dew points behind each pair", "RH %,Temp °C,Dew point °C,RH %,Temp °C,Dew point °C", "f 1|f 1|f 1|f 2|f 2|f 2"},
	{"units alone tell the kinds", "Room east (°C),Room east (%),Room west (°C),Room west (%)", "Room east|Room east|Room west|Room west"},
	{"names cut short", "T_in,T_outdoor,RH_indoor,RH_out", "indoor outdoor indoor outdoor"},
	{"names with nothing in common, by turns", "Temp A,RH X,Temp B,RH Y", "A A B B"},
	{"an H for humidity", "inside_t,inside_h,outside_t,outside_h", "inside inside outside outside"},
	{"names as they are typed", "Temperature(CH1)[°C],Humidity(CH1)[%],Z01 T,Z01 RH", "CH1 CH1 Z01 Z01"},
	{"relative humidity in full", "Temperatur Stall,rel. Feuchte Stall,Taupunkt Stall,Temperatur Keller,rel. Feuchte Keller", "Stall Stall Stall Keller Keller"},
	{"units in front", "°C Halle,%rF Halle,°C Hof,%rF Hof", "Halle Halle Hof Hof"},
	{"a second probe", "temp,rh,probe temp", "f f f"},
	{"a charge in percent is no humidity", "shed temp (°C),shed battery (%),shed rh (%)", "shed f shed"},
	{"neither names nor neighbours tell", "Temp A,Temp B,RH X,RH Y", "? f f f f"},
	{"one name for all, in blocks", "Temp °C,Temp °C,RH %,RH %", "? f f f f"},
}

func TestPairing(t *testing.T) {
	for _, c := range pairings {
		t.Run(c.name, func(t *testing.T) {
			got := loggersByColumn(t, c.header, nil)
			want := strings.Fields(c.want)
			if strings.Contains(c.want, "|") {
				want = strings.Split(c.want, "|")
			}
			if fmt.Sprint(got) != fmt.Sprint(want) {
				t.Errorf("got %q, want %q", got, want)
			}
		})
	}
}

// The keeper's answer settles a pairing in doubt either way.
func TestPairingAnswered(t *testing.T) {
	for _, c := range []struct{ header, answer, want string }{
		{"Temp A,Temp B,RH X,RH Y", "in_order", "A|B|A|B"},
		{"Temp °C,Temp °C,RH %,RH %", "in_order", "f 1|f 2|f 1|f 2"},
		{"Temp A,Temp B,RH X,RH Y", "apart", "f Temp A|f Temp B|f RH X|f RH Y"},
		{"Temp A,Temp B,RH X,RH Y", "2+5, 3+4", "A|B|B|A"},
		{"Temp A,Temp B,RH X,RH Y", "2+5:north, 3+4:south wall", "north|south wall|south wall|north"},
		{"Temp north,RH north,Temp south,RH south", "2+5,4+3", "north|south|south|north"},
		{"Temp °C,Temp °C,RH %,RH %", "2+5,3+4", "f 1|f 2|f 2|f 1"},
		{"Temp north,RH north,Dew point north", "2:cellar, 3:attic", "cellar|attic|north"},
		{"Temp A,RH A,Temp B,RH B", "4+5: B too", "A|A|B too|B too"},
	} {
		got := loggersByColumn(t, c.header, Answers{"pairing": c.answer})
		if strings.Join(got, "|") != c.want {
			t.Errorf("%s, %s: got %q, want %q", c.header, c.answer, got, c.want)
		}
	}
}

// A column that is left out measures nothing of use, and its values stay as the file has them: the fifth is
// 5.5 in the first row. What is said of the others holds.
func TestAColumnIsLeftOut(t *testing.T) {
	text := "time,Temp A,RH A,Temp B,RH B\n2026-01-13 10:00,41.5,65.5,43.5,66.5\n2026-01-13 11:00,41,65,43,66\n"
	e, err := Read(context.Background(), strings.NewReader(text), "f.csv", Answers{"pairing": "-5, 2+3:north", "temperature_unit": "degF"})
	if err != nil {
		t.Fatal(err)
	}
	got := map[int]string{}
	for _, s := range e.Series {
		got[s.ColumnIndex] = fmt.Sprintf("%s %s %.4g", s.Logger, s.Quantity, s.Val[0])
	}
	// (41.5 − 32)·5/9 = 5.278 and (43.5 − 32)·5/9 = 6.389.
	want := map[int]string{2: "north air_temperature 5.278", 3: "north relative_humidity 0.655", 4: "f air_temperature 6.389", 5: "f other 66.5"}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

func TestGroupsOfColumnsAsTheyAreWritten(t *testing.T) {
	for _, text := range []string{"2+5:north, 3+6, -7", "2:a b", "-2+3"} {
		groups, ok := ParseGroups(text)
		if got := WriteGroups(groups); !ok || got != text {
			t.Errorf("%q came back as %q", text, got)
		}
	}
	for _, text := range []string{"", "in_order", "2+2", "2,3+2", "0+1", "2+", "north:2", "2;3"} {
		if groups, ok := ParseGroups(text); ok {
			t.Errorf("%q was taken for %v", text, groups)
		}
	}
	if got := WriteGroups([]ColumnGroup{{Columns: []int{2, 5}, Name: " a,  b "}}); got != "2+5:a b" {
		t.Error(got)
	}
}

// A column that is not there is said so, and so is an answer that is none.
func TestAPairingThatDoesNotFit(t *testing.T) {
	text := "time,Temp A,RH A\n2026-01-13 10:00,4.5,65.5\n2026-01-13 11:00,5,65\n"
	for _, answer := range []string{"2+9", "by guess"} {
		e, err := Read(context.Background(), strings.NewReader(text), "f.csv", Answers{"pairing": answer})
		if err != nil || len(e.Remarks) != 1 || e.Remarks[0].Code != RemarkNoAnswer {
			t.Errorf("%s: %+v, %v", answer, e.Remarks, err)
		}
	}
}

// loggersByColumn reads two rows under a header and says which logger each column is of; a question mark comes
// first when the pairing was asked for.
func loggersByColumn(t *testing.T, header string, answers Answers) []string {
	t.Helper()
	n := strings.Count(header, ",") + 1
	cells := ""
	for i := range n {
		cells += fmt.Sprintf(",%d.5", 5+60*(i%2))
	}
	text := "time," + header + "\n2026-01-13 10:00" + cells + "\n2026-01-13 11:00" + cells + "\n"
	e, err := Read(context.Background(), strings.NewReader(text), "f.csv", answers)
	if err != nil {
		t.Fatal(err)
	}
	out := make([]string, n)
	for _, s := range e.Series {
		out[s.ColumnIndex-2] = s.Logger
	}
	for _, q := range e.Questions {
		if q.ID == "pairing" {
			out = append([]string{"?"}, out...)
		}
	}
	return out
}
