package giving

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/disclose"
	"ebbwell/internal/lock"
)

// View is the screen.
type View struct {
	desk  *desk.Desk
	state state
	// given is what may be given as it is chosen now.
	given disclose.Given
	give  *field.Button
	what  *look.Paragraph
	left  *fyne.Container
	pages *field.Check
	// files are the choices of a file that is not locked, lock that of one that is.
	files *fyne.Container
	lock  *lockPart
	// take leads to where a colleague's file is taken in.
	take *field.Button
	// open says who can read the file, stays what stays here.
	open, stays *look.Paragraph
	body        fyne.CanvasObject
}

var _ desk.View = (*View)(nil)

// New opens the screen for the athlete a place names, for a group where it names none.
func New(d *desk.Desk, place desk.Place) (*View, error) {
	s, err := load(context.Background(), d, place.Athlete)
	if err != nil {
		return nil, err
	}
	if place.Part == desk.PartColleague {
		s.to = toColleague
	}
	v := &View{desk: d, state: s, lock: newLockPart(d), open: look.NewParagraph("", look.Body, look.Ink), stays: look.NewParagraph("", look.Note, look.Ink2), what: look.NewParagraph("", look.Body, look.Ink), left: look.VBox(6)}
	v.give = field.NewButton(d.Host, "give.save", d.Words.Say("give.save"), field.Primary, v.ask)
	v.take = field.NewButton(d.Host, "give.take", d.Words.Say("take.go"), field.Outline, func() { d.Go(desk.Place{Screen: desk.Colleague}) })
	v.build()
	v.follow()
	return v, nil
}

// build puts the screen together: what is chosen at the left, what comes of it at the
// right.
func (v *View) build() {
	say := v.desk.Words.Say
	form := look.NewForm(v.whose()...).Measured(140, 300, 1)
	v.files = look.VBox(0, look.NewForm(v.entries()...).Measured(140, 300, 1))
	choose := look.NewPanel(say("give.what"), nil, form, v.files, v.lock.body, look.HBox(0, v.give))
	in := look.NewPanel(say("give.in"), nil, v.what, v.open, v.stays)
	out := look.NewPanel(say("give.left"), nil, v.left)
	pair := look.NewPair(0.5, 900, choose, look.VBox(look.SheetGap, in, out))
	v.body = look.Pad(look.TopPad, 0, look.FootPad, 0, look.InMargin(look.PageScroll(pair)))
}

// whose are the choices of whose records are given, and to whom.
func (v *View) whose() []look.Entry {
	say := v.desk.Words.Say
	to := look.NewEntry(say("give.to"), v.toChoice()).Wide()
	if v.state.one == nil {
		return []look.Entry{look.NewEntry(say("give.who"), v.groupChoice()).Wide(), to}
	}
	return []look.Entry{to}
}

// entries are the choices of a file that is not locked.
func (v *View) entries() []look.Entry {
	say, h := v.desk.Words.Say, v.desk.Host
	forms := field.NewToggle(h, "give.form", []field.Option{{Key: string(formCSV), Text: say("practice.export.csv")},
		{Key: string(formBook), Text: say("practice.export.xlsx")}, {Key: string(formJSON), Text: say("practice.export.json")}})
	forms.Choose(string(v.state.form))
	forms.OnChosen = func(key string) { v.state.form = form(key) }
	as := look.NewEntry(say("give.form"), forms).Wide()
	if v.state.one == nil {
		return []look.Entry{as}
	}
	if len(v.state.prints) == 0 {
		return []look.Entry{as, look.NewEntry("", look.NewParagraph(say("give.pages", 0), look.Note, look.Ink2)).Wide()}
	}
	v.pages = field.NewCheck(h, "give.pages", say("give.pages", len(v.state.prints)))
	v.pages.Set(v.state.pages)
	v.pages.OnChanged = func(on bool) { v.state.pages = on; v.follow() }
	return []look.Entry{as, look.NewEntry("", v.pages).Wide()}
}

// groupChoice chooses the group.
func (v *View) groupChoice() fyne.CanvasObject {
	list := []field.Option{{Key: everyone, Text: v.desk.Words.Say("give.everyone")}}
	for _, g := range v.state.groups {
		list = append(list, field.Option{Key: string(g.ID), Text: g.Name})
	}
	c := field.NewChoice(v.desk.Host, "give.group", list)
	c.Choose(v.state.group)
	c.OnChosen = func(key string) { v.state.group = key; v.follow() }
	return c
}

// toChoice chooses who gets the records; the coach only where that was consented to.
func (v *View) toChoice() fyne.CanvasObject {
	say := v.desk.Words.Say
	athlete, coach := field.Option{Key: string(disclose.ToAthlete), Text: say("give.to.athlete")}, field.Option{Key: string(disclose.ToCoach), Text: say("give.to.coach")}
	options := []field.Option{coach}
	note := say("give.to.group")
	if v.state.one != nil {
		options, note = []field.Option{athlete, coach}, ""
		if !v.state.mayShare(v.desk.Now()) {
			options, note = []field.Option{athlete}, say("give.to.only")
		}
	}
	t := field.NewToggle(v.desk.Host, "give.to", append(options, field.Option{Key: string(toColleague), Text: say("give.to.colleague")}))
	t.Choose(string(v.state.to))
	t.OnChosen = func(key string) { v.state.to = disclose.Audience(key); v.follow() }
	if note == "" {
		return t
	}
	return look.VBox(4, t, look.NewParagraph(note, look.Note, look.Ink2))
}

