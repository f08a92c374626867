package testsheet

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
)

// TestRedFlag: a gain opens the flag; it is asked by keys, goes on record with its
// times, and is closed by a name only.
func TestRedFlag(t *testing.T) {
	b := newSheet(t)
	flag := func() bool { return apptest.Has(b.w, "testsheet.flag.name") }
	b.v.showPart(PartBefore)
	b.enter("testsheet.before.mass.1", "58.6")
	b.v.showPart(PartAfter)
	if flag() {
		t.Fatal("a flag before there is a mass after")
	}
	b.enter("testsheet.after.mass.1", "58.9")
	if !flag() {
		t.Fatal("a gain raises no flag")
	}
	apptest.Click(t, b.w, "testsheet.flag.do.stop")
	b.v.desk.Host.OnRune = b.v.Rune
	f := b.v.ui.after.flag
	b.w.Canvas().Focus(f.answers["confused"])
	for _, r := range "nnnynnn" {
		b.w.Canvas().Focused().TypedRune(r)
	}
	if name, ok := b.w.Canvas().Focused().(interface{ Name() string }); !ok || name.Name() != "testsheet.flag.name" {
		t.Errorf("after the last question the keyboard is not at the name")
	}
	s := consult.SafetyOf(b.v.b.Doc.Now().Record)
	if len(s.Unasked()) != 0 || strings.Join(s.Yes(), " ") != "headache" || s.Emergency() {
		t.Errorf("answers %+v", s.Answers)
	}
	if title := f.title.Text(); !strings.Contains(title, "Headache") {
		t.Errorf("the title does not name the symptom: %q", title)
	}
	found := b.v.found
	if !consult.Blocks(found, b.v.athlete) {
		t.Error("a plan is not kept back")
	}
	b.enter("testsheet.after.mass.2", "58.2")
	if !flag() || !strings.Contains(f.sentence.Text(), b.v.b.Say("safety.why.again")) {
		t.Errorf("a second weighing takes the flag away: %q", f.sentence.Text())
	}
	apptest.Type(t, b.w, "testsheet.flag.name", "A. Medic (invented)")
	apptest.Press(b.w, fyne.KeyReturn)
	if s := consult.SafetyOf(b.v.b.Doc.Now().Record); s.Told != "A. Medic (invented)" || s.ToldAt.IsZero() {
		t.Errorf("told %+v", s)
	}
	if consult.Blocks(b.v.found, b.v.athlete) {
		t.Error("the plan is still kept back")
	}
	lines := strings.Join(apptest.Texts(f.lines), "\n")
	for _, want := range []string{"58.9", "No more to drink", "Headache: yes", "told: A. Medic"} {
		if !strings.Contains(lines, want) {
			t.Errorf("the record lacks %q:\n%s", want, lines)
		}
	}
	if n := len(b.v.b.Doc.Now().Record.Safety); n != 1+7+1 {
		t.Errorf("%d lines of record", n)
	}
	for _, n := range b.v.b.Doc.Now().Record.Safety {
		if n.Done == nil || n.Kind == record.SafetyAsked && n.Answer == "" {
			t.Errorf("a line without a time or an answer: %+v", n)
		}
	}
}

// TestRedFlagEmergency: one emergency symptom calls, and only that is said.
func TestRedFlagEmergency(t *testing.T) {
	b := newSheet(t)
	b.v.showPart(PartBefore)
	b.enter("testsheet.before.mass.1", "58.6")
	b.v.showPart(PartAfter)
	b.enter("testsheet.after.mass.1", "58.9")
	f := b.v.ui.after.flag
	f.note("testsheet.flag.ask.fit", record.SafetyNote{Kind: record.SafetyAsked, Item: "fit", Answer: record.AnswerYes})
	if title := f.title.Text(); title != b.v.b.Say("safety.title.call", "112") {
		t.Errorf("the title is %q", title)
	}
}
