package planner

import (
	"math"
	"strings"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
)

// bottleLine is where the sizes of bottle owned are typed. What cannot be read
// is kept as it was typed.
type bottleLine struct {
	v     *View
	line  *field.Line
	visit string
}

// bottlePath is where the sizes stand in a plan.
const bottlePath = "rules.bottles"

func newBottleLine(v *View) *bottleLine {
	b := &bottleLine{v: v, line: field.NewLine(v.desk.Host, "planner.bottles", 60)}
	b.line.SetPlaceholder(v.sp.say("planner.bottles.none"))
	b.line.OnChanged = b.typed
	b.line.OnLeft = func(string) {
		b.visit = ""
		v.b.Doc.EndVisit()
		v.b.Flush()
		b.open()
	}
	return b
}

// typed takes in a keystroke.
func (b *bottleLine) typed(text string) {
	v := b.v
	if b.visit == "" {
		b.visit = desk.NewVisit()
	}
	sizes, ok := readBottles(text, v.sp)
	v.desk.Withdraw()
	v.b.Doc.Change(b.visit, "planner.bottles", func(s *sheet) {
		consult.SetBottles(&s.Record, sizes)
		delete(s.Raw, bottlePath)
		if !ok {
			s.Raw[bottlePath] = text
		}
	})
	v.now.plan = v.b.Doc.Now().Record
	b.line.SetTrouble(field.Fine, "")
	v.desk.HeadChanged()
}

// open shows the sizes as they are kept, or what was typed instead.
func (b *bottleLine) open() {
	v := b.v
	if raw := v.b.Doc.Now().Raw[bottlePath]; raw != "" {
		b.line.SetText(raw)
		b.line.SetTrouble(field.Wrong, v.sp.say("planner.bottles.wrong"))
	} else {
		b.line.SetText(v.sp.bottles(consult.BottlesOf(v.now.plan)))
		b.line.SetTrouble(field.Fine, "")
	}
	look.EnableIf(b.line, v.now.draft())
}

// bottles writes sizes of bottles as they are typed.
func (sp speaker) bottles(sizes []float64) string {
	var texts []string
	for _, ml := range sizes {
		x, err := quantity.Convert(ml, quantity.Millilitre, sp.by.Unit(quantity.Millilitre))
		if err != nil {
			continue
		}
		decimals := 1
		if quantity.Round(x, 1) == math.Round(x) {
			decimals = 0
		}
		texts = append(texts, sp.w.Number(x, decimals))
	}
	return strings.Join(texts, " ")
}

// readBottles reads sizes of bottles in mL, or in fluid ounces, with blanks or
// commas between.
func readBottles(text string, sp speaker) (sizes []float64, ok bool) {
	for _, one := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' || r == ';' }) {
		typed, err := quantity.Parse(one, sp.by.Unit(quantity.Millilitre))
		if err != nil {
			return nil, false
		}
		ml, err := quantity.Convert(typed.Value, sp.by.Unit(quantity.Millilitre), quantity.Millilitre)
		if err != nil || !consult.BottleSize(ml) {
			return nil, false
		}
		sizes = append(sizes, ml)
	}
	return sizes, true
}
