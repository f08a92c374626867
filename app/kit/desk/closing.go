package desk

import (
	"context"
	"fmt"

	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// CloseSheet closes an open sheet with what it was calculated from: for good, or until
// the laboratory's values come. texts are what is kept beside it.
func (d *Desk) CloseSheet(ctx context.Context, t record.Test, a record.Athlete, texts []record.RawText, with consult.Setup) (record.Test, error) {
	found := consult.Find(t, a, texts, with)
	t.State = record.TestClosed
	if found.Waits() {
		t.State = record.TestWaiting
	}
	found.Test.State = t.State
	inputs, results, err := consult.FreezeTest(found, a, texts, with)
	if err != nil {
		return t, fmt.Errorf("close a sheet: %w", err)
	}
	closed, err := d.Store.CloseTest(ctx, t, store.Freezing{Inputs: inputs, Results: results, Evidence: evidence.Version, Line: consult.LineOf(found)}, store.Edit{})
	if err != nil {
		return t, fmt.Errorf("close a sheet: %w", err)
	}
	return closed, nil
}
