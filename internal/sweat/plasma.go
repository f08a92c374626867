package sweat

import (
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
	"ebbwell/internal/uncertainty"
)

// What stands beside a predicted plasma sodium.
const (
	PlasmaTeaching  = "plasma.teaching"   // always: teaching and caution, never a diagnosis
	PlasmaMinor     = "plasma.minor"      // adults only: no figure
	PlasmaNoAge     = "plasma.no-age"     // no figure
	PlasmaNoWater   = "plasma.no-water"   // body water cannot be calculated: no figure
	PlasmaOutside   = "plasma.outside"    // change of mass outside -4 to 0 %
	PlasmaGainLow   = "plasma.gain-low"   // reads about 2.6 mmol/L low at +2 %
	PlasmaFall      = "plasma.fall"       // a fall is predicted
	PlasmaBelow     = "plasma.below-135"  // predicted below 135 mmol/L
	PlasmaMayBelow  = "plasma.may-below"  // the range reaches below 135 mmol/L
	PlasmaNoProtect = "plasma.no-protect" // sodium does not protect from drinking too much
)

// Person is who drinks; nil for what is not known.
type Person struct {
	Sex    Sex
	Age    *float64 // years
	Height *quantity.Metres
	Mass   *quantity.Kilograms // before the session
}

// Exchanged is what went in and out over a session.
type Exchanged struct {
	// Ions is sodium and potassium in less out, mmol; Water in less out, L.
	Ions, Water float64
	// UIons and UWater are their standard uncertainties.
	UIons, UWater float64
	// Plasma is plasma sodium before, mmol/L; nil assumes 140.
	Plasma *quantity.MillimolesPerLitre
}

// Caution is a predicted plasma sodium and what has to be said with it.
type Caution struct {
	// Plasma is plasma sodium after, mmol/L, and Water body water before, L;
	// both are estimates.
	Plasma, Water figure.Figure
	// Change is plasma sodium after less before, mmol/L.
	Change float64
	// Codes say what stands beside it, the gravest last.
	Codes []string
}

// BodyWater is the total body water of an adult, L, from age in years (men),
// height in cm and mass in kg:
//
//	men   2.447 - 0.09516 age + 0.1074 height + 0.3362 mass
//	women -2.097 + 0.1069 height + 0.2466 mass
//
// (Watson et al. 1980; its coefficient of age is often miscopied.) The standard
// error of the estimate is 3.76 and 3.60 L, from memory. Zero for an unknown sex.
func BodyWater(sex Sex, age, height, mass float64) float64 {
	switch sex {
	case Male:
		return evidence.WaterMenBase - evidence.WaterMenAge*age + evidence.WaterMenHeight*height + evidence.WaterMenMass*mass
	case Female:
		return evidence.WaterWomenBase + evidence.WaterWomenHeight*height + evidence.WaterWomenMass*mass
	}
	return 0
}

// PlasmaSodium is plasma sodium after a session, mmol/L:
//
//	((before + 23.8) TBW + 1.03 dE) / (TBW + dV) - 23.8
//
// with body water TBW in L, dE sodium and potassium in less out in mmol, dV
// water in less out in L (Nguyen and Kurtz). Adults only; good from -4 to 0 %
// change of body mass, 2.6 mmol/L low at +2 % (Baker, Lang, Kenney 2008). For
// teaching and a caution, never a diagnosis.
func PlasmaSodium(before, bodyWater, ions, water float64) float64 {
	return ((before+evidence.NguyenKurtzOffset)*bodyWater+evidence.NguyenKurtzSlope*ions)/(bodyWater+water) - evidence.NguyenKurtzOffset
}

// OverDrinking predicts plasma sodium after a session, measured or planned, as
// a caution. It gives no figure for a minor or where body water cannot be
// calculated, and says so in a code.
func OverDrinking(p Person, e Exchanged) Caution {
	c := Caution{Codes: []string{PlasmaTeaching, PlasmaNoProtect}}
	switch {
	case p.Age == nil:
		c.Codes = append(c.Codes, PlasmaNoAge)
		return c
	case !(*p.Age >= evidence.AdultAge):
		c.Codes = append(c.Codes, PlasmaMinor)
		return c
	}
	water, ok := waterOf(p)
	if !ok || !finite(e.Ions, e.Water, e.UIons, e.UWater) || water.q.Value()+e.Water <= 0 {
		c.Codes = append(c.Codes, PlasmaNoWater)
		return c
	}
	c.Water = water.figure(kind{quantity.Litre, 0, true}, waterSource(p.Sex))
	c.Water.Estimate = true
	before := plasmaBefore(e)
	c.Plasma = after(before, symbol("bodywater", water.q, quantity.Litre), e)
	if !c.Plasma.Known {
		c.Codes = append(c.Codes, PlasmaNoWater)
		return c
	}
	c.Change = c.Plasma.Value - before.q.Value()
	c.judge(100 * e.Water / float64(*p.Mass))
	return c
}

