package squad

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"strconv"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// everybody is the key of the choice of all athletes.
const everybody = "everybody"

// start is the page that begins a session: which group, as which earlier day.
type start struct {
	v        *View
	people   []store.Person
	groups   []string
	sessions []record.GroupSession
	marked   map[record.ID]bool
	group    *field.Choice
	as       *field.Choice
	// step asks the resolution of the scale, once a day: hidden where a session of today
	// has it already.
	step   *field.Number
	scale  record.Number
	list   *fyne.Container
	scroll *look.Scroll
	begin  *field.Button
	body   fyne.CanvasObject
}

func newStart(v *View) (*start, error) {
	ctx := context.Background()
	s := &start{v: v, marked: map[record.ID]bool{}}
	var err error
	if s.people, err = v.desk.Store.People(ctx); err != nil {
		return nil, fmt.Errorf("begin a session: %w", err)
	}
	if s.sessions, err = v.desk.Store.GroupSessions(ctx); err != nil {
		return nil, fmt.Errorf("begin a session: %w", err)
	}
	seen := map[string]bool{}
	for _, a := range s.people {
		for _, g := range a.Groups {
			seen[g] = true
		}
	}
	s.groups = slices.Collect(maps.Keys(seen))
	v.desk.Words.Sort(s.groups)
	s.build()
	return s, nil
}

// build makes the page.
func (s *start) build() {
	say, h := s.v.say, s.v.desk.Host
	options := []field.Option{{Key: everybody, Text: say("squad.start.everybody")}}
	for i, g := range s.groups {
		options = append(options, field.Option{Key: strconv.Itoa(i), Text: g})
	}
	s.group = field.NewChoice(h, "squad.start.group", options)
	s.group.OnChosen = func(string) { s.mark() }
	templates := []field.Option{{Key: "", Text: say("squad.start.empty")}}
	for i, g := range s.sessions {
		templates = append(templates, field.Option{Key: strconv.Itoa(i), Text: s.v.speaker(false).Dated(g.Session.Date, "") + " · " + s.v.nameOf(g)})
	}
	s.as = field.NewChoice(h, "squad.start.as", templates)
	s.as.OnChosen = func(string) { s.askStep() }
	s.step = field.NewNumber(h, "squad.start.step", evidence.ScaleStep, quantity.Kilogram)
	s.step.SetShown(s.v.speaker(false).By.Unit(quantity.Kilogram))
	s.step.OnChanged = func(r field.Reading) {
		s.scale = record.Number{}
		if r.Usable() {
			s.scale = record.Num(r.Value, r.Unit)
		}
	}
	s.begin = field.NewButton(h, "squad.start.begin", "", field.Primary, s.press)
	sheets := field.NewButton(h, "squad.start.sheets", say("squad.start.sheets"), field.Outline, s.v.goToSheets)
	s.list = look.VBox(0)
	s.scroll = look.NewScroll(s.list)
	form := look.NewForm(look.NewEntry(say("squad.start.group"), s.group).Wide(), look.NewEntry(say("squad.start.as"), s.as).Wide())
	scale := look.NewForm(look.NewEntry(say("squad.start.step"), look.HBox(0, look.MinSized(140, 0, s.step))).Wide())
	sheet := look.NewSheet(look.VBox(10, look.NewLabel(say("squad.start.title"), look.Title, look.Ink), look.NewParagraph(say("squad.start.note"), look.Body, look.Ink2),
		form, scale, look.Grow(look.Pad(0, 0, 0, 0, s.scroll)), look.HBox(10, s.begin, sheets)))
	s.body = look.Pad(look.TopPad, 0, look.FootPad, 0, look.MaxWidth(760, sheet))
	if len(s.sessions) > 0 {
		s.as.Choose("0")
		s.group.Choose(s.groupOf(s.sessions[0]))
	} else if len(s.groups) > 0 {
		s.group.Choose("0")
	} else {
		s.group.Choose(everybody)
	}
	_, known := s.today()
	look.ShowIf(scale, !known)
	s.askStep()
	s.mark()
}

// today is the resolution that a session of today has.
func (s *start) today() (step record.Number, known bool) {
	for _, g := range s.sessions {
		if g.Session.Date == s.v.desk.Today() && g.ScaleStep.Known() {
			return g.ScaleStep, true
		}
	}
	return step, false
}

// askStep puts the resolution of the chosen session into the field, to be looked at; one
// of today is taken as it is.
func (s *start) askStep() {
	s.step.Clear()
	s.scale = s.chosen().ScaleStep
	if step, known := s.today(); known {
		s.scale = step
	}
	if s.scale.Known() {
		s.step.SetValue(*s.scale.Value)
	}
}

// chosen is the session to begin as; an empty one for none.
func (s *start) chosen() record.GroupSession {
	if i, err := strconv.Atoi(s.as.Chosen()); err == nil && i < len(s.sessions) {
		return s.sessions[i]
	}
	return record.GroupSession{}
}

// groupOf is the group whose name a session has.
func (s *start) groupOf(g record.GroupSession) string {
	if i := slices.Index(s.groups, g.Name); i >= 0 {
		return strconv.Itoa(i)
	}
	return everybody
}

// shown are the athletes of the group.
func (s *start) shown() []store.Person {
	i, err := strconv.Atoi(s.group.Chosen())
	if err != nil {
		return s.people
	}
	var list []store.Person
	for _, a := range s.people {
		if slices.Contains(a.Groups, s.groups[i]) {
			list = append(list, a)
		}
	}
	return list
}

// mark marks everybody of the group, who can be unmarked one by one; of all athletes
// nobody.
func (s *start) mark() {
	s.marked = map[record.ID]bool{}
	s.list.Objects = nil
	for i, a := range s.shown() {
		s.marked[a.ID] = s.group.Chosen() != everybody
		tick := field.NewCheck(s.v.desk.Host, "squad.start."+strconv.Itoa(i+1), a.Name)
		tick.Set(s.marked[a.ID])
		tick.OnChanged = func(on bool) {
			s.marked[a.ID] = on
			s.follow()
		}
		s.list.Add(tick)
	}
	s.list.Refresh()
	s.scroll.Refresh()
	s.follow()
}

// count is how many are marked.
func (s *start) count() int {
	n := 0
	for _, on := range s.marked {
		if on {
			n++
		}
	}
	return n
}

func (s *start) follow() {
	s.begin.SetText(s.v.say("squad.start.begin", s.count()))
	look.EnableIf(s.begin, s.count() > 0)
	if s.body != nil {
		s.body.Refresh()
	}
}

// press begins the session and opens it.
func (s *start) press() {
	d := s.v.desk
	last := s.chosen()
	last.ScaleStep = s.scale
	name := ""
	if i, err := strconv.Atoi(s.group.Chosen()); err == nil {
		name = s.groups[i]
	}
	var athletes []record.Athlete
	for _, line := range s.shown() {
		if !s.marked[line.ID] {
			continue
		}
		a, err := d.Store.LoadAthlete(context.Background(), line.ID)
		if err != nil {
			d.Trouble(err)
			return
		}
		athletes = append(athletes, a)
	}
	id, left, err := Begin(d, last, name, athletes)
	if err != nil {
		d.Trouble(err)
		return
	}
	d.Go(desk.Place{Screen: desk.TestDay, Record: id})
	if len(left) > 0 {
		d.Say(s.v.say("squad.start.left", d.Words.List(left)), "", nil)
	}
}
