package consult

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"

	"ebbwell/internal/care"
	"ebbwell/internal/fuel"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// FrozenTest is what is kept of a closed test beside its record: everything
// that went in, so that it can be calculated again.
type FrozenTest struct {
	Test     record.Test
	Athlete  FrozenAthlete
	Settings record.Settings
	Products []FrozenProduct
	// Hidden: body mass was hidden, so that no figure was calculated with it.
	Hidden bool
	// Reasons are the reasons given for values beyond their limits.
	Reasons []record.RawText
}

// FrozenProduct is a product as it was, with the id the sheet calls it by: a
// generic one may have been corrected by one of the practice's own.
type FrozenProduct struct {
	Named   record.ID
	Product fuel.Product
}

// FrozenFindings is what came out of a closed test: all that a sheet shows.
type FrozenFindings struct {
	Minutes                  float64
	Timed                    bool
	Sweat                    sweat.Result
	Intake                   Intake
	RatePlaces, SodiumPlaces []sweat.Place
	Advice                   fuel.Advice
	Limit                    float64
}

// Kept says where the figures of a closed test come from.
type Kept string

const (
	// KeptFigures says that they are those that were kept when it was closed.
	KeptFigures Kept = "figures"
	// KeptInputs says that they are calculated anew from what went in then, since
	// a value of the laboratory came later, or since what was kept cannot be
	// read because another version wrote it otherwise.
	KeptInputs Kept = "inputs"
	// KeptMethod says that they are calculated anew from what went in then, since
	// they were kept by another method than the practice's: corrected for breath
	// and gas exchange or not, and the deficit as the scale says it. One practice
	// has one method for all its tests.
	KeptMethod Kept = "method"
	// KeptHidden says that they are calculated anew from what went in then, since
	// body mass is hidden now and was not, or not in the same class.
	KeptHidden Kept = "hidden"
	// KeptNothing says that nothing that was kept can be read and that they are
	// calculated anew from the records as they are now.
	KeptNothing Kept = "nothing"
)

// FreezeTest writes down what a test was calculated from and what came out. What
// was calculated with the products, settings and reasons of an earlier copy is
// written down with those.
func FreezeTest(f Findings, a record.Athlete, raw []record.RawText, d Setup) (inputs, results []byte, err error) {
	who := frozenAthlete(a)
	if f.then != nil {
		d, raw, who = *f.then, f.reasons, f.who
	}
	if list := masses(f.Test, record.Before); classed(who.UsualMass, who.FirstMass) <= 0 && len(list) > 0 {
		who.FirstMass = float64(list[0]) // this is the first of them
	}
	in := FrozenTest{Test: f.Test, Athlete: who, Settings: d.Settings, Products: productsOf(f.Test, d.Pantry), Hidden: hiddenOn(a, TestDay(f.Test))}
	for _, r := range raw {
		if r.Reason {
			in.Reasons = append(in.Reasons, r)
		}
	}
	if inputs, err = json.Marshal(in); err != nil {
		return nil, nil, fmt.Errorf("freeze test %s: %w", f.Test.ID, err)
	}
	if results, err = json.Marshal(frozenFindings(f)); err != nil {
		return nil, nil, fmt.Errorf("freeze the figures of test %s: %w", f.Test.ID, err)
	}
	return inputs, results, nil
}

// LineOf is what a list shows of a closed test.
func LineOf(f Findings) record.FrozenLine {
	line := record.FrozenLine{Gain: record.GainNo}
	if Gained(f) {
		line.Gain = record.GainYes
	}
	if rate := f.Sweat.Fluid.Rate; rate.Known {
		line.Rate, line.Ranged, line.Method = &rate.Value, rate.Ranged, record.Settings{FieldMethod: f.Sweat.Fluid.Bias > 0}.Method()
	}
	return line
}

// frozenFindings is what of findings is kept.
func frozenFindings(f Findings) FrozenFindings {
	return FrozenFindings{
		Minutes: f.Minutes, Timed: f.Timed, Sweat: f.Sweat, Intake: f.Intake, RatePlaces: f.RatePlaces, SodiumPlaces: f.SodiumPlaces,
		Advice: f.Advice, Limit: f.Limit,
	}
}

// productsOf lists the products a sheet names, each once.
func productsOf(t record.Test, p *Pantry) []FrozenProduct {
	var list []FrozenProduct
	seen := map[record.ID]bool{}
	add := func(id record.ID) {
		if product, ok := p.Find(id); ok && !seen[id] {
			list, seen[id] = append(list, FrozenProduct{Named: id, Product: product}), true
		}
	}
	for _, b := range t.Bottles {
		add(b.ProductID)
	}
	for _, f := range t.Foods {
		add(f.ProductID)
	}
	return list
}

