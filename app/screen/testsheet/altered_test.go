package testsheet

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/store"
)

// TestAlteredSheetIsSaid: a byte of a closed sheet that the disk changed is said on the
// sheet, with the way to the copies; a whole one says nothing.
func TestAlteredSheetIsSaid(t *testing.T) {
	for name, harmed := range map[string]bool{"harmed": true, "whole": false} {
		t.Run(name, func(t *testing.T) {
			d, went := apptest.Desk(t)
			a := consenting(t, d)
			sheet := aTest(a, "2026-05-10", 62.4)
			sheet.Note = "a note that stands in the file once: Quillfeather"
			if _, err := d.Store.SaveTest(context.Background(), sheet, store.Edit{}); err != nil {
				t.Fatal(err)
			}
			place := desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: sheet.ID, Part: PartFindings}
			b := openAt(t, d, went, place)
			apptest.Click(t, b.w, "testsheet.next")
			b.v.Leave()
			if harmed {
				harm(t, filepath.Join(d.Store.Dir(), "ebbwell.db"), filepath.Join(d.Store.Dir(), "ebbwell.db-wal"), []byte(sheet.Note))
			}
			b = openAt(t, d, went, place)
			title, sentence := b.v.ui.altered.Text()
			if (title != "") != harmed || strings.Contains(sentence, "earlier copy") != harmed || apptest.Has(b.w, "testsheet.copies") != harmed {
				t.Fatalf("it says %q, %q", title, sentence)
			}
			if harmed {
				apptest.Click(t, b.w, "testsheet.copies")
				if last := (*went)[len(*went)-1]; last.Screen != desk.Practice || last.Part != desk.PartRecords {
					t.Errorf("went to %+v", last)
				}
			}
		})
	}
}

// harm flips a byte of a text wherever it stands in the files.
func harm(t *testing.T, file, log string, what []byte) {
	t.Helper()
	n := 0
	for _, path := range []string{file, log} {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for at := bytes.Index(data, what); at >= 0; at = bytes.Index(data, what) {
			data[at+len(what)/2] ^= 0x01
			n++
		}
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if n == 0 {
		t.Fatal("the text is in no file")
	}
}
