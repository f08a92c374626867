package store

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"time"

	"github.com/go-gormigrate/gormigrate/v2"
	"gorm.io/gorm"

	"ebbwell/internal/store/v1"
	"ebbwell/internal/store/v2"
	"ebbwell/internal/store/v3"
	"ebbwell/internal/store/v4"
	"ebbwell/internal/store/v5"
	"ebbwell/internal/store/v6"
)

// versionTable holds one row for each change of shape that was made.
const versionTable = "migrations"

// versions lists every change of shape, oldest first. Each uses the frozen
// types of its own version; a change that was released is never edited.
func versions() []*gormigrate.Migration {
	return []*gormigrate.Migration{
		{ID: "0001", Migrate: func(tx *gorm.DB) error { return tx.Migrator().CreateTable(v1.Tables()...) }},
		{ID: "0002", Migrate: v2.Migrate},
		{ID: "0003", Migrate: v3.Migrate},
		{ID: "0004", Migrate: v4.Migrate},
		{ID: "0005", Migrate: v5.Migrate},
		{ID: "0006", Migrate: v6.Migrate},
	}
}

// madeVersions lists the changes a file has been through.
func madeVersions(db *gorm.DB) ([]string, error) {
	if !db.Migrator().HasTable(versionTable) {
		return nil, &Error{Code: CodeDamaged, Doing: "read version", Err: errors.New("not a database of this program")}
	}
	var made []string
	err := db.Table(versionTable).Order("id").Pluck("id", &made).Error
	return made, fail(err, "read version")
}

// pending counts the changes a file has still to go through; a file that has
// been through one this program does not know is newer than the program, or
// damaged when it lacks one that comes before.
func pending(made []string, known []*gormigrate.Migration) (int, error) {
	left := 0
	for _, m := range known {
		if !slices.Contains(made, m.ID) {
			left++
		}
	}
	for _, id := range made {
		if slices.ContainsFunc(known, func(m *gormigrate.Migration) bool { return m.ID == id }) {
			continue
		}
		code := CodeNewer
		if left > 0 {
			code = CodeDamaged
		}
		return 0, &Error{Code: code, Doing: "read version", Err: fmt.Errorf("version %q is not known", id)}
	}
	return left, nil
}

// migrate makes the pending changes and their records in one transaction: the
// file is of the new version or untouched. A change that breaks a link fails.
func migrate(db *gorm.DB, known []*gormigrate.Migration) error {
	checked := make([]*gormigrate.Migration, len(known))
	for i, m := range known {
		checked[i] = &gormigrate.Migration{ID: m.ID, Migrate: func(tx *gorm.DB) error {
			if err := m.Migrate(tx); err != nil {
				return err
			}
			if err := tx.Statement.Context.Err(); err != nil {
				return err
			}
			return checkLinks(tx)
		}}
	}
	options := &gormigrate.Options{TableName: versionTable, IDColumnName: "id", IDColumnSize: 16, UseTransaction: true}
	if err := gormigrate.New(db, options, checked).Migrate(); err != nil {
		return fail(fmt.Errorf("change the shape of the database: %w", err), "migrate")
	}
	return nil
}

// patient is a context that stops no statement: a change of shape asks between
// its statements whether it is to go on, so that it ends in its own words and
// its transaction is rolled back in order.
//
// It never ends by itself: its Done is nil, and ended tells what the context it
// stands for says.
type patient struct {
	ended func() error
	value func(any) any
}

func patientOf(ctx context.Context) patient { return patient{ctx.Err, ctx.Value} }

// Deadline is none.
func (patient) Deadline() (deadline time.Time, ok bool) { return time.Time{}, false }

// Done is never closed; Err says when the context has ended.
func (patient) Done() <-chan struct{} { return nil }

// Err is that of the context it stands for.
func (p patient) Err() error { return p.ended() }

// Value is what that context carries.
func (p patient) Value(key any) any { return p.value(key) }
