package app

import (
	"context"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/amount"
	"ebbwell/app/kit/desk"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// truth walks what is printed, and the screens of several athletes.
type truth struct{ hands }

// holds says which of the texts a page or screen lacks, by what they are.
func (h truth) holds(where, shown string, texts map[string]string) {
	h.t.Helper()
	shown = strings.ReplaceAll(shown, "\u00a0", " ")
	for what, text := range texts {
		if text = strings.ReplaceAll(text, "\u00a0", " "); text == "" || !strings.Contains(shown, text) {
			h.t.Errorf("%s does not show the %s, %q", where, what, text)
		}
	}
}

// saved is the running text of a page that a control saves.
func (h truth) saved(control, ask string) string {
	h.t.Helper()
	h.click(control)
	file := filepath.Join(h.t.TempDir(), "page.pdf")
	apptest.Type(h.t, h.w, ask+".path", file)
	apptest.Click(h.t, h.w, ask+".yes")
	return printed(h.t, file)
}

// asked is what a control opens on top of the window, which is closed again.
func (h truth) asked(control string) string {
	h.t.Helper()
	h.click(control)
	var list []string
	for top := h.w.Canvas().Overlays().Top(); top != nil; top = h.w.Canvas().Overlays().Top() {
		list = append(list, apptest.Texts(top)...)
		h.w.Canvas().Overlays().Remove(top)
	}
	return strings.Join(list, "\n")
}

func (h truth) writer(a record.Athlete) amount.Writer {
	d := h.program().Desk()
	return amount.Writer{Words: d.Words, US: d.US(), Hidden: care.Of(a, d.Now()).MassHidden}
}

// said is what every place says of a test: rate, range, and the deficit in the
// unit that the athlete's eyes may see.
func (h truth) said(f consult.Findings, a record.Athlete) (texts map[string]string, deficit string) {
	by, fluid := h.writer(a), f.Sweat.Fluid
	deficit = by.Amount(math.Abs(fluid.DeficitShare.Value), quantity.PerCent)
	if by.Hidden {
		deficit = by.Amount(math.Abs(fluid.Deficit.Value), quantity.Litre)
	}
	return map[string]string{"rate": by.Found(fluid.Rate), "range of the rate": by.Range(fluid.Rate), "loss": by.Found(fluid.Loss), "deficit": deficit}, deficit
}

// TestOneTruthOnPages walks the pages of each test and plan, the squad and its
// coach's page, the trip and its pages: each takes its figures from the same test
// and the same plan as the screens.
func TestOneTruthOnPages(t *testing.T) {
	s, w := start(t, t.TempDir(), true)
	h := truth{hands: hands{t: t, s: s, w: w}}
	d, ctx := h.program().Desk(), context.Background()
	list, err := d.Store.Athletes(ctx)
	must(t, err)
	var group []consult.Findings
	people := map[record.ID]record.Athlete{}
	reports, plans := 0, 0
	for _, line := range list {
		a, err := d.Store.LoadAthlete(ctx, line.ID)
		must(t, err)
		people[a.ID] = a
		tests, err := d.AllFindings(ctx, a)
		must(t, err)
		for i, f := range tests {
			if f.Sweat.Fluid.Rate.Ranged {
				h.report(f, a)
				reports++
			}
			if i == 0 {
				group = append(group, f)
			}
		}
		plans += h.plans(a, tests)
	}
	if reports < 10 || plans < 3 {
		t.Fatalf("only %d reports, %d plans", reports, plans)
	}
	h.squad(group, people)
	h.trips(people)
}

// report prints the report of a test.
func (h truth) report(f consult.Findings, a record.Athlete) {
	h.t.Helper()
	at := desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: f.Test.ID, Part: "findings"}
	texts, _ := h.said(f, a)
	name := a.Name + ", " + string(f.Test.Session.Date)
	h.holds(name+": the sheet", h.shows(at), texts)
	h.holds(name+": the letter", h.letter("findings.letter", "testsheet.letter"), texts)
	if f.Test.State == record.TestClosed {
		h.holds(name+": the report", h.saved("testsheet.report", "testsheet.print"), texts)
	}
}

