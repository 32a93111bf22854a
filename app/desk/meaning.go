package desk

import (
	"strings"

	"thawbook/analysis/compare"
)

// Help says what a column's figures are, in a plain line; every column has one.
func (c Column) Help() string {
	if c.About != "" {
		return columnHelp[c.About]
	}
	return columnHelp[c.Title]
}

// columnHelp explains columns by their title, or by what they are about where the title is a name.
var columnHelp = map[string]string{
	"Above":                        "Hours above the band; in brackets with every reading as far off as its logger may be.",
	"Alarm":                        "A line that the room's temperature crosses, and for how long before it calls.",
	"At or above":                  "A temperature; the hours beside it are those in which the air was as warm or warmer.",
	"Band":                         "The limits the hours are counted by.",
	"Barn":                         "A wintering room of this winter.",
	"Began":                        "When it went outside the band, by the clock of the winter's zone.",
	"Below":                        "Hours below the band; in brackets with every reading as far off as its logger may be.",
	"Block":                        "How many hours on end are drawn together, as one hour tells much the same as the next.",
	"Called for":                   helpLines["called_for"],
	"Calls":                        "How often an alarm set like this would have called; the range is with every reading as far off as its logger may be.",
	"Could be":                     "Hours it was called for if the thermostat reads as far off the loggers as it may.",
	"Difference":                   "The first barn's figure less the second's.",
	"Each over its own bees' time": "Figures of a winter as a whole, not hour against hour.",
	"Farthest":                     "The value farthest outside the band.",
	"First":                        "When it would have called for the first time.",
	"Heat":                         "A source that adds heat to the room: floor, solar, room heater or recovery.",
	"Highest":                      "The highest reading in the bees' time.",
	"Hour":                         "One of the ten hours in which the two rooms' air differed most.",
	"Hours":                        "How long the outdoor air was in this step, in each barn's known time where they differ.",
	"How known":                    "By a record of its own, or by the stage it is wired with.",
	"Humidity":                     "Mean relative humidity of the room. " + helpLines["humidity"],
	"In your log":                  "Which of these calls stand in the log you set down, and how late.",
	"Inside":                       "Hours inside the band.",
	"Known":                        helpLines["coverage"],
	"Known in both":                "Hours with readings in both barns.",
	"Lasted":                       "From its begin to its end, a short break counted in.",
	"Logger":                       "A logger in the room, each by itself.",
	"Lost":                         "Hives found dead of a hundred, of all or of those looked at.",
	"Lowest":                       "The lowest reading in the bees' time.",
	"Margin":                       helpLines["margin"],
	"May be":                       "95 of 100 such ranges hold the true difference: the loggers' errors and the luck of one winter.",
	"May have been":                "Wet hours with loggers and the surface's share of warmth as far off as they may be.",
	"Mean":                         "The mean over the known time, each reading weighed by the time it stands for.",
	"Of it frosted":                "Wet hours in which the surface was below freezing.",
	"On / off":                     "Where the thermostat starts the stage, and where it stops it.",
	"Outdoors":                     "The outdoor air, by the logger or the weather station given.",
	"Outside":                      "Hours in which the room's air was outside the safe band of temperature.",
	"Over the hours known in both": "A figure of both barns. " + helpLines["side_by_side"],
	"Ran":                          helpLines["ran"],
	"Set from":                     "The day from which these settings held.",
	"Small fans":                   helpLines["fans"],
	"Stage":                        "A step of the fans; one whose setting was changed has a row for each.",
	"Starts":                       "How often it went on, where readings are close enough together to see it.",
	"Surface":                      "A wall, ceiling or other surface that was set down.",
	"Time on":                      "Hours on, of a hundred it is known for.",
	"Warmth that reaches it":       helpLines["surface_factor"],
	"Went with":                    helpLines["went_with"],
	"Wet":                          "Hours in which its face was as cold as the dew point of the room's air, or colder.",
	"What":                         "What was measured.",
	"When":                         "The bees' whole time, or one phase of it.",
	"Where":                        "The room, the logger or the surface it was seen on.",
	"With a bigger fan on":         "Hours in which heat was added while a larger stage moved warm air out: heat that fought the fans.",
	"Worth":                        "How many hours that have nothing to do with one another would be as sure.",
	"kWh a hive":                   "What the fans took, by their watts, over the mean number of hives.",
	"± by chance":                  "What the luck of one winter's hours may make of the difference.",
	"± blocks of one length":       "The same with blocks of one length, as a check.",
	"± loggers":                    "What both barns' loggers together may be off by.",

	"a barn":      "That barn's own figure.",
	"what it was": "Whether the first barn had more or less, where that is more than the loggers and luck can make.",
	"going on":    "What happened or was noted, the spell it was in and the stages on for half of the hour and longer.",
	"outside of":  "What it was outside of: warm, cold, damp and dry the safe bands, moist the dew point's; dew and frost a wet surface.",
}

