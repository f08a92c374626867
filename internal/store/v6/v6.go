// Package v6 is what version 6 adds to the shape of the database of version 5,
// frozen: the files that were saved elsewhere, and digests of what never changes. Once
// a file of version 6 is kept in testdata it never changes; until then columns may
// still be added.
package v6

import (
	"fmt"
	"time"

	"gorm.io/gorm"

	"ebbwell/internal/store/columns"
)

// Columns lists a value of every older table that gets columns. Each type holds
// the new columns and the id, nothing else.
func Columns() []any { return []any{&Frozen{}, &Print{}} }

// Tables lists a value of every new table.
func Tables() []any { return []any{&SavedFile{}, &Fingerprint{}} }

// Frozen as of version 6: the columns that are new.
type Frozen struct {
	ID  string `gorm:"primaryKey;size:36"`
	Sum []byte
}

// TableName is the word for several frozen copies.
func (Frozen) TableName() string { return "frozen" }

// Print as of version 6: the columns that are new.
type Print struct {
	ID  string `gorm:"primaryKey;size:36"`
	Sum []byte
}

// SavedFile as of version 6. No foreign key: a file of all athletes has none, and a row
// goes with its athlete.
type SavedFile struct {
	ID        string `gorm:"primaryKey;size:36"`
	AthleteID string `gorm:"size:36;index"`
	Path      string
	Sum       []byte
	Shared    bool
	At        time.Time
	By        string
}

// Fingerprint as of version 6.
type Fingerprint struct {
	Kind    string `gorm:"primaryKey;size:12"`
	Record  string `gorm:"primaryKey;size:36"`
	Sum     []byte
	Changed time.Time
}

// Migrate brings a database of version 5 to version 6. Copies and pages get the
// digest of what they are now.
func Migrate(tx *gorm.DB) error {
	if err := tx.Migrator().CreateTable(Tables()...); err != nil {
		return fmt.Errorf("make the new tables: %w", err)
	}
	for _, table := range Columns() {
		if err := columns.Add(tx, table); err != nil {
			return err
		}
	}
	if err := sum(tx, "frozen", sumOfCopy); err != nil {
		return err
	}
	return sum(tx, "prints", sumOfPage)
}
