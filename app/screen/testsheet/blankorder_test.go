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
)

// paperLabels are the labels of the blank sheet for the fields of the screen, by
// the names of these without "testsheet."; a first of several stands for all.
func paperLabels() map[string]string {
	return map[string]string{
		"date": "date", "start": "start", "place": "place", "sport": "sport", "activity": "activity", "effort": "effort",
		"power": "power", "speed": "speed", "met": "met", "energy": "energy",
		"air.temperature": "air", "air.humidity": "humidity", "air.wind": "wind", "air.sun": "sun", "air.altitude": "altitude", "air.wbgt": "wbgt",
		"air.clothing": "clothing", "heat": "heat", "scale.before": "dress.before", "before.mass.1": "mass.before", "scale.step": "step",
		"morning.1.mass": "morning.today", "morning.1.day": "morning", "before.gravity": "gravity.before", "before.colour": "colour.before",
		"bottle.1.what": "bottle.what", "bottle.1.before": "bottle.before", "bottle.1.after": "bottle.after", "bottle.1.poured": "bottle.poured",
		"bottle.1.use": "bottle.use", "bottle.1.refill.1": "bottle.refill", "bottle.1.share.low": "bottle.from", "bottle.1.share.high": "bottle.to",
		"bottle.1.volume": "bottle.cup", "nothing": "nothing", "food.1.what": "food.what", "food.1.portions": "food.portions", "food.1.mass": "food.or",
		"guess": "guess", "end": "end", "nextday": "nextday", "played": "played", "scale.after": "dress.after", "after.mass.1": "mass.after",
		"scale.other": "other", "kit.dry": "kit.dry", "kit.wet": "kit.wet", "urine.passed": "urine", "urine.none": "none", "stool.passed": "stool",
		"stool.none": "none", "thirst": "thirst", "stomach": "stomach", "note": "note",
		"urine.gravity": "gravity", "urine.when": "when", "urine.osmolality": "osmolality", "urine.colour": "colour", "urine.nottaken": "none.taken",
		"patch.1.site": "patch.site", "patch.1.side": "patch.side", "patch.1.on": "patch.on", "patch.1.off": "patch.off",
		"patch.1.condition": "patch.condition", "patch.1.atLaboratory": "patch.laboratory", "patch.1.sodium": "patch.sodium",
		"patch.1.potassium": "patch.potassium", "patch.1.method": "patch.method",
	}
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
			if name, ok := strings.CutPrefix(s.Name, "testsheet."); ok && entered(s) {
				list = append(list, name)
			}
		}
	}
	b.enter("testsheet.start", "23:10")
	b.enter("testsheet.morning.1.mass", "63.4")
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
		label := b.desk.Words.Say("handout.blank."+key, 1)
		if !b.desk.Words.Has("handout.blank." + key) {
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
