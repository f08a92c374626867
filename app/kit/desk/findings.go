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
