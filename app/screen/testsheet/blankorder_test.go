package testsheet

import (
	"regexp"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/field"
	"ebbwell/internal/handout"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/record"
)

// paperLabels are the labels of the blank sheet for the fields of the screen, by the
// names of their controls: those of the description, with what the screen asks in two
// places.
func paperLabels() map[string]string {
	list := map[string]string{
		"testsheet.before.mass.1": "handout.blank.mass.before", "testsheet.after.mass.1": "handout.blank.mass.after",
		"testsheet.morning.mass.1": "handout.blank.morning.today", "testsheet.morning.day.1": "handout.blank.morning",
		"testsheet.before.gravity": "handout.blank.gravity.before", "testsheet.before.colour": "handout.blank.colour.before",
	}
	for _, f := range record.SheetFields() {
		if f.Control != "" && !strings.Contains(f.Control, "@") {
			list[f.ControlOf(record.SheetRow{Number: 1, Within: 1})] = f.Paper
		}
	}
	return list
}

// entered reports whether a control is a field that is filled in: not a button
// or a link, and the first of several.
func entered(s field.Spot) bool {
	switch s.Object.(type) {
	case *field.Button, *field.Link, nil:
		return false
	}
	if _, ok := s.Object.(fyne.Focusable); !ok {
		return false
	}
	return !regexp.MustCompile(`\.([2-9])(\.|$)`).MatchString(s.Name)
}

// fields are those of a new sheet with one of everything, in the order in which
// the Tab key goes through them, part by part.
func (b *bench) fields() []string {
	b.t.Helper()
	var list []string
	gather := func(part fyne.CanvasObject) {
		for _, s := range field.Names(part) {
			if entered(s) {
				list = append(list, s.Name)
			}
		}
	}
	b.enter("testsheet.start", "23:10")
	for _, f := range b.v.ui.before.folds {
		f.turn()
	}
	b.enter("testsheet.morning.mass.1", "63.4")
	gather(b.v.ui.before.body)
	b.part(PartBottles)
	b.enter("testsheet.bottle.1.before", "712")
	apptest.Click(b.t, b.w, "testsheet.bottle.1.more")
	b.v.ui.bottles.rows[0].detail.use.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	apptest.Click(b.t, b.w, "testsheet.bottle.1.refill")
	apptest.Click(b.t, b.w, "testsheet.bottle.1.byvolume")
	b.v.ui.bottles.nothing.Show()
	gather(b.v.ui.bottles.body)
	b.part(PartAfter)
	b.enter("testsheet.end", "0:40")
	b.v.ui.after.kit.turn()
	gather(b.v.ui.after.body)
	b.part(PartUrine)
	apptest.Click(b.t, b.w, "testsheet.patch.add")
	gather(b.v.ui.urine.body)
	return list
}

// The blank sheet on paper asks for what the screen asks for, in the order in
// which the screen asks for it.
func TestBlankSheetIsInEntryOrder(t *testing.T) {
	b := newSheet(t)
	press, err := handout.NewPress(b.desk.Words, paper.A4())
	if err != nil {
		t.Fatal(err)
	}
	var written []string
	for _, side := range press.BlankSheet(handout.BlankSheet{}).Pages {
		written = append(written, side.Texts()...)
	}
	names, at, labels := b.fields(), 0, paperLabels()
	if len(names) < 60 {
		t.Fatalf("only %d fields: %q", len(names), names)
	}
	for _, name := range names {
		key, ok := labels[name]
		if !ok {
			t.Errorf("the screen asks for %q; nothing says where that stands on paper", name)
			continue
		}
		delete(labels, name)
		label := b.desk.Words.Say(key, 1)
		if !b.desk.Words.Has(key) {
			t.Fatalf("no label %q", key)
		}
		label, _, _ = strings.Cut(label, "%!")
		found := position(written[at:], label)
		if found < 0 {
			t.Errorf("%q, %q on paper, does not follow %q there", name, label, written[max(at-1, 0)])
			continue
		}
		at += found + 1
	}
	for name, key := range labels {
		t.Errorf("the screen does not ask for %q, %q on paper", name, key)
	}
}

// position is where a label begins among the texts of a page, which are broken
// into lines; -1 where it is not there.
func position(texts []string, label string) int {
	for i := range texts {
		for n := 1; n <= 3 && i+n <= len(texts); n++ {
			if strings.Join(texts[i:i+n], " ") == label {
				return i
			}
		}
	}
	return -1
}
