package evidence

import (
	"fmt"
	"math"
	"slices"
	"sync"

	"ebbwell/internal/quantity"
)

// Field names a value that a person enters; problems and limits speak of it.
type Field string

// The fields that have limits.
const (
	BodyMass       Field = "body mass"
	MassSpread     Field = "weighings apart"
	MassChange     Field = "mass change"
	Duration       Field = "duration"
	DrinkingRate   Field = "drinking rate"
	UrineMass      Field = "urine"
	StoolMass      Field = "stool"
	SweatRate      Field = "sweat rate"
	PatchSodium    Field = "patch sodium"
	USG            Field = "urine specific gravity"
	Osmolality     Field = "urine osmolality"
	UrineColour    Field = "urine colour"
	AirTemperature Field = "air temperature"
	Humidity       Field = "humidity"
	Wind           Field = "wind"
	Altitude       Field = "altitude"
	Scale0To10     Field = "rating"
	Height         Field = "height"
	BottleMass     Field = "bottle mass"
	FoodMass       Field = "food mass"
	Portions       Field = "portions"
	MetValue       Field = "MET"
	Power          Field = "power"
	RunningSpeed   Field = "running speed"
	ScaleStep      Field = "scale step"
	PlayedMinutes  Field = "minutes played"
	KitMass        Field = "kit mass"
	MassBefore     Field = "body mass before"
	MassAfter      Field = "body mass after"
	MorningMass    Field = "morning mass"
	Density        Field = "density"
	PouredVolume   Field = "volume taken"
	PouredAway     Field = "poured away"
	RefillMass     Field = "refill"
	ShareDrunk     Field = "share drunk"
	PatchOn        Field = "patch on"
	PatchOff       Field = "patch off"
	PatchPotassium Field = "patch potassium"
	LaboratoryU    Field = "laboratory uncertainty"
	Oxygen         Field = "oxygen uptake"
	ExchangeRatio  Field = "respiratory exchange ratio"
	EnergyUsed     Field = "energy used"
	VapourPressure Field = "vapour pressure"
	EffortRating   Field = "effort"
	Thirst         Field = "thirst"
	Stomach        Field = "stomach"
	AimDeficit     Field = "deficit aim"
	MouthfulVolume Field = "mouthful"
)

// Limit says when a typed value is questioned and when it is refused.
type Limit struct {
	Field  Field
	Unit   quantity.Unit
	Warn   quantity.Range
	Refuse quantity.Range
	Sure   Sureness
}

// limitRow is a row of a table of limits.
type limitRow struct {
	field        Field
	unit         quantity.Unit
	warn, refuse span
	sure         Sureness
}

// span is a range in such a row.
type span struct{ Low, High float64 }

// limits is the table of [Limits], made at the first look into it: a value is
// checked at every key stroke.
var limits = sync.OnceValue(makeLimits) //nolint:gochecknoglobals // a table that never changes

// Limits lists the input limits. They are mostly judgement; a refused value
// can be kept with a written reason where it is physically possible. The list is the
// same at every call and is only read.
func Limits() []Limit { return limits() }

