package planner

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// A plan foresees no urine; where the test had some the habit says so in one sentence, and
// where it had none nothing is said.
func TestHabitTellsOfUrine(t *testing.T) {
	for _, grams := range []float64{0, 150} {
		d, went := apptest.Desk(t)
		a, test := hockey(t, d)
		if grams > 0 {
			open, err := d.Store.ReopenTest(context.Background(), test.ID, "urine was written elsewhere")
			if err != nil {
				t.Fatal(err)
			}
			open.Loss = record.Loss{Urine: record.Num(grams, quantity.Gram), NoStool: true}
			if _, err := d.Store.SaveTest(context.Background(), open, store.Edit{}); err != nil {
				t.Fatal(err)
			}
		}
		b := openAt(t, d, went, desk.Place{Screen: desk.Plan, Athlete: a.ID, New: true, Part: string(test.ID)})
		b.option(record.OptionHabit)
		said := strings.Join(strings.Fields(strings.Join(apptest.Texts(b.w.Content()), " ")), " ")
		if got := strings.Count(said, "The test had 0.15 L of urine or stool; a plan assumes none."); got != int(grams/150) {
			t.Errorf("%g g of urine: said %d times: %s", grams, got, said)
		}
	}
}
