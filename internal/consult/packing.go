package consult

import (
	"ebbwell/internal/climate"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// PackTrip is the packing list of one athlete over the stops of a trip that
// have a plan. supplies holds the lots of what is a supplement. margin is a
// share, 0.15 for 15 %.
func PackTrip(stops []StopPlan, supplies []record.Supply, margin float64) (climate.PackingList, error) {
	var stays []climate.Stay
	for _, s := range stops {
		if s.Planned {
			stays = append(stays, stayOf(s, supplies))
		}
	}
	return climate.Pack(stays, margin)
}

// stayOf is a stop as packing sees it.
func stayOf(s StopPlan, supplies []record.Supply) climate.Stay {
	stay := climate.Stay{
		Days: max(1, len(s.Days)), SessionsADay: int(max(0, s.Stop.SessionsADay.Or(1))),
		Drink: quantity.Litres(s.At.Fluid.DrunkL), Bottle: packedBottle,
	}
	for slot := plan.Drink1; slot <= plan.Food4; slot++ {
		info := s.Case.Slots[slot]
		if !info.InUse || s.Mix[slot] <= 0 {
			continue
		}
		supply := supplyOf(info, slot, s.Mix[slot])
		for _, known := range supplies {
			if string(known.ProductID) == supply.ID {
				supply.Supplement, supply.Lot = true, known.Lot
			}
		}
		stay.Supplies = append(stay.Supplies, supply)
	}
	if salt := s.Mix[plan.Salt]; salt > 0 {
		stay.Supplies = append(stay.Supplies, climate.Supply{ID: string(SaltID), Form: climate.Salt, Servings: 1, Serving: quantity.Grams(salt)})
	}
	return stay
}

// SaltID is table salt in the generic catalogue.
const SaltID = record.ID("generic.salt")

// packedBottle is the bottle that is packed: common practice.
const packedBottle quantity.Millilitres = 500

// supplyOf is what one slot of the mix needs in a session.
func supplyOf(info SlotInfo, slot plan.Slot, amount float64) climate.Supply {
	supply := climate.Supply{ID: info.Product.ID, Form: climate.Solid, Servings: amount, Serving: quantity.Grams(info.Product.Portion.Grams)}
	switch {
	case slot.IsDrink() && info.Strength.Known():
		// g of powder to 100 mL of drink
		supply.Form, supply.Servings = climate.Powder, 1
		supply.Serving = quantity.Grams(*info.Strength.Value * amount / 100)
	case slot.IsDrink():
		supply.Form, supply.Servings = climate.ReadyMix, amount/float64(packedBottle)
		supply.Volume = packedBottle
		supply.Serving = quantity.Grams(float64(packedBottle) * info.Product.Density.Value)
	case info.Product.Form == fuel.Gel:
		supply.Form = climate.Gel
		if info.Product.Density.Known && info.Product.Density.Value > 0 {
			supply.Volume = quantity.Millilitres(info.Product.Portion.Grams / info.Product.Density.Value)
		}
	}
	return supply
}
