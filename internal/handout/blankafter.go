package handout

import (
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
)

// afterPart is what is written down straight after the session.
func (s sheet) afterPart() []paper.Item {
	say := s.p.say.Say
	none := []string{say("handout.blank.none")}
	items := s.part("handout.blank.after",
		s.boxes(
			box{label: say("handout.blank.guess"), unit: string(s.u.whole), share: 2.2},
			box{label: say("handout.blank.end"), unit: say("handout.blank.clock"), share: 1.2, ticks: []string{say("handout.blank.nextday")}},
			box{label: say("handout.blank.played"), unit: string(quantity.Minute), share: 1}),
		s.choices(s.width, say("handout.blank.dress.after"), say("handout.blank.dress.minimal"), say("handout.blank.dress.kit")),
		s.boxes(
			box{label: say("handout.blank.mass.after", 1), unit: string(s.u.body), share: 1},
			box{label: say("handout.blank.mass.after", 2), unit: string(s.u.body), share: 1},
			box{label: say("handout.blank.other"), share: 1, ticks: []string{say("handout.blank.yes")}},
			box{label: say("handout.blank.kit.dry"), unit: string(s.u.body), share: 0.8},
			box{label: say("handout.blank.kit.wet"), unit: string(s.u.body), share: 0.8}),
		s.boxes(
			box{label: say("handout.blank.urine"), unit: string(quantity.Gram), share: 1, ticks: none},
			box{label: say("handout.blank.stool"), unit: string(quantity.Gram), share: 1, ticks: none}),
		s.scale(say("handout.blank.thirst"), 0, 10),
		s.scale(say("handout.blank.stomach"), 0, 10),
	)
	note := s.p.faces.Line(noteStyle(), say("handout.blank.note"), s.width, paper.Left)
	return append(items, paper.Item{Block: note, Gap: sheetGap, Keep: true}, paper.Item{Block: s.writing(2)})
}

// urinePart is the urine marker and the patches.
func (s sheet) urinePart(patches int) []paper.Item {
	say := s.p.say.Say
	items := s.part("handout.blank.urine.title", s.boxes(
		box{label: say("handout.blank.gravity"), share: 1},
		box{label: say("handout.blank.when"), share: 1.3, ticks: []string{say("handout.blank.when.before"), say("handout.blank.when.after")}},
		box{label: say("handout.blank.osmolality"), unit: string(quantity.MilliosmolePerKilogram), share: 1},
		box{label: say("handout.blank.colour"), share: 1},
		box{label: say("handout.blank.sample"), share: 0.9, ticks: []string{say("handout.blank.none.taken")}}))
	unit := func(key string) string { return say(key) + "\n" + string(quantity.MillimolePerLitre) }
	return append(items, s.gridPart("handout.blank.patches", "handout.blank.patches.note", grid{
		columns: []gridCol{
			{say("handout.blank.patch.side"), 15}, {say("handout.blank.patch.on"), 16}, {say("handout.blank.patch.off"), 16},
			{say("handout.blank.patch.condition"), 21}, {say("handout.blank.patch.laboratory"), 19},
			{unit("handout.blank.patch.sodium"), 17}, {unit("handout.blank.patch.potassium"), 17},
		},
		first: say("handout.blank.patch.site"), rows: patches,
		last: say("handout.blank.patch.method"), lastWidth: 25,
	})...)
}
