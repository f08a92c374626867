package v1

import "time"

// Change as of version 1.
type Change struct {
	ID     string `gorm:"primaryKey;size:36"`
	Kind   string `gorm:"size:12;index:idx_changes_record"`
	Record string `gorm:"size:36;index:idx_changes_record"`
	Field  string
	Before string
	After  string
	At     time.Time
	By     string
	Why    string
	Visit  string `gorm:"size:36"`
}

// RawText as of version 1.
type RawText struct {
	Kind   string `gorm:"primaryKey;size:12"`
	Record string `gorm:"primaryKey;size:36"`
	Field  string `gorm:"primaryKey;size:120"`
	Reason bool   `gorm:"primaryKey"`
	Text   string
	At     time.Time
	By     string
}

// Frozen as of version 1.
type Frozen struct {
	ID       string `gorm:"primaryKey;size:36"`
	Kind     string `gorm:"size:12;uniqueIndex:idx_frozen_record"`
	Record   string `gorm:"size:36;uniqueIndex:idx_frozen_record"`
	Number   int    `gorm:"uniqueIndex:idx_frozen_record"`
	Inputs   []byte
	Results  []byte
	Evidence string `gorm:"size:24"`
	At       time.Time
	By       string
	Why      string
}

// TableName is the word for several frozen copies.
func (Frozen) TableName() string { return "frozen" }

// Print as of version 1.
type Print struct {
	ID        string   `gorm:"primaryKey;size:36"`
	AthleteID string   `gorm:"index;not null;size:36"`
	Athlete   *Athlete `gorm:"foreignKey:AthleteID;references:ID"`
	Kind      string   `gorm:"size:12"`
	Record    string   `gorm:"size:36"`
	Page      string   `gorm:"size:24"`
	Language  string   `gorm:"size:8"`
	Bytes     []byte
	At        time.Time
	By        string
}
