package bundle

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"time"

	"pgregory.net/rapid"

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
	return Bundle{From: "Saltmarsh (invented)", By: p.by, Made: p.tick(), Records: p.Records}
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
	o.Here = Here{Records: b.Records}
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
