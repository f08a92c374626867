package bundle

import (
	"bytes"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/internal/care"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// careful is how careful a practice is with its first athlete; each of it may only stay
// or become more.
type careful struct {
	flags, consents   map[record.ID]bool
	hidden            bool
	drinking, deficit float64
}

func carefulOf(p *practice) careful {
	a := p.Athletes[0]
	c := careful{flags: map[record.ID]bool{}, consents: map[record.ID]bool{}, hidden: care.MassHidden(a, now()), drinking: a.UsualDrinking.Or(99), deficit: a.DeficitAim.Or(99)}
	for _, f := range a.Flags {
		c.flags[f.ID] = true
	}
	for _, x := range a.Consents {
		c.consents[x.ID] = x.Holds(record.DateOf(now()))
	}
	return c
}

// bold are edits that make one less careful.
func bold() []change {
	edit := func(name string, do func(p *practice, a *record.Athlete)) change {
		return change{name, func(p *practice, _ string) bool {
			a := &p.Athletes[0]
			do(p, a)
			a.ChangedAt = p.tick()
			return true
		}}
	}
	return []change{
		edit("flags away", func(p *practice, a *record.Athlete) {
			for _, f := range a.Flags {
				p.log(record.KindAthlete, a.ID, "flags."+string(f.ID), present, "")
			}
			a.Flags = nil
		}),
		edit("mass shown", func(p *practice, a *record.Athlete) {
			a.MassHidden, a.MassHiddenSettled = false, true
			p.log(record.KindAthlete, a.ID, "massHidden", "true", "false")
		}),
		edit("a consent", func(p *practice, a *record.Athlete) {
			c := record.Consent{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, Purpose: record.ConsentCoach, Given: "2026-05-01"}
			a.Consents = append(a.Consents, c)
			p.log(record.KindAthlete, a.ID, "consents."+string(c.ID), "", present)
		}),
		edit("a consent not withdrawn", func(p *practice, a *record.Athlete) {
			a.Consents[0].Withdrawn = ""
			p.log(record.KindAthlete, a.ID, "consents."+string(a.Consents[0].ID)+".withdrawn", "2026-05-01", "")
		}),
		edit("drinks more", func(p *practice, a *record.Athlete) {
			a.UsualDrinking = record.Num(2, quantity.LitrePerHour)
			p.log(record.KindAthlete, a.ID, "usualDrinking", "", "2 L/h")
		}),
		edit("loses more", func(p *practice, a *record.Athlete) {
			a.DeficitAim = record.Num(5, quantity.PerCent)
			p.log(record.KindAthlete, a.ID, "deficitAim", "", "5 %")
		}),
		edit("older", func(p *practice, a *record.Athlete) {
			a.Born = "1990-01-01"
			p.log(record.KindAthlete, a.ID, "born", "", "1990-01-01")
		}),
	}
}

// TestCautionNeverFalls: whatever the other side is less careful about stays as it is
// here until a person decides, and is listed.
func TestCautionNeverFalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base := drawn(t)
		if rapid.Bool().Draw(t, "withdrawn") {
			base.Athletes[0].Consents[0].Withdrawn = "2026-05-01"
		}
		one, two := base.other("Ada"), base.other("Bo")
		for _, c := range bold() {
			if rapid.Bool().Draw(t, c.name) {
				c.do(two, "")
			}
			if rapid.IntRange(0, 3).Draw(t, "here too") == 0 {
				c.do(one, "")
			}
		}
		before := carefulOf(one)
		r := Merge(one.Here, through(t, two.pack()), now())
		one.take(r)
		after := carefulOf(one)
		for id := range before.flags {
			if !after.flags[id] {
				t.Fatalf("a condition is gone: %+v", r.Decisions)
			}
		}
		for id, holds := range after.consents {
			if holds && !before.consents[id] {
				t.Fatalf("a consent came by itself: %+v", r.Decisions)
			}
		}
		if before.hidden && !after.hidden || after.drinking > before.drinking || after.deficit > before.deficit {
			t.Fatalf("%+v became %+v", before, after)
		}
	})
}

