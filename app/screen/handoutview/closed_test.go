package handoutview

import (
	"context"
	"path/filepath"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/internal/store"
)

// A page that was saved while body mass could be seen is neither opened nor saved
// again once it is hidden, and says why; one that was saved while it was hidden is.
func TestPageFromBeforeHidingStaysClosed(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := open(t, d, "Ravka")
	save(t, v, w, filepath.Join(t.TempDir(), "seen.pdf"))
	v.ui.prints.table.Choose(0)
	v.ui.prints.enable()
	if v.ui.prints.again.Disabled() || v.ui.prints.last.Disabled() {
		t.Fatal("a page cannot be saved again although nothing is hidden")
	}
	a := v.file.subject.athlete
	a.MassHidden, a.MassHiddenSettled = true, true
	if _, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{Why: "asked for by the athlete"}); err != nil {
		t.Fatal(err)
	}
	hidden, w2 := open(t, d, "Ravka")
	p := hidden.ui.prints
	p.table.Choose(0)
	p.enable()
	if !p.again.Disabled() || !p.last.Disabled() {
		t.Error("a page from before can be opened or saved")
	}
	p.saveAgain()
	if apptest.Has(w2, "handoutview.ask.path") {
		t.Error("it is asked where to save it")
	}
	said := strings.Join(strings.Fields(strings.Join(apptest.Texts(w2.Content()), "\n")), " ") // however it is wrapped
	if !strings.Contains(said, "can’t be opened or saved again") || !strings.Contains(said, " saved closed ") {
		t.Errorf("it does not say why: %s", said)
	}

	always, w3 := open(t, d, "Mirel")
	save(t, always, w3, filepath.Join(t.TempDir(), "hidden.pdf"))
	always.ui.prints.table.Choose(0)
	always.ui.prints.enable()
	if always.ui.prints.again.Disabled() || always.ui.prints.last.Disabled() {
		t.Error("a page made with the mass hidden cannot be saved again")
	}
}
