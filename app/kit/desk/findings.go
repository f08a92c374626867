package desk

import (
	"context"
	"fmt"

	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
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
	r := d.reading(a)
	all, err := r.all(ctx)
	if err != nil {
		return nil, err
	}
	d.past = r.past
	return all, nil
}

// AllFindingsBeside is [Desk.AllFindings] beside the window's thread, and then, with what
// it gives; on the window's thread done is called, once it was stopped with an error.
func (d *Desk) AllFindingsBeside(a record.Athlete, then func([]consult.Findings) error, done func([]consult.Findings, error)) (stop func()) {
	r := d.reading(a)
	r.past = r.past.copied()
	var all []consult.Findings
	return d.Beside.Run(func(ctx context.Context) (err error) {
		if all, err = r.all(ctx); err != nil {
			return err
		}
		return then(all)
	}, func(err error) {
		if err == nil {
			d.past = r.past
		}
		done(all, err)
	})
}

// SomeFindings works some tests of an athlete out, the newest first.
func (d *Desk) SomeFindings(ctx context.Context, a record.Athlete, tests []record.ID) ([]consult.Findings, error) {
	sheets, err := d.Store.Sheets(ctx, tests)
	if err != nil {
		return nil, fmt.Errorf("work some tests out: %w", err)
	}
	all := make([]consult.Findings, len(sheets))
	for i, s := range sheets {
		all[i] = consult.FindAsClosed(s.Test, a, s.Raw, s.Kept, d.Calculate())
	}
	return all, nil
}

// Unread is about how many tests of an athlete [Desk.AllFindings] would have to read.
func (d *Desk) Unread(ctx context.Context, a record.Athlete) (int, error) {
	n, err := d.Store.CountTests(ctx, a.ID)
	if err != nil {
		return 0, fmt.Errorf("count the tests: %w", err)
	}
	return n - len(d.past.of(a, d.Practice().Settings.Method()).found), nil
}

// reading is what reads all tests of an athlete: nothing in it is the desk's own but
// what does not change.
type reading struct {
	store   *store.Store
	athlete record.Athlete
	with    consult.Setup
	past    past
}

// reading readies the reading of an athlete's tests.
func (d *Desk) reading(a record.Athlete) reading {
	with := d.Calculate()
	with.Start = nil // asks the desk; a test by itself does not
	return reading{d.Store, a, with, d.past.of(a, d.Practice().Settings.Method())}
}

// all works the tests out, the newest first.
func (r reading) all(ctx context.Context) ([]consult.Findings, error) {
	sheets, err := r.store.SheetsBut(ctx, r.athlete.ID, r.past.known)
	if err != nil {
		return nil, fmt.Errorf("work the tests out: %w", err)
	}
	all := make([]consult.Findings, len(sheets))
	for i := range sheets {
		s := &sheets[i]
		if s.Unread {
			all[i] = *r.past.found[s.Test.ID]
			continue
		}
		if err := ctx.Err(); err != nil {
			return nil, fmt.Errorf("work the tests out: %w", err)
		}
		all[i] = consult.FindAsClosed(s.Test, r.athlete, s.Raw, s.Kept, r.with)
		r.past.keep(s, &all[i])
	}
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
