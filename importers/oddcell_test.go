package importers

import "testing"

// Behind the other mark a fraction is one where it can be nothing else: three digits may be thousands, but no air is that
// warm. A person reads 4.4, 4.125 and 0.5, and leaves 1.100 of a flow a thousand.
func TestFractionsBehindTheOtherMark(t *testing.T) {
	e := readText(t, "time;temp °C;flow\n2026-01-13 10:00;4,5;0,25\n2026-01-13 10:10;4.4;0.5\n2026-01-13 10:20;4.125;1.100\n2026-01-13 10:30;4,25;0,75\n")
	if got, want := said(e), "f air_temperature 4 0 0 10:00..10:30 4.125..4.5|f other 4 0 0 10:00..10:30 0.25..1100"; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if len(e.Remarks) != 2 || e.Remarks[0].Code != RemarkMixedMarks || e.Remarks[0].Count != 2 || e.Remarks[0].Line != 3 || e.Remarks[1].Count != 1 {
		t.Errorf("%+v", e.Remarks)
	}
}
