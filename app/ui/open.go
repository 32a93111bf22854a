package ui

import (
	"context"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"

	"thawbook/app/desk"
)

// Take opens a winter file or a plan, or adds logger files and folders.
func (u *UI) Take(paths []string) {
	if len(paths) == 0 {
		return
	}
	u.cameFrom(paths[0])
	for _, p := range paths {
		if ending := strings.ToLower(filepath.Ext(p)); ending == desk.PlanEnding || ending == desk.WinterEnding {
			u.open(p)
			if len(paths) > 1 {
				u.trouble(desk.Fault{Text: "Of all that was dropped only " + filepath.Base(p) + " was opened.", Next: "Drop logger files by themselves to add them."})
			}
			return
		}
	}
	u.change("Reading files", func(ctx context.Context, b desk.Book, tell Tell) (desk.Book, error) {
		return u.Keeper.Add(ctx, b, paths, tell)
	})
}

// open opens a winter file or a plan; what is refused is told in the strip, and of a damaged winter more is offered.
func (u *UI) open(path string) {
	u.leaveScreen()
	u.stopped = false
	u.start("Opening "+filepath.Base(path), func(ctx context.Context, tell Tell) (func(), error) { return u.opened(ctx, path, tell) })
}

// opened opens a file beside the window.
func (u *UI) opened(ctx context.Context, path string, tell Tell) (func(), error) {
	next, err := u.Keeper.Open(ctx, path, tell)
	if err != nil && ctx.Err() == nil {
		return func() { u.refused(path, err) }, nil
	}
	return func() { u.setBook(next) }, err
}

func (u *UI) refused(path string, err error) {
	if desk.IsDamaged(err) {
		u.rescueDialog(path, err)
		return
	}
	u.trouble(desk.OpenFault(path, err))
}

func (u *UI) openDemo(thin bool) {
	u.leaveScreen()
	u.stopped = false
	u.start("Making the demo winter", func(ctx context.Context, tell Tell) (func(), error) {
		path, err := u.Demo(ctx, thin, func(done, total int) { tell(int64(done), int64(total), "Making the demo winter") })
		if err != nil {
			return nil, err
		}
		return u.opened(ctx, path, tell)
	})
}

func pathsOf(dropped []fyne.URI) []string {
	var out []string
	for _, d := range dropped {
		out = append(out, d.Path())
	}
	return out
}
