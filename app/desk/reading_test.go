package desk

import (
	"strings"
	"testing"
	"time"
)

// Of loggers too many to be drawn each by itself the pointer reads how far they lie apart, not a thousand figures; those
// of which nothing is known at the instant are not counted.
func TestThePointerReadsACrowdAsOne(t *testing.T) {
	line := Timeline{Units: Units{Zone: time.UTC}, Lanes: []Lane{{Title: "Temperature"}, {Title: "Humidity"}}}
	all := []Said{{Lane: "Temperature", Name: "room", Value: 4.2, Unit: "°C", Known: true}}
	for i := range 1000 {
		all = append(all, Said{Lane: "Temperature", Name: "logger", Value: float64(i) / 100, Unit: "°C", Known: i != 0 && i != 999, Crowd: true})
	}
	all = append(all, Said{Lane: "Humidity", Name: "room", Value: 62, Unit: "%", Known: true})
	_, read, _ := strings.Cut(plain(line.Read(0, all)), "   ")
	if read != "room 4.2 °C   humidity 62.0 %   998 loggers from 0.0 to 10.0 °C" {
		t.Errorf("%q", read)
	}
}
