package ui

import (
	"strings"

	"fyne.io/fyne/v2"

	"thawbook/app/desk"
)

// menu is the main menu; every shortcut of the window sits on one of its items.
func (u *UI) menu() *fyne.MainMenu {
	quit := u.item("Quit", fyne.KeyQ, u.Leave)
	quit.IsQuit, quit.Action = true, u.Leave // whatever is asked
	return fyne.NewMainMenu(
		keysWritten(fyne.NewMenu("File",
			u.item("Open winter or plan…", fyne.KeyO, u.openDialog), u.recentMenu(),
			u.item("Add files…", fyne.KeyI, u.addDialog),
			fyne.NewMenuItemSeparator(),
			u.ofWinter(u.item("Keep under a name…", fyne.KeyS, u.keepDialog)),
			u.ofWinter(u.item("Save a copy…", "", u.copyDialog)),
			u.ofWinter(u.item("Save the plan…", "", u.planDialog)),
			u.ofWinter(u.item("Give back the original files…", "", u.giveBackDialog)),
			fyne.NewMenuItemSeparator(),
			u.ofWinter(u.item("Begin the next winter from this", "", u.nextWinter)),
			u.ofChangeable(u.item("Take barns over…", "", u.takeOverDialog)),
			fyne.NewMenuItemSeparator(),
			u.item("Look at the demo", fyne.KeyD, func() { u.openDemo(false) }),
			u.item("Look at the demo with one logger", "", func() { u.openDemo(true) }),
			fyne.NewMenuItemSeparator(), quit)),
		keysWritten(fyne.NewMenu("Edit",
			u.moves("Undo", u.book.Undo, legible(&fyne.ShortcutUndo{}, fyne.KeyZ), u.undo),
			u.moves("Redo", u.book.Redo, legible(&fyne.ShortcutRedo{}, fyne.KeyY), u.redo),
			fyne.NewMenuItemSeparator(),
			u.ofChangeable(u.item("Bees in and out…", "", u.beesDialog)),
			u.ofChangeable(u.item("Hives in and out…", "", func() { u.ofBarn(u.book.HiveSheet) })),
			u.ofChangeable(u.item("Fan stages…", "", u.stageSheet)),
			u.ofChangeable(u.item("Walls and ceilings…", "", func() { u.ofBarn(u.book.WallSheet) })),
			u.ofChangeable(u.item("Heat…", "", func() { u.ofBarn(u.book.HeatSheet) })),
			u.ofChangeable(u.item("The room and its alarm…", "", u.roomSheet)),
			u.ofChangeable(u.item("Safe limits…", "", func() { u.fillIn(u.book.LimitSheet(u.units)) })),
			u.ofChangeable(u.item("Phases…", "", u.phaseSheet)),
			u.ofChangeable(u.item("Times not judged…", "", func() { u.ofBarn(u.book.ExcludedSheet) })),
			fyne.NewMenuItemSeparator(),
			u.ofChangeable(u.item("Rename…", "", u.renameDialog)),
			u.ofChangeable(u.item("Swap two loggers…", "", func() { u.swapDialog(0) })),
			u.ofChangeable(u.item("Set down a note…", fyne.KeyN, func() { u.noteDialog("") })),
			u.ofChangeable(u.item("Notes…", "", func() { u.ofBarn(u.book.NoteSheet) })),
			u.ofWinter(u.item("Work it out again", fyne.KeyR, u.workOut)))),
		keysWritten(fyne.NewMenu("View",
			u.pageItem(0, fyne.Key1), u.pageItem(1, fyne.Key2), u.pageItem(2, fyne.Key3), u.pageItem(3, fyne.Key4), u.pageItem(4, fyne.Key5), u.pageItem(5, fyne.Key6), u.pageItem(6, fyne.Key7),
			u.ofWinter(u.item("Files", fyne.Key8, u.showFiles)),
			fyne.NewMenuItemSeparator(),
			u.choice("Temperatures in °C", u.units.Temperature != desk.Fahrenheit, func() { u.setTemperature(desk.Celsius) }),
			u.choice("Temperatures in °F", u.units.Temperature == desk.Fahrenheit, func() { u.setTemperature(desk.Fahrenheit) }),
			fyne.NewMenuItemSeparator(),
			u.choice("Light", u.theme.Variant == Light, func() { u.setVariant(Light) }),
			u.choice("Dark", u.theme.Variant == Dark, func() { u.setVariant(Dark) }),
			u.choice("As the system", u.theme.Variant == System, func() { u.setVariant(System) }))),
		keysWritten(fyne.NewMenu("Help",
			u.item("What the figures mean", fyne.KeyH, u.meaningsDialog),
			u.item("Keys and cautions", "", u.keysDialog),
			u.item("About Thawbook", "", u.aboutDialog))),
	)
}

// pageItem shows one of a barn's screens; chosen again, Side by side shows its next part.
func (u *UI) pageItem(page int, key fyne.KeyName) *fyne.MenuItem {
	return u.item(pageNames[page], key, func() {
		if u.page == page && page == sideBySidePage {
			u.nextCompared()
			return
		}
		u.showPage(page)
	})
}

// recentMenu lists the winters that were open lately.
func (u *UI) recentMenu() *fyne.MenuItem {
	m := fyne.NewMenuItem("Open recent", nil)
	m.ChildMenu = fyne.NewMenu("")
	for _, r := range desk.RecentsOf(u.Memory.Recent(), u.units) {
		m.ChildMenu.Items = append(m.ChildMenu.Items, fyne.NewMenuItem(r.Name+"  ("+r.Note+")", func() { u.open(r.Path) }))
	}
	m.Disabled = len(m.ChildMenu.Items) == 0
	return m
}

// ofWinter is an item that needs an open winter.
func (u *UI) ofWinter(m *fyne.MenuItem) *fyne.MenuItem {
	m.Disabled = !u.book.Loaded()
	return m
}

// ofChangeable is an item that needs an open winter that can be changed.
func (u *UI) ofChangeable(m *fyne.MenuItem) *fyne.MenuItem {
	m.Disabled = !u.book.Changeable()
	return m
}

// moves is Undo or Redo with the edit it moves over.
func (u *UI) moves(label, what string, key fyne.Shortcut, act func()) *fyne.MenuItem {
	m := u.item(strings.TrimSpace(label+" "+what), "", act)
	m.Shortcut, m.Disabled = key, what == ""
	return m
}

// item is a menu item with Ctrl and a key. While a dialog is open the keys are the dialog's: nothing changes beneath it.
func (u *UI) item(label string, key fyne.KeyName, act func()) *fyne.MenuItem {
	m := fyne.NewMenuItem(label, func() {
		if u.win.Canvas().Overlays().Top() == nil {
			act()
		}
	})
	if key != "" {
		m.Shortcut = withCtrl(key)
	}
	return m
}

func (u *UI) choice(label string, chosen bool, act func()) *fyne.MenuItem {
	m := fyne.NewMenuItem(label, act)
	m.Checked = chosen
	return m
}
