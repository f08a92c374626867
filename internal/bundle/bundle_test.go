package bundle

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ebbwell/internal/care"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// now is the moment of these tests.
func now() time.Time { return time.Date(2026, 5, 18, 12, 0, 0, 0, time.UTC) }

// practice is one side: records with their histories.
type practice struct {
	Here
	by    string
	clock *time.Time
}

// tick moves the clock all sides share.
func (p *practice) tick() time.Time {
	*p.clock = p.clock.Add(time.Second)
	return *p.clock
}

// log writes one change into the history.
func (p *practice) log(kind record.Kind, id record.ID, path, before, after string) {
	p.Changes = append(p.Changes, record.Change{ID: record.NewID(), Kind: kind, Record: id, Field: path, Before: before, After: after, At: p.tick(), By: p.by})
}

// drawn is a practice with some athletes, sheets and plans.
func drawn(t *rapid.T) *practice {
	clock := now()
	p := &practice{by: "Ada", clock: &clock}
	meta := func() record.Meta {
		at := p.tick()
		return record.Meta{ID: record.NewID(), CreatedAt: at, ChangedAt: at, CreatedBy: p.by, ChangedBy: p.by}
	}
	number := func(low, high int, u quantity.Unit) record.Number {
		if rapid.IntRange(0, 4).Draw(t, "known") == 0 {
			return record.Number{}
		}
		return record.Num(float64(rapid.IntRange(low, high).Draw(t, "number")), u)
	}
	for range rapid.IntRange(1, 2).Draw(t, "athletes") {
		a := record.Athlete{Meta: meta(), Name: rapid.SampledFrom([]string{"Wren Calloway", "Tove Marlin", "Ißa Ørn"}).Draw(t, "name"), Born: "1999-02-03"}
		a.UsualMass, a.UsualDrinking, a.DeficitAim = number(45, 110, quantity.Kilogram), number(0, 1, quantity.LitrePerHour), number(1, 4, quantity.PerCent)
		if rapid.Bool().Draw(t, "minor") {
			a.Born, a.MassHidden, a.MassHiddenSettled, a.Guardian = "2012-05-05", true, true, "Her mother"
		}
		for _, kind := range rapid.SliceOfDistinct(rapid.SampledFrom([]record.FlagKind{record.FlagLithium, record.FlagKidney, record.FlagEating}), rapid.ID).Draw(t, "flags") {
			a.Flags = append(a.Flags, record.Flag{Meta: meta(), AthleteID: a.ID, Kind: kind})
		}
		a.Consents = []record.Consent{{Meta: meta(), AthleteID: a.ID, Purpose: record.ConsentTest, Given: "2026-01-01"}}
		p.log(record.KindAthlete, a.ID, "", "", present)
		p.Athletes = append(p.Athletes, a)
		for range rapid.IntRange(0, 2).Draw(t, "tests") {
			x := record.Test{Meta: meta(), AthleteID: a.ID, State: rapid.SampledFrom([]record.TestState{record.TestOpen, record.TestClosed}).Draw(t, "state")}
			x.Session.Date = "2026-04-01"
			x.Air.Temperature = number(5, 35, quantity.DegreeCelsius)
			for i := range rapid.IntRange(0, 2).Draw(t, "bottles") {
				x.Bottles = append(x.Bottles, record.Bottle{Meta: meta(), TestID: x.ID, Order: i, Before: number(300, 900, quantity.Gram)})
			}
			p.log(record.KindTest, x.ID, "", "", present)
			p.Tests = append(p.Tests, x)
			if x.State == record.TestClosed {
				p.Frozen = append(p.Frozen, record.Frozen{ID: record.NewID(), Kind: record.KindTest, Record: x.ID, Number: 1, At: p.tick()})
			}
			plan := record.Plan{Meta: meta(), AthleteID: a.ID, State: rapid.SampledFrom([]record.PlanState{record.PlanDraft, record.PlanAgreed}).Draw(t, "state"), Name: "Sunday run"}
			plan.Basis.TestID, plan.Aims.Drinking = x.ID, number(0, 1, quantity.LitrePerHour)
			plan.Reviews = []record.Review{{Meta: meta(), PlanID: plan.ID, Note: "fine"}}
			p.log(record.KindPlan, plan.ID, "", "", present)
			p.Plans = append(p.Plans, plan)
		}
	}
	return p
}

