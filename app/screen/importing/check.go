package importing

import (
	"context"
	"errors"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/tables"
)

// The parts of the page that shows what a file gives.
const (
	partColumns   = "columns"
	partFaults    = "faults"
	partTwins     = "twins"
	partQuestions = "questions"
)

// checkPage shows what the columns mean and what the file gives.
type checkPage struct {
	v       *View
	columns *columnsPart
	tabs    *field.Tabs
	stage   *fyne.Container
	sum     *look.Paragraph
	why     *look.Paragraph
	without *field.Check
	write   *field.Button
	stop    *field.Button
	foot    *fyne.Container
	working *fyne.Container
	body    fyne.CanvasObject
}

// newCheckPage builds the page for the file that was read.
func newCheckPage(v *View) *checkPage {
	h := v.desk.Host
	p := &checkPage{v: v, stage: container.NewStack(), sum: look.NewParagraph("", look.Strong, look.Ink), why: look.NewParagraph("", look.Note, look.Ink2)}
	p.tabs = field.NewTabs(h, "import.part", nil)
	p.tabs.OnChosen = p.showPart
	p.without = field.NewCheck(h, "import.without", "")
	p.without.OnChanged = func(on bool) {
		v.s.without = on
		p.follow()
	}
	p.write = field.NewButton(h, "import.write", v.Say("import.write"), field.Primary, v.write)
	p.stop = v.button("import.stop", "import.stop", v.halt)
	other := v.button("import.other", "import.other", v.showChoose)
	p.foot = look.VBox(8, p.sum, p.why, look.HBox(10, p.write, other, look.Gap(6, 0), look.Grow(p.without)))
	p.working = look.HBox(12, v.at, p.stop)
	if v.s.own == nil {
		p.columns = newColumnsPart(p)
	}
	p.body = look.VBox(12, p.tabs, look.Grow(p.stage), look.NewSheet(look.VBox(0, p.foot, p.working)))
	look.ShowIf(p.working, false)
	p.tabs.SetTabs(p.parts())
	p.showPart(p.parts()[0].Key)
	return p
}

// parts are the tabs, with how much is in each.
func (p *checkPage) parts() []field.Tab {
	s := &p.v.s
	counted := func(key string, n int) field.Tab {
		return field.Tab{Key: key, Text: p.v.Say("import.part."+key, p.v.Words.Number(float64(n), 0))}
	}
	list := []field.Tab{counted(partFaults, len(s.draft.Faults)), counted(partTwins, len(s.twins())), counted(partQuestions, len(s.draft.Questions))}
	if s.own == nil {
		list = append([]field.Tab{counted(partColumns, len(s.mapping.Columns))}, list...)
	}
	return list
}

// showPart shows a tab.
func (p *checkPage) showPart(key string) {
	var o fyne.CanvasObject
	switch key {
	case partColumns:
		o = p.columns.body
	case partFaults:
		o = p.v.faultList()
	case partTwins:
		o = p.v.twinList(p.follow)
	default:
		o = p.v.questionList()
	}
	p.tabs.Choose(key)
	p.stage.Objects = []fyne.CanvasObject{o}
	p.stage.Refresh()
}

// follow shows the draft as it is now.
func (p *checkPage) follow() {
	v := p.v
	chosen := p.tabs.Chosen()
	p.tabs.SetTabs(p.parts())
	p.showPart(chosen)
	taken := v.s.draft.Take(v.s.choice())
	beside := v.beside(taken)
	p.sum.SetText(v.Say("import.sum", v.counted(len(taken.Tests), len(taken.Athletes), len(taken.Results), len(beside.Plans), len(beside.Trips))))
	p.why.SetText(v.Say(p.reason()))
	rows := len(v.s.faulty())
	p.without.SetText(v.Say("import.without", max(rows, 1)))
	look.ShowIf(p.without, rows > 0)
	look.EnableIf(p.write, v.s.ready())
	if p.columns != nil {
		p.columns.follow()
	}
	p.body.Refresh()
}

// reason is the key of the sentence under what is imported.
func (p *checkPage) reason() string {
	s := &p.v.s
	standing := s.draft.Standing(s.choice())
	switch {
	case len(standing) > 0:
		return "import.why.faults"
	case s.draft.OrderOpen():
		return "import.why.order"
	case !s.ready():
		return "import.why.nothing"
	case len(s.twins()) > 0:
		return "import.why.twins"
	case s.own != nil:
		return "import.why.own"
	}
	return "import.why.ready"
}

// busy shows how far work is, with the way to stop it.
func (p *checkPage) busy(on bool) {
	if on {
		p.v.at.SetText(p.v.Say("import.working"))
	}
	look.ShowIf(p.working, on)
	look.ShowIf(p.foot, !on)
	p.body.Refresh()
}

// stopped says that work ended early and that nothing was written.
func (p *checkPage) stopped(err error) {
	if errors.Is(err, context.Canceled) {
		p.v.desk.Say(p.v.Say("import.stopped"), "", nil)
		return
	}
	p.v.desk.Trouble(err)
}

// write imports what is taken, in one go.
func (v *View) write() {
	if !v.s.ready() {
		return
	}
	in := v.incoming()
	var im record.Import
	v.s.phase = writing
	v.ui.busy(true)
	v.run(func(ctx context.Context) (err error) {
		im, err = v.desk.Store.Import(ctx, in)
		return err
	}, func(err error) {
		v.s.phase = checking
		v.ui.busy(false)
		if err != nil {
			v.ui.stopped(err)
			return
		}
		v.imported, v.asked = nil, asked(v.s.draft)
		for _, t := range in.Tests {
			v.imported = append(v.imported, t.ID)
		}
		v.showDone(im)
	})
}

// incoming is what is written.
func (v *View) incoming() store.Incoming {
	taken := v.s.draft.Take(v.s.choice())
	in := store.Incoming{File: v.s.file, Kind: v.s.mapping.Kind, Athletes: taken.Athletes, Tests: taken.Tests, Progress: v.progress("import.writing")}
	if v.s.own != nil {
		in.Kind = record.ImportRecords
		in.Groups, in.Athletes = v.s.own.Grouped(in.Athletes, v.known.groups)
		b := v.beside(taken)
		in.Products, in.Trips, in.Plans = b.Products, b.Trips, b.Plans
	}
	for _, r := range taken.Results {
		in.Results = append(in.Results, store.PatchResult(r))
	}
	return in
}

// beside is what comes with athletes and tests of an export.
func (v *View) beside(taken tables.Taken) tables.Beside {
	if v.s.own == nil || v.known == nil {
		return tables.Beside{}
	}
	return v.s.own.Beside(v.s.draft, taken, v.known.others)
}

// with reads the file anew by a changed mapping.
func (v *View) with(m tables.Mapping) {
	v.s.mapping = m
	v.s.another, v.s.without = map[int]bool{}, false
	v.ui.without.Set(false)
	v.check()
}
