package handout

import (
	"ebbwell/internal/handout/paper"
)

// afterPart is what is written down straight after the session, with lines for remarks
// where noted.
func (s sheet) afterPart(noted bool) []paper.Item {
	say := s.p.say.Say
	items := s.part("handout.blank.after",
		s.boxes(
			s.ask("loss.guess", 2.2), s.clock("session.end", 1.2, s.words("session.endsNextDay")), s.ask("session.played", 1)),
		s.choices(s.width, s.words("scale.after"), say("handout.blank.dress.minimal"), say("handout.blank.dress.kit")),
		s.boxes(
			box{label: say("handout.blank.mass.after", 1), unit: string(s.u.body), share: 1},
			box{label: say("handout.blank.mass.after", 2), unit: string(s.u.body), share: 1},
			s.ask("scale.other", 1, say("handout.blank.yes")), s.ask("scale.kitDry", 0.8), s.ask("scale.kitWet", 0.8)),
		s.boxes(s.ask("loss.urine", 1, s.words("loss.noUrine")), s.ask("loss.stool", 1, s.words("loss.noStool"))),
		s.scale(s.words("feeling.thirst"), 0, 10),
		s.scale(s.words("feeling.stomach"), 0, 10),
	)
	if !noted {
		return items
	}
	note := s.p.faces.Line(noteStyle(), s.words("note"), s.width, paper.Left)
	return append(items, paper.Item{Block: note, Gap: sheetGap, Keep: true}, paper.Item{Block: s.writing(2)})
}

// urinePart is the urine marker and the patches.
func (s sheet) urinePart(patches int) []paper.Item {
	say := s.p.say.Say
	items := s.part("handout.blank.urine.title", s.boxes(
		s.ask("urine.gravity", 1), s.ask("urine.when", 1.3, say("handout.blank.when.before"), say("handout.blank.when.after")),
		s.ask("urine.osmolality", 1), s.ask("urine.colour", 1),
		box{label: say("handout.blank.sample"), share: 0.9, ticks: []string{s.words("urine.notTaken")}}))
	of := func(name string, width float64) gridCol { return s.column("patches.*."+name, width) }
	method := of("method", 25)
	return append(items, s.gridPart("handout.blank.patches", "handout.blank.patches.note", grid{
		columns: []gridCol{
			of("side", 15), of("on", 16), of("off", 16), of("condition", 21), of("atLaboratory", 19), of("sodium", 17), of("potassium", 17),
		},
		first: s.words("patches.*.site"), rows: patches, last: method.head, lastWidth: method.width,
	})...)
}
