package exchange

// dictionaryName is the table that explains the others.
const dictionaryName = "dictionary"

// Dictionary explains the columns.
type Dictionary []Meaning

// Meaning explains one column.
type Meaning struct {
	Table  string
	Column Column
	// Means is what it is, in a sentence; Range what the program takes without
	// asking; Source where that range is from. Empty where there is none.
	Means, Range, Source string
}

// NewDictionary lists every column of every table; explain is asked for each.
func NewDictionary(explain func(table string, c Column) (means, limits, source string)) Dictionary {
	var d Dictionary
	add := func(table string, c Column) {
		m := Meaning{Table: table, Column: c}
		m.Means, m.Range, m.Source = explain(table, c)
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
	for _, name := range []string{"table", "column", "unit", "holds", "means", "range", "source"} {
		t.Columns = append(t.Columns, Column{Name: name, Holds: HoldsText})
	}
	for _, m := range d {
		t.Rows = append(t.Rows, []string{m.Table, m.Column.Name, m.Column.Unit, string(m.Column.Holds), m.Means, m.Range, m.Source})
	}
	return t
}
