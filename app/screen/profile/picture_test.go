package profile

import (
	"context"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// album lists the screens that are kept as pictures.
func album() golden.Album {
	return golden.Album{Update: *update, Keep: []string{
		"profile-small-light-100",
		"profile-minor-light-100",
	}}
}

func TestProfilePictures(t *testing.T) {
	d, _ := apptest.Demo(t)
	light, dark, text := golden.Light(), golden.Dark(), golden.LargeText()
	long := apptest.Save(t, d, apptest.LongNamed())
	minor := apptest.Save(t, d, apptest.Newcomer("Tamsin Lowmere", "2010-06-01", "netball"))
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
		{"small", of(ravka), light, golden.SmallRoom(), nil}, {"small", of(ravka), dark, golden.SmallRoom(), nil}, {"small", of(ravka), text, golden.SmallRoom(), nil},
		{"large", of(ilse), light, golden.LargeRoom(), nil}, {"large", of(ilse), dark, golden.LargeRoom(), nil}, {"whole", of(ilse), light, tall, nil},
		{"minor", of(minor.ID), light, golden.SmallRoom(), nil}, {"minor", of(minor.ID), text, golden.SmallRoom(), nil},
		{"settled", of(apptest.AthleteNamed(t, d, "Mirel").ID), light, golden.SmallRoom(), nil},
		{"new", desk.Place{New: true}, light, golden.SmallRoom(), nil}, {"new", desk.Place{New: true}, dark, golden.SmallRoom(), nil},
		{"long", of(long.ID), light, tall, nil},
		{"trouble", of(ravka), light, tall, func(b *bench) {
			b.enter("profile.height", "17")
			b.enter("profile.mass", "sixty")
			b.enter("profile.born", "spring")
			b.enter("profile.mouthful", "380")
		}},
		{"ten", of(ravka), light, golden.SmallRoom(), func(b *bench) {
			b.click("profile.mouthful.ten")
			apptest.Type(b.t, b.w, "profile.ten.before", "800")
			apptest.Type(b.t, b.w, "profile.ten.after", "420")
		}},
		{"erase", of(ravka), light, golden.SmallRoom(), func(b *bench) {
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
			golden.LayOutAgain(w.Canvas())
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
