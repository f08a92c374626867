package main

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
)

// shots draws every screen into a folder, by default shots/; flags before the
// folder draw less, see cmd/dev/shots; -help lists them.
func shots(ctx context.Context, t tool, args []string) error {
	dir := filepath.Join(t.root, "shots")
	flags := args
	if n := len(args); n%2 == 1 && !strings.HasPrefix(args[n-1], "-") { // each flag has a value
		var err error
		if dir, err = filepath.Abs(args[n-1]); err != nil {
			return fmt.Errorf("find the folder: %w", err)
		}
		flags = args[:n-1]
	}
	return t.call(ctx, []string{"CGO_ENABLED=0"}, "go", slices.Concat([]string{"run", "-tags", tags, "./cmd/dev/shots"}, flags, []string{dir})...)
}
