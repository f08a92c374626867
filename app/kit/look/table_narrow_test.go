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
