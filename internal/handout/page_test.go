package handout

import (
	"math"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
)

// said is the running text of a page with its line ends taken out.
func said(page paper.Page) string {
	return strings.Join(page.Texts(), " ")
}

// all is the running text of a document.
func all(d paper.Document) string {
	var parts []string
	for _, page := range d.Pages {
		parts = append(parts, said(page))
	}
	return strings.Join(parts, " ")
}

func TestSafetySentencesOnEverySideOfEveryPage(t *testing.T) {
	w := english(t)
	for name, doc := range documents(t) {
		number := practice().Emergency
		if name == "page-empty" {
			number = ""
		}
		sentences, most := SafetySentences(w, number), 8
		if strings.HasPrefix(name, "card") {
			sentences, most = cardSentences(w, number), 7
		}
		if len(sentences) != most {
			t.Fatalf("%d safety sentences, want %d", len(sentences), most)
		}
		for i, page := range doc.Pages {
			text := said(page)
			for _, s := range sentences {
				if !strings.Contains(text, s) {
					t.Errorf("%s, side %d: %q is not there", name, i+1, s)
				}
			}
		}
	}
}

// A report with its appendix has the safety box once, on its first side.
func TestReportHasTheSafetyBoxOnce(t *testing.T) {
	r := report()
	r.Appendix = true
	for range 40 {
		r.Findings = append(r.Findings, r.Findings[0])
	}
	doc := press(t).TestReport(r)
	if len(doc.Pages) < 2 {
		t.Fatal("the appendix is on the first side: this test cannot fail")
	}
	title := plainSentences([]string{english(t).Say("handout.report.passed")})[0]
	if n := strings.Count(all(doc), title); n != 1 || !strings.Contains(said(doc.Pages[0]), title) {
		t.Errorf("the box stands %d times", n)
	}
}

// The bar of a report speaks of the athlete, not to them, with their own estimate.
func TestReportBarSpeaksOfTheAthlete(t *testing.T) {
	r := report()
	r.Guess = 0.8
	text := all(press(t).TestReport(r))
	if strings.Contains(text, "you lost") || !strings.Contains(text, "sweat 2.01\u00a0L") || !strings.Contains(text, "own estimate of sweat loss: 0.80\u00a0L") {
		t.Errorf("the report says %s", text)
	}
}

// TestSafetyWords holds the sentences against what has to be told, so that a
// change of wording cannot drop a part of it.
func TestSafetyWords(t *testing.T) {
	text := strings.ToLower(strings.Join(SafetySentences(english(t), "112"), " "))
	for _, must := range []string{
		"qualified practitioner", "not a diagnosis", "thirst", "never above", "need not finish",
		"stop drinking", "medic", "responsible adult", "heavier than before", "bloated", "feeling sick", "vomiting", "headache",
		"confused", "fit", "collapse", "call 112", "cold water at once", "nothing by mouth",
		"ibuprofen", "unless prescribed", "local rules", "medical advice", "only if you are lighter",
	} {
		if !strings.Contains(text, must) {
			t.Errorf("the safety sentences do not say %q", must)
		}
	}
	if strings.Contains(all(press(t).AthletePage(match()))+text, "safe ") {
		t.Error("the word safe is used")
	}
}

// revealing is written apart from the code that hides: any sign of mass.
var revealing = regexp.MustCompile(`(?i)%|\bper cent\b|\d\s*kgs?\b|\bkgs?\b|kilogram|\bkilos?\b|/kg|\blbs?\b|\bpounds?\b|kcal|calorie|\bbmi\b`)

func TestHiddenMassShowsLitresOnly(t *testing.T) {
	for name, doc := range documents(t) {
		if !strings.Contains(name, "hidden") && !strings.Contains(name, "minor") || strings.HasPrefix(name, "blank-sheet") {
			// The blank sheet is for the one who weighs; it holds no value.
			continue
		}
		for i, page := range doc.Pages {
			if found := revealing.FindAllString(said(page), -1); found != nil {
				t.Errorf("%s, side %d speaks of %q", name, i+1, found)
			}
		}
		if found := revealing.FindAllString(doc.Title+doc.Subject+doc.Author, -1); found != nil {
			t.Errorf("%s: the file's description speaks of %q", name, found)
		}
	}
}

