package store

import (
	"cmp"
	"context"
	"errors"
	"reflect"
	"slices"
	"time"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// Delete marks a record deleted: it is in no list and cannot be saved, and can
// be brought back whole. The practice cannot be deleted.
func (s *Store) Delete(ctx context.Context, ref record.Ref, e Edit) error {
	if ref.Kind == record.KindPractice {
		return &Error{Code: CodeInvalid, Doing: "delete", Ref: ref, Err: errors.New("there is always a practice")}
	}
	return s.mark(ctx, "delete", ref, e, fieldChange{before: Present, act: actRemove})
}

// Undelete brings a deleted record back.
func (s *Store) Undelete(ctx context.Context, ref record.Ref, e Edit) error {
	return s.mark(ctx, "undelete", ref, e, fieldChange{after: Present, act: actRevive})
}

// mark sets or takes away the mark of deletion; doing it twice changes nothing.
func (s *Store) mark(ctx context.Context, doing string, ref record.Ref, e Edit, c fieldChange) error {
	err := s.write(ctx, doing, func(w *work) error {
		meta, err := w.root(ref)
		if err != nil || meta.Deleted() == (c.act == actRemove) {
			return err
		}
		if !meta.ChangedAt.Before(w.now) {
			w.now = meta.ChangedAt.Add(time.Microsecond)
		}
		values := map[string]any{"deleted_at": nil, "changed_at": w.now, "changed_by": w.by}
		if c.act == actRemove {
			values["deleted_at"] = w.now
		}
		if err := w.table(w.shapes[ref.Kind]).Where("id = ?", ref.ID).Updates(values).Error; err != nil {
			return err
		}
		return w.log(ref, []fieldChange{c}, e)
	})
	return about(err, ref)
}

// root loads the Meta of a record, deleted or not; CodeNotFound when there is none.
func (w *work) root(ref record.Ref) (record.Meta, error) {
	sh, ok := w.shapes[ref.Kind]
	if !ok {
		return record.Meta{}, &Error{Code: CodeInvalid, Doing: "find record", Ref: ref, Err: errors.New("no such kind")}
	}
	found := reflect.New(sh.model)
	if err := w.tx.Where("id = ?", ref.ID).Take(found.Interface()).Error; err != nil {
		return record.Meta{}, fail(err, "find record")
	}
	return *row{shape: sh, value: found.Elem()}.meta(), nil
}

// DeletedRecord is a line of the list of what was deleted.
type DeletedRecord struct {
	Ref  record.Ref
	Name string
	// Athlete is whose test or plan it was; empty for other kinds.
	Athlete record.ID
	// Date is the day of a test's session.
	Date record.Date
	At   time.Time
	By   string
}

// Deleted lists the deleted records of all kinds, the last first. What belongs
// to a deleted athlete is not listed: it comes back with the athlete.
func (s *Store) Deleted(ctx context.Context) ([]DeletedRecord, error) {
	var all []DeletedRecord
	err := s.read(ctx, "list deleted records", func(tx *gorm.DB) error {
		for kind, columns := range deletedColumns() {
			var lines []deletedLine
			err := tx.Model(reflect.New(s.shapes[kind].model).Interface()).Select(columns).
				Where("deleted_at IS NOT NULL").Find(&lines).Error
			if err != nil {
				return err
			}
			for _, l := range lines {
				all = append(all, DeletedRecord{Ref: record.Ref{Kind: kind, ID: l.ID}, Name: l.Name, Athlete: l.AthleteID,
					Date: l.Date, At: l.DeletedAt, By: l.ChangedBy})
			}
		}
		return nil
	})
	slices.SortFunc(all, func(a, b DeletedRecord) int {
		return cmp.Or(b.At.Compare(a.At), cmp.Compare(a.Ref.ID, b.Ref.ID))
	})
	return withoutOwner(all), err
}

// deletedLine is a deleted record as it is read.
type deletedLine struct {
	ID, AthleteID record.ID
	Name          string
	Date          record.Date
	DeletedAt     time.Time
	ChangedBy     string
}

// deletedColumns are the columns a line is made of, by kind.
func deletedColumns() map[record.Kind][]string {
	named := []string{"id", "name", "deleted_at", "changed_by"}
	return map[record.Kind][]string{
		record.KindAthlete: named, record.KindGroup: named, record.KindTrip: named, record.KindProduct: named,
		record.KindPlan:    {"id", "name", "athlete_id", "deleted_at", "changed_by"},
		record.KindTest:    {"id", "date", "athlete_id", "deleted_at", "changed_by"},
		record.KindSession: {"id", "name", "date", "deleted_at", "changed_by"},
	}
}

// withoutOwner leaves out what belongs to a deleted athlete.
func withoutOwner(all []DeletedRecord) []DeletedRecord {
	gone := map[record.ID]bool{}
	for _, d := range all {
		gone[d.Ref.ID] = d.Ref.Kind == record.KindAthlete
	}
	return slices.DeleteFunc(all, func(d DeletedRecord) bool { return gone[d.Athlete] })
}
