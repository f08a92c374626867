package record

import (
	"slices"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// SheetFields describes every field of a test sheet, in the order it is entered.
func SheetFields() []SheetField {
	return slices.Concat(sessionFields(), airFields(), scaleFields(), weighingFields(), bottleFields(), refillFields(), foodFields(),
		lossFields(), urineFields(), feelingFields(), patchFields(), partwayFields(), safetyFields())
}

// once is a field that a sheet has once.
func once(of func(t *Test) any) func(any) any { return in(of) }

// in is a field of a row.
func in[R any](of func(r *R) any) func(any) any {
	return func(row any) any {
		if r, ok := row.(*R); ok {
			return of(r)
		}
		return nil
	}
}

func sessionFields() []SheetField {
	const b, a = SheetBefore, SheetAfter
	return []SheetField{
		{Path: "session.date", Part: b, Control: "testsheet.date", Label: "testsheet.date", Paper: "handout.blank.date", of: once(func(t *Test) any { return &t.Session.Date })},
		{Path: "session.start", Part: b, Control: "testsheet.start", Label: "testsheet.start", Paper: "handout.blank.start", of: once(func(t *Test) any { return &t.Session.Start })},
		{Path: "session.end", Part: a, Control: "testsheet.end", Label: "testsheet.end", Paper: "handout.blank.end", of: once(func(t *Test) any { return &t.Session.End })},
		{Path: "session.endsNextDay", Part: a, Control: "testsheet.nextday", Label: "testsheet.nextday", Paper: "handout.blank.nextday", of: once(func(t *Test) any { return &t.Session.EndsNextDay })},
		{Path: "session.place", Part: b, Control: "testsheet.place", Label: "testsheet.place", Paper: "handout.blank.place", of: once(func(t *Test) any { return &t.Session.Place })},
		{Path: "session.sport", Part: b, Control: "testsheet.sport", Label: "testsheet.sport", Paper: "handout.blank.sport", of: once(func(t *Test) any { return &t.Session.Sport })},
		{Path: "session.activity", Part: b, Control: "testsheet.activity", Label: "testsheet.activity", Paper: "handout.blank.activity", of: once(func(t *Test) any { return &t.Session.Activity })},
		{Path: "session.played", Part: a, Evidence: evidence.PlayedMinutes, Unit: quantity.Minute, Control: "testsheet.played", Label: "testsheet.played", Paper: "handout.blank.played", of: once(func(t *Test) any { return &t.Session.Played })},
		{Path: "session.effort", Part: b, Evidence: evidence.EffortRating, Control: "testsheet.effort", Label: "testsheet.effort", Paper: "handout.blank.effort", of: once(func(t *Test) any { return &t.Session.Effort })},
		{Path: "session.power", Part: b, Evidence: evidence.Power, Unit: quantity.Watt, Control: "testsheet.power", Label: "testsheet.power", Paper: "handout.blank.power", of: once(func(t *Test) any { return &t.Session.Power })},
		{Path: "session.speed", Part: b, Evidence: evidence.RunningSpeed, Unit: quantity.KilometrePerHour, Control: "testsheet.speed", Label: "testsheet.speed", Paper: "handout.blank.speed", of: once(func(t *Test) any { return &t.Session.Speed })},
		{Path: "session.met", Part: b, Evidence: evidence.MetValue, Unit: quantity.Met, Control: "testsheet.met", Label: "testsheet.met", Paper: "handout.blank.met", of: once(func(t *Test) any { return &t.Session.Met })},
		{Path: "session.energy", Part: b, Evidence: evidence.EnergyUsed, Unit: quantity.Kilocalorie, Control: "testsheet.energy", Label: "testsheet.energy", Paper: "handout.blank.energy", of: once(func(t *Test) any { return &t.Session.Energy })},
		{Path: "session.usedToHeat", Part: b, Control: "testsheet.heat", Label: "testsheet.heat", Paper: "handout.blank.heat", of: once(func(t *Test) any { return &t.Session.UsedToHeat })},
	}
}

func airFields() []SheetField {
	const b = SheetBefore
	return []SheetField{
		{Path: "air.temperature", Part: b, Evidence: evidence.AirTemperature, Unit: quantity.DegreeCelsius, Control: "testsheet.air.temperature", Label: "testsheet.air.temperature", Paper: "handout.blank.air", of: once(func(t *Test) any { return &t.Air.Temperature })},
		{Path: "air.humidity", Part: b, Evidence: evidence.Humidity, Unit: quantity.PerCent, Control: "testsheet.air.humidity", Label: "testsheet.air.humidity", Paper: "handout.blank.humidity", of: once(func(t *Test) any { return &t.Air.Humidity })},
		{Path: "air.sun", Part: b, Control: "testsheet.air.sun", Label: "testsheet.air.sun", Paper: "handout.blank.sun", of: once(func(t *Test) any { return &t.Air.Sun })},
		{Path: "air.wind", Part: b, Evidence: evidence.Wind, Unit: quantity.MetrePerSecond, Control: "testsheet.air.wind", Label: "testsheet.air.wind", Paper: "handout.blank.wind", of: once(func(t *Test) any { return &t.Air.Wind })},
		{Path: "air.altitude", Part: b, Evidence: evidence.Altitude, Unit: quantity.Metre, Control: "testsheet.air.altitude", Label: "testsheet.air.altitude", Paper: "handout.blank.altitude", of: once(func(t *Test) any { return &t.Air.Altitude })},
		{Path: "air.wbgt", Part: b, Evidence: evidence.AirTemperature, AtField: true, Unit: quantity.DegreeCelsius, Control: "testsheet.air.wbgt", Label: "testsheet.air.wbgt", Paper: "handout.blank.wbgt", of: once(func(t *Test) any { return &t.Air.Wbgt })},
		{Path: "air.clothing", Part: b, Control: "testsheet.air.clothing", Label: "testsheet.air.clothing", Paper: "handout.blank.clothing", of: once(func(t *Test) any { return &t.Air.Clothing })},
	}
}

func scaleFields() []SheetField {
	const b, a, kg = SheetBefore, SheetAfter, quantity.Kilogram
	return []SheetField{
		{Path: "scale.before", Part: b, Control: "testsheet.scale.before", Label: "testsheet.scale.before", Paper: "handout.blank.dress.before", of: once(func(t *Test) any { return &t.Scale.Before })},
		{Path: "scale.step", Part: b, Evidence: evidence.ScaleStep, Unit: kg, Control: "testsheet.scale.step", Label: "testsheet.scale.step", Paper: "handout.blank.step", of: once(func(t *Test) any { return &t.Scale.Step })},
		{Path: "scale.after", Part: a, Control: "testsheet.scale.after", Label: "testsheet.scale.after", Paper: "handout.blank.dress.after", of: once(func(t *Test) any { return &t.Scale.After })},
		{Path: "scale.other", Part: a, Control: "testsheet.scale.other", Label: "testsheet.scale.other", Paper: "handout.blank.other", of: once(func(t *Test) any { return &t.Scale.Other })},
		{Path: "scale.kitDry", Part: a, Evidence: evidence.KitMass, Item: 1, Unit: kg, Control: "testsheet.kit.dry", Label: "testsheet.kit.dry", Paper: "handout.blank.kit.dry", of: once(func(t *Test) any { return &t.Scale.KitDry })},
		{Path: "scale.kitWet", Part: a, Evidence: evidence.KitMass, Item: 2, Unit: kg, Control: "testsheet.kit.wet", Label: "testsheet.kit.wet", Paper: "handout.blank.kit.wet", of: once(func(t *Test) any { return &t.Scale.KitWet })},
	}
}

// weighingFields are entered under their moment, which the names of their controls
// hold in the place of the "@".
func weighingFields() []SheetField {
	return []SheetField{
		{Path: "weighings.*.moment", Elsewhere: "the list it is entered in tells it", of: in(func(w *Weighing) any { return &w.Moment })},
		{Path: "weighings.*.mass", Evidence: evidence.MassBefore, Unit: quantity.Kilogram, Control: "testsheet.@.mass.#", Paper: "handout.blank.mass.before", of: in(func(w *Weighing) any { return &w.Mass })},
		{Path: "weighings.*.date", Control: "testsheet.@.day.#", Paper: "handout.blank.morning", of: in(func(w *Weighing) any { return &w.Date })},
		{Path: "weighings.*.at", Elsewhere: "noted by the clock on the test day", of: in(func(w *Weighing) any { return &w.At })},
		{Path: "weighings.*.aside", Elsewhere: "set on the test day when a second weighing shows a wrong reading", of: in(func(w *Weighing) any { return &w.Aside })},
	}
}

func bottleFields() []SheetField {
	const p, g = SheetBottles, quantity.Gram
	return []SheetField{
		{Path: "bottles.*.productID", Part: p, Control: "testsheet.bottle.#.what", Label: "testsheet.bottle.what", Paper: "handout.blank.bottle.what", of: in(func(b *Bottle) any { return &b.ProductID })},
		{Path: "bottles.*.name", Part: p, Control: "testsheet.bottle.#.what", Label: "testsheet.bottle.what", Paper: "handout.blank.bottle.what", of: in(func(b *Bottle) any { return &b.Name })},
		{Path: "bottles.*.use", Part: p, Control: "testsheet.bottle.#.use", Paper: "handout.blank.bottle.use", of: in(func(b *Bottle) any { return &b.Use })},
		{Path: "bottles.*.before", Part: p, Evidence: evidence.BottleMass, Unit: g, Control: "testsheet.bottle.#.before", Label: "testsheet.bottle.before", Paper: "handout.blank.bottle.before", of: in(func(b *Bottle) any { return &b.Before })},
		{Path: "bottles.*.after", Part: p, Evidence: evidence.BottleMass, Unit: g, Control: "testsheet.bottle.#.after", Label: "testsheet.bottle.after", Paper: "handout.blank.bottle.after", of: in(func(b *Bottle) any { return &b.After })},
		{Path: "bottles.*.poured", Part: p, Evidence: evidence.PouredAway, Unit: g, Control: "testsheet.bottle.#.poured", Label: "testsheet.bottle.poured", Paper: "handout.blank.bottle.poured", of: in(func(b *Bottle) any { return &b.Poured })},
		{Path: "bottles.*.volume", Part: p, Evidence: evidence.PouredVolume, Unit: quantity.Millilitre, Control: "testsheet.bottle.#.volume", Label: "testsheet.bottle.volume", Paper: "handout.blank.bottle.cup", of: in(func(b *Bottle) any { return &b.Volume })},
		{Path: "bottles.*.shareLow", Part: p, Evidence: evidence.ShareDrunk, Unit: quantity.PerCent, Control: "testsheet.bottle.#.share.low", Label: "testsheet.bottle.share", Paper: "handout.blank.bottle.from", of: in(func(b *Bottle) any { return &b.ShareLow })},
		{Path: "bottles.*.shareHigh", Part: p, Evidence: evidence.ShareDrunk, Unit: quantity.PerCent, Control: "testsheet.bottle.#.share.high", Label: "testsheet.bottle.share.to", Paper: "handout.blank.bottle.to", of: in(func(b *Bottle) any { return &b.ShareHigh })},
	}
}

func refillFields() []SheetField {
	return []SheetField{
		{Path: "bottles.*.refills.*.added", Part: SheetBottles, Evidence: evidence.RefillMass, Unit: quantity.Gram, Control: "testsheet.bottle.#.refill.#", Label: "testsheet.bottle.refilled", Paper: "handout.blank.bottle.refill", of: in(func(r *Refill) any { return &r.Added })},
	}
}

func foodFields() []SheetField {
	const p = SheetBottles
	return []SheetField{
		{Path: "foods.*.productID", Part: p, Control: "testsheet.food.#.what", Label: "testsheet.food.what", Paper: "handout.blank.food.what", of: in(func(f *FoodEaten) any { return &f.ProductID })},
		{Path: "foods.*.name", Part: p, Control: "testsheet.food.#.what", Label: "testsheet.food.what", Paper: "handout.blank.food.what", of: in(func(f *FoodEaten) any { return &f.Name })},
		{Path: "foods.*.portions", Part: p, Evidence: evidence.Portions, Unit: quantity.Portion, Control: "testsheet.food.#.portions", Label: "testsheet.food.portions", Paper: "handout.blank.food.portions", of: in(func(f *FoodEaten) any { return &f.Portions })},
		{Path: "foods.*.mass", Part: p, Evidence: evidence.FoodMass, Unit: quantity.Gram, Control: "testsheet.food.#.mass", Label: "testsheet.food.mass", Paper: "handout.blank.food.or", of: in(func(f *FoodEaten) any { return &f.Mass })},
	}
}

func lossFields() []SheetField {
	const a, g = SheetAfter, quantity.Gram
	const old = "version 1 asked it; the practice's method decides now"
	return []SheetField{
		{Path: "loss.nothingDrunk", Part: SheetBottles, Control: "testsheet.nothing", Label: "testsheet.nothing", Paper: "handout.blank.nothing", of: once(func(t *Test) any { return &t.Loss.NothingDrunk })},
		{Path: "loss.urine", Part: a, Evidence: evidence.UrineMass, Unit: g, Control: "testsheet.urine.passed", Label: "testsheet.urine.passed", Paper: "handout.blank.urine", of: once(func(t *Test) any { return &t.Loss.Urine })},
		{Path: "loss.noUrine", Part: a, Control: "testsheet.urine.none", Label: "testsheet.urine.none", Paper: "handout.blank.none", of: once(func(t *Test) any { return &t.Loss.NoUrine })},
		{Path: "loss.stool", Part: a, Evidence: evidence.StoolMass, Unit: g, Control: "testsheet.stool.passed", Label: "testsheet.stool.passed", Paper: "handout.blank.stool", of: once(func(t *Test) any { return &t.Loss.Stool })},
		{Path: "loss.noStool", Part: a, Control: "testsheet.stool.none", Label: "testsheet.stool.none", Paper: "handout.blank.none", of: once(func(t *Test) any { return &t.Loss.NoStool })},
		{Path: "loss.guess", Part: a, Unit: quantity.Litre, Control: "testsheet.guess", Label: "testsheet.guess", Paper: "handout.blank.guess", of: once(func(t *Test) any { return &t.Loss.Guess })},
		{Path: "loss.breath", Elsewhere: old, of: once(func(t *Test) any { return &t.Loss.Breath })},
		{Path: "loss.exchange", Elsewhere: old, of: once(func(t *Test) any { return &t.Loss.Exchange })},
	}
}

func urineFields() []SheetField {
	const u = SheetUrine
	return []SheetField{
		{Path: "urine.gravity", Part: u, Evidence: evidence.USG, Control: "testsheet.urine.gravity", Label: "testsheet.urine.gravity", Paper: "handout.blank.gravity", of: once(func(t *Test) any { return &t.Urine.Gravity })},
		{Path: "urine.when", Part: u, Control: "testsheet.urine.when", Label: "testsheet.urine.when", Paper: "handout.blank.when", of: once(func(t *Test) any { return &t.Urine.When })},
		{Path: "urine.osmolality", Part: u, Evidence: evidence.Osmolality, Unit: quantity.MilliosmolePerKilogram, Control: "testsheet.urine.osmolality", Label: "testsheet.urine.osmolality", Paper: "handout.blank.osmolality", of: once(func(t *Test) any { return &t.Urine.Osmolality })},
		{Path: "urine.colour", Part: u, Evidence: evidence.UrineColour, Control: "testsheet.urine.colour", Label: "testsheet.urine.colour", Paper: "handout.blank.colour", of: once(func(t *Test) any { return &t.Urine.Colour })},
		{Path: "urine.notTaken", Part: u, Control: "testsheet.urine.nottaken", Label: "testsheet.urine.nottaken", Paper: "handout.blank.none.taken", of: once(func(t *Test) any { return &t.Urine.NotTaken })},
	}
}

func feelingFields() []SheetField {
	const a, today = SheetAfter, "a condition of the day is entered in the profile"
	return []SheetField{
		{Path: "feeling.thirst", Part: a, Evidence: evidence.Thirst, Control: "testsheet.thirst", Label: "testsheet.thirst", Paper: "handout.blank.thirst", of: once(func(t *Test) any { return &t.Feeling.Thirst })},
		{Path: "feeling.stomach", Part: a, Evidence: evidence.Stomach, Control: "testsheet.stomach", Label: "testsheet.stomach", Paper: "handout.blank.stomach", of: once(func(t *Test) any { return &t.Feeling.Stomach })},
		{Path: "feeling.ill", Elsewhere: today, of: once(func(t *Test) any { return &t.Feeling.Ill })},
		{Path: "feeling.stomachUpset", Elsewhere: today, of: once(func(t *Test) any { return &t.Feeling.StomachUpset })},
		{Path: "note", Part: a, Control: "testsheet.note", Label: "testsheet.note", Paper: "handout.blank.note", of: once(func(t *Test) any { return &t.Note })},
	}
}

func patchFields() []SheetField {
	const u, mmol = SheetUrine, quantity.MillimolePerLitre
	return []SheetField{
		{Path: "patches.*.site", Part: u, Control: "testsheet.patch.#.site", Label: "testsheet.patch.site", Paper: "handout.blank.patch.site", of: in(func(p *Patch) any { return &p.Site })},
		{Path: "patches.*.side", Part: u, Control: "testsheet.patch.#.side", Label: "testsheet.patch.side", Paper: "handout.blank.patch.side", of: in(func(p *Patch) any { return &p.Side })},
		{Path: "patches.*.on", Part: u, Control: "testsheet.patch.#.on", Label: "testsheet.patch.on", Paper: "handout.blank.patch.on", of: in(func(p *Patch) any { return &p.On })},
		{Path: "patches.*.off", Part: u, Control: "testsheet.patch.#.off", Label: "testsheet.patch.off", Paper: "handout.blank.patch.off", of: in(func(p *Patch) any { return &p.Off })},
		{Path: "patches.*.condition", Part: u, Control: "testsheet.patch.#.condition", Label: "testsheet.patch.condition", Paper: "handout.blank.patch.condition", of: in(func(p *Patch) any { return &p.Condition })},
		{Path: "patches.*.atLaboratory", Part: u, Control: "testsheet.patch.#.atLaboratory", Label: "testsheet.patch.laboratory", Paper: "handout.blank.patch.laboratory", of: in(func(p *Patch) any { return &p.AtLaboratory })},
		{Path: "patches.*.sodium", Part: u, Evidence: evidence.PatchSodium, Unit: mmol, Control: "testsheet.patch.#.sodium", Label: "testsheet.patch.sodium", Paper: "handout.blank.patch.sodium", of: in(func(p *Patch) any { return &p.Sodium })},
		{Path: "patches.*.potassium", Part: u, Evidence: evidence.PatchPotassium, Unit: mmol, Control: "testsheet.patch.#.potassium", Label: "testsheet.patch.potassium", Paper: "handout.blank.patch.potassium", of: in(func(p *Patch) any { return &p.Potassium })},
		{Path: "patches.*.method", Part: u, Control: "testsheet.patch.#.method", Label: "testsheet.patch.method", Paper: "handout.blank.patch.method", of: in(func(p *Patch) any { return &p.Method })},
	}
}

func partwayFields() []SheetField {
	const day = "entered on the test day, within the session"
	return []SheetField{
		{Path: "partway.*.at", Elsewhere: day, of: in(func(p *PartwayWeighing) any { return &p.At })},
		{Path: "partway.*.mass", Unit: quantity.Kilogram, Elsewhere: day, of: in(func(p *PartwayWeighing) any { return &p.Mass })},
		{Path: "partway.*.drunk", Unit: quantity.Millilitre, Elsewhere: day, of: in(func(p *PartwayWeighing) any { return &p.Drunk })},
		{Path: "partway.*.urine", Unit: quantity.Gram, Elsewhere: day, of: in(func(p *PartwayWeighing) any { return &p.Urine })},
	}
}

func safetyFields() []SheetField {
	const flag = "a line of the record of a red flag, added as it happens"
	return []SheetField{
		{Path: "safety.*.kind", Elsewhere: flag, of: in(func(s *SafetyNote) any { return &s.Kind })},
		{Path: "safety.*.item", Elsewhere: flag, of: in(func(s *SafetyNote) any { return &s.Item })},
		{Path: "safety.*.answer", Elsewhere: flag, of: in(func(s *SafetyNote) any { return &s.Answer })},
		{Path: "safety.*.text", Elsewhere: flag, of: in(func(s *SafetyNote) any { return &s.Text })},
		{Path: "safety.*.done", Elsewhere: flag, of: in(func(s *SafetyNote) any { return &s.Done })},
	}
}
