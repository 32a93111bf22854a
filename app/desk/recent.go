package desk

import (
	"path/filepath"
	"strings"
)

// Recent is a winter that was open lately: its file, its name then, when it was last opened (ms UTC), and
// whether it has no name of the keeper's yet.
type Recent struct {
	Path, Name string
	At         int64
	Draft      bool
}

// Screen is where the keeper was in a winter: the page, the barn, and the stretch the Timeline showed (ms UTC;
// empty for the whole winter).
type Screen struct {
	Page, Barn int
	From, To   int64
}

// RecentView is a recent winter in words.
type RecentView struct{ Path, Name, Note string }

// RecentsOf puts recent winters into words, the latest first, drafts marked as such.
func RecentsOf(all []Recent, u Units) (out []RecentView) {
	for _, r := range all {
		notes := []string{"not saved under a name yet", "opened " + u.DateYear(r.At) + u.local(r.At).Format(" 15:04")}
		if !r.Draft {
			notes[0] = filepath.Base(r.Path)
		}
		out = append(out, RecentView{Path: r.Path, Name: r.Name, Note: strings.Join(notes, ", ")})
	}
	return out
}
