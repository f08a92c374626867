package handout

import (
	"strings"
	"time"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
)

// TripPage is the page of a trip: its stops with the plan for each, and the
// packing list. Either part may be empty.
type TripPage struct {
	Terms Terms
	Trip  string
	// Athlete is empty for a list summed over a squad.
	Athlete string
	Stops   []TripStop
	Packing []PackLine
	// Notes are sentences about flight, food and water, already worded.
	Notes []string
	// ClimateCredit must be shown where the climate table was used.
	ClimateCredit string
}

// TripStop is one place with the plan there.
type TripStop struct {
	Place       string
	From, Until time.Time
	// Verdict is what the heat there asks for, and why; worded, and told first.
	Verdict string
	// Calm: the heat asks for nothing, so that the verdict is no warning.
	Calm bool
	// Conditions are the session there, its effort, the sun and the hour; worded.
	Conditions string
	Air        quantity.Range // °C, when AirKnown
	AirKnown   bool
	// Humidity in per cent; 0 where it is not known.
	Humidity quantity.Percent
	// Rests says which test holds, or why none does; worded.
	Rests string
	Rate  StopRate
	Plan  StopPlan
	// Notes and Cautions are sentences, worded.
	Notes, Cautions []string
}

// StopRate is the sweat rate at a stop, worded as on the screen; Range is empty
// where none is known.
type StopRate struct {
	Rate, Range string
	Estimate    bool
}

// StopPlan is what to take in a session there.
type StopPlan struct {
	Session string
	Minutes quantity.Minutes
	Parts   []Part
	Foods   []Portion
	// Carbohydrate per hour.
	Carbohydrate quantity.GramsPerHour
	// Low and High are the deficits at the end at the ends of the range.
	Low, High Deficit
}

// Hold is where a thing travels.
type Hold string

// Where things travel.
const (
	Carry Hold = "carry"
	Stow  Hold = "hold"
	Buy   Hold = "buy"
)

// PackLine is one thing to pack. What and Amount are worded.
type PackLine struct {
	What, Amount string
	Where        Hold
	// Lot of a supplement, to be kept.
	Lot        string
	Supplement bool
}

// TripPage lays out the page of a trip.
func (p *Press) TripPage(t TripPage) paper.Document {
	title := strings.TrimSpace(p.amounts(t.Terms).typed(t.Trip))
	if title == "" {
		title = p.say.Say("handout.trip.title")
	}
	pages := p.pour(func(p *Press) (paper.Frame, []paper.Item) { return p.tripItems(t, title) })
	return p.document(t.Terms, title, p.say.Say("handout.trip.subject"), pages)
}

// tripItems are the stops, what to pack, and the notes.
func (p *Press) tripItems(t TripPage, title string) (paper.Frame, []paper.Item) {
	am := p.amounts(t.Terms)
	var small []string
	if t.ClimateCredit != "" {
		small = append(small, p.say.Say("handout.trip.credit", t.ClimateCredit))
	}
	fr := p.frame(t.Terms, head{title: title, under: am.typed(t.Athlete)}, small...)
	w := fr.Inner()
	var items []paper.Item
	var worded []string
	for _, s := range t.Terms.Cautions {
		worded = append(worded, am.typed(s))
	}
	items = append(items, p.cautions(w, worded...)...)
	for _, s := range t.Stops {
		items = append(items, p.stop(s, am, w)...)
	}
	items = append(items, p.packing(t.Packing, am, w)...)
	items = append(items, p.sentences(p.say.Say("handout.trip.notes"), t.Notes, am, w)...)
	return fr, items
}

// stop is one place: what the heat asks for, the session and the air, the sweat rate, the
// plan, its cautions.
func (p *Press) stop(s TripStop, am amounts, width float64) []paper.Item {
	say := p.say
	place := am.typed(s.Place)
	if !s.From.IsZero() && !s.Until.IsZero() {
		place = say.Say("handout.trip.stop", say.Day(s.From), say.Day(s.Until), place)
	}
	st := headingStyle()
	items := []paper.Item{{Block: p.faces.Paragraph(st, place, width), Gap: p.gap(), Keep: true}}
	if verdict := am.typed(s.Verdict); strings.TrimSpace(verdict) != "" {
		block := p.caution(verdict, width)
		if s.Calm {
			block = p.marked(p.body(), verdict, width)
		}
		items = append(items, paper.Item{Block: block, Gap: 1})
	}
	var lines []string
	if s.Conditions != "" {
		lines = append(lines, say.Say("handout.trip.conditions", am.typed(s.Conditions)))
	}
	if s.AirKnown {
		lines = append(lines, p.stopAir(s, am))
	}
	if s.Rests != "" {
		lines = append(lines, am.typed(s.Rests))
	}
	lines = append(lines, p.stopRate(s.Rate, am))
	items = append(items, lineItems(p.faces, p.body(), strings.Join(trim(lines), " "), width, 1)...)
	items = append(items, p.stopTable(s.Plan, am, width)...)
	for i := range len(items) - 1 {
		items[i].Keep = true // a stop is not torn from its table
	}
	for _, n := range s.Notes {
		items = append(items, lineItems(p.faces, p.body(), am.typed(n), width, 1)...)
	}
	var worded []string
	for _, c := range s.Cautions {
		worded = append(worded, am.typed(c))
	}
	cautions := p.cautions(width, worded...)
	if len(cautions) > 0 {
		cautions[0].Gap = 2
	}
	return append(items, cautions...)
}

