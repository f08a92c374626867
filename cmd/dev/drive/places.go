package drive

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"strings"
)

// Places is where the program's named controls stand at the moment.
type Places struct {
	// Size is the width and height of the window's content, in the units of
	// the controls.
	Size     [2]float64 `json:"size"`
	Controls []Control  `json:"controls"`
	// Seq grows by one whenever the program writes anew.
	Seq int `json:"seq"`
}

// Control is one named control: its top left corner and size within the
// window's content, whether it has the keyboard, and the text it shows.
type Control struct {
	Name    string  `json:"name"`
	X       float64 `json:"x"`
	Y       float64 `json:"y"`
	W       float64 `json:"w"`
	H       float64 `json:"h"`
	Focused bool    `json:"focused"`
	Text    string  `json:"text"`
}

// ParsePlaces reads what the program writes to its places file. It refuses a
// window without a size, a control without a name, a name that stands for two
// controls, and numbers that are no place.
func ParsePlaces(data []byte) (Places, error) {
	var p Places
	if err := json.Unmarshal(data, &p); err != nil {
		return Places{}, fmt.Errorf("read places: %w", err)
	}
	if !(p.Size[0] > 0 && p.Size[1] > 0) {
		return Places{}, fmt.Errorf("read places: the window measures %g x %g", p.Size[0], p.Size[1])
	}
	seen := make(map[string]bool, len(p.Controls))
	for _, c := range p.Controls {
		switch {
		case c.Name == "":
			return Places{}, errors.New("read places: a control has no name")
		case seen[c.Name]:
			return Places{}, fmt.Errorf("read places: two controls are named %q", c.Name)
		case c.W < 0 || c.H < 0 || math.IsInf(c.X+c.Y+c.W+c.H, 0):
			return Places{}, fmt.Errorf("read places: %q has no possible place", c.Name)
		}
		seen[c.Name] = true
	}
	return p, nil
}

// readPlaces reads the places file; an error wraps os.ErrNotExist while the
// program has not written it yet.
func readPlaces(file string) (Places, error) {
	data, err := os.ReadFile(file)
	if err != nil {
		return Places{}, fmt.Errorf("read places: %w", err)
	}
	return ParsePlaces(data)
}

// Find returns the control with a name.
func (p Places) Find(name string) (Control, bool) {
	for _, c := range p.Controls {
		if c.Name == name {
			return c, true
		}
	}
	return Control{}, false
}

// Focused returns the control that has the keyboard.
func (p Places) Focused() (Control, bool) {
	for _, c := range p.Controls {
		if c.Focused {
			return c, true
		}
	}
	return Control{}, false
}

// names lists the controls for an error message.
func (p Places) names() string {
	list := make([]string, len(p.Controls))
	for i, c := range p.Controls {
		list[i] = c.Name
	}
	return strings.Join(list, " ")
}
