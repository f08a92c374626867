package consult

import (
	"strings"

	"ebbwell/internal/evidence"
)

// Sport is what the program knows of a sport. The athlete's sport is the code
// of one of these, or any words of their own.
type Sport struct {
	// Code is stable; its word is in the catalogue of texts under "sport."+Code.
	Code string
	// Group is the published group of its athletes; empty for none.
	Group string
	// Chances is its code in the table of chances to drink; empty for none.
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

// Sports lists the sports the program knows, by code.
func Sports() []Sport {
	return []Sport{
		{Code: "american-football", Group: evidence.SportAmericanFootball, Chances: "american-football", Intermittent: true},
		{Code: "badminton", Chances: "badminton", Activity: "15020", Intermittent: true},
		{Code: "baseball", Group: evidence.SportBaseball, Chances: "baseball", Intermittent: true},
		{Code: "basketball", Group: evidence.SportBasketball, Chances: "basketball", Activity: "15040", Intermittent: true},
		{Code: "boxing", Chances: "boxing", Activity: "15100", Intermittent: true},
		{Code: "cricket", Chances: "cricket", Activity: "15150", Intermittent: true},
		{Code: "cross-country-skiing", Group: evidence.SportEndurance, Activity: "19090"},
		{Code: "field-hockey", Chances: "field-hockey", Activity: "15350", Intermittent: true},
		{Code: "football", Group: evidence.SportSoccer, Chances: "football", Activity: "15605", Intermittent: true, Running: true},
		{Code: "gym", Chances: "court-or-gym", Activity: "02040", Intermittent: true},
		{Code: "handball", Chances: "handball", Activity: "15330", Intermittent: true},
		{Code: "ice-hockey", Chances: "ice-hockey", Activity: "15362", Intermittent: true},
		{Code: "judo", Chances: "judo", Activity: "15430", Intermittent: true},
		{Code: "lacrosse", Activity: "15460", Intermittent: true},
		{Code: "netball", Chances: "netball", Intermittent: true},
		{Code: "road-cycling", Group: evidence.SportEndurance, Chances: "road-cycling", Activity: "01015", Cycling: true},
		{Code: "road-running", Group: evidence.SportEndurance, Chances: "road-running", Running: true},
		{Code: "rowing", Group: evidence.SportEndurance, Chances: "rowing", Activity: "18080", Rowing: true},
		{Code: "rugby-union", Chances: "rugby-union", Activity: "15560", Intermittent: true},
		{Code: "squash", Activity: "15650", Intermittent: true},
		{Code: "swimming", Group: evidence.SportEndurance, Chances: "swimming", Activity: "18230", InWater: true},
		{Code: "tennis", Chances: "tennis", Activity: "15690", Intermittent: true},
		{Code: "triathlon", Group: evidence.SportEndurance, Running: true},
		{Code: "volleyball", Chances: "volleyball", Activity: "15711", Intermittent: true},
		{Code: "wrestling", Chances: "wrestling", Activity: "15730", Intermittent: true},
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
