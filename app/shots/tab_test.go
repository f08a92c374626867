package shots

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
)

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
