package consult

import (
	"errors"
	"fmt"
	"slices"

	"ebbwell/internal/care"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// Case is one plan open for calculation: what it is based on, what may be taken,
// and a planner that answers for any mix. A Case is never changed; a plan with
// other items, another basis or another session is another Case.
type Case struct {
	Plan    record.Plan
	Athlete record.Athlete
	Care    care.Care
	Basis   Basis
	Slots   [plan.Slots]SlotInfo
	Planner *plan.Planner
	// Anew says that the plan was agreed and that what was kept of its calculation
	// is missing or cannot be read: it is calculated from the records as they are
	// now and may differ from what was agreed. See [Case.AsAgreed].
	Anew bool
	// Since is what became since of the records an agreed plan is based on.
	Since Since
	// said is what was said of the estimate when the plan was agreed; nil while
	// it follows the calculation.
	said *said
}

// SlotInfo is what stands in a slot of the mix.
type SlotInfo struct {
	InUse   bool
	Role    record.Role
	Product fuel.Product
	// Strength of a powder made up, g per 100 mL; unknown for others.
	Strength record.Number
	// Named is the id the options call the product by; Base is the product as the
	// pantry has it: of a powder, before it is made up.
	Named record.ID
	Base  fuel.Product
}

// ErrTooMany says that a plan has more than three drinks or four foods.
var ErrTooMany = errors.New("more items than a plan can hold")

// GoneError says that a product of a plan is not in the pantry any more.
type GoneError struct{ Name string }

func (e *GoneError) Error() string { return fmt.Sprintf("no product %q any more", e.Name) }

// OpenCase makes the case of a plan on a basis.
func OpenCase(p record.Plan, a record.Athlete, b Basis, d Setup) (Case, error) {
	c := Case{Plan: p, Athlete: a, Care: care.Of(a, p.CreatedAt), Basis: b}
	menu, err := c.fillSlots(d)
	if err != nil {
		return Case{}, err
	}
	session := SessionOf(p, b.Air)
	session.Comfortable = d.Settings.ComfortableOnly
	c.Basis.Plan.Body.Hidden = c.Care.MassHidden // kept too when the plan is agreed
	planner, err := plan.New(c.Basis.Plan, session, menu, c.aim(session, b.Plan.Usual, d))
	if err != nil {
		return Case{}, fmt.Errorf("open plan %s: %w", p.ID, err)
	}
	c.Planner = c.known(planner, c.background(d))
	return c, nil
}

// known is a planner that knows the plan's breaks and its habit.
func (c Case) known(planner *plan.Planner, b plan.Background) *plan.Planner {
	habit, _ := OptionOf(c.Plan, record.OptionHabit)
	return planner.At(PlanChances(c.Plan)).From(c.MixOf(habit), b)
}

// SessionOf is the session a plan is for.
func SessionOf(p record.Plan, air record.Air) plan.Session {
	sport := SportOf(p.Target.Sport)
	s := plan.Session{
		Effort: fuel.EffortOf(p.Target.Effort.Or(-1)), Intermittent: sport.Intermittent, Running: sport.Running,
		Heat: HeatOf(air), NextHours: p.Target.NextAfter.Or(0), OneBottle: Wished(p, WishOneBottle),
	}
	s.Minutes[plan.Short] = p.Target.Short.Or(0)
	s.Minutes[plan.Expected] = p.Target.Minutes.Or(0)
	s.Minutes[plan.Long] = p.Target.Long.Or(0)
	return s
}

// fillSlots gives every item of the options a slot, in the order they are met.
func (c *Case) fillSlots(d Setup) (plan.Menu, error) {
	menu := plan.NewMenu()
	c.Slots[plan.Water] = SlotInfo{InUse: true, Role: record.RoleWater}
	c.Slots[plan.Salt] = SlotInfo{InUse: true}
	if water, ok := d.Pantry.Find(Water); ok {
		c.Slots[plan.Water].Product, c.Slots[plan.Water].Base, c.Slots[plan.Water].Named = water, water, Water
		if err := menu.SetDrink(plan.Water, water); err != nil {
			return menu, err
		}
	}
	for _, o := range c.Plan.Options {
		for _, it := range o.Items {
			if it.Role == record.RoleWater {
				continue
			}
			if _, ok := c.SlotOf(it); ok {
				continue
			}
			if err := c.addSlot(&menu, it, d); err != nil {
				return menu, err
			}
		}
	}
	c.offerSlots(&menu, d)
	return menu, nil
}

// offerSlots fills slots that are free with what may be proposed though no
// option has it yet: a drink where there is none, gels but for the young, a food.
func (c *Case) offerSlots(menu *plan.Menu, d Setup) {
	has := map[string]bool{}
	drinks := false
	for s, info := range c.Slots {
		has[info.Product.ID] = info.InUse
		drinks = drinks || info.InUse && plan.Slot(s).IsDrink() && plan.Slot(s) != plan.Water
	}
	for _, one := range []struct {
		role record.Role
		id   record.ID
		want bool
	}{{record.RoleDrink, firstDrink, !drinks}, {record.RoleFood, firstGel, !c.young()}, {record.RoleFood, firstFood, true}} {
		if product, ok := d.Pantry.Find(one.id); ok && one.want && !has[string(one.id)] {
			// A slot that is not free, or a product that cannot stand in one, is not offered.
			_ = c.addSlot(menu, record.Item{Role: one.role, ProductID: one.id, Name: product.Name}, d)
		}
	}
}

// young reports that gels are not for the athlete.
func (c *Case) young() bool {
	years, ok := c.Athlete.Age(c.Plan.CreatedAt)
	return ok && float64(years) < evidence.FuelAimYoungUnder
}

// addSlot puts an item into the first free slot of its kind.
func (c *Case) addSlot(menu *plan.Menu, it record.Item, d Setup) error {
	product, ok := d.Pantry.Find(it.ProductID)
	if !ok {
		return fmt.Errorf("item of plan %s: %w", c.Plan.ID, &GoneError{Name: it.Name})
	}
	base := product
	from, to := plan.Food1, plan.Food4
	if it.Role == record.RoleDrink {
		from, to = plan.Drink1, plan.Drink3
		if product.Form == fuel.Powder {
			made, err := product.MadeUp(it.Strength.Or(DefaultStrength))
			if err != nil {
				return fmt.Errorf("item %q of plan %s: %w", it.Name, c.Plan.ID, err)
			}
			made.ID, made.Name = product.ID, product.Name
			product = made
		}
	}
	for s := from; s <= to; s++ {
		if c.Slots[s].InUse {
			continue
		}
		set := menu.SetFood
		if it.Role == record.RoleDrink {
			set = menu.SetDrink
		}
		if err := set(s, product); err != nil {
			return err
		}
		c.Slots[s] = SlotInfo{InUse: true, Role: it.Role, Product: product, Strength: it.Strength, Named: it.ProductID, Base: base}
		return nil
	}
	return fmt.Errorf("item %q of plan %s: %w", it.Name, c.Plan.ID, ErrTooMany)
}

// DefaultStrength is how strong a powder is made up at first, g per 100 mL.
const DefaultStrength = 6.0

// SlotOf returns the slot of an item; ok is false when it has none yet.
func (c Case) SlotOf(it record.Item) (s plan.Slot, ok bool) {
	if it.Role == record.RoleWater {
		return plan.Water, true
	}
	for s := plan.Drink1; s <= plan.Food4; s++ {
		info := c.Slots[s]
		called := info.Named == it.ProductID || info.Product.ID == string(it.ProductID)
		if info.InUse && info.Role == it.Role && called && info.Strength.Same(it.Strength) {
			return s, true
		}
	}
	return 0, false
}

// MixOf is an option as a mix.
func (c Case) MixOf(o record.Option) plan.Mix {
	var mix plan.Mix
	for _, it := range o.Items {
		if s, ok := c.SlotOf(it); ok {
			mix[s] += it.Volume.Or(0) + it.Portions.Or(0)
		}
	}
	mix[plan.Salt] = o.Salt.Or(0)
	return mix
}

// WithMix returns an option with the amounts of a mix. An item that is in use
// stays, also at nothing, so that its slider stays too.
func (c Case) WithMix(o record.Option, mix plan.Mix) record.Option {
	o.Items = slices.Clone(o.Items)
	for s := plan.Water; s <= plan.Food4; s++ {
		if c.Slots[s].InUse {
			o = c.setItem(o, s, mix[s])
		}
	}
	o.Salt = record.Num(mix[plan.Salt], quantity.Gram)
	return o
}

// setItem sets the amount of one slot.
func (c Case) setItem(o record.Option, s plan.Slot, x float64) record.Option {
	for i, it := range o.Items {
		if at, ok := c.SlotOf(it); ok && at == s {
			o.Items[i] = amount(it, x)
			return o
		}
	}
	if x == 0 {
		return o
	}
	info := c.Slots[s]
	it := record.Item{
		Meta: record.Meta{ID: record.NewID()}, OptionID: o.ID, Order: len(o.Items), Role: info.Role,
		ProductID: record.ID(info.Product.ID), Name: info.Product.Name, Strength: info.Strength,
	}
	o.Items = append(o.Items, amount(it, x))
	return o
}

// amount sets how much of an item there is, in the unit of its role.
func amount(it record.Item, x float64) record.Item {
	if it.Role == record.RoleFood {
		it.Portions = record.Num(x, quantity.Portion)
		return it
	}
	it.Volume = record.Num(x, quantity.Millilitre)
	return it
}

// OptionOf returns the first option of a kind.
func OptionOf(p record.Plan, kind record.OptionKind) (record.Option, bool) {
	for _, o := range p.Options {
		if o.Kind == kind {
			return o, true
		}
	}
	return record.Option{}, false
}
