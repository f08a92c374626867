package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// keepDrawn keeps the toolkit from forgetting how a widget is drawn after a
// minute unseen: on a loaded machine a test takes longer, and its picture would
// depend on that.
const keepDrawn = "FYNE_CACHE=24h"

// roomy lets the tests and what builds them use three times the memory they hold before they
// look for what is no longer used: a seventh of the processor time of the screens' tests
// went into looking.
const roomy = "GOGC=200"

// picturesOff is what the tests look for, see internal/golden.
const picturesOff = "EBBWELL_PICTURES=off"

// drawn is the seed of what the property tests draw, so that a run can be repeated
// and what passed here passes elsewhere; mutants are tried with it too.
// -seed=random searches anew.
const drawn = "RAPID_SEED=20260401"

// test runs the tests without cgo and without a screen; go test's own lines
// are the answer. Flags go through: -run, -v, -update and the rest. Our own is
// -pictures=false, with which nothing is drawn only to be compared, -report,
// which lists what failed, is flaky, was skipped or is slow, and -seed=random or
// a number, from which the property tests draw.
func test(ctx context.Context, t tool, args []string) error {
	env := []string{"CGO_ENABLED=0", keepDrawn, roomy}
	args, off, err := withoutPictures(args)
	if err != nil {
		return err
	}
	if off {
		env = append(env, picturesOff)
	}
	args, seed, err := withSeed(args)
	if err != nil {
		return err
	}
	env = append(env, seed...)
	args, asked := withoutReport(args)
	packages, flags := splitPackages(args)
	if slices.Contains(flags, "-update") && slices.Contains(packages, "./...") {
		if packages, err = updatable(t.root); err != nil {
			return err
		}
	}
	if asked {
		return t.report(ctx, env, packages, flags)
	}
	return t.call(ctx, env, "go", testLine(packages, flags)...)
}

// withSeed takes -seed=random or a number out of the arguments, and gives what the
// environment says of it.
func withSeed(args []string) (rest, env []string, err error) {
	env = []string{drawn}
	for _, a := range args {
		name, value, _ := strings.Cut(strings.TrimLeft(a, "-"), "=")
		switch {
		case name != "seed" || !strings.HasPrefix(a, "-"):
			rest = append(rest, a)
		case value == "random":
			env = nil
		default:
			if n, err := strconv.ParseUint(value, 10, 64); err != nil || n == 0 {
				return nil, nil, fmt.Errorf("%s: say -seed=random or a whole number above 0", a)
			}
			env = []string{"RAPID_SEED=" + value}
		}
	}
	return rest, env, nil
}

// withoutReport takes -report out of the arguments.
func withoutReport(args []string) (rest []string, asked bool) {
	for _, a := range args {
		if a == "-report" || a == "--report" {
			asked = true
			continue
		}
		rest = append(rest, a)
	}
	return rest, asked
}

// withoutPictures takes -pictures=false or true out of the arguments.
func withoutPictures(args []string) (rest []string, off bool, err error) {
	for _, a := range args {
		name, value, _ := strings.Cut(strings.TrimLeft(a, "-"), "=")
		if name != "pictures" || !strings.HasPrefix(a, "-") {
			rest = append(rest, a)
			continue
		}
		on, err := strconv.ParseBool(value)
		if err != nil {
			return nil, false, fmt.Errorf("%s: say -pictures=false or -pictures=true", a)
		}
		off = !on
	}
	if off && slices.Contains(rest, "-update") {
		return nil, false, errors.New("-update keeps pictures, -pictures=false draws none: give one of the two")
	}
	return rest, off, nil
}

// testLine is the call of go test. Packages stand first: a flag that only the
// test binaries know ends the list of packages.
func testLine(packages, flags []string) []string {
	return slices.Concat([]string{"test", "-tags", tags}, packages, flags)
}
