package squad

import (
	"context"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/internal/record"
)

// TestFlagNamesBoth: a row whose athlete is heavier and has a symptom names the symptom,
// then the gain, then the athlete's own conditions; what was asked is not asked again. An
// emergency stands alone.
func TestFlagNamesBoth(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[2:3])
	a := apptest.AthleteNamed(t, d, "Runa Hollowick")
	a.Flags = []record.Flag{{Meta: record.Meta{ID: record.NewID()}, Kind: record.FlagNSAID}, {Meta: record.Meta{ID: record.NewID()}, Kind: record.FlagHyponatraemia}}
	apptest.Save(t, d, a)
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.at("before", "83.2\n")
	h.until(18, 47)
	h.v.openRowAt(0, "after")
	h.at("after", "83.5\n")
	say := d.Words.Say
	risks := say("squad.flag.risks", d.Words.List([]string{say("flag." + string(record.FlagHyponatraemia) + ".name"), say("flag." + string(record.FlagNSAID) + ".name")}))
	want := func(title string, lines ...string) {
		t.Helper()
		got, below := h.v.flagWords(h.v.rows[0])
		if got != title || strings.Join(below, "|") != strings.Join(lines, "|") {
			t.Errorf("%q, %q\nwant %q, %q", got, below, title, lines)
		}
		if !rowsShow(h, title) {
			t.Errorf("the row does not show %q", title)
		}
	}
	emergency := say("squad.flag.emergency", say("squad.flag.call", "112"))
	want(say("squad.flag.heavier", "+0.30\u00a0kg"), risks, say("squad.flag.ask"), emergency)
	h.v.open.focusFirst("symptoms")
	h.at("symptoms", "46\n")
	both := say("squad.symptom.headache") + ", " + say("squad.symptom.vomiting")
	want(say("squad.flag.both", both, "+0.30\u00a0kg"), risks, emergency)
	h.v.open.focusFirst("symptoms")
	h.at("symptoms", "146\n")
	want(say("squad.flag.call", "112"), say("squad.flag.mouth"), say("squad.flag.cool"))
	if err := d.Keep.Flush(context.Background()); err != nil {
		t.Fatal(err)
	}
}

// TestHiddenFlagNamesBoth: where body mass is hidden the gain is named without its amount.
func TestHiddenFlagNamesBoth(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[1:2])
	h := openDay(t, d, clock, id, 1186, 700, false, 100)
	h.at("before", "55.2\n")
	h.until(18, 47)
	h.v.openRowAt(0, "after")
	h.at("after", "55.9\n")
	h.v.open.focusFirst("symptoms")
	h.at("symptoms", "7\n")
	title, _ := h.v.flagWords(h.v.rows[0])
	if title != d.Words.Say("squad.flag.both.hidden", d.Words.Say("squad.symptom.bloated")) || strings.Contains(title, "kg") {
		t.Errorf("%q", title)
	}
}

// rowsShow reports whether the rows show a text, on however many lines.
func rowsShow(h *hands, text string) bool {
	return strings.Contains(strings.Join(apptest.VisibleTexts(h.v.ui.list), " "), text)
}

// TestFlagStaysInSight: in a window that is too low for the whole row, what the flag says
// is in sight while who was told is typed.
func TestFlagStaysInSight(t *testing.T) {
	d, clock, id := squadDesk(t, crew()[:4])
	h := openDay(t, d, clock, id, 1186, 700, true, 150)
	h.v.openRowAt(2, "before")
	h.at("before", "83.2\n")
	h.until(18, 47)
	h.v.openRowAt(2, "after")
	h.at("after", "83.5\n")
	h.v.openRowAt(0, "")
	h.v.openRowAt(2, "told")
	scroll, o := h.v.ui.scroll, h.v.open
	if o.view.Size().Height <= scroll.Size().Height {
		t.Fatalf("the row of %.0f px fits into %.0f", o.view.Size().Height, scroll.Size().Height)
	}
	top := o.view.Position().Y + o.view.below.Position().Y + o.panels.Position().Y
	if at := scroll.Offset(); top < at || top+o.panels.Size().Height > at+scroll.Size().Height {
		t.Errorf("the flag stands from %.0f to %.0f, in sight is %.0f to %.0f", top, top+o.panels.Size().Height, at, at+scroll.Size().Height)
	}
}
