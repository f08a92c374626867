package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
)

// bench runs benchmarks and prints one table: time, memory, and the ratio to
// the baseline of the same run. Timing on a shared machine means little by
// itself; the ratio to something known, measured a moment before, means more.
//
// The baseline of a benchmark is, in its own package, the one whose name ends
// in Baseline and whose name up to there begins the benchmark's name:
// BenchmarkSuggestBaseline for BenchmarkSuggestLargest, BenchmarkBaseline for
// all that have none nearer. With -count the medians are compared.
//
// Below the table stand the lines that are held to a target, each with its peer;
// a peer that is not there is named. Without arguments all of them are measured,
// those of the real window too.
func bench(ctx context.Context, t tool, args []string) error {
	packages, flags := splitPackages(args)
	printed, err := t.read(ctx, []string{"CGO_ENABLED=0"}, "go", benchLine(packages, flags)...)
	if err != nil {
		_, _ = io.WriteString(t.out, printed)
		return err
	}
	results := parseBench(printed)
	if len(results) == 0 {
		return fmt.Errorf("no benchmark ran; go test said:\n%s", printed)
	}
	if err := writeBench(t.out, compare(results)); err != nil {
		return err
	}
	whole := len(args) == 0
	var failed error
	if whole {
		var more []result
		more, failed = t.benchProgram(ctx)
		results = append(results, more...)
	}
	return errors.Join(writeHeld(t.out, judge(heldLines(), results, whole)), failed)
}

// benchLine is the call of go test: no tests, all benchmarks unless some are chosen.
func benchLine(packages, flags []string) []string {
	line := slices.Concat([]string{"test", "-tags", tags}, packages, []string{"-run", "^$", "-benchmem", "-timeout", "0"})
	chosen := func(flag string) bool {
		name, _, _ := strings.Cut(strings.TrimLeft(flag, "-"), "=")
		return name == "bench" && strings.HasPrefix(flag, "-")
	}
	if !slices.ContainsFunc(flags, chosen) {
		line = append(line, "-bench", ".")
	}
	return append(line, flags...)
}

// compared is one row of the table.
type compared struct {
	result
	// ratio is time over the baseline's; 0 when there is no baseline.
	ratio    float64
	baseline string
}

// compare finds each result's baseline.
func compare(results []result) []compared {
	rows := make([]compared, 0, len(results))
	for _, r := range results {
		row := compared{result: r}
		if b, ok := baselineOf(r, results); ok && b.time() > 0 {
			row.baseline, row.ratio = b.name, r.time()/b.time()
		}
		rows = append(rows, row)
	}
	return rows
}

// baselineOf returns the nearest baseline: the one with the longest stem.
func baselineOf(r result, all []result) (best result, ok bool) {
	longest := -1
	for _, b := range all {
		stem, is := strings.CutSuffix(b.name, "Baseline")
		if is && b.pkg == r.pkg && b.name != r.name && strings.HasPrefix(r.name, stem) && len(stem) > longest {
			best, ok, longest = b, true, len(stem)
		}
	}
	return best, ok && !strings.HasSuffix(r.name, "Baseline")
}

// writeBench prints the rows in columns, a heading for each package.
func writeBench(out io.Writer, rows []compared) error {
	width := len("benchmark")
	for _, r := range rows {
		width = max(width, len(r.name))
	}
	var b strings.Builder
	pkg := ""
	for _, r := range rows {
		if r.pkg != pkg {
			pkg = r.pkg
			fmt.Fprintf(&b, "\n%s\n  %-*s %12s %12s %12s  %s\n", pkg, width, "benchmark", "time", "B", "allocations", "against the baseline")
		}
		against := ""
		if r.ratio > 0 {
			against = fmt.Sprintf("%.3g x %s", r.ratio, r.baseline)
		}
		line := fmt.Sprintf("  %-*s %12s %12s %12s  %s%s", width, r.name, duration(r.time()), r.count("B/op"), r.count("allocs/op"), against, r.others())
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	if _, err := io.WriteString(out, b.String()); err != nil {
		return fmt.Errorf("write the table: %w", err)
	}
	return nil
}

// duration writes nanoseconds with three figures and a unit.
func duration(ns float64) string {
	for _, u := range []struct {
		size float64
		name string
	}{{1e9, "s"}, {1e6, "ms"}, {1e3, "us"}} {
		if ns >= u.size {
			return fmt.Sprintf("%.3g %s", ns/u.size, u.name)
		}
	}
	return fmt.Sprintf("%.3g ns", ns)
}
