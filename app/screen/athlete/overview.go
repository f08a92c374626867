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
	body *fyne.Container
	// page is the overview itself; dates stands in its place while all dates are shown.
	page, dates *fyne.Container
	head        *field.Button
	// answer is what the tests say of the last test's session in other heat.
	answer answer
	// test begins a sheet, from the head; without a test the body does.
	test fyne.CanvasObject
	// sheets are those of the page, the second that of the sweat rates, as standing sets them.
	sheets   *fyne.Container
	standing *standing
	// stop ends the reading of the other tests; left says that another screen is shown.
	stop func()
	left bool
}

var _ desk.View = (*Overview)(nil)

// NewOverview loads an athlete and what is kept of them.
func NewOverview(d *desk.Desk, id record.ID) (*Overview, error) {
	f, err := loadFile(d, id)
	if err != nil {
		return nil, fmt.Errorf("open the overview: %w", err)
	}
	v := &Overview{desk: d, file: f, sp: speaker{d.Speaker(f.care.MassHidden)}, stop: func() {}}
	v.head = field.NewButton(d.Host, "overview.profile", v.sp.Say("overview.profile"), field.Outline, v.goTo(desk.Place{Screen: desk.Profile, Athlete: id}))
	v.test = v.testButton(field.Outline)
	v.page = stack()
	v.dates = stack()
	v.dates.Hidden = true
	v.body = stack(v.page, v.dates)
	if f.read == readNone {
		v.page.Objects = []fyne.CanvasObject{v.waiting()}
		v.beside()
	} else {
		v.show()
	}
	return v, nil
}

// show puts the page together by what has been read; where that is not all, or much to be
// asked, the sweat rates come later.
func (v *Overview) show() {
	later := v.file.read != readAll || len(v.file.tests) > askedMost
	if !later {
		v.answer = v.answered()
	}
	v.fill(later)
	if later {
		v.beside()
	}
}

// fill fills the page; later says that the sweat rates come later.
func (v *Overview) fill(later bool) {
	v.file.checks = v.checks()
	if c, missing := v.agreedCase(); missing == "" {
		limit := c.Limit()
		v.file.limit = &limit
		if t, too := c.Outrun(v.file.tests, v.file.now, v.desk.Calculate()); too {
			v.file.outrun = &t
		}
	}
	v.page.Objects = []fyne.CanvasObject{v.build(later)}
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

// loadFile reads what is kept of an athlete; see [file.read] for the tests.
func loadFile(d *desk.Desk, id record.ID) (file, error) {
	ctx := context.Background()
	a, err := d.Store.LoadAthlete(ctx, id)
	if err != nil {
		return file{}, err
	}
	f := file{athlete: a, care: care.Of(a, d.Now()), now: d.Now()}
	if f.plans, err = d.Store.Plans(ctx, id); err != nil {
		return file{}, err
	}
	if f.trips, err = d.Store.TripsOf(ctx, id); err != nil {
		return file{}, err
	}
	return f, f.readTests(ctx, d)
}

// build puts the overview together: what is due beside the last test, the sweat
// rates, the steps.
func (v *Overview) build(later bool) fyne.CanvasObject {
	top := look.NewPair(0.47, 760, v.dueSheet(), v.lastSheet())
	top.Level = true
	sweat, grows := v.othersSheet(), true
	if !later {
		sweat, grows = v.sweatSheet()
	}
	v.standing = &standing{grows: grows}
	v.sheets = container(v.standing, top, sweat, v.stepsSheet())
	return look.Pad(look.TopPad, 0, look.FootPad, 0, look.InMargin(look.PageScroll(v.sheets)))
}

// showDates puts all dates in the place of the overview, or the overview back.
func (v *Overview) showDates(on bool) {
	v.dates.Hidden, v.page.Hidden = !on, on
	if on && v.dates.Objects == nil {
		v.dates.Objects = []fyne.CanvasObject{v.datesSheet()}
	}
	v.body.Refresh()
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

// Leave stops what is still being read; there is nothing to save.
func (v *Overview) Leave() {
	v.left = true
	v.stop()
}
