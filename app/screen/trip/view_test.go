package trip

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// with makes and keeps the invented trip with other travellers, and opens its
// second stop, the hot one.
func with(t *testing.T, d *desk.Desk, names ...string) (*View, fyne.Window) {
	t.Helper()
	trip := demoTrip(t, d)
	trip.Travellers = nil
	for _, name := range names {
		addTraveller(&trip, apptest.AthleteNamed(t, d, name).ID)
	}
	kept, err := d.Store.SaveTrip(context.Background(), trip, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	return open(t, d, desk.Place{Record: kept.ID, Part: string(kept.Stops[1].ID)})
}

// change alters an athlete as it is kept.
func change(t *testing.T, d *desk.Desk, name string, f func(*record.Athlete)) {
	t.Helper()
	a := apptest.AthleteNamed(t, d, name)
	f(&a)
	if _, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{}); err != nil {
		t.Fatal(err)
	}
}

// revealing is any sign of body mass: a per cent with a sign before it is a
// deficit.
var revealing = regexp.MustCompile(`(?i)[−+-]\s?\d+(\.\d+)?\s?%|\d\s*kgs?\b|kilogram|/kg|\blbs?\b|\bpounds?\b|kcal|calorie|m²|body area`)

// A junior's page, and all dialogs over it, speak of litres only.
func TestHiddenMass(t *testing.T) {
	d, went := apptest.Demo(t)
	v, w := with(t, d, "Mirel")
	m := v.shown()
	look := func(where string) {
		t.Helper()
		if found := revealing.FindAllString(strings.ReplaceAll(said(w), "\u00a0", " "), -1); found != nil {
			t.Errorf("%s speaks of %q", where, found)
		}
	}
	look("the stop")
	there, err := v.plan(m, v.now().Stops[1])
	if err != nil {
		t.Fatal(err)
	}
	wants(t, w, "Under 18", "at the end", d.Words.Signed(-there.At.DeficitL.High, 2)+" L")
	dialog := heat.ShowWhy(d.Host, w.Canvas(), v.speaker(m), there.Calculation)
	look("why")
	wants(t, w, "Body mass is hidden", "What the range is made of")
	without(t, w, "How it was calculated", "step by step")
	dialog.Close()
	v.askAgree()
	look("the agreement")
	apptest.Click(t, w, "trip.agree.no")
	page := pageText(t, v, v.pageOf(m))
	if found := revealing.FindAllString(page, -1); found != nil || !strings.Contains(page, "Show this page to a parent or guardian") {
		t.Errorf("the page speaks of %q", found)
	}
	// What cannot be calculated for want of mass does not name it either.
	change(t, d, "Mirel", func(a *record.Athlete) { a.Height = record.Number{} })
	v, w = open(t, d, v.Place())
	look("the stop without mass and height")
	wants(t, w, "Height and usual body mass are needed.")
	apptest.Click(t, w, "trip.row.1.fix")
	if last := (*went)[len(*went)-1]; last.Screen != desk.Profile || last.Athlete != v.shown().athlete.ID {
		t.Errorf("went to %+v", last)
	}
}

// An adult's page shows the formula and its inputs.
func TestWhy(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := with(t, d, "Ravka")
	apptest.Click(t, w, "trip.row.1.why")
	wants(t, w, "Sweat rate: why", "first figure × exp(starting value + weight of test 1", "The start is the sweat this body needs", "How the range was checked", "What the range is made of", "evaporation needed", "For comparison only", "No plan is based on them", "Sources", "Ebbwell’s own rule", "ISO 7933")
	apptest.Click(t, w, "heat.why.close")
	if w.Canvas().Overlays().Top() != nil {
		t.Error("the dialog stays open")
	}
	_ = v
}

