package ui

import (
	"sort"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// prose is running text without padding. It breaks at plain spaces only, so that a number stays with its
// unit; with cut set it stays on one line and ends in an ellipsis where there is no room.
type prose struct {
	widget.BaseWidget
	text  string
	size  fyne.ThemeSizeName
	ink   fyne.ThemeColorName
	bold  bool
	cut   bool
	align fyne.TextAlign
	lines []*canvas.Text
	last  measured // the text as it was last measured
}

// measured is what of a text does not hang on the room there is: its widest word and the height of a line.
type measured struct {
	text         string
	size         float32
	widest, high float32
}

func newProse(text string, size fyne.ThemeSizeName, ink fyne.ThemeColorName, bold bool) *prose {
	p := &prose{text: text, size: size, ink: ink, bold: bold}
	p.ExtendBaseWidget(p)
	return p
}

func sentence(text string) *prose {
	return newProse(text, sizeSentence, theme.ColorNameForeground, true)
}

func body(text string) *prose {
	return newProse(text, theme.SizeNameText, theme.ColorNameForeground, false)
}

func caption(text string) *prose { return newProse(text, theme.SizeNameCaptionText, colorMuted, false) }

// line is one line of text that is cut where there is no room.
func line(text string, size fyne.ThemeSizeName, ink fyne.ThemeColorName, bold bool) *prose {
	p := newProse(text, size, ink, bold)
	p.cut = true
	return p
}

// setText changes what it says.
func (p *prose) setText(text string) {
	if p.text != text {
		p.text = text
		p.Refresh()
	}
}

// CreateRenderer draws a text object per line, as fyne.Widget.
func (p *prose) CreateRenderer() fyne.WidgetRenderer { return &proseRenderer{p} }

// Resize breaks the text anew, as fyne.CanvasObject.
func (p *prose) Resize(size fyne.Size) {
	p.BaseWidget.Resize(size)
	p.wrap(size.Width)
}

// MinSize is the height of the text at its present width and a width that any line can be broken to.
func (p *prose) MinSize() fyne.Size {
	m := p.measured()
	if p.cut {
		return fyne.NewSize(24, m.high)
	}
	if p.lines == nil {
		p.wrap(p.Size().Width)
	}
	return fyne.NewSize(m.widest, m.high*float32(max(1, len(p.lines))))
}

// widestWord is as wide as a word may make a text; a longer one runs over.
const widestWord = 160

// thinAsLetter puts a letter in the place of thin spaces, which hold a number and its unit together.
var thinAsLetter = strings.NewReplacer("\u2009", "_")

// measured measures the text once: layouts ask for sizes far more often than texts change.
func (p *prose) measured() measured {
	size := p.Theme().Size(p.size)
	if m := p.last; m.high > 0 && m.text == p.text && m.size == size {
		return m
	}
	m := measured{text: p.text, size: size, high: p.measure("Ág").Height}
	if !p.cut {
		for _, w := range strings.Fields(thinAsLetter.Replace(p.text)) {
			m.widest = min(max(m.widest, p.wide(w)), widestWord)
		}
	}
	p.last = m
	return m
}

// natural is the width of the text on one line.
func (p *prose) natural() float32 { return p.measure(p.text).Width }

func (p *prose) measure(text string) fyne.Size {
	return fyne.MeasureText(text, p.Theme().Size(p.size), fyne.TextStyle{Bold: p.bold})
}

// wordKey is all that the width of a word hangs on.
type wordKey struct {
	word, font string
	size       float32
}

// wordWidths are the widths of words that were measured, of the main goroutine alone. They outlast a change of palette,
// after which every text is broken anew. Past mostWords all are forgotten.
var wordWidths = map[wordKey]float32{}

const mostWords = 20_000

// wide is the width of a word.
func (p *prose) wide(word string) float32 {
	look := p.Theme()
	key := wordKey{word, look.Font(fyne.TextStyle{Bold: p.bold}).Name(), look.Size(p.size)}
	w, known := wordWidths[key]
	if !known {
		if len(wordWidths) >= mostWords {
			clear(wordWidths)
		}
		w = p.measure(word).Width
		wordWidths[key] = w
	}
	return w
}

// wrap fills the lines for a width; without one there is a single line.
func (p *prose) wrap(width float32) {
	texts := []string{p.text}
	switch {
	case p.cut:
		texts[0] = p.shortened(width)
	case width > 0:
		texts = p.broken(width)
	}
	for len(p.lines) < len(texts) {
		p.lines = append(p.lines, canvas.NewText("", nil))
	}
	p.lines = p.lines[:len(texts)]
	variant, h := fyne.CurrentApp().Settings().ThemeVariant(), p.measured().high
	for i, t := range p.lines {
		t.Text, t.TextSize, t.TextStyle.Bold, t.Alignment = texts[i], p.Theme().Size(p.size), p.bold, p.align
		t.Color = p.Theme().Color(p.ink, variant)
		t.Move(fyne.NewPos(0, float32(i)*h))
		t.Resize(fyne.NewSize(width, h))
		t.Refresh()
	}
}

// broken cuts the text into lines at plain spaces and line ends. A line is as wide as its words and the spaces between
// them: the font moves no letter closer to a space.
func (p *prose) broken(width float32) []string {
	var out []string
	space := p.wide(" ")
	for paragraph := range strings.SplitSeq(p.text, "\n") {
		words := strings.Split(paragraph, " ")
		first, line := 0, p.wide(words[0])
		for i, word := range words[1:] {
			w := p.wide(word)
			if line += space + w; line > width {
				out = append(out, strings.Join(words[first:i+1], " "))
				first, line = i+1, w
			}
		}
		out = append(out, strings.Join(words[first:], " "))
	}
	return out
}

// shortened is as much of the text as fits, with an ellipsis where something is left out.
func (p *prose) shortened(width float32) string {
	if width <= 0 || p.measure(p.text).Width <= width {
		return p.text
	}
	letters := []rune(p.text)
	cut := func(n int) string { return strings.TrimSpace(string(letters[:n])) + "…" }
	tooLong := sort.Search(len(letters), func(n int) bool { return p.measure(cut(n)).Width > width })
	return cut(max(0, tooLong-1))
}

type proseRenderer struct{ prose *prose }

// Layout breaks the text, as fyne.WidgetRenderer.
func (r *proseRenderer) Layout(size fyne.Size) { r.prose.wrap(size.Width) }

// MinSize is the text's, as fyne.WidgetRenderer.
func (r *proseRenderer) MinSize() fyne.Size { return r.prose.MinSize() }

// Refresh takes up a new text or theme, as fyne.WidgetRenderer.
func (r *proseRenderer) Refresh() { r.prose.wrap(r.prose.Size().Width) }

// Destroy has nothing to give back, as fyne.WidgetRenderer.
func (r *proseRenderer) Destroy() {}

// Objects are the lines, as fyne.WidgetRenderer.
func (r *proseRenderer) Objects() []fyne.CanvasObject {
	out := make([]fyne.CanvasObject, len(r.prose.lines))
	for i, l := range r.prose.lines {
		out[i] = l
	}
	return out
}
