package athlete

import (
	"context"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// overview opens the overview of an athlete of the invented practice.
func overview(t *testing.T, d *desk.Desk, begins string) *Overview {
	t.Helper()
	v, err := NewOverview(d, apptest.AthleteNamed(t, d, begins).ID)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestOverviewSaysWhereThingsStand(t *testing.T) {
	d, went := apptest.Demo(t)
	v := overview(t, d, "Ravka")
	a := v.file.athlete
	if h := v.Head(); h.Title != a.Name || h.Under != "27 · field hockey, midfield · 64.0\u00a0kg" || h.Tab != desk.Overview || h.Athlete != a.ID {
		t.Errorf("head %+v", h)
	}
	all := strings.Join(apptest.Texts(apptest.Window(t, v.Body(), 1420, 944, false, 100).Content()), "\n")
	for _, part := range []string{
		"Last test, 14 May", "In 95 minutes of hard field hockey at 31", "she lost 2.16", "drank 0.55", "past the 2 % agreed with her", "2 %, agreed",
		": review of step 1", "Sweat rate, L/h", "By date, as measured", "Step 1", "now, since", "deficit", "Trip: Camp and tournament", "from 2 Jul",
		"Consent ends: share with the coach", "30 Jun",
	} {
		if !strings.Contains(strings.Join(strings.Fields(all), " "), part) {
			t.Errorf("%q is not to be read in\n%s", part, all)
		}
	}
	tap(t, v.Body(), "overview.plan")
	apptest.Click(t, apptest.Window(t, v.Head().Spare[0], 200, 60, false, 100), "overview.test")
	tap(t, v.Body(), "overview.step.2.open")
	tap(t, v.Body(), "overview.why")
	apptest.Click(t, apptest.Window(t, v.head, 200, 60, false, 100), "overview.profile")
	plan, test := v.file.inForce().ID, v.file.tests[0].Test.ID
	want := []desk.Place{
		{Screen: desk.Plan, Athlete: a.ID, Record: plan}, {Screen: desk.Tests, Athlete: a.ID, New: true},
		{Screen: desk.Plan, Athlete: a.ID, Record: plan, Part: string(v.file.inForce().Steps[0].OptionID)},
		{Screen: desk.Tests, Athlete: a.ID, Record: test, Part: "findings"}, {Screen: desk.Profile, Athlete: a.ID},
	}
	for i, p := range want {
		if i >= len(*went) || (*went)[i] != p {
			t.Errorf("way %d: went %+v, want %+v", i, *went, p)
		}
	}
}

// The steps stand as they were agreed, also when the test below them is put right
// later; what was kept and cannot be read is never passed off as agreed.
func TestOverviewShowsTheStepsAsAgreed(t *testing.T) {
	d, _ := apptest.Demo(t)
	ctx := context.Background()
	v := overview(t, d, "Ravka")
	before, missing := v.agreedCase()
	if missing != "" || before.Anew {
		t.Fatalf("not as agreed: %q, %v", missing, before.Anew)
	}
	bars := v.sp.cards(before)
	test, err := d.Store.ReopenTest(ctx, before.Plan.Basis.TestID, "weighed again")
	if err != nil {
		t.Fatal(err)
	}
	for i, w := range test.Weighings {
		if w.Moment == record.After {
			test.Weighings[i].Mass = record.Num(*w.Mass.Value-0.8, quantity.Kilogram)
		}
	}
	if _, err := d.Store.SaveTest(ctx, test, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	later := overview(t, d, "Ravka")
	c, missing := later.agreedCase()
	if missing != "" || c.Anew || !reflect.DeepEqual(later.sp.cards(c), bars) {
		t.Errorf("the steps became %+v, %q; they were agreed as %+v", later.sp.cards(c), missing, bars)
	}
	basis, err := consult.BasisFor(c.Plan, later.file.athlete, later.file.tests, d.Now(), d.Calculate())
	if err != nil {
		t.Fatal(err)
	}
	if anew, err := consult.OpenCase(c.Plan, later.file.athlete, basis, d.Calculate()); err != nil || reflect.DeepEqual(later.sp.cards(anew), bars) {
		t.Error("the check cannot fail: the corrected test changes nothing")
	}
	ref := record.Ref{Kind: record.KindPlan, ID: c.Plan.ID}
	if _, err := d.Store.Freeze(ctx, ref, store.Freezing{Inputs: []byte("[]"), Results: []byte("[]"), Evidence: "0"}); err != nil {
		t.Fatal(err)
	}
	all := strings.Join(strings.Fields(strings.Join(apptest.Texts(apptest.Window(t, overview(t, d, "Ravka").Body(), 1420, 944, false, 100).Content()), " ")), " ")
	if !strings.Contains(all, "Not as it was agreed") {
		t.Errorf("it is not said that nothing could be read in\n%s", all)
	}
}

func TestTrailOpensEachPlace(t *testing.T) {
	d, went := apptest.Demo(t)
	v := overview(t, d, "Dorian")
	w := apptest.Window(t, v.Body(), 1000, 704, false, 100)
	apptest.Click(t, w, "overview.dates")
	lines := v.file.trail()
	for i := range lines {
		apptest.Click(t, w, "overview.trail."+strconv.Itoa(i+1))
	}
	if len(*went) != len(lines) {
		t.Fatalf("%d lines, %d places", len(lines), len(*went))
	}
	for i, e := range lines {
		p := (*went)[i]
		switch {
		case e.test != nil && (p.Screen != desk.Tests || p.Record != e.test.Test.ID):
			t.Errorf("the test opens %+v", p)
		case e.plan != nil && (p.Screen != desk.Plan || p.Record != e.plan.ID):
			t.Errorf("the plan opens %+v", p)
		case len(e.purposes) > 0 && (p.Screen != desk.Profile || p.Part != desk.PartConsents):
			t.Errorf("the consent opens %+v", p)
		}
	}
	*went = nil
	w.Canvas().Unfocus()
	for range 3 { // the way back, the copy, the trail
		w.Canvas().FocusNext()
	}
	apptest.Press(w, fyne.KeyEnd, fyne.KeyUp, fyne.KeyHome, fyne.KeyDown, fyne.KeyReturn)
	if len(*went) != 1 || (*went)[0] != v.sp.line(v.file.athlete.ID, lines[1]).opens {
		t.Errorf("from the keyboard went %+v", *went)
	}
	apptest.Click(t, w, "overview.dates.back")
	if v.page.Hidden || !v.dates.Hidden {
		t.Error("there is no way back from all dates")
	}
}

func TestDueLeadsThere(t *testing.T) {
	d, went := apptest.Demo(t)
	v := overview(t, d, "Kester")
	w := apptest.Window(t, v.Body(), 1000, 704, false, 100)
	list := v.file.due()
	if len(list) != 2 || list[0].kind != dueSheet || list[1].kind != dueReview || !list[1].late {
		t.Fatalf("due: %+v", list)
	}
	apptest.Click(t, w, "overview.due.1.open")
	apptest.Click(t, w, "overview.due.2.open")
	if (*went)[0].Screen != desk.Tests || (*went)[0].Record != list[0].test.Test.ID || (*went)[1].Screen != desk.Plan || (*went)[1].Part != partSteps {
		t.Errorf("went %+v", *went)
	}
	all := strings.Join(apptest.Texts(w.Content()), "\n")
	for _, part := range []string{"Due: unfinished sheet", "Sheet unfinished: Training ground.", "since 4 May"} {
		if !strings.Contains(all, part) {
			t.Errorf("%q is not to be read", part)
		}
	}
}

// Where body mass is hidden nothing on the overview leads back to it, whatever
// is kept: a minor, and an adult who asked for it.
func TestOverviewHidesMass(t *testing.T) {
	d, _ := apptest.Demo(t)
	for _, begins := range []string{"Mirel", "Ravka", "Ilse", "Kester", "Dorian"} {
		a := apptest.AthleteNamed(t, d, begins)
		shown := overview(t, d, begins)
		if begins != "Mirel" && len(apptest.Revealing(apptest.Texts(apptest.Window(t, shown.Body(), 1420, 1400, false, 100).Content()))) == 0 {
			t.Errorf("%s: no per cent is to be read while mass is shown", begins)
		}
		a.MassHidden, a.MassHiddenSettled = true, true
		apptest.Save(t, d, a)
		v := overview(t, d, begins)
		list := append(apptest.Texts(apptest.Window(t, v.Body(), 1420, 1400, false, 100).Content()), v.Head().Under)
		if found := apptest.Revealing(list); len(found) > 0 {
			t.Errorf("%s: %q is to be read", begins, found)
		}
		if all := strings.Join(list, "\n"); !strings.Contains(all, "L") || !strings.Contains(all, "deficit") {
			t.Errorf("%s: no litres: %s", begins, all)
		}
	}
}

func TestOverviewWarnsOfAGain(t *testing.T) {
	d, _ := apptest.Demo(t)
	v := overview(t, d, "Ilse")
	for _, f := range v.file.tests {
		told := v.sp.summarise(f, v.file.athlete, nil)
		gained := f.Sweat.Fluid.Deficit.Value < 0
		if gained != strings.HasPrefix(told.red, "Red flag") {
			t.Errorf("%s: deficit %.2f, said %q", f.Test.Session.Place, f.Sweat.Fluid.Deficit.Value, told.red)
		}
		if gained && strings.Contains(strings.Join(told.sentences, " "), "lighter") {
			t.Errorf("a gain is called a deficit: %v", told.sentences)
		}
	}
}

func TestOverviewOfNobodyKnown(t *testing.T) {
	d, went := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	v, err := NewOverview(d, a.ID)
	if err != nil {
		t.Fatal(err)
	}
	w := apptest.Window(t, v.Body(), 1000, 704, false, 100)
	if apptest.Has(w, "overview.plan") || !strings.Contains(strings.Join(apptest.Texts(w.Content()), " "), "No test yet") {
		t.Error("an athlete without a test is offered a plan, or not told what to do")
	}
	apptest.Click(t, w, "overview.test")
	apptest.Click(t, w, "overview.due.1.open") // no consent is written down
	if !(*went)[0].New || (*went)[0].Screen != desk.Tests || (*went)[1].Screen != desk.Profile {
		t.Errorf("went %+v", *went)
	}
	minor := a
	minor.Meta, minor.Born = record.Meta{ID: record.NewID()}, "2011-03-04"
	apptest.Save(t, d, minor)
	if v, err = NewOverview(d, minor.ID); err != nil {
		t.Fatal(err)
	}
	w = apptest.Window(t, v.Body(), 1000, 704, false, 100)
	if apptest.Has(w, "overview.test") {
		t.Error("a minor's first sheet is offered before guardian, assent and hidden mass are settled")
	}
	apptest.Click(t, w, "overview.settle")
	if p := (*went)[2]; p.Screen != desk.Profile || p.Part != desk.PartMinor {
		t.Errorf("went to %+v", p)
	}
	if _, err := NewOverview(d, "nobody"); store.CodeOf(err) != store.CodeNotFound {
		t.Errorf("an athlete who is not there: %v", err)
	}
}

// In the units of the United States nothing metric is left.
func TestOverviewInPounds(t *testing.T) {
	d, _ := apptest.Demo(t)
	p := d.Practice()
	p.Settings.Units = "us"
	if _, err := d.Store.SavePractice(context.Background(), p, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	d.PracticeChanged()
	v := overview(t, d, "Ravka")
	list := append(apptest.Texts(apptest.Window(t, v.Body(), 1420, 944, false, 100).Content()), v.Head().Under)
	all := strings.Join(list, "\n")
	for _, part := range []string{"88\u00a0°F", "fl oz/h", "lb"} {
		if !strings.Contains(all, part) {
			t.Errorf("%q is not to be read", part)
		}
	}
	for _, mark := range []string{"°C", "L/h", "\u00a0kg", "\u00a0L"} {
		if strings.Contains(all, mark) {
			t.Errorf("%q is still there", mark)
		}
	}
}

// The band is the rule from 10 to 38 °C without a hole; a middle is drawn where it
// may be shown, and the points are the rates the rule compares.
func TestBandIsTheRule(t *testing.T) {
	d, _ := apptest.Demo(t)
	for _, begins := range []string{"Ravka", "Ilse", "Mirel", "Dorian", "Jorun", "Kester", "Odo", "Sefa"} {
		v := overview(t, d, begins)
		dots, curve := v.answer.dots, v.answer.curve
		data := v.sp.heatData(dots, curve, nil)
		if len(data.Points) == 0 || len(data.Points) != len(dots) {
			t.Errorf("%s has %d points of %d", begins, len(data.Points), len(dots))
		}
		if n := len(data.Band); n != 15 || data.Band[0].Heat != heatLow || data.Band[n-1].Heat != heatHigh {
			t.Errorf("%s: the band has %d places", begins, len(data.Band))
		}
		for i, b := range data.Band {
			if b.Range.Low > b.Middle || b.Range.High < b.Middle || b.Range.Low == b.Range.High || b.RangeOnly != curve[i].Rate.RangeOnly {
				t.Errorf("%s: at %g °C %+v", begins, b.Heat, b)
			}
		}
		// The session of the curve itself is on its own basis already.
		newest := len(data.Points) - 1
		if p := data.Points[newest]; math.Abs(p.Rate-dots[0].Measured) > 1e-9 || p.Ringed {
			t.Errorf("%s: the last test stands at %g, measured %g", begins, p.Rate, dots[0].Measured)
		}
	}
}

// The cards are habit, steps, aim; the step in force is marked, each says what changes
// from the one before, and the sums are those of the schedule.
func TestStepsStandInOrder(t *testing.T) {
	d, _ := apptest.Demo(t)
	v := overview(t, d, "Dorian")
	p := v.file.inForce()
	c, missing := v.agreedCase()
	if missing != "" {
		t.Fatal(missing)
	}
	cards := v.sp.cards(c)
	if len(cards) < len(p.Steps)+1 || len(p.Steps) < 2 || cards[0].Name != "Habit" {
		t.Fatalf("%d cards for %d steps", len(cards), len(p.Steps))
	}
	for i, s := range p.Steps {
		o, _ := consult.OptionByID(*p, s.OptionID)
		got := cards[i+1]
		q := c.Planner.Evaluate(plan.Expected, c.Carried(o))
		if got.Name != "Step "+strconv.Itoa(i+1) || got.option != s.OptionID || got.DrinkText != v.sp.litres(q.Fluid.DrunkL) {
			t.Errorf("card %d: %q of %s, %s", i+1, got.Name, got.option, got.DrinkText)
		}
		if got.now != (s.State == record.StepNow) || strings.HasPrefix(got.Note, "now") != got.now || (got.Note == "done") != (s.State == record.StepDone) {
			t.Errorf("%s: now %v, %q", got.Name, got.now, got.Note)
		}
		if drunk := sum(got.Drink); math.Abs(drunk-q.Fluid.DrunkL) > 1e-9 {
			t.Errorf("%s: the bar is %.3f L long, drunk are %.3f", got.Name, drunk, q.Fluid.DrunkL)
		}
		if !strings.Contains(got.Change, "more") && !strings.Contains(got.Change, "less") {
			t.Errorf("%s does not say what changes: %q", got.Name, got.Change)
		}
		if got.DrinkMax != cards[0].DrinkMax || got.FuelMax != cards[0].FuelMax {
			t.Errorf("%s has a scale of its own", got.Name)
		}
	}
	if cards[0].Change != "" {
		t.Errorf("the habit changes: %q", cards[0].Change)
	}
}

// A long history makes the lines in sight and no others; the keyboard goes through
// all of them.
func TestLongTrailMakesWhatIsSeen(t *testing.T) {
	d, _ := apptest.Desk(t)
	lines := make([]line, 500)
	for i := range lines {
		lines[i].title = strconv.Itoa(i)
	}
	opened := -1
	trail := newTrail(d.Host, lines, func(i int) { opened = i })
	w := apptest.Window(t, trail.within, 400, 300, false, 100)
	w.Canvas().Capture()
	if n := len(trail.made); n == 0 || n > beforeShown {
		t.Fatalf("%d lines were made", n)
	}
	w.Canvas().Focus(trail)
	apptest.Press(w, fyne.KeyEnd, fyne.KeyReturn)
	if opened != 499 || trail.AccessibilityLabel() != lines[499].day+" "+lines[499].year+" 499 "+lines[499].note {
		t.Errorf("opened %d, at hand is %q", opened, trail.AccessibilityLabel())
	}
	w.Canvas().Capture()
	first, last := trail.window()
	if last != 500 || first < 480 || len(trail.Parts()) != last-first {
		t.Errorf("in sight are %d to %d", first, last)
	}
	if n := len(trail.made); n > 3*beforeShown {
		t.Errorf("%d lines were made", n)
	}
}

// The bar through the dot of a test is the range of its own measurement: by date from end
// to end as on its sheet, against the heat 1.96 of its standard uncertainty either way and
// not below nothing; the dot is inside it.
func TestBarOfATestIsItsRange(t *testing.T) {
	d, _ := apptest.Demo(t)
	wide := 0
	for _, begins := range []string{"Ravka", "Ilse", "Dorian", "Jorun"} {
		v := overview(t, d, begins)
		days := v.sp.daysData(v.file)
		if len(days.Points) == 0 || len(days.Points) != len(v.file.tests) {
			t.Fatalf("%s: %d bars of %d tests", begins, len(days.Points), len(v.file.tests))
		}
		for i, p := range days.Points {
			rate := v.file.tests[len(days.Points)-1-i].Sweat.Fluid.Rate
			if p.Rate != rate.Value || p.Range.Low != rate.Range.Low || p.Range.High != rate.Range.High || p.Rate <= p.Range.Low || p.Rate >= p.Range.High {
				t.Errorf("%s: a bar from %g to %g, the sheet says %+v", begins, p.Range.Low, p.Range.High, rate.Range)
			}
		}
		dots := v.answer.dots
		for i, p := range v.sp.heatData(dots, v.answer.curve, nil).Points {
			dot := dots[len(dots)-1-i]
			if low, high := max(0, dot.Rate-1.96*dot.U), dot.Rate+1.96*dot.U; math.Abs(p.Range.Low-low) > 1e-3 || math.Abs(p.Range.High-high) > 1e-3 {
				t.Errorf("%s: a bar from %g to %g, want %g to %g", begins, p.Range.Low, p.Range.High, low, high)
			}
			if p.Range.High > p.Range.Low {
				wide++
			}
		}
	}
	if wide == 0 {
		t.Error("no bar is wider than its dot")
	}
}
