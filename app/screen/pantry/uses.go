package pantry

import (
	"context"
	"fmt"
	"slices"

	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// uses counts the records that calculate with a product: without it their figures
// could not be worked out any more.
type uses struct{ tests, plans, trips int }

func (u uses) any() bool { return u.tests+u.plans+u.trips > 0 }

// usesOf looks a product up in all tests, plans and trips.
func usesOf(ctx context.Context, s *store.Store, id record.ID) (uses, error) {
	var u uses
	list, err := s.Athletes(ctx)
	if err != nil {
		return u, fmt.Errorf("look up a product: %w", err)
	}
	for _, a := range list {
		tests, err := s.Tests(ctx, a.ID)
		if err != nil {
			return u, fmt.Errorf("look up a product: %w", err)
		}
		plans, err := s.Plans(ctx, a.ID)
		if err != nil {
			return u, fmt.Errorf("look up a product: %w", err)
		}
		u.count(tests, plans, id)
	}
	trips, err := s.Trips(ctx)
	if err != nil {
		return u, fmt.Errorf("look up a product: %w", err)
	}
	for _, t := range trips {
		if slices.ContainsFunc(t.Supplies, func(s record.Supply) bool { return s.ProductID == id }) {
			u.trips++
		}
	}
	return u, nil
}

// count adds the tests and plans of one athlete.
func (u *uses) count(tests []record.Test, plans []record.Plan, id record.ID) {
	for _, t := range tests {
		if inTest(t, id) {
			u.tests++
		}
	}
	for _, p := range plans {
		if inPlan(p, id) {
			u.plans++
		}
	}
}

func inTest(t record.Test, id record.ID) bool {
	for _, b := range t.Bottles {
		if b.ProductID == id {
			return true
		}
	}
	for _, f := range t.Foods {
		if f.ProductID == id {
			return true
		}
	}
	return false
}

func inPlan(p record.Plan, id record.ID) bool {
	for _, o := range p.Options {
		for _, it := range o.Items {
			if it.ProductID == id {
				return true
			}
		}
	}
	return false
}
