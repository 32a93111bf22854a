package importers

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Where a row holds several temperatures and humidities, what belongs together is told by what the names
// have in common, then by which columns are neighbours; where neither decides, the keeper is asked.

// The question which humidity belongs to which temperature, and its answers: the first to the first and so on,
// none to any, or the columns of each logger in full, as ParseGroups reads them; that answers a file that asks
// nothing too.
const (
	pairing      = "pairing"
	pairsInOrder = "in_order"
	pairsApart   = "apart"
)

// sameName is a name as it is compared: without regard to case, marks between words and zeros before numbers.
func sameName(name string) string {
	var out []string
	for _, w := range words(name) {
		out = append(out, cmp.Or(strings.TrimLeft(w.low, "0"), w.low))
	}
	return strings.Join(out, " ")
}

// findHumidity takes a column for humidity when it shares its name with a temperature, no word of its own says
// what else it is, and its unit is percent or an H stands for it, or the F of the north, which is no temperature in °F.
func (s *scan) findHumidity() {
	s.findLoneUnit()
	for i := range s.columns {
		c := &s.columns[i]
		if c.quantity != Other || c.told || c.kind != number {
			continue
		}
		if s.isLoneH(c) {
			c.quantity = RelativeHumidity
			continue
		}
		for _, name := range c.namesAsHumidity(s.long) {
			named := values{column: c.column, logger: c.logger}
			named.liken(name)
			temps := s.like(&named, AirTemperature)
			if len(temps) > len(s.like(&named, RelativeHumidity)) && !slices.ContainsFunc(temps, c.isFahrenheitOf) {
				c.quantity = RelativeHumidity
				c.liken(name)
				break
			}
		}
	}
}

// findLoneUnit takes a column called C or F and nothing else for the temperature beside a humidity where no other is one.
func (s *scan) findLoneUnit() {
	var called *values
	humid := false
	for i := range s.columns {
		switch c := &s.columns[i]; {
		case c.quantity == AirTemperature || called != nil && len(c.header) == 1 && c.quantity == Other:
			return
		case c.quantity == RelativeHumidity:
			humid = true
		case c.kind == number && (c.header == "C" || c.header == "F"):
			called = c
		}
	}
	if humid && called != nil {
		called.quantity, called.unit, called.unitFrom = AirTemperature, unitOf(called.header), "header"
		called.liken("")
	}
}

// isLoneH says whether a column is called by one of humidity's initials alone, changes as a humidity does, and stands beside temperatures, no
// humidity and no dew point, which would prove it.
func (s *scan) isLoneH(c *values) bool {
	if w := words(c.name); s.long || len(w) != 1 || !humidityInitials[w[0].low] || c.unit != "" {
		return false
	}
	if p := c.spread(); p.low < 5 || p.high > 100 || p.mid < 30 || p.low == p.high {
		return false
	}
	of := map[Quantity]bool{}
	for i := range s.columns {
		of[s.columns[i].quantity] = true
	}
	return of[AirTemperature] && !of[RelativeHumidity] && !of[DewPoint]
}

// namesAsHumidity are the names a column has if it holds humidity; long says that its key names it.
func (c *values) namesAsHumidity(long bool) (names []string) {
	if c.unit == "percent" && (c.likeness != "" || long || unitOf(c.header) != "" || c.unitFrom == "values") {
		names = append(names, c.likeness)
	}
	w := words(c.name)
	if long {
		w = words(c.variable)
	}
	p := c.spread()
	if n := len(w); n > 0 && w[n-1].low == "h" && (c.unit == "" || c.unit == "percent") && p.low >= 5 && p.high <= 110 {
		names = append(names, leftOver(w[:n-1], make([]bool, n-1)))
	} else if n > 1 && w[0].low == "h" && (c.unit == "" || c.unit == "percent") && p.low >= 5 && p.high <= 110 {
		names = append(names, leftOver(w[1:], make([]bool, n-1)))
	} else if n > 1 && w[0].low == "f" && c.unit == "" && p.isHumid() && p.high-p.low >= leastDamper {
		names = append(names, leftOver(w[1:], make([]bool, n-1)))
	}
	return names
}

// leastDamper is how much the humidity of air changes at least, in percent, where the frequency of the mains does not.
// Common practice, no source.
const leastDamper = 3

// isFahrenheitOf says whether a column prints another's temperatures in °F.
func (c *values) isFahrenheitOf(t *values) bool {
	const offF = 1
	same, both := 0, 0
	for i := range min(len(c.val), len(t.val), provingRows) {
		if f, air := c.val[i], t.val[i]; f == f && air == air {
			both++
			same += one(math.Abs(1.8*air+32-f) <= offF)
		}
	}
	return 2*same > both
}

