package athlete

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// Overview is where things stand with one athlete.
type Overview struct {
	desk *desk.Desk
	file file
	sp   speaker
	body fyne.CanvasObject
	head *field.Button
	// test begins a sheet, from the head; without a test the body does.
	test fyne.CanvasObject
}

var _ desk.View = (*Overview)(nil)

// NewOverview loads an athlete and what is kept of them.
func NewOverview(d *desk.Desk, id record.ID) (*Overview, error) {
	f, err := loadFile(d, id)
	if err != nil {
		return nil, fmt.Errorf("open the overview: %w", err)
	}
	v := &Overview{desk: d, file: f, sp: speaker{d.Speaker(f.care.MassHidden)}}
	v.file.checks = v.checks()
	if c, missing := v.agreedCase(); missing == "" {
		if t, too := c.Outrun(f.tests, f.now, d.Calculate()); too {
			v.file.outrun = &t
		}
	}
	v.head = field.NewButton(d.Host, "overview.profile", v.sp.Say("overview.profile"), field.Outline, v.goTo(desk.Place{Screen: desk.Profile, Athlete: id}))
	v.test = v.testButton(field.Outline)
	v.body = v.build()
	return v, nil
}

// checks are the agreed plans that are to be checked, because a record they are
// based on was corrected.
func (v *Overview) checks() []consult.Case {
	var list []consult.Case
	for _, p := range v.file.plans {
		if p.State != record.PlanAgreed {
			continue
		}
		c, err := v.desk.OpenPlan(context.Background(), p, v.file.athlete, v.file.tests)
		if err == nil && c.Since.Changed {
			list = append(list, c)
		}
	}
	return list
}

// loadFile reads what is kept of an athlete; every test is worked out.
func loadFile(d *desk.Desk, id record.ID) (file, error) {
	ctx := context.Background()
	a, err := d.Store.LoadAthlete(ctx, id)
	if err != nil {
		return file{}, err
	}
	f := file{athlete: a, care: care.Of(a, d.Now()), now: d.Now()}
	if f.tests, err = d.AllFindings(ctx, a); err != nil {
		return file{}, err
	}
	if f.plans, err = d.Store.Plans(ctx, id); err != nil {
		return file{}, err
	}
	f.trips, err = d.Store.TripsOf(ctx, id)
	return f, err
}

// Gaps between the sheets of the overview, in px, and the share of the trail.
const (
	trailShare float32 = 0.34
)

// build puts the overview together.
func (v *Overview) build() fyne.CanvasObject {
	sheets := []fyne.CanvasObject{v.lastSheet(), v.dueSheet()}
	if pictures := v.pictures(); pictures != nil {
		sheets = []fyne.CanvasObject{sheets[0], pictures, sheets[1]}
	}
	right := look.NewScroll(container(&standing{}, sheets...))
	return look.Pad(look.TopPad, 0, look.FootPad, 0, container(&beside{share: trailShare, least: 272, most: 340}, v.trailSheet(), right))
}

// trailSheet is what has happened.
func (v *Overview) trailSheet() fyne.CanvasObject {
	var lines []line
	for _, e := range v.file.trail() {
		lines = append(lines, v.sp.line(v.file.athlete.ID, e))
	}
	title := look.NewLabel(v.sp.Say("overview.trail"), look.Strong, look.Ink)
	if len(lines) == 0 {
		return look.NewSheet(look.VBox(8, title, look.NewParagraph(v.sp.Say("overview.trail.empty"), look.Note, look.Ink2)))
	}
	t := newTrail(v.desk.Host, lines, func(i int) { v.desk.Go(lines[i].opens) })
	return look.NewSheet(look.VBox(4, title, look.Grow(look.Pad(0, -trailPadX, 0, -trailPadX, t.within))))
}

// goTo opens a place.
func (v *Overview) goTo(p desk.Place) func() { return func() { v.desk.Go(p) } }

// Head is the athlete, and the way to the profile.
func (v *Overview) Head() desk.Head {
	a := v.file.athlete
	h := desk.AthleteHead(a, desk.Overview, v.desk.FactsOf(a))
	h.Title, h.Actions = desk.NameOf(v.desk.Words, a), []fyne.CanvasObject{v.head}
	if _, ok := v.file.last(); ok {
		h.Spare = []fyne.CanvasObject{v.test}
	}
	return h
}

// Body is the overview.
func (v *Overview) Body() fyne.CanvasObject { return v.body }

// Leave has nothing to save.
func (v *Overview) Leave() {}
