// Package stats says how sure a figure is that was taken from a series in which one hour resembles the next: block
// lengths, resampling in blocks, intervals. It knows no barn.
//
//	autocovariance.go  how alike are values some steps apart?
//	blocklength.go     how long must blocks be to keep what hangs together?
//	resample.go        how far would a figure move in another run of the same kind?
//	interval.go        how wide is the range that holds it 95 times of 100?
//	proportion.go      what share may so many of so many stand for?
package stats
