package practice

import (
	"context"
	"flag"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

var update = flag.Bool("update", false, "keep new golden pictures")

// album lists the screens that are kept as pictures.
func album() golden.Album {
	return golden.Album{Update: *update, Keep: []string{
		"house-small-light-100",
		"standards-small-light-100",
		"records-small-light-100",
		"thresholds-small-light-100",
		"about-small-light-100",
	}}
}

func sizes() map[string]fyne.Size {
	return map[string]fyne.Size{"small": golden.SmallRoom(), "large": golden.LargeRoom()}
}

// shoot keeps a picture of a part in a mode.
func shoot(t *testing.T, name string, m golden.Mode, size fyne.Size, d *desk.Desk, part string, ready func(*View, fyne.Window)) {
	t.Helper()
	golden.Use(t, m)
	v, err := New(d, desk.Place{Screen: desk.Practice, Part: part})
	if err != nil {
		t.Fatal(err)
	}
	if r, ok := v.made[PartRecords].(*records); ok {
		// The folder is another in each run, and so may the file's size be.
		r.list.copies = []store.Snapshot{{At: apptest.Now(), Reason: store.SnapshotDaily, Bytes: 368640}, {At: apptest.Now().AddDate(0, 0, -1), Reason: store.SnapshotSetAside, Bytes: 4300000}}
		r.fillCopies()
		r.folder.SetText("/home/somebody/.local/share/ebbwell")
	}
	if a, ok := v.made[PartAbout].(*about); ok {
		a.folder.SetText(d.Words.Say("practice.about.folder", "/home/somebody/.local/share/ebbwell"))
	}
	w := golden.Open(t, v.Body(), size)
	if ready != nil {
		ready(v, w)
	}
	golden.LayOutAgain(w.Canvas())
	album().Screen(t, name, w)
}

func TestPictures(t *testing.T) {
	d, _ := apptest.Demo(t)
	trip, err := d.Store.Trips(context.Background())
	if err != nil || len(trip) == 0 {
		t.Fatalf("%d trips, %v", len(trip), err)
	}
	if err := d.Store.Delete(context.Background(), record.Ref{Kind: record.KindTrip, ID: trip[0].ID}, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	for _, part := range parts() {
		for name, size := range sizes() {
			for _, m := range []golden.Mode{{Percent: 100}, {Dark: true, Percent: 100}} {
				shoot(t, part+"-"+name+"-"+m.String(), m, size, d, part, nil)
			}
		}
		shoot(t, part+"-large-text", golden.Mode{Percent: 150}, sizes()["small"], d, part, nil)
	}
}
