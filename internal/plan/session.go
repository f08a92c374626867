package plan

import "ebbwell/internal/fuel"

// Length picks one of the three lengths a session can have.
type Length int

// The lengths.
const (
	Short Length = iota
	Expected
	Long
	// Lengths is how many there are.
	Lengths = 3
)

// Heat is how warm the session is.
type Heat int

// The heat classes.
const (
	HeatUnknown Heat = iota
	Cold
	Temperate
	Hot
)

// Session is what the plan is for: the lengths a stomach and a ceiling have to do with.
// What it is like for the heat, package climate's Session, went into the sweat rate of
// the [Basis] before.
type Session struct {
	// Minutes is elapsed time, breaks included, for the short, expected and
	// long session, rising; a zero short or long one is taken as the
	// expected. Each has its own loss and its own ceiling.
	Minutes [Lengths]float64
	Effort  fuel.Effort
	// Intermittent: play with stops, as on court or pitch.
	Intermittent bool
	// Running lowers what a stomach takes.
	Running bool
	// Comfortable: no break but half-time and long ones is filled above comfort.
	Comfortable bool
	// OneBottle: one drink stands at each break; what that does not carry is left out.
	OneBottle bool
	Heat      Heat
	// NextHours is the time from the end to the next session; zero when
	// unknown or days away.
	NextHours float64
}
