package profile

import (
	"context"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// The room a screen has in a window of 1180 x 760 and of 1600 x 1000.
func small() fyne.Size { return fyne.NewSize(1000, 704) }
func large() fyne.Size { return fyne.NewSize(1420, 944) }

// album lists the screens that are kept as pictures.
func album() golden.Album {
	return golden.Album{Update: *update, Keep: []string{
		"profile-small-light-100",
		"profile-minor-light-100",
	}}
}

// longNamed is an athlete with names of sixty letters everywhere.
func longNamed() record.Athlete {
	meta := func() record.Meta { return record.Meta{ID: record.NewID()} }
	long := strings.Repeat("Anneliese-Wilhelmina ", 3)
	return record.Athlete{
		Meta: meta(), Name: long, Born: "1988-09-30", Sport: "a sport of many words that nobody has put into a table yet", Position: strings.Repeat("left wing and ", 5),
		Note: strings.Repeat("What was said takes more than a line. ", 6),
		Flags: []record.Flag{
			{Meta: meta(), Kind: record.FlagKidney, Note: strings.Repeat("since childhood ", 6), Physician: "Dr " + long}, {Meta: meta(), Kind: record.FlagSickleCell},
		},
		Consents: []record.Consent{{Meta: meta(), Purpose: record.ConsentCoach, Given: "2025-09-30", Until: "2026-05-30", GivenBy: "for " + long}},
	}
}

func TestProfilePictures(t *testing.T) {
	d, _ := apptest.Demo(t)
	light, dark, text := golden.Mode{Percent: 100}, golden.Mode{Dark: true, Percent: 100}, golden.Mode{Percent: 150}
	long := apptest.Save(t, d, longNamed())
	minor := apptest.Save(t, d, record.Athlete{Meta: record.Meta{ID: record.NewID()}, Name: "Tamsin Lowmere", Born: "2010-06-01", Sport: "netball"})
	ravka, ilse := apptest.AthleteNamed(t, d, "Ravka").ID, apptest.AthleteNamed(t, d, "Ilse").ID
	corrected(t, d, ilse)
	of := func(id record.ID) desk.Place { return desk.Place{Athlete: id} }
	tall := fyne.NewSize(1000, 1240)
	for _, p := range []struct {
		name  string
		place desk.Place
		mode  golden.Mode
		size  fyne.Size
		do    func(*bench)
	}{
		{"small", of(ravka), light, small(), nil}, {"small", of(ravka), dark, small(), nil}, {"small", of(ravka), text, small(), nil},
		{"large", of(ilse), light, large(), nil}, {"large", of(ilse), dark, large(), nil}, {"whole", of(ilse), light, tall, nil},
		{"minor", of(minor.ID), light, small(), nil}, {"minor", of(minor.ID), text, small(), nil},
		{"settled", of(apptest.AthleteNamed(t, d, "Mirel").ID), light, small(), nil},
		{"new", desk.Place{New: true}, light, small(), nil}, {"new", desk.Place{New: true}, dark, small(), nil},
		{"long", of(long.ID), light, tall, nil},
		{"trouble", of(ravka), light, tall, func(b *bench) {
			b.enter("profile.height", "17")
			b.enter("profile.mass", "sixty")
			b.enter("profile.born", "spring")
			b.enter("profile.mouthful", "380")
		}},
		{"ten", of(ravka), light, small(), func(b *bench) {
			b.click("profile.mouthful.ten")
			apptest.Type(b.t, b.w, "profile.ten.before", "800")
			apptest.Type(b.t, b.w, "profile.ten.after", "420")
		}},
		{"erase", of(ravka), light, small(), func(b *bench) {
			b.click("profile.erase")
			b.click("profile.erase.first.yes")
		}},
		{"refused", of(apptest.AthleteNamed(t, d, "Dorian").ID), light, tall, func(b *bench) { b.enter("profile.usual", "1.4") }},
	} {
		golden.Use(t, p.mode)
		v, err := New(d, p.place)
		if err != nil {
			t.Fatal(err)
		}
		w := golden.Open(t, v.Body(), p.size)
		if p.do != nil {
			p.do(&bench{t: t, desk: d, v: v, w: w})
			golden.Settle(w.Canvas())
		}
		album().Screen(t, "profile-"+p.name+"-"+p.mode.String(), w)
		v.Leave()
	}
}

// corrected makes some corrections, so that there are some to be read.
func corrected(t *testing.T, d *desk.Desk, id record.ID) {
	t.Helper()
	for i, mass := range []float64{51, 51.8, 52.1, 51.5} {
		a, err := d.Store.LoadAthlete(context.Background(), id)
		if err != nil {
			t.Fatal(err)
		}
		a.UsualMass = record.Num(mass, quantity.Kilogram)
		a.Position = []string{"10 km", "half marathon", "ultra", "marathon"}[i]
		if _, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{Why: map[bool]string{true: "weighed again on the practice's scale"}[i == 2]}); err != nil {
			t.Fatal(err)
		}
	}
}
