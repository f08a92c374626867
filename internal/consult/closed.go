package consult

import (
	"math"

	"ebbwell/internal/care"
	"ebbwell/internal/frozen"
	"ebbwell/internal/record"
)

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
	who := frozen.AthleteOf(a)
	if f.then != nil {
		d, raw, who = *f.then, f.reasons, f.who
	}
	if list := masses(f.Test, record.Before); classed(who.UsualMass, who.FirstMass) <= 0 && len(list) > 0 {
		who.FirstMass = float64(list[0]) // this is the first of them
	}
	in := frozen.Test{Test: f.Test, Athlete: who, Settings: d.Settings, Products: productsOf(f.Test, d.Pantry), Hidden: hiddenOn(a, TestDay(f.Test))}
	for _, r := range raw {
		if r.Reason {
			in.Reasons = append(in.Reasons, r)
		}
	}
	return frozen.Write("test "+string(f.Test.ID), in, frozenFindings(f))
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
func frozenFindings(f Findings) frozen.Findings {
	return frozen.Findings{
		Minutes: f.Minutes, Timed: f.Timed, Sweat: f.Sweat, Intake: f.Intake, RatePlaces: f.RatePlaces, SodiumPlaces: f.SodiumPlaces,
		Advice: f.Advice, Limit: f.Limit,
	}
}

// productsOf lists the products a sheet names, each once.
func productsOf(t record.Test, p *Pantry) []frozen.Product {
	var list []frozen.Product
	seen := map[record.ID]bool{}
	add := func(id record.ID) {
		if product, ok := p.Find(id); ok && !seen[id] {
			list, seen[id] = append(list, frozen.Product{Named: id, Product: product}), true
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
	was, err := frozen.ReadTest(t, kept)
	if err != nil {
		f := Find(t, a, raw, d)
		f.Kept = KeptNothing
		return f
	}
	then, how, hidden := deskOf(was, d), KeptInputs, hiddenOn(a, TestDay(t))
	if hidden && !(was.Hidden && sameClass(was.Athlete, a)) {
		how = KeptHidden
	} else if t.State == record.TestClosed {
		if out, ok := frozen.ReadFindings(kept[0]); ok {
			if sameMethod(out, d.Settings.FieldMethod) {
				f := thawed(out, t, a, was.Reasons)
				f.Kept, f.Evidence, f.then, f.who, f.zone = KeptFigures, kept[0].Evidence, &then, was.Athlete, d.Zone
				return f
			}
			how = KeptMethod
		}
	}
	person := was.Athlete.Over(a)
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
func sameMethod(out frozen.Findings, uncorrected bool) bool {
	for _, c := range out.Sweat.Corrections {
		if c.On == uncorrected {
			return false
		}
	}
	return alike(out.Sweat.Fluid.DeficitShare.Value, -out.Sweat.Fluid.MassChange.Value)
}

// deskOf is the desk a test was closed at: with what it names, and the settings
// of then but for the method, which is the practice's.
func deskOf(was frozen.Test, now Setup) Setup {
	settings := was.Settings
	settings.FieldMethod = now.Settings.FieldMethod
	return Setup{Pantry: pantryOf(was.Products), Settings: settings, Activities: now.Activities}
}

// thawed puts what came out then beside the test.
func thawed(out frozen.Findings, t record.Test, a record.Athlete, reasons []record.RawText) Findings {
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
