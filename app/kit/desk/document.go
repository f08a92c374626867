package desk

import (
	"context"
	"sync"

	"ebbwell/app/kit/undo"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// Keeping is what a [Document] needs to know about its kind of record.
type Keeping[R any] struct {
	// Ref names the record.
	Ref record.Ref
	// Clone copies a record so that no list is shared.
	Clone func(R) R
	// Meta points at the record's own part.
	Meta func(*R) *record.Meta
	// Save writes a record and returns it as it was kept.
	Save func(ctx context.Context, r R, e store.Edit) (R, error)
}

// Document is one record open on a screen: its present state, what it was
// before, and its saving. It is used on the window's thread; the saves it
// hands over run beside it.
type Document[R any] struct {
	keeping Keeping[R]
	keeper  Keeper
	// key names the record to the keeper.
	key     string
	present R
	history undo.History[R]

	// kept is how the record was last kept; saves run beside the window.
	mu   sync.Mutex
	kept record.Meta
}

// Keeper takes saves over; see package keep.
type Keeper interface {
	Later(key string, save func(ctx context.Context) error)
}

// Open makes a document of a record as it was loaded or made.
func Open[R any](of Keeping[R], r R, keeper Keeper) *Document[R] {
	return &Document[R]{keeping: of, keeper: keeper, key: string(of.Ref.Kind) + " " + string(of.Ref.ID), present: r, kept: *of.Meta(&r)}
}

// Now returns the present state. It must not be changed; see [Document.Change].
func (d *Document[R]) Now() R { return d.present }

// Change applies f to a copy of the present state, which becomes the present,
// and hands over its saving. Changes of one visit to a field join into one
// step back; label names the step. The visit should come from [NewVisit].
func (d *Document[R]) Change(visit, label string, f func(*R)) {
	d.history.Record(d.present, visit, label)
	next := d.keeping.Clone(d.present)
	f(&next)
	d.put(next, store.Edit{Visit: visit})
}

// ChangeBecause is Change for a correction that has a written reason.
func (d *Document[R]) ChangeBecause(why, label string, f func(*R)) {
	d.history.Record(d.present, "", label)
	next := d.keeping.Clone(d.present)
	f(&next)
	d.put(next, store.Edit{Why: why})
}

// EndVisit closes the visit to a field.
func (d *Document[R]) EndVisit() { d.history.EndVisit() }

// Undo goes a step back; false when there is none.
func (d *Document[R]) Undo() bool {
	before, ok := d.history.Undo(d.present)
	if ok {
		d.put(before, store.Edit{})
	}
	return ok
}

// Redo goes a step forward; false when there is none.
func (d *Document[R]) Redo() bool {
	after, ok := d.history.Redo(d.present)
	if ok {
		d.put(after, store.Edit{})
	}
	return ok
}

// CanUndo and CanRedo report whether there is a step back or forward.
func (d *Document[R]) CanUndo() bool { return d.history.CanUndo() }

// CanRedo reports whether there is a step forward.
func (d *Document[R]) CanRedo() bool { return d.history.CanRedo() }

// Replace takes a state that the store has already kept (a closed test, an
// agreed plan) as the present; it is no step back.
func (d *Document[R]) Replace(r R) {
	d.mu.Lock()
	d.kept = *d.keeping.Meta(&r)
	d.mu.Unlock()
	d.present = r
	d.history = undo.History[R]{}
}

// put makes a state the present and hands over its saving.
func (d *Document[R]) put(r R, e store.Edit) {
	d.present = r
	// A state that was made the present is never changed again; what is saved is a
	// copy, since the store fills in what is its own.
	d.keeper.Later(d.key, func(ctx context.Context) error { return d.save(ctx, d.keeping.Clone(r), e) })
}

// save runs beside the window: it gives the state the times of the last keep,
// so that the store can tell a stale save from the next one.
func (d *Document[R]) save(ctx context.Context, r R, e store.Edit) error {
	d.mu.Lock()
	defer d.mu.Unlock()
	*d.keeping.Meta(&r) = d.kept
	kept, err := d.keeping.Save(ctx, r, e)
	if err != nil {
		return err
	}
	d.kept = *d.keeping.Meta(&kept)
	return nil
}

// NewVisit makes the mark of one visit to a field.
func NewVisit() string { return string(record.NewID()) }
