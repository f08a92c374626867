package look_test

import (
	"fmt"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
)

// roster makes a table of n rows and notes what it tells.
func roster(n int) (table *look.Table, events *[]string) {
	events = &[]string{}
	note := func(what string) { *events = append(*events, what) }
	table = look.NewTable("roster", []look.Column{{Title: "name", Width: look.Share(1), Sorts: true},
		{Title: "sport", Width: look.Share(1)}, {Title: "sweat rate", Width: look.Fixed(80), Right: true, Sorts: true}})
	table.OnChosen = func(i int) { note(fmt.Sprint("chosen ", i)) }
	table.OnOpened = func(i int) { note(fmt.Sprint("opened ", i)) }
	table.OnSort = func(c int, down bool) { note(fmt.Sprint("sort ", c, " ", down)) }
	table.OnKey = func(e *fyne.KeyEvent) { note("key " + string(e.Name)) }
	var rows [][]look.Cell
	for i := range n {
		rows = append(rows, []look.Cell{{Text: fmt.Sprint("athlete ", i)}, {Text: "hockey"}, {Text: "1.36 L/h"}})
	}
	table.SetRows(rows)
	return table, events
}

func TestTableKeys(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	for _, c := range []struct {
		keys []fyne.KeyName
		want string
	}{
		{[]fyne.KeyName{fyne.KeyDown, fyne.KeyDown, fyne.KeyUp}, "[chosen 0 chosen 1 chosen 0]"},
		{[]fyne.KeyName{fyne.KeyEnd, fyne.KeyDown, fyne.KeyReturn}, "[chosen 29 chosen 29 opened 29]"},
		{[]fyne.KeyName{fyne.KeyPageDown, fyne.KeyHome, fyne.KeyEnter}, "[chosen 9 chosen 0 opened 0]"},
		{[]fyne.KeyName{fyne.KeyReturn}, "[]"},
		{[]fyne.KeyName{fyne.KeyRight, fyne.KeyRight, fyne.KeySpace, fyne.KeyLeft}, "[sort 0 false sort 2 false sort 2 true sort 0 false]"},
		{[]fyne.KeyName{fyne.KeyEscape}, "[key Escape]"},
	} {
		table, events := roster(30)
		golden.Open(t, table, fyne.NewSize(500, 900))
		for _, k := range c.keys {
			table.TypedKey(&fyne.KeyEvent{Name: k})
		}
		if got := fmt.Sprint(*events); got != c.want {
			t.Errorf("%v told %v, want %v", c.keys, got, c.want)
		}
	}
}

func TestTableMouse(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	table, events := roster(5)
	golden.Open(t, table, fyne.NewSize(500, 300))
	click := func(x, y float32) { table.Tapped(&fyne.PointEvent{Position: fyne.NewPos(x, y)}) }
	row := func(i int) float32 { return table.HeaderHeight() + (float32(i)+0.5)*table.RowHeight() }
	click(20, row(2))
	click(20, row(2))
	click(20, row(4)+table.RowHeight())
	click(450, 5)
	click(450, 5)
	click(250, 5)
	if got, want := fmt.Sprint(*events), "[chosen 2 opened 2 sort 2 false sort 2 true]"; got != want {
		t.Errorf("told %v, want %v", got, want)
	}
}

// A table that scrolls shows the chosen row and keeps no more rows than fit.
func TestTableScrolls(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	table, _ := roster(5000)
	table.Scrolling()
	w := golden.Open(t, table, fyne.NewSize(500, 300))
	table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
	if table.Chosen() != 4999 {
		t.Fatalf("row %d is chosen", table.Chosen())
	}
	golden.Window(t, "table-scrolled-light-100", w, *update)
}

func TestTableChooseTellsNobody(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	table, events := roster(5)
	table.Choose(3)
	table.Choose(77)
	if table.Chosen() != 3 || len(*events) != 0 {
		t.Errorf("row %d, told %v", table.Chosen(), *events)
	}
	table.SetRows(nil)
	if table.Chosen() != -1 || table.Rows() != 0 {
		t.Errorf("an empty table has row %d chosen", table.Chosen())
	}
	table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	if len(*events) != 0 {
		t.Errorf("an empty table told %v", *events)
	}
}

