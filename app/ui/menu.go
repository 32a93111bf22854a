package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"thawbook/app/desk"
)

// menu is the main menu; every shortcut of the window sits on one of its items.
func (u *UI) menu() *fyne.MainMenu {
	quit := item("Quit", fyne.KeyQ, u.Leave)
	quit.IsQuit = true
	return fyne.NewMainMenu(
		fyne.NewMenu("File",
			item("Open plan…", fyne.KeyO, func() { u.pickFile(".toml") }),
			item("Add files…", fyne.KeyI, u.addDialog),
			item("Look at the demo", fyne.KeyD, u.openDemo),
			fyne.NewMenuItemSeparator(), quit),
		fyne.NewMenu("View",
			item("First look", fyne.Key1, func() { u.showPage(0) }),
			item("Timeline", fyne.Key2, func() { u.showPage(1) }),
			item("Stages", fyne.Key3, func() { u.showPage(2) }),
			fyne.NewMenuItemSeparator(),
			u.choice("Temperatures in °C", u.units.Temperature != desk.Fahrenheit, func() { u.setTemperature(desk.Celsius) }),
			u.choice("Temperatures in °F", u.units.Temperature == desk.Fahrenheit, func() { u.setTemperature(desk.Fahrenheit) }),
			fyne.NewMenuItemSeparator(),
			u.choice("Light", u.theme.Variant == Light, func() { u.setVariant(Light) }),
			u.choice("Dark", u.theme.Variant == Dark, func() { u.setVariant(Dark) }),
			u.choice("As the system", u.theme.Variant == System, func() { u.setVariant(System) })),
		fyne.NewMenu("Help",
			item("Keys and cautions", "", u.keysDialog),
			item("About Thawbook", "", u.aboutDialog)),
	)
}

// item is a menu item with Ctrl and a key.
func item(label string, key fyne.KeyName, act func()) *fyne.MenuItem {
	m := fyne.NewMenuItem(label, act)
	if key != "" {
		m.Shortcut = &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault}
	}
	return m
}

func (u *UI) choice(label string, chosen bool, act func()) *fyne.MenuItem {
	m := fyne.NewMenuItem(label, act)
	m.Checked = chosen
	return m
}
