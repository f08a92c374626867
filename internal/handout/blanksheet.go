package handout

import (
	"time"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
)

// BlankSheet is the test sheet on paper, for a field without a computer: the
// same questions in the order they are entered later. What is known already
// is printed into it.
type BlankSheet struct {
	Terms          Terms
	Athlete, Sport string
	Place          string
	Day            time.Time
	// Bottles, Foods and Patches are how many lines there are; 0 stands for
	// 6, 4 and 3.
	Bottles, Foods, Patches int
}

// BlankSheet lays out the sheet.
func (p *Press) BlankSheet(b BlankSheet) paper.Document {
	am := p.amounts(b.Terms)
	title := p.say.Say("handout.blank.title")
	under := p.say.Say("handout.blank.under")
	fr := p.frame(b.Terms, head{title: title, under: under})
	fr.Footer = p.compactFooter(b.Terms, fr.Inner())
	s := sheet{p: p, u: unitsOf(b.Terms), width: fr.Inner()}
	var items []paper.Item
	items = append(items, p.cautions(s.width, b.cautions(am, p)...)...)
	items = append(items, s.beforePart(b, am)...)
	items = append(items, s.bottlePart(or(b.Bottles, 6), or(b.Foods, 4))...)
	items = append(items, s.afterPart()...)
	items = append(items, s.urinePart(or(b.Patches, 3))...)
	return p.document(b.Terms, title, p.say.Say("handout.blank.subject"), paper.Pour(fr, items))
}

// cautions are the athlete's, and how to weigh where mass is hidden.
func (b BlankSheet) cautions(am amounts, p *Press) []string {
	var list []string
	if b.Terms.MassHidden {
		list = append(list, p.say.Say("handout.blank.hidden"))
	}
	for _, s := range b.Terms.Cautions {
		list = append(list, am.typed(s))
	}
	return list
}

// or is n, or other where n is not positive.
func or(n, other int) int {
	if n > 0 {
		return min(n, 24)
	}
	return other
}

// sheetUnits are the units the sheet asks for.
type sheetUnits struct {
	body, bottle, volume, air, wind, altitude quantity.Unit
}

// unitsOf are the units of the practice.
func unitsOf(t Terms) sheetUnits {
	if t.USUnits {
		return sheetUnits{quantity.Pound, quantity.Gram, quantity.FluidOunce, quantity.DegreeFahrenheit, quantity.MilePerHour, quantity.Foot}
	}
	return sheetUnits{quantity.Kilogram, quantity.Gram, quantity.Millilitre, quantity.DegreeCelsius, quantity.MetrePerSecond, quantity.Metre}
}

// sheet lays out the parts of a blank sheet.
type sheet struct {
	p     *Press
	u     sheetUnits
	width float64
}

// beforePart is what is written down before the session.
func (s sheet) beforePart(b BlankSheet, am amounts) []paper.Item {
	say := s.p.say
	date := ""
	if !b.Day.IsZero() {
		date = say.Date(b.Day)
	}
	return s.part("handout.blank.before",
		s.boxes(
			box{label: say.Say("handout.blank.athlete"), filled: am.typed(b.Athlete), share: 3},
			box{label: say.Say("handout.blank.date"), filled: date, share: 2},
			box{label: say.Say("handout.blank.place"), filled: am.typed(b.Place), share: 3},
			box{label: say.Say("handout.blank.by"), share: 2}),
		s.boxes(
			box{label: say.Say("handout.blank.sport"), filled: am.typed(b.Sport), share: 3},
			box{label: say.Say("handout.blank.activity"), share: 4},
			box{label: say.Say("handout.blank.start"), unit: say.Say("handout.blank.clock"), share: 2}),
		s.boxes(
			box{label: say.Say("handout.blank.air"), unit: string(s.u.air), share: 1},
			box{label: say.Say("handout.blank.humidity"), unit: string(quantity.PerCent), share: 1},
			box{label: say.Say("handout.blank.wind"), unit: string(s.u.wind), share: 1},
			box{label: say.Say("handout.blank.wbgt"), unit: string(s.u.air), share: 1},
			box{label: say.Say("handout.blank.altitude"), unit: string(s.u.altitude), share: 1}),
		s.choices(say.Say("handout.blank.sun"), say.Say("handout.blank.sun.high"), say.Say("handout.blank.sun.low"),
			say.Say("handout.blank.sun.part"), say.Say("handout.blank.sun.overcast"), say.Say("handout.blank.sun.shade"), say.Say("handout.blank.sun.none")),
		s.boxes(
			box{label: say.Say("handout.blank.mass.before", 1), unit: string(s.u.body), share: 1},
			box{label: say.Say("handout.blank.mass.before", 2), unit: string(s.u.body), share: 1},
			box{label: say.Say("handout.blank.step"), unit: string(s.u.body), share: 1},
			box{label: say.Say("handout.blank.kit.dry"), unit: string(s.u.body), share: 1},
			box{label: say.Say("handout.blank.clothing"), share: 1.6}),
		s.choices(say.Say("handout.blank.dress.before"), say.Say("handout.blank.dress.minimal"), say.Say("handout.blank.dress.kit")),
	)
}