// rowHelp explains what two barns are compared by, where it is not plain from a row's words.
var rowHelp = map[string]string{
	compare.EqualWeather: "The means over steps of outdoor temperature that both had, each step with the same weight in both.",
	compare.ByRegression: "The means at one outdoor temperature by straight lines of one slope, one through each barn's hours.",
	compare.Margin:       helpLines["margin"],
	compare.StageCalled:  helpLines["called_for"],
	compare.StageRan:     helpLines["ran"],
	compare.Spells:       "Unbroken runs outside a band; a single one may be a matter of luck, so they are only counted.",
	compare.DewPoint:     "The temperature below which a surface would sweat in the room's air.",
	"small_stages_alone": helpLines["fans"],
	"good_hours":         helpLines["held"],
	"air_changes":        "How often an hour the stages' air would fill the room, by the flow that was set down.",
	"energy":             "What the fans took by their watts, over the hours they ran or were called for.",
	"energy_per_hive":    columnHelp["kWh a hive"],
}

// Meanings say what a table's columns are, a line each, then its rows where they have help of their own.
func (t Table) Meanings() []string {
	if len(t.Rows) == 0 {
		return nil
	}
	out := meaningsOf(t.Columns)
	for i, help := range t.Helps {
		if help != "" {
			out = append(out, t.Rows[i][0]+": "+lowerFirst(help))
		}
	}
	return out
}

func meaningsOf(columns []Column) (out []string) {
	for _, c := range columns {
		out = append(out, c.Says())
	}
	return out
}

// Says is a column's title with what its figures are.
func (c Column) Says() string { return c.Title + ": " + lowerFirst(c.Help()) }

// Read says what a figure of a table is, for the pointer over it; row −1 is the heads.
func (t Table) Read(row, column int) string {
	if column < 0 || column >= len(t.Columns) {
		return ""
	}
	name, help, seen := t.Columns[column].Head(), t.Columns[column].Help(), ""
	if row >= 0 && row < len(t.Helps) && t.Helps[row] != "" {
		name, help = t.Rows[row][0], t.Helps[row]
	}
	if s := t.Look(row, column); s.To > s.From {
		seen = " Press it to see where in the Timeline."
	}
	return name + ": " + lowerFirst(help) + seen
}

// Meanings say what the screen's figures are, a line each; so they do of every screen.
func (v SpellsView) Meanings() []string { return meaningsOf(v.Columns) }

// Meanings is of the Stages screen: its bars and its table.
func (v StagesView) Meanings() []string {
	return append([]string{"Bars: " + lowerFirst(helpLines["stages"])}, v.Table.Meanings()...)
}

// Meanings is of the Air and water screen: its tables.
func (v AirWater) Meanings() (out []string) {
	for _, t := range []Table{v.Walls, v.Heat, v.Exposure, v.Loggers} {
		out = append(out, t.Meanings()...)
	}
	return out
}

// Meanings is of the Before next winter screen: the alarm's table.
func (v BeforeNext) Meanings() []string { return v.Alarms.Meanings() }

// Meanings is of the Timeline: its lanes.
func (t Timeline) Meanings() (out []string) {
	for _, l := range t.Lanes {
		if l.Help != "" {
			out = append(out, l.Title+": "+lowerFirst(l.Help))
		}
	}
	return append(out, "Day by day: "+lowerFirst(helpLines["glance"]))
}

// Meanings is of two barns side by side: all its tables.
func (v TwoBarns) Meanings() (out []string) {
	for _, t := range []Table{v.Table, v.Totals, v.Weather, v.Levels, v.Apart, v.Behind} {
		out = append(out, t.Meanings()...)
	}
	return out
}

// Meanings is of all barns in a table.
func (v AllBarns) Meanings() []string { return meaningsOf(v.Columns) }

// Unrepeated are lines of which each explains something else: of several with one explanation the first stays.
func Unrepeated(lines []string) (out []string) {
	seen := map[string]bool{}
	for _, l := range lines {
		_, help, _ := strings.Cut(l, ": ")
		if !seen[help] {
			out = append(out, l)
		}
		seen[help] = true
	}
	return out
}
