package climate

import (
	"math"
	"slices"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// SupplyForm is what a supply is.
type SupplyForm string

// The forms of supply.
const (
	Powder   SupplyForm = "powder"
	Gel      SupplyForm = "gel"
	Salt     SupplyForm = "salt"
	Solid    SupplyForm = "solid"
	ReadyMix SupplyForm = "ready-drink"
)

// Supply is something taken in every session of a stay.
type Supply struct {
	// ID of the product; supplies of one product and lot are added up.
	ID   string
	Form SupplyForm
	// Servings in one session.
	Servings float64
	// Serving is the mass of one, g; Volume its volume, mL, where it is a
	// liquid or a gel.
	Serving quantity.Grams
	Volume  quantity.Millilitres
	// Supplement: strict liability; a tested batch, and its lot kept.
	Supplement bool
	Lot        string
	// Fresh food does not keep in a bag: it is bought there.
	Fresh bool
}

// Stay is a stop of a trip as packing sees it, for one athlete.
type Stay struct {
	Days, SessionsADay int
	// Drink is the volume of a session, water in mixed drinks included.
	Drink quantity.Litres
	// Bottle is the volume of one bottle.
	Bottle   quantity.Millilitres
	Supplies []Supply
}

// Sessions of the stay.
func (s Stay) Sessions() int { return s.Days * s.SessionsADay }

// Where a supply travels.
const (
	Carry = "carry" // in hand luggage
	Hold  = "hold"  // in the hold
	Buy   = "buy"   // there
)

// LotMissing says that a supplement is packed without its lot.
const LotMissing = "lot-missing"

// PackedSupply is a line of the packing list.
type PackedSupply struct {
	Supply Supply
	// Servings packed, margin included, a whole number; Mass is theirs.
	Servings int
	Mass     quantity.Grams
	// HandLuggage of them travel in hand luggage, so that the first sessions can
	// be held when a bag is late; Rest is where the others go.
	HandLuggage int
	Rest        string
	// Problem is [LotMissing] or empty.
	Problem string
}

// PackingList is what to take.
type PackingList struct {
	Supplies []PackedSupply
	// Powder, salt and gels over all supplies.
	Powder, Salt quantity.Grams
	Gels         int
	// Bottles for one session's drink at every stay, the most that is needed.
	Bottles int
	// SafeWater is drinking water a day, sessions and the rest of the day,
	// the most over the stays.
	SafeWater quantity.Litres
	// Margin that was used, 0.15 for 15 %.
	Margin float64
}

// Pack calculates what stays need.
//
//	servings = ceil(sessions × servings a session × (1 + margin))
//	water    = sessions a day × drink + 2 L     a day
//
// margin is 0.15 to 0.20 in common practice. Servings of the first day's
// sessions travel in hand, gels and liquids of more than 100 mL a piece and
// beyond 1 L in all do not; ready drinks and fresh food are bought. Not a visa for anything:
// the carrier's and the country's rules win. Sources: packing from memory;
// drinking water beside sessions EFSA 2010, from memory. It returns an
// [evidence.Problem] for numbers that cannot be.
func Pack(stays []Stay, margin float64) (PackingList, error) {
	if err := refused(evidence.PackingMargin, margin); err != nil {
		return PackingList{}, err
	}
	list := PackingList{Margin: margin}
	var lines []line
	for _, s := range stays {
		if err := s.refused(); err != nil {
			return PackingList{}, err
		}
		if s.Sessions() > 0 && s.Bottle > 0 {
			list.Bottles = max(list.Bottles, ceil(float64(s.Drink.Millilitres()/s.Bottle)))
		}
		list.SafeWater = max(list.SafeWater, quantity.Litres(s.SessionsADay)*s.Drink+evidence.DailyDrinkingWater)
		for _, supply := range s.Supplies {
			lines = addLine(lines, supply, float64(s.Sessions())*supply.Servings, float64(s.SessionsADay)*supply.Servings)
		}
	}
	hand := quantity.Millilitres(evidence.HandLiquidTotal)
	for _, l := range lines {
		p := l.pack(margin, &hand)
		list.Supplies = append(list.Supplies, p)
		switch p.Supply.Form {
		case Powder:
			list.Powder += p.Mass
		case Salt:
			list.Salt += p.Mass
		case Gel:
			list.Gels += p.Servings
		}
	}
	return list, nil
}

// line gathers the servings of one product over the stays.
type line struct {
	supply             Supply
	servings, firstDay float64
}

// addLine adds servings to the line of a product, or begins one. The first
// stay's first day is the one that must not wait for a late bag.
func addLine(lines []line, s Supply, servings, firstDay float64) []line {
	i := slices.IndexFunc(lines, func(l line) bool { return l.supply.ID == s.ID && l.supply.Lot == s.Lot && l.supply.Form == s.Form })
	if i < 0 {
		return append(lines, line{s, servings, firstDay})
	}
	lines[i].servings += servings
	return lines
}

// pack turns a line into whole servings; hand is the liquid that hand luggage
// still takes.
func (l line) pack(margin float64, hand *quantity.Millilitres) PackedSupply {
	p := PackedSupply{Supply: l.supply, Servings: ceil(l.servings * (1 + margin)), Rest: Hold}
	p.Mass = quantity.Grams(p.Servings) * l.supply.Serving
	if l.supply.Supplement && l.supply.Lot == "" {
		p.Problem = LotMissing
	}
	if l.supply.Form == ReadyMix || l.supply.Fresh {
		p.Rest = Buy
		return p
	}
	p.HandLuggage = min(ceil(l.firstDay), p.Servings)
	if l.supply.Form == Gel {
		each := l.supply.Volume
		if each > evidence.HandLiquidMax {
			p.HandLuggage = 0
		} else if each > 0 {
			p.HandLuggage = min(p.HandLuggage, int(*hand/each))
		}
		*hand -= quantity.Millilitres(p.HandLuggage) * each
	}
	return p
}

// ceil rounds up to a whole number, but for what arithmetic added.
func ceil(x float64) int { return int(math.Ceil(x - rounding)) }

// refused is the error of a stay that cannot be.
func (s Stay) refused() error {
	values := []fieldValue{
		{evidence.TripSessions, float64(s.Days)}, {evidence.TripSessions, float64(s.SessionsADay)},
		{evidence.TripSessions, float64(s.Days) * float64(s.SessionsADay)},
		{evidence.PouredVolume, float64(s.Drink.Millilitres())}, {evidence.PouredVolume, float64(s.Bottle)},
	}
	for _, supply := range s.Supplies {
		values = append(values, fieldValue{evidence.Servings, supply.Servings},
			fieldValue{evidence.FoodMass, float64(supply.Serving)}, fieldValue{evidence.PouredVolume, float64(supply.Volume)})
	}
	return refusedAny(values...)
}

// SumPacking adds the lists of a squad: the same supplies together, bottles
// and water over all athletes.
func SumPacking(lists ...PackingList) PackingList {
	var sum PackingList
	for _, l := range lists {
		sum.Margin = max(sum.Margin, l.Margin)
		sum.Powder += l.Powder
		sum.Salt += l.Salt
		sum.Gels += l.Gels
		sum.Bottles += l.Bottles
		sum.SafeWater += l.SafeWater
		for _, p := range l.Supplies {
			i := slices.IndexFunc(sum.Supplies, func(q PackedSupply) bool {
				return q.Supply.ID == p.Supply.ID && q.Supply.Lot == p.Supply.Lot && q.Supply.Form == p.Supply.Form
			})
			if i < 0 {
				sum.Supplies = append(sum.Supplies, p)
				continue
			}
			sum.Supplies[i].Servings += p.Servings
			sum.Supplies[i].Mass += p.Mass
			sum.Supplies[i].HandLuggage += p.HandLuggage
		}
	}
	return sum
}

// rounding is what arithmetic may add to an amount.
const rounding = 1e-9
