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

// TestOwnTakesAthletesTestsAndGroups: what an import of an export takes, whose it
// becomes, and what is not taken.
func TestOwnTakesAthletesTestsAndGroups(t *testing.T) {
	club, squad := record.Group{Meta: record.Meta{ID: "g1"}, Name: "Club"}, record.Group{Meta: record.Meta{ID: "g2"}, Name: "Squad"}
	member := func(of record.ID) record.Membership { return record.Membership{AthleteID: "a1", GroupID: of} }
	o := exported(t, exchange.Records{
		Athletes: []record.Athlete{
			{Meta: record.Meta{ID: "a1"}, Name: "Wren", Born: "1999-01-01", Memberships: []record.Membership{member("g1"), member("g2"), member("none")}},
			{Meta: record.Meta{ID: "a2"}, Name: "  TOVE ", Born: "1990-02-02"},
			{Meta: record.Meta{ID: "a3"}, Name: "Inge", Born: "1980-03-03"},
		},
		Groups: []record.Group{club, squad},
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
	groups, athletes := o.Grouped(fresh[:1], []record.Group{{Meta: record.Meta{ID: "kept"}, Name: "Club"}})
	if len(groups) != 1 || groups[0].ID != "g2" {
		t.Errorf("new groups are %+v", groups)
	}
	if m := athletes[0].Memberships; len(m) != 2 || m[0].GroupID != "kept" || m[1].GroupID != "g2" {
		t.Errorf("an athlete's groups are %+v", m)
	}
	if !o.Mentions().Names[NameKey("Tove")] {
		t.Error("the file speaks of Tove")
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
