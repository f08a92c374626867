package handoutview

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// open shows the pages of an athlete's newest agreed plan, else the newest.
func open(t testing.TB, d *desk.Desk, begins string) (*View, fyne.Window) {
	t.Helper()
	v, err := New(d, desk.Place{Screen: desk.Handout, Athlete: apptest.AthleteNamed(t, d, begins).ID})
	if err != nil {
		t.Fatal(err)
	}
	return v, apptest.Window(t, v.Body(), 1000, 704, false, 100)
}

// text is all that stands on the page shown.
func text(v *View) string {
	var all []string
	for _, p := range v.render.laid.document.Pages {
		all = append(all, p.Texts()...)
	}
	return strings.Join(all, " ")
}

// cautions are the words beside the page.
func cautions(v *View) string {
	var all []string
	for _, o := range v.ui.added.Objects {
		switch o := o.(type) {
		case *look.Caution:
			_, sentence := o.Text()
			all = append(all, sentence)
		case *look.Paragraph:
			all = append(all, o.Text())
		case *fyne.Container:
			for _, in := range o.Objects {
				if p, ok := in.(*look.Paragraph); ok {
					all = append(all, p.Text())
				}
			}
		}
	}
	return strings.Join(all, "|") + "|" + strings.Join(v.remarks(), "|")
}

func TestAgreedPlanIsShownAsItPrints(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, _ := open(t, d, "Ravka")
	if len(v.drawing.Pages.Pictures()) == 0 {
		t.Fatal("there is no picture of the page")
	}
	got := v.drawing.Pages.Pictures()[0].Bounds().Size()
	if want := v.drawing.Pages.Width(); float32(got.X) < want-1 || float32(got.X) > want+1 {
		t.Errorf("the picture is %d px wide, the page %g", got.X, want)
	}
	if s := text(v); !strings.Contains(s, "Ravka Oldenmoor’s") || !strings.Contains(s, "Step 1, from") || strings.Contains(s, "Draft") {
		t.Errorf("the page says %s", s)
	}
	if v.file.subject.planCase.Since.Changed || v.file.nothing != "" {
		t.Errorf("changed %v, nothing %q", v.file.subject.planCase.Since.Changed, v.file.nothing)
	}
	if h := v.Head(); h.Tab != desk.Handout || h.Athlete == "" || !strings.Contains(h.Under, "27") || strings.Contains(h.Under, "kg") {
		t.Errorf("the head is %+v", h)
	}
}

func TestChoices(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, _ := open(t, d, "Dorian")
	height := func() float64 { return v.render.laid.document.Size.Height }
	if height() != paper.A4().Height {
		t.Errorf("the first page is %g mm high", height())
	}
	v.ui.size.OnChosen(letter)
	if height() != paper.Letter().Height {
		t.Errorf("on US Letter it is %g mm high", height())
	}
	v.ui.page.OnChosen(string(KitBagCard))
	if height() != paper.Letter().Height/2 {
		t.Errorf("the card is %g mm high", height())
	}
	v.ui.page.OnChosen(string(KitBagCards))
	if height() != paper.Letter().Height {
		t.Errorf("four cards are %g mm high", height())
	}
	v.ui.page.OnChosen(string(AthletePage))
	fluid, _ := consult.OptionOf(v.file.subject.planCase.Plan, record.OptionFluid)
	v.ui.option.OnChosen(string(fluid.ID))
	if s := text(v); !strings.Contains(s, "Draft") || !strings.Contains(cautions(v), "Not agreed") {
		t.Errorf("an option that was not agreed: %s, beside it %s", s, cautions(v))
	}
	v.ui.page.OnChosen(string(BlankSheet))
	if !strings.Contains(text(v), "Sweat test sheet") || !v.ui.option.Disabled() || v.Place().Part != string(BlankSheet) {
		t.Errorf("the blank sheet says %s", text(v))
	}
}

func TestDraftSaysDraft(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := open(t, d, "Jorun")
	if !strings.Contains(text(v), "Draft, not agreed yet.") {
		t.Errorf("a draft prints as %s", text(v))
	}
	path := filepath.Join(t.TempDir(), "draft.pdf")
	save(t, v, w, path)
	if data, err := os.ReadFile(path); err != nil || !bytes.HasPrefix(data, []byte("%PDF-")) {
		t.Errorf("no file: %v", err)
	}
	if list, err := d.Store.PrintsOf(context.Background(), v.file.subject.athlete.ID); err != nil || len(list) != 0 {
		t.Errorf("a draft is kept as handed out: %d, %v", len(list), err)
	}
}

