// Package assets holds what the program carries with it, embedded as it stands; no logic.
package assets

import _ "embed"

// IconPNG is the program's icon, 512 × 512 pixels with transparency: a barn's gable with a plot line under the
// roof. It is drawn from icon.svg.
//
//go:embed icon.png
var IconPNG []byte
