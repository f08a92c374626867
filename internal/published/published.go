// Package published walks the check values of testdata/published: figures from
// the literature, each with its source and how surely it was read, that tests
// hold the program against.
//
// A file is one topic, a CSV with the columns
//
//	case, inputs, expected, tolerance, source, sure
//
// where case names what is worked out, inputs are "name=value; name=value",
// expected is a number or a word, and tolerance is absolute ("0.05") or relative
// ("0.5 %"), empty for words. A row whose sure is M says "from memory" in its
// source, and one with C says "common practice, no source".
//
// [Walk] runs every row as a subtest named after its source. It fails on a file
// without rows, on a case or an input that nobody reads, and on a row that does
// not say where it comes from.
package published

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// What can be wrong with a row.
var (
	errColumns = errors.New("columns are not case, inputs, expected, tolerance, source, sure")
	errNoRows  = errors.New("no rows")
	errSource  = errors.New("row does not say where it comes from")
	errInput   = errors.New("input is not name=value")
)

// Row is one check value.
type Row struct {
	Line      int
	Case      string
	Inputs    map[string]string
	Expected  string
	Tolerance string
	Source    string
	Sure      string
}

// Name is the name of the row's subtest.
func (r Row) Name() string {
	return fmt.Sprintf("%s [%s] %s, line %d", r.Source, r.Sure, r.Case, r.Line)
}

// Folder is the folder of the check values, found upwards from where a test
// runs.
func Folder() (string, error) {
	at, err := os.Getwd()
	if err != nil {
		return "", fmt.Errorf("find check values: %w", err)
	}
	for {
		if _, err := os.Stat(filepath.Join(at, "go.mod")); err == nil {
			return filepath.Join(at, "testdata", "published"), nil
		}
		up := filepath.Dir(at)
		if up == at {
			return "", fmt.Errorf("find check values: no go.mod above the test")
		}
		at = up
	}
}

// Rows reads one topic.
func Rows(topic string) ([]Row, error) {
	folder, err := Folder()
	if err != nil {
		return nil, err
	}
	text, err := os.ReadFile(filepath.Join(folder, topic+".csv"))
	if err != nil {
		return nil, fmt.Errorf("open check values: %w", err)
	}
	r := csv.NewReader(bytes.NewReader(text))
	r.Comment = '#'
	records, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("read check values %s: %w", topic, err)
	}
	if len(records) < 2 {
		return nil, fmt.Errorf("read check values %s: %w", topic, errNoRows)
	}
	if !slices.Equal(records[0], []string{"case", "inputs", "expected", "tolerance", "source", "sure"}) {
		return nil, fmt.Errorf("read check values %s: %w", topic, errColumns)
	}
	var rows []Row
	for i, rec := range records[1:] {
		row, err := parse(i+2, rec)
		if err != nil {
			return nil, fmt.Errorf("read check values %s, row %d: %w", topic, i+2, err)
		}
		rows = append(rows, row)
	}
	return rows, nil
}

// parse reads one row.
func parse(line int, rec []string) (Row, error) {
	r := Row{Line: line, Case: rec[0], Inputs: map[string]string{}, Expected: rec[2], Tolerance: rec[3], Source: rec[4], Sure: rec[5]}
	for _, pair := range strings.Split(rec[1], ";") {
		if strings.TrimSpace(pair) == "" {
			continue
		}
		name, value, ok := strings.Cut(pair, "=")
		if !ok {
			return r, fmt.Errorf("%w: %q", errInput, pair)
		}
		r.Inputs[strings.TrimSpace(name)] = strings.TrimSpace(value)
	}
	said := strings.TrimSpace(r.Source) != "" && len(r.Sure) == 1 && strings.Contains("RSMDPC", r.Sure)
	if r.Sure == "M" && !strings.Contains(r.Source, "from memory") {
		said = false
	}
	if r.Sure == "C" && !strings.Contains(r.Source, "common practice, no source") {
		said = false
	}
	if !said {
		return r, errSource
	}
	return r, nil
}

// In are the inputs of one row; it fails the test for one that is missing, and
// remembers which were read.
type In struct {
	t    testing.TB
	row  Row
	read map[string]bool
}

// Number reads an input as a number.
func (in In) Number(name string) float64 {
	in.t.Helper()
	x, err := strconv.ParseFloat(in.Text(name), 64)
	if err != nil {
		in.t.Fatalf("input %s: not a number: %q", name, in.row.Inputs[name])
	}
	return x
}

// Text reads an input as it stands.
func (in In) Text(name string) string {
	in.t.Helper()
	in.read[name] = true
	v, ok := in.row.Inputs[name]
	if !ok {
		in.t.Fatalf("input %s is missing", name)
	}
	return v
}

// TB is the test of the row.
func (in In) TB() testing.TB { return in.t }

// Case is what the row has worked out.
func (in In) Case() string { return in.row.Case }

// Has reports whether an input stands in the row.
func (in In) Has(name string) bool {
	in.read[name] = true
	_, ok := in.row.Inputs[name]
	return ok
}

// Model works out one case: a float64 or a string.
type Model func(in In) any

// Walk holds every row of a topic against the models, by case.
func Walk(t *testing.T, topic string, models map[string]Model) {
	t.Helper()
	rows, err := Rows(topic)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows {
		t.Run(r.Name(), func(t *testing.T) {
			model, ok := models[r.Case]
			if !ok {
				t.Fatalf("no model for case %q", r.Case)
			}
			in := In{t: t, row: r, read: map[string]bool{}}
			got := model(in)
			for name := range r.Inputs {
				if !in.read[name] {
					t.Errorf("input %s is read by nobody", name)
				}
			}
			hold(t, r, got)
		})
	}
}

// WalkAll is [Walk] with one model for all cases, which asks the row for its
// case and fails the test for one it does not know.
func WalkAll(t *testing.T, topic string, model Model) {
	t.Helper()
	rows, err := Rows(topic)
	if err != nil {
		t.Fatal(err)
	}
	models := map[string]Model{}
	for _, r := range rows {
		models[r.Case] = model
	}
	Walk(t, topic, models)
}

// hold compares what came out with what was published.
func hold(t testing.TB, r Row, got any) {
	t.Helper()
	if word, ok := got.(string); ok {
		if word != r.Expected || r.Tolerance != "" {
			t.Errorf("got %q, published %q (tolerance %q)", word, r.Expected, r.Tolerance)
		}
		return
	}
	x, ok := got.(float64)
	want, err := strconv.ParseFloat(r.Expected, 64)
	if !ok || err != nil {
		t.Fatalf("got %v, published %q: not both numbers", got, r.Expected)
	}
	tolerance, err := Reach(r.Tolerance, want)
	if err != nil {
		t.Fatal(err)
	}
	if !(math.Abs(x-want) <= tolerance) {
		t.Errorf("got %.6g, published %g within %g", x, want, tolerance)
	}
}

// Reach is a tolerance in the unit of the value it belongs to.
func Reach(text string, value float64) (float64, error) {
	percent, relative := strings.CutSuffix(strings.TrimSpace(text), "%")
	x, err := strconv.ParseFloat(strings.TrimSpace(percent), 64)
	if err != nil || !(x >= 0) {
		return 0, fmt.Errorf("tolerance %q is not a number", text)
	}
	if relative {
		return x / 100 * math.Abs(value), nil
	}
	return x, nil
}
