package testsheet

import (
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/desk"
	"ebbwell/app/field"
	"ebbwell/app/look"
	"ebbwell/app/testsheet/findings"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// footPad is the room below the buttons, in px.
const footPad float32 = 20

// build makes the widgets of a sheet.
func (v *View) build() error {
	u := &v.ui
	var err error
	if u.before, err = newBefore(v.b); err != nil {
		return err
	}
	u.before.day = v.b.Doc.Now().Record.Session.Date
	u.bottles, u.after, u.urine = newBottles(v.b), newAfter(v.b), newUrine(v.b)
	u.balance = newBalance(v.desk, v.by, troubleActions{goTo: v.goTo, keep: v.askReason, drop: v.dropReason, offer: func(trouble) { v.endNextDay() }})
	u.find = findings.New(v.desk, v.by, findings.Actions{Guess: v.setGuess, GuessLeft: v.leftGuess, Correct: v.setCorrection})
	u.notice = look.NewCaution("", "", nil)
	u.consents = look.NewCaution("", "", field.NewLink(v.desk.Host, "testsheet.consent.profile", v.b.Say("testsheet.profile"), v.goToProfile))
	u.tabs = field.NewTabs(v.desk.Host, "testsheet.tabs", v.partTabs())
	u.tabs.OnChosen = v.showPart
	u.tools, u.foot = newTools(v), newFoot(v)
	u.stage = newStage()
	top := newSplitRow(u.tabs, u.tools.box)
	v.body = look.Pad(8, 0, footPad, 0, look.VBox(12, top, u.notice, u.consents, look.Grow(u.stage), u.foot.box))
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
	in := findings.Input{Findings: v.found, Athlete: v.athlete, Open: s.Record.State == record.TestOpen}
	if a, ok := v.ui.before.activities.Find(s.Record.Session.Activity); ok {
		in.Activity = a.Name
	} else {
		in.Activity = s.Record.Session.Activity
	}
	for _, t := range v.tests {
		if t.ID == s.Record.ID {
			continue
		}
		f := consult.Find(t, v.athlete, v.textsOf(t), v.desk.Reckon())
		if f.Sweat.Fluid.Rate.Ranged {
			in.Others = append(in.Others, findings.Other{Name: v.testName(t), Findings: f})
		}
	}
	return in
}

// setGuess takes the athlete's guess in as it is typed.
func (v *View) setGuess(r field.Reading) {
	if v.ui.foot.guess == "" {
		v.ui.foot.guess = desk.NewVisit()
	}
	v.b.Doc.Change(v.ui.foot.guess, "testsheet.guess", func(s *sheet) { s.Put(&s.Record.Loss.Guess, "loss.guess", r) })
	v.changed()
}

// leftGuess ends the visit to the guess.
func (v *View) leftGuess() {
	v.ui.foot.guess = ""
	v.b.Doc.EndVisit()
	v.b.Flush()
}

// setCorrection sets whether breath and gas exchange are taken off.
func (v *View) setCorrection(c record.Correction) {
	v.b.Pick("findings.correct", func(s *sheet) { s.Record.Loss.Correction = c })
}

// goTo opens the part a control stands in and gives it the keyboard.
func (v *View) goTo(part, control string) {
	if part != v.part {
		v.showPart(part)
	}
	v.b.GoTo(control)
}

// goToProfile leads to the athlete's profile.
func (v *View) goToProfile() { v.desk.Go(desk.Place{Screen: desk.Profile, Athlete: v.athlete.ID}) }

// under is the line beside the name: age, sport, usual mass.
func (v *View) under() string {
	w := v.desk.Words
	var parts []string
	if years, ok := v.athlete.Age(v.desk.Now()); ok {
		parts = append(parts, w.Number(float64(years), 0))
	}
	sport := desk.SportWord(w, v.athlete.Sport)
	if v.athlete.Position != "" {
		sport = strings.TrimPrefix(sport+", "+v.athlete.Position, ", ")
	}
	if sport != "" {
		parts = append(parts, sport)
	}
	if m := v.athlete.UsualMass; m.Known() && !v.by.Hidden {
		u := v.by.Unit(quantity.Kilogram)
		if x, err := quantity.Convert(*m.Value, quantity.Kilogram, u); err == nil {
			parts = append(parts, w.Number(x, 1)+"\u00a0"+string(u))
		}
	}
	return strings.Join(parts, " · ")
}
