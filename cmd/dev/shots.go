package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
)

// shots draws every screen into a folder, by default shots/.
func shots(ctx context.Context, t tool, args []string) error {
	dir := filepath.Join(t.root, "shots")
	switch len(args) {
	case 0:
	case 1:
		var err error
		if dir, err = filepath.Abs(args[0]); err != nil {
			return fmt.Errorf("find the folder: %w", err)
		}
	default:
		return errors.New("shots takes one folder")
	}
	return t.call(ctx, []string{"CGO_ENABLED=0"}, "go", "run", "-tags", tags, "./cmd/dev/shots", dir)
}
