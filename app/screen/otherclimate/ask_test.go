package otherclimate

import (
	"context"
	"flag"
	"regexp"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

var update = flag.Bool("update", false, "keep new golden pictures")

// asking is an athlete of the invented practice with closed tests and plan.
type asking struct {
	d       *desk.Desk
	athlete record.Athlete
	tests   []consult.Findings
	plan    record.Plan
	got     []record.PlanBasis
}

func ask(t *testing.T, name string) *asking {
	t.Helper()
	d, _ := apptest.Demo(t)
	a := &asking{d: d, athlete: apptest.AthleteNamed(t, d, name)}
	tests, err := d.Store.Tests(context.Background(), a.athlete.ID)
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range tests {
		if x.State != record.TestOpen {
			a.tests = append(a.tests, consult.Find(x, a.athlete, nil, d.Calculate()))
		}
	}
	plans, err := d.Store.Plans(context.Background(), a.athlete.ID)
	if err != nil || len(plans) == 0 {
		t.Fatalf("%d plans: %v", len(plans), err)
	}
	a.plan = plans[0]
	return a
}

// show asks over a window.
func (a *asking) show(t *testing.T, m golden.Mode, size fyne.Size) fyne.Window {
	t.Helper()
	golden.Use(t, m)
	w := golden.Open(t, look.NewLabel("", look.Body, look.Ink), size)
	Ask(a.d, w.Canvas(), a.athlete, a.tests, a.plan, func(b record.PlanBasis) { a.got = append(a.got, b) })
	return w
}

// small is a small window, light.
func (a *asking) small(t *testing.T) fyne.Window {
	t.Helper()
	return a.show(t, golden.Mode{Percent: 100}, fyne.NewSize(1180, 760))
}

// said is everything in sight in the dialog.
func said(w fyne.Window) string {
	return strings.ReplaceAll(strings.Join(texts(w.Canvas().Overlays().Top()), "\n"), "\u00a0", " ")
}

func texts(o fyne.CanvasObject) []string {
	if o == nil || !o.Visible() {
		return nil
	}
	var list []string
	if s, ok := o.(interface{ Text() string }); ok {
		list = append(list, s.Text())
	}
	var children []fyne.CanvasObject
	switch o := o.(type) {
	case *fyne.Container:
		children = o.Objects
	case look.Holder:
		children = o.Parts()
	case *container.Scroll:
		children = []fyne.CanvasObject{o.Content}
	}
	for _, child := range children {
		list = append(list, texts(child)...)
	}
	return list
}

func wants(t *testing.T, w fyne.Window, list ...string) {
	t.Helper()
	all := said(w)
	for _, s := range list {
		if !strings.Contains(all, s) {
			t.Errorf("%q is not said; there is\n%s", s, all)
		}
	}
}

// pick chooses a key of a control by its name.
func pick(t *testing.T, w fyne.Window, name, key string) {
	t.Helper()
	switch c := field.Find(w.Canvas().Overlays().Top(), name).(type) {
	case *field.Choice:
		c.Choose(key)
		c.OnChosen(key)
	case *field.Toggle:
		c.Choose(key)
		c.OnChosen(key)
	default:
		t.Fatalf("no choice %q", name)
	}
}

// chennai chooses a hot city: type, take the match, month.
func chennai(t *testing.T, w fyne.Window) {
	t.Helper()
	apptest.Type(t, w, "climate.city", "Chennai")
	apptest.Press(w, fyne.KeyDown, fyne.KeyReturn)
	pick(t, w, "climate.month", "7")
}

// Two moves, a city and a month, and the basis opens again as what was seen.
func TestCityAndMonth(t *testing.T) {
	a := ask(t, "Ravka")
	w := a.small(t)
	wants(t, w, "Choose a city and a month.")
	apptest.Click(t, w, "climate.yes")
	if len(a.got) != 0 {
		t.Fatal("a basis was handed on before there was one")
	}
	chennai(t, w)
	wants(t, w, "an estimate", "Chennai, India: 36 °C, 48 %", "Datenbasis: Deutscher Wetterdienst", "17 °C hotter", "Effect on the plan", "as it is", "in that air",
		"Limit, the low end of the loss", "Drinking does not prevent heat illness", "do not drink more")
	seen := said(w)
	apptest.Click(t, w, "climate.yes")
	if len(a.got) != 1 || w.Canvas().Overlays().Top() != nil {
		t.Fatalf("handed on %d", len(a.got))
	}
	p := a.plan.Clone()
	p.Basis = a.got[0]
	if p.Basis.Kind != record.BasisEstimate || p.Basis.Air.Temperature.Or(0) != 35.7 || p.Basis.TestID == "" {
		t.Errorf("the basis is %+v", p.Basis)
	}
	b, err := consult.BasisFor(p, a.athlete, a.tests, a.d.Now(), a.d.Calculate())
	if err != nil {
		t.Fatal(err)
	}
	there := consult.TakeAlong(p, a.athlete, b, a.d.Now(), a.d.Calculate())
	q := there.At.Deficit
	if says := a.d.Words.Signed(-q.Low, 1) + " to " + a.d.Words.Signed(-q.High, 1) + " %"; !strings.Contains(seen, says) || there.Case.Planner.Basis().Kind != plan.Estimate {
		t.Errorf("opened again the deficit is %s; seen was %s", says, seen)
	}
}

func TestAnotherTest(t *testing.T) {
	a := ask(t, "Ravka")
	w := a.small(t)
	pick(t, w, "climate.way", "test")
	pick(t, w, "climate.test", string(a.tests[2].Test.ID))
	wants(t, w, "on a similar day", "Effect on the plan")
	apptest.Click(t, w, "climate.yes")
	if len(a.got) != 1 || a.got[0].Kind != record.BasisPool || a.got[0].TestID != a.tests[2].Test.ID || !a.got[0].Air.Same(a.tests[2].Test.Air) {
		t.Errorf("handed on %+v", a.got)
	}
}

// In cold air the agreed mix would be over-drinking: it comes down, and says so.
func TestTypedColdAirCutsThePlanDown(t *testing.T) {
	a := ask(t, "Ravka")
	w := a.small(t)
	pick(t, w, "climate.way", "air")
	apptest.Type(t, w, "climate.temperature", "4")
	apptest.Type(t, w, "climate.humidity", "70")
	pick(t, w, "climate.sun", "overcast")
	wants(t, w, "the plan must drop to", "an estimate")
	apptest.Click(t, w, "climate.yes")
	if len(a.got) != 1 || a.got[0].Kind != record.BasisEstimate || a.got[0].Air.Sun != record.SunOvercast {
		t.Errorf("handed on %+v", a.got)
	}
}

func TestTroubles(t *testing.T) {
	a := ask(t, "Ravka")
	w := a.small(t)
	apptest.Type(t, w, "climate.city", "Atlantis on Sea")
	apptest.Press(w, fyne.KeyTab)
	apptest.Leave(w)
	wants(t, w, "is not in the climate table")
	pick(t, w, "climate.way", "air")
	wants(t, w, "Still missing: the air temperature and the humidity")
	apptest.Type(t, w, "climate.temperature", "80")
	apptest.Type(t, w, "climate.humidity", "40")
	wants(t, w, "80 °C is outside the range for sport")
	if strings.Contains(said(w), "Effect on the plan") {
		t.Error("a difference is shown for impossible air")
	}
	apptest.Click(t, w, "climate.yes")
	apptest.Click(t, w, "climate.no")
	if len(a.got) != 0 {
		t.Errorf("handed on %+v", a.got)
	}
}

// Where body mass is hidden the difference is in litres.
func TestHidden(t *testing.T) {
	a := ask(t, "Mirel")
	w := a.small(t)
	chennai(t, w)
	wants(t, w, " L to −", "an estimate")
	if found := regexp.MustCompile(`(?i)[−+]\d[\d.]* ?%|kg|kcal|m²`).FindAllString(said(w), -1); found != nil {
		t.Errorf("it speaks of %q", found)
	}
}

// album lists the screens that are kept as pictures.
func album() golden.Album {
	return golden.Album{Update: *update, Keep: []string{
		"empty",
		"test-light",
	}}
}

func TestPictures(t *testing.T) {
	a := ask(t, "Ravka")
	large := fyne.NewSize(1600, 1000)
	for _, c := range []struct {
		name string
		mode golden.Mode
		size fyne.Size
		do   func(w fyne.Window)
	}{
		{"empty", golden.Mode{Percent: 100}, fyne.NewSize(1180, 760), nil},
		{"city-light", golden.Mode{Percent: 100}, large, func(w fyne.Window) { chennai(t, w) }},
		{"city-dark", golden.Mode{Dark: true, Percent: 100}, fyne.NewSize(1180, 760), func(w fyne.Window) { chennai(t, w) }},
		{"test-light", golden.Mode{Percent: 100}, fyne.NewSize(1180, 760), func(w fyne.Window) { pick(t, w, "climate.way", "test") }},
		{"air-error", golden.Mode{Percent: 100}, fyne.NewSize(1180, 760), func(w fyne.Window) {
			pick(t, w, "climate.way", "air")
			apptest.Type(t, w, "climate.temperature", "80")
			apptest.Type(t, w, "climate.humidity", "40")
			apptest.Leave(w)
		}},
	} {
		w := a.show(t, c.mode, c.size)
		if c.do != nil {
			c.do(w)
		}
		apptest.Leave(w)
		golden.LayOutAgain(w.Canvas())
		album().Screen(t, c.name, w)
		apptest.Click(t, w, "climate.no")
	}
}