// stopAir writes the expected air. Where mass is hidden no per cent is written.
func (p *Press) stopAir(s TripStop, am amounts) string {
	if s.Humidity <= 0 || am.hidden {
		return p.say.Say("handout.trip.air", am.air(s.Air))
	}
	return p.say.Say("handout.trip.air.humid", am.air(s.Air), p.say.Number(float64(s.Humidity), 0)+"\u00a0"+string(quantity.PerCent))
}

// stopRate writes the rate; an estimate always with its range and its name.
func (p *Press) stopRate(r StopRate, am amounts) string {
	rate, spread := beside(am.typed(r.Rate)), beside(am.typed(r.Range))
	switch {
	case spread == "":
		return ""
	case r.Estimate:
		return p.say.Say("handout.trip.rate.estimate", spread)
	}
	return p.say.Say("handout.trip.rate", rate, spread)
}

// beside keeps the unit of a rate on the line of its figure.
func beside(rate string) string {
	return strings.NewReplacer(" fl oz/h", "\u00a0fl\u00a0oz/h", " L/h", "\u00a0L/h").Replace(rate)
}

// stopTable is the plan of a session there.
func (p *Press) stopTable(s StopPlan, am amounts, width float64) []paper.Item {
	if len(s.Parts) == 0 && len(s.Foods) == 0 {
		return nil
	}
	say := p.say
	session := am.typed(s.Session)
	if session == "" {
		session = say.Say("handout.session")
	}
	name := session
	if s.Minutes > 0 {
		name = say.Say("handout.trip.session", session, say.Number(float64(s.Minutes), 0))
	}
	t := table{columns: []col{
		{head: "", width: width * 0.22}, {head: say.Say("handout.trip.drink"), width: width * 0.26}, {head: say.Say("handout.during.eat"), width: width * 0.17},
		{head: say.Say("handout.trip.carbohydrate"), width: width * 0.17, align: paper.Right}, {head: say.Say("handout.trip.down"), width: width * 0.18, align: paper.Right},
	}}
	carbohydrate := ""
	if s.Carbohydrate > 0 {
		carbohydrate = say.Amount(float64(s.Carbohydrate), quantity.Gram)
	}
	t.rows = []row{{cells: []string{name, am.parts(s.Parts), am.foods(s.Foods), carbohydrate, p.ends(s, am)}}}
	return t.items(p, width)
}

// ends writes the deficits at the low and the high end of the loss.
func (p *Press) ends(s StopPlan, am amounts) string {
	switch {
	case s.Low.Litres == 0 && s.High.Litres == 0 && s.High.Percent == 0:
		return ""
	case s.Low.Litres < 0 || s.Low.Percent < 0:
		return p.say.Say("handout.trip.ends.gain", am.deficit(s.Low), am.deficit(s.High))
	case am.hidden || !s.Low.PercentKnown || !s.High.PercentKnown:
		return am.volumes(quantity.Range{Low: float64(s.Low.Litres), High: float64(s.High.Litres)})
	}
	return am.between(float64(s.Low.Percent), float64(s.High.Percent), quantity.PerCent)
}

// packing is the list of what to take along.
func (p *Press) packing(list []PackLine, am amounts, width float64) []paper.Item {
	if len(list) == 0 {
		return nil
	}
	say := p.say
	t := table{columns: []col{
		{head: say.Say("handout.packing.what"), width: width * 0.4}, {head: say.Say("handout.packing.amount"), width: width * 0.2, align: paper.Right},
		{head: say.Say("handout.packing.where"), width: width * 0.16}, {head: say.Say("handout.packing.lot"), width: width * 0.14},
		{head: say.Say("handout.packing.packed"), width: width * 0.1, align: paper.Right, check: true},
	}}
	for _, l := range list {
		lot := am.typed(l.Lot)
		if l.Supplement && strings.TrimSpace(lot) == "" {
			lot = say.Say("handout.packing.lot.missing")
		}
		t.rows = append(t.rows, row{cells: []string{am.product(l.What), am.packed(l.Amount), p.hold(l.Where), lot}})
	}
	return append([]paper.Item{p.section(say.Say("handout.packing.title"), width)}, t.items(p, width)...)
}

// hold words where a thing travels.
func (p *Press) hold(h Hold) string {
	switch h {
	case Carry:
		return p.say.Say("handout.packing.carry")
	case Stow:
		return p.say.Say("handout.packing.hold")
	case Buy:
		return p.say.Say("handout.packing.buy")
	}
	return ""
}

// sentences is a heading over sentences.
func (p *Press) sentences(title string, list []string, am amounts, width float64) []paper.Item {
	var items []paper.Item
	for _, s := range trim(list) {
		items = append(items, lineItems(p.faces, p.body(), am.typed(s), width, 1)...)
	}
	if len(items) == 0 {
		return nil
	}
	items[0].Gap = 0
	return append([]paper.Item{p.section(title, width)}, items...)
}

// trim leaves out what is empty.
func trim(list []string) []string {
	var out []string
	for _, s := range list {
		if strings.TrimSpace(s) != "" {
			out = append(out, s)
		}
	}
	return out
}