// like are the columns of a quantity that bear a column's name and are of its logger.
func (s *scan) like(c *values, q Quantity) (out []*values) {
	for i := range s.columns {
		if k := &s.columns[i]; k.quantity == q && k.logger == c.logger && k.same == c.same {
			out = append(out, k)
		}
	}
	return out
}

// pair gives the columns of each pair of temperature and humidity a logger of their own where the names alone
// don't, and returns the question that is left. base is what the loggers of nameless pairs are called.
func (s *scan) pair(base string, answers Answers) []Question {
	if s.keyed != nil {
		return nil
	}
	s.pairAsSaid(base, answers)
	s.placeElsewhere()
	var temps, hums []*values // without a partner by name
	open := false
	for _, c := range s.inOrder() {
		t, h := s.like(c, AirTemperature), s.like(c, RelativeHumidity)
		switch {
		case c.logger != "":
		case len(t) > 0 && len(h) > 0 && len(t)+len(h) > 2:
			open = !s.pairAlike(cmp.Or(c.likeness, base), t, h, answers) || open
		case len(h) == 0 && c.quantity == AirTemperature:
			temps = append(temps, c)
		case len(t) == 0 && c.quantity == RelativeHumidity:
			hums = append(hums, c)
		}
	}
	temps, hums = pairRelated(temps, hums)
	open = !pairOthers(base, temps, hums, answers) || open
	if open && answers[pairing] == "" {
		return []Question{{ID: pairing, Options: []string{pairsInOrder, pairsApart}}}
	}
	return nil
}

// placeElsewhere gives temperatures of other places loggers of their own that stand before the one beside which a humidity
// hangs: of a logger's temperatures the first is taken with its humidity.
func (s *scan) placeElsewhere() {
	bare := values{}
	plain := slices.ContainsFunc(s.like(&bare, AirTemperature), func(c *values) bool { return c.statistic == reading }) && len(s.like(&bare, RelativeHumidity)) > 0
	within := slices.ContainsFunc(s.inOrder(), func(c *values) bool { return c.quantity == RelativeHumidity && !c.isOutside() })
	var before []*values
	for _, c := range s.inOrder() {
		switch {
		case c.quantity != AirTemperature || c.logger != "" || len(s.like(c, RelativeHumidity)) > 0 && c.same != "":
		case within && c.isOutside(), plain && c.same != "":
			before = append(before, c)
		default:
			for _, k := range before {
				k.logger = joined(s.title, cmp.Or(k.likeness, k.name))
			}
			return
		}
	}
}

// outsideNames are the stems of names of places out of doors.
var outsideNames = []string{"out", "outside*", "outdoor*", "outs", "aussen*", "draussen", "ute*", "utom*", "ude*", "ulko*", "ulos", "buiten*", "exterior*", "exterieur*", "esterno", "esterna", "externa", "fuera", "afuera", "zewn*", "venku", "venkov*", "kulso*", "kint*", "valis*", "улич*", "наруж*", "зовн*", "*外気*", "*室外*", "*屋外*"}

// isOutside says whether a column is named as out of doors.
func (c *values) isOutside() bool { return anyPhrase(outsideNames, words(c.name)) }

// inOrder are the columns that are paired.
func (s *scan) inOrder() (out []*values) {
	for i := range s.columns {
		if c := &s.columns[i]; c.quantity == AirTemperature || c.quantity == RelativeHumidity {
			out = append(out, c)
		}
	}
	return out
}

// pairAlike pairs columns that all have one name, and gives each pair the columns of that name that follow it.
// It says whether that is settled; with as many of one kind as of the other it is not when they don't alternate.
func (s *scan) pairAlike(name string, temps, hums []*values, answers Answers) bool {
	if len(temps) != len(hums) {
		return true
	}
	if !alternate(temps, hums) && answers[pairing] != pairsInOrder {
		keepApart(name, temps, hums, answers)
		return false
	}
	for i := range s.columns {
		c := &s.columns[i]
		if c.quantity == Other || c.same != temps[0].same {
			continue
		}
		c.logger = joined(name, strconv.Itoa(1+pairBefore(c, temps, hums)))
	}
	return true
}

// pairBefore is the pair a column belongs to: its own, else the last one that begins before it.
func pairBefore(c *values, temps, hums []*values) (at int) {
	for i := range temps {
		if c == temps[i] || c == hums[i] {
			return i
		}
		if min(temps[i].index, hums[i].index) < c.index {
			at = i
		}
	}
	return at
}

