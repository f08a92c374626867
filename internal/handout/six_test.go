package handout

import (
	"bytes"
	"context"
	"image/png"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"golang.org/x/text/language"
	"pgregory.net/rapid"

	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
	"ebbwell/internal/words/spacing"
)

// printTo is a folder for the pages of the six plans as PDF and PNG, to be looked at; empty
// for none.
func printTo() string { return os.Getenv("EBBWELL_PRINT_TO") }

// kindOfPlan is a plan as practices have them: an athlete of the invented practice, in a
// sport, for so long.
type kindOfPlan struct {
	name, athlete string
	// sport and minutes take the place of the test's; empty and 0 leave it.
	sport   string
	minutes int
	session string
	own     string
	bottles []consult.OwnBottle
	// activity of the session, and what is true of the athlete; empty for what is kept.
	activity string
	flag     record.FlagKind
}

// sixPlans are a break at half-time, stations, food on a long run, a minor whose mass is
// hidden, low sodium in the past, and many changeovers.
func sixPlans() []kindOfPlan {
	return []kindOfPlan{
		{name: "football", athlete: "Dorian"},
		{name: "marathon", athlete: "Jorun", sport: "road-running", minutes: 215, session: "marathon", own: "Cups at every table."},
		{name: "ultra", athlete: "Jorun", sport: "road-running", minutes: 420, own: "I eat better early on.", bottles: []consult.OwnBottle{{Name: "Left flask", Full: 500}, {Name: "Right flask", Full: 500}}},
		{name: "minor", athlete: "Mirel"},
		{name: "low-sodium", athlete: "Ilse", own: "I will not drink ahead of thirst."},
		{name: "tennis", athlete: "Sefa", sport: "tennis", minutes: 180, session: "best-of-three", own: "Every second seat."},
	}
}

// caseOfKind makes the plan and agrees its first step.
func (h house) caseOfKind(t testing.TB, k kindOfPlan) (consult.Case, record.Option) {
	t.Helper()
	if k.own == "" {
		return h.caseOf(t, k.athlete)
	}
	ctx := context.Background()
	a := h.athlete(t, k.athlete)
	tests, err := h.store.Tests(ctx, a.ID)
	if err != nil {
		t.Fatal(err)
	}
	sheet := tests[0]
	for _, one := range tests {
		if one.Session.Date > sheet.Session.Date && one.State == record.TestClosed {
			sheet = one
		}
	}
	if sheet, err = h.store.LoadTest(ctx, sheet.ID); err != nil {
		t.Fatal(err)
	}
	if k.sport != "" {
		a.Sport, sheet.Session.Sport = k.sport, k.sport
	}
	if k.activity != "" {
		sheet.Session.Activity = k.activity
	}
	if k.flag != "" {
		a.Flags = append(a.Flags, record.Flag{Kind: k.flag})
	}
	consult.SetOwnBottles(&a, k.bottles)
	b, err := consult.BasisOf(a, []consult.Findings{consult.Find(sheet, a, nil, h.desk)}, composeDay(), h.desk)
	if err != nil {
		t.Fatal(err)
	}
	p, err := consult.NewPlan(a, b, h.desk, consult.Names{Habit: "Habit", Fluid: "Without food", Food: "With food", Aim: "Aim"}, composeDay())
	if err != nil {
		t.Fatal(err)
	}
	if k.minutes > 0 {
		p.Target.Minutes = record.Num(float64(k.minutes), "min")
	}
	c := h.open(t, p, a, b)
	if k.session != "" {
		c.WithKind(&p, k.session)
	} else if kinds := consult.KindsOf(p.Target.Sport); len(kinds) > 0 {
		c.WithKind(&p, kinds[0].Session)
	}
	c = h.open(t, p, a, b)
	p, _ = c.OfferAnew(p, func(kind record.OptionKind) (plan.Mix, bool) {
		o, ok := consult.OptionOf(p, kind)
		return c.MixOf(o), ok
	})
	return h.agreed(t, p, a, b, k)
}

