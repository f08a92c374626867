package handout

import (
	"strings"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
)

// Before is what to drink before the session. Each is one amount, never the
// two ends of the advice: from the ends of an amount per kilogram the mass
// could be worked out.
type Before struct {
	// Missing: body mass is not known, so that there is no amount.
	Missing bool
	// Early is drunk EarlyHours before; 0 leaves it out.
	Early      quantity.Millilitres
	EarlyHours float64
	// Late is drunk LateHours before, only without urine or with dark urine.
	Late      quantity.Millilitres
	LateHours float64
}

// BagItem is one thing to put in the bag.
type BagItem struct {
	Substance Substance
	Name      string
	// Count of bottles and the volume of each; a count of 0 is taken as 1.
	Count  int
	Volume quantity.Millilitres
	// Bottle is what the athlete calls the bottle; empty where it has no name.
	Bottle string
	// Assumed: the size is not written down, and the usual one is taken.
	Assumed bool
	// Fill is how much goes into each; 0 is all of it.
	Fill quantity.Millilitres
	// Portions of a food.
	Portions float64
}

// During is what to take in the session: at each chance, or, where the sport
// has none, per hour.
type During struct {
	// Closed: one may not drink in the session.
	Closed bool
	// Drinks are the columns, water first.
	Drinks  []Column
	Chances []Chance
	// PerHour is used without chances: one volume for each drink; Foods the
	// food of an hour.
	PerHour []quantity.Millilitres
	Foods   []Portion
	// Total is the most in all, one volume for each drink.
	Total          []quantity.Millilitres
	TotalMouthfuls int
	TotalFoods     []Portion
	// Mouthful of this athlete; 0 when not weighed. Assumed is the usual one that is
	// counted by then.
	Mouthful, Assumed quantity.Millilitres
	// Carbohydrate per hour that the plan gives; 0 leaves it out.
	Carbohydrate quantity.GramsPerHour
}

// Column is a drink.
type Column struct {
	Substance Substance
	Name      string
}

// Chance is one moment to drink.
type Chance struct {
	Name string
	// Volumes has one volume for each drink.
	Volumes   []quantity.Millilitres
	Mouthfuls int
	// Fewest are the mouthfuls of the smallest break of a row of several, Mouthfuls then
	// those of the largest; 0 where all are alike. Together: Volumes and Foods are those
	// of all the breaks of the row, not of each.
	Fewest   int
	Together bool
	Foods    []Portion
	// Maybe: it may not happen.
	Maybe bool
	// Stands are the bottles it is drunk from, where their size is known.
	Stands []Stand
	// More are the names of the breaks after it that are joined to its row.
	More []string
}

// After is what to drink afterwards.
type After struct {
	// Soon is true when the next session is less than a day away, Large when so
	// much is lacking that it is made up in any case.
	Soon, Large bool
	// PerKilogram is the advice, litres for each kilogram lighter.
	PerKilogram quantity.Range
	// Extra is the same advice for the planned deficit, L: used where mass is
	// hidden. A deficit in litres says nothing of body mass.
	Extra quantity.Range
	// Further are the sessions of the day that follow this one.
	Further []FurtherSession
}

// FurtherSession is another session of the same day.
type FurtherSession struct {
	// Start is a time of day, "15:00"; empty while it is not known.
	Start string
	// Minutes is how long it lasts; 0 when not known.
	Minutes quantity.Minutes
	// Again is true where it is done by the plan of this page as it stands,
	// Other where it is done by another plan, with a page of its own.
	Again, Other bool
	// Parts and Foods are what of the plan is for a session of that length.
	Parts []Part
	Foods []Portion
}

// FollowUp is what is looked at next.
type FollowUp struct {
	Review time.Time
	// Sessions is how many to do this way; 0 without steps.
	Sessions int
}

// before lists what to drink before.
func (p *Press) before(b Before, am amounts) column {
	return column{title: p.say.Say("handout.before.title"), body: func(w float64) []paper.Block {
		var out []paper.Block
		for _, s := range p.beforeTexts(b, am) {
			out = append(out, p.faces.Paragraph(p.body(), s, w))
		}
		return out
	}}
}

// beforeTexts are its sentences.
func (p *Press) beforeTexts(b Before, am amounts) []string {
	if am.hidden && b.Early > 0 {
		early, late := care.BeforeHidden(b.Early)
		if b.Early = early; b.Late > 0 {
			b.Late = late
		}
	}
	var list []string
	if b.Missing {
		list = append(list, p.say.Say("handout.before.missing"))
	}
	if b.Early > 0 {
		list = append(list, p.say.Say("handout.before.early", p.say.Half(b.EarlyHours), am.millilitres(b.Early)))
	}
	if b.Late > 0 {
		list = append(list, p.say.Say("handout.before.late", p.say.Half(b.LateHours), am.millilitres(b.Late)))
	}
	return list
}