// plans looks at the plan in force: what it is based on, and the athlete's page and
// cards, whose deficit is the planner's own.
func (h truth) plans(a record.Athlete, tests []consult.Findings) (walked int) {
	h.t.Helper()
	ctx, d := context.Background(), h.program().Desk()
	all, err := d.Store.Plans(ctx, a.ID)
	must(h.t, err)
	for _, p := range all {
		if p.State != record.PlanAgreed {
			continue
		}
		kept, err := d.KeptOfPlan(ctx, p.ID)
		must(h.t, err)
		c, err := consult.OpenPlan(p, a, tests, kept, d.Now(), d.Calculate())
		must(h.t, err)
		walked++
		h.onePlan(c, p, a, tests)
		break // the newest is the one that is printed
	}
	return walked
}

// onePlan holds the planner, its dialog and its pages against the plan that is kept.
func (h truth) onePlan(c consult.Case, p record.Plan, a record.Athlete, tests []consult.Findings) {
	h.t.Helper()
	sp := amount.Speaker{Words: h.program().Desk().Words, By: h.writer(a)}
	rate := c.Basis.Plan.SweatRate
	shown := h.shows(desk.Place{Screen: desk.Plan, Athlete: a.ID, Record: p.ID})
	based := map[string]string{"planned rate": sp.By.Amount(rate.Value, quantity.LitrePerHour), "planned range": sp.Rates(quantity.Range{Low: rate.Low, High: rate.High})}
	for _, f := range tests {
		if f.Test.ID == p.Basis.TestID {
			based["rate of its test"] = sp.By.Found(f.Sweat.Fluid.Rate)
		}
	}
	h.holds(a.Name+": what the plan is based on", h.asked("planner.basis"), based)
	option, _ := consult.InForce(p)
	at := c.Planner.Evaluate(0, c.MixOf(option))
	ends := sp.By.Amount(at.Deficit.Value, quantity.PerCent)
	if sp.By.Hidden {
		ends = sp.By.Amount(at.DeficitL.Value, quantity.Litre)
	}
	h.holds(a.Name+": the planner", shown, map[string]string{"deficit": ends})
	h.program().Open(desk.Place{Screen: desk.Plan, Athlete: a.ID, Record: p.ID})
	said := map[string]string{"deficit of the plan": ends, "carbohydrate of the plan": sp.By.Amount(at.Carbohydrate.TotalGH, quantity.GramPerHour)}
	for _, f := range tests {
		if f.Test.ID == p.Basis.TestID {
			said, _ := h.said(f, a)
			said["rate of its test"], said["deficit of its test"] = said["rate"], said["deficit"]
		}
	}
	h.holds(a.Name+": the letter of the plan", h.letter("planner.letter", "planner.letter"), said)
	h.program().Open(desk.Place{Screen: desk.Overview, Athlete: a.ID})
	newest, _ := h.said(tests[0], a)
	if tests[0].Sweat.Fluid.Rate.Ranged {
		newest["deficit of the plan"] = ends
		h.holds(a.Name+": the letter of the overview", h.letter("overview.letter", "overview.letter"), newest)
	}
	h.program().Open(desk.Place{Screen: desk.Handout, Athlete: a.ID})
	if h.hasControl("handoutview.save") {
		page := h.saved("handoutview.save", "handoutview.ask")
		texts := map[string]string{"deficit of the plan": ends}
		for _, f := range tests {
			if f.Test.ID == p.Basis.TestID {
				loss, _ := h.said(f, a)
				texts["loss of the test"], texts["deficit of the test"] = loss["loss"], loss["deficit"]
			}
		}
		h.holds(a.Name+": the page", page, texts)
	}
}

func (h truth) hasControl(name string) bool {
	w := walker{hands: h.hands}
	return w.has(name)
}

