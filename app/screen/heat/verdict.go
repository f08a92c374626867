package heat

import (
	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// Verdict is what the heat of a session asks of everybody there: what to do, and
// the one reason that decides it.
type Verdict struct {
	Title, Sentence string
	Level           climate.Level
}

// Judged is one athlete's session as the heat judges it: there, and on a hot day
// there. Name is empty for somebody alone.
type Judged struct {
	Name        string
	Calculation consult.Calculation
	Hot         consult.Calculation
	Care        care.Care
}

// Worst is the place of the one for whom the heat asks most; -1 where nothing
// can be said of anybody.
func Worst(list []Judged) int {
	worst := -1
	for i, j := range list {
		if j.Calculation.CautionKnown && (worst < 0 || j.Calculation.Caution.Level > list[worst].Calculation.Caution.Level) {
			worst = i
		}
	}
	return worst
}

// Verdict words the worst of a list. It never clears anybody.
func (sp Speaker) Verdict(list []Judged) Verdict {
	i := Worst(list)
	if i < 0 {
		return Verdict{Title: sp.Say("heat.caution.unknown")}
	}
	r := list[i].Calculation
	c := r.Caution
	v := Verdict{Title: sp.Say("heat.verdict." + c.Level.Code()), Level: c.Level}
	if c.Decides == climate.CautionWBGT {
		v.Title = sp.Say(bandKey(c.Band))
	}
	v.Sentence = sp.reasonOf(r, list[i].Name)
	if hot := worstHot(list); hot > c.Level {
		air := list[i].Hot.Outing.Air.Temperature.Or(0)
		v.Sentence += " " + sp.Say("heat.verdict.hot."+hot.Code(), sp.Degrees(air))
	}
	return v
}

// worstHot is what a hot day asks for.
func worstHot(list []Judged) climate.Level {
	var most climate.Level
	for _, j := range list {
		if j.Hot.CautionKnown {
			most = max(most, j.Hot.Caution.Level)
		}
	}
	return most
}

// reasonOf is the part of a caution that decides it, as a sentence. What decides
// for one alone has the name with it.
func (sp Speaker) reasonOf(r consult.Calculation, name string) string {
	for _, part := range r.Caution.Parts {
		if part.By != r.Caution.Decides {
			continue
		}
		text := sp.cautionPart(part, r.Outing.Air.Wbgt.Known())
		switch {
		case part.By == climate.CautionWBGT && r.Outing.Session.UsedToHeat != record.AcclimatisedYes:
			return sp.Say("heat.verdict.new", text)
		case part.By != climate.CautionWBGT && name != "":
			return sp.Say("heat.verdict.of", text, name)
		}
		return sp.Say("heat.verdict.reason", text)
	}
	return ""
}

// Reasons are all there is to say about the heat for somebody: the verdict's
// reason first, the other looks at it, what stands beside them, and last what is
// said at every level.
func (sp Speaker) Reasons(list []Judged, emergency string) (lines []string, always string) {
	i := Worst(list)
	var first consult.Calculation
	if i >= 0 {
		first = list[i].Calculation
		for _, part := range first.Caution.Parts {
			lines = append(lines, sp.Say("heat.reason.line", sp.cautionPart(part, first.Outing.Air.Wbgt.Known()), sp.Say("heat.verdict."+part.Level.Code())))
		}
		for _, code := range first.Caution.Codes {
			lines = append(lines, sp.Say("caution."+code))
		}
	}
	for _, j := range list {
		for _, line := range sp.Profile(j.Care) {
			if j.Name != "" {
				line = sp.Say("heat.reason.of", j.Name, line)
			}
			lines = append(lines, line)
		}
	}
	return lines, sp.Caution(first, care.Care{}, emergency).Always
}

// Differences say of each test what sets it apart from the session planned: "14 May:
// 5 °C hotter, less sun". The newest comes first.
func (sp Speaker) Differences(r consult.Calculation) []string {
	var list []string
	for _, i := range byDay(r.Tests) {
		if i >= len(r.Climate.Coverage) {
			continue
		}
		day := sp.Words.ShortDate(consult.TestDay(r.Tests[i].Test), sp.Today)
		if !r.Climate.Rate.Known { // alike or not, it says nothing of this session
			list = append(list, sp.Say("heat.test.alone", day))
			continue
		}
		list = append(list, sp.Say("heat.test.apart", day, sp.apartFrom(r.Climate.Coverage[i])))
	}
	for _, i := range byDay(r.Left) {
		list = append(list, sp.Say("heat.test.left", sp.Words.ShortDate(consult.TestDay(r.Left[i].Test), sp.Today), sp.left(r.Left[i])))
	}
	return list
}
