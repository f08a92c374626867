package app

import (
	"archive/zip"
	"context"
	"encoding/csv"
	"fmt"
	"io"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/exchange"
	"ebbwell/internal/figure"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// TestOneTruthInExports: the tables for other programs have each test's rate, loss and
// deficit with their ranges as the sheet has them, to the last digit.
func TestOneTruthInExports(t *testing.T) {
	s, w := start(t, t.TempDir(), true)
	h := truth{hands: hands{t: t, s: s, w: w}}
	d, ctx := h.program().Desk(), context.Background()
	h.program().Open(desk.Place{Screen: desk.Practice, Part: "records"})
	h.click("practice.export.csv")
	file := filepath.Join(t.TempDir(), "all.zip")
	apptest.Type(t, w, "practice.export.ask.path", file)
	apptest.Click(t, w, "practice.export.ask.yes")
	rows := resultRows(t, file)
	list, err := d.Store.Athletes(ctx)
	must(t, err)
	walked := 0
	for _, line := range list {
		a, err := d.Store.LoadAthlete(ctx, line.ID)
		must(t, err)
		tests, err := d.AllFindings(ctx, a)
		must(t, err)
		for _, f := range tests {
			row, name := rows[string(f.Test.ID)], a.Name+", "+string(f.Test.Session.Date)
			for column, x := range map[string]figure.Figure{
				"rate [L/h]": f.Sweat.Fluid.Rate, "loss [L]": f.Sweat.Fluid.Loss,
				"deficit [%]": f.Sweat.Fluid.DeficitShare, "deficitVolume [L]": f.Sweat.Fluid.Deficit,
			} {
				holdColumn(t, name, row, column, x)
			}
			if f.Sweat.Fluid.Rate.Ranged {
				walked++
			}
			delete(rows, string(f.Test.ID))
		}
	}
	if walked < 10 || len(rows) > 0 {
		t.Errorf("%d tests walked, %d rows of no test", walked, len(rows))
	}
}

// holdColumn holds a column of a row, and those of its range, against a figure.
func holdColumn(t *testing.T, name string, row map[string]string, column string, x figure.Figure) {
	t.Helper()
	base, unit, _ := strings.Cut(column, " ")
	want := map[string]string{base: "", base + ".low": "", base + ".high": ""}
	text := func(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
	if x.Known {
		want[base] = text(x.Value)
	}
	if x.Ranged {
		want[base+".low"], want[base+".high"] = text(x.Range.Low), text(x.Range.High)
	}
	for key, value := range want {
		if got, ok := row[key+" "+unit]; !ok || got != value {
			t.Errorf("%s: the export has %s %q, the sheet %q", name, key, got, value)
		}
	}
}

// resultRows reads the table of results of an export, by test.
func resultRows(t *testing.T, file string) map[string]map[string]string {
	t.Helper()
	archive, err := zip.OpenReader(file)
	must(t, err)
	defer func() { must(t, archive.Close()) }()
	in, err := archive.Open(exchange.ResultsName + ".csv")
	must(t, err)
	data, err := io.ReadAll(in)
	must(t, err)
	must(t, in.Close())
	cells, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(string(data), "\ufeff"))).ReadAll()
	must(t, err)
	rows := map[string]map[string]string{}
	for _, line := range cells[1:] {
		row := map[string]string{}
		for i, column := range cells[0] {
			row[column] = line[i]
		}
		rows[row["testID"]] = row
	}
	return rows
}

