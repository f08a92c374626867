package practice

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	amounts "ebbwell/app/kit/amount"
	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// sheet is the practice as it is open on the screen.
type sheet = bind.Sheet[record.Practice]

// View is the practice, in parts.
type View struct {
	desk *desk.Desk
	b    *bind.Binder[record.Practice]
	tabs *field.Tabs
	// made are the parts that were opened, built when first asked for.
	made  map[string]part
	stage *fyne.Container
	body  fyne.CanvasObject
}

// part is one of the tabs.
type part interface {
	box() fyne.CanvasObject
	// follow shows the practice as it is now.
	follow()
}

var (
	_ desk.View   = (*View)(nil)
	_ desk.Undoer = (*View)(nil)
)

// New opens the practice; Part of the place is the tab to show first.
func New(d *desk.Desk, place desk.Place) (*View, error) {
	p, err := d.Store.Practice(context.Background())
	switch {
	case store.CodeOf(err) == store.CodeNotFound:
		p = record.Practice{Meta: record.Meta{ID: record.NewID()}}
	case err != nil:
		return nil, fmt.Errorf("open the practice: %w", err)
	}
	doc, err := bind.Open(d, bind.Kind[record.Practice]{
		Ref: record.Ref{Kind: record.KindPractice, ID: p.ID}, Clone: func(p record.Practice) record.Practice { return p },
		Meta: func(p *record.Practice) *record.Meta { return &p.Meta }, Save: d.Store.SavePractice,
	}, p)
	if err != nil {
		return nil, err
	}
	v := &View{desk: d, made: map[string]part{}, stage: container.NewStack()}
	v.b = bind.New(d, amounts.Writer{Words: d.Words}, doc)
	v.b.OnChange, v.b.OnLeft = v.follow, v.left
	var tabs []field.Tab
	for _, key := range parts() {
		tabs = append(tabs, field.Tab{Key: key, Text: d.Words.Say("practice.part." + key)})
	}
	v.tabs = field.NewTabs(d.Host, "practice.part", tabs)
	v.tabs.OnChosen = v.showPart
	v.body = look.Pad(8, 0, 0, 0, look.VBox(12, v.tabs, look.Grow(v.stage)))
	if place.Part == "" {
		place.Part = PartHouse
	}
	v.showPart(place.Part)
	return v, nil
}

// showPart shows a tab.
func (v *View) showPart(key string) {
	p, there := v.made[key]
	if !there {
		p = v.make(key)
		v.made[key] = p
		v.b.Show()
	}
	v.tabs.Choose(key)
	p.follow()
	v.stage.Objects = []fyne.CanvasObject{p.box()}
	v.stage.Refresh()
}

// make builds a tab.
func (v *View) make(key string) part {
	switch key {
	case PartStandards:
		return newStandards(v)
	case PartThresholds:
		return newEvidence(v)
	case PartRecords:
		return newRecords(v)
	case PartRedFlags:
		return newRedFlags(v)
	case PartAbout:
		return newAbout(v)
	}
	return newHouse(v)
}

// now is the practice as it stands.
func (v *View) now() record.Practice { return v.b.Doc.Now().Record }

// follow shows the practice in the tabs that were opened.
func (v *View) follow() {
	for _, p := range v.made {
		p.follow()
	}
}

// left has the rest of the program look at the practice anew: who makes the
// entries, which bands and limits hold.
func (v *View) left() {
	if !v.b.FlushNow() {
		return
	}
	v.desk.PracticeChanged()
	v.desk.Store.SetBy(v.now().Practitioner)
	v.follow() // a field may have words under it now
}

// redrawn is left, for what changes the looks of the window.
func (v *View) redrawn(choose func(string)) func(string) {
	return func(key string) {
		choose(key)
		v.desk.SettingsChanged()
	}
}

// Head is the title.
func (v *View) Head() desk.Head {
	return desk.Head{Title: v.desk.Words.Say("frame.practice"), Under: v.now().Name}
}

// Body is the practice.
func (v *View) Body() fyne.CanvasObject { return v.body }

// Place names what is shown, so that the window can open it again after a
// change of its looks.
func (v *View) Place() desk.Place {
	return desk.Place{Screen: desk.Practice, Part: v.tabs.Chosen()}
}

// Leave ends the visit to the selected field.
func (v *View) Leave() { v.b.Doc.EndVisit() }

// Undo takes back the last step; Redo does it again.
func (v *View) Undo() bool { return v.stepped(v.b.Undo()) }

// Redo does again what was taken back.
func (v *View) Redo() bool { return v.stepped(v.b.Redo()) }

// stepped has the window follow, when the step changed its looks.
func (v *View) stepped(moved bool) bool {
	if moved {
		v.left()
		v.follow()
		v.desk.SettingsChanged()
	}
	return moved
}

// CanUndo reports whether there is a step to take back.
func (v *View) CanUndo() bool { return v.b.Doc.CanUndo() }

// CanRedo reports whether there is one to do again.
func (v *View) CanRedo() bool { return v.b.Doc.CanRedo() }

// Key takes the keys no field has a use for: Enter goes on to the next field.
func (v *View) Key(e *fyne.KeyEvent) {
	if c := v.canvas(); c != nil && (e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter) {
		c.FocusNext()
	}
}

// canvas is the canvas the screen stands on.
func (v *View) canvas() fyne.Canvas { return fyne.CurrentApp().Driver().CanvasForObject(v.body) }

// onlyUsable keeps a number beyond its limits as it was typed, out of the
// settings: they are calculated with as they are.
func (v *View) onlyUsable(n *field.Number) {
	put := n.OnChanged
	n.OnChanged = func(r field.Reading) {
		if r.State == field.Refused {
			r.State = field.Unreadable
		}
		put(r)
	}
}

// panel is a sheet with a heading, a note that may be empty, and what stands
// below.
func (v *View) panel(title, note string, body ...fyne.CanvasObject) *look.Sheet {
	head := look.VBox(2, look.NewLabel(title, look.Strong, look.Ink))
	if note != "" {
		head.Add(look.NewParagraph(note, look.Note, look.Ink2))
	}
	return look.NewSheet(look.VBox(12, append([]fyne.CanvasObject{head}, body...)...))
}

// scrolled lets a tab be higher than its room.
func scrolled(o fyne.CanvasObject) fyne.CanvasObject {
	return look.InMargin(look.PageScroll(look.Pad(0, 0, 20, 0, o)))
}
