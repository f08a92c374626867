package trip

import (
	"context"
	"slices"
	"strings"

	"golang.org/x/text/language"

	"ebbwell/app/screen/heat"
	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/handout"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// in is the trip as it is worded in another language, for pages.
func (v *View) in(tag language.Tag) (*View, error) {
	d, err := v.desk.In(tag)
	if err != nil || d == v.desk {
		return v, err
	}
	other := *v
	other.desk, other.places = d, v.places.Named(d.Words.City, d.Words.Country)
	return &other, nil
}

// pageOf puts a traveller's stops and packing list on paper: the same words as
// on the screen.
func (v *View) pageOf(m *member) handout.TripPage {
	sp, t := v.speaker(m), v.now()
	care := care.Of(m.athlete, v.desk.Now())
	page := handout.TripPage{Terms: handout.TermsOf(v.desk.Practice(), care, v.desk.Words), Trip: title(sp, t), Athlete: m.athlete.Name}
	page.Terms.MassHidden = sp.By.Hidden
	for i, s := range t.Stops {
		there, err := v.plan(m, s)
		page.Stops = append(page.Stops, v.stopOnPaper(sp, m, there, err, i))
		if there.Air.FromTable {
			page.ClimateCredit = v.places.Credit
		}
	}
	page.Packing = v.packLines(sp, v.packFor(m).list)
	page.Notes = v.pageNotes()
	return page
}

// squadPage is the packing list of everybody together.
func (v *View) squadPage() handout.TripPage {
	sp, t := v.speaker(nil), v.now()
	made := packAll(context.Background(), v.packJobs(everybody))
	page := handout.TripPage{
		Terms: handout.TermsOf(v.desk.Practice(), care.Care{}, v.desk.Words), Trip: sp.Words.Say("trip.page.squad", title(sp, t)),
		Packing: v.packLines(sp, sumOf(made)), Notes: v.pageNotes(),
	}
	for _, one := range made {
		if text := v.carried(one); text != "" {
			page.Notes = append(page.Notes, sp.Words.Say("trip.each.page", one.member.athlete.Name, text))
		}
	}
	return page
}

// pageNotes are the sentences about the flight, food and water.
func (v *View) pageNotes() []string {
	var notes []string
	if flight := v.flightSentence(); flight != "" {
		notes = append(notes, flight)
	}
	return append(notes, careNotes(v.desk.Words.Say)...)
}

// stopOnPaper is one stop on a traveller's page.
func (v *View) stopOnPaper(sp heat.Speaker, m *member, there consult.StopPlan, err error, i int) handout.TripStop {
	s := there.Stop
	out := handout.TripStop{Place: stopPlace(sp, s, i)}
	out.From, _ = s.From.Time()
	out.Until, _ = s.Until.Time()
	if err != nil {
		for _, t := range sp.Troubles(err, s) {
			out.Cautions = append(out.Cautions, t.Sentence)
		}
		return out
	}
	if t := there.Air.Air.Temperature; t.Known() {
		out.Air, out.AirKnown = quantity.Range{Low: *t.Value, High: *t.Value}, true
	}
	if h := there.Air.Air.Humidity; h.Known() {
		out.Humidity = quantity.Percent(*h.Value)
	}
	r := there.Calculation
	answer := sp.Answer(r, sp.DaysOf(s))
	rate := r.Climate.Rate
	if rate.Ranged {
		out.Rate = handout.StopRate{Rate: sp.Rate(rate.Value), Range: sp.Rates(rate.Range), Estimate: rate.Estimate}
	}
	out.Rests, out.Conditions = answer.Short, conditions(sp, m, there)
	out.Plan = planOnPaper(sp, m, there)
	out.Notes = v.stopNotes(sp, m, there, answer)
	judged := v.judged([]*member{m}, s)
	out.Verdict, out.Calm = pageVerdict(sp, judged), sp.Verdict(judged).Level == climate.UsualCare
	if there.Planned && !there.TooUncertain() {
		if high, more := planCaution(sp, there); high+more != "" {
			out.Cautions = append(out.Cautions, strings.TrimSpace(high+" "+more))
		}
	}
	return out
}

// stopNotes are what to do there: with the plan, on other days, and when to
// test.
func (v *View) stopNotes(sp heat.Speaker, _ *member, there consult.StopPlan, answer heat.Answer) []string {
	var notes []string
	switch {
	case there.Unlike():
		notes = append(notes, sp.Words.Say("trip.page.unlike"))
	case !there.TooUncertain():
	default:
		notes = append(notes, sp.Words.Say("trip.page.uncertain", sp.Words.Number(evidence.EstimateTooWide, 0)))
	}
	if there.Planned && !there.TooUncertain() {
		notes = append(notes, strings.Join(append(pageCut(sp, there), otherDays(sp, there)...), " "))
	}
	notes = append(notes, answer.There)
	if lines, test := heatLines(sp, there); len(lines) > 0 && there.Days[0].Code != climate.Adapted {
		notes = append(notes, strings.TrimSpace(strings.Join(append(lines, test), " ")))
	}
	return notes
}

// pageVerdict is what the heat asks for, the reason that decides it, and whose rule comes
// first.
func pageVerdict(sp heat.Speaker, list []heat.Judged) string {
	verdict := sp.Verdict(list)
	return strings.Join([]string{handout.Titled(verdict.Title, verdict.Sentence), sp.Words.Say("caution." + climate.LocalPolicyWins)}, " ")
}

// conditions are the session there as a page names it: what, how long and how hard it is, in
// which sun and at what hour. The air stands beside it.
func conditions(sp heat.Speaker, m *member, there consult.StopPlan) string {
	air := there.Air
	air.Air.Temperature = record.Number{}
	parts := []string{airSentence(sp, there.Stop, air, []*member{m})}
	if there.Planned {
		parts = append([]string{sessionName(sp, there.Case.Plan, m.athlete)}, parts...)
	}
	return sp.Words.Dots(slices.DeleteFunc(parts, func(s string) bool { return s == "" }))
}

// pageCut says on a page that the plan is as agreed, or was cut down.
func pageCut(sp heat.Speaker, there consult.StopPlan) []string {
	if !there.Cut {
		return []string{sp.Words.Say("trip.plan.as-agreed")}
	}
	return cutSentences(sp, there)
}

// planOnPaper is what to take in a session there.
func planOnPaper(sp heat.Speaker, m *member, there consult.StopPlan) handout.StopPlan {
	if !there.Planned || there.TooUncertain() {
		return handout.StopPlan{}
	}
	out := handout.StopPlan{Session: sessionName(sp, there.Case.Plan, m.athlete), Minutes: quantity.Minutes(there.At.Minutes)}
	for s := plan.Water; s <= plan.Drink3; s++ {
		if info := there.Case.Slots[s]; info.InUse && there.Mix[s] > 0 {
			part := handout.Part{Substance: handout.Drink, Name: sp.Words.FoodWithin(info.Product.ID, info.Product.Name), Litres: quantity.Litres(there.Mix[s] / 1000)}
			if s == plan.Water {
				part.Substance = handout.Water
			}
			out.Parts = append(out.Parts, part)
		}
	}
	for s := plan.Food1; s <= plan.Food4; s++ {
		if info := there.Case.Slots[s]; info.InUse && there.Mix[s] > 0 {
			out.Foods = append(out.Foods, handout.Portion{Name: sp.Words.FoodWithin(info.Product.ID, info.Product.Name), Portions: there.Mix[s]})
		}
	}
	q := there.At
	out.Carbohydrate = quantity.GramsPerHour(q.Carbohydrate.TotalGH)
	end := func(percent, litres float64) handout.Deficit {
		return handout.Deficit{Percent: quantity.Percent(percent), PercentKnown: q.Deficit.Known, Litres: quantity.Litres(litres)}
	}
	out.Low, out.High = end(q.Deficit.Low, q.DeficitL.Low), end(q.Deficit.High, q.DeficitL.High)
	return out
}

// packLines is a packing list on paper. What goes partly in hand luggage has a
// line for each way.
func (v *View) packLines(sp heat.Speaker, list climate.PackingList) []handout.PackLine {
	t := v.now()
	var lines []handout.PackLine
	for _, s := range list.Supplies {
		line := handout.PackLine{What: v.productName(s.Supply.ID), Amount: packAmount(sp, s), Where: handout.Hold(sourceOf(t, s)), Supplement: s.Supply.Supplement, Lot: s.Supply.Lot}
		if s.HandLuggage > 0 && s.HandLuggage < s.Servings && sourceOf(t, s) == climate.Hold {
			line.Amount = sp.Words.Say("trip.page.hand", line.Amount, s.HandLuggage)
		}
		lines = append(lines, line)
	}
	if list.Bottles > 0 {
		lines = append(lines, handout.PackLine{What: sp.Words.Say("trip.page.bottles", bottle(sp)), Amount: sp.Words.Number(float64(list.Bottles), 0), Where: handout.Carry})
	}
	if list.SafeWater > 0 {
		lines = append(lines, handout.PackLine{What: sp.Words.Say("trip.page.water"), Amount: sp.Words.Say("trip.page.aday", packLitres(sp, float64(list.SafeWater))), Where: handout.Buy})
	}
	return lines
}

// pageName is the name of a page's file, without its ending.
func (v *View) pageName(m *member) string {
	sp, t := v.speaker(nil), v.now()
	if m == nil {
		return sp.Words.Say("trip.file.squad", title(sp, t))
	}
	return sp.Words.Say("trip.file", m.athlete.Name, title(sp, t))
}
