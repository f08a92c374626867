package sweat

import (
	"pgregory.net/rapid"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// maybe draws a pointer that is nil one time in eight.
func maybe[T ~float64](t *rapid.T, name string, low, high float64) *T {
	if rapid.IntRange(0, 7).Draw(t, name+" in") == 0 {
		return nil
	}
	return new(T(rapid.Float64Range(low, high).Draw(t, name)))
}

// anySheet draws a sheet, filled as far as it may be, sensible or a little odd.
func anySheet(t *rapid.T) Input {
	in := Input{
		Time:   Time{Elapsed: maybe[quantity.Minutes](t, "minutes", 14, 300), Played: maybe[quantity.Minutes](t, "played", 0, 300)},
		Body:   anyBody(t),
		Intake: Intake{NothingDrunk: rapid.Bool().Draw(t, "nothing drunk")},
		Output: Output{Urine: maybe[quantity.Grams](t, "urine", 0, 900), Stool: maybe[quantity.Grams](t, "stool", 0, 400)},
		Effort: Effort{
			Oxygen: maybe[float64](t, "oxygen", 0.3, 5), RER: maybe[float64](t, "rer", 0.66, 1.2),
			Energy: maybe[quantity.Kilocalories](t, "energy", 0, 4000), Rating: maybe[float64](t, "rating", 0, 10),
			Sport:     maybe[float64](t, "met of the sport", 1, 14),
			RelativeU: rapid.Float64Range(0, 0.5).Draw(t, "relative u"),
		},
		Air: Air{Temperature: maybe[quantity.Celsius](t, "air", -5, 45), Vapour: maybe[quantity.Kilopascals](t, "vapour", 0.1, 5)},
		Options: Options{
			Uncorrected: rapid.IntRange(0, 3).Draw(t, "uncorrected") == 0,
			Sex:         rapid.SampledFrom([]Sex{"", Female, Male}).Draw(t, "sex"),
		},
		Markers: Markers{Gravity: maybe[float64](t, "gravity", 1.0, 1.04), Morning: maybe[quantity.Kilograms](t, "morning", 40, 110)},
	}
	for range rapid.IntRange(0, 4).Draw(t, "mornings") {
		in.Markers.Baseline = append(in.Markers.Baseline, quantity.Kilograms(rapid.Float64Range(40, 110).Draw(t, "baseline")))
	}
	for range rapid.IntRange(0, 3).Draw(t, "bottles") {
		in.Intake.Bottles = append(in.Intake.Bottles, anyBottle(t))
	}
	for range rapid.IntRange(0, 3).Draw(t, "foods") {
		in.Intake.Foods = append(in.Intake.Foods, Food{Mass: maybe[quantity.Grams](t, "food", 0, 300), Water: maybe[float64](t, "food water", 0, 1)})
	}
	for range rapid.IntRange(0, 4).Draw(t, "patches") {
		in.Patches = append(in.Patches, anyPatch(t))
	}
	return in
}

func anyBody(t *rapid.T) Body {
	dress := rapid.SampledFrom([]Dress{"", Minimal, KitOn})
	b := Body{
		DressBefore: dress.Draw(t, "dress before"), DressAfter: dress.Draw(t, "dress after"),
		Step: maybe[quantity.Kilograms](t, "step", 0.005, 0.2), OtherScale: rapid.Bool().Draw(t, "other scale"),
		KitDry: maybe[quantity.Kilograms](t, "kit dry", 0.2, 2), KitWet: maybe[quantity.Kilograms](t, "kit wet", 0.2, 3),
	}
	mass := rapid.Float64Range(35, 120).Draw(t, "mass")
	for range rapid.SampledFrom([]int{1, 1, 1, 2, 2, 3, 0}).Draw(t, "weighings before") {
		b.Before = append(b.Before, quantity.Kilograms(mass+rapid.Float64Range(-0.05, 0.05).Draw(t, "scatter")))
	}
	mass -= rapid.Float64Range(-0.6, 3).Draw(t, "lighter by")
	for range rapid.SampledFrom([]int{1, 1, 1, 2, 2, 3, 0}).Draw(t, "weighings after") {
		b.After = append(b.After, quantity.Kilograms(mass+rapid.Float64Range(-0.05, 0.05).Draw(t, "scatter")))
	}
	return b
}

func anyBottle(t *rapid.T) Bottle {
	b := Bottle{
		Use:     rapid.SampledFrom([]Use{"", Drunk, PouredOver, Shared}).Draw(t, "use"),
		Density: maybe[float64](t, "density", 0.98, 1.1),
		Before:  maybe[quantity.Grams](t, "bottle before", 380, 900), After: maybe[quantity.Grams](t, "bottle after", 50, 400),
		Poured: maybe[quantity.Grams](t, "poured", 0, 100), Volume: maybe[quantity.Millilitres](t, "volume", 0, 700),
		ShareLow: maybe[quantity.Percent](t, "share low", 0, 60), ShareHigh: maybe[quantity.Percent](t, "share high", 40, 100),
	}
	for range rapid.IntRange(0, 2).Draw(t, "refills") {
		b.Refills = append(b.Refills, quantity.Grams(rapid.Float64Range(0, 500).Draw(t, "refill")))
	}
	return b
}

func anyPatch(t *rapid.T) Patch {
	sites := []evidence.Site{evidence.ForearmDorsal, evidence.ForearmVentral, evidence.UpperArm, evidence.Chest, evidence.UpperBack,
		evidence.Forehead, evidence.Thigh, evidence.Calf, evidence.FiveSiteMean, "elsewhere"}
	methods := []evidence.Method{"", evidence.DirectElectrode, evidence.IndirectElectrode, evidence.FlamePhotometry, evidence.Conductivity, evidence.IonChromatography}
	return Patch{
		Site: rapid.SampledFrom(sites).Draw(t, "site"), Method: rapid.SampledFrom(methods).Draw(t, "method"),
		Condition: rapid.SampledFrom([]Condition{"", Good, Good, Detached, Saturated}).Draw(t, "condition"),
		On:        maybe[quantity.Minutes](t, "on", 0, 60), Off: maybe[quantity.Minutes](t, "off", 30, 200),
		Sodium: maybe[quantity.MillimolesPerLitre](t, "sodium", 2, 145), Potassium: maybe[quantity.MillimolesPerLitre](t, "potassium", 1, 12),
		U: maybe[quantity.MillimolesPerLitre](t, "laboratory u", 0, 10),
	}
}

// steadySheet draws a whole sheet without anything missing, refused or shared.
func steadySheet(t *rapid.T) Input {
	in := wholeSheet()
	in.Time.Elapsed = new(quantity.Minutes(rapid.Float64Range(45, 240).Draw(t, "minutes")))
	mass := rapid.Float64Range(45, 110).Draw(t, "mass")
	in.Body.Before = []quantity.Kilograms{quantity.Kilograms(mass)}
	in.Body.After = []quantity.Kilograms{quantity.Kilograms(mass - rapid.Float64Range(0.8, 2.5).Draw(t, "lighter by"))}
	in.Output.Urine = new(quantity.Grams(rapid.Float64Range(0, 300).Draw(t, "urine")))
	in.Intake.Bottles = nil
	for range rapid.IntRange(1, 3).Draw(t, "bottles") {
		after := rapid.Float64Range(100, 400).Draw(t, "bottle after")
		drunk := rapid.Float64Range(50, 400).Draw(t, "drunk")
		in.Intake.Bottles = append(in.Intake.Bottles, Bottle{Before: new(quantity.Grams(after + drunk)), After: new(quantity.Grams(after))})
	}
	in.Patches = []Patch{goodPatch(evidence.ForearmDorsal, rapid.Float64Range(15, 90).Draw(t, "sodium"))}
	in.Options.Kept = []Kept{{evidence.MassChange, 0}, {evidence.SweatRate, 0}, {evidence.DrinkingRate, 0}}
	return in
}
