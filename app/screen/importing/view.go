package importing

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/record"
	"ebbwell/internal/tables"
)

// View is the screen.
type View struct {
	desk *desk.Desk
	amount.Speaker
	s     state
	known *known
	ui    *checkPage
	stage *fyne.Container
	body  fyne.CanvasObject
	// stop ends the work that goes on; nil while none does. turn counts the works, so
	// that one that was overtaken changes nothing.
	stop func()
	turn int
	// part is the one to show first.
	part string
	// trouble says what kept a file from being read.
	trouble *look.Caution
	// at tells how far the work is.
	at *look.Label
	// imported are the sheets that were imported just now, asked those of them that the
	// import asked about.
	imported []record.ID
	asked    map[record.ID]bool
}

var _ desk.View = (*View)(nil)

// New opens the screen; Part of the place is a file to read at once, and behind the end
// of a line the part to show, Record an import to look at.
func New(d *desk.Desk, place desk.Place) (*View, error) {
	v := &View{desk: d, Speaker: d.Speaker(false)}
	v.trouble, v.at = look.NewCaution("", "", nil), look.NewLabel("", look.Body, look.Ink2)
	v.stage = container.NewStack()
	v.body = look.Pad(look.TopPad, 0, look.FootPad, 0, v.stage)
	switch {
	case place.Record != "":
		list, err := d.Store.Imports(context.Background())
		if err != nil {
			return nil, fmt.Errorf("look for the import: %w", err)
		}
		for _, im := range list {
			if im.ID == place.Record {
				v.showDone(im)
				return v, nil
			}
		}
		v.showChoose()
	case place.Part != "":
		v.showChoose()
		path, part, _ := strings.Cut(place.Part, "\n")
		v.part = part
		v.open(path)
	default:
		v.showChoose()
	}
	return v, nil
}

// Head is the title.
func (v *View) Head() desk.Head { return desk.Head{Title: v.Say("import.title"), Under: v.s.file} }

// Body is the screen.
func (v *View) Body() fyne.CanvasObject { return v.body }

// Leave stops what goes on: nothing is half written.
func (v *View) Leave() { v.halt() }

// halt stops the work that goes on.
func (v *View) halt() {
	if v.stop != nil {
		v.stop()
	}
}

// show puts a page onto the stage.
func (v *View) show(o fyne.CanvasObject) {
	v.stage.Objects = []fyne.CanvasObject{o}
	v.stage.Refresh()
	v.desk.HeadChanged()
}

// run does work beside the window and then, unless another work began meanwhile, what
// follows.
func (v *View) run(work func(ctx context.Context) error, then func(error)) {
	v.halt()
	v.turn++
	mine := v.turn
	ended := false
	stop := v.desk.Beside.Run(work, func(err error) {
		ended = true
		if mine == v.turn {
			v.stop = nil
			then(err)
		}
	})
	if !ended {
		v.stop = stop
	}
}

// progress tells on the window's thread how far a work is, at most twenty times.
func (v *View) progress(key string) func(n, of int) {
	shown := -1
	return func(n, of int) {
		step := 20 * n / max(of, 1)
		if step == shown {
			return
		}
		shown = step
		fyne.Do(func() { v.at.SetText(v.Say(key, v.Words.Number(float64(n), 0), v.Words.Number(float64(of), 0))) })
	}
}

// open reads a file and finds out what its columns mean.
func (v *View) open(path string) {
	var s state
	v.run(func(ctx context.Context) (err error) {
		s, err = v.read(ctx, path)
		return err
	}, func(err error) {
		if err != nil {
			v.trouble.SetText(v.refusal(path, err))
			return
		}
		v.take(s)
	})
}

// read reads a file and finds out what its columns mean.
func (v *View) read(ctx context.Context, path string) (state, error) {
	s := state{another: map[int]bool{}, file: filepath.Base(path)}
	data, err := readFile(path)
	if err != nil {
		return s, err
	}
	if s.own, err = tables.OpenOwn(data); err != nil || s.own != nil {
		return s, err
	}
	if s.book, err = tables.Open(data); err != nil {
		return s, err
	}
	return s, v.guess(ctx, &s)
}