// TestWhatIsLeftToAPerson names what is decided by whom for each sort.
func TestWhatIsLeftToAPerson(t *testing.T) {
	base := rapid.Custom(drawn).Filter(func(p *practice) bool {
		return len(p.Athletes[0].Flags) > 0 && p.Athletes[0].MassHidden && p.Athletes[0].UsualDrinking.Known() && p.Athletes[0].DeficitAim.Known()
	}).Example(1)
	base.Athletes[0].Consents[0].Withdrawn = "2026-05-01"
	one, two := base.other("Ada"), base.other("Bo")
	for _, c := range bold()[:6] {
		c.do(two, "")
	}
	r := Merge(one.Here, two.pack(), now())
	acts := map[string]Act{}
	for _, d := range r.Decisions {
		path, _, _ := bytes.Cut([]byte(d.Path), []byte("."))
		acts[string(path)+"/"+string(d.Act)] = d.Act
	}
	for _, want := range []string{"flags/remove", "massHidden/set", "consents/add", "consents/set", "usualDrinking/set", "deficitAim/set"} {
		if acts[want] == "" {
			t.Errorf("%s is not left to a person: %v", want, acts)
		}
	}
	one.take(r)
	for _, d := range r.Decisions {
		if err := Apply(&one.Athletes[0], d); err != nil {
			t.Errorf("%s %s: %v", d.Act, d.Path, err)
		}
	}
	a := one.Athletes[0]
	if len(a.Flags) > 0 || a.MassHidden || len(a.Consents) != 2 || a.Consents[0].Withdrawn != "" || a.UsualDrinking.Or(0) != 2 || a.DeficitAim.Or(0) != 5 {
		t.Errorf("once all is decided it is %+v", a)
	}
}

// TestAMinorComesHidden: whatever the other practice showed.
func TestAMinorComesHidden(t *testing.T) {
	a := record.Athlete{Meta: record.Meta{ID: "a"}, Name: "Wren", Born: "2012-01-01", MassHiddenSettled: true, UsualMass: record.Num(41, quantity.Kilogram)}
	r := Merge(Here{}, Bundle{Records: Records{Athletes: []record.Athlete{a}}}, now())
	if got := r.NewAthletes[0]; !care.MassHidden(got, now()) || len(r.Decisions) != 1 || r.Decisions[0].Path != "massHidden" {
		t.Errorf("%+v, %+v", got, r.Decisions)
	}
}

// TestEntriesBeyondTheLimitsAreHeld: a mass nobody could type without a reason is not
// entered; with the reason it is.
func TestEntriesBeyondTheLimitsAreHeld(t *testing.T) {
	x := record.Test{Meta: record.Meta{ID: "t"}, AthleteID: "a", State: record.TestClosed}
	x.Weighings = []record.Weighing{{Meta: record.Meta{ID: "w"}, TestID: "t", Moment: record.Before, Mass: record.Num(430, quantity.Kilogram)}}
	a := record.Athlete{Meta: record.Meta{ID: "a"}, Born: "1999-01-01", UsualDrinking: record.Num(7, quantity.LitrePerHour)}
	b := Bundle{Records: Records{Athletes: []record.Athlete{a}, Tests: []record.Test{x}}}
	r := Merge(Here{}, b, now())
	if got := r.NewTests[0]; got.Weighings[0].Mass.Known() || got.State != record.TestOpen || len(r.Held) != 2 || len(r.Raw) != 2 || r.NewAthletes[0].UsualDrinking.Known() {
		t.Errorf("%+v, %+v", got, r.Held)
	}
	if !b.Tests[0].Weighings[0].Mass.Known() {
		t.Error("the bundle itself was changed")
	}
	b.Raw = []record.RawText{{Kind: record.KindTest, Record: "t", Field: "weighings.w.mass", Reason: true, Text: "weighed on a lorry scale"}}
	if r := Merge(Here{}, b, now()); !r.NewTests[0].Weighings[0].Mass.Known() || r.NewTests[0].State != record.TestClosed {
		t.Error("a value with its reason is not taken")
	}
}
