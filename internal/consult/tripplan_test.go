package consult

import (
	"slices"
	"testing"
	"time"

	"ebbwell/internal/climate"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

func hotStop(t *testing.T) (StopPlan, record.Athlete, []Findings, Setup) {
	t.Helper()
	a, tests, p, d := tripCase(t)
	s, err := planStop(stop("Chennai", 7), a, tests, &p, cities(t), day(), d)
	if err != nil {
		t.Fatal(err)
	}
	return s, a, tests, d
}

// The plan of a stop opens again as what was seen, and what it was made from
// stays as it was.
func TestDraftOfAStop(t *testing.T) {
	s, a, tests, d := hotStop(t)
	before := s.Case.Plan.Clone()
	c, err := s.Draft(StopNames{"Camp, estimate", "There"}, "2026-07-16", day(), d)
	if err != nil {
		t.Fatal(err)
	}
	p := c.Plan
	if p.ID == before.ID || p.Basis.Kind != record.BasisEstimate || p.Basis.StopID != "s" || p.Basis.TestID != "t" {
		t.Errorf("the basis is %+v", p.Basis)
	}
	if p.Agreement.Review != "2026-07-16" || p.Agreement.From != s.Stop.From || p.Agreement.Until != s.Stop.Until {
		t.Errorf("the agreement is %+v", p.Agreement)
	}
	o, ok := InForce(p)
	if !ok || o.Name != "There" || c.MixOf(o) != s.Mix {
		t.Errorf("in force is %q with %v instead of %v", o.Name, c.MixOf(o), s.Mix)
	}
	b, err := BasisFor(p, a, tests, day(), d)
	if err != nil {
		t.Fatal(err)
	}
	again, err := OpenCase(p, a, b, d)
	if err != nil {
		t.Fatal(err)
	}
	if got := again.Planner.Evaluate(plan.Expected, again.MixOf(o)); got.DeficitL != s.At.DeficitL || got.Ceiling != s.At.Ceiling {
		t.Errorf("opened again it predicts %+v instead of %+v", got.DeficitL, s.At.DeficitL)
	}
	ids := map[record.ID]bool{}
	for _, o := range before.Options {
		ids[o.ID] = true
		for _, it := range o.Items {
			ids[it.ID] = true
		}
	}
	for _, o := range p.Options {
		for _, it := range o.Items {
			if ids[o.ID] || ids[it.ID] || it.OptionID != o.ID || o.PlanID != p.ID {
				t.Errorf("option %s shares its identity with the plan it was made from", o.Name)
			}
		}
	}
	if _, err := (StopPlan{}).Draft(StopNames{}, "", day(), d); err == nil {
		t.Error("a stop without a plan makes one")
	}
}

func TestRefusals(t *testing.T) {
	s, a, _, _ := hotStop(t)
	if got := s.Refusals(a, day()); !s.TooUncertain() || !slices.Equal(got, []string{RefusedUncertain}) {
		t.Fatalf("too uncertain to drink by (%v): %v", s.Calculation.Climate.Rate.Range, got)
	}
	s.Calculation.Climate.Rate.Range.Low = s.Calculation.Climate.Rate.Range.High / 2
	if got := s.Refusals(a, day()); len(got) != 0 {
		t.Fatalf("refused: %v", got)
	}
	ill := a
	ill.Flags = []record.Flag{{Kind: record.FlagKidney}}
	if got := s.Refusals(ill, day()); !slices.Equal(got, []string{RefusedPhysician}) {
		t.Errorf("a kidney: %v", got)
	}
	ill.Flags[0].Physician = "Dr Venn (invented)"
	if got := s.Refusals(ill, day()); len(got) != 0 {
		t.Errorf("a kidney with a physician: %v", got)
	}
	young := a
	young.Born = "2010-01-01"
	if got := s.Refusals(young, day()); !slices.Equal(got, []string{RefusedOutstanding}) {
		t.Errorf("a minor: %v", got)
	}
	unborn := a
	unborn.Born = ""
	if got := s.Refusals(unborn, day()); !slices.Equal(got, []string{RefusedOutstanding}) {
		t.Errorf("no birth date: %v", got)
	}
	over := s
	over.At.Guards = plan.OverCeiling
	if got := over.Refusals(a, day()); !slices.Equal(got, []string{RefusedDrink}) {
		t.Errorf("over-drinking: %v", got)
	}
	if got := (StopPlan{}).Refusals(a, day()); !slices.Equal(got, []string{RefusedNoPlan}) {
		t.Errorf("no plan: %v", got)
	}
}

// Salt that was agreed before a condition came up does not travel: not in the
// plan of a stop, not in the draft of it, not in the bag.
func TestSaltIsWithheldOnATrip(t *testing.T) {
	a, tests, p, d := tripCase(t)
	for i := range p.Options {
		p.Options[i].Salt = record.Num(1.2, quantity.Gram)
	}
	for _, c := range []struct {
		kind record.FlagKind
		salt bool
	}{{record.FlagKidney, false}, {record.FlagHeart, false}, {record.FlagBloodPressure, false}, {record.FlagNSAID, true}} {
		ill := a
		ill.Flags = []record.Flag{{Kind: c.kind, Physician: "Dr Venn (invented)"}}
		s, err := planStop(stop("London", 7), ill, tests, &p, cities(t), day(), d)
		if err != nil {
			t.Fatal(err)
		}
		list, err := PackTrip([]StopPlan{s}, nil, 0.15, d)
		if err != nil {
			t.Fatal(err)
		}
		draft, err := s.Draft(StopNames{"Camp", "There"}, "2026-07-16", day(), d)
		if err != nil {
			t.Fatal(err)
		}
		o, _ := InForce(draft.Plan)
		for where, got := range map[string]bool{
			"the mix": s.Mix[plan.Salt] > 0, "home": s.Home[plan.Salt] > 0, "the bag": list.Salt > 0, "the draft": o.Salt.Or(0) > 0,
		} {
			if got != c.salt {
				t.Errorf("%s: salt in %s: %v", c.kind, where, got)
			}
		}
	}
}

// A minor's care counts on the day, not on the day the plan was begun.
func TestCareOfAStopIsOfTheDay(t *testing.T) {
	a, tests, p, d := tripCase(t)
	a.Born = "2008-06-01"
	p.CreatedAt = day() // 17 then
	grown := time.Date(2026, 7, 1, 0, 0, 0, 0, time.UTC)
	for on, hidden := range map[time.Time]bool{day(): true, grown: false} {
		s, err := planStop(stop("Chennai", 7), a, tests, &p, cities(t), on, d)
		if err != nil {
			t.Fatal(err)
		}
		if s.Case.Care.MassHidden != hidden {
			t.Errorf("on %s mass is hidden: %v", on.Format(time.DateOnly), s.Case.Care.MassHidden)
		}
	}
}

func TestWhichPlanGoesAlong(t *testing.T) {
	at := func(day int) record.Agreement {
		when := time.Date(2026, 5, day, 0, 0, 0, 0, time.UTC)
		return record.Agreement{AgreedAt: &when}
	}
	plans := []record.Plan{
		{Meta: record.Meta{ID: "draft"}, State: record.PlanDraft, Agreement: at(20)},
		{Meta: record.Meta{ID: "trip"}, State: record.PlanAgreed, Agreement: at(19), Basis: record.PlanBasis{StopID: "s"}},
		{Meta: record.Meta{ID: "old"}, State: record.PlanAgreed, Agreement: at(2)},
		{Meta: record.Meta{ID: "new"}, State: record.PlanAgreed, Agreement: at(9)},
	}
	if got := ToTakeAlong(plans); got == nil || got.ID != "new" {
		t.Errorf("takes %+v along", got)
	}
	if ToTakeAlong(plans[:2]) != nil {
		t.Error("takes a draft or a trip's plan along")
	}
	if got := AgreedFor("s", plans); got == nil || got.ID != "trip" || AgreedFor("", plans) != nil || AgreedFor("x", plans) != nil {
		t.Errorf("agreed for the stop: %+v", got)
	}
}

// Nothing is planned from thin air: an athlete without mass or height, a stop
// without minutes.
func TestStopNeedsBodyAndMinutes(t *testing.T) {
	a, tests, p, d := tripCase(t)
	bare := a
	bare.UsualMass, bare.Height = record.Number{}, record.Number{}
	if _, err := planStop(stop("Chennai", 7), bare, nil, &p, cities(t), day(), d); err == nil {
		t.Error("an athlete without mass and height is planned for")
	}
	long := stop("Chennai", 7)
	if _, err := planStop(long, a, nil, nil, cities(t), day(), d); err == nil {
		t.Error("a session without minutes is planned for")
	}
	long.Minutes = record.Num(90, quantity.Minute)
	s, err := planStop(long, a, nil, nil, cities(t), day(), d)
	if err != nil || s.Planned || s.Trouble != nil {
		t.Errorf("without a plan to take along: %v, planned %v", err, s.Planned)
	}
	gone := p.Clone()
	gone.Options[1].Items[1].ProductID = "own.gone"
	s, err = planStop(long, a, tests, &gone, cities(t), day(), d)
	if err != nil || s.Planned || s.Trouble == nil {
		t.Errorf("a plan with a product that is gone: %v, planned %v, %v", err, s.Planned, s.Trouble)
	}
}

// A plan made for a stop of a trip is shown as the athlete's own only where
// there is no other.
func TestOwnPlan(t *testing.T) {
	made := func(id record.ID, state record.PlanState, stop record.ID) record.Plan {
		p := record.Plan{Meta: record.Meta{ID: id}, State: state}
		p.Basis.StopID = stop
		return p
	}
	trip, home := made("trip", record.PlanAgreed, "s"), made("home", record.PlanAgreed, "")
	draft, old := made("draft", record.PlanDraft, ""), made("old", record.PlanReplaced, "")
	for want, plans := range map[record.ID][]record.Plan{
		"draft": {draft, trip, home}, "home": {trip, draft, home, old}, "old": {trip, old}, "trip": {trip},
	} {
		if got, ok := Own(plans); !ok || got.ID != want {
			t.Errorf("%q is shown, not %q", got.ID, want)
		}
	}
	if _, ok := Own(nil); ok {
		t.Error("a plan out of nothing")
	}
}

// planStop works one stop of a trip out for one athlete, see [Traveller.Plan].
func planStop(s record.Stop, a record.Athlete, tests []Findings, agreed *record.Plan, places climate.Places, today time.Time, d Setup) (StopPlan, error) {
	return NewTraveller(a, tests, agreed, places, today, d).Plan(s)
}
