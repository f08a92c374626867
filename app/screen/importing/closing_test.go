package importing

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/record"
)

// TestCloseInBulk: after an import the sheets without a question are closed together; those
// with a gain, with an odd loss and without a mass after stay open, and why is said.
func TestCloseInBulk(t *testing.T) {
	d, _ := apptest.Desk(t)
	path := file(t, "old tests.csv", strings.TrimSpace(heads)+",Urine (mL)\n"+
		"Ada Moss,14/03/1999,F,21/06/2025,09:30,90,61.4,60.3,650,47,120\n"+
		"Ada Moss,14/03/1999,F,22/06/2025,09:30,90,61.2,60.1,650,45,120\n"+
		"Bo Lund,02/11/1987,M,21/06/2025,09:30,90,78.2,78.9,2400,61,0\n"+
		"Eve Carr,02/11/1987,F,21/06/2025,09:30,90,64.0,,400,61,0\n"+
		"Flo Dray,02/11/1987,F,21/06/2025,09:30,90,64.0,59.0,400,61,0\n")
	v, w := open(t, d, desk.Place{Screen: desk.Import, Part: path})
	apptest.Click(t, w, "import.write")
	if !shows(v, "can be closed together") {
		t.Fatalf("the screen shows %q", apptest.VisibleTexts(v.Body()))
	}
	states := func() map[string]record.TestState {
		all := map[string]record.TestState{}
		for _, id := range v.imported {
			one, err := d.Store.LoadTest(context.Background(), id)
			if err != nil {
				t.Fatal(err)
			}
			a, err := d.Store.LoadAthlete(context.Background(), one.AthleteID)
			if err != nil {
				t.Fatal(err)
			}
			all[a.Name+" "+string(one.Session.Date)] = one.State
		}
		return all
	}
	apptest.Click(t, w, "import.close")
	for name, state := range states() {
		if state != record.TestOpen {
			t.Errorf("%s is closed before anybody was asked", name)
		}
	}
	texts := strings.Join(apptest.Texts(w.Canvas().Overlays().Top()), "\n")
	for _, want := range []string{"Close 2 sheets?", "1 sheet stays open: a red flag.", "1 sheet stays open: something is missing."} {
		if !strings.Contains(texts, want) {
			t.Errorf("the dialog says %q, not %q", texts, want)
		}
	}
	apptest.Click(t, w, "import.close.ask.yes")
	for name, state := range states() {
		if want := map[bool]record.TestState{true: record.TestClosed, false: record.TestOpen}[strings.HasPrefix(name, "Ada")]; state != want {
			t.Errorf("%s is %s", name, state)
		}
	}
	if !shows(v, "2 sheets were closed.") {
		t.Errorf("the screen shows %q", apptest.VisibleTexts(v.Body()))
	}
	kept, err := d.Store.FrozenOf(context.Background(), record.Ref{Kind: record.KindTest, ID: v.imported[0]})
	if err != nil || len(kept) != 1 || len(kept[0].Results) == 0 {
		t.Errorf("a closed sheet has no copy of its figures: %+v, %v", kept, err)
	}
	apptest.Click(t, w, "import.close")
	if texts := strings.Join(apptest.Texts(w.Canvas().Overlays().Top()), "\n"); !strings.Contains(texts, "No sheet to close") {
		t.Errorf("again: %q", texts)
	}
}
