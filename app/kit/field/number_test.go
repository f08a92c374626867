package field_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look/golden"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

func TestNumberReads(t *testing.T) {
	h := use(t)
	for _, c := range []struct {
		field evidence.Field
		base  quantity.Unit
		shown quantity.Unit
		raw   string
		state field.State
		value float64
		unit  quantity.Unit
		note  string
	}{
		{evidence.BodyMass, "kg", "kg", "", field.Empty, 0, "kg", ""},
		{evidence.BodyMass, "kg", "kg", "64,35", field.Good, 64.35, "kg", ""},
		{evidence.BodyMass, "kg", "kg", "64.35", field.Good, 64.35, "kg", ""},
		{evidence.BodyMass, "kg", "kg", "154 lb", field.Good, 69.85322498, "lb", ""},
		{evidence.BodyMass, "kg", "lb", "154", field.Good, 69.85322498, "lb", ""},
		{evidence.BodyMass, "kg", "lb", "70 kg", field.Good, 70, "kg", ""},
		{evidence.BodyMass, "kg", "kg", "138", field.Warned, 138, "kg", "Usually 40 to 130 kg"},
		{evidence.BodyMass, "kg", "lb", "300", field.Warned, 136.077711, "lb", "Usually 88.2 to 286.6 lb"},
		{evidence.BodyMass, "kg", "kg", "643", field.Refused, 643, "kg", "Not used: outside 20 to 250 kg"},
		{evidence.BodyMass, "kg", "kg", "sixty", field.Unreadable, 0, "kg", "Not a number"},
		{evidence.BodyMass, "kg", "kg", "60 mL", field.Unreadable, 0, "kg", "unit does not fit"},
		{evidence.AirTemperature, "°C", "°F", "95", field.Good, 35, "°F", ""},
		{evidence.AirTemperature, "°C", "°F", "140 ", field.Refused, 60, "°F", "Not used: outside −4 to 131 °F"},
		{evidence.USG, "", "", "1,016", field.Good, 1.016, "", ""},
		{evidence.USG, "", "", "1016", field.Refused, 1016, "", "Not used: outside 1 to 1.04."},
		{"a field without a limit", "mL", "mL", "1e9", field.Unreadable, 0, "mL", ""},
		{"a field without a limit", "L", "mL", "250", field.Good, 0.25, "mL", ""},
	} {
		n := field.NewNumber(h, "n", c.field, c.base)
		n.SetShown(c.shown)
		n.SetRaw(c.raw)
		r := n.Reading()
		if r.Raw != c.raw || r.State != c.state || math.Abs(r.Value-c.value) > 1e-6 || r.Unit != c.unit {
			t.Errorf("%s %q in %s: %+v", c.field, c.raw, c.shown, r)
		}
		if _, note := n.Trouble(); !strings.Contains(note, c.note) || (c.note == "" && c.state <= field.Good && note != "") {
			t.Errorf("%s %q in %s says %q, want %q", c.field, c.raw, c.shown, note, c.note)
		}
		if _, ok := n.Value(); ok != (c.state == field.Good || c.state == field.Warned) {
			t.Errorf("%s %q: usable %v in state %d", c.field, c.raw, ok, c.state)
		}
	}
}

// Half a number is not scolded; a trouble goes as soon as it is over.
func TestNumberWaitsToComplain(t *testing.T) {
	h := use(t)
	var events diary
	n := field.NewNumber(h, "mass", evidence.BodyMass, quantity.Kilogram)
	n.OnChanged = func(r field.Reading) { events.note("changed %s %d", r.Raw, r.State) }
	n.OnLeft = func(r field.Reading) { events.note("left %s %d", r.Raw, r.State) }
	d := open(t, n, field.NewLine(h, "next", 0))
	d.Focus("mass")
	d.Type("6")
	if w, _ := n.Trouble(); w != field.Fine {
		t.Error("the first digit was scolded")
	}
	d.Tab()
	if w, note := n.Trouble(); w != field.Wrong || note == "" {
		t.Error("6 kg was not refused when the field was left")
	}
	events.expect(t, "changed 6 3", "left 6 3")
	d.BackTab()
	d.Type("64")
	if w, note := n.Trouble(); w != field.Fine || note != "" {
		t.Errorf("64 kg is still scolded: %q", note)
	}
	events.expect(t, "changed 6 3", "changed 64 1")
}

func TestNumberHandsItsProblemOn(t *testing.T) {
	h := use(t)
	var events diary
	n := field.NewNumber(h, "mass", evidence.BodyMass, quantity.Kilogram)
	n.OnProblem = func(w field.Weight, words string) { events.note("%d %s", w, words) }
	height := n.MinSize().Height
	n.SetRaw("643")
	events.expect(t, "2 Not used: outside 20 to 250 kg.")
	if n.MinSize().Height != height {
		t.Error("the field grew although its words stand elsewhere")
	}
	n.SetRaw("64")
	events.expect(t, "0 ")
	n.SetRaw("65")
	events.expect(t)
}

