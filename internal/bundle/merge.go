package bundle

import (
	"reflect"
	"slices"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/record"
)

// Here is what this practice keeps of what a bundle holds.
type Here struct {
	Records
	// Gone are records that were deleted here, or athletes who were erased.
	Gone map[record.Ref]bool
}

// Conflict is a field, or for an empty path a whole closed record, that both sides
// changed.
type Conflict struct {
	Ref     record.Ref
	Athlete record.ID
	Path    string
	// Ours and Theirs are the two values; of a whole record there are none.
	Ours, Theirs Value
	// OursAt and TheirsAt are when each was entered; where no history tells it, when
	// its row was last changed, and ByRow is set.
	OursAt, TheirsAt time.Time
	ByRow            bool
	// TheirsStands: theirs is newer and stands; ours is in the history.
	TheirsStands bool
}

// Result is what comes of a bundle. Nothing has been written.
type Result struct {
	// NewAthletes and so on are those that are not here yet.
	NewAthletes []record.Athlete
	NewTests    []record.Test
	NewPlans    []record.Plan
	NewProducts []record.Product
	// Athletes and so on are here and become what stands in these.
	Athletes []record.Athlete
	Tests    []record.Test
	Plans    []record.Plan
	// Changes, Frozen and Raw come to what is kept beside the records.
	Changes []record.Change
	Frozen  []record.Frozen
	Raw     []record.RawText
	Prints  []record.Print

	// Marks are what the merge itself changed of new records.
	Marks []Mark

	Conflicts []Conflict
	Decisions []Decision
	Held      []Held
	// Left are records that were deleted or erased here, and stay so.
	Left []record.Ref
}

// Mark is a field of a new record that is not as it was sent, for the history.
type Mark struct {
	Ref           record.Ref
	Path          string
	Before, After string
}

// Nothing reports whether the bundle brings nothing.
func (r Result) Nothing() bool {
	return len(r.NewAthletes)+len(r.NewTests)+len(r.NewPlans)+len(r.NewProducts)+len(r.Athletes)+len(r.Tests)+len(r.Plans)+
		len(r.Changes)+len(r.Frozen)+len(r.Raw)+len(r.Prints)+len(r.Decisions) == 0
}

// merging is a merge on its way.
type merging struct {
	here   Here
	theirs Bundle
	now    time.Time
	out    Result
	// mine and others are the histories by record.
	mine, others map[record.Ref][]record.Change
	// left are the athletes who stay away.
	left map[record.ID]bool
	// whole are the records that were taken whole from there.
	whole map[record.Ref]bool
}

// Merge puts a bundle together with what is here. now decides who is a minor.
func Merge(here Here, theirs Bundle, now time.Time) Result {
	m := &merging{here: here, theirs: theirs, now: now, mine: byRecord(here.Changes), others: byRecord(theirs.Changes), left: map[record.ID]bool{}, whole: map[record.Ref]bool{}}
	for _, a := range theirs.Athletes {
		m.athlete(a.Clone())
	}
	for _, t := range theirs.Tests {
		m.test(t.Clone())
	}
	for _, p := range theirs.Plans {
		m.plan(p.Clone())
	}
	for _, p := range theirs.Products {
		m.product(p)
	}
	m.beside()
	return m.out
}

// byRecord sorts a history by what it is of.
func byRecord(list []record.Change) map[record.Ref][]record.Change {
	all := map[record.Ref][]record.Change{}
	for _, c := range list {
		ref := record.Ref{Kind: c.Kind, ID: c.Record}
		all[ref] = append(all[ref], c)
	}
	return all
}

// stays reports whether a record stays away: it was deleted here, or its athlete was.
func (m *merging) stays(ref record.Ref, athlete record.ID) bool {
	if !m.here.Gone[ref] && !m.left[athlete] {
		return false
	}
	if m.here.Gone[ref] {
		m.out.Left = append(m.out.Left, ref)
	}
	if ref.Kind == record.KindAthlete {
		m.left[ref.ID] = true
	}
	return true
}

// two is one record as both sides have it.
type two struct {
	ref     record.Ref
	athlete record.ID
	ours    own
	others  own
	// bothHistories are there.
	bothHistories bool
}

// pair is a record with what each side changed by itself.
func (m *merging) pair(kind record.Kind, id, athlete record.ID) two {
	p := two{ref: record.Ref{Kind: kind, ID: id}, athlete: athlete}
	p.ours, p.others = apart(m.mine[p.ref], m.others[p.ref])
	p.bothHistories = len(m.mine[p.ref]) > 0 && len(m.others[p.ref]) > 0
	return p
}

// athlete takes one athlete.
func (m *merging) athlete(a record.Athlete) {
	ref := record.Ref{Kind: record.KindAthlete, ID: a.ID}
	a.Memberships, a.ImportID = nil, ""
	if m.stays(ref, a.ID) {
		return
	}
	i := slices.IndexFunc(m.here.Athletes, func(h record.Athlete) bool { return h.ID == a.ID })
	if i < 0 {
		m.holdAthlete(&a)
		if !care.MassHidden(a, m.now) && a.Minor(m.now) {
			m.decideField(two{ref: ref, athlete: a.ID}, "massHidden", reflect.ValueOf(&a).Elem(), "massHidden")
			m.out.Marks = append(m.out.Marks, Mark{ref, "massHidden", "false", "true"})
			a.MassHidden, a.MassHiddenSettled = true, true
		}
		m.out.NewAthletes = append(m.out.NewAthletes, a)
		return
	}
	mine := m.here.Athletes[i].Clone()
	p := m.pair(record.KindAthlete, a.ID, a.ID)
	before := mine.Clone()
	if !sameContent(reflect.ValueOf(&mine).Elem(), reflect.ValueOf(&a).Elem()) {
		m.holdAthlete(&a)
	}
	m.hiddenMass(p, &mine, a)
	m.fields(p, reflect.ValueOf(&mine).Elem(), reflect.ValueOf(&a).Elem(), "")
	m.lists(p, reflect.ValueOf(&mine).Elem(), reflect.ValueOf(&a).Elem(), "")
	if !sameContent(reflect.ValueOf(&before).Elem(), reflect.ValueOf(&mine).Elem()) {
		m.out.Athletes = append(m.out.Athletes, mine)
	}
}

// test takes one sheet.
func (m *merging) test(t record.Test) {
	ref := record.Ref{Kind: record.KindTest, ID: t.ID}
	t.ImportID = ""
	if m.stays(ref, t.AthleteID) {
		return
	}
	i := slices.IndexFunc(m.here.Tests, func(h record.Test) bool { return h.ID == t.ID })
	if i < 0 {
		m.holdTest(&t)
		m.out.NewTests = append(m.out.NewTests, t)
		return
	}
	mine := m.here.Tests[i].Clone()
	before := mine.Clone()
	now, then := reflect.ValueOf(&mine).Elem(), reflect.ValueOf(&t).Elem()
	if t.AthleteID != mine.AthleteID || sameContent(now, then) {
		return
	}
	m.holdTest(&t)
	p := m.pair(record.KindTest, t.ID, t.AthleteID)
	if mine.State == record.TestOpen && t.State == record.TestOpen {
		m.fields(p, now, then, "")
		m.lists(p, now, then, "")
	} else {
		m.closedTest(p, &mine, t)
	}
	if !sameContent(reflect.ValueOf(&before).Elem(), now) {
		m.out.Tests = append(m.out.Tests, mine)
	}
}
