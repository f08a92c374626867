// Package v2 is what version 2 adds to the shape of the database of version 1,
// frozen: columns, one index, and frozen copies in fewer bytes. No type of the
// program proper is used here. Once a file of version 2 is kept in testdata it
// never changes; until then columns may still be added.
package v2

import (
	"fmt"

	"gorm.io/gorm"

	"ebbwell/internal/store/columns"
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
		if err := columns.Add(tx, table); err != nil {
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
