// Package v3 is what version 3 adds to the shape of the database of version 2,
// frozen: columns, and the tables of a session that a group shares, of weighings
// within a session and of what was asked and done about safety. Once a file of
// version 3 is kept in testdata it never changes; until then columns may still be
// added.
package v3

import (
	"fmt"
	"strings"
	"sync"

	"gorm.io/gorm"
	"gorm.io/gorm/schema"

	"ebbwell/internal/store/v1"
)

// Number is a value with the unit it was typed in.
type Number = v1.Number

// Columns lists a value of every older table that gets columns. Each type holds
// the new columns and the id, nothing else.
func Columns() []any { return []any{&Weighing{}, &Athlete{}, &Practice{}} }

// Tables lists a value of every new table, those that are pointed at first.
func Tables() []any {
	return []any{&GroupSession{}, &BottleKind{}, &Member{}, &PartwayWeighing{}, &SafetyNote{}}
}

// Migrate brings a database of version 2 to version 3.
func Migrate(tx *gorm.DB) error {
	for _, table := range Columns() {
		if err := addColumns(tx, table); err != nil {
			return err
		}
	}
	if err := tx.Migrator().CreateTable(Tables()...); err != nil {
		return fmt.Errorf("make the new tables: %w", err)
	}
	return nil
}

// addColumns adds the columns of a type, and gives those that are never null
// in a new row the value of a row in which nothing was entered.
func addColumns(tx *gorm.DB, table any) error {
	of, err := schema.Parse(table, &sync.Map{}, schema.NamingStrategy{})
	if err != nil {
		return fmt.Errorf("read the shape: %w", err)
	}
	empty := map[string]any{}
	for _, f := range of.Fields {
		if f.DBName == "" || f.PrimaryKey {
			continue
		}
		if err := tx.Migrator().AddColumn(table, f.DBName); err != nil {
			return fmt.Errorf("add column %s.%s: %w", of.Table, f.DBName, err)
		}
		if value, ok := emptyOf(f); ok {
			empty[f.DBName] = value
		}
	}
	if len(empty) == 0 {
		return nil
	}
	if err := tx.Table(of.Table).Where("id <> ''").UpdateColumns(empty).Error; err != nil {
		return fmt.Errorf("fill the new columns of %s: %w", of.Table, err)
	}
	return nil
}

// emptyOf is what a row holds in which nothing was entered; links, numbers,
// times and bytes are null then.
func emptyOf(f *schema.Field) (value any, ok bool) {
	switch {
	case f.DataType == schema.Bool:
		return false, true
	case f.DataType == schema.String && !strings.HasSuffix(f.DBName, "_id"):
		return "", true
	}
	return nil, false
}
