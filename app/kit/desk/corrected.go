package desk

import (
	"context"
	"fmt"

	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// NoteCorrected writes into the agreed plans that are based on a test whether the present
// records would give another plan, with the sweat loss as agreed and now, so that a list
// of athletes can say so without opening the plans. It is called when a test is closed,
// or opened for correction.
func (d *Desk) NoteCorrected(ctx context.Context, test record.Test) error {
	plans, err := d.Store.PlansBasedOn(ctx, test.ID)
	if err != nil {
		return fmt.Errorf("look for plans behind a correction: %w", err)
	}
	var tests []consult.Findings
	var a record.Athlete
	for _, p := range plans {
		if p.State != record.PlanAgreed {
			continue
		}
		if tests == nil {
			if a, err = d.Store.LoadAthlete(ctx, test.AthleteID); err == nil {
				tests, err = d.AllFindings(ctx, a)
			}
			if err != nil {
				return fmt.Errorf("look for plans behind a correction: %w", err)
			}
		}
		if err := d.noteIn(ctx, p, a, tests); err != nil {
			return err
		}
	}
	return nil
}

// noteIn writes into one plan what a correction changed.
func (d *Desk) noteIn(ctx context.Context, p record.Plan, a record.Athlete, tests []consult.Findings) error {
	c, err := d.OpenPlan(ctx, p, a, tests)
	if err != nil {
		return fmt.Errorf("open a plan behind a correction: %w", err)
	}
	was := p.Corrected
	p.Corrected = record.TestCorrected{}
	if c.Since.Changed {
		now := d.Now().UTC()
		p.Corrected.At = &now
		if was.At != nil {
			p.Corrected.At = was.At
		}
		if c.Since.Before.Known && c.Since.After.Known {
			p.Corrected.Before = record.Num(c.Since.Before.Value, quantity.Litre)
			p.Corrected.After = record.Num(c.Since.After.Value, quantity.Litre)
		}
	}
	if (was.At == nil) == (p.Corrected.At == nil) && was.Before.Or(0) == p.Corrected.Before.Or(0) && was.After.Or(0) == p.Corrected.After.Or(0) {
		return nil
	}
	if _, err := d.Store.SavePlan(ctx, p, store.Edit{}); err != nil {
		return fmt.Errorf("write a correction into a plan: %w", err)
	}
	return nil
}
