package testday

import (
	"context"
	"slices"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/care"
	"ebbwell/internal/record"
)

// startPart begins a sheet for an athlete who is found by typing.
type startPart struct {
	v      *View
	search *field.Suggest
	// chosen is the selected athlete; its id is empty while nobody is.
	chosen  record.Athlete
	words   *look.Paragraph
	caution *look.Caution
	begin   *field.Button
	goOn    *field.Button
	row     *fyne.Container
	body    *look.Sheet
}

func newStartPart(v *View) *startPart {
	say, h := v.desk.Words.Say, v.desk.Host
	p := &startPart{v: v, words: look.NewParagraph("", look.Note, look.Ink2), caution: look.NewCaution("", "", nil)}
	p.search = field.NewSuggest(h, "testday.search", false, p.matches)
	p.search.SetPlaceholder(say("testday.search"))
	p.search.OnChosen = func(o field.Option) { p.choose(record.ID(o.Key)) }
	p.search.OnChanged = func(string) {
		if _, known := p.search.Taken(); !known {
			p.choose("")
		}
	}
	p.begin = field.NewButton(h, "testday.begin", say("testday.begin"), field.Primary, p.press)
	p.goOn = field.NewButton(h, "testday.goon", say("testday.goon"), field.Outline, p.unfinished)
	p.row = look.HBox(10, p.begin, p.goOn)
	p.body = look.NewSheet(look.VBox(10, look.NewLabel(say("testday.start"), look.Strong, look.Ink), p.search, p.words, p.caution, p.row))
	p.show()
	return p
}

// matches are the athletes that fit a text.
func (p *startPart) matches(text string) []field.Option {
	var list []field.Option
	for _, a := range p.v.state.Match(text) {
		list = append(list, field.Option{Key: string(a.ID), Text: a.Name, Note: desk.SportWord(p.v.desk.Words, a.Sport)})
	}
	return field.Matching(list, text)
}

// choose selects an athlete; nobody for an empty id.
func (p *startPart) choose(id record.ID) {
	if id == p.chosen.ID {
		return
	}
	p.chosen = record.Athlete{}
	if id != "" {
		a, err := p.v.desk.Store.LoadAthlete(context.Background(), id)
		if err != nil {
			p.v.desk.Trouble(err)
		} else {
			p.chosen = a
		}
	}
	p.show()
}

// outstanding lists what a first sheet waits for.
func (p *startPart) outstanding() []string { return care.Of(p.chosen, p.v.desk.Now()).Outstanding }

// show says who is in hand and what can be done.
func (p *startPart) show() {
	say, w := p.v.desk.Words.Say, p.v.desk.Words
	var parts []string
	if years, ok := p.chosen.Age(p.v.desk.Now()); ok {
		parts = append(parts, w.Number(float64(years), 0))
	}
	if p.chosen.Sport != "" {
		parts = append(parts, desk.SportWord(w, p.chosen.Sport))
	}
	text := w.Dots(parts)
	open := p.outstanding()
	p.caution.SetText("", "")
	p.begin.SetText(say("testday.begin"))
	_, goesOn := p.v.state.Unfinished(p.chosen.ID)
	switch {
	case p.chosen.ID == "":
		text = say("testday.start.note")
	case slices.Contains(open, "born"):
		p.caution.SetText(say("testday.noborn.title"), say("testday.noborn"))
		p.begin.SetText(say("testday.settle"))
	case len(open) > 0:
		p.caution.SetText(say("testday.minor.title"), say("testday.minor"))
		p.begin.SetText(say("testday.settle"))
	case goesOn:
		p.caution.SetText("", say("testday.has"))
	}
	p.words.SetText(text)
	set(p.begin, p.chosen.ID != "")
	if goesOn {
		p.goOn.Show()
	} else {
		p.goOn.Hide()
	}
	p.row.Refresh()
	if p.v.body != nil {
		p.v.body.Refresh()
	}
}

// partMinor is the part of the profile that says whether the athlete is a minor,
// and what then comes first.
const partMinor = "minor"

// press begins the sheet, or leads to what comes before it.
func (p *startPart) press() {
	place := desk.Place{Screen: desk.Tests, Athlete: p.chosen.ID, New: true}
	if len(p.outstanding()) > 0 {
		place = desk.Place{Screen: desk.Profile, Athlete: p.chosen.ID, Part: partMinor}
	}
	p.v.desk.Go(place)
}

// unfinished opens the sheet the athlete has already.
func (p *startPart) unfinished() {
	if test, ok := p.v.state.Unfinished(p.chosen.ID); ok {
		p.v.desk.Go(desk.Place{Screen: desk.Tests, Athlete: p.chosen.ID, Record: test})
	}
}

// set lets a control be used, or keeps it from it.
func set(c fyne.Disableable, on bool) {
	if on {
		c.Enable()
		return
	}
	c.Disable()
}
