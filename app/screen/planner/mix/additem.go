package mix

import (
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/state"
	"ebbwell/internal/consult"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// AskItem asks which drink or food to add to the selected option, by typing. It
// is added at nothing: its slider starts there.
func AskItem(v *part.Plan, role record.Role) {
	say := v.Speaker.Say
	list := Products(v, role)
	trouble := look.NewParagraph(full(v, role), look.Body, look.Ink)
	what := field.NewSuggest(v.Desk.Host, "planner.item", false, func(text string) []field.Option { return itemOptions(v, list, text) }).Choosy()
	what.SetPlaceholder(say("planner.item.placeholder"))
	look.EnableIf(what, trouble.Text() == "")
	add := func(o field.Option) bool {
		product, ok := v.Desk.Products().Find(record.ID(o.Key))
		if !ok {
			trouble.SetText(say("planner.item.none"))
			return false
		}
		return AddProduct(v, product, func(text string) { trouble.SetText(text) })
	}
	var dialog *field.Dialog
	what.OnChosen = func(o field.Option) {
		if add(o) {
			dialog.Close()
		}
	}
	dialog = v.Desk.Host.Ask(v.Canvas(), field.Question{
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

// Products are what can be added in a role. Water has its slider, and so has
// salt: it is no drink to be made up.
func Products(v *part.Plan, role record.Role) []fuel.Product {
	var list []fuel.Product
	for _, p := range v.Desk.Products().Products() {
		if state.RoleOf(p) == role && record.ID(p.ID) != consult.Water && record.ID(p.ID) != consult.SaltID {
			list = append(list, p)
		}
	}
	return list
}

// itemOptions are the products that fit a text.
func itemOptions(v *part.Plan, list []fuel.Product, text string) []field.Option {
	var out []field.Option
	for _, p := range list {
		out = append(out, field.Option{Key: p.ID, Text: v.Speaker.Named(p.Name), Note: p.Portion.Name})
	}
	return field.Matching(out, text)
}

// full says that no more of a role fits into a plan; empty while one does.
func full(v *part.Plan, role record.Role) string {
	from, to := plan.Food1, plan.Food4
	if role == record.RoleDrink {
		from, to = plan.Drink1, plan.Drink3
	}
	for slot := from; slot <= to; slot++ {
		if !v.Now.PlanCase.Slots[slot].InUse {
			return ""
		}
	}
	return v.Speaker.Say("planner.item.full." + string(role))
}

// planned reports whether some option of the plan has a product already: it then has a
// slot.
func planned(v *part.Plan, p fuel.Product) bool {
	for _, slot := range v.Now.PlanCase.Slots {
		if slot.InUse && slot.Product.ID == p.ID {
			return true
		}
	}
	return false
}

// AddProduct adds a product, where the plan can then still be calculated.
func AddProduct(v *part.Plan, p fuel.Product, wrong func(string)) bool {
	if text := full(v, state.RoleOf(p)); text != "" && !planned(v, p) {
		wrong(text)
		return false
	}
	tried, option := v.Now.Plan.Clone(), v.Now.Option
	state.AddItem(&tried, option, p)
	if _, err := v.File.Open(tried, v.Desk); err != nil {
		wrong(v.Speaker.Say("planner.item.unusable"))
		return false
	}
	v.Binder.Pick("planner.item", func(s *part.Sheet) { state.AddItem(&s.Record, option, p) })
	return true
}
