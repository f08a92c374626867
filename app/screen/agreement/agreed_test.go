package agreement

import (
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/internal/record"
)

func TestStartAt(t *testing.T) {
	for option, want := range map[record.ID][]record.StepState{
		"a": {record.StepNow, record.StepAhead, record.StepAhead},
		"b": {record.StepDone, record.StepNow, record.StepAhead},
		"x": {record.StepNow, record.StepAhead, record.StepAhead},
	} {
		p := apptest.Steps(record.StepAhead, record.StepNow, record.StepAhead)
		startAt(&p, option)
		for i := range want {
			if p.Steps[i].State != want[i] {
				t.Errorf("agreed on %s: step %d is %s", option, i+1, p.Steps[i].State)
			}
		}
	}
}