func TestTroublesAtTheirPlace(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := with(t, d, "Ravka")
	apptest.Click(t, w, "trip.stop.change")
	apptest.Type(t, w, "trip.stop.city", "Bangalore on Sea")
	apptest.Leave(w)
	wants(t, w, "“Bangalore on Sea” is not in the climate table.")
	apptest.Type(t, w, "trip.stop.city", "Lima Peru Chile")
	apptest.Leave(w)
	wants(t, w, "Similar: ", "Lima")
	apptest.Type(t, w, "trip.stop.city", "")
	apptest.Leave(w)
	wants(t, w, "Still missing: the air temperature and the humidity. Choose a city, or enter the air.")
	apptest.Type(t, w, "trip.stop.temperature", "75")
	apptest.Type(t, w, "trip.stop.humidity", "40")
	apptest.Leave(w)
	wants(t, w, "75 °C is outside the range for sport (−20 °C to 55 °C).", "Not used: outside −20 to 55 °C.")
	apptest.Type(t, w, "trip.stop.temperature", "hot")
	apptest.Leave(w)
	wants(t, w, "Not a number yet. Your entry is kept.")
	kept(t, v)
	v, w = open(t, d, v.Place())
	if got := apptest.Text(t, w, "trip.stop.temperature"); got != "hot" {
		t.Errorf("what could not be read is reopened as %q", got)
	}
	apptest.Type(t, w, "trip.stop.temperature", "30")
	apptest.Type(t, w, "trip.stop.minutes", "5")
	apptest.Leave(w)
	wants(t, w, "Duration: 5 min is outside 15 min to 1440 min.")
	v.ShowPart(PartEdit)
	apptest.Type(t, w, "trip.stop.2.until", "1.7.2026")
	apptest.Leave(w)
	wants(t, w, "This stop would end before it begins: 11 July 2026 to 1 July 2026.")
	v.ShowPart(string(v.now().Stops[1].ID))
	wants(t, w, "This stop would end before it begins")
	if kept(t, v).Stops[1].Until != "2026-07-01" {
		t.Error("what was typed is lost")
	}
}

func TestDewPoint(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := with(t, d, "Ravka")
	apptest.Click(t, w, "trip.stop.change")
	apptest.Type(t, w, "trip.stop.temperature", "30")
	apptest.Leave(w)
	apptest.Click(t, w, "trip.stop.dewpoint")
	apptest.Type(t, w, "trip.dewpoint.value", "31")
	apptest.Click(t, w, "trip.dewpoint.yes")
	wants(t, w, "The dew point can’t be above the air temperature")
	apptest.Type(t, w, "trip.dewpoint.value", "20")
	apptest.Click(t, w, "trip.dewpoint.yes")
	if h := kept(t, v).Stops[1].Air.Humidity; h.Or(0) != 55 { // 2.337 over 4.242 kPa (ISO 7726)
		t.Errorf("20 °C in air of 30 °C is %v %%", h.Or(0))
	}
}

