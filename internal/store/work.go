package store

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"time"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// work is one transaction that writes: all it does carries one time and one name.
type work struct {
	tx     *gorm.DB
	shapes map[record.Kind]*shape
	now    time.Time
	by     string
	// peopleChange is true unless it is sure that the list of the athletes stays as
	// it is.
	peopleChange bool
	// athletes are those that change where no more of the list does.
	athletes []record.ID
}

// transact runs f between begin and commit.
func (s *Store) transact(ctx context.Context, w *work, f func(w *work) error) error {
	s.state.Lock()
	by := s.state.by
	s.state.Unlock()
	tx := s.files.writer.WithContext(context.WithoutCancel(ctx)).Begin()
	if tx.Error != nil {
		return tx.Error
	}
	done := false
	defer func() {
		if !done {
			tx.Rollback()
		}
	}()
	w.tx, w.now, w.by = tx, s.now(), by
	if err := f(w); err != nil {
		return err
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	done = true
	if err := tx.Commit().Error; err != nil {
		rollBack(s.files.writer)
		return err
	}
	return nil
}

// Edit says why and in which visit to a field a change is made.
type Edit struct {
	// Why is the reason a person gave; may be empty.
	Why string
	// Visit joins the saves made while one field has the focus into one
	// change: before of the first, after of the last, nothing when it ends
	// where it began. Make it with [record.NewID] when the field is entered.
	// Empty: every save stands alone. What is made in a visit (a record, a
	// row) has no history of its fields until the visit is over.
	Visit string
}

// saving says how far a save may go.
type saving int

const (
	withRespect saving = iota // a closed record stays as it is
	reopening                 // the closed record is being reopened
)

// save saves a record: in is copied, and comes back as it is kept.
func save[T any](ctx context.Context, s *Store, kind record.Kind, in T, e Edit) (T, error) {
	out := copyOf(in)
	doing := "save " + string(kind)
	err := s.write(ctx, doing, func(w *work) error {
		w.peopleChange = kind == record.KindGroup // whose name stands with its athletes
		err := w.save(kind, &out, e, withRespect)
		if kind == record.KindAthlete {
			w.athletes = append(w.athletes, rootMeta(&out).ID)
		}
		return err
	})
	if err != nil {
		return in, err
	}
	return out, nil
}

// save writes the differences between the record that root points at and what
// is kept, stamps root, and enters the changes into the history.
func (w *work) save(kind record.Kind, root any, e Edit, how saving) error {
	sh, value := w.shapes[kind], reflect.ValueOf(root).Elem()
	sh.link(value)
	wanted := rowsOf(sh, value)
	ref := record.Ref{Kind: kind, ID: wanted[0].meta().ID}
	if err := sound(wanted); err != nil {
		return about(err, ref)
	}
	before, err := w.kept(sh, ref.ID)
	if err != nil {
		return about(err, ref)
	}
	steps := diff(before, wanted)
	if changed(steps) {
		if err := w.mayChange(kind, before, wanted[0], steps, how); err != nil {
			return about(err, ref)
		}
	}
	if err := w.apply(steps); err != nil {
		return about(err, ref)
	}
	return about(w.enter(ref, steps, e), ref)
}

// kept loads the rows of a record as they are kept, deleted ones too; none
// when there is no such record.
func (w *work) kept(sh *shape, id record.ID) ([]row, error) {
	found, err := loadRows(w.tx, sh, true, func(db *gorm.DB) *gorm.DB { return db.Where("id = ?", id) })
	if err != nil || found.Len() == 0 {
		return nil, err
	}
	return rowsOf(sh, found.Index(0)), nil
}

// mayChange refuses a save that would undo what others did: of a record that
// is gone, deleted, newer than the one that is to be saved, or closed.
func (w *work) mayChange(kind record.Kind, before []row, root row, steps []step, how saving) error {
	seen := root.meta().ChangedAt
	if len(before) == 0 {
		if !seen.IsZero() {
			return &Error{Code: CodeNotFound, Doing: "compare with what is kept"}
		}
		return nil
	}
	now := before[0].meta()
	if now.Deleted() {
		return &Error{Code: CodeDeleted, Doing: "compare with what is kept"}
	}
	if !now.ChangedAt.Equal(seen) {
		return &Error{Code: CodeConflict, Doing: "compare with what is kept",
			Err: fmt.Errorf("changed at %s by %q", now.ChangedAt.Format(time.RFC3339Nano), now.ChangedBy)}
	}
	if !now.ChangedAt.Before(w.now) { // the clock was set back, or two saves in a microsecond
		w.now = now.ChangedAt.Add(time.Microsecond)
	}
	if how == withRespect {
		return closedTo(kind, before[0], root, steps)
	}
	return nil
}

// apply writes the rows that differ and stamps all. The record itself counts
// as changed when anything in it did, so that its ChangedAt tells its version.
func (w *work) apply(steps []step) error {
	dirty := changed(steps)
	for i, s := range steps {
		if i == 0 && dirty && s.act == actNothing {
			s.act = actUpdate
		}
		if err := w.applyOne(s); err != nil {
			var own *Error
			if errors.As(fail(err, "write row"), &own) {
				own.Field = s.path
				return own
			}
			return err
		}
	}
	if dirty {
		return w.markClosed(steps)
	}
	return nil
}

// applyOne writes one row.
func (w *work) applyOne(s step) error {
	m := s.meta()
	switch s.act {
	case actNothing:
		*m = *s.before.meta()
		return nil
	case actInsert:
		*m = record.Meta{ID: m.ID, CreatedAt: w.now, CreatedBy: w.by, ChangedAt: w.now, ChangedBy: w.by}
		values := s.columns()
		values["id"], values["created_at"], values["created_by"] = string(m.ID), m.CreatedAt, m.CreatedBy
		values["changed_at"], values["changed_by"], values["deleted_at"] = m.ChangedAt, m.ChangedBy, nil
		return w.table(s.shape).Create(values).Error
	case actRemove:
		return w.table(s.shape).Where("id = ?", m.ID).Updates(map[string]any{
			"deleted_at": w.now, "changed_at": w.now, "changed_by": w.by}).Error
	}
	*m = *s.before.meta()
	m.ChangedAt, m.ChangedBy, m.DeletedAt = w.now, w.by, nil
	values := map[string]any{"changed_at": w.now, "changed_by": w.by, "deleted_at": nil}
	for _, l := range s.shape.leaves {
		if !l.same(s.before.value, s.value) {
			l.put(values, s.value)
		}
	}
	return w.table(s.shape).Where("id = ?", m.ID).Updates(values).Error
}

// table starts a statement on the table of a shape.
func (w *work) table(sh *shape) *gorm.DB {
	return w.tx.Model(reflect.New(sh.model).Interface())
}