// agreed agrees the first step of a plan.
func (h house) agreed(t testing.TB, p record.Plan, a record.Athlete, b consult.Basis, k kindOfPlan) (consult.Case, record.Option) {
	t.Helper()
	c := h.open(t, p, a, b)
	habit, _ := consult.OptionOf(p, record.OptionHabit)
	aim, _ := consult.OptionOf(p, record.OptionAim)
	rules := plan.DefaultStepRules()
	p = c.WithLadder(c.Planner.Steps(plan.Climb{
		Length: plan.Expected, Habit: c.MixOf(habit), Aim: c.MixOf(aim), Rules: rules, Start: composeDay(),
	}), rules.Sessions, func(int) string { return "a step" })
	chosen, _ := consult.InForce(p)
	at := composeDay().Add(time.Hour)
	p.State = record.PlanAgreed
	p.Agreement = record.Agreement{
		AgreedAt: &at, AgreedBy: "Ada Fennimoor (invented)", OptionID: chosen.ID, Words: k.own, From: record.DateOf(composeDay()),
		Review: consult.ReviewDay(p, record.DateOf(composeDay())),
	}
	c = h.open(t, p, a, b)
	p = c.WithCarried(p)
	c = h.open(t, p, a, b)
	c.Care = care.Of(a, composeDay())
	chosen, _ = consult.InForce(p)
	return c, chosen
}

