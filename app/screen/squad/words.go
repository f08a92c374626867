package squad

import (
	"slices"
	"strconv"
	"strings"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
	"ebbwell/internal/words"
)

// lackKeys are the texts of what is missing.
func lackKey(id string) string { return "squad.lack." + id }

// stateWords say how far an athlete is, in bold, and what is missing below.
func (v *View) stateWords(r squad.Row) (state, missing string) {
	state = v.say("squad.state." + string(r.State))
	if r.Flagged && !r.Flag.Told() {
		state = v.say("squad.state.flag")
	}
	switch {
	case r.Closed && r.Sheet.Test.State == record.TestWaiting:
		return v.say("squad.state.closed"), v.say(lackKey(squad.LackLaboratory))
	case r.Closed:
		return v.say("squad.state.closed"), ""
	}
	if r.State == squad.Playing {
		return state, v.playingWords(r)
	}
	var list []string
	for _, id := range r.Missing {
		list = append(list, v.say(lackKey(id)))
	}
	for _, o := range r.Odd {
		if o.Kept() {
			list = append(list, v.say("squad.keptodd"))
			break
		}
	}
	if len(list) == 0 {
		return state, ""
	}
	return state, v.desk.Words.Commas(list)
}

// playingWords say when a session ends, or begins.
func (v *View) playingWords(r squad.Row) string {
	now := v.desk.Now()
	switch {
	case r.Span.HasStart && now.Before(r.Span.Start):
		return v.say("squad.starts", minutesUntil(r.Span.Start.Sub(now).Minutes()))
	case r.Span.HasEnd:
		return v.say("squad.ends", minutesUntil(r.Span.End.Sub(now).Minutes()))
	}
	return v.say("squad.running")
}

// minutesUntil rounds minutes up to whole ones.
func minutesUntil(minutes float64) int { return max(0, int(minutes+0.999)) }

// lossWords are what is known of the sweat loss: litres, and below it the change and
// the rate; litres only where body mass is hidden.
func (v *View) lossWords(r squad.Row) (loss, under string) {
	if !r.Loss.Known {
		return "", ""
	}
	sp := v.speaker(r.Hidden)
	loss = sp.By.Amount(r.Loss.Value, quantity.Litre)
	var list []string
	if r.Change.Known && !r.Hidden {
		list = append(list, sp.By.Signed(r.Change.Value, quantity.PerCent))
	}
	if r.Rate.Known {
		list = append(list, sp.By.Amount(r.Rate.Value, quantity.LitrePerHour))
	}
	return loss, v.desk.Words.Commas(list)
}

// against says a rate beside the athlete's earlier tests and the group today.
func (v *View) against(i int) string {
	r := v.rows[i]
	if !r.Rate.Known {
		return ""
	}
	sp, list := v.speaker(r.Hidden), []string{}
	if r.Tests > 0 {
		list = append(list, v.say("squad.against.own", sp.By.Amount(r.Usual, quantity.LitrePerHour), r.Tests))
	} else {
		list = append(list, v.say("squad.against.first"))
	}
	if mean, n := squad.MeanRate(v.rows, i); n > 0 {
		list = append(list, v.say("squad.against.group", sp.By.Amount(mean, quantity.LitrePerHour), n))
	}
	return strings.Join(list, " ")
}

// patchWords say how the patches stand: the first in bold where they are due.
func (v *View) patchWords(r squad.Row) (first, second string, due bool) {
	p := r.Patch
	switch {
	case p.On && !p.Known:
		return v.say("squad.patch.on"), "", false
	case p.On && p.Due:
		return v.say("squad.patch.worn", int(p.Minutes)), v.say("squad.patch.now"), true
	case p.On:
		return v.say("squad.patch.worn", max(0, int(p.Minutes))), v.say("squad.patch.by", string(p.By)), false
	case p.Off && p.Known:
		return v.say("squad.patch.minutes", int(p.Minutes)), v.say("squad.patch.off", string(p.At)), false
	case p.Off:
		return v.say("squad.patch.off", string(p.At)), "", false
	}
	return "", "", false
}

// urineWords say what was passed.
func (v *View) urineWords(t record.Test) string {
	switch {
	case t.Loss.NoUrine || t.Loss.Urine.Known() && *t.Loss.Urine.Value == 0:
		return v.say("squad.urine.none")
	case t.Loss.Urine.Known():
		return v.speaker(false).By.Amount(*t.Loss.Urine.Value, quantity.Gram)
	}
	return ""
}

