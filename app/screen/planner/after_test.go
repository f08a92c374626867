package planner

import (
	"strings"
	"testing"

	"ebbwell/internal/handout"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// What the day says of the hours after the session, the page says too: by the
// hours to the next session, and by what follows on the same day.
func TestDayAndPageSayTheSameOfAfter(t *testing.T) {
	b := begun(t)
	b.option(record.OptionFood)
	tab := b.v.ui.parts[TabDay].(*dayTab)
	check := func(name string, soon bool, further int, words string) {
		t.Helper()
		sessions, _, _, wrong := tab.sessions()
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
		a := handout.AthletePageOf(b.v.now.planCase, b.v.now.hand(), b.desk.Practice(), b.desk.Words).After
		if (code == plan.DayDrinkAfter) != soon || a.Soon != soon || a.Large || len(a.Further) != further {
			t.Errorf("%s: the day says %q, the page %+v", name, code, a)
		}
		rows := ""
		for i := range tab.table.Rows() {
			rows += strings.Join(tab.table.Row(i), " ") + "\n"
		}
		if !strings.Contains(rows, words) {
			t.Errorf("%s: the day reads %s", name, rows)
		}
	}
	b.tab(TabDay)
	check("alone", false, 0, "Meals and water are enough")
	b.Click("planner.day.add")
	b.Fill("planner.day.session.2.start", "18:00")
	check("a second one at 18:00", true, 1, "With the next session within 12 hours")
	b.settle()
	b.Click("planner.day.session.2.remove")
	check("the second taken out", false, 0, "Meals and water are enough")
	b.tab(TabSession)
	b.Fill("planner.session.next", "20")
	b.tab(TabDay)
	check("the next in 20 h, none that day", true, 0, "With the next session within a day")
}