// Where one click opens, the first does; a title that sorts has its signs and the hand
// over it.
func TestTableOpensAtOneClick(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	table, events := roster(5)
	table.OneClick()
	golden.Open(t, table, fyne.NewSize(500, 300))
	at := func(x, y float32) *desktop.MouseEvent {
		return &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(x, y)}}
	}
	row := table.HeaderHeight() + 2.5*table.RowHeight()
	table.Tapped(&fyne.PointEvent{Position: fyne.NewPos(20, row)})
	if got := fmt.Sprint(*events); got != "[chosen 2 opened 2]" {
		t.Errorf("told %v", got)
	}
	for _, c := range []struct {
		x, y float32
		want desktop.Cursor
	}{{20, row, desktop.PointerCursor}, {20, 5, desktop.PointerCursor}, {250, 5, desktop.DefaultCursor}, {20, 290, desktop.DefaultCursor}} {
		table.MouseMoved(at(c.x, c.y))
		if got := table.Cursor(); got != c.want {
			t.Errorf("at %g, %g the cursor is %v, want %v", c.x, c.y, got, c.want)
		}
	}
}

// A cell says what its column has room for, the longest first.
func TestCellSaysWhatFits(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	table := look.NewTable("t", []look.Column{{Title: "alerts", Width: look.Share(1)}})
	table.SetRows([][]look.Cell{{{Text: "low blood sodium in the past +1", Short: []string{"2 alerts"}}}})
	w := golden.Open(t, table, fyne.NewSize(400, 100))
	for _, c := range []struct {
		width float32
		want  string
	}{{400, "low blood sodium in the past +1"}, {150, "2 alerts"}, {50, "2 a…"}} {
		w.Resize(fyne.NewSize(c.width, 100))
		if !slices.Contains(texts(table), c.want) {
			t.Errorf("at %g px it says %q, want %q", c.width, texts(table), c.want)
		}
	}
}

// texts are all that an object writes.
func texts(o fyne.CanvasObject) []string {
	var list []string
	switch o := o.(type) {
	case *canvas.Text:
		list = append(list, o.Text)
	case *fyne.Container:
		for _, part := range o.Objects {
			list = append(list, texts(part)...)
		}
	case fyne.Widget:
		for _, part := range test.WidgetRenderer(o).Objects() {
			list = append(list, texts(part)...)
		}
	}
	return list
}

// The border of the focus is seen when the keyboard came by a key, and not after a click.
func TestTableRingsForTheKeyboard(t *testing.T) {
	golden.Use(t, golden.Light())
	table, _ := roster(5)
	w := golden.Open(t, table, fyne.NewSize(500, 300))
	ringed := func() bool {
		return slices.ContainsFunc(rectangles(table), func(r *canvas.Rectangle) bool {
			return r.StrokeWidth == 2 && r.StrokeColor == look.PaletteNow().Ink
		})
	}
	table.Tapped(&fyne.PointEvent{Position: fyne.NewPos(20, table.HeaderHeight()+5)})
	if w.Canvas().Focused() != fyne.Focusable(table) || ringed() {
		t.Error("a click shows the border of the focus, or does not give the keyboard")
	}
	if table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown}); !ringed() {
		t.Error("a key does not bring the border back")
	}
	w.Canvas().Unfocus()
	if ringed() {
		t.Error("the border stays without the keyboard")
	}
	if w.Canvas().FocusNext(); !ringed() {
		t.Error("Tab shows no border")
	}
}

// rectangles are all that an object draws.
func rectangles(o fyne.CanvasObject) []*canvas.Rectangle {
	var list []*canvas.Rectangle
	switch o := o.(type) {
	case *canvas.Rectangle:
		list = append(list, o)
	case *fyne.Container:
		for _, part := range o.Objects {
			list = append(list, rectangles(part)...)
		}
	case fyne.Widget:
		for _, part := range test.WidgetRenderer(o).Objects() {
			list = append(list, rectangles(part)...)
		}
	}
	return list
}
