package desk

import (
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// OptionNames are the words for the four options a consult starts from.
func OptionNames(w *words.Words) consult.Names {
	return consult.Names{
		Habit: w.Say("option.habit"), Fluid: w.Say("option.fluid-only"), Food: w.Say("option.with-food"), Aim: w.Say("option.aim"),
	}
}

// StepName is the word for a step, 1 for the first.
func StepName(w *words.Words) func(step int) string {
	return func(step int) string { return w.Say("option.step", w.Number(float64(step), 0)) }
}

// SportWord is the word for a sport; one in the athlete's own words is itself.
func SportWord(w *words.Words, sport string) string {
	if key := "sport." + sport; w.Has(key) {
		return w.Say(key)
	}
	return sport
}

// KindWord is the word for a kind of session in the table of chances to drink.
func KindWord(w *words.Words, session string) string { return w.Say("sport-session." + session) }

// ChanceWord is the word for a chance to drink; one that was typed is itself.
func ChanceWord(w *words.Words, code string) string {
	if key := "chance." + code; w.Has(key) {
		return w.Say(key)
	}
	return code
}

// NameOf is an athlete's name; one that was taken out again has words instead.
func NameOf(w *words.Words, a record.Athlete) string {
	if a.Name != "" {
		return a.Name
	}
	return w.Say("overview.unnamed")
}

// Outstanding names what a minor's first sheet waits for; see [care.Care].
func Outstanding(w *words.Words, list []string) string {
	var names []string
	for _, what := range list {
		names = append(names, w.Say("profile.minor.open."+what))
	}
	return w.List(names)
}
