package consult

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// Entry is one number of a test sheet: its path in the record, and the field
// and item that problems name it by.
type Entry struct {
	Path   string
	Field  evidence.Field
	Item   int
	Number record.Number
}

// Entries lists every number of a test sheet in the order it is entered.
func Entries(t record.Test) []Entry {
	list := []Entry{
		{"session.played", evidence.PlayedMinutes, 0, t.Session.Played},
		{"session.effort", evidence.EffortRating, 0, t.Session.Effort},
		{"session.met", evidence.MetValue, 0, t.Session.Met},
		{"session.power", evidence.Power, 0, t.Session.Power},
		{"session.speed", evidence.RunningSpeed, 0, t.Session.Speed},
		{"session.energy", evidence.EnergyUsed, 0, t.Session.Energy},
		{"air.temperature", evidence.AirTemperature, 0, t.Air.Temperature},
		{"air.humidity", evidence.Humidity, 0, t.Air.Humidity},
		{"air.wind", evidence.Wind, 0, t.Air.Wind},
		{"air.altitude", evidence.Altitude, 0, t.Air.Altitude},
		{"scale.step", evidence.ScaleStep, 0, t.Scale.Step},
		{"scale.kitDry", evidence.KitMass, 1, t.Scale.KitDry},
		{"scale.kitWet", evidence.KitMass, 2, t.Scale.KitWet},
	}
	list = append(list, weighingEntries(t)...)
	for i, b := range t.Bottles {
		list = append(list, bottleEntries(b, i+1)...)
	}
	for i, f := range t.Foods {
		at := "foods." + string(f.ID)
		list = append(list, Entry{at + ".portions", evidence.Portions, i + 1, f.Portions}, Entry{at + ".mass", evidence.FoodMass, i + 1, f.Mass})
	}
	list = append(list,
		Entry{"loss.urine", evidence.UrineMass, 0, t.Loss.Urine}, Entry{"loss.stool", evidence.StoolMass, 0, t.Loss.Stool},
		Entry{"urine.gravity", evidence.USG, 0, t.Urine.Gravity}, Entry{"urine.osmolality", evidence.Osmolality, 0, t.Urine.Osmolality},
		Entry{"urine.colour", evidence.UrineColour, 0, t.Urine.Colour},
		Entry{"feeling.thirst", evidence.Thirst, 0, t.Feeling.Thirst}, Entry{"feeling.stomach", evidence.Stomach, 0, t.Feeling.Stomach},
	)
	for i, p := range t.Patches {
		at := "patches." + string(p.ID)
		list = append(list, Entry{at + ".sodium", evidence.PatchSodium, i + 1, p.Sodium}, Entry{at + ".potassium", evidence.PatchPotassium, i + 1, p.Potassium})
	}
	return list
}

// weighingEntries counts the weighings of each moment as the calculation does:
// only those that have a value; today's morning mass is 0, the baseline from 1.
func weighingEntries(t record.Test) []Entry {
	fields := map[record.Moment]evidence.Field{
		record.Before: evidence.MassBefore, record.After: evidence.MassAfter, record.Morning: evidence.MorningMass,
	}
	count := map[record.Moment]int{}
	var list []Entry
	for _, w := range t.Weighings {
		today := w.Moment == record.Morning && w.Date == t.Session.Date
		if w.Mass.Known() && !today && !w.Aside {
			count[w.Moment]++
		}
		item := count[w.Moment]
		if today {
			item = 0
		}
		list = append(list, Entry{"weighings." + string(w.ID) + ".mass", fields[w.Moment], item, w.Mass})
	}
	return list
}

// bottleEntries are the numbers of one bottle.
func bottleEntries(b record.Bottle, item int) []Entry {
	at := "bottles." + string(b.ID)
	list := []Entry{
		{at + ".before", evidence.BottleMass, item, b.Before},
		{at + ".after", evidence.BottleMass, item, b.After},
		{at + ".poured", evidence.PouredAway, item, b.Poured},
		{at + ".volume", evidence.PouredVolume, item, b.Volume},
		{at + ".shareLow", evidence.ShareDrunk, item, b.ShareLow},
		{at + ".shareHigh", evidence.ShareDrunk, item, b.ShareHigh},
	}
	for _, r := range b.Refills {
		list = append(list, Entry{at + ".refills." + string(r.ID) + ".added", evidence.RefillMass, item, r.Added})
	}
	return list
}

// PathOf returns the path of the number a problem is about; empty when it is
// about none in particular (two weighings apart, a rate). Of several numbers
// with one name the one with the problem's value is meant, the last of them
// where two stand in the wrong order.
func PathOf(t record.Test, p evidence.Problem) string {
	path := ""
	for _, e := range Entries(t) {
		if e.Field != p.Field || e.Item != p.Item || !e.Number.Known() {
			continue
		}
		if p.Code == evidence.CodeOrder || *e.Number.Value == p.Value {
			path = e.Path
		}
	}
	return path
}

// kept lists the refused values that a person kept with a written reason.
func kept(t record.Test, raw []record.RawText) []sweat.Kept {
	reason := map[string]bool{}
	for _, r := range raw {
		if r.Reason && r.Text != "" {
			reason[r.Field] = true
		}
	}
	var list []sweat.Kept
	for _, e := range Entries(t) {
		if reason[e.Path] {
			list = append(list, sweat.Kept{Field: e.Field, Item: e.Item})
		}
	}
	for path, k := range figureReasons() {
		if reason[path] {
			list = append(list, k)
		}
	}
	return list
}

// figureReasons are the paths under which a reason is kept for a refusal that
// is about no single number.
func figureReasons() map[string]sweat.Kept {
	return map[string]sweat.Kept{
		"session.minutes":    {Field: evidence.Duration},
		"weighings.change":   {Field: evidence.MassChange},
		"weighings.before":   {Field: evidence.MassSpread, Item: 1},
		"weighings.after":    {Field: evidence.MassSpread, Item: 2},
		"figures.sweatRate":  {Field: evidence.SweatRate},
		"figures.drinkingAt": {Field: evidence.DrinkingRate},
	}
}

// ReasonPath returns where a reason for keeping a refused value is written.
func ReasonPath(t record.Test, p evidence.Problem) string {
	if path := PathOf(t, p); path != "" {
		return path
	}
	for path, k := range figureReasons() {
		if k.Field == p.Field && k.Item == p.Item {
			return path
		}
	}
	return ""
}
