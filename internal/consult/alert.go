package consult

import (
	"cmp"
	"slices"
	"time"

	"ebbwell/internal/care"
	"ebbwell/internal/climate"
	"ebbwell/internal/record"
)

// AlertKind is a sort of thing that has to be known of an athlete.
type AlertKind string

// The kinds of alert, the gravest first.
const (
	AlertGain        AlertKind = "gain"      // heavier after the last test than before
	AlertToday       AlertKind = "today"     // ill, or an upset stomach, today
	AlertOutstanding AlertKind = "unsettled" // birth date, guardian, assent, hidden mass
	AlertWithdrawn   AlertKind = "withdrawn" // consent to be tested
	AlertPhysician   AlertKind = "physician" // a plan needs a physician's name
	AlertSince       AlertKind = "since"     // a record behind the agreed plan was corrected
	AlertHeat        AlertKind = "heat"      // the agreed session is too hot for usual care
	AlertCondition   AlertKind = "condition" // a condition of the profile
	AlertReview      AlertKind = "review"    // the day of the review has passed
)

// Alert is one thing to know; Flag is the condition it is about, Gain that of a
// gain in mass, Heat the level and Day the day of the review.
type Alert struct {
	Kind AlertKind
	Flag record.FlagKind
	Gain Gain
	Heat climate.Level
	Day  record.Date
}

// AlertsOf lists what has to be known of an athlete on a day, the gravest first.
// last is the newest sheet; nil where there is none.
func AlertsOf(a record.Athlete, last *Findings, on time.Time) []Alert {
	var list []Alert
	if last != nil {
		if g, ok := GainOf(*last, a, on); ok {
			list = append(list, Alert{Kind: AlertGain, Gain: g})
		}
	}
	all := care.Of(a, on)
	var standing []Alert
	for _, kind := range care.ByGravity(all.Flags) {
		if care.EffectOf(kind).Today {
			list = append(list, Alert{Kind: AlertToday, Flag: kind})
			continue
		}
		standing = append(standing, Alert{Kind: AlertCondition, Flag: kind})
	}
	if len(all.Outstanding) > 0 {
		list = append(list, Alert{Kind: AlertOutstanding})
	}
	if TestConsentWithdrawn(a, record.DateOf(on)) {
		list = append(list, Alert{Kind: AlertWithdrawn})
	}
	if len(all.NeedsPhysician) > 0 {
		list = append(list, Alert{Kind: AlertPhysician, Flag: care.ByGravity(all.NeedsPhysician)[0]})
	}
	return append(list, standing...)
}

// TestConsentWithdrawn reports whether a consent to be tested was withdrawn by a day
// and none given since.
func TestConsentWithdrawn(a record.Athlete, on record.Date) bool {
	_, ok := withdrawn(a, on, record.ConsentTest)
	return ok
}

// Withdrawn is the last day on which a consent of any purpose was withdrawn that
// does not hold on a day; ok is false where none was.
func Withdrawn(a record.Athlete, on record.Date) (day record.Date, ok bool) {
	for _, p := range []record.Purpose{record.ConsentTest, record.ConsentUrine, record.ConsentCoach, record.ConsentResearch} {
		if d, was := withdrawn(a, on, p); was {
			day, ok = max(day, d), true
		}
	}
	return day, ok
}

// withdrawn is the last day a purpose's consent was withdrawn, while none holds.
func withdrawn(a record.Athlete, on record.Date, p record.Purpose) (day record.Date, ok bool) {
	for _, c := range a.Consents {
		switch {
		case c.Purpose != p || c.Deleted():
		case c.Holds(on):
			return "", false
		case c.Withdrawn != "" && c.Withdrawn <= on:
			day = max(day, c.Withdrawn)
		}
	}
	return day, day != ""
}

// PlanAlerts lists what has to be known of an agreed plan on a day: a record behind it
// was corrected, its session asks for less because of the heat, its review is past.
func PlanAlerts(c Case, on record.Date) []Alert {
	var list []Alert
	if c.Since.Changed {
		list = append(list, Alert{Kind: AlertSince})
	}
	if level := c.Heat(); level >= climate.Reduce {
		list = append(list, Alert{Kind: AlertHeat, Heat: level})
	}
	if day := c.Plan.Agreement.Review; day != "" && day < on {
		list = append(list, Alert{Kind: AlertReview, Day: day})
	}
	return list
}

// WithPlan sets the alerts of a plan among those of its athlete, the gravest first:
// before the conditions of the profile, the review last.
func WithPlan(list, ofPlan []Alert) []Alert {
	all := slices.Concat(list, ofPlan)
	order := []AlertKind{AlertGain, AlertToday, AlertOutstanding, AlertWithdrawn, AlertPhysician, AlertSince, AlertHeat, AlertCondition, AlertReview}
	slices.SortStableFunc(all, func(a, b Alert) int {
		return cmp.Compare(slices.Index(order, a.Kind), slices.Index(order, b.Kind))
	})
	return all
}
