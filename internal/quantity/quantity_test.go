package quantity

import (
	"errors"
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// units lists every unit that has a partner.
func units() []Unit {
	return []Unit{
		Kilogram, Gram, Milligram, Pound, Ounce, Litre, Millilitre, FluidOunce, LitrePerHour, MillilitrePerHour,
		FluidOuncePerHour, DegreeCelsius, DegreeFahrenheit, MetrePerSecond, KilometrePerHour, MilePerHour, Metre,
		Centimetre, Kilometre, Mile, Foot, Inch, Minute, Second, Hour, Kilopascal, Hectopascal,
	}
}

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text  string
		unit  Unit
		value float64
		typed Unit
		err   error
	}{
		{"61.7", Kilogram, 61.7, Kilogram, nil},
		{"61,7", Kilogram, 61.7, Kilogram, nil},
		{" 61,7 kg ", Kilogram, 61.7, Kilogram, nil},
		{"1.234,5", Gram, 1234.5, Gram, nil},
		{"1,234.5", Gram, 1234.5, Gram, nil},
		{"1 234", Gram, 1234, Gram, nil},
		{"1\u202f234", Gram, 1234, Gram, nil},
		{"-3", DegreeCelsius, -3, DegreeCelsius, nil},
		{"−3", DegreeCelsius, -3, DegreeCelsius, nil},
		{"+3", DegreeCelsius, 3, DegreeCelsius, nil},
		{"154 lb", Kilogram, 69.85322498, Pound, nil},
		{"88°F", DegreeCelsius, 31.1111111, DegreeFahrenheit, nil},
		{"16.9 fl oz", Millilitre, 499.79265, FluidOunce, nil},
		{"½", Portion, 0.5, Portion, nil},
		{"2½", Portion, 2.5, Portion, nil},
		{"2 ½", Portion, 2.5, Portion, nil},
		{".5", Litre, 0.5, Litre, nil},
		{"", Kilogram, 0, None, ErrEmpty},
		{"   ", Kilogram, 0, None, ErrEmpty},
		{"abc", Kilogram, 0, None, ErrNotNumber},
		{"6.1.7", Kilogram, 0, None, ErrNotNumber},
		{"6,1,7", Kilogram, 0, None, ErrNotNumber},
		{"1e5", Kilogram, 0, None, ErrNotNumber},
		{"inf", Kilogram, 0, None, ErrNotNumber},
		{"NaN", Kilogram, 0, None, ErrNotNumber},
		{"61.7 mL", Kilogram, 0, None, ErrOtherUnit},
		{"61.7 stones", Kilogram, 0, None, ErrNotNumber},
		{"💧", Kilogram, 0, None, ErrNotNumber},
		{"٣", Kilogram, 0, None, ErrNotNumber},
	} {
		got, err := Parse(c.text, c.unit)
		if !errors.Is(err, c.err) {
			t.Errorf("Parse(%q): error %v, want %v", c.text, err, c.err)
			continue
		}
		if err == nil && (math.Abs(got.Value-c.value) > 1e-4 || got.Unit != c.typed) {
			t.Errorf("Parse(%q) = %v %q, want %v %q", c.text, got.Value, got.Unit, c.value, c.typed)
		}
	}
}

// What is converted there and back is what it was.
func TestUnitsRoundTrip(t *testing.T) {
	list := units()
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.SampledFrom(list).Draw(t, "a")
		b := rapid.SampledFrom(list).Draw(t, "b")
		x := rapid.Float64Range(-1e6, 1e6).Draw(t, "x")
		there, err := Convert(x, a, b)
		if SameKind(a, b) != (err == nil) {
			t.Fatalf("%q to %q: same kind %v, error %v", a, b, SameKind(a, b), err)
		}
		if err != nil {
			return
		}
		back, err := Convert(there, b, a)
		if err != nil || math.Abs(back-x) > 1e-9*math.Max(1, math.Abs(x)) {
			t.Fatalf("%v %q came back as %v (%v)", x, a, back, err)
		}
	})
}

func TestRound(t *testing.T) {
	for _, c := range []struct {
		x        float64
		decimals int
		want     float64
	}{{2.149, 1, 2.1}, {-2.15, 1, -2.2}, {1185, -1, 1190}, {-0.04, 1, 0}, {0.5, 0, 1}} {
		if got := Round(c.x, c.decimals); got != c.want || (got == 0 && math.Signbit(got)) {
			t.Errorf("Round(%v, %d) = %v, want %v", c.x, c.decimals, got, c.want)
		}
	}
	if RoundTo(447, 50) != 450 || RoundTo(447, 0) != 447 {
		t.Error("RoundTo missed its step")
	}
}

func TestKinds(t *testing.T) {
	if Kilograms(61.7).Grams() != 61700 || Grams(250).Kilograms() != 0.25 || Grams(1.5).Milligrams() != 1500 ||
		Milligrams(500).Grams() != 0.5 || Litres(0.45).Millilitres() != 450 || Millilitres(450).Litres() != 0.45 ||
		Minutes(90).Hours() != 1.5 {
		t.Error("a conversion between kinds is wrong")
	}
	if r := (Range{1, 2}); r.Width() != 1 || !r.Contains(1) || !r.Contains(2) || r.Contains(2.1) {
		t.Error("Range is wrong about its ends")
	}
	for _, u := range units() {
		if d := Decimals(u); d < 0 || d > 3 {
			t.Errorf("%q is shown with %d decimals", u, d)
		}
	}
}

// A number that is read is finite, and reads the same when written plainly.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"61.7", "61,7 kg", "½", "1.234,5", "−3 °C", "154lb", "💧", "1e309", "..", ",", "-½"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		got, err := Parse(text, Kilogram)
		if err != nil {
			if got != (Typed{}) {
				t.Errorf("half a number %v beside error %v", got, err)
			}
			return
		}
		if math.IsNaN(got.Value) || math.IsInf(got.Value, 0) {
			t.Fatalf("Parse(%q) = %v", text, got.Value)
		}
		again, err := Parse(strconv.FormatFloat(got.Value, 'f', -1, 64), Kilogram)
		if err != nil || again.Value != got.Value {
			t.Errorf("%q read as %v, then as %v (%v)", text, got.Value, again.Value, err)
		}
	})
}
