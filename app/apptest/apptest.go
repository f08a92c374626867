// Package apptest is for the tests of screens: a desk on a real data file in a
// temporary folder, a window drawn by the software painter, and hands that
// type and click by the names of controls.
package apptest

import (
	"context"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"golang.org/x/text/language"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/keep"
	"ebbwell/app/kit/keep/clock"
	"ebbwell/app/kit/look"
	"ebbwell/internal/demo"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/store/storetest"
	"ebbwell/internal/words"
)

// Now is the moment in which tests of screens take place.
func Now() time.Time { return time.Date(2026, 5, 18, 12, 41, 0, 0, time.UTC) }

// Words is the English catalogue.
func Words(t testing.TB) *words.Words {
	t.Helper()
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// Desk opens a new data folder with a practice and returns a desk on it. Work
// runs at once; what is typed is written when a screen is left, since the clock
// by which saving waits stands still. Places the screens ask for are collected in went.
func Desk(t testing.TB) (d *desk.Desk, went *[]desk.Place) {
	t.Helper()
	return on(t, "a practice", func(s *store.Store) error {
		practice := record.Practice{
			Meta: record.Meta{ID: record.NewID()}, Name: "Saltmarsh Practice (invented)", Practitioner: "Test Person",
			Registration: "SD 0000", Telephone: "000 000", Emergency: "112",
		}
		_, err := s.SavePractice(context.Background(), practice, store.Edit{})
		return err
	})
}

// Demo is [Desk] on the invented practice.
func Demo(t testing.TB) (d *desk.Desk, went *[]desk.Place) {
	t.Helper()
	return on(t, "the invented practice", invented(Words(t), Now))
}

// DemoDir returns a data folder, closed, with the invented practice of a moment in the
// words of a language.
func DemoDir(t testing.TB, w *words.Words, now func() time.Time) string {
	t.Helper()
	return storetest.Dir(t, "the invented practice, "+w.Language().String(), store.Options{Clock: now}, invented(w, now))
}

// invented writes the invented practice of a moment.
func invented(w *words.Words, now func() time.Time) storetest.Fill {
	return func(s *store.Store) error {
		return demo.Fill(context.Background(), s, now(), demo.Names{Options: desk.OptionNames(w), Step: desk.StepName(w), Say: w.Say, Town: w.City})
	}
}

// AthleteNamed finds an athlete of the invented practice by the beginning of
// the name.
func AthleteNamed(t testing.TB, d *desk.Desk, begins string) record.Athlete {
	t.Helper()
	list, err := d.Store.Athletes(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range list {
		if strings.HasPrefix(line.Name, begins) {
			a, err := d.Store.LoadAthlete(context.Background(), line.ID)
			if err != nil {
				t.Fatal(err)
			}
			return a
		}
	}
	t.Fatalf("no athlete %q", begins)
	return record.Athlete{}
}

// on opens a data folder that fill has filled, and makes a desk on it.
func on(t testing.TB, key string, fill storetest.Fill) (d *desk.Desk, went *[]desk.Place) {
	t.Helper()
	opened := storetest.Open(t, key, store.Options{Clock: Now, By: "Test Person"}, fill)
	d, err := desk.New(opened, Words(t), Now)
	if err != nil {
		t.Fatal(err)
	}
	d.Keep = keep.NewAfter(Now, clock.New(Now()).After, nil)
	d.Host.Today = Now
	went = &[]desk.Place{}
	d.Go = func(p desk.Place) { *went = append(*went, p) }
	return d, went
}

// Athlete makes and keeps an adult athlete.
func Athlete(t testing.TB, d *desk.Desk) record.Athlete {
	t.Helper()
	a := record.Athlete{
		Meta: record.Meta{ID: record.NewID()}, Name: "Ravka Oldenmoor", Born: "1999-02-03", Sex: record.Female,
		Height: record.Num(1.71, quantity.Metre), UsualMass: record.Num(64, quantity.Kilogram), Sport: "field-hockey",
		Position: "midfield", UsualDrinking: record.Num(0.70, quantity.LitrePerHour),
	}
	kept, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	return kept
}

// Window shows an object in a window of a size with our theme, and returns it.
func Window(t testing.TB, o fyne.CanvasObject, width, height float32, dark bool, percent int) fyne.Window {
	t.Helper()
	a := test.NewTempApp(t)
	a.Settings().SetTheme(look.NewTheme(dark, percent))
	w := test.NewTempWindow(t, o)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(width, height))
	return w
}

// Type focuses the control with a name and types into it, as a person does: a
// rune at a time. What stands there is replaced.
func Type(t testing.TB, w fyne.Window, name, text string) {
	t.Helper()
	f := control(t, w, name)
	w.Canvas().Focus(f)
	if s, ok := f.(interface{ SelectAll() }); ok {
		s.SelectAll()
	}
	if text == "" {
		f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyBackspace})
	}
	for _, r := range text {
		f.TypedRune(r)
	}
}