// FindAsClosed is [Find] for a test as it is kept. A closed one comes with the
// figures of its newest copy (kept, newest first), whatever became of products,
// bands, formulas and athlete since; one that waits for the laboratory is
// calculated with the products, bands and reasons of then and the values that
// came. Kept of the findings says which it was. What is shown to whom (Care)
// follows the profile as it is now. An open test is calculated as it stands.
func FindAsClosed(t record.Test, a record.Athlete, raw []record.RawText, kept []record.Frozen, d Setup) Findings {
	if t.State == record.TestOpen || t.State == "" {
		return Find(t, a, raw, d)
	}
	was, err := thawTest(t, kept)
	if err != nil {
		f := Find(t, a, raw, d)
		f.Kept = KeptNothing
		return f
	}
	then, how, hidden := was.desk(d), KeptInputs, hiddenOn(a, TestDay(t))
	if hidden && !(was.Hidden && sameClass(was.Athlete, a)) {
		how = KeptHidden
	} else if t.State == record.TestClosed {
		var out FrozenFindings
		if err := json.Unmarshal(kept[0].Results, &out); err == nil && out.whole() {
			if out.sameMethod(d.Settings.FieldMethod) {
				f := out.findings(t, a, was.Reasons)
				f.Kept, f.Evidence, f.then, f.who, f.zone = KeptFigures, kept[0].Evidence, &then, was.Athlete, d.Zone
				return f
			}
			how = KeptMethod
		}
	}
	person := was.Athlete.of(a)
	if hidden {
		person.UsualMass = a.UsualMass
	}
	f := Find(t, person, was.Reasons, then)
	f.Care = care.Of(a, TestDay(t))
	f.Kept, f.Evidence, f.then, f.who = how, kept[0].Evidence, &then, was.Athlete
	return f
}

// sameMethod reports whether figures were made by the method of the practice, and
// their deficit is what the scale says.
func (out FrozenFindings) sameMethod(uncorrected bool) bool {
	for _, c := range out.Sweat.Corrections {
		if c.On == uncorrected {
			return false
		}
	}
	return alike(out.Sweat.Fluid.DeficitShare.Value, -out.Sweat.Fluid.MassChange.Value)
}

// thawTest reads what went into the newest copy of a test.
func thawTest(t record.Test, kept []record.Frozen) (was FrozenTest, err error) {
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

// desk is the desk a test was closed at: with what it names, and the settings
// of then but for the method, which is the practice's.
func (was FrozenTest) desk(now Setup) Setup {
	settings := was.Settings
	settings.FieldMethod = now.Settings.FieldMethod
	return Setup{Pantry: pantryOf(was.Products), Settings: settings, Activities: now.Activities}
}

// of puts what of an athlete goes into a calculation back as it was.
func (was FrozenAthlete) of(a record.Athlete) record.Athlete {
	a.Born, a.Sex, a.Height, a.UsualMass, a.Sport, a.UsualDrinking = was.Born, was.Sex, was.Height, was.UsualMass, was.Sport, was.Usual
	return a
}

// whole reports whether what was read is findings: a closed test has a rate
// with a range.
func (out FrozenFindings) whole() bool {
	return out.Timed && out.Sweat.Fluid.Rate.Known && out.Sweat.Fluid.Rate.Ranged
}

// findings puts what came out then beside the test.
func (out FrozenFindings) findings(t record.Test, a record.Athlete, reasons []record.RawText) Findings {
	return Findings{
		Test: t, Minutes: out.Minutes, Timed: out.Timed, Sweat: out.Sweat, Intake: out.Intake, RatePlaces: out.RatePlaces,
		SodiumPlaces: out.SodiumPlaces, Advice: out.Advice, Care: care.Of(a, TestDay(t)), Limit: out.Limit, reasons: reasons,
	}
}

// Differing names the figures that differ from those of other findings of the
// same test by more than the last bits of a number; see [Findings.Figures].
func (f Findings) Differing(other Findings) []string {
	var list []string
	there := other.Figures()
	for i, n := range f.Figures() {
		a, b := n.Figure, there[i].Figure
		same := a.Known == b.Known && a.Ranged == b.Ranged && alike(a.Value, b.Value) &&
			(!a.Ranged || alike(a.Range.Low, b.Range.Low) && alike(a.Range.High, b.Range.High))
		if !same {
			list = append(list, n.Name)
		}
	}
	return list
}

// alike reports whether two numbers are the same but for rounding.
func alike(a, b float64) bool {
	return math.Abs(a-b) <= 1e-9*max(1, math.Abs(a))
}
