// Package v3 is what version 3 adds to the shape of the database of version 2,
// frozen: columns, and the tables of a session that a group shares, of weighings
// within a session and of what was asked and done about safety. Once a file of
// version 3 is kept in testdata it never changes; until then columns may still be
// added.
package v3

import (
	"fmt"

	"gorm.io/gorm"

	"ebbwell/internal/store/columns"
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
		if err := columns.Add(tx, table); err != nil {
			return err
		}
	}
	if err := tx.Migrator().CreateTable(Tables()...); err != nil {
		return fmt.Errorf("make the new tables: %w", err)
	}
	return nil
}
