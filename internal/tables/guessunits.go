package tables

import (
	"slices"
	"strings"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// unit finds the unit of a column: in its heading, else by its values.
func (m Mapping) unit(s Sheet, i int) Column {
	c := m.Columns[i]
	of, ok := meaningOf(c.Target)
	if !ok || len(of.units) == 0 {
		c.Unit = ""
		return c
	}
	if c.Target == Effort {
		c.Unit, c.FromValues = m.scale(s, i)
		return c
	}
	if u, ok := headingUnit(c.Heading, of); ok {
		c.Unit = u
		return c
	}
	c.Unit, c.FromValues = m.unitOfValues(s, i, of), len(of.units) > 1
	return c
}

// headingUnit finds a unit of a target in a heading.
func headingUnit(heading string, of meaning) (quantity.Unit, bool) {
	inside, rest := brackets(heading)
	words := strings.FieldsFunc(rest, func(r rune) bool { return strings.ContainsRune(" _,;:-", r) })
	for i := len(words) - 1; i > 0; i-- {
		if i < len(words)-1 {
			inside = append(inside, words[i]+words[i+1])
		}
		inside = append(inside, words[i])
	}
	for _, text := range inside {
		u, ok := unitOf(text)
		if ok && u == quantity.Ounce && slices.Contains(of.units, quantity.FluidOunce) {
			u = quantity.FluidOunce
		}
		if ok && slices.Contains(of.units, u) {
			return u, true
		}
	}
	return "", false
}

// unitOfValues is the unit in which most values of a column are not odd; of those
// with as many the first. A whole column of volumes that could all be litres is in
// litres: nobody drinks a few millilitres.
func (m Mapping) unitOfValues(s Sheet, column int, of meaning) quantity.Unit {
	limit, limited := evidence.LimitOf(of.field)
	values := m.values(s, column)
	if !limited || len(values) == 0 {
		return of.units[0]
	}
	if slices.Contains(of.units, quantity.Litre) {
		if most := slices.Max(values) * 1000; most > 0 && most <= limit.Refuse.High {
			return quantity.Litre
		}
	}
	best, most := of.units[0], 0
	for _, u := range of.units {
		n := 0
		for _, x := range values {
			if y, err := toUnit(x, u, of); err == nil && limit.Warn.Contains(y) {
				n++
			}
		}
		if n > most {
			best, most = u, n
		}
	}
	return best
}

// values are the numbers of a column.
func (m Mapping) values(s Sheet, column int) []float64 {
	var list []float64
	for _, row := range m.Rows(s) {
		if x, ok := m.number(s.At(row, column)); ok {
			list = append(list, x)
		}
	}
	return list
}

// ounces takes volumes without a unit for fluid ounces where bodies are weighed in
// pounds and no volume is above what a few bottles hold.
func (m *Mapping) ounces(s Sheet) {
	const most = 200 // fl oz, 5.9 L
	pounds := slices.ContainsFunc(m.Columns, func(c Column) bool {
		return (c.Target == MassBefore || c.Target == MassAfter) && c.Unit == quantity.Pound
	})
	if !pounds {
		return
	}
	for i, c := range m.Columns {
		if !c.FromValues || c.Unit != quantity.Millilitre && c.Unit != quantity.Litre {
			continue
		}
		if values := m.values(s, i); len(values) > 0 && slices.Max(values) <= most {
			m.Columns[i].Unit = quantity.FluidOunce
		}
	}
}
