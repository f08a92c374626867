package plan

// misses returns the conditions that a mix does not meet, guards included.
func (p *Planner) misses(l Length, mix Mix) Condition {
	r := p.rowsOf(l)
	var c Condition
	for i := range r.all() {
		if w := &r.list[i]; w.misses(&mix) {
			c |= w.condition
		}
	}
	return c
}
