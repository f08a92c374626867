package testsheet

import (
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// changed calculates anew at every keystroke. What is newly wrong waits until the
// field is left: half a number is not scolded.
func (v *View) changed() {
	v.calculate()
	now := v.troubles()
	if v.b.Typing() != "" {
		now = stillWrong(v.wrong, now)
	}
	v.wrong = now
	v.show()
}

// settled shows everything that is wrong, once a field was left.
func (v *View) settled() {
	v.moveMornings()
	v.calculate()
	v.wrong = v.troubles()
	v.show()
}

// stillWrong keeps of what is wrong now what was shown as wrong before.
func stillWrong(before, now []trouble) []trouble {
	var list []trouble
	for _, n := range now {
		for _, b := range before {
			if b.code == n.code && b.path == n.path && b.problem.Field == n.problem.Field && b.problem.Item == n.problem.Item {
				list = append(list, n)
				break
			}
		}
	}
	return list
}

// calculate works the sheet out: a closed one is shown as it was closed.
func (v *View) calculate() {
	s := v.b.Doc.Now()
	v.found = consult.FindAsClosed(s.Record, v.athlete, s.Texts(refOf(s.Record)), v.kept, v.desk.Calculate())
}

// troubles lists what is wrong now.
func (v *View) troubles() []trouble {
	s := v.b.Doc.Now()
	var order []string
	for _, f := range v.b.Fields() {
		order = append(order, f.Name)
	}
	return troubles(s, v.found, order, func(path string, p evidence.Problem) bool {
		if s.Record.State != record.TestOpen {
			return false
		}
		texts := append(s.Texts(refOf(s.Record)), record.RawText{Field: path, Text: "?", Reason: true})
		for _, q := range consult.Find(s.Record, v.athlete, texts, v.desk.Calculate()).Sweat.Problems {
			if q.Field == p.Field && q.Item == p.Item && q.Severity == p.Severity {
				return false
			}
		}
		return true
	})
}

// follow sets every field from the sheet and shows what it comes to.
func (v *View) follow() {
	v.calculate()
	v.wrong = v.troubles()
	v.show() // makes the lines there have to be
	v.b.Show()
	v.lock()
	v.show()
}

// show shows what the sheet comes to, beside the fields.
func (v *View) show() {
	s := v.b.Doc.Now()
	sp := v.speaker()
	switch v.part {
	case PartBefore:
		v.ui.before.show(s)
	case PartBottles:
		v.ui.bottles.show(s, v.found, sp, v.wrong)
	case PartAfter:
		v.ui.after.show(s)
		v.ui.after.flag.show(s.Record, v.found)
	case PartUrine:
		v.ui.urine.show(s, v.found)
	case PartFindings:
		v.ui.find.Show(v.input())
	}
	v.warn()
	if v.part != PartFindings {
		v.ui.balance.show(s.Record, v.athlete, v.found, v.wrong)
		if v.part == PartAfter && v.ui.after.flag.box.Visible() {
			v.ui.balance.red.SetText("", "") // it is said once on a screen
		}
	}
	for part, done := range complete(s, v.found, v.wrong) {
		v.ui.tabs.SetDone(part, done)
	}
	v.ui.foot.show(v)
	v.showNotices()
	v.ui.stage.follow(v.partBody())
}

// warn shows at the fields what they cannot see by themselves.
func (v *View) warn() {
	s := v.b.Doc.Now()
	for _, f := range v.b.Fields() {
		if f.Group != v.part || f.Path == nil || f.Warn == nil || f.Name == v.b.Typing() {
			continue
		}
		f.Warn(v.warning(f.Path(s.Record)))
	}
}

// warning is what is wrong at a path that its field cannot see: two values in
// the wrong order.
func (v *View) warning(path string) string {
	for _, w := range v.wrong {
		if path != "" && w.path == path && w.code == codeProblem && w.problem.Code == evidence.CodeOrder {
			title, sentence := v.speaker().trouble(v.b.Doc.Now().Record, w)
			return title + " " + sentence
		}
	}
	return ""
}

// moveMornings takes the morning mass along when the test's day was changed.
func (v *View) moveMornings() {
	day := v.b.Doc.Now().Record.Session.Date
	from := v.ui.before.day
	v.ui.before.day = day
	if from != "" && day != "" && from != day && hasMorning(v.b.Doc.Now().Record, from) && !hasMorning(v.b.Doc.Now().Record, day) {
		v.b.Doc.Change("", "testsheet.morning", func(s *sheet) { moveMornings(&s.Record, from, day) })
	}
}
