package bind

import (
	"context"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Binder ties fields to the places of a record they show.
type Binder[R any] struct {
	Desk *desk.Desk
	By   amount.Writer
	Doc  *desk.Document[Sheet[R]]
	// OnChange is told of every change by the person, OnLeft of every field
	// left; either may be nil.
	OnChange, OnLeft func()
	// Follows is what a change brings with it in the record, in the same step back;
	// it is told how the record was before. It may be nil.
	Follows func(before R, now *R)

	fields map[string]*Bound[R]
	order  []*Bound[R]
	typing string
}

// Bound is one field and what can be done with it.
type Bound[R any] struct {
	Name string
	// Group of fields that are shown or locked together; may be empty.
	Group string
	// Field is the control itself.
	Field Control
	// Path of the field in the record; nil where it has none.
	Path func(R) string
	// Warn shows a trouble that the field cannot see by itself, and takes it
	// away with an empty text; nil where the words stand elsewhere.
	Warn func(text string)

	show func(Sheet[R])
}

// Control is what every field can do.
type Control interface {
	fyne.Disableable
	Focus()
}

// visit joins the keystrokes of one visit to a field.
type visit struct{ id string }

// NumberAt finds a number in a record and its path; nil where its row is not
// there and is not to grow.
type NumberAt[R any] func(r *R, grow bool) (n *record.Number, path string)

// At is the place of a number that every record has.
func At[R any](path string, of func(r *R) *record.Number) NumberAt[R] {
	return func(r *R, _ bool) (*record.Number, string) { return of(r), path }
}

// New makes a binder for a document.
func New[R any](d *desk.Desk, by amount.Writer, doc *desk.Document[Sheet[R]]) *Binder[R] {
	return &Binder[R]{Desk: d, By: by, Doc: doc, fields: map[string]*Bound[R]{}}
}

// Say is a text of the catalogue.
func (b *Binder[R]) Say(key string, args ...any) string { return b.Desk.Words.Say(key, args...) }

// add takes a field in.
func (b *Binder[R]) add(f *Bound[R]) *Bound[R] {
	b.fields[f.Name] = f
	b.order = append(b.order, f)
	return f
}

// Drop forgets the fields of a group, before its rows are built anew.
func (b *Binder[R]) Drop(group string) {
	kept := b.order[:0]
	for _, f := range b.order {
		if f.Group == group {
			delete(b.fields, f.Name)
			continue
		}
		kept = append(kept, f)
	}
	b.order = kept
}

// Field returns a field by its name; nil when there is none.
func (b *Binder[R]) Field(name string) *Bound[R] { return b.fields[name] }

// Fields lists the fields in the order they were made.
func (b *Binder[R]) Fields() []*Bound[R] { return b.order }

// Typing is the name of the field a person is typing in; empty when none.
func (b *Binder[R]) Typing() string { return b.typing }

// Show sets every field from the present state; nobody is told.
func (b *Binder[R]) Show() {
	s := b.Doc.Now()
	for _, f := range b.order {
		f.show(s)
	}
}

// Enable lets the fields be changed, or keeps them from it.
func (b *Binder[R]) Enable(on bool) {
	for _, f := range b.order {
		if on {
			f.Field.Enable()
		} else {
			f.Field.Disable()
		}
	}
}

// typed takes a keystroke in.
func (b *Binder[R]) typed(v *visit, name string, f func(*Sheet[R])) {
	if v.id == "" {
		v.id = desk.NewVisit()
	}
	b.typing = name
	b.Doc.Change(v.id, name, b.withFollows(f))
	b.changed()
}

// left ends the visit to a field and has what was typed saved at once.
func (b *Binder[R]) left(v *visit) {
	v.id, b.typing = "", ""
	b.Doc.EndVisit()
	b.Flush()
	if b.OnLeft != nil {
		b.OnLeft()
	}
}

// Pick takes in a choice, a tick, a button: one step by itself.
func (b *Binder[R]) Pick(name string, f func(*Sheet[R])) {
	b.Doc.Change("", name, b.withFollows(f))
	b.Flush()
	b.changed()
	if b.OnLeft != nil {
		b.OnLeft()
	}
}

// withFollows is a change and what it brings with it.
func (b *Binder[R]) withFollows(f func(*Sheet[R])) func(*Sheet[R]) {
	if b.Follows == nil {
		return f
	}
	return func(s *Sheet[R]) {
		before := b.Doc.Now().Record
		f(s)
		b.Follows(before, &s.Record)
	}
}

func (b *Binder[R]) changed() {
	b.Desk.Withdraw()
	if b.OnChange != nil {
		b.OnChange()
	}
	b.Desk.HeadChanged()
}

// Flush saves beside the window; the window's foot tells when that fails.
func (b *Binder[R]) Flush() {
	b.Desk.Beside.Run(b.Desk.Keep.Flush, func(error) {})
}

// FlushNow writes everything that was handed over before something else is
// done with the record; false, with words at the foot, when that failed.
func (b *Binder[R]) FlushNow() bool {
	if err := b.Desk.Keep.Flush(context.Background()); err != nil {
		b.Desk.Trouble(err)
		return false
	}
	return true
}

// Undo goes a step back, Redo one forward; the fields follow.
func (b *Binder[R]) Undo() bool { return b.stepped(b.Doc.Undo()) }

// Redo goes a step forward.
func (b *Binder[R]) Redo() bool { return b.stepped(b.Doc.Redo()) }

func (b *Binder[R]) stepped(moved bool) bool {
	if moved {
		b.Show()
		b.Flush()
		b.changed()
	}
	return moved
}

// Number binds a number that is computed in a unit and shown in the practice's.
func (b *Binder[R]) Number(group, name string, f evidence.Field, base quantity.Unit, at NumberAt[R]) *field.Number {
	n := field.NewNumber(b.Desk.Host, name, f, base)
	n.SetShown(b.By.Unit(base))
	var v visit
	n.OnChanged = func(r field.Reading) {
		b.typed(&v, name, func(s *Sheet[R]) {
			number, path := at(&s.Record, true)
			s.Put(number, path, r)
		})
	}
	n.OnLeft = func(field.Reading) { b.left(&v) }
	b.add(&Bound[R]{
		Name: name, Group: group, Field: n,
		show: func(s Sheet[R]) { showNumber(n, s, at) },
		Path: func(r R) string { _, path := at(&r, false); return path },
		Warn: func(text string) {
			if text != "" {
				n.SetTrouble(field.Wrong, text)
				return
			}
			n.SetRaw(n.Text()) // judges anew
		},
	})
	return n
}

// showNumber sets a number from a sheet.
func showNumber[R any](n *field.Number, s Sheet[R], at NumberAt[R]) {
	number, path := at(&s.Record, false)
	switch {
	case number == nil:
		n.Clear()
	case s.Raw[path] != "":
		n.SetRaw(s.Raw[path])
	case number.Known():
		n.SetKept(*number.Value, number.Unit)
	default:
		n.Clear()
	}
}

// GoTo gives the keyboard to a field.
func (b *Binder[R]) GoTo(name string) {
	if f := b.fields[name]; f != nil {
		f.Field.Focus()
	}
}
