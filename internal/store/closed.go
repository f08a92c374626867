package store

import (
	"context"
	"reflect"
	"slices"
	"strings"

	"ebbwell/internal/record"
)

// closedTo returns an error with CodeClosed when a kept record is closed to
// one of the changes.
func closedTo(kind record.Kind, kept, wanted row, steps []step) error {
	open := openFields(kind, kept, wanted)
	for _, s := range steps {
		for _, c := range s.fields {
			if !open(c.path) {
				return &Error{Code: CodeClosed, Doing: "compare with what is kept", Field: c.path}
			}
		}
	}
	return nil
}

// openFields says which fields of a kept record may change. What is set by a
// later event stays open: the laboratory's values of a waiting test, and what was
// asked and done about a red flag of any; reviews,
// the state and the dates of steps and the day of the next review of an agreed
// plan, that its test was corrected, and that it is replaced by another.
func openFields(kind record.Kind, kept, wanted row) func(path string) bool {
	none := func(string) bool { return false }
	all := func(string) bool { return true }
	switch kind {
	case record.KindTest:
		switch stateOf(kept) {
		case string(record.TestClosed):
			return safetyField
		case string(record.TestWaiting):
			return func(path string) bool {
				return laboratoryField(path) || safetyField(path) || stateOf(wanted) == string(record.TestClosed) && path == "state" ||
					path == "closedAt" || path == "closedBy"
			}
		}
	case record.KindPlan:
		switch stateOf(kept) {
		case string(record.PlanReplaced):
			return none
		case string(record.PlanAgreed):
			return func(path string) bool {
				return followUpField(path) || stateOf(wanted) == string(record.PlanReplaced) && path == "state"
			}
		}
	}
	return all
}

// stateOf reads the state of a test or a plan.
func stateOf(r row) string { return r.value.FieldByName("State").String() }

// laboratoryField reports whether a value comes from the laboratory.
func laboratoryField(path string) bool {
	parts := strings.Split(path, ".")
	return len(parts) == 3 && parts[0] == "patches" &&
		slices.Contains([]string{"sodium", "potassium", "method", "condition", "atLaboratory"}, parts[2])
}

// safetyField reports whether a line belongs to the record of a red flag, which goes
// on until somebody was told.
func safetyField(path string) bool { return strings.HasPrefix(path, "safety.") }

// followUpField reports whether a value belongs to the weeks after the agreement.
func followUpField(path string) bool {
	parts := strings.Split(path, ".")
	return parts[0] == "reviews" || parts[0] == "corrected" || path == "agreement.review" ||
		len(parts) == 3 && parts[0] == "steps" && slices.Contains([]string{"state", "from"}, parts[2])
}

// reopen loads a closed record, lets f open it, and saves it with the reason.
// A record that was never closed comes back as it is.
func reopen[T any](ctx context.Context, s *Store, ref record.Ref, why string, f func(*T) bool) (T, error) {
	var one T
	doing := "reopen " + string(ref.Kind)
	if strings.TrimSpace(why) == "" {
		return one, &Error{Code: CodeNoReason, Doing: doing, Ref: ref}
	}
	err := s.write(ctx, doing, func(w *work) error {
		if err := pick(w.tx, w.shapes[ref.Kind], ref.ID, &one); err != nil {
			return err
		}
		if !f(&one) {
			return nil
		}
		return w.save(ref.Kind, &one, Edit{Why: why}, reopening)
	})
	if err != nil {
		reflect.ValueOf(&one).Elem().SetZero()
	}
	return one, about(err, ref)
}
