package figure

import (
	"image"
	"testing"

	"thawbook/analysis/series"
)

// What is rare is seen however short it was; a run of a fan fades with its share of a column.
func TestWhatIsRareIsDrawnWideEnough(t *testing.T) {
	l := Layout{View: series.Span{From: 0, To: 1000 * series.HourMS}, Plot: image.Rect(100, 0, 600, 50), scale: 2}
	track := image.Rect(100, 10, 600, 20)
	for _, tc := range []struct {
		span series.Span
		want image.Rectangle
	}{
		{series.Span{From: 500 * series.HourMS, To: 500*series.HourMS + 1}, image.Rect(347, 10, 353, 20)},
		{series.Span{From: 500 * series.HourMS, To: 600 * series.HourMS}, image.Rect(350, 10, 400, 20)},
		{series.Span{From: -100 * series.HourMS, To: 0}, image.Rect(100, 10, 100, 20)},
	} {
		if got := l.wide(tc.span, track); got != tc.want && !(got.Empty() && tc.want.Empty()) {
			t.Errorf("%v: %v, want %v", tc.span, got, tc.want)
		}
	}
}
