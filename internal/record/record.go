// Package record is what Ebbwell keeps: athletes, test sheets, plans, trips,
// products and the practice. The types here are plain: what a person entered,
// in the unit it is computed in, with the unit it was typed in beside it.
//
// Every record carries a [Meta]: an id made here, who made and who changed it
// and when, and when it was deleted, so that a delete can be undone. What is
// computed from a record is never stored in it; a closed test and an agreed
// plan are frozen beside it as [Frozen].
//
// The struct tags name the columns; everything else about the database is the
// store's business.
package record

import (
	"fmt"
	"time"

	"github.com/google/uuid"

	"ebbwell/internal/quantity"
)

// ID names a record for good; it is made here, never by the database.
type ID string

// NewID makes a new id: a UUID of version 7, so that ids sort by age.
func NewID() ID { return ID(uuid.Must(uuid.NewV7()).String()) }

// Meta is the part all records share. Times are UTC.
type Meta struct {
	ID        ID `gorm:"primaryKey;size:36"`
	CreatedAt time.Time
	CreatedBy string
	ChangedAt time.Time
	ChangedBy string
	DeletedAt *time.Time `gorm:"index"`
}

// Deleted reports whether the record was deleted and not brought back.
func (m Meta) Deleted() bool { return m.DeletedAt != nil }

// Number is a number a person entered. Value is in the unit the field is
// computed in, nil while nothing (or nothing readable) was typed; Unit is the
// unit it was typed in. Value is never changed in place.
type Number struct {
	Value *float64
	Unit  quantity.Unit `gorm:"size:12"`
}

// Num makes a Number.
func Num(x float64, u quantity.Unit) Number { return Number{Value: &x, Unit: u} }

// Known reports whether there is a value.
func (n Number) Known() bool { return n.Value != nil }

// Or returns the value, or other when there is none.
func (n Number) Or(other float64) float64 {
	if n.Value == nil {
		return other
	}
	return *n.Value
}

// Same reports whether two Numbers hold the same value in the same unit.
func (n Number) Same(m Number) bool {
	if n.Known() != m.Known() || n.Unit != m.Unit {
		return false
	}
	return !n.Known() || *n.Value == *m.Value
}

// Date is a day of the calendar, "2026-05-14"; empty when not given.
type Date string

// DateOf returns the day of t.
func DateOf(t time.Time) Date { return Date(t.Format(time.DateOnly)) }

// Time returns midnight UTC of the day; ok is false when empty or not a day.
func (d Date) Time() (t time.Time, ok bool) {
	t, err := time.Parse(time.DateOnly, string(d))
	return t, err == nil
}

// AddDays returns the day n days later; an empty date stays empty.
func (d Date) AddDays(n int) Date {
	t, ok := d.Time()
	if !ok {
		return ""
	}
	return DateOf(t.AddDate(0, 0, n))
}

// Clock is a time of day on the wall where the session was, "14:05"; empty
// when not given.
type Clock string

// Minutes returns the minutes since midnight; ok is false when empty or not a time.
func (c Clock) Minutes() (minutes float64, ok bool) {
	t, err := time.Parse("15:04", string(c))
	if err != nil {
		return 0, false
	}
	return float64(t.Hour()*60 + t.Minute()), true
}

// ClockAt returns the time of day a number of minutes after midnight, which
// may lie on another day.
func ClockAt(minutes float64) Clock {
	m := (int(minutes)%1440 + 1440) % 1440
	return Clock(fmt.Sprintf("%02d:%02d", m/60, m%60))
}

// Kind names a sort of record in history, raw texts and frozen copies.
type Kind string

// The sorts of record.
const (
	KindPractice Kind = "practice"
	KindAthlete  Kind = "athlete"
	KindGroup    Kind = "group"
	KindTest     Kind = "test"
	KindSession  Kind = "session"
	KindPlan     Kind = "plan"
	KindTrip     Kind = "trip"
	KindProduct  Kind = "product"
)

// Ref points at one record.
type Ref struct {
	Kind Kind
	ID   ID
}
