// Package bind ties the fields of a screen to the record they show. What a
// person types goes into a [desk.Document] at every key; saving, undo and
// history follow from there. What cannot be read is kept as it was typed, and
// the reason for keeping a value beyond its limits is kept beside it.
//
// A screen opens its record with [Open], makes its fields with the methods of
// a [Binder], and calls [Binder.Show] whenever the record changed otherwise:
// after undo, or when it was loaded anew.
package bind

import (
	"cmp"
	"context"
	"fmt"
	"maps"
	"slices"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// Sheet is a record as it is open on a screen: beside it, by the path of the
// field, what was typed and could not be read, and the reasons given for
// values beyond their limits.
type Sheet[R any] struct {
	Record       R
	Raw, Reasons map[string]string
}

// Kind says how one kind of record is copied and kept.
type Kind[R any] struct {
	Ref   record.Ref
	Clone func(R) R
	Meta  func(*R) *record.Meta
	Save  func(ctx context.Context, r R, e store.Edit) (R, error)
}

// Open makes the document of a record, with the texts kept beside it.
func Open[R any](d *desk.Desk, k Kind[R], r R) (*desk.Document[Sheet[R]], error) {
	texts, err := d.Store.RawOf(context.Background(), k.Ref)
	if err != nil {
		return nil, fmt.Errorf("open %s %s: %w", k.Ref.Kind, k.Ref.ID, err)
	}
	s := Sheet[R]{Record: r, Raw: map[string]string{}, Reasons: map[string]string{}}
	for _, t := range texts {
		if t.Reason {
			s.Reasons[t.Field] = t.Text
		} else {
			s.Raw[t.Field] = t.Text
		}
	}
	saver := newSaver(d.Store, k, s)
	return desk.Open(desk.Keeping[Sheet[R]]{
		Ref: k.Ref, Save: saver.save,
		Clone: func(s Sheet[R]) Sheet[R] { return s.clone(k.Clone) },
		Meta:  func(s *Sheet[R]) *record.Meta { return k.Meta(&s.Record) },
	}, s, d.Keep), nil
}

// clone returns a copy that shares no list.
func (s Sheet[R]) clone(of func(R) R) Sheet[R] {
	return Sheet[R]{Record: of(s.Record), Raw: maps.Clone(s.Raw), Reasons: maps.Clone(s.Reasons)}
}

// Texts lists raw texts and reasons as the calculation takes them.
func (s Sheet[R]) Texts(ref record.Ref) []record.RawText {
	var list []record.RawText
	for path, text := range s.Raw {
		list = append(list, record.RawText{Kind: ref.Kind, Record: ref.ID, Field: path, Text: text})
	}
	for path, text := range s.Reasons {
		list = append(list, record.RawText{Kind: ref.Kind, Record: ref.ID, Field: path, Text: text, Reason: true})
	}
	slices.SortFunc(list, func(a, b record.RawText) int { return cmp.Compare(a.Field, b.Field) })
	return list
}

// Put takes what was typed into a number's field. A number beyond its limits is
// kept, for the calculation to refuse; one that cannot be read is kept as text.
// The reason for a value goes when the value does.
func (s *Sheet[R]) Put(n *record.Number, path string, r field.Reading) {
	before := *n
	*n = record.Number{}
	delete(s.Raw, path)
	switch r.State {
	case field.Empty:
	case field.Unreadable:
		s.Raw[path] = r.Raw
	default:
		x := r.Value
		*n = record.Number{Value: &x, Unit: r.Unit}
	}
	if !n.Same(before) {
		delete(s.Reasons, path)
	}
}

// keepText keeps a text that could not be read, or forgets it.
func (s *Sheet[R]) keepText(path, raw string) {
	if raw == "" {
		delete(s.Raw, path)
		return
	}
	s.Raw[path] = raw
}