func (p *Press) bag(list []BagItem, am amounts) column {
	return column{title: p.say.Say("handout.bag.title"), body: func(w float64) []paper.Block {
		var out []paper.Block
		for _, it := range list {
			out = append(out, p.tick(am.bagItem(it), w))
		}
		if len(list) > 0 && list[0].Assumed {
			out = append(out, p.faces.Paragraph(noteStyle(), p.say.Say("handout.bag.assumed", am.size(list[0].Volume)), w))
		}
		return out
	}}
}

// tick is a text behind a square to tick.
func (p *Press) tick(s string, width float64) paper.Block {
	const gap = 2.0
	st := p.body()
	b := p.faces.Paragraph(st, s, width-checkSize-gap).At(checkSize+gap, 0)
	return b.With(paper.Check{Y: (st.Leading - checkSize) / 2, Size: checkSize})
}

// bagItem words one thing for the bag.
func (a amounts) bagItem(it BagItem) string {
	name := a.product(it.Name)
	switch {
	case it.Bottle != "" && it.Volume > 0:
		fill := it.Fill
		if fill <= 0 {
			fill = it.Volume
		}
		if it.Count > 1 {
			return a.say.Say("handout.bag.own.times", a.typed(it.Bottle), name, a.millilitres(fill), it.Count)
		}
		return a.say.Say("handout.bag.own", a.typed(it.Bottle), name, a.millilitres(fill))
	case it.Substance == Food && it.Portions > 0:
		return a.food(Portion{Name: it.Name, Portions: it.Portions})
	case it.Substance != Food && it.Volume > 0 && it.Fill > 0 && it.Fill < it.Volume:
		return a.say.Say("handout.bag.filled", max(1, it.Count), a.say.Of(name), a.size(it.Volume), a.millilitres(it.Fill))
	case it.Substance != Food && it.Volume > 0:
		return a.say.Say("handout.bag.bottles", max(1, it.Count), a.say.Of(name), a.size(it.Volume))
	}
	return name
}

// during is the table of chances, or of an hour where there are none.
func (p *Press) during(d During, am amounts, width float64) []paper.Item {
	if d.Closed {
		note := p.faces.Paragraph(p.body(), p.say.Say("handout.during.closed"), width-2*cellPad).At(cellPad, 0)
		return []paper.Item{p.section(p.say.Say("handout.during.title"), width), {Block: note, Keep: true}}
	}
	if len(d.Chances) > 0 {
		return p.breakRows(d, am, width)
	}
	if len(d.PerHour) == 0 {
		return nil
	}
	t := p.hourTable(d, am, width)
	items := append([]paper.Item{p.section(p.say.Say("handout.during.title"), width)}, t.items(p, width)...)
	for i := range items {
		// What is looked at in the session does not run over two sides.
		items[i].Keep = items[i].Keep || len(t.rows) <= manyRows
	}
	items[len(items)-1].Keep = true
	note := p.faces.Paragraph(noteStyle(), p.hourNote(d), width-2*cellPad).At(cellPad, 0)
	return append(items, paper.Item{Block: note, Gap: 1})
}

// hourTable has a row for each drink: in an hour, and the most in all.
func (p *Press) hourTable(d During, am amounts, width float64) table {
	const volume, done = 46.0, 17.0
	say := p.say
	t := table{columns: []col{
		{head: say.Say("handout.during.what"), width: width - 2*volume - done},
		{head: say.Say("handout.during.hour"), width: volume, align: paper.Right},
		{head: say.Say("handout.during.total"), width: volume, align: paper.Right, strong: true},
		{head: say.Say("handout.during.done"), width: done, align: paper.Right, check: true},
	}}
	hour, total := am.eachVolume(d.PerHour, len(d.Drinks)), am.eachVolume(d.Total, len(d.Drinks))
	for i, c := range d.Drinks {
		t.rows = append(t.rows, row{cells: []string{am.product(c.Name), hour[i], total[i]}})
	}
	for _, f := range d.Foods {
		t.rows = append(t.rows, row{cells: []string{am.product(f.Name), say.Half(f.Portions), am.inAll(d.TotalFoods, f.Name)}})
	}
	return t
}

// inAll writes the portions of a food in a list; nothing when it is not there.
func (a amounts) inAll(list []Portion, name string) string {
	for _, f := range list {
		if f.Name == name {
			return a.say.Half(f.Portions)
		}
	}
	return ""
}

// eachVolume writes n volumes; what is nothing or not given stays empty.
func (a amounts) eachVolume(list []quantity.Millilitres, n int) []string {
	out := make([]string, n)
	for i := range min(n, len(list)) {
		if list[i] > 0 {
			out[i] = a.millilitres(list[i])
		}
	}
	return out
}

// hourNote says how to drink without set breaks, and what the plan brings.
func (p *Press) hourNote(d During) string {
	parts := []string{p.say.Say("handout.during.noBreaks")}
	if d.Carbohydrate > 0 {
		parts = append(parts, p.say.Say("handout.during.carbohydrate", p.say.Amount(float64(d.Carbohydrate), quantity.Gram)))
	}
	return strings.Join(parts, " ")
}
