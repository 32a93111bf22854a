package ui

import (
	"bytes"
	"context"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/chart"
	"thawbook/app/desk"
)

// takeNotes lets notes be set down on a Timeline, and gives it the menu of its right button.
func (u *UI) takeNotes(p *timelinePage, t desk.Timeline) {
	if p.plot == nil {
		return
	}
	note := func(at int64) { u.noteDialog(u.book.NoteMoment(at)) }
	if u.book.Changeable() {
		p.plot.OnNote = note
	}
	p.plot.OnMenu = func(at int64, where fyne.Position) {
		widget.ShowPopUpMenuAtPosition(u.timelineMenu(p.plot, t, at, note), u.win.Canvas(), where)
	}
}

// timelineMenu is what can be done at an instant of a Timeline.
func (u *UI) timelineMenu(c *chart.Chart, t desk.Timeline, at int64, note func(int64)) *fyne.Menu {
	set := fyne.NewMenuItem("Set down a note at "+t.Units.Clock(at)+"…", func() { note(at) })
	change := fyne.NewMenuItem("Change the notes…", func() { u.ofBarn(u.book.NoteSheet) })
	set.Disabled, change.Disabled = !u.book.Changeable(), !u.book.Changeable()
	return fyne.NewMenu("", set, change, fyne.NewMenuItemSeparator(),
		copyItem("Copy what is read here", func() string { return toldAt(t, c, at, t.ReadEach(at, saidOf(c.Read(at)))) }),
		fyne.NewMenuItem("Show all of it", func() { c.SetView(c.Whole()) }),
		fyne.NewMenuItem("Save the picture…", func() { u.pictureSheet(c) }))
}

// pictureSheet asks where the picture of what is shown is to lie.
func (u *UI) pictureSheet(c *chart.Chart) {
	var picture bytes.Buffer
	if err := c.Picture(&picture); err != nil {
		u.broke(err)
		return
	}
	u.saveSheet("Save the picture", "The stretch that is shown, as large as it stands in the window.", desk.FileName(u.book, ".png"), "Save the picture", func(path string) {
		u.aside("Saving the picture", func(context.Context, Tell) (string, error) {
			return "The picture lies in " + path + ".", u.Keeper.SavePicture(path, picture.Bytes())
		})
	})
}
