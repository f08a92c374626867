package profile

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// sportPart is what the athlete does and what the body is used to.
type sportPart struct {
	v        *View
	groups   *groupsPart
	mouthful *mouthfulPart
	usual    *field.Number
	// lastSaved is the drinking rate that was written down last: it rises only
	// with a reason; opened the one the profile was opened with, above which
	// it rises only by a review once a plan is agreed.
	lastSaved, opened record.Number
	refused           *look.Caution
	excuse            *excuse
	deficit           fyne.CanvasObject
	body              fyne.CanvasObject
}

func newSportPart(v *View) *sportPart {
	say, p := v.sp.Say, &sportPart{v: v, lastSaved: v.now().UsualDrinking, opened: v.now().UsualDrinking}
	sport := v.b.Suggest("", "profile.sport", p.sports, func(a record.Athlete) field.Option {
		return field.Option{Key: a.Sport, Text: desk.SportWord(v.desk.Words, a.Sport)}
	}, func(a *record.Athlete, o field.Option) {
		a.Sport = o.Key
		if o.Key == "" {
			a.Sport = o.Text
		}
	}).Choosy()
	sport.SetPlaceholder(say("profile.sport.hint"))
	position := v.b.Line("", "profile.position", 120, func(a *record.Athlete) *string { return &a.Position })
	heat := v.b.Toggle("", "profile.heat", v.b.Options("profile.heat.", string(record.AcclimatisedYes), string(record.AcclimatisedNo)), bind.Word[record.Athlete]{
		Get: func(a record.Athlete) string { return string(a.Acclimatised) },
		Set: func(a *record.Athlete, w string) { a.Acclimatised = record.Acclimatised(w) },
	})
	training := v.b.Toggle("", "profile.training", []field.Option{
		{Key: string(record.Trained), Text: say("profile.training.trained")}, {Key: string(record.Untrained), Text: say("profile.training.untrained")},
	}, bind.Word[record.Athlete]{
		Get: func(a record.Athlete) string { return string(a.Training) },
		Set: func(a *record.Athlete, w string) { a.Training = record.Training(w) },
	})
	p.usual = v.b.Number("", "profile.usual", evidence.DrinkingRate, quantity.LitrePerHour, bind.At("usualDrinking", func(a *record.Athlete) *record.Number { return &a.UsualDrinking }))
	left := p.usual.OnLeft
	p.usual.OnLeft = func(r field.Reading) {
		left(r)
		p.checkRise()
	}
	p.excuse = v.newExcuse("profile.usual", "usualDrinking", p.usual)
	p.groups, p.mouthful = newGroupsPart(v), newMouthfulPart(v)
	note := v.b.Notes("", "profile.note", 3, func(a *record.Athlete) *string { return &a.Note })
	p.refused = look.NewCaution("", "", field.NewLink(v.desk.Host, "profile.usual.review", say("overview.plan.open"), p.toReview))
	usual := look.VBox(2, few(p.usual), p.excuse.box, p.refused, look.NewParagraph(say("profile.usual.note"), look.Note, look.Ink2))
	p.body = look.NewSheet(look.VBox(8,
		look.NewLabel(say("profile.does"), look.Strong, look.Ink),
		row(say("profile.sport"), broad(sport)),
		row(say("profile.position"), broad(position)),
		row(say("profile.groups"), broad(p.groups.body)),
		row(say("profile.training"), look.MaxWidth(dayWidth, training)),
		row(say("profile.heat"), look.MaxWidth(fewWidth, heat)),
		row(say("profile.usual"), usual),
		row(say("profile.mouthful"), p.mouthful.body),
		v.usually(), p.aims(),
		row(say("profile.note"), broad(note)),
	))
	return p
}

// sports are the sports the program knows that fit a text.
func (p *sportPart) sports(text string) []field.Option {
	var list []field.Option
	for _, s := range consult.Sports() {
		list = append(list, field.Option{Key: s.Code, Text: desk.SportWord(p.v.desk.Words, s.Code)})
	}
	return field.Matching(list, text)
}

// checkRise keeps the drinking rate the stomach is used to from rising by
// itself, since it loosens a guard: once a plan is agreed it rises only by a
// review of what was really drunk; before that only with a reason.
func (p *sportPart) checkRise() {
	if p.v.agreed != nil {
		p.refuseRise()
		return
	}
	now := p.v.now().UsualDrinking
	if !now.Known() || !p.lastSaved.Known() || *now.Value <= *p.lastSaved.Value {
		p.lastSaved = now
		return
	}
	say, before := p.v.sp.Say, p.lastSaved
	p.v.askWhy("profile.rise", say("profile.rise.title"),
		say("profile.rise", p.v.sp.By.Amount(*before.Value, quantity.LitrePerHour), p.v.sp.By.Amount(*now.Value, quantity.LitrePerHour)),
		func(why string) {
			p.lastSaved = now
			p.v.b.Pick("profile.usual", func(s *sheet) { s.Reasons["usualDrinking"] = why })
		},
		func() {
			p.v.b.Pick("profile.usual", func(s *sheet) { s.Record.UsualDrinking = before })
			p.v.b.Show()
			p.v.showAfterTyping()
		})
}

// refuseRise takes a drinking rate back that has risen above what it was when
// the profile was opened, or was taken out: without one there is no guard.
func (p *sportPart) refuseRise() {
	now := p.v.now().UsualDrinking
	if !p.opened.Known() {
		p.opened = now // the first entry
	}
	if !p.opened.Known() || now.Known() && *now.Value <= *p.opened.Value {
		p.refused.SetText("", "")
		return
	}
	p.v.b.Undo() // whether typed or done again, it was the last step
	say, before := p.v.sp.Say, p.v.now().UsualDrinking.Or(*p.opened.Value)
	p.refused.SetText(say("profile.usual.refused.title", p.v.sp.By.Amount(before, quantity.LitrePerHour)), say("profile.usual.refused"))
	p.v.showAfterTyping()
}

// toReview leads to the agreed plan, where sessions are written down and reviewed.
func (p *sportPart) toReview() {
	p.v.desk.Go(desk.Place{Screen: desk.Plan, Athlete: p.v.now().ID, Record: p.v.agreed.ID})
}

// follow shows groups and reasons.
func (p *sportPart) follow(a record.Athlete) {
	p.groups.follow(a)
	show(p.deficit, !care.MassHidden(a, p.v.desk.Now())) // no per cent of a hidden mass
	p.excuse.follow()
	p.mouthful.excuse.follow()
}
