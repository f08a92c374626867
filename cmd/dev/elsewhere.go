package main

import (
	"bytes"
	"context"
	"fmt"
)

// systems are those on which everything but the window has to build.
func systems() [][2]string { return [][2]string{{"windows", "amd64"}, {"darwin", "arm64"}} }

// elsewhere builds every package that needs no C compiler for other systems;
// the first time this compiles the modules too, and takes minutes.
func (t tool) elsewhere(ctx context.Context) error {
	list := t.command(ctx, []string{"CGO_ENABLED=0"}, "go", "list", "-tags", tags, "./...")
	var out bytes.Buffer
	list.Stdout = &out
	if err := list.Run(); err != nil {
		return fmt.Errorf("list the packages: %w", err)
	}
	args := []string{"build", "-tags", tags}
	for _, name := range lines(out.String()) {
		if name != program {
			args = append(args, name)
		}
	}
	for _, s := range systems() {
		t.say("Building for %s/%s.", s[0], s[1])
		if err := t.call(ctx, []string{"CGO_ENABLED=0", "GOOS=" + s[0], "GOARCH=" + s[1]}, "go", args...); err != nil {
			return fmt.Errorf("build for %s/%s: %w", s[0], s[1], err)
		}
	}
	return nil
}
