package desk

import "thawbook/app/winter"

// Swap is the edit that lets two loggers change places, from a day as typed on or, where none is, for the whole
// record; problem is a sentence where it can't be taken so.
func (b Book) Swap(one, other Slot, since string) (edit winter.Edit, problem string) {
	from, err := b.moment(since)
	if err != nil {
		return nil, Sentenced(err)
	}
	e := winter.Swap{A: one, B: other, Since: from}
	if _, err := e.Apply(b.doc); err != nil {
		return nil, sentence(err.Error()) // which may begin with a logger's name
	}
	return e, ""
}

// Loggers are all loggers of the winter, where they hang and those that hang nowhere yet.
func (b Book) Loggers() (out []LoggerEntry) {
	s := b.Shell()
	for _, barn := range s.Barns {
		out = append(out, barn.Loggers...)
	}
	return append(append(out, s.Outdoor...), s.Tray...)
}

// Titled is a logger's name with where it hangs, which tells it from another of the name.
func (b Book) Titled(l LoggerEntry) string {
	own, _ := b.doc.Logger(l.At)
	return l.Name + ", " + b.hangsAt(own, l.At)
}
