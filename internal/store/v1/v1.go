// Package v1 is the shape of the database in version 1, frozen: no type of
// the program proper is used here, so that this version can be made again,
// and left behind, whatever the program becomes. Never change it; write the
// next version beside it.
//
// Column types are what GORM makes of plain Go types, so that the same tables
// come about on PostgreSQL. An empty link is null. Two links have no foreign
// key: the option a plan agreed on, because options already point at their
// plan, and products, which may be generic ones that are not in the database.
package v1

import "time"

// Meta is the part all records share.
type Meta struct {
	ID        string    `gorm:"primaryKey;size:36"`
	CreatedAt time.Time `gorm:"not null"`
	CreatedBy string
	ChangedAt time.Time `gorm:"not null"`
	ChangedBy string
	DeletedAt *time.Time
}

// Number is a value with the unit it was typed in.
type Number struct {
	Value *float64
	Unit  string `gorm:"size:12"`
}

// Tables lists a value of every table.
func Tables() []any {
	return []any{
		&Practice{}, &Group{}, &Product{},
		&Athlete{}, &Flag{}, &Consent{}, &Membership{},
		&Test{}, &Weighing{}, &Bottle{}, &Refill{}, &FoodEaten{}, &Patch{},
		&Trip{}, &Traveller{}, &Stop{}, &Supply{},
		&Plan{}, &Option{}, &Item{}, &Step{}, &Chance{}, &Review{},
		&Change{}, &RawText{}, &Frozen{}, &Print{},
	}
}