// take shows what a file gives.
func (v *View) take(s state) {
	v.s = s
	v.s.phase = checking
	v.ui = newCheckPage(v)
	v.show(v.ui.body)
	v.check()
}

// guess finds out how a book is read: by a template that fits, else by its headings.
func (v *View) guess(ctx context.Context, s *state) error {
	templates, err := v.desk.Store.Templates(ctx)
	if err != nil {
		return err
	}
	for _, t := range templates {
		m, err := tables.ReadMapping(t.Mapping)
		if err != nil {
			continue // of another version
		}
		if fitted, ok := m.Fit(s.book); ok {
			s.mapping, s.template = fitted, t
			return nil
		}
	}
	order := tables.DayMonthYear
	if v.desk.US() {
		order = tables.MonthDayYear
	}
	s.mapping = tables.Guess(s.book, order)
	return nil
}

// readFile reads a file that is not too large.
func readFile(path string) (data []byte, err error) {
	f, err := saveto.OpenFile(path)
	if err != nil {
		return nil, fmt.Errorf("read the file: %w", err)
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	if data, err = io.ReadAll(io.LimitReader(f, tables.MostBytes+1)); err != nil {
		return nil, fmt.Errorf("read the file: %w", err)
	}
	if len(data) > tables.MostBytes {
		return nil, tables.ErrBytes
	}
	return data, nil
}

// refusal says that a file cannot be read, and why.
func (v *View) refusal(path string, err error) (title, sentence string) {
	title = v.Say("import.refused", shorten(filepath.Base(path), 60))
	switch key := errorKey(err); key {
	case "":
		if sentence = desk.Sentence(v.Words, err); errors.Is(err, fs.ErrNotExist) {
			sentence = v.Say("openfile.none")
		}
	case "import.error.bytes":
		sentence = v.Say(key, tables.MostBytes>>20, tables.MostUnpacked>>20)
	case "import.error.rows":
		sentence = v.Say(key, v.Words.Number(tables.MostRows, 0))
	case "import.error.columns":
		sentence = v.Say(key, tables.MostColumns)
	case "import.error.cell":
		sentence = v.Say(key, v.Words.Number(tables.MostCell, 0))
	case "import.error.sheets":
		sentence = v.Say(key, tables.MostSheets)
	default:
		sentence = v.Say(key)
	}
	return title, sentence
}

// check works out what the file gives as it is read now.
func (v *View) check() {
	v.ui.busy(true)
	s := v.s
	v.run(func(ctx context.Context) (err error) {
		if v.known, err = v.load(ctx, s); err != nil {
			return err
		}
		if s.own != nil {
			s.draft = s.own.Draft(v.known.Known, v.desk.Calculate(), v.desk.Today())
			return nil
		}
		s.draft, err = tables.Build(ctx, s.book, s.mapping, tables.Options{
			Today: v.desk.Today(), Sports: v.sports(), Setup: v.desk.Calculate(), Known: v.known.Known, NoStart: v.Say("import.nostart.note"),
			Twenty:   func(rating string) string { return v.Say("import.twenty.note", rating) },
			Progress: v.progress("import.reading"),
		})
		return err
	}, func(err error) {
		v.ui.busy(false)
		if err != nil {
			v.ui.stopped(err)
			return
		}
		v.s.draft = s.draft
		v.ui.follow()
		if v.part != "" {
			v.ui.showPart(v.part)
			v.part = ""
		}
	})
}

// canvas is the canvas the screen stands on.
func (v *View) canvas() fyne.Canvas { return fyne.CurrentApp().Driver().CanvasForObject(v.body) }

// button makes an outlined button.
func (v *View) button(name, key string, do func()) *field.Button {
	return field.NewButton(v.desk.Host, name, v.Say(key), field.Outline, do)
}
