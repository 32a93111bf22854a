package sampledata

import (
	"fmt"
	"strconv"
	"time"
)

// layout is a way to write a logger's file. All five are invented; each is a row of the table below.
type layout struct {
	head       func(l *logger) string
	stamp      string // of package time; it may span two columns
	delimiter  byte
	decimal    byte
	fahrenheit bool
	index      bool // a running number in front
	missing    [2]string
}

var (
	// isoCommas: UTF-8, commas, ISO time, units in brackets in the header.
	isoCommas = &layout{head: isoHead, stamp: "2006-01-02T15:04:05", delimiter: ',', decimal: '.'}

	// dottedSemicolons: UTF-8 with a byte order mark, a title and key–value lines, semicolons, decimal commas,
	// dd.mm.yyyy.
	dottedSemicolons = &layout{head: dottedHead, stamp: "02.01.2006 15:04", delimiter: ';', decimal: ','}

	// americanTabs: UTF-8, tabs, a quoted header, an index column, month before day, AM and PM, °F.
	americanTabs = &layout{head: americanHead, stamp: "01/02/2006 03:04:05 PM", delimiter: '\t', decimal: '.', fahrenheit: true, index: true}

	// twoColumnClock: Windows-1252, date and time in two columns, a row of units, missing words.
	twoColumnClock = &layout{head: twoColumnHead, stamp: "2006-01-02,15:04", delimiter: ',', decimal: '.', missing: [2]string{"n/a", "---"}}

	// slashedCommas: UTF-8, commas, month before day without leading zeros, 24 hours, °F.
	slashedCommas = &layout{head: slashedHead, stamp: "1/2/2006 15:04", delimiter: ',', decimal: '.', fahrenheit: true}
)

func isoHead(l *logger) string {
	units := map[quantity]string{temperature: " [°C]", surface: " [°C]", humidity: " [%]"}
	line := "Time"
	for _, c := range l.channels {
		line += "," + c.title + units[c.quantity]
	}
	return line + "\n"
}

func dottedHead(l *logger) string {
	units := map[quantity]string{temperature: " (°C)", surface: " (°C)", humidity: " (%)"}
	text := "\ufeffMeasurement report\r\n"
	text += fmt.Sprintf("Logger;%s\r\nInterval;%d min\r\nChannels;%d\r\n\r\n", l.name, l.everyMS/minuteMS, len(l.channels))
	text += "Date/time"
	for _, c := range l.channels {
		text += ";" + c.title + units[c.quantity]
	}
	return text + "\r\n"
}

func slashedHead(l *logger) string {
	units := map[quantity]string{temperature: " (°F)", humidity: " (%)"}
	line := "Date and time"
	for _, c := range l.channels {
		line += "," + c.title + units[c.quantity]
	}
	return line + "\r\n"
}

func americanHead(l *logger) string {
	units := map[quantity]string{temperature: " in °F", surface: " in °F", humidity: " in %"}
	line := "\"Row\"\t\"Local date and time\""
	for _, c := range l.channels {
		line += "\t\"" + c.title + units[c.quantity] + "\""
	}
	return line + "\r\n"
}

func twoColumnHead(l *logger) string {
	units := map[quantity]string{temperature: "\xb0C", surface: "\xb0C", humidity: "%"}
	names, row := "Date,Time", ","
	for _, c := range l.channels {
		names, row = names+","+c.title, row+","+units[c.quantity]
	}
	return names + "\r\n" + row + "\r\n"
}

// row writes one line to every file that holds it.
func (l *logger) row(atMS int64, face time.Time) {
	line := face.AppendFormat(nil, l.layout.stamp)
	for _, c := range l.channels {
		line = l.value(append(line, l.layout.delimiter), c, atMS)
	}
	if l.layout != isoCommas {
		line = append(line, '\r')
	}
	line = append(line, '\n')
	l.rows++
	for _, f := range l.files {
		if f.holds(atMS) {
			f.row(l, atMS, line)
		}
	}
}

// row adds a line, the head before the first.
func (f *file) row(l *logger, atMS int64, line []byte) {
	if f.rows == 0 {
		f.text, f.from = append(f.text, l.layout.head(l)...), atMS
	}
	f.rows, f.to = f.rows+1, atMS
	if l.layout.index {
		f.text = append(strconv.AppendInt(f.text, int64(f.rows), 10), l.layout.delimiter)
	}
	f.text = append(f.text, line...)
}

// value writes one reading, or the word that stands for none.
func (l *logger) value(line []byte, c *channel, atMS int64) []byte {
	if c.quantity == state01 {
		return append(line, word(c.felt)...)
	}
	v := c.reading(l.rng, atMS, l.layout.fahrenheit)
	if l.loss > 0 && l.rng.Float64() < l.loss {
		c.missing++
		return append(line, l.layout.missing[c.missing%2]...)
	}
	at := len(line)
	line = strconv.AppendFloat(line, v, 'f', c.decimals, 64)
	if l.layout.decimal != '.' {
		swap(line[at:], '.', l.layout.decimal)
	}
	return line
}

func word(state float64) string {
	if state > 0.5 {
		return "on"
	}
	return "off"
}

func swap(text []byte, old, new byte) {
	for i, b := range text {
		if b == old {
			text[i] = new
		}
	}
}
