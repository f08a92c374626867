package trip

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/picture"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/record"
)

// View is one trip.
type View struct {
	desk   *desk.Desk
	places climate.Places
	b      *binder
	// all are the athletes loaded, those taken off the trip too: undo may bring
	// them back.
	all map[record.ID]*member
	// fresh: the trip was begun here.
	fresh bool
	// part is what is shown: the id of a stop, or one of the parts. open is whose row
	// is open, empty for none; who is meant where one traveller is.
	part string
	open record.ID
	who  record.ID
	ui   widgets
	body fyne.CanvasObject
}

// widgets are what a trip is shown with.
type widgets struct {
	top     *tabRow
	tabs    *field.Tabs
	print   *field.Button
	picture *field.Button
	agree   *field.Button
	stage   *fyne.Container
	stop    *stopPart
	edit    *editPart
	pack    *packPart
}

var (
	_ desk.View    = (*View)(nil)
	_ desk.Undoer  = (*View)(nil)
	_ desk.Printer = (*View)(nil)
)

// New opens the trip a place names, or begins one where it asks for that. Part
// is the id of a stop, [PartEdit] or [PartPacking]; Athlete is the traveller
// shown first, and travels on a new trip.
func New(d *desk.Desk, place desk.Place) (*View, error) {
	t := begin()
	addTraveller(&t, place.Athlete)
	if !place.New {
		var err error
		if t, err = d.Store.LoadTrip(context.Background(), place.Record); err != nil {
			return nil, fmt.Errorf("open a trip: %w", err)
		}
	}
	places, err := climate.LoadPlaces()
	if err != nil {
		return nil, fmt.Errorf("open a trip: %w", err)
	}
	v := &View{desk: d, places: places.Named(d.Words.City, d.Words.Country), fresh: place.New, who: place.Athlete, open: place.Athlete, part: place.Part}
	if v.all, err = loadCrew(d, t); err != nil {
		return nil, err
	}
	doc, err := bind.Open(d, bind.Kind[record.Trip]{
		Ref: record.Ref{Kind: record.KindTrip, ID: t.ID}, Clone: record.Trip.Clone,
		Meta: func(t *record.Trip) *record.Meta { return &t.Meta }, Save: d.Store.SaveTrip,
	}, t)
	if err != nil {
		return nil, err
	}
	v.b = bind.New(d, d.Speaker(false).By, doc)
	v.b.OnChange, v.b.OnLeft = v.follow, v.follow
	if len(t.Travellers) == 1 {
		v.open = t.Travellers[0].AthleteID // a trip of one has the row open
	}
	v.build()
	v.choosePart()
	v.b.Show()
	v.follow()
	return v, nil
}

// speaker words what is shown of a traveller; nil is what is everybody's.
func (v *View) speaker(m *member) heat.Speaker {
	sp := heat.Speaker{Speaker: v.desk.Speaker(false)}
	if m != nil {
		sp.By.Hidden = care.MassHidden(m.athlete, v.desk.Now())
	}
	return sp
}

// build makes the widgets.
func (v *View) build() {
	u, d, say := &v.ui, v.desk, v.desk.Words.Say
	u.tabs = field.NewTabs(d.Host, "trip.tabs", nil)
	u.tabs.OnChosen = v.ShowPart
	u.top = newTabRow(u.tabs)
	u.print = field.NewButton(d.Host, "trip.print", say("trip.print"), field.Outline, v.Print)
	u.picture = picture.ButtonOf(d, "trip.picture", say("picture.trip", title(v.speaker(nil), v.now())), v.whose, func() []fyne.CanvasObject {
		return []fyne.CanvasObject{u.stop.crew.body, u.stop.days.body}
	})
	u.agree = field.NewButton(d.Host, "trip.agree", say("trip.agree"), field.Primary, v.askAgree)
	u.stop, u.edit, u.pack = newStopPart(v), newEditPart(v), newPackPart(v)
	u.stage = container.NewStack(u.stop.body, u.edit.body, u.pack.body)
	v.body = look.Pad(8, 0, footPad, 0, look.VBox(12, u.top, look.Grow(u.stage)))
}

// now is the trip as it stands.
func (v *View) now() record.Trip { return v.b.Doc.Now().Record }

// crew are the travellers by name; who is not loaded yet is loaded.
func (v *View) crew() []*member {
	t := v.now()
	for _, x := range t.Travellers {
		if v.all[x.AthleteID] != nil {
			continue
		}
		m, err := loadMember(v.desk, x.AthleteID)
		if err != nil {
			v.desk.Trouble(err)
		}
		if m != nil {
			v.all[x.AthleteID] = m
		}
	}
	return crewOf(t, v.all, v.desk.Words.Order())
}

