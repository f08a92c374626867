package store

import (
	"context"
	"reflect"
	"slices"

	"gorm.io/gorm"
	"gorm.io/gorm/clause"

	"ebbwell/internal/record"
)

// scope narrows a query to some records.
type scope func(*gorm.DB) *gorm.DB

// atOnce is how many values one statement is given; databases have a limit,
// SQLite 32,766.
const atOnce = 1000

// loadRows loads records of one shape with their lists, one query for each
// table and each thousand records. With deleted, rows that were deleted come too.
func loadRows(tx *gorm.DB, sh *shape, deleted bool, which scope) (reflect.Value, error) {
	into := reflect.New(reflect.SliceOf(sh.model))
	if err := alive(which(tx.Model(into.Interface())), deleted).Find(into.Interface()).Error; err != nil {
		return reflect.Value{}, fail(err, "load "+sh.model.Name())
	}
	found := into.Elem()
	return found, fillLists(tx, sh, deleted, found)
}

// fillLists loads the rows inside records; an empty list stays nil, as it was
// when saved.
func fillLists(tx *gorm.DB, sh *shape, deleted bool, records reflect.Value) error {
	if len(sh.lists) == 0 || records.Len() == 0 {
		return nil
	}
	ids, at := make([]record.ID, records.Len()), make(map[record.ID]reflect.Value, records.Len())
	for i := range ids {
		one := records.Index(i)
		ids[i] = row{shape: sh, value: one}.meta().ID
		at[ids[i]] = one
	}
	for _, l := range sh.lists {
		for chunk := range slices.Chunk(ids, atOnce) {
			rows := reflect.New(reflect.SliceOf(l.of.model))
			db := inOrder(alive(tx.Model(rows.Interface()), deleted), l.of).Where(l.parentColumn+" IN ?", chunk)
			if err := db.Find(rows.Interface()).Error; err != nil {
				return fail(err, "load "+l.of.model.Name())
			}
			if err := fillLists(tx, l.of, deleted, rows.Elem()); err != nil {
				return err
			}
			l.share(rows.Elem(), at)
		}
	}
	return nil
}

// share puts the rows of a list into the records they belong to.
func (l list) share(rows reflect.Value, at map[record.ID]reflect.Value) {
	for i := range rows.Len() {
		one := rows.Index(i)
		if in, ok := at[record.ID(one.FieldByIndex(l.parent).String())]; ok {
			into := in.FieldByIndex(l.index)
			into.Set(reflect.Append(into, one))
		}
	}
}

// alive leaves out deleted rows, unless they are wanted.
func alive(db *gorm.DB, deleted bool) *gorm.DB {
	if deleted {
		return db
	}
	return db.Where("deleted_at IS NULL")
}

// inOrder sorts the rows of a list: by their place, then by age.
func inOrder(db *gorm.DB, sh *shape) *gorm.DB {
	if sh.ordered {
		db = db.Order(clause.OrderByColumn{Column: clause.Column{Name: "position"}})
	}
	return db.Order("id")
}

// loadAll loads the records of a kind that are not deleted.
func loadAll[T any](ctx context.Context, s *Store, kind record.Kind, which scope) ([]T, error) {
	var all []T
	err := s.read(ctx, "load "+string(kind), func(tx *gorm.DB) error {
		found, err := loadRows(tx, s.shapes[kind], false, which)
		if err == nil {
			all = found.Interface().([]T)
		}
		return err
	})
	return all, err
}

// loadOne loads one record; CodeNotFound when there is none, CodeDeleted when
// it was deleted.
func loadOne[T any](ctx context.Context, s *Store, kind record.Kind, id record.ID) (T, error) {
	var one T
	err := s.read(ctx, "load "+string(kind), func(tx *gorm.DB) error {
		return pick(tx, s.shapes[kind], id, &one)
	})
	return one, about(err, record.Ref{Kind: kind, ID: id})
}

// pick loads one record into what root points at.
func pick(tx *gorm.DB, sh *shape, id record.ID, root any) error {
	found, err := loadRows(tx, sh, false, func(db *gorm.DB) *gorm.DB { return db.Where("id = ?", id) })
	if err != nil {
		return err
	}
	if found.Len() > 0 {
		reflect.ValueOf(root).Elem().Set(found.Index(0))
		return nil
	}
	var deleted int64
	if err := tx.Model(reflect.New(sh.model).Interface()).Where("id = ?", id).Count(&deleted).Error; err != nil {
		return fail(err, "look for a deleted record")
	}
	if deleted > 0 {
		return &Error{Code: CodeDeleted, Doing: "load"}
	}
	return &Error{Code: CodeNotFound, Doing: "load"}
}
