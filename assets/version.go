package assets

import (
	"embed"
	"path"
)

// Version is the version of the program. Records that are frozen carry it, and
// FyneApp.toml says the same; the newest part of the list of changes is about it.
const Version = "0.1.0"

//go:embed CHANGES.md
var changes string

//go:embed changes
var otherChanges embed.FS

// Changes returns the list of changes, newest first, in a language by its tag: "de".
// It is the English one for a language that has none.
func Changes(language string) string {
	if text, err := otherChanges.ReadFile(path.Join("changes", language+".md")); err == nil {
		return string(text)
	}
	return changes
}

//go:embed notices.txt
var notices string

// Notices returns the licences of what the program is made with: modules,
// typeface, tables. The file is written by `go run ./cmd/dev notices`.
func Notices() string { return notices }
