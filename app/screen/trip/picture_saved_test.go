package trip

import (
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2/container"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
)

// The rows of a stop and its heat days are saved as pictures, one each, and the rows
// still answer afterwards.
func TestChartsOfAStopAreSaved(t *testing.T) {
	d, _ := apptest.Demo(t)
	trips, err := d.Store.Trips(t.Context())
	if err != nil || len(trips) == 0 {
		t.Fatalf("%d trips, %v", len(trips), err)
	}
	v, err := New(d, desk.Place{Screen: desk.Trip, Record: trips[0].ID})
	if err != nil {
		t.Fatal(err)
	}
	w := apptest.Window(t, container.NewBorder(container.NewHBox(v.ui.picture), nil, nil, nil, v.Body()), 1180, 760, false, 100)
	stops := v.now().Stops
	v.ShowPart(string(stops[len(stops)-1].ID))
	before, tall := v.ui.stop.crew.body.Position(), v.ui.stop.crew.body.Size()
	apptest.Click(t, w, "trip.picture")
	path := filepath.Join(t.TempDir(), "trip.png")
	apptest.Type(t, w, "trip.picture.ask.path", path)
	apptest.Click(t, w, "trip.picture.ask.yes")
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer func() {
		if err := file.Close(); err != nil {
			t.Error(err)
		}
	}()
	img, err := png.Decode(file)
	if err != nil {
		t.Fatal(err)
	}
	colours := map[any]bool{}
	for y := range img.Bounds().Dy() {
		for x := range img.Bounds().Dx() {
			colours[img.At(x, y)] = true
		}
	}
	if img.Bounds().Dx() != int(2*tall.Width) || len(colours) < 20 {
		t.Errorf("the picture is %v with %d colours, the table %v", img.Bounds(), len(colours), tall)
	}
	if v.ui.stop.crew.body.Position() != before || v.ui.stop.crew.body.Size() != tall {
		t.Error("the table has moved")
	}
	open := v.open
	apptest.Click(t, w, "trip.row.2")
	if v.open == open {
		t.Error("a row no longer opens")
	}
	_, err = os.Stat(filepath.Join(filepath.Dir(path), "trip 2.png"))
	if shown := v.ui.stop.days.body.Visible(); shown != (err == nil) {
		t.Errorf("the heat days are shown: %v, their picture: %v", shown, err)
	}
}

// The pages of a trip are saved as pictures from where they are printed: a file for each
// side, nothing written over, nothing kept with the records.
func TestPagesOfATripAreSavedAsPictures(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := with(t, d, "Ravka", "Kester")
	w.SetContent(container.NewBorder(container.NewHBox(v.ui.print), nil, nil, nil, v.Body()))
	folder := t.TempDir()
	sides := 0
	for _, p := range pagesOf(t, v, everybody) {
		doc, err := p.laid(d.Paper())
		if err != nil {
			t.Fatal(err)
		}
		sides += len(doc.Pages)
	}
	said := ""
	d.Say = func(sentence, _ string, _ func()) { said = sentence }
	for round := 1; round <= 2; round++ {
		apptest.Click(t, w, "trip.print")
		apptest.Type(t, w, "trip.print.path", folder)
		apptest.Click(t, w, "trip.print.picture")
		files, err := filepath.Glob(filepath.Join(folder, "*.png"))
		if err != nil || len(files) != round*sides {
			t.Fatalf("round %d: %d files for %d sides: %v", round, len(files), sides, err)
		}
	}
	for _, name := range []string{"*.pdf", "*"} {
		files, err := filepath.Glob(filepath.Join(folder, name))
		if want := map[string]int{"*.pdf": 0, "*": 2 * sides}[name]; err != nil || len(files) != want {
			t.Errorf("%d files %s: %v", len(files), name, err)
		}
	}
	if !strings.Contains(said, folder) {
		t.Errorf("it says %q", said)
	}
	prints, err := d.Store.PrintsOf(t.Context(), apptest.AthleteNamed(t, d, "Ravka").ID)
	if err != nil || len(prints) != 0 {
		t.Errorf("%d pages are kept: %v", len(prints), err)
	}
}
