package tables

import (
	"bytes"
	"errors"
	"testing"
	"time"

	"ebbwell/internal/consult"
	"ebbwell/internal/exchange"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// exported is what is read again of an export of some records.
func exported(t *testing.T, r exchange.Records) *Own {
	t.Helper()
	var out bytes.Buffer
	if err := exchange.WriteJSON(&out, r); err != nil {
		t.Fatal(err)
	}
	o, err := OpenOwn(out.Bytes())
	if err != nil || o == nil {
		t.Fatalf("an export is not known: %v", err)
	}
	return o
}

// sheetOf is a closed sheet of an athlete.
func sheetOf(id, athlete record.ID, day record.Date, mass float64) record.Test {
	at := time.Date(2025, 5, 1, 10, 0, 0, 0, time.UTC)
	x := record.Test{Meta: record.Meta{ID: id}, AthleteID: athlete, State: record.TestClosed, ClosedAt: &at, ClosedBy: "Ada"}
	x.Session.Date = day
	x.Weighings = []record.Weighing{{Meta: record.Meta{ID: id + "w"}, TestID: id, Moment: record.Before, Mass: record.Num(mass, quantity.Kilogram)}}
	return x
}

// TestOwnTakesAthletesAndTests: what an import of an export takes, whose it becomes, and
// what is not taken.
func TestOwnTakesAthletesAndTests(t *testing.T) {
	o := exported(t, exchange.Records{
		Athletes: []record.Athlete{
			{Meta: record.Meta{ID: "a1"}, Name: "Wren", Born: "1999-01-01"},
			{Meta: record.Meta{ID: "a2"}, Name: "  TOVE ", Born: "1990-02-02"},
			{Meta: record.Meta{ID: "a3"}, Name: "Inge", Born: "1980-03-03"},
		},
		Tests: []record.Test{
			sheetOf("t1", "a1", "2025-05-01", 61), sheetOf("t2", "a2", "2025-05-02", 72), sheetOf("t3", "a3", "2025-05-03", 7000),
			sheetOf("t4", "nobody", "2025-05-04", 60),
		},
		Plans: []record.Plan{{Meta: record.Meta{ID: "p1"}, AthleteID: "a1"}}, Products: []record.Product{{Meta: record.Meta{ID: "x1"}}},
	})
	known := Known{
		Athletes: []record.Athlete{{Meta: record.Meta{ID: "here"}, Name: "Tove", Born: "1990-02-02"}},
		Tests:    []KnownTest{{Athlete: "here", Date: "2025-05-02"}},
		TestIDs:  map[record.ID]bool{"t1": true}, Gone: map[record.ID]bool{"a3": true},
	}
	d := o.Draft(known, consult.Setup{Pantry: &consult.Pantry{}}, "2025-06-01")
	of := map[record.Date]RowDraft{}
	var fresh []record.Athlete
	for _, r := range d.Rows {
		if r.Test == nil {
			fresh = append(fresh, r.Athlete)
			continue
		}
		of[r.Test.Session.Date] = r
	}
	if len(fresh) != 2 || fresh[0].ID != "a1" || fresh[1].Name != "Inge" || fresh[1].ID == "a3" {
		t.Errorf("new athletes are %+v: an athlete known by name and birth date is not new, one deleted here comes under another id", fresh)
	}
	if len(of) != 3 {
		t.Fatalf("tests of %d days, want 3: that of nobody is left out", len(of))
	}
	if r := of["2025-05-01"]; !r.Twin.Kept || r.Test.ID == "t1" {
		t.Errorf("a test whose id is here: %+v", r.Twin)
	}
	if r := of["2025-05-02"]; !r.Twin.Kept || r.Test.AthleteID != "here" || r.Test.ID != "t2" || r.Test.State != record.TestClosed {
		t.Errorf("a test of the same day of an athlete known by name: %+v, %+v", r.Twin, r.Test)
	}
	if r := of["2025-05-03"]; r.Twin.Any() || r.Test.AthleteID != fresh[1].ID || r.Test.State != record.TestOpen || r.Test.ClosedAt != nil || r.Test.ClosedBy != "" {
		t.Errorf("a closed sheet with a value beyond its limits is open: %+v", r.Test)
	}
	asked := 0
	for _, q := range d.Questions {
		if q.Code == QuestionSheet && q.Cell == "Inge" {
			asked++
		}
	}
	if asked != 1 {
		t.Errorf("asked %d times about the value beyond its limits: %+v", asked, d.Questions)
	}
	if !o.Mentions().Names[NameKey("Tove")] {
		t.Error("the file speaks of Tove")
	}
}

// TestOwnGroupsByName: a group of the name of one here is that one; others are new.
func TestOwnGroupsByName(t *testing.T) {
	member := func(of record.ID) record.Membership { return record.Membership{AthleteID: "a1", GroupID: of} }
	a := record.Athlete{Meta: record.Meta{ID: "a1"}, Memberships: []record.Membership{member("g1"), member("g2"), member("none")}}
	o := exported(t, exchange.Records{
		Athletes: []record.Athlete{a}, Groups: []record.Group{{Meta: record.Meta{ID: "g1"}, Name: "Club"}, {Meta: record.Meta{ID: "g2"}, Name: "Squad"}},
	})
	groups, athletes := o.Grouped([]record.Athlete{a}, []record.Group{{Meta: record.Meta{ID: "kept"}, Name: "Club"}})
	if len(groups) != 1 || groups[0].ID != "g2" {
		t.Errorf("new groups are %+v", groups)
	}
	if m := athletes[0].Memberships; len(m) != 2 || m[0].GroupID != "kept" || m[1].GroupID != "g2" {
		t.Errorf("an athlete's groups are %+v", m)
	}
}

// TestOpenOwnOfOtherFiles: another file is none of ours, a broken one of ours is told.
func TestOpenOwnOfOtherFiles(t *testing.T) {
	if o, err := OpenOwn([]byte("Name,Date\nWren,2025-05-01\n")); o != nil || err != nil {
		t.Errorf("a list of somebody: %v, %v", o, err)
	}
	var out bytes.Buffer
	if err := exchange.WriteJSON(&out, exchange.Records{Athletes: []record.Athlete{{Meta: record.Meta{ID: "a1"}}}}); err != nil {
		t.Fatal(err)
	}
	if o, err := OpenOwn(out.Bytes()[:out.Len()-8]); o != nil || !errors.Is(err, ErrNotTable) {
		t.Errorf("half an export: %v, %v", o, err)
	}
}

// TestOwnBrings: plans come as drafts of who they are of here, with what they rest on as
// it is here; trips with those of their travellers who come; products that are named.
func TestOwnBrings(t *testing.T) {
	at := time.Date(2025, 5, 1, 10, 0, 0, 0, time.UTC)
	plan := func(id, athlete, test record.ID) record.Plan {
		p := record.Plan{Meta: record.Meta{ID: id}, AthleteID: athlete, State: record.PlanAgreed, Agreement: record.Agreement{AgreedAt: &at, AgreedBy: "Ada"}}
		p.Basis = record.PlanBasis{TestID: test, PoolIDs: "t1 gone", StopID: "s1"}
		p.Options = []record.Option{{Meta: record.Meta{ID: id + "o"}, PlanID: id, Items: []record.Item{{Meta: record.Meta{ID: id + "i"}, OptionID: id + "o", ProductID: "x1"}}}}
		return p
	}
	trip := func(id record.ID, who ...record.ID) record.Trip {
		x := record.Trip{Meta: record.Meta{ID: id}, Stops: []record.Stop{{Meta: record.Meta{ID: "s" + id[1:]}, TripID: id}}}
		for _, a := range who {
			x.Travellers = append(x.Travellers, record.Traveller{Meta: record.Meta{ID: id + a}, TripID: id, AthleteID: a})
		}
		return x
	}
	o := exported(t, exchange.Records{
		Athletes: []record.Athlete{{Meta: record.Meta{ID: "a1"}, Name: "Wren", Born: "1999-01-01", Habit: record.Habit{DrinkID: "x3"}}, {Meta: record.Meta{ID: "a2"}, Name: "Tove", Born: "1990-02-02"}},
		Tests:    []record.Test{sheetOf("t1", "a1", "2025-05-01", 61)},
		Plans:    []record.Plan{plan("p1", "a1", "t1"), plan("p2", "a2", "t9"), plan("p3", "a1", "t1"), plan("p4", "nobody", "")},
		Trips:    []record.Trip{trip("r1", "a1", "nobody"), trip("r2", "nobody"), trip("r3", "a2")},
		Products: []record.Product{{Meta: record.Meta{ID: "x1"}}, {Meta: record.Meta{ID: "x2"}}, {Meta: record.Meta{ID: "x3"}}},
	})
	d := o.Draft(Known{Athletes: []record.Athlete{{Meta: record.Meta{ID: "here"}, Name: "Tove", Born: "1990-02-02"}}}, consult.Setup{Pantry: &consult.Pantry{}}, "2025-06-01")
	b := o.Beside(d, d.Take(Choice{}), map[record.ID]bool{"p3": true, "r3": true})
	if len(b.Plans) != 2 || b.Plans[0].ID != "p1" || b.Plans[1].AthleteID != "here" {
		t.Fatalf("plans are %+v", b.Plans)
	}
	if p := b.Plans[0]; p.State != record.PlanDraft || p.Agreement.AgreedAt != nil || p.Agreement.AgreedBy != "" || p.Basis.TestID != "t1" || p.Basis.PoolIDs != "t1" || p.Basis.StopID != "s1" {
		t.Errorf("a plan comes as %+v", p)
	}
	if p := b.Plans[1]; p.Basis.TestID != "" {
		t.Errorf("a plan rests on a test that is not here: %+v", p.Basis)
	}
	if len(b.Trips) != 1 || len(b.Trips[0].Travellers) != 1 || b.Trips[0].Travellers[0].AthleteID != "a1" {
		t.Errorf("trips are %+v", b.Trips)
	}
	if len(b.Products) != 2 || b.Products[0].ID != "x1" || b.Products[1].ID != "x3" { // of a plan, and what an athlete drinks usually
		t.Errorf("products are %+v", b.Products)
	}
	left := o.Beside(d, d.Take(Choice{LeaveOut: map[int]bool{0: true, 2: true}}), nil)
	if len(left.Plans) != 1 || left.Plans[0].AthleteID != "here" {
		t.Errorf("with an athlete left out plans are %+v", left.Plans)
	}
}
