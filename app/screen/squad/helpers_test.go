package squad

import (
	"context"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// person is an invented athlete of the squad.
type person struct {
	name, born, position string
	kg                   float64
	hidden               bool
}

// crew are eight invented athletes.
func crew() []person {
	return []person{
		{"Tamsin Orrelby", "2002-01-02", "midfield", 61.8, false}, {"Neve Carrowmere", "2010-02-02", "", 55, true},
		{"Runa Hollowick", "1999-01-01", "goalkeeper", 83.2, false}, {"Senna Dunmarsh", "2002-01-01", "defender", 72.4, false},
		{"Edda Quarnford", "2004-01-01", "defender", 79.6, false}, {"Lia Fennick", "2007-01-01", "forward", 70.3, false},
		{"Ravka Oldenmoor", "1999-02-03", "midfield", 64, false}, {"Maren Stillwell", "2003-03-03", "forward", 66, false},
	}
}

// moment is a clock a test sets.
type moment struct{ at time.Time }

func at(hour, minute int) time.Time { return time.Date(2026, 5, 18, hour, minute, 0, 0, time.UTC) }

// squadDesk is a desk with a session of some of the crew, begun at 16:50.
func squadDesk(t testing.TB, people []person) (*desk.Desk, *moment, record.ID) {
	t.Helper()
	d, _ := apptest.Desk(t)
	clock := &moment{at(16, 50)}
	d.Now = func() time.Time { return clock.at }
	d.Host.Today = d.Now
	var list []record.Athlete
	for _, p := range people {
		a := record.Athlete{
			Meta: record.Meta{ID: record.NewID()}, Name: p.name, Born: record.Date(p.born), Sex: record.Female, Sport: "field-hockey", Position: p.position,
			UsualMass: record.Num(p.kg, quantity.Kilogram), MassHidden: p.hidden, MassHiddenSettled: true,
		}
		if p.hidden {
			a.Guardian, a.Assent = "a guardian", "2026-01-01"
		}
		list = append(list, apptest.Save(t, d, a))
	}
	last := record.GroupSession{PatchSites: string(record.SiteForearmDorsal), ScaleStep: record.Num(0.1, quantity.Kilogram)}
	last.Session = record.Session{Start: "17:05", End: "18:40", Met: record.Num(7, quantity.Met), Sport: "field-hockey"}
	last.Bottles = []record.BottleKind{{Meta: record.Meta{ID: record.NewID()}, ProductID: waterID}, {Meta: record.Meta{ID: record.NewID()}, ProductID: "generic.drink-6"}}
	id, left, err := Begin(d, last, "field hockey squad", list)
	if err != nil || len(left) > 0 {
		t.Fatalf("%v, left out %q", err, left)
	}
	return d, clock, id
}

// hands are a person at the keyboard of the day, who counts what is pressed.
type hands struct {
	t     testing.TB
	v     *View
	w     fyne.Window
	clock *moment
	// keys are the keystrokes beyond digits, by athlete at the scale; digits all others.
	keys   map[string]int
	digits int
}

// openDay opens the session in a window.
func openDay(t testing.TB, d *desk.Desk, clock *moment, id record.ID, width, height float32, dark bool, percent int) *hands { //nolint:revive // what a day is opened by
	t.Helper()
	apptest.Window(t, look.Gap(1, 1), width, height, dark, percent) // sets the theme
	v, err := New(d, desk.Place{Screen: desk.TestDay, Record: id})
	if err != nil {
		t.Fatal(err)
	}
	h := &hands{t: t, v: v, clock: clock, keys: map[string]int{}}
	h.w = apptest.Window(t, v.Body(), width, height, dark, percent)
	d.Host.OnKey, d.Host.OnRune = v.Key, v.Rune
	v.Shown()
	return h
}

// who is at the scale.
func (h *hands) who() string {
	if h.v.at < 0 || h.v.at >= len(h.v.rows) {
		return ""
	}
	return h.v.rows[h.v.at].Sheet.Athlete.Name
}

// focus is the field that has the keyboard.
func (h *hands) focus() string {
	if n, ok := h.w.Canvas().Focused().(interface{ Name() string }); ok {
		return strings.TrimPrefix(n.Name(), "squad.")
	}
	return ""
}

// typed types runes; "\n" is Enter.
func (h *hands) typed(text string) {
	for _, r := range text {
		if r >= '0' && r <= '9' || r == '.' {
			h.digits++
		} else {
			h.keys[h.who()]++
		}
		h.key(r)
	}
}

// key presses one key wherever the keyboard is.
func (h *hands) key(r rune) {
	f := h.w.Canvas().Focused()
	if r == '\n' {
		if f != nil {
			f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
		} else {
			h.v.desk.Host.Key(&fyne.KeyEvent{Name: fyne.KeyReturn})
		}
		return
	}
	if f != nil {
		f.TypedRune(r)
	} else {
		h.v.desk.Host.Rune(r)
	}
}

// until moves the clock on and lets the screen look at it.
func (h *hands) until(hour, minute int) {
	h.clock.at = at(hour, minute)
	h.v.Tick()
}

// at types into a field that must have the keyboard.
func (h *hands) at(field, text string) {
	h.t.Helper()
	if got := h.focus(); got != field {
		h.t.Fatalf("the keyboard is at %s of %s, not at %s", got, h.who(), field)
	}
	h.typed(text)
}

// kept is the sheet of an athlete as it is in the store.
func (h *hands) kept(name string) record.Test {
	h.t.Helper()
	if err := h.v.desk.Keep.Flush(context.Background()); err != nil {
		h.t.Fatal(err)
	}
	for _, r := range h.v.rows {
		if r.Sheet.Athlete.Name == name {
			t, err := h.v.desk.Store.LoadTest(context.Background(), r.Sheet.Test.ID)
			if err != nil {
				h.t.Fatal(err)
			}
			return t
		}
	}
	h.t.Fatalf("no row of %q", name)
	return record.Test{}
}

// shot writes what the window shows to the folder that EBBWELL_SHOTS names, for
// people to look at.
func (h *hands) shot(name string) {
	h.t.Helper()
	dir := os.Getenv("EBBWELL_SHOTS")
	if dir == "" {
		return
	}
	for range 3 {
		h.w.Content().Refresh()
	}
	f, err := os.Create(filepath.Join(dir, name+".png"))
	if err != nil {
		h.t.Fatal(err)
	}
	defer func() {
		if err := f.Close(); err != nil {
			h.t.Error(err)
		}
	}()
	if err := png.Encode(f, h.w.Canvas().Capture()); err != nil {
		h.t.Fatal(err)
	}
}
