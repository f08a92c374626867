package consult

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// RulesOf are the rules the steps of a plan are sized and spaced by: its own
// where they lie within their limits, else the usual ones of
// [plan.DefaultStepRules].
func RulesOf(p record.Plan) plan.StepRules {
	rules, own, limits := plan.DefaultStepRules(), p.Rules, evidence.Limits()
	x := func(f evidence.Field, n record.Number, usual float64) float64 {
		if !n.Known() {
			return usual
		}
		if odd := evidence.CheckIn(limits, f, 0, *n.Value); odd != nil && odd.Severity == evidence.Refuses {
			return usual
		}
		return *n.Value
	}
	whole := func(f evidence.Field, n record.Number, usual int) int {
		return int(math.Round(x(f, n, float64(usual))))
	}
	rules.FluidLH = x(evidence.StepFluid, own.Fluid, rules.FluidLH)
	rules.CarbohydrateGH = x(evidence.StepCarbohydrate, own.Carbohydrate, rules.CarbohydrateGH)
	rules.Sessions = whole(evidence.StepSessions, own.Sessions, rules.Sessions)
	rules.PerWeek = x(evidence.SessionsAWeek, own.PerWeek, rules.PerWeek)
	rules.ClearDays = whole(evidence.ClearDays, own.ClearDays, rules.ClearDays)
	return rules
}

// BottlesOf are the sizes of bottle that a suggestion fills, mL; none where
// volumes go by increments. What is no size is left out.
func BottlesOf(p record.Plan) []float64 {
	var sizes []float64
	for _, text := range strings.Fields(p.Rules.Bottles) {
		if ml, err := strconv.ParseFloat(text, 64); err == nil && BottleSize(ml) {
			sizes = append(sizes, ml)
		}
	}
	return sizes
}

// SetBottles writes the sizes down; those that are none are left out.
func SetBottles(p *record.Plan, sizes []float64) {
	var texts []string
	for _, ml := range sizes {
		if BottleSize(ml) {
			texts = append(texts, strconv.FormatFloat(ml, 'f', -1, 64))
		}
	}
	p.Rules.Bottles = strings.Join(texts, " ")
}

// BottleSize reports whether a bottle can hold so many mL: at least one
// increment of fluid, and no more than a vessel on a test sheet.
func BottleSize(ml float64) bool {
	limit, ok := evidence.LimitOf(evidence.PouredVolume)
	return ok && ml >= evidence.FluidIncrement && ml <= limit.Refuse.High
}

// HeldSalt stands for the added salt among the products a suggestion may not
// change.
const HeldSalt = record.ID("salt")

// Held reports whether a suggestion may not change a product of a plan.
func Held(p record.Plan, product record.ID) bool {
	return slices.Contains(strings.Fields(p.Rules.Held), string(product))
}

// Hold keeps a product of a plan from being changed by a suggestion, or lets it
// be changed again.
func Hold(p *record.Plan, product record.ID, on bool) {
	list := slices.DeleteFunc(strings.Fields(p.Rules.Held), func(id string) bool { return id == string(product) })
	if on && plainWord(string(product)) {
		list = append(list, string(product))
	}
	p.Rules.Held = strings.Join(list, " ")
}

// plainWord reports whether a text can stand in a list of words, and in a part
// of a session.
func plainWord(text string) bool {
	return text != "" && len(strings.Fields(text)) == 1 && strings.Fields(text)[0] == text && !strings.Contains(text, "/")
}
