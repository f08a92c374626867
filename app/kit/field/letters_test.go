package field_test

import (
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
