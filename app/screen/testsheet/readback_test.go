package testsheet

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/text/language"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/handout/pdfread"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

// printTo is a folder for the reports of the invented practice, to be looked at; empty
// for none.
func printTo() string { return os.Getenv("EBBWELL_PRINT_TO") }

// reportText prints the findings that are shown and reads the file again.
func (b *bench) reportText() string {
	b.t.Helper()
	b.part(PartFindings)
	b.v.Print()
	to := filepath.Join(b.t.TempDir(), "report.pdf")
	apptest.Type(b.t, b.w, "testsheet.print.path", to)
	apptest.Click(b.t, b.w, "testsheet.print.yes")
	data, err := os.ReadFile(to)
	if err != nil {
		b.t.Fatal(err)
	}
	list, err := pdfread.Texts(data)
	if err != nil {
		b.t.Fatal(err)
	}
	return strings.Join(strings.Fields(strings.ReplaceAll(strings.Join(list, " "), "\u00a0", " ")), " ")
}

// hide hides the athlete's body mass.
func (b *bench) hide() *bench {
	b.t.Helper()
	a, err := b.desk.Store.LoadAthlete(context.Background(), b.who.ID)
	if err != nil {
		b.t.Fatal(err)
	}
	a.MassHidden, a.MassHiddenSettled = true, true
	apptest.Save(b.t, b.desk, a)
	return openAt(b.t, b.desk, b.went, desk.Place{Screen: desk.Tests, Athlete: b.who.ID, Record: b.kept().ID})
}

// The reason why an odd value was kept is in the printed report, read back from the file;
// where body mass is hidden that of a weighing is not.
func TestReportTellsTheReasonsOfOddValues(t *testing.T) {
	b := newSheet(t)
	b.fill()
	b.part(PartAfter)
	b.enter("testsheet.urine.passed", "") // none passed is ticked
	apptest.Click(t, b.w, "testsheet.urine.none")
	b.enter("testsheet.urine.passed", "1700")
	apptest.Click(t, b.w, "testsheet.trouble.1.keep")
	const reason = "collected over two stops, weighed twice"
	apptest.Type(t, b.w, "testsheet.reason.why", reason)
	apptest.Click(t, b.w, "testsheet.reason.yes")
	const ofMass = "was 61.9 on the club's scale"
	w := b.kept().Weighings
	path := "weighings." + string(w[len(w)-1].ID) + ".mass"
	if err := b.desk.Store.SetReason(context.Background(), refOf(b.kept()), path, ofMass, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	b = openAt(t, b.desk, b.went, desk.Place{Screen: desk.Tests, Athlete: b.who.ID, Record: b.kept().ID})
	got := b.reportText()
	for _, s := range []string{b.desk.Words.Say("findings.keptodd.title"), reason, ofMass} {
		if !strings.Contains(got, s) {
			t.Errorf("the report does not say %q: %s", s, got)
		}
	}
	got = b.hide().reportText()
	if !strings.Contains(got, reason) || !strings.Contains(got, b.desk.Words.Say("findings.keptodd.hidden")) {
		t.Errorf("with hidden mass the report does not say %q and that another is left out: %s", reason, got)
	}
	if strings.Contains(got, "61.9") {
		t.Errorf("with hidden mass the report says %q: %s", ofMass, got)
	}
}

// A gain in mass is in the printed report with its words and what was done about it, read
// back from the file; without kilograms where body mass is hidden.
func TestReportTellsOfAGain(t *testing.T) {
	d, went := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Ilse")
	tests, err := d.AllFindings(context.Background(), a)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range tests {
		g, gained := consult.GainOf(f, a, consult.TestDay(f.Test))
		if !gained {
			continue
		}
		b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: f.Test.ID, Part: PartFindings})
		title, sentence := desk.GainWords(d.Words, b.v.by, d.Practice(), g)
		got := b.reportText()
		for _, s := range []string{title, sentence} {
			if s = strings.Join(strings.Fields(strings.ReplaceAll(s, "\u00a0", " ")), " "); !strings.Contains(got, s) {
				t.Errorf("the report does not say %q: %s", s, got)
			}
		}
		hidden := b.hide()
		title, _ = desk.GainWords(d.Words, hidden.v.by, d.Practice(), g)
		if got := hidden.reportText(); strings.Contains(got, " kg") || !strings.Contains(got, title) {
			t.Errorf("with hidden mass %q is not said, or kilograms are: %s", title, got)
		}
		return
	}
	t.Fatal("nobody gained")
}

// Each report of the invented practice is one side in each language.
func TestReportsAreOneSide(t *testing.T) {
	d, went := apptest.Demo(t)
	for _, tag := range words.Languages() {
		p := d.Practice()
		p.Settings.PageLanguage = tag.String()
		if _, err := d.Store.SavePractice(context.Background(), p, store.Edit{}); err != nil {
			t.Fatal(err)
		}
		d.PracticeChanged()
		for _, name := range []string{"Ravka", "Jorun", "Mirel", "Ilse", "Kester"} {
			reportIsOneSide(t, d, went, name, tag)
		}
	}
}

func reportIsOneSide(t *testing.T, d *desk.Desk, went *[]desk.Place, name string, tag language.Tag) {
	t.Helper()
	a := apptest.AthleteNamed(t, d, name)
	b := openAt(t, d, went, desk.Place{Screen: desk.Tests, Athlete: a.ID, Part: PartFindings})
	b.v.Print()
	dir := t.TempDir()
	if printTo() != "" {
		dir = printTo()
	}
	to := filepath.Join(dir, "report-"+strings.ToLower(name)+"-"+tag.String()+".pdf")
	apptest.Type(t, b.w, "testsheet.print.path", to)
	apptest.Click(t, b.w, "testsheet.print.yes")
	data, err := os.ReadFile(to)
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(string(data), "/Type /Page\n"); n != 1 {
		t.Errorf("%s in %s: %d sides", name, tag, n)
	}
}

// Letters of a note that cannot be printed are said when the report is saved, not only
// those of the name.
func TestLettersOfANoteAreSaid(t *testing.T) {
	for place, want := range map[string]bool{"京都 park": true, "Kyoto park": false} {
		b := newSheet(t)
		b.fill()
		b.part(PartBefore)
		b.enter("testsheet.place", place)
		b.part(PartFindings)
		b.v.Print()
		said := strings.Join(apptest.Texts(b.w.Canvas().Overlays().Top()), " ")
		if got := strings.Contains(said, "Letters that can’t be printed: "+look.Note.Shown("京, 都")); got != want {
			t.Errorf("%s: it is said: %v: %s", place, got, said)
		}
	}
}
