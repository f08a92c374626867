package field_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/field/drive"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
)

func TestFindAndNames(t *testing.T) {
	h := use(t)
	before, after := field.NewLine(h, "sheet.before", 0), field.NewLine(h, "sheet.after", 0)
	hidden := field.NewLine(h, "sheet.hidden", 0)
	hidden.Hide()
	after.Disable()
	notes := field.NewNotes(h, "sheet.notes", 2)
	root := container.NewHSplit(look.NewSheet(look.VBox(8, before, hidden)), look.NewScroll(look.Pad(10, 0, 0, 0, look.VBox(8, after, notes))))
	golden.Open(t, root, fyne.NewSize(600, 300))
	var got []string
	for _, s := range field.Names(root) {
		got = append(got, fmt.Sprint(s.Name, " ", s.Disabled))
	}
	want := []string{"sheet.before false", "sheet.after true", "sheet.notes false"}
	if !slices.Equal(got, want) {
		t.Errorf("names %v, want %v", got, want)
	}
	if field.Find(root, "sheet.after") != after || field.Find(root, "sheet.hidden") != nil || field.Find(root, "nothing") != nil {
		t.Error("found the wrong thing")
	}
	place := fyne.CurrentApp().Driver().AbsolutePositionForObject(before)
	if s := field.Names(root)[0]; s.Pos != place || s.Size != before.Size() || s.Size.Width < 24 {
		t.Errorf("%s is said to stand at %v, %v; it stands at %v, %v", s.Name, s.Pos, s.Size, place, before.Size())
	}
}

// A field that gets the keyboard is scrolled into sight.
func TestFocusScrollsIntoSight(t *testing.T) {
	h := use(t)
	var rows []fyne.CanvasObject
	for i := range 40 {
		rows = append(rows, field.NewLine(h, fmt.Sprint("row.", i), 0))
	}
	scroll := look.NewScroll(look.VBox(8, rows...))
	w := golden.Open(t, look.Pad(30, 10, 10, 10, scroll), fyne.NewSize(300, 240))
	d := drive.On(t, w.Canvas())
	for _, i := range []int{30, 3, 39, 0} {
		d.Focus(fmt.Sprint("row.", i))
		y := fyne.CurrentApp().Driver().AbsolutePositionForObject(rows[i]).Y
		if y < 30 || y+rows[i].Size().Height > 230 {
			t.Errorf("row %d is at %v, out of sight", i, y)
		}
	}
}

// Every kind of field can be pointed at (24 px), is reached by Tab, and shows
// its focus: the picture changes.
func TestFocusIsReachedAndSeen(t *testing.T) {
	h := use(t)
	fields := []fyne.CanvasObject{
		field.NewLine(h, "1", 0), field.NewNumber(h, "2", "", "kg"), field.NewDate(h, "3", field.Nearest), field.NewClock(h, "4"),
		field.NewChoice(h, "5", foods()), field.NewSuggest(h, "6", true, nil), field.NewToggle(h, "7", foods()[:2]),
		field.NewCheck(h, "8", "check"), field.NewRating(h, "9", "", ""), field.NewButton(h, "10", "button", field.Primary, nil),
		field.NewButton(h, "11", "button", field.Quiet, nil), field.NewLink(h, "12", "why", nil),
		field.NewTabs(h, "13", []field.Tab{{Key: "a", Text: "A tab"}}), litres(h), field.NewNotes(h, "15", 2),
	}
	w := golden.Open(t, look.VBox(6, fields...), fyne.NewSize(420, 700))
	d := drive.On(t, w.Canvas())
	seen := map[string]bool{}
	for i, o := range fields {
		before := w.Canvas().Capture()
		d.Tab()
		name := d.Focused()
		if name == "" || seen[name] {
			t.Fatalf("Tab %d went to %q", i, name)
		}
		seen[name] = true
		if golden.Same(w.Canvas().Capture(), before) {
			t.Errorf("%s does not show its focus", name)
		}
		if size := o.Size(); size.Height < 24 || size.Width < 24 {
			t.Errorf("%s is %v", name, size)
		}
	}
	d.Tab()
	if d.Focused() != "1" {
		t.Errorf("after the last field Tab went to %q", d.Focused())
	}
}

