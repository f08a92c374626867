package store

import (
	"context"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// LoadAthlete loads an athlete with flags, consents and memberships.
func (s *Store) LoadAthlete(ctx context.Context, id record.ID) (record.Athlete, error) {
	var a record.Athlete
	err := s.read(ctx, "load athlete", func(tx *gorm.DB) error {
		if err := pick(tx, s.shapes[record.KindAthlete], id, &a); err != nil {
			return err
		}
		return addFirstMass(tx, &a)
	})
	return a, about(err, record.Ref{Kind: record.KindAthlete, ID: id})
}

// addFirstMass finds the first mass that was weighed of one whose usual mass is not
// known.
func addFirstMass(tx *gorm.DB, a *record.Athlete) error {
	if a.UsualMass.Known() {
		return nil
	}
	return each(tx, []any{&a.FirstMass}, func() {}, `SELECT w.mass_value FROM weighings w JOIN tests t ON t.id = w.test_id
		WHERE t.athlete_id = ? AND w.moment = ? AND w.mass_value IS NOT NULL AND w.deleted_at IS NULL AND t.deleted_at IS NULL
		ORDER BY w.created_at, w.id LIMIT 1`, a.ID, record.Before)
}

// SaveAthlete saves an athlete and returns it as it is kept.
func (s *Store) SaveAthlete(ctx context.Context, a record.Athlete, e Edit) (record.Athlete, error) {
	return save(ctx, s, record.KindAthlete, a, e)
}

// Groups lists the groups by name.
func (s *Store) Groups(ctx context.Context) ([]record.Group, error) {
	return loadAll[record.Group](ctx, s, record.KindGroup, byName)
}

// LoadGroup loads a group; its members are the athletes' memberships.
func (s *Store) LoadGroup(ctx context.Context, id record.ID) (record.Group, error) {
	return loadOne[record.Group](ctx, s, record.KindGroup, id)
}

// SaveGroup saves a group and returns it as it is kept.
func (s *Store) SaveGroup(ctx context.Context, g record.Group, e Edit) (record.Group, error) {
	return save(ctx, s, record.KindGroup, g, e)
}

// byName sorts records that have a name.
func byName(db *gorm.DB) *gorm.DB { return db.Order("name, id") }
