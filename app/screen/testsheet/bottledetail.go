package testsheet

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
)

// bottleDetail is what else may have happened to a bottle: refilled, shared,
// poured over, taken from a carton without a scale.
type bottleDetail struct {
	r *bottleRow
	// open shows the line of choices; asked shows the volume before there is
	// one.
	open, asked                 bool
	use                         *field.Toggle
	choices, shared, volumeLine fyne.CanvasObject
	volume                      *field.Number
	shares                      []*field.Number
	refills                     []*refillLine
	refilled                    *fyne.Container
	box                         *fyne.Container
}

// refillLine is one refill.
type refillLine struct {
	added *field.Number
	box   fyne.CanvasObject
}

// newBottleDetail makes the lines below a bottle, all hidden.
func newBottleDetail(r *bottleRow) *bottleDetail {
	d, b := &bottleDetail{r: r, refilled: look.VBox(6), box: look.VBox(6, look.Gap(0, 1))}, r.p.b
	say, h := b.Say, b.Desk.Host
	d.use = b.Toggle(PartBottles, r.name("use"), b.Options("testsheet.use.", string(record.UseDrunk), string(record.UseShared), string(record.UsePoured)), word(
		func(t record.Test) string {
			if bottle := bottleAt(&t, r.i, false); bottle != nil {
				return string(bottle.Use)
			}
			return ""
		}, func(t *record.Test, w string) {
			if bottle := bottleAt(t, r.i, false); bottle != nil {
				bottle.Use = record.Use(w)
			}
		}))
	refill := field.NewButton(h, r.name("refill"), say("testsheet.bottle.refill"), field.Outline, d.addRefill)
	volume := field.NewButton(h, r.name("byvolume"), say("testsheet.bottle.byvolume"), field.Outline, d.askVolume)
	remove := field.NewButton(h, r.name("remove"), say("testsheet.bottle.remove"), field.Quiet, d.remove)
	d.choices = look.VBox(6, look.HBox(0, d.use), look.HBox(8, refill, volume, remove))
	low, high := r.number("shareLow"), r.number("shareHigh")
	d.shares = []*field.Number{low, high}
	d.shared = look.HBox(8, noteLabel(say("testsheet.bottle.share")), look.MinSized(70, 0, low), noteLabel(say("testsheet.bottle.share.to")), look.MinSized(70, 0, high))
	d.volume = r.number("volume")
	d.volumeLine = look.HBox(8, noteLabel(say("testsheet.bottle.volume")), look.MinSized(96, 0, d.volume))
	for _, o := range []fyne.CanvasObject{d.choices, d.refilled, d.shared, d.volumeLine} {
		d.box.Add(o)
	}
	d.box.Add(look.Gap(0, 2))
	return d
}

// noteLabel is a small word beside a field.
func noteLabel(text string) *look.Label { return look.NewLabel(text, look.Note, look.Ink2) }

// numbers lists the fields below the line.
func (d *bottleDetail) numbers() []*field.Number {
	list := append([]*field.Number{d.volume}, d.shares...)
	for _, l := range d.refills {
		list = append(list, l.added)
	}
	return list
}

// turn opens or closes the line of choices.
func (d *bottleDetail) turn() {
	d.open = !d.open
	d.r.p.b.OnLeft()
}

// addRefill adds a refill and goes to it.
func (d *bottleDetail) addRefill() {
	d.r.p.b.Pick(d.r.name("refill"), func(s *sheet) { addRefill(&s.Record, d.r.i) })
	n := len(d.r.p.b.Doc.Now().Record.Bottles[d.r.i].Refills)
	d.refills[n-1].added.Focus()
}

// askVolume shows the volume.
func (d *bottleDetail) askVolume() {
	d.asked = true
	d.r.p.b.OnLeft()
	d.volume.Focus()
}

// remove takes the bottle out.
func (d *bottleDetail) remove() {
	b, i := d.r.p.b, d.r.i
	d.open, d.asked = false, false
	b.Pick(d.r.name("remove"), func(s *sheet) {
		forget(s, "bottles."+string(s.Record.Bottles[i].ID))
		removeBottle(&s.Record, i)
	})
	b.Show()
	b.Desk.Offer(b.Say("testsheet.bottle.removed", strconv.Itoa(i+1)), b.Say("testsheet.undo"), func() { b.Undo() })
}

// grow makes lines for refills.
func (d *bottleDetail) grow(to int) {
	for len(d.refills) < to {
		j := len(d.refills)
		f, _ := record.SheetFieldOf("bottles.*.refills.*.added")
		added := bind.SheetRowNumber(d.r.p.b, f, record.SheetRow{Number: d.r.i + 1, Within: j + 1}, func(t *record.Test, _ bool) (any, string) {
			refill := refillAt(t, d.r.i, j)
			if refill == nil {
				return nil, ""
			}
			return refill, "bottles." + string(refill.BottleID) + ".refills." + string(refill.ID)
		})
		added.OnProblem = func(field.Weight, string) {}
		line := look.HBox(8, noteLabel(d.r.p.b.Say("testsheet.bottle.refilled")), look.MinSized(86, 0, added))
		d.refills = append(d.refills, &refillLine{added, line})
		d.refilled.Add(line)
	}
}

// show follows the sheet.
func (d *bottleDetail) show(bottle *record.Bottle, s sheet) {
	if bottle == nil {
		d.box.Hide()
		return
	}
	d.use.Choose(string(bottle.Use))
	d.grow(len(bottle.Refills))
	for j, l := range d.refills {
		look.ShowIf(l.box, j < len(bottle.Refills))
	}
	look.ShowIf(d.refilled, len(bottle.Refills) > 0)
	open := d.open && s.Record.State == record.TestOpen
	shared := bottle.Use == record.UseShared
	volume := d.asked || bottle.Volume.Known() || s.Raw["bottles."+string(bottle.ID)+".volume"] != ""
	look.ShowIf(d.choices, open)
	look.ShowIf(d.shared, shared)
	look.ShowIf(d.volumeLine, volume)
	look.ShowIf(d.box, open || shared || volume || len(bottle.Refills) > 0)
}
