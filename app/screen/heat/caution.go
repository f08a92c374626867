package heat

import (
	"strings"

	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Caution is what the heat of a session calls for, in words. It never clears
// anybody: heat illness is known at every level.
type Caution struct {
	// Title is the level and what decides it, Sentence what to do.
	Title, Sentence string
	// Lines are what stands beside it, and what the athlete's profile adds.
	Lines []string
	// Always is said at every level.
	Always string
}

// Caution words the heat caution of a calculation for an athlete; emergency is
// the number to call, empty where none is set.
func (sp Speaker) Caution(r consult.Calculation, care care.Care, emergency string) Caution {
	c := Caution{Always: sp.Say("caution.drinking")}
	if emergency != "" {
		c.Always = sp.Say("heat.emergency", emergency) + " " + c.Always
	}
	if !r.CautionKnown {
		c.Title, c.Lines = sp.Say("heat.caution.unknown"), sp.Profile(care)
		return c
	}
	k := r.Caution
	for _, part := range k.Parts { // one verdict, the worst, and its reason
		if part.By == k.Decides {
			text := sp.cautionPart(part, r.Outing.Air.Wbgt.Known())
			c.Title = sp.Say("caution.title", text, sp.Say("level."+k.Level.Code()+".within"))
		}
	}
	c.Sentence = sp.Say(bandKey(k.Band)) + " " + sp.Say("caution."+climate.LocalPolicyWins)
	for _, code := range k.Codes {
		if code != climate.LocalPolicyWins {
			c.Lines = append(c.Lines, sp.Say("caution."+code))
		}
	}
	c.Lines = append(c.Lines, sp.Profile(care)...)
	return c
}

// bandKey is the text of a row of the WBGT table.
func bandKey(b climate.Band) string { return "heat-band." + strings.TrimPrefix(b.Code, "band.") }

// cautionPart is one look at the heat in words.
func (sp Speaker) cautionPart(p climate.CautionPart, read bool) string {
	switch p.By {
	case climate.CautionWBGT:
		if read {
			return sp.Say("caution.wbgt.measured", sp.Degrees(p.Figure.Value))
		}
		return sp.Say("caution.wbgt", sp.Degrees(p.Figure.Value))
	case climate.CautionWettedness:
		if !p.Figure.Known {
			return sp.Say("basis.code." + climate.PlanNothingLeaves)
		}
		if p.Figure.Value > evidence.WettednessShown {
			return sp.Say("caution.wettedness.over")
		}
		return sp.Say("caution.wettedness", sp.Words.Number(100*p.Figure.Value, 0))
	}
	if p.Beyond {
		return sp.Say("caution.core.beyond", sp.Degrees(p.Figure.Value))
	}
	return sp.Say("caution.core", sp.By.Amount(p.Figure.Value, quantity.DegreeCelsius))
}

// Profile is what the conditions of the profile add in the heat.
func (sp Speaker) Profile(care care.Care) []string {
	var list []string
	for _, kind := range care.Flags {
		switch kind {
		case record.FlagMinor:
			list = append(list, sp.Say("heat.minor"))
		case record.FlagPregnancy, record.FlagSickleCell, record.FlagAntidepressant, record.FlagCysticFibrosis,
			record.FlagHeart, record.FlagDiuretics, record.FlagLithium, record.FlagDiabetes:
			list = append(list, sp.Say("heat.flag", sp.Say("flag."+string(kind)+".name")))
		}
	}
	return list
}
