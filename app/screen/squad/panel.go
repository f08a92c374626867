package squad

import (
	"fmt"
	"strings"
	"unicode"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

// estimate is the athlete's own estimate of the loss: asked before anything is
// shown.
func (o *openRow) estimate() {
	o.guess = o.number("estimate", "", quantity.Litre, func(t *record.Test, _ bool) (*record.Number, string) { return &t.Loss.Guess, "loss.guess" })
	o.input(&input{what: "estimate", station: stationAfter, control: o.guess, has: func(r squad.Row) bool { return r.Sheet.Test.Loss.Guess.Known() }})
}

// below builds what stands below the fields: what does not fit the columns, what is
// odd, what the loss is beside, and what the keys do.
func (o *openRow) below() {
	o.panels, o.against = look.VBox(6), look.NewParagraph("", look.Note, look.Ink2)
	o.hints, o.legend = look.NewParagraph("", look.Note, look.Ink2), look.NewParagraph("", look.Note, look.Ink2)
	estimate := look.HBox(8, look.NewLabel(o.v.say("squad.estimate"), look.Note, look.Ink2), look.MinSized(64, 0, o.guess),
		look.NewLabel(string(o.v.speaker(false).By.Unit(quantity.Litre)), look.Note, look.Ink2))
	sheet := field.NewLink(o.v.desk.Host, "squad.sheet", o.v.say("squad.sheet"), func() { o.v.openSheet(o.i, "") })
	member := field.NewLink(o.v.desk.Host, "squad.member", o.v.say("squad.member"), func() { o.v.askMember(o.i) })
	uses := field.NewLink(o.v.desk.Host, "squad.bottles", o.v.say("squad.bottles"), o.unfold)
	foot := look.Columns(16, []look.Track{look.Fit(), look.Share(1), look.Fit(), look.Fit(), look.Fit()}, estimate, o.against, uses, member, sheet)
	parts := []fyne.CanvasObject{o.panels, o.uses(), foot, look.NewPair(0.54, 900, o.hints, o.legend)}
	if o.level != wide {
		parts = append([]fyne.CanvasObject{o.narrowForm()}, parts...)
	}
	o.view.below = look.VBox(6, parts...)
}

// narrowForm sets what finds no room in the columns: the bottles, a line each, and
// urine, patch and symptoms.
func (o *openRow) narrowForm() fyne.CanvasObject {
	box := look.VBox(6)
	t := o.row().Sheet.Test
	width := map[column]float32{colSwatch: 14, colBottle: 62, colBottleAfter: 62, colRefill: 70, colDrunk: 56}
	tracks := []look.Track{look.Fixed(14), look.Share(1)}
	head := []fyne.CanvasObject{look.Gap(1, 1), look.Gap(1, 1)}
	for _, c := range []column{colBottle, colBottleAfter, colRefill, colDrunk} {
		tracks = append(tracks, look.Fixed(width[c]))
		head = append(head, look.NewLabel(o.v.head(c), look.Note, look.Ink2).Right())
	}
	if len(t.Bottles) > 0 {
		box.Add(look.Columns(8, tracks, head...))
	}
	for i, b := range t.Bottles {
		objects := []fyne.CanvasObject{nil, look.NewLabel(o.v.drinkName(b.ProductID, b.Name), look.Body, look.Ink).Shorten(), nil, nil, nil, nil}
		at := map[column]int{colSwatch: 0, colBottle: 2, colBottleAfter: 3, colRefill: 4, colDrunk: 5}
		for _, c := range o.extra {
			if n, ok := at[c.col]; ok && c.line == i {
				objects[n] = c.object
			}
		}
		box.Add(look.Columns(8, tracks, objects...))
	}
	rest := look.VBox(6)
	for _, col := range []column{colBefore, colUrine, colPatch, colSymptoms} {
		line := []fyne.CanvasObject{look.MinSized(64, 0, look.NewLabel(o.v.head(col), look.Note, look.Ink2))}
		if !leftOut(col, o.level) {
			continue
		}
		for _, c := range o.extra {
			switch {
			case c.col != col:
			case c.line == 0 && !c.sub:
				line = append(line, look.MinSized(84, 0, c.object))
			case col == colPatch:
				line = append(line, look.MinSized(84, 0, c.object))
			default:
				line = append(line, look.Grow(c.object))
			}
		}
		rest.Add(look.HBox(8, line...))
	}
	return look.NewPair(0.56, 640, box, rest)
}

// head is the text of a column's head, with the unit of what is typed below it.
func (v *View) head(c column) string {
	var args []any
	switch c {
	case colBefore, colAfter:
		args = append(args, string(v.speaker(false).By.Unit(quantity.Kilogram)))
	case colDrunk:
		args = append(args, string(v.speaker(false).By.Unit(quantity.Millilitre)))
	}
	return v.say(headKey(c), args...)
}

// headKey is the text of a column's head.
func headKey(c column) string {
	return map[column]string{
		colName: "squad.col.athlete", colBefore: "squad.col.before", colBottle: "squad.col.bottle", colBottleAfter: "squad.col.bottleafter",
		colRefill: "squad.col.refill", colDrunk: "squad.col.drunk", colAfter: "squad.col.after", colUrine: "squad.col.urine",
		colPatch: "squad.col.patch", colSymptoms: "squad.col.symptoms", colLoss: "squad.col.loss", colState: "squad.col.state",
	}[c]
}

// openOdd is the odd value that is to be settled first; ok is false where none is
// open.
func openOdd(r squad.Row) (o squad.Odd, ok bool) {
	for _, o := range r.Odd {
		if !o.Kept() && o.Moment == record.After {
			return o, true
		}
	}
	for _, o := range r.Odd {
		if !o.Kept() {
			return o, true
		}
	}
	return squad.Odd{}, false
}

// secondOf is the moment whose second weighing is asked for; empty for none.
func (o *openRow) secondOf(r squad.Row) record.Moment {
	odd, there := openOdd(r)
	switch {
	case r.Flagged && r.Flag.Gained:
		return record.After
	case there && odd.WeighAgain:
		return odd.Moment
	case o.v.wantsSecond != "":
		return o.v.wantsSecond
	case len(squad.Masses(r.Sheet.Test, record.After)) > 1:
		return record.After
	case len(squad.Masses(r.Sheet.Test, record.Before)) > 1:
		return record.Before
	}
	return ""
}

// showPanels builds the panels anew where what they say is another; while a field in
// them is typed in they stay.
func (o *openRow) showPanels(r squad.Row) {
	for _, in := range o.panelInputs {
		if o.v.typing == in.control.Name() {
			return
		}
	}
	odd, isOdd := openOdd(r)
	second := o.secondOf(r)
	said := fmt.Sprint(odd, isOdd, second, r.Flagged, r.Flag.Told(), r.Flag.Gain.Kilograms, r.Flag.Safety.Yes(), len(squad.Masses(r.Sheet.Test, second)), r.Closed)
	for _, x := range r.Odd {
		said += x.Code + x.Reason
	}
	if said == o.panelled {
		return
	}
	o.panelled, o.panelInputs, o.panels.Objects = said, nil, nil
	o.view.flag = r.Flagged && !r.Flag.Told()
	if r.Flagged {
		o.panels.Add(o.flagPanel(r))
	}
	if isOdd {
		o.panels.Add(o.oddPanel(r, odd))
	} else if second != "" && !r.Flagged {
		o.panels.Add(o.secondPanel(r, second))
	}
	for _, x := range r.Odd {
		if x.Kept() {
			title, _ := o.v.oddWords(r, x)
			o.panels.Add(look.NewParagraph(o.v.say("squad.kept", title, x.Reason), look.Note, look.Ink2))
		}
	}
	look.ShowIf(o.panels, len(o.panels.Objects) > 0)
	o.panels.Refresh()
}

// panelInput takes a field of a panel in.
func (o *openRow) panelInput(in *input) {
	in.control.TakeRunes(func(r rune) bool { return o.v.key(in, r) })
	o.panelInputs = append(o.panelInputs, in)
}

// second is the field of the second weighing of a moment with its button.
func (o *openRow) second(m record.Moment) fyne.CanvasObject {
	n := 1
	if list := squad.Masses(o.row().Sheet.Test, m); len(list) > 2 {
		n = len(list) - 1 // a third
	} else if odd, ok := openOdd(o.row()); ok && odd.Code == squad.OddApart && odd.Moment == m {
		n = len(list)
	}
	what := "second"
	f := o.massField(what, m, n)
	o.panelInput(&input{what: what, station: stationAfter, control: f, has: hasMass(m, n)})
	again := field.NewButton(o.v.desk.Host, "squad.again", o.v.say("squad.again"), field.Outline, f.Focus)
	label := look.NewLabel(o.v.say("squad.second", string(o.v.speaker(false).By.Unit(quantity.Kilogram))), look.Body, look.Ink)
	return look.HBox(10, label, look.MinSized(92, 0, f), again)
}

// means says what two weighings come to.
func (o *openRow) means(r squad.Row, m record.Moment) string {
	mean, apart, ok := meanOf(r.Sheet.Test, m)
	by := o.v.speaker(false).By
	switch {
	case ok && r.Hidden:
		return o.v.say("squad.mean.hidden")
	case ok:
		return o.v.say("squad.mean", by.Rounded(mean, quantity.Kilogram, 2), by.Amount(apart, quantity.Kilogram))
	}
	for _, w := range squad.Masses(r.Sheet.Test, m) {
		if w.Aside && !r.Hidden {
			return o.v.say("squad.aside", by.Amount(*w.Mass.Value, quantity.Kilogram))
		}
	}
	return ""
}

// secondPanel is a second weighing that nobody asked for, and the mean.
func (o *openRow) secondPanel(r squad.Row, m record.Moment) fyne.CanvasObject {
	return look.Columns(12, []look.Track{look.Share(1), look.Fit()}, look.NewParagraph(o.means(r, m), look.Body, look.Ink), o.second(m))
}

// oddPanel says what is odd, and takes a second weighing or a reason.
func (o *openRow) oddPanel(r squad.Row, odd squad.Odd) fyne.CanvasObject {
	title, sentence := o.v.oddWords(r, odd)
	words := look.VBox(2, look.NewParagraph(title, look.Strong, look.Ink), look.NewParagraph(sentence, look.Note, look.Ink))
	var right []fyne.CanvasObject
	if odd.WeighAgain {
		right = append(right, o.second(odd.Moment))
	}
	why := o.line("reason", 200)
	why.SetPlaceholder(o.v.say("squad.reason"))
	why.OnLeft = func(text string) {
		if text = o.inWords(why, text, "squad.reason.words"); text != "" {
			o.v.edit("squad.reason", o.id, func(s *sheet) { s.Reasons[odd.Path] = text })
		}
		o.v.left()
		o.v.follow()
	}
	o.panelInput(&input{what: "reason", control: why, has: func(squad.Row) bool { return true }})
	right = append(right, look.MinSized(240, 0, why))
	return look.NewBarred(look.Columns(16, []look.Track{look.Share(1), look.Fit()}, words, look.VBox(6, right...)))
}

// inWords is a reason or a name as it was typed; empty, with that said at the field, where
// it has no letter: the hands were at the number pad.
func (o *openRow) inWords(l *field.Line, text, key string) string {
	text = strings.TrimSpace(text)
	l.SetTrouble(field.Fine, "")
	if text != "" && !strings.ContainsFunc(text, unicode.IsLetter) {
		l.SetTrouble(field.Wrong, o.v.say(key))
		return ""
	}
	return text
}

// flagBelow is what a flagged row says below its cells while it is not open.
func (v *View) flagBelow(i int) fyne.CanvasObject {
	title, lines := v.flagWords(v.rows[i])
	box := look.VBox(2, look.NewParagraph(title, look.Title, look.Ink))
	for _, line := range lines {
		box.Add(look.NewParagraph(line, look.Body, look.Ink))
	}
	ask := field.NewButton(v.desk.Host, nameOfRow(i)+".ask", v.say("squad.flag.asknow"), field.Outline, func() { v.openRowAt(i, "symptoms") })
	again := field.NewButton(v.desk.Host, nameOfRow(i)+".again", v.say("squad.again"), field.Outline, func() { v.openRowAt(i, "second") })
	return look.Pad(0, 0, 6, 0, look.Columns(16, []look.Track{look.Share(1), look.Fit()}, box, look.HBox(8, ask, again)))
}

// flagPanel is the red flag of the open row: what to do now, who is told, and the
// way to the record.
func (o *openRow) flagPanel(r squad.Row) fyne.CanvasObject {
	say := o.v.say
	title, lines := o.v.flagWords(r)
	box := look.VBox(2, look.NewParagraph(title, look.Title, look.Ink))
	if r.Flag.Told() {
		box.Add(look.NewParagraph(say("squad.flag.told", r.Flag.Safety.Told, o.v.clockOf(r.Flag.Safety.ToldAt)), look.Body, look.Ink))
		return look.VBox(6, box, o.second(record.After))
	}
	for _, line := range lines {
		box.Add(look.NewParagraph(line, look.Body, look.Ink))
	}
	told := o.line("told", 80)
	told.SetPlaceholder(say("squad.flag.name"))
	told.OnLeft = func(text string) {
		if text = o.inWords(told, text, "squad.flag.words"); text != "" {
			o.v.edit("squad.told", o.id, func(s *sheet) {
				consult.Note(&s.Record, record.SafetyNote{Kind: record.SafetyTold, Item: consult.ToldName, Text: text, Done: o.v.now()})
			})
		}
		o.v.left()
		o.v.follow()
	}
	o.panelInput(&input{what: "told", control: told, has: func(r squad.Row) bool { return r.Flag.Told() }})
	open := field.NewButton(o.v.desk.Host, "squad.flag.record", say("squad.flag.record"), field.Outline, func() { o.v.openSheet(o.i, partAfter) })
	right := look.VBox(6, o.second(record.After), look.HBox(10, look.NewLabel(say("squad.flag.tell"), look.Body, look.Ink), look.MinSized(180, 0, told), open))
	return look.Columns(16, []look.Track{look.Share(1), look.Fit()}, box, right)
}

// partAfter is the part of a sheet with the weighing after.
const partAfter = "after"

// openSheet opens an athlete's own sheet.
func (v *View) openSheet(i int, part string) {
	t := v.rows[i].Sheet.Test
	v.desk.Go(desk.Place{Screen: desk.Tests, Athlete: t.AthleteID, Record: t.ID, Part: part})
}

// show follows the sheet.
func (o *openRow) show() {
	r := o.row()
	loss, under := o.v.lossWords(r)
	o.loss.SetText(loss)
	o.under.SetText(under)
	state, missing := o.v.stateWords(r)
	o.state.SetText(state)
	o.missing.SetText(missing)
	by := o.v.speaker(false).By
	for i, l := range o.drunk {
		text := ""
		if drunk, ok := r.Drunk(i); ok {
			text = by.Number(drunk, quantity.Millilitre)
		}
		l.SetText(text)
	}
	first, second, due := o.v.patchWords(r)
	o.patchFirst.SetText(first)
	o.patchSecond.SetText(second)
	o.patchFirst.SetStyle(look.Body)
	if due {
		o.patchFirst.SetStyle(look.Strong)
	}
	o.asked.SetText(o.v.symptomWords(r))
	o.against.SetText(strings.TrimSpace(o.v.against(o.i) + " " + o.v.effects(r)))
	o.hints.SetText(o.v.hintWords())
	o.legend.SetText("")
	if r.State != squad.ToWeighBefore && r.State != squad.Playing {
		o.legend.SetText(o.v.say("squad.keys.symptoms"))
	}
	o.showPanels(r)
	o.view.Refresh()
}

// effects say what a missing value does to the result.
func (v *View) effects(r squad.Row) string {
	for _, lack := range r.Missing {
		if low, high, ok := r.Effect(lack); ok {
			by := v.speaker(false).By
			return v.say("squad.effect."+lack, by.Number(low, quantity.Litre), by.Amount(high, quantity.Litre))
		}
		switch lack {
		case squad.LackBefore:
			return v.say("squad.effect.before")
		case squad.LackBottles:
			return v.say("squad.effect.bottles")
		case squad.LackBottlesLeft:
			return v.say("squad.effect.bottles-left")
		case squad.LackAfter:
			return v.say("squad.effect.after")
		case squad.LackTimes:
			return v.say("squad.effect.times")
		case squad.LackLaboratory:
			return v.say("squad.effect.laboratory")
		}
	}
	return ""
}
