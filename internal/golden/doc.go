// Package golden compares pictures that a test draws with pictures that were
// looked at and kept.
//
// Kept pictures are small: each channel is rounded to the middle of a step of
// 8 (of 16 or more where over 256 colours are left), so that a picture fits a
// palette of one byte a pixel. What a test draws is held against that within
// half a step and [Rounding] more, channel by channel: the rasteriser uses
// other instructions on other processors. No pixel may lie outside.
//
// A picture that differs is written beside the kept one as .failed.png, with
// the difference as .diff.png; git ignores both. A test's flag -update keeps
// the new picture instead. With the variable [Switch] set to "off" no picture
// is compared: `go run ./cmd/dev test -pictures=false`.
package golden
