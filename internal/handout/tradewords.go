package handout

import (
	"math"
	"strconv"
	"strings"

	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// uncertainDigits is how many digits of an uncertainty are written: JCGM 100:2008,
// 7.2.6.
const uncertainDigits = 2

// symbol is the trade's word for a symbol; one of several keeps its number.
func (p *Press) symbol(symbol string) string {
	base := strings.TrimRight(symbol, "0123456789")
	key := "findings.symbol." + base
	if !p.say.Has(key) {
		return symbol
	}
	if number := symbol[len(base):]; number != "" {
		return p.say.Say("findings.symbol.numbered", p.say.Say(key), number)
	}
	return p.say.Say(key)
}

// formula writes a formula and what goes into it.
func (p *Press) formula(w figure.Why) string {
	if w.Formula == "" {
		return ""
	}
	var inputs []string
	for _, in := range w.Inputs {
		s := p.symbol(in.Symbol) + " = " + p.significant(in.Value)
		if in.U > 0 {
			s += " ± " + p.say.Number(in.U, figure.Decimals(in.U, uncertainDigits, 9))
		}
		if in.Unit != quantity.None {
			s += "\u00a0" + string(in.Unit)
		}
		inputs = append(inputs, s)
	}
	formula := w.Print(p.symbol)
	if len(inputs) == 0 {
		return formula
	}
	return p.say.Say("handout.report.formula", formula, p.say.Semicolons(inputs))
}

// budget writes what the range is made of, the largest three.
func (p *Press) budget(w figure.Why) string {
	var parts []string
	for _, share := range w.Budget[:min(3, len(w.Budget))] {
		parts = append(parts, p.sourceName(share.Source)+" "+p.say.Number(100*share.Part, 0)+"\u00a0%")
	}
	if len(parts) == 0 {
		return ""
	}
	return p.say.Say("handout.report.budget", p.say.Commas(parts))
}

// sourceName is the word for what contributes to a range. A label's error is
// named after its product, whose id is no word.
func (p *Press) sourceName(source string) string {
	if strings.HasPrefix(source, consult.SourceLabel) {
		return p.say.Say("source.label")
	}
	if key := "source." + source; p.say.Has(key) {
		return p.say.Say(key)
	}
	return source
}

// sources lists the references of a figure, each once. What was published keeps its own
// title; what was not is said in the language of the page.
func (p *Press) sources(w figure.Why) (list []string) {
	seen := map[string]bool{}
	for _, id := range w.Sources {
		name := id
		if e, ok := evidence.Find(id); ok {
			name = p.sourceTitle(e)
		}
		if !seen[name] {
			seen[name] = true
			list = append(list, name)
		}
	}
	return list
}

// sourceTitle is what a source is called on the page.
func (p *Press) sourceTitle(e evidence.Entry) string {
	if e.Sure == evidence.Proposal {
		return p.say.Say("handout.report.source.own")
	}
	return e.Source.Title(p.say.Say)
}

// significant writes a number with four significant digits and no idle zeros.
func (p *Press) significant(x float64) string {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return strconv.FormatFloat(x, 'g', -1, 64)
	}
	decimals := 3 - int(math.Floor(math.Log10(math.Abs(x))))
	decimals = min(max(decimals, 0), 9)
	for decimals > 0 && math.Abs(quantity.Round(x, decimals-1)-quantity.Round(x, decimals)) < math.Pow(10, float64(-decimals))/10 {
		decimals--
	}
	return p.say.Number(x, decimals)
}
