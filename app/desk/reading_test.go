package desk

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

// What is judged is read first and the loggers it is made of last: a few one by one, of many the lowest and the highest; those
// of which nothing is known at the instant are not counted.
func TestThePointerReadsTheLoggersLast(t *testing.T) {
	line := Timeline{Units: Units{Zone: time.UTC}, Lanes: []Lane{{Title: "Temperature"}, {Title: "Humidity"}}}
	var all []Said
	for i := range 1000 {
		all = append(all, Said{Lane: "Temperature", Name: fmt.Sprint("L", i), Value: float64(i) / 100, Unit: "°C", Known: i != 0 && i != 999, Thin: true})
	}
	all = append(all, Said{Lane: "Temperature", Name: "room", Value: 4.2, Unit: "°C", Known: true},
		Said{Lane: "Humidity", Name: "north", Value: 64, Unit: "%", Known: true, Thin: true}, Said{Lane: "Humidity", Name: "south", Value: 60, Unit: "%", Known: true, Thin: true},
		Said{Lane: "Humidity", Name: "room", Value: 62, Unit: "%", Known: true}, Said{Lane: "Stages", Name: "first", Bar: true, Known: true, On: true, Ran: true})
	_, read, _ := strings.Cut(plain(line.Read(0, all)), "   ")
	if want := "room 4.2 °C   humidity 62.0 %   ran: first   998 loggers from 0.0 (L1) to 10.0 °C (L998)   north 64.0, south 60.0 %"; read != want {
		t.Errorf("%q, want %q", read, want)
	}
	if each := plain(line.ReadEach(0, all)); strings.Count(each, "L") != 998 || !strings.HasSuffix(each, "L997 10.0, L998 10.0 °C   north 64.0, south 60.0 %") {
		t.Errorf("each by itself: …%s", each[max(0, len(each)-80):])
	}
}

// Of two barns each quantity is read once, with both barns' values in their order and a word where one has none.
func TestThePointerReadsTwoBarnsByQuantity(t *testing.T) {
	line := Timeline{Units: Units{Zone: time.UTC}, Beside: true, Lanes: []Lane{{Title: "Temperature"}, {Title: "Relative humidity"}}}
	_, read, _ := strings.Cut(plain(line.Read(0, []Said{
		{Lane: "Temperature", Name: "Rowan", Value: 4.2, Unit: "°C", Known: true}, {Lane: "Temperature", Name: "Alder", Value: 3.9, Unit: "°C", Known: true, Thin: true},
		{Lane: "Relative humidity", Name: "Rowan", Unit: "%"}, {Lane: "Relative humidity", Name: "Alder", Value: 60, Unit: "%", Known: true, Thin: true},
	})), "   ")
	if want := "temperature Rowan 4.2, Alder 3.9 °C   relative humidity Rowan unknown, Alder 60.0 %"; read != want {
		t.Errorf("%q, want %q", read, want)
	}
}
