package evidence

import "testing"

// BenchmarkLimits looks the limits of a field up; the table is made once.
func BenchmarkLimits(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if len(Limits()) == 0 {
			b.Fatal("there are no limits")
		}
	}
}
