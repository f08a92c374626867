package athlete

import (
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/figure"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// lastSummary is the last test in a few sentences.
type lastSummary struct {
	title     string
	sentences []string
	// red is a red flag that is spoken of first; empty when there is none.
	red string
}

// summarise words the last test; agreed is the limit agreed with the athlete, % of body mass,
// nil where there is none.
func (sp speaker) summarise(f consult.Findings, a record.Athlete, agreed *float64) lastSummary {
	t := lastSummary{title: sp.lastTitle(f), red: desk.OverviewFlag(sp.Words, f)}
	fluid := f.Sweat.Fluid
	if f.Refused != nil || !fluid.Rate.Known || !f.Timed {
		t.sentences = append([]string{sp.Say("overview.last.norate")}, sp.missing(f)...)
		return t
	}
	t.sentences = append(t.sentences, sp.lost(f, a, agreed))
	return t
}

func (sp speaker) lastTitle(f consult.Findings) string {
	title := sp.Say("overview.last.undated")
	if _, ok := f.Test.Session.Date.Time(); ok {
		title = sp.Say("overview.last", sp.shortDate(f.Test.Session.Date))
	}
	if f.Test.State == record.TestOpen {
		return sp.Say("overview.last.open", title)
	}
	return title
}

// missing says what a sheet without a rate still needs.
func (sp speaker) missing(f consult.Findings) []string {
	var list []string
	for _, m := range f.Sweat.Missing {
		if !m.Optional {
			list = append(list, desk.MissingSentence(sp.Speaker, m))
		}
	}
	return list[:min(len(list), 3)]
}

// lost says what was done, lost and drunk, and where it ended: "In 95 minutes of
// hard field hockey at 31 °C she lost 2.15 L of sweat, drank 0.55 L and ended 2.5 %
// lighter, past the 2 % agreed with her."
func (sp speaker) lost(f consult.Findings, a record.Athlete, agreed *float64) string {
	s := f.Test.Session
	sport := s.Sport
	if sport == "" {
		sport = a.Sport
	}
	what := desk.SportWord(sp.Words, sport)
	if what == "" {
		what = sp.Say("overview.last.play")
	}
	switch fuel.EffortOf(s.Effort.Or(-1)) {
	case fuel.Hard:
		what = sp.Say("overview.last.hard", what)
	case fuel.Easy:
		what = sp.Say("overview.last.easy", what)
	}
	done := sp.Say("overview.last.session", sp.Words.Number(f.Minutes, 0), what)
	if air := f.Test.Air.Temperature; air.Known() {
		done = sp.Say("overview.last.air", done, sp.degrees(air))
	}
	fluid, key := f.Sweat.Fluid, "overview.lost."+who(a.Sex)
	loss, drunk := sp.By.Found(fluid.Loss), sp.By.Found(fluid.Drunk)
	ended, limit := sp.ended(f, a.Sex, agreed)
	switch {
	case ended == "":
		return sp.Say(key, done, loss, drunk)
	case limit == "":
		return sp.Say(key+".ended", done, loss, drunk, ended)
	}
	return sp.Say(key+".limit", done, loss, drunk, ended, limit)
}

// ended says the deficit at the end and how it stands to the limit set; nothing
// after a gain, which is a red flag.
func (sp speaker) ended(f consult.Findings, sex record.Sex, agreed *float64) (ended, limit string) {
	share, deficit := f.Sweat.Fluid.DeficitShare, f.Sweat.Fluid.Deficit
	shown, key := share, "overview.ended"
	if sp.By.Hidden || !share.Known {
		shown, key = deficit, "overview.ended.short"
	}
	if !shown.Known || shown.Value <= 0 {
		return "", ""
	}
	return sp.Say(key, sp.By.Found(shown)), sp.limit(share, f.Limit, sex, agreed)
}

// limit says whether a deficit passed the limit agreed with the athlete, else the one
// that holds by rule. The limit in per cent would lead back to body mass, so where that
// is hidden words alone are said.
func (sp speaker) limit(share figure.Figure, limit float64, sex record.Sex, agreed *float64) string {
	if !share.Known {
		return ""
	}
	if agreed != nil {
		limit = *agreed
	}
	key := "within"
	switch {
	case share.Ranged && share.Range.Contains(limit):
		key = "near"
	case share.Value > limit:
		key = "past"
	}
	if agreed != nil {
		key += ".agreed." + who(sex)
	}
	if sp.By.Hidden {
		return sp.Say("overview.limit." + key + ".hidden")
	}
	return sp.Say("overview.limit."+key, sp.percent(limit))
}

// percent writes a limit with as many decimals as it has, one at most.
func (sp speaker) percent(x float64) string {
	decimals := 1
	if quantity.Round(x, 0) == quantity.Round(x, 1) {
		decimals = 0
	}
	return sp.Words.Number(x, decimals) + "\u00a0" + string(quantity.PerCent)
}
