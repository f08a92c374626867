package squad

import (
	"slices"
	"strconv"
	"strings"

	"ebbwell/internal/plain"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Number is what an athlete is known by: the bib, else the place in the order of the
// scale.
func (r Row) Number() string {
	if r.Member.Bib != "" {
		return r.Member.Bib
	}
	return strconv.Itoa(r.Member.Order)
}

// Match lists the rows that a typed text may mean: a bib number as a whole, else
// the beginning of any word of a name; those that begin with it first. Two with one
// name are both found, and told apart by their bibs.
func Match(rows []Row, text string) []int {
	text = plain.Text(text)
	if text == "" {
		return nil
	}
	var bibs, begins, holds []int
	apart := strings.NewReplacer("'", " ", "’", " ") // what stands behind an apostrophe begins a word too
	for i, r := range rows {
		name := plain.Text(r.Sheet.Athlete.Name)
		words := append(strings.Fields(name), plain.Words(apart.Replace(r.Sheet.Athlete.Name))...)
		switch {
		case plain.Text(r.Number()) == text:
			bibs = append(bibs, i)
		case strings.HasPrefix(name, text):
			begins = append(begins, i)
		case slices.ContainsFunc(words, func(w string) bool { return strings.HasPrefix(w, text) }):
			holds = append(holds, i)
		}
	}
	if len(bibs) > 0 {
		return bibs
	}
	return append(begins, holds...)
}

// Amounts is what was typed into the field of refills: "610" is a refill, "300+310"
// two, "610-50" a refill and 50 g poured away; ok is false where it cannot be read.
func Amounts(text string) (added []float64, poured float64, ok bool) {
	text = strings.NewReplacer(" ", "", "−", "-", "–", "-").Replace(text)
	sign, from := 1.0, 0
	take := func(part string, sign float64) bool {
		n, err := quantity.Parse(part, quantity.Gram)
		if err != nil || n.Value < 0 {
			return false
		}
		switch {
		case sign < 0:
			poured += n.Value
		case n.Value > 0:
			added = append(added, n.Value)
		}
		return true
	}
	for i, c := range text + "+" {
		if c != '+' && c != '-' {
			continue
		}
		if part := text[from:i]; part != "" {
			if !take(part, sign) {
				return nil, 0, false
			}
		} else if i > 0 {
			return nil, 0, false
		}
		from, sign = i+1, 1
		if c == '-' {
			sign = -1
		}
	}
	return added, poured, true
}

// AmountsOf writes what was added to a bottle and poured away as [Amounts] reads it:
// "300+310−50"; number writes the grams.
func AmountsOf(b record.Bottle, number func(grams float64) string) string {
	var list []string
	for _, r := range b.Refills {
		if r.Added.Known() {
			list = append(list, number(*r.Added.Value))
		}
	}
	text := strings.Join(list, "+")
	if poured := b.Poured.Or(0); poured > 0 {
		text += "−" + number(poured)
	}
	return text
}

// PutAmounts writes refills and what was poured away into a bottle; rows that are
// there keep their ids.
func PutAmounts(b *record.Bottle, added []float64, poured float64) {
	for i, x := range added {
		if i >= len(b.Refills) {
			b.Refills = append(b.Refills, record.Refill{Meta: record.Meta{ID: record.NewID()}, Order: i + 1})
		}
		b.Refills[i].Added = record.Num(x, quantity.Gram)
	}
	b.Refills = b.Refills[:len(added)]
	b.Poured = record.Number{}
	if poured > 0 {
		b.Poured = record.Num(poured, quantity.Gram)
	}
}
