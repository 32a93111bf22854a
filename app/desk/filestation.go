package desk

import (
	"slices"
	"strconv"
	"strings"

	"thawbook/app/engine"
	"thawbook/app/winter"
)

// station is the question whether outdoor readings are a weather station's; own answers that they are the keeper's.
const station, own = "station", "own"

// stationWords are what a weather station reads besides temperature and humidity and a logger in a barn does not,
// as words of a column's name: two kinds of them tell a station's file.
var stationWords = []struct {
	kind  string
	words []string
}{
	{"wind", []string{"wind", "wdir", "wspd", "gust", "ws", "wd"}},
	{"rain or snow", []string{"precip", "precipitation", "rain", "rainfall", "snow", "snowfall"}},
	{"visibility", []string{"visibility", "visib", "vis"}},
	{"air pressure", []string{"pressure", "press", "pres", "slp", "qnh", "qfe"}},
	{"clouds or sun", []string{"cloud", "clouds", "sunshine", "radiation", "solar", "ghi", "dni", "dhi", "rglob"}},
}

// stationNames are words of a file's name by which it is a weather station's, if it holds some of such readings too.
var stationNames = []string{"station", "weather", "meteo", "wetter", "airport", "synop"}

// stationKinds are the kinds of a weather station's readings a file holds besides, and its name where that is a station's.
func stationKinds(f engine.File) (out []string) {
	if f.Export == nil {
		return nil
	}
	words := wordsOf(f.Export.Layout.Header)
	for _, s := range f.Export.Series {
		words = append(words, wordsOf(s.Column)...)
	}
	for _, k := range stationWords {
		if slices.ContainsFunc(k.words, func(w string) bool { return slices.Contains(words, w) }) {
			out = append(out, k.kind)
		}
	}
	if named := wordsOf(titleOf(f.Name)); slices.ContainsFunc(stationNames, func(w string) bool { return slices.Contains(named, w) }) {
		out = append(out, "a station's name")
	}
	return out
}

// isStation says whether a file looks like a weather station's, or that of several: one that has a column for a
// sensor indoors and one for another outdoors is the keeper's own.
func isStation(f engine.File) bool {
	return len(stationKinds(f)) > 1 && (len(loggerNames(f))+len(furtherTemps(f)) == 1 || byRows(f))
}

// stationOf is the logger's file that looks like a weather station's; ok is false where none does.
func (b Book) stationOf(l winter.Logger) (f engine.File, ok bool) {
	all := b.made().stations
	i := slices.IndexFunc(all, func(f engine.File) bool { return l.HasFile(f.Name) })
	if i < 0 {
		return f, false
	}
	return all[i], true
}

// distanceAsked is the question how far off the weather station stands whose file an outdoor logger seems to be;
// "" where that is said, or that it is none.
func (b Book) distanceAsked(l winter.Logger, at Slot) string {
	if at.List != OutdoorList || l.StationKM != nil {
		return ""
	}
	_, ok := b.stationOf(l)
	said := slices.ContainsFunc(b.doc.Answers, func(a winter.Answer) bool { return a.ID == station && l.HasFile(a.File) })
	if !ok || said {
		return ""
	}
	return "How far from your barns does the station stand, in kilometres?"
}

// SetDistance is the edit that sets down how far off a weather station stands, in kilometres as typed; problem is
// a sentence where it can't be taken so.
func (b Book) SetDistance(at Slot, km string) (edit winter.Edit, problem string) {
	text := b.LoggerText(at)
	if text.KMs = km; strings.TrimSpace(km) == "" {
		return nil, "Write the kilometres, such as 40."
	}
	return b.SetLogger(at, text)
}

// OwnLogger is the edit that says that an outdoor logger is no weather station but the keeper's own.
func (b Book) OwnLogger(at Slot) winter.Edit {
	l, _ := b.doc.Logger(at)
	return winter.SetAnswer{Files: l.Files, ID: station, Option: own}
}

// kilometres are typed kilometres, decimal commas too.
func kilometres(text string) (*float64, error) {
	km, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(text), ",", ".", 1), 64)
	return &km, err
}

// asksDistance says whether a file is that of a weather station whose distance nobody said.
func (b Book) asksDistance(f engine.File) bool {
	for i, l := range b.doc.Outdoor {
		if l.HasFile(f.Name) && b.distanceAsked(l, Slot{List: OutdoorList, Index: i}) != "" {
			return true
		}
	}
	return false
}