// TestHiddenMassIsNotInThePage prints the same page for athletes of several
// masses: when nothing on it depends on the mass, it is the same page.
func TestHiddenMassIsNotInThePage(t *testing.T) {
	p := press(t)
	light, heavy := hidden(), hidden()
	for i := range heavy.Bars {
		d := &heavy.Bars[i].Deficit
		d.Percent *= 0.6
		d.PercentRange = quantity.Range{Low: d.PercentRange.Low * 0.6, High: d.PercentRange.High * 0.6}
	}
	heavy.After.PerKilogram = quantity.Range{Low: 1, High: 2}
	heavy.Before.Early, heavy.Before.Late = 310, 290
	if !reflect.DeepEqual(p.AthletePage(light).Pages, p.AthletePage(heavy).Pages) {
		t.Error("the page of a hidden mass differs with the mass")
	}
	light.Terms.MassHidden, heavy.Terms.MassHidden = false, false
	if reflect.DeepEqual(p.AthletePage(light).Pages, p.AthletePage(heavy).Pages) {
		t.Error("the page of a shown mass does not differ with the mass: this test cannot fail")
	}
}

func TestTypedTextsLoseMassVisibly(t *testing.T) {
	p := press(t)
	a := p.amounts(Terms{MassHidden: true})
	hide := a.say.Say("handout.concealed")
	for _, c := range []struct{ in, want string }{
		{"at 61,5 kg", "at " + hide},
		{"60kg again", hide + " again"},
		{"75.4\u00a0kg", hide},
		{"2 % down", hide + " down"},
		{"3 mL/kg", hide},
		{"kilos to go", hide + " to go"},
		{"12 stone", hide},
		{"135 lbs, 300 kcal", hide + ", " + hide},
		{"BMI 21", hide},
		{"1st quarter, 400 m, 0.75 L, 20 kilometres", "1st quarter, 400 m, 0.75 L, 20 kilometres"},
	} {
		if got := a.typed(c.in); got != c.want {
			t.Errorf("%q became %q, want %q", c.in, got, c.want)
		}
		if got := p.amounts(Terms{}).typed(c.in); got != c.in {
			t.Errorf("%q was changed to %q though mass is shown", c.in, got)
		}
	}
	if got := a.packed("12 servings, 0,5 kg"); got != "12 servings, 500\u00a0g" {
		t.Errorf("powder to pack became %q", got)
	}
	if got := a.product("sports drink 6 %"); got != "sports drink (6\u00a0g in 100\u00a0mL)" {
		t.Errorf("a strength became %q", got)
	}
}

func TestEstimateIsNamedWithItsRange(t *testing.T) {
	p := press(t)
	for name, doc := range map[string]paper.Document{
		"page": p.AthletePage(estimate()), "trip": p.TripPage(trip()),
	} {
		text := all(doc)
		if !strings.Contains(text, "estimate") || !regexp.MustCompile(`1\.(90 to [23]\.\d\d|2 to 2\.0)\x{00a0}L`).MatchString(text) {
			t.Errorf("%s: an estimate without its name or range: %s", name, text)
		}
	}
	if text := all(p.KitBagCard(card(estimate()))); !strings.Contains(text, "estimate") {
		t.Error("the card does not say that the plan based on an estimate")
	}
	lone := estimate()
	lone.Basis.Ranged = false
	if text := all(p.AthletePage(lone)); !strings.Contains(text, "range is not known") {
		t.Error("an estimate without a range is not said to have none")
	}
	if strings.Contains(all(p.AthletePage(match())), "estimate") {
		t.Error("a measured loss is called an estimate")
	}
}

func TestSaltIsWithheld(t *testing.T) {
	p := press(t)
	a := match()
	if !strings.Contains(all(p.AthletePage(a)), "salty food") {
		t.Fatal("the page does not speak of salty food at all: this test cannot fail")
	}
	a.Terms.SaltWithheld = true
	if strings.Contains(all(p.AthletePage(a)), "salty") {
		t.Error("salty food is advised though salt is withheld")
	}
}

