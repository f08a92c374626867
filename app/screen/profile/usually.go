package profile

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/evidence"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// usually is what the athlete says they usually drink and eat in a usual session,
// beside what a test saw; a plan may start from it.
func (v *View) usually() fyne.CanvasObject {
	say := v.sp.Say
	number := func(name string, f evidence.Field, u quantity.Unit, of func(h *record.Habit) *record.Number) *field.Number {
		return v.b.Number("", "profile.habit."+name, f, u, bind.At("habit."+name, func(a *record.Athlete) *record.Number { return of(&a.Habit) }))
	}
	pantry := v.desk.Calculate().Pantry
	products := func(list []fuel.Product) func(text string) []field.Option {
		return func(text string) []field.Option {
			var options []field.Option
			for _, p := range list {
				options = append(options, field.Option{Key: p.ID, Text: p.Name})
			}
			return field.Matching(options, text)
		}
	}
	named := func(id record.ID, name string) field.Option {
		if p, ok := pantry.Find(id); ok {
			return field.Option{Key: p.ID, Text: p.Name}
		}
		return field.Option{Text: name}
	}
	drink := v.b.Suggest("", "profile.habit.of", products(pantry.Drinks()), func(a record.Athlete) field.Option { return named(a.Habit.DrinkID, "") },
		func(a *record.Athlete, o field.Option) { a.Habit.DrinkID = record.ID(o.Key) }).Choosy()
	food := v.b.Suggest("", "profile.habit.food", products(pantry.Foods()), func(a record.Athlete) field.Option { return named(a.Habit.FoodID, a.Habit.FoodName) },
		func(a *record.Athlete, o field.Option) { a.Habit.FoodID, a.Habit.FoodName = record.ID(o.Key), o.Text }).Choosy()
	portions := number("portions", evidence.Portions, quantity.Portion, func(h *record.Habit) *record.Number { return &h.Portions })
	portions.SetSuffix(say("planner.portion.more"))
	return look.VBox(8,
		look.NewLabel(say("profile.habit"), look.Strong, look.Ink),
		look.NewParagraph(say("profile.habit.note"), look.Note, look.Ink2),
		row(say("profile.habit.minutes"), few(number("minutes", evidence.Duration, quantity.Minute, func(h *record.Habit) *record.Number { return &h.Minutes }))),
		row(say("profile.habit.water"), few(number("water", evidence.DrinkingRate, quantity.LitrePerHour, func(h *record.Habit) *record.Number { return &h.Water }))),
		row(say("profile.habit.drink"), few(number("drink", evidence.DrinkingRate, quantity.LitrePerHour, func(h *record.Habit) *record.Number { return &h.Drink }))),
		row(say("profile.habit.of"), broad(drink)),
		row(say("profile.habit.portions"), few(portions)),
		row(say("profile.habit.food"), broad(food)),
	)
}

// aims are the limits set with this athlete, where they are not the practice's.
func (p *sportPart) aims() fyne.CanvasObject {
	say, b := p.v.sp.Say, p.v.b
	carbohydrate := b.Number("", "profile.aim.carbohydrate", evidence.AimCarbohydrate, quantity.GramPerHour,
		bind.At("carbohydrateAim", func(a *record.Athlete) *record.Number { return &a.CarbohydrateAim }))
	deficit := b.Number("", "profile.aim.deficit", evidence.AimDeficit, quantity.PerCent,
		bind.At("deficitAim", func(a *record.Athlete) *record.Number { return &a.DeficitAim }))
	p.deficit = row(say("profile.aim.deficit"), few(deficit))
	return look.VBox(8, look.NewLabel(say("profile.aim"), look.Strong, look.Ink), row(say("profile.aim.carbohydrate"), few(carbohydrate)), p.deficit)
}
