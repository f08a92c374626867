package store

import (
	"context"
	"slices"
	"strings"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// Plans lists the plans of an athlete, whole, the newest first.
func (s *Store) Plans(ctx context.Context, athlete record.ID) ([]record.Plan, error) {
	return loadAll[record.Plan](ctx, s, record.KindPlan, func(db *gorm.DB) *gorm.DB {
		return newestFirst(db).Where("athlete_id = ?", athlete)
	})
}

// LoadPlan loads a plan with options, steps, chances and reviews.
func (s *Store) LoadPlan(ctx context.Context, id record.ID) (record.Plan, error) {
	return loadOne[record.Plan](ctx, s, record.KindPlan, id)
}

// SavePlan saves a plan and returns it as it is kept. An agreed one is refused
// with CodeClosed but for reviews, the state and date of steps, the day of the
// next review, and becoming replaced.
func (s *Store) SavePlan(ctx context.Context, p record.Plan, e Edit) (record.Plan, error) {
	return save(ctx, s, record.KindPlan, p, e)
}

// AgreePlan saves a plan as agreed, freezes it, and marks the plans that it takes
// the place of as replaced, in one transaction.
func (s *Store) AgreePlan(ctx context.Context, p record.Plan, f Freezing, e Edit, replaces ...record.ID) (record.Plan, error) {
	out := copyOf(p)
	err := s.write(ctx, "agree plan", func(w *work) error {
		w.peopleChange = false
		out.State = record.PlanAgreed
		if out.Agreement.AgreedAt == nil {
			now := w.now
			out.Agreement.AgreedAt, out.Agreement.AgreedBy = &now, w.by
		}
		for _, id := range replaces {
			if err := w.replacePlan(id, e); err != nil {
				return err
			}
		}
		return w.saveFrozen(record.KindPlan, &out, f, e)
	})
	if err != nil {
		return p, err
	}
	return out, nil
}

// replacePlan marks a plan as replaced by another.
func (w *work) replacePlan(id record.ID, e Edit) error {
	var old record.Plan
	if err := pick(w.tx, w.shapes[record.KindPlan], id, &old); err != nil {
		return about(err, record.Ref{Kind: record.KindPlan, ID: id})
	}
	old.State = record.PlanReplaced
	return w.save(record.KindPlan, &old, e, withRespect)
}

// ReopenPlan makes an agreed or replaced plan a draft again; why is required
// (CodeNoReason). Its frozen copies stay.
func (s *Store) ReopenPlan(ctx context.Context, id record.ID, why string) (record.Plan, error) {
	return reopen(ctx, s, record.Ref{Kind: record.KindPlan, ID: id}, why, func(p *record.Plan) bool {
		if p.State == record.PlanDraft {
			return false
		}
		p.State, p.Agreement.AgreedAt, p.Agreement.AgreedBy = record.PlanDraft, nil, ""
		return true
	})
}

// PlansBasedOn lists the draft and agreed plans that are based on a test, alone
// or in a pool, so that a late value can say which plans it changes.
func (s *Store) PlansBasedOn(ctx context.Context, test record.ID) ([]record.Plan, error) {
	found, err := loadAll[record.Plan](ctx, s, record.KindPlan, func(db *gorm.DB) *gorm.DB {
		return newestFirst(db).Where("state <> ?", record.PlanReplaced).
			Where("basis_test_id = ? OR basis_pool_ids LIKE ?", test, "%"+string(test)+"%")
	})
	return slices.DeleteFunc(found, func(p record.Plan) bool {
		return p.Basis.TestID != test && !slices.Contains(strings.Fields(p.Basis.PoolIDs), string(test))
	}), err
}

// Reviews lists the reviews of a plan in their order.
func (s *Store) Reviews(ctx context.Context, plan record.ID) ([]record.Review, error) {
	p, err := s.LoadPlan(ctx, plan)
	return p.Reviews, err
}

// SaveReview adds a review to the plan it names, or changes the one with its
// id, and returns the plan as it is kept.
func (s *Store) SaveReview(ctx context.Context, r record.Review, e Edit) (record.Plan, error) {
	ref := record.Ref{Kind: record.KindPlan, ID: r.PlanID}
	var plan record.Plan
	err := s.write(ctx, "save review", func(w *work) error {
		w.peopleChange = false
		if err := pick(w.tx, w.shapes[record.KindPlan], r.PlanID, &plan); err != nil {
			return err
		}
		at := slices.IndexFunc(plan.Reviews, func(old record.Review) bool { return r.ID != "" && old.ID == r.ID })
		if at >= 0 {
			plan.Reviews[at] = r
		} else {
			if n := len(plan.Reviews); r.Order == 0 && n > 0 {
				r.Order = plan.Reviews[n-1].Order + 1
			}
			plan.Reviews = append(plan.Reviews, r)
		}
		return w.save(record.KindPlan, &plan, e, withRespect)
	})
	if err != nil {
		return record.Plan{}, about(err, ref)
	}
	return plan, nil
}
