package consult

import (
	"testing"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/record"
)

// kinds lists alerts by their kind.
func kinds(list []Alert) (names []AlertKind) {
	for _, a := range list {
		names = append(names, a.Kind)
	}
	return names
}

func sameKinds(t *testing.T, name string, list []Alert, want ...AlertKind) {
	t.Helper()
	got := kinds(list)
	if len(got) != len(want) {
		t.Errorf("%s: %v, want %v", name, got, want)
		return
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
}

func TestAlertsOfAnAthlete(t *testing.T) {
	sheet, a := caseSheet()
	a.CreatedAt = day()
	on := day()
	f := Find(sheet, a, nil, testSetup(t))
	sameKinds(t, "nothing", AlertsOf(a, &f, on))
	sameKinds(t, "no test", AlertsOf(a, nil, on))
	heavier := sheet.Clone()
	heavier.Weighings[1].Mass = record.Num(72.9, "kg")
	gained := Find(heavier, a, nil, testSetup(t))
	sameKinds(t, "heavier", AlertsOf(a, &gained, on), AlertGain)
	open := a
	open.Born = ""
	sameKinds(t, "no birth date", AlertsOf(open, &f, on), AlertOutstanding)
	ill := a
	ill.Flags = []record.Flag{{Meta: record.Meta{CreatedAt: on}, Kind: record.FlagKidney}, {Meta: record.Meta{CreatedAt: on}, Kind: record.FlagIllToday}}
	list := AlertsOf(ill, &f, on)
	sameKinds(t, "kidney, ill", list, AlertToday, AlertPhysician, AlertCondition)
	if list[1].Flag != record.FlagKidney || list[2].Flag != record.FlagKidney || list[0].Flag != record.FlagIllToday {
		t.Errorf("%+v", list)
	}
	if n := care.Of(ill, on).NeedsPhysician; len(n) != 1 {
		t.Errorf("%v", n)
	}
}

func TestWithdrawnConsent(t *testing.T) {
	consent := func(p record.Purpose, given, withdrawn record.Date) record.Consent {
		return record.Consent{Purpose: p, Given: given, Withdrawn: withdrawn}
	}
	gone := consent(record.ConsentTest, "2026-01-01", "2026-03-10")
	removed := day()
	gone.DeletedAt = &removed
	for _, c := range []struct {
		name string
		list []record.Consent
		test bool
		day  record.Date
	}{
		{"none", nil, false, ""},
		{"never withdrawn", []record.Consent{consent(record.ConsentTest, "2026-01-01", "")}, false, ""},
		{"withdrawn", []record.Consent{consent(record.ConsentTest, "2026-01-01", "2026-03-10")}, true, "2026-03-10"},
		{"withdrawn today", []record.Consent{consent(record.ConsentTest, "2026-01-01", "2026-05-14")}, true, "2026-05-14"},
		{"withdrawn tomorrow", []record.Consent{consent(record.ConsentTest, "2026-01-01", "2026-05-15")}, false, ""},
		{"given again", []record.Consent{consent(record.ConsentTest, "2026-01-01", "2026-03-10"), consent(record.ConsentTest, "2026-04-01", "")}, false, ""},
		{"twice", []record.Consent{consent(record.ConsentTest, "2026-02-01", "2026-04-10"), consent(record.ConsentTest, "2026-01-01", "2026-03-10")}, true, "2026-04-10"},
		{"a record that was removed", []record.Consent{gone}, false, ""},
		{"to the coach alone", []record.Consent{consent(record.ConsentCoach, "2026-01-01", "2026-03-10")}, false, "2026-03-10"},
		{"both", []record.Consent{consent(record.ConsentTest, "2026-01-01", "2026-04-10"), consent(record.ConsentCoach, "2026-01-01", "2026-03-10")}, true, "2026-04-10"},
		{"both, the other way", []record.Consent{consent(record.ConsentTest, "2026-01-01", "2026-03-10"), consent(record.ConsentResearch, "2026-01-01", "2026-04-10")}, true, "2026-04-10"},
	} {
		a := record.Athlete{Consents: c.list}
		if got := TestConsentWithdrawn(a, "2026-05-14"); got != c.test {
			t.Errorf("%s: %v", c.name, got)
		}
		if got, ok := Withdrawn(a, "2026-05-14"); got != c.day || ok != (c.day != "") {
			t.Errorf("%s: %s, %v", c.name, got, ok)
		}
	}
	_, a := caseSheet()
	a.Consents = []record.Consent{consent(record.ConsentTest, "2026-01-01", "2026-03-10")}
	sameKinds(t, "withdrawn", AlertsOf(a, nil, day()), AlertWithdrawn)
}

func TestAlertsOfAPlan(t *testing.T) {
	for _, c := range []struct {
		name   string
		heat   climate.Level
		review record.Date
		want   []AlertKind
	}{
		{"watched", climate.Reduce - 1, "", nil}, {"reduced", climate.Reduce, "", []AlertKind{AlertHeat}},
		{"limited", climate.Reduce + 1, "2026-05-13", []AlertKind{AlertHeat, AlertReview}},
		{"today", climate.UsualCare, "2026-05-14", nil}, {"yesterday", climate.UsualCare, "2026-05-13", []AlertKind{AlertReview}},
	} {
		x := Case{said: &said{heat: c.heat}}
		x.Plan.Agreement.Review = c.review
		sameKinds(t, c.name, PlanAlerts(x, "2026-05-14"), c.want...)
	}
	changed := Case{said: &said{}, Since: Since{Changed: true}}
	sameKinds(t, "corrected", PlanAlerts(changed, "2026-05-14"), AlertSince)
}

// Where an untested athlete starts is asked for each sport anew.
func TestStartOfEachSport(t *testing.T) {
	_, a := caseSheet()
	d := testSetup(t)
	d.Start = func(sport string) climate.Start {
		if sport == "rowing" {
			return climate.Start{Offset: 0.1, SD: 0.2, Athletes: 9}
		}
		return climate.Start{}
	}
	q := Ask(a, nil, d)
	air := record.Air{Temperature: record.Num(25, "°C"), Humidity: record.Num(50, "%"), Sun: "shade"}
	start := func(sport string) climate.Start {
		r, err := q.Calculate(Outing{Session: record.Session{Sport: sport, Effort: record.Num(6, "")}, Air: air, Minutes: 60}, day())
		if err != nil {
			t.Fatal(err)
		}
		return r.Climate.Start
	}
	if first, then, last := start("basketball"), start("rowing"), start("basketball"); first != climate.UsualStart() || then.Athletes != 9 || last != first {
		t.Errorf("%+v, %+v, %+v", first, then, last)
	}
}

// A month is 365.25/12 days.
func TestMonthsAgo(t *testing.T) {
	at := func(on record.Date) float64 {
		return monthsAgo(record.Test{Session: record.Session{Date: on}}, day())
	}
	near(t, "a year", at("2025-05-14"), 365/30.4375, 1e-9)
	near(t, "ten days", at("2026-05-04"), 10/30.4375, 1e-9)
	near(t, "to come", at("2026-06-14"), 0, 0)
	if d := TestDay(record.Test{Meta: record.Meta{CreatedAt: day().Add(time.Hour)}}); !d.Equal(day().Add(time.Hour)) {
		t.Errorf("%v", d)
	}
}
