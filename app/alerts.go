package app

import (
	"context"
	"slices"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// showAlerts names in the head the gravest thing to know of an athlete and how many
// more there are; nothing where there is none.
func (p *Program) showAlerts(id record.ID) {
	b := p.frame.alerts
	p.frame.known = alertWords{}
	if id == "" {
		return
	}
	a, list, err := p.desk.Alerts(context.Background(), id)
	if err != nil {
		return // an athlete still being entered has none
	}
	if list = consult.WithPlan(list, p.planAlerts(id)); len(list) == 0 {
		return
	}
	w := p.desk.Words
	by := amount.Writer{Words: w, US: p.desk.Practice().Settings.Units == "us", Hidden: care.MassHidden(a, p.desk.Now())}
	text, _ := desk.AlertWords(w, by, p.desk.Practice(), a, list[0])
	if more := len(list) - 1; more > 0 {
		text = w.Say("alerts.more", text, more)
	}
	p.frame.known = alertWords{text, w.Say("alerts.count", len(list))}
	b.OnPressed = func() { p.askAlerts(by, a, list) }
}

// planAlerts are those of the athlete's agreed plan, on whose own screen the heat is said
// already, as it was when the screen was opened: nothing on a screen changes an agreed plan
// but agreeing, which opens another.
func (p *Program) planAlerts(id record.ID) []consult.Alert {
	if p.known.athlete != id {
		known := knownPlan{athlete: id, written: p.desk.Store.Written(), day: p.desk.Today()} // before it is read: a write may come between
		var err error
		if known.alerts, err = p.desk.PlanAlerts(context.Background(), id); err != nil {
			p.known = knownPlan{}
			return nil // the plan's own screen says why; it is looked for again
		}
		p.known = known
	}
	if p.place.Screen != desk.Plan {
		return p.known.alerts
	}
	return slices.DeleteFunc(slices.Clone(p.known.alerts), func(x consult.Alert) bool { return x.Kind == consult.AlertHeat })
}

// knownPlan is what has to be known of an athlete's agreed plan, as of a day and of what
// was written until then.
type knownPlan struct {
	athlete record.ID
	written uint64
	day     record.Date
	alerts  []consult.Alert
}

// forget forgets what may be other now, when a screen is opened.
func (k *knownPlan) forget(written uint64, day record.Date) {
	if k.written != written || k.day != day {
		*k = knownPlan{}
	}
}

// askAlerts lists what has to be known of an athlete, the gravest first, each with the
// way to where it is dealt with.
func (p *Program) askAlerts(by amount.Writer, a record.Athlete, list []consult.Alert) {
	w := p.desk.Words
	var asked *field.Dialog
	rows := []fyne.CanvasObject{}
	for i, x := range list {
		short, full := desk.AlertWords(w, by, p.desk.Practice(), a, x)
		place := alertPlace(a.ID, x)
		way := field.NewLink(p.desk.Host, field.PartName("frame.alert", i, "open"), w.Say("alerts.open."+string(place.Screen)), func() {
			asked.Close()
			p.Open(place)
		})
		rows = append(rows, look.NewCaution(short, full, look.Pad(0, 0, 0, -field.LinkPad, way)))
	}
	asked = p.desk.Host.Ask(p.shell.window.Canvas(), field.Question{
		Name: "frame.alerts.list", Title: w.Say("alerts.title"), Sentence: a.Name, Width: 620, Content: look.VBox(8, rows...),
		Actions: []field.Action{{Name: "done", Text: w.Say("planner.done"), Kind: field.Primary}},
	})
}

// alertPlace is where an alert is dealt with: on the sheet of a gain, else in a part of the
// profile.
func alertPlace(id record.ID, x consult.Alert) desk.Place {
	place := desk.Place{Screen: desk.Profile, Athlete: id, Part: desk.PartFlags}
	switch x.Kind {
	case consult.AlertGain:
		return desk.Place{Screen: desk.Tests, Athlete: id}
	case consult.AlertOutstanding:
		place.Part = desk.PartMinor
	case consult.AlertWithdrawn:
		place.Part = desk.PartConsents
	case consult.AlertSince, consult.AlertHeat, consult.AlertReview:
		return desk.Place{Screen: desk.Plan, Athlete: id}
	case consult.AlertToday, consult.AlertPhysician, consult.AlertCondition:
	}
	return place
}
