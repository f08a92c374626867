package apptest

import (
	"context"
	"testing"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// Save keeps an athlete.
func Save(t testing.TB, d *desk.Desk, a record.Athlete) record.Athlete {
	t.Helper()
	kept, err := d.Store.SaveAthlete(context.Background(), a, store.Edit{})
	if err != nil {
		t.Fatal(err)
	}
	return kept
}
