package profile

import (
	"slices"
	"strings"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/record"
)

// The functions here change a profile. Lists are those of a copy the caller
// owns.

// flagOf finds a condition in a profile; nil when it is not there.
func flagOf(a *record.Athlete, kind record.FlagKind) *record.Flag {
	for i := range a.Flags {
		if a.Flags[i].Kind == kind && !a.Flags[i].Deleted() {
			return &a.Flags[i]
		}
	}
	return nil
}

// setFlag writes a condition into a profile or takes it out. One that hides body
// mass hides it again where it was shown by choice; who wants it shown all the
// same says so anew.
func setFlag(a *record.Athlete, kind record.FlagKind, on bool) {
	switch {
	case !on:
		a.Flags = slices.DeleteFunc(a.Flags, func(f record.Flag) bool { return f.Kind == kind })
	case flagOf(a, kind) == nil || care.EffectOf(kind).Today:
		a.Flags = slices.DeleteFunc(a.Flags, func(f record.Flag) bool { return f.Kind == kind })
		a.Flags = append(a.Flags, record.Flag{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, Kind: kind})
		if care.EffectOf(kind).HideMass && a.MassHiddenSettled {
			a.MassHidden = true // what was chosen before the condition was known holds no more
		}
	}
}

// confirmMass writes down whether body mass is hidden, and that it was asked.
func confirmMass(a *record.Athlete, hidden bool) { a.MassHidden, a.MassHiddenSettled = hidden, true }

// consentOf finds a consent by its id; nil when it is not there.
func consentOf(a *record.Athlete, id record.ID) *record.Consent {
	for i := range a.Consents {
		if a.Consents[i].ID == id {
			return &a.Consents[i]
		}
	}
	return nil
}

// newConsent is a consent given today, for the first purpose that has none in
// force; by is who gives it, see [givers].
func newConsent(a record.Athlete, now time.Time, by string) record.Consent {
	today := record.DateOf(now)
	c := record.Consent{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, Given: today, Purpose: record.ConsentTest, GivenBy: by}
	for _, p := range record.Purposes() {
		if !slices.ContainsFunc(a.Consents, func(c record.Consent) bool { return c.Purpose == p && c.Holds(today) }) {
			c.Purpose = p
			break
		}
	}
	return c
}

// givers are the names of who consents: the athlete; for a minor the guardian, and the
// athlete who assents.
func givers(a record.Athlete, now time.Time) []string {
	if a.Minor(now) && a.Guardian != "" {
		return []string{a.Guardian, a.Name}
	}
	return []string{a.Name}
}

// settleMinor keeps the one answer of guardian and minor as the consent to be tested, so
// that it is not asked for again: given by both on the day of the answer. It follows
// the answer while that changes, goes with it, and leaves alone what was entered under
// the consents themselves. names puts several names into one text.
func settleMinor(before record.Athlete, a *record.Athlete, now time.Time, names func([]string) string) {
	was, is := names(givers(before, now)), names(givers(*a, now))
	answered := a.Minor(now) && a.Guardian != "" && a.Assent != ""
	for i, c := range a.Consents {
		switch {
		case c.Purpose != record.ConsentTest || c.Deleted():
			continue
		case !a.Minor(now) || before.Assent == "" || c.GivenBy != was || c.Given != before.Assent:
			return // entered by hand, or given before: it is the consent there is
		case answered:
			a.Consents[i].GivenBy, a.Consents[i].Given = is, a.Assent
		case c.Until == "" && c.Withdrawn == "":
			dropConsent(a, c.ID)
		}
		return
	}
	if answered && (a.Assent != before.Assent || a.Guardian != before.Guardian) {
		a.Consents = append(a.Consents, record.Consent{
			Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, Purpose: record.ConsentTest, Given: a.Assent, GivenBy: is,
		})
	}
}

// dropConsent takes a consent out.
func dropConsent(a *record.Athlete, id record.ID) {
	a.Consents = slices.DeleteFunc(a.Consents, func(c record.Consent) bool { return c.ID == id })
}

// join puts an athlete into a group, once.
func join(a *record.Athlete, group record.ID) {
	if slices.ContainsFunc(a.Memberships, func(m record.Membership) bool { return m.GroupID == group }) {
		return
	}
	a.Memberships = append(a.Memberships, record.Membership{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, GroupID: group})
}

// leave takes an athlete out of a group.
func leave(a *record.Athlete, group record.ID) {
	a.Memberships = slices.DeleteFunc(a.Memberships, func(m record.Membership) bool { return m.GroupID == group })
}

// groupNamed finds a group by its name, whatever the case; ok is false when
// there is none.
func groupNamed(groups []record.Group, name string) (g record.Group, ok bool) {
	for _, g := range groups {
		if strings.EqualFold(g.Name, strings.TrimSpace(name)) {
			return g, true
		}
	}
	return record.Group{}, false
}

// nothing reports whether a profile holds nothing at all.
func nothing(a record.Athlete) bool {
	return a.Name == "" && a.Born == "" && a.Sex == "" && !a.Height.Known() && !a.UsualMass.Known() && a.Sport == "" &&
		a.Position == "" && a.Acclimatised == "" && a.Training == "" && !a.UsualDrinking.Known() && !a.Mouthful.Known() && a.Guardian == "" &&
		a.Assent == "" && !a.MassHiddenSettled && a.Note == "" && len(a.Flags)+len(a.Consents)+len(a.Memberships) == 0
}

// ageState says how a birth date is to be read back.
type ageState string

// What a birth date can come to.
const (
	ageUnknown ageState = "unknown"
	ageAhead   ageState = "ahead" // the day has not come yet
	ageMinor   ageState = "minor"
	ageAdult   ageState = "adult"
)

// ageOf is the age of an athlete on a day and how it is to be read back.
func ageOf(a record.Athlete, now time.Time) (years int, state ageState) {
	if _, ok := a.Born.Time(); !ok {
		return 0, ageUnknown
	}
	years, ok := a.Age(now)
	switch {
	case !ok:
		return 0, ageAhead
	case a.Minor(now):
		return years, ageMinor
	}
	return years, ageAdult
}

// ready reports whether a first sheet may begin.
func ready(a record.Athlete, now time.Time) bool {
	return a.Name != "" && len(care.Of(a, now).Outstanding) == 0
}
