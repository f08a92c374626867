package trip

import (
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/heat"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// airLine is the session and the air of a stop in one line, with the way to
// change them.
type airLine struct {
	v      *View
	text   *look.Paragraph
	credit *look.Paragraph
	fix    *field.Button
	change *field.Button
	body   fyne.CanvasObject
}

func newAirLine(v *View, change func()) *airLine {
	l := &airLine{v: v, text: look.NewParagraph("", look.Body, look.Ink2), credit: look.NewParagraph("", look.Note, look.Ink2)}
	l.change = field.NewButton(v.desk.Host, "trip.stop.change", v.desk.Words.Say("trip.change"), field.Outline, change)
	l.fix = field.NewButton(v.desk.Host, "trip.stop.fix", v.desk.Words.Say("trip.fix.dates"), field.Outline, func() { v.ShowPart(PartEdit) })
	l.body = look.Columns(12, []look.Track{look.Share(1), look.Fit()}, look.VBox(1, l.text, l.credit), look.HBox(8, l.fix, l.change))
	return l
}

// show shows a stop with its trouble, nil for none. The forms are open or not; while
// something is missing they cannot be closed.
func (l *airLine) show(sp heat.Speaker, s record.Stop, air consult.StopAir, crew []*member, open bool, err error) {
	credit := ""
	if air.FromTable && len(crew) == 0 { // else the table of the crew has it
		credit = l.v.places.Credit
	}
	setText(l.credit, credit)
	look.ShowIf(l.fix, troubleAt(sp, err, s, evidence.StopDates) != "")
	l.text.SetText(airSentence(sp, s, air, crew))
	text := sp.Words.Say("trip.change")
	if open {
		text = sp.Words.Say("trip.change.done")
	}
	l.change.SetText(text)
	look.ShowIf(l.change, err == nil)
}

// airSentence is what is known of session and air: "95 min · 31 °C, 55 % · full sun
// · afternoon, means of July".
func airSentence(sp heat.Speaker, s record.Stop, air consult.StopAir, crew []*member) string {
	var parts []string
	if m := minutesThere(s, crew); m > 0 {
		parts = append(parts, minutes(sp, m))
	}
	if s.Effort.Known() {
		parts = append(parts, sp.Words.Say("trip.line.effort", sp.Words.Number(*s.Effort.Value, 0)))
	}
	if air.Air.Temperature.Known() {
		parts = append(parts, sp.Air(air.Air))
	}
	if air.Air.Sun != "" {
		parts = append(parts, sp.Words.Say("trip.line.sun."+string(air.Air.Sun)))
	}
	if air.FromTable {
		parts = append(parts, sp.Words.Say("trip.line.table."+hourOf(s.TimeOfDay), sp.Words.Say("month."+strconv.Itoa(air.Month)), sp.Words.City(air.City.Name)))
	}
	return sp.Words.Dots(parts)
}

// minutesThere is how long a session there is: as said, else as the plans of all
// travellers say alike; 0 where they do not.
func minutesThere(s record.Stop, crew []*member) float64 {
	if s.Minutes.Known() {
		return *s.Minutes.Value
	}
	length := 0.0
	for _, m := range crew {
		if m.along == nil || !m.along.Target.Minutes.Known() {
			continue
		}
		x := quantity.Round(*m.along.Target.Minutes.Value, 0)
		if length > 0 && x != length {
			return 0
		}
		length = x
	}
	return length
}
