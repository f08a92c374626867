package store

import (
	"context"
	"reflect"

	"gorm.io/gorm"
	"gorm.io/gorm/clause"

	"ebbwell/internal/record"
)

// scope narrows a query to some records.
type scope func(*gorm.DB) *gorm.DB

// loadRows loads records of one shape with their lists, one query for each
// table. With deleted, rows that were deleted come too.
func loadRows(tx *gorm.DB, sh *shape, deleted bool, which scope) (reflect.Value, error) {
	into := reflect.New(reflect.SliceOf(sh.model))
	db := which(tx.Model(reflect.New(sh.model).Interface()))
	for _, path := range sh.listNames("") {
		db = db.Preload(path.name, func(db *gorm.DB) *gorm.DB { return inOrder(alive(db, deleted), path.of) })
	}
	if err := alive(db, deleted).Find(into.Interface()).Error; err != nil {
		return reflect.Value{}, fail(err, "load "+sh.model.Name())
	}
	found := into.Elem()
	for i := range found.Len() {
		copyLists(found.Index(i)) // an empty list is nil, as it was when saved
	}
	return found, nil
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

// listName is a list at any depth, as GORM names it.
type listName struct {
	name string
	of   *shape
}

// listNames lists the lists at all depths: "Bottles", "Bottles.Refills".
func (sh *shape) listNames(prefix string) []listName {
	var all []listName
	for _, l := range sh.lists {
		all = append(all, listName{prefix + l.name, l.of})
		all = append(all, l.of.listNames(prefix+l.name+".")...)
	}
	return all
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
