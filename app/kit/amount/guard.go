package amount

import "ebbwell/internal/care"

// Guard is the sentence of a guard of a plan; empty where it has none to say.
func (sp Speaker) Guard(said care.GuardSaid, ok bool) string {
	if !ok {
		return ""
	}
	var args []any
	for _, f := range said.Figures {
		switch {
		case f.Unit == "":
			args = append(args, f.Name)
		case f.Set:
			args = append(args, sp.By.Limit(f.Value, f.Unit))
		case f.Bare:
			args = append(args, sp.By.Number(f.Value, f.Unit))
		default:
			args = append(args, sp.By.Amount(f.Value, f.Unit))
		}
	}
	return sp.Say(said.Key, args...)
}
