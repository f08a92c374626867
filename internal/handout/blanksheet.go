package handout

import (
	"slices"
	"time"

	"ebbwell/internal/consult"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
)

// BlankSheet is the test sheet on paper, for a field without a computer: the
// same questions in the order of the fields they are entered into later. What is
// known already is printed into it.
type BlankSheet struct {
	Terms          Terms
	Athlete, Sport string
	Place          string
	Day            time.Time
	// Bottles, Foods and Patches are how many lines there are; 0 stands for
	// 6, 4 and 3.
	Bottles, Foods, Patches int
	// Short leaves out what is rarely measured, so that the sheet is one side, with as many
	// lines as that holds.
	Short bool
}

// lines are how many there are on a sheet to write into.
type lines struct {
	bottles, foods, patches int
	// note: for remarks.
	note bool
}

// shortLines are those of a sheet of one side, the most first: what a test day takes, then
// less.
func shortLines() []lines {
	return []lines{{4, 2, 2, false}, {4, 2, 1, false}, {3, 1, 1, false}}
}

// BlankSheet lays out the sheet.
func (p *Press) BlankSheet(b BlankSheet) paper.Document {
	return p.document(b.Terms, p.say.Say("handout.blank.title"), p.say.Say("handout.blank.subject"), p.blankPages(b))
}

// blankPages are its sides: as few as the type that can be read allows. All of the sheet
// would be one side only with labels of less than 5 points.
func (p *Press) blankPages(b BlankSheet) []paper.Page {
	lay := func(l lines, parted bool) func(p *Press) (paper.Frame, []paper.Item) {
		return func(p *Press) (paper.Frame, []paper.Item) { return p.blankItems(b, l, parted) }
	}
	ways := append(closer(), way{tight: 2, small: 0.94}, way{tight: 2, small: 0.88}, way{tight: 2, small: 0.82})
	if b.Short {
		var pages []paper.Page
		for _, l := range shortLines() {
			if pages = p.pourBy(ways, lay(l, false)); len(pages) == 1 {
				break
			}
		}
		return pages
	}
	whole := lines{or(b.Bottles, 6), or(b.Foods, 4), or(b.Patches, 3), true}
	pages := p.pourBy(ways, lay(whole, true))
	if len(pages) > 2 { // more lines than a side holds: the parts run on
		return p.pourBy(ways, lay(whole, false))
	}
	return pages
}

// BlankSheets lays out several, one after the other, as one document.
func (p *Press) BlankSheets(list []BlankSheet) paper.Document {
	if len(list) == 0 {
		return paper.Document{}
	}
	all := p.BlankSheet(list[0])
	for _, b := range list[1:] {
		next := p.BlankSheet(b)
		all.Pages = append(all.Pages, next.Pages...)
		all.Lacks = append(all.Lacks, slices.DeleteFunc(next.Lacks, func(l string) bool { return slices.Contains(all.Lacks, l) })...)
	}
	return all
}

// blankItems are the parts of the sheet in order; parted begins the second side with what
// is written down after the session.
func (p *Press) blankItems(b BlankSheet, l lines, parted bool) (paper.Frame, []paper.Item) {
	am := p.amounts(b.Terms)
	fr := p.frame(b.Terms, head{title: p.say.Say("handout.blank.title"), under: p.say.Say("handout.blank.under")})
	fr.Footer = p.compactFooter(b.Terms, fr.Inner())
	first := fr.Header
	s := sheet{p: p, u: unitsOf(b.Terms), width: fr.Inner(), short: b.Short}
	fr.Header = func(page int) paper.Block {
		if page == 1 {
			return first(page)
		}
		return first(page).Under(s.whose(b, am), 0).Under(paper.Space(s.width, 2), 0)
	}
	var items []paper.Item
	items = append(items, p.cautions(s.width, b.cautions(am, p)...)...)
	items = append(items, s.beforePart(b, am)...)
	items = append(items, s.bottlePart(l.bottles, l.foods)...)
	after := s.afterPart(l.note)
	after[0].Break = parted
	items = append(items, after...)
	return fr, append(items, s.urinePart(l.patches)...)
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
	body, bottle, volume, whole, air, wind, speed, altitude quantity.Unit
}

// unitsOf are the units of the practice.
func unitsOf(t Terms) sheetUnits {
	u := sheetUnits{
		body: quantity.Kilogram, bottle: quantity.Gram, volume: quantity.Millilitre, whole: quantity.Litre,
		air: quantity.DegreeCelsius, wind: quantity.MetrePerSecond, speed: quantity.KilometrePerHour, altitude: quantity.Metre,
	}
	if t.USUnits {
		u.body, u.volume, u.whole, u.air = quantity.Pound, quantity.FluidOunce, quantity.FluidOunce, quantity.DegreeFahrenheit
		u.wind, u.speed, u.altitude = quantity.MilePerHour, quantity.MilePerHour, quantity.Foot
	}
	return u
}

// sheet lays out the parts of a blank sheet.
type sheet struct {
	p     *Press
	u     sheetUnits
	width float64
	short bool
}

