package findings

import (
	"ebbwell/internal/quantity"
	"ebbwell/internal/squad"
)

// segments say the rates of the parts of a session that was weighed within.
func (sp speaker) segments(key string, in Input) []string {
	if key != "sweat-rate" {
		return nil
	}
	list := squad.Segments(in.Findings)
	var out []string
	for _, s := range list {
		out = append(out, sp.Say("squad.segment", string(s.From), string(s.To), sp.By.Amount(s.Loss, quantity.Litre), sp.By.Amount(s.Rate, quantity.LitrePerHour)))
	}
	if squad.Changes(list) {
		out = append(out, sp.Say("squad.segment.changes"))
	}
	return out
}
