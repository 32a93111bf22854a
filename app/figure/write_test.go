package figure

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image"
	"image/png"
	"io"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/recorder"

	"thawbook/analysis/series"
)

func TestWritePNG(t *testing.T) {
	var b bytes.Buffer
	if err := sampleFigure(Light(), tenMinutes).WritePNG(&b, 800, 500, 2); err != nil {
		t.Fatal(err)
	}
	im, err := png.Decode(&b)
	if err != nil || im.Bounds() != image.Rect(0, 0, 1600, 1000) {
		t.Errorf("%v, %v", err, im.Bounds())
	}
}

// texts returns the strings of an SVG document, or an error where it is no XML.
func texts(t *testing.T, doc []byte) []string {
	t.Helper()
	var out []string
	d := xml.NewDecoder(bytes.NewReader(doc))
	inText := false
	for {
		tok, err := d.Token()
		if err == io.EOF {
			return out
		}
		if err != nil {
			t.Fatal(err)
		}
		switch k := tok.(type) {
		case xml.StartElement:
			inText = k.Name.Local == "text"
		case xml.CharData:
			if inText {
				out = append(out, string(k))
			}
		case xml.EndElement:
			inText = false
		}
	}
}

func TestWriteSVG(t *testing.T) {
	f := sampleFigure(Light(), tenMinutes)
	f.Lanes[0].Traces[1].Name = "<east> & west"
	var b, again bytes.Buffer
	if err := f.WriteSVG(&b, 1000, 600); err != nil {
		t.Fatal(err)
	}
	got := strings.Join(texts(t, b.Bytes()), "|")
	for _, want := range []string{"Air temperature", "°C", "6\u2009°C", "room mean", "<east> & west", "Stage 4", "January 2026", "bees in", "\u221220"} {
		if !strings.Contains(got, want) {
			t.Errorf("the vectors lack %q: %s", want, got)
		}
	}
	if !bytes.Contains(b.Bytes(), []byte("font-family:'Liberation Sans',Arial")) || bytes.Contains(b.Bytes(), []byte("<image")) {
		t.Error("no fallback typeface, or a picture among the vectors")
	}
	if err := f.WriteSVG(&again, 1000, 600); err != nil || !bytes.Equal(b.Bytes(), again.Bytes()) {
		t.Errorf("written twice, the bytes differ (%v)", err)
	}
}

type fullDisk struct{}

var errFull = errors.New("no space left")

func (fullDisk) Write([]byte) (int, error) { return 0, errFull }

func TestWriteFailures(t *testing.T) {
	f := sampleFigure(Light(), tenMinutes)
	for _, err := range []error{f.WritePNG(fullDisk{}, 300, 200, 1), f.WriteSVG(fullDisk{}, 300, 200)} {
		if !errors.Is(err, errFull) {
			t.Errorf("a full disk says %v", err)
		}
	}
}

// No path may leave the lane it belongs to, nor be long: raster canvases are quadratic in its length.
func TestVectorsStayInside(t *testing.T) {
	f := sampleFigure(Light(), tenMinutes)
	f.Lanes[0].Range = &Range{4, 5} // much of the curve lies outside
	w, h := vg.Length(1000)*pixel, vg.Length(600)*pixel
	for _, days := range []int64{150, 2} {
		f.View.To = f.View.From + days*dayMS
		l := f.Layout(1000, 600, 1)
		var r recorder.Canvas
		f.DrawOn(&r, w, h)
		strokes := 0
		for _, a := range r.Actions {
			s, ok := a.(*recorder.Stroke)
			if !ok {
				continue
			}
			strokes++
			checkPath(t, s.Path, l, h)
		}
		if strokes == 0 {
			t.Errorf("%d days: no strokes", days)
		}
	}
}

func checkPath(t *testing.T, p vg.Path, l Layout, h vg.Length) {
	t.Helper()
	if len(p) > 4*pathColumns && len(p)%2 != 0 {
		t.Errorf("a path of %d points", len(p))
	}
	for _, c := range p {
		x, y := float64(c.Pos.X/pixel), float64((h-c.Pos.Y)/pixel)
		if x < float64(l.Plot.Min.X)-2 || x > float64(l.Plot.Max.X)+2 || l.LaneAt(math.Min(y, float64(l.Plot.Max.Y)-0.5)) < 0 && l.LaneAt(y-0.6) < 0 {
			t.Errorf("a line at %v, %v lies outside every lane", x, y)
			return
		}
	}
}

func TestRead(t *testing.T) {
	f := gapped(15 * minuteMS)
	f.Lanes = append(f.Lanes, Lane{Title: "Stages", Kind: Bars, Rows: []BarRow{{Name: "stage", Tracks: []Track{
		{Style: Called, On: []series.Span{{From: 100, To: 200}}, Unknown: []series.Span{{From: 300, To: 400}}}}}}})
	at := f.Read(int64(7.5 * minuteMS))
	if len(at) != 2 || !at[0].Known || at[0].Value != 5.5 {
		t.Errorf("halfway between 5 and 6: %+v", at)
	}
	if at := f.Read(15 * series.HourMS); at[0].Known {
		t.Errorf("a value in the gap: %+v", at[0])
	}
	for _, r := range []struct {
		t         int64
		on, known bool
	}{{99, false, true}, {100, true, true}, {199, true, true}, {200, false, true}, {300, false, false}, {400, false, true}} {
		if got := f.Read(r.t)[1]; got.On != r.on || got.Known != r.known || got.Lane != "Stages" || got.Name != "stage" || got.Style != Called {
			t.Errorf("at %d: %+v", r.t, got)
		}
	}
}