// Without a test there are only group values, wide, and the advice to test.
func TestNoTestAtAll(t *testing.T) {
	d, _ := apptest.Demo(t)
	a := apptest.Athlete(t, d)
	trip := demoTrip(t, d)
	trip.Travellers = nil
	addTraveller(&trip, a.ID)
	saved, err := d.Store.SaveTrip(context.Background(), trip, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	v, w := open(t, d, desk.Place{Record: saved.ID, Part: string(saved.Stops[1].ID)})
	wants(t, w, "No test", "body size and effort", "test first; drink to thirst; weigh", "No agreed plan of Ravka Oldenmoor to take along")
	without(t, w, "middle")
	v.askAgree()
	wants(t, w, "Nothing can be agreed yet.", "Not agreed.")
	if apptest.Has(w, "trip.agree.yes") {
		t.Error("it can be agreed")
	}
}

// A condition that asks for a physician keeps the plans from being agreed.
func TestPhysicianNeeded(t *testing.T) {
	d, _ := apptest.Demo(t)
	change(t, d, "Ravka", func(a *record.Athlete) {
		a.Flags = []record.Flag{{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, Kind: record.FlagHeart}}
	})
	v, w := with(t, d, "Ravka")
	wants(t, w, "Heat matters more (heart disease)")
	v.askAgree()
	wants(t, w, "Nothing can be agreed yet.", "The profile needs the physician’s name: heart disease.")
}

// A squad shares the stops; its lists are summed, and each has its own plan.
func TestSquad(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := with(t, d, "Ravka", "Kester", "Ilse", "Jorun")
	if v.Head().Under != "4 athletes · three stops" {
		t.Errorf("under the title: %q", v.Head().Under)
	}
	rates := map[string]bool{}
	for _, m := range v.crew() {
		there, err := v.plan(m, v.now().Stops[1])
		if err != nil {
			t.Fatal(err)
		}
		rates[fmt.Sprint(there.Calculation.Climate.Rate.Value)] = true
	}
	if len(rates) != 4 {
		t.Errorf("%d rates for four athletes", len(rates))
	}
	v.ShowPart(PartPacking)
	wants(t, w, "Ilse Tarnholme: not packed for Home, Camp on the coast and Tournament, no plan there yet.")
	all, _ := packedAll(v)
	v.ui.pack.margin.OnChosen("20")
	more, _ := packedAll(v)
	if more.Margin != 0.2 || len(more.Supplies) != len(all.Supplies) || more.Supplies[0].Servings <= all.Supplies[0].Servings {
		t.Errorf("20 %% packs %+v, 15 %% %+v", more.Supplies, all.Supplies)
	}
}

func TestUndoOfEveryStep(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := with(t, d, "Ravka")
	before := kept(t, v)
	v.ShowPart(PartEdit)
	apptest.Click(t, w, "trip.stop.3.remove")
	apptest.Click(t, w, "trip.stop.1.down")
	apptest.Click(t, w, "trip.traveller.1.remove")
	apptest.Type(t, w, "trip.name", "Other")
	apptest.Leave(w)
	if now := kept(t, v); len(now.Stops) != 2 || now.Stops[0].ID != before.Stops[1].ID || len(now.Travellers) != 0 || now.Name != "Other" {
		t.Fatalf("kept %+v", now)
	}
	steps := 0
	for v.Undo() {
		steps++
	}
	now := kept(t, v)
	if steps != 4 || len(now.Stops) != 3 || now.Stops[0].ID != before.Stops[0].ID || now.Stops[2].City != "Madrid" || len(now.Travellers) != 1 || now.Name != before.Name {
		t.Errorf("after %d steps back: %+v", steps, now)
	}
	if !v.Redo() || len(kept(t, v).Stops) != 2 || v.CanUndo() != true {
		t.Error("nothing is done again")
	}
}

func TestDeleteTripAndBringItBack(t *testing.T) {
	d, went := apptest.Demo(t)
	v, w := with(t, d, "Ravka")
	var undo func()
	d.Say = func(_, _ string, do func()) { undo = do }
	v.ShowPart(PartEdit)
	apptest.Click(t, w, "trip.delete")
	apptest.Click(t, w, "trip.delete.yes")
	if list, err := d.Store.Trips(context.Background()); err != nil || len(list) != 0 || (*went)[0].Screen != desk.Trips {
		t.Fatalf("%d trips left: %v", len(list), err)
	}
	undo()
	if list, err := d.Store.Trips(context.Background()); err != nil || len(list) != 1 || len(list[0].Stops) != 3 {
		t.Errorf("brought back %d trips: %v", len(list), err)
	}
}

// A trip nothing was entered in is not kept; one for an athlete has the
// athlete on it.
func TestNewTripIsNotKeptEmpty(t *testing.T) {
	d, _ := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	v, _ := open(t, d, desk.Place{New: true, Athlete: a.ID})
	v.Leave()
	if list, err := d.Store.Trips(context.Background()); err != nil || len(list) != 0 {
		t.Errorf("%d trips: %v", len(list), err)
	}
	if v.Head().Title != "New trip" || v.Head().Under != "Ravka Oldenmoor" || !v.ui.agree.Disabled() || !v.ui.print.Disabled() {
		t.Errorf("head %+v", v.Head())
	}
	place := v.Place()
	if !place.New || place.Record != "" {
		t.Fatalf("nothing entered, the place is %+v", place)
	}
	v, w := open(t, d, place)
	if v.Head().Title != "New trip" || v.Head().Under != "Ravka Oldenmoor" {
		t.Errorf("opened again, the head is %+v", v.Head())
	}
	apptest.Click(t, w, "trip.stop.add")
	if trip := kept(t, v); len(trip.Stops) != 1 || !travels(trip, a.ID) {
		t.Errorf("kept %+v", trip)
	}
	v.Undo()
	if place = v.Place(); place.New || place.Record != kept(t, v).ID {
		t.Errorf("after undo the place is %+v", place)
	}
	if v, _ = open(t, d, place); v.Place() != place {
		t.Errorf("opened again at %+v", v.Place())
	}
}

// Opened without a part, the fields show the stop in sight.
func TestOpensAtTheNextStop(t *testing.T) {
	d, _ := apptest.Demo(t)
	_, w := open(t, d, desk.Place{Record: demoTrip(t, d).ID})
	apptest.Click(t, w, "trip.stop.change")
	if got := apptest.Text(t, w, "trip.stop.place"); got != "Home" || apptest.Text(t, w, "trip.stop.temperature") != "22" || choiceNamed(t, w, "trip.stop.sun").Chosen() != string(record.SunPart) {
		t.Errorf("the place reads %q", got)
	}
}

// In US units every figure of the air and the plan is in them.
func TestUSUnits(t *testing.T) {
	d, _ := apptest.Demo(t)
	p := d.Practice()
	p.Settings.Units = "us"
	if _, err := d.Store.SavePractice(context.Background(), p, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	d.PracticeChanged()
	v, w := with(t, d, "Ravka")
	wants(t, w, "fl oz/h", "88 °F", "30 °F hotter", "WBGT about 93 °F")
	without(t, w, "°C", "m/s", " mL", " L/h", " L ")
	apptest.Click(t, w, "trip.stop.change")
	apptest.Type(t, w, "trip.stop.temperature", "90")
	apptest.Leave(w)
	if got := kept(t, v).Stops[1].Air.Temperature; quantity.Round(got.Or(0), 1) != 32.2 {
		t.Errorf("90 °F is kept as %v °C", got.Or(0))
	}
}

// A folder that is not there is told beside it; stopping keeps what is written.
func TestPrintingTroubles(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := with(t, d, "Ravka", "Kester")
	v.Print()
	apptest.Type(t, w, "trip.print.path", filepath.Join(t.TempDir(), "nowhere"))
	apptest.Click(t, w, "trip.print.yes")
	wants(t, w, "It was not saved.", "That folder does not exist.")
	apptest.Click(t, w, "trip.print.no")
	stopped, cancel := context.WithCancel(context.Background())
	cancel()
	if files, _, err := v.printTo(stopped, t.TempDir(), v.desk.Paper(), pagesOf(t, v, everybody)); len(files) != 0 || !errors.Is(err, context.Canceled) {
		t.Errorf("stopped, and wrote %v: %v", files, err)
	}
	folder := t.TempDir()
	for range 2 {
		if _, _, err := v.printTo(context.Background(), folder, v.desk.Paper(), pagesOf(t, v, string(v.who))); err != nil {
			t.Fatal(err)
		}
	}
	if files, err := filepath.Glob(filepath.Join(folder, "*.pdf")); err != nil || len(files) != 2 {
		t.Errorf("a page was written over: %v, %v", files, err)
	}
}

// The pages are printed on the practice's paper.
func TestPagesOnThePaperOfThePractice(t *testing.T) {
	for units, box := range map[string]string{"": "595.28 841.89", "us": "612.00 792.00"} {
		d, _ := apptest.Demo(t)
		p := d.Practice()
		p.Settings.Units = units
		if _, err := d.Store.SavePractice(context.Background(), p, store.Edit{}); err != nil {
			t.Fatal(err)
		}
		d.PracticeChanged()
		v, w := with(t, d, "Ravka")
		folder := t.TempDir()
		v.Print()
		apptest.Type(t, w, "trip.print.path", folder)
		apptest.Click(t, w, "trip.print.yes")
		files, err := filepath.Glob(filepath.Join(folder, "*.pdf"))
		if err != nil || len(files) == 0 {
			t.Fatalf("units %q: %v, %v", units, files, err)
		}
		for _, f := range files {
			if bytes, err := os.ReadFile(f); err != nil || !strings.Contains(string(bytes), "/MediaBox [0 0 "+box+"]") {
				t.Errorf("units %q: %s is not on %s pt (%v)", units, filepath.Base(f), box, err)
			}
		}
	}
}

func pagesOf(t *testing.T, v *View, whose string) []sheetOut {
	t.Helper()
	list, err := v.pages(whose)
	if err != nil {
		t.Fatal(err)
	}
	return list
}
