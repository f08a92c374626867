package testsheet

import (
	"context"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/letter"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/testsheet/findings"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// footPad is the room below the buttons, in px.
const footPad float32 = 20

// build makes the widgets of a sheet.
func (v *View) build() error {
	u := &v.ui
	var err error
	if u.before, err = newBefore(v.b, v.by.Hidden, v.askDevice); err != nil {
		return err
	}
	u.before.day = v.b.Doc.Now().Record.Session.Date
	u.bottles, u.after, u.urine = newBottles(v.b), newAfter(v.b, newRedFlag(v), v.askDevice), newUrine(v.b)
	for _, l := range []*weighingList{u.before.masses, u.before.mornings, u.after.masses} {
		l.hidden = func() bool { return v.by.Hidden }
	}
	u.after.masses.again = v.weighAgain
	u.balance = newBalance(v.desk, v.by, troubleActions{goTo: v.goTo, keep: v.askReason, drop: v.dropReason, offer: func(trouble) { v.endNextDay() }})
	u.find = findings.New(v.desk, v.speaker().Speaker, findings.Actions{OwnEstimate: v.setOwnEstimate, OwnEstimateLeft: v.leftOwnEstimate, Letter: v.askLetter})
	u.notice = look.NewCaution("", "", nil)
	u.altered = look.NewCaution("", "", field.NewLink(v.desk.Host, "testsheet.copies", v.b.Say("frame.damaged.copies"), v.goToCopies))
	u.consents = look.NewCaution("", "", field.NewLink(v.desk.Host, "testsheet.consent.profile", v.b.Say("testsheet.profile"), v.goToProfile))
	u.tabs = field.NewTabs(v.desk.Host, "testsheet.tabs", v.partTabs())
	u.tabs.OnChosen = v.showPart
	u.tools, u.foot = newTools(v), newFoot(v)
	u.stage = newStage()
	top := newSplitRow(u.tabs, u.tools.box)
	v.body = look.Pad(8, 0, footPad, 0, look.VBox(12, top, u.altered, u.notice, u.consents, look.Grow(u.stage), u.foot.box))
	v.place()
	return nil
}

// partTabs are the parts as tabs.
func (v *View) partTabs() []field.Tab {
	var list []field.Tab
	for _, p := range partList() {
		list = append(list, field.Tab{Key: p, Text: v.desk.Words.Say("testsheet.tab." + p)})
	}
	return list
}

// showPart shows one part of the sheet.
func (v *View) showPart(part string) {
	if v.b == nil || strings.TrimSpace(part) == "" {
		return
	}
	found := false
	for _, p := range partList() {
		found = found || p == part
	}
	if !found {
		return
	}
	v.part = part
	v.ui.tabs.Choose(part)
	v.place()
	if part == PartFindings {
		v.ui.find.Open(v.input())
	}
	v.follow()
	v.desk.HeadChanged()
}

// place puts the present part on the stage.
func (v *View) place() {
	u := &v.ui
	if body := v.partBody(); body != nil {
		u.stage.set(v.part, func() fyne.CanvasObject { return look.NewScroll(besideBar(body)) }, u.balance.body)
		return
	}
	u.stage.set(v.part, u.find.Main, u.find.Side())
}

// partBody is what is filled in on the present part; nil for the findings.
func (v *View) partBody() fyne.CanvasObject {
	u := &v.ui
	return map[string]fyne.CanvasObject{
		PartBefore: u.before.body, PartBottles: u.bottles.body, PartAfter: u.after.body, PartUrine: u.urine.body,
	}[v.part]
}

// input is what the findings show.
func (v *View) input() findings.Input {
	s := v.b.Doc.Now()
	in := findings.Input{Findings: v.found, Athlete: v.athlete, Practice: v.desk.Practice(), Open: s.Record.State == record.TestOpen, Location: v.desk.Now().Location()}
	for _, t := range v.tests {
		if t.ID == s.Record.ID {
			continue
		}
		f, err := v.desk.Findings(context.Background(), t, v.athlete)
		if err != nil {
			v.desk.Trouble(err)
			continue
		}
		if f.Sweat.Fluid.Rate.Ranged {
			in.Others = append(in.Others, findings.Other{Name: v.testName(t), Findings: f})
		}
	}
	return in
}

// setOwnEstimate takes the athlete's guess in as it is typed.
func (v *View) setOwnEstimate(r field.Reading) {
	if v.ui.foot.guess == "" {
		v.ui.foot.guess = desk.NewVisit()
	}
	v.b.Doc.Change(v.ui.foot.guess, "testsheet.guess", func(s *sheet) { s.Put(&s.Record.Loss.Guess, "loss.guess", r) })
	v.changed()
}

// leftOwnEstimate ends the visit to the guess.
func (v *View) leftOwnEstimate() {
	v.ui.foot.guess = ""
	v.b.Doc.EndVisit()
	v.b.Flush()
}

// goTo opens the part a control stands in and gives it the keyboard.
func (v *View) goTo(part, control string) {
	if part != v.part {
		v.showPart(part)
	}
	v.unfold(control)
	v.b.GoTo(control)
}

// unfold opens what a control is folded away in.
func (v *View) unfold(control string) {
	for _, f := range append([]*fold{v.ui.after.kit}, v.ui.before.folds...) {
		if f.holds(control) {
			f.open = true
			f.show()
		}
	}
	v.ui.stage.follow(v.partBody())
}

// begin gives the keyboard to the first field of the present part.
func (v *View) begin() {
	body := v.partBody()
	if body == nil {
		return
	}
	for _, s := range field.Names(body) {
		if _, way := s.Object.(*field.Link); way {
			continue
		}
		if f, ok := s.Object.(bind.Control); ok && !s.Disabled {
			f.Focus()
			return
		}
	}
}

// partMinor is the part of the profile that says whether the athlete is a minor,
// and what then comes first.
const partMinor = "minor"

// goToProfile leads to the athlete's profile.
func (v *View) goToProfile() {
	place := desk.Place{Screen: desk.Profile, Athlete: v.athlete.ID}
	if len(care.Of(v.athlete, v.desk.Now()).Outstanding) > 0 {
		place.Part = partMinor
	}
	v.desk.Go(place)
}

// weighAgain reports whether the masses ask for a second reading: a gain, or a change
// that is odd.
func (v *View) weighAgain() bool {
	if _, gained := consult.GainOf(v.found, v.athlete, consult.TestDay(v.b.Doc.Now().Record)); gained {
		return true
	}
	for _, p := range v.found.Sweat.Problems {
		if p.Field == evidence.MassChange || p.Field == evidence.MassAfter {
			return true
		}
	}
	return false
}

// askLetter shows the findings as text, with the plan the athlete takes along.
func (v *View) askLetter() {
	if !v.b.FlushNow() {
		return
	}
	letter.Ask(v.desk, v.canvas(), letter.Source{
		Name: "testsheet.letter", File: v.b.Say("letter.file.test", v.athlete.Name, string(v.b.Doc.Now().Record.Session.Date)),
		Athlete: v.athlete.ID, Kind: record.KindTest, Record: v.b.Doc.Now().Record.ID,
		Of: func(ctx context.Context, d *desk.Desk) (letter.Letter, error) {
			other := *v
			other.desk = d
			other.calculate() // with the foods by their names there
			in, err := letter.InputOf(ctx, d, v.athlete, &other.found)
			return letter.Of(in), err
		},
	})
}
