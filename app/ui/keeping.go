package ui

import (
	"context"
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// saveSheet asks for a name and a folder, and says beside them what is wrong. An existing file is replaced only
// when the keeper presses twice.
func (u *UI) saveSheet(title, words, name, button string, save func(path string)) {
	var s *sheet
	shut := func() { s.close() }
	entry, folder, wrong := newKeyEntry(shut), newKeyEntry(shut), body("")
	entry.MultiLine, folder.MultiLine = false, false
	entry.SetText(name)
	folder.SetText(u.saveFolder())
	asked := ""
	commit := func() {
		file := entry.Text
		if file != "" {
			file = desk.WithEnding(file, filepath.Ext(name))
		}
		path := filepath.Join(folder.Text, file)
		text, mayGo := saveProblem(folder.Text, file, asked == path)
		if wrong.setText(text); !mayGo {
			asked = path
			return
		}
		s.close()
		save(path)
	}
	entry.OnSubmitted, folder.OnSubmitted = func(string) { commit() }, func(string) { commit() }
	pick := widget.NewButtonWithIcon("", theme.FolderIcon(), func() { u.pickFolder(func(path string) { folder.SetText(path) }) })
	form := container.New(layout.NewFormLayout(), widget.NewLabel("Name"), entry, widget.NewLabel("Folder"), bordered(nil, nil, nil, pick, folder))
	do := newKeyButton(button, commit, shut)
	do.Importance = widget.HighImportance
	s = newSheet(u.win, title, container.New(column{gap: 8}, body(words), form, wrong), 560, do)
	u.win.Canvas().Focus(entry)
}

// saveProblem says what keeps a file from being written there; mayGo is false then. A file that is there already
// is asked about once.
func saveProblem(folder, name string, asked bool) (text string, mayGo bool) {
	info, err := os.Stat(folder)
	switch {
	case strings.TrimSuffix(name, filepath.Ext(name)) == "":
		return "Give it a name.", false
	case filepath.Base(name) != name:
		return "A name can't hold a folder; choose the folder beneath.", false
	case err != nil || !info.IsDir():
		return "There is no such folder.", false
	}
	if _, err := os.Stat(filepath.Join(folder, name)); err == nil && !asked {
		return "There is a file of that name already. Press once more to replace it.", false
	}
	return "", true
}

// saveFolder is where the open winter lies, else the user's own folder.
func (u *UI) saveFolder() string {
	if !u.book.Draft && u.book.Path != "" {
		return filepath.Dir(u.book.Path)
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return ""
	}
	return home
}

func (u *UI) keepDialog() {
	u.saveSheet("Keep this winter under a name", "One file holds it all: what you set down, every file you added byte for byte, and the last 200 changes.", desk.FileName(u.book, desk.WinterEnding), "Keep it", func(path string) {
		u.change("Keeping the winter", func(_ context.Context, b desk.Book, _ Tell) (desk.Book, error) { return u.Keeper.KeepAs(b, path) })
	})
}

func (u *UI) copyDialog() {
	u.saveSheet("Save a copy", "The copy is a winter of its own, with all that is in this one. You go on in this one.", "copy of "+desk.FileName(u.book, desk.WinterEnding), "Save the copy", func(path string) {
		u.aside("Saving a copy", func(context.Context, Tell) (string, error) {
			return "The copy lies in " + path + ".", u.Keeper.SaveCopy(path)
		})
	})
}

func (u *UI) planDialog() {
	u.saveSheet("Save the plan", "The plan is the winter in words, to be read and changed in a text editor. It names the files as they are given back.", desk.FileName(u.book, desk.PlanEnding), "Save the plan", func(path string) {
		u.aside("Saving the plan", func(context.Context, Tell) (string, error) {
			return "The plan lies in " + path + ".", u.Keeper.SavePlan(path)
		})
	})
}

func (u *UI) giveBackDialog() {
	u.pickFolder(func(dir string) {
		u.aside("Giving back the files", func(ctx context.Context, tell Tell) (string, error) { return u.Keeper.GiveBack(ctx, dir, tell) })
	})
}

// aside does work that changes nothing in the window and says at the bottom what was done.
func (u *UI) aside(what string, do func(context.Context, Tell) (string, error)) {
	u.start(what, func(ctx context.Context, tell Tell) (func(), error) {
		said, err := do(ctx, tell)
		return func() { u.status.read(said) }, err
	})
}

func (u *UI) nextWinter() {
	u.leaveScreen()
	u.change("Beginning the next winter", func(context.Context, desk.Book, Tell) (desk.Book, error) { return u.Keeper.NextWinter() })
}

func (u *UI) takeOverDialog() {
	u.pickFile("Take barns over from a winter or a plan", func(path string) {
		u.change("Taking barns over", func(_ context.Context, b desk.Book, _ Tell) (desk.Book, error) { return u.Keeper.TakeOver(b, path) })
	}, desk.WinterEnding, desk.PlanEnding)
}

// besideDialog picks another winter's file to set this one beside.
func (u *UI) besideDialog() {
	u.pickFile("A winter or a plan to set beside this one", u.setBeside, desk.WinterEnding, desk.PlanEnding)
}

// setBeside works another winter out beside the window and shows it beside the chosen barn.
func (u *UI) setBeside(path string) {
	before := u.book
	u.start("Setting "+filepath.Base(path)+" beside", func(ctx context.Context, tell Tell) (func(), error) {
		kept, err := u.Keeper.SetBeside(ctx, before, path, tell)
		return func() { u.other = desk.InOtherWinter; u.setBook(kept) }, err
	})
}

// rescueDialog offers to rescue what a damaged winter file still holds.
func (u *UI) rescueDialog(path string, err error) {
	var s *sheet
	rescue := newKeyButton("Rescue what it holds", func() {
		s.close()
		u.change("Rescuing "+filepath.Base(path), func(ctx context.Context, _ desk.Book, _ Tell) (desk.Book, error) { return u.Keeper.Rescue(ctx, path) })
	}, func() { s.close() })
	rescue.Importance = widget.HighImportance
	content := container.New(column{gap: 8}, body(desk.Sentenced(err)), caption("A copy on another disk, if you have one, may be whole: try that first."))
	s = newSheet(u.win, "This winter's file is damaged", content, 520, rescue)
}

// renameDialog renames the winter and its barns.
func (u *UI) renameDialog() {
	var s *sheet
	shut := func() { s.close() }
	names := append([]string{u.book.Name()}, u.book.BarnNames()...)
	form := container.New(layout.NewFormLayout())
	entries := make([]*keyEntry, len(names))
	for i, name := range names {
		label := "Barn"
		if i == 0 {
			label = "Winter"
		}
		entries[i] = newKeyEntry(shut)
		entries[i].MultiLine = false
		entries[i].SetText(name)
		form.Add(widget.NewLabel(label))
		form.Add(entries[i])
	}
	commit := func() {
		s.close()
		var barns []string
		for _, e := range entries[1:] {
			barns = append(barns, e.Text)
		}
		if e, changes := u.book.Rename(entries[0].Text, barns); changes {
			u.edit(e)
		}
	}
	for _, e := range entries {
		e.OnSubmitted = func(string) { commit() }
	}
	rename := newKeyButton("Rename", commit, shut)
	rename.Importance = widget.HighImportance
	s = newSheet(u.win, "Rename", form, 420, rename)
	u.win.Canvas().Focus(entries[0])
}

// noteDialog sets down what the keeper saw in the shown barn.
// noteDialog asks for a note; one of a known moment is most often said in words.
func (u *UI) noteDialog(known string) {
	names := u.book.BarnNames()
	if u.barn >= len(names) {
		return
	}
	var s *sheet
	shut := func() { s.close() }
	day, value, of, text, wrong := newKeyEntry(shut), newKeyEntry(shut), newKeyEntry(shut), newKeyEntry(shut), body("")
	day.MultiLine, value.MultiLine, of.MultiLine, text.MultiLine = false, false, false, false
	of.SetPlaceHolder("of the dead: how many were looked at; empty for all")
	day.Text = known
	day.SetPlaceHolder(exampleOut)
	unit := newKeySelect(nil, "", shut)
	kind := newKeySelect(desk.NoteKinds(), "", shut)
	kind.OnChanged = func(k string) {
		if of.Enable(); !desk.CountsSample(k) {
			of.Disable()
		}
		unit.Options = desk.NoteUnits(k)
		unit.ClearSelected()
		if len(unit.Options) > 0 {
			unit.SetSelectedIndex(0)
		}
		unit.Refresh()
	}
	kind.SetSelectedIndex(0)
	set := newKeyButton("Set it down", func() {
		e, problem := u.book.AddNote(u.barn, desk.NoteText{Day: day.Text, Kind: kind.Selected, Value: value.Text, Of: of.Text, Unit: unit.Selected, Text: text.Text})
		if wrong.setText(problem); problem != "" {
			return
		}
		s.close()
		u.edit(e)
	}, shut)
	set.Importance = widget.HighImportance
	form := container.New(layout.NewFormLayout(), widget.NewLabel("When"), day, widget.NewLabel("What"), kind,
		widget.NewLabel("How many"), bordered(nil, nil, nil, unit, value), widget.NewLabel("Of"), of, widget.NewLabel("In words"), text)
	s = newSheet(u.win, "What did you see in "+names[u.barn]+"?", container.New(column{gap: 8}, form, wrong), 460, set)
	if known == "" {
		u.win.Canvas().Focus(day)
		return
	}
	kind.SetSelected("other")
	u.win.Canvas().Focus(text)
}
