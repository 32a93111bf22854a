package desk_test

import (
	"strings"
	"testing"

	"thawbook/analysis/series"
	"thawbook/app/desk"
	"thawbook/importers"
)

// Every code of the importers has a sentence of its own, without a gap left in it.
func TestFileSentences(t *testing.T) {
	notes := []string{importers.RemarkBadTime, importers.RemarkUnreadable, importers.RemarkShortLine, importers.RemarkLongLine, importers.RemarkCutLine, importers.RemarkLimit, importers.RemarkSentinel,
		importers.RemarkFoot, importers.RemarkOutOfOrder, importers.RemarkClockAnew, importers.RemarkClockUnset, importers.RemarkTypical, importers.RemarkNoTimes, importers.RemarkSameTimes, importers.RemarkHalfDays, importers.RemarkUnitValues, importers.RemarkMixedOrders, importers.RemarkUnitSwitch, importers.RemarkTenths, importers.RemarkBlankOff, importers.RemarkStatistic, importers.RemarkWords, importers.RemarkNameless, importers.RemarkNoAnswer}
	for _, code := range notes {
		for _, count := range []int{1, 7} {
			text := desk.FileNote(series.Remark{Code: code, Args: []string{"this", "that"}, Line: 3, LastLine: 2 + count, Column: 4, Count: count})
			if strings.ContainsAny(text, "{}|") || strings.HasPrefix(text, strings.ReplaceAll(code, "_", " ")) || !strings.HasSuffix(text, ".") {
				t.Errorf("%s × %d: %q", code, count, text)
			}
		}
	}
	refusals := map[string][]string{importers.RefusedEmpty: nil, importers.RefusedOneLine: nil, importers.RefusedBinary: nil, importers.RefusedLongLine: {"1048576"},
		importers.RefusedManyColumns: {"1000"}, importers.RefusedNoClock: nil, importers.RefusedNoDate: nil, importers.RefusedNoDays: nil, importers.RefusedNoStart: nil, importers.RefusedNoValues: nil,
		importers.RefusedShifted: nil, importers.RefusedWorkbook: nil, importers.RefusedArchive: nil, importers.RefusedDocument: nil, importers.RefusedPage: nil, importers.RefusedTwoCommas: nil}
	for code, args := range refusals {
		got, text := desk.Refusal("a.csv", &importers.Refusal{Name: "a.csv", Code: code, Args: args, Line: 9})
		if got != code || !strings.HasPrefix(text, "a.csv, line 9 ") || strings.Contains(text, "was not read: ") || strings.Contains(text, "%!") {
			t.Errorf("%s: %q", code, text)
		}
	}
	for _, id := range []string{"day_month", "day_zero", "temperature_unit", "humidity_unit", "decimal_mark", "pairing", "year", "first_day", "quantity"} {
		if text := desk.Question(id); !strings.HasSuffix(text, ".") && !strings.HasSuffix(text, "?") || strings.HasPrefix(text, "What is its") {
			t.Errorf("%s: %q", id, text)
		}
	}
}
