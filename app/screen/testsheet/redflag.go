package testsheet

import (
	"strings"
	"time"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// redFlag is what to do, ask and write down where an athlete weighed more after
// than before, or has a symptom. It stands above all else of its part until who was
// told is saved, and after that with what was done.
type redFlag struct {
	v            *View
	title        *look.Paragraph
	sentence     *look.Paragraph
	ticks        map[string]*field.Check
	times        map[string]*look.Label
	answers      map[string]*field.Toggle
	any          *look.Paragraph
	lines        *fyne.Container
	name, nobody *field.Line
	save         *field.Button
	blocked      *look.Paragraph
	body         *fyne.Container
	box          *look.Flag
	said         string
}

// newRedFlag builds the panel, hidden.
func newRedFlag(v *View) *redFlag {
	say, h := v.b.Say, v.desk.Host
	p := &redFlag{
		v: v, title: look.NewParagraph("", look.Second, look.Ink), sentence: look.NewParagraph("", look.Body, look.Ink),
		ticks: map[string]*field.Check{}, times: map[string]*look.Label{}, answers: map[string]*field.Toggle{},
		any: look.NewParagraph("", look.NoteStrong, look.Ink), lines: look.VBox(4),
		blocked: look.NewParagraph(say("safety.blocked"), look.Note, look.Ink2),
	}
	p.name, p.nobody = field.NewLine(h, "testsheet.flag.name", 80), field.NewLine(h, "testsheet.flag.nobody", 200)
	p.name.OnEnter, p.nobody.OnEnter = func(string) { p.tell() }, func(string) { p.tell() }
	p.save = field.NewButton(h, "testsheet.flag.save", say("safety.save"), field.Primary, p.tell)
	record := look.NewPair(0.5, 520,
		look.VBox(6, look.NewLabel(say("safety.record"), look.Strong, look.Ink), p.lines),
		look.VBox(6, look.NewLabel(say("safety.name"), look.Note, look.Ink2), p.name, look.NewLabel(say("safety.nobody"), look.Note, look.Ink2), p.nobody,
			look.HBox(0, p.save), p.blocked))
	p.body = look.VBox(14, look.NewPair(0.5, 520, p.actions(), p.questions()), look.NewRule(), record, look.NewParagraph(say("safety.keys", say("safety.key.yes"), say("safety.key.no")), look.Note, look.Ink2))
	p.box = look.NewFlag(look.VBox(4, p.title, p.sentence), p.body)
	p.box.Hide()
	return p
}

// actions are what to do now, each with the time it was ticked.
func (p *redFlag) actions() fyne.CanvasObject {
	say, h := p.v.b.Say, p.v.desk.Host
	box := look.VBox(8, look.NewLabel(say("safety.donow"), look.Strong, look.Ink))
	for _, act := range consult.Actions() {
		tick := field.NewCheck(h, "testsheet.flag.do."+act, say("safety.item."+act))
		tick.OnChanged = func(on bool) {
			answer := record.AnswerNo
			if on {
				answer = record.AnswerYes
			}
			p.note(tick.Name(), record.SafetyNote{Kind: record.SafetyDone, Item: act, Answer: answer})
		}
		p.ticks[act], p.times[act] = tick, look.NewLabel("", look.Note, look.Ink2).Right()
		words := say("safety.note." + act)
		if act == consult.ActAsk {
			words = say("safety.note."+act, p.v.desk.Words.Number(evidence.AskAgain, 0))
		}
		box.Add(look.VBox(0, look.Columns(8, []look.Track{look.Share(1), look.Fixed(44)}, tick, p.times[act]), look.Pad(0, 0, 0, 28, look.NewParagraph(words, look.Note, look.Ink2))))
	}
	return box
}

// questions are the symptoms, those that call for the emergency number first.
func (p *redFlag) questions() fyne.CanvasObject {
	say := p.v.b.Say
	options := []field.Option{{Key: record.AnswerNo, Text: say("safety.answer.no")}, {Key: record.AnswerYes, Text: say("safety.answer.yes")}}
	line := func(item string) fyne.CanvasObject {
		t := field.NewToggle(p.v.desk.Host, flagAsk+item, options)
		t.OnChosen = func(answer string) {
			p.note(t.Name(), record.SafetyNote{Kind: record.SafetyAsked, Item: item, Answer: answer})
		}
		t.SetSpoken(say("safety.item." + item))
		p.answers[item] = t
		return look.Columns(10, []look.Track{look.Share(1), look.Fit()}, look.NewParagraph(say("safety.item."+item), look.Body, look.Ink), t)
	}
	box := look.VBox(6, look.NewLabel(say("safety.askher"), look.Strong, look.Ink))
	first := look.VBox(6)
	for _, item := range consult.Emergencies() {
		first.Add(line(item))
	}
	first.Add(p.any)
	box.Add(look.NewBarred(first))
	for _, item := range consult.Symptoms() {
		box.Add(line(item))
	}
	return box
}

// flagAsk begins the names of the questions.
const flagAsk = "testsheet.flag.ask."

// note adds a line to the record.
func (p *redFlag) note(name string, n record.SafetyNote) {
	at := p.v.desk.Now().UTC()
	n.Done = &at
	p.v.b.Pick(name, func(s *sheet) { consult.Note(&s.Record, n) })
}

// tell saves who was told, or why nobody was.
func (p *redFlag) tell() {
	name, why := strings.TrimSpace(p.name.Text()), strings.TrimSpace(p.nobody.Text())
	switch {
	case name != "":
		p.note("testsheet.flag.save", record.SafetyNote{Kind: record.SafetyTold, Item: consult.ToldName, Text: name})
	case why != "":
		p.note("testsheet.flag.save", record.SafetyNote{Kind: record.SafetyTold, Item: consult.ToldNobody, Text: why})
	default:
		p.name.Focus()
	}
}

// answer answers the question that has the keyboard, by the language's key for yes or
// for no, and goes on to the next.
func (p *redFlag) answer(r rune) {
	c := p.v.canvas()
	if c == nil {
		return
	}
	t, ok := c.Focused().(*field.Toggle)
	if !ok || !strings.HasPrefix(t.Name(), flagAsk) {
		return
	}
	item := strings.TrimPrefix(t.Name(), flagAsk)
	answer := map[string]string{p.v.desk.Words.Say("safety.key.yes"): record.AnswerYes, p.v.desk.Words.Say("safety.key.no"): record.AnswerNo}[strings.ToUpper(string(r))]
	if answer == "" {
		return
	}
	t.Choose(answer)
	t.OnChosen(answer)
	list := consult.Asked()
	for i, one := range list {
		if one == item && i+1 < len(list) {
			p.answers[list[i+1]].Focus()
			return
		}
	}
	p.name.Focus()
}

// show follows the sheet.
func (p *redFlag) show(t record.Test, f consult.Findings) {
	flag, ok := consult.RedFlagOf(f, p.v.athlete, consult.TestDay(t))
	look.ShowIf(p.box, ok)
	if !ok {
		return
	}
	w, practice := p.v.desk.Words, p.v.desk.Practice()
	title, sentence := desk.SheetFlag(w, practice, flag, p.v.desk.Now().Location())
	p.title.SetText(title)
	p.sentence.SetText(sentence)
	p.any.SetText(desk.SheetAnyYes(w, practice))
	for act, tick := range p.ticks {
		at, done := flag.Safety.Done[act]
		tick.Set(done)
		text := ""
		if done {
			text = p.clock(at)
		}
		p.times[act].SetText(text)
	}
	for item, toggle := range p.answers {
		toggle.Choose(flag.Safety.Answers[item])
	}
	look.ShowIf(p.blocked, !flag.Told())
	p.showLines(t)
	p.box.Refresh()
}

// clock is the time of day of an instant.
func (p *redFlag) clock(at time.Time) string {
	return p.v.desk.Words.Clock(at.In(p.v.desk.Now().Location()))
}

// mostLines is how many lines of the record are shown.
const mostLines = 12

// showLines shows the record, its last lines where it is long.
func (p *redFlag) showLines(t record.Test) {
	list := desk.SafetyLines(p.v.desk.Speaker(p.v.by.Hidden), t, p.v.desk.Now().Location())
	if len(list) > mostLines {
		list = list[len(list)-mostLines:]
	}
	said := strings.Join(list, "\n")
	if said == p.said {
		return
	}
	p.said, p.lines.Objects = said, nil
	for _, text := range list {
		p.lines.Add(look.NewParagraph(text, look.Note, look.Ink))
	}
	p.lines.Refresh()
}
