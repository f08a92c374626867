package trip

import (
	"cmp"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// crewMore is what a row opens to: the tests on the scale of the row, and why.
type crewMore struct {
	v           *View
	points      *chart.RangeRow
	tests       *cells
	apart       *look.Paragraph
	why         *look.Paragraph
	caution     *look.Caution
	calculation *field.Link
	open        *field.Link
	fix         *field.Link
	member      *member
	there       consult.StopPlan
	body        fyne.CanvasObject
}

// The sentences of a row leave room for its links beside them: their share of the
// width, and the px at 100 % text below which the links stand under them.
const (
	whyShare float32 = 0.74
	whyStack float32 = 700
)

func newCrewMore(v *View, name string) *crewMore {
	say := v.desk.Words.Say
	p := &crewMore{v: v, points: chart.NewRangeRow(), apart: look.NewParagraph("", look.Note, look.Ink2), why: look.NewParagraph("", look.Body, look.Ink),
		caution: look.NewCaution("", "", nil)}
	p.calculation = field.NewLink(v.desk.Host, name+".why", say("trip.calculation"), func() {
		heat.ShowWhy(v.desk.Host, v.canvas(), v.speaker(p.member), p.there.Calculation)
	})
	p.open = field.NewLink(v.desk.Host, name+".planner", say("trip.planner"), func() {
		v.desk.Go(desk.Place{Screen: desk.Plan, Athlete: p.member.athlete.ID})
	})
	p.fix = field.NewLink(v.desk.Host, name+".fix", say("trip.fix.profile"), func() {
		v.desk.Go(desk.Place{Screen: desk.Profile, Athlete: p.member.athlete.ID})
	})
	indent := look.Scaled(field.FoldIndent)
	label := func(key string) fyne.CanvasObject {
		return look.Pad(0, 0, 0, indent, look.NewParagraph(say(key), look.Note, look.Ink))
	}
	p.tests = newCells(true, look.Pad(10, 0, 0, 0, label("trip.more.tests")), p.points, p.apart)
	links := look.HBox(8, look.Stretch(), p.fix, p.open, p.calculation)
	why := look.NewPair(whyShare, whyStack, look.VBox(4, p.why, p.caution), links)
	p.body = look.VBox(2, p.tests, newCells(true, label("trip.more.why"), why), look.Gap(0, 2))
	return p
}

// show shows what there is to say of a traveller at a stop.
func (p *crewMore) show(sp heat.Speaker, m *member, there consult.StopPlan, err error, ticks []chart.Tick) {
	p.member, p.there = m, there
	r := there.Calculation
	d := chart.RangeRowData{Ticks: ticks, Summary: sp.Words.Say("trip.more.tests")}
	for i, t := range r.Compared {
		d.Points = append(d.Points, chart.StripPoint{At: float64(t.Rate), Name: sp.Words.ShortDay(consult.TestDay(r.Tests[i].Test))})
	}
	slices.SortFunc(d.Points, func(a, b chart.StripPoint) int { return cmp.Compare(a.At, b.At) })
	p.points.Set(d)
	p.apart.SetText(strings.Join(sp.Differences(r), "\n"))
	look.ShowIf(p.tests, len(m.tests) > 0 && err == nil)
	setText(p.why, strings.Join(p.sentences(sp, m, there, err), " "))
	p.showCaution(sp, there, err)
	look.ShowIf(p.calculation, err == nil && r.Climate.Rate.Known)
	look.ShowIf(p.open, len(m.tests) > 0)
	look.ShowIf(p.fix, profileTrouble(sp, err, there.Stop))
}

// sentences are why the figures of a row are what they are.
func (p *crewMore) sentences(sp heat.Speaker, m *member, there consult.StopPlan, err error) []string {
	if err != nil {
		return []string{troubleSentences(sp, err, there.Stop)}
	}
	list := []string{sp.Resting(there.Calculation)}
	if there.Planned && there.TooUncertain() {
		list = append(list, sp.Words.Say("trip.page.uncertain", sp.Words.Number(evidence.EstimateTooWide, 0)))
	} else if there.Planned {
		list = append(list, sp.Words.Say("trip.more.limit", sp.By.Amount(there.At.Ceiling.FluidL, quantity.Litre)))
		list = append(list, cutSentences(sp, there)...)
	} else if text := lacking(sp, m, there); text != "" {
		list = append(list, text)
	}
	return append(list, sp.Profile(care.Of(m.athlete, p.v.desk.Now()))...)
}

// showCaution says what speaks against the plan there.
func (p *crewMore) showCaution(sp heat.Speaker, there consult.StopPlan, err error) {
	if err != nil || !there.Planned || there.TooUncertain() {
		p.caution.SetText("", "")
		return
	}
	title, sentence := planCaution(sp, there)
	if _, outruns := there.HighEnd(); !outruns {
		title = "" // the foot of the table says it
	}
	p.caution.SetText(title, sentence)
}