// makeLimits makes the table.
func makeLimits() []Limit {
	rows := [...]limitRow{
		{BodyMass, quantity.Kilogram, span{40, 130}, span{20, 250}, Memory},
		{MassSpread, quantity.Kilogram, span{0, 0.1}, span{0, 0.5}, Memory},
		{MassChange, quantity.PerCent, span{-3, 0}, span{-8, 3}, Memory},
		{Duration, quantity.Minute, span{45, 240}, span{15, 1440}, Memory},
		{DrinkingRate, quantity.LitrePerHour, span{0, 1}, span{0, 3}, Memory},
		{UrineMass, quantity.Gram, span{0, 600}, span{0, 1500}, Memory},
		{StoolMass, quantity.Gram, span{0, 400}, span{0, 1500}, Proposal},
		{SweatRate, quantity.LitrePerHour, span{0.3, 2.5}, span{0.05, 6}, Memory},
		{PatchSodium, quantity.MillimolePerLitre, span{15, 95}, span{3, 140}, Memory},
		{USG, quantity.None, span{1.002, 1.030}, span{1.000, 1.040}, Memory},
		{Osmolality, quantity.MilliosmolePerKilogram, span{100, 1200}, span{20, 1500}, Proposal},
		{UrineColour, quantity.None, span{1, 8}, span{1, 8}, Read},
		{AirTemperature, quantity.DegreeCelsius, span{0, 42}, span{-20, 55}, Memory},
		{Humidity, quantity.PerCent, span{10, 98}, span{0, 100}, Memory},
		{Wind, quantity.MetrePerSecond, span{0, 8}, span{0, 25}, Memory},
		{Altitude, quantity.Metre, span{0, 3000}, span{-430, 6000}, Memory},
		{Scale0To10, quantity.None, span{0, 10}, span{0, 10}, Memory},
		{Height, quantity.Metre, span{1.40, 2.10}, span{1.0, 2.4}, Proposal},
		{BottleMass, quantity.Gram, span{20, 3000}, span{0, 12000}, Proposal},
		{FoodMass, quantity.Gram, span{0, 500}, span{0, 3000}, Proposal},
		{Portions, quantity.Portion, span{0, 10}, span{0, 60}, Proposal},
		{MetValue, quantity.Met, span{2, 16}, span{1, 25}, Proposal},
		{Power, quantity.Watt, span{30, 400}, span{0, 700}, Proposal},
		{RunningSpeed, quantity.KilometrePerHour, span{5, 20}, span{1, 30}, Proposal},
		{ScaleStep, quantity.Kilogram, span{0.005, 0.2}, span{0.001, 0.5}, Proposal},
		{PlayedMinutes, quantity.Minute, span{0, 240}, span{0, 1440}, Proposal},
		{KitMass, quantity.Kilogram, span{0, 5}, span{0, 20}, Proposal},
		{MassBefore, quantity.Kilogram, span{40, 130}, span{20, 250}, Memory},
		{MassAfter, quantity.Kilogram, span{40, 130}, span{20, 250}, Memory},
		{MorningMass, quantity.Kilogram, span{40, 130}, span{20, 250}, Memory},
		{Density, quantity.GramPerMillilitre, span{0.98, 1.10}, span{0.7, 1.5}, Proposal},
		{PouredVolume, quantity.Millilitre, span{0, 2000}, span{0, 12000}, Proposal},
		{PouredAway, quantity.Gram, span{0, 2000}, span{0, 12000}, Proposal},
		{RefillMass, quantity.Gram, span{0, 3000}, span{0, 12000}, Proposal},
		{ShareDrunk, quantity.PerCent, span{0, 100}, span{0, 100}, Proposal},
		{PatchOn, quantity.Minute, span{0, 240}, span{-60, 1440}, Proposal},
		{PatchOff, quantity.Minute, span{0, 300}, span{0, 1500}, Proposal},
		{PatchPotassium, quantity.MillimolePerLitre, span{2, 10}, span{0.5, 30}, Proposal},
		{LaboratoryU, quantity.MillimolePerLitre, span{0, 10}, span{0, 40}, Proposal},
		{Oxygen, quantity.LitrePerMinute, span{0.5, 5}, span{0.1, 8}, Proposal},
		{ExchangeRatio, quantity.None, span{0.7, 1.1}, span{0.65, 1.3}, Proposal},
		{EnergyUsed, quantity.Kilocalorie, span{50, 5000}, span{0, 20000}, Proposal},
		{VapourPressure, quantity.Kilopascal, span{0.2, 4.5}, span{0, 7.5}, Proposal},
		{EffortRating, quantity.None, span{0, 10}, span{0, 10}, Memory},
		{Thirst, quantity.None, span{0, 10}, span{0, 10}, Memory},
		{Stomach, quantity.None, span{0, 10}, span{0, 10}, Memory},
		{AimDeficit, quantity.PerCent, span{0.5, 4}, span{0, 6}, Proposal},
		{MouthfulVolume, quantity.Millilitre, span{10, 60}, span{5, 150}, Proposal},
	}
	all := slices.Concat(climateLimits(), labelLimits(), ruleLimits(), rows[:])
	list := make([]Limit, len(all))
	for i, r := range all {
		list[i] = Limit{r.field, r.unit, quantity.Range(r.warn), quantity.Range(r.refuse), r.sure}
	}
	return list
}