// pack is what a practice gives.
func (p *practice) pack() Bundle {
	return Bundle{From: "Saltmarsh (invented)", By: p.by, Made: p.tick(), Athletes: p.Athletes, Tests: p.Tests, Plans: p.Plans, Products: p.Products,
		Changes: p.Changes, Frozen: p.Frozen, Raw: p.Raw}
}

// take writes what comes of a bundle, as the store does.
func (p *practice) take(r Result) {
	p.Athletes = put(append(p.Athletes, r.NewAthletes...), r.Athletes)
	p.Tests = put(append(p.Tests, r.NewTests...), r.Tests)
	p.Plans = put(append(p.Plans, r.NewPlans...), r.Plans)
	p.Products = append(p.Products, r.NewProducts...)
	for _, c := range r.Changes {
		if c.ID == "" {
			c.ID = record.NewID()
		}
		p.Changes = append(p.Changes, c)
	}
	p.Frozen, p.Raw = append(p.Frozen, r.Frozen...), append(p.Raw, r.Raw...)
	for _, x := range r.Marks {
		p.log(x.Ref.Kind, x.Ref.ID, x.Path, x.Before, x.After)
	}
}

// put replaces records by those of the same id.
func put[T any](list, by []T) []T {
	list = slices.Clone(list)
	for _, x := range by {
		for i := range list {
			if metaOf(reflect.ValueOf(&list[i]).Elem()).ID == metaOf(reflect.ValueOf(&x).Elem()).ID {
				list[i] = x
			}
		}
	}
	return list
}

// other is the same practice somewhere else.
func (p *practice) other(by string) *practice {
	data, err := json.Marshal(p.pack())
	if err != nil {
		panic(err)
	}
	var b Bundle
	if err := json.Unmarshal(data, &b); err != nil {
		panic(err)
	}
	o := &practice{by: by, clock: p.clock}
	o.Here = Here{Athletes: b.Athletes, Tests: b.Tests, Plans: b.Plans, Products: b.Products, Changes: b.Changes, Frozen: b.Frozen, Raw: b.Raw}
	return o
}

// through writes a bundle and reads it again.
func through(t interface{ Fatalf(string, ...any) }, b Bundle) Bundle {
	var out bytes.Buffer
	if err := Write(&out, b, "1.2.3"); err != nil {
		t.Fatalf("%v", err)
	}
	read, err := Read(&out)
	if err != nil {
		t.Fatalf("read what was written: %v", err)
	}
	return read
}

// TestThereAndBackChangesNothing: a bundle to another practice and back brings nothing.
func TestThereAndBackChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		here := drawn(t)
		there := &practice{by: "Bo", clock: here.clock}
		first := Merge(there.Here, through(t, here.pack()), now())
		if len(first.Decisions)+len(first.Held)+len(first.Conflicts)+len(first.Left) > 0 {
			t.Fatalf("a first bundle asks something: %+v", first)
		}
		there.take(first)
		if again := Merge(there.Here, through(t, here.pack()), now()); !again.Nothing() {
			t.Fatalf("the same bundle twice brings %+v", again)
		}
		if back := Merge(here.Here, through(t, there.pack()), now()); !back.Nothing() || len(back.Conflicts) > 0 {
			t.Fatalf("there and back brings %+v", back)
		}
	})
}

// change is one edit that both sides can make.
type change struct {
	name string
	do   func(p *practice, text string) bool
}

