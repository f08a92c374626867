// Package v5 is what version 5 adds to the shape of the database of version 4,
// frozen: the tables of imports and of how a file is read, and columns. Once a
// file of version 5 is kept in testdata it never changes; until then columns may
// still be added.
package v5

import (
	"fmt"
	"time"

	"gorm.io/gorm"

	"ebbwell/internal/store/columns"
)

// Columns lists a value of every older table that gets columns. Each type holds
// the new columns and the id, nothing else.
func Columns() []any { return []any{&Athlete{}, &Test{}} }

// Tables lists a value of every new table, those that are pointed at first.
func Tables() []any { return []any{&Import{}, &ImportTemplate{}, &Merge{}, &Question{}} }

// Athlete as of version 5: the columns that are new. No foreign key: an athlete may
// come from another practice, whose imports are not here.
type Athlete struct {
	ID       string `gorm:"primaryKey;size:36"`
	ImportID string `gorm:"size:36;index"`
}

// Test as of version 5: the columns that are new.
type Test struct {
	ID       string `gorm:"primaryKey;size:36"`
	ImportID string `gorm:"size:36;index"`
}

// Import as of version 5.
type Import struct {
	ID       string `gorm:"primaryKey;size:36"`
	At       time.Time
	By       string
	File     string
	Kind     string `gorm:"size:16"`
	Athletes int
	Tests    int
	Results  int
	Added    []byte
	UndoneAt *time.Time
	UndoneBy string
}

// ImportTemplate as of version 5.
type ImportTemplate struct {
	ID      string `gorm:"primaryKey;size:36"`
	Name    string
	Mapping []byte
	At      time.Time
	By      string
}

// Merge as of version 5.
type Merge struct {
	ID       string `gorm:"primaryKey;size:36"`
	At       time.Time
	By       string
	File     string
	Practice string
	Sender   string
	Athletes int
	Tests    int
	Plans    int
	People   string
	Before   []byte
	UndoneAt *time.Time
	UndoneBy string
}

// Question as of version 5. No foreign keys: it goes with its athlete.
type Question struct {
	ID        string `gorm:"primaryKey;size:36"`
	MergeID   string `gorm:"size:36;index"`
	AthleteID string `gorm:"size:36;index"`
	Kind      string `gorm:"size:12"`
	Record    string `gorm:"size:36"`
	Field     string
	Act       string `gorm:"size:8"`
	Stands    []byte
	Other     []byte
	Data      []byte
	At        time.Time
	DecidedAt *time.Time
	DecidedBy string
	Taken     bool
}

// Migrate brings a database of version 4 to version 5.
func Migrate(tx *gorm.DB) error {
	if err := tx.Migrator().CreateTable(Tables()...); err != nil {
		return fmt.Errorf("make the new tables: %w", err)
	}
	for _, table := range Columns() {
		if err := columns.Add(tx, table); err != nil {
			return err
		}
	}
	for name, on := range map[string]any{"idx_athletes_import_id": &Athlete{}, "idx_tests_import_id": &Test{}} {
		if err := tx.Migrator().CreateIndex(on, name); err != nil {
			return fmt.Errorf("index what was imported: %w", err)
		}
	}
	return nil
}
