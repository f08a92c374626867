package consult

import (
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Gut training is offered where the habit has less carbohydrate than the plan aims at:
// from one to the other in weeks of at most a step, the last two at the aim. It is not
// offered where the habit has as much, nor where one may take nothing.
func TestGutTrainingOffered(t *testing.T) {
	for _, s := range readSessions(t) {
		if s.row["sport"] != "road-cycling" {
			continue
		}
		s.t = t
		c, p := s.open()
		from, weeks := c.GutTraining()
		aim := c.Planner.Aim().Carbohydrate.Low
		n := len(weeks)
		if n < 3 || from >= aim || weeks[n-1].GramsHour != aim || !weeks[n-1].Holds || !weeks[n-2].Holds {
			t.Fatalf("from %g to %g: %+v", from, aim, weeks)
		}
		for i, was := 0, from; i < n; i++ {
			if weeks[i].GramsHour > was+evidence.StepFuelHigh+1e-9 || weeks[i].Every != evidence.GutTrainingEvery {
				t.Errorf("week %d: %+v after %g g/h", i+1, weeks[i], was)
			}
			was = weeks[i].GramsHour
		}
		enough, closed := p.Clone(), p.Clone()
		enough.Aims.CarbohydrateLow = record.Num(from-5, quantity.GramPerHour)
		closed.Chances = []record.Chance{{Name: plan.NoDrinking, AtMinute: record.Num(0, quantity.Minute), Seconds: record.Num(0, quantity.Second)}}
		for name, other := range map[string]record.Plan{"enough": enough, "closed": closed} {
			open, err := OpenCase(other, c.Athlete, c.Basis, testSetup(t))
			if err != nil {
				t.Fatal(err)
			}
			if _, weeks := open.GutTraining(); len(weeks) > 0 {
				t.Errorf("%s: %+v", name, weeks)
			}
		}
		return
	}
	t.Fatal("no session of cycling")
}
