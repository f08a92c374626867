package practice

import (
	"context"
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// keeping is how long records are kept, and whose have been kept that long.
type keeping struct {
	v     *View
	years *field.Number
	past  []past
	words *look.Paragraph
	table *look.Table
	rows  *fyne.Container
	panel *look.Sheet
}

// newKeeping builds the panel.
func newKeeping(v *View) *keeping {
	say := v.desk.Words.Say
	k := &keeping{v: v, words: look.NewParagraph("", look.Body, look.Ink)}
	k.years = field.NewNumber(v.desk.Host, "practice.retention", evidence.RetentionYears, quantity.None)
	k.years.SetSuffix(say("practice.years"))
	k.years.OnChanged = k.set
	k.years.OnLeft = func(field.Reading) {
		v.b.Doc.EndVisit()
		v.left()
	}
	k.table = look.NewTable("practice.past", []look.Column{
		{Title: say("practice.past.who"), Width: look.Share(3)}, {Title: say("practice.past.last"), Width: look.Share(2)},
		{Title: say("practice.past.due"), Width: look.Share(2)},
	})
	k.table.OnOpened = func(i int) {
		if i >= 0 && i < len(k.past) {
			v.desk.Go(desk.Place{Screen: desk.Profile, Athlete: k.past[i].id})
		}
	}
	k.rows = look.VBox(12, look.NewForm(look.NewEntry(say("practice.retention"), look.MaxWidth(150, k.years)).Wide()), k.words, k.table)
	k.panel = v.panel(say("practice.keeping"), say("practice.keeping.note"), k.rows)
	return k
}

// set takes the years in as they are typed; what is no number of years is none.
func (k *keeping) set(r field.Reading) {
	years := 0
	if r.Usable() && r.Value == float64(int(r.Value)) {
		years = int(r.Value)
	}
	k.v.b.Doc.Change("practice.retention", "practice.retention", func(s *sheet) { s.Record.Settings.RetentionYears = years })
	k.v.desk.HeadChanged()
	k.list()
}

// follow shows the years as they are kept.
func (k *keeping) follow() {
	if !k.years.Focused() {
		k.years.SetText("")
		if y := k.v.now().Settings.RetentionYears; y > 0 {
			k.years.SetText(strconv.Itoa(y))
		}
	}
	k.list()
}

// list works out who is past it.
func (k *keeping) list() {
	w := k.v.desk.Words
	years := k.v.now().Settings.RetentionYears
	k.past = k.lookUp(years)
	var rows [][]look.Cell
	for _, p := range k.past {
		rows = append(rows, []look.Cell{{Text: p.name}, {Text: k.date(p.last), Tone: look.Ink2}, {Text: k.date(p.due), Tone: look.Ink2}})
	}
	k.table.SetRows(rows)
	look.ShowIf(k.table, len(rows) > 0)
	switch {
	case years == 0:
		k.words.SetText(w.Say("practice.past.noyears"))
	case len(rows) == 0:
		k.words.SetText(w.Say("practice.past.none"))
	default:
		k.words.SetText(w.Say("practice.past", len(rows)))
	}
	k.rows.Refresh()
}

// lookUp lists who is past so many years by what the lists say, and then looks
// at the plans of those: an entry in a plan counts too.
func (k *keeping) lookUp(years int) []past {
	ctx, d := context.Background(), k.v.desk
	all, err := d.Store.Athletes(ctx)
	if err != nil {
		d.Trouble(err)
		return nil
	}
	last := map[record.ID]record.Date{}
	for _, p := range pastRetention(all, nil, years, d.Today()) {
		plans, err := d.Store.Plans(ctx, p.id)
		if err != nil {
			d.Trouble(err)
			return nil
		}
		for _, plan := range plans {
			last[p.id] = max(last[p.id], record.DateOf(plan.ChangedAt))
		}
	}
	return pastRetention(all, last, years, d.Today())
}

func (k *keeping) date(d record.Date) string {
	if t, ok := d.Time(); ok {
		return k.v.desk.Words.Date(t)
	}
	return ""
}
