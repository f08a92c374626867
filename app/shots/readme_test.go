package shots

import (
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"golang.org/x/text/language"

	"ebbwell/internal/golden"
)

// readmePicture is the picture on the first page that a stranger reads. It is kept in its own
// colours: a kept picture for tests has fewer, which shows.
const readmePicture = "../../assets/screenshot-planner.png"

// What the README shows is the planner as it is today.
func TestReadmePicture(t *testing.T) {
	golden.Needed(t)
	dir := t.TempDir()
	which := Which{
		Only: []string{"plan-draft"}, Sizes: []fyne.Size{{Width: 1180, Height: 760}}, Dark: []bool{false}, Percent: []int{100},
		Language: language.English.String(),
	}
	var files []string
	if err := Draw(dir, which, func(file string) { files = append(files, file) }); err != nil {
		t.Fatal(err)
	}
	if len(files) != 1 {
		t.Fatalf("drew %q, want the planner once", files)
	}
	if *update {
		data, err := os.ReadFile(files[0])
		if err == nil {
			err = os.WriteFile(readmePicture, data, 0o644)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if n, _ := golden.Difference(golden.Reduce(decoded(t, readmePicture)), decoded(t, files[0])); n > 0 {
		t.Errorf("%s: %d pixels are not as the planner is today; look at it and run with -update", readmePicture, n)
	}
}

// decoded reads a picture.
func decoded(t *testing.T, file string) image.Image {
	t.Helper()
	f, err := os.Open(filepath.Clean(file))
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return img
}