// waterOf is body water with its arithmetic.
func waterOf(p Person) (t term, ok bool) {
	if p.Height == nil || p.Mass == nil || (p.Sex != Male && p.Sex != Female) {
		return t, false
	}
	c := &checker{limits: evidence.Limits()}
	height, ok1 := read(c, evidence.Height, 0, p.Height)
	mass, ok2 := read(c, evidence.BodyMass, 0, p.Mass)
	if !ok1 || !ok2 || !finite(*p.Age) {
		return t, false
	}
	cm := constant("height", 100*height, quantity.Centimetre)
	kg := constant("mass", mass, quantity.Kilogram)
	from := uncertainty.Source{Name: SourceWater}
	if p.Sex == Female {
		t = constant("base", evidence.WaterWomenBase, quantity.Litre).
			plus(constant("perheight", evidence.WaterWomenHeight, "L/cm").times(cm)).
			plus(constant("permass", evidence.WaterWomenMass, "L/kg").times(kg))
		return t.with(evidence.WaterWomenU, from), t.q.Value() > 0
	}
	t = constant("base", evidence.WaterMenBase, quantity.Litre).
		minus(constant("perage", evidence.WaterMenAge, "L/year").times(constant("age", *p.Age, "years"))).
		plus(constant("perheight", evidence.WaterMenHeight, "L/cm").times(cm)).
		plus(constant("permass", evidence.WaterMenMass, "L/kg").times(kg))
	return t.with(evidence.WaterMenU, from), t.q.Value() > 0
}

// waterSource is the evidence behind the body water of a sex.
func waterSource(s Sex) string {
	if s == Female {
		return "body-water.women.mass"
	}
	return "body-water.men.mass"
}

// plasmaBefore is plasma sodium before the session.
func plasmaBefore(e Exchanged) term {
	x := evidence.PlasmaSodium
	if e.Plasma != nil {
		x = float64(*e.Plasma)
	}
	return symbol("before", uncertainty.Measured(x, evidence.PlasmaSodiumU, uncertainty.Source{Name: SourcePlasma}), quantity.MillimolePerLitre)
}

// after applies the equation of Nguyen and Kurtz.
func after(before, water term, e Exchanged) figure.Figure {
	offset := constant("offset", evidence.NguyenKurtzOffset, quantity.MillimolePerLitre)
	ions := symbol("ions", uncertainty.Measured(e.Ions, e.UIons, uncertainty.Source{Name: SourceIons}), quantity.Millimole)
	gain := symbol("water", uncertainty.Measured(e.Water, e.UWater, uncertainty.Source{Name: SourceWaterGain}), quantity.Litre)
	t := before.plus(offset).times(water).plus(constant("slope", evidence.NguyenKurtzSlope, quantity.None).times(ions)).
		over(water.plus(gain)).minus(offset)
	f := t.figure(kind{quantity.MillimolePerLitre, 0, true}, "plasma.slope", "plasma.before")
	f.Estimate = true
	return f
}

// judge adds the codes that the figure and the change of mass (%) call for.
func (c *Caution) judge(change float64) {
	say := func(when bool, code string) {
		if when {
			c.Codes = append(c.Codes, code)
		}
	}
	say(!between(change, evidence.PlasmaGoodFrom, evidence.PlasmaGoodTo), PlasmaOutside)
	say(change > evidence.PlasmaGoodTo, PlasmaGainLow)
	say(c.Change < 0, PlasmaFall)
	below := c.Plasma.Value < evidence.Hyponatraemia
	say(!below && c.Plasma.Range.Low < evidence.Hyponatraemia, PlasmaMayBelow)
	say(below, PlasmaBelow)
}
