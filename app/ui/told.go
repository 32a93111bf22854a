package ui

import (
	"slices"

	"thawbook/app/desk"
)

func (u *UI) begun(what string) {
	u.status.begin(what)
	u.tellInHand(what)
}

// tellInHand says on the page that stands while no winter is open what is being done about it; "" when nothing is.
func (u *UI) tellInHand(what string) {
	if u.inHand == what {
		return
	}
	u.inHand = what
	if !u.book.Loaded() {
		u.refresh()
	}
}

func (u *UI) progressed(done, total int64, what string) { u.status.tell(done, total, what) }

func (u *UI) ended(err error, review bool) {
	next := "The winter is as it was."
	if review {
		next = "What you changed is kept; the figures are those from before it."
		u.stopped = u.stopped || err != nil
	}
	if err != nil {
		u.trouble(desk.Fault{Text: desk.Sentenced(err), Next: next})
	}
	if !u.work.busy() {
		u.catchUp()
	}
	if !u.work.busy() {
		u.status.end()
		u.tellInHand("")
		if u.stopped && u.book.Loaded() && u.book.Barns() == 0 {
			u.refresh() // what stands there said that figures were coming
		}
	}
	u.tellFaults()
}

// stopWork is the keeper's Cancel: what runs ends, and figures that were behind stay so until he asks for them.
func (u *UI) stopWork() {
	u.stopped = true
	u.work.stop()
}

// trouble says in the strip what went wrong, until the keeper turns to something else.
func (u *UI) trouble(f desk.Fault) {
	u.troubles = append(u.troubles, f)
	u.tellFaults()
}

// tellFaults says in the strip what there is to say of the book: while work runs, what went wrong alone.
func (u *UI) tellFaults() {
	var faults []desk.Fault
	if standing := u.book.Standing(); standing.Text != "" && !u.work.busy() {
		faults = append(faults, standing)
	}
	u.strip.show(slices.Concat(faults, u.troubles, u.book.Faults))
}

// broke tells of a fault of the program in making what a page shows.
func (u *UI) broke(err error) { u.trouble(desk.Fault{Text: desk.Sentenced(err)}) }
