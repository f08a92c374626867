package tables

import (
	"slices"
	"strings"

	"ebbwell/internal/care"
	"ebbwell/internal/consult"
	"ebbwell/internal/plain"
	"ebbwell/internal/record"
)

// people knows the athletes of the practice and those of the file so far.
type people struct {
	kept, fresh map[string][]record.Athlete
	// rows are those in which the athletes of a list first stand.
	rows map[record.ID]int
}

func newPeople(k Known) *people {
	p := &people{kept: map[string][]record.Athlete{}, fresh: map[string][]record.Athlete{}, rows: map[record.ID]int{}}
	for _, a := range k.Athletes {
		key := NameKey(a.Name)
		p.kept[key] = append(p.kept[key], a)
	}
	return p
}

// NameKey is a name as names are compared: small letters without accents, whatever
// the order of its words.
func NameKey(name string) string {
	words := strings.Fields(plain.Text(name))
	slices.Sort(words)
	return strings.Join(words, " ")
}

// text is what stands in the column of a target; empty where there is none, or
// where the cell says that there is nothing.
func (w *builder) text(t Target) (text string, column int) {
	column = w.m.first(t)
	if column < 0 {
		return "", -1
	}
	text = w.s.At(w.at, column).Text
	if calculationFailed(text) {
		w.cellFault(column, FaultFailed)
		return "", column
	}
	if nothing(text) {
		return "", column
	}
	return text, column
}

// short is a text that fits a line of the profile or the sheet.
func (w *builder) short(t Target) string {
	const most = 200
	text, column := w.text(t)
	if len([]rune(text)) > most {
		w.cellFault(column, FaultLong)
		return ""
	}
	return text
}

// notes are the texts of all columns of a target, each with its heading where there
// are several.
func (w *builder) notes(t Target) string {
	var list []string
	several := 0
	for _, c := range w.m.Columns {
		if c.Target == t {
			several++
		}
	}
	for i, c := range w.m.Columns {
		text := w.s.At(w.at, i).Text
		if c.Target != t || nothing(text) {
			continue
		}
		if text == noResult {
			w.cellFault(i, FaultFailed)
			continue
		}
		if several > 1 {
			text = c.Heading + ": " + text
		}
		list = append(list, text)
	}
	return strings.Join(list, "\n")
}

// person reads who a row is about.
func (w *builder) person() record.Athlete {
	a := record.Athlete{Meta: record.Meta{ID: record.NewID()}, Name: w.fullName()}
	a.Born, _, _ = w.day(Born)
	if text, column := w.text(Sex); text != "" {
		sex, ok := sexOf(text)
		if !ok {
			w.cellFault(column, FaultChoice)
		}
		a.Sex = sex
	}
	if text, column := w.text(Acclimatised); text != "" {
		yes, ok := yesOf(text)
		a.Acclimatised = record.AcclimatisedNo
		if yes {
			a.Acclimatised = record.AcclimatisedYes
		}
		if !ok {
			w.cellFault(column, FaultChoice)
		}
	}
	a.Sport, a.Position, a.Note = w.sport(), w.short(Position), w.notes(AthleteNote)
	w.put(&a.Height, Height, 0)
	w.put(&a.UsualMass, UsualMass, 0)
	return a
}

// sport is the code of a sport, or the word itself.
func (w *builder) sport() string {
	text := w.short(Sport)
	if code, ok := w.sports[worded(text)]; ok {
		return code
	}
	return text
}

// fullName reads the name: whole, or of two columns; "Moss, Ada" is Ada Moss.
func (w *builder) fullName() string {
	whole, family, given := w.short(Name), w.short(FamilyName), w.short(GivenName)
	switch {
	case given != "" && family != "":
		return given + " " + family
	case given != "" && whole != "":
		return given + " " + whole
	case family != "" && whole != "":
		return whole + " " + family
	case whole == "":
		whole = given + family
	}
	if before, after, ok := strings.Cut(whole, ","); ok && !strings.Contains(after, ",") && strings.TrimSpace(after) != "" {
		whole = strings.TrimSpace(after) + " " + strings.TrimSpace(before)
	}
	return whole
}

// whose finds who a row is about among the known ones and those of earlier rows.
func (w *builder) whose(a record.Athlete) RowDraft {
	key := NameKey(a.Name)
	if key == "" {
		if !w.bad {
			w.cellFault(-1, FaultNoName)
		}
		return RowDraft{Athlete: a}
	}
	found, byName, several := pickPerson(w.people.kept[key], a.Born)
	if several {
		w.cellFault(max(w.m.first(Name), w.m.first(FamilyName)), FaultWho)
		return RowDraft{Athlete: a}
	}
	if found != nil {
		if byName {
			w.ask(Question{Column: -1, Cell: found.Name, Code: QuestionMatched})
		}
		if contradicts(*found, a) {
			w.ask(Question{Column: -1, Cell: found.Name, Code: QuestionProfile})
		}
		return RowDraft{Athlete: *found, Existing: true}
	}
	fresh := w.people.fresh[key]
	found, _, several = pickPerson(fresh, a.Born)
	if several {
		w.cellFault(max(w.m.first(Name), w.m.first(FamilyName)), FaultWho)
		return RowDraft{Athlete: a}
	}
	if found != nil {
		fill(found, a)
		return RowDraft{Athlete: *found}
	}
	if !w.bad {
		w.people.fresh[key] = append(fresh, a)
		w.askAge(a)
	}
	return RowDraft{Athlete: a}
}

