package importers

import (
	"strings"

	"thawbook/analysis/series"
)

// statePairs are the words for off and on, or closed and open, lower case.
var statePairs = []struct{ off, on string }{
	{"off", "on"}, {"closed", "open"}, {"close", "opened"}, {"stop", "run"}, {"stopped", "running"}, {"stop", "start"}, {"stopped", "started"},
	{"false", "true"}, {"f", "t"}, {"no", "yes"}, {"n", "y"}, {"inactive", "active"}, {"idle", "active"}, {"disabled", "enabled"}, {"aus", "ein"}, {"aus", "an"}, {"zu", "auf"},
	{"geschlossen", "offen"}, {"nein", "ja"}, {"av", "p\u00e5"}, {"av", "p\xe5"}, {"fra", "til"}, {"pois", "p\u00e4\u00e4ll\u00e4"}, {"pois", "p\xe4\xe4ll\xe4"},
	{"kinni", "lahti"}, {"v\u00e4ljas", "sees"}, {"v\xe4ljas", "sees"}, {"arr\u00eat", "marche"}, {"arr\xeat", "marche"}, {"ferm\u00e9", "ouvert"}, {"ferm\xe9", "ouvert"},
	{"apagado", "encendido"}, {"cerrado", "abierto"}, {"uit", "aan"}, {"dicht", "open"}, {"spento", "acceso"}, {"vypnuto", "zapnuto"},
	{"normal", "alarm"}, {"cleared", "raised"}, {"clear", "alarm"}, {"ended", "started"}, {"dark", "lit"}, {"dark", "light"}, {"clear", "detected"}, {"idle", "heating"}, {"idle", "cooling"}, {"idle", "running"}, {"geschlossen", "ge\u00f6ffnet"}, {"geschlossen", "ge\xf6ffnet"}, {"geschlossen", "geoeffnet"}, {"night", "day"}, {"dunkel", "hell"},
	{"ok", "alarm"}, {"deactivated", "activated"}, {"de-energized", "energized"}, {"unoccupied", "occupied"}, {"rtn", "alm"}, {"gone", "came"}, {"geht", "kommt"}, {"gegangen", "gekommen"}, {"disattivato", "attivato"}, {"desactivado", "activado"}, {"end", "begin"}, {"end", "start"}, {"ende", "beginn"}, {"ende", "anfang"}, {"gestoppt", "gestartet"}, {"fin", "d\u00e9but"}, {"fin", "d\xe9but"},
	{"arret", "marche"}, {"ferme", "ouvert"}, {"ferm\u00e9e", "ouverte"}, {"ferm\xe9e", "ouverte"}, {"desligado", "ligado"}, {"fechado", "aberto"}, {"chiuso", "aperto"},
	{"st\u00e4ngd", "\u00f6ppen"}, {"st\xe4ngd", "\xf6ppen"}, {"lukket", "\u00e5pen"}, {"lukket", "\xe5pen"}, {"kiinni", "auki"}, {"выкл", "вкл"}, {"zamkni\u0119te", "otwarte"},
	{"wyłączony", "włączony"}, {"wyłączona", "włączona"}, {"wyłączone", "włączone"}, {"wył", "wł"}, {"wył.", "wł."}, {"zamknięty", "otwarty"}, {"zamknięta", "otwarta"}, {"vypnutý", "zapnutý"}, {"zavřeno", "otevřeno"}, {"zatvorené", "otvorené"},
	{"выключен", "включен"}, {"выключено", "включено"}, {"закрыто", "открыто"}, {"закрыта", "открыта"}, {"вимкнено", "увімкнено"}, {"закрито", "відкрито"}, {"isključeno", "uključeno"}, {"zatvoreno", "otvoreno"}, {"oprit", "pornit"}, {"închis", "deschis"}, {"zárva", "nyitva"}, {"kapalı", "açık"},
	{"slukket", "tændt"}, {"关", "开"}, {"关闭", "打开"}, {"关闭", "开启"}, {"關", "開"}, {"關閉", "開啟"}, {"停止", "运行"}, {"停止", "運転"}, {"閉", "開"}, {"オフ", "オン"}, {"꺼짐", "켜짐"}, {"닫힘", "열림"}, {"정지", "운전"},
}

// stateWords is statePairs by word.
var stateWords = func() map[string]float64 {
	m := map[string]float64{}
	for _, p := range statePairs {
		m[p.off], m[p.on] = 0, 1
	}
	return m
}()

// formerNames and newNames are the stems of columns that hold a state as it was before a change, and as it is from then.
var (
	formerNames = []string{"from", "old*", "prev*", "before", "von", "alt*", "vorher*", "fra", "gammel*", "ancien*", "avant", "anterior*", "edell*"}
	newNames    = []string{"to", "new*", "after", "nach*", "neu*", "til", "ny*", "nouv*", "nuev*", "nov*", "uusi*"}
)

// dropFormerStates leaves the state before a change out where the one after it stands beside.
func (l *layout) dropFormerStates() {
	former, later := map[int]bool{}, false
	for _, c := range l.columns {
		w := words(c.header)
		later = later || c.kind == state && anyPhrase(newNames, w)
		former[c.index] = c.kind == state && anyPhrase(formerNames, w)
	}
	if later {
		l.drop(former)
	}
}

// fillStates takes what is not printed for off, or closed, in columns that print nothing but on, or open.
func (s *scan) fillStates() {
	for i := range s.columns {
		c := &s.columns[i]
		if c.kind != state || !c.printsOnAlone() {
			continue
		}
		for at, v := range c.val {
			if v != v && !isUnreadable(v) {
				c.val[at] = 0
				c.changed()
				s.notes.add(series.Remark{Code: RemarkBlankOff, Line: s.lineOf(c.row(at)), Column: c.index + 1, Args: []string{c.header}})
			}
		}
	}
}

// printsOnAlone says whether a column holds some states, all of them on or open.
func (c *values) printsOnAlone() bool {
	on := false
	for _, v := range c.val {
		if v == 0 {
			return false
		}
		on = on || v == 1
	}
	return on
}

// isStateWord says whether a word is one for on or off.
func isStateWord(word string) bool {
	_, ok := stateWords[strings.ToLower(word)]
	return ok
}

// parseState reads a word for on or off, or a 0 or 1.
func parseState(cell []byte) (v float64, ok bool) {
	var room [16]byte
	if len(cell) > len(room) || len(cell) == 0 {
		return 0, false
	}
	if len(cell) == 1 && (cell[0] == '0' || cell[0] == '1') {
		return float64(cell[0] - '0'), true
	}
	v, ok = stateWords[string(lowerASCII(room[:0], cell))]
	return v, ok
}
