package sweat

import (
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// BenchmarkEvaluate is one key stroke on a whole sheet with three bottles, a
// food, two patches, effort and markers.
func BenchmarkEvaluate(b *testing.B) {
	in := wholeSheet()
	in.Intake.Bottles = append(in.Intake.Bottles, Bottle{Use: Shared, Before: new(quantity.Grams(600)), After: new(quantity.Grams(200))})
	in.Intake.Foods = []Food{{Mass: new(quantity.Grams(50))}}
	in.Patches = append(in.Patches, goodPatch(evidence.Thigh, 40))
	in.Effort = Effort{Oxygen: new(2.4)}
	in.Markers = Markers{Gravity: new(1.016), Colour: new(3.0)}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Evaluate(in); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkBaseline is the same call with two weighings and a duration alone.
func BenchmarkBaseline(b *testing.B) {
	in := Input{Time: wholeSheet().Time, Body: wholeSheet().Body}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Evaluate(in); err != nil {
			b.Fatal(err)
		}
	}
}
