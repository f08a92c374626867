package plan

import "ebbwell/internal/evidence"

// SodiumMatters reports whether sodium is worth planning in a session: it is long, or
// the sweat is salty and there is much of it, or the habit holds added salt. The
// thresholds are those of evidence "sodium.matters.after", "sodium.matters.rate" and
// "sodium.hold.concentration".
func (p *Planner) SodiumMatters(l Length) bool {
	b := p.basis
	salty := b.Sodium.Known && b.Sodium.Value >= evidence.HoldFromSodium && b.SweatRate.Value > evidence.SodiumMattersRate
	return p.session.Minutes[l] > evidence.SodiumMattersAfter || salty || p.habit[Salt] > 0
}