func TestExtraFluidOnlyWhenLighter(t *testing.T) {
	p := press(t)
	for _, c := range []struct {
		name  string
		after After
		terms Terms
		want  string
	}{
		{"soon", After{Soon: true, PerKilogram: quantity.Range{Low: 1.25, High: 1.5}}, Terms{}, "If you are lighter, with another session within a day: 1.25 to 1.5\u00a0L for each kilogram"},
		{"soon, US", After{Soon: true, PerKilogram: quantity.Range{Low: 1.25, High: 1.5}}, Terms{USUnits: true}, "19 to 23\u00a0fl\u00a0oz for each pound"},
		{"large", After{Large: true, PerKilogram: quantity.Range{Low: 1.25, High: 1.5}}, Terms{}, "If you are lighter: 1.25 to 1.5\u00a0L for each kilogram, over the rest of the day."},
		{"large, hidden", After{Large: true, Extra: quantity.Range{Low: 1.69, High: 2.03}}, Terms{MassHidden: true}, "you are lighter. Then at most 2.03\u00a0L, over the rest"},
		{"later", After{}, Terms{}, "Extra drink only if you are lighter than before."},
		{"hidden", After{Soon: true, Extra: quantity.Range{Low: 1.69, High: 2.03}}, Terms{MassHidden: true}, "at most 2.03\u00a0L"},
		{"hidden, later", After{}, Terms{MassHidden: true}, "the person who weighed you says you are lighter."},
	} {
		text := p.afterText(c.after, p.amounts(c.terms))
		if !strings.Contains(text, c.want) || !strings.Contains(text, "Same weight or heavier: nothing extra.") {
			t.Errorf("%s: %q", c.name, text)
		}
	}
}

func TestGainIsARedFlag(t *testing.T) {
	p := press(t)
	if text := all(p.AthletePage(gain())); !strings.Contains(text, "you took in more than you lost") || strings.Contains(text, "During") || strings.Contains(text, "In your bag") {
		t.Errorf("a gain is not said: %s", text)
	}
	over := match()
	over.Bars[1].Parts[0].Litres = 2.4
	if text := all(p.AthletePage(over)); !strings.Contains(text, "more than you are likely to lose") {
		t.Error("a plan above the loss is not said")
	}
	if text := all(p.AthletePage(match())); strings.Contains(text, "more than you") {
		t.Error("a gain is said where there is none")
	}
}

func TestCautionsStandOnTheFirstSide(t *testing.T) {
	p := press(t)
	a := twoSides()
	a.Terms.Cautions = []string{"Ask Dr Invented before you use this plan."}
	for name, doc := range map[string]paper.Document{
		"page": p.AthletePage(a), "card": p.KitBagCard(card(a)),
		"blank": p.BlankSheet(BlankSheet{Terms: a.Terms}), "report": p.TestReport(TestReport{Terms: a.Terms}), "trip": p.TripPage(TripPage{Terms: a.Terms}),
	} {
		if !strings.Contains(said(doc.Pages[0]), a.Terms.Cautions[0]) {
			t.Errorf("%s: the caution of the profile is not on the first side", name)
		}
	}
}

func TestLongNamesAreNotLost(t *testing.T) {
	p := press(t)
	a := match()
	a.Heading.Athlete = "Wilhelmina-Konstantinopolitana Featherstonehaugh-Oldenmoor R"
	if n := len(a.Heading.Athlete); n != 60 {
		t.Fatalf("the long name has %d characters", n)
	}
	for name, doc := range map[string]paper.Document{"page": p.AthletePage(a), "card": p.KitBagCard(card(a))} {
		if joined := strings.ReplaceAll(all(doc), " ", ""); !strings.Contains(joined, strings.ReplaceAll(a.Heading.Athlete, " ", "")) {
			t.Errorf("%s: the name of 60 characters is not whole", name)
		}
	}
	a.Heading.Athlete = "Jo 🏑"
	if text := all(p.AthletePage(a)); !strings.Contains(text, "Jo "+paper.Lacking) {
		t.Error("a sign that the typeface lacks leaves no trace")
	}
}

func TestReportCanBeCalculatedAgain(t *testing.T) {
	with := report()
	with.Appendix = true
	if text := all(press(t).TestReport(report())); strings.Contains(text, "±") || strings.Contains(text, "where ") || !strings.Contains(text, "J Sports Sci 34:358") || !strings.Contains(text, "Other losses") {
		t.Errorf("without the appendix the report says %q", text)
	}
	text := all(press(t).TestReport(with))
	for _, must := range []string{"sweat rate = 1.27 ± 0.036\u00a0L/h", "= 38.1 ± 7.1\u00a0mmol/L", "sweat rate × ", "J Sports Sci 34:358", "710–1520", "1110\u00a0mg/h"} {
		if !strings.Contains(text, must) {
			t.Errorf("the report does not say %q in %q", must, text)
		}
	}
	missing := all(press(t).TestReport(noSodium()))
	if !strings.Contains(missing, "not known") || !strings.Contains(missing, "provisional") {
		t.Error("a missing sodium or a provisional rate is not said")
	}
}