// Press presses a key in whatever has the keyboard.
func Press(w fyne.Window, keys ...fyne.KeyName) {
	for _, k := range keys {
		if f := w.Canvas().Focused(); f != nil {
			f.TypedKey(&fyne.KeyEvent{Name: k})
		}
	}
}

// Leave takes the keyboard away, as a click elsewhere does.
func Leave(w fyne.Window) { w.Canvas().Unfocus() }

// Click taps the control with a name, or the place of that name within one: a
// word of tabs, a row of a table.
func Click(t testing.TB, w fyne.Window, name string) {
	t.Helper()
	if o := find(w, name); o != nil {
		tap(t, o, name, fyne.NewPos(o.Size().Width/2, o.Size().Height/2))
		return
	}
	for _, inside := range spots(w) {
		if inside.Name != name {
			continue
		}
		for _, owner := range spots(w) {
			if owner.Object != nil && strings.HasPrefix(name, owner.Name+".") {
				at := inside.Pos.Subtract(owner.Pos).AddXY(inside.Size.Width/2, inside.Size.Height/2)
				tap(t, owner.Object, name, at)
				return
			}
		}
	}
	t.Fatalf("no control %q to click; there are %v", name, names(w))
}

// tap taps an object at a place within it.
func tap(t testing.TB, o fyne.CanvasObject, name string, at fyne.Position) {
	t.Helper()
	tappable, ok := o.(fyne.Tappable)
	if !ok {
		t.Fatalf("%q cannot be clicked", name)
	}
	tappable.Tapped(&fyne.PointEvent{Position: at})
}

// Text returns what the control with a name shows.
func Text(t testing.TB, w fyne.Window, name string) string {
	t.Helper()
	s, ok := find(w, name).(interface{ Text() string })
	if !ok {
		t.Fatalf("no control %q with a text; there are %v", name, names(w))
	}
	return s.Text()
}

// Has reports whether a control with a name is in sight.
func Has(w fyne.Window, name string) bool { return find(w, name) != nil }

// control is a field by its name.
func control(t testing.TB, w fyne.Window, name string) fyne.Focusable {
	t.Helper()
	f, ok := find(w, name).(fyne.Focusable)
	if !ok {
		t.Fatalf("no control %q to type into; there are %v", name, names(w))
	}
	return f
}

// find looks on top first: a dialog hides what is below it.
func find(w fyne.Window, name string) fyne.CanvasObject {
	if top := w.Canvas().Overlays().Top(); top != nil {
		return field.Find(top, name)
	}
	return field.Find(w.Content(), name)
}

// spots are the named places of what is on top.
func spots(w fyne.Window) []field.Spot {
	if top := w.Canvas().Overlays().Top(); top != nil {
		return field.Names(top)
	}
	return field.Names(w.Content())
}

func names(w fyne.Window) []string {
	var list []string
	for _, s := range spots(w) {
		list = append(list, s.Name)
	}
	return list
}
