package main

import (
	"context"
	"errors"
	"os/exec"
	"slices"
)

// race runs the tests under the race detector. It needs cgo and so a C
// compiler: `go run ./cmd/dev deps build` installs one. Pictures are left out
// unless asked for: painting takes ten times as long.
func race(ctx context.Context, t tool, args []string) error {
	if _, err := exec.LookPath("gcc"); err != nil {
		return errors.New("the race detector needs a C compiler: go run ./cmd/dev deps build")
	}
	packages, flags := splitPackages(args)
	if slices.Equal(packages, []string{"./..."}) {
		packages = []string{"./app/...", "./internal/..."}
	}
	return t.call(ctx, []string{"CGO_ENABLED=1", keepDrawn, picturesOff, drawn}, "go", raceLine(packages, flags)...)
}

// raceLine is the call of go test.
func raceLine(packages, flags []string) []string {
	return slices.Concat([]string{"test", "-race", "-timeout", "40m", "-tags", tags}, packages, flags)
}
