package figures

import (
	"ebbwell/app/kit/copying"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/plan"
)

// Copied are the figures of the picture: the deficit as the session goes on, with its range,
// and that of the habit.
func Copied(v *part.Plan) copying.Table {
	sp, k := v.Speaker, &v.Live
	t := copying.Table{
		Name:   sp.Say("planner.deficit.picture.short"),
		Titles: []string{sp.Say("planner.chance.minute"), sp.Say("planner.deficit.plan"), sp.Say("findings.range.hidden"), sp.Say("planner.deficit.habit")},
	}
	course, usual := k.Course, k.Usual
	if k.Even() {
		course = []plan.Point{{Minute: k.At.Minutes, DeficitL: k.At.DeficitL, Deficit: k.At.Deficit}}
	}
	if k.HabitEven() {
		usual = []plan.Point{{Minute: k.Habit.Minutes, DeficitL: k.Habit.DeficitL, Deficit: k.Habit.Deficit}}
	}
	for _, p := range course {
		x, u := sp.End(p.DeficitL, p.Deficit)
		row := []string{sp.Words.Number(p.Minute, 0), sp.Change(x.Value, u), sp.Say("planner.to", sp.By.Number(x.High, u), sp.Change(x.Low, u)), ""}
		for _, h := range usual {
			if h.Minute == p.Minute {
				x, u := sp.End(h.DeficitL, h.Deficit)
				row[3] = sp.Change(x.Value, u)
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
