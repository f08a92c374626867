package record

import "time"

// SavedFile is a file of the user's choice that holds something of an athlete: a page, a
// picture, a letter, an export. Where it was saved is known, so that erasing the athlete
// can say so and take it away. It stays with the records: no export and no bundle has it.
type SavedFile struct {
	ID ID `gorm:"primaryKey;size:36"`
	// AthleteID is whom it is of; empty for a file of all athletes, such as a backup.
	AthleteID ID `gorm:"size:36;index"`
	// Path is where it was saved, absolute.
	Path string
	// Sum is the SHA-256 of what was written, nil where it is not compared: a file that
	// has another is not ours any more.
	Sum []byte
	// Shared: it holds something of others too.
	Shared bool
	At     time.Time
	By     string
}

// Fingerprint tells a closed test as it was saved from one a byte of which became
// another. One with another time than the record's says nothing.
type Fingerprint struct {
	Kind   Kind `gorm:"primaryKey;size:12"`
	Record ID   `gorm:"primaryKey;size:36"`
	// Sum is the SHA-256 of all its fields that hold something.
	Sum []byte
	// Changed is when the record was changed last.
	Changed time.Time
}
