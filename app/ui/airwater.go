package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// airWaterPage is what air and water did: walls, dry stretches, how even the room was, added heat; set leads to what is set down
// of walls and heat.
func airWaterPage(v desk.AirWater, set fyne.CanvasObject, look func(desk.Sentence), read func(string)) fyne.CanvasObject {
	told := part(sentence(v.Sentence))
	for _, text := range v.Lacks {
		told.Add(body(text))
	}
	told.Add(set)
	page := parted(told)
	if len(v.Walls.Rows) > 0 {
		page.Add(part(heading("Walls and ceilings"), tableOf(v.Walls, look, read), caption(desk.HelpLine("surface_factor"))))
	}
	if len(v.Dry) > 0 {
		page.Add(part(heading("Parched for a day or longer without a break"), byHandfuls(8, len(v.Dry), func(i int) fyne.CanvasObject {
			return sentenceRow(desk.Sentence{Text: v.Dry[i].Text, Look: v.Dry[i].Look}, look)
		}), caption(v.DryHelp)))
	}
	if v.Even != "" {
		page.Add(evenPart(v, look, read))
	}
	if len(v.Heat.Rows) > 0 {
		page.Add(part(heading("Added heat"), tableOf(v.Heat, look, read)))
	}
	if len(v.Exposure.Rows) > 0 {
		page.Add(part(heading("Hours inside and outside the bands"), tableOf(v.Exposure, look, read), captions(append(v.Untold, desk.HelpLine("exposure")))))
	}
	if len(v.Mould) > 0 {
		page.Add(part(widget.NewAccordion(widget.NewAccordionItem("Mould, as the model has it", captions(v.Mould)))))
	}
	page.Add(part(hairline(), captions(v.Cautions)))
	return container.NewVScroll(container.New(inset{20, 14, 12, 16}, page))
}

// evenPart is how even the room was, with each logger by itself.
func evenPart(v desk.AirWater, look func(desk.Sentence), read func(string)) fyne.CanvasObject {
	even := part(heading("How even the room was"), body(v.Even))
	if len(v.Loggers.Rows) > 0 {
		even.Add(tableOf(v.Loggers, look, read))
		even.Add(caption(desk.HelpLine("loggers")))
	}
	return even
}
