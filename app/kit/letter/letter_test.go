package letter

import (
	"context"
	"regexp"
	"strings"
	"testing"
	"time"

	"golang.org/x/text/language"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/consult"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/sweat"
)

// mostWords is how long a sentence of a letter may be.
const mostWords = 20

// languages are those that letters are written in.
func languages() []language.Tag {
	return []language.Tag{language.English, language.German, language.Spanish, language.French}
}

// of writes the letter of an athlete of the invented practice in a language.
func of(t *testing.T, d *desk.Desk, begins string, tag language.Tag) (Letter, Input) {
	t.Helper()
	other := apptest.ReadsIn(t, d, tag)
	a := apptest.AthleteNamed(t, other, begins)
	tests, err := other.AllFindings(context.Background(), a)
	if err != nil {
		t.Fatal(err)
	}
	var last *consult.Findings
	if len(tests) > 0 {
		last = &tests[0]
	}
	in, err := InputOf(context.Background(), other, a, last)
	if err != nil {
		t.Fatal(err)
	}
	return Of(in), in
}

// part is a part of a letter by its title.
func (l Letter) part(title string) string {
	for _, p := range l.Parts {
		if p.Title == title {
			return strings.ReplaceAll(strings.Join(p.Lines, "\n"), "\u00a0", " ")
		}
	}
	return ""
}

// plain is a text with plain spaces.
func plain(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }

