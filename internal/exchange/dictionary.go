package exchange

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// dictionaryName is the table that explains the others.
const dictionaryName = "dictionary"

// Dictionary explains the columns. It is English in every language, as the names
// of the columns and tables are, which other programs read; what a column is
// called on the screen stands beside it in the language of the window.
type Dictionary []Meaning

// Meaning explains one column.
type Meaning struct {
	Table  string
	Column Column
	// OnScreen is what the screen calls it; empty where it calls it nothing.
	OnScreen string
	// Means is what it is; Range what it may hold; Source where what it holds, and
	// the limits of it, are from.
	Means, Range, Source string
}

// NewDictionary lists every column of every table; onScreen is asked what the
// screen calls each, nil when nobody knows.
func NewDictionary(onScreen func(table string, c Column) string) Dictionary {
	var d Dictionary
	add := func(table string, c Column) {
		m := meaningOf(table, c)
		if onScreen != nil {
			m.OnScreen = onScreen(table, c)
		}
		d = append(d, m)
	}
	for _, top := range shapes() {
		for _, s := range top.all() {
			for _, c := range s.columns() {
				add(s.name, c)
			}
		}
	}
	for _, c := range resultColumns() {
		add(ResultsName, c)
	}
	return d
}

// table is the dictionary as a table.
func (d Dictionary) table() Table {
	t := Table{Name: dictionaryName}
	for _, name := range []string{"table", "column", "unit", "holds", "meaning", "range", "source", "on the screen"} {
		t.Columns = append(t.Columns, Column{Name: name, Holds: HoldsText})
	}
	t.Rows = append(t.Rows, []string{dictionaryName, "meaning", noUnit, string(HoldsText),
		"This dictionary is in English in every language; what the screen calls a column stands last, in the language of the window.", anyText, sources()["program"], ""})
	for _, m := range d {
		unit := m.Column.Unit
		if unit == "" {
			unit = noUnit
		}
		t.Rows = append(t.Rows, []string{m.Table, m.Column.Name, unit, string(m.Column.Holds), m.Means, m.Range, m.Source, m.OnScreen})
	}
	return t
}

const (
	// noUnit is the unit of what has none.
	noUnit  = "none"
	anyText = "any text"
)

// typedEnd ends the name of a column that holds the unit a number was typed in.
const typedEnd = ".typed"

// meanings.csv says what each column means: by table and column, "*" for every
// table; a range that begins with "=" is the limits of a field.
//
//go:embed meanings.csv
var meaningsFile string

// explained is one line of that file.
type explained struct{ means, limits, source string }

// meanings is the file by table and column.
var meanings = sync.OnceValue(readMeanings) //nolint:gochecknoglobals // a table that never changes

// readMeanings reads the file; what is wrong with it is found by the tests.
func readMeanings() map[string]explained {
	rows, err := csv.NewReader(strings.NewReader(meaningsFile)).ReadAll()
	if err != nil {
		panic(fmt.Sprintf("exchange: read the meanings of the columns: %v", err))
	}
	all := make(map[string]explained, len(rows))
	for _, r := range rows[1:] {
		all[r[0]+"/"+r[1]] = explained{r[2], r[3], r[4]}
	}
	return all
}

// meaningOf explains one column.
func meaningOf(table string, c Column) Meaning {
	m := Meaning{Table: table, Column: c}
	if name, ok := strings.CutSuffix(c.Name, typedEnd); ok && c.Holds == HoldsUnit {
		m.Means = "Unit in which " + name + " was typed; the number itself is in the unit of its own column"
		m.Range, m.Source = "a unit of the same quantity", sources()["entered"]
		return m
	}
	w, ok := meanings()[table+"/"+c.Name]
	if !ok {
		w = meanings()["*/"+c.Name]
	}
	m.Means, m.Range, m.Source = w.means, w.limits, sources()[w.source]
	switch field, limited := strings.CutPrefix(w.limits, "="); {
	case limited:
		m.Range, m.Source = limitsOf(evidence.Field(field), m.Source)
	case w.limits == "":
		m.Range = usualRange(c.Holds)
	}
	return m
}

// sources says where what a column holds is from.
func sources() map[string]string {
	return map[string]string{
		"entered":    "entered by the practitioner",
		"program":    "set by the program",
		"laboratory": "entered from the laboratory's report",
		"label":      "entered from the label or a food table",
		"calculated": "calculated by the program",
	}
}

// usualRange is what a column may hold that has no limits of its own.
func usualRange(h Holds) string {
	switch h {
	case HoldsNumber:
		return "any number from 0"
	case HoldsWhole:
		return "a whole number from 0"
	case HoldsYesNo:
		return "yes, or empty for no"
	case HoldsDay:
		return "a day as 2026-05-14, or empty"
	case HoldsClock:
		return "a time of day as 17:05, or empty"
	case HoldsMoment:
		return "a moment as 2026-05-14T15:05:00Z, or empty"
	case HoldsRecord:
		return "an id, or empty"
	case HoldsText, HoldsUnit, HoldsChoice:
	}
	return anyText
}

// limitsOf says between which values a field asks nothing, beyond which it is
// refused without a reason, and behind the source whose limits these are.
func limitsOf(f evidence.Field, source string) (limits, whose string) {
	limit, ok := evidence.LimitOf(f)
	if !ok {
		return "", ""
	}
	unit := ""
	if limit.Unit != quantity.None {
		unit = " " + string(limit.Unit)
	}
	number := func(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
	between := func(r quantity.Range) string { return number(r.Low) + " to " + number(r.High) + unit }
	limits = between(limit.Warn) + " without asking; " + between(limit.Refuse) + " at all, unless a reason is given"
	return limits, source + "; limits: " + standing(limit.Sure)
}

// standing says how sure limits are.
func standing(s evidence.Sureness) string {
	switch s {
	case evidence.Read:
		return "read in the source"
	case evidence.Second:
		return "quoted in a second text"
	case evidence.Memory:
		return "not checked against the source"
	case evidence.Derived:
		return "derived from other entries"
	case evidence.Practice:
		return "common practice"
	case evidence.Proposal:
	}
	return "Ebbwell's own rule"
}
