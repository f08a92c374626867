package field_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/internal/record"
)

func TestButton(t *testing.T) {
	h := use(t)
	var events diary
	h.OnKey = func(e *fyne.KeyEvent) { events.note("key %s", e.Name) }
	b := field.NewButton(h, "b", "Next bottle", field.Outline, func() { events.note("pressed") })
	l := field.NewLink(h, "l", "why", func() { events.note("followed") })
	d := open(t, b, l)
	d.Click("b")
	d.Key(fyne.KeyReturn, fyne.KeySpace, fyne.KeyEscape)
	events.expect(t, "pressed", "pressed", "pressed", "key Escape")
	d.Click("l")
	d.Key(fyne.KeyEnter, fyne.KeySpace, fyne.KeyLeft)
	events.expect(t, "followed", "followed", "followed", "key Left")
	b.Disable()
	l.Disable()
	d.Click("b")
	d.Click("l")
	events.expect(t)
}

func TestToggle(t *testing.T) {
	h := use(t)
	var events diary
	tg := field.NewToggle(h, "t", []field.Option{{Key: "d", Text: "drunk"}, {Key: "p", Text: "poured"}, {Key: "s", Text: "shared"}})
	tg.OnChosen = func(key string) { events.note("%s", key) }
	d := open(t, tg)
	if tg.Chosen() != "" {
		t.Error("something is chosen from the start")
	}
	d.Focus("t")
	d.Key(fyne.KeyRight, fyne.KeyRight, fyne.KeyLeft, fyne.KeyEnd, fyne.KeyHome, fyne.KeySpace, fyne.KeyRight, fyne.KeyRight)
	events.expect(t, "d", "p", "d", "s", "d", "p", "s")
	d.ClickAt("t", 200, 15)
	events.expect(t, "p")
	tg.Choose("")
	tg.Choose("s")
	events.expect(t)
	if tg.Chosen() != "s" {
		t.Errorf("%q is chosen", tg.Chosen())
	}
}

func TestCheck(t *testing.T) {
	h := use(t)
	var events diary
	c := field.NewCheck(h, "c", "Hide body mass")
	c.OnChanged = func(on bool) { events.note("%v", on) }
	d := open(t, c)
	d.Click("c")
	d.Key(fyne.KeySpace, fyne.KeyReturn)
	events.expect(t, "true", "false")
	c.Set(false)
	events.expect(t)
}

func TestRating(t *testing.T) {
	h := use(t)
	var events diary
	r := field.NewRating(h, "r", "fine", "could not go on")
	r.OnChanged = func(v int) { events.note("%d", v) }
	d := open(t, r)
	d.Focus("r")
	d.Type("7")
	d.Type("10")
	d.Type("0")
	d.Type("1")
	d.Key(fyne.KeyRight)
	d.Type("x0")
	d.Key(fyne.KeyEnd, fyne.KeyRight, fyne.KeyBackspace, fyne.KeyLeft)
	events.expect(t, "7", "1", "10", "0", "1", "2", "0", "10", "-1", "0")
	d.ClickAt("r", 36*4.5, 10)
	events.expect(t, "4")
	r.SetValue(12)
	if r.Value() != field.Unrated {
		t.Errorf("12 became %d", r.Value())
	}
	events.expect(t)
}

func TestTabs(t *testing.T) {
	h := use(t)
	var events diary
	tabs := field.NewTabs(h, "tabs", []field.Tab{{Key: "a", Text: "Before"}, {Key: "b", Text: "Bottles"}, {Key: "c", Text: "After"}})
	tabs.OnChosen = func(key string) { events.note("%s", key) }
	d := open(t, tabs)
	d.Focus("tabs")
	d.Key(fyne.KeyRight, fyne.KeyEnd, fyne.KeyRight, fyne.KeyHome, fyne.KeyLeft)
	events.expect(t, "b", "c", "a")
	d.ClickAt("tabs", 95, 15)
	events.expect(t, "b")
	width := tabs.MinSize().Width
	tabs.Choose("c")
	if tabs.MinSize().Width != width {
		t.Error("the tabs moved when another was chosen")
	}
	tabs.SetDone("a", true)
	tabs.SetTabs([]field.Tab{{Key: "c", Text: "After"}, {Key: "z", Text: "Findings"}})
	if tabs.Chosen() != "c" {
		t.Errorf("%q is chosen", tabs.Chosen())
	}
	events.expect(t)
}

