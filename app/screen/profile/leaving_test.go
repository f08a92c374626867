package profile

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

func TestDeleteAndBringBack(t *testing.T) {
	d, went := apptest.Desk(t)
	b := openProfile(t, d, desk.Place{Athlete: apptest.Athlete(t, d).ID})
	apptest.Type(t, b.w, "profile.position", "goal") // still to be saved
	b.click("profile.delete")
	ctx, id := context.Background(), b.v.now().ID
	if _, err := d.Store.LoadAthlete(ctx, id); store.CodeOf(err) != store.CodeDeleted || (*went)[0].Screen != desk.Athletes {
		t.Fatalf("%v, went %+v", err, *went)
	}
	b.v.Leave()
	(*b.undo)()
	if a, err := d.Store.LoadAthlete(ctx, id); err != nil || a.Position != "goal" || (*went)[1].Athlete != id {
		t.Errorf("brought back: %+v, %v", a, err)
	}
}

func TestEraseForGood(t *testing.T) {
	d, went, a := withCopies(t)
	b := openProfile(t, d, desk.Place{Athlete: a.ID})
	if _, err := d.Store.SaveTest(context.Background(), record.Test{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, State: record.TestOpen}, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	before, err := d.Store.Snapshots()
	if err != nil || len(before) == 0 {
		t.Fatalf("copies %v, %v", before, err)
	}
	unreadable := filepath.Join(d.Store.Dir(), "snapshots", "schema-20260101T000000.000Z.db")
	if err := os.WriteFile(unreadable, []byte("of another time"), 0o600); err != nil {
		t.Fatal(err)
	}
	practice := d.Practice()
	practice.Settings.Backup.Folder = "/copies/of/every/week"
	if _, err := d.Store.SavePractice(context.Background(), practice, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	d.PracticeChanged()
	b.click("profile.erase")
	said := strings.Join(apptest.Texts(b.w.Canvas().Overlays().Top()), " ")
	for _, stays := range []string{practice.Settings.Backup.Folder, d.Words.Say("profile.erase.elsewhere")} {
		if !strings.Contains(said, stays) {
			t.Errorf("that %q stays is not said before: %s", stays, said)
		}
	}
	b.click("profile.erase.first.yes")
	apptest.Type(t, b.w, "profile.erase.name", "somebody else")
	b.click("profile.erase.second.yes")
	if _, err := d.Store.LoadAthlete(context.Background(), a.ID); err != nil || !apptest.Has(b.w, "profile.erase.name") {
		t.Fatalf("another name erases: %v", err)
	}
	apptest.Type(t, b.w, "profile.erase.name", a.Name)
	b.click("profile.erase.second.yes")
	if _, err := d.Store.LoadAthlete(context.Background(), a.ID); store.CodeOf(err) != store.CodeNotFound || (*went)[0].Screen != desk.Athletes {
		t.Fatalf("after erasing: %v, went %+v", err, *went)
	}
	if !b.v.b.Field("profile.name").Field.Disabled() {
		t.Error("what was erased can be typed into")
	}
	b.click("profile.copies.remove")
	if copies, _ := d.Store.Snapshots(); len(copies) != len(before) {
		t.Errorf("of %v are left: %v", before, copies)
	}
	if deleted, _ := d.Store.Deleted(context.Background()); len(deleted) != 0 {
		t.Errorf("still to be brought back: %v", deleted)
	}
}
