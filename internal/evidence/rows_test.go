package evidence

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ebbwell/internal/published"
)

// link ties an evidence entry to the rows that hold it. A trait is a pair
// "name=value" that the row has among its inputs.
type link struct {
	entry, topic, kind string
	traits             []string
}

// longTable is a table of coefficients that is held as a whole: its rows run
// through all of them, and none has a published figure of its own.
type longTable struct {
	prefix, except string
	by             link
	why            string
}

// longTables are the tables whose entries need no row each.
func longTables() []longTable {
	return []longTable{
		{"climate.strain.", "climate.strain.domain.", link{topic: "heat_strain", kind: "water g"},
			"the coefficients of ISO 7933, held by its ten worked cases and the grid"},
		{"climate.weather.", "", link{topic: "wbgt", kind: "from weather"},
			"the coefficients of Liljegren et al. 2008, held by the output of its own program"},
	}
}

// topics reads every file of check values but the links.
func topics(t *testing.T) map[string][]published.Row {
	t.Helper()
	folder, err := published.Folder()
	if err != nil {
		t.Fatal(err)
	}
	names, err := filepath.Glob(filepath.Join(folder, "*.csv"))
	if err != nil {
		t.Fatal(err)
	}
	all := map[string][]published.Row{}
	for _, name := range names {
		topic := strings.TrimSuffix(filepath.Base(name), ".csv")
		if topic == "entries" {
			continue
		}
		if all[topic], err = published.Rows(topic); err != nil {
			t.Fatal(err)
		}
	}
	return all
}

// links reads entries.csv.
func links(t *testing.T) []link {
	t.Helper()
	folder, err := published.Folder()
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(filepath.Join(folder, "entries.csv"))
	if err != nil {
		t.Fatal(err)
	}
	r := csv.NewReader(bytes.NewReader(text))
	r.Comment = '#'
	records, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(records[0], []string{"entry", "topic", "case", "inputs"}) {
		t.Fatalf("columns %v", records[0])
	}
	var list []link
	for _, rec := range records[1:] {
		l := link{entry: rec[0], topic: rec[1], kind: rec[2]}
		for _, pair := range strings.Split(rec[3], ";") {
			if pair = strings.TrimSpace(pair); pair != "" {
				l.traits = append(l.traits, pair)
			}
		}
		list = append(list, l)
	}
	return list
}

// holds reports whether a row is of the link's case and has its traits. A row
// of practice or of a proposal holds nothing published.
func (l link) holds(r published.Row) bool {
	if r.Case != l.kind || r.Sure == "P" || r.Sure == "C" {
		return false
	}
	for _, trait := range l.traits {
		name, value, _ := strings.Cut(trait, "=")
		if r.Inputs[name] != value {
			return false
		}
	}
	return true
}

// named is the entry that a row names itself, if it does.
func named(topic string, r published.Row) string {
	switch {
	case r.Case == "entry":
		return r.Inputs["id"]
	case topic == "sodium" && r.Case == "agreement":
		return "sodium.site." + r.Inputs["site"] + "." + r.Inputs["of"]
	case topic == "groups" && (r.Case == "mean" || r.Case == "sd"):
		return r.Inputs["group"] + "." + r.Case
	case topic == "limits" && r.Case == "edge":
		return "limit." + r.Inputs["field"] + "." + r.Inputs["edge"]
	}
	return ""
}

// isPublished reports whether an entry was read, quoted or remembered, so that a
// row must hold it.
func isPublished(e Entry) bool {
	return e.Sure == Read || e.Sure == Second || e.Sure == Memory
}

// untouched lists the published entries that no row holds, and the links that
// lead nowhere.
func untouched(entries []Entry, rows map[string][]published.Row, ties []link) []string {
	touched, known, wrong := map[string]bool{}, map[string]Entry{}, []string{}
	for _, e := range entries {
		known[e.ID] = e
	}
	for topic, list := range rows {
		for _, r := range list {
			touched[named(topic, r)] = true
		}
	}
	for _, l := range ties {
		_, there := known[l.entry]
		switch {
		case !there:
			wrong = append(wrong, l.entry+": no such entry")
		case touched[l.entry]:
			wrong = append(wrong, l.entry+": tied, and held already")
		case !slices.ContainsFunc(rows[l.topic], l.holds):
			wrong = append(wrong, l.entry+": the row it is tied to is not there")
		}
		touched[l.entry] = true
	}
	for _, e := range entries {
		if isPublished(e) && !touched[e.ID] && !inLongTable(e.ID) {
			wrong = append(wrong, fmt.Sprintf("%s (%s, %s): no row", e.ID, e.Source.Short, e.Sure))
		}
	}
	return wrong
}

