// Command shots draws every screen on the invented practice, light and dark,
// in a small and a large window, without a screen. `go run ./cmd/dev shots
// DIR` builds it with the right tags and starts it.
package main

import (
	"fmt"
	"os"

	"ebbwell/app/shots"
)

func main() {
	if len(os.Args) != 2 {
		_, _ = fmt.Fprintln(os.Stderr, "shots: name one folder for the pictures")
		os.Exit(2)
	}
	if err := shots.Draw(os.Args[1], func(file string) { fmt.Println(file) }); err != nil {
		_, _ = fmt.Fprintln(os.Stderr, "shots:", err)
		os.Exit(1)
	}
}
