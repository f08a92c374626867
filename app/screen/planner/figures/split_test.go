package figures

import (
	"testing"

	"fyne.io/fyne/v2/test"

	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/plan"
)

// What is taken at the selected break gives way where there is little room: first the
// names of the products, then the amounts; the name of the break is there whole or not
// at all.
func TestTheSplitGivesWay(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.NewTheme(false, 100))
	s := newSplit(wording.Speaker{})
	s.at.SetText("half-time:")
	s.whole[plan.Drink1], s.brief[plan.Drink1] = "300 mL sports drink 6 %", "300 mL"
	s.whole[plan.Food1], s.brief[plan.Food1] = "½ fig bar", "½"
	seen := func() (list []string) {
		for i, n := range s.names {
			if n.Visible() {
				if !s.marks[i].Visible() {
					t.Errorf("%q has no mark", n.Text())
				}
				list = append(list, n.Text())
			}
		}
		return list
	}
	was := 3
	for room := float32(500); room > 0; room -= 5 {
		fits := s.fit(room)
		if !fits {
			if room >= s.at.MinSize().Width+1 {
				t.Fatalf("%g px have no room for %q", room, s.at.Text())
			}
			break
		}
		if got := s.row.MinSize().Width; got > room {
			t.Errorf("%g px wide in %g", got, room)
		}
		now := 0
		switch list := seen(); {
		case len(list) == 2 && list[0] == s.whole[plan.Drink1] && list[1] == s.whole[plan.Food1]:
			now = 3
		case len(list) == 2 && list[0] == "300 mL" && list[1] == "½":
			now = 2
		case len(list) == 0:
			now = 1
		default:
			t.Errorf("%g px: %q", room, list)
		}
		if now > was || now < was-1 {
			t.Errorf("%g px: from form %d to %d", room, was, now)
		}
		was = now
	}
	if was != 1 {
		t.Errorf("it ends in form %d", was)
	}
}
