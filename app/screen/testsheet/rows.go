package testsheet

import (
	"slices"

	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// The functions below find a row of a sheet by its place. One behind the last
// row is the empty line a person types into; with grow it becomes a row.

// bottleAt returns the i-th bottle; a new one holds water.
func bottleAt(t *record.Test, i int, grow bool) *record.Bottle {
	if i == len(t.Bottles) && grow {
		t.Loss.NothingDrunk = false
		t.Bottles = append(t.Bottles, record.Bottle{
			Meta: record.Meta{ID: record.NewID()}, TestID: t.ID, Order: i, ProductID: consult.Water, Use: record.UseDrunk,
		})
	}
	if i >= len(t.Bottles) {
		return nil
	}
	return &t.Bottles[i]
}

// refillAt returns the j-th refill of a bottle.
func refillAt(t *record.Test, i, j int) *record.Refill {
	b := bottleAt(t, i, false)
	if b == nil || j >= len(b.Refills) {
		return nil
	}
	return &b.Refills[j]
}

// addRefill adds an empty refill to a bottle.
func addRefill(t *record.Test, i int) {
	if b := bottleAt(t, i, true); b != nil {
		b.Refills = append(b.Refills, record.Refill{Meta: record.Meta{ID: record.NewID()}, BottleID: b.ID, Order: len(b.Refills)})
	}
}

// removeBottle takes a bottle out.
func removeBottle(t *record.Test, i int) {
	t.Bottles = slices.Delete(t.Bottles, i, i+1)
	for i := range t.Bottles {
		t.Bottles[i].Order = i
	}
}

// foodAt returns the i-th food.
func foodAt(t *record.Test, i int, grow bool) *record.FoodEaten {
	if i == len(t.Foods) && grow {
		t.Foods = append(t.Foods, record.FoodEaten{Meta: record.Meta{ID: record.NewID()}, TestID: t.ID, Order: i})
	}
	if i >= len(t.Foods) {
		return nil
	}
	return &t.Foods[i]
}

// removeFood takes a food out.
func removeFood(t *record.Test, i int) {
	t.Foods = slices.Delete(t.Foods, i, i+1)
	for i := range t.Foods {
		t.Foods[i].Order = i
	}
}

// patchAt returns the i-th patch.
func patchAt(t *record.Test, i int) *record.Patch {
	if i >= len(t.Patches) {
		return nil
	}
	return &t.Patches[i]
}

// addPatch adds a patch, made like the last one but for its site: patches of
// one day usually come from one laboratory.
func addPatch(t *record.Test) {
	p := record.Patch{
		Meta: record.Meta{ID: record.NewID()}, TestID: t.ID, Order: len(t.Patches), Site: record.SiteForearmDorsal,
		Condition: record.PatchGood, AtLaboratory: true,
	}
	if n := len(t.Patches); n > 0 {
		last := t.Patches[n-1]
		p.Method, p.On, p.Off, p.AtLaboratory = last.Method, last.On, last.Off, last.AtLaboratory
	}
	t.Patches = append(t.Patches, p)
}

// removePatch takes a patch out.
func removePatch(t *record.Test, i int) {
	t.Patches = slices.Delete(t.Patches, i, i+1)
	for i := range t.Patches {
		t.Patches[i].Order = i
	}
}

// weighings lists the places in the record of the weighings of one moment.
func weighings(t record.Test, m record.Moment) []int {
	var list []int
	for i, w := range t.Weighings {
		if w.Moment == m {
			list = append(list, i)
		}
	}
	return list
}

// filledWeighings counts the readings of a moment up to the last that holds
// something.
func filledWeighings(s sheet, m record.Moment) int {
	filled := 0
	for n, i := range weighings(s.Record, m) {
		w := s.Record.Weighings[i]
		if w.Mass.Known() || s.Raw["weighings."+string(w.ID)+".mass"] != "" {
			filled = n + 1
		}
	}
	return filled
}

// weighingAt returns the i-th weighing of a moment; growing adds one, of the
// day before the earliest where it is a morning's.
func weighingAt(t *record.Test, m record.Moment, i int, grow bool) *record.Weighing {
	list := weighings(*t, m)
	if i == len(list) && grow {
		w := record.Weighing{Meta: record.Meta{ID: record.NewID()}, TestID: t.ID, Moment: m, Order: i}
		if m == record.Morning {
			w.Date = nextMorning(*t)
		}
		t.Weighings = append(t.Weighings, w)
		return &t.Weighings[len(t.Weighings)-1]
	}
	if i >= len(list) {
		return nil
	}
	return &t.Weighings[list[i]]
}

// nextMorning is the day a further morning mass is most likely of: that of the
// test, then the days before it.
func nextMorning(t record.Test) record.Date {
	day := t.Session.Date
	for hasMorning(t, day) {
		day = day.AddDays(-1)
	}
	return day
}
