package field_test

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/field/drive"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
)

// open shows fields one below the other and drives them.
func open(t *testing.T, fields ...fyne.CanvasObject) *drive.Driver {
	t.Helper()
	w := golden.Open(t, look.VBox(8, fields...), fyne.NewSize(400, 300))
	return drive.On(t, w.Canvas())
}

// use gives a test the light look at 100 %, and a host.
func use(t *testing.T) *field.Host {
	t.Helper()
	golden.Use(t, golden.Mode{Percent: 100})
	return newHost(t)
}

// diary notes what a field tells.
type diary []string

func (d *diary) note(format string, args ...any) { *d = append(*d, fmt.Sprintf(format, args...)) }

// expect compares and empties the diary.
func (d *diary) expect(t *testing.T, want ...string) {
	t.Helper()
	if strings.Join(*d, " | ") != strings.Join(want, " | ") {
		t.Errorf("told %q, want %q", *d, want)
	}
	*d = nil
}

func control(key fyne.KeyName, more ...fyne.KeyModifier) fyne.Shortcut {
	m := fyne.KeyModifierControl
	for _, x := range more {
		m |= x
	}
	return &desktop.CustomShortcut{KeyName: key, Modifier: m}
}

func TestLineTells(t *testing.T) {
	h := use(t)
	var events diary
	l, other := field.NewLine(h, "name", 0), field.NewLine(h, "other", 0)
	l.OnChanged = func(s string) { events.note("changed %s", s) }
	l.OnLeft = func(s string) { events.note("left %s", s) }
	d := open(t, l, other)
	l.SetText("set by code")
	events.expect(t)
	d.Focus("name")
	d.Type("ab")
	events.expect(t, "changed a", "changed ab")
	d.Key(fyne.KeyBackspace)
	d.Tab()
	events.expect(t, "changed a", "left a")
	if d.Focused() != "other" {
		t.Errorf("Tab went to %q", d.Focused())
	}
	d.BackTab()
	d.Key(fyne.KeyReturn)
	events.expect(t, "left a")
	l.OnEnter = func(s string) { events.note("enter %s", s) }
	d.Key(fyne.KeyReturn)
	events.expect(t, "left a", "enter a")
}

func TestLineKeys(t *testing.T) {
	for _, c := range []struct {
		name string
		do   func(*drive.Driver)
		want string
	}{
		{"typing replaces what Tab selected", func(d *drive.Driver) { d.Type("x") }, "x"},
		{"Home", func(d *drive.Driver) { d.Key(fyne.KeyHome); d.Type("x") }, "xsports drink"},
		{"End", func(d *drive.Driver) { d.Key(fyne.KeyHome, fyne.KeyEnd); d.Type("x") }, "sports drinkx"},
		{"Left goes to the start of a selection", func(d *drive.Driver) { d.Key(fyne.KeyLeft); d.Type("x") }, "xsports drink"},
		{"Right goes to its end", func(d *drive.Driver) { d.Key(fyne.KeyRight); d.Type("x") }, "sports drinkx"},
		{"Delete", func(d *drive.Driver) { d.Key(fyne.KeyHome, fyne.KeyDelete) }, "ports drink"},
		{"Backspace", func(d *drive.Driver) { d.Key(fyne.KeyEnd, fyne.KeyBackspace) }, "sports drin"},
		{"Shift selects", func(d *drive.Driver) {
			d.Key(fyne.KeyHome)
			d.Shift(func() { d.Key(fyne.KeyRight, fyne.KeyRight) })
			d.Type("x")
		}, "xorts drink"},
		{"by words", func(d *drive.Driver) { d.Key(fyne.KeyEnd); d.Shortcut(control(fyne.KeyLeft)); d.Type("x") }, "sports xdrink"},
		{"select by words", func(d *drive.Driver) {
			d.Key(fyne.KeyHome)
			d.Shortcut(control(fyne.KeyRight, fyne.KeyModifierShift))
			d.Type("x")
		}, "x drink"},
		{"erase a word", func(d *drive.Driver) { d.Key(fyne.KeyEnd); d.Shortcut(control(fyne.KeyBackspace)) }, "sports "},
		{"Escape reverts", func(d *drive.Driver) { d.Type("gel"); d.Key(fyne.KeyEscape) }, "sports drink"},
		{"Enter is kept by Escape", func(d *drive.Driver) { d.Type("gel"); d.Key(fyne.KeyReturn); d.Type("!"); d.Key(fyne.KeyEscape) }, "gel"},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := use(t)
			l := field.NewLine(h, "line", 0)
			l.SetText("sports drink")
			d := open(t, l)
			d.Focus("line")
			c.do(d)
			if l.Text() != c.want {
				t.Errorf("%q, want %q", l.Text(), c.want)
			}
		})
	}
}

