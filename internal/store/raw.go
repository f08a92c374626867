package store

import (
	"context"
	"strings"

	"gorm.io/gorm"
	"gorm.io/gorm/clause"

	"ebbwell/internal/record"
)

// The endings of a field's path in the history of what was typed into it and
// could not be read, and of the reason for a value that was kept.
const (
	RawEnding    = "#typed"
	ReasonEnding = "#reason"
)

// SetRaw keeps what was typed into a field and could not be read; an empty
// text clears it. A closed record refuses with CodeClosed.
func (s *Store) SetRaw(ctx context.Context, ref record.Ref, field, text string, e Edit) error {
	return s.setRaw(ctx, record.RawText{Kind: ref.Kind, Record: ref.ID, Field: field, Text: text}, e)
}

// ClearRaw forgets what was typed, because the field can be read now.
func (s *Store) ClearRaw(ctx context.Context, ref record.Ref, field string, e Edit) error {
	return s.SetRaw(ctx, ref, field, "", e)
}

// SetReason keeps the reason a person gave for an unlikely value; an empty
// text clears it. A closed record refuses with CodeClosed.
func (s *Store) SetReason(ctx context.Context, ref record.Ref, field, text string, e Edit) error {
	return s.setRaw(ctx, record.RawText{Kind: ref.Kind, Record: ref.ID, Field: field, Text: text, Reason: true}, e)
}

// ClearReason forgets the reason, because the value is another now.
func (s *Store) ClearReason(ctx context.Context, ref record.Ref, field string, e Edit) error {
	return s.SetReason(ctx, ref, field, "", e)
}

// RawOf lists the unread texts and the reasons of a record, by field.
func (s *Store) RawOf(ctx context.Context, ref record.Ref) ([]record.RawText, error) {
	var list []record.RawText
	err := s.read(ctx, "load raw texts", func(tx *gorm.DB) error {
		return tx.Where("kind = ? AND record = ?", ref.Kind, ref.ID).Order("field, reason").Find(&list).Error
	})
	return list, about(err, ref)
}

// setRaw writes one text and its change.
func (s *Store) setRaw(ctx context.Context, raw record.RawText, e Edit) error {
	err := s.write(ctx, "keep raw text", func(w *work) error {
		w.peopleChange = false
		return w.setText(raw, e)
	})
	return about(err, record.Ref{Kind: raw.Kind, ID: raw.Record})
}

// setText writes one text and its change within a transaction.
func (w *work) setText(raw record.RawText, e Edit) error {
	ref := record.Ref{Kind: raw.Kind, ID: raw.Record}
	if err := w.mayNote(ref, raw.Field); err != nil {
		return err
	}
	key := w.tx.Where("kind = ? AND record = ? AND field = ? AND reason = ?", raw.Kind, raw.Record, raw.Field, raw.Reason)
	var before []record.RawText
	if err := key.Session(&gorm.Session{}).Find(&before).Error; err != nil {
		return err
	}
	if err := w.putRaw(key, raw); err != nil {
		return err
	}
	c := fieldChange{path: raw.Field + RawEnding, after: raw.Text, act: actUpdate}
	if raw.Reason {
		c.path = raw.Field + ReasonEnding
	}
	if len(before) > 0 {
		c.before = before[0].Text
	}
	return w.log(ref, []fieldChange{c}, e)
}

// putRaw writes or removes the text at a key.
func (w *work) putRaw(key *gorm.DB, raw record.RawText) error {
	if raw.Text == "" {
		return key.Session(&gorm.Session{}).Delete(&record.RawText{}).Error
	}
	raw.At, raw.By = w.now, w.by
	return w.tx.Clauses(clause.OnConflict{UpdateAll: true}).Create(&raw).Error
}

// mayNote refuses a text about a record that is not there, was deleted, or is
// closed to the field.
func (w *work) mayNote(ref record.Ref, field string) error {
	meta, err := w.root(ref)
	if err != nil {
		return err
	}
	if meta.Deleted() {
		return &Error{Code: CodeDeleted, Doing: "keep raw text"}
	}
	kept, err := w.kept(w.shapes[ref.Kind], ref.ID)
	if err != nil {
		return err
	}
	if open := openFields(ref.Kind, kept[0], kept[0]); !open(strings.TrimSpace(field)) {
		return &Error{Code: CodeClosed, Doing: "keep raw text", Field: field}
	}
	return nil
}
