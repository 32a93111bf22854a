// Package desk turns a reviewed winter into what the screens say: words, numbers with their units, local
// time, marks and rows. It is plain Go and knows no toolkit. Each screen has one file and one constructor:
//
//	book.go      the open winter: opening it, adding files, hanging loggers
//	beesinout.go when the bees went in and came out
//	rail.go      the left rail
//	shell.go     a barn's header and its four answers
//	barn.go      what the sentences ask of a review
//	firstlook.go First look
//	timeline.go  Timeline
//	reading.go   what the pointer reads in it
//	stages.go    Stages
//
// A figure that is not known is never shown as a number; what it lacks is said instead.
package desk
