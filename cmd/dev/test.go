package main

import (
	"context"
	"slices"
)

// test runs the tests without cgo and without a screen; go test's own lines
// are the answer. Flags go through: -run, -v, -update and the rest.
func test(ctx context.Context, t tool, args []string) error {
	packages, flags := splitPackages(args)
	if slices.Contains(flags, "-update") && slices.Contains(packages, "./...") {
		var err error
		if packages, err = updatable(t.root); err != nil {
			return err
		}
	}
	return t.call(ctx, []string{"CGO_ENABLED=0"}, "go", testLine(packages, flags)...)
}

// testLine is the call of go test. Packages stand first: a flag that only the
// test binaries know ends the list of packages.
func testLine(packages, flags []string) []string {
	return slices.Concat([]string{"test", "-tags", tags}, packages, flags)
}
