package practice

import (
	"math"
	"strings"
	"testing"
	"time"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

func TestEveryThresholdIsListed(t *testing.T) {
	w := apptest.Words(t)
	all := thresholdsOf(w)
	if len(all) != len(evidence.All())+len(evidence.Statements()) || len(all) < 300 {
		t.Fatalf("%d lines of %d thresholds and %d statements", len(all), len(evidence.All()), len(evidence.Statements()))
	}
	for _, line := range all {
		e := line.entry
		if named := e.Source.Name(w.Say) + e.Source.Title(w.Say); named == "" || strings.Contains(named, "citation.") {
			t.Errorf("%s: the source is called %q", e.ID, named)
		}
		if line.what == "" || strings.Contains(desk.Sureness(w, e.Sure), "sure.") {
			t.Errorf("%s: %q, source %q, sureness %q", e.ID, line.what, e.Source.Title(w.Say), desk.Sureness(w, e.Sure))
		}
		if text := figure(w, e.Value); text == "" || (text == "0" || text == "0.000000") && e.Value != 0 {
			t.Errorf("%s: %g is written %q", e.ID, e.Value, text)
		}
	}
}

func TestSearchThresholds(t *testing.T) {
	w := apptest.Words(t)
	all := thresholdsOf(w)
	for text, id := range map[string]string{
		"specific gravity euhydrated": "marker.acsm.gravity", "goulet": "", "no source": "", "MMOL/L": "", "body mass before queried below": "limit.body mass before.warn.low",
	} {
		found := search(all, text, w)
		if len(found) == 0 || len(found) == len(all) {
			t.Errorf("%q finds %d of %d", text, len(found), len(all))
		}
		has := id == ""
		for _, f := range found {
			has = has || f.entry.ID == id
		}
		if !has {
			t.Errorf("%q does not find %s", text, id)
		}
	}
	if len(search(all, "no such words at all", w)) != 0 || len(search(all, " ", w)) != len(all) {
		t.Error("nothing, or everything, is found where it should not be")
	}
}

func TestFigure(t *testing.T) {
	w := apptest.Words(t)
	for x, want := range map[float64]string{0: "0", 2: "2", 1.02: "1.02", 0.0166667: "0.016667", 5.67e-8: "5.670 × 10^−8", -0.5: "−0.5", 40000: "40,000"} {
		if got := figure(w, x); got != want {
			t.Errorf("%g became %q, want %q", x, got, want)
		}
	}
}

func TestPastRetention(t *testing.T) {
	at := func(day string) time.Time {
		d, _ := time.Parse(time.DateOnly, day)
		return d
	}
	list := []store.AthleteSummary{
		{Person: store.Person{ID: "old", Name: "old", Born: "1980-01-01"}, ChangedAt: at("2014-03-01"), AthleteLine: store.AthleteLine{LastTest: store.TestLine{Date: "2014-02-01"}}},
		{Person: store.Person{ID: "tested", Name: "tested", Born: "1980-01-01"}, ChangedAt: at("2014-03-01"), AthleteLine: store.AthleteLine{LastTest: store.TestLine{Date: "2024-02-01"}}},
		{Person: store.Person{ID: "planned", Name: "planned", Born: "1980-01-01"}, ChangedAt: at("2014-03-01")},
		{Person: store.Person{ID: "minor", Name: "minor", Born: "2004-06-01"}, ChangedAt: at("2014-03-01")},
		{Person: store.Person{ID: "grown", Name: "grown", Born: "1996-01-01"}, ChangedAt: at("2012-03-01")},
		{Person: store.Person{ID: "new", Name: "new"}, ChangedAt: at("2026-05-01")},
	}
	ids := func(years int, last map[record.ID]record.Date) string {
		var out []string
		for _, p := range pastRetention(list, last, years, "2026-05-18") {
			out = append(out, string(p.id)+" "+string(p.due))
		}
		return strings.Join(out, ", ")
	}
	for _, c := range []struct {
		years int
		last  map[record.ID]record.Date
		want  string
	}{
		{10, nil, "old 2024-03-01, planned 2024-03-01, grown 2024-01-01"},
		{10, map[record.ID]record.Date{"planned": "2020-01-01"}, "old 2024-03-01, grown 2024-01-01"},
		{20, nil, ""},
		{0, nil, ""},
	} {
		got := ids(c.years, c.last)
		for _, one := range strings.Split(c.want, ", ") {
			if !strings.Contains(got, one) || strings.Count(got, ",") != strings.Count(c.want, ",") {
				t.Errorf("after %d years %q are past it, want %q", c.years, got, c.want)
			}
		}
		if c.want == "" && got != "" {
			t.Errorf("after %d years %q are past it, want nobody", c.years, got)
		}
	}
}

func TestBandRows(t *testing.T) {
	own := record.Settings{UrineBands: evidence.SetOwn, OwnGravityWell: record.Num(1.012, quantity.None), OwnGravityGreat: record.Num(1.025, quantity.None)}
	rows := bandRows(consult.BandsOf(own))
	if len(rows) != 3 || rows[0].high != 1.012 || rows[1].low != 1.012 || rows[1].high != 1.025 || !math.IsInf(rows[2].high, 1) {
		t.Errorf("own edges make %+v", rows)
	}
	if got := consult.BandsOf(record.Settings{}).ID; got != evidence.SetACSM {
		t.Errorf("without a choice the set is %q", got)
	}
	if !edgesInOrder(own) {
		t.Error("rising edges are called wrong")
	}
	own.OwnGravityMinimal = record.Num(1.026, quantity.None)
	if edgesInOrder(own) {
		t.Error("1.026 before 1.025 passes")
	}
}
