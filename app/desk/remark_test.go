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

// A question about columns names each of them.
func TestQuestionsNameTheirColumns(t *testing.T) {
	for _, c := range []struct {
		file, want string
	}{
		{"time,North,South,Attic\n2026-01-13 10:00,7.5,8.5,9.5\n2026-01-13 11:00,7.0,8.0,9.0\n2026-01-13 12:00,7.5,8.5,9.0\n", "What do the columns North, South and Attic hold?"},
		{"2026-01-13 10:00;7,5\n2026-01-13 11:00;7,0\n2026-01-13 12:00;7,5\n", "What does column 2 hold?"},
		{"Date,00:00,06:00,12:00,18:00\n2026-01-13,7.5,8.5,9.5,8.5\n2026-01-14,7.0,8.0,9.0,8.5\n2026-01-15,7.5,8.5,9.0,8.5\n", "What do the numbers hold?"},
		{"time,air,rh\n2026-01-13 10:00,7.5,80\n2026-01-13 11:00,7.0,81\n2026-01-13 12:00,7.5,82\n", "What does column air hold?"},
	} {
		e, err := importers.Read(t.Context(), strings.NewReader(c.file), "f.csv", nil)
		if err != nil || len(e.Questions) != 1 {
			t.Fatalf("%v, %v", e.Questions, err)
		}
		if got := desk.QuestionOf(e.Questions[0].ID, e.Questions[0].Columns); !strings.HasPrefix(got, c.want) {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
