package plan

import (
	"errors"
	"math"
	"strings"
	"testing"

	"ebbwell/assets"
	"ebbwell/internal/plan/proposal"
)

// A chance is never called dry where the plan is not, and what its gels are taken with
// is never more than is drunk there, for any mix and for habits with gels and without.
func TestTakesAreDryAsThePlanIs(t *testing.T) { //nolint:gocognit // loops over mixes and takes
	p := courtPlanner(t)
	chances := courtChances(t, p.Session().Minutes[Expected])
	var s Schedule
	dry, wet := 0, 0
	for _, habit := range [...]Mix{{Water: 600}, {Water: 600, Food3: 1}} {
		from := p.From(habit, Background{Stomach: proposal.Is(1)})
		for water := 0.0; water <= 1200; water += 75 {
			for drink := 0.0; drink <= 600; drink += 150 {
				for gels := 1.0; gels <= 3; gels++ {
					from.Schedule(Expected, Mix{Water: water, Drink1: drink, Food3: gels}, chances, 25, &s)
					mix := s.Carried(Mix{Water: water, Drink1: drink, Food3: gels})
					lacks := from.Evaluate(Expected, mix).Guards.Has(DryFood)
					called := false
					for _, take := range s.Takes {
						called = called || take.Dry
						if !take.Dry && take.WaterWantedML > take.ML {
							t.Fatalf("%v: with %d mL of %d", mix, take.WaterWantedML, take.ML)
						}
					}
					if called != lacks {
						t.Fatalf("%v: the plan is dry: %v, a chance: %v", mix, lacks, called)
					}
					if lacks {
						dry++
					} else {
						wet++
					}
				}
			}
		}
	}
	if dry < 20 || wet < 20 {
		t.Errorf("%d dry plans and %d others", dry, wet)
	}
}

func TestTennisCounts(t *testing.T) {
	for _, c := range []struct {
		sets []TennisSet
		want int
	}{
		{[]TennisSet{{6, 4}, {6, 4}}, 9},
		{[]TennisSet{{6, 0}, {6, 0}}, 5},
		{[]TennisSet{{7, 6}, {6, 7}, {6, 4}}, 5 + 1 + 5 + 1 + 4},
		{[]TennisSet{{1, 0}}, 0},
		{nil, 0},
	} {
		list, err := TennisChances(c.sets, 100)
		if err != nil || len(list) != c.want {
			t.Errorf("%v: %d chances, want %d (%v)", c.sets, len(list), c.want, err)
		}
		for i := 1; i < len(list); i++ {
			if list[i].Minute <= list[i-1].Minute || list[i].Minute >= 100 {
				t.Errorf("%v: chance at %g after %g min", c.sets, list[i].Minute, list[i-1].Minute)
			}
		}
	}
	for _, bad := range []TennisSet{{-1, 6}, {0, 0}, {900, 2}} {
		if _, err := TennisChances([]TennisSet{bad}, 100); !errors.Is(err, ErrScore) {
			t.Errorf("%v: %v", bad, err)
		}
	}
}

// The table of tennis and the count by games place the same nine rests.
func TestTableAndGamesAgree(t *testing.T) {
	byGames := courtChances(t, 100)
	for _, s := range sports(t) {
		if s.Code != "tennis" {
			continue
		}
		list := s.Chances(100, Hot)
		if len(list) != len(byGames) {
			t.Fatalf("%d and %d", len(list), len(byGames))
		}
		for i := range list {
			if list[i] != byGames[i] {
				t.Errorf("%+v and %+v", list[i], byGames[i])
			}
		}
		return
	}
	t.Fatal("no tennis")
}

func sports(t testing.TB) []Sport {
	t.Helper()
	list, err := Sports()
	if err != nil {
		t.Fatal(err)
	}
	return list
}

// Every sport has chances, in order, inside the session; breaks for heat only in it.
func TestSportsExpand(t *testing.T) {
	list := sports(t)
	if len(list) < 15 {
		t.Fatalf("%d sports", len(list))
	}
	for _, s := range list {
		cool, hot := s.Chances(90, Temperate), s.Chances(90, Hot)
		if len(cool) == 0 || len(hot) < len(cool) {
			t.Errorf("%s: %d chances, %d when hot", s.Code, len(cool), len(hot))
		}
		last := 0.0
		for _, c := range hot {
			if c.Minute < last || c.Minute > 90 || c.Code == "" {
				t.Errorf("%s: %+v after %g", s.Code, c, last)
			}
			last = c.Minute
		}
		for _, c := range cool {
			if c.Certainty == IfHot {
				t.Errorf("%s: a break for heat in mild air", s.Code)
			}
		}
		if s.Chances(0, Hot) != nil || s.Chances(math.NaN(), Hot) != nil {
			t.Errorf("%s: chances in no session", s.Code)
		}
	}
}

