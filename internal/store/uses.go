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
