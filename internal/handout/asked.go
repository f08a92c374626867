package handout

import (
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// ask is the field of the test sheet with a path, to be written in by hand: its words
// and its unit are those it is described with, see [record.SheetFields].
func (s sheet) ask(path string, share float64, ticks ...string) box {
	f, _ := record.SheetFieldOf(path)
	return box{label: s.words(path), unit: s.unitOf(f.Unit), share: share, ticks: ticks}
}

// clock is a time of day to be written in.
func (s sheet) clock(path string, share float64, ticks ...string) box {
	b := s.ask(path, share, ticks...)
	b.unit = s.p.say.Say("handout.blank.clock")
	return b
}

// with is the field with what is known already.
func (b box) with(filled string) box {
	b.filled = filled
	return b
}

// words are the words of a field on paper.
func (s sheet) words(path string) string {
	f, _ := record.SheetFieldOf(path)
	return s.p.say.Say(f.Paper)
}

// column is a field as the head of a column: its words over its unit.
func (s sheet) column(path string, width float64) gridCol {
	f, _ := record.SheetFieldOf(path)
	head := s.words(path)
	if u := s.unitOf(f.Unit); u != "" && f.Unit != quantity.Portion {
		head += "\n" + u
	}
	return gridCol{head, width}
}

// unitOf is the unit a field is asked in.
func (s sheet) unitOf(u quantity.Unit) string {
	asked := map[quantity.Unit]quantity.Unit{
		quantity.Kilogram: s.u.body, quantity.Gram: s.u.bottle, quantity.Millilitre: s.u.volume, quantity.Litre: s.u.whole,
		quantity.DegreeCelsius: s.u.air, quantity.MetrePerSecond: s.u.wind, quantity.KilometrePerHour: s.u.speed, quantity.Metre: s.u.altitude,
	}
	if other, ok := asked[u]; ok {
		u = other
	}
	return string(u)
}