// inLongTable reports whether an entry is held with its whole table.
func inLongTable(id string) bool {
	return slices.ContainsFunc(longTables(), func(l longTable) bool {
		return strings.HasPrefix(id, l.prefix) && (l.except == "" || !strings.HasPrefix(id, l.except))
	})
}

// TestEveryEntryHasARow makes sure that each evidence entry that was read,
// quoted or remembered is held by a row, the long tables as a whole.
func TestEveryEntryHasARow(t *testing.T) {
	rows := topics(t)
	for _, s := range untouched(All(), rows, links(t)) {
		t.Error(s)
	}
	for _, l := range longTables() {
		of := slices.DeleteFunc(All(), func(e Entry) bool { return !strings.HasPrefix(e.ID, l.prefix) })
		if len(of) < 20 || !slices.ContainsFunc(rows[l.by.topic], l.by.holds) || l.why == "" {
			t.Errorf("%s: %d entries, or no row that runs through them", l.prefix, len(of))
		}
	}
}

// TestRowsThatNameEntries holds the letter and the value of each row that names
// an entry against the entry.
func TestRowsThatNameEntries(t *testing.T) {
	count := 0
	for topic, list := range topics(t) {
		for _, r := range list {
			id := named(topic, r)
			if id == "" {
				continue
			}
			count++
			e, ok := Find(id)
			if !ok {
				t.Errorf("%s, line %d: no entry %q", topic, r.Line, id)
				continue
			}
			// The end of clothing insulation holds what ensembles reach, remembered.
			if string(e.Sure) != r.Sure && id != "limit."+string(Insulation)+".refuse.high" {
				t.Errorf("%s, line %d: %s is %s, its row says %s", topic, r.Line, id, e.Sure, r.Sure)
			}
			text := r.Expected
			if r.Case == "edge" {
				text = r.Inputs["at"]
			}
			reach, _ := published.Reach(r.Tolerance, e.Value)
			if want, err := strconv.ParseFloat(text, 64); err != nil || !(want-reach <= e.Value && e.Value <= want+reach) {
				t.Errorf("%s, line %d: %s is %g, its row says %s", topic, r.Line, id, e.Value, text)
			}
		}
	}
	if count < 100 {
		t.Errorf("only %d rows name an entry", count)
	}
}

// TestUntouchedFinds makes sure that the search above can fail.
func TestUntouchedFinds(t *testing.T) {
	entries := []Entry{
		{ID: "a.read", Sure: Read}, {ID: "a.second", Sure: Second}, {ID: "a.memory", Sure: Memory},
		{ID: "a.own", Sure: Proposal},
	}
	row := func(sure string) published.Row {
		return published.Row{Case: "rate", Inputs: map[string]string{"kg": "70"}, Sure: sure}
	}
	tie := link{entry: "a.second", topic: "x", kind: "rate", traits: []string{"kg=70"}}
	for _, c := range []struct {
		name string
		rows []published.Row
		ties []link
		want int
	}{
		{"nothing held", nil, nil, 3},
		{"one named, one tied", []published.Row{{Case: "entry", Inputs: map[string]string{"id": "a.read"}, Sure: "R"}, row("D")}, []link{tie}, 1},
		{"tied to no row", nil, []link{tie}, 3},
		{"tied to another input", []published.Row{row("D")}, []link{{"a.second", "x", "rate", []string{"kg=71"}}}, 3},
		{"tied to practice", []published.Row{row("C")}, []link{tie}, 3},
		{"no such entry", []published.Row{row("D")}, []link{{"a.lost", "x", "rate", nil}}, 4},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := untouched(entries, map[string][]published.Row{"x": c.rows}, c.ties); len(got) != c.want {
				t.Errorf("%d complaints, want %d: %v", len(got), c.want, got)
			}
		})
	}
}
