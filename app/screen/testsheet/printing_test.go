package testsheet

import (
	"context"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/picture"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

func TestPrintsAreSavedAndKept(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	test := closedTest(t, d, a, "2026-05-14", 62.4)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Part: PartFindings})
	dir := t.TempDir()
	for page, do := range map[string]func(){
		pageReport: func() { b.part(PartFindings); b.v.Print() }, pageBlank: func() { b.part(PartBefore); apptest.Click(t, b.w, "testsheet.blank") },
	} {
		do()
		if got := apptest.Text(t, b.w, "testsheet.print.path"); !strings.HasSuffix(got, ".pdf") || !filepath.IsAbs(got) {
			t.Errorf("%s: the path offered is %q", page, got)
		}
		apptest.Type(t, b.w, "testsheet.print.path", filepath.Join(dir, "missing", "page.pdf"))
		apptest.Click(t, b.w, "testsheet.print.yes")
		if !apptest.Has(b.w, "testsheet.print.path") {
			t.Fatalf("%s: a folder that is not there was taken", page)
		}
		to := filepath.Join(dir, page+".pdf")
		apptest.Type(t, b.w, "testsheet.print.path", to)
		apptest.Click(t, b.w, "testsheet.print.yes")
		bytes, err := os.ReadFile(to)
		if err != nil || !strings.HasPrefix(string(bytes), "%PDF-") {
			t.Fatalf("%s: %v", page, err)
		}
	}
	prints, err := d.Store.PrintsOf(context.Background(), a.ID)
	if err != nil || len(prints) != 2 {
		t.Fatalf("%d pages are kept (%v)", len(prints), err)
	}
	for _, p := range prints {
		if p.Record != test.ID || p.Kind != record.KindTest || p.Language != "en" {
			t.Errorf("kept as %+v", p)
		}
	}
	b.v.Print()
	to := filepath.Join(dir, pageReport+".pdf")
	if err := os.WriteFile(to, []byte("another"), 0o600); err != nil {
		t.Fatal(err)
	}
	apptest.Type(t, b.w, "testsheet.print.path", to)
	apptest.Click(t, b.w, "testsheet.print.yes")
	if kept, err := os.ReadFile(to); err != nil || string(kept) != "another" || !apptest.Has(b.w, "testsheet.print.path") {
		t.Error("a file that is there was replaced without asking")
	}
}

func TestPrintsOnThePaperOfThePractice(t *testing.T) {
	for units, box := range map[string]string{"": "595.28 841.89", "us": "612.00 792.00"} {
		d, went := apptest.Desk(t)
		p := d.Practice()
		p.Settings.Units = units
		if _, err := d.Store.SavePractice(context.Background(), p, store.Edit{}); err != nil {
			t.Fatal(err)
		}
		d.PracticeChanged()
		a := consenting(t, d)
		closedTest(t, d, a, "2026-05-14", 62.4)
		b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Part: PartFindings})
		for page, do := range map[string]func(){pageReport: b.v.Print, pageBlank: b.v.printBlank} {
			do()
			to := filepath.Join(t.TempDir(), page+".pdf")
			apptest.Type(t, b.w, "testsheet.print.path", to)
			apptest.Click(t, b.w, "testsheet.print.yes")
			bytes, err := os.ReadFile(to)
			if err != nil || !strings.Contains(string(bytes), "/MediaBox [0 0 "+box+"]") {
				t.Errorf("units %q: the %s is not on %s pt (%v)", units, page, box, err)
			}
		}
	}
}

func TestBlankSheetBeforeAnyTest(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID})
	b.v.printBlank()
	apptest.Type(t, b.w, "testsheet.print.path", filepath.Join(t.TempDir(), "blank.pdf"))
	apptest.Click(t, b.w, "testsheet.print.yes")
	prints, err := d.Store.PrintsOf(context.Background(), a.ID)
	if err != nil || len(prints) != 1 || prints[0].Kind != record.KindAthlete || prints[0].Record != a.ID || prints[0].Page != pageBlank {
		t.Errorf("kept as %+v (%v)", prints, err)
	}
}

// The report is saved as a picture from the head, as the other pages are: the page as it
// prints, and nothing is kept with the records.
func TestReportIsSavedAsAPicture(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	closedTest(t, d, a, "2026-05-14", 62.4)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Part: PartFindings})
	if spare := b.v.Head().Spare; len(spare) != 1 || b.v.ui.foot.picture.Disabled() {
		t.Fatalf("%d in the head, off: %v", len(spare), b.v.ui.foot.picture.Disabled())
	}
	b.v.saveReport()
	if got := apptest.Text(t, b.w, "testsheet.askpicture.path"); !strings.HasSuffix(got, ".png") {
		t.Errorf("the path offered is %q", got)
	}
	path := filepath.Join(t.TempDir(), "report.png")
	apptest.Type(t, b.w, "testsheet.askpicture.path", path)
	apptest.Click(t, b.w, "testsheet.askpicture.yes")
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close() //nolint:errcheck // it was only read
	img, err := png.Decode(file)
	if err != nil || img.Bounds().Dx() != 210*picture.Dots {
		t.Errorf("%v, %v", img.Bounds(), err)
	}
	if prints, err := d.Store.PrintsOf(context.Background(), a.ID); err != nil || len(prints) != 0 {
		t.Errorf("%d pages are kept (%v)", len(prints), err)
	}
	b.part(PartBefore)
	if len(b.v.Head().Spare) != 0 {
		t.Error("a sheet that is filled in offers the report's picture")
	}
}
