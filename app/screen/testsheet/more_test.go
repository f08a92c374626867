package testsheet

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/keep"
	"ebbwell/app/kit/keep/clock"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/sweat"
)

// The program is killed in the middle of a sheet: half a second after the last
// key, with no field left and nothing flushed, everything typed is in the file.
func TestKilledInTheMiddle(t *testing.T) {
	d, went := apptest.Desk(t)
	c := clock.New(apptest.Now())
	d.Keep = keep.NewAfter(c.Now, c.After, nil)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: consenting(t, d).ID, New: true})
	b.enter("testsheet.start", "14:00")
	b.part(PartBottles)
	apptest.Type(t, b.w, "testsheet.bottle.1.before", "712")
	apptest.Type(t, b.w, "testsheet.bottle.1.after", "4x12")
	b.part(PartAfter)
	apptest.Type(t, b.w, "testsheet.after.mass.1", "62.4")
	c.Advance(500 * time.Millisecond)
	killed := t.TempDir()
	if err := os.CopyFS(killed, os.DirFS(b.desk.Store.Dir())); err != nil {
		t.Fatal(err)
	}
	again, err := store.Open(killed, store.Options{Clock: apptest.Now, By: "Test Person"})
	if err != nil {
		t.Fatal(err)
	}
	defer func() {
		if err := again.Close(); err != nil {
			t.Error(err)
		}
	}()
	ctx := context.Background()
	list, err := again.Tests(ctx, b.who.ID)
	if err != nil || len(list) != 1 {
		t.Fatalf("%d sheets in the file (%v)", len(list), err)
	}
	kept := list[0]
	if kept.Session.Start != "14:00" || len(kept.Bottles) != 1 || kept.Bottles[0].Before.Or(0) != 712 || len(kept.Weighings) != 1 || kept.Weighings[0].Mass.Or(0) != 62.4 {
		t.Errorf("kept %+v, %+v, %+v", kept.Session, kept.Bottles, kept.Weighings)
	}
	raw, err := again.RawOf(ctx, refOf(kept))
	if err != nil || len(raw) != 1 || raw[0].Text != "4x12" {
		t.Errorf("the text that is no number: %+v (%v)", raw, err)
	}
}

func TestMinorFirstSheetWaitsForTheProfile(t *testing.T) {
	d, went := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	a.Born = "2011-03-04"
	a, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, New: true})
	text := allText(b.w)
	for _, part := range []string{"First the profile", "A parent or guardian is named.", "The athlete has assented", "Whether body mass stays hidden"} {
		if !strings.Contains(text, part) {
			t.Errorf("%q is not said in\n%s", part, text)
		}
	}
	if b.v.CanUndo() || b.v.Undo() {
		t.Error("there is something to undo")
	}
	if place := b.v.Place(); !place.New || place.Record != "" {
		t.Errorf("the place is %+v, and would open something else", place)
	}
	apptest.Click(t, b.w, "testsheet.profile")
	if last := (*went)[len(*went)-1]; last.Screen != desk.Profile || last.Athlete != a.ID {
		t.Errorf("leads to %+v", last)
	}
	a.Guardian, a.Assent, a.MassHidden, a.MassHiddenSettled = "R. Oldenmoor", "2026-05-01", true, true
	if _, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	settled := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, New: true})
	if !apptest.Has(settled.w, "testsheet.before.mass.1") || strings.Contains(settled.v.Head().Under, "kg") {
		t.Errorf("settled, the sheet does not begin, or the head says %q", settled.v.Head().Under)
	}
}