// LimitOf returns the limit of a field; ok is false when it has none.
func LimitOf(f Field) (limit Limit, ok bool) {
	for _, l := range Limits() {
		if l.Field == f {
			return l, true
		}
	}
	return Limit{}, false
}

// limitEntries lists the limits for the settings screen.
func limitEntries() []Entry {
	own := Citation{Code: "judgement"}
	var list []Entry
	for _, l := range Limits() {
		for _, end := range []struct {
			id string
			x  float64
		}{
			{"warn.low", l.Warn.Low}, {"warn.high", l.Warn.High},
			{"refuse.low", l.Refuse.Low}, {"refuse.high", l.Refuse.High},
		} {
			list = append(list, Entry{ID: "limit." + string(l.Field) + "." + end.id, Value: end.x, Unit: l.Unit, Source: own, Sure: l.Sure})
		}
	}
	return list
}

// Severity of a [Problem].
type Severity int

// How much a problem matters.
const (
	// Warns: the value is used, with a question beside it.
	Warns Severity = iota
	// Refuses: the value is not used until it is corrected or kept with a
	// written reason.
	Refuses
)

// Problem codes; the catalogue of texts has the sentence under "problem."+code.
const (
	CodeOutside   = "outside"    // beyond a limit
	CodeNotFinite = "not-finite" // NaN or infinite
	CodeMissing   = "missing"    // needed and absent
	CodeNegative  = "negative"   // below zero where that cannot be
	CodeNotWhole  = "not-whole"  // a step of a chart, in between two
	CodeOrder     = "order"      // two values in the wrong order
	CodeBadChoice = "bad-choice" // not one of the known words
)

// Problem is what is wrong, or odd, about one entered value. It is an error
// when its severity is [Refuses].
type Problem struct {
	Field Field
	// Item counts from 1 where there are several (bottle 3); 0 otherwise.
	Item     int
	Code     string
	Severity Severity
	Value    float64
	// Limit that was passed, in Unit.
	Limit quantity.Range
	Unit  quantity.Unit
}

// Error names the field, the value and the limit.
func (p Problem) Error() string {
	name := string(p.Field)
	if p.Item > 0 {
		name = fmt.Sprintf("%s %d", p.Field, p.Item)
	}
	if p.Code == CodeOutside {
		return fmt.Sprintf("%s: %g %s is outside %g to %g", name, p.Value, p.Unit, p.Limit.Low, p.Limit.High)
	}
	return fmt.Sprintf("%s: %s (%g)", name, p.Code, p.Value)
}

// Check holds a value, in the unit of the field's limit, against that limit.
// It returns nil when there is nothing to say.
func Check(f Field, item int, x float64) *Problem {
	return CheckIn(Limits(), f, item, x)
}

// CheckIn is [Check] with the list of [Limits] in hand, for whoever checks a
// whole sheet at once.
func CheckIn(limits []Limit, f Field, item int, x float64) *Problem {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return &Problem{Field: f, Item: item, Code: CodeNotFinite, Severity: Refuses, Value: x}
	}
	at := slices.IndexFunc(limits, func(l Limit) bool { return l.Field == f })
	if at < 0 {
		return nil
	}
	l := limits[at]
	if !l.Refuse.Contains(x) {
		return &Problem{Field: f, Item: item, Code: CodeOutside, Severity: Refuses, Value: x, Limit: l.Refuse, Unit: l.Unit}
	}
	if !l.Warn.Contains(x) {
		return &Problem{Field: f, Item: item, Code: CodeOutside, Severity: Warns, Value: x, Limit: l.Warn, Unit: l.Unit}
	}
	return nil
}