// bottlePart has a line for each bottle and each food.
func (s sheet) bottlePart(bottles, foods int) []paper.Item {
	say := s.p.say
	gram := string(s.u.bottle)
	unit := func(key string) string { return say.Say(key) + "\n" + gram }
	drinks := grid{
		columns: []gridCol{
			{unit("handout.blank.bottle.before"), 20}, {unit("handout.blank.bottle.refill"), 18}, {unit("handout.blank.bottle.refill.second"), 18},
			{unit("handout.blank.bottle.after"), 20}, {unit("handout.blank.bottle.poured"), 20},
			{say.Say("handout.blank.bottle.cup") + "\n" + string(s.u.volume), 18},
		},
		first: say.Say("handout.blank.bottle.what"), rows: bottles,
		last: say.Say("handout.blank.bottle.shared"), lastWidth: 22,
	}
	food := grid{
		columns: []gridCol{{say.Say("handout.blank.food.portions"), 30}, {say.Say("handout.blank.food.or") + "\n" + gram, 30}},
		first:   say.Say("handout.blank.food.what"), rows: foods,
		last: say.Say("handout.blank.food.wrapper"), lastWidth: 30,
	}
	items := s.gridPart("handout.blank.bottles", "handout.blank.bottles.note", drinks)
	return append(items, s.gridPart("handout.blank.foods", "handout.blank.foods.note", food)...)
}

// afterPart is what is written down straight after the session.
func (s sheet) afterPart() []paper.Item {
	say := s.p.say
	litres := string(quantity.Litre)
	if s.u.volume == quantity.FluidOunce {
		litres = string(quantity.FluidOunce)
	}
	return s.part("handout.blank.after",
		s.boxes(
			box{label: say.Say("handout.blank.guess"), unit: litres, share: 2.2},
			box{label: say.Say("handout.blank.end"), unit: say.Say("handout.blank.clock"), share: 1},
			box{label: say.Say("handout.blank.played"), unit: string(quantity.Minute), share: 1},
			box{label: say.Say("handout.blank.work"), share: 1.6}),
		s.boxes(
			box{label: say.Say("handout.blank.mass.after", 1), unit: string(s.u.body), share: 1},
			box{label: say.Say("handout.blank.mass.after", 2), unit: string(s.u.body), share: 1},
			box{label: say.Say("handout.blank.kit.wet"), unit: string(s.u.body), share: 1},
			box{label: say.Say("handout.blank.urine"), unit: string(quantity.Gram), share: 1, tick: say.Say("handout.blank.none")},
			box{label: say.Say("handout.blank.stool"), unit: string(quantity.Gram), share: 1, tick: say.Say("handout.blank.none")}),
		s.choices(say.Say("handout.blank.dress.after"), say.Say("handout.blank.dress.minimal"), say.Say("handout.blank.dress.kit")),
		s.scale(say.Say("handout.blank.effort"), 0, 10),
		s.scale(say.Say("handout.blank.thirst"), 0, 10),
		s.scale(say.Say("handout.blank.stomach"), 0, 10),
	)
}

// urinePart is the urine marker, the morning masses and the patches.
func (s sheet) urinePart(patches int) []paper.Item {
	say := s.p.say
	var mornings []box
	for i := range 3 {
		mornings = append(mornings, box{label: say.Say("handout.blank.morning", i+1), unit: string(s.u.body), share: 1})
	}
	mornings = append(mornings, box{label: say.Say("handout.blank.morning.today"), unit: string(s.u.body), share: 1})
	items := s.part("handout.blank.urine.title",
		s.boxes(
			box{label: say.Say("handout.blank.gravity"), share: 1},
			box{label: say.Say("handout.blank.osmolality"), unit: string(quantity.MilliosmolePerKilogram), share: 1},
			box{label: say.Say("handout.blank.taken"), unit: say.Say("handout.blank.clock"), share: 1, tick: say.Say("handout.blank.none.taken")}),
		s.scale(say.Say("handout.blank.colour"), 1, 8),
		s.boxes(mornings...))
	items = append(items, s.gridPart("handout.blank.patches", "handout.blank.patches.note", grid{
		columns: []gridCol{
			{say.Say("handout.blank.patch.side"), 20}, {say.Say("handout.blank.patch.on"), 22}, {say.Say("handout.blank.patch.off"), 22},
			{say.Say("handout.blank.patch.condition"), 34}, {say.Say("handout.blank.patch.sodium") + "\n" + string(quantity.MillimolePerLitre), 22},
		},
		first: say.Say("handout.blank.patch.site"), rows: patches,
		last: say.Say("handout.blank.patch.laboratory"), lastWidth: 22,
	})...)
	return append(items, s.part("handout.blank.note", s.writing(3))...)
}
