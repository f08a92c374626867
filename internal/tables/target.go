package tables

import (
	"slices"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Target is what a column means.
type Target string

// The meanings of columns.
const (
	// Unused: the column is left out.
	Unused Target = ""
	// Worked: the program calculates it itself, so the column is left out.
	Worked Target = "worked"

	Name         Target = "name"
	FamilyName   Target = "family"
	GivenName    Target = "given"
	Born         Target = "born"
	Sex          Target = "sex"
	Sport        Target = "sport"
	Position     Target = "position"
	Height       Target = "height"
	UsualMass    Target = "usual-mass"
	Acclimatised Target = "acclimatised"
	AthleteNote  Target = "athlete-note"

	Date         Target = "date"
	Start        Target = "start"
	End          Target = "end"
	Duration     Target = "duration"
	Place        Target = "place"
	Activity     Target = "activity"
	MassBefore   Target = "mass-before"
	MassAfter    Target = "mass-after"
	Drunk        Target = "drunk"
	BottleBefore Target = "bottle-before"
	BottleAfter  Target = "bottle-after"
	Urine        Target = "urine"
	Stool        Target = "stool"
	Food         Target = "food"
	Temperature  Target = "temperature"
	Humidity     Target = "humidity"
	Wind         Target = "wind"
	Wbgt         Target = "wbgt"
	Altitude     Target = "altitude"
	Gravity      Target = "gravity"
	Osmolality   Target = "osmolality"
	Colour       Target = "colour"
	Sodium       Target = "sodium"
	Potassium    Target = "potassium"
	PatchSite    Target = "site"
	Effort       Target = "effort"
	Thirst       Target = "thirst"
	Stomach      Target = "stomach"
	Power        Target = "power"
	Speed        Target = "speed"
	Energy       Target = "energy"
	TestNote     Target = "note"

	// elsewhere is known and has no place on a sheet; code may stand for a name.
	elsewhere Target = "elsewhere"
	code      Target = "code"

	// Sample is the label of a sample: an athlete's name or bib.
	Sample Target = "sample"
)

// Sort is what the cells of a column hold.
type Sort int

// The sorts.
const (
	SortText Sort = iota
	SortNumber
	SortDay
	SortClock
	SortMinutes
	SortChoice
)

// meaning describes a target.
type meaning struct {
	target Target
	sort   Sort
	// path is the field of the sheet it goes to; its limits and its unit are those.
	path string
	// field has its limits where no field of the sheet has.
	field evidence.Field
	// unit is the unit it is kept in; units are those that may be chosen.
	unit  quantity.Unit
	units []quantity.Unit
	// kinds are the files in which it is offered.
	kinds []record.ImportKind
	// many: more than one column may mean it.
	many bool
}

// meanings lists the targets in the order in which they are offered.
func meanings() []meaning {
	const kg, ml, g, c = quantity.Kilogram, quantity.Millilitre, quantity.Gram, quantity.DegreeCelsius
	mass := []quantity.Unit{kg, quantity.Pound, g}
	volume := []quantity.Unit{ml, quantity.Litre, quantity.FluidOunce, g, kg}
	bottle := []quantity.Unit{g, kg, quantity.Ounce, quantity.Pound}
	heat := []quantity.Unit{c, quantity.DegreeFahrenheit}
	salt := []quantity.Unit{quantity.MillimolePerLitre, quantity.MilligramPerLitre}
	person := []record.ImportKind{record.ImportTests, record.ImportAthletes}
	test := []record.ImportKind{record.ImportTests}
	who := []record.ImportKind{record.ImportTests, record.ImportAthletes, record.ImportLaboratory}
	lab := []record.ImportKind{record.ImportTests, record.ImportLaboratory}
	return []meaning{
		{target: Name, kinds: who},
		{target: FamilyName, kinds: who},
		{target: GivenName, kinds: who},
		{target: Sample, kinds: []record.ImportKind{record.ImportLaboratory}},
		{target: Born, sort: SortDay, kinds: who},
		{target: Sex, sort: SortChoice, kinds: person},
		{target: Sport, kinds: person},
		{target: Position, kinds: person},
		{target: Height, sort: SortNumber, field: evidence.Height, unit: quantity.Metre, units: []quantity.Unit{quantity.Centimetre, quantity.Metre, quantity.Inch, quantity.Foot}, kinds: person},
		{target: UsualMass, sort: SortNumber, field: evidence.BodyMass, unit: kg, units: mass, kinds: person},
		{target: Acclimatised, sort: SortChoice, kinds: person},
		{target: AthleteNote, kinds: person, many: true},
		{target: Date, sort: SortDay, kinds: lab},
		{target: Start, sort: SortClock, kinds: test},
		{target: End, sort: SortClock, kinds: test},
		{target: Duration, sort: SortMinutes, field: evidence.Duration, unit: quantity.Minute, units: []quantity.Unit{quantity.Minute, quantity.Hour}, kinds: test},
		{target: Place, kinds: test},
		{target: Activity, kinds: test},
		{target: Effort, sort: SortNumber, path: "session.effort", units: []quantity.Unit{ScaleOfTen, ScaleOfTwenty}, kinds: test},
		{target: Power, sort: SortNumber, path: "session.power", units: []quantity.Unit{quantity.Watt}, kinds: test},
		{target: Speed, sort: SortNumber, path: "session.speed", units: []quantity.Unit{quantity.KilometrePerHour, quantity.MilePerHour, quantity.MetrePerSecond}, kinds: test},
		{target: Energy, sort: SortNumber, path: "session.energy", units: []quantity.Unit{quantity.Kilocalorie}, kinds: test},
		{target: Temperature, sort: SortNumber, path: "air.temperature", units: heat, kinds: test},
		{target: Humidity, sort: SortNumber, path: "air.humidity", units: []quantity.Unit{quantity.PerCent}, kinds: test},
		{target: Wind, sort: SortNumber, path: "air.wind", units: []quantity.Unit{quantity.MetrePerSecond, quantity.KilometrePerHour, quantity.MilePerHour}, kinds: test},
		{target: Wbgt, sort: SortNumber, path: "air.wbgt", units: heat, kinds: test},
		{target: Altitude, sort: SortNumber, path: "air.altitude", units: []quantity.Unit{quantity.Metre, quantity.Foot}, kinds: test},
		{target: MassBefore, sort: SortNumber, field: evidence.MassBefore, unit: kg, units: mass, kinds: test},
		{target: MassAfter, sort: SortNumber, field: evidence.MassAfter, unit: kg, units: mass, kinds: test},
		{target: Drunk, sort: SortNumber, field: evidence.PouredVolume, unit: ml, units: volume, kinds: test, many: true},
		{target: BottleBefore, sort: SortNumber, field: evidence.BottleMass, unit: g, units: bottle, kinds: test, many: true},
		{target: BottleAfter, sort: SortNumber, field: evidence.BottleMass, unit: g, units: bottle, kinds: test, many: true},
		{target: Urine, sort: SortNumber, path: "loss.urine", units: volume, kinds: test},
		{target: Stool, sort: SortNumber, path: "loss.stool", units: []quantity.Unit{g, kg}, kinds: test},
		{target: Food, sort: SortNumber, field: evidence.FoodMass, unit: g, units: bottle, kinds: test, many: true},
		{target: Gravity, sort: SortNumber, path: "urine.gravity", kinds: test},
		{target: Osmolality, sort: SortNumber, path: "urine.osmolality", units: []quantity.Unit{quantity.MilliosmolePerKilogram}, kinds: test},
		{target: Colour, sort: SortNumber, path: "urine.colour", kinds: test},
		{target: PatchSite, sort: SortChoice, kinds: lab},
		{target: Sodium, sort: SortNumber, field: evidence.PatchSodium, unit: quantity.MillimolePerLitre, units: salt, kinds: lab, many: true},
		{target: Potassium, sort: SortNumber, field: evidence.PatchPotassium, unit: quantity.MillimolePerLitre, units: salt, kinds: lab, many: true},
		{target: Thirst, sort: SortNumber, path: "feeling.thirst", kinds: test},
		{target: Stomach, sort: SortNumber, path: "feeling.stomach", kinds: test},
		{target: TestNote, kinds: test, many: true},
		{target: Worked, kinds: who},
	}
}

// meaningOf describes a target; the limits and the unit of one that goes to a field
// of the sheet are those of the field.
func meaningOf(t Target) (m meaning, ok bool) {
	list := meanings()
	at := slices.IndexFunc(list, func(m meaning) bool { return m.target == t })
	if at < 0 {
		return meaning{}, false
	}
	m = list[at]
	if f, found := record.SheetFieldOf(m.path); found && m.path != "" {
		m.field, m.unit = f.Evidence, f.Unit
	}
	return m, true
}

// Targets lists what a column may mean in a kind of file, but for [Unused].
func Targets(kind record.ImportKind) []Target {
	var list []Target
	for _, m := range meanings() {
		if slices.Contains(m.kinds, kind) {
			list = append(list, m.target)
		}
	}
	return list
}

// Units lists the units a target may come in; none for one without a unit.
func (t Target) Units() []quantity.Unit {
	m, _ := meaningOf(t)
	return m.units
}

// Sited reports whether a target is measured at a site of the body.
func (t Target) Sited() bool { return t == Sodium || t == Potassium }

// Sites lists the sites of a patch.
func Sites() []record.Site {
	return []record.Site{
		record.SiteForearmDorsal, record.SiteForearmVentral, record.SiteUpperArm, record.SiteChest, record.SiteBack, record.SiteForehead,
		record.SiteThigh, record.SiteCalf, record.SiteFiveMean,
	}
}
