package tables

import (
	"errors"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// What stands in spreadsheets beside values (common practice, no source): headings again
// in the middle, sums and means below, a height in feet and inches, a limit of a
// laboratory in the place of a value.

// repeatsHeading reports whether a row is the row of the headings again, as in a list that
// was printed in pages.
func (m Mapping) repeatsHeading(s Sheet, row int) bool {
	if m.Heading >= len(s.Rows) || blank(s.Rows[row]) {
		return false
	}
	for i := range max(len(s.Rows[row]), len(s.Rows[m.Heading])) {
		if s.At(row, i).Text != s.At(m.Heading, i).Text {
			return false
		}
	}
	return true
}

// saysNothing reports whether every cell of a row says that there is nothing.
func saysNothing(row []Cell) bool {
	return !slices.ContainsFunc(row, func(c Cell) bool { return !nothing(c.Text) })
}

// summaryWords are the words by which a row below the others is named; besideSummary may
// stand with one.
func summaryWords() (summary, besideSummary []string) {
	return strings.Fields("mean means average averages avg median sd stdev std deviation total totals sum " +
			"mittelwert durchschnitt mittel standardabweichung summe gesamt media promedio mediana desviacion suma moyenne ecart mediane somme"),
		strings.Fields("team squad group all of the and standard dev mannschaft gruppe und equipo grupo estandar y equipe groupe et type")
}

// summarises reports whether a name is that of a sum or a mean.
func summarises(name string) bool {
	summary, beside := summaryWords()
	found := false
	for _, w := range wordsOf(name) {
		is := slices.Contains(summary, w)
		if !is && !slices.Contains(beside, w) {
			return false
		}
		found = found || is
	}
	return found
}

// summaryIn finds the cell by which a row is one of sums or means, which is nobody's.
func (m Mapping) summaryIn(s Sheet, row int) (column int, ok bool) {
	for _, t := range []Target{Name, FamilyName, Sample} {
		column := m.first(t)
		if column < 0 || !summarises(s.At(row, column).Text) {
			continue
		}
		if given := m.first(GivenName); t == FamilyName && given >= 0 && s.At(row, given).Text != "" {
			continue
		}
		return column, true
	}
	return -1, false
}

// needsUnit reports whether a value of a column stands without a unit of its own.
func (w *builder) needsUnit(column int) bool {
	return slices.ContainsFunc(w.m.Rows(w.s), func(row int) bool {
		if _, summary := w.m.summaryIn(w.s, row); summary {
			return false
		}
		cell := w.s.At(row, column)
		_, number := w.m.number(cell)
		return number && strings.TrimRightFunc(cell.Text, unicode.IsDigit) != cell.Text
	})
}

// feet is a height in feet and inches: 6'1", 5 ft 11 in, 5'.
var feet = regexp.MustCompile(`^([1-9])\s*(?:'|’|′|ft\.?|feet|foot)\s*(?:(\d{1,2}(?:\.\d)?)\s*(?:''|"|”|″|in\.?|inches)?)?$`)

// feetAndInches reads such a height, in inches.
func feetAndInches(text string) (inches float64, ok bool) {
	parts := feet.FindStringSubmatch(strings.ToLower(strings.TrimSpace(text)))
	if parts == nil {
		return 0, false
	}
	const each = 12 // inches of a foot
	whole, _ := strconv.Atoi(parts[1])
	if parts[2] == "" {
		return float64(whole * each), true
	}
	rest, err := strconv.ParseFloat(parts[2], 64)
	return float64(whole*each) + rest, err == nil && rest < each
}

// numberOf reads a cell as a number of a target, in the unit of its column or in one of its
// own.
func (w *builder) numberOf(cell Cell, of meaning, unit quantity.Unit) (numeral, quantity.Unit, error) {
	switch of.target {
	case Effort:
		unit = "" // a scale is no unit of a number
	case Height:
		if inches, ok := feetAndInches(cell.Text); ok {
			return numeral{value: inches}, quantity.Inch, nil
		}
	}
	if slices.Contains(of.units, quantity.FluidOunce) { // "32 oz" of a drink is no mass
		cell.Text = fluidOunces(cell.Text)
	}
	read, err := parseNumber(cell, w.m.DecimalComma, unit)
	if err != nil && errors.Is(err, quantity.ErrOtherUnit) { // such as "500 mL" in a column of grams
		return anotherUnit(cell, w.m.DecimalComma, of, unit)
	}
	if of.target == Humidity && read.value > 0 && read.value <= 1 && !strings.Contains(cell.Text, "%") {
		read.value *= 100 // 0.58 is 58 %: air of less than 1 % is nowhere
	}
	return read, unit, err
}

// fluidOunces writes the ounces behind a volume as the fluid ounces they are.
func fluidOunces(text string) string {
	if rest, ok := strings.CutSuffix(strings.ToLower(text), "oz"); ok && !strings.HasSuffix(strings.TrimRight(rest, " \u00a0."), "fl") {
		return strings.TrimSpace(rest) + " fl oz"
	}
	return text
}

// askMass says that a sheet has not both body masses.
func (w *builder) askMass(t record.Test) {
	target := MassBefore
	if slices.ContainsFunc(t.Weighings, func(x record.Weighing) bool { return x.Moment == record.Before }) {
		target = MassAfter
	}
	if len(t.Weighings) < 2 {
		w.ask(Question{Column: w.m.first(target), Code: QuestionNoMass})
	}
}

// bound reports whether a cell gives a limit in the place of a value, such as "<1.0".
func bound(text string) bool {
	rest := strings.TrimLeft(text, "<>≤≥= ")
	return len(rest) < len(text) && strings.ContainsAny(text[:len(text)-len(rest)], "<>≤≥") && rest != "" && rest[0] >= '0' && rest[0] <= '9'
}

// onlyBound asks about a limit of a laboratory, which is no value: the patch stays empty.
func (w *builder) onlyBound(column int) bool {
	if !w.m.Columns[column].Target.Sited() || !bound(w.s.At(w.at, column).Text) {
		return false
	}
	w.ask(Question{Column: column, Code: QuestionBound})
	return true
}
