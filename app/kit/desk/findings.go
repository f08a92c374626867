package desk

import (
	"context"
	"fmt"

	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// Findings works a test of an athlete out as every screen shows it: an open
// sheet as it stands, a closed one as it was closed (see
// [consult.FindAsClosed]).
func (d *Desk) Findings(ctx context.Context, t record.Test, a record.Athlete) (consult.Findings, error) {
	ref := record.Ref{Kind: record.KindTest, ID: t.ID}
	raw, err := d.Store.RawOf(ctx, ref)
	if err != nil {
		return consult.Findings{}, fmt.Errorf("work a test out: %w", err)
	}
	kept, err := d.Store.FrozenOf(ctx, ref)
	if err != nil {
		return consult.Findings{}, fmt.Errorf("work a test out: %w", err)
	}
	return consult.FindAsClosed(t, a, raw, kept, d.Calculate()), nil
}

// AllFindings works all tests of an athlete out, the newest first. What was read of
// closed tests is kept for as long as one stays with the athlete: the figures of a
// closed test do not change.
func (d *Desk) AllFindings(ctx context.Context, a record.Athlete) ([]consult.Findings, error) {
	past := d.past.of(a, d.Practice().Settings.Method())
	sheets, err := d.Store.SheetsBut(ctx, a.ID, past.known)
	if err != nil {
		return nil, fmt.Errorf("work the tests out: %w", err)
	}
	with, all := d.Calculate(), make([]consult.Findings, len(sheets))
	for i, s := range sheets {
		if s.Unread {
			all[i] = past.found[s.Test.ID]
			continue
		}
		all[i] = consult.FindAsClosed(s.Test, a, s.Raw, s.Kept, with)
		past.keep(s, all[i])
	}
	d.past = past
	return all, nil
}

// OpenPlan opens a plan of an athlete as every screen shows it: a draft as it
// stands, an agreed one as it was agreed (see [consult.OpenPlan]).
func (d *Desk) OpenPlan(ctx context.Context, p record.Plan, a record.Athlete, tests []consult.Findings) (consult.Case, error) {
	kept, err := d.KeptOfPlan(ctx, p.ID)
	if err != nil {
		return consult.Case{}, err
	}
	return consult.OpenPlan(p, a, tests, kept, d.Now(), d.Calculate())
}

// KeptOfPlan lists the copies kept of a plan, newest first.
func (d *Desk) KeptOfPlan(ctx context.Context, plan record.ID) ([]record.Frozen, error) {
	kept, err := d.Store.FrozenOf(ctx, record.Ref{Kind: record.KindPlan, ID: plan})
	if err != nil {
		return nil, fmt.Errorf("open a plan as it was agreed: %w", err)
	}
	return kept, nil
}
