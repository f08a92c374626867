package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

func TestReport(t *testing.T) {
	tests := parseTests(strings.Join([]string{
		`{"Action":"output","Package":"p","Test":"TestSkip","Output":"    a_test.go:3: needs Linux\n"}`,
		`{"Action":"output","Package":"p","Test":"TestSkip","Output":"--- SKIP: TestSkip (0.00s)\n"}`,
		`{"Action":"skip","Package":"p","Test":"TestSkip","Elapsed":0}`,
		`no event`,
		`{"Action":"pass","Package":"p","Test":"TestSlow","Elapsed":6.5}`,
		`{"Action":"fail","Package":"p","Test":"TestBad/one","Elapsed":0.1}`,
		`{"Action":"fail","Package":"p","Test":"TestBad","Elapsed":0.1}`,
		`{"Action":"fail","Package":"p","Elapsed":7}`,
	}, "\n"))
	if len(tests) != 5 || tests[1].took != 6500*time.Millisecond {
		t.Fatalf("read %+v", tests)
	}
	var out strings.Builder
	if err := writeReport(&out, tests, map[string]int{"p TestBad": 2}); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"4 tests\n", "failed: 1\n  p TestBad\n", "p TestBad passed 2 of 3", "skipped: 1\n  p TestSkip: a_test.go:3: needs Linux", "slow (from 5s): 1\n     6.5 s  p TestSlow",
	} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("the report does not say %q:\n%s", want, out.String())
		}
	}
}

func TestCountRows(t *testing.T) {
	root := t.TempDir()
	dir := filepath.Join(root, "testdata", "published")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	head := "case,inputs,expected,tolerance,source,sure\n"
	for name, rows := range map[string]string{
		"markers.csv": head + "# remark\nentry,id=a,1,,x,R\nlimit,of=b,2,,x,R\nband,g=1,well,,x,R\n",
		"other.csv":   head + "limit,of=b,2,,x,M\nmean,of=b,2,,x,P\n",
		"entries.csv": head + "a,,b,,x,R\n",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(rows), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	c, err := countRows(root)
	if err != nil || c != (rowCount{published: 2, own: 1, typed: 2}) {
		t.Errorf("%+v, %v", c, err)
	}
}

// The check values of the program itself can be counted, and most are results.
func TestRowsAreMostlyResults(t *testing.T) {
	root, err := findRoot()
	if err != nil {
		t.Fatal(err)
	}
	c, err := countRows(root)
	if err != nil || c.published <= c.typed || c.typed == 0 {
		t.Errorf("%+v, %v", c, err)
	}
	t.Log(strings.TrimSpace(c.String()))
}
