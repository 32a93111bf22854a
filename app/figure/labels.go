package figure

import (
	"image"
	"math"
	"slices"
	"sort"
)

// label is a name beside its line at the right edge.
type label struct {
	text  string
	y     float64 // wished centre, then the given one
	trace int     // whose name it is
	width float64 // of the sample of the line, 0 for none
}

// drawNames sets the limits and the names of the traces right of lane i.
func (f *Figure) drawNames(s sheet, l *Layout, i int, names []label) {
	r, face := l.Lanes[i], l.font(false)
	x := float64(r.Max.X) + 7*l.scale
	for _, n := range names {
		if n.width == 0 {
			s.text(n.text, x, n.y+4.2*l.scale, face, f.Theme.Ink)
			continue
		}
		y := int(math.Round(n.y))
		s.fill(image.Rect(int(x), y, int(x+swatch*l.scale), y+max(1, int(n.width+0.5))), f.inks[n.trace])
		room := float64(l.names) - (swatch+14)*l.scale
		s.text(f.fonts.fit(n.text, face, room), x+(swatch+5)*l.scale, n.y+4.2*l.scale, face, f.Theme.Muted)
	}
}

// labels returns the limits and the names right of lane i, placed so that none overlap. Of more loggers than there are inks to
// tell them apart by no more are named than there are inks; what has no line has no name.
func (f *Figure) labels(l *Layout, i int, byImportance []int) []label {
	lane, r := &f.Lanes[i], l.Lanes[i]
	var free []label
	inks, unnamed := len(f.Theme.Traces), 0
	for _, j := range byImportance {
		t := &lane.Traces[j]
		y, ok := f.endOf(l, i, t)
		switch {
		case !ok || t.Name == "":
		case t.Veiled || t.thin() && inks == 0:
			unnamed++
		default:
			free = append(free, label{text: t.Name, y: y, trace: j, width: t.width() * l.scale})
			if t.thin() {
				inks--
			}
		}
	}
	return place(f.limitPlaces(l, i), free, unnamed, float64(r.Min.Y)-l.aboveLane(i), float64(r.Max.Y), labelLine*l.scale)
}

// aboveLane is how far above a lane the centre of a name may stand where it finds no room beside it: halfway into the title's
// line, unless that holds the name of a second scale.
func (l *Layout) aboveLane(i int) float64 {
	if l.lanes[i].own {
		return 0
	}
	return headH / 2 * l.scale
}

// endOf returns the height of a trace where its name stands for it, inside the lane: at the end of the focus where that is in
// view and the trace is seen before it, for afterwards loggers hang anywhere; else at the end of the view.
func (f *Figure) endOf(l *Layout, i int, t *Trace) (y float64, ok bool) {
	v, known := 0.0, false
	if f.Focus.To > f.Focus.From && f.Focus.To < l.View.To {
		v, known = t.lastSeen(Span{From: l.View.From, To: f.Focus.To})
	}
	if !known {
		v, known = t.lastSeen(l.View)
	}
	r := l.Lanes[i]
	y = l.y(i, f.Lanes[i].shown(v), t.OwnScale)
	return min(max(y, float64(r.Min.Y)), float64(r.Max.Y)), known
}

// lastSeen is a trace's value at the end of a stretch of time, or its last reading in it.
func (t *Trace) lastSeen(s Span) (v float64, known bool) {
	if s.To <= s.From {
		return 0, false
	}
	if v, known = t.Curve.At(s.To); known {
		return v, true
	}
	k := sort.Search(t.Curve.Len(), func(i int) bool { return t.Curve.Readings.At[i] > s.To }) - 1
	if k < 0 || t.Curve.Readings.At[k] < s.From {
		return 0, false
	}
	return t.Curve.Val[k], true
}

// place gives every label a centre between top and bottom, a line apart. Limits have their place first, in the first of the
// ways to set them that leaves room for two names, or for most of these. Names go to the nearest free place in the order given;
// the last place says how many have none, with those that are unnamed anyway, unless it is the only one.
func place(limits [][]label, free []label, unnamed int, top, bottom, line float64) []label {
	var fixed []label
	var slots []*slot
	room, most := 0, -1
	for _, way := range limits {
		s, r := freeSlots(way, top, bottom, line)
		if names := min(r, 2, len(free)); names > most {
			fixed, slots, room, most = way, s, r, names
		}
	}
	if room > 1 && len(free)+min(1, unnamed) > room {
		unnamed += len(free) - (room - 1)
		free = free[:room-1]
	}
	if unnamed > 0 && room > 1 {
		free = append(slices.Clone(free), label{text: "+" + ThinSpace + Number(float64(unnamed), 0) + " more", y: bottom})
	}
	for _, n := range free {
		if s := nearest(slots, n.y, line); s != nil {
			s.labels = append(s.labels, n)
			s.capacity--
		}
	}
	out := slices.Clone(fixed)
	for i := range slots {
		out = append(out, slots[i].stack(line)...)
	}
	return out
}

// slot is a free stretch of the label column.
type slot struct {
	top, bottom float64
	capacity    int
	labels      []label
}

// freeSlots are the stretches the limits, top to bottom, leave, with the number of labels that have room in them.
func freeSlots(fixed []label, top, bottom, line float64) (out []*slot, room int) {
	add := func(a, b float64) {
		if n := int((b-a)/line + 1e-6); n > 0 {
			out = append(out, &slot{top: a, bottom: b, capacity: n})
			room += n
		}
	}
	from := top - line/2
	for _, n := range fixed {
		add(from, n.y-line/2)
		from = n.y + line/2
	}
	add(from, bottom+line/2)
	return out, room
}

func nearest(slots []*slot, y, line float64) *slot {
	var best *slot
	bestD := math.Inf(1)
	for _, s := range slots {
		d := max(0, s.top+line/2-y, y-(s.bottom-line/2))
		if s.capacity > 0 && d < bestD {
			best, bestD = s, d
		}
	}
	return best
}

// stack spreads the slot's labels downwards, then pushes them back up from its bottom.
func (s *slot) stack(line float64) []label {
	n := s.labels
	sort.SliceStable(n, func(a, b int) bool { return n[a].y < n[b].y })
	from := s.top + line/2
	for i := range n {
		n[i].y = max(n[i].y, from)
		from = n[i].y + line
	}
	to := s.bottom - line/2
	for i := len(n) - 1; i >= 0; i-- {
		n[i].y = min(n[i].y, to)
		to = n[i].y - line
	}
	return n
}
