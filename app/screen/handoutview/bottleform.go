package handoutview

import (
	"context"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/store"
)

// formBottles is how many bottles are asked for.
const formBottles = 3

// bottleForm asks for the bottles that bands are made for.
type bottleForm struct {
	v       *View
	rows    [formBottles]bottleRow
	trouble *look.Caution
	box     *look.Sheet
}

// bottleRow is one bottle: its name, the mark and the low mark, each as volume and
// height.
type bottleRow struct{ name, full, height, low, lowHeight *field.Line }

func newBottleForm(v *View) *bottleForm {
	say, h := v.desk.Words.Say, v.desk.Host
	f := &bottleForm{v: v, trouble: look.NewCaution("", "", nil)}
	parts := []fyne.CanvasObject{look.NewLabel(say("handoutview.bottles"), look.Strong, look.Ink), look.NewParagraph(say("handoutview.bottles.note"), look.Note, look.Ink2)}
	owned := consult.OwnBottles(v.file.subject.athlete)
	for i := range f.rows {
		at := "handoutview.bottle." + strconv.Itoa(i+1)
		number := func(name, unit string, x float64) *field.Line {
			l := field.NewLine(h, at+"."+name, 8).AlignRight()
			l.SetSuffix(unit)
			if x > 0 {
				l.SetText(v.desk.Words.Typed(x, decimalsOf(x)))
			}
			return l
		}
		var b consult.OwnBottle
		if i < len(owned) {
			b = owned[i]
		}
		r := bottleRow{
			name: field.NewLine(h, at+".name", 40), full: number("full", string(quantity.Millilitre), float64(b.Full)), height: number("height", "mm", b.FullMM),
			low: number("low", string(quantity.Millilitre), float64(b.Low)), lowHeight: number("lowheight", "mm", b.LowMM),
		}
		r.name.SetText(b.Name)
		f.rows[i] = r
		label := func(key string) fyne.CanvasObject {
			return look.NewLabel(say("handoutview.bottles."+key), look.Note, look.Ink2)
		}
		parts = append(parts,
			look.NewLabel(say("handoutview.bottles.name", v.desk.Words.Number(float64(i+1), 0)), look.Note, look.Ink2), r.name,
			look.HBox(6, label("full"), look.Grow(r.full), label("height"), look.Grow(r.height)),
			look.HBox(6, label("low"), look.Grow(r.low), label("height"), look.Grow(r.lowHeight)))
	}
	save := field.NewButton(h, "handoutview.bottles.save", say("handoutview.bottles.save"), field.Outline, f.save)
	f.box = look.NewSheet(look.VBox(6, append(parts, f.trouble, look.HBox(0, save))...))
	return f
}

// decimalsOf is how many a measure needs, one at most.
func decimalsOf(x float64) int {
	if x == float64(int(x)) {
		return 0
	}
	return 1
}

// read is the bottle of a row; ok is false where something in it is no measure. A row
// without a volume is none.
func (r bottleRow) read() (b consult.OwnBottle, ok bool) {
	ok = true
	number := func(l *field.Line) float64 {
		text := strings.TrimSpace(l.Text())
		if text == "" {
			return 0
		}
		x, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
		if err != nil || !(x > 0 && x < 10000) {
			ok = false
			return 0
		}
		return x
	}
	b = consult.OwnBottle{
		Name: strings.TrimSpace(r.name.Text()), Full: quantity.Millilitres(number(r.full)), FullMM: number(r.height),
		Low: quantity.Millilitres(number(r.low)), LowMM: number(r.lowHeight),
	}
	measured := b.FullMM > 0 || b.Low > 0 || b.LowMM > 0
	switch {
	case !ok, b.Full > 0 && !consult.BottleSize(float64(b.Full)), measured && !b.Lined():
		return b, false
	}
	return b, true
}

// save keeps the bottles with the athlete, and shows the page with them.
func (f *bottleForm) save() {
	v, w := f.v, f.v.desk.Words
	var list []consult.OwnBottle
	title, sentence := "", ""
	for i, r := range f.rows {
		b, ok := r.read()
		number := w.Number(float64(i+1), 0)
		if !ok {
			f.trouble.SetText(w.Say("handoutview.bottles.wrong"), w.Say("handoutview.bottles.wrong.sentence", number))
			v.body.Refresh()
			return
		}
		if b.Doubtful() {
			title, sentence = w.Say("handoutview.bottles.doubtful"), w.Say("handoutview.bottles.doubtful.sentence", number, w.Number(b.Width(), 0))
		}
		if b.Full > 0 {
			list = append(list, b)
		}
	}
	f.trouble.SetText(title, sentence)
	ctx := context.Background()
	a, err := v.desk.Store.LoadAthlete(ctx, v.file.subject.athlete.ID)
	if err == nil {
		consult.SetOwnBottles(&a, list)
		a, err = v.desk.Store.SaveAthlete(ctx, a, store.Edit{Why: w.Say("handoutview.bottles.why")})
	}
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	s := v.file.subject
	s.athlete = a
	s.planCase.Athlete.Bottles = a.Bottles
	v.file.subject = s
	v.render.fresh = false
	v.body.Refresh()
	v.drawing.Want()
}
