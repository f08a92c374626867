package testsheet

import (
	"context"
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// titles are the sentences of the cautions in the balance.
func (b *bench) titles() string {
	var list []string
	for _, it := range b.v.ui.balance.items.list {
		if title, _ := it.caution.Text(); title != "" && it.caution.Visible() {
			list = append(list, title)
		}
	}
	return strings.Join(list, "\n")
}

// note is what stands at a number as wrong or odd.
func (b *bench) note(name string) string {
	b.t.Helper()
	f, ok := b.v.b.Field(name).Field.(interface {
		Trouble() (weight fieldWeight, note string)
	})
	if !ok {
		b.t.Fatalf("%s shows no trouble", name)
	}
	_, note := f.Trouble()
	return note
}

func TestTextInANumberIsKept(t *testing.T) {
	b := newSheet(t)
	b.enter("testsheet.air.temperature", "quite warm")
	if got := b.note("testsheet.air.temperature"); !strings.HasPrefix(got, "Not a number yet") {
		t.Errorf("at the place: %q", got)
	}
	if got := b.titles(); got != "Air temperature: “quite warm” can’t be read." {
		t.Errorf("in the balance: %q", got)
	}
	if kept := b.kept(); kept.Air.Temperature.Known() {
		t.Error("text was taken for a number")
	}
	id := b.v.b.Doc.Now().Record.ID
	again := openAt(t, b.desk, b.went, desk.Place{Screen: desk.Tests, Athlete: b.who.ID, Record: id})
	if got := apptest.Text(t, again.w, "testsheet.air.temperature"); got != "quite warm" {
		t.Errorf("reopened as %q", got)
	}
	again.enter("testsheet.air.temperature", "31")
	again.kept()
	if raw, err := b.desk.Store.RawOf(context.Background(), record.Ref{Kind: record.KindTest, ID: id}); err != nil || len(raw) != 0 {
		t.Errorf("still kept beside the number: %v (%v)", raw, err)
	}
}

func TestUnreadableTimeIsKept(t *testing.T) {
	b := newSheet(t)
	b.enter("testsheet.start", "after lunch")
	b.kept()
	again := openAt(t, b.desk, b.went, desk.Place{Screen: desk.Tests, Athlete: b.who.ID})
	if got := apptest.Text(t, again.w, "testsheet.start"); got != "after lunch" {
		t.Errorf("reopened as %q", got)
	}
	if got := again.titles(); got != "Start: “after lunch” can’t be read." {
		t.Errorf("in the balance: %q", got)
	}
}

func TestDecimalComma(t *testing.T) {
	b := newSheet(t)
	b.enter("testsheet.before.mass.1", "64,35")
	if kept := b.kept(); *kept.Weighings[0].Mass.Value != 64.35 {
		t.Errorf("kept as %v", *kept.Weighings[0].Mass.Value)
	}
}

// A number that is too high for kilograms and right for pounds is asked about;
// one click, or Enter, takes it as pounds.
func TestPoundsTypedAsKilograms(t *testing.T) {
	for _, how := range []string{"click", "enter"} {
		t.Run(how, func(t *testing.T) {
			b := newSheet(t)
			apptest.Type(t, b.w, "testsheet.before.mass.1", "154")
			if how == "click" {
				apptest.Leave(b.w)
				if got := apptest.Text(t, b.w, "testsheet.before.mass.1.pounds"); got != "Pounds: take 69.9\u00a0kg" {
					t.Fatalf("offered %q", got)
				}
				apptest.Click(t, b.w, "testsheet.before.mass.1.pounds")
			} else {
				apptest.Press(b.w, fyne.KeyReturn) // to what is offered
				apptest.Press(b.w, fyne.KeyReturn) // take it
			}
			kept := b.kept().Weighings[0].Mass
			if math.Abs(*kept.Value-154*0.45359237) > 1e-9 || kept.Unit != quantity.Pound {
				t.Errorf("kept as %v %s", *kept.Value, kept.Unit)
			}
			if apptest.Has(b.w, "testsheet.before.mass.1.pounds") {
				t.Error("the offer still stands")
			}
		})
	}
}

func TestHeavierAfterThanBeforeIsARedFlag(t *testing.T) {
	b := newSheet(t)
	b.fill()
	b.part(PartAfter)
	b.enter("testsheet.after.mass.1", "64.3")
	b.part(PartFindings)
	text := allText(b.w)
	if !strings.Contains(text, "Red flag") || !strings.Contains(strings.ReplaceAll(text, "\u00a0", " "), "0.30 kg heavier than before the session") {
		t.Errorf("the findings say:\n%s", text)
	}
	if _, _, y := place(b.w, "Red flag"); y > 140 {
		t.Errorf("the red flag stands %g px down, not at the top", y)
	}
}

func TestBottleHeavierAfterThanBefore(t *testing.T) {
	b := newSheet(t)
	b.fill()
	b.part(PartBottles)
	b.enter("testsheet.bottle.3.before", "615")
	apptest.Type(t, b.w, "testsheet.bottle.3.after", "655")
	if got := b.titles(); got != "" {
		t.Errorf("scolded while typing: %q", got)
	}
	apptest.Leave(b.w)
	if got := b.titles(); got != "Bottle 3 weighs more after than before." {
		t.Errorf("in the balance: %q", got)
	}
	if got := b.v.ui.bottles.rows[2].note.text.Text(); !strings.Contains(got, "615\u00a0g, then 655\u00a0g. Was it refilled?") {
		t.Errorf("at the place: %q", got)
	}
	if got := apptest.Text(t, b.w, "testsheet.next"); got != "Weigh bottle 3 again" {
		t.Errorf("the main button says %q", got)
	}
	if got := b.v.ui.balance.sure.Text(); got != "provisional, no range without bottle 3" {
		t.Errorf("beside the rate: %q", got)
	}
	b.part(PartAfter)
	apptest.Click(t, b.w, "testsheet.trouble.1.go")
	if f, ok := b.w.Canvas().Focused().(interface{ Name() string }); !ok || f.Name() != "testsheet.bottle.3.after" {
		t.Errorf("Go there leads to %v", b.w.Canvas().Focused())
	}
	b.enter("testsheet.bottle.3.after", "555")
	if got := b.titles(); got != "" {
		t.Errorf("still: %q", got)
	}
}

func TestEndBeforeStartOffersTheNextDay(t *testing.T) {
	b := newSheet(t)
	b.enter("testsheet.start", "22:30")
	b.part(PartAfter)
	b.enter("testsheet.end", "0:15")
	if got := b.note("testsheet.end"); got != "The session ends before it starts." {
		t.Errorf("at the place: %q", got)
	}
	apptest.Click(t, b.w, "testsheet.trouble.1.offer")
	if kept := b.kept(); !kept.Session.EndsNextDay {
		t.Fatal("the next day is not kept")
	}
	if minutes, ok := b.kept().Session.Minutes(); !ok || minutes != 105 {
		t.Errorf("%g minutes", minutes)
	}
	if got := b.titles(); got != "" {
		t.Errorf("still: %q", got)
	}
}

func TestPatchOffBeforeOn(t *testing.T) {
	b := newSheet(t)
	b.enter("testsheet.start", "14:00")
	b.part(PartUrine)
	apptest.Click(t, b.w, "testsheet.patch.add")
	b.enter("testsheet.patch.1.on", "14:40")
	b.enter("testsheet.patch.1.off", "14:20")
	if got := b.note("testsheet.patch.1.off"); got != "Removed before applied. Please check both times." {
		t.Errorf("at the place: %q", got)
	}
	if got := b.titles(); got != "Patch off 1: before it was applied." {
		t.Errorf("in the balance: %q", got)
	}
	b.enter("testsheet.patch.1.off", "15:20")
	if got := b.titles() + b.note("testsheet.patch.1.off"); got != "" {
		t.Errorf("still: %q", got)
	}
}

func TestEmptySheet(t *testing.T) {
	b := newSheet(t)
	for _, part := range partList() {
		b.part(part)
	}
	apptest.Click(t, b.w, "findings.show")
	text := allText(b.w)
	if !strings.Contains(text, "Not enough for the sweat loss yet") || !strings.Contains(text, "Body mass before.") {
		t.Errorf("an empty sheet says:\n%s", text)
	}
	if got := apptest.Text(t, b.w, "testsheet.next"); got != "Enter what is missing" {
		t.Errorf("the main button says %q", got)
	}
	apptest.Click(t, b.w, "testsheet.next")
	if b.v.part == PartFindings {
		t.Error("the main button leads nowhere")
	}
}

func TestLongNoteAndEmoji(t *testing.T) {
	b := newSheet(t)
	long := strings.Repeat("Felt strong until the third quarter. ", 271)[:10000]
	b.enter("testsheet.place", "Weir 🏑 ground")
	b.part(PartBottles)
	b.enter("testsheet.bottle.1.what", "tea with 🍯")
	b.part(PartAfter)
	n := b.v.b.Field("testsheet.note")
	if n == nil {
		t.Fatal("no note")
	}
	b.w.Canvas().Focus(find(b.w, "testsheet.note").(fyne.Focusable))
	b.w.Canvas().Focused().(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutPaste{Clipboard: &clipboard{long}})
	apptest.Leave(b.w)
	kept := b.kept()
	if kept.Note != long || kept.Session.Place != "Weir 🏑 ground" || kept.Bottles[0].Name != "tea with 🍯" {
		t.Errorf("kept a note of %d runes, %q, %q", len(kept.Note), kept.Session.Place, kept.Bottles[0].Name)
	}
}

// A value beyond its limits is refused until a reason is written, and again
// when the reason is taken back.
func TestRefusedValueIsKeptWithAReason(t *testing.T) {
	b := newSheet(t)
	b.fill()
	b.part(PartAfter)
	b.enter("testsheet.urine.passed", "") // none passed is ticked
	apptest.Click(t, b.w, "testsheet.urine.none")
	b.enter("testsheet.urine.passed", "1700")
	if got := b.titles(); !strings.HasPrefix(got, "Urine: 1700") {
		t.Fatalf("in the balance: %q", got)
	}
	if b.v.found.Sweat.Fluid.Rate.Ranged {
		t.Error("a refused value gives a range")
	}
	apptest.Click(t, b.w, "testsheet.trouble.1.keep")
	apptest.Type(t, b.w, "testsheet.reason.why", "collected over two stops, weighed twice")
	apptest.Click(t, b.w, "testsheet.reason.yes")
	if !b.v.found.Sweat.Fluid.Loss.Known || !strings.Contains(b.titles(), "Urine: saved outside its limits.") {
		t.Errorf("with a reason: %v, %q", b.v.found.Sweat.Fluid.Loss.Known, b.titles())
	}
	b.kept()
	raw, err := b.desk.Store.RawOf(context.Background(), refOf(b.kept()))
	if err != nil || len(raw) != 1 || !raw[0].Reason || raw[0].Field != "loss.urine" {
		t.Errorf("kept: %+v (%v)", raw, err)
	}
	apptest.Click(t, b.w, "testsheet.trouble.2.drop") // the first asks about the low rate
	if !strings.HasPrefix(b.titles(), "Urine: 1700") {
		t.Errorf("the reason was taken back: %q", b.titles())
	}
}

// A colour beyond 8 cannot be at all: no reason is asked for.
func TestWhatCannotBeIsNotKept(t *testing.T) {
	b := newSheet(t)
	b.part(PartUrine)
	b.enter("testsheet.urine.colour", "12")
	if b.titles() == "" || apptest.Has(b.w, "testsheet.trouble.1.keep") {
		t.Errorf("%q may be kept: %v", b.titles(), apptest.Has(b.w, "testsheet.trouble.1.keep"))
	}
}
