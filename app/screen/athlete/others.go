package athlete

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// Reading five hundred tests takes a second. The overview of an athlete of many tests
// stands as soon as those are read that what is due, the last test and the steps are said
// by; the sweat rates of all come once the others are read and all are asked, beside the
// window.

// howMany is how many of an athlete's tests have been read.
type howMany int

const (
	readAll howMany = iota
	// readSome: all that the page but for the sweat rates is said by.
	readSome
	// readNone: the page is said by too many.
	readNone
)

// How many tests are read, our choices: atOnce before anything is shown, neededMost where
// the page is said by more than those; of more than askedMost all are asked beside the
// window. The last test is looked for in nearest at a time.
const (
	atOnce     = 24
	neededMost = 60
	askedMost  = 60
	nearest    = 12
)

// readTests reads the tests: all where few are unread, else those that the page but for
// the sweat rates is said by.
func (f *file) readTests(ctx context.Context, d *desk.Desk) error {
	unread, err := d.Unread(ctx, f.athlete)
	if err != nil {
		return err
	}
	if unread <= atOnce {
		f.tests, err = d.AllFindings(ctx, f.athlete)
		return err
	}
	listed, err := d.Store.TestsListed(ctx, f.athlete.ID)
	if err != nil {
		return err
	}
	f.read, f.others = readNone, len(listed)
	for from := 0; from < len(listed); from += nearest {
		needed := f.needed(listed, from+nearest)
		if len(needed) > neededMost {
			f.tests = nil
			return nil
		}
		if f.tests, err = d.SomeFindings(ctx, f.athlete, needed); err != nil {
			return err
		}
		last, _ := f.last()
		if _, ok := f.planned(); ok && last.Sweat.Fluid.Rate.Known {
			f.read, f.others = readSome, len(listed)-len(f.tests)
			return nil
		}
	}
	return nil
}

// needed are the newest of the tests, those not closed, those that an agreed plan is based
// on, and those done since the one in force was agreed.
func (f *file) needed(listed []store.ListedTest, newest int) []record.ID {
	named := map[record.ID]bool{}
	for _, p := range f.plans {
		if p.State != record.PlanAgreed {
			continue
		}
		for _, id := range consult.NamedTests(p.Basis) {
			named[id] = true
		}
	}
	since := record.Date("")
	if p := f.inForce(); p != nil && p.Agreement.AgreedAt != nil {
		since = record.DateOf(*p.Agreement.AgreedAt)
	}
	var list []record.ID
	for i, t := range listed {
		if i < newest || t.State != record.TestClosed || named[t.ID] || since != "" && t.Date > since {
			list = append(list, t.ID)
		}
	}
	return list
}

// beside reads the tests that are not read, asks all of them, and then shows what they say.
func (v *Overview) beside() {
	f, with := v.file, v.desk.Calculate()
	with.Start = nil // asks the desk
	var said answer
	ask := func(all []consult.Findings) (err error) {
		f.tests = all
		said, err = f.answer(with)
		return err
	}
	done := func(all []consult.Findings, err error) {
		if v.left {
			return
		}
		if err != nil {
			v.desk.Trouble(fmt.Errorf("read the other tests: %w", err))
			v.setOthers(v.failed(), false)
			v.body.Refresh()
			return
		}
		whole := v.file.read == readNone
		v.file.tests, v.file.read, v.file.others, v.answer = all, readAll, 0, said
		if c := said.calculation; c != nil && len(c.Tests) == 0 { // by where one of the sport starts
			v.answer = v.answered()
		}
		if whole {
			v.fill(false)
			v.desk.HeadChanged()
		} else {
			v.setOthers(v.sweatSheet())
		}
		v.body.Refresh()
	}
	if v.file.read != readAll {
		v.stop = v.desk.AllFindingsBeside(v.file.athlete, ask, done)
		return
	}
	all := v.file.tests
	v.stop = v.desk.Beside.Run(func(context.Context) error { return ask(all) }, func(err error) { done(all, err) })
}

// setOthers puts the sheet of the sweat rates in its place.
func (v *Overview) setOthers(sheet fyne.CanvasObject, grows bool) {
	if v.file.read == readNone {
		v.page.Objects = []fyne.CanvasObject{alone(sheet)}
		return
	}
	v.sheets.Objects[1], v.standing.grows = sheet, grows
}

// othersSheet stands in the place of the sweat rates while the other tests are read and
// all are asked.
func (v *Overview) othersSheet() fyne.CanvasObject {
	if v.file.others == 0 {
		return v.ratesNote("") // for a moment
	}
	return v.ratesNote(v.sp.Say("overview.reading", v.file.others))
}

// failed stands there where they could not be read.
func (v *Overview) failed() fyne.CanvasObject {
	return v.ratesNote(v.sp.Say("overview.reading.failed"))
}

// ratesNote is the sheet of the sweat rates with a sentence in their place.
func (v *Overview) ratesNote(sentence string) fyne.CanvasObject {
	title := v.sp.Say("overview.heat", string(v.sp.By.Unit("L/h")))
	return look.NewSheet(look.VBox(4, titled(title), look.NewParagraph(sentence, look.Note, look.Ink2)))
}

// waiting stands in the place of the page while the tests it is said by are read.
func (v *Overview) waiting() fyne.CanvasObject {
	return alone(look.NewSheet(look.NewParagraph(v.sp.Say("overview.reading", v.file.others), look.Body, look.Ink2)))
}

// alone is a sheet by itself at the top of the screen.
func alone(sheet fyne.CanvasObject) fyne.CanvasObject {
	return look.Pad(look.TopPad, 0, look.FootPad, 0, look.InMargin(look.PageScroll(look.VBox(0, sheet))))
}
