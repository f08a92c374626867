package app

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
)

// copies is what a control of the window puts on the clipboard.
func (h hands) copies(control string) string {
	h.t.Helper()
	fyne.CurrentApp().Clipboard().SetContent("")
	h.click(control)
	return fyne.CurrentApp().Clipboard().Content()
}

// Tables are copied whole from the screens that have them, with tabs.
func TestTablesAreCopied(t *testing.T) {
	s, w := start(t, t.TempDir(), true)
	h := truth{hands: hands{t: t, s: s, w: w}}
	d := h.program().Desk()
	a := apptest.AthleteNamed(t, d, "Ravka Oldenmoor")
	tests, err := d.AllFindings(context.Background(), a)
	must(t, err)
	rate := strings.ReplaceAll(h.writer(a).Found(tests[0].Sweat.Fluid.Rate), "\u00a0", " ")

	h.program().Open(desk.Place{Screen: desk.Tests, Athlete: a.ID, Record: tests[0].Test.ID, Part: "findings"})
	if got := h.copies("findings.copy"); !strings.Contains(got, "Sweat rate\t"+rate+"\t") || strings.Count(got, "\n") < 10 {
		t.Errorf("findings: %q", got)
	}
	if got := h.copies("findings.picture.copy"); strings.Count(got, "\n") < 3 || !strings.Contains(got, "L") {
		t.Errorf("the figures of the picture: %q", got)
	}
	h.program().Open(desk.Place{Screen: desk.Overview, Athlete: a.ID})
	if got := h.copies("overview.picture.copy"); !strings.Contains(got, rate) || !strings.Contains(got, string(tests[0].Test.Session.Date)) {
		t.Errorf("the figures of the sweat rates: %q", got)
	}
	h.click("overview.dates")
	if got := h.copies("overview.trail.copy"); !strings.Contains(got, string(tests[0].Test.Session.Date)+"\t") || strings.Count(got, "\t") < 6 {
		t.Errorf("the trail: %q", got)
	}
	h.program().Open(desk.Place{Screen: desk.Plan, Athlete: a.ID})
	h.click("planner.deficit.why")
	fyne.CurrentApp().Clipboard().SetContent("")
	apptest.Click(t, w, "planner.deficit.copy")
	end := fyne.CurrentApp().Clipboard().Content()
	apptest.Click(t, w, "planner.why.done")
	if lines := strings.Split(strings.TrimSpace(end), "\n"); len(lines) < 5 || !strings.HasPrefix(lines[1], "0\t") || !strings.HasPrefix(lines[len(lines)-1], "95\t−2.7 %\t−1.5 to −4.3 %\t−2.9 %") {
		t.Errorf("the figures of the deficit: %q", end)
	}
	h.click("planner.tabs.beside")
	if got := h.copies("planner.beside.copy"); !strings.Contains(got, "\tHabit\t") || !strings.Contains(got, "Deficit at the end\t−2.9 %\t") {
		t.Errorf("the options: %q", got)
	}
	h.program().Open(desk.Place{Screen: desk.Practice, Part: "thresholds"})
	if got := h.copies("practice.thresholds.copy"); strings.Count(got, "\n") < 200 || !strings.Contains(got, "slowest speed that counts as moving in a device file\t0.5 m/s\t") {
		t.Errorf("the thresholds: %d lines", strings.Count(got, "\n"))
	}
}

// letter is the text that a screen copies, and what it keeps as a file is the same.
func (h truth) letter(opens, dialog string) string {
	h.t.Helper()
	h.click(opens)
	apptest.Click(h.t, h.w, dialog+".save")
	file := filepath.Join(h.t.TempDir(), "letter.txt")
	apptest.Type(h.t, h.w, dialog+".ask.path", file)
	apptest.Click(h.t, h.w, dialog+".ask.yes")
	kept, err := os.ReadFile(file)
	must(h.t, err)
	h.click(opens)
	fyne.CurrentApp().Clipboard().SetContent("")
	apptest.Click(h.t, h.w, dialog+".copy")
	if got := fyne.CurrentApp().Clipboard().Content(); got != string(kept) || got == "" {
		h.t.Errorf("%s copies\n%q\nand keeps\n%q", opens, got, kept)
	}
	return string(kept)
}
