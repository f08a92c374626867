package store

import (
	"context"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// Uses counts the records that name a product.
type Uses struct{ Tests, Plans, Trips int }

// UsesOf counts the tests, plans and trips that name a product; what was
// deleted does not count.
func (s *Store) UsesOf(ctx context.Context, product record.ID) (Uses, error) {
	var u Uses
	err := s.read(ctx, "count the uses of a product", func(tx *gorm.DB) error {
		for into, question := range map[*int]string{
			&u.Tests: `SELECT COUNT(*) FROM tests WHERE deleted_at IS NULL AND athlete_id IN (SELECT id FROM athletes WHERE deleted_at IS NULL) AND id IN
				(SELECT test_id FROM bottles WHERE product_id = @product AND deleted_at IS NULL
				UNION SELECT test_id FROM foods_eaten WHERE product_id = @product AND deleted_at IS NULL)`,
			&u.Plans: `SELECT COUNT(*) FROM plans WHERE deleted_at IS NULL AND athlete_id IN (SELECT id FROM athletes WHERE deleted_at IS NULL) AND id IN
				(SELECT o.plan_id FROM options o JOIN items i ON i.option_id = o.id
				WHERE i.product_id = @product AND i.deleted_at IS NULL AND o.deleted_at IS NULL)`,
			&u.Trips: `SELECT COUNT(*) FROM trips WHERE deleted_at IS NULL AND id IN
				(SELECT trip_id FROM supplies WHERE product_id = @product AND deleted_at IS NULL)`,
		} {
			if err := tx.Raw(question, map[string]any{"product": string(product)}).Scan(into).Error; err != nil {
				return err
			}
		}
		return nil
	})
	return u, err
}

// latestTests is how many of the newest tests say what is used lately: our choice, a
// few months of a practice.
const latestTests = 200

// UsedLately lists the products of the newest tests, that of the newest first and of
// one day that of most of them first; what was deleted does not count.
func (s *Store) UsedLately(ctx context.Context) ([]record.ID, error) {
	var list []record.ID
	err := s.read(ctx, "list what is used lately", func(tx *gorm.DB) error {
		return tx.Raw(`WITH latest AS (SELECT id, date FROM tests WHERE deleted_at IS NULL ORDER BY date DESC, id LIMIT ?)
			SELECT product_id FROM (
				SELECT b.product_id, t.date FROM bottles b JOIN latest t ON t.id = b.test_id WHERE b.deleted_at IS NULL
				UNION ALL SELECT f.product_id, t.date FROM foods_eaten f JOIN latest t ON t.id = f.test_id WHERE f.deleted_at IS NULL)
			WHERE product_id <> '' GROUP BY product_id ORDER BY MAX(date) DESC, COUNT(*) DESC, product_id`, latestTests).Scan(&list).Error
	})
	return list, err
}
