package profile

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/store"
)

// TestEraseWithFiles: before erasing, the files saved elsewhere are named; those that are
// still what was saved are deleted where that was asked for, and what may hold the athlete
// still is listed afterwards.
func TestEraseWithFiles(t *testing.T) {
	for name, ask := range map[string]bool{"asked": true, "not asked": false} {
		t.Run(name, func(t *testing.T) { eraseWithFiles(t, ask) })
	}
}

// eraseWithFiles erases an athlete of whom files were saved elsewhere; ask also deletes those.
func eraseWithFiles(t *testing.T, ask bool) {
	d, _, a := withCopies(t)
	folder, ctx := t.TempDir(), context.Background()
	var said []string
	page, changed, all := filepath.Join(folder, "page.pdf"), filepath.Join(folder, "changed.pdf"), filepath.Join(folder, "all.json")
	for _, path := range []string{page, changed} {
		if err := d.Store.WriteFile(ctx, path, []byte("of one"), a.ID); err != nil {
			t.Fatal(err)
		}
	}
	if err := d.Store.WriteFile(ctx, all, []byte("of all"), store.Everyone); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(changed, []byte("another program"), 0o600); err != nil {
		t.Fatal(err)
	}
	b := openProfile(t, d, desk.Place{Athlete: a.ID})
	d.Say = func(sentence, _ string, _ func()) { said = append(said, sentence) }
	b.click("profile.erase")
	before := strings.Join(apptest.Texts(b.w.Canvas().Overlays().Top()), " ")
	for _, want := range []string{"2 files were saved outside the data folder", page + ": there", changed + ": changed since it was saved", "Delete this file too", all} {
		if !strings.Contains(before, want) {
			t.Errorf("before erasing, %q is not said: %s", want, before)
		}
	}
	if ask {
		b.click("profile.erase.files")
	}
	b.click("profile.erase.first.yes")
	apptest.Type(t, b.w, "profile.erase.name", a.Name)
	b.click("profile.erase.second.yes")
	after := strings.Join(apptest.Texts(b.w.Canvas().Overlays().Top()), " ")
	if strings.Contains(after, page) == ask || !strings.Contains(after, changed) || !strings.Contains(after, all) {
		t.Errorf("afterwards it says: %s", after)
	}
	if _, err := os.Lstat(page); (err != nil) != ask {
		t.Errorf("the page: %v", err)
	}
	if told := strings.Contains(strings.Join(said, " "), "1 saved file was deleted too"); told != ask {
		t.Errorf("said %q", said)
	}
	b.click("profile.files.close")
}