// Without a birth date no first sheet begins, and the figures of a sheet that is
// there already keep to litres; both lead to the profile.
func TestNoBirthDate(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	test := closedTest(t, d, a, "2026-05-10", 62.4)
	known := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: test.ID, Part: PartFindings})
	if text := allText(known.w); !strings.Contains(text, "%") {
		t.Fatalf("with a birth date no share of body mass is shown:\n%s", text)
	}
	a.Born, a.MassHiddenSettled = "", true // settled as shown before the date was taken out
	if _, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	first := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, New: true})
	if text := allText(first.w); !strings.Contains(text, "under 18 is not known") || !strings.Contains(text, "The birth date is written down.") || apptest.Has(first.w, "testsheet.start") {
		t.Errorf("a sheet begins, or it is not said why not:\n%s", text)
	}
	apptest.Click(t, first.w, "testsheet.profile")
	there := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: test.ID, Part: PartFindings})
	for _, mark := range []string{"kg", "%", "kcal"} {
		if text := allText(there.w); strings.Contains(text, mark) {
			t.Errorf("%q is to be read in\n%s", mark, text)
		}
	}
	if title, sentence := there.v.ui.consents.Text(); !strings.Contains(title, "birth date is not in the profile") || sentence == "" {
		t.Errorf("said %q, %q", title, sentence)
	}
	apptest.Click(t, there.w, "testsheet.consent.profile")
	for _, p := range (*went)[len(*went)-2:] {
		if p.Screen != desk.Profile || p.Athlete != a.ID || p.Part != partMinor {
			t.Errorf("leads to %+v", p)
		}
	}
}

// Energy that a device gave is enough to take breath and gas exchange off; where
// body mass is hidden no kilocalories stand on the sheet.
func TestEnergyAlone(t *testing.T) {
	b := newSheet(t)
	b.fill()
	if c := b.v.found.Sweat.Corrections[0]; !c.Size.Known || c.Reason != sweat.ReasonRating {
		t.Fatalf("with an effort rating: %+v", c)
	}
	b.part(PartBefore)
	apptest.Click(b.t, b.w, "testsheet.fold.effort")
	b.enter("testsheet.energy", "850")
	if kept := b.kept(); kept.Session.Energy.Or(0) != 850 || kept.Session.Energy.Unit != quantity.Kilocalorie {
		t.Errorf("kept %+v", kept.Session.Energy)
	}
	if c := b.v.found.Sweat.Corrections[0]; !c.Size.Known || c.Reason != sweat.ReasonEnergy {
		t.Errorf("with the energy: %+v", c)
	}
	a := b.who
	a.MassHidden, a.MassHiddenSettled = true, true
	if _, err := b.desk.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	hidden := openAt(t, b.desk, b.went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: b.kept().ID})
	apptest.Click(t, hidden.w, "testsheet.fold.effort")
	if apptest.Has(hidden.w, "testsheet.energy") || !apptest.Has(hidden.w, "testsheet.met") {
		t.Error("kilocalories are in sight where body mass is hidden")
	}
}

// A consent that is missing or has ended is said and does not stop the sheet.
func TestConsentIsSaid(t *testing.T) {
	d, went := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, New: true})
	if title, _ := b.v.ui.consents.Text(); title != "There is no consent to a test in the profile." {
		t.Errorf("without one: %q", title)
	}
	b.enter("testsheet.place", "Millrace Park")
	if kept := b.kept(); kept.Session.Place != "Millrace Park" {
		t.Error("it stops the sheet")
	}
	a.Consents = []record.Consent{{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, Purpose: record.ConsentTest, Given: "2025-01-01", Until: "2025-12-31"}}
	if _, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	b = openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID})
	if title, _ := b.v.ui.consents.Text(); title != "The consent to a test ended on 31 December 2025." {
		t.Errorf("ended: %q", title)
	}
	if title, _ := b.v.ui.urine.consent.Text(); title != "There is no consent to a urine sample in the profile." {
		t.Errorf("urine: %q", title)
	}
}

func TestNoTestYet(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID})
	apptest.Click(t, b.w, "testsheet.new")
	if last := (*went)[len(*went)-1]; last.Screen != desk.Tests || !last.New || last.Athlete != a.ID {
		t.Errorf("leads to %+v", last)
	}
	if _, err := New(d, desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: record.NewID()}); store.CodeOf(err) != store.CodeNotFound {
		t.Errorf("a test that is not there: %v", err)
	}
}