func TestChoice(t *testing.T) {
	h := use(t)
	var events diary
	c := field.NewChoice(h, "food", foods())
	c.OnChosen = func(key string) { events.note("%s", key) }
	d := open(t, c, field.NewLine(h, "next", 0))
	d.Focus("food")
	d.Key(fyne.KeyRight, fyne.KeyRight, fyne.KeyLeft, fyne.KeyEnd, fyne.KeyHome)
	events.expect(t, "Banana", "Bread roll", "Banana", "Rice cake, sweet", "Banana")
	d.Type("or")
	events.expect(t, "Oat biscuit", "Orange")
	d.Key(fyne.KeyDown) // opens
	if d.Focused() != "food.list" {
		t.Fatalf("the keyboard is with %q", d.Focused())
	}
	d.Key(fyne.KeyDown, fyne.KeyDown, fyne.KeyReturn)
	events.expect(t, "Raisins")
	if d.Focused() != "next" {
		t.Errorf("after the list the keyboard is with %q", d.Focused())
	}
	d.Focus("food")
	d.Key(fyne.KeySpace, fyne.KeyUp, fyne.KeyEscape)
	events.expect(t)
	d.Pick("food", "Fig bar")
	events.expect(t, "Fig bar")
	d.Focus("food")
	d.Key(fyne.KeyReturn, fyne.KeyPageDown, fyne.KeyTab)
	events.expect(t, "Rice cake, sweet")
	if d.Focused() != "next" {
		t.Errorf("Tab in the list went to %q", d.Focused())
	}
}

func TestChoiceMouse(t *testing.T) {
	h := use(t)
	c := field.NewChoice(h, "food", foods())
	d := open(t, c)
	d.Click("food")
	d.ClickAt("food.list", 40, 4+28*2+10)
	if c.Chosen() != "Date, dried" {
		t.Errorf("the third row chose %q", c.Chosen())
	}
	d.Click("food")
	list := d.Find("food.list").(fyne.Scrollable)
	for range 5 { // a pad sends a notch in parts
		list.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, -5)})
	}
	d.ClickAt("food.list", 40, 10)
	if c.Chosen() != "Date, dried" {
		t.Errorf("after one notch, two rows, the first row chose %q", c.Chosen())
	}
	c.SetOptions(foods()[:2])
	if c.Chosen() != "" {
		t.Errorf("%q is chosen and not in the list", c.Chosen())
	}
}

func TestSuggest(t *testing.T) {
	h := use(t)
	var events diary
	match := func(text string) []field.Option {
		var list []field.Option
		for _, o := range foods() {
			if strings.Contains(strings.ToLower(o.Text), strings.ToLower(text)) {
				list = append(list, o)
			}
		}
		return list
	}
	s := field.NewSuggest(h, "food", false, match)
	s.OnChosen = func(o field.Option) { events.note("chosen %s", o.Key) }
	s.OnLeft = func(text string, known bool) { events.note("left %s %v", text, known) }
	d := open(t, s, field.NewLine(h, "next", 0))
	d.Focus("food")
	d.Type("ba")
	if d.Focused() != "food.list" || s.Text() != "ba" {
		t.Fatalf("typed %q, the keyboard is with %q", s.Text(), d.Focused())
	}
	d.Key(fyne.KeyDown, fyne.KeyReturn)
	events.expect(t, "chosen Fig bar", "left Fig bar true")
	if d.Focused() != "next" {
		t.Errorf("after a match was taken the keyboard is with %q", d.Focused())
	}
	d.BackTab()
	d.Key(fyne.KeyEnd)
	if o, ok := s.Taken(); !ok || o.Key != "Fig bar" || s.Text() != "Fig bar" {
		t.Errorf("%q is taken, the text is %q", o.Key, s.Text())
	}
	d.Type("x")
	if _, ok := s.Taken(); ok {
		t.Error("a changed text still stands for the match")
	}
	d.Key(fyne.KeyBackspace, fyne.KeyEscape, fyne.KeyTab)
	events.expect(t, "left Fig bar true")
	d.BackTab()
	d.Type("fig BAR")
	d.Key(fyne.KeyEscape)
	d.Tab()
	events.expect(t, "chosen Fig bar", "left Fig bar true")
	d.BackTab()
	d.Type("soup")
	d.Tab()
	events.expect(t, "left soup false")
	if w, _ := s.Trouble(); w != field.Wrong {
		t.Error("soup is not in the list, and nothing says so")
	}
}

