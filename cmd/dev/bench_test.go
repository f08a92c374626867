package main

import (
	"bytes"
	"strings"
	"testing"
)

const benchPrinted = `goos: linux
pkg: ebbwell/internal/plan
BenchmarkSuggestBaseline-2     	     100	   1000000 ns/op	      16 B/op	       1 allocs/op
BenchmarkSuggestLargest-2      	      50	  20000000 ns/op	    4096 B/op	      12 allocs/op
BenchmarkSuggestLargest-2      	      50	  30000000 ns/op	    4096 B/op	      12 allocs/op
BenchmarkSuggestLargest-2      	      50	  25000000 ns/op	    4096 B/op	      12 allocs/op
some line a test printed
PASS
pkg: ebbwell/app/planner
BenchmarkBaseline              	    1000	    200.0 ns/op
BenchmarkDrag/200-moves-2      	    1000	   3000.0 ns/op	       0.500 worst/op	       0 B/op	       0 allocs/op
BenchmarkAlone                 	some	words ns/op here
ok  	ebbwell/app/planner	2.1s
`

func TestBenchTable(t *testing.T) {
	var out bytes.Buffer
	if err := writeBench(&out, compare(parseBench(benchPrinted))); err != nil {
		t.Fatal(err)
	}
	got := strings.Join(strings.Fields(out.String()), " ")
	for _, want := range []string{
		"ebbwell/internal/plan benchmark time",
		"BenchmarkSuggestBaseline 1 ms 16 1 BenchmarkSuggestLargest", // no ratio to itself
		"BenchmarkSuggestLargest 25 ms 4096 12 25 x BenchmarkSuggestBaseline",
		"BenchmarkBaseline 200 ns - - BenchmarkDrag",
		"BenchmarkDrag/200-moves 3 us 0 0 15 x BenchmarkBaseline 0.5 worst/op",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("the table lacks %q:\n%s", want, out.String())
		}
	}
	if strings.Contains(got, "Alone") {
		t.Errorf("a line that is no benchmark is in the table:\n%s", out.String())
	}
}

func TestNearestBaseline(t *testing.T) {
	run := func(names ...string) (list []result) {
		for _, name := range names {
			list = append(list, result{pkg: "p", name: name, values: map[string][]float64{"ns/op": {1}}})
		}
		return list
	}
	all := append(run("BenchmarkBaseline", "BenchmarkSaveBaseline", "BenchmarkSaveOne", "BenchmarkLoad"),
		result{pkg: "q", name: "BenchmarkLoad"})
	want := []string{"", "", "BenchmarkSaveBaseline", "BenchmarkBaseline", ""}
	for i, r := range all {
		if b, _ := baselineOf(r, all); b.name != want[i] && !strings.HasSuffix(r.name, "Baseline") {
			t.Errorf("%s of %s: got baseline %q, want %q", r.name, r.pkg, b.name, want[i])
		}
	}
	for _, row := range compare(all) {
		if strings.HasSuffix(row.name, "Baseline") && row.ratio != 0 {
			t.Errorf("%s has a ratio", row.name)
		}
	}
}

func TestBenchLine(t *testing.T) {
	for _, c := range []struct{ flags, want string }{
		{"", "-run ^$ -benchmem -timeout 0 -bench ."},
		{"-bench Slider -count 5", "-run ^$ -benchmem -timeout 0 -bench Slider -count 5"},
		{"--bench=Slider", "-run ^$ -benchmem -timeout 0 --bench=Slider"},
		{"-benchtime 50x", "-run ^$ -benchmem -timeout 0 -bench . -benchtime 50x"},
		{"-count 5", "-run ^$ -benchmem -timeout 0 -bench . -count 5"},
	} {
		got := strings.Join(benchLine([]string{"./..."}, strings.Fields(c.flags)), " ")
		if want := "test -tags ci,migrated_fynedo ./... " + c.want; got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestDuration(t *testing.T) {
	for ns, want := range map[float64]string{0.5: "0.5 ns", 999: "999 ns", 1234: "1.23 us", 25e6: "25 ms", 1.5e9: "1.5 s"} {
		if got := duration(ns); got != want {
			t.Errorf("%g ns: got %q, want %q", ns, got, want)
		}
	}
}

func FuzzParseBench(f *testing.F) {
	f.Add(benchPrinted)
	f.Add("BenchmarkX-2 1 NaN ns/op")
	f.Fuzz(func(t *testing.T, printed string) {
		for _, r := range parseBench(printed) {
			if !strings.HasPrefix(r.name, "Benchmark") || len(r.values) == 0 {
				t.Errorf("read %+v", r)
			}
		}
	})
}
