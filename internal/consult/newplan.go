package consult

import (
	"fmt"
	"math"
	"time"

	"ebbwell/internal/plan"
	"ebbwell/internal/plan/proposal"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// The drink and the food a plan begins with where the athlete took none, and the
// gel that may be proposed beside them.
const (
	firstDrink = record.ID("generic.drink-6")
	firstFood  = record.ID("generic.banana")
	firstGel   = record.ID("generic.gel")
)

// Names are the words of the four options a consult starts from.
type Names struct{ Habit, Fluid, Food, Aim string }

// NewPlan begins a plan from a test: the same session again, the habit just
// measured, one option of fluid only and one with food, and the aim, as the
// planner proposes them. It is [ErrBlocked] while the test has a red flag of which
// nobody was told.
func NewPlan(a record.Athlete, b Basis, d Setup, names Names, now time.Time) (record.Plan, error) {
	first := b.Tests[0]
	if Blocks(first, a) {
		return record.Plan{}, fmt.Errorf("begin a plan: %w", ErrBlocked)
	}
	p := record.Plan{
		Meta: record.Meta{ID: record.NewID(), CreatedAt: now}, AthleteID: a.ID, State: record.PlanDraft,
		Target: targetOf(first, a, d),
		Basis:  PlanBasisOf(b, ""),
		Rules:  record.StepRules{Fluid: d.Settings.StepFluid, Carbohydrate: d.Settings.StepCarbohydrate},
	}
	habit := habitOf(p, first, d)
	habit.Name = names.Habit
	p.Options = []record.Option{habit}
	for _, o := range []struct {
		kind record.OptionKind
		name string
	}{{record.OptionFluid, names.Fluid}, {record.OptionFood, names.Food}, {record.OptionAim, names.Aim}} {
		p.Options = append(p.Options, withItems(emptyOption(p, o.kind, o.name, len(p.Options)), habit, d))
	}
	c, err := OpenCase(p, a, b, d)
	if err == nil {
		if kinds := KindsOf(p.Target.Sport); len(kinds) > 0 {
			c.WithKind(&p, kinds[0].Session)
		}
		c, err = OpenCase(p, a, b, d) // what is offered fits the breaks
	}
	if err != nil {
		return record.Plan{}, fmt.Errorf("begin a plan: %w", err)
	}
	return c.withOffers(p), nil
}

// targetOf is the test's session as what the plan is for.
func targetOf(f Findings, a record.Athlete, d Setup) record.Target {
	t := record.Target{
		Sport: sportOf(f.Test, a), Effort: f.Test.Session.Effort, Start: f.Test.Session.Start,
		DeficitAim: d.Settings.DeficitAim,
	}
	if a.DeficitAim.Known() {
		t.DeficitAim = a.DeficitAim
	}
	if f.Timed {
		t.Minutes = record.Num(f.Minutes, quantity.Minute)
	}
	return t
}

func emptyOption(p record.Plan, kind record.OptionKind, name string, order int) record.Option {
	return record.Option{Meta: record.Meta{ID: record.NewID()}, PlanID: p.ID, Order: order, Kind: kind, Name: name}
}

func waterName(d Setup) string {
	water, _ := d.Pantry.Find(Water)
	return water.Name
}

// withItems gives an option the habit's items at nothing, and a first drink and
// food where the habit has none of a kind.
func withItems(o, habit record.Option, d Setup) record.Option {
	has := map[record.Role]bool{}
	add := func(role record.Role, id record.ID, name string) {
		has[role] = true
		it := record.Item{Meta: record.Meta{ID: record.NewID()}, OptionID: o.ID, Order: len(o.Items), Role: role, ProductID: id, Name: name}
		o.Items = append(o.Items, amount(it, 0))
	}
	for _, it := range habit.Items {
		add(it.Role, it.ProductID, it.Name)
	}
	for _, first := range []struct {
		role record.Role
		id   record.ID
	}{{record.RoleDrink, firstDrink}, {record.RoleFood, firstFood}} {
		if product, ok := d.Pantry.Find(first.id); ok && !has[first.role] {
			add(first.role, first.id, product.Name)
		}
	}
	return o
}

// AsBefore gives a plan that was just begun the breaks and the practice's rules of
// the athlete's newest plan of the same sport, where its session is about as
// long: a break that was taken out or typed in stays so. What is offered is then
// made anew. Without such a plan p comes back as it was.
func AsBefore(p record.Plan, earlier []record.Plan, a record.Athlete, b Basis, d Setup) (record.Plan, error) {
	was, ok := likePlan(p, earlier)
	if !ok {
		return p, nil
	}
	p.Rules, p.Chances = was.Rules, nil
	p.Rules.Held, p.Rules.Further = "", ""
	for i, ch := range was.Chances {
		ch.Meta, ch.PlanID, ch.Order = record.Meta{ID: record.NewID()}, p.ID, i
		p.Chances = append(p.Chances, ch)
	}
	c, err := OpenCase(p, a, b, d)
	if err != nil {
		return record.Plan{}, fmt.Errorf("begin a plan as before: %w", err)
	}
	return c.withOffers(p), nil
}

// likePlan is the newest other plan of the sport whose session is as long, to a
// tenth, and has no breaks of another kind of session.
func likePlan(p record.Plan, earlier []record.Plan) (was record.Plan, ok bool) {
	long := p.Target.Minutes.Or(0)
	for _, e := range earlier {
		same := e.ID != p.ID && !e.Deleted() && e.Target.Sport == p.Target.Sport && e.Basis.StopID == ""
		same = same && math.Abs(e.Target.Minutes.Or(0)-long) <= long/10 && !ofAnotherKind(p, e.Chances)
		if same && (!ok || e.CreatedAt.After(was.CreatedAt)) {
			was, ok = e, true
		}
	}
	return was, ok
}

// withOffers gives the options of a plan that was just begun what the planner
// proposes for them.
func (c Case) withOffers(p record.Plan) record.Plan {
	found := c.Planner.Propose(RulesOf(p))
	for i, o := range p.Options {
		if mix, ok := Offered(found, o.Kind); ok {
			p.Options[i] = c.WithMix(o, mix)
		}
	}
	return p
}

// Offered is what a proposal has for an option of a kind: the first step of the
// drinks alone, the first step with food, or the aim. Where there is no such way it is
// what the habit comes down to, or the habit itself; ok is false for other kinds.
func Offered(found proposal.Proposal, kind record.OptionKind) (mix plan.Mix, ok bool) {
	if found.Ask && kind != record.OptionHabit {
		found.Routes = [proposal.Ways]proposal.Route{} // the breaks are settled first
	}
	first := func(way proposal.Way) plan.Mix {
		if r := found.Routes[way]; r.Exists {
			return plan.Mix(r.Steps[0].Mix)
		}
		return plan.Mix(found.Cut)
	}
	switch kind {
	case record.OptionFluid:
		return first(proposal.DrinksAlone), true
	case record.OptionFood:
		return first(proposal.WithFood), true
	case record.OptionAim:
		if r := found.Picked(); r.Exists {
			return plan.Mix(r.Aim), true
		}
		return plan.Mix(found.Cut), true
	case record.OptionHabit, record.OptionOwn, record.OptionStep:
	}
	return mix, false
}

// RecordChances turns chances as calculated into chances as kept. A break for heat
// that is in the list is one that is given.
func RecordChances(planID record.ID, list []plan.Chance) []record.Chance {
	var out []record.Chance
	for i, ch := range list {
		out = append(out, record.Chance{
			Meta: record.Meta{ID: record.NewID()}, PlanID: planID, Order: i, Name: ch.Code,
			AtMinute: record.Num(ch.Minute, quantity.Minute), Seconds: record.Num(ch.Seconds, quantity.Second),
			CanEat: ch.CanEat, Maybe: ch.Certainty == plan.Maybe,
		})
	}
	return out
}

// PlanChances turns chances as kept into chances as calculated.
func PlanChances(p record.Plan) []plan.Chance {
	var out []plan.Chance
	for _, ch := range p.Chances {
		one := plan.Chance{Code: ch.Name, Minute: ch.AtMinute.Or(0), Seconds: ch.Seconds.Or(0), CanEat: ch.CanEat}
		if ch.Maybe {
			one.Certainty = plan.Maybe
		}
		if ch.Amount.Known() {
			one.Fixed = plan.Fixed{On: true, ML: *ch.Amount.Value}
		}
		out = append(out, one)
	}
	return out
}
