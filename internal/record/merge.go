package record

import "time"

// Merge is one bundle of another practice that was put together with the records here.
type Merge struct {
	ID ID `gorm:"primaryKey;size:36"`
	At time.Time
	By string
	// File is its name without a folder; Practice and Sender are who made it.
	File, Practice, Sender string
	// Athletes, Tests and Plans count what it added or changed.
	Athletes, Tests, Plans int
	// People are the athletes it was about, their ids with spaces between.
	People string
	// Before is what stood before, as JSON of the store; empty once it was undone, or
	// one of the athletes was erased.
	Before []byte
	// UndoneAt is when it was undone, nil while it was not.
	UndoneAt *time.Time
	UndoneBy string
}

// Question is something a merge left to a person: what stands is the more cautious.
type Question struct {
	ID        ID   `gorm:"primaryKey;size:36"`
	MergeID   ID   `gorm:"size:36;index"`
	AthleteID ID   `gorm:"size:36;index"`
	Kind      Kind `gorm:"size:12"`
	Record    ID   `gorm:"size:36"`
	Field     string
	// Act is what taking the other value does, of package bundle.
	Act string `gorm:"size:8"`
	// Stands and Other are the two values, Data the other as it is written; JSON.
	Stands, Other, Data []byte
	At                  time.Time
	// DecidedAt is when it was decided, nil while it is open; Taken: for the other.
	DecidedAt *time.Time
	DecidedBy string
	Taken     bool
}
