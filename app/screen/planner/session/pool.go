package session

import (
	"strconv"
	"strings"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// relative is another test of the athlete's that a plan may rest on too.
type relative struct {
	found consult.Findings
	// grade says how like the plan's session its conditions were.
	grade  climate.Grade
	pooled bool
}

// relatives are the further tests that have a sweat rate with a range, with how
// like they are to the session of the plan. Only like ones may be pooled.
func relatives(v *part.Plan) []relative {
	p := v.Now.Plan
	first, ok := v.File.Test(p.Basis.TestID)
	if !ok {
		return nil
	}
	o := consult.Outing{Session: first.Test.Session, Air: v.Now.PlanCase.Basis.Air, Minutes: p.Target.Minutes.Or(0)}
	r, err := consult.Calculate(o, v.File.Athlete, v.File.Tests, v.Desk.Now(), v.Desk.Calculate())
	if err != nil {
		return nil
	}
	pooled := strings.Fields(p.Basis.PoolIDs)
	var list []relative
	for i, c := range r.Climate.Coverage {
		t := r.Tests[i]
		if rate := t.Sweat.Fluid.Rate; t.Test.ID == p.Basis.TestID || !rate.Known || !rate.Ranged {
			continue
		}
		one := relative{found: t, grade: c.Grade}
		for _, id := range pooled {
			one.pooled = one.pooled || id == string(t.Test.ID)
		}
		list = append(list, one)
	}
	return list
}

// poolCheck is the box that takes a test in; again asks anew, with what the plan
// rests on then.
func poolCheck(v *part.Plan, i int, one relative, again func()) *field.Check {
	t, w := one.found, v.Desk.Words
	text := v.Speaker.Say("planner.pool.test", w.Date(consult.TestDay(t.Test)), v.Speaker.By.Found(t.Sweat.Fluid.Rate), w.Say("grade."+one.grade.Code()))
	c := field.NewCheck(v.Desk.Host, "planner.pool."+strconv.Itoa(i+1), text)
	c.Set(one.pooled)
	look.EnableIf(c, v.Now.Draft() && (one.grade == climate.Tested || one.pooled))
	c.OnChanged = func(on bool) {
		v.Binder.Pick("planner.pool", func(s *part.Sheet) { pool(&s.Record, t.Test.ID, on) })
		again()
	}
	return c
}

// pool takes a test into the basis of a plan, or out of it.
func pool(p *record.Plan, test record.ID, in bool) {
	var ids []string
	for _, id := range strings.Fields(p.Basis.PoolIDs) {
		if id != string(test) {
			ids = append(ids, id)
		}
	}
	if in {
		ids = append(ids, string(test))
	}
	p.Basis.PoolIDs, p.Basis.Kind = strings.Join(ids, " "), record.BasisTest
	if len(ids) > 0 {
		p.Basis.Kind = record.BasisPool
	}
}
