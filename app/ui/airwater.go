package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// airWaterPage is what air and water did: walls, dry stretches, how even the room was, added heat; set leads to what is set down
// of walls and heat.
func airWaterPage(v desk.AirWater, set fyne.CanvasObject, look func(desk.Sentence)) fyne.CanvasObject {
	page := container.New(column{widest: readable, gap: 10}, sentence(v.Sentence))
	for _, text := range v.Lacks {
		page.Add(body(text))
	}
	page.Add(set)
	if len(v.Walls.Rows) > 0 {
		page.Add(heading("Walls and ceilings"))
		page.Add(tableOf(v.Walls))
		page.Add(caption(desk.HelpLine("surface_factor")))
	}
	if len(v.Dry) > 0 {
		page.Add(heading("Parched for a day or longer without a break"))
		page.Add(byHandfuls(8, len(v.Dry), func(i int) fyne.CanvasObject {
			return sentenceRow(desk.Sentence{Text: v.Dry[i].Text, Look: v.Dry[i].Look}, look)
		}))
		page.Add(caption(v.DryHelp))
	}
	if v.Even != "" {
		page.Add(heading("How even the room was"))
		page.Add(body(v.Even))
		if len(v.Loggers.Rows) > 0 {
			page.Add(tableOf(v.Loggers))
			page.Add(caption(desk.HelpLine("loggers")))
		}
	}
	if len(v.Heat.Rows) > 0 {
		page.Add(heading("Added heat"))
		page.Add(tableOf(v.Heat))
	}
	if len(v.Exposure.Rows) > 0 {
		page.Add(heading("Hours inside and outside the bands"))
		page.Add(tableOf(v.Exposure))
		page.Add(captions(append(v.Untold, desk.HelpLine("exposure"))))
	}
	if len(v.Mould) > 0 {
		page.Add(widget.NewAccordion(widget.NewAccordionItem("Mould, as the model has it", captions(v.Mould))))
	}
	page.Add(hairline())
	page.Add(captions(v.Cautions))
	return container.NewVScroll(container.New(inset{20, 14, 12, 16}, page))
}
