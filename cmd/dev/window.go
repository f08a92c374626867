package main

import (
	"context"
	"fmt"
)

// window builds the real program and the script that drives it, and runs the
// script on a virtual screen. Its arguments go to the script.
func window(ctx context.Context, t tool, args []string) error {
	if err := deps(ctx, t, []string{needBuild, needWindow}); err != nil {
		return err
	}
	program, err := t.buildProgram(ctx)
	if err != nil {
		return err
	}
	return t.drive(ctx, program, args)
}

// drive builds the script and lets it drive a program.
func (t tool) drive(ctx context.Context, program string, args []string) error {
	script := t.bin("window")
	if err := t.call(ctx, []string{"CGO_ENABLED=0"}, "go", "build", "-buildvcs=false", "-o", script, "./cmd/dev/window"); err != nil {
		return fmt.Errorf("build the script: %w", err)
	}
	return t.call(ctx, nil, script, append([]string{"-program", program}, args...)...)
}