// Every athlete of the invented practice, in every language: what belongs into a letter
// is in it, no sentence is long, and where body mass is hidden nothing tells of it.
func TestLettersOfTheDemo(t *testing.T) {
	d, _ := apptest.Demo(t)
	list, err := d.Store.Athletes(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	tested, planned, hidden := 0, 0, 0
	for _, tag := range languages() {
		for _, line := range list {
			l, in := of(t, d, line.Name, tag)
			where := line.Name + ", " + tag.String()
			holdsForm(t, where, l, in)
			if in.Speaker.By.Hidden || in.Test != nil && in.Test.Care.MassHidden {
				hidden++
				holdsHidden(t, where, l)
			}
			if in.Test != nil && in.Test.Sweat.Fluid.Rate.Ranged {
				tested++
				holdsTest(t, where, l, in)
			}
			if in.Plan != nil {
				planned++
				holdsPlan(t, where, l, in)
			}
		}
	}
	if tested < 20 || planned < 8 || hidden < 4 {
		t.Errorf("only %d letters of tests, %d of plans, %d with hidden mass", tested, planned, hidden)
	}
}

// holdsForm looks whether a letter has its parts, is signed and timed, and reads well.
func holdsForm(t *testing.T, where string, l Letter, in Input) {
	t.Helper()
	say, text := in.Speaker.Say, l.Text()
	for _, title := range []string{"letter.assessment", "letter.own", "letter.agreed", "letter.checked", "letter.signed"} {
		if l.part(say(title)) == "" {
			t.Errorf("%s: nothing under %q", where, say(title))
		}
	}
	if strings.Contains(text, "%!") || strings.Contains(text, "letter.") || strings.Contains(text, "\u00a0") {
		t.Errorf("%s: not worded:\n%s", where, text)
	}
	for what, part := range map[string]string{
		"athlete": in.Athlete.Name, "practitioner": in.Practice.Practitioner, "day": in.Speaker.Words.Date(in.At), "time": in.Speaker.Words.Clock(in.At),
	} {
		if part == "" || !strings.Contains(text, plain(part)) {
			t.Errorf("%s: the %s is missing in\n%s", where, what, text)
		}
	}
	for _, p := range l.Parts {
		for _, sentence := range sentences(p.Lines) {
			if n := words(sentence); n > mostWords {
				t.Errorf("%s: %d words: %q", where, n, sentence)
			}
		}
	}
}

// holdsHidden looks whether a letter tells of body mass.
func holdsHidden(t *testing.T, where string, l Letter) {
	t.Helper()
	telltale := regexp.MustCompile(`(?i)\d\s?(kg|lb|kcal)|[%‰]|\bkg\b|/kg`)
	if found := telltale.FindString(l.Text()); found != "" {
		t.Errorf("%s: body mass is hidden, and %q is told in\n%s", where, found, l.Text())
	}
}

// holdsTest looks whether a letter tells the rate of its test, with its range.
func holdsTest(t *testing.T, where string, l Letter, in Input) {
	t.Helper()
	by, rate := in.Speaker.By, in.Test.Sweat.Fluid.Rate
	by.Hidden = by.Hidden || in.Test.Care.MassHidden
	for _, figure := range []string{by.Found(rate), by.Range(rate)} {
		if !strings.Contains(l.part(in.Speaker.Say("letter.assessment")), plain(figure)) {
			t.Errorf("%s: %s is missing in\n%s", where, figure, l.Text())
		}
	}
}

// holdsPlan looks whether a letter says what was agreed, and keeps the word estimate.
func holdsPlan(t *testing.T, where string, l Letter, in Input) {
	t.Helper()
	c := *in.Plan
	o, _ := consult.InForce(c.Plan)
	q := c.Planner.Evaluate(plan.Expected, c.Carried(o))
	agreed := l.part(in.Speaker.Say("letter.agreed"))
	x, u := q.Deficit.Value, quantity.PerCent
	if c.Care.MassHidden {
		x, u = q.DeficitL.Value, quantity.Litre
	}
	for _, text := range []string{
		in.Speaker.By.Signed(-x, u), in.Speaker.By.Amount(q.Carbohydrate.TotalGH, quantity.GramPerHour), in.Speaker.Words.Date(*c.Plan.Agreement.AgreedAt),
	} {
		if !strings.Contains(agreed, plain(text)) {
			t.Errorf("%s: %q is not in what was agreed:\n%s", where, text, agreed)
		}
	}
	if c.Basis.Kind == record.BasisEstimate && !strings.Contains(l.part(in.Speaker.Say("letter.assessment")), plain(in.Speaker.Say("letter.estimate.range", in.Speaker.Rates(rateOf(c))))) {
		t.Errorf("%s: the estimate is not called one", where)
	}
	if review, ok := c.Plan.Agreement.Review.Time(); ok && !strings.Contains(l.part(in.Speaker.Say("letter.checked")), in.Speaker.Words.Date(review)) {
		t.Errorf("%s: the review is not in what will be checked", where)
	}
}

// sentences are those of some lines.
func sentences(lines []string) []string {
	return regexp.MustCompile(`[.!?]\s+|\n`).Split(strings.Join(lines, "\n"), -1)
}

// words counts the words of a sentence; a number with its unit is one.
func words(sentence string) int {
	n := 0
	for _, w := range strings.Fields(sentence) {
		if strings.ContainsFunc(w, func(r rune) bool { return r >= 'A' }) {
			n++
		}
	}
	return n
}

// A red flag, with what was asked and done about it, stands before everything else; so do
// conditions. Where body mass is hidden the amount is left out.
func TestRedFlagComesFirst(t *testing.T) {
	d, _ := apptest.Demo(t)
	for _, tag := range languages() {
		_, in := of(t, d, "Ravka Oldenmoor", tag)
		told := in.At.Add(-time.Hour)
		in.Test.Sweat.Flags = append(in.Test.Sweat.Flags, sweat.Flag{ID: sweat.FlagGained, Size: 0.4}, sweat.Flag{ID: sweat.FlagOverdrank, Size: 0.3})
		in.Test.Test.Safety = append(in.Test.Test.Safety, record.SafetyNote{Kind: record.SafetyTold, Text: "N. Harbottle", Done: &told})
		say, by := in.Speaker.Say, in.Speaker.By
		l := Of(in)
		first := l.Parts[0]
		if first.Title != say("letter.known") || first.Lines[0] != say("letter.gain", by.Amount(0.4, quantity.Kilogram)) || first.Lines[1] != say("flag.drank-more", by.Amount(0.3, quantity.Litre)) {
			t.Errorf("%s: first is %q: %q", tag, first.Title, first.Lines)
		}
		if !strings.Contains(first.Lines[2], "N. Harbottle") || !strings.Contains(first.Lines[2], in.Speaker.Words.Clock(told)) {
			t.Errorf("%s: who was told, and when, is not in %q", tag, first.Lines[2])
		}
		in.Test.Care.MassHidden = true
		if hidden := Of(in).Parts[0]; hidden.Lines[0] != say("letter.gain.hidden") {
			t.Errorf("%s: hidden, first is %q", tag, hidden.Lines)
		}
	}
	l, _ := of(t, d, "Kester Undermill", language.English)
	if got := l.part("Alerts"); !strings.Contains(got, "Alerts in the profile: high blood pressure") {
		t.Errorf("the conditions read %q", got)
	}
}

// What was typed loses masses where body mass is hidden, and is in quotes.
func TestTypedWordsAreQuoted(t *testing.T) {
	d, _ := apptest.Demo(t)
	_, in := of(t, d, "Ravka Oldenmoor", language.English)
	in.Plan.Plan.Agreement.Words = "I lose 3 kg every time, that is 4 %"
	if got := Of(in).part("In the athlete’s own words"); !strings.Contains(got, "“I lose 3 kg every time, that is 4 %”") {
		t.Errorf("shown: %q", got)
	}
	in.Plan.Care.MassHidden = true
	if got := Of(in).part("In the athlete’s own words"); strings.Contains(got, "3 kg") || strings.Contains(got, "4 %") || !strings.Contains(got, "“I lose") {
		t.Errorf("hidden: %q", got)
	}
}

// Without anything the letter says so: no test, nothing agreed, nothing to check.
func TestLetterOfNothing(t *testing.T) {
	d, _ := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	in, err := InputOf(context.Background(), d, a, nil)
	if err != nil {
		t.Fatal(err)
	}
	text := Of(in).Text()
	for _, part := range []string{"This text is not based on a sweat test.", "Nothing was written down.", "Nothing is agreed yet.", "No check is planned yet."} {
		if !strings.Contains(text, part) {
			t.Errorf("%q is not said in\n%s", part, text)
		}
	}
	in.Lost = true
	if got := Of(in).part("What was agreed"); !strings.Contains(got, "can’t be calculated now") {
		t.Errorf("a plan that is lost: %q", got)
	}
}

// A draft is said to be one, a sheet that is open too.
func TestLetterOfADraft(t *testing.T) {
	d, _ := apptest.Demo(t)
	ctx := context.Background()
	a := apptest.AthleteNamed(t, d, "Ravka Oldenmoor")
	in, err := InputOf(ctx, d, a, nil)
	if err != nil {
		t.Fatal(err)
	}
	in.Plan.Plan.State = record.PlanDraft
	if got := Of(in).part("What was agreed"); !strings.Contains(got, "a draft. Nothing is agreed.") {
		t.Errorf("a draft: %q", got)
	}
	if got := Of(in).part("What will be checked"); got != "No check is planned yet." {
		t.Errorf("of a draft is checked %q", got)
	}
	open := apptest.AthleteNamed(t, d, "Kester Undermill")
	tests, err := d.AllFindings(ctx, open)
	if err != nil {
		t.Fatal(err)
	}
	in, err = InputOf(ctx, d, open, &tests[0])
	if err != nil {
		t.Fatal(err)
	}
	if got := Of(in).part("Assessment"); !strings.Contains(got, "The sheet is still open") || !strings.Contains(got, "No sweat rate") {
		t.Errorf("an open sheet: %q", got)
	}
}

// A plan on an estimate keeps the word, in what it is based on and in what it comes to.
func TestEstimateIsCalledOne(t *testing.T) {
	d, _ := apptest.Demo(t)
	for _, tag := range languages() {
		_, in := of(t, d, "Ravka Oldenmoor", tag)
		in.Plan.Basis.Kind = record.BasisEstimate
		l := Of(in)
		say := in.Speaker.Say
		begin, _, _ := strings.Cut(say("letter.plan.estimate", "|", "", ""), "|")
		if !strings.Contains(l.part(say("letter.agreed")), plain(begin)) || !strings.Contains(l.part(say("letter.assessment")), plain(say("letter.estimate.range", in.Speaker.Rates(rateOf(*in.Plan))))) {
			t.Errorf("%s:\n%s", tag, l.Text())
		}
	}
}

// It is written when it is written, on the practice's clocks.
func TestLetterIsTimed(t *testing.T) {
	d, _ := apptest.Desk(t)
	a := apptest.Athlete(t, d)
	d.Now = func() time.Time { return time.Date(2026, 5, 18, 23, 30, 0, 0, time.FixedZone("", 2*60*60)) }
	p := d.Practice()
	p.Practitioner, p.Registration = "T. Sellwick", "no. 4411"
	if _, err := d.Store.SavePractice(context.Background(), p, store.Edit{}); err != nil {
		t.Fatal(err)
	}
	d.PracticeChanged()
	in, err := InputOf(context.Background(), d, a, nil)
	if err != nil {
		t.Fatal(err)
	}
	if got := Of(in).part("Signed"); !strings.HasPrefix(got, "T. Sellwick, no. 4411") || !strings.Contains(got, "Written on 18 May 2026 at 23:30.") {
		t.Errorf("signed %q", got)
	}
}
