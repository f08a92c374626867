package planner

import (
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// askItem asks which drink or food to add to the option in hand, by typing. It
// is added at nothing: its slider starts there.
func (v *View) askItem(role record.Role) {
	say := v.sp.say
	list := v.products(role)
	trouble := look.NewParagraph(v.full(role), look.Body, look.Ink)
	what := field.NewSuggest(v.desk.Host, "planner.item", false, func(text string) []field.Option { return v.itemOptions(list, text) })
	what.SetPlaceholder(say("planner.item.placeholder"))
	look.EnableIf(what, trouble.Text() == "")
	add := func(o field.Option) bool {
		product, ok := v.desk.Products().Find(record.ID(o.Key))
		if !ok {
			trouble.SetText(say("planner.item.none"))
			return false
		}
		return v.addProduct(product, func(text string) { trouble.SetText(text) })
	}
	var dialog *field.Dialog
	what.OnChosen = func(o field.Option) {
		if add(o) {
			dialog.Close()
		}
	}
	dialog = v.desk.Host.Ask(v.canvas(), field.Question{
		Name: "planner.item.ask", Title: say("planner.add." + string(role)), Sentence: say("planner.item.sentence." + string(role)),
		Content: look.VBox(8, what, trouble),
		Actions: []field.Action{
			{Name: "no", Text: say("field.ask.cancel")},
			{Name: "yes", Text: say("planner.item.add"), Kind: field.Primary, Do: func() (stay bool) {
				o, _ := what.Taken()
				return !add(o)
			}},
		},
	})
}

// products are what can be added in a role. Water has its slider, and so has
// salt: it is no drink to be made up.
func (v *View) products(role record.Role) []fuel.Product {
	var list []fuel.Product
	for _, p := range v.desk.Products().Products() {
		if roleOf(p) == role && record.ID(p.ID) != consult.Water && record.ID(p.ID) != consult.SaltID {
			list = append(list, p)
		}
	}
	return list
}

// itemOptions are the products that fit a text.
func (v *View) itemOptions(list []fuel.Product, text string) []field.Option {
	var out []field.Option
	for _, p := range consult.Match(list, text) {
		out = append(out, field.Option{Key: p.ID, Text: v.sp.named(p.Name), Note: p.Portion.Name})
	}
	return out
}

// full says that no more of a role fits into a plan; empty while one does.
func (v *View) full(role record.Role) string {
	from, to := plan.Food1, plan.Food4
	if role == record.RoleDrink {
		from, to = plan.Drink1, plan.Drink3
	}
	for slot := from; slot <= to; slot++ {
		if !v.now.planCase.Slots[slot].InUse {
			return ""
		}
	}
	return v.sp.say("planner.item.full." + string(role))
}

// addProduct adds a product, where the plan can then still be calculated.
func (v *View) addProduct(p fuel.Product, wrong func(string)) bool {
	tried, option := v.now.plan.Clone(), v.now.option
	addItem(&tried, option, p)
	if _, err := v.file.open(tried, v.desk); err != nil {
		wrong(v.sp.say("planner.item.unusable"))
		return false
	}
	v.b.Pick("planner.item", func(s *sheet) { addItem(&s.Record, option, p) })
	return true
}
