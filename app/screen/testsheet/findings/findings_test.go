package findings

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"ebbwell/app/kit/amount"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// everything is all that is said about a sheet, in one text.
func everything(sp speaker, in Input) string {
	var b strings.Builder
	add := func(list ...string) {
		for _, s := range list {
			b.WriteString(s + "\n")
		}
	}
	for _, r := range Rows(sp.Speaker, in) {
		w := sp.explain(r, in)
		add(r.Name, r.Found, r.Range, r.Beside, w.Figure, w.Sure, w.Formula.Words, w.Formula.Numbers)
		for _, l := range w.Formula.Inputs {
			add(l.Name, l.Value)
		}
		add(w.Notes...)
		add(w.Places...)
		add(w.Parts...)
		add(w.Narrower...)
	}
	for _, c := range sp.cautions(in) {
		add(c.Title, c.Sentence)
	}
	d := sp.bars(in)
	add(d.EstimateText, d.LimitText, d.Summary)
	for _, w := range []struct{ Name, Title, Note string }{d.OutWords, d.InWords, d.LeftWords} {
		add(w.Name, w.Title, w.Note)
	}
	return b.String()
}

// Where body mass is hidden nothing leads back to it: no kilogram, nothing per
// kilogram, no per cent of it, no energy, none of the weighings.
func TestHiddenMassIsLitresOnly(t *testing.T) {
	w := english(t)
	hidden := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w, Hidden: true}}}
	shownToo := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w}}}
	gained := whole()
	for i := range gained.Weighings {
		if gained.Weighings[i].Moment == record.After {
			gained.Weighings[i].Mass = record.Num(64.2, quantity.Kilogram)
		}
	}
	for name, test := range map[string]record.Test{"loss": whole(), "gain": gained} {
		in := inputOf(t, test)
		text, open := everything(hidden, in), everything(shownToo, in)
		for _, sign := range []string{"kg", "kcal", "mL/kg", "64.0", "62.4", "63.4", "−2.", "2 %", "lb"} {
			if strings.Contains(text, sign) {
				at := strings.Index(text, sign)
				t.Errorf("%s: %q is shown: … %q …", name, sign, text[max(0, at-60):min(len(text), at+20)])
			}
		}
		if strings.Contains(text, "mmol/L, up to about") {
			t.Errorf("%s: a predicted blood sodium is shown, and with it the body water", name)
		}
		if !strings.Contains(open, "kg") {
			t.Errorf("%s: the check cannot fail: there is no kg where mass is not hidden", name)
		}
		if name == "gain" && !strings.Contains(open, "mmol/L, up to about") {
			t.Error("the check cannot fail: there is no predicted blood sodium where mass is not hidden")
		}
	}
}

func TestRedFlagsComeFirst(t *testing.T) {
	w := english(t)
	sp := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w}}}
	gained := whole()
	for i := range gained.Weighings {
		if gained.Weighings[i].Moment == record.After {
			gained.Weighings[i].Mass = record.Num(64.2, quantity.Kilogram)
		}
	}
	in := inputOf(t, gained)
	list := sp.cautions(in)
	if len(list) < 3 || !strings.Contains(list[0].Title, "heavier after than before") || !strings.Contains(list[0].Sentence, "No more to drink") {
		t.Fatalf("cautions %q", list)
	}
	last := list[len(list)-1]
	if last.Title != "Blood sodium, predicted" || !strings.HasPrefix(last.Sentence, "An estimate: −") || !strings.Contains(last.Sentence, "never a diagnosis") {
		t.Errorf("the prediction reads %q", last)
	}
	if list := sp.cautions(inputOf(t, whole())); len(list) != 0 {
		t.Errorf("a loss of mass has cautions %q", list)
	}
	minor := inputOf(t, gained)
	minor.Athlete.Born = "2011-01-01"
	for _, c := range sp.cautions(minor) {
		if strings.Contains(c.Sentence, "An estimate:") {
			t.Errorf("a minor gets a figure: %q", c.Sentence)
		}
	}
}

// What nobody knows the contents of is named, once: it counts as nothing.
func TestWhatIsNotCountedIsSaid(t *testing.T) {
	w := english(t)
	sp := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w}}}
	test := whole()
	for _, name := range []string{"Team mate's bottle", "", "Team mate's bottle"} {
		test.Bottles = append(test.Bottles, record.Bottle{Name: name, Use: record.UseDrunk, Before: record.Num(600, quantity.Gram), After: record.Num(500, quantity.Gram)})
	}
	test.Foods = append(test.Foods, record.FoodEaten{Name: "Cake", Mass: record.Num(40, quantity.Gram)})
	in := inputOf(t, test)
	list := sp.cautions(in)
	if len(list) != 1 || list[0].Title != "Counted as zero" || !strings.Contains(list[0].Sentence, "Team mate's bottle, something unnamed and Cake") {
		t.Fatalf("cautions %q", list)
	}
	if f := in.Findings.Intake.CarbohydrateRate; f.Ranged {
		t.Error("the carbohydrate has a range though a part of it is not known")
	}
	if list := sp.cautions(inputOf(t, whole())); len(list) != 0 {
		t.Errorf("a sheet of known drinks has cautions %q", list)
	}
}

