package bundle

import (
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"strings"

	"ebbwell/internal/record"
)

// ErrGone means: what was to be decided is there no more.
var ErrGone = errors.New("what was to be decided is there no more")

// Apply takes the other side of a decision: record points at the athlete or the plan
// it is about. Nothing is kept by it.
func Apply(root any, d Decision) error {
	v := reflect.ValueOf(root).Elem()
	if d.Act == ActWhole {
		return applyWhole(root, d)
	}
	parts := strings.Split(d.Path, ".")
	if l := listNamed(v, parts[0]); l.path != "" && len(parts) > 1 {
		return applyRow(l, parts, d)
	}
	return set(v, d.Path, d)
}

// set sets one field of a row. Whether mass is hidden was asked by that.
func set(v reflect.Value, name string, d Decision) error {
	if err := json.Unmarshal(d.Data, fieldAt(v, name).Addr().Interface()); err != nil {
		return fmt.Errorf("take what was decided: %w", err)
	}
	if a, ok := v.Addr().Interface().(*record.Athlete); ok && name == "massHidden" {
		a.MassHiddenSettled = true
	}
	return nil
}

// applyRow adds, removes or changes a row of a list.
func applyRow(l list, parts []string, d Decision) error {
	id := record.ID(parts[1])
	row, there := rowsByID(l.rows)[id]
	switch d.Act {
	case ActAdd:
		if there {
			return nil
		}
		fresh := reflect.New(l.rows.Type().Elem())
		if err := json.Unmarshal(d.Data, fresh.Interface()); err != nil {
			return fmt.Errorf("take what was decided: %w", err)
		}
		l.rows.Set(reflect.Append(l.rows, fresh.Elem()))
		return nil
	case ActRemove:
		kept := reflect.MakeSlice(l.rows.Type(), 0, l.rows.Len())
		for i := range l.rows.Len() {
			if metaOf(l.rows.Index(i)).ID != id {
				kept = reflect.Append(kept, l.rows.Index(i))
			}
		}
		l.rows.Set(kept)
		return nil
	case ActSet, ActWhole:
	}
	if !there {
		return ErrGone
	}
	return set(row, strings.Join(parts[2:], "."), d)
}

// applyWhole makes a plan here what it is there, as a draft: it is agreed here, by the
// guards of this program.
func applyWhole(root any, d Decision) error {
	plan, ok := root.(*record.Plan)
	if !ok {
		return ErrGone
	}
	var theirs record.Plan
	if err := json.Unmarshal(d.Data, &theirs); err != nil {
		return fmt.Errorf("take what was decided: %w", err)
	}
	(&merging{}).takePlan(plan, theirs)
	plan.State, plan.Agreement.AgreedAt, plan.Agreement.AgreedBy = record.PlanDraft, nil, ""
	return nil
}
