package testsheet

import (
	"context"
	"flag"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

var update = flag.Bool("update", false, "keep new golden pictures")

// The two sizes of a window that pictures are kept in.
func small1180() fyne.Size { return sized(1180, 760) }
func large1600() fyne.Size { return sized(1600, 1000) }

// gallery is an athlete with a sheet half filled in, an older closed test and a
// newer one.
type gallery struct {
	desk            *desk.Desk
	who             record.Athlete
	half, old, last record.Test
}

func newGallery(t *testing.T) gallery {
	t.Helper()
	d, _ := apptest.Desk(t)
	g := gallery{desk: d, who: consenting(t, d)}
	g.old = closedTest(t, d, g.who, "2025-10-09", 62.9)
	g.last = closedTest(t, d, g.who, "2026-05-14", 62.4)
	g.half = halfFilled(t, d, g.who)
	return g
}

// halfFilled keeps a sheet as it is just after the session: bottle 3 was read
// wrongly, the urine is missing, the patch is at the laboratory.
func halfFilled(t *testing.T, d *desk.Desk, a record.Athlete) record.Test {
	t.Helper()
	n := func(x float64, u quantity.Unit) record.Number { return record.Num(x, u) }
	id := record.NewID()
	meta := func() record.Meta { return record.Meta{ID: record.NewID()} }
	bottle := func(i int, what record.ID, before, after float64) record.Bottle {
		return record.Bottle{Meta: meta(), TestID: id, Order: i, ProductID: what, Use: record.UseDrunk, Before: n(before, quantity.Gram), After: n(after, quantity.Gram)}
	}
	test := record.Test{
		Meta: record.Meta{ID: id}, AthleteID: a.ID, State: record.TestOpen,
		Session: record.Session{Date: "2026-05-18", Place: "Millrace Park, pitch 2", Sport: "field-hockey", Activity: "field-hockey", Start: "10:00", End: "11:35", Effort: n(8, quantity.None)},
		Air:     record.Air{Temperature: n(31, quantity.DegreeCelsius), Humidity: n(46, quantity.PerCent), Wind: n(1.5, quantity.MetrePerSecond), Sun: record.SunHigh, Clothing: consult.ClothingShirt},
		Scale:   record.Scale{Step: n(0.05, quantity.Kilogram), Before: record.DressMinimal, After: record.DressMinimal},
		Urine:   record.Urine{Gravity: n(1.016, quantity.None), When: record.Before},
		Feeling: record.Feeling{Thirst: n(6, quantity.None), Stomach: n(1, quantity.None)},
		Loss:    record.Loss{Guess: n(0.8, quantity.Litre)},
		Weighings: []record.Weighing{
			{Meta: meta(), TestID: id, Moment: record.Before, Mass: n(64, quantity.Kilogram)},
			{Meta: meta(), TestID: id, Moment: record.After, Mass: n(62.4, quantity.Kilogram)},
			{Meta: meta(), TestID: id, Moment: record.Morning, Date: "2026-05-18", Mass: n(63.6, quantity.Kilogram)},
		},
		Bottles: []record.Bottle{bottle(0, consult.Water, 712, 412), bottle(1, "generic.drink-6", 688, 432), bottle(2, consult.Water, 615, 655)},
		Foods:   []record.FoodEaten{{Meta: meta(), TestID: id, ProductID: "generic.banana", Portions: n(0.5, quantity.Portion)}},
		Patches: []record.Patch{{Meta: meta(), TestID: id, Site: record.SiteForearmDorsal, Side: "left", On: "10:25", Off: "11:20", Condition: record.PatchGood, Method: record.MethodDirectElectrode, AtLaboratory: true}},
	}
	test, err := d.Store.SaveTest(context.Background(), test, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	return test
}

// album lists the screens that are kept as pictures.
func album() golden.Album {
	return golden.Album{Update: *update, Keep: []string{
		"before-light-100",
		"bottles-light-100",
		"after-light-100",
		"urine-light-100",
		"findings-light-100",
		"findings-hidden-light-100",
		"trouble-light-100",
	}}
}

// picture draws a place and holds it against the kept picture.
func (g gallery) picture(t *testing.T, name string, m golden.Mode, size fyne.Size, place desk.Place, do func(w fyne.Window, v *View)) {
	t.Helper()
	golden.Use(t, m)
	place.Screen = desk.Tests
	if place.Athlete == "" {
		place.Athlete = g.who.ID
	}
	v, err := New(g.desk, place)
	if err != nil {
		t.Fatal(err)
	}
	w := golden.Open(t, v.Body(), size)
	if do != nil {
		do(w, v)
		golden.LayOutAgain(w.Canvas())
	}
	album().Screen(t, name+"-"+m.String(), w)
	v.Leave()
}

func TestPictures(t *testing.T) {
	g := newGallery(t)
	light, dark := golden.Mode{Percent: 100}, golden.Mode{Dark: true, Percent: 100}
	focus := func(name string) func(fyne.Window, *View) {
		return func(_ fyne.Window, v *View) { v.b.GoTo(name) }
	}
	chosen := func(key string) func(fyne.Window, *View) {
		return func(_ fyne.Window, v *View) {
			for i, r := range v.ui.find.Rows() {
				if r.Key == key {
					v.ui.find.Choose(i)
				}
			}
		}
	}
	for _, m := range []golden.Mode{light, dark} {
		g.picture(t, "before", m, small1180(), desk.Place{Record: g.half.ID, Part: PartBefore}, nil)
		g.picture(t, "bottles", m, small1180(), desk.Place{Record: g.half.ID, Part: PartBottles}, focus("testsheet.bottle.3.after"))
		g.picture(t, "bottles-large", m, large1600(), desk.Place{Record: g.half.ID, Part: PartBottles}, focus("testsheet.bottle.3.after"))
		g.picture(t, "findings", m, small1180(), desk.Place{Record: g.last.ID, Part: PartFindings}, nil)
		g.picture(t, "findings-large", m, large1600(), desk.Place{Record: g.last.ID, Part: PartFindings}, chosen("sodium-lost-rate"))
	}
	g.picture(t, "after", light, small1180(), desk.Place{Record: g.half.ID, Part: PartAfter}, nil)
	g.picture(t, "after-large", dark, large1600(), desk.Place{Record: g.half.ID, Part: PartAfter}, nil)
	g.picture(t, "urine", light, small1180(), desk.Place{Record: g.half.ID, Part: PartUrine}, nil)
	g.picture(t, "new", light, small1180(), desk.Place{New: true}, nil)
	g.picture(t, "new-findings", light, small1180(), desk.Place{New: true, Part: PartFindings}, nil)
	for _, part := range []string{PartBefore, PartBottles, PartFindings} {
		g.picture(t, part, golden.Mode{Percent: 150}, small1180(), desk.Place{Record: g.half.ID, Part: part}, nil)
	}
	g.picture(t, "bottles", golden.Mode{Percent: 125}, small1180(), desk.Place{Record: g.half.ID, Part: PartBottles}, nil)
}

func TestPicturesOfTrouble(t *testing.T) {
	g := newGallery(t)
	light := golden.Mode{Percent: 100}
	g.picture(t, "trouble", light, small1180(), desk.Place{New: true}, func(w fyne.Window, v *View) {
		b := &bench{t: t, desk: g.desk, v: v, w: w}
		b.enter("testsheet.date", "some day")
		b.enter("testsheet.start", "16:00")
		b.enter("testsheet.air.temperature", "hot")
		b.enter("testsheet.before.mass.1", "154")
		v.showPart(PartAfter)
		b.enter("testsheet.end", "15:00")
		v.showPart(PartBefore)
	})
	gained := aTest(g.who, "2026-05-16", 64.3)
	if _, err := g.desk.Store.SaveTest(context.Background(), gained, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	g.picture(t, "gained", light, small1180(), desk.Place{Record: gained.ID, Part: PartFindings}, nil)
	g.picture(t, "reason", light, small1180(), desk.Place{Record: gained.ID, Part: PartAfter}, func(w fyne.Window, v *View) {
		b := &bench{t: t, desk: g.desk, v: v, w: w}
		apptest.Click(t, w, "testsheet.urine.none")
		b.enter("testsheet.urine.passed", "1700")
		apptest.Click(t, w, "testsheet.trouble.1.keep")
	})
}

func TestPicturesOfOthers(t *testing.T) {
	g := newGallery(t)
	light := golden.Mode{Percent: 100}
	long := g.who
	long.Meta, long.Consents = record.Meta{ID: record.NewID()}, nil
	long.Name = strings.Repeat("Anneliese-Wilhelmina ", 3)
	long, err := g.desk.Store.SaveAthlete(context.Background(), long, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	g.picture(t, "empty", light, small1180(), desk.Place{Athlete: long.ID}, nil)
	names := halfFilled(t, g.desk, long)
	names.Session.Activity = "a long session of many drills that nobody has put into a table, with a match at its end"
	names.Session.Place = strings.Repeat("Upper Weirside Community Ground ", 3)
	names.Bottles[1].ProductID, names.Bottles[1].Name = "", "a drink mixed at home from everything there was, with honey, salt and the juice of three lemons"
	if _, err := g.desk.Store.SaveTest(context.Background(), names, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	g.picture(t, "long", light, small1180(), desk.Place{Athlete: long.ID, Part: PartBottles}, nil)
	minor := g.who
	minor.Meta, minor.Born, minor.Consents = record.Meta{ID: record.NewID()}, "2011-03-04", nil
	if minor, err = g.desk.Store.SaveAthlete(context.Background(), minor, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	g.picture(t, "unsettled", light, small1180(), desk.Place{Athlete: minor.ID, New: true}, nil)
	minor.Born = ""
	if _, err = g.desk.Store.SaveAthlete(context.Background(), minor, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	g.picture(t, "unsettled-age", light, small1180(), desk.Place{Athlete: minor.ID, New: true}, nil)
	hidden := g.who
	hidden.MassHidden, hidden.MassHiddenSettled = true, true
	if hidden, err = g.desk.Store.SaveAthlete(context.Background(), hidden, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	g.picture(t, "findings-hidden", light, small1180(), desk.Place{Record: g.last.ID, Part: PartFindings}, nil)
	g.picture(t, "bottles-hidden", light, small1180(), desk.Place{Record: g.half.ID, Part: PartBottles}, nil)
	ownDrink(t, g.desk, record.Product{Meta: record.Meta{ID: record.NewID()}, Replaces: "generic.drink-6"}, 90, 1.08)
	hidden.Born, hidden.MassHidden = "", false
	if _, err = g.desk.Store.SaveAthlete(context.Background(), hidden, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	g.picture(t, "closed-differs", light, small1180(), desk.Place{Record: g.last.ID, Part: PartFindings}, nil)
}
