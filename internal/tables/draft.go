package tables

import (
	"cmp"
	"slices"

	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/record"
)

// Draft is what a file would add, before anything is written.
type Draft struct {
	Kind record.ImportKind
	Rows []RowDraft
	// Faults stop the import until they are mended in the file or their rows are left
	// out; Questions are odd and do not.
	Faults    []Fault
	Questions []Question
	// People and Sheets lead from the ids in a file of this program to those here;
	// Present are those of them that were here before.
	People, Sheets map[record.ID]record.ID
	Present        map[record.ID]bool
}

// RowDraft is what one row adds.
type RowDraft struct {
	// Row is its place in the sheet, from 0.
	Row int
	// Athlete is who it is about, with a new id where nobody is known by that name;
	// Existing: kept already, and left as it is.
	Athlete  record.Athlete
	Existing bool
	// Test is nil in a file of athletes and of results.
	Test *record.Test
	// Twin says that the same is there already.
	Twin Twin
	// Results are what it puts onto patches of kept sheets.
	Results []Result
}

// Twin says where the same test or athlete is already.
type Twin struct {
	// Kept: in the practice's records; Row: in the row before it that says the same,
	// -1 for none.
	Kept bool
	Row  int
}

// Any reports whether there is one.
func (t Twin) Any() bool { return t.Kept || t.Row >= 0 }

// Result is a value of a laboratory for one patch.
type Result struct {
	Test, Patch       record.ID
	Sodium, Potassium record.Number
}

// FaultCode says what is wrong.
type FaultCode string

// What can be wrong.
const (
	FaultNumber   FaultCode = "number"
	FaultUnit     FaultCode = "unit" // a unit of something else stands behind the number
	FaultDay      FaultCode = "day"
	FaultClock    FaultCode = "clock"
	FaultMinutes  FaultCode = "minutes"
	FaultChoice   FaultCode = "choice"  // a word that is not known
	FaultFailed   FaultCode = "failed"  // the spreadsheet could not work it out
	FaultFormula  FaultCode = "formula" // a formula without a result
	FaultLimit    FaultCode = "limit"   // beyond what is possible; Problem has the limit
	FaultFuture   FaultCode = "future"  // a day to come
	FaultBorn     FaultCode = "born"    // born after the test
	FaultLong     FaultCode = "long"    // a text longer than the field
	FaultNoName   FaultCode = "noname"
	FaultSummary  FaultCode = "summary" // a row of sums or means
	FaultNoDate   FaultCode = "nodate"
	FaultNoStart  FaultCode = "nostart"  // a duration without a start
	FaultNoSite   FaultCode = "nosite"   // sodium without the site of the patch
	FaultWho      FaultCode = "who"      // several known athletes it may be
	FaultNobody   FaultCode = "nobody"   // a result of nobody known
	FaultNoSheet  FaultCode = "nosheet"  // no sheet of that day
	FaultClosed   FaultCode = "closed"   // the sheet is closed
	FaultNoPatch  FaultCode = "nopatch"  // the sheet has no patch at that site
	FaultNoValue  FaultCode = "novalue"  // a result without a value
	FaultTwice    FaultCode = "twice"    // two results for one patch
	FaultOwn      FaultCode = "own"      // a cell of one of this program's own tables that does not belong there
	FaultNoColumn FaultCode = "nocolumn" // no column means what every row needs; Target says what
)

// Fault is what is wrong with a cell, a row (Column -1) or the file (Row -1).
type Fault struct {
	Row, Column int
	// Cell is what stands there.
	Cell    string
	Code    FaultCode
	Problem evidence.Problem
	Target  Target
}

// QuestionCode says what is odd.
type QuestionCode string

