package desk

import (
	"path/filepath"
	"slices"
	"strings"

	"thawbook/analysis/series"
	"thawbook/app/engine"
	"thawbook/app/winter"
	"thawbook/app/winter/store"
)

// Book is an open winter as it stood at one moment: the keeper's document, and what the last review made of
// it. It is a value; Keeper makes the next one.
type Book struct {
	Path   string // the winter file
	Draft  bool   // it has no name of the keeper's yet
	Result engine.Result
	Faults []Fault // what could not be read or done, in order

	Undo, Redo string // what would be undone or done again, in words; empty when there is nothing

	other  OtherWinter
	id     int // of the winter; the same under another name
	mode   store.Mode
	doc    winter.Winter
	loaded bool
	stale  bool // the review is of the document before this one
	looked looked
	lists  *lists // of the book as it stands; nil until they are made
}

// Slot names a logger's place in a book: a barn's list, the outdoor list or the tray.
type Slot = winter.Slot

// The lists that are no barn's.
const (
	OutdoorList = winter.OutdoorList
	TrayList    = winter.TrayList
)

// Progress is told how much of how much is done, and what is in hand.
type Progress = engine.Progress

// Same says whether two books are of one winter, under whatever name.
func (b Book) Same(other Book) bool { return b.loaded == other.loaded && b.id == other.id }

// Behind says whether the figures are not those of the winter as it stands.
func (b Book) Behind() bool { return b.loaded && (b.stale || b.Barns() < len(b.doc.Barns)) }

// Outdated is the book with its figures to be worked out again.
func (b Book) Outdated() Book {
	b.stale = true
	return b.listed()
}

// Loaded says whether a winter is open.
func (b Book) Loaded() bool { return b.loaded }

// Changeable says whether changes of the winter can be kept.
func (b Book) Changeable() bool { return b.loaded && b.mode == store.Writable }

// Name is the winter's name.
func (b Book) Name() string { return b.doc.Name }

// Barns is how many barns have a review.
func (b Book) Barns() int { return min(len(b.Result.Barns), len(b.Result.Inputs)) }

// Fault is something that went wrong, in words: what happened to which file, and what to do next.
type Fault struct{ Text, Next string }

// FaultOf puts a file's error into words.
func FaultOf(name string, err error) Fault {
	_, text := Refusal(filepath.Base(name), err)
	switch {
	case !strings.Contains(text, filepath.Base(name)):
		text = filepath.Base(name) + ": " + text
	case !strings.HasPrefix(text, filepath.Base(name)):
		text = asSentence(text)
	}
	return Fault{Text: text, Next: "Everything else was read; put right what is named here and add it again."}
}

// OpenFault puts a refused winter file or plan into words.
func OpenFault(path string, err error) Fault {
	f := FaultOf(path, err)
	f.Next = "Nothing was opened."
	if !engine.IsWinterFile(path) {
		f.Next = "Nothing was opened. Put the plan right in a text editor and open it again."
	}
	return f
}

// Sentenced is an error as a sentence.
func Sentenced(err error) string { return asSentence(err.Error()) }

// asSentence is a text with a full stop, begun with a capital unless it begins with a file's name.
func asSentence(text string) string {
	first, _, _ := strings.Cut(text, " ")
	if !strings.ContainsAny(first, `./\`) {
		text = capital(text)
	}
	return sentence(text)
}

// Standing is what there is to know of the file before anything else: that it can't be changed, or that the
// figures are behind. Empty when all is as it should be.
func (b Book) Standing() Fault {
	copyIt := "File, Save a copy… makes one that can be changed."
	switch {
	case !b.loaded:
		return Fault{}
	case b.mode == store.Elsewhere:
		return Fault{"This winter is open in another window, so nothing can be changed here.", "Go on in that window. " + copyIt}
	case b.mode == store.Protected:
		return Fault{"This winter's file or its folder is protected against writing, so nothing can be changed here.", copyIt}
	case b.mode == store.Newer:
		return Fault{"This winter was written by a newer Thawbook. It is shown as far as this one understands it and can't be changed.", "Update the program to go on with it."}
	case b.stale:
		return Fault{"The change is kept, but the figures are still those from before it.", "Edit, Work it out again brings them up to date."}
	}
	return Fault{}
}

// Notes are the sentences that qualify the winter's figures, each once, with how often it was met.
func (b Book) Notes(barn int) []string {
	var remarks []series.Remark
	if barn < b.Barns() {
		remarks = append(remarks, b.Result.Barns[barn].Remarks...)
	}
	remarks = append(remarks, b.Result.Remarks...)
	var out []string
	for _, r := range remarks {
		if text := windowNote(r); !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	return out
}

// BarnView is everything the window shows of one barn.
type BarnView struct {
	Header    Header
	FirstLook FirstLook
	Timeline  Timeline
	Spells    SpellsView
	Stages    StagesView
	AirWater  AirWater
	Before    BeforeNext
}

// Barn is what the window shows of a barn; ok is false when there is no such barn, or it is not judged yet.
func (b Book) Barn(i int, u Units) (v BarnView, ok bool) {
	if i < 0 || i >= b.Barns() || i >= len(b.doc.Barns) {
		return BarnView{}, false
	}
	in, r := b.Result.Inputs[i], b.Result.Barns[i]
	v = BarnView{HeaderOf(in, r, u), FirstLookOf(in, r, u), TimelineOf(in, r, u), SpellsOf(in, r, u), StagesOf(in, r, u), AirWaterOf(in, r, u), BeforeNextOf(in, r, u)}
	v.Before.Doubts = b.oddReadings(i, newBarn(in, r, u).u)
	v.FirstLook.Sentences = append(v.Before.Doubts, v.FirstLook.Sentences...)
	v.Timeline.Points = append(v.Timeline.Points, notePoints(b.doc.Barns[i].Notes)...)
	v.Header.Noted = noted(b.doc.Barns[i].Notes, in.Heads, r, newBarn(in, r, u).u)
	return v, true
}

// Beside is a barn of the review beside another; other is the place among those it can be set beside, or InOtherWinter.
func (b Book) Beside(i, other int, u Units) TwoBarns {
	if i < 0 || i >= b.Barns() {
		return TwoBarns{}
	}
	return TwoBarnsOf(&b.Result, b.other, i, other, u)
}

// AllBarns sets out all barns of the review; without rows where there are fewer than three.
func (b Book) AllBarns(u Units) AllBarns { return AllBarnsOf(&b.Result, u) }

// BarnNames are the barns' names in the winter's order.
func (b Book) BarnNames() []string {
	var out []string
	for _, barn := range b.doc.Barns {
		out = append(out, barn.Name)
	}
	return out
}
