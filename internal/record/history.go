package record

import "time"

// Change is one correction: what was there before and after, when, by whom
// and why. One visit to a field is one change, however many keys were hit.
type Change struct {
	ID     ID     `gorm:"primaryKey;size:36"`
	Kind   Kind   `gorm:"size:12;index:idx_changes_record"`
	Record ID     `gorm:"size:36;index:idx_changes_record"`
	Field  string // path in the record, such as "bottles.<id>.after"
	Before string
	After  string
	At     time.Time
	By     string
	Why    string
	// Visit joins the key strokes of one visit to a field.
	Visit string `gorm:"size:36"`
}

// RawText is what a person typed into a field that could not be read, or a
// reason they gave for keeping an unlikely value; nothing typed is lost.
type RawText struct {
	Kind   Kind   `gorm:"primaryKey;size:12"`
	Record ID     `gorm:"primaryKey;size:36"`
	Field  string `gorm:"primaryKey;size:120"`
	// Reason is true for the reason of a kept value.
	Reason bool `gorm:"primaryKey"`
	Text   string
	At     time.Time
	By     string
}

// Frozen is a closed test or an agreed plan as it was at that moment: its
// inputs and results as JSON, and the evidence it was calculated by.
type Frozen struct {
	ID      ID   `gorm:"primaryKey;size:36"`
	Kind    Kind `gorm:"size:12;index:idx_frozen_record"`
	Record  ID   `gorm:"size:36;index:idx_frozen_record"`
	Number  int  // 1 for the first freeze, 2 after a correction …
	Inputs  []byte
	Results []byte
	// Shown is what the page, the card, the limit and the bars of an agreed plan
	// showed, as JSON; empty for a test.
	Shown    []byte
	Evidence string `gorm:"size:24"`
	// Program is the version of the program that froze it.
	Program string `gorm:"size:24"`
	// Line is what a list shows of it.
	Line FrozenLine `gorm:"embedded;embeddedPrefix:line_"`
	At   time.Time
	By   string
	Why  string
	// Sum is the SHA-256 of what is kept, as it lies in the file.
	Sum []byte `json:"-"`
	// Altered: a byte of it is not as it was kept, so inputs, results and what was shown
	// are not given.
	Altered bool `gorm:"-" json:"-"`
}

// FrozenLine is what a list shows of a closed test.
type FrozenLine struct {
	// Rate is the sweat rate, L/h, nil while it is not known or was never
	// written; Ranged is false where it had no range.
	Rate   *float64
	Ranged bool
	// Method is how the rate was made, [MethodCorrected] or [MethodField]; empty in
	// copies of version 1, whose sheets each had a method of their own.
	Method string `gorm:"size:12"`
	// Gain is whether the athlete was heavier after than before, [GainYes] or
	// [GainNo]; empty where it was never written.
	Gain string `gorm:"size:3"`
}

// Whether an athlete was heavier after a session than before.
const (
	GainYes = "yes"
	GainNo  = "no"
)

// The methods of a sweat rate; see [Settings.FieldMethod].
const (
	MethodCorrected = "corrected"
	MethodField     = "field"
)

// Method is the practice's.
func (s Settings) Method() string {
	if s.FieldMethod {
		return MethodField
	}
	return MethodCorrected
}

// TableName is the word for several frozen copies.
func (Frozen) TableName() string { return "frozen" }

// Print is a page as it was printed, byte for byte.
type Print struct {
	ID        ID   `gorm:"primaryKey;size:36"`
	AthleteID ID   `gorm:"size:36;index"`
	Kind      Kind `gorm:"size:12"` // what it was printed from
	Record    ID   `gorm:"size:36"`
	// Page is "athlete-page", "kit-bag-card", "blank-sheet" …
	Page     string `gorm:"size:24"`
	Language string `gorm:"size:8"`
	Bytes    []byte
	At       time.Time
	By       string
	// Sum is the SHA-256 of what is kept.
	Sum []byte `json:"-"`
}

// PageLetter is a print that is a letter, plain text.
const PageLetter = "letter"

// Ending is that of the file a print was: ".txt" of a letter, else ".pdf".
func (p Print) Ending() string {
	if p.Page == PageLetter {
		return ".txt"
	}
	return ".pdf"
}
