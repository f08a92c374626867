package field_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// What is odd of a covered number would tell how large it is: it is said while the number is
// typed, and not once it is left.
func TestCoveredNumberTellsNoOddity(t *testing.T) {
	h := use(t)
	n := field.NewNumber(h, "mass", evidence.MassBefore, quantity.Kilogram)
	n.SetValue(29)
	n.Resize(fyne.NewSize(300, 80))
	said := func() string { return strings.Join(textsOf(n), " ") }
	if !strings.Contains(said(), "Usually") {
		t.Fatalf("29 kg is not asked about: %q", said())
	}
	high := n.MinSize().Height
	n.Cover(true)
	if text := said(); strings.Contains(text, "Usually") || !strings.Contains(text, "••••") || n.MinSize().Height >= high {
		t.Errorf("covered, it says %q in %g px, uncovered in %g", text, n.MinSize().Height, high)
	}
	n.FocusGained()
	if text := said(); !strings.Contains(text, "Usually") || strings.Contains(text, "••••") {
		t.Errorf("while it is typed it says %q", text)
	}
	n.FocusLost()
	if text := said(); strings.Contains(text, "Usually") {
		t.Errorf("left, it says %q", text)
	}
}
