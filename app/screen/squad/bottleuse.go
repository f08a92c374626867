package squad

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// uses are what a bottle is that was not simply drunk from: shared, poured over, or a
// cup of a volume. They stand below the row once one of them is not usual, or when they
// are asked for.
func (o *openRow) uses() fyne.CanvasObject {
	box := look.VBox(4)
	for i := range o.row().Sheet.Test.Bottles {
		box.Add(o.useOf(i))
	}
	look.ShowIf(box, o.v.unfolded || o.unusual())
	return box
}

// unusual reports whether a bottle of the row is shared, poured over or a volume.
func (o *openRow) unusual() bool {
	for _, b := range o.row().Sheet.Test.Bottles {
		if b.Use == record.UseShared || b.Use == record.UsePoured || b.Volume.Known() {
			return true
		}
	}
	return false
}

// unfold shows the uses of the bottles, or folds them again.
func (o *openRow) unfold() {
	o.v.unfolded = !o.v.unfolded
	o.v.rebuild()
}

// useOf is the line of the i-th bottle.
func (o *openRow) useOf(i int) fyne.CanvasObject {
	say, b := o.v.say, o.row().Sheet.Test.Bottles[i]
	name := "bottle." + strconv.Itoa(i+1)
	use := field.NewToggle(o.v.desk.Host, "squad."+name+".use", []field.Option{
		{Key: string(record.UseDrunk), Text: say("squad.bottles.drunk")},
		{Key: string(record.UseShared), Text: say("squad.bottles.shared")}, {Key: string(record.UsePoured), Text: say("squad.bottles.poured")},
	})
	now := b.Use
	if now == "" {
		now = record.UseDrunk
	}
	use.Choose(string(now))
	use.OnChosen = func(key string) {
		o.v.pick("squad."+name+".use", o.id, func(s *sheet) {
			if i < len(s.Record.Bottles) {
				s.Record.Bottles[i].Use = record.Use(key)
			}
		})
		o.v.rebuild()
	}
	line := []fyne.CanvasObject{
		look.MinSized(64, 0, look.NewLabel(say("squad.bottles.number", strconv.Itoa(i+1)), look.Note, look.Ink2)), use,
	}
	if o.row().Closed {
		use.Disable()
	}
	number := func(what string, f evidence.Field, u quantity.Unit, of func(*record.Bottle) *record.Number) fyne.CanvasObject {
		return look.MinSized(64, 0, o.number(name+"."+what, f, u, o.inBottle(i, what, of)))
	}
	unit := string(o.v.speaker(false).By.Unit(quantity.Millilitre))
	line = append(line, number("volume", evidence.PouredVolume, quantity.Millilitre, func(b *record.Bottle) *record.Number { return &b.Volume }),
		look.NewLabel(say("squad.bottles.volume", unit), look.Note, look.Ink2))
	if b.Use != record.UseShared {
		return look.HBox(8, line...)
	}
	return look.VBox(4, look.HBox(8, line...), look.HBox(8, look.MinSized(64, 0, look.Gap(1, 1)),
		number("shareLow", evidence.ShareDrunk, quantity.PerCent, func(b *record.Bottle) *record.Number { return &b.ShareLow }),
		look.NewLabel(say("squad.bottles.to"), look.Note, look.Ink2),
		number("shareHigh", evidence.ShareDrunk, quantity.PerCent, func(b *record.Bottle) *record.Number { return &b.ShareHigh }),
		look.NewLabel(say("squad.bottles.share"), look.Note, look.Ink2)))
}

// inBottle finds a number of the i-th bottle.
func (o *openRow) inBottle(i int, what string, of func(*record.Bottle) *record.Number) func(t *record.Test, grow bool) (*record.Number, string) {
	return func(t *record.Test, _ bool) (*record.Number, string) {
		if i >= len(t.Bottles) {
			return nil, ""
		}
		return of(&t.Bottles[i]), "bottles." + string(t.Bottles[i].ID) + "." + what
	}
}