// plainChanges are edits of things that keep nobody safe, no two of the same field.
func plainChanges() []change {
	athlete := func(path string, set func(a *record.Athlete, text string)) change {
		return change{path, func(p *practice, text string) bool {
			a := &p.Athletes[0]
			set(a, text)
			p.log(record.KindAthlete, a.ID, path, "", text)
			a.ChangedAt, a.ChangedBy = *p.clock, p.by
			return true
		}}
	}
	openTest := func(p *practice) *record.Test {
		for i := range p.Tests {
			if p.Tests[i].State == record.TestOpen {
				return &p.Tests[i]
			}
		}
		return nil
	}
	return []change{
		athlete("note", func(a *record.Athlete, text string) { a.Note = text }),
		athlete("position", func(a *record.Athlete, text string) { a.Position = text }),
		{"a flag", func(p *practice, text string) bool {
			a := &p.Athletes[0]
			f := record.Flag{Meta: record.Meta{ID: record.NewID(), CreatedAt: p.tick(), ChangedAt: *p.clock}, AthleteID: a.ID, Kind: record.FlagHeart, Note: text}
			a.Flags = append(a.Flags, f)
			p.log(record.KindAthlete, a.ID, "flags."+string(f.ID), "", present)
			return true
		}},
		{"a bottle", func(p *practice, text string) bool {
			x := openTest(p)
			if x == nil {
				return false
			}
			b := record.Bottle{Meta: record.Meta{ID: record.NewID(), CreatedAt: p.tick(), ChangedAt: *p.clock}, TestID: x.ID, Name: text}
			x.Bottles = append(x.Bottles, b)
			p.log(record.KindTest, x.ID, "bottles."+string(b.ID), "", present)
			return true
		}},
		{"no bottle", func(p *practice, _ string) bool {
			x := openTest(p)
			if x == nil || len(x.Bottles) == 0 {
				return false
			}
			p.log(record.KindTest, x.ID, "bottles."+string(x.Bottles[0].ID), present, "")
			x.Bottles = slices.Clone(x.Bottles[1:])
			return true
		}},
		{"a review", func(p *practice, text string) bool {
			if len(p.Plans) == 0 {
				return false
			}
			x := &p.Plans[0]
			v := record.Review{Meta: record.Meta{ID: record.NewID(), CreatedAt: p.tick(), ChangedAt: *p.clock}, PlanID: x.ID, Note: text}
			x.Reviews = append(x.Reviews, v)
			p.log(record.KindPlan, x.ID, "reviews."+string(v.ID), "", present)
			return true
		}},
	}
}

// content is what is kept of a practice, whatever its order.
func (p *practice) content() string {
	var all []string
	add := func(v reflect.Value) {
		var lines []string
		var row func(v reflect.Value, prefix string)
		row = func(v reflect.Value, prefix string) {
			eachLeaf(v, prefix, func(path string, leaf reflect.Value, f reflect.StructField) {
				lines = append(lines, fmt.Sprint(path, "=", valueOf(leaf, f).key()))
			})
			eachList(v, func(l list) {
				for i := range l.rows.Len() {
					row(l.rows.Index(i), prefix+l.path+"."+string(metaOf(l.rows.Index(i)).ID)+".")
				}
			})
		}
		row(v, string(metaOf(v).ID)+".")
		slices.Sort(lines)
		all = append(all, fmt.Sprint(lines))
	}
	for i := range p.Athletes {
		add(reflect.ValueOf(&p.Athletes[i]).Elem())
	}
	for i := range p.Tests {
		add(reflect.ValueOf(&p.Tests[i]).Elem())
	}
	for i := range p.Plans {
		add(reflect.ValueOf(&p.Plans[i]).Elem())
	}
	slices.Sort(all)
	return fmt.Sprint(all)
}

// TestOrderDoesNotMatter: what each side changed by itself comes together the same,
// whoever takes whose bundle.
func TestOrderDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base := drawn(t)
		one, two := base.other("Ada"), base.other("Bo")
		n := 0
		for i, c := range plainChanges() {
			side := one
			if rapid.Bool().Draw(t, "side") {
				side = two
			}
			if rapid.Bool().Draw(t, "made") && c.do(side, fmt.Sprint("text ", i)) {
				n++
			}
		}
		a, b := one.other("Ada"), two.other("Bo")
		first, second := Merge(a.Here, through(t, two.pack()), now()), Merge(b.Here, through(t, one.pack()), now())
		if len(first.Conflicts)+len(second.Conflicts)+len(first.Decisions)+len(second.Decisions) > 0 {
			t.Fatalf("of %d edits of different fields: %+v, %+v", n, first, second)
		}
		a.take(first)
		b.take(second)
		if a.content() != b.content() {
			t.Fatalf("from here\n%s\nfrom there\n%s", a.content(), b.content())
		}
		if back := Merge(a.Here, through(t, b.pack()), now()); !back.Nothing() {
			t.Fatalf("after both it brings %+v", back)
		}
	})
}

// TestTheNewerStandsAndTheOtherIsKept: of a field that both sides changed.
func TestTheNewerStandsAndTheOtherIsKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base := drawn(t)
		one, two := base.other("Ada"), base.other("Bo")
		sides, texts := []*practice{one, two}, []string{"ours", "theirs"}
		last := rapid.IntRange(0, 1).Draw(t, "last")
		plainChanges()[0].do(sides[1-last], texts[1-last])
		plainChanges()[0].do(sides[last], texts[last])
		r := Merge(one.Here, through(t, two.pack()), now())
		if len(r.Conflicts) != 1 || r.Conflicts[0].Path != "note" || r.Conflicts[0].TheirsStands != (last == 1) || r.Conflicts[0].Ours.Text != "ours" || r.Conflicts[0].Theirs.Text != "theirs" {
			t.Fatalf("%+v", r.Conflicts)
		}
		one.take(r)
		if one.Athletes[0].Note != texts[last] {
			t.Fatalf("what stands is %q", one.Athletes[0].Note)
		}
		for _, text := range texts {
			if !slices.ContainsFunc(one.Changes, func(c record.Change) bool { return c.Field == "note" && c.After == text }) {
				t.Fatalf("%q is in no history", text)
			}
		}
	})
}

