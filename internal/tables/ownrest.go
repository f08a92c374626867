package tables

import (
	"slices"
	"strings"

	"ebbwell/internal/record"
)

// Beside are what an import of an export takes beside athletes and tests.
type Beside struct {
	Products []record.Product
	Trips    []record.Trip
	Plans    []record.Plan
}

// Beside picks the plans and trips of who is imported or known, and the products that
// these, the athletes and the tests name; kept are the ids of all plans, trips and products there
// are, deleted ones too. A plan comes as a draft: it is agreed here, by the guards of
// this program. What it rests on is the test as it is kept here.
func (o *Own) Beside(d Draft, taken Taken, kept map[record.ID]bool) Beside {
	in := besides{o: o, people: map[record.ID]record.ID{}, tests: map[record.ID]record.ID{}, kept: kept}
	here := map[record.ID]bool{}
	for _, a := range taken.Athletes {
		here[a.ID] = true
	}
	for file, id := range d.People {
		if here[id] || d.Present[id] {
			in.people[file] = id
		}
	}
	for _, t := range taken.Tests {
		in.tests[t.ID] = t.ID
	}
	for file, id := range d.Sheets {
		if in.tests[id] != "" || file == id && d.Present[id] {
			in.tests[file] = id
		}
	}
	var b Beside
	stops := map[record.ID]bool{}
	for _, t := range o.trips {
		if t, ok := in.trip(t); ok {
			b.Trips = append(b.Trips, t)
			for _, s := range t.Stops {
				stops[s.ID] = true
			}
		}
	}
	for _, p := range o.plans {
		if p, ok := in.plan(p, stops); ok {
			b.Plans = append(b.Plans, p)
		}
	}
	b.Products = in.products(taken, b)
	return b
}

// besides is such a choice on its way; people and tests lead from the ids in the file
// to those here.
type besides struct {
	o             *Own
	people, tests map[record.ID]record.ID
	kept          map[record.ID]bool
}

// trip is a trip with those of its travellers who are here.
func (in besides) trip(t record.Trip) (record.Trip, bool) {
	t = t.Clone()
	for i := range t.Travellers {
		t.Travellers[i].AthleteID = in.people[t.Travellers[i].AthleteID]
	}
	t.Travellers = slices.DeleteFunc(t.Travellers, func(x record.Traveller) bool { return x.AthleteID == "" })
	return t, !in.kept[t.ID] && len(t.Travellers) > 0
}

// plan is a plan as a draft of somebody who is here.
func (in besides) plan(p record.Plan, stops map[record.ID]bool) (record.Plan, bool) {
	p = p.Clone()
	p.AthleteID = in.people[p.AthleteID]
	p.State, p.Agreement.AgreedAt, p.Agreement.AgreedBy, p.Corrected = record.PlanDraft, nil, "", record.TestCorrected{}
	p.Basis.TestID = in.tests[p.Basis.TestID]
	var pool []string
	for id := range strings.FieldsSeq(p.Basis.PoolIDs) {
		if here := in.tests[record.ID(id)]; here != "" {
			pool = append(pool, string(here))
		}
	}
	p.Basis.PoolIDs = strings.Join(pool, " ")
	if !stops[p.Basis.StopID] {
		p.Basis.StopID = ""
	}
	return p, !in.kept[p.ID] && p.AthleteID != ""
}

// products are those of the file that what comes names and that are not here.
func (in besides) products(taken Taken, b Beside) (list []record.Product) {
	named := record.ProductsNamed(taken.Athletes, taken.Tests, b.Plans, b.Trips)
	for _, p := range in.o.products {
		if (named[p.ID] || named[record.ID(p.Replaces)]) && !in.kept[p.ID] {
			list = append(list, p)
		}
	}
	return list
}
