package analysis

import "testing"

// A sum is worked out as soon as its parts do not rest on the same; of two records it is one. 2 ± 0.5 and 3 ± 1 are 5 ± 1.5,
// as one offset moves both.
func TestASumRestsOnItsParts(t *testing.T) {
	figure := func(mid, half float64, e Evidence) Figure {
		return Figure{Mid: mid, Low: mid - half, High: mid + half, OK: true, Evidence: e}
	}
	same := figure(2, 0.5, Recorded).plus(figure(3, 1, Recorded))
	if same.Evidence != Recorded {
		t.Errorf("two records are %s", same.Evidence)
	}
	near(t, "sum", same.Mid, 5, 0)
	near(t, "low", same.Low, 3.5, 0)
	near(t, "high", same.High, 6.5, 0)
	if e := figure(2, 0.5, Recorded).plus(figure(3, 1, YourSetting)).Evidence; e != WorkedOut {
		t.Errorf("a record and a setting are %s", e)
	}
	if f := sumOf(unknown("no_watts"), figure(3, 1, Recorded)); f.Mid != 3 || f.Evidence != Recorded {
		t.Errorf("%+v, want what is known", f)
	}
}
