package pantry

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

// figures are the label's own.
func (e *editor) figures() fyne.CanvasObject {
	b, gram := e.b, quantity.Gram
	per := b.Toggle("", "pantry.edit.per", b.Options("per.", string(fuel.Per100Grams), string(fuel.Per100Millilitres), string(fuel.PerPortion)), bind.Word[form]{
		Get: func(f form) string { return string(f.per) },
		Set: func(f *form, word string) { *f = f.counting(fuel.Per(word)) },
	})
	per.OnChosen = e.counted(per.OnChosen)
	e.rows.per = per
	kind := b.Toggle("", "pantry.edit.kind", []field.Option{
		{Key: "european", Text: b.Say("pantry.kind.european")}, {Key: "american", Text: b.Say("pantry.kind.american")},
	}, bind.Word[form]{
		Get: func(f form) string {
			if f.american {
				return "american"
			}
			return "european"
		},
		Set: func(f *form, word string) { *f = f.printedIn(word == "american") },
	})
	kind.OnChosen = e.relaid(kind.OnChosen)
	available := e.number("available", evidence.LabelGrams, gram, "per100.available", func(f *form, grow bool) *record.Number {
		if grow {
			f.figures.Carbohydrate = record.Number{}
		}
		return &f.figures.Available
	})
	total := e.number("carbohydrate", evidence.LabelGrams, gram, "per100.carbohydrate", func(f *form, grow bool) *record.Number {
		if grow {
			f.figures.Available = record.Number{}
		}
		return &f.figures.Carbohydrate
	})
	sugars := e.number("sugars", evidence.LabelGrams, gram, "per100.sugars", printed(func(f *form) *record.Number { return &f.figures.Sugars }))
	fibre := e.number("fibre", evidence.LabelGrams, gram, "per100.fibre", func(f *form, grow bool) *record.Number {
		if grow && f.american && f.figures.Carbohydrate.Known() {
			f.figures.Available = record.Number{} // to be taken off the total anew
		}
		return &f.figures.Fibre
	})
	salt := e.number("salt", evidence.LabelGrams, gram, "per100.sodium", printed(func(f *form) *record.Number { return &f.salt }))
	sodium := e.number("sodium", evidence.LabelMilligrams, quantity.Milligram, "per100.sodium", printed(func(f *form) *record.Number { return &f.figures.Sodium }))
	energy := e.number("energy", evidence.LabelEnergy, quantity.Kilocalorie, "per100.energy", printed(func(f *form) *record.Number { return &f.figures.Energy }))
	e.rows.available, e.rows.total, e.rows.salt, e.rows.sodium = available, total, salt, sodium
	return look.VBox(8,
		look.NewForm(e.entry("pantry.edit.per", look.MaxWidth(340, per)).Wide(), e.entry("pantry.edit.kind", look.MaxWidth(340, kind)).Wide()),
		look.NewParagraph(b.Say("pantry.kind.note"), look.Note, look.Ink2),
		look.NewForm(e.entry("pantry.edit.available", available), e.entry("pantry.edit.carbohydrate", total), e.entry("pantry.edit.sugars", sugars), e.entry("pantry.edit.fibre", fibre),
			e.entry("pantry.edit.salt", salt), e.entry("pantry.edit.sodium", sodium), e.entry("pantry.edit.energy", energy)))
}

// counted goes back where figures by the portion want a portion first.
func (e *editor) counted(choose func(string)) func(string) {
	relaid := e.relaid(choose)
	return func(key string) {
		f := e.now()
		if f.counting(fuel.Per(key)).per != fuel.Per(key) {
			e.rows.per.Choose(string(f.per))
			say := "pantry.needs.portion"
			if key == string(fuel.Per100Millilitres) {
				say = "pantry.needs.density"
			}
			e.v.desk.Say(e.v.desk.Words.Say(say), "", nil)
			return
		}
		relaid(key)
	}
}

// sugars are the kinds of carbohydrate, where a maker names them.
func (e *editor) sugars() fyne.CanvasObject {
	gram := func(name string, of func(f *form) *record.Number) fyne.CanvasObject {
		return e.number(name, evidence.LabelGrams, quantity.Gram, "per100."+name, printed(of))
	}
	potassium := e.number("potassium", evidence.LabelMilligrams, quantity.Milligram, "per100.potassium", printed(func(f *form) *record.Number { return &f.figures.Potassium }))
	osmolality := e.number("osmolality", evidence.LabelOsmolality, quantity.MilliosmolePerLitre, "per100.osmolality", printed(func(f *form) *record.Number { return &f.figures.Osmolality }))
	e.rows.osmolality = osmolality
	return look.NewForm(
		e.entry("pantry.edit.glucose", gram("glucose", func(f *form) *record.Number { return &f.figures.Glucose })),
		e.entry("pantry.edit.fructose", gram("fructose", func(f *form) *record.Number { return &f.figures.Fructose })),
		e.entry("pantry.edit.sucrose", gram("sucrose", func(f *form) *record.Number { return &f.figures.Sucrose })),
		e.entry("pantry.edit.maltodextrin", gram("maltodextrin", func(f *form) *record.Number { return &f.figures.Maltodextrin })),
		e.entry("pantry.edit.lactose", gram("lactose", func(f *form) *record.Number { return &f.figures.Lactose })),
		e.entry("pantry.edit.maltose", gram("maltose", func(f *form) *record.Number { return &f.figures.Maltose })),
		e.entry("pantry.edit.starch", gram("starch", func(f *form) *record.Number { return &f.figures.Starch })),
		e.entry("pantry.edit.water", gram("water", func(f *form) *record.Number { return &f.figures.Water })),
		e.entry("pantry.edit.potassium", potassium), e.entry("pantry.edit.osmolality", osmolality))
}

// origin is where the figures come from.
func (e *editor) origin() fyne.CanvasObject {
	source := e.b.Line("", "pantry.edit.source", 200, func(f *form) *string { return &f.product.Source })
	source.SetPlaceholder(e.b.Say("pantry.source.example"))
	note := e.b.Notes("", "pantry.edit.note", 2, func(f *form) *string { return &f.product.Note })
	return look.NewForm(e.entry("pantry.edit.source", source).Wide(), e.entry("pantry.edit.note", note).Wide())
}