// shown is the traveller shown; nil while nobody travels.
func (v *View) shown() *member {
	crew := v.crew()
	for _, m := range crew {
		if m.athlete.ID == v.who {
			return m
		}
	}
	if len(crew) == 0 {
		return nil
	}
	v.who = crew[0].athlete.ID
	return crew[0]
}

// stopShown is the place of the stop in sight; -1 when another part is.
func (v *View) stopShown() int { return stopByID(v.now(), record.ID(v.part)) }

// choosePart chooses a part that is there, and returns it: the stop that is next,
// else the first, else where stops are added.
func (v *View) choosePart() string {
	t := v.now()
	if v.part == PartEdit || v.part == PartPacking || v.stopShown() >= 0 {
		return v.part
	}
	v.part = PartEdit
	if i := max(0, stopOn(t, v.desk.Today())); i < len(t.Stops) {
		v.part = string(t.Stops[i].ID)
	}
	return v.part
}

// ShowPart shows a stop, or one of the parts beside them.
func (v *View) ShowPart(part string) {
	if c := v.canvas(); c != nil && v.b.Typing() != "" {
		c.Unfocus() // ends the visit to a field of the part that goes
	}
	v.part = part
	v.choosePart()
	v.b.Show()
	v.follow()
	v.desk.HeadChanged()
}

// follow shows what the trip comes to as it stands.
func (v *View) follow() {
	v.forgetPlans()
	if was := v.part; v.choosePart() != was {
		v.b.Show() // the fields of a stop are those of the one in sight
	}
	u, crew, t := &v.ui, v.crew(), v.now()
	u.top.set(v.speaker(nil), t)
	u.tabs.Choose(v.part)
	stop := v.stopShown()
	look.ShowIf(u.stop.body, stop >= 0)
	look.ShowIf(u.edit.body, v.part == PartEdit)
	look.ShowIf(u.pack.body, v.part == PartPacking)
	switch {
	case stop >= 0:
		u.stop.show(crew, stop)
	case v.part == PartEdit:
		u.edit.show()
	default:
		u.pack.show()
	}
	look.EnableIf(u.agree, stop >= 0 && len(crew) > 0)
	look.EnableIf(u.print, len(crew) > 0 && len(t.Stops) > 0)
}

// turn opens or closes the row of a traveller; one is open at a time.
func (v *View) turn(m *member, open bool) {
	if v.open = ""; open {
		v.open, v.who = m.athlete.ID, m.athlete.ID
	}
	v.follow()
}

// Head is the trip, who travels, and what can be done with it.
func (v *View) Head() desk.Head {
	sp, t := v.speaker(nil), v.now()
	under := who(sp, v.crew())
	if n := len(t.Stops); n > 0 {
		under = sp.Words.Say("trip.under", under, sp.Words.Say("trip.stops", n))
	}
	actions := []fyne.CanvasObject{v.ui.print}
	var spare []fyne.CanvasObject
	if v.stopShown() >= 0 {
		actions = append(actions, v.ui.agree) // what is agreed belongs to one stop
		spare = append(spare, v.ui.picture)
	}
	return desk.Head{Title: title(sp, t), Under: under, Spare: spare, Actions: actions}
}

// Body is the trip.
func (v *View) Body() fyne.CanvasObject { return v.body }

// Place names what is shown, so that the window can open it again after a
// change of its looks. A new trip into which nothing was entered has no record
// to name: it is begun anew.
func (v *View) Place() desk.Place {
	place := desk.Place{Screen: desk.Trip, Record: v.now().ID, Athlete: v.open, Part: v.part}
	if v.fresh && !v.b.Doc.CanUndo() && !v.b.Doc.CanRedo() {
		place.Record, place.New = "", true
	}
	return place
}

// Leave ends the visit to the selected field.
func (v *View) Leave() { v.b.Doc.EndVisit() }

// Undo takes back the last step; the stop it was made in is shown.
func (v *View) Undo() bool { return v.stepped(v.b.Undo()) }

// Redo does again what was taken back.
func (v *View) Redo() bool { return v.stepped(v.b.Redo()) }

func (v *View) stepped(moved bool) bool {
	if moved {
		v.choosePart()
		v.b.Show()
		v.follow()
	}
	return moved
}

// CanUndo reports whether there is a step to take back.
func (v *View) CanUndo() bool { return v.b.Doc.CanUndo() }

// CanRedo reports whether there is one to do again.
func (v *View) CanRedo() bool { return v.b.Doc.CanRedo() }

// canvas is the canvas the trip stands on; nil before it is shown.
func (v *View) canvas() fyne.Canvas { return fyne.CurrentApp().Driver().CanvasForObject(v.body) }
