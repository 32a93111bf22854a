//go:build !nogui

package main

import (
	"context"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"
	"time"

	"fyne.io/fyne/v2"
	fyneapp "fyne.io/fyne/v2/app"

	"thawbook/app/desk"
	"thawbook/app/files"
	"thawbook/app/ui"
	"thawbook/app/userdata"
	"thawbook/sampledata"
)

// quitWithin is how long the toolkit may take to end before the process ends without it.
const quitWithin = 2 * time.Second

// window opens the window, with a winter, a plan or logger files in it where some are named, and returns the
// exit status when it is closed.
func window(paths ...string) int {
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, os.Interrupt, syscall.SIGTERM) // first: what comes while the window is being made ends it too
	ui.KeepQuick()
	app := fyneapp.NewWithID("thawbook")
	own := userdata.Load()
	version := program().Version
	keeper := &desk.Keeper{Drafts: own.Drafts(), Program: program(), Crash: func(note string) { own.Crashed(version, note) }}
	u := &ui.UI{Do: fyne.Do, Demo: demo, Keeper: keeper, Memory: own, Version: version, Quit: func() {
		time.AfterFunc(quitWithin, func() { os.Exit(done) })
		app.Quit()
	}}
	u.Show(app, paths...)
	go func() {
		<-signals
		fyne.Do(u.Leave)
	}()
	app.Run()
	return done
}

// demo writes a demo winter into the user's cache folder and returns the path of its plan.
func demo(ctx context.Context, thin bool, tell func(done, total int)) (string, error) {
	cache, err := os.UserCacheDir()
	if err != nil {
		return "", err
	}
	dir, winterOf := filepath.Join(cache, "thawbook", "demo"), sampledata.Demo
	if thin {
		dir, winterOf = filepath.Join(dir, "thin"), sampledata.Thin
	}
	made, err := winterOf(ctx, tell)
	if err != nil {
		return "", err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return "", err
	}
	for _, f := range made {
		if err := files.WriteAtomic(filepath.Join(dir, f.Name), func(w io.Writer) error { _, err := w.Write(f.Data); return err }); err != nil {
			return "", err
		}
	}
	return filepath.Join(dir, "winter.toml"), nil
}
