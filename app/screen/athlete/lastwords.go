package athlete

import (
	"strings"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/figure"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// told is the last test in a few sentences.
type told struct {
	title     string
	sentences []string
	// note are the figures behind the sentences with their ranges.
	note string
	// red is a red flag that is spoken of first; empty when there is none.
	red string
}

// tell words the last test.
func (sp speaker) tell(f consult.Findings, a record.Athlete) told {
	t := told{title: sp.lastTitle(f), red: sp.redFlag(f)}
	fluid := f.Sweat.Fluid
	if f.Refused != nil || !fluid.Rate.Known || !f.Timed {
		t.sentences = append([]string{sp.say("overview.last.norate")}, sp.missing(f)...)
		return t
	}
	t.sentences = append(t.sentences, sp.lost(f, a))
	if s := sp.ended(f, a); s != "" {
		t.sentences = append(t.sentences, s)
	}
	if s := sp.sodium(f); s != "" {
		t.sentences = append(t.sentences, s)
	}
	t.note = sp.behind(f)
	return t
}

func (sp speaker) lastTitle(f consult.Findings) string {
	title := sp.say("overview.last.undated")
	if _, ok := f.Test.Session.Date.Time(); ok {
		title = sp.say("overview.last", sp.day(f.Test.Session.Date))
	}
	if f.Test.State == record.TestOpen {
		return sp.say("overview.last.open", title)
	}
	return title
}

// missing says what a sheet without a rate still needs.
func (sp speaker) missing(f consult.Findings) []string {
	var list []string
	for _, m := range f.Sweat.Missing {
		if !m.Optional {
			list = append(list, desk.MissingSentence(sp.w, m))
		}
	}
	return list[:min(len(list), 3)]
}

// lost says what was done, lost and drunk: "In 95 minutes of hard field hockey
// at 31 °C she lost 2.15 L and drank 0.55 L."
func (sp speaker) lost(f consult.Findings, a record.Athlete) string {
	s := f.Test.Session
	sport := s.Sport
	if sport == "" {
		sport = a.Sport
	}
	what := desk.SportWord(sp.w, sport)
	if what == "" {
		what = sp.say("overview.last.play")
	}
	switch fuel.EffortOf(s.Effort.Or(-1)) {
	case fuel.Hard:
		what = sp.say("overview.last.hard", what)
	case fuel.Easy:
		what = sp.say("overview.last.easy", what)
	}
	done := sp.say("overview.last.session", sp.w.Number(f.Minutes, 0), what)
	if air := f.Test.Air.Temperature; air.Known() {
		done = sp.say("overview.last.air", done, sp.degrees(air))
	}
	fluid := f.Sweat.Fluid
	return sp.say("overview.lost."+who(a.Sex), done, sp.by.Found(fluid.Loss), sp.by.Found(fluid.Drunk))
}

// ended says the deficit at the end against the limit set; nothing after a gain,
// which is a red flag.
func (sp speaker) ended(f consult.Findings, a record.Athlete) string {
	share, deficit := f.Sweat.Fluid.DeficitShare, f.Sweat.Fluid.Deficit
	shown := share
	if sp.by.Hidden || !share.Known {
		shown = deficit
	}
	if !shown.Known || shown.Value <= 0 {
		return ""
	}
	limit := sp.limit(share, f.Limit)
	if limit == "" {
		return sp.say("overview.ended."+who(a.Sex), sp.by.Found(shown))
	}
	return sp.say("overview.ended.limit."+who(a.Sex), sp.by.Found(shown), limit)
}

// limit says whether a deficit passed the limit set. The limit in per cent
// would lead back to body mass, so where that is hidden words alone are said.
func (sp speaker) limit(share figure.Figure, limit float64) string {
	if !share.Known {
		return ""
	}
	key := "within"
	switch {
	case share.Ranged && share.Range.Contains(limit):
		key = "near"
	case share.Value > limit:
		key = "past"
	}
	if sp.by.Hidden {
		return sp.say("overview.limit." + key + ".hidden")
	}
	return sp.say("overview.limit."+key, sp.percent(limit))
}

// percent writes a limit with as many decimals as it has, one at most.
func (sp speaker) percent(x float64) string {
	decimals := 1
	if quantity.Round(x, 0) == quantity.Round(x, 1) {
		decimals = 0
	}
	return sp.w.Number(x, decimals) + "\u00a0" + string(quantity.PerCent)
}

// sodium says what was lost of it, or what it waits for.
func (sp speaker) sodium(f consult.Findings) string {
	rate := f.Sweat.Sodium.LossRate
	switch {
	case f.Waits():
		return sp.say("overview.sodium.waiting")
	case rate.Known && rate.Ranged:
		return sp.say("overview.sodium", sp.by.Found(rate), sp.span(rate))
	case rate.Ranged:
		return sp.say("overview.sodium.range", sp.span(rate), string(sp.by.Unit(rate.Unit)))
	}
	return ""
}

// span is the range of a figure in one piece, so that no line ends within it.
func (sp speaker) span(f figure.Figure) string {
	return strings.ReplaceAll(sp.by.Range(f), " ", "\u00a0")
}

// behind are sweat rate and deficit with their ranges.
func (sp speaker) behind(f consult.Findings) string {
	rate, deficit := f.Sweat.Fluid.Rate, f.Sweat.Fluid.Deficit
	if !rate.Ranged {
		return sp.say("overview.behind.provisional", sp.by.Found(rate))
	}
	if !deficit.Ranged {
		return sp.say("overview.behind.rate", sp.by.Found(rate), sp.span(rate))
	}
	if deficit.Value < 0 {
		gain := turned(deficit)
		return sp.say("overview.behind.gain", sp.by.Found(rate), sp.span(rate), sp.by.Found(gain), sp.span(gain))
	}
	return sp.say("overview.behind", sp.by.Found(rate), sp.span(rate), sp.by.Found(deficit), sp.span(deficit))
}

// turned is a deficit below zero as the gain it is.
func turned(f figure.Figure) figure.Figure {
	f.Value, f.Range = -f.Value, quantity.Range{Low: -f.Range.High, High: -f.Range.Low}
	return f
}

// redFlag is what is spoken of first: heavier after than before, more drunk than
// lost, or close to it.
func (sp speaker) redFlag(f consult.Findings) string {
	for _, flag := range f.Sweat.Flags {
		switch flag.ID {
		case sweat.FlagGained:
			return sp.say("overview.red.gained")
		case sweat.FlagOverdrank:
			return sp.say("overview.red.drank-more")
		case sweat.FlagNearLoss:
			return sp.say("overview.red.drank-near")
		}
	}
	return ""
}
