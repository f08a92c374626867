package breaks

import (
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/bind"
	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/screen/planner/part"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// chanceRows is a row for each chance to drink: its name, when and how long,
// what it allows, and what is taken there.
type chanceRows struct {
	v     *part.Plan
	ids   []record.ID
	taken []*look.OneOf
	// numbers are the places of the chances in the picture above.
	numbers []*look.Label
	// removes are the links that take a chance out.
	removes []*field.Link
	rows    *fyne.Container
	box     *fyne.Container
}

// newChanceSeconds is how long a chance is when it is added, to be changed.
const newChanceSeconds = 60

// groupChances is the group of the fields of the rows.
const groupChances = "chances"

func chanceColumns(say func(string, ...any) string) []look.Column {
	return []look.Column{
		{Title: "", Width: look.Fixed(18)},
		{Title: say("planner.chance.name"), Width: look.Share(3).AtMost(190)},
		{Title: say("planner.chance.minute"), Width: look.Fixed(86)},
		{Title: say("planner.chance.seconds"), Width: look.Fixed(86)},
		{Title: say("planner.chance.eat"), Width: look.Fixed(64)},
		{Title: say("planner.chance.maybe"), Width: look.Fixed(92)},
		{Title: say("planner.chance.set"), Width: look.Fixed(86)},
		{Title: say("planner.chance.take"), Width: look.Share(4)},
		{Title: "", Width: look.Fixed(64)},
	}
}

// chanceFold sets name and what is taken above the fields where one line is too narrow for
// all of them.
func chanceFold() look.Fold { return look.Fold{Below: 760, First: []int{0, 1, 7, 8}} }

func newChanceRows(v *part.Plan) *chanceRows {
	r := &chanceRows{v: v, rows: look.VBox(0)}
	r.box = look.VBox(0, look.FoldHeader(10, chanceColumns(v.Speaker.Say), chanceFold()), r.rows)
	return r
}

// Open shows the chances; the rows are made anew when there are others.
func (r *chanceRows) Open() {
	var ids []record.ID
	for _, c := range r.v.Now.Plan.Chances {
		ids = append(ids, c.ID)
	}
	if !slices.Equal(ids, r.ids) {
		r.ids = ids
		r.make()
	}
	for _, link := range r.removes {
		look.ShowIf(link, r.v.Now.Draft())
	}
	look.ShowIf(r.box, len(ids) > 0)
}

// make builds the rows.
func (r *chanceRows) make() {
	v := r.v
	v.Binder.Drop(groupChances)
	r.rows.Objects, r.taken, r.removes, r.numbers = nil, nil, nil, nil
	for i, id := range r.ids {
		name := "planner.chance." + strconv.Itoa(i+1)
		what := v.Binder.Suggest(groupChances, name+".name", func(text string) []field.Option { return chanceMatches(v, text) }, func(p record.Plan) field.Option {
			code := chanceAt(&p, id).Name
			return field.Option{Key: code, Text: desk.ChanceWord(v.Desk.Words, code)}
		}, func(p *record.Plan, o field.Option) { chanceAt(p, id).Name = keyOf(o) })
		minute := v.Binder.Number(groupChances, name+".minute", "", quantity.Minute, chanceNumber(id, "atMinute", func(c *record.Chance) *record.Number { return &c.AtMinute }))
		minute.SetDecimals(0)
		seconds := v.Binder.Number(groupChances, name+".seconds", "", quantity.Second, chanceNumber(id, "seconds", func(c *record.Chance) *record.Number { return &c.Seconds }))
		eat := v.Binder.Check(groupChances, name+".eat", "", func(p record.Plan) bool { return chanceAt(&p, id).CanEat },
			func(s *part.Sheet, on bool) { chanceAt(&s.Record, id).CanEat = on })
		eat.SetSpoken(v.Speaker.Say("planner.chance.eat"))
		maybe := v.Binder.Check(groupChances, name+".maybe", "", func(p record.Plan) bool { return chanceAt(&p, id).Maybe },
			func(s *part.Sheet, on bool) { chanceAt(&s.Record, id).Maybe = on })
		maybe.SetSpoken(v.Speaker.Say("planner.chance.maybe"))
		set := v.Binder.Number(groupChances, name+".amount", evidence.PouredVolume, quantity.Millilitre, chanceNumber(id, "amount", func(c *record.Chance) *record.Number { return &c.Amount }))
		set.SetDecimals(0)
		taken := look.NewOneOf(look.Body)
		r.taken = append(r.taken, taken)
		remove := field.NewLink(v.Desk.Host, name+".remove", v.Speaker.Say("planner.remove"), func() { r.remove(id) })
		r.removes = append(r.removes, remove)
		number := look.NewLabel("", look.Body, look.Ink2)
		r.numbers = append(r.numbers, number)
		r.rows.Add(look.FoldRow(10, chanceColumns(v.Speaker.Say), chanceFold(), number, what, minute, seconds, eat, maybe, set, taken, remove))
	}
	r.rows.Refresh()
}

// chanceNumber is the place of a number of a chance.
func chanceNumber(id record.ID, path string, of func(c *record.Chance) *record.Number) bind.NumberAt[record.Plan] {
	return func(p *record.Plan, _ bool) (*record.Number, string) {
		return of(chanceAt(p, id)), "chances." + string(id) + "." + path
	}
}

// keyOf is what is kept of a match or a typed text.
func keyOf(o field.Option) string {
	if o.Key != "" {
		return o.Key
	}
	return o.Text
}

// Follow shows what is taken at each chance. A chance outside the session, or
// whose minute cannot be read, has nothing.
func (r *chanceRows) Follow() {
	v := r.v
	used := make([]bool, len(v.Live.Take.Takes))
	for i, id := range r.ids {
		texts := []string{v.Speaker.Say("planner.chance.outside")}
		at := slices.IndexFunc(v.Live.Take.Takes, func(t plan.Take) bool { return sameChance(t.Chance, *chanceAt(&v.Now.Plan, id)) })
		for at >= 0 && at < len(used) && used[at] && at+1 < len(used) && v.Live.Take.Takes[at+1].Chance == v.Live.Take.Takes[at].Chance {
			at++
		}
		number := ""
		if at >= 0 {
			used[at], number = true, strconv.Itoa(at+1)
			texts = takeTexts(v.Speaker, v.Now, v.Live.Take.Takes[at])
		}
		r.numbers[i].SetText(number)
		r.taken[i].SetTexts(texts...)
	}
}

// sameChance reports whether a chance as calculated is one as kept.
func sameChance(a plan.Chance, b record.Chance) bool {
	return a.Code == b.Name && a.Minute == b.AtMinute.Or(0) && a.Seconds == b.Seconds.Or(0) && a.CanEat == b.CanEat && (a.Certainty != plan.Certain) == b.Maybe
}

// chanceMatches are the words of the table that hold a text.
func chanceMatches(v *part.Plan, text string) []field.Option {
	var list []field.Option
	for _, key := range v.Desk.Words.Keys() {
		code, ok := strings.CutPrefix(key, "chance.")
		if ok {
			list = append(list, field.Option{Key: code, Text: v.Speaker.Say(key)})
		}
	}
	return field.Matching(list, text)
}

// add adds a chance in the middle of the session.
func (r *chanceRows) add() {
	minutes := r.v.Now.PlanCase.Planner.Session().Minutes[plan.Expected]
	r.v.Binder.Pick("planner.breaks.add", func(s *part.Sheet) {
		s.Record.Chances = append(s.Record.Chances, record.Chance{
			Meta: record.Meta{ID: record.NewID()}, PlanID: s.Record.ID, Order: len(s.Record.Chances), Name: "pause",
			AtMinute: record.Num(quantity.RoundTo(minutes/2, 1), quantity.Minute), Seconds: record.Num(newChanceSeconds, quantity.Second),
		})
	})
}

// remove takes a chance out.
func (r *chanceRows) remove(id record.ID) {
	r.v.Binder.Pick("planner.breaks.remove", func(s *part.Sheet) {
		s.Record.Chances = slices.DeleteFunc(s.Record.Chances, func(c record.Chance) bool { return c.ID == id })
	})
}
