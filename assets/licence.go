package assets

import _ "embed"

// The licence of the typeface, which has to travel with it.
//
//go:embed fonts/LICENSE-IBM-Plex-Sans.txt
var fontLicence string

// FontLicence returns the licence of the typeface.
func FontLicence() string { return fontLicence }
