package consult

import (
	"strings"
	"sync"

	"ebbwell/internal/evidence"
)

// Sport is what the program knows of a sport. The athlete's sport is the code
// of one of these, or any words of their own.
type Sport struct {
	// Code is stable; its word is in the catalogue of texts under "sport."+Code.
	Code string
	// Group is the published group of its athletes; empty for none.
	Group string
	// Chances is its code in the table of chances to drink; every sport has one.
	Chances string
	// Activity is its usual row in the table of activities.
	Activity string
	// Running lowers what a stomach takes; Intermittent play averages its breaks.
	Running, Intermittent bool
	// Cycling and Rowing say what a power in W is.
	Cycling, Rowing bool
	// InWater: the heat balance does not hold.
	InWater bool
}

// sports is the table of them, made once: every test is asked for its sport.
var sports = sync.OnceValue(makeSports) //nolint:gochecknoglobals // a table that never changes

// Sports lists the sports the program knows, by code. The list is the same at every call
// and is only read.
func Sports() []Sport { return sports() }

// makeSports makes the table.
func makeSports() []Sport {
	return []Sport{
		{Code: "american-football", Group: evidence.SportAmericanFootball, Chances: "american-football", Intermittent: true},
		{Code: "badminton", Chances: "badminton", Activity: "badminton", Intermittent: true},
		{Code: "baseball", Group: evidence.SportBaseball, Chances: "baseball", Intermittent: true},
		{Code: "basketball", Group: evidence.SportBasketball, Chances: "basketball", Activity: "basketball", Intermittent: true},
		{Code: "boxing", Chances: "boxing", Activity: "boxing-ring", Intermittent: true},
		{Code: "cricket", Chances: "cricket", Activity: "cricket", Intermittent: true},
		{Code: "cross-country-skiing", Group: evidence.SportEndurance, Chances: "cross-country-skiing", Activity: "ski-7"},
		{Code: "field-hockey", Chances: "field-hockey", Activity: "field-hockey", Intermittent: true},
		{Code: "football", Group: evidence.SportSoccer, Chances: "football", Activity: "soccer", Intermittent: true, Running: true},
		{Code: "gym", Chances: "court-or-gym", Activity: "circuit", Intermittent: true},
		{Code: "handball", Chances: "handball", Activity: "handball", Intermittent: true},
		{Code: "ice-hockey", Chances: "ice-hockey", Activity: "ice-hockey", Intermittent: true},
		{Code: "judo", Chances: "judo", Activity: "martial-arts", Intermittent: true},
		{Code: "lacrosse", Chances: "lacrosse", Activity: "lacrosse", Intermittent: true},
		{Code: "netball", Chances: "netball", Activity: "basketball", Intermittent: true},
		{Code: "road-cycling", Group: evidence.SportEndurance, Chances: "road-cycling", Activity: "cycle", Cycling: true},
		{Code: "road-running", Group: evidence.SportEndurance, Chances: "road-running", Activity: "run-12.1", Running: true},
		{Code: "rowing", Group: evidence.SportEndurance, Chances: "rowing", Activity: "row-race", Rowing: true},
		{Code: "rugby-union", Chances: "rugby-union", Activity: "rugby-union", Intermittent: true},
		{Code: "squash", Chances: "squash", Activity: "squash", Intermittent: true},
		{Code: "swimming", Group: evidence.SportEndurance, Chances: "swimming", Activity: "swim-fast", InWater: true},
		{Code: "tennis", Chances: "tennis", Activity: "tennis-singles", Intermittent: true},
		{Code: "triathlon", Group: evidence.SportEndurance, Chances: "triathlon", Activity: "run-12.1", Running: true},
		{Code: "volleyball", Chances: "volleyball", Activity: "volleyball", Intermittent: true},
		{Code: "wrestling", Chances: "wrestling", Activity: "wrestling", Intermittent: true},
	}
}

// SportOf finds a sport by its code; a sport in the athlete's own words is not
// known and gets the zero Sport.
func SportOf(code string) Sport {
	for _, s := range Sports() {
		if strings.EqualFold(s.Code, code) {
			return s
		}
	}
	return Sport{}
}

// SportGroup is the published group of a sport; empty for none.
func SportGroup(code string) string { return SportOf(code).Group }
