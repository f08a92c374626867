package part

import (
	"context"
	"fmt"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// File is what of an athlete's records the screen works with.
type File struct {
	Athlete record.Athlete
	// Tests are newest first, with what each says.
	Tests []consult.Findings
	// Plans are newest first, as they were loaded.
	Plans []record.Plan
}

// LoadFile reads an athlete's records.
func LoadFile(d *desk.Desk, athlete record.ID) (File, error) {
	ctx := context.Background()
	var f File
	var err error
	if f.Athlete, err = d.Store.LoadAthlete(ctx, athlete); err != nil {
		return f, fmt.Errorf("open the plan: %w", err)
	}
	if f.Tests, err = d.AllFindings(ctx, f.Athlete); err != nil {
		return f, fmt.Errorf("open the plan: %w", err)
	}
	if f.Plans, err = d.Store.Plans(ctx, athlete); err != nil {
		return f, fmt.Errorf("open the plan: %w", err)
	}
	return f, nil
}

// Usable is the newest test with a sweat rate that has a range; ok is false when
// there is none.
func (f File) Usable() (consult.Findings, bool) {
	for _, t := range f.Tests {
		if rate := t.Sweat.Fluid.Rate; t.Refused == nil && rate.Known && rate.Ranged {
			return t, true
		}
	}
	return consult.Findings{}, false
}

// Test is the test with an id.
func (f File) Test(id record.ID) (consult.Findings, bool) {
	for _, t := range f.Tests {
		if t.Test.ID == id {
			return t, true
		}
	}
	return consult.Findings{}, false
}

// Plan is the plan with an id; the athlete's own for none.
func (f File) Plan(id record.ID) (record.Plan, bool) {
	if id == "" {
		return consult.Own(f.Plans)
	}
	for _, p := range f.Plans {
		if p.ID == id {
			return p, true
		}
	}
	return record.Plan{}, false
}

// Open makes the case of a plan. An agreed one is shown as it was agreed: with all
// that was kept beside it.
func (f File) Open(p record.Plan, d *desk.Desk) (consult.Case, error) {
	return d.OpenPlan(context.Background(), p, f.Athlete, f.Tests)
}

// Lenient is open for a plan that is being typed into: where its session cannot
// be calculated with, the case is made with the lengths left out that are wrong,
// and wrong says which.
func (f File) Lenient(p record.Plan, d *desk.Desk) (c consult.Case, wrong, err error) {
	if c, err = f.Open(p, d); err == nil {
		return c, nil, nil
	}
	mended := p.Clone()
	mended.Target.Short, mended.Target.Long = record.Number{}, record.Number{}
	mended.Target.DeficitAim = record.Number{}
	for range 2 {
		if c, wrong = f.Open(mended, d); wrong == nil {
			c.Plan = p
			return c, err, nil
		}
		if t, ok := f.Test(p.Basis.TestID); ok {
			mended.Target.Minutes = record.Num(t.Minutes, quantity.Minute)
		}
	}
	return c, nil, err
}

// Gone is the error for a plan that is not there.
func Gone(id record.ID) error {
	return &store.Error{Code: store.CodeNotFound, Doing: "open a plan", Ref: record.Ref{Kind: record.KindPlan, ID: id}}
}
