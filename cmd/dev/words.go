package main

import (
	"context"
	"slices"
)

// words says how far the languages are; -lang de lists what is missing and wrong.
func words(ctx context.Context, t tool, args []string) error {
	return t.call(ctx, []string{"CGO_ENABLED=0"}, "go", slices.Concat([]string{"run", "./cmd/dev/words"}, args)...)
}
