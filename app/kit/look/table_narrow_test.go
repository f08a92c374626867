package look

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// A column that is left out takes no room, draws nothing and cannot be hit.
func TestNarrowTableLeavesColumnsOut(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(NewTheme(false, 100))
	table := NewTable("t", []Column{
		{Title: "name", Width: Share(1), Sorts: true}, {Title: "more", Width: Fixed(200), Sorts: true, From: 500}, {Title: "last", Width: Fixed(100), Sorts: true},
	})
	table.SetRows([][]Cell{{{Text: "a"}, {Text: "b"}, {Text: "c"}}})
	sorted := -1
	table.OnSort = func(column int, _ bool) { sorted = column }
	for _, c := range []struct {
		width, name, more float32
	}{{499, 499 - 16 - 16 - 100, 0}, {600, 600 - 16 - 32 - 300, 200}} {
		table.Resize(fyne.NewSize(c.width, 100))
		edges := table.body.edges(c.width)
		if edges[0].width != c.name || edges[1].width != c.more || edges[2].width != 100 {
			t.Errorf("at %g the columns are %+v", c.width, edges)
		}
		table.sortBy(table.columnAt(edges[1].x + 1))
		if want := map[bool]int{true: 2, false: 1}[c.more == 0]; sorted != want {
			t.Errorf("at %g column %d was hit, want %d", c.width, sorted, want)
		}
	}
}

// A column without anything to say gives its room to the others: one that the table would
// be too narrow for stays.
func TestTableWithout(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(NewTheme(false, 100))
	table := NewTable("t", []Column{{Title: "name", Width: Share(1)}, {Title: "in all", Width: Fixed(80), From: 290}, {Title: "portion", Width: Fixed(72)}})
	table.SetRows([][]Cell{{{Text: "a"}, {Text: "b"}, {Text: "c"}}})
	widths := func() (list [3]float32) {
		for i, e := range table.body.edges(270) {
			list[i] = e.width
		}
		return list
	}
	if got := widths(); got[1] != 0 || got[2] != 72 {
		t.Errorf("with all columns they are %v wide", got)
	}
	table.Without(2, true)
	if got := widths(); got[1] != 80 || got[2] != 0 {
		t.Errorf("without the last column they are %v wide", got)
	}
	table.Without(2, false)
	if got := widths(); got[2] != 72 {
		t.Errorf("with the column back they are %v wide", got)
	}
}
