// Package v4 is what version 4 adds to the shape of the database of version 3,
// frozen: columns, and indexes by which lists are read. Once a file of version 4 is kept in testdata it never
// changes; until then columns may still be added.
package v4

import (
	"time"

	"gorm.io/gorm"

	"ebbwell/internal/store/columns"
)

// Columns lists a value of every older table that gets columns. Each type holds
// the new columns and the id, nothing else.
func Columns() []any { return []any{&Practice{}, &Frozen{}} }

// Practice as of version 4: the columns that are new.
type Practice struct {
	ID           string `gorm:"primaryKey;size:36"`
	Language     string `gorm:"size:8"`
	BackupFolder string
	BackupDays   int
	BackupKey    string
	BackupTo     string
	BackedUpAt   *time.Time
}

// Frozen as of version 4: whether the athlete was heavier after than before, which no
// copy of an older version says.
type Frozen struct {
	ID       string `gorm:"primaryKey;size:36"`
	LineGain string `gorm:"size:3"`
}

// TableName is the word for several frozen copies.
func (Frozen) TableName() string { return "frozen" }

// Migrate brings a database of version 3 to version 4.
func Migrate(tx *gorm.DB) error {
	for _, table := range Columns() {
		if err := columns.Add(tx, table); err != nil {
			return err
		}
	}
	return addIndexes(tx)
}
