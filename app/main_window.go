//go:build !nogui

package main

import fyneapp "fyne.io/fyne/v2/app"

func window() { fyneapp.NewWithID("x").NewWindow("Thawbook").ShowAndRun() }
