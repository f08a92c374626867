package app

import (
	"fmt"

	"ebbwell/app/desk"
	"ebbwell/app/roster"
	"ebbwell/app/testsheet"
)

// make makes the screen of a place.
func (p *Program) make(place desk.Place) (desk.View, error) {
	switch place.Screen {
	case desk.Athletes:
		return roster.New(p.desk)
	case desk.Tests:
		return testsheet.New(p.desk, place)
	}
	return nil, fmt.Errorf("no screen %q", place.Screen)
}
