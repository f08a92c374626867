package testsheet

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
)

// tools stand at the right of the parts: the athlete's tests to choose from,
// and a new one.
type tools struct {
	choice *field.Choice
	box    fyne.CanvasObject
}

// newTools makes the tools of a sheet.
func newTools(v *View) *tools {
	t := &tools{choice: field.NewChoice(v.desk.Host, "testsheet.tests", v.testOptions())}
	t.choice.Choose(string(v.b.Doc.Now().Record.ID))
	t.choice.SetLeast(290)
	t.choice.SetSpoken(v.b.Say("testsheet.spoken.test"))
	t.choice.OnChosen = func(key string) {
		v.desk.Go(desk.Place{Screen: desk.Tests, Athlete: v.athlete.ID, Record: record.ID(key), Part: v.part})
	}
	t.box = look.HBox(8, t.choice, field.NewButton(v.desk.Host, "testsheet.new", v.b.Say("testsheet.new"), field.Outline, v.beginNew))
	return t
}

// beginNew opens a new sheet.
func (v *View) beginNew() {
	v.desk.Go(desk.Place{Screen: desk.Tests, Athlete: v.athlete.ID, New: true})
}

// testOptions are the athlete's tests, and one that is not kept yet.
func (v *View) testOptions() []field.Option {
	var list []field.Option
	if v.fresh {
		t := v.b.Doc.Now().Record
		list = append(list, field.Option{Key: string(t.ID), Text: v.testName(t)})
	}
	for _, t := range v.tests {
		list = append(list, field.Option{Key: string(t.ID), Text: v.testName(t)})
	}
	return list
}

// testName says a test in short: its day, what was done, how far it is.
func (v *View) testName(t record.Test) string {
	w := v.desk.Words
	day := w.Say("testsheet.undated")
	if d, ok := t.Session.Date.Time(); ok {
		day = w.ShortDate(d, v.desk.Now())
	}
	what := desk.SportWord(w, t.Session.Sport)
	if v.ui.before != nil {
		if a, ok := v.ui.before.activities.Find(t.Session.Activity); ok {
			what = a.Name
		} else if t.Session.Activity != "" {
			what = t.Session.Activity
		}
	}
	state := w.Say("testsheet.state." + string(t.State))
	if what == "" {
		return w.Say("testsheet.test.plain", day, state)
	}
	return w.Say("testsheet.test", day, shorten(what, 40), state)
}

// splitRow sets one object at the left and another at the right, or below it
// where there is no room beside.
type splitRow struct {
	widget.BaseWidget
	left, right fyne.CanvasObject
}

func newSplitRow(left, right fyne.CanvasObject) *splitRow {
	r := &splitRow{left: left, right: right}
	r.ExtendBaseWidget(r)
	return r
}

// splitGap is the least room between both, in px.
const splitGap float32 = 20

// Parts returns both.
func (r *splitRow) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{r.left, r.right} }

// beside reports whether both fit into one line.
func (r *splitRow) beside(width float32) bool {
	return r.left.MinSize().Width+splitGap+r.right.MinSize().Width <= width
}

// HeightFor returns the height at a width.
func (r *splitRow) HeightFor(width float32) float32 {
	l, right := r.left.MinSize().Height, r.right.MinSize().Height
	if r.beside(width) {
		return max(l, right)
	}
	return l + 6 + right
}

// CreateRenderer places both.
func (r *splitRow) CreateRenderer() fyne.WidgetRenderer { return &splitRenderer{r} }

type splitRenderer struct{ r *splitRow }

func (s *splitRenderer) Layout(size fyne.Size) {
	r := s.r
	l, right := r.left.MinSize(), r.right.MinSize()
	width := min(right.Width, size.Width)
	r.left.Resize(fyne.NewSize(min(l.Width, size.Width), l.Height))
	r.right.Resize(fyne.NewSize(width, right.Height))
	if r.beside(size.Width) {
		r.left.Move(fyne.NewPos(0, max(0, (size.Height-l.Height)/2)))
		r.right.Move(fyne.NewPos(size.Width-width, float32(int(max(0, (size.Height-right.Height)/2)))))
		return
	}
	r.left.Move(fyne.Position{})
	r.right.Move(fyne.NewPos(0, l.Height+6))
}

func (s *splitRenderer) MinSize() fyne.Size {
	width := max(s.r.left.MinSize().Width, s.r.right.MinSize().Width)
	return fyne.NewSize(min(width, 400), s.r.HeightFor(max(width, s.r.Size().Width)))
}

func (s *splitRenderer) Refresh() {
	s.Layout(s.r.Size())
	for _, o := range s.r.Parts() {
		o.Refresh()
	}
}

func (s *splitRenderer) Objects() []fyne.CanvasObject { return s.r.Parts() }
func (s *splitRenderer) Destroy()                     {}
