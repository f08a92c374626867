package squad

import (
	"slices"
	"strings"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

// patch is the field of a time on or off, and what is known of the patches.
func (o *openRow) patch() {
	l := o.line("patch", 8)
	l.SetPlaceholder(o.v.say("squad.patch.field"))
	in := &input{what: "patch", station: stationPatch, control: l, has: func(r squad.Row) bool { return r.Patch.Off }}
	in.put = func(text string) {
		clock, err := field.ReadClock(text)
		if err != nil || clock == "" {
			l.SetTrouble(field.Fine, "")
			if err != nil {
				l.SetTrouble(field.Wrong, o.v.say("field.clock.unreadable"))
			}
			return
		}
		o.v.edit("squad.patch", o.id, func(s *sheet) { squad.PatchesAt(o.v.doc.Now().session, &s.Record, clock) })
		o.v.left()
		l.SetText("")
	}
	l.OnLeft = func(text string) { in.put(text); o.v.left() }
	o.patchFirst, o.patchSecond = look.NewLabel("", look.Body, look.Ink).Shorten(), look.NewLabel("", look.Body, look.Ink).Shorten()
	o.add(l, colPatch, 0, false)
	o.add(o.patchFirst, colPatch, 1, false)
	o.add(o.patchSecond, colPatch, 1, true)
	o.input(in)
}

// symptoms is the field of the symptoms: 0 for none, or the numbers of those there
// are.
func (o *openRow) symptoms() {
	l := o.line("symptoms", 16)
	l.SetPlaceholder(o.v.say("squad.symptoms.field"))
	in := &input{what: "symptoms", station: stationAsk, control: l, has: func(r squad.Row) bool { return len(r.Flag.Safety.Unasked()) == 0 }}
	in.put = func(text string) {
		yes, ok := readSymptoms(text)
		l.SetTrouble(field.Fine, "")
		if strings.TrimSpace(text) == "" {
			return
		}
		if !ok {
			l.SetTrouble(field.Wrong, o.v.say("squad.symptoms.unreadable", len(consult.Asked())))
			return
		}
		o.v.edit("squad.symptoms", o.id, func(s *sheet) {
			for i, item := range consult.Asked() {
				answer := record.AnswerNo
				if slices.Contains(yes, i+1) {
					answer = record.AnswerYes
				}
				consult.Note(&s.Record, record.SafetyNote{Kind: record.SafetyAsked, Item: item, Answer: answer, Done: o.v.now()})
			}
		})
		o.v.left()
		l.SetText("")
	}
	l.OnLeft = func(text string) { in.put(text); o.v.left() }
	o.asked = look.NewLabel("", look.Body, look.Ink).Shorten()
	o.add(l, colSymptoms, 0, false)
	o.add(o.asked, colSymptoms, 1, false)
	o.input(in)
}

// readSymptoms reads "0", or the numbers of the symptoms there are.
func readSymptoms(text string) (yes []int, ok bool) {
	text = strings.TrimSpace(text)
	if text == "0" {
		return nil, true
	}
	for _, c := range text {
		switch {
		case c == ' ' || c == ',' || c == '.' || c == '+':
		case c >= '1' && int(c-'0') <= len(consult.Asked()):
			yes = append(yes, int(c-'0'))
		default:
			return nil, false
		}
	}
	return yes, len(yes) > 0
}
