package sweat

import (
	"encoding/binary"
	"math"
	"testing"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
)

// fuzzed hands out the values of a fuzzed sheet.
type fuzzed struct{ data []byte }

// byte takes one byte; 0 when there are no more.
func (f *fuzzed) byte() byte {
	if len(f.data) == 0 {
		return 0
	}
	b := f.data[0]
	f.data = f.data[1:]
	return b
}

// value takes any float: a plain one mostly, sometimes any bit pattern.
func (f *fuzzed) value() float64 {
	switch kind := f.byte(); {
	case kind < 200:
		return float64(binary.LittleEndian.Uint16([]byte{f.byte(), f.byte()})) / float64(1+int(kind)%100)
	case kind < 210:
		return -float64(f.byte())
	case kind < 214:
		return math.Inf(1 - 2*int(kind%2))
	case kind < 217:
		return math.NaN()
	default:
		var raw [8]byte
		for i := range raw {
			raw[i] = f.byte()
		}
		return math.Float64frombits(binary.LittleEndian.Uint64(raw[:]))
	}
}

// pointer takes a value, or nil.
func pointer[T ~float64](f *fuzzed) *T {
	if f.byte()%4 == 0 {
		return nil
	}
	return new(T(f.value()))
}

// list takes up to three values.
func list[T ~float64](f *fuzzed) []T {
	var l []T
	for range f.byte() % 4 {
		l = append(l, T(f.value()))
	}
	return l
}

func pick[T any](f *fuzzed, from ...T) T { return from[int(f.byte())%len(from)] }

// sheet takes a whole sheet.
func (f *fuzzed) sheet() Input {
	in := Input{
		Time: Time{pointer[quantity.Minutes](f), pointer[quantity.Minutes](f)},
		Body: Body{
			Before: list[quantity.Kilograms](f), After: list[quantity.Kilograms](f),
			DressBefore: pick[Dress](f, "", Minimal, KitOn, "other"), DressAfter: pick[Dress](f, "", Minimal, KitOn, "other"),
			Step: pointer[quantity.Kilograms](f), OtherScale: f.byte()%2 == 0,
			KitDry: pointer[quantity.Kilograms](f), KitWet: pointer[quantity.Kilograms](f),
		},
		Output: Output{pointer[quantity.Grams](f), pointer[quantity.Grams](f)},
		Markers: Markers{
			Gravity: pointer[float64](f), Osmolality: pointer[float64](f), Colour: pointer[float64](f),
			Morning: pointer[quantity.Kilograms](f), Baseline: list[quantity.Kilograms](f),
			Thirst: pointer[float64](f), Stomach: pointer[float64](f),
		},
		Effort: Effort{pointer[float64](f), pointer[float64](f), pointer[quantity.Kilocalories](f), pointer[float64](f), pointer[float64](f), f.value()},
		Air:    Air{pointer[quantity.Celsius](f), pointer[quantity.Kilopascals](f)},
		Options: Options{
			Uncorrected: pick(f, true, false), DeficitAim: pointer[quantity.Percent](f),
			Sex: pick[Sex](f, "", Female, Male, "other"), Kept: f.kept(),
		},
	}
	in.Intake.NothingDrunk = f.byte()%2 == 0
	for range f.byte() % 4 {
		in.Intake.Bottles = append(in.Intake.Bottles, Bottle{
			pick[Use](f, "", Drunk, PouredOver, Shared, "other"), pointer[float64](f), pointer[quantity.Grams](f), pointer[quantity.Grams](f),
			list[quantity.Grams](f), pointer[quantity.Grams](f), pointer[quantity.Millilitres](f), pointer[quantity.Percent](f), pointer[quantity.Percent](f),
		})
	}
	for range f.byte() % 4 {
		in.Intake.Foods = append(in.Intake.Foods, Food{pointer[quantity.Grams](f), pointer[float64](f)})
	}
	for range f.byte() % 4 {
		in.Patches = append(in.Patches, f.patch())
	}
	return in
}

func (f *fuzzed) patch() Patch {
	return Patch{
		Site: pick(f, evidence.ForearmDorsal, evidence.Thigh, evidence.Chest, evidence.FiveSiteMean, evidence.Forehead, "other"),
		On:   pointer[quantity.Minutes](f), Off: pointer[quantity.Minutes](f),
		Sodium: pointer[quantity.MillimolesPerLitre](f), Potassium: pointer[quantity.MillimolesPerLitre](f),
		Method: pick(f, "", evidence.DirectElectrode, evidence.Conductivity, evidence.IonChromatography), U: pointer[quantity.MillimolesPerLitre](f),
		Condition: pick[Condition](f, "", Good, Detached, Saturated, "other"),
	}
}

// kept keeps nothing, or everything that can be kept.
func (f *fuzzed) kept() []Kept {
	if f.byte()%2 == 0 {
		return nil
	}
	var all []Kept
	for _, l := range evidence.Limits() {
		for item := range 4 {
			all = append(all, Kept{l.Field, item})
		}
	}
	return all
}

// FuzzEvaluate gives Evaluate whole sheets of anything: no panic, nothing half
// made beside an error, and every figure keeps its promises.
func FuzzEvaluate(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte("a sheet of nothing in particular, long enough to fill a few fields of it with something"))
	f.Add([]byte{1, 10, 200, 95, 0, 0, 1, 1, 20, 64, 0, 1, 20, 62, 0, 1, 1, 1, 0, 0, 0})
	for seed := range byte(40) {
		data := make([]byte, 600)
		x := uint32(seed) + 1
		for i := range data {
			x = x*1664525 + 1013904223
			data[i] = byte(x >> 24)
		}
		f.Add(data)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := Evaluate((&fuzzed{data}).sheet())
		for path, fig := range figuresOf(r) {
			if err != nil && (fig.Known || fig.Ranged) {
				t.Fatalf("%s is %s beside %v", path, state(fig), err)
			}
			if wrong := checkFigure(fig); wrong != "" {
				t.Fatalf("%s: %s", path, wrong)
			}
		}
		for _, flag := range r.Flags {
			if !finite(flag.Size) {
				t.Fatalf("flag %+v", flag)
			}
		}
		for _, p := range r.Sodium.Patches {
			if !finite(p.Raw) {
				t.Fatalf("patch %+v", p)
			}
		}
	})
}
