package store

import (
	"fmt"
	"strings"
	"testing"

	"ebbwell/internal/record"
)

// What a long list asks about tests stands whole in indexes: no row of a test is
// read, and where some athletes are named, no line of others.
func TestListsReadIndexes(t *testing.T) {
	s := open(t, t.TempDir(), newClock())
	condition, some := which("athlete_id", []record.ID{"a", "b"})
	for _, one := range []struct {
		question, way string
		values        []any
	}{
		{fmt.Sprintf(newestTests, ""), "SCAN tests USING COVERING INDEX idx_tests_of_athlete", nil},
		{fmt.Sprintf(newestTests, condition), "SEARCH tests USING COVERING INDEX idx_tests_of_athlete", some},
		{listedTest + "state IN (?, ?)", "SEARCH tests USING COVERING INDEX idx_tests_in_state", []any{record.TestOpen, record.TestWaiting}},
	} {
		var id, parent, unused int
		var step string
		var way []string
		must(t, each(s.files.reader, []any{&id, &parent, &unused, &step}, func() { way = append(way, step) }, "EXPLAIN QUERY PLAN "+one.question, one.values...))
		if got := strings.Join(way, "; "); !strings.Contains(got, one.way) {
			t.Errorf("%s\nis answered by %s,\nnot by %s", one.question, got, one.way)
		}
	}
}
