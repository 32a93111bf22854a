package engine

import (
	"slices"
	"strconv"

	"thawbook/analysis/series"
	"thawbook/app/winter"
)

// zonesAssumed gathers what was remarked on files that name no zone. A wrong zone moves all of a lone barn's
// readings by the same hours and changes next to nothing; where barns are set side by side or outdoor data beside
// them an hour matters, and one remark says of how many files the winter's zone was assumed.
func zonesAssumed(w winter.Winter, remarks []series.Remark) []series.Remark {
	assumed := func(r series.Remark) bool { return r.Code == ClockZoneAssumed }
	first := slices.IndexFunc(remarks, assumed)
	if first < 0 {
		return remarks
	}
	files := map[string]bool{}
	for _, r := range remarks {
		if assumed(r) {
			files[r.Args[1]] = true
		}
	}
	rest := slices.DeleteFunc(slices.Clone(remarks), assumed)
	if len(w.Outdoor) == 0 && len(w.Barns) < 2 {
		return rest
	}
	one := series.Remark{Code: ClockZoneAssumed, Args: []string{strconv.Itoa(len(files)), w.Zone}, Count: len(files)}
	return slices.Insert(rest, first, one)
}
