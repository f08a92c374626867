package main

import (
	"bufio"
	"bytes"
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"regexp"
	"slices"
	"strings"
	"time"
)

// How the report reads a run: what takes longer is slow, and what failed is run
// so often again to see whether it is flaky.
const (
	slowFrom  = 5 * time.Second
	slowShown = 20
	again     = 3
)

// ran is one test of a run.
type ran struct {
	pkg, name, how string // pass, fail or skip
	took           time.Duration
	said           string
}

// report runs the tests and lists those that failed, those of them that pass
// when run again and so are flaky, the skipped with their reason, and the slow.
func (t tool) report(ctx context.Context, env, packages, flags []string) error {
	printed, failed := t.read(ctx, env, "go", testLine(packages, append([]string{"-json"}, flags...))...)
	if ctx.Err() != nil {
		return failed
	}
	tests := parseTests(printed)
	if len(tests) == 0 {
		return fmt.Errorf("no test ran; go test said:\n%s", printed)
	}
	flaky := map[string]int{}
	for _, r := range tests {
		if r.how != "fail" || strings.Contains(r.name, "/") || r.name == "" {
			continue
		}
		for range again {
			line := testLine([]string{r.pkg}, []string{"-run", "^" + regexp.QuoteMeta(r.name) + "$", "-count=1"})
			if _, err := t.read(ctx, env, "go", line...); err == nil {
				flaky[r.pkg+" "+r.name]++
			}
		}
	}
	if err := writeReport(t.out, tests, flaky); err != nil {
		return err
	}
	rows, err := countRows(t.root)
	if err == nil {
		_, err = fmt.Fprint(t.out, rows)
	}
	if err != nil {
		return err
	}
	return failed
}

// parseTests reads what go test -json prints; a line that is none is passed
// over.
func parseTests(printed string) []ran {
	type event struct {
		Action, Package, Test, Output string
		Elapsed                       float64
	}
	var list []ran
	said := map[string]string{}
	lines := bufio.NewScanner(strings.NewReader(printed))
	lines.Buffer(nil, 1<<24)
	for lines.Scan() {
		var e event
		if json.NewDecoder(bytes.NewReader(lines.Bytes())).Decode(&e) != nil {
			continue
		}
		key := e.Package + " " + e.Test
		switch e.Action {
		case "output":
			if text := strings.TrimSpace(e.Output); text != "" && !strings.HasPrefix(text, "=== ") && !strings.HasPrefix(text, "--- ") {
				said[key] = text
			}
		case "pass", "fail", "skip":
			list = append(list, ran{e.Package, e.Test, e.Action, time.Duration(e.Elapsed * float64(time.Second)), said[key]})
		}
	}
	return list
}

// writeReport prints the lists.
func writeReport(out io.Writer, tests []ran, flaky map[string]int) error {
	var b strings.Builder
	var failed, skipped, slow []ran
	count := 0
	for _, r := range tests {
		if r.name == "" {
			continue // the package as a whole
		}
		count++
		switch {
		case r.how == "fail" && !strings.Contains(r.name, "/"):
			failed = append(failed, r)
		case r.how == "skip":
			skipped = append(skipped, r)
		}
		if r.took >= slowFrom && !strings.Contains(r.name, "/") {
			slow = append(slow, r)
		}
	}
	slices.SortFunc(slow, func(x, y ran) int { return cmp.Compare(y.took, x.took) })
	fmt.Fprintf(&b, "%d tests\n\nfailed: %d\n", count, len(failed))
	for _, r := range failed {
		fmt.Fprintf(&b, "  %s %s\n", r.pkg, r.name)
	}
	fmt.Fprintf(&b, "\nflaky (failed, then passed when run again %d times): %d\n", again, len(flaky))
	for _, name := range slices.Sorted(maps.Keys(flaky)) {
		fmt.Fprintf(&b, "  %s passed %d of %d\n", name, flaky[name], again)
	}
	fmt.Fprintf(&b, "\nskipped: %d\n", len(skipped))
	for _, r := range skipped {
		fmt.Fprintf(&b, "  %s %s: %s\n", r.pkg, r.name, r.said)
	}
	fmt.Fprintf(&b, "\nslow (from %s): %d\n", slowFrom, len(slow))
	for _, r := range slow[:min(len(slow), slowShown)] {
		fmt.Fprintf(&b, "  %6.1f s  %s %s\n", r.took.Seconds(), r.pkg, r.name)
	}
	if _, err := io.WriteString(out, b.String()); err != nil {
		return fmt.Errorf("write the report: %w", err)
	}
	return nil
}
