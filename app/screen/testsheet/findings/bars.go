package findings

import (
	"math"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/words"
)

// session says what was done: "In 95 minutes of hard field hockey at 31 °C".
func (sp speaker) session(in Input) string {
	f := in.Findings
	what := desk.SportWord(sp.Words, f.Test.Session.Sport)
	if what == "" {
		what = sp.Say("findings.session.play")
	}
	switch fuel.EffortOf(f.Test.Session.Effort.Or(-1)) {
	case fuel.Easy:
		what = sp.Say("findings.session.easy", what)
	case fuel.Hard:
		what = sp.Say("findings.session.hard", what)
	}
	minutes := sp.Words.Number(math.Round(f.Minutes), 0)
	air := f.Test.Air.Temperature
	switch {
	case !f.Timed:
		return words.AtStart(what)
	case air.Known():
		t, err := quantity.Convert(*air.Value, quantity.DegreeCelsius, sp.By.Unit(quantity.DegreeCelsius))
		if err == nil {
			return sp.Say("findings.session.air", minutes, what, sp.withUnit(sp.Words.Number(t, 0), sp.By.Unit(quantity.DegreeCelsius)))
		}
	}
	return sp.Say("findings.session", minutes, what)
}

// bars is what went out, came in and was left over.
func (sp speaker) bars(in Input) chart.InOutData {
	f := in.Findings
	fluid := f.Sweat.Fluid
	beside := f.Beside(sp.By.Hidden)
	d := chart.InOutData{Out: fluid.Loss.Value + beside, Beside: beside, In: inParts(f)}
	d.OutWords = chart.Wording{Name: sp.Say("findings.bars.out"), Title: sp.Say("findings.bars.sweat", sp.By.Found(fluid.Loss)), Note: sp.outNote(f)}
	d.InWords = chart.Wording{Name: sp.Say("findings.bars.in"), Title: sp.Say("findings.bars.drunk", sp.By.Found(fluid.Drunk)), Note: sp.share(fluid.Replaced)}
	d.LeftWords = sp.leftWords(f)
	if !sp.By.Hidden && fluid.DeficitShare.Known && fluid.Deficit.Value > 0 {
		d.Limit = f.LimitDeficit()
		d.LimitText = sp.Say("findings.bars.limit", sp.By.Limit(f.Limit, quantity.PerCent))
	}
	if guess := f.Test.Loss.Guess; guess.Known() {
		d.Estimate, d.EstimateText = *guess.Value, sp.guess(in)
	}
	d.Summary = sp.Words.Commas([]string{d.OutWords.Title, d.InWords.Title, d.LeftWords.Title})
	return d
}

// guess says what the athlete thought.
func (sp speaker) guess(in Input) string {
	key := "findings.guessed"
	if in.Athlete.Sex != "" {
		key = "findings.guessed." + string(in.Athlete.Sex)
	}
	x, u := *in.Findings.Test.Loss.Guess.Value, sp.By.Unit(quantity.Litre)
	if shown, err := quantity.Convert(x, quantity.Litre, u); err == nil {
		x = quantity.Round(shown, quantity.Decimals(u))
	}
	return sp.Say(key, sp.withUnit(sp.significant(x), u))
}

// inParts is what came in, by substance, kg: with it the bars add up to what the
// scale says.
func inParts(f consult.Findings) []chart.Part {
	in := f.TakenIn()
	return []chart.Part{{Of: look.Water, Value: in.Water}, {Of: look.Drink, Value: in.Drink}, {Of: look.Food, Value: in.Food}}
}

// outNote is the rate, and what left beside the sweat, which is the thin end of
// the bar.
func (sp speaker) outNote(f consult.Findings) string {
	note, o := sp.By.Found(f.Sweat.Fluid.Rate), f.OtherLosses()
	switch breath := sp.By.Amount(o.Breath, quantity.Litre); {
	case o.Urine > 0 && o.Breath > 0 && !sp.By.Hidden:
		return sp.Say("findings.bars.beside.both", note, breath, sp.By.Amount(o.Urine, quantity.Litre))
	case o.Breath > 0 && !sp.By.Hidden:
		return sp.Say("findings.bars.beside", note, breath)
	case o.Urine > 0:
		return sp.Say("findings.bars.urine", note, sp.By.Amount(o.Urine, quantity.Litre))
	}
	return note
}

// leftWords are the words of the lowest bar.
func (sp speaker) leftWords(f consult.Findings) chart.Wording {
	fluid := f.Sweat.Fluid
	w := chart.Wording{Name: sp.Say("findings.bars.left")}
	key := "findings.bars.deficit"
	amount := fluid.Deficit
	if amount.Value < 0 {
		key, amount.Value = "findings.bars.gain", -amount.Value
	}
	w.Title = sp.Say(key, sp.By.Found(amount))
	if sp.By.Hidden || !fluid.DeficitShare.Known {
		if fluid.Deficit.Ranged && fluid.Deficit.Value >= 0 {
			w.Note = sp.Say("findings.bars.range", sp.By.Range(fluid.Deficit))
		}
		return w
	}
	found, within := sp.change(fluid.DeficitShare)
	w.Title = sp.Say("findings.bars.percent", w.Title, found)
	if within != "" {
		w.Note = sp.Say("findings.bars.range", within+"\u00a0"+string(quantity.PerCent))
	}
	return w
}
