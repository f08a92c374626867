package plan

import (
	"errors"
	"fmt"
	"math"

	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan/proposal"
)

// Slot is a place in the mix: water, up to three drinks, up to four foods,
// added salt.
type Slot int

// The slots.
const (
	Water  Slot = 0
	Drink1 Slot = 1
	Drink2 Slot = 2
	Drink3 Slot = 3
	Food1  Slot = 4
	Food2  Slot = 5
	Food3  Slot = 6
	Food4  Slot = 7
	Salt   Slot = 8
	// Slots is how many there are.
	Slots = 9
	// Drinks counts water and the three drinks; Foods the foods.
	Drinks = 4
	Foods  = 4
)

// IsDrink reports water or a drink.
func (s Slot) IsDrink() bool { return s >= Water && s <= Drink3 }

// IsFood reports a food.
func (s Slot) IsFood() bool { return s >= Food1 && s <= Food4 }

// Mix is how much of each slot a plan has: mL of water and drinks, portions
// of foods, g of added salt.
type Mix [Slots]float64

// Unit is what one unit of a slot holds: one mL of a drink, one portion of a
// food, one g of salt.
type Unit struct {
	FluidL        float64 // volume drunk
	FoodWaterL    float64
	MassKg        float64 // what the scale shows of it; added salt counts as nothing
	CarbohydrateG float64
	Split         fuel.Split // g
	SodiumMg      float64
	PotassiumMg   float64
	EnergyKcal    float64
}

// Item is what stands in a slot.
type Item struct {
	InUse bool
	// ID of the product.
	ID   string
	Unit Unit
	// Step is the increment of the slot.
	Step float64
	// Most is the end of its slider; zero lets the planner set it by the
	// length of the session.
	Most float64
	// SodiumUnknown and EnergyUnknown: the product's cell is empty, and
	// counts as nothing.
	SodiumUnknown, EnergyUnknown bool
	// Gel is carried and taken wherever one drinks.
	Gel bool
}

// Menu is what may be taken, a slot each.
type Menu [Slots]Item

// ErrMenu means: a product cannot stand in a slot.
var ErrMenu = errors.New("not for this slot")

// NewMenu is a menu of salt and of plain water that holds nothing; put a
// water of known minerals in with [Menu.SetDrink].
func NewMenu() Menu {
	var m Menu
	m[Water] = Item{
		InUse: true, ID: "water", Unit: Unit{FluidL: 1.0 / 1000, MassKg: 1.0 / 1000}, Step: evidence.FluidIncrement,
	}
	m[Salt] = Item{
		InUse: true, ID: "salt", Unit: Unit{SodiumMg: evidence.SodiumInSalt}, Step: evidence.SaltIncrement,
	}
	return m
}

// SetDrink puts a drink, ready or made up, into slot Water or Drink1 to
// Drink3. The error wraps [ErrMenu]: not a drink slot, not a drink, or its
// density or carbohydrate unknown.
func (m *Menu) SetDrink(s Slot, p fuel.Product) error {
	if !s.IsDrink() || p.Form != fuel.Drink {
		return fmt.Errorf("put %s into slot %d as a drink: %w", p.ID, s, ErrMenu)
	}
	one, err := p.ByVolume(1)
	if err != nil {
		return fmt.Errorf("put %s into slot %d: %w: %w", p.ID, s, ErrMenu, err)
	}
	u, err := unitOf(one)
	if err != nil {
		return err
	}
	u.FluidL, u.FoodWaterL = 1.0/1000, 0
	m[s] = item(p, u, evidence.FluidIncrement)
	return nil
}

// SetFood puts a food or gel into slot Food1 to Food4. The error wraps
// [ErrMenu]: not a food slot, a drink, no portion, or its carbohydrate unknown.
func (m *Menu) SetFood(s Slot, p fuel.Product) error {
	if !s.IsFood() || p.Form == fuel.Drink {
		return fmt.Errorf("put %s into slot %d as a food: %w", p.ID, s, ErrMenu)
	}
	one, err := p.ByPortion(1)
	if err != nil {
		return fmt.Errorf("put %s into slot %d: %w: %w", p.ID, s, ErrMenu, err)
	}
	u, err := unitOf(one)
	if err != nil {
		return err
	}
	m[s] = item(p, u, evidence.PortionIncrement)
	m[s].Gel = p.Form == fuel.Gel
	if m[s].Gel || p.Portion.Grams < evidence.WholePieceUnder {
		m[s].Step = 1 // nobody halves a gel, a chew or a date
	}
	return nil
}

// Clear empties a slot of a drink or a food; water and salt stay.
func (m *Menu) Clear(s Slot) {
	if s > Water && s < Salt {
		m[s] = Item{}
	}
}

func item(p fuel.Product, u Unit, step float64) Item {
	c := p.Per100
	return Item{
		InUse: true, ID: p.ID, Unit: u, Step: step,
		SodiumUnknown: !c.Sodium.Known, EnergyUnknown: !c.Energy.Known,
	}
}

// unitOf reads what one unit holds.
func unitOf(a fuel.Amount) (Unit, error) {
	carbohydrate := a.Product.Per100.AvailableCarbohydrate()
	if !carbohydrate.Known {
		return Unit{}, fmt.Errorf("take %s into a plan: %w: carbohydrate unknown", a.Product.ID, ErrMenu)
	}
	m := fuel.Mix([]fuel.Amount{a}, 0)
	return Unit{
		FoodWaterL:    m.FoodWaterL.Value,
		MassKg:        a.Grams / 1000,
		CarbohydrateG: m.Carbohydrate.Value, Split: m.Split,
		SodiumMg: m.SodiumMg.Value, PotassiumMg: m.PotassiumMg.Value, EnergyKcal: m.EnergyKcal.Value,
	}, nil
}

// fluidL is what a unit adds to the fluid balance: drink and food water.
func (u Unit) fluidL() float64 { return u.FluidL + u.FoodWaterL }

// massKg is what a unit adds to the scale. A menu kept by an earlier version has
// no masses: its fluid then counts.
func (u Unit) massKg() float64 {
	if u.MassKg > 0 {
		return u.MassKg
	}
	return u.fluidL()
}

// sliderEnd is where a slot's slider ends in a session of some hours: 1.5 L/h
// of a drink, what holds 90 g/h of a food, 3 g/h of salt (our proposal).
func (i Item) sliderEnd(s Slot, hours float64) float64 {
	end := evidence.SaltSliderEnd * hours
	switch {
	case s.IsDrink():
		end = evidence.FluidSliderEnd * 1000 * hours
	case s.IsFood() && i.Unit.CarbohydrateG > 0:
		end = min(evidence.FuelLongHigh*hours/i.Unit.CarbohydrateG, evidence.PortionsAtMost)
	}
	if s.IsFood() {
		end = max(end, evidence.PortionsAtLeast)
	}
	return proposal.CeilTo(end, i.Step)
}

// usable reports whether an item's numbers can be computed with.
func (i Item) usable() bool {
	u := i.Unit
	for _, x := range [...]float64{
		u.FluidL, u.FoodWaterL, u.MassKg, u.CarbohydrateG, u.Split.Glucose, u.Split.Fructose, u.Split.Unknown,
		u.SodiumMg, u.PotassiumMg, u.EnergyKcal, i.Most,
	} {
		if !(x >= 0) || math.IsInf(x, 0) {
			return false
		}
	}
	return i.Step > 0 && !math.IsInf(i.Step, 0)
}