// save saves what is chosen at a path.
func save(t *testing.T, v *View, w fyne.Window, path string) {
	t.Helper()
	v.Print()
	apptest.Type(t, w, "handoutview.ask.path", path)
	apptest.Click(t, w, "handoutview.ask.yes")
	if apptest.Has(w, "handoutview.ask.path") {
		t.Fatal("the dialog is still open")
	}
}

func TestHandedOutIsKeptByteForByte(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := open(t, d, "Ravka")
	folder := t.TempDir()
	first, again, later := filepath.Join(folder, "1.pdf"), filepath.Join(folder, "2.pdf"), filepath.Join(folder, "3.pdf")
	save(t, v, w, first)
	prints, err := d.Store.PrintsOf(context.Background(), v.file.subject.athlete.ID)
	if err != nil || len(prints) != 1 || prints[0].Page != string(AthletePage) || prints[0].Record != v.file.subject.planCase.Plan.ID {
		t.Fatalf("kept %+v, %v", prints, err)
	}
	same := func(path string) bool {
		t.Helper()
		a, errA := os.ReadFile(first)
		b, errB := os.ReadFile(path)
		if errA != nil || errB != nil {
			t.Fatal(errA, errB)
		}
		return bytes.Equal(a, b)
	}
	// The same page once more is the same file, and no second print.
	save(t, v, w, again)
	if !same(again) || v.ui.prints.table.Rows() != 1 {
		t.Errorf("the same page is another file, or %d prints", v.ui.prints.table.Rows())
	}
	// Another option or page is a print of its own.
	v.ui.page.OnChosen(string(KitBagCard))
	save(t, v, w, filepath.Join(folder, "card.pdf"))
	if v.ui.prints.table.Rows() != 2 {
		t.Errorf("%d prints after the card", v.ui.prints.table.Rows())
	}
	// Whatever is corrected since, the old page is there as it was.
	a := v.file.subject.athlete
	a.Name = "Ravka Renamed"
	if _, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	reopened, w2 := open(t, d, "Ravka")
	if !strings.Contains(text(reopened), "Ravka Renamed’s") || reopened.ui.prints.table.Rows() != 2 {
		t.Fatalf("reopened: %d prints, %s", reopened.ui.prints.table.Rows(), text(reopened))
	}
	reopened.ui.prints.table.Choose(1)
	reopened.ui.prints.enable()
	apptest.Click(t, w2, "handoutview.again")
	apptest.Type(t, w2, "handoutview.ask.path", later)
	apptest.Click(t, w2, "handoutview.ask.yes")
	if !same(later) {
		t.Error("the page saved again is not the one that was handed out")
	}
	// The page with the new name is another one.
	save(t, reopened, w2, filepath.Join(folder, "4.pdf"))
	if reopened.ui.prints.table.Rows() != 3 {
		t.Errorf("a changed page is not kept: %d prints", reopened.ui.prints.table.Rows())
	}
}

