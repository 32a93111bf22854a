package desk

import (
	"strings"
	"testing"
)

// Every word has its meaning, in a line that begins with it.
func TestMeaningsAreThere(t *testing.T) {
	for _, m := range Meanings() {
		if word, text, ok := strings.Cut(m, ": "); !ok || word == "" || len(text) < 20 {
			t.Errorf("%q", m)
		}
	}
}
