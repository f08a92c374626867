package apptest

import "ebbwell/internal/record"

// Steps is a plan of steps in these states, an option to each; their ids are
// "a", "b", and so on.
func Steps(states ...record.StepState) record.Plan {
	var p record.Plan
	for i, s := range states {
		id := record.ID(rune('a' + i))
		p.Steps = append(p.Steps, record.Step{Meta: record.Meta{ID: id}, OptionID: id, State: s})
		p.Options = append(p.Options, record.Option{Meta: record.Meta{ID: id}, Kind: record.OptionStep})
	}
	return p
}