// cautions lists how careful a practice is with its first athlete; each may only stay
// or become more.
func cautions(p *practice) (flags map[record.ID]bool, hidden bool, consents map[record.ID]bool, drinking, deficit float64) {
	a := p.Athletes[0]
	flags, consents = map[record.ID]bool{}, map[record.ID]bool{}
	for _, f := range a.Flags {
		flags[f.ID] = true
	}
	for _, c := range a.Consents {
		consents[c.ID] = c.Holds(record.DateOf(now()))
	}
	return flags, care.MassHidden(a, now()), consents, a.UsualDrinking.Or(99), a.DeficitAim.Or(99)
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
		flags, hidden, consents, drinking, deficit := cautions(one)
		r := Merge(one.Here, through(t, two.pack()), now())
		one.take(r)
		flags2, hidden2, consents2, drinking2, deficit2 := cautions(one)
		for id := range flags {
			if !flags2[id] {
				t.Fatalf("a condition is gone: %+v", r.Decisions)
			}
		}
		for id, holds := range consents2 {
			if holds && !consents[id] {
				t.Fatalf("a consent came by itself: %+v", r.Decisions)
			}
		}
		if hidden && !hidden2 || drinking2 > drinking || deficit2 > deficit {
			t.Fatalf("hidden %v -> %v, drinks %v -> %v, deficit %v -> %v", hidden, hidden2, drinking, drinking2, deficit, deficit2)
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
	r := Merge(Here{}, Bundle{Athletes: []record.Athlete{a}}, now())
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
	b := Bundle{Athletes: []record.Athlete{a}, Tests: []record.Test{x}}
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

// TestClosedSheetsAreTakenWhole: nobody closed a mixture; the red flag's lines of both
// sides are there.
func TestClosedSheetsAreTakenWhole(t *testing.T) {
	clock := now()
	base := &practice{by: "Ada", clock: &clock}
	x := record.Test{Meta: record.Meta{ID: "t", ChangedAt: now()}, AthleteID: "a", State: record.TestClosed, Note: "n"}
	base.Athletes, base.Tests = []record.Athlete{{Meta: record.Meta{ID: "a"}, Born: "1999-01-01"}}, []record.Test{x}
	base.log(record.KindTest, "t", "", "", present)
	one, two := base.other("Ada"), base.other("Bo")
	one.Tests[0].Note, one.Tests[0].Session.Place = "ours", "hall"
	one.log(record.KindTest, "t", "note", "n", "ours")
	two.Tests[0].Note, two.Tests[0].Session.Sport = "theirs", "row"
	two.log(record.KindTest, "t", "note", "n", "theirs")
	two.Frozen = []record.Frozen{{ID: "f2", Kind: record.KindTest, Record: "t", Number: 2}}
	one.Frozen = []record.Frozen{{ID: "f1", Kind: record.KindTest, Record: "t", Number: 2}}
	for i, p := range []*practice{one, two} {
		id := record.ID(fmt.Sprint("s", i))
		p.Tests[0].Safety = []record.SafetyNote{{Meta: record.Meta{ID: id}, TestID: "t", Kind: record.SafetyTold}}
		p.log(record.KindTest, "t", "safety."+string(id), "", present)
	}
	r := Merge(one.Here, through(t, two.pack()), now())
	if len(r.Tests) != 1 || r.Tests[0].Note != "theirs" || r.Tests[0].Session.Place != "" || r.Tests[0].Session.Sport != "row" || len(r.Tests[0].Safety) != 2 {
		t.Fatalf("%+v", r.Tests)
	}
	if len(r.Frozen) != 1 || r.Frozen[0].Number != 3 || len(r.Conflicts) != 1 {
		t.Errorf("%+v, %+v", r.Frozen, r.Conflicts)
	}
	r = Merge(two.Here, through(t, one.pack()), now())
	if len(r.Tests) != 1 || r.Tests[0].Note != "theirs" || len(r.Tests[0].Safety) != 2 || r.Frozen[0].Number != 0 {
		t.Errorf("%+v, %+v", r.Tests, r.Frozen)
	}
}

// TestAnAgreedPlanStands: what was agreed here stays until a person takes theirs.
func TestAnAgreedPlanStands(t *testing.T) {
	clock := now()
	base := &practice{by: "Ada", clock: &clock}
	base.Athletes = []record.Athlete{{Meta: record.Meta{ID: "a"}, Born: "1999-01-01"}}
	base.Plans = []record.Plan{{Meta: record.Meta{ID: "p"}, AthleteID: "a", State: record.PlanAgreed, Aims: record.Aims{Drinking: record.Num(0.5, quantity.LitrePerHour)}}}
	base.log(record.KindPlan, "p", "", "", present)
	one, two := base.other("Ada"), base.other("Bo")
	two.Plans[0].Aims.Drinking = record.Num(1.5, quantity.LitrePerHour)
	two.log(record.KindPlan, "p", "aims.drinking", "0.5 L/h", "1.5 L/h")
	r := Merge(one.Here, through(t, two.pack()), now())
	if len(r.Plans) != 0 || len(r.Decisions) != 1 || r.Decisions[0].Act != ActWhole {
		t.Errorf("%+v, %+v", r.Plans, r.Decisions)
	}
}

// TestErasedStaysErased: who was erased here does not come back by a bundle.
func TestErasedStaysErased(t *testing.T) {
	clock := now()
	p := &practice{by: "Ada", clock: &clock}
	p.Athletes = []record.Athlete{{Meta: record.Meta{ID: "a"}}}
	p.Tests = []record.Test{{Meta: record.Meta{ID: "t"}, AthleteID: "a"}}
	p.log(record.KindTest, "t", "", "", present)
	r := Merge(Here{Gone: map[record.Ref]bool{{Kind: record.KindAthlete, ID: "a"}: true}}, through(t, p.pack()), now())
	if !r.Nothing() || len(r.Left) != 1 {
		t.Errorf("%+v", r)
	}
}

func TestFilesThatAreRefused(t *testing.T) {
	var newer, cut bytes.Buffer
	b := drawnOnce()
	if err := Write(&cut, b, "1"); err != nil {
		t.Fatal(err)
	}
	line := func(s string) []byte { return gzipped(t, s) }
	newer.Write(line(`{"Format":"ebbwell bundle","Version":99}` + "\n{}"))
	strayed := b
	strayed.Tests = append(slices.Clone(b.Tests), record.Test{Meta: record.Meta{ID: "x"}, AthleteID: "nobody"})
	var stray bytes.Buffer
	if err := Write(&stray, strayed, "1"); err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		data []byte
		want error
	}{
		"nothing": {nil, ErrForeign}, "a text": {[]byte("hello"), ErrForeign}, "another zip": {line("hello\nworld"), ErrForeign},
		"newer": {newer.Bytes(), ErrNewer}, "cut off": {cut.Bytes()[:cut.Len()-20], ErrDamaged}, "of nobody": {stray.Bytes(), ErrDamaged},
	} {
		if _, err := Read(bytes.NewReader(c.data)); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", name, err, c.want)
		}
	}
}