// symptomWords say what was answered.
func (v *View) symptomWords(r squad.Row) string {
	yes := r.Flag.Safety.Yes()
	if len(yes) > 0 {
		var list []string
		for _, x := range yes {
			list = append(list, v.say("squad.symptom."+x))
		}
		return v.desk.Words.Commas(list)
	}
	switch unasked := len(r.Flag.Safety.Unasked()); {
	case unasked == 0:
		return v.say("squad.none")
	case unasked < len(consult.Asked()):
		return v.say("squad.symptoms.some", unasked)
	case r.Flagged:
		return v.say("squad.symptoms.notasked")
	}
	return ""
}

// massWords are a weighing as a closed row shows it: hidden ones say when.
func (v *View) massWords(r squad.Row, m record.Moment) string {
	list := squad.Masses(r.Sheet.Test, m)
	if len(list) == 0 {
		return ""
	}
	last := list[len(list)-1]
	if r.Hidden {
		if m == record.After && last.At != nil {
			return v.say("squad.weighed.at", v.desk.Words.Clock(last.At.In(v.desk.Now().Location())))
		}
		return v.say("squad.weighed")
	}
	return v.kg(*last.Mass.Value)
}

// kg is a mass as it is read on the scale, without its unit: one decimal where that
// says it all.
func (v *View) kg(x float64) string {
	if v.desk.US() || quantity.Round(x, 1) != quantity.Round(x, 3) {
		return v.speaker(false).By.Number(x, quantity.Kilogram)
	}
	return v.desk.Words.Number(x, 1)
}

// withKg is a mass with its unit.
func (v *View) withKg(x float64) string {
	return v.kg(x) + "\u00a0" + string(v.speaker(false).By.Unit(quantity.Kilogram))
}

// mean of the weighings of a moment that are used, and by how much they differ; ok
// is false for fewer than two.
func meanOf(t record.Test, m record.Moment) (mean, apart float64, ok bool) {
	low, high, sum, n := 0.0, 0.0, 0.0, 0
	for _, w := range squad.Masses(t, m) {
		if w.Aside {
			continue
		}
		x := *w.Mass.Value
		if n == 0 {
			low, high = x, x
		}
		low, high, sum, n = min(low, x), max(high, x), sum+x, n+1
	}
	if n < 2 {
		return 0, 0, false
	}
	return sum / float64(n), high - low, true
}

// oddWords say what is odd and what to do about it.
func (v *View) oddWords(r squad.Row, o squad.Odd) (title, sentence string) {
	by := v.speaker(r.Hidden).By
	kg := v.withKg
	g := func(x float64) string { return by.Amount(x, quantity.Gram) }
	bottle := strconv.Itoa(o.Item)
	sentence = v.say("squad.odd.check")
	switch o.Code {
	case squad.OddRate:
		return v.say("squad.odd.rate", by.Amount(o.A, quantity.LitrePerHour)), sentence
	case squad.OddDrinking:
		return v.say("squad.odd.drinking", by.Amount(o.A, quantity.LitrePerHour)), v.say("squad.odd.bottles")
	case squad.OddBottle:
		return v.say("squad.odd.bottle", bottle, g(o.A), g(o.B)), v.say("squad.odd.bottle.check")
	case squad.OddBottleSwap:
		return v.say("squad.odd.swap", bottle), v.say("squad.odd.bottle.check")
	case squad.OddUndrunk:
		return v.say("squad.odd.undrunk", bottle, g(o.A)), v.say("squad.odd.undrunk.check")
	case squad.OddBottleTwice:
		return v.say("squad.odd.twice", strconv.Itoa(o.Other), bottle, g(o.A)), v.say("squad.odd.undrunk.check")
	case squad.OddBottleNext:
		return v.say("squad.odd.next", bottle, o.Name, g(o.A)), v.say("squad.odd.undrunk.check")
	case squad.OddLimit:
		return words.AtStart(desk.ProblemSentence(v.desk.Words, o.Problem)), v.say("squad.odd.limit.check")
	case squad.OddRowTwice:
		return v.say("squad.odd.row", o.Name), v.say("squad.odd.undrunk.check")
	case squad.OddBottleOther:
		return v.say("squad.odd.other", bottle, o.Name), v.say("squad.odd.bottle.check")
	}
	if r.Hidden {
		return v.say("squad.odd.hidden"), sentence
	}
	switch o.Code {
	case squad.OddPounds:
		return v.say("squad.odd.pounds", kg(o.A), kg(o.B)), sentence
	case squad.OddDigits:
		return v.say("squad.odd.digits", kg(o.A), kg(o.B)), sentence
	case squad.OddUsual:
		return v.say("squad.odd.usual", kg(o.A), kg(o.B)), sentence
	case squad.OddAnother:
		return v.say("squad.odd.another", kg(o.A), o.Name), sentence
	case squad.OddSame:
		return v.say("squad.odd.same", kg(o.A)), sentence
	case squad.OddApart:
		return v.say("squad.odd.apart", kg(o.A), kg(o.B)), v.say("squad.odd.third")
	}
	if minutes, ok := r.Sheet.Test.Session.Elapsed(v.desk.Now().Location()); ok {
		return v.say("squad.odd.change", v.kg(o.A), kg(o.B), int(minutes)), sentence
	}
	return v.say("squad.odd.change.untimed", v.kg(o.A), kg(o.B)), sentence
}