// Going dark or larger while a window is open reaches every field.
func TestFieldsFollowTheTheme(t *testing.T) {
	for _, percent := range []int{100, 150} {
		build := func() fyne.CanvasObject {
			h := newHost(t)
			n := field.NewNumber(h, "n", "body mass", "kg")
			n.SetRaw("643")
			s := litres(h)
			s.SetBand(0.5, 0.8)
			c := field.NewCheck(h, "c", "check")
			c.Set(true)
			return look.NewSheet(look.VBox(8, n, s, c, field.NewRating(h, "r", "fine", "bad"), field.NewTabs(h, "t", []field.Tab{{Text: "A", Done: true}}),
				field.NewButton(h, "b", "Agree", field.Primary, nil), field.NewChoice(h, "ch", foods()), field.NewToggle(h, "tg", foods()[:2]),
				look.NewCaution("Title", "Sentence", field.NewLink(h, "l", "why", nil)), look.NewParagraph("Words", look.Body, look.Ink)))
		}
		size := fyne.NewSize(500, 700)
		a := golden.Use(t, golden.Mode{Percent: 100})
		w := golden.Open(t, build(), size)
		a.Settings().SetTheme(look.NewTheme(true, percent))
		golden.LayOutAgain(w.Canvas())
		changed := w.Canvas().Capture()
		golden.Use(t, golden.Mode{Dark: true, Percent: percent})
		fresh := golden.Open(t, build(), size)
		if !golden.Same(changed, fresh.Canvas().Capture()) {
			t.Errorf("at %d %% a window that went dark looks other than one opened dark", percent)
		}
	}
}

func TestAsk(t *testing.T) {
	h := use(t)
	var events diary
	h.OnKey = func(e *fyne.KeyEvent) { events.note("window %s", e.Name) }
	behind := field.NewLine(h, "behind", 0)
	w := golden.Open(t, look.VBox(8, behind), fyne.NewSize(600, 400))
	d := drive.On(t, w.Canvas())
	d.Focus("behind")
	reason := field.NewLine(h, "ask.reason", 0)
	reason.OnLeft = func(s string) { events.note("left %s", s) }
	stay := true
	ask := func() {
		h.Ask(w.Canvas(), field.Question{Name: "ask", Title: "Keep it?", Content: reason, OnClosed: func() { events.note("closed") },
			Actions: []field.Action{{Name: "no", Text: "Correct"}, {Name: "yes", Text: "Keep", Kind: field.Primary,
				Do: func() bool { events.note("kept %s", reason.Text()); return stay }}}})
	}
	ask()
	if d.Focused() != "ask.reason" || d.Has("behind") {
		t.Errorf("the keyboard is with %q", d.Focused())
	}
	d.Type("small")
	d.Key(fyne.KeyReturn)
	events.expect(t, "left small", "kept small")
	for _, want := range []string{"ask.no", "ask.yes", "ask.reason"} {
		if d.Tab(); d.Focused() != want {
			t.Errorf("Tab went to %q, want %q", d.Focused(), want)
		}
	}
	events = nil
	d.Click("ask") // beside the fields: the keyboard stays in the dialog
	if d.Focused() != "ask.reason" {
		t.Errorf("after a click beside the fields the keyboard is with %q", d.Focused())
	}
	stay = false
	events = nil
	d.Click("ask.yes")
	events.expect(t, "left small", "kept small", "closed")
	if d.Focused() != "behind" {
		t.Errorf("after the dialog the keyboard is with %q", d.Focused())
	}
	ask()
	d.Key(fyne.KeyEscape)
	events.expect(t, "left small", "closed")
	d.Key(fyne.KeyEscape)
	events.expect(t, "window Escape")
}

func TestConfirm(t *testing.T) {
	h := use(t)
	w := golden.Open(t, look.VBox(8, field.NewLine(h, "behind", 0)), fyne.NewSize(600, 400))
	d := drive.On(t, w.Canvas())
	done := 0
	confirm := func() {
		h.Confirm(w.Canvas(), "erase", "Erase this athlete?", "Everything about them is removed for good.", "Erase", func() { done++ })
	}
	confirm()
	d.Key(fyne.KeyEscape)
	confirm()
	d.Click("erase.no")
	if done != 0 {
		t.Fatal("done without a yes")
	}
	confirm()
	if d.Key(fyne.KeyReturn); done != 0 {
		t.Fatal("Enter alone takes something away")
	}
	d.Click("erase.yes")
	if done != 1 || len(w.Canvas().Overlays().List()) != 0 {
		t.Errorf("done %d times, %d dialogs left", done, len(w.Canvas().Overlays().List()))
	}
}

// A question on top of a question: each key goes to the topmost.
func TestAskUponAsk(t *testing.T) {
	h := use(t)
	w := golden.Open(t, look.VBox(8, field.NewLine(h, "behind", 0)), fyne.NewSize(600, 400))
	d := drive.On(t, w.Canvas())
	yes := []string{}
	for _, name := range []string{"first", "second"} {
		h.Ask(w.Canvas(), field.Question{Name: name, Title: name, Actions: []field.Action{
			{Name: "yes", Text: "Yes", Kind: field.Primary, Do: func() bool { yes = append(yes, name); return false }},
		}})
	}
	d.Key(fyne.KeyReturn, fyne.KeyReturn)
	if strings.Join(yes, " ") != "second first" {
		t.Errorf("answered %v", yes)
	}
}

