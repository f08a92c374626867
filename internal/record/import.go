package record

import "time"

// ImportKind is a sort of file that was imported.
type ImportKind string

// The sorts of imports.
const (
	// ImportTests: tests, and athletes with them.
	ImportTests ImportKind = "tests"
	// ImportAthletes: athletes without tests.
	ImportAthletes ImportKind = "athletes"
	// ImportLaboratory: results for patches of sheets that are kept already.
	ImportLaboratory ImportKind = "laboratory"
	// ImportRecords: what this program wrote itself.
	ImportRecords ImportKind = "records"
)

// Import is one file that was imported. The athletes and the tests that came with
// it name it.
type Import struct {
	ID ID `gorm:"primaryKey;size:36"`
	At time.Time
	By string
	// File is its name without a folder.
	File string
	Kind ImportKind `gorm:"size:16"`
	// Athletes, Tests and Results count what it added.
	Athletes int
	Tests    int
	Results  int
	// Added is what it put into sheets that were there before, as JSON of the store.
	Added []byte
	// UndoneAt is when it was undone, nil while it was not.
	UndoneAt *time.Time
	UndoneBy string
}

// ImportTemplate is how a sort of file is read: which column means what, in which
// unit, as JSON of package tables.
type ImportTemplate struct {
	ID      ID `gorm:"primaryKey;size:36"`
	Name    string
	Mapping []byte
	At      time.Time
	By      string
}