// flagWords say a red flag in a row: what it is, what to ask, what is an emergency.
func (v *View) flagWords(r squad.Row) (title string, lines []string) {
	return desk.RowFlag(v.desk.Words, v.speaker(r.Hidden).By, v.desk.Practice(), r.Flag, v.symptomWords(r))
}

// sharedWords say what holds for all.
func (v *View) sharedWords() string {
	g, sp := v.doc.Now().session, v.speaker(false)
	var list []string
	add := func(text string) {
		if text != "" {
			list = append(list, text)
		}
	}
	add(v.timesWords(g))
	add(airWords(sp, g.Air))
	var drinks []string
	for _, b := range g.Bottles {
		drinks = append(drinks, v.drinkName(b.ProductID, b.Name))
	}
	add(v.desk.Words.Commas(slices.Compact(drinks)))
	switch {
	case g.Session.Met.Known():
		add(v.say("squad.effort", v.asTyped(*g.Session.Met.Value)+"\u00a0"+string(quantity.Met)))
	case g.Session.Effort.Known():
		add(v.say("squad.effort", v.asTyped(*g.Session.Effort.Value)))
	}
	if g.ScaleStep.Known() {
		add(v.say("squad.step", v.decimal(*g.ScaleStep.Value)+"\u00a0"+string(quantity.Kilogram)))
	} else {
		add(v.say("squad.step.ask"))
	}
	if kg, beyond, ok := squad.Drift(g); ok && beyond {
		add(v.say("squad.drift", sp.Words.Signed(kg, 2)+"\u00a0"+string(quantity.Kilogram)))
	}
	if minutes, ok := g.Session.Elapsed(v.desk.Now().Location()); ok {
		if p := evidence.Check(evidence.Duration, 0, minutes); p != nil {
			add(desk.ProblemSentence(v.desk.Words, *p))
		}
	}
	if squad.ClocksChanged(g.Session, v.desk.Now().Location()) {
		add(v.say("squad.clocks"))
	}
	return v.say("squad.forall", v.desk.Words.Dots(list))
}

// timesWords are the name, the times and the length of a session.
func (v *View) timesWords(g record.GroupSession) string {
	s := g.Session
	minutes, ok := s.Elapsed(v.desk.Now().Location())
	switch {
	case ok:
		return v.say("squad.times", v.nameOf(g), string(s.Start), string(s.End), int(minutes))
	case s.Start != "":
		return v.say("squad.times.from", v.nameOf(g), string(s.Start))
	}
	return v.say("squad.times.none", v.nameOf(g))
}

// airWords are the air of a session.
func airWords(sp amount.Speaker, a record.Air) string {
	var list []string
	if a.Temperature.Known() {
		list = append(list, amountOf(sp, *a.Temperature.Value, quantity.DegreeCelsius))
	}
	if a.Humidity.Known() {
		list = append(list, amountOf(sp, *a.Humidity.Value, quantity.PerCent))
	}
	if a.Sun != "" {
		list = append(list, sp.Say("sun."+string(a.Sun)))
	}
	if a.Wind.Known() {
		list = append(list, sp.Say("squad.wind", sp.By.Amount(*a.Wind.Value, quantity.MetrePerSecond)))
	}
	if len(list) == 0 {
		return sp.Say("squad.air.none")
	}
	return sp.Words.Commas(list)
}

// amountOf is a value that was read on an instrument: no decimal it does not need.
func amountOf(sp amount.Speaker, x float64, u quantity.Unit) string {
	if sp.By.Unit(u) != u || quantity.Round(x, 0) != quantity.Round(x, 1) {
		return sp.By.Amount(x, u)
	}
	return sp.Words.Number(x, 0) + "\u00a0" + string(u)
}

// drinkName is what a bottle holds.
func (v *View) drinkName(id record.ID, name string) string {
	if p, ok := v.desk.Products().Find(id); ok {
		return p.Name
	}
	if name != "" {
		return name
	}
	return v.say("squad.drink.none")
}

// asTyped is a number with no decimal it does not need, two at most.
func (v *View) asTyped(x float64) string {
	if quantity.Round(x, 0) == quantity.Round(x, 3) {
		return v.desk.Words.Number(x, 0)
	}
	return v.decimal(x)
}

// decimal is a number with one decimal, or two where it needs them.
func (v *View) decimal(x float64) string {
	if quantity.Round(x, 1) == quantity.Round(x, 3) {
		return v.desk.Words.Number(x, 1)
	}
	return v.desk.Words.Number(x, 2)
}
