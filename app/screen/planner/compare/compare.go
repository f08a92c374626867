package compare

import (
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// line is one thing that is compared between the options.
type line struct {
	// key names it in the catalogue of texts.
	key string
	// differs is true where the difference to the habit stands beside it.
	differs bool
}

// cell is one option's entry in a line.
type cell struct{ text, differs string }

// compared is one option calculated, for the table.
type compared struct {
	option record.Option
	mix    plan.Mix
	at     plan.Prediction
	take   plan.Schedule
}

// lines are what the table compares, for the options there are.
func lines(list []compared) []line {
	all := []line{
		{key: "drinks"}, {key: "food"}, {key: "salt"}, {key: "deficit", differs: true}, {key: "carbohydrate", differs: true},
		{key: "sodium", differs: true}, {key: "rate", differs: true}, {key: "strength"}, {key: "mouthfuls"}, {key: "importance"}, {key: "confidence"},
	}
	var shown []line
	for _, l := range all {
		if anyOf(list, func(c compared) bool { return c.says(l) }) {
			shown = append(shown, l)
		}
	}
	return shown
}

// says reports whether an option has anything to say in a line; one that none
// has is left out.
func (c compared) says(l line) bool {
	switch l.key {
	case "salt":
		return c.mix[plan.Salt] > 0
	case "importance":
		return c.option.Importance.Known()
	case "confidence":
		return c.option.Confidence.Known()
	}
	return true
}

func anyOf(list []compared, is func(compared) bool) bool {
	for _, c := range list {
		if is(c) {
			return true
		}
	}
	return false
}

// widest is the place of the chance at which the selected option is given most,
// so that its mouthfuls can be compared; -1 where there is none.
func widest(s plan.Schedule) int {
	best := -1
	for i, t := range s.Takes {
		if t.ML > 0 && (best < 0 || t.ML > s.Takes[best].ML) {
			best = i
		}
	}
	return best
}

// lineName names a line of the table.
func lineName(sp wording.Speaker, l line, chance string) string {
	if l.key == "mouthfuls" {
		return sp.Say("planner.line.mouthfuls", chance)
	}
	return sp.Say("planner.line." + l.key)
}

// cellOf is what one option has in a line; habit is what it is compared with.
func cellOf(sp wording.Speaker, s state.State, l line, c, habit compared, chance int) cell {
	same := c.option.ID == habit.option.ID
	with := func(text string, x, y float64, u quantity.Unit) cell {
		if same {
			return cell{text: text}
		}
		return cell{text: text, differs: sp.By.Difference(x, y, u)}
	}
	switch l.key {
	case "drinks":
		return cell{text: sp.DrinksOf(s, c.mix)}
	case "food":
		return cell{text: sp.FoodsOf(s, c.mix)}
	case "salt":
		return cell{text: sp.Amount(s.PlanCase, plan.Salt, c.mix[plan.Salt])}
	case "deficit":
		x, u := sp.End(c.at.DeficitL, c.at.Deficit)
		y, _ := sp.End(habit.at.DeficitL, habit.at.Deficit)
		return with(sp.Deficit(c.at), x.Value, y.Value, u)
	case "carbohydrate":
		return with(sp.Carbohydrate(c.at.Carbohydrate.TotalGH), c.at.Carbohydrate.TotalGH, habit.at.Carbohydrate.TotalGH, quantity.GramPerHour)
	case "sodium":
		return with(sp.Sodium(c.at.Sodium.InMgH), c.at.Sodium.InMgH, habit.at.Sodium.InMgH, quantity.MilligramPerHour)
	case "rate":
		return with(sp.Rate(c.at.Fluid.RateLH), c.at.Fluid.RateLH, habit.at.Fluid.RateLH, quantity.LitrePerHour)
	}
	return cell{text: lesser(sp, l, c, chance)}
}

// lesser is a cell that has no difference beside it.
func lesser(sp wording.Speaker, l line, c compared, chance int) string {
	switch l.key {
	case "strength":
		if c.at.StrengthPercent > 0 {
			return sp.Strength(c.at.StrengthPercent)
		}
	case "mouthfuls":
		if chance >= 0 && chance < len(c.take.Takes) {
			return sp.Words.Number(float64(c.take.Takes[chance].Mouthfuls), 0)
		}
	case "importance":
		return rating(sp, c.option.Importance)
	case "confidence":
		return rating(sp, c.option.Confidence)
	}
	return sp.Say("planner.none")
}

// rating writes a rating; nothing where it was not given.
func rating(sp wording.Speaker, n record.Number) string {
	if !n.Known() {
		return ""
	}
	return sp.Words.Number(*n.Value, 0)
}