// As a dialog opens the keyboard is on its first input, or on nothing: never on a
// button, which may close or remove.
func TestAskOpensOnAnInput(t *testing.T) {
	h := use(t)
	w := golden.Open(t, look.VBox(8, field.NewLine(h, "behind", 0)), fyne.NewSize(600, 400))
	d := drive.On(t, w.Canvas())
	remove, why := field.NewButton(h, "remove", "Remove", field.Outline, nil), field.NewLink(h, "why", "why", nil)
	for _, c := range []struct {
		content fyne.CanvasObject
		on      string
	}{{nil, ""}, {look.VBox(8, remove), ""}, {look.VBox(8, remove, why, field.NewLine(h, "name", 0)), "name"}} {
		ask := h.Ask(w.Canvas(), field.Question{Name: "ask", Title: "Ask", Content: c.content, Actions: []field.Action{{Name: "done", Text: "Done", Kind: field.Primary}}})
		if got := d.Focused(); got != c.on {
			t.Errorf("the keyboard is with %q, want %q", got, c.on)
		}
		ask.Close()
	}
}

// A dialog higher than the window scrolls its content and keeps its buttons.
func TestAskHigherThanTheWindow(t *testing.T) {
	h := use(t)
	var rows []fyne.CanvasObject
	for i := range 30 {
		rows = append(rows, field.NewLine(h, fmt.Sprint("row.", i), 0))
	}
	w := golden.Open(t, look.VBox(8, field.NewLine(h, "behind", 0)), fyne.NewSize(600, 400))
	d := drive.On(t, w.Canvas())
	h.Ask(w.Canvas(), field.Question{Name: "ask", Title: "Many", Content: look.VBox(8, rows...), Actions: []field.Action{{Name: "yes", Text: "Done", Kind: field.Primary}}})
	b := d.Find("ask.yes")
	if y := fyne.CurrentApp().Driver().AbsolutePositionForObject(b).Y; y+b.Size().Height > 400 {
		t.Errorf("the button stands at %v, below the window", y)
	}
	d.Focus("row.29")
	if y := fyne.CurrentApp().Driver().AbsolutePositionForObject(rows[29]).Y; y > 370 {
		t.Errorf("the last row is at %v, out of sight", y)
	}
}

func TestStrip(t *testing.T) {
	h := use(t)
	s := field.NewStrip(h, "strip")
	d := open(t, s)
	if d.Has("strip.act") {
		t.Error("an empty strip is in sight")
	}
	undone := 0
	s.SayUndo("Bottle 3 deleted.", func() { undone++ })
	d.Click("strip.act")
	if undone != 1 || s.Visible() {
		t.Errorf("undone %d times, in sight %v", undone, s.Visible())
	}
	s.Say("Saved.", "", nil)
	if d.Has("strip.act") || s.Message() != "Saved." {
		t.Errorf("says %q", s.Message())
	}
	d.Click("strip.close")
	if s.Message() != "" {
		t.Error("a closed strip still says something")
	}
}

func TestNotes(t *testing.T) {
	h := use(t)
	var events diary
	h.OnShortcut = func(s fyne.Shortcut) { events.note("%s", s.ShortcutName()) }
	h.OnKey = func(e *fyne.KeyEvent) { events.note("key %s", e.Name) }
	n := field.NewNotes(h, "notes", 3)
	n.OnChanged = func(s string) { events.note("changed %d", len(s)) }
	n.OnLeft = func(s string) { events.note("left %d", len(s)) }
	d := open(t, n, field.NewLine(h, "next", 0))
	n.SetText("set by code")
	events.expect(t)
	n.SetText("")
	d.Focus("notes")
	d.Type("ab")
	d.Key(fyne.KeyReturn)
	events.expect(t, "changed 1", "changed 2", "changed 3")
	d.Shortcut(&fyne.ShortcutUndo{})
	d.Key(fyne.KeyEscape)
	events.expect(t, "Undo", "key Escape")
	d.Tab()
	events.expect(t, "left 3")
	if d.Focused() != "next" {
		t.Errorf("Tab went to %q", d.Focused())
	}
	n.SetText(strings.Repeat("ten signs ", 1000))
	if len(n.Text()) != 10000 {
		t.Errorf("%d signs are left of 10000", len(n.Text()))
	}
}
