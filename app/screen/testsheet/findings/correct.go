package findings

import (
	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/record"
)

// correctPart are the switches of breath and gas exchange.
type correctPart struct {
	breath, exchange *field.Toggle
	body             fyne.CanvasObject
}

// ruleKey stands for the setting by rule, which is kept as nothing.
const ruleKey = "rule"

// newCorrectPart makes the two switches, each on its own.
func newCorrectPart(v *View) correctPart {
	say := v.sp.say
	toggle := func(name string, told func(record.Correction)) *field.Toggle {
		t := field.NewToggle(v.desk.Host, name, []field.Option{
			{Key: ruleKey, Text: say("findings.correct.rule")}, {Key: string(record.CorrectionOn), Text: say("findings.correct.on")},
			{Key: string(record.CorrectionOff), Text: say("findings.correct.off")},
		})
		t.OnChosen = func(key string) {
			if key == ruleKey {
				key = ""
			}
			told(record.Correction(key))
		}
		return t
	}
	p := correctPart{
		breath:   toggle("findings.breath", func(c record.Correction) { v.do.Breath(c) }),
		exchange: toggle("findings.exchange", func(c record.Correction) { v.do.Exchange(c) }),
	}
	part := func(key string, t *field.Toggle) fyne.CanvasObject {
		return look.HBox(8, look.NewLabel(say(key), look.Note, look.Ink2), t)
	}
	p.body = look.VBox(8, look.NewLabel(say("findings.correct"), look.Note, look.Ink2),
		look.HBox(24, part("findings.correct.breath", p.breath), part("findings.correct.exchange", p.exchange)))
	return p
}

// show shows the settings as kept; they are changed on an open sheet only.
func (p correctPart) show(l record.Loss, open bool) {
	for t, c := range map[*field.Toggle]record.Correction{p.breath: l.Breath, p.exchange: l.Exchange} {
		t.Choose(ruleKey)
		if c != "" {
			t.Choose(string(c))
		}
		if open {
			t.Enable()
		} else {
			t.Disable()
		}
	}
}
