package store

import (
	"context"
	"testing"

	"ebbwell/internal/record"
)

// The number that tells whether something was written is another after each write,
// and reading leaves it.
func TestWritten(t *testing.T) {
	s := open(t, t.TempDir(), newClock())
	was := s.Written()
	if was == 0 {
		t.Error("an open store counts nothing")
	}
	ctx := context.Background()
	if _, err := s.Athletes(ctx); err != nil {
		t.Fatal(err)
	}
	if s.Written() != was {
		t.Error("reading counts as writing")
	}
	if _, err := s.SaveAthlete(ctx, record.Athlete{Name: "Nessa Wrayling"}, Edit{}); err != nil {
		t.Fatal(err)
	}
	if s.Written() == was {
		t.Error("writing is not counted")
	}
}
