package app

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

// Distances in the head, in px: between texts, between actions, and what a line
// adds above and below its buttons where there are two.
const (
	headGap   float32 = 18
	actionGap float32 = 12
	firstPad  float32 = 16
	secondPad float32 = 10
)

// alertWords are what there is to know of an athlete: the gravest in words, and
// only how many where room is short.
type alertWords struct{ full, count string }

// headFit is what the head says at a width: everything where there is room, and less
// of the least needed where there is not.
type headFit struct {
	facts, alert string
	// spare shows the actions that stand elsewhere too; second sets the tabs, or
	// the facts where there are none, on a line of their own.
	spare, second bool
}

// height is the height of the head in px.
func (h headFit) height() float32 {
	if h.second {
		return 2*look.ControlHeight() + firstPad + secondPad
	}
	return look.Scaled(headHeight)
}

// fitHead finds what the head can say at a width, in px, with nothing on another
// thing: first the position goes, then the actions that stand elsewhere, then the
// mass, then the words of the alert, then one line for all.
func (f *frame) fitHead(width float32) headFit {
	short := f.facts.short
	if short == "" {
		short = f.facts.full
	}
	words, count := f.known.full, f.known.count
	list := []headFit{
		{f.facts.full, words, true, false}, {short, words, true, false}, {short, words, false, false},
		{less(short, 1), words, false, false}, {less(short, 1), count, false, false}, {less(short, 2), count, false, false},
	}
	if !f.tabs.Visible() {
		list = list[:1]
	}
	list = append(list, []headFit{
		{f.facts.full, words, true, true}, {short, words, true, true}, {short, words, false, true},
		{less(short, 1), words, false, true}, {less(short, 2), words, false, true}, {"", words, false, true},
	}...)
	for _, fit := range list {
		if f.firstLine(fit) <= width-2*sidePad {
			return fit
		}
	}
	return headFit{"", count, false, true}
}

// firstLine is how wide all is that stands on the first line, in px.
func (f *frame) firstLine(fit headFit) float32 {
	width := look.Title.Width(f.title.Text()) + 1
	if facts := look.Body.Width(fit.facts); facts > 0 && (!fit.second || f.tabs.Visible()) {
		width += headGap + facts + 1
	}
	if !fit.second && f.tabs.Visible() {
		width += headGap + f.tabs.MinSize().Width
	}
	if f.alerts.Visible() {
		width += headGap + f.alerts.WidthFor(fit.alert) - actionGap
	}
	if f.undoes && !fit.second {
		width += 2*actionGap + f.undo.MinSize().Width + f.redo.MinSize().Width
	}
	actions := f.rest
	if fit.spare {
		actions = append(f.spare[:len(f.spare):len(f.spare)], f.rest...)
	}
	for _, o := range actions {
		width += actionGap + o.MinSize().Width
	}
	return width + headGap - actionGap
}

// headLayout sets title and facts at the left, actions at the right, and the tabs
// between them, in the middle of the strip where there is room, or below.
type headLayout struct{ frame *frame }

func (l *headLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	f := l.frame
	fit := f.fitHead(size.Width)
	first, second := size.Height, float32(0)
	if fit.second {
		first = look.ControlHeight() + firstPad
		second = size.Height - first
	}
	f.alerts.SetText(fit.alert)
	right := f.actions(fit, size.Width, first, second)
	base := f.baseOf(first)
	title := min(look.Title.Width(f.title.Text())+1, max(80, right-sidePad))
	f.title.Move(fyne.NewPos(sidePad, base-f.title.Baseline()))
	f.title.Resize(fyne.NewSize(title, look.Title.Height()))
	x, under := sidePad+title+headGap, base
	if fit.second && !f.tabs.Visible() {
		x, under = sidePad, first+f.baseOf(second)-secondPad/2
	}
	f.under.SetText(fit.facts)
	facts := min(look.Body.Width(fit.facts)+1, max(0, size.Width-sidePad-x))
	f.under.Move(fyne.NewPos(x, under-f.under.Baseline()))
	f.under.Resize(fyne.NewSize(facts, look.Body.Height()))
	if !f.tabs.Visible() {
		return
	}
	tabs := f.tabs.MinSize().Width
	if fit.second {
		base, x = first+f.baseOf(second)-secondPad/2, sidePad
	} else {
		x = max(x+facts+headGap, min((size.Width-tabs)/2, right-headGap-tabs))
	}
	f.tabs.SetFoot(size.Height - 1 - base + look.Body.Baseline() - look.Body.Height())
	f.tabs.Move(fyne.NewPos(x, base-f.tabs.Baseline()))
	f.tabs.Resize(fyne.NewSize(tabs, f.tabs.MinSize().Height))
}

// actions sets the buttons at the right, those that take steps back on the second
// line where there is one, and returns where the first line ends.
func (f *frame) actions(fit headFit, width, first, second float32) float32 {
	right, below := width-sidePad, width-sidePad
	place := func(o fyne.CanvasObject, at *float32, top, height float32) {
		s := o.MinSize()
		*at -= s.Width
		o.Move(fyne.NewPos(*at, top+float32(int((height-s.Height)/2))))
		o.Resize(s)
		*at -= actionGap
	}
	for i := len(f.rest) - 1; i >= 0; i-- {
		place(f.rest[i], &right, 0, first)
	}
	for i := len(f.spare) - 1; i >= 0; i-- {
		if !fit.spare {
			f.spare[i].Hide()
			continue
		}
		f.spare[i].Show()
		place(f.spare[i], &right, 0, first)
	}
	for _, b := range []fyne.CanvasObject{f.redo, f.undo} {
		switch {
		case f.undoes && fit.second:
			place(b, &below, first-secondPad/2, second)
		case f.undoes:
			place(b, &right, 0, first)
		}
	}
	if f.alerts.Visible() {
		place(f.alerts, &right, 0, first)
	}
	return right + actionGap
}

// baseOf is where words stand in a line of a height, so that they stand on one line
// with those of the buttons.
func (f *frame) baseOf(height float32) float32 {
	return float32(int((height-look.ControlHeight())/2)) + f.undo.Baseline()
}

func (l *headLayout) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(100, 30) }
