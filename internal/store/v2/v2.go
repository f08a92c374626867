// Package v2 is what version 2 adds to the shape of the database of version 1,
// frozen: columns, one index, and frozen copies in fewer bytes. No type of the
// program proper is used here. Once a file of version 2 is kept in testdata it
// never changes; until then columns may still be added.
package v2

import (
	"fmt"
	"strings"
	"sync"

	"gorm.io/gorm"
	"gorm.io/gorm/schema"
)

// Number is a value with the unit it was typed in.
type Number struct {
	Value *float64
	Unit  string `gorm:"size:12"`
}

// Tables lists a value of every table that gets columns. Each type holds the
// new columns and the id, nothing else.
func Tables() []any { return []any{&Practice{}, &Athlete{}, &Test{}, &Plan{}, &Chance{}, &Frozen{}} }

// Migrate brings a database of version 1 to version 2.
func Migrate(tx *gorm.DB) error {
	for _, table := range Tables() {
		if err := addColumns(tx, table); err != nil {
			return err
		}
	}
	if err := tx.Migrator().CreateIndex(&NewestTest{}, "idx_tests_newest"); err != nil {
		return fmt.Errorf("index the tests: %w", err)
	}
	if err := packFrozen(tx); err != nil {
		return err
	}
	if err := tx.Migrator().CreateIndex(&FrozenLines{}, "idx_frozen_lines"); err != nil {
		return fmt.Errorf("index the frozen copies: %w", err)
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
