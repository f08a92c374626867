package shots

import (
	"image/png"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
)

// Pictures of the screens asked for are drawn, each in every size and theme. That every
// screen can be painted is held by TestEveryScreen.
func TestDraw(t *testing.T) {
	in := Everything()
	in.Sizes, in.Only = []fyne.Size{{Width: 1180, Height: 760}}, []string{"plan-beside", "athletes"}
	drawn := map[string]bool{}
	dir := t.TempDir()
	if err := Draw(dir, in, func(file string) { drawn[file] = true }); err != nil {
		t.Fatal(err)
	}
	for file := range drawn {
		f, err := os.Open(file)
		if err != nil {
			t.Fatal(err)
		}
		if is, err := png.DecodeConfig(f); err != nil || is.Width != 1180 || is.Height != 760 {
			t.Errorf("%s is %d x %d: %v", file, is.Width, is.Height, err)
		}
		_ = f.Close()
	}
	for _, name := range []string{"plan-beside-light", "plan-beside-dark", "athletes-light", "athletes-dark"} {
		if !drawn[filepath.Join(dir, name+"-1180x760.png")] {
			t.Errorf("%s was not drawn; drawn were %v", name, slices.Sorted(maps.Keys(drawn)))
		}
	}
}
