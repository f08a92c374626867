package climate

import (
	"strconv"
	"testing"
)

// parseNumber reads a number that must be one.
func parseNumber(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}
