// Package figure draws the program's plots: curves, safe bands and stage bars over one time axis, and
// the hours a day each stage worked. One description is drawn on a reused screen image, written as PNG
// or SVG, or put on any vector canvas.
//
// All sizes are design pixels (1/96 inch) times the scale asked for; device pixels count from the top
// left, y downwards. A figure never asks for a curve's readings one by one when they are denser than
// the pixels: it then tints one column from least to greatest value per pixel, taken from a
// series.Pyramid, and draws a firm line through the middle of these; once the readings are sparser it
// draws their own line. Nothing is drawn where nothing is known.
package figure