func TestLineClipboard(t *testing.T) {
	h := use(t)
	l := field.NewLine(h, "line", 0)
	l.SetText("1.36 L/h")
	d := open(t, l)
	d.Focus("line")
	board := test.NewClipboard()
	d.Shortcut(&fyne.ShortcutCopy{Clipboard: board})
	if board.Content() != "1.36 L/h" {
		t.Errorf("copied %q", board.Content())
	}
	d.Shortcut(&fyne.ShortcutCut{Clipboard: board})
	if l.Text() != "" {
		t.Errorf("cut left %q", l.Text())
	}
	board.SetContent("two\nlines")
	d.Shortcut(&fyne.ShortcutPaste{Clipboard: board})
	d.Shortcut(&fyne.ShortcutPaste{Clipboard: board})
	if l.Text() != "two linestwo lines" {
		t.Errorf("pasted %q", l.Text())
	}
	d.Key(fyne.KeyHome)
	d.Shortcut(&fyne.ShortcutCut{Clipboard: board})
	if l.Text() != "two linestwo lines" || board.Content() != "two\nlines" {
		t.Error("nothing was selected, and yet something was cut")
	}
}

// Undo belongs to the whole screen: a field hands it on.
func TestLinePassesShortcutsOn(t *testing.T) {
	h := use(t)
	var events diary
	h.OnShortcut = func(s fyne.Shortcut) { events.note("%s", s.ShortcutName()) }
	h.OnKey = func(e *fyne.KeyEvent) { events.note("key %s", e.Name) }
	l := field.NewLine(h, "line", 0)
	d := open(t, l)
	d.Focus("line")
	d.Shortcut(&fyne.ShortcutUndo{})
	d.Shortcut(&fyne.ShortcutRedo{})
	d.Shortcut(control(fyne.KeyS))
	d.Shortcut(&desktop.CustomShortcut{KeyName: fyne.KeyLeft, Modifier: fyne.KeyModifierAlt})
	events.expect(t, "Undo", "Redo", "CustomDesktop:Control+S", "CustomDesktop:Alt+Left")
	d.Key(fyne.KeyEscape, fyne.KeyReturn, fyne.KeyF1, fyne.KeyUp)
	events.expect(t, "key Escape", "key Return", "key F1", "key Up")
	d.Key(fyne.KeyA, fyne.Key5, fyne.KeySpace, fyne.KeyMinus, desktop.KeyControlLeft) // signs come as runes; modifiers do nothing
	events.expect(t)
}

func TestLineMouse(t *testing.T) {
	h := use(t)
	l := field.NewLine(h, "line", 0)
	l.SetText("sports drink")
	d := open(t, l)
	before := func(text string) float32 { return 8 + look.Body.Width(text) }
	d.ClickAt("line", before("sports"), 15)
	d.Type("!")
	if l.Text() != "sports! drink" {
		t.Fatalf("clicked behind sports, got %q", l.Text())
	}
	d.DoubleClickAt("line", before("sports! dr"), 15)
	if l.SelectedText() != "drink" {
		t.Errorf("a double click selected %q", l.SelectedText())
	}
	d.Drag("line", fyne.NewPos(before("spo"), 12), fyne.NewPos(before("sports! d"), 20), 5)
	if l.SelectedText() != "rts! d" {
		t.Errorf("dragging selected %q", l.SelectedText())
	}
	d.ClickAt("line", 390, 15)
	d.Type("?")
	if l.Text() != "sports! drink?" {
		t.Errorf("clicked behind the text, got %q", l.Text())
	}
}

