package assets

import "embed"

// Schemas are the JSON Schemas (2020-12) of what the doors print, below schema/.
//
//go:embed schema/*.json
var Schemas embed.FS
