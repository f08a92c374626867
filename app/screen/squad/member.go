package squad

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

// askAdd asks for an athlete to add.
func (v *View) askAdd() {
	all, err := v.desk.Store.People(context.Background())
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	there := map[record.ID]bool{}
	for _, m := range v.doc.Now().session.Members {
		there[m.AthleteID] = true
	}
	said := look.NewParagraph(v.say("squad.add.how"), look.Note, look.Ink2)
	search := field.NewSuggest(v.desk.Host, "squad.add.search", false, func(text string) []field.Option {
		var list []field.Option
		for _, a := range all {
			if !there[a.ID] {
				list = append(list, field.Option{Key: string(a.ID), Text: a.Name, Note: desk.SportWord(v.desk.Words, a.Sport)})
			}
		}
		return field.Matching(list, text)
	})
	search.OnChosen = func(o field.Option) {
		if there[record.ID(o.Key)] {
			return
		}
		added, words := v.addAthlete(record.ID(o.Key))
		there[record.ID(o.Key)] = added
		said.SetText(words)
		search.Set(field.Option{})
	}
	v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "squad.add", Title: v.say("squad.add.title"), Sentence: v.say("squad.add.sentence"), Content: look.VBox(8, search, said), Width: 460,
		Actions: []field.Action{
			{Name: "done", Text: v.say("squad.add.done"), Kind: field.Primary},
			{Name: "new", Text: v.say("squad.add.new"), Kind: field.Outline, Do: func() bool {
				v.desk.Go(desk.Place{Screen: desk.Profile, New: true})
				return false
			}},
		},
		OnClosed: v.openAgain,
	})
}

// addAthlete takes an athlete in with a sheet; words say how that went.
func (v *View) addAthlete(id record.ID) (added bool, words string) {
	a, err := v.desk.Store.LoadAthlete(context.Background(), id)
	if err != nil {
		v.desk.Trouble(err)
		return false, ""
	}
	if len(care.Of(a, v.desk.Now()).Outstanding) > 0 {
		return false, v.say("squad.add.unsettled", a.Name)
	}
	if v.open != nil {
		v.open.commit()
	}
	g := v.doc.Now().session
	t := squad.NewSheet(g, a, v.desk.Now())
	if err := v.people.add(v.desk, a, t.ID); err != nil {
		v.desk.Trouble(err)
		return false, ""
	}
	m := memberOf(a, t, len(g.Members))
	for _, other := range g.Members {
		m.Order = max(m.Order, other.Order+1)
	}
	v.doc.Add([]record.Member{m}, []record.Test{t})
	v.flush()
	v.look()
	v.reopen()
	v.follow()
	v.desk.HeadChanged()
	return true, v.say("squad.add.added", a.Name)
}

// askMember asks what is one athlete's own: bib, times, a weighing within the
// session; and takes them off the list.
func (v *View) askMember(i int) {
	r := v.rows[i]
	m := &memberDialog{v: v, id: r.Sheet.Test.ID, i: i}
	say := v.say
	content := look.VBox(10,
		look.NewForm(look.NewEntry(say("squad.member.bib"), m.bib(r.Member.Bib)),
			look.NewEntry(say("squad.change.met"), m.number("met", evidence.MetValue, quantity.Met, func(t *record.Test, _ bool) (*record.Number, string) { return &t.Session.Met, "session.met" })),
			look.NewEntry(say("squad.change.start"), m.clock("start", func(t *record.Test) *record.Clock { return &t.Session.Start })),
			look.NewEntry(say("squad.change.end"), m.clock("end", func(t *record.Test) *record.Clock { return &t.Session.End })),
		),
		look.NewLabel(say("squad.partway"), look.Strong, look.Ink), look.NewParagraph(say("squad.partway.note"), look.Note, look.Ink2),
		look.NewForm(look.NewEntry(say("squad.partway.at"), m.partwayAt()),
			look.NewEntry(say("squad.partway.mass"), m.mass(r.Hidden)),
			look.NewEntry(say("squad.partway.drunk"), m.number("partway.drunk", evidence.PouredVolume, quantity.Millilitre, partway("drunk", func(p *record.PartwayWeighing) *record.Number { return &p.Drunk }))),
			look.NewEntry(say("squad.partway.urine"), m.number("partway.urine", evidence.UrineMass, quantity.Gram, partway("urine", func(p *record.PartwayWeighing) *record.Number { return &p.Urine }))),
		), look.NewParagraph(v.segmentWords(r), look.Body, look.Ink))
	v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "squad.member", Title: r.Sheet.Athlete.Name, Sentence: say("squad.member.sentence"), Content: look.Pad(0, look.BarRoom+4, 0, 0, content), Width: 660,
		Actions: []field.Action{
			{Name: "done", Text: say("squad.change.done"), Kind: field.Primary},
			{Name: "off", Text: say("squad.member.off"), Kind: field.Outline, Do: func() bool { v.takeOff(i); return false }},
		},
		OnClosed: func() { v.reopen(); v.changed(); v.openAgain() },
	})
}