func TestReadSportsRefuses(t *testing.T) {
	head := chanceColumns + "\n"
	for name, row := range map[string]string{
		"no rows": "", "no sport": ",s,90,c,10,,60,yes,yes,R,\n", "both": "a,s,90,c,10,5,60,yes,yes,R,\n",
		"neither": "a,s,90,c,,,60,yes,yes,R,\n", "moments of no session": "a,s,,c,0,,60,yes,yes,R,\n", "odd word": "a,s,90,c,10,,60,yes,perhaps,R,\n",
		"odd eating": "a,s,90,c,10,,60,some,yes,R,\n", "after the end": "a,s,90,c,100,,60,yes,yes,R,\n",
		"not a time": "a,s,90,c,x,,60,yes,yes,R,\n", "negative": "a,s,90,c,10,,-60,yes,yes,R,\n",
		"too often": "a,s,,c,,0.1,60,yes,yes,R,\n", "infinite": "a,s,,c,,Inf,60,yes,yes,R,\n",
		"breaks on one another": "a,s,90,c,40 45,,600,yes,yes,R,\n", "a break past the end": "a,s,90,c,85,,600,yes,yes,R,\n", "nothing but a break": "a,s,15,c,0,,900,yes,yes,R,\n",
	} {
		if list, err := ReadSports(strings.NewReader(head + row)); !errors.Is(err, ErrTable) || list != nil {
			t.Errorf("%s: %v %v", name, list, err)
		}
	}
	if _, err := ReadSports(strings.NewReader("a,b\n1,2\n")); !errors.Is(err, ErrTable) {
		t.Errorf("other columns: %v", err)
	}
}

// A table is refused, or its chances lie in order inside the session.
func FuzzReadSports(f *testing.F) {
	f.Add(string(assets.Breaks()), 90.0)
	f.Add(chanceColumns+"\na,s,90,c,10 20,,60,yes,maybe,R,\n", 200.0)
	f.Add("sport\nx\n", 5.0)
	// Rows without minutes, alone and beside one that has them.
	f.Add(chanceColumns+"\na,s,,c,10 20,,60,yes,yes,R,\n", 90.0)
	f.Add(chanceColumns+"\na,s,,c,,10,60,yes,yes,R,\n", 90.0)
	f.Add(chanceColumns+"\na,s,,c,,10,60,yes,yes,R,\na,s,90,c,45,,900,yes,yes,R,\n", 200.0)
	f.Add(chanceColumns+"\na,s,90,c,45,,900,yes,yes,R,\na,s,,c,,7,60,yes,if-hot,R,\n", 30.0)
	// Long breaks that lie on one another.
	f.Add(chanceColumns+"\na,s,150,c,0 0,,700,yes,yes,,\na,s,150,c,0,1,,yes,yes,,\n", 37.0)
	f.Add(chanceColumns+"\na,s,150,c,0 0,,700,yes,yes,,\n", 37.0)
	f.Fuzz(func(t *testing.T, text string, minutes float64) {
		list, err := ReadSports(strings.NewReader(text))
		if err != nil {
			if list != nil {
				t.Fatal("half a table beside an error")
			}
			return
		}
		minutes = math.Min(minutes, 1440)
		for _, s := range list {
			last := 0.0
			for _, c := range s.Chances(minutes, Hot) {
				if !(c.Minute >= last) || c.Minute > minutes*(1+1e-9) {
					t.Fatalf("chance at %g after %g of %g min", c.Minute, last, minutes)
				}
				last = c.Minute
			}
		}
	})
}

func TestMouthfuls(t *testing.T) {
	if m, err := MouthfulFromTen(800, 420, 1); err != nil || m != 38 {
		t.Errorf("ten mouthfuls of 38 mL: %g %v", m, err)
	}
	for _, c := range [][3]float64{{400, 420, 1}, {800, 420, 0}, {800, 799, 1}, {math.NaN(), 1, 1}, {9000, 1, 1}} {
		if _, err := MouthfulFromTen(c[0], c[1], c[2]); !errors.Is(err, ErrMouthful) {
			t.Errorf("%v: %v", c, err)
		}
	}
}
