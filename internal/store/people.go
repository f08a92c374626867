package store

import (
	"cmp"
	"slices"
	"strings"

	"gorm.io/gorm"

	"ebbwell/internal/record"
)

// The list of the athletes is read as one text a row: with ten thousand of them it is
// mostly the single columns that take time.

// between stands between the parts of such a text; nobody types it, and what came from
// elsewhere with it is read in columns.
const between = "\x1f"

// peopleInParts asks for the athletes: parts are id, day of birth, whether body mass is
// hidden, sport, position, name.
const peopleInParts = "SELECT id || '" + between + "' || COALESCE(born, '') || '" + between + "' || CASE WHEN mass_hidden THEN 1 ELSE 0 END || '" + between +
	"' || COALESCE(sport, '') || '" + between + "' || COALESCE(position, '') || '" + between + "' || COALESCE(name, '') FROM athletes WHERE deleted_at IS NULL"

// peopleInColumns asks for the same in columns.
const peopleInColumns = `SELECT id, COALESCE(born, ''), CASE WHEN mass_hidden THEN '1' ELSE '0' END, COALESCE(sport, ''), COALESCE(position, ''), COALESCE(name, '')
	FROM athletes WHERE deleted_at IS NULL`

// which narrows a question to some athletes by one of its columns; to none for nil.
func which(column string, some []record.ID) (condition string, values []any) {
	if some == nil {
		return "", nil
	}
	return " AND " + column + " IN ?", []any{some}
}

// listed are the athletes by name with groups and flags: all for nil, else of some those
// that there are.
func listed(tx *gorm.DB, some []record.ID) ([]Person, error) {
	all, err := people(tx, some)
	if err != nil {
		return nil, err
	}
	at := make(map[record.ID]*Person, len(all))
	for i := range all {
		at[all[i].ID] = &all[i]
	}
	if err := addGroups(tx, at, some); err != nil {
		return nil, err
	}
	return all, addFlags(tx, at, some)
}

// athleteParts are those of an athlete as [peopleInParts] has them.
type athleteParts [6]string

// people are the athletes by name, with nothing of what belongs to them. They are
// sorted here, which takes less than to let the database do it.
func people(tx *gorm.DB, some []record.ID) ([]Person, error) {
	var texts []string
	var text string
	condition, values := which("id", some)
	err := each(tx, []any{&text}, func() { texts = append(texts, text) }, peopleInParts+condition, values...)
	if err != nil {
		return nil, err
	}
	read := make([]athleteParts, len(texts))
	for i, text := range texts {
		p, ok := split(text)
		if !ok {
			return peopleByColumn(tx, some)
		}
		read[i] = p
	}
	return sortedPeople(read), nil
}

// peopleByColumn reads the same in columns.
func peopleByColumn(tx *gorm.DB, some []record.ID) ([]Person, error) {
	var read []athleteParts
	var p athleteParts
	condition, values := which("id", some)
	err := each(tx, []any{&p[0], &p[1], &p[2], &p[3], &p[4], &p[5]}, func() { read = append(read, p) }, peopleInColumns+condition, values...)
	return sortedPeople(read), err
}

// sortedPeople makes the lines of the athletes, in their order.
func sortedPeople(read []athleteParts) []Person {
	order := make([]*athleteParts, len(read))
	for i := range read {
		order[i] = &read[i]
	}
	slices.SortFunc(order, func(a, b *athleteParts) int { return cmp.Or(strings.Compare(a[5], b[5]), strings.Compare(a[0], b[0])) })
	all, once := make([]Person, len(order)), map[string]string{}
	for i, p := range order {
		own := p[0] + p[1] + p[5] // without what many share
		born, name := len(p[0]), len(p[0])+len(p[1])
		all[i] = Person{
			ID: record.ID(own[:born]), Born: record.Date(own[born:name]), Name: own[name:],
			MassHidden: p[2] == "1", Sport: shared(once, p[3]), Position: shared(once, p[4]),
		}
	}
	return all
}

// shared is a text that many have, kept once.
func shared(once map[string]string, text string) string {
	kept, there := once[text]
	if !there {
		kept = strings.Clone(text)
		once[kept] = kept
	}
	return kept
}

// ComparePeople orders athletes as [Store.People] lists them: by the bytes of the name,
// and then by id.
func ComparePeople(a, b Person) int {
	return cmp.Or(strings.Compare(a.Name, b.Name), strings.Compare(string(a.ID), string(b.ID)))
}

// split takes a text apart; ok is false where it has more parts than it should.
func split(text string) (p athleteParts, ok bool) {
	for i := range len(p) - 1 {
		p[i], text, _ = strings.Cut(text, between)
	}
	p[len(p)-1] = text
	return p, !strings.Contains(text, between)
}

// addGroups puts the names of the groups into the lines, by name.
func addGroups(tx *gorm.DB, at map[record.ID]*Person, some []record.ID) error {
	names := map[string]string{}
	var id, name string
	err := each(tx, []any{&id, &name}, func() { names[id] = name }, "SELECT id, COALESCE(name, '') FROM groups WHERE deleted_at IS NULL")
	if err != nil || len(names) == 0 {
		return err
	}
	var text string
	condition, values := which("athlete_id", some)
	return each(tx, []any{&text}, func() {
		group, athlete, _ := strings.Cut(text, between)
		name, there := names[group]
		a := at[record.ID(athlete)]
		if a == nil || !there {
			return
		}
		if i, is := slices.BinarySearch(a.Groups, name); !is {
			a.Groups = slices.Insert(a.Groups, i, name)
		}
	}, "SELECT group_id || '"+between+"' || athlete_id FROM memberships WHERE deleted_at IS NULL"+condition, values...)
}

// addFlags puts the flags into the lines.
func addFlags(tx *gorm.DB, at map[record.ID]*Person, some []record.ID) error {
	var text string
	condition, values := which("athlete_id", some)
	return each(tx, []any{&text}, func() {
		kind, athlete, _ := strings.Cut(text, between)
		if a := at[record.ID(athlete)]; a != nil {
			a.Flags = append(a.Flags, record.FlagKind(kind))
		}
	}, "SELECT kind || '"+between+"' || athlete_id FROM flags WHERE deleted_at IS NULL"+condition+" ORDER BY id", values...)
}
