package findings

import (
	"slices"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/sweat"
)

// Caution is something that has to be said before any figure.
type Caution struct{ Title, Sentence string }

// cautions are the red flags of a sheet, the gravest first: more on the scale
// after than before, more drunk than lost, close to it.
func (sp speaker) cautions(in Input) []Caution {
	f := in.Findings
	var list []Caution
	if f.Refused != nil {
		list = append(list, Caution{sp.Say("findings.refused.title"), sp.Say("findings.refused")})
	}
	over := false
	for _, flag := range f.Sweat.Flags {
		switch flag.ID {
		case sweat.FlagGained:
			if g, ok := consult.GainOf(f, in.Athlete, consult.TestDay(f.Test)); ok {
				title, sentence := desk.GainWords(sp.Words, sp.By, in.Practice, g)
				list = append(list, Caution{title, sentence})
			}
		case sweat.FlagOverdrank:
			list = append(list, Caution{sp.Say("findings.red"), desk.DrankWords(sp.Words, sp.By, flag)})
		case sweat.FlagNearLoss:
			list = append(list, Caution{sp.Say("findings.near"), desk.DrankWords(sp.Words, sp.By, flag)})
		default:
			continue
		}
		over = true
	}
	if over {
		if c, ok := sp.plasma(in); ok {
			list = append(list, c)
		}
	}
	if c, ok := sp.onRecord(in); ok {
		list = append(list, c)
	}
	if c, ok := sp.keptOdd(in); ok {
		list = append(list, c)
	}
	if c, ok := sp.uncounted(f.Intake.Unknown); ok {
		list = append(list, c)
	}
	return list
}

// onRecord is what was asked and done about a red flag, with its times.
func (sp speaker) onRecord(in Input) (c Caution, ok bool) {
	t := in.Findings.Test
	flag, ok := consult.RedFlagOf(in.Findings, in.Athlete, consult.TestDay(t))
	if !ok || len(t.Safety) == 0 {
		return Caution{}, false
	}
	title := sp.Say("findings.record.open")
	if flag.Told() {
		title = sp.Say("findings.record.told", flag.Safety.Told)
	}
	lines := desk.SafetyLines(amount.Speaker{Words: sp.Words, By: sp.By}, t, in.Zone())
	return Caution{title, sp.Words.Semicolons(lines)}, true
}

// keptOdd names the unlikely values that were kept, with their reasons. Where body
// mass is hidden the reason of a weighing is left out: it may name the mass.
func (sp speaker) keptOdd(in Input) (c Caution, ok bool) {
	var list []string
	for _, k := range consult.KeptOdds(in.Findings) {
		text := k.Text
		if sp.By.Hidden && k.OfMass() {
			text = sp.Say("findings.keptodd.hidden")
		}
		list = append(list, sp.Say("findings.keptodd.line", desk.FieldName(sp.Words, k.Field, k.Item), text))
	}
	if len(list) == 0 {
		return Caution{}, false
	}
	return Caution{sp.Say("findings.keptodd.title"), sp.Words.Semicolons(list)}, true
}

// uncounted says what was taken that counts as nothing because nobody knows what
// is in it.
func (sp speaker) uncounted(names []string) (c Caution, ok bool) {
	var list []string
	for _, name := range names {
		if name == "" {
			name = sp.Say("findings.uncounted.unnamed")
		}
		if !slices.Contains(list, name) {
			list = append(list, name)
		}
	}
	if len(list) == 0 {
		return Caution{}, false
	}
	return Caution{sp.Say("findings.uncounted.title"), sp.Say("findings.uncounted", sp.Words.List(list))}, true
}

// plasma predicts blood sodium, for adults, as a caution with its limits. Where
// body mass is hidden the figure is left out: the body water behind it could be
// worked out of it.
func (sp speaker) plasma(in Input) (c Caution, ok bool) {
	got, ok := consult.OverDrinking(in.Findings, in.Athlete)
	if !ok {
		return Caution{}, false
	}
	text := ""
	if got.Plasma.Known && !sp.By.Hidden {
		text = sp.Say("findings.plasma", sp.Words.Signed(got.Change, 1), sp.Words.Number(got.Plasma.Value, 0), sp.By.Range(got.Plasma)) + " "
	}
	for _, code := range got.Codes {
		if sp.By.Hidden && code == sweat.PlasmaOutside {
			continue
		}
		text += sp.Say(code) + " "
	}
	return Caution{sp.Say("findings.plasma.title"), text}, true
}

// lacking are the sentences of what still keeps a rate from being known.
func (sp speaker) lacking(in Input) []string {
	var list []string
	for _, m := range in.Findings.Sweat.Missing {
		if !m.Optional {
			list = append(list, desk.MissingSentence(sp.Speaker, m))
		}
	}
	return list
}
