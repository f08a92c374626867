package consult

import (
	"math"
	"slices"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// byOwnTests puts in the place of an estimate what the athlete's own tests of just that
// session measured, where no heat balance holds: in water, and for a body that
// [care.Effect] says so of. Elsewhere such a session has no rate.
func (q *Asking) byOwnTests(r *Calculation, session climate.Session, day time.Time) {
	water := session.Effort.Motion == climate.InWater
	unlike := care.Of(q.athlete, day).OwnTests
	if !water && !unlike {
		return
	}
	measured, elsewhere := climate.OwnTestOnly, climate.NoEstimate
	if water {
		measured, elsewhere = climate.MeasuredInWater, climate.PlanInWater
	}
	own := climate.Own(r.dried(water), r.sameSession())
	own.Balance, own.Breath = r.Climate.Balance, r.Climate.Breath
	code := elsewhere
	if own.Rate.Known {
		code = measured
	}
	own.Codes = append([]string{code}, own.Codes...)
	r.Climate, r.set = own, nil
}

// dried are the compared tests; of those in water the mass after counts as with the
// kit on, since suit and hair hold water however well they are dried.
func (r *Calculation) dried(water bool) []climate.Test {
	if !water {
		return r.Compared
	}
	list := slices.Clone(r.Compared)
	for i := range list {
		list[i].U = quantity.LitresPerHour(math.Hypot(float64(list[i].U), evidence.KitOnU*60/r.Tests[i].Minutes))
	}
	return list
}

// sameSession are the compared tests of just the session of an outing, counted from 0:
// the test whose session it is again, in its own air and at its effort, and those done
// in the same sport, air and effort.
func (r *Calculation) sameSession() []int {
	o := r.Outing
	like := slices.IndexFunc(r.Tests, func(f Findings) bool { return f.Test.ID == o.Like })
	if like < 0 || !r.Tests[like].Test.Air.Same(o.Air) || !sameEffort(r.Tests[like].Test.Session, o.Session) {
		return nil
	}
	list := []int{like}
	for i := range r.Tests {
		t := r.Tests[i].Test
		if i != like && t.Session.Sport == r.Tests[like].Test.Session.Sport && t.Air.Same(o.Air) && sameEffort(t.Session, o.Session) {
			list = append(list, i)
		}
	}
	return list
}

// sameEffort reports whether two sessions are as hard, as far as that is written down.
func sameEffort(a, b record.Session) bool {
	return a.Activity == b.Activity && a.Effort.Same(b.Effort) && a.Met.Same(b.Met) && a.Power.Same(b.Power) && a.Speed.Same(b.Speed)
}

// OwnTests is the code of why only an athlete's own tests of just that session say what
// is lost in it, [climate.MeasuredInWater] or [climate.OwnTestOnly]; empty where the
// heat balance holds.
func (c Case) OwnTests() string {
	if c.said != nil {
		return c.said.ownTests
	}
	if r := c.Basis.Calculation; r != nil {
		return r.OwnTests()
	}
	return ""
}

// OwnTests is [Case.OwnTests] of a calculation.
func (r Calculation) OwnTests() string {
	for _, code := range r.Climate.Codes {
		if code == climate.MeasuredInWater || code == climate.OwnTestOnly {
			return code
		}
	}
	return ""
}
