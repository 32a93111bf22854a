package ui

import (
	"runtime"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
)

// menuKey is a shortcut whose key stands in its item's label: the toolkit would write it beside the label in a fifth of the
// ink, too faint to read.
type menuKey struct{ name, key string }

// ShortcutName is the name the window knows the shortcut by, as fyne.Shortcut.
func (k menuKey) ShortcutName() string { return k.name }

// withCtrl is Ctrl and a key; a system that draws the menus itself writes it in its own way.
func withCtrl(key fyne.KeyName) fyne.Shortcut {
	return legible(&desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault}, key)
}

func legible(s fyne.Shortcut, key fyne.KeyName) fyne.Shortcut {
	if runtime.GOOS == "darwin" {
		return s
	}
	return menuKey{s.ShortcutName(), "Ctrl+" + string(key)}
}

// keysWritten writes the keys of a menu's items behind their labels, one below the other.
func keysWritten(m *fyne.Menu) *fyne.Menu {
	wide := func(s string) float32 { return fyne.MeasureText(s, theme.TextSize(), fyne.TextStyle{}).Width }
	column := float32(0)
	for _, i := range m.Items {
		column = max(column, wide(i.Label))
	}
	space := wide("  ") - wide(" ")
	for _, i := range m.Items {
		if k, ok := i.Shortcut.(menuKey); ok {
			i.Label += strings.Repeat(" ", 4+int((column-wide(i.Label))/space+0.5)) + k.key
		}
	}
	return m
}
