package look

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

var (
	_ fyne.Focusable     = (*Table)(nil)
	_ fyne.Tappable      = (*Table)(nil)
	_ desktop.Hoverable  = (*Table)(nil)
	_ desktop.Cursorable = (*Table)(nil)
)

// Tapped chooses the row under the pointer, opens it when it was clicked twice,
// or sorts by the header under it.
func (t *Table) Tapped(e *fyne.PointEvent) {
	t.state.pointed = true
	if c := fyne.CurrentApp().Driver().CanvasForObject(t); c != nil {
		c.Focus(t)
	}
	if e.Position.Y < t.HeaderHeight() {
		t.sortBy(t.columnAt(e.Position.X))
		return
	}
	row := t.rowAt(e.Position.Y)
	if row < 0 {
		return
	}
	if t.one && t.OnOpened != nil {
		t.choose(row)
		t.OnOpened(row)
		return
	}
	now := time.Now()
	twice := row == t.state.chosen && now.Sub(t.state.clicked) < fyne.CurrentApp().Driver().DoubleTapDelay()
	t.state.clicked = now
	if twice && t.OnOpened != nil {
		t.OnOpened(row)
		return
	}
	t.choose(row)
}

// rowAt is the row at a height of the table, -1 when there is none.
func (t *Table) rowAt(y float32) int {
	y -= t.HeaderHeight()
	row := int((y + t.offset()) / t.RowHeight())
	if y < 0 || row >= t.count {
		return -1
	}
	return row
}

// columnAt is the column at a distance from the left.
func (t *Table) columnAt(x float32) int {
	for i, edge := range t.body.edges(t.Size().Width) {
		if edge.width > 0 && x < edge.x+edge.width+tablePad {
			return i
		}
	}
	return len(t.columns) - 1
}

// choose chooses a row for the person.
func (t *Table) choose(row int) {
	if row < 0 || row >= t.count {
		return
	}
	t.Choose(row)
	if t.OnChosen != nil {
		t.OnChosen(row)
	}
}

// sortBy asks for another order; the same column again turns it round.
func (t *Table) sortBy(column int) {
	if column < 0 || column >= len(t.columns) || !t.columns[column].Sorts {
		return
	}
	down := column == t.state.sorted && !t.state.down
	t.ShowSort(column, down)
	if t.OnSort != nil {
		t.OnSort(column, down)
	}
}

// nextSort is the next column that sorts, in a direction.
func (t *Table) nextSort(step int) int {
	for i := t.state.sorted + step; i >= 0 && i < len(t.columns); i += step {
		if t.columns[i].Sorts {
			return i
		}
	}
	return -1
}

// TypedKey moves the choice, opens and sorts.
func (t *Table) TypedKey(e *fyne.KeyEvent) {
	page := 10
	if t.scroll != nil {
		page = max(int(t.scroll.Size().Height/t.RowHeight())-1, 1)
	}
	at := t.state.chosen
	t.state.pointed = false
	t.body.Refresh()
	switch e.Name {
	case fyne.KeyUp:
		t.choose(max(at-1, 0))
	case fyne.KeyDown:
		t.choose(min(at+1, t.count-1))
	case fyne.KeyPageUp:
		t.choose(max(at-page, 0))
	case fyne.KeyPageDown:
		t.choose(min(at+page, t.count-1))
	case fyne.KeyHome:
		t.choose(0)
	case fyne.KeyEnd:
		t.choose(t.count - 1)
	case fyne.KeyReturn, fyne.KeyEnter:
		if at >= 0 && t.OnOpened != nil {
			t.OnOpened(at)
		}
	case fyne.KeyLeft:
		t.sortBy(t.nextSort(-1))
	case fyne.KeyRight:
		t.sortBy(t.nextSort(1))
	case fyne.KeySpace:
		t.sortBy(t.state.sorted)
	default:
		if t.OnKey != nil {
			t.OnKey(e)
		}
	}
}

// TypedRune has no use for letters.
func (t *Table) TypedRune(rune) {}

// FocusGained shows the focus.
func (t *Table) FocusGained() { t.setFocus(true) }

// FocusLost hides it.
func (t *Table) FocusLost() { t.setFocus(false) }

func (t *Table) setFocus(on bool) {
	t.state.focused, t.state.pointed = on, t.state.pointed && on
	t.body.Refresh()
	t.Refresh()
}

// MouseIn shows the row under the pointer.
func (t *Table) MouseIn(e *desktop.MouseEvent) { t.MouseMoved(e) }

// MouseMoved follows the pointer.
func (t *Table) MouseMoved(e *desktop.MouseEvent) {
	t.hover(t.rowAt(e.Position.Y))
	t.hoverTitle(t.titleAt(e.Position))
}

// MouseOut forgets it.
func (t *Table) MouseOut() {
	t.hover(-1)
	t.hoverTitle(-1)
}

// titleAt is the title at a place of the table, -1 where there is none that sorts.
func (t *Table) titleAt(at fyne.Position) int {
	if at.Y >= t.HeaderHeight() {
		return -1
	}
	if c := t.columnAt(at.X); t.columns[c].Sorts {
		return c
	}
	return -1
}

func (t *Table) hoverTitle(column int) {
	if t.state.title != column {
		t.state.title = column
		t.Refresh()
	}
}

// Cursor is the pointing hand over what a click sorts by or opens.
func (t *Table) Cursor() desktop.Cursor {
	if t.state.title >= 0 || t.one && t.state.hovered >= 0 {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

func (t *Table) hover(row int) {
	if t.state.hovered == row || t.OnChosen == nil && t.OnOpened == nil {
		return
	}
	t.state.hovered = row
	t.body.Refresh()
}
