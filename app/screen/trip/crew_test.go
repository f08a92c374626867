package trip

import (
	"context"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/internal/climate"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// hockeyTrip opens the trip of the invented practice as it is, at a stop.
func hockeyTrip(t *testing.T, d *desk.Desk, stop int, open record.ID) (*View, fyne.Window) {
	t.Helper()
	list, err := d.Store.Trips(context.Background())
	if err != nil || len(list) != 1 {
		t.Fatalf("%d trips: %v", len(list), err)
	}
	v, err := New(d, desk.Place{Record: list[0].ID, Part: string(list[0].Stops[stop].ID), Athlete: open})
	if err != nil {
		t.Fatal(err)
	}
	return v, apptest.Window(t, v.Body(), 1180, 704, false, 100)
}

// A stop says its verdict first and once, and all in few words: beside what its charts
// draw, 192 for four athletes and 244 with a row open.
func TestFewWords(t *testing.T) {
	d, _ := apptest.Demo(t)
	_, w := hockeyTrip(t, d, 1, "")
	if n := len(strings.Fields(said(w))); n > 192 {
		t.Errorf("%d words for four athletes", n)
	}
	_, w = hockeyTrip(t, d, 1, apptest.AthleteNamed(t, d, "Ravka").ID)
	all := strings.Join(apptest.Texts(w.Content()), "\n")
	if n := len(strings.Fields(said(w))); n > 244 {
		t.Errorf("%d words with a row open", n)
	}
	if n := strings.Count(all, "WBGT"); n != 1 {
		t.Errorf("the reason is said %d times: %s", n, all)
	}
	d, _ = apptest.Demo(t)
	_, w = with(t, d, "Ravka")
	if n := len(strings.Fields(said(w))); n > 192 {
		t.Errorf("%d words for one athlete with the row open", n)
	}
}

// A row has a range, what it is based on and a plan; one too uncertain to drink by and
// one without a test have no amounts.
func TestRows(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := hockeyTrip(t, d, 1, "")
	rows := v.ui.stop.crew.rows
	if len(rows) != 4 {
		t.Fatalf("%d rows", len(rows))
	}
	byName := map[string]*crewRow{}
	for _, r := range rows {
		byName[strings.Fields(r.name.Text())[0]] = r
	}
	nessa, ottoline, pia := byName["Nessa"], byName["Ottoline"], byName["Pia"]
	if nessa.deficit.Text() == "" || !nessa.deficit.Visible() || nessa.basis.Text() != "Tested" || !nessa.bar.Visible() {
		t.Errorf("a tested row: %q, %q", nessa.deficit.Text(), nessa.basis.Text())
	}
	if ottoline.basis.Text() != "Different" || ottoline.plan.Text() != "–" || ottoline.line.Visible() || ottoline.deficit.Text() != "–" || ottoline.ends.Text() != "" || ottoline.carb.Text() != "–" || ottoline.warn.Text() != "too uncertain: weigh there" {
		t.Errorf("a far row: %q, %q", ottoline.basis.Text(), ottoline.ends.Text())
	}
	if _, lacking := packedAll(v); !strings.Contains(strings.Join(lacking, "\n"), "Ottoline Marsk: only water for") {
		t.Errorf("packing does not say why Ottoline has water only: %q", lacking)
	}
	if pia.basis.Text() != "No test" || pia.plan.Text() != "–" || pia.deficit.Text() != "–" || pia.warn.Text() != "test first; drink to thirst; weigh" {
		t.Errorf("a row without a test: %q, %q, %q", pia.basis.Text(), pia.plan.Text(), pia.warn.Text())
	}
	if !strings.Contains(pia.note.Text(), "mass hidden") || strings.Contains(pia.note.Text(), "kg") {
		t.Errorf("a hidden mass is noted as %q", pia.note.Text())
	}
	fold := field.Find(w.Content(), "trip.row.1").(*field.Fold)
	fold.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	if !fold.Open() || v.Place().Athlete != v.crew()[0].athlete.ID {
		t.Error("the arrow does not open a row")
	}
	wants(t, w, "Tests as measured")
	if !apptest.Has(w, "trip.row.1.why") {
		t.Error("an open row does not lead to the calculation")
	}
	fold.TypedKey(&fyne.KeyEvent{Name: fyne.KeyLeft})
	without(t, w, "Tests as measured")
}

// Heat days count on from the hills to the coast, with a day of travel between that
// does not.
func TestHeatDaysThroughTheTrip(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, _ := hockeyTrip(t, d, 0, "")
	trip := v.now()
	for i := range trip.Stops[:2] {
		trip.Stops[i].City, trip.Stops[i].Air.Temperature, trip.Stops[i].Air.Humidity = "", record.Num(31, quantity.DegreeCelsius), record.Num(50, quantity.PerCent)
	}
	if _, err := d.Store.SaveTrip(context.Background(), trip, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	v, w := hockeyTrip(t, d, 1, "")
	cells, first, _ := v.heatDays(v.speaker(nil), v.crew(), 1)
	var counts []string
	tests := 0
	for _, c := range cells {
		counts = append(counts, c.Big)
		if c.Framed {
			tests++
		}
	}
	if got := strings.Join(counts, " "); got != "1 2 3 4 5 6 – 7 8 9 10 11 12 13" || record.DateOf(first) != trip.Stops[0].From || !cells[0].Slim || cells[7].Slim {
		t.Errorf("the days are %s from %s", got, first)
	}
	if tests != 2 { // where the two spans begin: day 7, the last of the first, and day 10
		t.Errorf("%d days to test again", tests)
	}
	wants(t, w, "Heat days, counted from 2 July")
}

// A city that is not in the table lets the air be typed at once: the fields stand
// there and what is typed is taken.
func TestUnknownCityTypesTheAir(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := with(t, d, "Ravka")
	apptest.Click(t, w, "trip.stop.change")
	apptest.Type(t, w, "trip.stop.city", "Bangalore on Sea")
	apptest.Leave(w)
	wants(t, w, "Or enter the air instead.")
	apptest.Type(t, w, "trip.stop.temperature", "30")
	apptest.Type(t, w, "trip.stop.humidity", "50")
	apptest.Leave(w)
	wants(t, w, "30 °C, 50 %", "Tested")
	if s := kept(t, v).Stops[1]; s.City != "Bangalore on Sea" || s.Air.Temperature.Or(0) != 30 {
		t.Errorf("kept %+v", s)
	}
}

// waiting keeps work until it is told to go on.
type waiting struct{ jobs []func() }

func (r *waiting) Run(work func(context.Context) error, done func(error)) (stop func()) {
	ctx, cancel := context.WithCancel(context.Background())
	r.jobs = append(r.jobs, func() { done(work(ctx)) })
	return cancel
}

// Packing is worked out beside the window: nothing of it runs when the part is
// opened, and what was asked for before comes too late.
func TestPackingIsWorkedOutBeside(t *testing.T) {
	d, _ := apptest.Demo(t)
	beside := &waiting{}
	d.Beside = beside
	v, w := hockeyTrip(t, d, 0, "")
	v.ShowPart(PartPacking)
	if len(beside.jobs) != 1 {
		t.Fatalf("%d jobs", len(beside.jobs))
	}
	without(t, w, "Fig bar")
	v.ui.pack.margin.OnChosen("20")
	for _, job := range beside.jobs {
		job()
	}
	wants(t, w, "Fig bar", "Each athlete carries")
	if got := sumOf(packAll(context.Background(), v.packJobs(everybody))).Margin; got != 0.2 {
		t.Errorf("packed with %g", got)
	}
}

// A list has no line of nothing, counts bottles once, leaves fruit to be bought there,
// and rounds as one shops.
func TestPackingIsPractical(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := hockeyTrip(t, d, 0, "")
	v.ShowPart(PartPacking)
	all, _ := packedAll(v)
	for _, s := range all.Supplies {
		if s.Servings <= 0 {
			t.Errorf("%s is packed %d times", s.Supply.ID, s.Servings)
		}
		if fresh := s.Supply.ID == "generic.banana"; s.Supply.Fresh != fresh || fresh && (s.Rest != climate.Buy || s.HandLuggage != 0) {
			t.Errorf("%s travels in %q, %d in hand", s.Supply.ID, s.Rest, s.HandLuggage)
		}
	}
	text := strings.ReplaceAll(said(w), "\u00a0", " ")
	for _, line := range strings.Split(text, "\n") {
		if line == "0" || line == "0 g" || strings.HasPrefix(line, "0 ") {
			t.Errorf("a line of nothing: %q", line)
		}
	}
	if n := strings.Count(text, "bottles of 500 mL"); n != 1 {
		t.Errorf("bottles of 500 mL are counted %d times", n)
	}
	sp := v.speaker(nil)
	for _, c := range []struct{ got, want string }{
		{packMass(sp, 1960), "2 kg"}, {packMass(sp, 2040), "2.1 kg"}, {packMass(sp, 326), "330 g"}, {packMass(sp, 7.2), "8 g"},
		{packLitres(sp, 6.72), "7 L"}, {packLitres(sp, 3.36), "3.5 L"}, {packLitres(sp, 3), "3 L"},
	} {
		if strings.ReplaceAll(c.got, "\u00a0", " ") != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
	for _, m := range v.crew() {
		if p := v.packFor(m); len(p.unplanned) == 0 && !strings.Contains(v.carried(p), "bottle") {
			t.Errorf("%s carries %q", m.athlete.Name, v.carried(p))
		}
	}
}

// The beginning of a name finds that name first.
func TestBeginningOfANameFirst(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, w := hockeyTrip(t, d, 0, "")
	v.ShowPart(PartEdit)
	apptest.Type(t, w, "trip.traveller.add", "Se")
	apptest.Press(w, fyne.KeyReturn)
	if last := kept(t, v).Travellers; last[len(last)-1].AthleteID != apptest.AthleteNamed(t, d, "Sefa").ID {
		t.Error(`"Se" and Enter is not Sefa`)
	}
}

// Over its new limit a plan says to what it comes down, with the bar of warnings; one
// that stays under it has no bar.
func TestOverItsLimit(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, _ := with(t, d, "Ravka")
	row := v.ui.stop.crew.rows[0]
	if row.frame.warned || row.over.Visible() {
		t.Errorf("a warning without reason: %q", row.over.Text())
	}
	if !row.amounts() {
		t.Fatal("the row has no amounts")
	}
	drunk := v.speaker(nil).By.Amount(row.there.At.Fluid.DrunkL, quantity.Litre)
	row.there.Cut = true
	row.showPlan(v.speaker(row.member), 2)
	if !row.frame.warned || !row.over.Visible() || row.over.Text() != "lower to "+drunk {
		t.Errorf("cut down to %s: bar %t, %q", drunk, row.frame.warned, row.over.Text())
	}
	row.there.Cut = false
	row.showPlan(v.speaker(row.member), 2)
	if row.frame.warned || row.over.Visible() {
		t.Errorf("the warning stays: %q", row.over.Text())
	}
}

// The high end of a deficit stands out past 3 %, as it is shown.
func TestHighEndStandsOut(t *testing.T) {
	d, _ := apptest.Demo(t)
	for stop := range 3 {
		v, _ := hockeyTrip(t, d, stop, "")
		for _, r := range v.ui.stop.crew.rows {
			if !r.amounts() || v.speaker(r.member).By.Hidden {
				continue
			}
			want := quantity.Round(r.there.At.Deficit.High, 1) > 3
			if got := highEnd(v.speaker(r.member), r.there); got != want {
				t.Errorf("stop %d, %s: %q stands out %t", stop+1, r.member.athlete.Name, r.ends.Text(), got)
			}
		}
	}
}

// The rows of a squad of five and more scroll where there is little room, and the days
// stay in sight; four have all in sight.
func TestSquadScrollsItsRows(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, _ := hockeyTrip(t, d, 0, "")
	if v.ui.stop.crew.frame.most != 0 {
		t.Error("the rows of four scroll")
	}
	trip := v.now()
	for _, name := range []string{"Ilse", "Dorian", "Jorun", "Sefa"} {
		addTraveller(&trip, apptest.AthleteNamed(t, d, name).ID)
	}
	if _, err := d.Store.SaveTrip(context.Background(), trip, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	v, w := hockeyTrip(t, d, 0, "")
	frame, page := v.ui.stop.crew.frame, v.ui.stop.body
	if frame.most <= 0 || frame.most >= frame.natural(frame.Size().Width) {
		t.Errorf("eight rows have %g of %g px", frame.most, frame.natural(frame.Size().Width))
	}
	if high := page.content.MinSize().Height; high > page.Size().Height+0.5 {
		t.Errorf("the stop is %g px high in %g", high, page.Size().Height)
	}
	apptest.Click(t, w, "trip.stop.change")
	if frame.most != 0 {
		t.Error("the rows scroll beside the open forms")
	}
}

// Where there is little room a tab is named by its place.
func TestTabsByTheirPlace(t *testing.T) {
	d, _ := apptest.Demo(t)
	v, _ := hockeyTrip(t, d, 0, "")
	v.ui.top.fit(wide(v.ui.top.tabsAt(1)) - 1)
	for i, want := range []string{"Hills", "Coast camp", "Tournament"} {
		if got := v.ui.top.shown[i].Text; got != want {
			t.Errorf("tab %d is %q, want %q", i+1, got, want)
		}
	}
}
