package assets

import _ "embed"

// Version is the version of the program. Records that are frozen carry it, and
// FyneApp.toml says the same; the newest part of the list of changes is about it.
const Version = "0.1.0"

//go:embed CHANGES.md
var changes string

// Changes returns the list of changes, newest first.
func Changes() string { return changes }

//go:embed notices.txt
var notices string

// Notices returns the licences of what the program is made with: modules,
// typeface, tables. The file is written by `go run ./cmd/dev notices`.
func Notices() string { return notices }
