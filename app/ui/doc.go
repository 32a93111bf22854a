// Package ui is the window: a thin view over package desk, one file per screen. It knows Fyne and no
// figures; all long work runs beside it and comes back through UI.Do.
package ui
