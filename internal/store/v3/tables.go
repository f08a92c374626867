package v3

import (
	"time"

	"ebbwell/internal/store/v1"
)

// Athlete as of version 3: the columns that are new.
type Athlete struct {
	ID      string `gorm:"primaryKey;size:36"`
	Bottles string
}

// Practice as of version 3: the columns that are new.
type Practice struct {
	ID        string `gorm:"primaryKey;size:36"`
	DrinkStep Number `gorm:"embedded;embeddedPrefix:drink_step_"`
}

// Weighing as of version 3: the columns that are new.
type Weighing struct {
	ID        string `gorm:"primaryKey;size:36"`
	WeighedAt *time.Time
	Aside     bool
}

// GroupSession as of version 3.
type GroupSession struct {
	v1.Meta
	Name       string
	Session    v1.Session `gorm:"embedded"`
	Air        v1.Air     `gorm:"embedded;embeddedPrefix:air_"`
	ScaleStep  Number     `gorm:"embedded;embeddedPrefix:scale_step_"`
	Check      ScaleCheck `gorm:"embedded;embeddedPrefix:check_"`
	PatchSites string
	ByStation  bool
}

// ScaleCheck as of version 3.
type ScaleCheck struct {
	Known Number `gorm:"embedded;embeddedPrefix:known_"`
	Read  Number `gorm:"embedded;embeddedPrefix:read_"`
	At    *time.Time
}

// BottleKind as of version 3.
type BottleKind struct {
	v1.Meta
	GroupSessionID string        `gorm:"index;not null;size:36"`
	GroupSession   *GroupSession `gorm:"foreignKey:GroupSessionID;references:ID"`
	Position       int
	ProductID      string `gorm:"size:64"`
	Name           string
	Volume         Number `gorm:"embedded;embeddedPrefix:volume_"`
	Empty          Number `gorm:"embedded;embeddedPrefix:empty_"`
}

// Member as of version 3.
type Member struct {
	v1.Meta
	GroupSessionID string        `gorm:"index;not null;size:36"`
	GroupSession   *GroupSession `gorm:"foreignKey:GroupSessionID;references:ID"`
	AthleteID      string        `gorm:"index;not null;size:36"`
	Athlete        *v1.Athlete   `gorm:"foreignKey:AthleteID;references:ID"`
	TestID         string        `gorm:"index;not null;size:36"`
	Test           *v1.Test      `gorm:"foreignKey:TestID;references:ID"`
	Position       int
	Bib            string `gorm:"size:8"`
}

// PartwayWeighing as of version 3.
type PartwayWeighing struct {
	v1.Meta
	TestID   string   `gorm:"index;not null;size:36"`
	Test     *v1.Test `gorm:"foreignKey:TestID;references:ID"`
	Position int
	TimeAt   string `gorm:"size:5"`
	Mass     Number `gorm:"embedded;embeddedPrefix:mass_"`
	Drunk    Number `gorm:"embedded;embeddedPrefix:drunk_"`
	Urine    Number `gorm:"embedded;embeddedPrefix:urine_"`
}

// SafetyNote as of version 3.
type SafetyNote struct {
	v1.Meta
	TestID   string   `gorm:"index;not null;size:36"`
	Test     *v1.Test `gorm:"foreignKey:TestID;references:ID"`
	Position int
	Kind     string `gorm:"size:8"`
	Item     string `gorm:"size:24"`
	Answer   string `gorm:"size:8"`
	Text     string
	Done     *time.Time
}