func TestSignificantDigits(t *testing.T) {
	p := press(t)
	for _, c := range []struct {
		x    float64
		want string
	}{{1.358, "1.358"}, {38.1, "38.1"}, {64, "64"}, {0.0167, "0.0167"}, {22.99, "22.99"}, {1189.6, "1190"}, {-2.5, "−2.5"}, {0, "0"}, {math.NaN(), "NaN"}, {0.00001234, "0.00001234"}} {
		if got := p.significant(c.x); got != c.want {
			t.Errorf("%g became %q, want %q", c.x, got, c.want)
		}
	}
}

func TestNoTextIsAKey(t *testing.T) {
	for name, doc := range documents(t) {
		for _, page := range doc.Pages {
			for _, s := range page.Texts() {
				if strings.Contains(s, "handout.") || strings.Contains(s, "%!") {
					t.Errorf("%s: %q is not a text", name, s)
				}
			}
		}
	}
}

// TestPagesAreTidy looks for text off the sheet and for text on text.
func TestPagesAreTidy(t *testing.T) {
	f, err := paper.Load()
	if err != nil {
		t.Fatal(err)
	}
	for name, doc := range documents(t) {
		for i, page := range doc.Pages {
			for _, fault := range faults(f, doc.Size, page) {
				t.Errorf("%s, side %d: %s", name, i+1, fault)
			}
		}
	}
}

// faults lists texts that leave the sheet or lie on one another.
func faults(f *paper.Faces, size paper.Size, page paper.Page) []string {
	type area struct {
		paper.Text
		right, top, bottom float64
	}
	var list []string
	var areas []area
	for _, m := range page.Marks {
		text, ok := m.(paper.Text)
		if !ok {
			continue
		}
		st := paper.Style{Size: text.Size, Weight: text.Weight}
		a := area{text, text.X + f.Width(st, text.Text), text.Y - 0.7*text.Size, text.Y + 0.2*text.Size}
		if a.X < 0 || a.top < 0 || a.right > size.Width || a.bottom > size.Height {
			list = append(list, "off the sheet: "+text.Text)
		}
		for _, b := range areas {
			if a.X < b.right && b.X < a.right && a.top < b.bottom && b.top < a.bottom {
				list = append(list, "one on another: "+a.Text.Text+" / "+b.Text.Text)
			}
		}
		areas = append(areas, a)
	}
	return list
}

// Names in any script: the page prints the letters it has, says what the sign for the
// others means, and lists them; nothing on it is a letter that cannot be drawn.
func TestNamesInAnyScript(t *testing.T) {
	p := press(t)
	lacking := p.say.Say("handout.lacking", paper.Lacking)
	for name, want := range map[string]struct{ printed, lacks string }{
		"Ελένη Παπαδάκη": {"Ελένη Παπαδάκη", ""},
		"Юлія Ґалаґан":   {"Юлія Ґалаґан", ""},
		"Nguyễn Thị Ánh": {"Nguyễn Thị Ánh", ""},
		"王 Wei":          {"… Wei", "王"},
		"王伟":             {"…", "王伟"},
		"سلمى Haddad":    {"… Haddad", "سلمى"},
		"שלום Cohen":     {"… Cohen", "שלום"},
		"देव Sharma":     {"… Sharma", "देव"},
		"ქეთი":           {"…", "ქეთი"},
		"Jo 🏑":           {"Jo …", "🏑"},
	} {
		a, band, trip := match(), BottleBands{Terms: Terms{Practice: practice()}, Athlete: name}, TripPage{Terms: Terms{Practice: practice()}, Athlete: name}
		a.Heading.Athlete = name
		for kind, doc := range map[string]paper.Document{"page": p.AthletePage(a), "card": p.KitBagCard(card(a)), "bands": p.BottleBands(band), "trip": p.TripPage(trip)} {
			text := all(doc)
			if !strings.Contains(text, want.printed) {
				t.Errorf("%s of %s does not print %q", kind, name, want.printed)
			}
			if got := strings.Join(doc.Lacks, ""); got != want.lacks {
				t.Errorf("%s of %s lacks %q", kind, name, got)
			}
			if says := strings.Contains(text, lacking); says != (want.lacks != "") {
				t.Errorf("%s of %s says that letters are lacking: %v", kind, name, says)
			}
			if strings.ContainsAny(text, want.lacks+"\uFFFD") {
				t.Errorf("%s of %s prints what it cannot draw", kind, name)
			}
		}
	}
}
