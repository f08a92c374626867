package findings

import (
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
)

// segments say the rates of the parts of a session that was weighed within.
func (sp speaker) segments(key string, in Input) []string {
	if key != "sweat-rate" {
		return nil
	}
	list := consult.Segments(in.Findings)
	var out []string
	for _, s := range list {
		out = append(out, sp.Say("squad.segment", string(s.From), string(s.To), sp.By.Amount(s.Loss, quantity.Litre), sp.By.Amount(s.Rate, quantity.LitrePerHour)))
	}
	if consult.SegmentsChange(list) {
		out = append(out, sp.Say("squad.segment.changes"))
	}
	return out
}
