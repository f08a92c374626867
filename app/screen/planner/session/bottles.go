package session

import (
	"strconv"
	"strings"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/app/screen/planner/wording"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
)

// bottleLine is where the sizes of bottle owned are typed. What cannot be read
// is kept as it was typed.
type bottleLine struct {
	v     *part.Plan
	line  *field.Line
	visit string
}

// bottlePath is where the sizes stand in a plan.
const bottlePath = "rules.bottles"

func newBottleLine(v *part.Plan) *bottleLine {
	b := &bottleLine{v: v, line: field.NewLine(v.Desk.Host, "planner.bottles", 60)}
	b.line.SetPlaceholder(v.Speaker.Say("planner.bottles.none"))
	b.line.OnChanged = b.typed
	b.line.OnLeft = func(string) {
		b.visit = ""
		v.Binder.Doc.EndVisit()
		v.Binder.Flush()
		b.Open()
	}
	return b
}

// typed takes in a keystroke.
func (b *bottleLine) typed(text string) {
	v := b.v
	if b.visit == "" {
		b.visit = desk.NewVisit()
	}
	sizes, ok := readBottles(text, v.Speaker)
	v.Desk.Withdraw()
	v.Binder.Doc.Change(b.visit, "planner.bottles", func(s *part.Sheet) {
		consult.SetBottles(&s.Record, sizes)
		delete(s.Raw, bottlePath)
		if !ok {
			s.Raw[bottlePath] = text
		}
	})
	v.Now.Plan = v.Binder.Doc.Now().Record
	b.line.SetTrouble(field.Fine, "")
	v.Desk.HeadChanged()
}

// Open shows the sizes as they are kept, or what was typed instead.
func (b *bottleLine) Open() {
	v := b.v
	if raw := v.Binder.Doc.Now().Raw[bottlePath]; raw != "" {
		b.line.SetText(raw)
		b.line.SetTrouble(field.Wrong, v.Speaker.Say("planner.bottles.wrong"))
	} else {
		b.line.SetText(bottles(v.Speaker, consult.BottlesOf(v.Now.Plan)))
		b.line.SetTrouble(field.Fine, "")
	}
	look.EnableIf(b.line, v.Now.Draft())
}

// bottles writes sizes of bottles as they are typed.
func bottles(sp wording.Speaker, sizes []float64) string {
	var texts []string
	for _, ml := range sizes {
		x, err := quantity.Convert(ml, quantity.Millilitre, sp.By.Unit(quantity.Millilitre))
		if err != nil {
			continue
		}
		// Neither with thousands apart nor with a comma, which part two bottles.
		texts = append(texts, strconv.FormatFloat(quantity.Round(x, 1), 'f', -1, 64))
	}
	return strings.Join(texts, " ")
}

// readBottles reads sizes of bottles in mL, or in fluid ounces, with blanks or
// commas between.
func readBottles(text string, sp wording.Speaker) (sizes []float64, ok bool) {
	for _, one := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' || r == ';' }) {
		typed, err := quantity.Parse(one, sp.By.Unit(quantity.Millilitre))
		if err != nil {
			return nil, false
		}
		ml, err := quantity.Convert(typed.Value, sp.By.Unit(quantity.Millilitre), quantity.Millilitre)
		if err != nil || !consult.BottleSize(ml) {
			return nil, false
		}
		sizes = append(sizes, ml)
	}
	return sizes, true
}