// inLanguage is the catalogue of a language.
func inLanguage(t testing.TB, tag language.Tag) *words.Words {
	t.Helper()
	w, err := words.New(tag)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// documentsOf are page, card and bands of a plan in a language.
func (h house) documentsOf(t testing.TB, k kindOfPlan, w *words.Words) map[string]paper.Document {
	t.Helper()
	c, o := h.caseOfKind(t, k)
	p, err := NewPress(w, paper.A4())
	if err != nil {
		t.Fatal(err)
	}
	return map[string]paper.Document{
		"page": p.AthletePage(AthletePageOf(c, o, h.practice, w)), "card": p.KitBagCard(KitBagCardOf(c, o, h.practice, w)),
		"bands": p.BottleBands(BottleBandsOf(c, o, h.practice, w)),
	}
}

// inSession are the texts of the page that are read in the session: between the heading
// and the total. The numbers at the lines of a bottle are left out.
func inSession(t testing.TB, w *words.Words, page paper.Page) []paper.Text {
	t.Helper()
	most, _, _ := strings.Cut(w.Say("handout.during.most", "|"), "|")
	begin, end := 0.0, 0.0
	var list []paper.Text
	for _, m := range page.Marks {
		text, ok := m.(paper.Text)
		switch {
		case !ok:
		case text.Text == w.Say("handout.during.title"):
			begin = text.Y
		case begin > 0 && end == 0 && strings.HasPrefix(text.Text, strings.TrimSpace(unmarked(most))):
			end = text.Y
		}
	}
	if begin == 0 || end <= begin {
		t.Fatalf("no breaks between %g and %g", begin, end)
	}
	for _, m := range page.Marks {
		text, ok := m.(paper.Text)
		if _, err := strconv.Atoi(text.Text); ok && err != nil && text.Y > begin-1 && text.Text != w.Say("handout.during.done") && text.Y < end-0.1 {
			list = append(list, text)
		}
	}
	return list
}

// tenPoints in mm.
const tenPoints = 10 * 25.4 / 72

// checkReadable holds what is read in the session to ten points.
func checkReadable(t *testing.T, name string, w *words.Words, doc paper.Document) {
	t.Helper()
	if len(doc.Pages) != 1 {
		t.Errorf("%s: %d sides", name, len(doc.Pages))
		return
	}
	list := inSession(t, w, doc.Pages[0])
	if len(list) < 3 {
		t.Errorf("%s: only %d texts of breaks", name, len(list))
	}
	for _, text := range list {
		if text.Size < tenPoints-0.001 {
			t.Errorf("%s: %q is %.2f mm high, less than 10 points", name, text.Text, text.Size)
		}
	}
}

// The pages of six kinds of plan are one side in four languages, nothing on them lies on
// another, and what is read in the session has at least ten points.
func TestSixPlansPrint(t *testing.T) {
	h, f := openHouse(t), load(t)
	for _, k := range sixPlans() {
		for _, tag := range words.Languages() {
			w := inLanguage(t, tag)
			for what, doc := range h.documentsOf(t, k, w) {
				name := k.name + "-" + what + "-" + tag.String()
				if what == "page" {
					checkReadable(t, name, w, doc)
				}
				for i, page := range doc.Pages {
					for _, fault := range faults(f, doc.Size, page) {
						t.Errorf("%s, side %d: %s", name, i+1, fault)
					}
					checkSpaces(t, name, tag, page)
					checkJoined(t, name, w, page)
				}
				h.write(t, name, doc)
			}
		}
	}
}

// write writes a document to be looked at, where that is asked for.
func (h house) write(t testing.TB, name string, doc paper.Document) {
	t.Helper()
	if printTo() == "" {
		return
	}
	data, err := doc.PDF(composeDay())
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(printTo(), name+".pdf"), data, 0o600); err != nil {
		t.Fatal(err)
	}
	for i := range doc.Pages {
		img, err := doc.Picture(i, printScale)
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		if err := png.Encode(&out, img); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(printTo(), name+"-"+strconv.Itoa(i+1)+".png"), out.Bytes(), 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

// checkSpaces holds the texts of a side to the spaces of its language.
func checkSpaces(t *testing.T, name string, tag language.Tag, page paper.Page) {
	t.Helper()
	for _, text := range page.Texts() {
		for _, fault := range spacing.Faults(tag, text) {
			t.Errorf("%s: %s in %q", name, fault, text)
		}
	}
}

// checkJoined looks for an amount beside a drink as no language but English and German
// joins them.
func checkJoined(t *testing.T, name string, w *words.Words, page paper.Page) {
	t.Helper()
	bare := regexp.MustCompile(`\d\x{a0}(?:mL|L|fl oz) (?:agua|eau|bebida|boisson)|\bde eau|\bde de\b`)
	capital := "\u00a0mL " + w.Of(w.Food("generic.water", ""))
	if w.Food("generic.water", "") == w.FoodWithin("generic.water", "") {
		capital = "\u00a0mL " + w.Of(w.Say("handout.during.title")) // German begins every noun with a large letter
	}
	for _, text := range page.Texts() {
		if found := bare.FindString(text); found != "" {
			t.Errorf("%s says %q in %q", name, found, text)
		}
		if strings.Contains(text, capital) {
			t.Errorf("%s has a large letter behind an amount: %q", name, text)
		}
	}
}

// printScale is how fine the pictures to look at are, pixels a millimetre.
const printScale = 5

// Any number of breaks is read in ten points or more.
func TestBreaksAreReadable(t *testing.T) {
	w, p := english(t), press(t)
	for _, n := range []int{3, 6, 7, 9, 12, 16, 24, 32} {
		for _, bottles := range []bool{false, true} {
			name := strconv.Itoa(n) + " breaks"
			checkReadable(t, name, w, p.AthletePage(breaks(n, bottles)))
		}
	}
}

// Rows of several breaks come to what their breaks come to, and show the fewest and the
// most mouthfuls of each.
func TestGatheredRowsKeepTheAmounts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 30).Draw(t, "breaks")
		var list []Chance
		for i := range n {
			c := Chance{
				Name: "minute " + strconv.Itoa(15*(i+1)), Mouthfuls: rapid.IntRange(1, 9).Draw(t, "mouthfuls"), Maybe: rapid.IntRange(0, 5).Draw(t, "maybe") == 0,
				Volumes: []quantity.Millilitres{quantity.Millilitres(5 * rapid.IntRange(0, 40).Draw(t, "mL")), quantity.Millilitres(5 * rapid.IntRange(0, 40).Draw(t, "mL"))},
			}
			if rapid.Bool().Draw(t, "food") {
				c.Foods = []Portion{{"fig bar", 0.5}}
			}
			list = append(list, c)
		}
		most := rapid.IntRange(2, 8).Draw(t, "a row")
		before := total(list)
		rows := gathered(joinEqual(list), most)
		if after := total(rows); after != before {
			t.Fatalf("the rows come to %v, the breaks to %v", after, before)
		}
		i := 0
		for _, r := range rows {
			for _, c := range list[i : i+r.times()] {
				if c.Maybe != r.Maybe || c.Mouthfuls > r.Mouthfuls || r.Fewest > c.Mouthfuls {
					t.Fatalf("%+v stands in the row %+v", c, r)
				}
			}
			i += r.times()
		}
		if i != n {
			t.Fatalf("%d breaks in the rows, %d there are", i, n)
		}
	})
}

// total is what breaks come to: mL of two drinks and portions of food.
func total(list []Chance) (sum [3]float64) {
	for _, c := range list {
		times := float64(c.times())
		if c.Together {
			times = 1
		}
		for i, v := range c.Volumes {
			sum[i] += times * float64(v)
		}
		for _, f := range c.Foods {
			sum[2] += times * f.Portions
		}
	}
	return sum
}
