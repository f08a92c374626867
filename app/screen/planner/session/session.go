package session

import (
	"context"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// SessionTab is the session the plan is for and the limit set with the athlete,
// and what a suggestion may change.
type SessionTab struct {
	v       *part.Plan
	thirst  *look.Paragraph
	Holds   [plan.Slots]*field.Check
	bottles *bottleLine
	// habit is the choice of the habit that the plan starts from.
	habit *field.Toggle
	// usual is the field of the limit; the usual one stands in it while none is set.
	usual *field.Number
	aims  *AimsForm
	// tolerance is the drinking rate tolerated.
	tolerance *tolerance
	// kind is the kind of session, where the sport has several; its row hides with it.
	kind    *field.Choice
	kindRow *look.Form
	remove  *field.Button
	climate *field.Button
	box     *fyne.Container
}

// target is the place of a number of the session.
func target(path string, of func(t *record.Target) *record.Number) bind.NumberAt[record.Plan] {
	return bind.At("target."+path, func(p *record.Plan) *record.Number { return of(&p.Target) })
}

// New makes the panel of the session and its limits.
func New(v *part.Plan) part.Part {
	t := &SessionTab{v: v, thirst: look.NewParagraph("", look.Note, look.Ink2)}
	say, b := v.Speaker.Say, v.Binder
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
		look.NewEntry(say("planner.session.minutes"), newExpected(v)),
		minutes("long", func(t *record.Target) *record.Number { return &t.Long }),
		look.NewEntry(say("planner.session.next"), next), look.NewEntry(say("planner.session.effort"), effort),
	}
	t.kind = field.NewChoice(v.Desk.Host, "planner.session.kind", nil)
	t.kind.OnChosen = t.takeKind
	t.kindRow = part.NewForm(look.NewEntry(say("planner.session.kind"), t.kind))
	t.climate = field.NewButton(v.Desk.Host, "planner.climate", say("planner.climate"), field.Outline, func() { AskClimate(v) })
	fresh := field.NewButton(v.Desk.Host, "planner.new", say("planner.new"), field.Outline, v.GoToNew)
	t.remove = field.NewButton(v.Desk.Host, "planner.delete", say("planner.delete"), field.Outline, func() { deletePlan(v) })
	t.aims, t.tolerance = NewAimsForm(v), newTolerance(v)
	t.box = look.VBox(12, part.NewForm(fields...), t.kindRow, look.HBox(0, t.climate), t.thirst, look.NewRule(), t.limit(), look.NewRule(), t.aims.box, t.tolerance.box, look.NewRule(), t.wishes(), t.suggestion(), look.NewRule(), look.HBox(10, fresh, t.remove))
	return t
}

// limit is the deficit limit set with the athlete, with both views of the
// evidence one click away. Where mass is hidden there is no per cent to set: the
// practice's limit holds.
func (t *SessionTab) limit() fyne.CanvasObject {
	v := t.v
	say := v.Speaker.Say
	views := field.NewLink(v.Desk.Host, "planner.limit.views", say("planner.limit.views"), func() { AskViews(v) })
	views.SetStyle(look.Body)
	if v.Speaker.By.Hidden {
		return look.NewParagraph(say("planner.limit.hidden"), look.Note, look.Ink2)
	}
	limit := v.Binder.Number("", "planner.limit", evidence.AimDeficit, quantity.PerCent, target("deficitAim", func(t *record.Target) *record.Number { return &t.DeficitAim }))
	limit.SetBox(96)
	t.usual = limit
	return part.NewForm(look.NewEntry(say("planner.limit"), limit), look.NewEntry("", look.Pad(0, 0, 0, -field.LinkPad, look.HBox(0, views))))
}

// suggestion is what a suggestion may change, and the bottles owned.
func (t *SessionTab) suggestion() fyne.CanvasObject {
	v := t.v
	say := v.Speaker.Say
	row := look.HBox(18)
	for _, slot := range state.Slots() {
		c := field.NewCheck(v.Desk.Host, "planner.hold."+wording.SlotName(slot), "")
		c.OnChanged = func(on bool) {
			product := v.Now.ProductAt(slot)
			v.Binder.Pick("planner.hold."+wording.SlotName(slot), func(s *part.Sheet) { consult.Hold(&s.Record, product, !on) })
		}
		t.Holds[slot] = c
		row.Add(c)
	}
	t.bottles = newBottleLine(v)
	return look.VBox(8, look.NewLabel(say("planner.hold"), look.Strong, look.Ink), row, part.NewForm(look.NewEntry(say("planner.bottles", string(v.Speaker.By.Unit(quantity.Millilitre))), t.bottles.line)))
}

