// Package frozen is the form in which a calculation is kept beside its record: what
// went in and what came out when a test was closed or a plan agreed, so that both stay
// what they were whatever becomes of formulas, products and profiles.
//
// It holds what is written and reads it again, and decides nothing: what goes in, and
// what is shown of a copy that cannot be taken as it is, is decided in package consult.
// A copy is JSON by the names of these fields; a field that is renamed is lost from all
// copies that were kept before.
package frozen

import (
	"encoding/json"
	"errors"
	"fmt"

	"ebbwell/internal/climate"
	"ebbwell/internal/figure"
	"ebbwell/internal/fuel"
	"ebbwell/internal/plan"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// Athlete is what of the athlete a calculation used.
type Athlete struct {
	Mouthful  record.Number
	ID        record.ID
	Born      record.Date
	Sex       record.Sex
	Height    record.Number
	UsualMass record.Number
	Sport     string
	Usual     record.Number
	// FirstMass is that of the athlete; zero in copies of before there was one.
	FirstMass float64 `json:",omitempty"`
}

// Test is what is kept of a closed test beside its record: everything
// that went in, so that it can be calculated again.
type Test struct {
	Test     record.Test
	Athlete  Athlete
	Settings record.Settings
	Products []Product
	// Hidden: body mass was hidden, so that no figure was calculated with it.
	Hidden bool
	// Reasons are the reasons given for values beyond their limits.
	Reasons []record.RawText
}

// Product is a product as it was, with the id the sheet calls it by: a
// generic one may have been corrected by one of the practice's own.
type Product struct {
	Named   record.ID
	Product fuel.Product
}

// Findings is what came out of a closed test: all that a sheet shows.
type Findings struct {
	Minutes                  float64
	Timed                    bool
	Sweat                    sweat.Result
	Intake                   fuel.Intake
	RatePlaces, SodiumPlaces []sweat.Place
	Advice                   fuel.Advice
	Limit                    float64
}

// Plan is what is kept of an agreed plan beside its record.
type Plan struct {
	Plan    record.Plan
	Athlete Athlete
	Basis   plan.Basis
	Rate    figure.Figure
	Tests   []record.ID
	Session plan.Session
	Menu    plan.Menu
	Aim     plan.Aim
	// Background is what was known of the habit.
	Background plan.Background
	// Kind and Air are what it was based on, Findings the tests as they then
	// were, RangeAlone and Place what was said of an estimate, OwnTests why there was
	// none, Heat what the heat called for.
	Kind       record.BasisKind
	Air        record.Air
	Findings   []PlanTest
	RangeAlone bool
	Place      string
	OwnTests   string `json:",omitempty"`
	Heat       climate.Level
	// Products are those of its options as they then were.
	Products []Product
}

// PlanTest is a test a plan is based on, with what it said at the agreement.
type PlanTest struct {
	Test     record.Test
	Findings Findings
}

// Outcome is one option of an agreed plan as predicted.
type Outcome struct {
	Option     record.ID
	Prediction plan.Prediction
}

// AthleteOf is what is kept of an athlete.
func AthleteOf(a record.Athlete) Athlete {
	return Athlete{
		ID: a.ID, Born: a.Born, Sex: a.Sex, Height: a.Height, UsualMass: a.UsualMass, Sport: a.Sport, Usual: a.UsualDrinking,
		Mouthful: a.Mouthful, FirstMass: a.FirstMass,
	}
}

// Over puts what of an athlete goes into a calculation back as it was.
func (was Athlete) Over(a record.Athlete) record.Athlete {
	a.Born, a.Sex, a.Height, a.UsualMass, a.Sport, a.UsualDrinking = was.Born, was.Sex, was.Height, was.UsualMass, was.Sport, was.Usual
	return a
}

// Whole reports whether what was read is findings: a closed test has a rate
// with a range.
func (out Findings) Whole() bool {
	return out.Timed && out.Sweat.Fluid.Rate.Known && out.Sweat.Fluid.Rate.Ranged
}

// ReadPlan reads the newest of the copies of a plan; kept are its copies, newest first.
// An error says that there is none, or that another version wrote it otherwise.
func ReadPlan(kept []record.Frozen) (was Plan, err error) {
	if len(kept) == 0 {
		return was, errors.New("no copy was kept")
	}
	if err := json.Unmarshal(kept[0].Inputs, &was); err != nil {
		return was, fmt.Errorf("read the copy kept of plan %s: %w", kept[0].Record, err)
	}
	return was, nil
}

// ReadTest reads what went into the newest copy of a test; kept are its copies, newest
// first. The errors are those of [ReadPlan], or it is the copy of another test.
func ReadTest(t record.Test, kept []record.Frozen) (was Test, err error) {
	if len(kept) == 0 {
		return was, errors.New("no copy was kept")
	}
	if err := json.Unmarshal(kept[0].Inputs, &was); err != nil {
		return was, fmt.Errorf("read the copy kept of test %s: %w", t.ID, err)
	}
	if was.Test.ID != t.ID {
		return was, fmt.Errorf("read the copy kept of test %s: it is not of this test", t.ID)
	}
	return was, nil
}

// ReadFindings reads what came out; ok is false where that cannot be read, or is not
// whole.
func ReadFindings(kept record.Frozen) (out Findings, ok bool) {
	err := json.Unmarshal(kept.Results, &out)
	return out, err == nil && out.Whole()
}

// Write writes a copy: what went in, and what came out. of names the record in the
// error.
func Write(of string, in, out any) (inputs, results []byte, err error) {
	if inputs, err = json.Marshal(in); err != nil {
		return nil, nil, fmt.Errorf("freeze %s: %w", of, err)
	}
	if results, err = json.Marshal(out); err != nil {
		return nil, nil, fmt.Errorf("freeze what came of %s: %w", of, err)
	}
	return inputs, results, nil
}
