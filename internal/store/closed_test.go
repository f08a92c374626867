package store

import (
	"context"
	"errors"
	"testing"
	"time"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

func freezing(why string) Freezing {
	return Freezing{Inputs: []byte(`{"in":1}`), Results: []byte(`{"out":2}`), Evidence: "2026.1", Why: why}
}

// TestClosedTest: a closed test stays as it is until it is reopened with a reason.
func TestClosedTest(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, ref := sheet(t, s)
	one = got(s.CloseTest(ctx, one, freezing("complete"), Edit{}))(t)
	if one.State != record.TestClosed || one.ClosedAt == nil || one.ClosedBy != "Kit" {
		t.Fatalf("closed as %s at %v by %s", one.State, one.ClosedAt, one.ClosedBy)
	}
	got(s.SaveTest(ctx, one, Edit{}))(t) // nothing changed: nothing to refuse
	for name, change := range map[string]func(*record.Test){
		"field": func(x *record.Test) { x.Note = "late" },
		"state": func(x *record.Test) { x.State = record.TestOpen },
		"row":   func(x *record.Test) { x.Bottles = nil },
		"inner": func(x *record.Test) { x.Bottles[0].Refills = []record.Refill{refill(1)} },
	} {
		t.Run(name, func(t *testing.T) {
			other := copyOf(one)
			change(&other)
			_, err := s.SaveTest(ctx, other, Edit{Why: "because"})
			wantCode(t, err, CodeClosed)
			wantCode(t, s.SetRaw(ctx, ref, "note", "x", Edit{}), CodeClosed)
		})
	}
	_, err := s.ReopenTest(ctx, one.ID, " ")
	wantCode(t, err, CodeNoReason)
	one = got(s.ReopenTest(ctx, one.ID, "bottle misread"))(t)
	if one.State != record.TestOpen || one.ClosedAt != nil {
		t.Fatalf("reopened as %s, closed at %v", one.State, one.ClosedAt)
	}
	one.Note = "late"
	one = got(s.SaveTest(ctx, one, Edit{}))(t)
	got(s.CloseTest(ctx, one, freezing("corrected"), Edit{}))(t)
	frozen := got(s.FrozenOf(ctx, ref))(t)
	if len(frozen) != 2 || frozen[0].Number != 2 || frozen[0].Why != "corrected" || frozen[1].Number != 1 ||
		string(frozen[1].Results) != `{"out":2}` || frozen[1].Evidence != "2026.1" || frozen[1].By != "Kit" {
		t.Errorf("frozen copies %+v", frozen)
	}
	var reopened bool
	for _, line := range told(t, s, ref) {
		reopened = reopened || line == "state: closed > open (bottle misread)"
	}
	if !reopened {
		t.Errorf("the history does not tell of the reopening: %q", told(t, s, ref))
	}
}

// TestReopenOpenTest changes nothing.
func TestReopenOpenTest(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, ref := sheet(t, s)
	got(s.ReopenTest(ctx, one.ID, "by mistake"))(t)
	wantTold(t, s, ref, ":  > present")
	_, err := s.ReopenTest(ctx, "nothing", "why")
	wantCode(t, err, CodeNotFound)
}

// TestWaitingTest takes the laboratory's values and nothing else.
func TestWaitingTest(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, ref := sheet(t, s)
	one.State = record.TestWaiting
	one.Patches = []record.Patch{{Site: record.SiteForearmDorsal, AtLaboratory: true}}
	one = got(s.CloseTest(ctx, one, freezing("but for the sodium"), Edit{}))(t)
	if one.State != record.TestWaiting {
		t.Fatalf("state %s", one.State)
	}
	other := copyOf(one)
	other.Patches[0].Site = record.SiteBack
	_, err := s.SaveTest(ctx, other, Edit{})
	wantCode(t, err, CodeClosed)
	other = copyOf(one)
	other.State = record.TestOpen
	_, err = s.SaveTest(ctx, other, Edit{})
	wantCode(t, err, CodeClosed)

	must(t, s.SetRaw(ctx, ref, "patches."+string(one.Patches[0].ID)+".sodium", "4o", Edit{}))
	one.Patches[0].Sodium, one.Patches[0].AtLaboratory = record.Num(40, quantity.MillimolePerLitre), false
	one = got(s.SaveTest(ctx, one, Edit{}))(t)
	one.State = record.TestClosed
	one = got(s.CloseTest(ctx, one, freezing("the laboratory's value"), Edit{}))(t)
	if one.State != record.TestClosed {
		t.Errorf("state %s", one.State)
	}
	if frozen := got(s.FrozenOf(ctx, ref))(t); len(frozen) != 2 {
		t.Errorf("got %d frozen copies", len(frozen))
	}
}

// agreed makes a plan with an option, two steps and a chance, and agrees it.
func agreed(t testing.TB, s *Store, test record.Test) record.Plan {
	t.Helper()
	option := record.NewID()
	p := record.Plan{AthleteID: test.AthleteID, State: record.PlanDraft, Name: "Long run", Basis: record.PlanBasis{Kind: record.BasisTest, TestID: test.ID},
		Options: []record.Option{{Meta: record.Meta{ID: option}, Kind: record.OptionFluid, Items: []record.Item{{Role: record.RoleWater}}}},
		Steps: []record.Step{{OptionID: option, Order: 1, State: record.StepNow, From: "2026-05-14"},
			{OptionID: option, Order: 2, State: record.StepAhead, From: "2026-05-28"}},
		Agreement: record.Agreement{OptionID: option, Review: "2026-05-28"}}
	return got(s.AgreePlan(context.Background(), p, freezing("agreed"), Edit{}))(t)
}

// TestAgreedPlan stays as agreed; what the weeks after bring is still entered.
func TestAgreedPlan(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, _ := sheet(t, s)
	p := agreed(t, s, one)
	for name, change := range map[string]func(*record.Plan){
		"name":       func(x *record.Plan) { x.Name = "Another" },
		"item":       func(x *record.Plan) { x.Options[0].Items[0].Volume = record.Num(1, quantity.Millilitre) },
		"step":       func(x *record.Plan) { x.Steps[0].Sessions = 3 },
		"step taken": func(x *record.Plan) { x.Steps = x.Steps[:1] },
		"draft":      func(x *record.Plan) { x.State = record.PlanDraft },
		"option":     func(x *record.Plan) { x.Agreement.OptionID = "" },
	} {
		t.Run(name, func(t *testing.T) {
			other := copyOf(p)
			change(&other)
			_, err := s.SavePlan(ctx, other, Edit{})
			wantCode(t, err, CodeClosed)
		})
	}
	p = got(s.SaveReview(ctx, record.Review{PlanID: p.ID, StepID: p.Steps[0].ID, Date: "2026-05-20", Drunk: record.Num(600, "mL")}, Edit{}))(t)
	p = got(s.SaveReview(ctx, record.Review{PlanID: p.ID, StepID: p.Steps[0].ID, Decision: record.DecisionNext}, Edit{}))(t)
	reviews := got(s.Reviews(ctx, p.ID))(t)
	if len(reviews) != 2 || reviews[1].Decision != record.DecisionNext || reviews[0].Date != "2026-05-20" {
		t.Fatalf("reviews %+v", reviews)
	}
	reviews[0].Note = "hot"
	p = got(s.SaveReview(ctx, reviews[0], Edit{}))(t)
	p.Steps[0].State, p.Steps[1].State, p.Steps[1].From = record.StepDone, record.StepNow, "2026-06-01"
	p.Agreement.Review = "2026-06-14"
	corrected := p.CreatedAt.Add(time.Hour)
	p.Corrected = record.TestCorrected{At: &corrected, Before: record.Num(2.18, quantity.Litre), After: record.Num(1.88, quantity.Litre)}
	p = got(s.SavePlan(ctx, p, Edit{}))(t)
	p.State = record.PlanReplaced
	p = got(s.SavePlan(ctx, p, Edit{}))(t)
	_, err := s.SaveReview(ctx, record.Review{PlanID: p.ID}, Edit{})
	wantCode(t, err, CodeClosed)

	_, err = s.ReopenPlan(ctx, p.ID, "")
	wantCode(t, err, CodeNoReason)
	p = got(s.ReopenPlan(ctx, p.ID, "event moved"))(t)
	if p.State != record.PlanDraft || p.Agreement.AgreedAt != nil || len(p.Reviews) != 2 || p.Reviews[0].Note != "hot" {
		t.Errorf("reopened as %+v", p)
	}
	if frozen := got(s.FrozenOf(ctx, record.Ref{Kind: record.KindPlan, ID: p.ID}))(t); len(frozen) != 1 {
		t.Errorf("got %d frozen copies", len(frozen))
	}
}

// TestAgreeIsWhole: when the copy cannot be made the plan is not agreed.
func TestAgreeIsWhole(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, ref := sheet(t, s)
	boom := errors.New("boom")
	err := s.write(ctx, "close", func(w *work) error {
		one := copyOf(one)
		one.State = record.TestClosed
		if err := w.saveFrozen(record.KindTest, &one, freezing("x"), Edit{}); err != nil {
			return err
		}
		return boom
	})
	if !errors.Is(err, boom) {
		t.Fatalf("got %v", err)
	}
	if loaded := got(s.LoadTest(ctx, one.ID))(t); loaded.State != record.TestOpen {
		t.Errorf("the test is %s", loaded.State)
	}
	if frozen := got(s.FrozenOf(ctx, ref))(t); len(frozen) != 0 {
		t.Errorf("got %d frozen copies", len(frozen))
	}
	_, err = s.Freeze(ctx, record.Ref{Kind: record.KindTest, ID: "nothing"}, freezing("x"))
	wantCode(t, err, CodeNotFound)
}

// TestPlansBasedOn finds draft and agreed plans, by the test or its pool.
func TestPlansBasedOn(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, _ := sheet(t, s)
	other := got(s.SaveTest(ctx, record.Test{AthleteID: one.AthleteID}, Edit{}))(t)
	direct := agreed(t, s, one)
	save := func(name string, b record.PlanBasis, state record.PlanState) record.Plan {
		return got(s.SavePlan(ctx, record.Plan{AthleteID: one.AthleteID, Name: name, Basis: b, State: state}, Edit{}))(t)
	}
	pool := save("pool", record.PlanBasis{Kind: record.BasisPool, TestID: other.ID, PoolIDs: string(one.ID) + " x"}, record.PlanDraft)
	save("part of an id", record.PlanBasis{Kind: record.BasisPool, PoolIDs: string(one.ID) + "9"}, record.PlanDraft)
	save("replaced", record.PlanBasis{TestID: one.ID}, record.PlanReplaced)
	save("estimate", record.PlanBasis{Kind: record.BasisEstimate}, record.PlanDraft)
	gone := save("deleted", record.PlanBasis{TestID: one.ID}, record.PlanDraft)
	must(t, s.Delete(ctx, record.Ref{Kind: record.KindPlan, ID: gone.ID}, Edit{}))
	plans := got(s.PlansBasedOn(ctx, one.ID))(t)
	if len(plans) != 2 || plans[0].ID != pool.ID || plans[1].ID != direct.ID || len(plans[1].Steps) != 2 {
		t.Errorf("got %+v", plans)
	}
}