// segmentWords say the rates of the parts of a session.
func (v *View) segmentWords(r squad.Row) string {
	list := consult.Segments(r.Found)
	if len(list) == 0 {
		return ""
	}
	by := v.speaker(r.Hidden).By
	var parts []string
	for _, s := range list {
		parts = append(parts, v.say("squad.segment", string(s.From), string(s.To), by.Amount(s.Loss, quantity.Litre), by.Amount(s.Rate, quantity.LitrePerHour)))
	}
	text := strings.Join(parts, " ")
	if consult.SegmentsChange(list) {
		text += " " + v.say("squad.segment.changes")
	}
	return text
}

// takeOff takes an athlete off the list; the sheet stays as that athlete's own.
func (v *View) takeOff(i int) {
	if i >= len(v.rows) {
		return
	}
	r := v.rows[i]
	v.doc.ChangeSession("", "squad.off", func(g *record.GroupSession) {
		g.Members = slices.DeleteFunc(g.Members, func(m record.Member) bool { return m.ID == r.Member.ID })
	})
	v.open, v.at = nil, min(v.at, len(v.doc.Now().session.Members)-1)
	v.flush()
	v.look()
	v.reopen()
	v.follow()
	v.desk.HeadChanged()
	v.desk.Offer(v.say("squad.off.said", r.Sheet.Athlete.Name), v.say("frame.undo"), func() { v.Undo() })
}

// memberDialog is what is one athlete's own.
type memberDialog struct {
	v  *View
	id record.ID
	i  int
}

func (m *memberDialog) bib(now string) *field.Line {
	l := field.NewLine(m.v.desk.Host, "squad.member.bib", 8)
	l.SetText(now)
	visit := desk.NewVisit()
	l.OnChanged = func(text string) {
		m.v.doc.ChangeSession(visit, "bib", func(g *record.GroupSession) {
			for i := range g.Members {
				if g.Members[i].TestID == m.id {
					g.Members[i].Bib = strings.TrimSpace(text)
				}
			}
		})
		m.v.changed()
	}
	l.OnLeft = func(string) { m.v.left() }
	return l
}

func (m *memberDialog) clock(name string, at func(*record.Test) *record.Clock) *field.Clock {
	f := field.NewClock(m.v.desk.Host, "squad.member."+name)
	t := m.v.doc.Now().sheets[m.id].Record
	f.SetClock(*at(&t))
	f.OnChanged = func(c record.Clock) {
		m.v.edit("squad.member."+name, m.id, func(s *sheet) { *at(&s.Record) = c; squad.CrossMidnight(&s.Record.Session) })
	}
	f.OnLeft = func(record.Clock, bool) { m.v.left() }
	return f
}

// partwayOf is the weighing within the session; made where it is to grow.
func partwayOf(t *record.Test, grow bool) *record.PartwayWeighing {
	if len(t.Partway) == 0 {
		if !grow {
			return nil
		}
		t.Partway = append(t.Partway, record.PartwayWeighing{Meta: record.Meta{ID: record.NewID()}, Order: 1})
	}
	return &t.Partway[0]
}

func (m *memberDialog) partwayAt() *field.Clock {
	return m.clock("partway.at", func(t *record.Test) *record.Clock {
		if p := partwayOf(t, false); p != nil {
			return &p.At
		}
		if len(t.Session.Start) == 0 {
			return new(record.Clock)
		}
		return &partwayOf(t, true).At
	})
}

// mass is the body mass within the session, covered where it is hidden.
func (m *memberDialog) mass(hidden bool) *field.Number {
	f := m.number("partway.mass", evidence.MassBefore, quantity.Kilogram, partway("mass", func(p *record.PartwayWeighing) *record.Number { return &p.Mass }))
	f.Cover(hidden)
	return f
}

// partway finds a number of the weighing within the session.
func partway(what string, of func(*record.PartwayWeighing) *record.Number) func(t *record.Test, grow bool) (*record.Number, string) {
	return func(t *record.Test, grow bool) (*record.Number, string) {
		p := partwayOf(t, grow)
		if p == nil {
			return nil, ""
		}
		return of(p), fmt.Sprintf("partway.%s.%s", p.ID, what)
	}
}

func (m *memberDialog) number(name string, f evidence.Field, u quantity.Unit, at func(t *record.Test, grow bool) (*record.Number, string)) *field.Number {
	return m.v.number("squad.member."+name, m.id, f, u, nil, at)
}
