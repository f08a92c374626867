package trip

import (
	"context"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// editPart is the trip itself: its name, who travels, its stops in their order.
type editPart struct {
	v          *View
	travellers *travellerList
	stops      *stopList
	remove     *field.Link
	body       fyne.CanvasObject
}

func newEditPart(v *View) *editPart {
	say := v.desk.Words.Say
	p := &editPart{v: v, travellers: newTravellerList(v), stops: newStopList(v)}
	name := v.b.Line("edit", "trip.name", 80, func(t *record.Trip) *string { return &t.Name })
	name.SetPlaceholder(say("trip.name.type"))
	remove := field.NewLink(v.desk.Host, "trip.delete", say("trip.delete"), v.askDelete)
	p.remove = remove
	left := look.VBox(gap, look.NewPanel(say("trip.name"), nil, name), p.travellers.body, look.Pad(0, 0, 0, -field.LinkPad, look.HBox(0, remove)))
	both := newSides(left, p.stops.body)
	both.least = stopsLeast
	p.body = scrolled(both)
	return p
}

// stopsLeast is what the list of stops needs, px at 100 % text.
const stopsLeast float32 = 690

// show follows the trip.
func (p *editPart) show() {
	p.travellers.show()
	p.stops.show()
	t := p.v.now()
	look.ShowIf(p.remove, t.Name != "" || len(t.Stops)+len(t.Travellers) > 0)
	p.body.Refresh()
}

// askDelete asks whether the trip is to go.
func (v *View) askDelete() {
	say, t := v.desk.Words.Say, v.now()
	v.desk.Host.Confirm(v.canvas(), "trip.delete", say("trip.delete.title"), say("trip.delete.sentence"), say("trip.delete.yes"), func() {
		if !v.b.FlushNow() {
			return
		}
		ref := record.Ref{Kind: record.KindTrip, ID: t.ID}
		err := v.desk.Store.Delete(context.Background(), ref, store.Edit{})
		if err != nil && store.CodeOf(err) != store.CodeNotFound { // a new trip nothing was entered in is not kept
			v.desk.Trouble(err)
			return
		}
		v.desk.Go(desk.Place{Screen: desk.Trips})
		v.desk.Say(say("trip.deleted", title(v.speaker(nil), t)), say("trip.undo"), func() {
			if err := v.desk.Store.Undelete(context.Background(), ref, store.Edit{}); err != nil {
				v.desk.Trouble(err)
				return
			}
			v.desk.Go(desk.Place{Screen: desk.Trip, Record: t.ID})
		})
	})
}