// Body is what stands on the page.
func (t *SessionTab) Body() fyne.CanvasObject { return t.box }

// Open shows the page.
func (t *SessionTab) Open() {
	v := t.v
	p := v.Now.PlanCase.Planner
	t.thirst.SetText("")
	if plan.ThirstWillDo(p.Basis(), p.Session(), p.Aim()) {
		t.thirst.SetText(v.Speaker.Say("planner.thirst"))
	}
	look.ShowIf(t.thirst, t.thirst.Text() != "")
	for slot, c := range t.Holds {
		s := plan.Slot(slot)
		look.ShowIf(c, v.Now.PlanCase.Slots[s].InUse && (s != plan.Salt || v.Now.Salted()))
		c.SetText(v.Speaker.Product(v.Now.PlanCase, s))
		c.Set(!v.Now.Held(s))
		look.EnableIf(c, v.Now.Draft())
	}
	t.openKind()
	t.bottles.Open()
	t.openHabit()
	t.aims.Open()
	t.tolerance.open()
	if t.usual != nil {
		t.usual.SetPlaceholder(v.Speaker.By.LimitNumber(v.Now.PlanCase.Planner.Aim().Deficit.High, quantity.PerCent))
	}
	look.ShowIf(t.remove, v.Now.Draft())
	t.box.Refresh()
}

// openKind shows the kinds of session that the sport has, where there are several.
func (t *SessionTab) openKind() {
	v, target := t.v, t.v.Now.Plan.Target
	kinds := consult.KindsOf(target.Sport)
	look.ShowIf(t.kindRow, len(kinds) > 1)
	var list []field.Option
	for _, k := range kinds {
		list = append(list, field.Option{Key: k.Session, Text: desk.KindWord(v.Desk.Words, k.Session)})
	}
	t.kind.SetOptions(list)
	now, _ := consult.KindOf(target.Sport, v.Now.Plan.Chances)
	t.kind.Choose(now.Session)
	look.EnableIf(t.kind, v.Now.Draft())
}

// takeKind puts the breaks of a kind of session in the place of those there are.
func (t *SessionTab) takeKind(session string) {
	planCase := t.v.Now.PlanCase
	t.v.Binder.Pick("planner.session.kind", func(s *part.Sheet) { planCase.WithKind(&s.Record, session) })
}

// Follow does nothing: the page follows what is typed in it.
func (t *SessionTab) Follow() {}

// deletePlan deletes a draft; the strip at the foot brings it back.
func deletePlan(v *part.Plan) {
	ctx, p := context.Background(), v.Now.Plan
	if !v.Binder.FlushNow() {
		return
	}
	if err := v.Desk.Store.Delete(ctx, part.RefOf(p), store.Edit{}); err != nil {
		v.Desk.Trouble(err)
		return
	}
	place := desk.Place{Screen: desk.Plan, Athlete: v.File.Athlete.ID}
	v.Desk.Go(place)
	v.Desk.Say(v.Speaker.Say("planner.deleted", v.Speaker.PlanName(p)), v.Speaker.Say("planner.undo"), func() {
		if err := v.Desk.Store.Undelete(ctx, part.RefOf(p), store.Edit{}); err != nil {
			v.Desk.Trouble(err)
			return
		}
		place.Record = p.ID
		v.Desk.Go(place)
	})
}

// AskViews shows both views of the limit, as the evidence has them.
func AskViews(v *part.Plan) {
	list := look.VBox(8)
	for _, e := range evidence.All() {
		if !strings.HasPrefix(e.ID, "deficit.aim") && !strings.HasPrefix(e.ID, "deficit.view") {
			continue
		}
		list.Add(look.VBox(1, look.NewParagraph(v.Speaker.Say("planner.view", v.Speaker.Short(e.Value), v.Desk.Words.Say(e.Key())), look.Body, look.Ink),
			look.NewParagraph(v.Speaker.Say("planner.view.source", e.Source.Title(v.Desk.Words.Say), desk.Sureness(v.Desk.Words, e.Sure)), look.Note, look.Ink2)))
	}
	v.Desk.Host.Ask(v.Canvas(), field.Question{
		Name: "planner.views", Title: v.Speaker.Say("planner.limit.title"), Sentence: v.Speaker.Say("planner.limit.sentence"), Width: 620, Content: list,
		Actions: []field.Action{{Name: "done", Text: v.Speaker.Say("planner.done"), Kind: field.Primary}},
	})
}
