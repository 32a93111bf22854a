package engine

import (
	"slices"
	"strconv"

	"thawbook/analysis/series"
	"thawbook/app/winter"
	"thawbook/importers"
)

// Zone is the question in which time zone a file's clock stood.
const Zone = "zone"

// zonesAssumed gathers what was remarked on files that name no zone. A wrong zone moves all of a lone barn's
// readings by the same hours and changes next to nothing; where barns are set side by side or outdoor data beside
// them an hour matters: then the zone of those files is open, and one remark says of how many of them the winter's was
// assumed meanwhile.
func zonesAssumed(w winter.Winter, remarks []series.Remark) (left []series.Remark, open []string) {
	assumed := func(r series.Remark) bool { return r.Code == ClockZoneAssumed }
	first := slices.IndexFunc(remarks, assumed)
	if first < 0 {
		return remarks, nil
	}
	for _, r := range remarks {
		if assumed(r) && !slices.Contains(open, r.Args[1]) {
			open = append(open, r.Args[1])
		}
	}
	left = slices.DeleteFunc(slices.Clone(remarks), assumed)
	if !hourMatters(w) {
		return left, nil
	}
	one := series.Remark{Code: ClockZoneAssumed, Args: []string{strconv.Itoa(len(open)), w.Zone}, Count: len(open)}
	return slices.Insert(left, first, one), open
}

// hourMatters says whether readings of two barns, or of one and outdoors, are set side by side, and not all of them from
// the same files: what stands in one row was read by one clock.
func hourMatters(w winter.Winter) bool {
	var sides [][]string
	for list := winter.OutdoorList; list < len(w.Barns); list++ {
		loggers, _ := w.List(list)
		if files := filesOf(loggers); len(files) > 0 {
			sides = append(sides, files)
		}
	}
	return slices.ContainsFunc(sides, func(files []string) bool { return !slices.Equal(files, sides[0]) })
}

// filesOf are the files of some loggers, each once, sorted.
func filesOf(loggers []winter.Logger) (files []string) {
	for _, l := range loggers {
		files = append(files, l.Files...)
	}
	slices.Sort(files)
	return slices.Compact(files)
}

// inZone is an export as it is read with a zone the keeper named: nothing else of it changes.
func inZone(e *importers.Export, zone string) *importers.Export {
	out := *e
	out.Layout.Clock.Zone, out.Layout.Clock.ZoneSource = zone, "answer"
	return &out
}
