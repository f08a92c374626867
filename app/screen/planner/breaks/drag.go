package breaks

import (
	"slices"

	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// dragged is the amount that a column is dragged to, until it is let go.
type dragged struct {
	on   bool
	stop int
	ml   float64
}

// Drag shows a column at another height, no higher than the chance carries.
func (t *BreaksTab) Drag(stop int, to float64) {
	v := t.v
	if !v.Now.Draft() || stop >= len(v.Live.Take.Takes) {
		return
	}
	take := v.Live.Take.Takes[stop]
	ml := quantity.RoundTo(min(to, take.Chance.MostML()-evidence.ScheduleRound/2), evidence.ScheduleRound)
	t.grip = dragged{on: true, stop: stop, ml: ml}
	var drink [plan.Drinks]float64
	for d, of := range take.ByDrink {
		if take.ML > 0 {
			drink[d] = ml * float64(of) / float64(take.ML)
		}
	}
	if take.ML == 0 {
		drink[plan.Water] = ml
	}
	shown := &t.data.Stops[stop]
	shown.Parts, shown.Amount, shown.Mouthfuls = wording.PartsOf(drink, take.Food), v.Speaker.Millilitres(ml), ""
	t.picture.Set(t.data)
}

// Release sets the amount of the chance; the others are filled around it.
func (t *BreaksTab) Release() {
	v, grip := t.v, t.grip
	t.grip = dragged{}
	if !grip.on || grip.stop >= len(v.Live.Take.Takes) {
		return
	}
	chance := v.Live.Take.Takes[grip.stop].Chance
	at := slices.IndexFunc(v.Now.Plan.Chances, func(c record.Chance) bool { return sameChance(chance, c) })
	if at < 0 {
		return
	}
	id := v.Now.Plan.Chances[at].ID
	v.Binder.Pick("planner.breaks.set", func(s *part.Sheet) {
		chanceAt(&s.Record, id).Amount = record.Num(grip.ml, quantity.Millilitre)
	})
}
