package trip

import (
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
)

// BenchmarkStop is what one keystroke at a stop asks for: the stop in sight, a
// hotter and a cooler day, every other stop and the curve of the picture.
func BenchmarkStop(b *testing.B) {
	d, _ := apptest.Demo(b)
	trip := demoTrip(b, d)
	v, _ := open(b, d, desk.Place{Record: trip.ID, Part: string(trip.Stops[1].ID)})
	b.ResetTimer()
	for range b.N {
		v.follow()
	}
}
