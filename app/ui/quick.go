package ui

import "runtime"

// ballastBytes is the size of the ballast.
const ballastBytes = 64 << 20

// ballast counts as heap and is never touched, so that it takes no memory. With it a small heap may grow by a share of
// 64 MiB before it is swept, not of the little it is: the many sweeps would hold the window up.
var ballast []byte

// KeepQuick sets the process so that the window stays quick beside what works for it.
func KeepQuick() {
	runtime.GOMAXPROCS(runtime.NumCPU() + 1) // however many read and reckon, the window need not wait for one of them
	ballast = make([]byte, ballastBytes)
	runtime.KeepAlive(ballast)
}