// TestOneTruthInAgreementAndCard: the dialog that asks to agree a draft has the planner's
// figures; page and card of an agreed plan have the schedule that the planner has.
func TestOneTruthInAgreementAndCard(t *testing.T) {
	s, w := start(t, t.TempDir(), true)
	h := truth{hands: hands{t: t, s: s, w: w}}
	d, ctx := h.program().Desk(), context.Background()
	list, err := d.Store.Athletes(ctx)
	must(t, err)
	drafts, agreed := 0, 0
	for _, line := range list {
		a, err := d.Store.LoadAthlete(ctx, line.ID)
		must(t, err)
		tests, err := d.AllFindings(ctx, a)
		must(t, err)
		all, err := d.Store.Plans(ctx, a.ID)
		must(t, err)
		seen := map[record.PlanState]bool{}
		for _, p := range all {
			if seen[p.State] {
				continue
			}
			seen[p.State] = true
			kept, err := d.KeptOfPlan(ctx, p.ID)
			must(t, err)
			c, err := consult.OpenPlan(p, a, tests, kept, d.Now(), d.Calculate())
			must(t, err)
			switch p.State {
			case record.PlanDraft:
				if h.dialog(c, p, a) {
					drafts++
				}
			case record.PlanAgreed:
				h.card(c, p, a)
				agreed++
			case record.PlanReplaced:
			}
		}
	}
	if drafts < 1 || agreed < 3 {
		t.Fatalf("%d drafts, %d agreed plans", drafts, agreed)
	}
}

// dialog asks to agree a draft; ok is false where it may not be agreed yet.
func (h truth) dialog(c consult.Case, p record.Plan, a record.Athlete) (ok bool) {
	h.t.Helper()
	by := h.writer(a)
	h.program().Open(desk.Place{Screen: desk.Plan, Athlete: a.ID, Record: p.ID})
	if !h.hasControl("planner.agree") {
		return false
	}
	said := h.asked("planner.agree")
	chosen := consult.Meant(p)
	q := c.Planner.Evaluate(plan.Expected, c.Carried(chosen))
	end, unit := q.Deficit, quantity.PerCent
	if by.Hidden {
		end, unit = q.DeficitL, quantity.Litre
	}
	ends, spread := by.Signed(-end.Value, unit), by.Words.Say("planner.to", by.Number(-end.Low, unit), by.Signed(-end.High, unit))
	h.holds(a.Name+": the agreement", said, map[string]string{
		"deficit": ends, "its range": spread, "carbohydrate": by.Amount(q.Carbohydrate.TotalGH, quantity.GramPerHour), "limit": by.Amount(care.StopsAt(q.Ceiling, by.Hidden), quantity.Litre),
	})
	compared := h.shows(desk.Place{Screen: desk.Plan, Athlete: a.ID, Record: p.ID, Part: "beside"})
	h.holds(a.Name+": the options compared", compared, map[string]string{"deficit": ends, "carbohydrate": by.Amount(q.Carbohydrate.TotalGH, quantity.GramPerHour)})
	return true
}

// card saves the kit-bag card and the page of an agreed plan as PDF and as pictures.
func (h truth) card(c consult.Case, p record.Plan, a record.Athlete) {
	h.t.Helper()
	by, name := h.writer(a), a.Name
	h.program().Open(desk.Place{Screen: desk.Handout, Athlete: a.ID})
	if !h.hasControl("handoutview.save") {
		return
	}
	option, _ := consult.InForce(p)
	var s plan.Schedule
	c.Schedule(c.MixOf(option), &s)
	texts := map[string]string{}
	var sums [plan.Drinks]float64
	for _, take := range s.Takes {
		for d, ml := range take.ByDrink {
			sums[d] += float64(ml)
		}
		if take.Mouthfuls > 0 {
			texts[fmt.Sprintf("mouthfuls at minute %.0f", take.Chance.Minute)] = by.Words.Say("planner.mouthfuls", take.Mouthfuls)
		}
	}
	for d, ml := range sums {
		if ml > 0 {
			texts[fmt.Sprintf("total of drink %d", d)] = by.Amount(ml, quantity.Millilitre)
		}
	}
	if len(texts) < 2 {
		h.t.Errorf("%s: a plan of %v", name, texts)
	}
	h.holds(name+": the page", h.saved("handoutview.save", "handoutview.ask"), texts)
	h.pick("handoutview.page", h.say("handoutview.page.kit-bag-card"))
	h.holds(name+": the card", h.saved("handoutview.save", "handoutview.ask"), texts)
}
