package engine

import (
	"time"

	"thawbook/analysis/series"
)

// A clock that loses its time, as when its battery is changed, begins anew with a 1 January of long ago. What it
// shows until it is set bears no date of the winter.

// yearMS is longer than any year.
const yearMS = 366 * 24 * series.HourMS

// run is a stretch of faces, in file order, between which and the next lies more than a year.
type run struct{ from, to int }

// runsOf cuts faces where they leap by more than a year.
func runsOf(face []int64) (out []run) {
	from := 0
	for i := 1; i <= len(face); i++ {
		if i == len(face) || abs(face[i]-face[i-1]) > yearMS {
			out, from = append(out, run{from, i}), i
		}
	}
	return out
}

// longest is the run with the most faces, the first of several.
func longest(runs []run) (out run) {
	for _, r := range runs {
		if r.to-r.from > out.to-out.from {
			out = r
		}
	}
	return out
}

// lost says whether a run is of a clock that had lost its time: it begins with a 1 January, more than a year before
// the log itself.
func (r run) lost(face []int64, log run) bool {
	first, own := min(face[r.from], face[r.to-1]), min(face[log.from], face[log.to-1])
	return own-first > yearMS && time.UnixMilli(first).UTC().YearDay() == 1
}

// withoutLost leaves out what such a clock showed, and counts it.
func withoutLost(face []int64, val []float64) (keptFace []int64, keptVal []float64, lost int) {
	runs := runsOf(face)
	if len(runs) < 2 {
		return face, val, 0
	}
	log := longest(runs)
	for _, r := range runs {
		if r.lost(face, log) {
			lost += r.to - r.from
			continue
		}
		keptFace, keptVal = append(keptFace, face[r.from:r.to]...), append(keptVal, val[r.from:r.to]...)
	}
	return keptFace, keptVal, lost
}
