package testsheet

import (
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/field"
)

// Where body mass is hidden a weighing is read by nobody who looks on: dots stand in its
// field, as many whatever it is, on the part where it is entered; it is seen while it is
// typed and covered again once the field is left, with what was said beside it.
func TestWeighingsAreCoveredOnceLeft(t *testing.T) {
	b := newSheet(t)
	b.fill()
	for part, name := range map[string]string{PartBefore: "testsheet.before.mass.1", PartAfter: "testsheet.after.mass.1"} {
		b.part(part)
		if seen := strings.Join(apptest.VisibleTexts(b.w.Content()), " "); strings.Contains(seen, "••••") || !strings.Contains(seen, "6") {
			t.Fatalf("%s: covered though nothing is hidden: %s", name, seen)
		}
	}
	b = b.hide()
	for part, name := range map[string]string{PartBefore: "testsheet.before.mass.1", PartAfter: "testsheet.after.mass.1"} {
		b.part(part)
		for _, kg := range []string{"63.55", "7.5", "143.25"} {
			apptest.Type(t, b.w, name, kg)
			if seen := strings.Join(apptest.VisibleTexts(b.w.Content()), " "); !strings.Contains(seen, kg) {
				t.Errorf("%s: %s is not seen while it is typed: %s", name, kg, seen)
			}
			apptest.Leave(b.w)
			o := field.Find(b.w.Content(), name)
			covered, ok := o.(interface{ Covered() bool })
			if !ok || !covered.Covered() {
				t.Errorf("%s: not covered with %s", name, kg)
			}
			seen := strings.Join(apptest.VisibleTexts(b.w.Content()), " ")
			if strings.Contains(seen, kg) || strings.Count(seen, "••••") == 0 || strings.Contains(seen, "•••••") {
				t.Errorf("%s: after %s is left: %s", name, kg, seen)
			}
		}
	}
}
