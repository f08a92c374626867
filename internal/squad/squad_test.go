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

// weighIn weighs the i-th member before, weighOut after; kg.
func (s *squadOf) weighIn(i int, kg float64)  { s.edit(i, weigh(record.Before, kg)) }
func (s *squadOf) weighOut(i int, kg float64) { s.edit(i, weigh(record.After, kg)) }

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
	s.weighIn(0, 61.8)
	s.edit(0, bottles([3]float64{742, 402}, [3]float64{688, 452}))
	s.weighOut(0, 60.7)
	s.weighIn(1, 83.2)
	s.edit(1, bottles([3]float64{742, 186, 610}, [3]float64{690, 180, 600}))
	s.weighOut(1, 83.5)
	s.weighIn(2, 72.4)
	s.edit(2, bottles([3]float64{742, 318}, [3]float64{688, 402}))
	s.weighOut(2, 67.1)
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
	s.weighIn(0, 61.8)
	s.edit(0, func(t *record.Test) {
		for i := range t.Bottles {
			t.Bottles[i].Before = record.Num(740, quantity.Gram)
		}
	})
	s.edit(0, func(one *record.Test) { TurnPatches(s.g, one, start.Add(20*time.Minute)) })
	want(Playing, start.Add(30*time.Minute), LackBottlesLeft, LackAfter, LackUrine)
	want(ToWeighAfter, at18(47), LackBottlesLeft, LackAfter, LackUrine)
	s.edit(0, bottles([3]float64{740, 400}, [3]float64{740, 500}))
	s.weighOut(0, 60.7)
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
		"pounds before":  {func(s *squadOf) { s.weighIn(0, 136.2) }, OddPounds, "", 61.8},
		"digits before":  {func(s *squadOf) { s.weighIn(0, 16.8) }, OddDigits, "", 61.8},
		"another before": {func(s *squadOf) { s.weighIn(0, 83.2) }, OddAnother, "Neve Carrowmere", 0},
		"usual before":   {func(s *squadOf) { s.weighIn(0, 66.6) }, OddUsual, "", 61.8},
		"pounds after": {func(s *squadOf) {
			s.weighIn(0, 61.8)
			s.weighOut(0, 134.0)
		}, OddPounds, "", 60.8},
		"digits after": {func(s *squadOf) {
			s.weighIn(0, 61.8)
			s.weighOut(0, 67.0)
		}, OddDigits, "", 60.7},
		"same": {func(s *squadOf) {
			s.weighIn(0, 61.8)
			s.weighOut(0, 61.8)
		}, OddSame, "", 0},
		"change": {func(s *squadOf) {
			s.weighIn(0, 61.8)
			s.weighOut(0, 58.9)
		}, OddChange, "", 58.9},
		"another after": {func(s *squadOf) {
			s.weighIn(0, 61.8)
			s.weighOut(0, 83.1)
		}, OddAnother, "Neve Carrowmere", 0},
		"apart": {func(s *squadOf) {
			s.weighIn(0, 61.8)
			s.weighOut(0, 60.7)
			s.weighOut(0, 60.9)
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
	s.weighIn(0, 61.9)
	s.weighOut(0, 60.7)
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
		s.weighIn(i, before)
		s.weighOut(i, after)
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