func TestNumberSetTellsNobody(t *testing.T) {
	h := use(t)
	n := field.NewNumber(h, "n", evidence.BodyMass, quantity.Kilogram)
	n.OnChanged = func(field.Reading) { t.Error("told") }
	n.SetValue(64.35)
	n.SetShown(quantity.Pound)
	n.Clear()
}

func TestNumberWrites(t *testing.T) {
	h := use(t)
	n := field.NewNumber(h, "n", "", quantity.Litre)
	n.SetValue(0.45)
	if n.Text() != "0.45" {
		t.Errorf("0.45 L stands as %q", n.Text())
	}
	n.SetShown(quantity.FluidOunce)
	if n.Text() != "15" {
		t.Errorf("in ounces it stands as %q", n.Text())
	}
	n.SetShown(quantity.Kilogram)
	if n.Text() != "15" {
		t.Error("litres cannot be shown in kilograms")
	}
	n.SetShown(quantity.Litre)
	n.SetRaw("0,4500")
	n.SetValue(0.45)
	if n.Text() != "0,4500" {
		t.Errorf("the same value rewrote what was typed to %q", n.Text())
	}
	half := field.NewNumber(h, "n", evidence.Portions, quantity.Portion)
	half.SetFormat(h.Words.Half)
	half.SetValue(1.5)
	if x, ok := half.Value(); half.Text() != "1½" || !ok || x != 1.5 {
		t.Errorf("one and a half portions stand as %q and are read as %v", half.Text(), x)
	}
}

func TestPoundsHint(t *testing.T) {
	h := use(t)
	for raw, want := range map[string]bool{"154": true, "264": true, "64": false, "138": true, "600": false, "12": false, "154 lb": false, "x": false} {
		n := field.NewNumber(h, "n", evidence.BodyMass, quantity.Kilogram)
		n.Hint = n.PoundsHint
		n.SetRaw(raw)
		if _, note := n.Trouble(); strings.Contains(note, "Pounds?") != want {
			t.Errorf("%q says %q", raw, note)
		}
	}
}

func TestMetresHint(t *testing.T) {
	h := use(t)
	for raw, want := range map[string]bool{"1.91": true, "1,75": true, "191": false, "19.1": false, "0.4": false, "1.91 m": false, "x": false} {
		n := field.NewNumber(h, "n", evidence.Height, quantity.Metre)
		n.SetShown(quantity.Centimetre)
		n.Hint = n.MetresHint
		n.SetRaw(raw)
		if _, note := n.Trouble(); strings.Contains(note, "Metres?") != want {
			t.Errorf("%q says %q", raw, note)
		}
	}
}

// What is written in any shown unit is read back to what was set.
func TestNumberRoundTrip(t *testing.T) {
	golden.Use(t, golden.Mode{Percent: 100})
	h := newHost(t)
	rapid.Check(t, func(t *rapid.T) {
		pair := rapid.SampledFrom([][2]quantity.Unit{{"kg", "kg"}, {"kg", "lb"}, {"mL", "fl oz"}, {"L", "mL"}, {"°C", "°F"}, {"m", "cm"}}).Draw(t, "units")
		x := quantity.Round(rapid.Float64Range(-50, 500).Draw(t, "x"), 2)
		n := field.NewNumber(h, "n", "", pair[0])
		n.SetShown(pair[1])
		n.SetDecimals(6)
		n.SetValue(x)
		got, ok := n.Value()
		if !ok || math.Abs(got-x) > 1e-4 {
			t.Fatalf("%v %s stands as %q %s and is read as %v", x, pair[0], n.Text(), pair[1], got)
		}
	})
}

// A field of grams takes millilitres where it is known what one weighs, and writes
// them again as they were typed.
func TestNumberTakesAnotherKind(t *testing.T) {
	h := use(t)
	n := field.NewNumber(h, "poured", evidence.PouredAway, quantity.Gram)
	weighs := 1.03
	n.Also(quantity.Millilitre, func() float64 { return weighs })
	for text, want := range map[string]float64{"100": 100, "100 g": 100, "100 mL": 103, "0,1 L": 103} {
		n.SetRaw(text)
		if r := n.Reading(); !r.Usable() || math.Abs(r.Value-want) > 1e-9 {
			t.Errorf("%q is read as %+v, want %g g", text, r, want)
		}
	}
	n.SetRaw("2 km")
	if r := n.Reading(); r.State != field.Unreadable {
		t.Errorf("kilometres are read as %+v", r)
	}
	n.Clear()
	n.SetKept(103, quantity.Millilitre)
	if n.Text() != "100 mL" {
		t.Errorf("103 g typed in mL are written as %q", n.Text())
	}
	weighs = 0
	n.SetRaw("100 mL")
	if r := n.Reading(); r.State != field.Unreadable {
		t.Errorf("without a density mL are read as %+v", r)
	}
	if n.SetRaw("250"); n.Worded() != "250\u00a0g" {
		t.Errorf("worded %q", n.Worded())
	}
}