// follow shows what may be given, and what is left out, as it is chosen now.
func (v *View) follow() {
	w := v.desk.Words
	given, err := v.state.pick(context.Background(), v.desk)
	if err != nil {
		v.desk.Trouble(err)
		return
	}
	v.given = given
	athletes, tests, plans := counts(given.Records)
	v.what.SetText(w.Say("give.holds", w.Say("give.athletes", athletes), w.Say("give.tests", tests), w.Say("give.plans", plans)))
	if v.pages != nil {
		look.EnableIf(v.pages, v.state.to == disclose.ToAthlete)
	}
	look.EnableIf(v.give, athletes > 0)
	locked := v.state.to == toColleague
	look.ShowIf(v.files, !locked)
	look.ShowIf(v.lock.body, locked)
	v.left.Objects = nil
	if locked {
		v.followLocked(athletes, tests, plans)
		return
	}
	v.open.SetText(w.Say("give.open"))
	v.stays.SetText(w.Say("give.stays"))
	for _, o := range given.Left {
		v.left.Add(look.NewParagraph(sayLeft(w, o), look.Body, look.Ink))
		if names := v.namesOf(o); o.Kind == disclose.NoConsent && names != "" {
			v.left.Add(look.NewParagraph(names, look.Note, look.Ink2))
		}
	}
	if len(given.Left) == 0 {
		v.left.Add(look.NewParagraph(w.Say("give.left.nothing"), look.Body, look.Ink))
	}
	v.left.Add(look.NewParagraph(w.Say("give.left.history"), look.Body, look.Ink))
	v.left.Add(look.NewParagraph(w.Say("give.text.note"), look.Note, look.Ink2))
	v.left.Refresh()
	if v.body != nil {
		v.body.Refresh()
	}
}

// followLocked says what goes to a colleague, what stays, and who can read it.
func (v *View) followLocked(athletes, tests, plans int) {
	w := v.desk.Words
	v.what.SetText(w.Say("give.locked.holds", w.Say("give.athletes", athletes), w.Say("give.tests", tests), w.Say("give.plans", plans)))
	v.open.SetText(w.Say("give.locked.open"))
	v.stays.SetText(w.Say("give.locked.ask"))
	for _, key := range []string{"stays", "mass", "back"} {
		v.left.Add(look.NewParagraph(w.Say("give.locked."+key), look.Body, look.Ink))
	}
	v.left.Refresh()
	if v.body != nil {
		v.body.Refresh()
	}
}

// namesOf names who something left out is about, for the practitioner alone.
func (v *View) namesOf(o disclose.Omission) string {
	var list []string
	for _, p := range v.state.people {
		for _, id := range o.Athletes {
			if p.ID == id {
				list = append(list, p.Name)
			}
		}
	}
	return v.desk.Words.Commas(list)
}

// reader is the desk with the texts of who reads the file.
func (v *View) reader() (*desk.Desk, error) {
	tag := v.desk.PageLanguage()
	if v.state.one != nil {
		tag = v.desk.ReadBy(*v.state.one)
	}
	d, err := v.desk.In(tag)
	if err != nil {
		return nil, fmt.Errorf("find the language of the file: %w", err)
	}
	return d, nil
}

// ask asks where the file goes, and writes it.
func (v *View) ask() {
	d, say := v.desk, v.desk.Words.Say
	reader, err := v.reader()
	if err != nil {
		d.Trouble(err)
		return
	}
	whose := say("give.everyone")
	if v.state.one != nil {
		whose = desk.NameOf(d.Words, *v.state.one)
	}
	s, with := v.state, d.Calculate()
	if s.to == toColleague {
		v.askLocked(whose)
		return
	}
	saveto.Ask(d, fyne.CurrentApp().Driver().CanvasForObject(v.body), saveto.Request{
		Name: "give.ask", Title: say("give.title"), Sentence: say("give.open"), Yes: say("give.yes"),
		File: saveto.FileName(say("give.file", whose, string(d.Today())), ".zip"),
		Write: func(ctx context.Context, path string) error {
			data, err := s.archive(ctx, reader, with)
			if err != nil {
				return err
			}
			return d.Store.WriteFile(ctx, path, data, s.about()...)
		},
		Done: func(path string) { d.Say(say("give.done", path), "", nil) },
	})
}

// askLocked asks where the file for a colleague goes, and writes it.
func (v *View) askLocked(whose string) {
	d, say := v.desk, v.desk.Words.Say
	wrong := v.lock.wrong(d)
	v.lock.trouble.SetText(wrong)
	v.body.Refresh()
	if wrong != "" {
		return
	}
	s, phrase := v.state, v.lock.first.Text()
	saveto.Ask(d, fyne.CurrentApp().Driver().CanvasForObject(v.body), saveto.Request{
		Name: "give.ask", Title: say("give.locked.title"), Sentence: say("give.locked.open"), Yes: say("give.yes"),
		File: saveto.FileName(say("give.locked.file", whose, string(d.Today())), ".ebbwell"),
		Write: func(ctx context.Context, path string) error {
			data, err := s.locked(ctx, d, phrase, lock.Work)
			if err != nil {
				return err
			}
			return d.Store.WriteFile(ctx, path, data, s.about()...)
		},
		Done: func(path string) { d.Say(say("give.locked.done", path), "", nil) },
	})
}

// Head is the athlete, or the title alone.
func (v *View) Head() desk.Head {
	if v.state.one == nil {
		return desk.Head{Title: v.desk.Words.Say("give.title"), Actions: []fyne.CanvasObject{v.take}}
	}
	h := desk.AthleteHead(*v.state.one, "", v.desk.FactsOf(*v.state.one))
	h.Title, h.Actions = desk.NameOf(v.desk.Words, *v.state.one), []fyne.CanvasObject{v.take}
	return h
}

// Body is the screen.
func (v *View) Body() fyne.CanvasObject { return v.body }

// Leave has nothing to save.
func (v *View) Leave() {}
