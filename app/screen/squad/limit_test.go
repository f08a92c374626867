package squad

import (
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
	"ebbwell/internal/words"
)

// TestLimitsInTheRow: a value outside its limits of which nothing more is known is asked
// about in words, until it is saved with a reason; the reason is among those that findings
// and print name.
func TestLimitsInTheRow(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:1])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.at("before", "61.8\n742\n688\n")
	h.until(18, 47)
	h.v.openRowAt(0, "bottle.1.after")
	h.at("bottle.1.after", "402\n\n452\n\n\n60.7\n")
	h.at("urine", "700\n")
	odd, open := openOdd(h.v.rows[0])
	if !open || odd.Code != squad.OddLimit || odd.WeighAgain {
		t.Fatalf("odd %+v", h.v.rows[0].Odd)
	}
	title, _ := h.v.oddWords(h.v.rows[0], odd)
	if title != words.AtStart(desk.ProblemSentence(d.Words, odd.Problem)) || !strings.Contains(title, "700") || !rowsShow(h, title) {
		t.Errorf("said %q", title)
	}
	h.v.openRowAt(0, "reason")
	h.at("reason", "two visits")
	h.key('\n')
	if kept := consult.KeptOdds(h.v.rows[0].Found); len(kept) != 1 || kept[0].Text != "two visits" {
		t.Errorf("kept %+v, odd %+v", kept, h.v.rows[0].Odd)
	}
	if _, open := openOdd(h.v.rows[0]); open {
		t.Errorf("asked again: %+v", h.v.rows[0].Odd)
	}
}

// TestHiddenMassIsNotHeldAgainstLimits: that a hidden mass lies outside the usual would
// tell of it.
func TestHiddenMassIsNotHeldAgainstLimits(t *testing.T) {
	people := crew()[1:2]
	people[0].kg = 38
	d, clock, id := squadDesk(t, people)
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.at("before", "38.2\n")
	if odd := h.v.rows[0].Odd; len(odd) != 0 {
		t.Errorf("asked %+v", odd)
	}
}

// TestLengthOfTheSession: one that is hardly a session is said where it holds for all.
func TestLengthOfTheSession(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:1])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	usual := h.v.sharedWords()
	h.v.doc.ChangeSession("", "end", func(g *record.GroupSession) { g.Session.End = "17:25" })
	if text := h.v.sharedWords(); !strings.Contains(text, "20\u00a0min is unusual") || strings.Contains(usual, "unusual") {
		t.Errorf("said %q, before %q", text, usual)
	}
}

// TestReasonIsInWords: the keys of the number pad do what they do elsewhere in an empty
// field for a reason or a name, and digits are neither.
func TestReasonIsInWords(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[2:3])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.at("before", "83.2\n")
	h.until(18, 47)
	h.v.openRowAt(0, "after")
	h.at("after", "83.5\n")
	h.v.openRowAt(0, "told")
	h.at("told", "*")
	if r := h.v.rows[0]; !r.Patch.On || h.v.open.find("told").control.Text() != "" {
		t.Errorf("patch %+v, the field has %q", r.Patch, h.v.open.find("told").control.Text())
	}
	h.at("told", "402\n")
	if r := h.v.rows[0]; r.Flag.Told() {
		t.Errorf("told %q", r.Flag.Safety.Told)
	}
	if !rowsShow(h, d.Words.Say("squad.flag.words")) {
		t.Error("it is not said that a name has letters")
	}
	apptest.Type(t, h.w, "squad.told", "A. Medic (invented)")
	apptest.Leave(h.w)
	if r := h.v.rows[0]; r.Flag.Safety.Told != "A. Medic (invented)" {
		t.Errorf("told %q", r.Flag.Safety.Told)
	}
}

// TestWhatMissingDoes: the open row says what the first missing value does to the result.
func TestWhatMissingDoes(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:1])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	want := func(key string) {
		t.Helper()
		if text := h.v.effects(h.v.rows[0]); text != d.Words.Say(key) {
			t.Errorf("%q, want %q", text, d.Words.Say(key))
		}
	}
	want("squad.effect.before")
	h.at("before", "61.8\n")
	want("squad.effect.bottles")
	h.typed("742\n688\n*")
	h.until(18, 47)
	want("squad.effect.bottles-left")
	h.v.openRowAt(0, "bottle.1.after")
	h.at("bottle.1.after", "402\n\n452\n\n\n")
	want("squad.effect.after")
	h.at("after", "60.7\n")
	if text := h.v.effects(h.v.rows[0]); !strings.Contains(text, "too high") {
		t.Errorf("without urine: %q", text)
	}
	h.at("urine", "0\n")
	h.at("patch", "*\n")
	h.at("symptoms", "0\n")
	want("squad.effect.laboratory")
}
