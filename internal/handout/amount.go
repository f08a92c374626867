package handout

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"ebbwell/internal/quantity"
	"ebbwell/internal/words"
)

// amounts writes numbers as a page of these terms shows them.
type amounts struct {
	say                      *words.Words
	us, hidden, saltWithheld bool
	concealed                map[string]string
}

func (p *Press) amounts(t Terms) amounts {
	return amounts{say: p.say, us: t.USUnits, hidden: t.MassHidden, saltWithheld: t.SaltWithheld, concealed: p.concealed}
}

// millilitres writes a volume to be drunk: "120 mL" or "4 fl oz". Ounces are rounded
// down, but for less than one: rounded up at every break, they would come to more
// than the plan.
func (a amounts) millilitres(v quantity.Millilitres) string {
	if !a.us {
		return a.say.Amount(float64(v), quantity.Millilitre)
	}
	ounces := convert(float64(v.Litres()), quantity.Litre, quantity.FluidOunce)
	if ounces > 1 {
		ounces = math.Floor(ounces + 1e-6)
	}
	return a.say.Amount(ounces, quantity.FluidOunce)
}

// drink writes a volume of a drink: "120 mL water".
func (a amounts) drink(v quantity.Millilitres, name string) string {
	return a.say.AmountOf(a.millilitres(v), unmarked(a.product(name)))
}

// size writes the volume of a bottle or a mouthful, to the nearest ounce.
func (a amounts) size(v quantity.Millilitres) string {
	if a.us {
		return a.say.Amount(convert(float64(v.Litres()), quantity.Litre, quantity.FluidOunce), quantity.FluidOunce)
	}
	return a.say.Amount(float64(v), quantity.Millilitre)
}

// volume writes a volume of a whole session: "2.15 L" or "73 fl oz".
func (a amounts) volume(v quantity.Litres) string {
	x, u := a.inLitres(v)
	return a.say.Amount(x, u)
}

// volumes writes a range of volumes: "2.04 to 2.26 L".
func (a amounts) volumes(r quantity.Range) string {
	low, u := a.inLitres(quantity.Litres(r.Low))
	high, _ := a.inLitres(quantity.Litres(r.High))
	return a.between(low, high, u)
}

func (a amounts) inLitres(v quantity.Litres) (float64, quantity.Unit) {
	if a.us {
		return convert(float64(v), quantity.Litre, quantity.FluidOunce), quantity.FluidOunce
	}
	return float64(v), quantity.Litre
}

// air writes a range of temperatures: "28 to 33 °C".
func (a amounts) air(r quantity.Range) string {
	if a.us {
		return a.between(
			convert(r.Low, quantity.DegreeCelsius, quantity.DegreeFahrenheit),
			convert(r.High, quantity.DegreeCelsius, quantity.DegreeFahrenheit), quantity.DegreeFahrenheit)
	}
	return a.between(r.Low, r.High, quantity.DegreeCelsius)
}

// between writes two ends in one unit; ends that read alike are written once.
func (a amounts) between(low, high float64, u quantity.Unit) string {
	d := quantity.Decimals(u)
	if u == quantity.DegreeCelsius || u == quantity.DegreeFahrenheit {
		d = 0
	}
	l, h := a.say.Number(low, d), a.say.Number(high, d)
	if l == h {
		return h + "\u00a0" + string(u)
	}
	return a.say.Say("handout.between", l, h+"\u00a0"+string(u))
}

// deficit writes the deficit at the end: per cent of body mass, or litres
// where mass is hidden. The sign is left to the sentence around it.
func (a amounts) deficit(d Deficit) string {
	if a.hidden || !d.PercentKnown {
		return a.volume(quantity.Litres(math.Abs(float64(d.Litres))))
	}
	return a.say.Amount(math.Abs(float64(d.Percent)), quantity.PerCent)
}

// deficitRange writes its range, in the unit of [amounts.deficit]; empty when
// there is none.
func (a amounts) deficitRange(d Deficit) string {
	switch {
	case !d.Ranged:
		return ""
	case a.hidden || !d.PercentKnown:
		return a.volumes(d.LitresRange)
	}
	return a.between(d.PercentRange.Low, d.PercentRange.High, quantity.PerCent)
}

// convert is [quantity.Convert] for units known to be of one kind.
func convert(x float64, from, to quantity.Unit) float64 {
	y, err := quantity.Convert(x, from, to)
	if err != nil {
		return x
	}
	return y
}

// typed is a text that a person typed, as the page may show it. Where mass is
// hidden, masses, energies and per cents in it give way to a visible word.
func (a amounts) typed(s string) string {
	if !a.hidden {
		return s
	}
	if done, ok := a.concealed[s]; ok {
		return done
	}
	done := Concealed(s, a.say)
	a.concealed[s] = done
	return done
}

// Concealed is a text that a person typed, for where body mass is hidden: masses,
// energies and per cents in it give way to a visible word.
func Concealed(text string, w *words.Words) string {
	return telltale().ReplaceAllLiteralString(text, w.Say("handout.concealed"))
}

// product is the name of a drink or food; no line ends before its sign for per
// cent. A strength in per cent says nothing of body mass; where mass is hidden
// it is written as grams in 100 mL, so that no per cent stands on the page.
func (a amounts) product(s string) string {
	if !a.hidden {
		return strings.ReplaceAll(s, " %", "\u00a0%")
	}
	strength := regexp.MustCompile(`(\d+(?:[.,]\d+)?)[\s\x{00a0}\x{202f}]*%`)
	return a.typed(strength.ReplaceAllString(s, a.say.Say("handout.strength", "${1}")))
}

// packed is an amount to pack. Powder in kilograms says nothing of body mass;
// where mass is hidden it is written in grams, so that no kilogram stands on
// the page.
func (a amounts) packed(s string) string {
	if !a.hidden {
		return s
	}
	kilograms := regexp.MustCompile(`(?i)(\d+(?:[.,]\d+)?)[\s\x{00a0}\x{202f}]*kg\b`)
	s = kilograms.ReplaceAllStringFunc(s, func(found string) string {
		number := kilograms.FindStringSubmatch(found)[1]
		x, err := strconv.ParseFloat(strings.Replace(number, ",", ".", 1), 64)
		if err != nil {
			return found
		}
		return a.say.Amount(x*1000, quantity.Gram)
	})
	return a.typed(s)
}

// telltale finds what mass could be worked out of: numbers with a unit of
// mass, of energy or per cent; anything per kilogram; such units alone.
func telltale() *regexp.Regexp {
	const gap = `[\s\x{00a0}\x{202f}]*`
	const number = `\d+(?:[.,]\d+)?`
	const unit = `(?:kgs?|kilo(?:gram(?:me)?)?s?|lbs?|kcal|kilocalories|calories)`
	return regexp.MustCompile(`(?i)` +
		number + gap + `(?:` + unit + `|pounds?|stones?|kj|cal|per\s?cent)\b` +
		`|(?:` + number + gap + `)?[%％‰]` +
		`|(?:(?:` + number + gap + `)?\b[a-zµ]+` + gap + `/` + gap + `)?\b` + unit + `\b` +
		`|\bbmi\b(?:` + gap + number + `)?` +
		`|㎏`)
}
