package importers

import (
	"cmp"
	"slices"
	"strings"
)

// unitSpellings are the ways units are printed, without blanks and in lower case, and their name. The
// degree sign may be a masculine ordinal, a ring, or lost in a wrong encoding.
var unitSpellings = []struct {
	unit      string
	spellings []string
}{
	{"degC", []string{"°c", "ºc", "˚c", "c°", "℃", "degc", "deg.c", "degreesc", "degreec", "c", "cel", "celsius", "centigrade", "degcelsius", "degreescelsius", "°celsius", "gradc", "gradcelsius", "â°c", "øc", "¡c", "¡æ", "ï¿½c", "°с", "\ufffdc", "?c", "*c", "oc", "gradencelsius", "gradicelsius", "gradoscelsius", "grauscelsius", "degréscelsius", "gradercelsius", "celcius", "degcelcius", "degreescelcius"}},
	{"degF", []string{"°f", "ºf", "˚f", "f°", "℉", "degf", "deg.f", "degreesf", "degreef", "f", "fahrenheit", "degfahrenheit", "degreesfahrenheit", "°fahrenheit", "â°f", "øf", "¡f", "ï¿½f", "\ufffdf", "?f", "*f", "of"}},
	{"K", []string{"k", "kelvin", "°k", "degk"}},
	{"%RH", []string{"%rh", "%r.h.", "%rf", "%hr", "%rel.", "%relh", "%r.f.", "%ur", "rh%", "rf%", "hr%"}},
	{"percent", []string{"%", "％", "percent", "percents", "percentage", "pct", "prozent", "procent", "pourcent", "protsent"}},
	{"fraction", []string{"fraction", "frac", "0-1", "0..1", "0…1", "0–1"}},
	{"ppm", []string{"ppm", "ppmv"}},
	{"lux", []string{"lux", "lx"}},
	{"g/m3", []string{"g/m3", "g/m³", "g/m^3", "gm-3", "gm³", "g.m-3"}},
	{"g/kg", []string{"g/kg"}},
	{"Pa", []string{"pa"}},
	{"hPa", []string{"hpa", "mbar", "mb"}},
	{"kPa", []string{"kpa"}},
	{"A", []string{"a", "amp", "amps", "ampere"}},
	{"mA", []string{"ma"}},
	{"W", []string{"w", "watt", "watts"}},
	{"kW", []string{"kw"}},
	{"kWh", []string{"kwh"}},
	{"Hz", []string{"hz", "hertz"}},
	{"rpm", []string{"rpm", "r/min", "1/min", "u/min", "rev/min"}},
	{"V", []string{"v", "volt", "volts"}},
	{"mV", []string{"mv"}},
	{"m/s", []string{"m/s"}},
	{"km/h", []string{"km/h", "kph", "km/hr", "kmh", "kmph"}},
	{"mm", []string{"mm"}},
	{"km", []string{"km"}},
	{"W/m2", []string{"w/m2", "w/m²", "w/m^2", "wm-2"}},
}

// unitOf recognises a unit, with or without blanks and low lines in it; an empty string means it is none.
func unitOf(s string) string {
	s = strings.ToLower(strings.Join(strings.Fields(strings.ReplaceAll(s, "_", " ")), ""))
	for _, row := range unitSpellings {
		for _, spelling := range row.spellings {
			if s == spelling {
				return row.unit
			}
		}
	}
	return ""
}

// wordUnits are units that may be the last word of a name without any mark between (temp_c, humidityPct).
var wordUnits = map[string]string{
	"c": "degC", "degc": "degC", "celsius": "degC", "f": "degF", "degf": "degF", "fahrenheit": "degF", "k": "K", "kelvin": "K",
	"pct": "percent", "percent": "percent", "percentage": "percent", "ppm": "ppm", "lux": "lux", "lx": "lux", "rpm": "rpm", "ma": "mA", "kw": "kW", "kwh": "kWh", "hpa": "hPa",
	"tc": "degC", "tf": "degF", "tmpc": "degC", "tempc": "degC", "dwpc": "degC", "tmpf": "degF", "tempf": "degF", "dwpf": "degF",
}

// closers are the brackets a unit stands in, by what closes them.
var closers = map[byte]byte{')': '(', ']': '[', '}': '{'}

// cutUnit takes the unit off a header: in brackets anywhere, behind a comma or slash, behind a blank at the
// end, or as the last word. name is the header without it; a header that is nothing but a unit keeps it.
func cutUnit(header string) (name, unit string) {
	if whole := unitOf(header); whole != "" && (strings.ContainsAny(header, "°%℃℉") || unitFits(AirTemperature, whole) && len(header) >= shortestWord || whole == "percent") {
		return header, whole
	}
	if name, inner, found := cutBrackets(header); found && name != "" {
		if unit = unitOf(strings.TrimPrefix(inner, "in ")); unit != "" && !isPlaceLetter(name, inner, unit) {
			return name, unit
		}
		if looksLikeUnit(inner) {
			return name, inner
		}
		if said, unit := cutUnit(name); unit != "" {
			return said + " " + inner, unit
		}
		if said, last, parted := cutLast(inner, ",;"); parted && unitOf(last) != "" {
			return name + " " + said, unitOf(last)
		}
	}
	for _, mark := range []string{",", "/", " "} {
		at := strings.LastIndex(header, mark)
		if at <= 0 {
			continue
		}
		name = withoutConnector(strings.TrimRight(header[:at], " ,/-:"))
		if unit = unitOf(header[at+1:]); unit != "" && !isInitial(name, header[at+1:]) {
			return name, unit
		}
	}
	for _, sign := range []string{"%", "°C", "°F"} {
		if name := strings.TrimSuffix(strings.TrimPrefix(header, sign), sign); name != header {
			return strings.TrimSpace(name), unitOf(sign)
		}
	}
	if name, unit := signWithin(header); unit != "" {
		return name, unit
	}
	return header, cmp.Or(lastWordUnit(words(header)), degreesWithin(header))
}

