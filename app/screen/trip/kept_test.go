package trip

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/field"
)

// How much more is packed and the hours awake are kept, undone and reopened, and
// go onto the pages.
func TestPackingChoicesAreKept(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := with(t, d, "Ravka")
	v.ShowPart(PartPacking)
	margin := func(w fyne.Window) string {
		return field.Find(w.Content(), "trip.packing.margin").(*field.Toggle).Chosen()
	}
	if got := margin(w); got != "15" || kept(t, v).Margin.Known() {
		t.Fatalf("before anything is chosen %q %% stands there", got)
	}
	all, _ := packedAll(v)
	apptest.Type(t, w, "trip.packing.hours", "11")
	apptest.Leave(w)
	v.ui.pack.margin.OnChosen("20")
	if trip := kept(t, v); trip.Margin.Or(0) != 20 || trip.HoursAwake.Or(0) != 11 {
		t.Fatalf("kept %+v and %+v", trip.Margin, trip.HoursAwake)
	}
	v, w = open(t, d, v.Place())
	wants(t, w, "Over 11 h awake")
	if got := margin(w); got != "20" || apptest.Text(t, w, "trip.packing.hours") != "11" {
		t.Errorf("reopened with %q %% and %q h", got, apptest.Text(t, w, "trip.packing.hours"))
	}
	more, _ := packedAll(v)
	if more.Margin != 0.2 || more.Supplies[0].Servings <= all.Supplies[0].Servings {
		t.Errorf("reopened, it packs %+v; before 20 %% %+v", more.Supplies, all.Supplies)
	}
	if page := pageText(t, v, v.pageOf(v.shown())); !strings.Contains(page, "Over 11 h awake") {
		t.Errorf("the page does not say the hours: %s", page)
	}
	apptest.Type(t, w, "trip.packing.hours", "all day")
	apptest.Leave(w)
	without(t, w, "Over 11 h awake")
	v.ui.pack.margin.OnChosen("15")
	kept(t, v)
	v, w = open(t, d, v.Place())
	if got := apptest.Text(t, w, "trip.packing.hours"); got != "all day" {
		t.Errorf("what could not be read is reopened as %q", got)
	}
	apptest.Type(t, w, "trip.packing.hours", "9")
	apptest.Leave(w)
	v.ui.pack.margin.OnChosen("20")
	for v.Undo() {
	}
	if trip := kept(t, v); trip.Margin.Or(0) != 15 || trip.HoursAwake.Known() || margin(w) != "15" || apptest.Text(t, w, "trip.packing.hours") != "all day" {
		t.Errorf("after undo %+v, %+v, %q in the field", trip.Margin, trip.HoursAwake, apptest.Text(t, w, "trip.packing.hours"))
	}
}
