package consult

import (
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// Setup is what every calculation of a practice needs besides the record itself.
type Setup struct {
	Pantry *Pantry
	// Settings of the practice: band set, default aim.
	Settings record.Settings
	// Activities is the table of activities; may be empty.
	Activities climate.Activities
	// Start is where an athlete of a sport without a test is taken to stand, by
	// the practice's own tests; nil, or the zero Start, for the usual one.
	Start func(sport string) climate.Start `json:"-"`
	// Zone is where the clocks of sessions stand: that of the machine. Nil is a zone
	// whose clocks are never set.
	Zone *time.Location `json:"-"`
}

// SheetInput turns a test sheet as kept into the plain input of package sweat.
// raw holds the reasons given for values beyond their limits.
func SheetInput(t record.Test, a record.Athlete, raw []record.RawText, d Setup) sweat.Input {
	in := sweat.Input{
		Body: sweat.Body{
			Before: masses(t, record.Before), After: masses(t, record.After),
			DressBefore: sweat.Dress(t.Scale.Before), DressAfter: sweat.Dress(t.Scale.After),
			Step: as[quantity.Kilograms](t.Scale.Step), KitDry: as[quantity.Kilograms](t.Scale.KitDry),
			KitWet: as[quantity.Kilograms](t.Scale.KitWet), OtherScale: t.Scale.Other,
		},
		Intake: sweat.Intake{NothingDrunk: t.Loss.NothingDrunk},
		Output: sweat.Output{
			Urine: optionalAmount(t.Loss.NoUrine, t.Loss.Urine), Stool: optionalAmount(t.Loss.NoStool, t.Loss.Stool),
		},
		Markers: markers(t),
		Effort:  EffortInput(t, a, d),
		Air:     sweat.Air{Temperature: as[quantity.Celsius](t.Air.Temperature), Vapour: vapour(t.Air)},
		Options: sweat.Options{
			Uncorrected: d.Settings.FieldMethod,
			Bands:       BandsOf(d.Settings), Sex: sweat.Sex(a.Sex), Kept: kept(t, raw),
		},
	}
	if minutes, ok := t.Session.Elapsed(d.Zone); ok {
		elapsed := quantity.Minutes(minutes)
		in.Time.Elapsed = &elapsed
	}
	in.Time.Played = as[quantity.Minutes](t.Session.Played)
	in.Options.DeficitAim = as[quantity.Percent](d.Settings.DeficitAim)
	for _, b := range t.Bottles {
		in.Intake.Bottles = append(in.Intake.Bottles, bottle(b, d.Pantry))
	}
	for _, f := range t.Foods {
		in.Intake.Foods = append(in.Intake.Foods, food(f, d.Pantry))
	}
	for _, p := range t.Patches {
		in.Patches = append(in.Patches, patch(p, t.Session, d.Zone))
	}
	return in
}

// as turns a number as kept into a pointer to a typed value; nil when absent.
func as[T ~float64](n record.Number) *T {
	if !n.Known() {
		return nil
	}
	v := T(*n.Value)
	return &v
}

// optionalAmount is an amount of which "none" is an answer.
func optionalAmount(none bool, n record.Number) *quantity.Grams {
	if none {
		zero := quantity.Grams(0)
		return &zero
	}
	return as[quantity.Grams](n)
}

// masses lists the readings of one moment in their order.
func masses(t record.Test, m record.Moment) []quantity.Kilograms {
	var list []quantity.Kilograms
	for _, w := range t.Weighings {
		if w.Moment == m && w.Mass.Known() && !w.Aside {
			list = append(list, quantity.Kilograms(*w.Mass.Value))
		}
	}
	return list
}

// markers are the urine markers and the morning masses; the newest morning is
// today's, those before it the baseline.
func markers(t record.Test) sweat.Markers {
	m := sweat.Markers{
		Gravity: t.Urine.Gravity.Value, Osmolality: t.Urine.Osmolality.Value, Colour: t.Urine.Colour.Value,
		Thirst: t.Feeling.Thirst.Value, Stomach: t.Feeling.Stomach.Value,
	}
	for _, w := range t.Weighings {
		if w.Moment != record.Morning || !w.Mass.Known() || w.Aside {
			continue
		}
		mass := quantity.Kilograms(*w.Mass.Value)
		if w.Date == t.Session.Date {
			m.Morning = &mass
			continue
		}
		m.Baseline = append(m.Baseline, mass)
	}
	return m
}

// bottle is one bottle; what is in it gives the density.
func bottle(b record.Bottle, p *Pantry) sweat.Bottle {
	out := sweat.Bottle{
		Use: sweat.Use(b.Use), Before: as[quantity.Grams](b.Before), After: as[quantity.Grams](b.After),
		Poured: as[quantity.Grams](b.Poured), Volume: as[quantity.Millilitres](b.Volume),
		ShareLow: as[quantity.Percent](b.ShareLow), ShareHigh: as[quantity.Percent](b.ShareHigh),
	}
	if product, ok := p.Find(b.ProductID); ok && product.Density.Known {
		density := product.Density.Value
		out.Density = &density
	}
	for _, r := range b.Refills {
		if r.Added.Known() {
			out.Refills = append(out.Refills, quantity.Grams(*r.Added.Value))
		}
	}
	return out
}

// food is one food, by mass or by portions.
func food(f record.FoodEaten, p *Pantry) sweat.Food {
	var out sweat.Food
	if grams, ok := FoodGrams(f, p); ok {
		mass := quantity.Grams(grams)
		out.Mass = &mass
	}
	if product, ok := p.Find(f.ProductID); ok && product.Per100.Water.Known {
		share := product.Per100.Water.Value / 100
		out.Water = &share
	}
	return out
}

// FoodGrams is the mass of a food eaten: as weighed, else portions times the
// product's portion; ok is false while neither is known.
func FoodGrams(f record.FoodEaten, p *Pantry) (grams float64, ok bool) {
	if f.Mass.Known() {
		return *f.Mass.Value, true
	}
	product, found := p.Find(f.ProductID)
	if !f.Portions.Known() || !found || product.Portion.Grams <= 0 {
		return 0, false
	}
	return *f.Portions.Value * product.Portion.Grams, true
}

// patch is one patch; its times become minutes after the start.
func patch(p record.Patch, s record.Session, zone *time.Location) sweat.Patch {
	return sweat.Patch{
		Site: evidence.Site(p.Site), Side: p.Side, On: after(p.On, s, zone), Off: after(p.Off, s, zone),
		Sodium: as[quantity.MillimolesPerLitre](p.Sodium), Potassium: as[quantity.MillimolesPerLitre](p.Potassium),
		Method: evidence.Method(p.Method), Condition: sweat.Condition(p.Condition),
	}
}

// after is minutes from the session's start to a time of day; over midnight
// where the session is.
func after(c record.Clock, s record.Session, zone *time.Location) *quantity.Minutes {
	minutes, ok := s.Since(c, zone)
	if !ok {
		return nil
	}
	m := quantity.Minutes(minutes)
	return &m
}