// What can be odd.
const (
	QuestionLimit     QuestionCode = "limit"     // beyond what is usual; Problem has the limit
	QuestionSheet     QuestionCode = "sheet"     // the sheet will refuse it until it is mended or kept with a reason
	QuestionGain      QuestionCode = "gain"      // heavier after than before
	QuestionGrouped   QuestionCode = "grouped"   // a sign was read as grouping thousands
	QuestionMatched   QuestionCode = "matched"   // taken for a known athlete by the name alone
	QuestionProfile   QuestionCode = "profile"   // the file says something else than the profile, which stays
	QuestionNoBorn    QuestionCode = "noborn"    // no birth date: asked before the first sheet
	QuestionMinor     QuestionCode = "minor"     // under 18: mass hidden, guardian asked for
	QuestionBegan     QuestionCode = "began"     // a start was entered
	QuestionOvernight QuestionCode = "overnight" // ends on the next day
	QuestionThere     QuestionCode = "there"     // the result is on the patch already
	QuestionReplaces  QuestionCode = "replaces"  // the patch has another value
	QuestionUnit      QuestionCode = "unit"      // the unit of a column was chosen by its values
	QuestionScale     QuestionCode = "scale"     // ratings from 6 to 20, which go into the note
	QuestionNoMass    QuestionCode = "nomass"    // a body mass is missing
	QuestionBound     QuestionCode = "bound"     // a limit in the place of a value, which is left out
	QuestionOrder     QuestionCode = "order"     // every date can be read with day or month first
)

// Question is an odd value, or what was taken for granted.
type Question struct {
	Row, Column int
	Cell        string
	Code        QuestionCode
	Problem     evidence.Problem
	// Hidden: about an athlete whose body mass is hidden.
	Hidden bool
}

// Known is what the practice has already.
type Known struct {
	Athletes []record.Athlete
	Tests    []KnownTest
	// Sheets are the tests results may be for, Bibs the numbers of athletes in sessions
	// of a group by test.
	Sheets []record.Test
	Bibs   map[record.ID]string
	// TestIDs are the ids of all tests, Gone those of deleted athletes: no new record
	// of an export may have one of them.
	TestIDs, Gone map[record.ID]bool
}

// KnownTest is a test by whose it is and when.
type KnownTest struct {
	Athlete record.ID
	Date    record.Date
	Start   record.Clock
}

// Options are what building needs besides file and mapping.
type Options struct {
	Today record.Date
	// Sports turns the word for a sport, in any language, into its code.
	Sports map[string]string
	Setup  consult.Setup
	Known  Known
	// NoStart is what is written into the note of a test whose start was not recorded.
	NoStart string
	// Twenty writes a rating from 6 to 20 for the note; nil: the number alone.
	Twenty func(rating string) string
	// Progress is told how many rows are done.
	Progress func(done, of int)
}

// Choice is what a person decided about rows, by their place in the sheet.
type Choice struct {
	// LeaveOut: not imported. Another: imported though the same is there.
	LeaveOut, Another map[int]bool
}

// Takes reports whether a row is imported.
func (c Choice) Takes(r RowDraft) bool {
	return !c.LeaveOut[r.Row] && (!r.Twin.Any() || c.Another[r.Row])
}

// Standing lists the faults that still stop the import: those of rows left out do not.
func (d Draft) Standing(c Choice) []Fault {
	var list []Fault
	for _, f := range d.Faults {
		if f.Row < 0 || !c.LeaveOut[f.Row] {
			list = append(list, f)
		}
	}
	return list
}

// Taken is what is imported by a choice.
type Taken struct {
	Athletes []record.Athlete
	Tests    []record.Test
	Results  []Result
}

// Take collects what is imported: rows by choice, athletes each once and only those
// a row needs.
func (d Draft) Take(c Choice) Taken {
	var t Taken
	seen := map[record.ID]bool{}
	for _, r := range d.Rows {
		if !c.Takes(r) {
			continue
		}
		if len(r.Results) == 0 && !r.Existing && !seen[r.Athlete.ID] {
			t.Athletes, seen[r.Athlete.ID] = append(t.Athletes, r.Athlete), true
		}
		if r.Test != nil {
			t.Tests = append(t.Tests, *r.Test)
		}
		t.Results = append(t.Results, r.Results...)
	}
	return t
}

// SortQuestions puts the gravest first: a gain in mass, then what is about the whole
// file, then row after row.
func SortQuestions(list []Question) {
	weight := func(q Question) int {
		switch {
		case q.Code == QuestionGain:
			return 0
		case q.Row < 0:
			return 1
		}
		return 2
	}
	slices.SortStableFunc(list, func(a, b Question) int { return cmp.Or(cmp.Compare(weight(a), weight(b)), cmp.Compare(a.Row, b.Row)) })
}
