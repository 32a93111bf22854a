package desk

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"thawbook/analysis/series"
	"thawbook/app/engine"
	"thawbook/app/winter"
)

// asksZone says whether a file's time zone is asked: the review went on in the winter's.
func (b Book) asksZone(name string) bool { return slices.Contains(b.Result.ZoneOpen, name) }

// zoneQuestion asks once for all files it concerns in which time zone their clocks stood.
func (b Book) zoneQuestion(f engine.File) FileQuestion {
	q := FileQuestion{ID: engine.Zone, Text: withoutCodes(Question(engine.Zone)), Typed: "Europe/Tallinn or +02:00", layouts: map[string]string{}}
	for _, name := range b.zoneOptions() {
		q.Options = append(q.Options, FileOption{name, name, b.zonePreview(f, name)})
	}
	for _, other := range b.files() {
		if !b.asksZone(other.Name) {
			continue
		}
		q.layouts[other.Name] = engine.LayoutOf(other.Export)
		if other.Name != f.Name {
			q.Alike = append(q.Alike, other.Name)
		}
	}
	q.Others = namedOrCounted(q.Alike) + " " + oneOrMany(len(q.Alike), "names no time zone either.", "name no time zone either.")
	return q
}

// mostZones is how many zones are offered; utc is what +00:00 is called.
const (
	mostZones = 4
	utc       = "UTC"
)

// zoneOptions are the zones in which clocks of this winter may stand: the winter's own, those that other files or loggers
// name, and UTC.
func (b Book) zoneOptions() []string {
	out := []string{}
	add := func(zone string) {
		if zone == "+00:00" {
			zone = utc
		}
		if _, err := winter.Location(zone); err == nil && !slices.Contains(out, zone) {
			out = append(out, zone)
		}
	}
	add(b.doc.Zone)
	add(utc)
	for _, l := range b.Loggers() {
		own, _ := b.doc.Logger(l.At)
		add(own.Zone)
	}
	for _, f := range b.files() {
		if f.Export != nil {
			add(f.Export.Layout.Clock.Zone)
		}
	}
	return out[:min(len(out), mostZones)]
}

// typedZone is the answer that a zone as typed gives.
func (b Book) typedZone(f engine.File, text string) (option, preview, problem string) {
	if _, err := winter.Location(text); err != nil {
		return "", "", Sentenced(err)
	}
	return text, b.zonePreview(f, text), ""
}

// zonePreview is "first reading 12 November 2024 12:00 on the barns' clock; its days are warmest about 14:30".
func (b Book) zonePreview(f engine.File, zone string) string {
	loc, err := winter.Location(zone)
	if err != nil {
		return ""
	}
	for _, s := range f.Export.Series {
		if len(s.FaceMS) == 0 || !usable(string(s.Quantity)) {
			continue
		}
		text := "first reading " + faceWords(b.onBarnsClock(s.FaceMS[0], loc)) + " on the barns' clock"
		if peak, ok := warmestTime(s.FaceMS, s.Val); ok && isHeat(string(s.Quantity)) && b.hangsOutdoors(f.Name) {
			middle := s.FaceMS[len(s.FaceMS)/2]
			peak = middle - middle%dayMS + peak
			text += "; its days are warmest about " + time.UnixMilli(b.onBarnsClock(peak, loc)).UTC().Format("15:04")
		}
		return text
	}
	return "no reading could be used"
}

// onBarnsClock is what a clock in the winter's zone shows when one in another shows a face.
func (b Book) onBarnsClock(face int64, loc *time.Location) int64 {
	at := winter.InstantBefore(face, loc)
	if all := winter.Instants(face, loc); len(all) > 0 {
		at = all[0]
	}
	return winter.Face(at, b.zone())
}

// hangsOutdoors says whether a file is of an outdoor logger.
func (b Book) hangsOutdoors(name string) bool {
	return slices.ContainsFunc(b.doc.Outdoor, func(l winter.Logger) bool { return l.HasFile(name) })
}

const dayMS = 24 * series.HourMS

// warmestTime is the time of day, in milliseconds to a quarter of an hour, about which the days of a record are warmest:
// where the wave of one day that fits it best is highest. ok is false for less than three days, and for days as good as
// even.
func warmestTime(face []int64, val []float64) (ms int64, ok bool) {
	const even, quarter = 0.5, 15 * minuteMS // K, ms
	mean, cos, sin := 0.0, 0.0, 0.0
	for _, v := range val {
		mean += v / float64(len(val))
	}
	for i, at := range face {
		s, c := math.Sincos(2 * math.Pi * float64(at%dayMS) / dayMS)
		cos, sin = cos+(val[i]-mean)*c, sin+(val[i]-mean)*s
	}
	turn := math.Mod(math.Atan2(sin, cos)/(2*math.Pi)+1, 1)
	ms = int64(math.Round(turn*dayMS/quarter)) * quarter % dayMS
	return ms, face[len(face)-1]-face[0] >= 3*dayMS && 2*math.Hypot(cos, sin)/float64(len(val)) > even
}

// byLayout is the edit that gives an answer for the files of each layout that asks.
func (q FileQuestion) byLayout(e winter.SetAnswer) winter.Edit {
	var out winter.SetAnswers
	for _, name := range e.Files {
		layout := q.layouts[name]
		i := slices.IndexFunc(out, func(a winter.SetAnswer) bool { return a.Layout == layout })
		if i < 0 {
			i = len(out)
			out = append(out, winter.SetAnswer{ID: q.ID, Option: e.Option, Layout: layout})
		}
		out[i].Files = append(out[i].Files, name)
	}
	return out
}

// namedOrCounted are some files by their names, the rest as a number.
func namedOrCounted(names []string) string {
	if n := len(names) - mostNamed; n > 0 {
		return fmt.Sprintf("%s and %d more", strings.Join(names[:mostNamed], ", "), n)
	}
	return listed(names)
}
