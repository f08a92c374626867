package handout

import "ebbwell/internal/handout/paper"

// CoachPage is what a coach is given of a group's session: only athletes who
// consented to sharing, and where mass is hidden litres only.
type CoachPage struct {
	Terms Terms
	// Title and Under name the session and its day, worded.
	Title, Under string
	Lines        []CoachLine
	// Notes are sentences, worded: how many are not listed, what the figures are.
	Notes []string
}

// CoachLine is one athlete; every value is worded, and empty while not known: printed as a dash.
type CoachLine struct{ Name, Loss, Rate, Drunk, Deficit, Sodium string }

// CoachPage lays out the page for the coach.
func (p *Press) CoachPage(c CoachPage) paper.Document {
	pages := p.once(func(p *Press) (paper.Frame, []paper.Item) { return p.coachItems(c) })
	return p.document(c.Terms, c.Title, p.say.Say("handout.coach.subject"), pages)
}

// coachItems are the rows of the athletes, and the notes.
func (p *Press) coachItems(c CoachPage) (paper.Frame, []paper.Item) {
	am, say := p.amounts(c.Terms), p.say.Say
	fr := p.frame(c.Terms, head{title: am.typed(c.Title), under: am.typed(c.Under)})
	w := fr.Inner()
	right := paper.Right
	t := table{columns: []col{
		{head: say("handout.coach.athlete"), width: w * 0.28}, {head: say("handout.coach.loss"), width: w * 0.14, align: right},
		{head: say("handout.coach.rate"), width: w * 0.15, align: right}, {head: say("handout.coach.drunk"), width: w * 0.13, align: right},
		{head: say("handout.coach.deficit"), width: w * 0.16, align: right}, {head: say("handout.coach.sodium"), width: w * 0.14, align: right},
	}}
	for _, l := range c.Lines {
		t.rows = append(t.rows, row{cells: []string{am.typed(l.Name), orDash(l.Loss), orDash(l.Rate), orDash(l.Drunk), orDash(l.Deficit), orDash(l.Sodium)}})
	}
	items := t.items(p, w)
	items = append(items, p.sentences(say("handout.coach.notes"), c.Notes, am, w)...)
	return fr, items
}