// In a field of free text Enter and Tab take a match that begins with the three
// letters typed, or more; Escape keeps what was typed, and so does a text that
// no match begins with.
func TestSuggestFree(t *testing.T) {
	h := use(t)
	s := field.NewSuggest(h, "drink", true, func(string) []field.Option { return []field.Option{{Key: "w", Text: "Water"}} })
	entered := 0
	h.OnKey = func(*fyne.KeyEvent) { entered++ }
	d := open(t, s)
	d.Focus("drink")
	d.Type("Wa")
	d.Key(fyne.KeyReturn)
	if s.Text() != "Wa" || entered != 1 {
		t.Errorf("two letters made %q, told %d", s.Text(), entered)
	}
	d.Type("t")
	d.Key(fyne.KeyEscape, fyne.KeyReturn)
	if s.Text() != "Wat" {
		t.Errorf("Escape made %q", s.Text())
	}
	d.Type("e")
	d.Key(fyne.KeyReturn)
	if s.Text() != "Water" {
		t.Errorf("Enter made %q", s.Text())
	}
	d.Fill("drink", "Well water")
	if s.Text() != "Well water" {
		t.Errorf("a drink of its own became %q", s.Text())
	}
}

func TestDate(t *testing.T) {
	h := use(t)
	var events diary
	day := field.NewDate(h, "day", field.Past)
	day.OnChanged = func(d record.Date) { events.note("%s", d) }
	day.OnLeft = func(d record.Date, ok bool) { events.note("left %s %v", d, ok) }
	d := open(t, day, field.NewLine(h, "next", 0))
	d.Focus("day")
	d.Type("14.5.")
	events.expect(t, "2026-05-14")
	if s := strings.Join(textsOf(day), " "); !strings.Contains(s, "Thu 14 May 2026") {
		t.Errorf("it says back %q", s)
	}
	d.Tab()
	events.expect(t, "left 2026-05-14 true")
	if day.Text() != "14 May 2026" {
		t.Errorf("it stands as %q", day.Text())
	}
	d.BackTab()
	d.Key(fyne.KeyUp, fyne.KeyDown, fyne.KeyPageDown)
	events.expect(t, "2026-05-15", "2026-05-14", "2026-05-07")
	d.Type("y")
	events.expect(t, "2026-11-24")
	d.Type("t")
	events.expect(t, "2026-11-25")
	d.Key(fyne.KeyEscape)
	events.expect(t, "2026-05-14")
	d.Fill("day", "31.2.2026")
	events.expect(t, "left  false")
	if w, note := day.Trouble(); w != field.Wrong || note == "" || day.Text() != "31.2.2026" {
		t.Errorf("31 February: %d %q, text %q", w, note, day.Text())
	}
	d.Fill("day", "")
	events.expect(t, "", "left  true")
	day.SetDate("2026-01-02")
	events.expect(t)
	d.Focus("day")
	d.Type("3.4.26")
	day.SetDate("2026-04-03") // what the screen makes of it comes back
	if day.Text() != "3.4.26" {
		t.Errorf("the text became %q while it was typed", day.Text())
	}
}

