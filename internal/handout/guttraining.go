package handout

import (
	"strings"

	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/handout/paper"
)

// gutTraining are the weeks of gut training, where they were chosen for the page.
func (k composer) gutTraining() []fuel.GutWeek {
	if k.over || !consult.Wished(k.c.Plan, consult.GutOnPage) {
		return nil
	}
	_, weeks := k.c.GutTraining()
	return weeks
}

// gut is gut training week by week.
func (p *Press) gut(weeks []fuel.GutWeek, width float64) []paper.Item {
	if len(weeks) == 0 {
		return nil
	}
	n := func(x float64) string { return p.say.Number(x, 0) }
	text := []string{p.say.Say("handout.gut.rule", n(evidence.StepSessionsHigh)), p.say.Say("handout.gut.stay", n(evidence.StomachHold))}
	for i, w := range weeks {
		text = append(text, p.say.Say("handout.gut.week", n(float64(i+1)), n(w.GramsHour), n(w.Dose), n(w.Every)))
	}
	body := p.faces.Paragraph(finePrint().In(paper.Black), strings.Join(text, " "), width)
	return []paper.Item{p.section(p.say.Say("handout.gut.title"), width), {Block: body, Keep: true}}
}
