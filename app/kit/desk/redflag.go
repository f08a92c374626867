package desk

import (
	"strings"
	"time"

	"ebbwell/app/kit/amount"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
	"ebbwell/internal/words"
)

// The sentences of a red flag, for every screen and text that says one: a gain in mass,
// a symptom, more drunk than lost. What raises one is decided in package consult. A
// clinician signs them all: a test holds this file against handout.RedFlagWords.

// GainWords say a gain in mass: the title, and what to do, gravest first, with this
// athlete's own conditions and the practice's own emergency number. Where body mass
// is hidden the amount is left out.
func GainWords(w *words.Words, by amount.Writer, p record.Practice, g consult.Gain) (title, sentence string) {
	key := "gain.red"
	if g.WeighAgain {
		key = "gain.again"
	}
	title = w.Say(key + ".title")
	call := w.Say("gain.number.unset")
	if p.Emergency != "" {
		call = w.Say("gain.number", p.Emergency)
	}
	list := []string{w.Say("gain.emergency", call)}
	if by.Hidden {
		list = append(list, w.Say("gain.heavier.hidden"))
	} else {
		list = append(list, w.Say("flag.gained", by.Amount(g.Kilograms, quantity.Kilogram)))
	}
	list = append(list, w.Say(key))
	if len(g.Risks) > 0 {
		list = append(list, w.Say("gain.risks", riskNames(w, g)))
	}
	return title, strings.Join(list, " ")
}

// riskNames name an athlete's own conditions that make a gain graver.
func riskNames(w *words.Words, g consult.Gain) string {
	var names []string
	for _, kind := range g.Risks {
		names = append(names, w.Say("flag."+string(kind)+".name"))
	}
	return w.List(names)
}

// SheetFlag says a red flag on its sheet: who to call where there is an emergency, and
// only that; else what was done, or what raised it. zone is that of the times.
func SheetFlag(w *words.Words, p record.Practice, r consult.RedFlag, zone *time.Location) (title, sentence string) {
	var yes []string
	for _, x := range r.Safety.Yes() {
		yes = append(yes, w.Say("safety.item."+x))
	}
	state := r.State()
	switch state {
	case consult.RedCall:
		if p.Emergency == "" {
			return w.Say("safety.title.call.unset"), w.Say("safety.call")
		}
		return w.Say("safety.title.call", p.Emergency), w.Say("safety.call")
	case consult.RedNobody:
		title = w.Say("safety.title.nobody", r.Safety.Told)
	case consult.RedTold:
		title = w.Say("safety.title.told", r.Safety.Told, w.Clock(r.Safety.ToldAt.In(zone)))
	case consult.RedBoth:
		title = w.Say("safety.title.both", w.List(yes))
	case consult.RedHeavier:
		title = w.Say("safety.title.heavier")
	case consult.RedSymptom:
		return w.Say("safety.title.symptom", w.List(yes)), w.Say("safety.why.symptom")
	}
	sentence = w.Say("safety.why")
	if len(r.Gain.Risks) > 0 {
		sentence = w.Say("safety.why.risks", riskNames(w, r.Gain))
	}
	if r.Gained && r.Again && !r.Mean {
		sentence += " " + w.Say("safety.why.again")
	}
	return title, sentence
}

// SheetAnyYes says under the emergencies what one yes means.
func SheetAnyYes(w *words.Words, p record.Practice) string {
	if p.Emergency == "" {
		return w.Say("safety.any.unset")
	}
	return w.Say("safety.any", p.Emergency)
}

// RowFlag says a red flag in the row of a squad's test day: what it is, what to ask,
// what is an emergency. symptoms are those answered with yes, as the row says them; where
// the athlete is heavier too, they stand before the gain, since they call the medic.
func RowFlag(w *words.Words, by amount.Writer, p record.Practice, r consult.RedFlag, symptoms string) (title string, lines []string) {
	call := w.Say("squad.flag.call.unset")
	if p.Emergency != "" {
		call = w.Say("squad.flag.call", p.Emergency)
	}
	gain := by.Signed(r.Gain.Kilograms, quantity.Kilogram)
	switch ill := symptoms != "" && len(r.Safety.Yes()) > 0; {
	case r.State() == consult.RedCall:
		return call, []string{w.Say("squad.flag.mouth"), w.Say("squad.flag.cool")}
	case !r.Gained:
		title = w.Say("squad.flag.symptom", symptoms)
	case ill && by.Hidden:
		title = w.Say("squad.flag.both.hidden", symptoms)
	case ill:
		title = w.Say("squad.flag.both", symptoms, gain)
	case by.Hidden:
		title = w.Say("squad.flag.heavier.hidden")
	default:
		title = w.Say("squad.flag.heavier", gain)
	}
	if len(r.Gain.Risks) > 0 {
		lines = append(lines, w.Say("squad.flag.risks", riskNames(w, r.Gain)))
	}
	if len(r.Safety.Yes()) == 0 || len(r.Safety.Unasked()) > 0 {
		lines = append(lines, w.Say("squad.flag.ask"))
	}
	return title, append(lines, w.Say("squad.flag.emergency", call))
}

// OverviewFlag is the red flag of a test that is spoken of first: heavier after than
// before, more drunk than lost, or close to it; empty where there is none.
func OverviewFlag(w *words.Words, f consult.Findings) string {
	for _, flag := range f.Sweat.Flags {
		switch flag.ID {
		case sweat.FlagGained:
			return w.Say("overview.red.gained")
		case sweat.FlagOverdrank:
			return w.Say("overview.red.drank-more")
		case sweat.FlagNearLoss:
			return w.Say("overview.red.drank-near")
		}
	}
	return ""
}

// LetterFlag is a flag of a test in a plain text; empty for one that is no red flag.
func LetterFlag(w *words.Words, by amount.Writer, flag sweat.Flag) string {
	switch {
	case flag.ID != sweat.FlagGained:
		return DrankWords(w, by, flag)
	case by.Hidden:
		return w.Say("letter.gain.hidden")
	}
	return w.Say("letter.gain", by.Amount(flag.Size, quantity.Kilogram))
}

// DrankWords say that more was drunk than was lost, or close to it; empty for another
// flag. Where body mass is hidden the share is left out.
func DrankWords(w *words.Words, by amount.Writer, flag sweat.Flag) string {
	switch {
	case flag.ID == sweat.FlagOverdrank:
		return w.Say("flag.drank-more", by.Amount(flag.Size, quantity.Litre))
	case flag.ID == sweat.FlagNearLoss && by.Hidden:
		return w.Say("findings.drank-near")
	case flag.ID == sweat.FlagNearLoss:
		return w.Say("flag.drank-near", w.Number(flag.Size, 0))
	}
	return ""
}
