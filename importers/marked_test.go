package importers

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"
)

// marked hold logs with the code of each remark in braces before the cell, or the line, it is to name.
var marked = []struct{ name, in string }{
	{"cells", "time;temp °C;rh %\n2026-01-13 10:00;4,5;80\n2026-01-13 10:10;{unreadable_cell}warm;81\n2026-01-13 10:20;3,5;{limit}<5\n2026-01-13 10:30;{sentinel}-999;82\n"},
	{"times", "no,time,temp °C\n1,2026-01-13 10:00,4.5\n2,{bad_time}yesterday,4.5\n3,2026-01-13 10:20,4.5\n4,{out_of_order}2026-01-13 09:20,4.5\n"},
	{"lines", "time,temp °C,rh %\n2026-01-13 10:00,4.5,80\n{short_line}2026-01-13 10:10,4.5\n{long_line}2026-01-13 10:20,4.5,80,81\n2026-01-13 10:30,4.5,81\n{foot}Minimum,4.5,80\n"},
	{"a comma within a number", "time,temp °C,rh %\n2026-01-13 09:30,4.5,80.5\n2026-01-13 09:40,4.0,81.5\n2026-01-13 09:50,4.5,80.5\n{moved_line}2026-01-13 10:10,4,5,80.5\n2026-01-13 10:20,4.0,82.0\n2026-01-13 10:40,4.5,81.5\n{long_line}2026-01-13 10:50,4.5,81.5,door\n"},
	{"a cell put before", "time,temp °C,rh %\n2026-01-13 09:30,4.5,80.5\n2026-01-13 09:40,4.0,81.5\n2026-01-13 09:50,4.5,80.5\n{moved_line}2026-01-13 10:00,,4.5,81.0\n2026-01-13 10:20,4.0,82.0\n2026-01-13 10:40,4.5,81.5\n"},
	{"all fractions cut off", "time,temp °C,rh %\n2026-01-13 09:30,4.5,80.5\n2026-01-13 09:40,4.0,81.5\n2026-01-13 09:50,4.5,80.5\n{moved_line}2026-01-13 10:00,4,5,80,5\n2026-01-13 10:20,4.0,82.0\n2026-01-13 10:40,4.5,81.5\n"},
	{"a cell lost", "time,temp °C,rh %\n2026-01-13 09:30,4.5,80.5\n2026-01-13 09:40,4.0,81.5\n2026-01-13 09:50,4.5,80.5\n{moved_line}2026-01-13 10:00,81.5\n2026-01-13 10:20,4.0,82.0\n2026-01-13 10:40,4.5,81.5\n"},
	{"a comma within a number before a note", "time,temp °C,rh %,note\n2026-01-13 10:00,4.5,80.5,\n2026-01-13 10:10,4.5,80.5,\n{moved_line}2026-01-13 10:20,4,5,80.5,\n2026-01-13 10:30,4.0,82.0,door open\n"},
	{"a line that breaks off", "time,temp °C,rh %\n2026-01-13 10:00,4.5,80\n2026-01-13 10:10,{cut_line}{unreadable_cell}4"},
	{"below lines about the log, a quoted cell over two lines above", "Log of the shed\n\"two\nlines\"\n\ntime,temp °C,note\n2026-01-13 10:00,4.5,\n2026-01-13 10:10,{unreadable_cell}x1,\n"},
	{"columns that hold no readings", "time,temp °C,{statistic}min temp °C\n2026-01-13 10:00,4.5,4.1\n2026-01-13 10:10,4.5,4.2\n"},
	{"words", "time,alarm\n2026-01-13 10:00,{words}hot\n2026-01-13 10:10,acknowledged\n"},
	{"a unit that the values belie", "time,{unit_by_values}rh %\n2026-01-13 10:00,0.8\n2026-01-13 10:10,0.81\n"},
	{"runs", "start,end\n2026-01-13 10:00,2026-01-13 10:05\n2026-01-13 10:10,2026-01-13 10:15\n2026-01-13 10:20,2026-01-13 10:25\n2026-01-13 10:30,2026-01-13 10:35\n2026-01-13 10:40,2026-01-13 10:45\n2026-01-13 10:50,2026-01-13 10:55\n2026-01-13 11:00,2026-01-13 11:05\n2026-01-13 11:10,2026-01-13 11:15\n2026-01-13 11:20,{unreadable_cell}soon\n2026-01-13 11:30,2026-01-13 11:35\n"},
}

// wholeLines are the remarks that name no column; headerMarks are those on a column, which name the first row.
var wholeLines, headerMarks = []string{RemarkShortLine, RemarkLongLine, RemarkMovedLine, RemarkFoot}, []string{RemarkStatistic, RemarkUnitValues}

// unmarked takes the codes out of a log and says where each stood, as code line:column.
func unmarked(text string) (plain string, want []string) {
	delimiter := ","
	if strings.Contains(text, ";") {
		delimiter = ";"
	}
	for i, line := range strings.Split(text, "\n") {
		if i > 0 {
			plain += "\n"
		}
		for {
			from := strings.IndexByte(line, '{')
			if from < 0 {
				break
			}
			to := strings.IndexByte(line, '}')
			code := line[from+1 : to]
			at, column := i+1, 1+strings.Count(line[:from], delimiter)
			if slices.Contains(wholeLines, code) {
				column = 0
			}
			if slices.Contains(headerMarks, code) {
				at++
			}
			want = append(want, fmt.Sprintf("%s %d:%d", code, at, column))
			line = line[:from] + line[to+1:]
		}
		plain += line
	}
	slices.Sort(want)
	return plain, want
}

// Every remark names the line and the column where a person finds what it is about.
func TestRemarksNameTheirPlace(t *testing.T) {
	for _, c := range marked {
		text, want := unmarked(c.in)
		e, err := Read(context.Background(), strings.NewReader(text), "f.csv", nil)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		var got []string
		for _, r := range e.Remarks {
			got = append(got, fmt.Sprintf("%s %d:%d", r.Code, r.Line, r.Column))
		}
		slices.Sort(got)
		if !slices.Equal(got, want) {
			t.Errorf("%s: got %v, want %v", c.name, got, want)
		}
	}
}
