// Package drive works a window by the names of its fields, as a person would:
// it clicks, drags, types and presses keys, and looks only at what is in sight
// and not covered by a dialog. Tests of screens use it.
package drive

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"ebbwell/app/kit/field"
)

// Driver drives one window.
type Driver struct {
	t  testing.TB
	on fyne.Canvas
}

// On drives a canvas; what cannot be done fails the test.
func On(t testing.TB, on fyne.Canvas) *Driver { return &Driver{t: t, on: on} }

// root is what can be reached: the topmost dialog or list, else the window.
func (d *Driver) root() fyne.CanvasObject {
	if top := d.on.Overlays().Top(); top != nil {
		return top
	}
	return d.on.Content()
}

// Find returns the object with a name; it must be in sight.
func (d *Driver) Find(name string) fyne.CanvasObject {
	d.t.Helper()
	if o := field.Find(d.root(), name); o != nil {
		return o
	}
	d.t.Fatalf("nothing in sight is called %q; there is: %s", name, strings.Join(d.Names(), ", "))
	return nil
}

// Has reports whether an object with a name is in sight.
func (d *Driver) Has(name string) bool { return field.Find(d.root(), name) != nil }

// Names lists what is in sight.
func (d *Driver) Names() []string {
	var list []string
	for _, s := range field.Names(d.root()) {
		list = append(list, s.Name)
	}
	return list
}

// Focus gives the keyboard to a field.
func (d *Driver) Focus(name string) {
	d.t.Helper()
	f, ok := d.Find(name).(fyne.Focusable)
	if !ok {
		d.t.Fatalf("%q takes no keyboard", name)
	}
	d.on.Focus(f)
	if d.on.Focused() != f {
		d.t.Fatalf("%q did not take the keyboard", name)
	}
}

// Focused names the field that has the keyboard.
func (d *Driver) Focused() string {
	if n, ok := d.on.Focused().(interface{ Name() string }); ok {
		return n.Name()
	}
	return ""
}

// Type types text into whatever has the keyboard.
func (d *Driver) Type(text string) {
	d.t.Helper()
	for _, r := range text {
		f := d.on.Focused()
		if f == nil {
			d.t.Fatalf("type %q: nothing has the keyboard", text)
		}
		f.TypedRune(r)
	}
}

// Fill gives the keyboard to a field, replaces what is in it and presses Tab.
func (d *Driver) Fill(name, text string) {
	d.t.Helper()
	d.Focus(name)
	d.Shortcut(&fyne.ShortcutSelectAll{})
	if text == "" {
		d.Key(fyne.KeyBackspace)
	}
	d.Type(text)
	d.Tab()
}

// Key presses keys one after the other.
func (d *Driver) Key(keys ...fyne.KeyName) {
	for _, k := range keys {
		if k == fyne.KeyTab {
			d.Tab()
			continue
		}
		e := &fyne.KeyEvent{Name: k}
		if f := d.on.Focused(); f != nil {
			f.TypedKey(e)
		} else if typed := d.on.OnTypedKey(); typed != nil {
			typed(e)
		}
	}
}

// Tab presses the Tab key, unless what has the keyboard wants it itself.
func (d *Driver) Tab() {
	if tab, ok := d.on.Focused().(fyne.Tabbable); ok && tab.AcceptsTab() {
		d.on.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyTab})
		return
	}
	d.on.FocusNext()
}

// BackTab presses Shift and Tab.
func (d *Driver) BackTab() { d.on.FocusPrevious() }

// Shift holds the shift key while something is done.
func (d *Driver) Shift(do func()) {
	e := &fyne.KeyEvent{Name: desktop.KeyShiftLeft}
	if k, ok := d.on.Focused().(desktop.Keyable); ok {
		k.KeyDown(e)
		defer k.KeyUp(e)
	}
	do()
}

// Shortcut gives a shortcut to what has the keyboard, or else to the window.
func (d *Driver) Shortcut(s fyne.Shortcut) {
	if f, ok := d.on.Focused().(fyne.Shortcutable); ok {
		f.TypedShortcut(s)
		return
	}
	if c, ok := d.on.(fyne.Shortcutable); ok {
		c.TypedShortcut(s)
	}
}

// Click clicks the middle of an object.
func (d *Driver) Click(name string) {
	d.t.Helper()
	size := d.Find(name).Size()
	d.ClickAt(name, size.Width/2, size.Height/2)
}

// ClickAt clicks an object at a place measured from its upper left corner.
func (d *Driver) ClickAt(name string, x, y float32) {
	d.t.Helper()
	o := d.Find(name)
	at := fyne.NewPos(x, y)
	d.press(o, at)
	if tap, ok := o.(fyne.Tappable); ok {
		tap.Tapped(&fyne.PointEvent{Position: at, AbsolutePosition: d.place(o).Add(at)})
	}
}

// DoubleClickAt clicks twice.
func (d *Driver) DoubleClickAt(name string, x, y float32) {
	d.t.Helper()
	d.ClickAt(name, x, y)
	d.ClickAt(name, x, y)
}

// press is the mouse button going down and up.
func (d *Driver) press(o fyne.CanvasObject, at fyne.Position) {
	if f, ok := o.(fyne.Focusable); !ok || f != d.on.Focused() {
		d.on.Unfocus()
	}
	if m, ok := o.(desktop.Mouseable); ok {
		e := &desktop.MouseEvent{Button: desktop.MouseButtonPrimary}
		e.Position, e.AbsolutePosition = at, d.place(o).Add(at)
		m.MouseDown(e)
		m.MouseUp(e)
	}
}

// Drag drags from one place of an object to another in so many movements.
func (d *Driver) Drag(name string, from, to fyne.Position, moves int) {
	d.t.Helper()
	o := d.Find(name)
	drag, ok := o.(fyne.Draggable)
	if !ok {
		d.t.Fatalf("%q cannot be dragged", name)
	}
	if m, ok := o.(desktop.Mouseable); ok {
		e := &desktop.MouseEvent{Button: desktop.MouseButtonPrimary}
		e.Position, e.AbsolutePosition = from, d.place(o).Add(from)
		m.MouseDown(e)
	}
	step := to.Subtract(from)
	for i := 1; i <= moves; i++ {
		part := float32(i) / float32(moves)
		at := from.AddXY(step.X*part, step.Y*part)
		e := &fyne.DragEvent{Dragged: fyne.NewDelta(step.X/float32(moves), step.Y/float32(moves))}
		e.Position, e.AbsolutePosition = at, d.place(o).Add(at)
		drag.Dragged(e)
	}
	drag.DragEnd()
}

// place is where an object stands in the window.
func (d *Driver) place(o fyne.CanvasObject) fyne.Position {
	return fyne.CurrentApp().Driver().AbsolutePositionForObject(o)
}

// Pick opens a list and picks the option with a text.
func (d *Driver) Pick(name, text string) {
	d.t.Helper()
	c, ok := d.Find(name).(*field.Choice)
	if !ok {
		d.t.Fatalf("%q is no choice", name)
	}
	d.Focus(name)
	d.Key(fyne.KeyReturn, fyne.KeyHome)
	for i, o := range c.Options() {
		if o.Text == text {
			for range i {
				d.Key(fyne.KeyDown)
			}
			d.Key(fyne.KeyReturn)
			return
		}
	}
	d.t.Fatalf("%q has no %q: %s", name, text, fmt.Sprint(c.Options()))
}