// squad puts the newest test of each athlete into one session and looks at its rows,
// the findings of the group and the coach's page.
func (h truth) squad(group []consult.Findings, people map[record.ID]record.Athlete) {
	h.t.Helper()
	d, ctx := h.program().Desk(), context.Background()
	g := record.GroupSession{
		Meta: record.Meta{ID: record.NewID()}, Name: "Squad (invented)", Session: group[0].Test.Session, Air: group[0].Test.Air,
		ScaleStep: record.Num(0.1, quantity.Kilogram),
	}
	for i, f := range group {
		g.Members = append(g.Members, record.Member{Meta: record.Meta{ID: record.NewID()}, AthleteID: f.Test.AthleteID, TestID: f.Test.ID, Order: i})
	}
	kept, err := d.Store.SaveGroupSession(ctx, g, store.Edit{})
	must(h.t, err)
	rows := h.shows(desk.Place{Screen: desk.TestDay, Record: kept.ID})
	lines := h.shows(desk.Place{Screen: desk.TestDay, Record: kept.ID, Part: desk.PartGroup})
	coach := h.saved("squad.coach", "squad.print.coach")
	shared := 0
	for _, f := range group {
		a := people[f.Test.AthleteID]
		if !f.Sweat.Fluid.Rate.Ranged {
			continue
		}
		texts, deficit := h.said(f, a)
		delete(texts, "range of the rate") // neither has room for it
		if f.Sweat.Fluid.Deficit.Value < 0 {
			texts["deficit"] = h.writer(a).Amount(-f.Sweat.Fluid.Deficit.Value, quantity.Litre)
		}
		h.holds(a.Name+": the findings of the group", line(lines, a.Name, 6), texts)
		delete(texts, "deficit")
		h.holds(a.Name+": the row of the squad", line(rows, a.Name, 6), texts)
		if strings.Contains(coach, a.Name) {
			shared++
			texts["deficit"] = deficit
			h.holds(a.Name+": the coach's page", coach[strings.Index(coach, a.Name):][:160], texts)
		}
	}
	if shared < 3 {
		h.t.Fatalf("only %d athletes are on the coach's page", shared)
	}
}

// line is what stands from a name on, a few texts long.
func line(shown, name string, texts int) string {
	_, after, found := strings.Cut(shown, "\n"+name+"\n")
	if !found {
		return ""
	}
	list := strings.Split(after, "\n")
	return strings.Join(list[:min(texts, len(list))], "\n")
}

// trips looks at each stop of each traveller, on the screen and on the page, and
// asks the plan of a test for its own conditions.
func (h truth) trips(people map[record.ID]record.Athlete) {
	h.t.Helper()
	d, ctx := h.program().Desk(), context.Background()
	trips, err := d.Store.Trips(ctx)
	must(h.t, err)
	trip := trips[0]
	h.program().Open(desk.Place{Screen: desk.Trip, Record: trip.ID, Part: string(trip.Stops[0].ID)})
	h.click("trip.print")
	folder := h.t.TempDir()
	apptest.Type(h.t, h.w, "trip.print.path", folder)
	apptest.Click(h.t, h.w, "trip.print.yes")
	walked := 0
	for _, s := range trip.Stops {
		shown := h.shows(desk.Place{Screen: desk.Trip, Record: trip.ID, Part: string(s.ID)})
		for _, member := range trip.Travellers {
			a := people[member.AthleteID]
			there := h.stop(trip, s, a)
			sp := heat.Speaker{Speaker: amount.Speaker{Words: d.Words, By: h.writer(a)}}
			rate := there.Calculation.Climate.Rate
			name := a.Name + " at " + s.Place
			h.holds(name+": the trip", line(shown, a.Name, 12), map[string]string{"range": sp.RatesShort(rate.Range)})
			page := printed(h.t, filepath.Join(folder, a.Name+", "+trip.Name+".pdf"))
			texts := map[string]string{"range": sp.Rates(rate.Range)}
			if !rate.Estimate {
				texts["rate"] = sp.Rate(rate.Value)
			}
			h.holds(name+": the page", page, texts)
			walked++
		}
	}
	if walked < 6 {
		h.t.Fatalf("only %d stops", walked)
	}
}

// stop works a stop out as a trip does.
func (h truth) stop(trip record.Trip, s record.Stop, a record.Athlete) consult.StopPlan {
	h.t.Helper()
	d, ctx := h.program().Desk(), context.Background()
	tests, err := d.AllFindings(ctx, a)
	must(h.t, err)
	tests = slices.DeleteFunc(tests, func(f consult.Findings) bool { return f.Test.State == record.TestOpen })
	plans, err := d.Store.Plans(ctx, a.ID)
	must(h.t, err)
	along, setup := consult.ToTakeAlong(plans), d.Calculate()
	if along != nil {
		kept, err := d.KeptOfPlan(ctx, along.ID)
		must(h.t, err)
		setup = setup.WithFrozen(kept)
	}
	places, err := climate.LoadPlaces()
	must(h.t, err)
	there, err := consult.NewTraveller(a, tests, along, places, d.Now(), setup).Plan(consult.WithHeatDay(trip, s, places))
	if err != nil && !there.Calculation.Climate.Rate.Ranged {
		h.t.Fatalf("%s at %s: %v", a.Name, s.Place, err)
	}
	return there
}
