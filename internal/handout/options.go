package handout

import (
	"strings"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
)

// Option is one way to drink and eat, put beside the others.
type Option struct {
	Name string
	// Chosen marks the agreed one.
	Chosen bool
	Parts  []Part
	Foods  []Portion
	// Deficit at the end.
	Deficit Deficit
	// Carbohydrate per hour.
	Carbohydrate quantity.GramsPerHour
	// Estimate: the deficit is based on one, and is written as its range alone.
	Estimate bool
}

// Portion is a food in portions.
type Portion struct {
	Name     string
	Portions float64
}

// food writes a portion: "½ fig bar", "2 × fig bar".
func (a amounts) food(f Portion) string {
	return a.say.Portions(f.Portions, a.product(f.Name))
}

// foods writes several.
func (a amounts) foods(list []Portion) string {
	var parts []string
	for _, f := range list {
		if f.Portions > 0 {
			parts = append(parts, a.food(f))
		}
	}
	return a.say.Commas(parts)
}

// optionsAcross is how many options stand side by side.
const optionsAcross = 3

// options is the comparison; nothing when there is only one.
func (p *Press) options(list []Option, am amounts, width float64) []paper.Item {
	if len(list) < 2 {
		return nil
	}
	items := []paper.Item{p.section(p.say.Say("handout.options.title"), width)}
	for len(list) > 0 {
		n := min(optionsAcross, len(list))
		items = append(items, p.optionTable(list[:n], am, width).items(p, width)...)
		list = list[n:]
	}
	return items
}

// optionTable has a row for each thing compared and a column for each option.
func (p *Press) optionTable(list []Option, am amounts, width float64) table {
	const name = 48.0
	each := (width - name) / float64(len(list))
	t := table{columns: []col{{width: name}}}
	say := p.say
	drinks := row{cells: []string{say.Say("handout.options.drinks")}}
	food := row{cells: []string{say.Say("handout.options.food")}}
	down := row{cells: []string{say.Say("handout.options.down")}}
	carbohydrate := row{cells: []string{say.Say("handout.options.carbohydrate")}}
	for _, o := range list {
		head := am.typed(o.Name)
		if o.Chosen {
			head = say.Say("handout.options.chosen", head)
		}
		t.columns = append(t.columns, col{head: head, width: each, align: paper.Right, strong: o.Chosen})
		drinks.cells = append(drinks.cells, am.parts(o.Parts))
		food.cells = append(food.cells, orDash(am.foods(o.Foods)))
		verdict := am.deficit(o.Deficit)
		switch spread := am.deficitRange(o.Deficit); {
		case o.Estimate && spread != "":
			verdict = say.Say("handout.options.estimate", spread)
		case o.Deficit.Litres < 0 || o.Deficit.Percent < 0:
			verdict = say.Say("handout.bars.up", verdict)
		}
		down.cells = append(down.cells, verdict)
		carbohydrate.cells = append(carbohydrate.cells, say.Amount(float64(o.Carbohydrate), quantity.Gram))
	}
	t.rows = []row{drinks, food, down, carbohydrate}
	return t
}

// parts writes drinks one under the other.
func (a amounts) parts(list []Part) string {
	var lines []string
	for _, part := range list {
		if part.Litres > 0 && part.Substance != Food {
			lines = append(lines, a.drink(part.Litres.Millilitres(), part.Name))
		}
	}
	return orDash(strings.Join(lines, "\n"))
}

// orDash is the text, or a dash where there is none.
func orDash(s string) string {
	if s == "" {
		return "–"
	}
	return s
}
