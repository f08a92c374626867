package profile

import (
	"context"
	"fmt"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// sheet is the profile as it is open.
type sheet = bind.Sheet[record.Athlete]

// View is where an athlete is written down.
type View struct {
	desk *desk.Desk
	sp   speaker
	b    *bind.Binder[record.Athlete]
	// fresh is true until a new athlete has been kept for the first time.
	fresh bool
	// going is true once the athlete is being taken out of the records: what
	// was typed after that could not be kept.
	going bool
	// first is the control that gets the keyboard; empty for none.
	first  string
	groups []record.Group
	// agreed is the plan in force; nil while none is.
	agreed *record.Plan
	parts  parts
	page   *look.Scroll
	body   fyne.CanvasObject
}

// parts are the parts of the profile.
type parts struct {
	start    *look.Sheet
	minor    *minorPart
	person   *personPart
	sport    *sportPart
	flags    *flagsPart
	consents *consentsPart
	history  *historyPart
	giving   fyne.CanvasObject
	leaving  *leavingPart
	test     *field.Button
}

var (
	_ desk.View   = (*View)(nil)
	_ desk.Undoer = (*View)(nil)

	_ desk.Clearer = (*View)(nil)
)

// New opens the profile a place names, or begins a new one.
func New(d *desk.Desk, place desk.Place) (*View, error) {
	ctx := context.Background()
	v := &View{desk: d, fresh: place.New}
	a := record.Athlete{Meta: record.Meta{ID: record.NewID()}}
	var err error
	if !v.fresh {
		if a, err = d.Store.LoadAthlete(ctx, place.Athlete); err != nil {
			return nil, fmt.Errorf("open the profile: %w", err)
		}
	}
	if v.groups, err = d.Store.Groups(ctx); err != nil {
		return nil, fmt.Errorf("open the profile: %w", err)
	}
	plans, err := d.Store.Plans(ctx, a.ID)
	if err != nil {
		return nil, fmt.Errorf("open the profile: %w", err)
	}
	v.agreed = consult.ToTakeAlong(plans)
	doc, err := bind.Open(d, bind.Kind[record.Athlete]{
		Ref: refOf(a.ID), Clone: record.Athlete.Clone, Meta: func(a *record.Athlete) *record.Meta { return &a.Meta }, Save: d.Store.SaveAthlete,
	}, a)
	if err != nil {
		return nil, err
	}
	v.sp = speaker{d.Speaker(false)} // the mass is kept out of sight, not written in litres
	v.b = bind.New(d, v.sp.By, doc)
	v.b.OnChange, v.b.OnLeft = v.follow, v.showAfterTyping
	v.b.Follows = func(before record.Athlete, now *record.Athlete) { settleMinor(before, now, d.Now(), d.Words.List) }
	v.build()
	v.b.Show()
	v.showAfterTyping()
	v.reveal(place.Part)
	if place.Part == desk.PartMinor && !care.AgeKnown(a, d.Now()) {
		v.first = "profile.born"
	}
	if v.fresh {
		v.first = "profile.name"
	}
	return v, nil
}

// refOf points at an athlete.
func refOf(id record.ID) record.Ref { return record.Ref{Kind: record.KindAthlete, ID: id} }

// now is the profile as it stands.
func (v *View) now() record.Athlete { return v.b.Doc.Now().Record }

// build puts the parts together: what comes first for a minor over the whole
// width, below it the person at the left and what must be known at the right.
func (v *View) build() {
	say, h := v.sp.Say, v.desk.Host
	v.parts = parts{
		start: look.NewSheet(look.VBox(3, look.NewLabel(say("profile.start.title"), look.Strong, look.Ink), look.NewParagraph(say("profile.start"), look.Note, look.Ink2))),
		minor: newMinorPart(v), person: newPersonPart(v), sport: newSportPart(v), flags: newFlagsPart(v),
		consents: newConsentsPart(v), history: newHistoryPart(v), giving: newGivingPart(v), leaving: newLeavingPart(v),
	}
	v.parts.test = field.NewButton(h, "profile.test", say("overview.test"), field.Outline, func() {
		v.desk.Go(desk.Place{Screen: desk.Tests, Athlete: v.now().ID, New: true})
	})
	p := v.parts
	left := look.VBox(look.SheetGap, p.person.body, p.sport.body, p.consents.body, p.giving, p.leaving.body)
	right := look.VBox(look.SheetGap, p.flags.body, p.history.body)
	v.page = look.PageScroll(look.VBox(look.SheetGap, p.start, p.minor.body, look.NewPair(0.62, 900, left, right)))
	v.body = look.Pad(look.TopPad, 0, look.FootPad, 0, look.InMargin(v.page))
}

// follow shows what follows from a change; it is called at every keystroke.
func (v *View) follow() {
	a := v.now()
	if v.fresh && a.Name != "" {
		v.fresh = false
	}
	p := v.parts
	v.lock()
	p.person.follow(a)
	p.flags.follow(a)
	p.consents.follow(a)
	p.sport.follow(a)
	show(p.giving, !v.fresh)
	show(p.leaving.body, !v.fresh)
	look.EnableIf(p.test, !v.going && ready(a, v.desk.Now()))
	v.page.Refresh()
}

// showAfterTyping shows what would jump about while somebody types: what comes first
// for a minor appears once the birth date has been left.
func (v *View) showAfterTyping() {
	v.parts.minor.follow(v.now())
	v.follow()
	if v.now().Minor(v.desk.Now()) {
		v.b.Show() // the consent that the one answer is kept as follows it
	}
	v.parts.history.load()
}

// lock keeps a new athlete from being begun anywhere but at the name, from
// which on everything is kept, and one who goes from being changed.
func (v *View) lock() {
	show(v.parts.start, v.fresh)
	open := !v.fresh && !v.going
	for _, f := range v.b.Fields() {
		look.EnableIf(f.Field, open || !v.going && f.Name == "profile.name")
	}
	for _, c := range []fyne.Disableable{v.parts.sport.mouthful.ten, v.parts.sport.groups.add, v.parts.consents.add} {
		look.EnableIf(c, open)
	}
}

// reveal brings a part into sight.
func (v *View) reveal(part string) {
	switch part {
	case desk.PartConsents:
		v.page.ScrollTo(0)
		v.parts.consents.reveal()
	case desk.PartFlags, desk.PartMinor:
		v.page.ScrollTo(0)
	}
}

// Head is the athlete, and the way to a test.
func (v *View) Head() desk.Head {
	a := v.now()
	h := desk.Head{Title: v.sp.Say("profile.new")}
	if !v.fresh {
		h = desk.AthleteHead(a, "", v.desk.FactsOf(a))
		h.Title = desk.NameOf(v.desk.Words, a)
	}
	h.Actions = []fyne.CanvasObject{v.parts.test}
	return h
}

// Body is the profile.
func (v *View) Body() fyne.CanvasObject { return v.body }

// Place names what is shown, so that the window can open it again.
func (v *View) Place() desk.Place {
	if v.fresh {
		return desk.Place{Screen: desk.Profile, New: true}
	}
	return desk.Place{Screen: desk.Profile, Athlete: v.now().ID}
}

// Leave ends the visit to the selected field.
func (v *View) Leave() { v.b.Doc.EndVisit() }

// ClearUp takes an athlete who was begun and has nothing written down any more
// out of the list again, unless what comes next is of that athlete.
func (v *View) ClearUp(next desk.Place) {
	if v.fresh || v.going || next.Athlete == v.now().ID || !nothing(v.now()) || len(v.b.Doc.Now().Raw) > 0 {
		return
	}
	if err := v.desk.Store.Delete(context.Background(), refOf(v.now().ID), store.Edit{}); err != nil && !away(err) {
		v.desk.Trouble(err)
	}
}

// away reports whether a record is there no more.
func away(err error) bool {
	return store.CodeOf(err) == store.CodeNotFound || store.CodeOf(err) == store.CodeDeleted
}

// Undo takes back the last step; Redo does it again.
func (v *View) Undo() bool { return v.stepped(v.b.Undo()) }

// Redo does again what was taken back.
func (v *View) Redo() bool { return v.stepped(v.b.Redo()) }

func (v *View) stepped(moved bool) bool {
	if moved {
		if v.agreed != nil {
			v.parts.sport.refuseRise()
		}
		v.showAfterTyping()
	}
	return moved
}

// CanUndo reports whether there is a step to take back.
func (v *View) CanUndo() bool { return v.b.Doc.CanUndo() }

// CanRedo reports whether there is one to do again.
func (v *View) CanRedo() bool { return v.b.Doc.CanRedo() }

// Key takes the keys no field has a use for: Enter goes on to the next field.
func (v *View) Key(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter {
		if c := v.canvas(); c != nil {
			c.FocusNext()
		}
	}
}

// canvas is the canvas the profile stands on.
func (v *View) canvas() fyne.Canvas { return fyne.CurrentApp().Driver().CanvasForObject(v.body) }

// show shows or hides an object.
func show(o fyne.CanvasObject, on bool) {
	switch {
	case on && !o.Visible():
		o.Show()
	case !on && o.Visible():
		o.Hide()
	}
}

// askWhy asks for a written reason; without one nothing is done. refused is
// called when the question is closed without one.
func (v *View) askWhy(name, title, sentence string, do func(why string), refused func()) {
	say := v.sp.Say
	notes := field.NewNotes(v.desk.Host, name+".why", 3)
	trouble := look.NewParagraph("", look.Note, look.Ink)
	done := false
	v.desk.Host.Ask(v.canvas(), field.Question{
		Name: name, Title: title, Sentence: sentence, Content: look.VBox(6, notes, trouble),
		Actions: []field.Action{
			{Name: "no", Text: say("field.ask.cancel")},
			{Name: "yes", Text: say("profile.reason.yes"), Kind: field.Primary, Do: func() (stay bool) {
				why := strings.TrimSpace(notes.Text())
				if why == "" {
					trouble.SetText(say("profile.reason.needed"))
					return true
				}
				done = true
				do(why)
				return false
			}},
		},
		OnClosed: func() {
			if !done && refused != nil {
				refused()
			}
		},
	})
}

// Shown gives the keyboard to what is to be filled in first: the name of a new
// athlete, the birth date where that was asked for.
func (v *View) Shown() { v.b.GoTo(v.first) }
