package planner

import (
	"strings"
	"testing"

	"ebbwell/app/screen/planner/day"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/handout"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// What the day says of the hours after the session, the page says too: by the
// hours to the next session, and by what follows on the same day.
func TestDayAndPageSayTheSameOfAfter(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	tab := b.v.ui.parts[part.TabDay].(*day.DayTab)
	check := func(name string, soon bool, further int, words string) {
		t.Helper()
		sessions, _, _, wrong := tab.Sessions()
		day, err := plan.PlanDay(sessions)
		if err != nil || wrong != "" {
			t.Fatalf("%s: %v, %q", name, err, wrong)
		}
		code := ""
		for _, e := range day.Events {
			if e.Session == 0 && (e.Code == plan.DayDrinkAfter || e.Code == plan.DayAsUsual) {
				code = e.Code
			}
		}
		a := handout.AthletePageOf(b.v.Now.PlanCase, b.v.Now.Selected(), b.desk.Practice(), b.desk.Words).After
		if (code == plan.DayDrinkAfter) != soon || a.Soon != soon || a.Large || len(a.Further) != further {
			t.Errorf("%s: the day says %q, the page %+v", name, code, a)
		}
		rows := ""
		for i := range tab.Table.Rows() {
			rows += strings.Join(tab.Table.Row(i), " ") + "\n"
		}
		if !strings.Contains(rows, words) {
			t.Errorf("%s: the day reads %s", name, rows)
		}
	}
	b.tab(part.TabDay)
	check("alone", false, 0, "Meals and water are enough")
	b.Click("planner.day.add")
	b.Fill("planner.day.session.2.start", "18:00")
	check("a second one at 18:00", true, 1, "If the next session is within 12 hours")
	b.settle()
	b.Click("planner.day.session.2.remove")
	check("the second taken out", false, 0, "Meals and water are enough")
	b.tab(part.TabSession)
	b.Fill("planner.session.next", "20")
	b.tab(part.TabDay)
	check("the next in 20 h, none that day", true, 0, "If the next session is within a day")
}
