package findings

import (
	"slices"
	"strings"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
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
		list = append(list, Caution{sp.say("findings.refused.title"), sp.say("findings.refused")})
	}
	over := false
	for _, flag := range f.Sweat.Flags {
		switch flag.ID {
		case sweat.FlagGained:
			if g, ok := consult.GainOf(f, in.Athlete, consult.TestDay(f.Test)); ok {
				title, sentence := desk.GainWords(sp.w, sp.by, in.Practice, g)
				list = append(list, Caution{title, sentence})
			}
		case sweat.FlagOverdrank:
			list = append(list, Caution{sp.say("findings.red"), sp.overdrank(flag)})
		case sweat.FlagNearLoss:
			list = append(list, Caution{sp.say("findings.near"), sp.nearLoss(flag)})
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
	title := sp.say("findings.record.open")
	if flag.Told() {
		title = sp.say("findings.record.told", flag.Safety.Told)
	}
	lines := desk.SafetyLines(amount.Speaker{Words: sp.w, By: sp.by}, t, in.Zone())
	return Caution{title, strings.Join(lines, sp.say("findings.record.between"))}, true
}

// keptOdd names the unlikely values that were kept, with their reasons.
func (sp speaker) keptOdd(in Input) (c Caution, ok bool) {
	var list []string
	for _, k := range consult.KeptOdds(in.Findings) {
		list = append(list, sp.say("findings.keptodd.line", desk.FieldName(sp.w, k.Field, k.Item), k.Text))
	}
	if len(list) == 0 {
		return Caution{}, false
	}
	return Caution{sp.say("findings.keptodd.title"), strings.Join(list, sp.say("findings.keptodd.between"))}, true
}

// uncounted says what was taken that counts as nothing because nobody knows what
// is in it.
func (sp speaker) uncounted(names []string) (c Caution, ok bool) {
	var list []string
	for _, name := range names {
		if name == "" {
			name = sp.say("findings.uncounted.unnamed")
		}
		if !slices.Contains(list, name) {
			list = append(list, name)
		}
	}
	if len(list) == 0 {
		return Caution{}, false
	}
	return Caution{sp.say("findings.uncounted.title"), sp.say("findings.uncounted", sp.w.List(list))}, true
}

// overdrank says how much more was drunk than lost.
func (sp speaker) overdrank(flag sweat.Flag) string {
	if sp.by.US {
		return sp.say("findings.drank-more.us", sp.by.Amount(flag.Size, quantity.Litre))
	}
	return sp.say("flag.drank-more", sp.w.Number(flag.Size, 2))
}

// nearLoss says that close to all was drunk.
func (sp speaker) nearLoss(flag sweat.Flag) string {
	if sp.by.Hidden {
		return sp.say("findings.drank-near")
	}
	return sp.say("flag.drank-near", sp.w.Number(flag.Size, 0))
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
	if got.Plasma.Known && !sp.by.Hidden {
		text = sp.say("findings.plasma", sp.w.Signed(got.Change, 1), sp.w.Number(got.Plasma.Value, 0), sp.by.Range(got.Plasma)) + " "
	}
	for _, code := range got.Codes {
		if sp.by.Hidden && code == sweat.PlasmaOutside {
			continue
		}
		text += sp.say(code) + " "
	}
	return Caution{sp.say("findings.plasma.title"), text}, true
}

// lacking are the sentences of what still keeps a rate from being known.
func (sp speaker) lacking(in Input) []string {
	var list []string
	for _, m := range in.Findings.Sweat.Missing {
		if !m.Optional {
			list = append(list, desk.MissingSentence(sp.w, m))
		}
	}
	return list
}
