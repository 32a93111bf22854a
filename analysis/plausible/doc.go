// Package plausible says where a logger's readings can hardly be what they claim: values in, findings out.
// Nothing is changed here and nothing left out; a finding is a proposal, and the keeper decides. A rule
// that is not sure stays silent rather than send him to look at good data.
//
// Each file answers one question:
//
//	plausible.go what is there to say of one logger among its neighbours?
//	hours.go     what was it, hour by hour?
//	stuck.go     did the value stand still, or stand at 100 %?
//	jump.go      did it jump and come straight back?
//	sentinel.go  are there values no air has?
//	misread.go   are two columns swapped, or °F taken for °C?
//	drift.go     does it part slowly from its neighbours?
//	carried.go   did it hang outdoors at the end, or at the start?
//	elsewhere.go is it far from its neighbours from end to end?
//	apart.go     is it so for a while?
//	wet.go       did a wet sensor take its time to dry?
//	derived.go   do the file's own dew point or absolute humidity agree with ours?
//	shift.go     by how much is one clock ahead of another?
package plausible
