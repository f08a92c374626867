package shots

import (
	"context"
	"fmt"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// stateNames is how the names of states begin.
const stateNames = "state-"

// Names as people write them: of a drink, of foods, of breaks and of a session, each of
// more than forty letters.
const (
	longDrink   = "Blackcurrant electrolyte drink (invented)"
	longFood    = "Oats and apricot clubhouse bar (invented)"
	longGel     = "Lemon gel with a pinch of salt (invented)"
	longBreak   = "Behind the grandstand by the second water tap"
	longSession = "Regional championship, second round, away, on the upper field"
)

// statesOf keeps plans of an athlete who has one in the states that the invented practice
// is without, and lists the places to see them and the dialogs of the planner.
func statesOf(ctx context.Context, s *store.Store, athlete, draft record.ID) ([]shot, error) {
	plans, err := s.Plans(ctx, athlete)
	if err != nil || len(plans) == 0 {
		return nil, fmt.Errorf("make plans to draw: %d plans, %w", len(plans), err)
	}
	long, err := longPlan(ctx, s, plans[0])
	if err != nil {
		return nil, err
	}
	bare := consult.Successor(plans[0], "Bare")
	bare.Chances = nil
	for i := range bare.Options {
		bare.Options[i].Items, bare.Options[i].Salt = nil, record.Number{}
	}
	race := consult.Successor(plans[0], "Marathon")
	race.Target.Sport = "road-running"
	lost := consult.Successor(plans[0], "Gone")
	lost.Options[0].Items = append(lost.Options[0].Items, record.Item{
		Meta: record.Meta{ID: record.NewID()}, OptionID: lost.Options[0].ID, Order: len(lost.Options[0].Items), Role: record.RoleDrink,
		ProductID: "own.gone", Name: "A drink that was deleted", Volume: record.Num(300, quantity.Millilitre),
	})
	at := func(p record.Plan, tab string) desk.Place {
		return desk.Place{Screen: desk.Plan, Athlete: athlete, Record: p.ID, Part: tab}
	}
	for _, p := range []*record.Plan{&long, &bare, &race, &lost} {
		if *p, err = s.SavePlan(ctx, *p, store.Edit{}); err != nil {
			return nil, fmt.Errorf("keep a plan to draw: %w", err)
		}
	}
	work, session := desk.Place{Screen: desk.Plan, Athlete: draft}, desk.Place{Screen: desk.Plan, Athlete: draft, Part: "session"}
	return []shot{
		{name: "state-long", place: at(long, "")}, {name: "state-long-breaks", place: at(long, "breaks")},
		{name: "state-long-agree", place: at(long, "")},
		{name: "state-bare", place: at(bare, "")}, {name: "state-bare-breaks", place: at(bare, "breaks")},
		{name: "state-session", place: at(race, "session")}, {name: "state-lost", place: at(lost, "")},
		{name: "state-suggest", place: work}, {name: "state-agree", place: work},
		{name: "state-climate", place: session}, {name: "state-climate-city", place: session}, {name: "state-climate-far", place: session},
		{name: "state-climate-wrong", place: session}, {name: "state-climate-test", place: session},
		{name: "state-review", place: desk.Place{Screen: desk.Plan, Athlete: athlete, Record: plans[0].ID}},
		{name: "state-refused", place: work, refused: true},
	}, nil
}

// longPlan is a draft whose drinks, foods, breaks and session have long names.
func longPlan(ctx context.Context, s *store.Store, from record.Plan) (record.Plan, error) {
	p := consult.Successor(from, "Away")
	p.Target.SessionName = longSession
	products := map[record.Role][]record.Product{record.RoleFood: {}}
	for _, one := range []struct {
		name, form      string
		carbohydrate, g float64
	}{{longDrink, "drink", 6, 0}, {longFood, "solid", 60, 55}, {longGel, "gel", 52, 50}} {
		kept, err := s.SaveProduct(ctx, record.Product{
			Meta: record.Meta{ID: record.NewID()}, Name: one.name, Form: one.form, Density: record.Num(1, "g/mL"), PortionMass: record.Num(one.g, quantity.Gram),
			Per100: record.Composition{Water: record.Num(94-one.carbohydrate, quantity.Gram), Available: record.Num(one.carbohydrate, quantity.Gram), Sodium: record.Num(46, quantity.Milligram)},
		}, store.Edit{})
		if err != nil {
			return p, fmt.Errorf("keep a product to draw: %w", err)
		}
		role := record.RoleFood
		if one.form == "drink" {
			role = record.RoleDrink
		}
		products[role] = append(products[role], kept)
	}
	for i := range p.Options {
		p.Options[i] = renamed(p.Options[i], products)
	}
	for i := range p.Chances {
		p.Chances[i].Name = fmt.Sprintf("%s, %d", longBreak, i+1)
	}
	return p, nil
}

// renamed puts products with long names in the place of those there are.
func renamed(o record.Option, products map[record.Role][]record.Product) record.Option {
	used := map[record.Role]int{}
	var items []record.Item
	for _, it := range o.Items {
		if list := products[it.Role]; it.Role != record.RoleWater {
			if used[it.Role] == len(list) {
				continue
			}
			p := list[used[it.Role]]
			used[it.Role]++
			it.ProductID, it.Name, it.Strength = p.ID, p.Name, record.Number{}
		}
		items = append(items, it)
	}
	o.Items = items
	return o
}
