package consult

import (
	"ebbwell/internal/climate"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// PackTrip is the packing list of one athlete over the stops of a trip that
// have a plan. For a stop whose sweat rate is too uncertain to drink by there is only
// what is drunk to carry, as water: one weighs there, and takes products by that. supplies holds the lots of what is a supplement. margin is a
// share, 0.15 for 15 %. A stop whose dates are open counts as one day.
func PackTrip(stops []StopPlan, supplies []record.Supply, margin float64, d Setup) (climate.PackingList, error) {
	var stays []climate.Stay
	for _, s := range stops {
		if s.Planned {
			stays = append(stays, stayOf(s, supplies, d))
		}
	}
	return climate.Pack(stays, margin)
}

// stayOf is a stop as packing sees it.
func stayOf(s StopPlan, supplies []record.Supply, d Setup) climate.Stay {
	stay := climate.Stay{
		Days: max(1, s.Length), SessionsADay: int(max(0, s.Stop.SessionsADay.Or(1))),
		Drink: quantity.Litres(s.At.Fluid.DrunkL), Bottle: PackedBottle,
	}
	if s.TooUncertain() {
		return stay
	}
	for slot := plan.Drink1; slot <= plan.Food4; slot++ {
		info := s.Case.Slots[slot]
		if !info.InUse || s.Mix[slot] <= 0 {
			continue
		}
		supply := supplyOf(info, slot, s.Mix[slot], d)
		supply.Lot = lotOf(supplies, supply.ID)
		supply.Supplement = supply.Lot != "" || isSupplement(supply)
		stay.Supplies = append(stay.Supplies, supply)
	}
	if salt := s.Mix[plan.Salt]; salt > 0 && len(s.Case.Care.WithholdSalt) == 0 {
		// A serving is 1 g, so that stops with different amounts add up.
		stay.Supplies = append(stay.Supplies, climate.Supply{ID: string(SaltID), Form: climate.Salt, Servings: salt, Serving: 1})
	}
	return stay
}

// isSupplement reports whether a product is one whose lot is kept: gels and
// powders, for which the athlete answers whatever is in them; not the sugar of
// the kitchen.
func isSupplement(s climate.Supply) bool {
	return s.Form == climate.Gel || s.Form == climate.Powder && record.ID(s.ID) != sugarID
}

// isFresh reports whether a food is one that goes off in a bag: a solid that is more
// than half water, as fruit and what is cooked are (our own rule).
func isFresh(p fuel.Product) bool {
	return p.Form == fuel.Solid && p.Per100.Water.Known && p.Per100.Water.Value > evidence.FreshWater
}

// lotOf is the lot that was written down for a product.
func lotOf(supplies []record.Supply, id string) string {
	for _, known := range supplies {
		if string(known.ProductID) == id {
			return known.Lot
		}
	}
	return ""
}

// SaltID is table salt in the generic catalogue.
const SaltID = record.ID("generic.salt")

// sugarID is table sugar in the generic catalogue.
const sugarID = record.ID("generic.sugar")

// PackedBottle is the bottle that is packed and counted, mL: common practice.
const PackedBottle = 500.0

// supplyOf is what one slot of the mix needs in a session. Drinks are counted
// in bottles, so that stops with different amounts add up: the serving of a
// powder is what makes up one bottle.
func supplyOf(info SlotInfo, slot plan.Slot, amount float64, d Setup) climate.Supply {
	supply := climate.Supply{ID: info.Product.ID, Form: climate.Solid, Servings: amount, Serving: quantity.Grams(info.Product.Portion.Grams)}
	supply.Fresh = isFresh(info.Product)
	kept, _ := d.Pantry.Find(record.ID(info.Product.ID))
	switch {
	case slot.IsDrink() && kept.Form == fuel.Powder:
		// g of powder to 100 mL of drink
		supply.Form, supply.Servings = climate.Powder, amount/PackedBottle
		supply.Serving = quantity.Grams(info.Strength.Or(DefaultStrength) * PackedBottle / 100)
	case slot.IsDrink():
		supply.Form, supply.Servings = climate.ReadyMix, amount/PackedBottle
		supply.Volume = PackedBottle
		supply.Serving = quantity.Grams(PackedBottle * info.Product.Density.Value)
	case info.Product.Form == fuel.Gel:
		supply.Form = climate.Gel
		if info.Product.Density.Known && info.Product.Density.Value > 0 {
			supply.Volume = quantity.Millilitres(info.Product.Portion.Grams / info.Product.Density.Value)
		}
	}
	return supply
}