// signWithin is the unit that stands by itself with its sign within a name, and the name without it: Temp °F - north.
func signWithin(header string) (name, unit string) {
	parts := strings.Fields(header)
	for i, p := range parts {
		if p = strings.Trim(p, ",;:"); strings.ContainsAny(p, "°º℃℉%") && unitOf(p) != "" && i > 0 {
			return strings.Join(slices.Concat(parts[:i], parts[i+1:]), " "), unitOf(p)
		}
	}
	return "", ""
}

// isPlaceLetter says whether a letter in brackets behind a name of temperature or humidity tells loggers apart: Temp (A).
func isPlaceLetter(name, inner, unit string) bool {
	q, _ := quantityOf(words(name), "")
	return len(inner) == 1 && inner != "%" && (isTemperature(q) || q == RelativeHumidity) && !unitFits(q, unit)
}

// degreesWithin is the unit that a name says in two words wherever they stand: air deg F hourly.
func degreesWithin(header string) string {
	w := words(header)
	for i := 1; i < len(w); i++ {
		if unit := unitOf(w[i-1].low + w[i].low); hasAnyPrefix(w[i-1].low, []string{"deg", "grad"}) && unit != "" && unitFits(AirTemperature, unit) {
			return unit
		}
	}
	return ""
}

// cutLast parts a text at the last of some marks.
func cutLast(s, marks string) (before, behind string, found bool) {
	at := strings.LastIndexAny(s, marks)
	if at < 1 {
		return s, "", false
	}
	return strings.TrimSpace(s[:at]), strings.TrimSpace(s[at+1:]), true
}

// connectors are words that only lead from a name to its unit, as in "Air in °C".
var connectors = []string{" in", " as"}

func withoutConnector(name string) string {
	for _, c := range connectors {
		if len(name) > len(c) && strings.EqualFold(name[len(name)-len(c):], c) {
			return strings.TrimRight(name[:len(name)-len(c)], " ,/-:")
		}
	}
	return name
}

// isInitial says whether a single letter behind a name tells loggers apart (Shed C) rather than naming the
// unit of a temperature (temp C).
func isInitial(name, letter string) bool {
	q, _ := quantityOf(words(name), "")
	_, bound := quantityUnitSets[q]
	return len(strings.TrimSpace(letter)) == 1 && letter != "%" && !(bound && unitFits(q, unitOf(letter)))
}

// lastWordUnit is the unit a name ends in.
func lastWordUnit(w []nameWord) string {
	if len(w) == 0 || len(w) == 1 && len(w[0].low) < 4 {
		return ""
	}
	last := w[len(w)-1].low
	if n := len(w); n > 2 && w[n-1].joined && !w[n-2].joined { // fan_mA
		if unit := wordUnits[w[n-2].low+last]; unit != "" {
			return unit
		}
	}
	if q, _ := quantityOf(w[:len(w)-1], ""); len(last) == 1 && !isTemperature(q) {
		return ""
	}
	return wordUnits[last]
}

// unitBeforeStatistic is the unit that stands before the word for a statistic at the end of a name.
func unitBeforeStatistic(header string) string {
	w := words(header)
	if n := len(withoutStatistics(w)); n < len(w) && n > 1 {
		return lastWordUnit(w[:n])
	}
	return ""
}

// withoutStatistics is a name without the words for a statistic at its end: Temp_C_Avg.
func withoutStatistics(name []nameWord) []nameWord {
	for n := len(name); n > 1; n-- {
		if is, perhaps := statisticOf(name[n-1:n], []bool{false}); is == reading || perhaps {
			return name[:n]
		}
	}
	return name
}

// cutBrackets takes the last pair of brackets out of a header.
func cutBrackets(header string) (name, inner string, found bool) {
	for end := len(header) - 1; end > 0; end-- {
		opener, ok := closers[header[end]]
		if !ok {
			continue
		}
		if start := strings.LastIndexByte(header[:end], opener); start >= 0 {
			name = strings.TrimSpace(header[:start]) + " " + strings.TrimSpace(header[end+1:])
			return strings.Trim(name, " ,"), strings.TrimSpace(header[start+1 : end]), true
		}
	}
	return header, "", false
}

// powers end the names of units written without a stroke (ug m-3).
var powers = []string{"m-3", "m-2", "m-1", "s-1", "h-1"}

// looksLikeUnit says whether an unknown text in brackets is a unit rather than a name: it has a mark that
// only units have.
func looksLikeUnit(s string) bool {
	if off, _, parted := strings.Cut(s, "/"); parted && isStateWord(off) {
		return false
	}
	return len(s) <= 10 && (!strings.Contains(s, " ") && strings.ContainsAny(s, "/%°²³^µ") || hasAnySuffix(s, powers))
}

func hasAnySuffix(s string, suffixes []string) bool {
	return slices.ContainsFunc(suffixes, func(p string) bool { return strings.HasSuffix(s, p) })
}

// toCelsius takes a column of temperatures to °C.
func (c *values) toCelsius(unit string) {
	toCelsius(c.val, unit)
	c.changed()
}

// zeroC is 0 °C in kelvin, by definition.
const zeroC = 273.15

// toCelsius converts temperatures in place.
func toCelsius(val []float64, unit string) {
	switch unit {
	case "degF":
		for i, v := range val {
			val[i] = (v - 32) / 1.8
		}
	case "K":
		for i, v := range val {
			val[i] = v - zeroC
		}
	}
}
