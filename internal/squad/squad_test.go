package squad

import (
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// day is the session of the tests: 17:05 to 18:40 at 29 °C and 52 %, 7.0 MET.
func day() record.GroupSession {
	g := record.GroupSession{Meta: record.Meta{ID: record.NewID()}, Name: "hard practice", ScaleStep: record.Num(0.1, quantity.Kilogram)}
	g.Session = record.Session{Date: "2026-05-18", Start: "17:05", End: "18:40", Met: record.Num(7, quantity.Met)}
	g.Air = record.Air{Temperature: record.Num(29, quantity.DegreeCelsius), Humidity: record.Num(52, quantity.PerCent)}
	for i := range 2 {
		g.Bottles = append(g.Bottles, record.BottleKind{Meta: record.Meta{ID: record.NewID()}, Order: i + 1, ProductID: consult.Water})
	}
	return g
}

// squadOf are athletes on a session, with usual masses.
type squadOf struct {
	t      *testing.T
	g      record.GroupSession
	sheets map[record.ID]Sheet
}

func newSquad(t *testing.T, g record.GroupSession, usual ...float64) *squadOf {
	t.Helper()
	s := &squadOf{t: t, g: g, sheets: map[record.ID]Sheet{}}
	names := []string{"Tamsin Orrelby", "Neve Carrowmere", "Runa Hollowick", "Senna Dunmarsh", "Edda Quarnford", "Lia Fennick", "Ravka Oldenmoor", "Maren Stillwell"}
	for i, kg := range usual {
		name := fmt.Sprint("Athlete ", i+1)
		if i < len(names) {
			name = names[i]
		}
		a := record.Athlete{Meta: record.Meta{ID: record.NewID()}, Name: name, Born: "2000-01-01", Sex: record.Female}
		if kg > 0 {
			a.UsualMass = record.Num(kg, quantity.Kilogram)
		}
		sheet := NewSheet(s.g, a, at18(47))
		s.g.Members = append(s.g.Members, record.Member{AthleteID: a.ID, TestID: sheet.ID, Order: i + 1, Bib: fmt.Sprint(i + 1)})
		s.sheets[sheet.ID] = Sheet{Athlete: a, Test: sheet}
	}
	return s
}

func at18(minute int) time.Time { return time.Date(2026, 5, 18, 18, minute, 0, 0, time.UTC) }

// edit changes the sheet of the i-th member.
func (s *squadOf) edit(i int, f func(*record.Test)) {
	sheet := s.sheets[s.g.Members[i].TestID]
	sheet.Test = sheet.Test.Clone()
	f(&sheet.Test)
	s.sheets[sheet.Test.ID] = sheet
}

// weigh adds a weighing.
func weigh(m record.Moment, kg float64) func(*record.Test) {
	return func(t *record.Test) {
		t.Weighings = append(t.Weighings, record.Weighing{Meta: record.Meta{ID: record.NewID()}, Moment: m, Order: len(t.Weighings) + 1, Mass: record.Num(kg, quantity.Kilogram)})
	}
}

// bottles sets before, after and refill, g, of the bottles.
func bottles(list ...[3]float64) func(*record.Test) {
	return func(t *record.Test) {
		for i, x := range list {
			t.Bottles[i].Before, t.Bottles[i].After = record.Num(x[0], quantity.Gram), record.Num(x[1], quantity.Gram)
			if x[2] > 0 {
				PutAmounts(&t.Bottles[i], []float64{x[2]}, 0)
			}
		}
	}
}

func noUrine(t *record.Test) { t.Loss.NoUrine = true }

func asked(t *record.Test) {
	for _, x := range consult.Asked() {
		t.Safety = append(t.Safety, record.SafetyNote{Kind: record.SafetyAsked, Item: x, Answer: record.AnswerNo})
	}
}

func (s *squadOf) rows(now time.Time) []Row {
	s.t.Helper()
	generic, err := fuel.Generic()
	if err != nil {
		s.t.Fatal(err)
	}
	return new(Looker).Look(s.g, s.sheets, now, consult.Setup{Pantry: consult.NewPantry(generic, nil)})
}

// TestLossAtOnce: the loss stands the moment a mass after does: mass change and
// drinks less breath and gas exchange (2.136 g/kg at 7.0 MET, 29 °C, 52 %, 95 min).
func TestLossAtOnce(t *testing.T) {
	s := newSquad(t, day(), 61.8, 83.2, 72.4)
	s.edit(0, weigh(record.Before, 61.8))
	s.edit(0, bottles([3]float64{742, 402}, [3]float64{688, 452}))
	s.edit(0, weigh(record.After, 60.7))
	s.edit(1, weigh(record.Before, 83.2))
	s.edit(1, bottles([3]float64{742, 186, 610}, [3]float64{690, 180, 600}))
	s.edit(1, weigh(record.After, 83.5))
	s.edit(2, weigh(record.Before, 72.4))
	s.edit(2, bottles([3]float64{742, 318}, [3]float64{688, 402}))
	s.edit(2, weigh(record.After, 67.1))
	rows := s.rows(at18(47))
	for i, want := range []float64{1.544, 1.798, 5.855} {
		if got := rows[i].Loss; !got.Known || math.Abs(got.Value-want) > 0.006 {
			t.Errorf("%s lost %.3f L (%v), want %.3f", rows[i].Sheet.Athlete.Name, got.Value, got.Known, want)
		}
		if rows[i].Loss.Ranged {
			t.Errorf("%s: the loss is final without urine", rows[i].Sheet.Athlete.Name)
		}
	}
	if r := rows[1]; !r.Flagged || !r.Flag.Gained || r.State != Check || !slices.Contains(r.Missing, LackSecond) || !slices.Contains(r.Missing, LackTold) {
		t.Errorf("the gain stands as %v, missing %v", r.State, r.Missing)
	}
	if r := rows[2]; len(r.Odd) != 1 || r.Odd[0].Code != OddChange || !r.Odd[0].WeighAgain || r.State != Check {
		t.Errorf("5.3 kg in 95 min: %+v, %v", r.Odd, r.State)
	}
	if low, high, ok := rows[0].Effect(LackUrine); !ok || low >= high {
		t.Errorf("what urine does: %v %v %v", low, high, ok)
	}
	if drunk, ok := rows[1].Drunk(0); !ok || math.Abs(drunk-1166) > 3 {
		t.Errorf("drunk %v", drunk)
	}
}

// TestStates follows a row through the day.
func TestStates(t *testing.T) {
	g := day()
	s := newSquad(t, g, 61.8)
	want := func(state State, now time.Time, missing ...string) {
		t.Helper()
		r := s.rows(now)[0]
		if r.State != state || !slices.Equal(r.Missing, missing) {
			t.Errorf("at %s: %s, missing %q, want %s, %q", now.Format("15:04"), r.State, r.Missing, state, missing)
		}
	}
	start := time.Date(2026, 5, 18, 17, 0, 0, 0, time.UTC)
	want(ToWeighBefore, start, LackBefore, LackBottles)
	s.edit(0, weigh(record.Before, 61.8))
	s.edit(0, func(t *record.Test) {
		for i := range t.Bottles {
			t.Bottles[i].Before = record.Num(740, quantity.Gram)
		}
	})
	s.edit(0, func(one *record.Test) { TurnPatches(s.g, one, start.Add(20*time.Minute)) })
	want(Playing, start.Add(30*time.Minute), LackBottlesLeft, LackAfter, LackUrine)
	want(ToWeighAfter, at18(47), LackBottlesLeft, LackAfter, LackUrine)
	s.edit(0, bottles([3]float64{740, 400}, [3]float64{740, 500}))
	s.edit(0, weigh(record.After, 60.7))
	want(Check, at18(47), LackUrine, LackSymptoms, LackPatch)
	s.edit(0, noUrine)
	s.edit(0, asked)
	s.edit(0, func(one *record.Test) { TurnPatches(s.g, one, at18(48)) })
	want(Done, at18(49), LackLaboratory)
	if r := s.rows(at18(49))[0]; !r.Patch.Off || r.Patch.Minutes != 88 || r.Patch.At != "18:48" {
		t.Errorf("the patch: %+v", r.Patch)
	}
}

// mistake is one mistake, and what is said of it.
type mistake struct {
	edit func(s *squadOf)
	code string
	name string
	b    float64
}

// mistakes are those that are made at the scale.
func mistakes() map[string]mistake {
	return map[string]mistake{
		"pounds before":  {func(s *squadOf) { s.edit(0, weigh(record.Before, 136.2)) }, OddPounds, "", 61.8},
		"digits before":  {func(s *squadOf) { s.edit(0, weigh(record.Before, 16.8)) }, OddDigits, "", 61.8},
		"another before": {func(s *squadOf) { s.edit(0, weigh(record.Before, 83.2)) }, OddAnother, "Neve Carrowmere", 0},
		"usual before":   {func(s *squadOf) { s.edit(0, weigh(record.Before, 66.6)) }, OddUsual, "", 61.8},
		"pounds after": {func(s *squadOf) {
			s.edit(0, weigh(record.Before, 61.8))
			s.edit(0, weigh(record.After, 134.0))
		}, OddPounds, "", 60.8},
		"digits after": {func(s *squadOf) {
			s.edit(0, weigh(record.Before, 61.8))
			s.edit(0, weigh(record.After, 67.0))
		}, OddDigits, "", 60.7},
		"same": {func(s *squadOf) {
			s.edit(0, weigh(record.Before, 61.8))
			s.edit(0, weigh(record.After, 61.8))
		}, OddSame, "", 0},
		"change": {func(s *squadOf) {
			s.edit(0, weigh(record.Before, 61.8))
			s.edit(0, weigh(record.After, 58.9))
		}, OddChange, "", 58.9},
		"another after": {func(s *squadOf) {
			s.edit(0, weigh(record.Before, 61.8))
			s.edit(0, weigh(record.After, 83.1))
		}, OddAnother, "Neve Carrowmere", 0},
		"apart": {func(s *squadOf) {
			s.edit(0, weigh(record.Before, 61.8))
			s.edit(0, weigh(record.After, 60.7))
			s.edit(0, weigh(record.After, 60.9))
		}, OddApart, "", 60.9},
		"bottle heavier": {func(s *squadOf) {
			s.edit(0, bottles([3]float64{300, 640}, [3]float64{688, 452}))
		}, OddBottle, "", 640},
		"bottles swapped": {func(s *squadOf) {
			s.edit(0, bottles([3]float64{500, 640}, [3]float64{700, 720}))
			s.edit(0, bottles([3]float64{700, 720}, [3]float64{900, 650}))
		}, OddBottle, "", 720},
		"another's bottle": {func(s *squadOf) {
			s.edit(0, bottles([3]float64{300, 640}, [3]float64{688, 452}))
			s.edit(1, func(t *record.Test) { t.Bottles[0].Before = record.Num(742, quantity.Gram) })
		}, OddBottleOther, "Neve Carrowmere", 640},
		"a bottle not drunk from": {func(s *squadOf) {
			s.edit(0, bottles([3]float64{742, 742}, [3]float64{688, 452}))
		}, OddUndrunk, "", 0},
		"one value for two bottles": {func(s *squadOf) {
			s.edit(0, bottles([3]float64{742, 452}, [3]float64{688, 452}))
		}, OddBottleTwice, "", 0},
	}
}

// TestOddities: each mistake is named, and only that.
func TestOddities(t *testing.T) {
	for name, c := range mistakes() {
		t.Run(name, func(t *testing.T) {
			s := newSquad(t, day(), 61.8, 83.2)
			c.edit(s)
			odd := s.rows(at18(47))[0].Odd
			if len(odd) != 1 || odd[0].Code != c.code || odd[0].Name != c.name || c.b != 0 && math.Abs(odd[0].B-c.b) > 0.06 {
				t.Fatalf("got %+v, want %s %s %v", odd, c.code, c.name, c.b)
			}
			if odd[0].Path == "" || odd[0].Kept() {
				t.Errorf("%+v", odd[0])
			}
			id := s.g.Members[0].TestID
			sheet := s.sheets[id]
			sheet.Raw = []record.RawText{{Field: odd[0].Path, Text: "seen twice", Reason: true}}
			s.sheets[id] = sheet
			if odd := s.rows(at18(47))[0].Odd; !odd[0].Kept() || odd[0].Reason != "seen twice" {
				t.Errorf("kept as %+v", odd)
			}
		})
	}
	s := newSquad(t, day(), 61.8, 83.2)
	s.edit(0, weigh(record.Before, 61.9))
	s.edit(0, weigh(record.After, 60.7))
	s.edit(0, bottles([3]float64{742, 402}, [3]float64{688, 452}))
	s.edit(1, bottles([3]float64{742, 403}, [3]float64{690, 451}))
	if odd := s.rows(at18(47))[0].Odd; len(odd) != 0 {
		t.Errorf("a usual sheet is odd: %+v", odd)
	}
}

// TestSameAsTheNeighbour: what was typed for the row above is asked about in the row
// it was typed again in, and only there.
func TestSameAsTheNeighbour(t *testing.T) {
	s := newSquad(t, day(), 61.8, 83.2, 72.4)
	s.edit(0, bottles([3]float64{742, 402}, [3]float64{688, 452}))
	s.edit(1, bottles([3]float64{742, 390}, [3]float64{690, 452}))
	s.edit(2, bottles([3]float64{742, 300}, [3]float64{690, 500}))
	rows := s.rows(at18(47))
	if len(rows[0].Odd) != 0 {
		t.Errorf("the first row: %+v", rows[0].Odd)
	}
	if odd := rows[1].Odd; len(odd) != 1 || odd[0].Code != OddBottleNext || odd[0].Name != "Tamsin Orrelby" || odd[0].Item != 2 || odd[0].A != 452 {
		t.Errorf("the second row: %+v", odd)
	}
	if odd := rows[2].Odd; len(odd) != 1 || odd[0].Code != OddRowTwice || odd[0].Name != "Neve Carrowmere" {
		t.Errorf("the third row: %+v", odd)
	}
	s.g.Bottles[1].Empty = record.Num(450, quantity.Gram)
	if odd := s.rows(at18(47))[1].Odd; len(odd) != 0 {
		t.Errorf("bottles that are empty are asked about: %+v", odd)
	}
}

// TestClosing: a sheet is closed by its own checks, and what stands in the way is named.
func TestClosing(t *testing.T) {
	s := newSquad(t, day(), 61.8, 83.2)
	fill := func(i int, before, after float64, left float64) {
		s.edit(i, weigh(record.Before, before))
		s.edit(i, weigh(record.After, after))
		s.edit(i, bottles([3]float64{742 + float64(i), left}, [3]float64{688, left + 50}))
		s.edit(i, noUrine)
		s.edit(i, asked)
	}
	want := func(i int, ready bool, lacks ...string) {
		t.Helper()
		if c := ClosingOf(s.rows(at18(50))[i]); c.Ready != ready || !slices.Equal(c.Lacks, lacks) {
			t.Errorf("row %d: ready %v, lacks %q, want %v, %q", i+1, c.Ready, c.Lacks, ready, lacks)
		}
	}
	want(0, false, LackBefore, LackBottles)
	fill(0, 61.8, 60.7, 402)
	want(0, true)
	fill(1, 83.2, 83.5, 180)
	want(1, false, LackSecond, LackTold)
	s.edit(0, func(t *record.Test) { t.Bottles[0].After = record.Num(742, quantity.Gram) })
	want(0, false, LackReason)
	s.edit(0, func(t *record.Test) { t.Bottles[0].After = record.Num(402, quantity.Gram); t.State = record.TestClosed })
	want(0, false)
	sheet := s.sheets[s.g.Members[0].TestID]
	sheet.Test.State = record.TestOpen
	sheet.Raw = []record.RawText{{Field: "loss.urine", Text: "x"}}
	s.sheets[sheet.Test.ID] = sheet
	want(0, false, LackUnreadable)
}

// TestSecondWeighing: a second weighing in the limits sets a mistaken first aside;
// a gain is never set aside.
func TestSecondWeighing(t *testing.T) {
	s := newSquad(t, day(), 72.4)
	s.edit(0, weigh(record.Before, 72.4))
	s.edit(0, weigh(record.After, 67.1))
	s.edit(0, weigh(record.After, 71.0))
	s.edit(0, func(one *record.Test) { WeighAgain(one, record.After) })
	r := s.rows(at18(47))[0]
	if masses := Masses(r.Sheet.Test, record.After); len(masses) != 2 || !masses[0].Aside || masses[1].Aside {
		t.Errorf("weighings %+v", masses)
	}
	if len(r.Odd) != 0 || math.Abs(r.Found.Sweat.Fluid.MassChange.Value+1.934) > 0.01 {
		t.Errorf("odd %+v, change %v", r.Odd, r.Found.Sweat.Fluid.MassChange.Value)
	}
	s = newSquad(t, day(), 72.4)
	s.edit(0, weigh(record.Before, 72.4))
	s.edit(0, weigh(record.After, 73.2))
	s.edit(0, weigh(record.After, 71.9))
	s.edit(0, func(one *record.Test) { WeighAgain(one, record.After) })
	if r := s.rows(at18(47))[0]; !r.Flagged || !r.Flag.Gained || Masses(r.Sheet.Test, record.After)[0].Aside {
		t.Errorf("the gain went: %+v", r.Flag)
	}
}

// TestShare: what all share goes to every sheet but those with a value of their own.
func TestShare(t *testing.T) {
	s := newSquad(t, day(), 60, 70, 80)
	s.edit(1, func(t *record.Test) { t.Session.Start, t.Session.End = "18:00", "19:00" })
	s.edit(2, func(t *record.Test) { t.State = record.TestClosed })
	was := s.g
	s.g = s.g.Clone()
	s.g.Session.End, s.g.Air.Temperature, s.g.Session.Place = "18:45", record.Num(30, quantity.DegreeCelsius), "court 2"
	s.g.Bottles = append(s.g.Bottles, record.BottleKind{ProductID: "sports-drink"})
	for i := range s.g.Members {
		s.edit(i, func(t *record.Test) { Share(was, s.g, t) })
	}
	of := func(i int) record.Test { return s.sheets[s.g.Members[i].TestID].Test }
	if a := of(0); a.Session.End != "18:45" || a.Air.Temperature.Or(0) != 30 || a.Session.Place != "court 2" || len(a.Bottles) != 3 {
		t.Errorf("the first sheet has %+v", a.Session)
	}
	if b := of(1); b.Session.End != "19:00" || b.Session.Start != "18:00" || b.Air.Temperature.Or(0) != 30 {
		t.Errorf("own times became %+v", b.Session)
	}
	if own := Own(s.g, of(1)); !slices.Equal(own, []string{"session.start", "session.end"}) || !OwnTimes(s.g, of(1)) || OwnTimes(s.g, of(0)) {
		t.Errorf("own values %q", own)
	}
	if c := of(2); c.Session.End != "18:40" || len(c.Bottles) != 2 {
		t.Errorf("a closed sheet became %+v", c.Session)
	}
	was = s.g.Clone()
	s.g.Bottles = s.g.Bottles[:1]
	s.edit(0, bottles([3]float64{1, 1}, [3]float64{700, 600}))
	s.edit(0, func(t *record.Test) { Share(was, s.g, t) })
	if a := of(0); len(a.Bottles) != 2 {
		t.Errorf("%d bottles: what was weighed must stay", len(a.Bottles))
	}
}

// TestBegin: a new day begins as the last one was, without its air and its sheets.
func TestBegin(t *testing.T) {
	last := day()
	last.Bottles[1].ProductID = "sports-drink"
	last.Members = []record.Member{{}}
	g := Begin(last, "squad", at18(0).AddDate(0, 0, 7))
	if g.ID == last.ID || g.Session.Date != "2026-05-25" || g.Session.Start != "17:05" || g.Air.Temperature.Known() || len(g.Members) != 0 {
		t.Errorf("begun as %+v", g)
	}
	if len(g.Bottles) != 2 || g.Bottles[1].ProductID != "sports-drink" || g.Bottles[1].ID == last.Bottles[1].ID || !g.ScaleStep.Known() {
		t.Errorf("bottles %+v", g.Bottles)
	}
	if g := Begin(record.GroupSession{}, "", at18(0)); len(g.Bottles) != 1 || g.Bottles[0].ProductID != consult.Water {
		t.Errorf("without a day before: %+v", g.Bottles)
	}
}

// TestMidnight: a session over midnight, and one in which the clocks are set.
func TestMidnight(t *testing.T) {
	s := record.Session{Date: "2026-05-18", Start: "23:10"}
	EndNow(&s, time.Date(2026, 5, 19, 0, 40, 0, 0, time.UTC))
	if m, ok := SpanOf(s, time.UTC).Minutes(); !ok || m != 90 || !s.EndsNextDay {
		t.Errorf("%v min, %+v", m, s)
	}
	one := record.Test{Session: s, Patches: []record.Patch{{On: "23:50"}}}
	if p := PatchOf(one, time.Date(2026, 5, 19, 0, 20, 0, 0, time.UTC)); !p.On || p.Minutes != 30 || !p.Due || p.By != "00:20" {
		t.Errorf("the patch over midnight: %+v", p)
	}
	zone, err := time.LoadLocation("Europe/London")
	if err != nil {
		t.Fatal(err)
	}
	night := record.Session{Date: "2026-03-29", Start: "00:30", End: "02:30"}
	if m, ok := SpanOf(night, zone).Minutes(); !ok || m != 60 || !ClocksChanged(night, zone) {
		t.Errorf("%v min on the night the clocks are set", m)
	}
	if ClocksChanged(s, zone) {
		t.Error("the clocks were not set in May")
	}
}

// TestAmounts reads refills and what was poured away.
func TestAmounts(t *testing.T) {
	for text, want := range map[string]struct {
		added  []float64
		poured float64
		ok     bool
	}{
		"": {ok: true}, "610": {[]float64{610}, 0, true}, "300+310": {[]float64{300, 310}, 0, true}, "610-50": {[]float64{610}, 50, true},
		"0-50": {nil, 50, true}, "-50": {nil, 50, true}, "x": {}, "300++2": {}, "610-": {}, "6 − 5": {[]float64{6}, 5, true},
	} {
		added, poured, ok := Amounts(text)
		if ok != want.ok || poured != want.poured || !slices.Equal(added, want.added) {
			t.Errorf("%q reads as %v, %v, %v", text, added, poured, ok)
		}
	}
}

// TestNext: after the end those who are not weighed come first, in the order of the
// scale from here on.
func TestNext(t *testing.T) {
	s := newSquad(t, day(), 60, 60, 60, 60)
	for _, i := range []int{0, 1, 2} {
		s.edit(i, weigh(record.Before, 60))
	}
	if got := Next(s.rows(at18(47)), 1); !slices.Equal(got, []int{2, 0}) {
		t.Errorf("next %v", got)
	}
	s.edit(0, weigh(record.After, 59))
	s.edit(1, weigh(record.After, 59))
	s.edit(2, weigh(record.After, 59))
	if got := Next(s.rows(at18(47)), 2); !slices.Equal(got, []int{3}) {
		t.Errorf("next %v", got)
	}
}
