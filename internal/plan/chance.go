package plan

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"ebbwell/assets"
	"ebbwell/internal/evidence"
)

// Certainty says whether a chance to drink will come.
type Certainty int

// The certainties.
const (
	Certain Certainty = iota
	// Maybe: may fall out.
	Maybe
	// IfHot: only in heat, and then by the organiser's decision.
	IfHot
)

// Chance is a moment at which the sport lets one drink.
type Chance struct {
	// Code names it, "half-time"; words under "chance."+Code.
	Code   string
	Minute float64
	// Seconds it lasts; zero when time is no limit, as with a carried bottle.
	Seconds   float64
	CanEat    bool
	Certainty Certainty
	Fixed     Fixed
}

// Fixed is an amount that was set by hand at a chance, mL: it stands, as far as
// the chance, stomach and loss let it, and the others are filled around it.
type Fixed struct {
	On bool
	ML float64
}

// Sport is one sport's chances as the table has them.
type Sport struct {
	// Code and Session name it; words under "sport." and "sport-session.".
	Code, Session string
	Rules         []Rule
}

// Rule is one row of the table: a kind of chance and when it comes.
type Rule struct {
	Chance Chance
	// At lists moments in min of a session of Minutes, its pauses counted; they
	// move with the real one, at the same moment of play. Every, in min, repeats instead.
	At             []float64
	Minutes, Every float64
	Sure           evidence.Sureness
	Note           string
}

// ErrTable means: a table of chances cannot be read.
var ErrTable = errors.New("table of chances")

// Sports reads the table that comes with the program. The rules are those of
// the sports' rule books; the moments in between are spread evenly, and rule
// books change, so an athlete's own chances go before it.
func Sports() ([]Sport, error) { return ReadSports(bytes.NewReader(assets.Breaks())) }

// Chances expands the rules over a session of a length in min, in order of
// time. Breaks for heat are left out unless it is hot.
func (s Sport) Chances(minutes float64, heat Heat) []Chance {
	if !(minutes > 0) || math.IsInf(minutes, 0) {
		return nil
	}
	var list []Chance
	for _, r := range s.Rules {
		if r.Chance.Certainty == IfHot && heat != Hot {
			continue
		}
		for _, at := range r.moments(minutes, s.clockOf(r.Minutes)) {
			c := r.Chance
			c.Minute = at
			list = append(list, c)
		}
	}
	slices.SortStableFunc(list, func(a, b Chance) int { return cmp.Compare(a.Minute, b.Minute) })
	return slices.CompactFunc(list, overlaps)
}

// overlaps merges breaks for heat that rules place at the same moment; the
// first of the table stands.
func overlaps(a, b Chance) bool {
	return a.Minute == b.Minute && a.Certainty == IfHot && b.Certainty == IfHot
}

// moments of a rule in a session of a length in min; none at its very end.
func (r Rule) moments(minutes float64, c playClock) []float64 {
	var list []float64
	if r.Every > 0 {
		for k := 1.0; k*r.Every < minutes; k++ {
			list = append(list, k*r.Every)
		}
		return list
	}
	for _, at := range r.At {
		list = append(list, c.in(minutes, at))
	}
	return list
}

// chanceColumns are the columns of the table, in order.
const chanceColumns = "sport,session,minutes,chance,at,every,seconds,eat,certain,sure,note"

// ReadSports reads a table of chances: CSV with the columns sport, session,
// minutes, chance, at, every, seconds, eat, certain, sure, note in that order. The error wraps
// [ErrTable] and names the row.
func ReadSports(r io.Reader) ([]Sport, error) {
	rows, err := csv.NewReader(r).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrTable, err)
	}
	if len(rows) < 2 || strings.Join(rows[0], ",") != chanceColumns {
		return nil, fmt.Errorf("%w: columns are not %s", ErrTable, chanceColumns)
	}
	var list []Sport
	for i, cells := range rows[1:] {
		rule, err := readRule(cells)
		if err != nil {
			return nil, fmt.Errorf("%w: row %d: %w", ErrTable, i+1, err)
		}
		at := slices.IndexFunc(list, func(s Sport) bool { return s.Code == cells[0] && s.Session == cells[1] })
		if at < 0 {
			at = len(list)
			list = append(list, Sport{Code: cells[0], Session: cells[1]})
		}
		list[at].Rules = append(list[at].Rules, rule)
	}
	for _, s := range list {
		if err := s.checkPauses(); err != nil {
			return nil, fmt.Errorf("%w: %s, %s: %w", ErrTable, s.Code, s.Session, err)
		}
	}
	return list, nil
}

// readRule reads one row.
func readRule(cells []string) (Rule, error) {
	var failed error
	upTo := func(s string, most float64) float64 {
		if s == "" {
			return 0
		}
		x, err := strconv.ParseFloat(s, 64)
		if err != nil || !(x >= 0) || x > most {
			failed = fmt.Errorf("%q is not a time", s)
			return 0
		}
		return x
	}
	rule := Rule{
		Chance:  Chance{Code: cells[3], Seconds: upTo(cells[6], dayMinutes*secondsPerMinute), CanEat: cells[7] == "yes"},
		Minutes: upTo(cells[2], dayMinutes), Every: upTo(cells[5], dayMinutes), Sure: evidence.Sureness(cells[9]), Note: cells[10],
	}
	for _, s := range strings.Fields(cells[4]) {
		rule.At = append(rule.At, upTo(s, dayMinutes))
	}
	switch cells[8] {
	case "yes":
	case "maybe":
		rule.Chance.Certainty = Maybe
	case "if-hot":
		rule.Chance.Certainty = IfHot
	default:
		return Rule{}, fmt.Errorf("%q is neither yes, maybe nor if-hot", cells[8])
	}
	if failed != nil {
		return Rule{}, failed
	}
	return rule, rule.check(cells[0], cells[7])
}

// dayMinutes is the longest session there is.
const dayMinutes = 24 * minutesPerHour

// check asks for a name, for moments inside the session or an interval of a
// minute or more, and for a clear word about eating.
func (r Rule) check(sport, eat string) error {
	switch {
	case sport == "" || r.Chance.Code == "":
		return errors.New("sport or chance has no name")
	case eat != "yes" && eat != "no":
		return fmt.Errorf("%q is neither yes nor no", eat)
	case (r.Every > 0) == (len(r.At) > 0):
		return errors.New("give moments or an interval")
	case len(r.At) > 0 && r.Minutes == 0:
		return errors.New("moments need the minutes of the session they lie in")
	case r.Every > 0 && r.Every < 1:
		return fmt.Errorf("an interval of %g min is too short", r.Every)
	}
	for _, at := range r.At {
		if at > r.Minutes {
			return fmt.Errorf("moment %g lies after the end at %g", at, r.Minutes)
		}
	}
	return nil
}
