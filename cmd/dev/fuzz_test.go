package main

import (
	"slices"
	"testing"
	"time"
)

// Every parser's target is found, and packages choose among them.
func TestFuzzTargets(t *testing.T) {
	root, err := findRoot()
	if err != nil {
		t.Fatal(err)
	}
	all, err := fuzzTargets(root, []string{"./..."})
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []fuzzTarget{
		{"internal/plan", "FuzzReadSports"}, {"internal/quantity", "FuzzParse"}, {"internal/exchange", "FuzzReadJSON"},
		{"internal/consult", "FuzzThaw"}, {"internal/consult", "FuzzThawTest"}, {"internal/store", "FuzzSnapshotOf"},
		{"app/screen/planner/breaks", "FuzzReadScore"}, {"app/screen/planner/session", "FuzzReadBottles"}, {"cmd/dev", "FuzzParseBench"},
	} {
		if !slices.Contains(all, want) {
			t.Errorf("%v is not found", want)
		}
	}
	few, err := fuzzTargets(root, []string{"./internal/climate", "./internal/handout/..."})
	if err != nil || len(few) < 5 || len(few) >= len(all) {
		t.Errorf("%v, %v", few, err)
	}
	for _, one := range few {
		if one.folder != "internal/climate" && one.folder != "internal/handout" {
			t.Errorf("%v was not asked for", one)
		}
	}
}

func TestReadFuzzOutput(t *testing.T) {
	out := "fuzz: elapsed: 0s, execs: 0 (0/sec)\nfuzz: elapsed: 3s, execs: 1234 (411/sec), new interesting: 2 (total: 8)\n"
	if n := executions(out); n != "1234" {
		t.Errorf("%s executions", n)
	}
	out += "--- FAIL: FuzzX (3.1s)\n    x_test.go:3: no\n\n    Failing input written to testdata/fuzz/FuzzX/abc\n    To re-run:\nFAIL\nexit status 1\n"
	if at := findingOf(out); at != "testdata/fuzz/FuzzX/abc" {
		t.Errorf("found %q", at)
	}
	if at := findingOf("./x_test.go:5: undefined: y\nFAIL ebbwell/x [build failed]\n"); at != "./x_test.go:5: undefined: y" {
		t.Errorf("found %q", at)
	}
	const deadline = "--- FAIL: FuzzX (10.1s)\n    context deadline exceeded\n"
	for said, ended := range map[string]bool{
		deadline + "FAIL\nexit status 1\n": true, out: false, deadline + "\n    Failing input written to testdata/fuzz/FuzzX/abc\n": false,
		"--- FAIL: FuzzX (1s)\n    x_test.go:3: wanted: context deadline exceeded\n": false, "": false,
	} {
		if timeEnded(said) != ended {
			t.Errorf("%q is the end of the time: %v", said, !ended)
		}
	}
	if executions("") != "-" || findingOf("") == "" {
		t.Error("nothing said is not told")
	}
	if line := fuzzLine(fuzzTarget{"internal/plan", "FuzzX"}, 3*time.Second); !slices.Contains(line, "^FuzzX$") || line[len(line)-1] != "./internal/plan" {
		t.Errorf("calls %q", line)
	}
	if line := plainLine(fuzzTarget{"internal/store", "FuzzX"}, 3*time.Second, "reached"); !slices.Contains(line, "-test.fuzz=^FuzzX$") || !slices.Contains(line, "-test.fuzztime=3s") {
		t.Errorf("calls %q", line)
	}
}
