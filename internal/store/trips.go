package store

import (
	"context"
	"errors"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// Trips lists all trips, whole, the newest first.
func (s *Store) Trips(ctx context.Context) ([]record.Trip, error) {
	return loadAll[record.Trip](ctx, s, record.KindTrip, newestFirst)
}

// TripsOf lists the trips an athlete is on, whole, the newest first.
func (s *Store) TripsOf(ctx context.Context, athlete record.ID) ([]record.Trip, error) {
	return loadAll[record.Trip](ctx, s, record.KindTrip, func(db *gorm.DB) *gorm.DB {
		return newestFirst(db).Where("id IN (?)", db.Session(&gorm.Session{NewDB: true}).Model(&record.Traveller{}).
			Select("trip_id").Where("athlete_id = ? AND deleted_at IS NULL", athlete))
	})
}

// TravellerNames are the names of all athletes who are on a trip.
func (s *Store) TravellerNames(ctx context.Context) (map[record.ID]string, error) {
	names := map[record.ID]string{}
	err := s.read(ctx, "list travellers", func(tx *gorm.DB) error {
		var lines []struct {
			ID   record.ID
			Name string
		}
		err := tx.Table("athletes").Distinct("athletes.id", "athletes.name").Joins("JOIN travellers ON travellers.athlete_id = athletes.id").
			Where("athletes.deleted_at IS NULL AND travellers.deleted_at IS NULL").Find(&lines).Error
		for _, l := range lines {
			names[l.ID] = l.Name
		}
		return err
	})
	return names, err
}

// newestFirst sorts by when a record was made.
func newestFirst(db *gorm.DB) *gorm.DB { return db.Order("created_at DESC, id DESC") }

// LoadTrip loads a trip with travellers, stops and supplies.
func (s *Store) LoadTrip(ctx context.Context, id record.ID) (record.Trip, error) {
	return loadOne[record.Trip](ctx, s, record.KindTrip, id)
}

// SaveTrip saves a trip and returns it as it is kept.
func (s *Store) SaveTrip(ctx context.Context, t record.Trip, e Edit) (record.Trip, error) {
	return save(ctx, s, record.KindTrip, t, e)
}

// Products lists the practitioner's own products by name.
func (s *Store) Products(ctx context.Context) ([]record.Product, error) {
	return loadAll[record.Product](ctx, s, record.KindProduct, byName)
}

// LoadProduct loads a product.
func (s *Store) LoadProduct(ctx context.Context, id record.ID) (record.Product, error) {
	return loadOne[record.Product](ctx, s, record.KindProduct, id)
}

// SaveProduct saves a product and returns it as it is kept.
func (s *Store) SaveProduct(ctx context.Context, p record.Product, e Edit) (record.Product, error) {
	return save(ctx, s, record.KindProduct, p, e)
}

// Practice loads the practice; CodeNotFound before there is one.
func (s *Store) Practice(ctx context.Context) (record.Practice, error) {
	all, err := loadAll[record.Practice](ctx, s, record.KindPractice, newestFirst)
	if err != nil {
		return record.Practice{}, err
	}
	if len(all) == 0 {
		return record.Practice{}, &Error{Code: CodeNotFound, Doing: "load practice"}
	}
	return all[0], nil
}

// SavePractice saves the practice and returns it as it is kept. There is one:
// a second is refused with CodeConflict.
func (s *Store) SavePractice(ctx context.Context, p record.Practice, e Edit) (record.Practice, error) {
	out := copyOf(p)
	err := s.write(ctx, "save practice", func(w *work) error {
		var others int64
		if err := w.tx.Model(&record.Practice{}).Where("id <> ?", p.ID).Count(&others).Error; err != nil {
			return err
		}
		if others > 0 {
			return &Error{Code: CodeConflict, Doing: "save practice", Err: errors.New("there is one already")}
		}
		return w.save(record.KindPractice, &out, e, withRespect)
	})
	if err != nil {
		return p, err
	}
	return out, nil
}