// alternate says whether the columns come by turns, as many of one kind as of the other.
func alternate(temps, hums []*values) bool {
	all := slices.Concat(temps, hums)
	slices.SortFunc(all, func(a, b *values) int { return cmp.Compare(a.index, b.index) })
	for i := 0; i < len(all); i++ {
		if all[i].quantity != all[i%2].quantity || all[0].quantity == all[len(all)-1].quantity {
			return false
		}
	}
	return len(temps) == len(hums)
}

// pairRelated pairs columns each of whose names is part of the other's, and of no third one's, and returns
// those that are left.
func pairRelated(temps, hums []*values) (leftTemps, leftHums []*values) {
	for _, t := range temps {
		mine := related(t, hums)
		if len(mine) == 1 && len(related(mine[0], temps)) == 1 {
			h := mine[0]
			t.logger = t.likeness
			if len(h.likeness) > len(t.likeness) {
				t.logger = h.likeness
			}
			h.logger = t.logger
		}
	}
	single := func(c *values) bool { return c.logger != "" }
	return slices.DeleteFunc(slices.Clone(temps), single), slices.DeleteFunc(slices.Clone(hums), single)
}

// related are the columns whose name holds all words of a column's, or the other way round; a word may be
// shortened.
func related(c *values, among []*values) (out []*values) {
	mine := strings.Fields(c.same)
	for _, k := range among {
		theirs := strings.Fields(k.same)
		if len(mine) > 0 && len(theirs) > 0 && (holdsAll(mine, theirs) || holdsAll(theirs, mine)) {
			out = append(out, k)
		}
	}
	return out
}

// holdsAll says whether each word begins one of the name's, or is begun by one.
func holdsAll(name, words []string) bool {
	for _, w := range words {
		if !slices.ContainsFunc(name, func(n string) bool {
			return n == w || !isDigit(w[0]) && !isDigit(n[0]) && (strings.HasPrefix(n, w) || strings.HasPrefix(w, n))
		}) {
			return false
		}
	}
	return true
}

// pairOthers pairs columns whose names have nothing in common with their neighbours, and says whether that
// is settled. One of a kind belongs to all of the other kind.
func pairOthers(base string, temps, hums []*values, answers Answers) bool {
	if len(temps) < 2 || len(hums) < 2 {
		return true
	}
	if !alternate(temps, hums) && answers[pairing] != pairsInOrder {
		keepApart(base, temps, hums, answers)
		return false
	}
	named := map[string]bool{}
	for i := range min(len(temps), len(hums)) {
		logger := cmp.Or(temps[i].likeness, hums[i].likeness, base)
		if named[logger] || logger == base {
			logger = joined(logger, strconv.Itoa(i+1))
		}
		named[logger] = true
		temps[i].logger, hums[i].logger = logger, logger
	}
	return true
}

// keepApart gives each column a logger of its own when that is what the keeper says.
func keepApart(base string, temps, hums []*values, answers Answers) {
	if answers[pairing] != pairsApart {
		return
	}
	for _, c := range slices.Concat(temps, hums) {
		c.logger = joined(base, c.header)
	}
}

// tellKeysApart gives the temperatures of the air that one key has under several names loggers of their own, called by
// both; what else bears the name of one goes with it.
func (s *scan) tellKeysApart() {
	if s.keyed == nil {
		return
	}
	names := map[string]map[string]bool{}
	for _, c := range s.inOrder() {
		if names[c.logger] == nil {
			names[c.logger] = map[string]bool{}
		}
		if c.quantity == AirTemperature {
			names[c.logger][c.same] = true
		}
	}
	for i := range s.columns {
		c := &s.columns[i]
		if of := names[c.logger]; len(of) > 1 && of[c.same] && c.quantity != Other {
			c.logger = joined(c.logger, c.likeness)
		}
	}
}

// tellApart gives columns that measure the same under the same name loggers of their own: called as what stands
// over them, or else numbered.
func (s *scan) tellApart(base string) {
	if s.keyed != nil {
		return
	}
	alike := map[string][]*values{}
	for i := range s.columns {
		if c := &s.columns[i]; c.quantity != Other && c.logger == "" && c.header != "" {
			key := string(c.quantity) + " " + c.header
			alike[key] = append(alike[key], c)
		}
	}
	for _, columns := range alike {
		if len(columns) < 2 {
			continue
		}
		over := map[string]bool{}
		for _, c := range columns {
			over[c.same] = true
		}
		for i, c := range columns {
			if c.logger = joined(s.title, c.likeness); len(over) < len(columns) || c.likeness == "" {
				c.logger = joined(base, strconv.Itoa(i+1))
			}
		}
	}
}
