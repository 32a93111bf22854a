package analysis

import (
	"math"
	"testing"

	"thawbook/analysis/series"
)

// A logger that lags ten minutes behind air that climbs 3 K in an hour reads, y' = (T − y)/τ solved,
// 3·(1 − τ·(1 − e^(−1/τ))) = 2.5012 K in that hour, τ a sixth of an hour; put right it is the air's 3 K again.
func TestALaggingLoggerPutRight(t *testing.T) {
	const tau = 1.0 / 6
	room := through(0, 6, 1.0/60, func(h float64) float64 {
		if h < 2 {
			return 4
		}
		return 4 + 3*(h-2-tau*(1-math.Exp(-(h-2)/tau)))
	})
	from, _ := room.At(2 * hourMS)
	to, _ := room.At(3 * hourMS)
	near(t, "as read", to-from, 2.5012, 1e-4)
	near(t, "put right", hourWithoutLag(room, span(2, 6), tau*hourMS, to-from), 3, 0.01)
	near(t, "without a lag", hourWithoutLag(room, span(2, 6), 0, to-from), to-from, 1e-12)
}

// The lag that the switching of the fans told is that of the logger by which they are judged: it is the room's only where
// the room has that one and no other.
func TestTheRoomsLagIsTheControlLoggersOwn(t *testing.T) {
	for _, row := range []struct {
		room []string
		want float64
	}{{[]string{"mid"}, 120_000}, {[]string{"end"}, 0}, {[]string{"mid", "end"}, 0}, {nil, 0}} {
		j := judgement{control: Logger{Name: "mid"}, sight: sight{lagMS: 120_000}}
		for _, name := range row.room {
			j.room.loggers = append(j.room.loggers, Logger{Name: name})
		}
		if got := j.roomLagMS(); got != row.want {
			t.Errorf("room of %v: %v ms, want %v", row.room, got, row.want)
		}
	}
}

// The climb of an hour is read off the logger that reads every ten minutes, not off one that reads every hour and meanwhile
// draws a straight line: 3 K, though the mean of both shows less.
func TestAnHoursClimbIsReadOffQuickLoggers(t *testing.T) {
	climb := func(h float64) float64 { return 4 + 3*min(1, max(0, h-10.5)) }
	quick, slow := Logger{Name: "quick", TempC: through(0, 20, 1.0/6, climb)}, Logger{Name: "slow", TempC: through(0, 20, 1, func(h float64) float64 { return climb(h - 0.4) })}
	j := judgement{room: spot{loggers: []Logger{quick, slow}}}
	j.room.mean.TempC = meanOf([]series.Curve{quick.TempC, slow.TempC})
	f, _ := firstHour(j, span(10.5, 14))
	near(t, "first hour", f.Mid, 3, 1e-9)
	if k, _ := steepestHour(j.room.mean.TempC, span(10.5, 14), climbLagMS); k > 2.9 {
		t.Errorf("the mean shows %v K: the test shows nothing", k)
	}
}
