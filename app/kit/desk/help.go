package desk

// HelpPage names a page of help. Its texts are the keys "help.<page>.<part>" of the
// catalogue. The parts are title, for, enter, figures and keys: what the screen is for,
// what to enter, what the figures mean, the screen's own keys. A part after the first two
// may have several lines, and a line a term before a tab.
type HelpPage string

// The pages: one for each screen, and for what a screen asks in a dialog of its own.
const (
	HelpWelcome   HelpPage = "welcome"
	HelpAthletes  HelpPage = "athletes"
	HelpProfile   HelpPage = "profile"
	HelpOverview  HelpPage = "overview"
	HelpSheet     HelpPage = "sheet"
	HelpFindings  HelpPage = "findings"
	HelpPlan      HelpPage = "plan"
	HelpAgreement HelpPage = "agreement"
	HelpClimate   HelpPage = "climate"
	HelpHandout   HelpPage = "handout"
	// HelpPaper is a page before it is saved or printed.
	HelpPaper     HelpPage = "paper"
	HelpTestDay   HelpPage = "test-day"
	HelpSquad     HelpPage = "squad"
	HelpTrips     HelpPage = "trips"
	HelpPantry    HelpPage = "pantry"
	HelpPractice  HelpPage = "practice"
	HelpGive      HelpPage = "give"
	HelpImport    HelpPage = "import"
	HelpColleague HelpPage = "colleague"
)

// Helped is a [View] that shows more than its [Screen] says, and so names its page of
// help.
type Helped interface{ HelpPage() HelpPage }

// HelpOf is the page of a screen.
func HelpOf(s Screen) HelpPage {
	switch s {
	case Athletes:
		return HelpAthletes
	case TestDay:
		return HelpTestDay
	case Trips, Trip:
		return HelpTrips
	case Pantry:
		return HelpPantry
	case Practice:
		return HelpPractice
	case Overview:
		return HelpOverview
	case Tests:
		return HelpSheet
	case Plan:
		return HelpPlan
	case Handout:
		return HelpHandout
	case Import:
		return HelpImport
	case Colleague:
		return HelpColleague
	case Profile:
		return HelpProfile
	case Give:
		return HelpGive
	}
	return ""
}