func TestCorrectedTestIsSaid(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, _ := open(t, d, "Ravka")
	before := v.file.subject.planCase.Basis.Rate.Value
	sheet, err := d.Store.ReopenTest(context.Background(), v.file.subject.planCase.Plan.Basis.TestID, "a bottle was forgotten")
	if err != nil {
		t.Fatal(err)
	}
	for i := range sheet.Bottles {
		if sheet.Bottles[i].After.Known() {
			sheet.Bottles[i].After = record.Num(*sheet.Bottles[i].After.Value-80, quantity.Gram)
		}
	}
	if _, err := d.Store.SaveTest(context.Background(), sheet, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	again, _ := open(t, d, "Ravka")
	_, said := again.ui.nothing.Text()
	if !again.file.subject.planCase.Since.Changed || again.file.subject.planCase.Basis.Rate.Value != before || !strings.Contains(said, "The test was corrected on") || !strings.Contains(said, "→") {
		t.Errorf("changed %v, rate %g, was %g: %s", again.file.subject.planCase.Since.Changed, again.file.subject.planCase.Basis.Rate.Value, before, cautions(again))
	}
}

// A plan whose kept calculation cannot be read prints from the present records
// and says so to the practitioner.
func TestUnreadableAgreementIsSaid(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, _ := open(t, d, "Ravka")
	if v.file.subject.planCase.Anew || strings.Contains(cautions(v), "can’t be read") {
		t.Fatal("said of a plan that is whole: the check would mean nothing")
	}
	ref := record.Ref{Kind: record.KindPlan, ID: v.file.subject.planCase.Plan.ID}
	if _, err := d.Store.Freeze(context.Background(), ref, store.Freezing{Inputs: []byte("[]"), Results: []byte("[]"), Evidence: "0"}); err != nil {
		t.Fatal(err)
	}
	again, _ := open(t, d, "Ravka")
	if !again.file.subject.planCase.Anew || !strings.Contains(cautions(again), "can’t be read") {
		t.Errorf("anew %v: %s", again.file.subject.planCase.Anew, cautions(again))
	}
}

func TestCautionsBesideThePage(t *testing.T) {
	d, _ := apptest.Demo(t)
	for begins, wants := range map[string][]string{
		"Mirel":  {"Show this page to a parent or guardian.", "litres only"},
		"Kester": {"High blood pressure", "Advice to add salt is left out: high blood pressure."},
		"Ravka":  {"None beside those", "On every page"},
	} {
		v, _ := open(t, d, begins)
		for _, want := range wants {
			if begins == "Ravka" && want == "None beside those" && len(v.render.laid.cautions) > 0 {
				continue // the heat of that day
			}
			if got := cautions(v); !strings.Contains(got, want) {
				t.Errorf("%s: %q is not among %s", begins, want, got)
			}
		}
	}
}

func TestAthleteWithoutAPlan(t *testing.T) {
	d, _ := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	v, err := New(d, desk.Place{Screen: desk.Handout, Athlete: a.ID})
	if err != nil {
		t.Fatal(err)
	}
	w := apptest.Window(t, v.Body(), 1000, 704, false, 100)
	if !strings.Contains(text(v), "Sweat test sheet") || v.file.nothing != "noplan" {
		t.Errorf("without a plan there is %q: %s", v.file.nothing, text(v))
	}
	path := filepath.Join(t.TempDir(), "blank.pdf")
	save(t, v, w, path)
	if _, err := os.Stat(path); err != nil {
		t.Error(err)
	}
	if _, err := New(d, desk.Place{Screen: desk.Handout, Athlete: a.ID, Record: "none"}); store.CodeOf(err) != store.CodeNotFound {
		t.Errorf("a plan that is not there: %v", err)
	}
}

func TestPlanWhoseTestIsGone(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, _ := open(t, d, "Jorun")
	ref := record.Ref{Kind: record.KindTest, ID: v.file.subject.planCase.Plan.Basis.TestID}
	if err := d.Store.Delete(context.Background(), ref, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	again, _ := open(t, d, "Jorun")
	if again.file.nothing != "nobasis" || again.file.subject.planned || !strings.Contains(text(again), "Sweat test sheet") {
		t.Errorf("nothing is %q, planned %v", again.file.nothing, again.file.subject.planned)
	}
}

// late is a runner whose work ends when the test says so.
type late struct{ waiting []func() }

func (l *late) Run(work func(context.Context) error, done func(error)) (stop func()) {
	l.waiting = append(l.waiting, func() { done(work(context.Background())) })
	return func() {}
}

// finish ends the oldest work.
func (l *late) finish() {
	first := l.waiting[0]
	l.waiting = l.waiting[1:]
	first()
}

func TestOldPagesAreDropped(t *testing.T) {
	d, _ := apptest.Demo(t)
	runner := &late{}
	d.Beside = runner
	v, _ := open(t, d, "Ravka")
	if len(runner.waiting) != 1 || len(v.drawing.Pages.Pictures()) != 0 {
		t.Fatalf("%d jobs, %d pages", len(runner.waiting), len(v.drawing.Pages.Pictures()))
	}
	v.ui.page.OnChosen(string(KitBagCards))
	v.ui.page.OnChosen(string(KitBagCard))
	if len(runner.waiting) != 1 {
		t.Fatalf("%d jobs run at once", len(runner.waiting))
	}
	runner.finish()
	if len(v.drawing.Pages.Pictures()) != 0 || len(runner.waiting) != 1 {
		t.Fatalf("an old page is shown: %d pages, %d jobs", len(v.drawing.Pages.Pictures()), len(runner.waiting))
	}
	runner.finish()
	if v.render.asked.page != KitBagCard || len(v.drawing.Pages.Pictures()) == 0 || len(runner.waiting) != 0 {
		t.Errorf("shown is %s, %d jobs are left", v.render.asked.page, len(runner.waiting))
	}
}

func TestFailureIsSaid(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, _ := open(t, d, "Ravka")
	v.speak("xx")
	if title, sentence := v.ui.trouble.Text(); title == "" || sentence == "" {
		t.Error("a page that cannot be laid out says nothing")
	}
	v.speak("en")
	if title, _ := v.ui.trouble.Text(); title != "" {
		t.Errorf("and goes on saying %q", title)
	}
}

func TestSameButTime(t *testing.T) {
	a, b := []byte("x/CreationDate (D:20260518124100Z)y"), []byte("x/CreationDate (D:20260519000000Z)y")
	if !sameButTime(a, b) || sameButTime(a, append(bytes.Clone(b), 'z')) {
		t.Error("two PDFs are compared wrongly")
	}
}
