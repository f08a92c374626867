// Package assets holds the files that travel inside the program: the typeface,
// the icon, and the tables of foods and climates.
package assets

import _ "embed"

// The typeface is IBM Plex Sans (SIL Open Font License 1.1, text beside the
// files). The same three weights are drawn on screen and on paper.

//go:embed fonts/IBMPlexSans-Regular.ttf
var plexRegular []byte

//go:embed fonts/IBMPlexSans-Medium.ttf
var plexMedium []byte

//go:embed fonts/IBMPlexSans-SemiBold.ttf
var plexSemiBold []byte

// FontRegular returns the regular weight as a TrueType file.
func FontRegular() []byte { return plexRegular }

// FontMedium returns the medium weight as a TrueType file.
func FontMedium() []byte { return plexMedium }

// FontSemiBold returns the semibold weight as a TrueType file.
func FontSemiBold() []byte { return plexSemiBold }
