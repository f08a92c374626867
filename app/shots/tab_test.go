package shots

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

// TestTabOnEveryScreen walks every screen, and every dialog that opens over one, with Tab:
// all that can be used is reached once, and nobody is led back: within what scrolls together
// the next control is never both above the one before and not to its right. Next is reached
// before Back.
func TestTabOnEveryScreen(t *testing.T) {
	texts := apptest.Words(t)
	o := openAll(t, texts, false)
	o.app.Settings().SetTheme(look.NewTheme(false, 100).Still())
	reached := 0
	for _, s := range o.list {
		away := s.open(o.program, o.w)
		closed, err := openDialog(o.w, s.name, o.program.Desk().Store.Dir())
		if err != nil {
			t.Fatal(err)
		}
		layOutAgain(o.w)
		root := o.w.Content()
		if top := o.w.Canvas().Overlays().Top(); top != nil {
			root = top
		}
		reached += walkByTab(t, s.name, o.w.Canvas(), root)
		closed()
		away()
		s.toggleHelp(o.program)
	}
	if reached < 10*len(o.list) {
		t.Errorf("only %d controls on %d screens: the test cannot fail", reached, len(o.list))
	}
}

// walkByTab goes through a screen with Tab, and returns how many controls it came to.
func walkByTab(t *testing.T, screen string, on fyne.Canvas, root fyne.CanvasObject) int {
	t.Helper()
	at := map[string]field.Spot{}
	var want []string
	for _, s := range field.Names(root) {
		d, can := s.Object.(fyne.Disableable)
		if _, ok := s.Object.(fyne.Focusable); ok && (!can || !d.Disabled()) {
			at[s.Name], want = s, append(want, s.Name)
		}
	}
	on.Unfocus()
	var got []string
	for range len(want) + 1 {
		on.FocusNext()
		if f, ok := on.Focused().(interface{ Name() string }); ok {
			got = append(got, f.Name())
		}
	}
	if len(got) > 1 && got[len(got)-1] == got[0] {
		got = got[:len(got)-1] // once round
	}
	for _, name := range want {
		if n := strings.Count("\n"+strings.Join(got, "\n")+"\n", "\n"+name+"\n"); n != 1 {
			t.Errorf("%s: Tab comes %d times to %q", screen, n, name)
		}
	}
	homes := map[fyne.CanvasObject]*look.Scroll{}
	findHomes(root, nil, homes)
	for i := range len(got) - 1 {
		from, to := at[got[i]], at[got[i+1]]
		if homes[from.Object] != homes[to.Object] {
			continue // one of them may be scrolled to anywhere
		}
		if to.Pos.Y+to.Size.Height <= from.Pos.Y && to.Pos.X <= from.Pos.X {
			t.Errorf("%s: Tab goes from %q back to %q", screen, got[i], got[i+1])
		}
	}
	for i, name := range got {
		if begin, ok := strings.CutSuffix(name, ".back"); ok && slices.Index(got, begin+".next") > i {
			t.Errorf("%s: Tab comes to %q before %q", screen, name, begin+".next")
		}
	}
	return len(got)
}

// findHomes notes for every object in sight which scroll it stands in, the innermost; nil
// for none.
func findHomes(o fyne.CanvasObject, in *look.Scroll, homes map[fyne.CanvasObject]*look.Scroll) {
	if o == nil || !o.Visible() {
		return
	}
	homes[o] = in
	for _, one := range field.Children(o) {
		if s, ok := o.(*look.Scroll); ok {
			in = s
		}
		findHomes(one, in, homes)
	}
}
