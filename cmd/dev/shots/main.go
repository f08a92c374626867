// Command shots draws every screen on the invented practice, light and dark,
// in a small and a large window, without a screen. `go run ./cmd/dev shots
// DIR` builds it with the right tags and starts it. Flags before the folder
// draw less: -only overview,pantry -size 1366x768 -text 100,150 -theme dark; -lang de or long
// draws another language.
package main

import (
	"fmt"
	"os"

	"ebbwell/app/shots"
)

func main() {
	which, dir, err := shots.Asked(os.Args[1:])
	if err != nil {
		_, _ = fmt.Fprintln(os.Stderr, "shots:", err)
		os.Exit(2)
	}
	if err := shots.Draw(dir, which, func(file string) { fmt.Println(file) }); err != nil {
		_, _ = fmt.Fprintln(os.Stderr, "shots:", err)
		os.Exit(1)
	}
}
