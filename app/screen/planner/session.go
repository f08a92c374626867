package planner

import (
	"context"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// sessionTab is the session the plan is for and the limit set with the athlete,
// and what a suggestion may change.
type sessionTab struct {
	v       *View
	thirst  *look.Paragraph
	holds   [plan.Slots]*field.Check
	bottles *bottleLine
	// usual is the field of the limit; the usual one stands in it while none is set.
	usual  *field.Number
	aims   *aimsForm
	remove *field.Button
	box    *fyne.Container
}

// target is the place of a number of the session.
func target(path string, of func(t *record.Target) *record.Number) bind.NumberAt[record.Plan] {
	return bind.At("target."+path, func(p *record.Plan) *record.Number { return of(&p.Target) })
}

func newSessionTab(v *View) part {
	t := &sessionTab{v: v, thirst: look.NewParagraph("", look.Note, look.Ink2)}
	say, b := v.sp.say, v.b
	minutes := func(key string, of func(t *record.Target) *record.Number) look.Entry {
		n := b.Number("", "planner.session."+key, evidence.Duration, quantity.Minute, target(key, of))
		n.SetBox(96)
		return look.NewEntry(say("planner.session."+key), n)
	}
	name := b.Line("", "planner.session.plan", 60, func(p *record.Plan) *string { return &p.Name })
	session := b.Line("", "planner.session.name", 80, func(p *record.Plan) *string { return &p.Target.SessionName })
	effort := b.Rating("", "planner.session.effort", say("planner.effort.low"), say("planner.effort.high"), target("effort", func(t *record.Target) *record.Number { return &t.Effort }))
	start := b.Clock("", "planner.session.start", func(p *record.Plan) (*record.Clock, string) { return &p.Target.Start, "target.start" })
	start.SetBox(96)
	next := b.Number("", "planner.session.next", "", quantity.Hour, target("nextAfter", func(t *record.Target) *record.Number { return &t.NextAfter }))
	next.SetBox(96)
	fields := []look.Entry{
		look.NewEntry(say("planner.session.plan"), name), look.NewEntry(say("planner.session.name"), session), look.NewEntry(say("planner.session.start"), start),
		minutes("short", func(t *record.Target) *record.Number { return &t.Short }),
		minutes("minutes", func(t *record.Target) *record.Number { return &t.Minutes }),
		minutes("long", func(t *record.Target) *record.Number { return &t.Long }),
		look.NewEntry(say("planner.session.next"), next), look.NewEntry(say("planner.session.effort"), effort),
	}
	t.remove = field.NewButton(v.desk.Host, "planner.delete", say("planner.delete"), field.Outline, v.deletePlan)
	t.aims = newAimsForm(v)
	t.box = look.VBox(12, newForm(fields...), t.thirst, look.NewRule(), t.limit(), look.NewRule(), t.aims.box, look.NewRule(), t.suggestion(), look.NewRule(), look.HBox(0, t.remove))
	return t
}

// limit is the deficit limit set with the athlete, with both views of the
// evidence one click away. Where mass is hidden there is no per cent to set: the
// practice's limit holds.
func (t *sessionTab) limit() fyne.CanvasObject {
	v := t.v
	say := v.sp.say
	views := field.NewLink(v.desk.Host, "planner.limit.views", say("planner.limit.views"), v.askViews)
	views.SetStyle(look.Body)
	if v.sp.by.Hidden {
		return look.NewParagraph(say("planner.limit.hidden"), look.Note, look.Ink2)
	}
	limit := v.b.Number("", "planner.limit", evidence.AimDeficit, quantity.PerCent, target("deficitAim", func(t *record.Target) *record.Number { return &t.DeficitAim }))
	limit.SetBox(96)
	t.usual = limit
	return newForm(look.NewEntry(say("planner.limit"), limit), look.NewEntry("", look.Pad(0, 0, 0, -field.LinkPad, look.HBox(0, views))))
}

// suggestion is what a suggestion may change, and the bottles owned.
func (t *sessionTab) suggestion() fyne.CanvasObject {
	v := t.v
	say := v.sp.say
	row := look.HBox(18)
	for _, slot := range slots() {
		c := field.NewCheck(v.desk.Host, "planner.hold."+slotName(slot), "")
		c.OnChanged = func(on bool) {
			product := v.now.productAt(slot)
			v.b.Pick("planner.hold."+slotName(slot), func(s *sheet) { consult.Hold(&s.Record, product, !on) })
		}
		t.holds[slot] = c
		row.Add(c)
	}
	t.bottles = newBottleLine(v)
	return look.VBox(8, look.NewLabel(say("planner.hold"), look.Strong, look.Ink), row, newForm(look.NewEntry(say("planner.bottles", string(v.sp.by.Unit(quantity.Millilitre))), t.bottles.line)))
}

func (t *sessionTab) body() fyne.CanvasObject { return t.box }

func (t *sessionTab) open() {
	v := t.v
	p := v.now.planCase.Planner
	t.thirst.SetText("")
	if plan.ThirstWillDo(p.Basis(), p.Session(), p.Aim()) {
		t.thirst.SetText(v.sp.say("planner.thirst"))
	}
	look.ShowIf(t.thirst, t.thirst.Text() != "")
	for slot, c := range t.holds {
		s := plan.Slot(slot)
		look.ShowIf(c, v.now.planCase.Slots[s].InUse && (s != plan.Salt || v.now.salted()))
		c.SetText(v.sp.product(v.now.planCase, s))
		c.Set(!v.now.held(s))
		look.EnableIf(c, v.now.draft())
	}
	t.bottles.open()
	t.aims.open()
	if t.usual != nil {
		t.usual.SetPlaceholder(v.desk.Words.Number(v.now.planCase.Planner.Aim().Deficit.High, 1))
	}
	look.ShowIf(t.remove, v.now.draft())
	t.box.Refresh()
}

func (t *sessionTab) follow() {}

// deletePlan deletes a draft; the strip at the foot brings it back.
func (v *View) deletePlan() {
	ctx, p := context.Background(), v.now.plan
	if !v.b.FlushNow() {
		return
	}
	if err := v.desk.Store.Delete(ctx, refOf(p), store.Edit{}); err != nil {
		v.desk.Trouble(err)
		return
	}
	place := desk.Place{Screen: desk.Plan, Athlete: v.file.athlete.ID}
	v.desk.Go(place)
	v.desk.Say(v.sp.say("planner.deleted", titleOf(p, v.sp.say("planner.plan.unnamed"))), v.sp.say("planner.undo"), func() {
		if err := v.desk.Store.Undelete(ctx, refOf(p), store.Edit{}); err != nil {
			v.desk.Trouble(err)
			return
		}
		place.Record = p.ID
		v.desk.Go(place)
	})
}

// askViews shows both views of the limit, as the evidence has them.
func (v *View) askViews() {
	list := look.VBox(8)
	for _, e := range evidence.All() {
		if !strings.HasPrefix(e.ID, "deficit.aim") && !strings.HasPrefix(e.ID, "deficit.view") {
			continue
		}
		list.Add(look.VBox(1, look.NewParagraph(v.sp.say("planner.view", capital(v.desk.Words.Say(e.Key())), v.sp.short(e.Value)), look.Body, look.Ink),
			look.NewParagraph(v.sp.say("planner.view.source", e.Source.Full, desk.Sureness(v.desk.Words, e.Sure)), look.Note, look.Ink2)))
	}
	v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "planner.views", Title: v.sp.say("planner.limit.title"), Sentence: v.sp.say("planner.limit.sentence"), Width: 620, Content: list,
		Actions: []field.Action{{Name: "done", Text: v.sp.say("planner.done"), Kind: field.Primary}},
	})
}
