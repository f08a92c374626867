package athlete

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/field"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
)

// The limit is called agreed with the athlete only where a plan is agreed, and is then
// that of the plan.
func TestLimitIsAgreedOrByRule(t *testing.T) {
	d, _ := apptest.Demo(t)
	v := overview(t, d, "Ravka")
	f, _ := v.file.last()
	if v.file.limit == nil {
		t.Fatal("the agreed plan has no limit")
	}
	agreed := 3.5
	for _, c := range []struct {
		limit *float64
		sex   record.Sex
		want  string
	}{
		{nil, record.Female, "past the limit of 2\u00a0%"}, {v.file.limit, record.Female, "past the 2\u00a0% agreed with her"},
		{v.file.limit, record.Male, "past the 2\u00a0% agreed with him"}, {v.file.limit, "", "past the 2\u00a0% agreed with the athlete"},
		{&agreed, record.Female, "within the 3.5\u00a0% agreed with her"},
	} {
		a := v.file.athlete
		a.Sex = c.sex
		if got := strings.Join(v.sp.summarise(f, a, c.limit).sentences, " "); !strings.Contains(got, c.want) {
			t.Errorf("%q does not say %q", got, c.want)
		}
	}
	bars, _ := v.sp.lastBars(f, &agreed)
	if want := f.DeficitAt(agreed); bars.Limit != want || bars.LimitText != "3.5\u00a0%, agreed" {
		t.Errorf("the limit is drawn at %g as %q, want %g", bars.Limit, bars.LimitText, want)
	}
	if jorun := overview(t, d, "Jorun"); jorun.file.limit != nil {
		t.Error("a limit is called agreed without an agreed plan")
	}
}

// A step that changes food alone says so, on a narrow card too.
func TestFoodAloneIsSaid(t *testing.T) {
	d, _ := apptest.Demo(t)
	v := overview(t, d, "Dorian")
	c, missing := v.agreedCase()
	if missing != "" {
		t.Fatal(missing)
	}
	for slot := plan.Food1; slot.IsFood(); slot++ {
		if c.Slots[slot].Product.Name == "" {
			continue
		}
		var mix plan.Mix
		more := mix
		more[slot] = 0.5
		whole, short := v.sp.changes(c, mix, more)
		if want := "½\u00a0" + v.sp.Words.FoodWithin(c.Slots[slot].Product.ID, c.Slots[slot].Product.Name) + " more"; whole != want || short != want {
			t.Errorf("said %q, in short %q, want %q", whole, short, want)
		}
		return
	}
	t.Fatal("the plan knows no food")
}

// Two drafts of one name are told apart by the day they were begun.
func TestDraftsHaveNames(t *testing.T) {
	d, _ := apptest.Demo(t)
	v := overview(t, d, "Sefa")
	draft := func(id record.ID, name string, day int) record.Plan {
		p := record.Plan{Meta: record.Meta{ID: id, CreatedAt: d.Now().AddDate(0, 0, -day)}, State: record.PlanDraft, Name: name}
		return p
	}
	f := v.file
	f.plans = []record.Plan{draft("1", "Match", 6), draft("2", "Match", 2), draft("3", "Camp", 1)}
	var said []string
	for i := range f.plans {
		said = append(said, v.sp.dueSentence(f, due{kind: dueDraft, plan: &f.plans[i]}))
	}
	for i, want := range []string{"Match, started 12 May", "Match, started 16 May", "Camp"} {
		if !strings.HasSuffix(said[i], ": "+want) {
			t.Errorf("draft %d is %q, want %q", i+1, said[i], want)
		}
	}
}

// The curve says why it is where it is.
func TestCurveHasItsWhy(t *testing.T) {
	d, _ := apptest.Demo(t)
	v := overview(t, d, "Ravka")
	w := apptest.Window(t, v.Body(), 1180, 760, false, 100)
	apptest.Click(t, w, "overview.heat.why")
	top := w.Canvas().Overlays().Top()
	if top == nil || field.Find(top, "heat.why") == nil {
		t.Fatal("no why was opened")
	}
	if all := strings.Join(apptest.Texts(top), " "); !strings.Contains(all, "14 May") {
		t.Errorf("the test is not named in %s", all)
	}
}

// There is one arrow between each two cards beside each other, and none at the end of a
// row.
func TestArrowsStandBetweenCards(t *testing.T) {
	var cards []fyne.CanvasObject
	d, _ := apptest.Demo(t)
	for range 4 {
		cards = append(cards, newStepCard(d.Host, "card", card{}, nil))
	}
	rows := newCardRows(cards)
	for width, want := range map[float32]int{1000: 3, 500: 2, 200: 0} {
		apptest.Window(t, rows, width, 700, false, 100)
		r, _ := rows.CreateRenderer().(*cardRowsRenderer)
		r.Layout(fyne.NewSize(width, 700))
		n := 0
		for _, a := range r.arrows {
			if a.head.Visible() && a.shaft.Visible() {
				n++
			}
		}
		if n != want {
			t.Errorf("at %g px there are %d arrows, want %d", width, n, want)
		}
	}
}
