package squad

import (
	"context"
	"fmt"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/preview"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/care"
	"ebbwell/internal/handout"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/squad"
)

// Print prints the coach's page from the findings of the group, else the blank
// sheets of all members, in the order of the scale.
func (v *View) Print() {
	switch {
	case v.doc == nil:
	case v.group != nil:
		v.printCoach()
	default:
		v.printBlank()
	}
}

// printBlank asks where the blank sheets of the group are to be saved.
func (v *View) printBlank() {
	short := preview.Tick{Name: "short", Text: v.say("handoutview.short")}
	v.save("squad.print.blank", v.say("testday.file", len(v.rows)), v.say("testday.file.name", string(v.desk.Today())), short, v.blank)
}

// printCoach asks where the coach's page is to be saved.
func (v *View) printCoach() {
	if shared, _ := squad.ForCoach(squad.Lines(v.rows, squad.ByRate)); len(shared) == 0 {
		v.desk.Say(v.say("squad.coach.nobody"), "", nil)
		return
	}
	v.save("squad.print.coach", v.say("squad.coach.title"), v.say("squad.coach.file", string(v.desk.Today())), preview.Tick{}, v.coach)
}

// save lays a file out beside the window, since it may have many pages, and then asks
// where it goes, over the pages as they will print: it is said first which letters of it
// cannot be printed.
func (v *View) save(name, title, file string, tick preview.Tick, lay func(ticked bool) (paper.Document, error)) {
	var letters []string
	about := v.whose()
	v.desk.Beside.Run(func(context.Context) error {
		doc, err := lay(tick.On)
		letters = doc.Lacks
		return err
	}, func(err error) {
		if err != nil {
			v.desk.Trouble(err)
			return
		}
		preview.Ask(v.desk, v.canvas(), saveto.Request{
			Name: name, Title: title, Sentence: v.say("testday.file.sentence"), Yes: v.say("testday.file.yes"), File: saveto.FileName(file, ".pdf"),
			Letters: letters,
			Done: func(path string) {
				v.desk.Say(v.say("testday.file.done", path), v.say("saveto.open"), func() { saveto.Show(v.desk, path) })
			},
		}, preview.Printable{About: about, Tick: tick, Lay: func(_ context.Context, ticked bool) (paper.Document, error) { return lay(ticked) }})
	})
}

// whose are the athletes in the session.
func (v *View) whose() []record.ID {
	var list []record.ID
	for _, r := range v.rows {
		list = append(list, r.Sheet.Athlete.ID)
	}
	return list
}

// blank are the blank sheets of all members, in the order they are entered by row
// afterwards.
func (v *View) blank(short bool) (paper.Document, error) {
	d, press, err := v.press()
	if err != nil {
		return paper.Document{}, err
	}
	if len(v.rows) == 0 {
		return paper.Document{}, fmt.Errorf("print blank sheets: no athletes")
	}
	var sheets []handout.BlankSheet
	for _, r := range v.rows {
		a := r.Sheet.Athlete
		sheets = append(sheets, handout.BlankSheet{
			Terms: handout.TermsOf(v.desk.Practice(), care.Of(a, v.desk.Now()), d.Words), Athlete: a.Name,
			Sport: desk.SportWord(d.Words, a.Sport), Day: v.desk.Now(), Short: short,
		})
	}
	return press.BlankSheets(sheets), nil
}

// press is what prints in the language of the practice's pages, and its desk.
func (v *View) press() (*desk.Desk, *handout.Press, error) {
	d, err := v.desk.In(v.desk.PageLanguage())
	if err != nil {
		return nil, nil, err
	}
	press, err := handout.NewPress(d.Words, d.Paper())
	return d, press, err
}

// coach is the page for the coach, in the practice's language: those who consented, by
// sweat rate.
func (v *View) coach(bool) (paper.Document, error) {
	d, press, err := v.press()
	if err != nil {
		return paper.Document{}, err
	}
	other := *v
	other.desk = d
	return press.CoachPage(other.coachPage()), nil
}

// coachPage words what the coach is given.
func (v *View) coachPage() handout.CoachPage {
	g := v.doc.Now().session
	shared, withheld := squad.ForCoach(squad.Lines(v.rows, squad.ByRate))
	page := handout.CoachPage{
		Terms: handout.TermsOf(v.desk.Practice(), care.Care{}, v.desk.Words), Title: v.say("squad.coach.title"),
		Under: v.say("squad.head.short", v.speaker(false).Dated(g.Session.Date, ""), v.nameOf(g)),
		Notes: []string{v.say("squad.coach.loss"), v.say("squad.coach.withheld", withheld), v.say("squad.coach.thirst")},
	}
	for _, l := range shared {
		by := v.speaker(l.Row.Hidden).By
		amount := func(x *float64, u quantity.Unit) string {
			if x == nil {
				return ""
			}
			return by.Amount(*x, u)
		}
		line := handout.CoachLine{
			Name: l.Row.Sheet.Athlete.Name, Loss: amount(l.Loss, quantity.Litre), Rate: amount(l.Rate, quantity.LitrePerHour),
			Drunk: amount(l.Drunk, quantity.Litre), Deficit: v.deficitWords(l, false), Sodium: amount(l.Sodium, quantity.MilligramPerHour),
		}
		page.Lines = append(page.Lines, line)
	}
	return page
}
