package consult

import (
	"errors"
	"slices"
	"time"

	"ebbwell/internal/record"
)

// Emergencies are the symptoms of which one "yes" calls the emergency number,
// Symptoms those after which a medic is told (Hew-Butler et al. 2015, Clin J Sport
// Med 25:303). In this order they are asked.
func Emergencies() []string { return []string{"confused", "fit", "collapse"} }

// Symptoms are asked after the emergencies.
func Symptoms() []string { return []string{"headache", "sick", "vomiting", "bloated"} }

// Asked are all symptoms in the order they are asked.
func Asked() []string { return append(Emergencies(), Symptoms()...) }

// The actions of a red flag, in their order. That the athlete is asked again every
// ten minutes, and does not drive home, is our own rule.
const (
	ActStop  = "stop"  // no more to drink
	ActMedic = "medic" // tell the medic
	ActStay  = "stay"  // stay with the athlete
	ActAsk   = "ask"   // ask the symptoms
	ActWeigh = "weigh" // weigh again
)

// Actions are what to do at a red flag, the gravest first.
func Actions() []string { return []string{ActStop, ActMedic, ActStay, ActAsk, ActWeigh} }

// The items of who was told.
const (
	ToldName   = "told"
	ToldNobody = "nobody"
)

// Safety is what was asked and done about an athlete's safety at a test, as its
// record stands.
type Safety struct {
	// Answers is the last answer to each symptom, "yes" or "no"; absent where it was
	// never asked.
	Answers map[string]string
	// Done is when each action was ticked; absent where it is not.
	Done map[string]time.Time
	// Told is who was told, or why nobody; ToldAt when.
	Told   string
	Nobody bool
	ToldAt time.Time
}

// SafetyOf reads the record of a test.
func SafetyOf(t record.Test) Safety {
	s := Safety{Answers: map[string]string{}, Done: map[string]time.Time{}}
	for _, n := range t.Safety {
		at := time.Time{}
		if n.Done != nil {
			at = *n.Done
		}
		switch n.Kind {
		case record.SafetyAsked:
			s.Answers[n.Item] = n.Answer
			if n.Answer == "" {
				delete(s.Answers, n.Item)
			}
		case record.SafetyDone:
			s.Done[n.Item] = at
			if n.Answer != record.AnswerYes {
				delete(s.Done, n.Item)
			}
		case record.SafetyTold:
			s.Told, s.Nobody, s.ToldAt = n.Text, n.Item == ToldNobody, at
		}
	}
	return s
}

// Note adds a line to the record of a test, unless it says what already holds.
func Note(t *record.Test, n record.SafetyNote) {
	s := SafetyOf(*t)
	_, ticked := s.Done[n.Item]
	switch n.Kind {
	case record.SafetyAsked:
		if s.Answers[n.Item] == n.Answer {
			return
		}
	case record.SafetyDone:
		if ticked == (n.Answer == record.AnswerYes) {
			return
		}
	case record.SafetyTold:
		if s.Told == n.Text && s.Nobody == (n.Item == ToldNobody) {
			return
		}
	}
	n.Meta, n.Order = record.Meta{ID: record.NewID()}, len(t.Safety)+1
	t.Safety = append(t.Safety, n)
}

// Unasked are the symptoms that were not asked yet.
func (s Safety) Unasked() []string {
	return slices.DeleteFunc(Asked(), func(x string) bool { return s.Answers[x] != "" })
}

// Yes are the symptoms answered with yes, emergencies first.
func (s Safety) Yes() []string {
	return slices.DeleteFunc(Asked(), func(x string) bool { return s.Answers[x] != record.AnswerYes })
}

// Emergency reports whether an emergency was answered with yes.
func (s Safety) Emergency() bool {
	return slices.ContainsFunc(Emergencies(), func(x string) bool { return s.Answers[x] == record.AnswerYes })
}

// RedFlag is a gain in mass, or a symptom, with what was done about it.
type RedFlag struct {
	Safety Safety
	// Gain is how much heavier, by the heaviest weighing after; Gained is false for a
	// flag that a symptom raised.
	Gain   Gain
	Gained bool
	// Again: there is a second weighing. Mean: the mean of the weighings is heavier.
	Again, Mean bool
}

// RedFlagOf is the red flag of a test; ok is false where there is none. A second
// weighing that is not heavier does not take it away: only a name does.
func RedFlagOf(f Findings, a record.Athlete, on time.Time) (r RedFlag, ok bool) {
	r.Safety = SafetyOf(f.Test)
	r.Gain, r.Gained = GainOf(f, a, on)
	r.Mean = r.Gained
	before := masses(f.Test, record.Before)
	after := 0
	for _, w := range f.Test.Weighings {
		if w.Moment != record.After || !w.Mass.Known() {
			continue
		}
		after++
		if r.Gained || len(before) == 0 {
			continue
		}
		if gain := *w.Mass.Value - mean(before); gain > 0 && !w.Aside {
			r.Gain, r.Gained = Gain{Kilograms: gain, Risks: waterRisks(a, on)}, true
		}
	}
	r.Again = after > 1
	return r, r.Gained || len(r.Safety.Yes()) > 0
}

// RedState is what a red flag says first, where several things hold.
type RedState string

// The states, the gravest first: an emergency is called for whatever else holds, then
// what was done about a flag, then what raised it.
const (
	RedCall    RedState = "call"    // an emergency was answered with yes
	RedNobody  RedState = "nobody"  // nobody was told, with the reason
	RedTold    RedState = "told"    // somebody was told, by name
	RedBoth    RedState = "both"    // heavier, and a symptom
	RedHeavier RedState = "heavier" // heavier
	RedSymptom RedState = "symptom" // a symptom alone
)

// State is what the flag says first.
func (r RedFlag) State() RedState {
	switch {
	case r.Safety.Emergency():
		return RedCall
	case r.Told() && r.Safety.Nobody:
		return RedNobody
	case r.Told():
		return RedTold
	case r.Gained && len(r.Safety.Yes()) > 0:
		return RedBoth
	case r.Gained:
		return RedHeavier
	}
	return RedSymptom
}

// mean of some masses, kg.
func mean[T ~float64](list []T) float64 {
	sum := 0.0
	for _, x := range list {
		sum += float64(x)
	}
	return sum / float64(len(list))
}

// Told reports whether a flag is closed: who was told, or why nobody was, is
// saved.
func (r RedFlag) Told() bool { return r.Safety.Told != "" }

// ErrBlocked says that a test has a red flag of which nobody was told yet.
var ErrBlocked = errors.New("a red flag of which nobody was told")

// Blocks reports whether no plan is made from a test yet, because it has a red flag
// of which nobody was told. Our own rule.
func Blocks(f Findings, a record.Athlete) bool {
	r, ok := RedFlagOf(f, a, TestDay(f.Test))
	return ok && !r.Told()
}
