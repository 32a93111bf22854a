package sampledata

import (
	"bytes"
	"fmt"
)

// planOf writes the winter as its keeper would: names, dates, settings and notes, and nothing of the truth that
// he can't know.
func planOf(barns []*barn, outdoor *logger) []byte {
	p := &planText{}
	p.line("# The demo winter: two invented barns in a northern lowland. Every figure and name is made up.\n")
	p.line("[winter]\nname = \"Demo winter 2024/25\"\nzone = \"Europe/Tallinn\"\n")
	p.line("[[outdoor]]")
	p.logger(outdoor)
	for _, b := range barns {
		p.barn(b)
	}
	return p.Bytes()
}

type planText struct{ bytes.Buffer }

func (p *planText) line(format string, args ...any) { fmt.Fprintf(p, format+"\n", args...) }

const planTime = "2006-01-02T15:04:05"

func (p *planText) barn(b *barn) {
	bees := b.beesTime()
	p.line("[[barn]]\nname = %q\naltitude_m = %g\nvolume_m3 = %g", b.name, b.altitudeM, b.volumeM3)
	p.line("bees_in = %s\nbees_out = %s\n", local(bees.from, planTime), local(bees.to, planTime))
	for _, h := range b.headCount {
		p.line("[[barn.heads]]\nat = %s\nchange = %d", local(h.atMS, planTime), h.change)
		if h.note != "" {
			p.line("note = %q", h.note)
		}
		p.line("")
	}
	for _, st := range b.ladderStages {
		p.stage(st)
	}
	p.wall(b)
	for _, l := range b.loggers {
		p.loggers(l)
	}
	for _, n := range b.notes {
		p.line("[[barn.note]]\nat = %s\nkind = %q", local(n.atMS, planTime), n.kind)
		if n.value != 0 {
			p.line("value = %g", n.value)
		}
		p.line("text = %q\n", n.text)
	}
}

func (p *planText) stage(st stage) {
	p.line("[[barn.stage]]\nname = %q", st.name)
	if st.alwaysOn {
		p.line("always_on = true")
	} else {
		p.line("on_c = %g\noff_c = %g", st.onC, st.offC)
	}
	p.line("flow_m3h = %.0f\nwatts = %g\n", st.flowM3S*3600, st.watts)
}

func (p *planText) wall(b *barn) {
	p.line("[[barn.surface]]\nname = \"north wall\"\nkind = \"wall\"\nlow = %g\nhigh = %g", b.wallLow, b.wallHi)
	if b.wallLogger != "" {
		p.line("logger = %q", b.wallLogger)
	}
	p.line("")
}

// loggers writes a logger, once for each stage it records.
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

// hangs writes what a logger's file is, where it hung and how its clock was set.
func (p *planText) hangs(l *logger) {
	p.line("files = [%q]\nplace = %q", l.file, l.place)
	if l.clock.zone != "" {
		p.line("zone = %q", l.clock.zone)
	}
	p.line("follows_dst = %t\n", l.clock.followsDST)
}
