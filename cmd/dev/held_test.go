package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const heldPrinted = `pkg: p
BenchmarkList-2   3   0 ns/op   30.0 ms-large   10.0 ms-small   5.0 ms-sqlite3
BenchmarkAlone-2  3   0 ns/op   30.0 ms-large   10.0 ms-small   1 peer-missing(sqlite3)
BenchmarkMove-2   9   12.0 ns/op   120 allocs/op
BenchmarkLong-2   9   2000000 ns/op
BenchmarkShort-2  9   1000000 ns/op
`

// A line is met, missed, without its peer, or was not run; what is taken off first
// is taken off.
func TestHeldLines(t *testing.T) {
	line := func(says, bench, unit string) held { return held{says: says, pkg: "p", bench: bench, unit: unit} }
	list := line("list", "BenchmarkList", "ms-large")
	list.beyond, list.peer, list.peerUnit, list.most = "ms-small", "sqlite3", "ms-sqlite3", 2
	alone := list
	alone.says, alone.bench = "alone", "BenchmarkAlone"
	move := line("move", "BenchmarkMove", "allocs/op")
	move.most = 99
	long := line("long", "BenchmarkLong", "ns/op")
	long.peer, long.against, long.peerUnit, long.most = "short", "BenchmarkShort", "ns/op", 2
	lost := long
	lost.says, lost.against = "lost", "BenchmarkGone"
	gone := line("gone", "BenchmarkGone", "ns/op")
	all := []held{list, alone, move, long, lost, gone}
	var out bytes.Buffer
	if err := writeHeld(&out, judge(all, parseBench(heldPrinted), true)); err != nil {
		t.Fatal(err)
	}
	got := strings.Join(strings.Fields(out.String()), " ")
	for _, want := range []string{
		"list 20 ms 5 ms sqlite3 4.00 2 x MISSED",
		"alone 20 ms - sqlite3 - 2 x peer missing: sqlite3",
		"move 120 - - at most 99 MISSED",
		"long 2 ms 1 ms short 2.00 2 x met",
		"lost 2 ms - short - 2 x peer missing",
		"gone - - - at most 0 not run",
		"1 met, 2 missed, 3 without a peer or not run",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("the lines lack %q:\n%s", want, out.String())
		}
	}
	if some := judge(all, parseBench(heldPrinted), false); len(some) != 5 {
		t.Errorf("%d lines where only some benchmarks ran", len(some))
	}
}

// Every line names a benchmark that its package has.
func TestHeldLinesNameBenchmarks(t *testing.T) {
	for _, h := range heldLines() {
		if h.pkg == program {
			continue // measured by the helper itself
		}
		source := ""
		files, err := filepath.Glob(filepath.Join("..", "..", filepath.FromSlash(strings.TrimPrefix(h.pkg, "ebbwell/")), "*_test.go"))
		if err != nil {
			t.Fatal(err)
		}
		for _, file := range files {
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			source += string(data)
		}
		units := []string{h.unit, h.beyond}
		for _, bench := range []string{h.bench, h.against} {
			name, part, _ := strings.Cut(bench, "/")
			part = strings.ReplaceAll(part, "_", " ")
			if name != "" && !strings.Contains(source, "func "+name+"(b *testing.B)") || !strings.Contains(source, `"`+part+`"`) && part != "" {
				t.Errorf("%s: %s has no %s", h.says, h.pkg, bench)
			}
		}
		for _, unit := range append(units, h.peerUnit) {
			if unit != "" && !strings.HasSuffix(unit, "/op") && !strings.Contains(source, `"`+unit+`"`) {
				t.Errorf("%s: %s reports no %s", h.says, h.pkg, unit)
			}
		}
	}
}
