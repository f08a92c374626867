package athlete

import (
	"testing"

	"ebbwell/app/apptest"
)

// The overview of an athlete with several tests, from the records to the screen.
func BenchmarkOverview(b *testing.B) {
	d, _ := apptest.Demo(b)
	id := apptest.AthleteNamed(b, d, "Ravka").ID
	for b.Loop() {
		if _, err := NewOverview(d, id); err != nil {
			b.Fatal(err)
		}
	}
}
