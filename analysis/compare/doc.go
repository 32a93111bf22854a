// Package compare sets two judged barns side by side: values in, a Pair out. It opens no file and reads no clock; the
// same two sides give the same Pair to the last bit.
//
//	pair.go     what does a comparison hold?
//	common.go   which time have both in common, and in which phase?
//	air.go      how did the air differ, and the hours outside the bands?
//	stage.go    how did the stages differ?
//	spell.go    how did the spells differ?
//	sure.go     how sure is a difference, and what would settle it?
//	weather.go  how did they differ in the same weather?
//	exposure.go for how long did the air lie above each level?
//	apart.go    in which hours were they farthest apart, and what was going on?
//	total.go    what does each winter come to as a whole?
//	winters.go  how does it look beside another winter?
//	turn.go     how does it look from the other barn?
//	losses.go   how many hives were found dead, and what can that say?
package compare
