package assets

import _ "embed"

//go:embed icon.png
var icon []byte

// Icon returns the program's icon as a PNG of 512 x 512: a line that ebbs, in
// ink on paper.
func Icon() []byte { return icon }
