package shots

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"golang.org/x/text/language"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/words"
)

// TestPlannerIsOneScreen: in a window of 1366 x 768 the mix, the figures, the picture, the
// breaks, the steps and the limit are in sight together, in every language, at 100 % and
// 125 % text: nothing scrolls.
func TestPlannerIsOneScreen(t *testing.T) {
	for _, tag := range words.Languages() {
		t.Run(tag.String(), func(t *testing.T) { plannerIsOneScreen(t, tag) })
	}
}

// plannerIsOneScreen looks at a draft, an agreed and a hidden plan in a language.
func plannerIsOneScreen(t *testing.T, tag language.Tag) {
	texts, err := words.New(tag)
	if err != nil {
		t.Fatal(err)
	}
	o := openAll(t, texts, false)
	list := slices.DeleteFunc(o.list, func(s shot) bool {
		return !slices.Contains([]string{"plan-draft", "plan-agreed", "plan-hidden"}, s.name)
	})
	looked := 0
	for _, percent := range []int{100, 125} {
		o.app.Settings().SetTheme(look.NewTheme(false, percent).Still())
		for _, s := range list {
			looked++
			away := s.open(o.program, o.w)
			layOutAgain(o.w)
			if n, over := scrolled(o.w.Content()); n == 0 {
				t.Errorf("%s at %d %%: no scroll is found, the test cannot fail", s.name, percent)
			} else if over > 0.5 {
				t.Errorf("%s at %d %%: %g px are out of sight", s.name, percent, over)
			}
			away()
		}
	}
	if looked != 6 {
		t.Errorf("%d looks at plans", looked)
	}
}

// scrolled counts the scrolls in sight, and by how many px what is in them is higher than
// their room, at most.
func scrolled(o fyne.CanvasObject) (n int, over float32) {
	if o == nil || !o.Visible() {
		return 0, 0
	}
	inside := field.Children(o)
	if s, ok := o.(*look.Scroll); ok {
		n, over = 1, inside[0].Size().Height-s.Size().Height
	}
	for _, one := range inside {
		m, by := scrolled(one)
		n, over = n+m, max(over, by)
	}
	return n, over
}
