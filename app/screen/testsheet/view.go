package testsheet

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/testsheet/findings"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// View is a test sheet, or what there is to do before there is one.
type View struct {
	desk    *desk.Desk
	athlete record.Athlete
	// tests are the athlete's, newest first, without one that is not kept yet.
	tests []record.Test
	by    amount.Writer
	// b is nil where no sheet is open.
	b     *binder
	fresh bool
	found consult.Findings
	// kept are the copies kept of the sheet when it was closed, newest first.
	kept []record.Frozen
	// altered: a byte of the closed test is not as it was saved.
	altered bool
	// wrong is what is wrong as it is shown: what appears while somebody is
	// still typing waits until they are done.
	wrong []trouble
	part  string
	ui    widgets
	body  fyne.CanvasObject
}

// widgets are what a sheet is shown with.
type widgets struct {
	tabs     *field.Tabs
	tools    *tools
	before   *before
	bottles  *bottles
	after    *after
	urine    *urine
	balance  *balance
	find     *findings.View
	altered  *look.Caution
	notice   *look.Caution
	consents *look.Caution
	foot     *foot
	stage    *stage
}

var (
	_ desk.View    = (*View)(nil)
	_ desk.Undoer  = (*View)(nil)
	_ desk.Printer = (*View)(nil)
)

// New opens the sheet a place names: the test with its id, the athlete's
// newest where it names none, a new one where it asks for that; Part is the
// part to show first.
func New(d *desk.Desk, place desk.Place) (*View, error) {
	ctx := context.Background()
	a, err := d.Store.LoadAthlete(ctx, place.Athlete)
	if err != nil {
		return nil, fmt.Errorf("open a test sheet: %w", err)
	}
	tests, err := d.Store.Tests(ctx, a.ID)
	if err != nil {
		return nil, fmt.Errorf("open a test sheet: %w", err)
	}
	v := &View{desk: d, athlete: a, tests: tests, part: PartBefore}
	v.by = d.SpeakerFor(a).By
	open, there, err := v.choose(place)
	switch {
	case err != nil:
		return nil, err
	case v.fresh && len(care.Of(a, d.Now()).Outstanding) > 0:
		v.body = v.unsettled()
		return v, nil
	case !there:
		v.body = v.empty()
		return v, nil
	}
	if err := v.open(open); err != nil {
		return nil, err
	}
	if place.Part != "" {
		v.showPart(place.Part)
	}
	return v, nil
}

// choose finds the test to open; there is false when there is none.
func (v *View) choose(place desk.Place) (t record.Test, there bool, err error) {
	if place.New {
		v.fresh = true
		var last *record.Test
		if len(v.tests) > 0 {
			last = &v.tests[0]
		}
		return begin(v.athlete, last, v.desk.Now()), true, nil
	}
	if place.Record == "" {
		if len(v.tests) == 0 {
			return t, false, nil
		}
		return v.tests[0], true, nil
	}
	for _, t := range v.tests {
		if t.ID == place.Record {
			return t, true, nil
		}
	}
	return t, false, &store.Error{Code: store.CodeNotFound, Doing: "open a test sheet", Ref: record.Ref{Kind: record.KindTest, ID: place.Record}}
}

// open builds the fields of a sheet and shows it.
func (v *View) open(t record.Test) error {
	doc, err := bind.Open(v.desk, bind.Kind[record.Test]{
		Ref: refOf(t), Clone: record.Test.Clone, Meta: func(t *record.Test) *record.Meta { return &t.Meta }, Save: v.desk.Store.SaveTest,
	}, t)
	if err != nil {
		return err
	}
	v.by.Hidden = care.MassHidden(v.athlete, consult.TestDay(t))
	by := v.by
	by.Hidden = false // the weighing fields themselves are the practitioner's
	if v.kept, err = v.desk.Store.FrozenOf(context.Background(), refOf(t)); err != nil {
		return fmt.Errorf("open a test sheet: %w", err)
	}
	if v.altered, err = v.desk.Store.TestAltered(context.Background(), t.ID); err != nil {
		return fmt.Errorf("open a test sheet: %w", err)
	}
	v.b = bind.New(v.desk, by, doc)
	v.b.OnChange, v.b.OnLeft = v.changed, v.settled
	if err := v.build(); err != nil {
		return err
	}
	v.follow()
	return nil
}

// Head is the athlete, and what can be done with the findings.
func (v *View) Head() desk.Head {
	h := desk.AthleteHead(v.athlete, desk.Tests, v.desk.FactsOf(v.athlete))
	if v.b != nil && v.part == PartFindings {
		h.Spare = []fyne.CanvasObject{v.ui.foot.picture}
		h.Actions = []fyne.CanvasObject{v.ui.foot.report, v.ui.foot.plan}
	}
	return h
}

// Shown gives the keyboard to the first field of a new sheet that is still to
// be filled in.
func (v *View) Shown() {
	if v.fresh && v.b != nil && v.part == PartBefore {
		v.b.GoTo("testsheet.start")
	}
}

// Body is the sheet.
func (v *View) Body() fyne.CanvasObject { return v.body }

// HelpPage is that of the findings while they are shown.
func (v *View) HelpPage() desk.HelpPage {
	if v.part == PartFindings {
		return desk.HelpFindings
	}
	return desk.HelpSheet
}

// Place names what is shown, so that the window can open it again after a
// change of its looks. A new sheet into which nothing was entered has no record
// to name: it is begun anew.
func (v *View) Place() desk.Place {
	p := desk.Place{Screen: desk.Tests, Athlete: v.athlete.ID, Part: v.part}
	switch {
	case v.untouched():
		p.New = true
	case v.b != nil:
		p.Record = v.b.Doc.Now().Record.ID
	}
	return p
}

// untouched reports whether the sheet is a new one and nothing of it was ever
// changed, so that it is not kept.
func (v *View) untouched() bool {
	return v.fresh && (v.b == nil || !v.b.Doc.CanUndo() && !v.b.Doc.CanRedo())
}

// Leave ends the visit to the selected field.
func (v *View) Leave() {
	if v.b != nil {
		v.b.Doc.EndVisit()
	}
}

// Undo takes back the last step; Redo does it again.
func (v *View) Undo() bool { return v.stepped(v.b != nil && v.b.Undo()) }

// Redo does again what was taken back.
func (v *View) Redo() bool { return v.stepped(v.b != nil && v.b.Redo()) }

func (v *View) stepped(moved bool) bool {
	if moved {
		v.follow()
	}
	return moved
}

// CanUndo reports whether there is a step to take back.
func (v *View) CanUndo() bool { return v.b != nil && v.b.Doc.CanUndo() }

// CanRedo reports whether there is one to do again.
func (v *View) CanRedo() bool { return v.b != nil && v.b.Doc.CanRedo() }

// Print prints the report from the findings, else the blank sheet.
func (v *View) Print() {
	if v.b != nil && v.part == PartFindings {
		v.printReport()
		return
	}
	v.printBlank()
}

// Key takes the keys no field has a use for: Enter goes on to the next field.
func (v *View) Key(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter {
		if c := v.canvas(); c != nil {
			field.Next(c)
		}
	}
}

// Rune takes the letters no field has a use for: Y and N answer the questions of a
// red flag.
func (v *View) Rune(r rune) {
	if v.b != nil && v.part == PartAfter {
		v.ui.after.flag.answer(r)
	}
}

// canvas is the canvas the sheet stands on.
func (v *View) canvas() fyne.Canvas { return fyne.CurrentApp().Driver().CanvasForObject(v.body) }
