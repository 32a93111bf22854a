package plan

import (
	"bytes"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"thawbook/app/winter"
)

// again writes a winter and reads it back.
func again(t *testing.T, w winter.Winter) winter.Winter {
	t.Helper()
	var text bytes.Buffer
	if err := Write(&text, w); err != nil {
		t.Fatal(err)
	}
	back, err := Read(text.Bytes(), "written.toml")
	if err != nil {
		t.Fatalf("%v in\n%s", err, text.String())
	}
	if !reflect.DeepEqual(w, back) {
		t.Fatalf("read back as\n%+v\nnot\n%+v\nfrom\n%s", back, w, text.String())
	}
	return back
}

func TestWhatIsWrittenReadsBack(t *testing.T) {
	again(t, read(t, full))
	again(t, read(t, head+"[[barn]]\nname = \"Alder\"\n"))
}

// An instant in the hour shown twice, each of the two, and one in a zone with an odd distance from UTC.
func TestInstantsReadBack(t *testing.T) {
	for _, c := range []struct{ zone, at string }{
		{"Europe/Tallinn", "2026-10-25T03:30:00+03:00"},
		{"Europe/Tallinn", "2026-10-25T03:30:00+02:00"},
		{"Australia/Lord_Howe", "2026-04-05T01:45:00+10:30"},
		{"-03:30", "2026-04-05T01:45:00.125-03:30"},
		{"Africa/Monrovia", "1971-06-01T00:00:00+00:00"},
	} {
		again(t, read(t, fmt.Sprintf("[winter]\nname = \"\"\nzone = %q\n[[barn]]\nname = \"A\"\nbees_in = %q\n", c.zone, c.at)))
	}
}

// Whatever the text, Read gives a winter or one sentence with a place in the text, and a winter it gives
// can be written and read back.
func FuzzPlan(f *testing.F) {
	for _, table := range strings.Split(full, "\n\n") { // one table at a time: small texts change fastest
		f.Add([]byte(head + "[[barn]]\nname = \"Alder\"\n" + table))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		w, err := Read(text, "plan.toml")
		if err != nil {
			fault := err.(*Error)
			if fault.Line < 1 || fault.Column < 1 || fault.Line > bytes.Count(text, []byte("\n"))+1 || fault.Msg == "" {
				t.Fatalf("points outside the text: %v", err)
			}
			return
		}
		again(t, w)
	})
}