// beforePart is what is written down before the session: the session, the air,
// the scale, the urine.
func (s sheet) beforePart(b BlankSheet, am amounts) []paper.Item {
	say := s.p.say.Say
	blocks := []paper.Block{
		s.boxes(
			box{label: say("handout.blank.athlete"), filled: am.typed(b.Athlete), share: 3},
			box{label: say("handout.blank.by"), share: 2},
			s.day(b, 2.1), s.clock("session.start", 1.4), s.ask("session.place", 2.6).with(am.typed(b.Place))),
		s.boxes(s.ask("session.sport", 2).with(am.typed(b.Sport)), s.ask("session.activity", 3)),
		s.scale(s.words("session.effort"), 0, 10),
	}
	if !s.short {
		blocks = append(blocks, s.boxes(s.work(am.hidden)...))
	}
	return s.part("handout.blank.before", append(append(blocks, s.airBlocks()...), s.scaleBlocks()...)...)
}

// whose says on a further side whose sheet it is, and of which day: two loose sheets of a
// squad are told apart by it.
func (s sheet) whose(b BlankSheet, am amounts) paper.Block {
	return s.boxes(box{label: s.p.say.Say("handout.blank.athlete"), filled: am.typed(b.Athlete), share: 3}, s.day(b, 2))
}

// day is the day of the session, as far as it is known.
func (s sheet) day(b BlankSheet, share float64) box {
	date := ""
	if !b.Day.IsZero() {
		date = s.p.say.Date(b.Day)
	}
	return s.ask("session.date", share).with(date)
}

// work is how hard the session was; energy is not asked for where mass is hidden,
// since it goes with mass.
func (s sheet) work(hidden bool) []box {
	list := []box{s.ask("session.power", 1), s.ask("session.speed", 1), s.ask("session.met", 1)}
	if hidden {
		return list
	}
	return append(list, s.ask("session.energy", 1))
}

// airBlocks are the weather, and what is worn in it.
func (s sheet) airBlocks() []paper.Block {
	say := s.p.say.Say
	var worn []string
	for _, code := range []string{consult.ClothingVest, consult.ClothingShirt, consult.ClothingTracksuit} {
		worn = append(worn, say("clothing."+code))
	}
	list := []paper.Block{
		s.boxes(s.ask("air.temperature", 1), s.ask("air.humidity", 1), s.ask("session.usedToHeat", 1, say("handout.blank.yes"), say("handout.blank.no"))),
		s.choices(s.width, s.words("air.sun"), say("handout.blank.sun.high"), say("handout.blank.sun.low"),
			say("handout.blank.sun.part"), say("handout.blank.sun.overcast"), say("handout.blank.sun.shade"), say("handout.blank.sun.none")),
	}
	if !s.short {
		list = append(list, s.boxes(s.ask("air.wind", 1), s.ask("air.altitude", 1), s.ask("air.wbgt", 1)))
	}
	return append(list, s.choices(s.width, s.words("air.clothing"), worn...))
}

// scaleBlocks are the weighing before, the mornings, and the urine where it is
// taken before.
func (s sheet) scaleBlocks() []paper.Block {
	say := s.p.say.Say
	list := []paper.Block{
		s.choices(s.width, s.words("scale.before"), say("handout.blank.dress.minimal"), say("handout.blank.dress.kit")),
		s.boxes(
			box{label: say("handout.blank.mass.before", 1), unit: string(s.u.body), share: 1},
			box{label: say("handout.blank.mass.before", 2), unit: string(s.u.body), share: 1},
			s.ask("scale.step", 1)),
	}
	if s.short {
		return list // the urine marker is asked for at the end, with when it was taken
	}
	mornings := []box{{label: say("handout.blank.morning.today"), unit: string(s.u.body), share: 1}}
	for range 3 {
		mornings = append(mornings, box{label: say("handout.blank.morning"), unit: string(s.u.body), share: 1})
	}
	return append(list,
		s.boxes(append(mornings, box{label: say("handout.blank.gravity.before"), share: 1})...),
		s.scale(say("handout.blank.colour.before"), 1, 8))
}

// bottlePart has a line for each bottle and each food.
func (s sheet) bottlePart(bottles, foods int) []paper.Item {
	say := s.p.say.Say
	of := func(name string, width float64) gridCol { return s.column("bottles.*."+name, width) }
	cup := of("volume", 17)
	drinks := grid{
		columns: []gridCol{
			of("before", 17), of("after", 17), of("poured", 17), of("use", 19), s.column("bottles.*.refills.*.added", 14),
			{say("handout.blank.bottle.refill.second") + "\n" + string(s.u.bottle), 14}, of("shareLow", 14), of("shareHigh", 10),
		},
		first: s.words("bottles.*.productID"), rows: bottles, last: cup.head, lastWidth: cup.width,
	}
	food := grid{
		columns: []gridCol{s.column("foods.*.portions", 16), s.column("foods.*.mass", 17)},
		first:   s.words("foods.*.productID"), rows: foods,
		last: say("handout.blank.food.wrapper"), lastWidth: 19,
	}
	items := s.gridPart("handout.blank.bottles", "handout.blank.bottles.note", drinks)
	items = append(items, paper.Item{Block: s.choices(s.width, "", s.words("loss.nothingDrunk")), Gap: 0.6})
	more := s.part("handout.blank.foods", s.p.faces.Paragraph(noteStyle(), say("handout.blank.foods.note"), s.width))
	more[len(more)-1].Keep = true
	return append(append(items, more...), s.pairs(food)...)
}