func FuzzRead(f *testing.F) {
	var out bytes.Buffer
	if err := Write(&out, drawnOnce(), "1"); err != nil {
		f.Fatal(err)
	}
	f.Add(out.Bytes())
	f.Add([]byte("\x1f\x8b"))
	f.Fuzz(func(t *testing.T, data []byte) {
		read(t, data)
		read(t, gzipped(t, `{"Format":"ebbwell bundle","Version":1}`+"\n"+string(data)))
	})
}

// read reads, and merges what can be read into nothing and into itself.
func read(t *testing.T, data []byte) {
	t.Helper()
	b, err := Read(bytes.NewReader(data))
	if err != nil {
		return
	}
	r := Merge(Here{}, b, now())
	Merge(Here{Athletes: r.NewAthletes, Tests: r.NewTests, Plans: r.NewPlans, Changes: r.Changes}, b, now())
}

// drawnOnce is a bundle, always the same but for its ids.
func drawnOnce() Bundle { return rapid.Custom(drawn).Example(3).pack() }

// gzipped packs a text.
func gzipped(t interface{ Fatal(...any) }, text string) []byte {
	var out bytes.Buffer
	w := gzip.NewWriter(&out)
	_, err := w.Write([]byte(text))
	if err = errors.Join(err, w.Close()); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}
