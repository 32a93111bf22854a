//go:build nogui

package main

import (
	"fmt"
	"os"
)

// window says that this build has none.
func window(...string) int {
	fmt.Fprintln(os.Stderr, "thawbook: this build has no window; see thawbook -h for what it can do")
	return wrongUsage
}