// Advice about salt is withheld where the profile asks for it.
func TestSaltWithheld(t *testing.T) {
	w := english(t)
	in := inputOf(t, whole())
	in.Findings.Care.WithholdSalt = []record.FlagKind{record.FlagKidney}
	sp := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w}}}
	if text := everything(sp, in); strings.Contains(text, "sodium matters here") || strings.Contains(text, "hold blood sodium") {
		t.Errorf("salt is advised:\n%s", text)
	}
	open := inputOf(t, whole())
	if text := everything(sp, open); !strings.Contains(text, "sodium matters here") {
		t.Error("the check cannot fail: nothing is said where it may be")
	}
}

func TestCompareInWords(t *testing.T) {
	w := english(t)
	sp := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w}}}
	now := inputOf(t, whole())
	cool := whole()
	cool.Air.Temperature = record.Num(19, quantity.DegreeCelsius)
	for i := range cool.Weighings {
		if cool.Weighings[i].Moment == record.After {
			cool.Weighings[i].Mass = record.Num(63.5, quantity.Kilogram)
		}
	}
	cool.Patches = cool.Patches[:1]
	lines := sp.compare(now, Other{"then", inputOf(t, cool).Findings})
	text := strings.Join(lines, "\n")
	if len(lines) != 4 || !strings.HasPrefix(lines[0], "Then 19.0\u00a0°C, 45\u00a0% and effort 8, now 27.0\u00a0°C") {
		t.Errorf("air: %q", lines)
	}
	for _, part := range []string{"Sweat rate: ", " higher, a real difference (real from ", "Weaker: patches at other sites."} {
		if !strings.Contains(text, part) {
			t.Errorf("%q is not said in\n%s", part, text)
		}
	}
	if same := sp.compare(now, Other{"same", now.Findings}); same[1] != "Sweat rate: the same." {
		t.Errorf("the same test reads %q", same[1])
	}
}

func TestPlacesInAGroup(t *testing.T) {
	w := english(t)
	sp := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w}}}
	g := sweat.GroupsFor(evidence.RateMeasure, "")[0]
	for below, want := range map[float64][2]string{
		0.005: {"less than nearly all of 506 athletes", "less than nearly all of 506 athletes"},
		0.03:  {"less than 19 in 20 of 506 athletes", "about 1 in 20 of 506 athletes lost less"},
		0.22:  {"less than about 8 in 10 of 506 athletes", "about 2 in 10 of 506 athletes lost less"},
		0.52:  {"near the middle of 506 athletes", "about 5 in 10 of 506 athletes lost less"},
		0.68:  {"more than about 7 in 10 of 506 athletes", "about 7 in 10 of 506 athletes lost less"},
		0.90:  {"more than about 9 in 10 of 506 athletes", "about 9 in 10 of 506 athletes lost less"},
		0.97:  {"more than 19 in 20 of 506 athletes", "about 19 in 20 of 506 athletes lost less"},
		0.999: {"more than nearly all of 506 athletes", "more than nearly all of 506 athletes"},
	} {
		p := sweat.Place{Group: g, Below: below}
		if got := sp.firstPlace([]sweat.Place{p}); got != want[0] {
			t.Errorf("%g: got %q, want %q", below, got, want[0])
		}
		if got := sp.place(p); got != want[1] {
			t.Errorf("%g in full: got %q, want %q", below, got, want[1])
		}
	}
}

func TestAnEmptySheetSaysWhatIsMissing(t *testing.T) {
	w := english(t)
	sp := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w}}}
	in := inputOf(t, record.Test{State: record.TestOpen})
	rows := Rows(sp.Speaker, in)
	if len(rows) < 3 || rows[0].Found != "missing" {
		t.Errorf("rows of an empty sheet: %+v", rows)
	}
	if list := sp.lacking(in); len(list) < 4 {
		t.Errorf("missing: %q", list)
	}
	sp.explain(rows[0], in)
	sp.bars(in)
}

// Where more was drunk than lost the sentence on blood sodium says how far it is expected
// to fall and to what: one from the other is what it stood at before, 140 mmol/L where it
// was not measured; and what is said is the change that was worked out.
func TestFallOfBloodSodiumIsSaid(t *testing.T) {
	w := english(t)
	sp := speaker{amount.Speaker{Words: w, By: amount.Writer{Words: w}}}
	falls := map[string]float64{}
	for _, kg := range []float64{64.1, 64.2} {
		in := inputOf(t, massAfter(kg))
		got, ok := consult.OverDrinking(in.Findings, in.Athlete)
		if !ok || !got.Plasma.Known {
			t.Fatalf("%g kg after: no prediction", kg)
		}
		c, _ := sp.plasma(in)
		var fall, to float64
		text := strings.NewReplacer("\u2212", "-", "\u00a0", " ").Replace(c.Sentence)
		if n, err := fmt.Sscanf(text, "An estimate: %f mmol/L, up to about %f mmol/L", &fall, &to); n != 2 {
			t.Fatalf("%q: %v", text, err)
		}
		if fall >= 0 || math.Abs(fall-got.Change) > 0.051 || math.Abs(to-fall-140) > 0.6 {
			t.Errorf("%g kg after: says %g to %g, worked out %g to %g", kg, fall, to, got.Change, got.Plasma.Value)
		}
		falls[fmt.Sprint(kg)] = fall
	}
	if falls["64.2"] >= falls["64.1"] {
		t.Errorf("more drunk, and it falls no further: %v", falls)
	}
}