func TestClock(t *testing.T) {
	h := use(t)
	var events diary
	c := field.NewClock(h, "at")
	c.OnChanged = func(at record.Clock) { events.note("%s", at) }
	c.OnLeft = func(at record.Clock, ok bool) { events.note("left %s %v", at, ok) }
	d := open(t, c, field.NewLine(h, "next", 0))
	d.Focus("at")
	d.Key(fyne.KeyUp, fyne.KeyUp, fyne.KeyPageUp)
	events.expect(t, "14:30", "14:35", "15:35")
	d.Fill("at", "2355")
	events.expect(t, "02:00", "23:00", "02:35", "23:55", "left 23:55 true")
	d.BackTab()
	d.Key(fyne.KeyUp)
	events.expect(t, "00:00")
	d.Fill("at", "25:00")
	if w, _ := c.Trouble(); w != field.Wrong {
		t.Error("25:00 is taken for a time")
	}
}

// Where matches differ in kind Enter takes one only when it is the only one, or reads
// the same.
func TestSuggestChoosy(t *testing.T) {
	h := use(t)
	all := []field.Option{{Key: "6", Text: "Running, 6.4 km/h"}, {Key: "w", Text: "Walking or running"}}
	s := field.NewSuggest(h, "activity", true, func(text string) []field.Option { return field.Matching(all, text) }).Choosy()
	d := open(t, s)
	d.Focus("activity")
	d.Type("running")
	d.Key(fyne.KeyReturn)
	if _, known := s.Taken(); known || s.Text() != "running" {
		t.Errorf("Enter took %q unasked", s.Text())
	}
	d.Fill("activity", "")
	d.Type("running, 6")
	d.Key(fyne.KeyReturn)
	if o, known := s.Taken(); !known || o.Key != "6" {
		t.Errorf("the only match left is not taken: %q", s.Text())
	}
}

// Letters in the middle of a word make no match of another kind; a field that must be a
// match marks the first of several at Enter, and takes it at the next.
func TestSuggestChoosyWaits(t *testing.T) {
	h := use(t)
	all := []field.Option{{Key: "t", Text: "throwing"}, {Key: "r", Text: "rowing"}, {Key: "f", Text: "football (soccer)"}, {Key: "a", Text: "American football"}}
	matches := func(text string) []field.Option { return field.Matching(all, text) }
	for _, free := range []bool{true, false} {
		s := field.NewSuggest(h, "sport", free, matches).Choosy()
		d := open(t, s, field.NewLine(h, "next", 0))
		d.Focus("sport")
		d.Type("row")
		d.Key(fyne.KeyReturn)
		if o, known := s.Taken(); !known || o.Key != "r" {
			t.Errorf("free %v: the only one that begins so is not taken: %q", free, s.Text())
		}
		d.Fill("sport", "")
		d.Focus("sport")
		d.Type("football")
		d.Key(fyne.KeyReturn)
		if _, known := s.Taken(); known || s.Text() != "football" {
			t.Errorf("free %v: Enter took %q unasked", free, s.Text())
		}
		if free {
			continue
		}
		if w, _ := s.Trouble(); w == field.Wrong {
			t.Error("it is called wrong while the list is open")
		}
		d.Key(fyne.KeyReturn)
		if o, known := s.Taken(); !known || o.Key != "f" {
			t.Errorf("the match that was marked is not taken: %q", s.Text())
		}
	}
}

// Enter goes past a link that opens something; Tab does not.
func TestEnterPassesBy(t *testing.T) {
	h := use(t)
	first, link, second := field.NewLine(h, "a", 0), field.NewLink(h, "more", "more", nil), field.NewLine(h, "b", 0)
	link.PassBy()
	d := open(t, first, link, second)
	h.OnKey = func(*fyne.KeyEvent) { field.Next(fyne.CurrentApp().Driver().CanvasForObject(first)) }
	d.Focus("a")
	d.Key(fyne.KeyReturn)
	if !second.Focused() {
		t.Error("Enter stopped at the link")
	}
	d.Focus("a")
	d.Key(fyne.KeyTab)
	if !link.Focused() {
		t.Error("Tab went past the link")
	}
}
