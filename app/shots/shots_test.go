package shots

import (
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
)

// Every screen can be drawn: painted in one window and theme. How each is laid out in
// the others, and its colours there, is held by TestLayout, which paints nothing.
func TestDraw(t *testing.T) {
	in := Everything()
	in.Sizes, in.Dark = []fyne.Size{{Width: 1180, Height: 760}}, []bool{true}
	drawn := map[string]bool{}
	if err := Draw(t.TempDir(), in, func(file string) { drawn[file] = true }); err != nil {
		t.Fatal(err)
	}
	if all := len(openAll(t, apptest.Words(t), false).list); len(drawn) != all || all < 80 {
		t.Errorf("drew %d pictures of %d places", len(drawn), all)
	}
}