// A text longer than the box scrolls with the caret, and shows its beginning
// when the keyboard is elsewhere.
func TestLineScrolls(t *testing.T) {
	h := use(t)
	l := field.NewLine(h, "line", 0)
	long := strings.Repeat("a long name of a drink ", 20)
	l.SetText(long)
	d := open(t, l)
	shown := func() string { return strings.Join(textsOf(l), "") }
	if s := shown(); !strings.HasPrefix(s, "a long") || !strings.HasSuffix(s, "…") {
		t.Errorf("at rest it shows %q", s)
	}
	d.Focus("line")
	d.Key(fyne.KeyEnd)
	if s := shown(); !strings.HasSuffix(long, s) {
		t.Errorf("at its end it shows %q", s)
	}
	d.Key(fyne.KeyHome)
	if s := shown(); !strings.HasPrefix(long, s) {
		t.Errorf("at its start it shows %q", s)
	}
	if w := look.Body.Width(shown()); w > 400-16 {
		t.Errorf("%q is %v wide", shown(), w)
	}
}

// textsOf lists what a widget has written and shows.
func textsOf(o fyne.CanvasObject) []string {
	if !o.Visible() {
		return nil
	}
	var within []fyne.CanvasObject
	switch o := o.(type) {
	case *canvas.Text:
		if o.Text != "" {
			return []string{o.Text}
		}
	case *fyne.Container:
		within = o.Objects
	case fyne.Widget:
		within = test.WidgetRenderer(o).Objects()
	}
	var list []string
	for _, one := range within {
		list = append(list, textsOf(one)...)
	}
	return list
}

func TestLineDisabled(t *testing.T) {
	h := use(t)
	l, next := field.NewLine(h, "line", 0), field.NewLine(h, "next", 0)
	l.Disable()
	d := open(t, l, next)
	d.Tab()
	if d.Focused() != "next" {
		t.Errorf("Tab went to %q", d.Focused())
	}
	d.Click("line")
	if d.Focused() == "line" {
		t.Error("a click gave a disabled line the keyboard")
	}
	l.TypedRune('x')
	if l.Text() != "" {
		t.Error("a disabled line took a letter")
	}
}

func TestLineHoldsTenThousand(t *testing.T) {
	h := use(t)
	l := field.NewLine(h, "line", 0)
	d := open(t, l)
	d.Focus("line")
	board := test.NewClipboard()
	board.SetContent(strings.Repeat("0123456789", 1000))
	d.Shortcut(&fyne.ShortcutPaste{Clipboard: board})
	d.Key(fyne.KeyLeft, fyne.KeyBackspace, fyne.KeyHome, fyne.KeyDelete)
	if n := len(l.Text()); n != 9998 {
		t.Errorf("%d letters", n)
	}
}

// Over a text that nobody writes in the wheel moves the page; while one writes it moves
// the text by as much, and at its end the page again.
func TestWheelOverNotes(t *testing.T) {
	h := use(t)
	n := field.NewNotes(h, "notes", 3)
	n.SetText(strings.Repeat("a line\n", 30))
	page := look.NewScroll(look.VBox(8, n, canvas.NewText(strings.Repeat("x", 3), nil), look.Pad(900, 0, 0, 0, field.NewLine(h, "line", 40))))
	w := golden.Open(t, page, fyne.NewSize(300, 200))
	test.Scroll(w.Canvas(), fyne.NewPos(40, 30), 0, -25)
	moved := page.Offset()
	if want := 3 * look.Body.Height(); moved < want-1 || moved > want+1 {
		t.Errorf("one notch moves the page by %g px, want %g", moved, want)
	}
	page.ScrollTo(0)
	n.Focus()
	test.Scroll(w.Canvas(), fyne.NewPos(40, 30), 0, -25)
	if page.Offset() != 0 {
		t.Errorf("while one writes the page moves by %g px", page.Offset())
	}
	for range 30 {
		test.Scroll(w.Canvas(), fyne.NewPos(40, 30), 0, -25)
	}
	if page.Offset() == 0 {
		t.Error("the page stops at the end of the text")
	}
}