// listed is a row of a list of athletes: one that is known already, or stands in a row
// before, is a twin.
func (w *builder) listed(a record.Athlete) RowDraft {
	r, key := RowDraft{Athlete: a, Twin: Twin{Row: -1}}, NameKey(a.Name)
	if key == "" {
		w.cellFault(-1, FaultNoName)
		return r
	}
	kept, _, _ := pickPerson(w.people.kept[key], a.Born)
	r.Twin.Kept = kept != nil
	if kept != nil && contradicts(*kept, a) {
		w.ask(Question{Column: -1, Cell: kept.Name, Code: QuestionProfile})
	}
	if before, _, _ := pickPerson(w.people.fresh[key], a.Born); before != nil {
		r.Twin.Row = w.people.rows[before.ID]
	}
	if !w.bad {
		w.people.fresh[key] = append(w.people.fresh[key], a)
		w.people.rows[a.ID] = w.at
		w.askAge(a)
	}
	return r
}

// assign gives every row its athlete with what later rows said.
func (p *people) assign(rows []RowDraft) {
	by := map[record.ID]record.Athlete{}
	for _, list := range p.fresh {
		for _, a := range list {
			by[a.ID] = a
		}
	}
	for i := range rows {
		if a, ok := by[rows[i].Athlete.ID]; ok {
			rows[i].Athlete = a
		}
	}
}

// askAge says what the age of a new athlete asks for.
func (w *builder) askAge(a record.Athlete) {
	today, _ := w.o.Today.Time()
	switch {
	case a.Born == "":
		w.ask(Question{Column: -1, Cell: a.Name, Code: QuestionNoBorn})
	case a.Minor(today):
		w.ask(Question{Column: -1, Cell: a.Name, Code: QuestionMinor, Hidden: true})
	}
}

// pickPerson finds a person of one name by the birth date. byName: by the name alone,
// since one of the two birth dates is missing. several: it may be more than one.
func pickPerson(list []record.Athlete, born record.Date) (found *record.Athlete, byName, several bool) {
	open := 0
	for i := range list {
		switch {
		case born != "" && list[i].Born == born:
			return &list[i], false, false
		case born == "" || list[i].Born == "":
			found = &list[i]
			open++
		}
	}
	return found, open == 1, open > 1
}

// contradicts reports whether a file says something else of a known person than the
// profile does.
func contradicts(kept, a record.Athlete) bool {
	differs := func(x, y string) bool { return x != "" && y != "" && x != y }
	apart := func(x, y record.Number, by float64) bool {
		return x.Known() && y.Known() && (*x.Value-*y.Value > by || *y.Value-*x.Value > by)
	}
	return differs(string(kept.Sex), string(a.Sex)) || apart(kept.Height, a.Height, 0.02) || differs(string(kept.Born), string(a.Born))
}

// fill adds what an earlier row of the file did not say of a person.
func fill(into *record.Athlete, a record.Athlete) {
	if into.Born == "" {
		into.Born = a.Born
	}
	if into.Sex == "" {
		into.Sex = a.Sex
	}
	if into.Sport == "" {
		into.Sport = a.Sport
	}
	if into.Position == "" {
		into.Position = a.Position
	}
	if !into.Height.Known() {
		into.Height = a.Height
	}
	if !into.UsualMass.Known() {
		into.UsualMass = a.UsualMass
	}
	if into.Acclimatised == "" {
		into.Acclimatised = a.Acclimatised
	}
}

// look asks what the sheet would ask: odd values of the whole, a gain in mass.
func (w *builder) look(r RowDraft) {
	f := consult.Find(*r.Test, r.Athlete, nil, w.o.Setup)
	hidden := care.MassHidden(r.Athlete, consult.TestDay(*r.Test)) || care.MassHidden(r.Athlete, todayOf(w.o.Today))
	for _, p := range f.Sweat.Problems {
		if consult.PathOf(*r.Test, p) == "" && p.Code != "" {
			w.ask(Question{Column: -1, Cell: r.Athlete.Name, Code: QuestionSheet, Problem: p, Hidden: hidden})
		}
	}
	if consult.Gained(f) {
		w.ask(Question{Column: w.m.first(MassAfter), Code: QuestionGain, Hidden: hidden})
	}
}
