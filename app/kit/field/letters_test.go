package field_test

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// Letters that no font has, of which these tests have none: a box says below it that
// they cannot be shown, draws "…" for each while it is typed, and keeps what was typed.
func TestLettersNoFontHas(t *testing.T) {
	h := use(t)
	line, notes, secret := field.NewLine(h, "name", 0), field.NewNotes(h, "note", 2), field.NewLine(h, "secret", 0)
	secret.Conceal(true)
	suggest := field.NewSuggest(h, "choose", true, nil)
	d := open(t, line, notes, secret, suggest)
	for _, c := range []struct {
		at   string
		part interface{ Parts() []fyne.CanvasObject }
		text func() string
		says bool
	}{
		{"name", line, line.Text, true}, {"note", notes, notes.Text, true},
		{"secret", secret, secret.Text, false}, {"choose", suggest, suggest.Text, true},
	} {
		parts := c.part.Parts()
		note, ok := parts[len(parts)-1].(*look.Paragraph)
		if !ok {
			t.Fatalf("%s: nothing below the box", c.at)
		}
		d.Focus(c.at)
		d.Type("Zoë")
		if note.Text() != "" {
			t.Errorf("%s says %q of letters the typeface has", c.at, note.Text())
		}
		d.Type(" 王伟")
		if got := c.text(); got != "Zoë 王伟" {
			t.Errorf("%s keeps %q", c.at, got)
		}
		if says := strings.Contains(note.Text(), "2"); says != c.says {
			t.Errorf("%s says %q", c.at, note.Text())
		}
	}
	line.SetText("王 Wei")
	if got := drawnIn(line); !strings.Contains(got, "… Wei") || strings.Contains(got, "王") {
		t.Errorf("drawn: %q", got)
	}
	line.SetText("Wei")
	if parts := line.Parts(); parts[1].(*look.Paragraph).Text() != "" {
		t.Error("the note stays when the letters are gone")
	}
}

// The toolkit's editor draws the letters of notes as they were typed; where no font has one
// it draws "…", and never a box, also while the notes have the keyboard.
func TestNotesDrawNoBox(t *testing.T) {
	h := use(t)
	notes := field.NewNotes(h, "note", 6) // so high that the note below leaves it its first row
	d := open(t, notes)
	// inked are the rows of dots of the box that a text puts ink in, left of the caret
	inked := func(text string, typed bool) []int {
		notes.SetText("")
		if typed {
			d.Focus("note")
			d.Type(text + "\n")
		} else {
			notes.SetText(text)
		}
		whole := fyne.CurrentApp().Driver().CanvasForObject(notes).Capture()
		var rows []int
		for y := 4; y < int(look.Body.Height())+4; y++ {
			for x := 8; x < 60; x++ {
				if whole.At(x, y) != whole.At(8, 4) {
					rows = append(rows, y)
					break
				}
			}
		}
		return rows
	}
	for _, typed := range []bool{false, true} {
		want := inked("………", typed)
		if len(want) == 0 || len(want) > 3 {
			t.Fatalf("typed %t: “…” has ink in rows %d", typed, want)
		}
		if got := inked("王伟ქ", typed); !slices.Equal(got, want) {
			t.Errorf("typed %t: ink in rows %d, of “…” in %d", typed, got, want)
		}
		if got := inked("o", typed); len(got) <= len(want) {
			t.Errorf("typed %t: a letter has ink in rows %d", typed, got)
		}
	}
}

// drawnIn is all that a field writes on the screen.
func drawnIn(f fyne.Widget) string {
	var list []string
	for _, o := range f.CreateRenderer().Objects() {
		if text, ok := o.(*canvas.Text); ok {
			list = append(list, text.Text)
		}
	}
	return strings.Join(list, "|")
}
