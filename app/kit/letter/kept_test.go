package letter

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
)

// A letter that is saved is kept among the athlete's pages, as it was written.
func TestSavedLetterIsKept(t *testing.T) {
	d, _ := apptest.Demo(t)
	w := apptest.Window(t, look.NewLabel("", look.Body, look.Ink), 1000, 760, false, 100)
	a := apptest.AthleteNamed(t, d, "Ravka")
	Ask(d, w.Canvas(), Source{
		Name: "test.letter", File: "letter", Athlete: a.ID, Kind: record.KindAthlete, Record: a.ID,
		Of: func(ctx context.Context, d *desk.Desk) (Letter, error) {
			in, err := InputOf(ctx, d, a, nil)
			return Of(in), err
		},
	})
	apptest.Click(t, w, "test.letter.save")
	path := filepath.Join(t.TempDir(), "letter.txt")
	apptest.Type(t, w, "test.letter.ask.path", path)
	apptest.Click(t, w, "test.letter.ask.yes")
	written, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	list, err := d.Store.PrintsOf(context.Background(), a.ID)
	if err != nil || len(list) != 1 {
		t.Fatalf("%d prints, %v", len(list), err)
	}
	kept, err := d.Store.LoadPrint(context.Background(), list[0].ID)
	if err != nil || kept.Page != record.PageLetter || kept.Ending() != ".txt" || string(kept.Bytes) != string(written) || len(written) < 200 {
		t.Errorf("kept is %q (%s), %v", kept.Bytes, kept.Page, err)
	}
}
