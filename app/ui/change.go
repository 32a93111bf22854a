package ui

import (
	"context"
	"time"

	"thawbook/app/desk"
)

// change has a change of the winter kept and shows it; the figures follow.
func (u *UI) change(what string, keep func(context.Context, desk.Book, Tell) (desk.Book, error)) {
	before := u.book
	u.stopped = false
	u.start(what, func(ctx context.Context, tell Tell) (func(), error) {
		kept, err := keep(ctx, before, tell)
		return func() { u.setBook(kept) }, err
	})
}

// start runs work that is not dropped for other work. When it has ended the figures are worked out if they are
// behind.
func (u *UI) start(what string, work Work) {
	if !u.work.busy() {
		u.troubles = nil
	}
	u.work.start(what, work)
}

// settled is how long after a change no other may come before it is worked out.
const settled = 120 * time.Millisecond

// catchUp works the figures out beside the window, if they are not those of the winter as it stands.
func (u *UI) catchUp() {
	if !u.book.Behind() || u.stopped {
		return
	}
	book, pause := u.book, settled
	if book.Barns() == 0 { // just opened
		pause = 0
	}
	u.work.judge("Working it out", func(ctx context.Context, tell Tell) (func(), error) {
		select { // of changes made quickly only the last is worked out
		case <-ctx.Done():
			return nil, ctx.Err()
		case <-time.After(pause):
		}
		judged, err := u.Keeper.Review(ctx, book, tell)
		return func() { u.setBook(judged) }, err
	})
}

// edit is a change that is one edit of the document.
func (u *UI) edit(e desk.Edit) {
	u.change("Keeping the change", func(_ context.Context, b desk.Book, _ Tell) (desk.Book, error) { return u.Keeper.Edit(b, e) })
}

func (u *UI) undo() {
	u.change("Undoing", func(_ context.Context, b desk.Book, _ Tell) (desk.Book, error) { return u.Keeper.UndoEdit(b) })
}

func (u *UI) redo() {
	u.change("Doing it again", func(_ context.Context, b desk.Book, _ Tell) (desk.Book, error) { return u.Keeper.RedoEdit(b) })
}

// workOut works the figures out once more, as after they were stopped.
func (u *UI) workOut() {
	u.change("Working it out", func(_ context.Context, b desk.Book, _ Tell) (desk.Book, error) { return b.Outdated(), nil })
}
