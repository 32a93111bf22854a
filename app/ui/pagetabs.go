package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// pageTabs are pages of which one is in sight, behind the row of their titles. Each is made when it is first chosen.
type pageTabs struct {
	widget.BaseWidget
	titles *titleRow
	pages  []*later
	turned func() // told after another page was chosen
}

func newPageTabs() *pageTabs {
	t := &pageTabs{titles: newTitleRow(), turned: func() {}}
	t.titles.press = t.choose
	t.ExtendBaseWidget(t)
	return t
}

// add puts a page behind the others.
func (t *pageTabs) add(title string, make func() fyne.CanvasObject) {
	t.titles.add(title)
	t.pages = append(t.pages, newLater(make))
}

// chosen is the number of the page in sight.
func (t *pageTabs) chosen() int { return t.titles.chosen }

// page is the page in sight.
func (t *pageTabs) page() *later { return t.pages[t.chosen()] }

// choose brings a page into sight; a number that is no page's changes nothing.
func (t *pageTabs) choose(page int) {
	if page < 0 || page >= len(t.pages) || page == t.chosen() {
		return
	}
	t.titles.chosen = page
	t.Refresh()
	t.turned()
}

// CreateRenderer sets the titles over the page, as fyne.Widget.
func (t *pageTabs) CreateRenderer() fyne.WidgetRenderer {
	return &pageTabsRenderer{t, hairline()}
}

type pageTabsRenderer struct {
	tabs  *pageTabs
	below fyne.CanvasObject // the line below the titles
}

// besideTitles is what lies before the titles, so that they begin where a page's text does, and belowTitles what lies between
// them and the page.
const besideTitles, belowTitles = 20 - aroundTitle, 4

// Layout gives the titles their height and the page what is left, as fyne.WidgetRenderer. Before there is a width no page is made.
func (r *pageTabsRenderer) Layout(size fyne.Size) {
	if size.Width == 0 {
		return
	}
	r.tabs.titles.Move(fyne.NewPos(besideTitles, 0))
	h := heightAt(r.tabs.titles, size.Width-besideTitles)
	r.below.Move(fyne.NewPos(0, h))
	r.below.Resize(fyne.NewSize(size.Width, r.below.MinSize().Height))
	r.tabs.page().Move(fyne.NewPos(0, h+belowTitles))
	r.tabs.page().Resize(fyne.NewSize(size.Width, size.Height-h-belowTitles))
}

// MinSize is the titles' and the page's, as fyne.WidgetRenderer.
func (r *pageTabsRenderer) MinSize() fyne.Size {
	a, b := r.tabs.titles.MinSize(), r.tabs.page().MinSize()
	return fyne.NewSize(max(besideTitles+a.Width, b.Width), a.Height+belowTitles+b.Height)
}

// Objects are the titles and the page in sight, as fyne.WidgetRenderer.
func (r *pageTabsRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.tabs.titles, r.below, r.tabs.page()}
}

// Refresh takes up another choice or theme, as fyne.WidgetRenderer.
func (r *pageTabsRenderer) Refresh() {
	r.tabs.titles.Refresh()
	r.Layout(r.tabs.Size())
	r.tabs.page().Refresh() // running text knows its height now
	canvas.Refresh(r.tabs)
}

// Destroy has nothing to give back, as fyne.WidgetRenderer.
func (r *pageTabsRenderer) Destroy() {}
