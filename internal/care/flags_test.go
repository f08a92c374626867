package care

import (
	"slices"
	"testing"
	"time"

	"ebbwell/internal/record"
)

func day() time.Time { return time.Date(2026, 5, 14, 0, 0, 0, 0, time.UTC) }

// One row a flag: what it must change.
func TestFlagEffects(t *testing.T) {
	type want struct{ physician, salt, hide, water, marker, own bool }
	for kind, w := range map[record.FlagKind]want{
		record.FlagKidney:         {physician: true, salt: true, water: true, marker: true},
		record.FlagHeart:          {physician: true, salt: true, water: true},
		record.FlagBloodPressure:  {physician: true, salt: true},
		record.FlagDiuretics:      {physician: true, water: true, marker: true},
		record.FlagDesmopressin:   {physician: true, water: true, marker: true},
		record.FlagLithium:        {physician: true, water: true, marker: true},
		record.FlagAntidepressant: {water: true},
		record.FlagNSAID:          {water: true},
		record.FlagOtherMedicine:  {physician: true},
		record.FlagDiabetes:       {physician: true, marker: true},
		record.FlagPregnancy:      {physician: true, marker: true},
		record.FlagHyponatraemia:  {physician: true, water: true},
		record.FlagEating:         {physician: true, hide: true},
		record.FlagCysticFibrosis: {physician: true, water: true},
		record.FlagSickleCell:     {physician: true},
		record.FlagHeatIllness:    {physician: true},
		record.FlagSpinalInjury:   {physician: true, water: true, own: true},
	} {
		t.Run(string(kind), func(t *testing.T) {
			a := record.Athlete{Born: "1999-01-02", Flags: []record.Flag{{Kind: kind}}}
			care := Of(a, day())
			got := want{len(care.NeedsPhysician) > 0, len(care.WithholdSalt) > 0, care.MassHidden, care.WaterCaution, care.MarkerCaution, care.OwnTests}
			if got != w {
				t.Errorf("got %+v, want %+v", got, w)
			}
			a.Flags[0].Physician = "named physician"
			if care := Of(a, day()); len(care.NeedsPhysician) > 0 {
				t.Error("still asks for the physician who is named")
			}
			gone := day()
			a.Flags[0].DeletedAt = &gone
			if care := Of(a, day()); len(care.Flags) > 0 {
				t.Error("a flag taken back still counts")
			}
		})
	}
}

func TestMinor(t *testing.T) {
	a := record.Athlete{Born: "2010-01-02"}
	care := Of(a, day())
	if !care.MassHidden || !slices.Equal(care.Outstanding, []string{"guardian", "assent", "mass-hidden"}) {
		t.Errorf("got %+v", care)
	}
	a.Guardian, a.Assent, a.MassHiddenSettled = "named guardian", "2026-05-01", true
	if care := Of(a, day()); len(care.Outstanding) > 0 || care.MassHidden {
		t.Errorf("settled, and got %+v", care)
	}
	if care := Of(record.Athlete{Born: "1999-01-02"}, day()); len(care.Flags) > 0 || len(care.Outstanding) > 0 || care.MassHidden {
		t.Errorf("an adult without flags got %+v", care)
	}
}

func TestEveryFlagOnceInTheTable(t *testing.T) {
	seen := map[record.FlagKind]bool{}
	for _, e := range Effects() {
		if seen[e.Kind] {
			t.Errorf("%s stands twice", e.Kind)
		}
		seen[e.Kind] = true
	}
	if EffectOf("unheard-of") != (Effect{Kind: "unheard-of"}) {
		t.Error("an unknown flag has an effect")
	}
}

// Without a birth date nobody knows whether the athlete is a minor: no first
// sheet, and body mass stays hidden whatever was settled.
func TestUnknownAge(t *testing.T) {
	for name, born := range map[string]record.Date{"empty": "", "no day": "1999-13-40", "still to come": "2031-01-02"} {
		t.Run(name, func(t *testing.T) {
			a := record.Athlete{Born: born, Guardian: "named guardian", Assent: "2026-05-01", MassHiddenSettled: true}
			care := Of(a, day())
			if AgeKnown(a, day()) || !care.MassHidden || !slices.Equal(care.Outstanding, []string{"born"}) || len(care.Flags) > 0 {
				t.Errorf("got %+v", care)
			}
			a.Born = "1999-01-02"
			if care := Of(a, day()); !AgeKnown(a, day()) || care.MassHidden || len(care.Outstanding) > 0 {
				t.Errorf("known, and got %+v", care)
			}
		})
	}
}

// A condition of the day holds on the day it was entered and on no other; each says
// what it changes.
func TestConditionsOfTheDay(t *testing.T) {
	now := time.Date(2026, 5, 18, 9, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		kind   record.FlagKind
		water  bool
		putOff bool
	}{{record.FlagIllToday, false, true}, {record.FlagStomachToday, true, true}} {
		a := record.Athlete{Born: "1999-01-02", Flags: []record.Flag{{Meta: record.Meta{CreatedAt: now}, Kind: c.kind}}}
		if got := Of(a, now.Add(3*time.Hour)); len(got.Flags) != 1 || got.WaterCaution != c.water || EffectOf(c.kind).PutOff != c.putOff {
			t.Errorf("%s on its day: %+v", c.kind, got)
		}
		if got := Of(a, now.AddDate(0, 0, 1)); len(got.Flags) != 0 {
			t.Errorf("%s on the day after: %+v", c.kind, got)
		}
	}
	past := record.Athlete{Born: "1999-01-02", Flags: []record.Flag{{Kind: record.FlagHeatIllness}}}
	if got := Of(past, now); len(got.NeedsPhysician) != 1 || got.NeedsPhysician[0] != record.FlagHeatIllness {
		t.Errorf("past heat illness: %+v", got)
	}
}
