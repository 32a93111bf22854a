package desk

// HelpLine explains a kind of figure in one or two plain sentences; it is empty for a kind without one.
func HelpLine(kind string) string { return helpLines[kind] }

// Meanings are what the four answers and the words beside figures mean, a line each.
func Meanings() (out []string) {
	for _, m := range []struct{ word, kind string }{
		{"Held", "held"}, {"Damp", "damp"}, {"Dry", "dry"}, {"Fans", "fans"}, {"Known", "coverage"}, {"It may have been", "sure"},
		{"Called for", "called_for"}, {"Ran", "ran"}, {"Assumed", "assumed"}, {"Cold metal", "cold_metal"},
	} {
		out = append(out, m.word+": "+lowerFirst(helpLines[m.kind]))
	}
	return out
}

var helpLines = map[string]string{
	"held":              "The share of the bees' time in which the room's air stayed inside the safe band. Held means at least 98 of 100 hours and nothing that called for action.",
	"damp":              "Hours with a wet wall or ceiling, or with air above the watch limit for six hours and longer.",
	"dry":               "Hours with air below the safe band for a day and longer.",
	"fans":              "How much of the winter the always-on fan and the first stage carried without a larger one.",
	"temperature":       "Air in the room: the firm line is the mean of the room's loggers. The tint is the safe band. The line is open where nothing was recorded. An arrowhead at the edge is where a line leaves the scale.",
	"elsewhere":         "Loggers that hang on a wall, at the control, in a hive or in an air stream: each says how it was there, none of them how the room was.",
	"humidity":          "Relative humidity over water, as loggers show it. Air at the same dampness reads higher when it is colder.",
	"margin":            "How far the coldest listed surface stays above the point where it sweats or frosts. Below zero it is wet.",
	"stages":            "A solid bar is what a record shows. An outlined bar is what the thermostat should have asked for, worked out from temperature. Hatching is where that can't be said.",
	"note_sheet":        "What you saw in the barn, beside what the loggers read. All of it can be undone.",
	"glance":            "A row a day, a cell an hour; no colour is within the safe bands, two colours are temperature and humidity both outside. A press goes there on the time axis.",
	"timeline":          "Drag moves, the wheel zooms, shift and drag measures, Home shows all; the right button, or N, sets down a note.",
	"timeline_bars":     "Bars: solid ran by a record, outlined was called for, hatched can't be told.",
	"timeline_all_bars": "Bars: solid, by a record; outlined, called for or as the readings show it; hatched, can't be told.",
	"timeline_events":   "What happened: solid by a record or your note, outlined as the readings show it, hatched may be something else.",
	"hours_per_day":     "Hours a stage was on in each local day, or called for where no record tells. A hatched day is one too little is known about.",
	"called_for":        "What the thermostat should have asked for by its settings, with the range left by the logger's error. It is not what ran.",
	"ran":               "What a record of the fan itself shows.",
	"coverage":          "How much of the bees' time has readings. Hours without readings are counted as unknown, never filled in.",
	"assumed":           "Taken by the program because nothing was set down. Setting it down makes the figure yours.",
	"hangs_at":          "Where a logger hung decides what its readings count for. Only room and control loggers judge the bees' air.",
	"ice":               "Crushed ice with a little water is at 0 °C. Seal the logger in a bag, bury it and leave it for an hour or more; the steady part is found by itself.",
	"salt":              "A slush of salt and a little water holds a known humidity in a closed jar, 75.6 % for table salt at 4 °C. Leave the logger over it, not in it, for a day.",
	"clock":             "What a watch said and the logger at the same moment sets its times right; two such moments also how much it gains or loses between them.",
	"bees_time":         "Only the time between bees in and bees out is judged. Hives that moved at other times are set down under Edit, Hives in and out.",
	"sure":              "Cheap loggers may read half a degree and five points of humidity off. Hours are worked out again with every reading that much lower and higher.",
	"cold_metal":        "Doors and flaps of thin metal sweat long before walls do, and say little about the barn.",
	"surface_factor":    "How much of the difference between outside and the room a surface keeps: 100 % is as warm as the room. Measured where a logger hangs on it, else taken for its kind.",
	"dry_runs":          "Spells counts stretches with a short break between them as one.",
	"dry_split":         "Dry weather is the quarter of the winter in which the air outside held least water. Warmed air is dry air: heat that is added makes the fans bring in more of it.",
	"loggers":           "Each logger by itself; of many the twelve that were outside the band longest. Everything else here is judged by the room's mean.",
	"exposure":          "In brackets what the hours come to with every reading as far off as its logger may be. The dew point's band is that of air inside both others; a margin below zero is wet, and under a degree the loggers can't tell.",
	"side_by_side":      "Each hour known in both barns is set against the same hour of the other. The range holds the loggers' errors and the luck of one winter; where it holds zero, which barn had more can't be told.",
	"all_barns":         "Each barn over its own bees' time and by its own limits; any two are set beside one another hour by hour under In figures. Margin is how far the coldest listed wall or ceiling stays above wet, small fans the hours the always-on fan and the first stage carried alone, and energy what the fans took.",
	"resampled":         "Hours next to each other tell much the same, so the differences are drawn anew a thousand times and more in blocks of many hours (Politis and Romano 1994; lengths by Politis and White 2004 as corrected in 2009). Worth is how many hours that have nothing to do with one another would be as sure; below 20 no range is given. The half-widths are of a 95 % range, chance by Student's t, and add up as the sides of a right angle do.",
	"stage_sheet":       "A timer's two numbers are the seconds it is on and the seconds from start to start. Air may be a range, 2500-3500; one number counts as the fan's rating. When a setting was changed in mid-winter, add a row of the same name with the day.",
	"wall_sheet":        "Name the coldest ones towards the open air. Left empty, the share of the room's warmth that reaches the inner face is taken for its kind; it may be a range, 60-75. A logger hung on it measures it.",
	"heat_sheet":        "A source that is wired with a stage is taken to run with it, where no logger recorded it.",
	"hive_sheet":        "So many hives in, with a minus so many out: a batch that goes out and comes back is two moves. Losses and sweepings are told per hive by it.",
	"excluded_sheet":    "Of the bees' time, such as a day of open doors or cold boxes just back. Readings that are wrong are left out on the Files page instead; these are right and not counted.",
	"phase_sheet":       "Each phase is judged by itself. As usual: filling while hives come in, deep winter to 1 March, late winter, emptying from when hives go out for good. Limits left empty are those of Safe limits.",
	"room_sheet":        "With its volume the changes of air can be told. With water lines, pipes or tubs in it, frost in the room is to be acted on. What the alarm is set to is tried on the log before other lines; left empty, the usual line stands for it.",
	"went_with":         "What happened at the same time. It need not be the reason. Warm, cold or wet for under an hour and damp or dry for under six are not listed; First look counts them.",
}
