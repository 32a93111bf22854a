package sampledata

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// planOf writes the winter as its keeper would: names, dates, settings and notes, and nothing of the truth that
// he can't know.
func planOf(s *site, barns []*barn, outdoor *logger) []byte {
	p := &planText{zone: s.zone}
	p.line("# The demo winter: two invented barns in a northern lowland. Every figure and name is made up.\n")
	p.line("[winter]\nname = \"Demo winter 2024/25\"\nzone = %q\n", s.name)
	p.line("[tariff]\nper_kwh = 0.17\ncurrency = \"EUR\"\n")
	p.line("[[outdoor]]")
	p.logger(outdoor)
	for _, b := range barns {
		p.barn(b)
	}
	return p.Bytes()
}

// thinPlanOf writes the winter of a keeper who knows of one logger, and no more.
func thinPlanOf(s *site, b *barn) []byte {
	p := &planText{zone: s.zone}
	p.line("# The thin demo winter: an invented shed with one logger and no records. Every figure and name is made up.\n")
	p.line("[winter]\nname = \"Demo winter with one logger\"\nzone = %q\n", s.name)
	p.line("[[barn]]\nname = %q\n", b.name)
	l := b.loggers[0]
	p.line("[[barn.logger]]\nname = %q\nfiles = [%q]\nplace = %q", l.name, l.files[0].name, l.place)
	return p.Bytes()
}

type planText struct {
	bytes.Buffer
	zone zone
}

func (p *planText) line(format string, args ...any) { fmt.Fprintf(p, format+"\n", args...) }

// at is an instant as the keeper writes it.
func (p *planText) at(atMS int64) string { return p.zone.local(atMS, "2006-01-02T15:04:05") }

func (p *planText) barn(b *barn) {
	bees := b.beesTime()
	p.line("[[barn]]\nname = %q\naltitude_m = %g\nvolume_m3 = %g", b.name, b.altitudeM, b.volumeM3)
	p.line("bees_in = %s\nbees_out = %s\n", p.at(bees.from), p.at(bees.to))
	for _, h := range b.headCount {
		p.line("[[barn.heads]]\nat = %s\nchange = %d", p.at(h.atMS), h.change)
		if h.note != "" {
			p.line("note = %q", h.note)
		}
		p.line("")
	}
	for _, st := range b.ladderStages {
		p.stage(st)
	}
	for _, h := range b.heats {
		p.heat(h)
	}
	p.wall(b)
	for _, l := range b.loggers {
		p.loggers(l)
	}
	for _, n := range b.log() {
		p.note(n)
	}
}

// stage writes a stage, once for each of its settings.
func (p *planText) stage(st stage) {
	const flow = "flow_m3h = %.0f\nwatts = %g\n"
	if st.alwaysOn {
		p.line("[[barn.stage]]\nname = %q\nalways_on = true\n"+flow, st.name, st.flowM3S*3600, st.watts)
	}
	for _, s := range st.settings {
		p.line("[[barn.stage]]\nname = %q", st.name)
		if s.fromMS != 0 {
			p.line("from = %s", p.at(s.fromMS))
		}
		p.line("on_c = %g\noff_c = %g\n"+flow, s.onC, s.offC, st.flowM3S*3600, st.watts)
	}
}

func (p *planText) heat(h heatSource) {
	p.line("[[barn.heat]]\nname = %q\nkind = %q\ninto = \"floor\"", h.name, h.kind)
	if h.withStage != "" {
		p.line("with_stage = %q", h.withStage)
	}
	p.line("")
}

func (p *planText) wall(b *barn) {
	p.line("[[barn.surface]]\nname = \"north wall\"\nkind = \"wall\"\nlow = %g\nhigh = %g", b.wallLow, b.wallHi)
	if b.wallLogger != "" {
		p.line("logger = %q", b.wallLogger)
	}
	p.line("")
}

// log is what the keeper wrote down, the alarm's calls and off-times with the rest, in order.
func (b *barn) log() []note {
	all := slices.Clone(b.notes)
	if b.alarm != nil {
		for _, s := range b.alarm.off {
			all = append(all, note{atMS: s.from, kind: "alarm off", untilMS: s.to})
		}
		for _, c := range b.alarm.due {
			if c.loggedMS != 0 {
				all = append(all, note{atMS: c.loggedMS / minuteMS * minuteMS, kind: "alarm call"})
			}
		}
	}
	slices.SortStableFunc(all, func(x, y note) int { return cmp.Compare(x.atMS, y.atMS) })
	return all
}

func (p *planText) note(n note) {
	p.line("[[barn.note]]\nat = %s\nkind = %q", p.at(n.atMS), n.kind)
	if n.untilMS != 0 {
		p.line("until = %s", p.at(n.untilMS))
	}
	if n.value != 0 {
		p.line("value = %g\nunit = %q", n.value, n.unit)
	}
	if n.text != "" {
		p.line("text = %q", n.text)
	}
	p.line("")
}

// loggers writes a logger, once for each stage or pump it records.
func (p *planText) loggers(l *logger) {
	if !l.planned.recordsStages {
		p.line("[[barn.logger]]")
		p.logger(l)
		return
	}
	for _, c := range l.channels {
		p.line("[[barn.logger]]\nname = %q\nchannel = %q\nrecords_stage = %q", l.name+", "+c.title, c.title, c.title)
		p.hangs(l)
	}
}

func (p *planText) logger(l *logger) {
	p.line("name = %q", l.name)
	if l.planned.channel != "" {
		p.line("channel = %q", l.planned.channel)
	}
	p.hangs(l)
}

// hangs writes what a logger's files are, where it hung and how its clock was set.
func (p *planText) hangs(l *logger) {
	var names []string
	for _, f := range l.files {
		names = append(names, fmt.Sprintf("%q", f.name))
	}
	p.line("files = [%s]\nplace = %q", strings.Join(names, ", "), l.place)
	if l.clock.named {
		p.line("zone = %q", l.clock.name)
	}
	p.line("follows_dst = %t", l.clock.followsDST)
	p.watchSaid(l)
	p.line("")
}

// watchSaid writes what the clock of a logger that gains said beside a watch, when it was set and at each read-out.
func (p *planText) watchSaid(l *logger) {
	if l.clock.fast == 0 {
		return
	}
	var pairs []string
	for _, at := range append([]int64{l.firstMS}, l.readOutAt()...) {
		said := l.clock.face(at + l.clock.gainedMS(at-l.firstMS)).Format("2006-01-02T15:04:05")
		pairs = append(pairs, fmt.Sprintf("[%s, %s]", said, p.at(at)))
	}
	p.line("anchors = [%s]", strings.Join(pairs, ", "))
}

// readOutAt is when each of a logger's files was read out: at the end of its part, or of the record.
func (l *logger) readOutAt() (out []int64) {
	for _, f := range l.files {
		out = append(out, min(f.part.to, l.lastMS))
	}
	return out
}