// A new sheet into which nothing was entered is not kept; its place opens a new
// one again. Once something was entered it names the record, also after that
// was taken back.
func TestPlaceOfANewSheet(t *testing.T) {
	b := newSheet(t)
	place := b.v.Place()
	if !place.New || place.Record != "" || place.Athlete != b.who.ID {
		t.Fatalf("nothing entered, the place is %+v", place)
	}
	again := openAt(t, b.desk, b.went, place)
	if again.v.b == nil || again.v.part != b.v.part {
		t.Fatal("the place does not open a sheet")
	}
	if tests, err := b.desk.Store.Tests(context.Background(), b.who.ID); err != nil || len(tests) != 0 {
		t.Errorf("%d tests kept of nothing: %v", len(tests), err)
	}
	apptest.Type(t, again.w, "testsheet.place", "League match")
	typed := again.v.Place()
	if typed.New || typed.Record == "" {
		t.Fatalf("while typing the place is %+v", typed)
	}
	for again.v.Undo() {
	}
	if after := again.v.Place(); after != typed {
		t.Errorf("after undo the place is %+v", after)
	}
	if err := b.desk.Keep.Flush(context.Background()); err != nil {
		t.Fatal(err)
	}
	if third := openAt(t, b.desk, b.went, typed); third.v.Place() != typed {
		t.Errorf("opened again at %+v, not at %+v", third.v.Place(), typed)
	}
}

func TestDeleteCanBeUndone(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	test := closedTest(t, d, a, "2026-05-14", 62.4)
	var undo func()
	d.Say = func(_, _ string, do func()) { undo = do }
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID})
	apptest.Click(t, b.w, "testsheet.delete")
	if list, err := d.Store.Tests(context.Background(), a.ID); err != nil || len(list) != 0 {
		t.Fatalf("%d tests (%v)", len(list), err)
	}
	if undo == nil {
		t.Fatal("it cannot be undone")
	}
	undo()
	if list, err := d.Store.Tests(context.Background(), a.ID); err != nil || len(list) != 1 || list[0].ID != test.ID {
		t.Errorf("after undo %d tests (%v)", len(list), err)
	}
}

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

// The report and the blank sheet are printed on the practice's paper.
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

// A blank sheet of a test that was never kept is kept with the athlete.
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

func TestPlanFromThisTest(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	test := closedTest(t, d, a, "2026-05-14", 62.4)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Part: PartFindings})
	head := b.v.Head()
	if len(head.Actions) != 2 || head.Athlete != a.ID || head.Tab != desk.Tests || head.Under != "27 · field hockey, midfield · 64.0\u00a0kg" {
		t.Errorf("head %+v", head)
	}
	head.Actions[1].(*field.Button).Press()
	if last := (*went)[len(*went)-1]; last != (desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)}) {
		t.Errorf("leads to %+v", last)
	}
}

func TestChooseAnotherTest(t *testing.T) {
	d, went := apptest.Desk(t)
	a := consenting(t, d)
	old := closedTest(t, d, a, "2025-10-09", 62.9)
	closedTest(t, d, a, "2026-05-14", 62.4)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Part: PartFindings})
	if got := b.v.ui.tools.choice.Options()[1].Text; got != "9 October 2025 · field hockey · closed" {
		t.Errorf("the older test reads %q", got)
	}
	b.v.ui.tools.choice.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	if last := (*went)[len(*went)-1]; last.Record != old.ID || last.Part != PartFindings {
		t.Errorf("leads to %+v", last)
	}
	if text := allText(b.w); !strings.Contains(text, "Sweat rate: ") || !strings.Contains(text, "Then 24.0\u00a0°C") {
		t.Errorf("the two are not compared:\n%s", text)
	}
}
