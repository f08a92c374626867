package plan

import (
	"errors"
	"math"

	"ebbwell/internal/evidence"
)

// Planner answers questions about mixes for one basis, session, menu and aim.
// It never changes; every move on the screen asks it again, and a change of
// basis, session, menu or aim makes a new one.
type Planner struct {
	basis   Basis
	session Session
	menu    Menu
	aim     Aim
	// limit of the deficit at the end, % of body mass.
	limit float64
	// carried is what the breaks let one drink, L, where they are known; see
	// [Planner.At].
	carried [Lengths]Bound
	// chances are the breaks the planner was made for.
	chances []Chance
	// habit and background are what a proposal starts from; measuredLH is the
	// ceiling where a measured habit lies above the low end; see [Planner.From].
	habit      Mix
	background Background
	measuredLH float64
}

const minutesPerHour = 60

// New makes a planner. A short or long length that is zero is taken as the
// expected one. The error joins [evidence.Problem] values: sweat rate, body
// mass or duration missing, numbers that are not finite, negative, or in the
// wrong order, an item that cannot be computed with. Odd but possible values
// are not refused here; that is asked where they are typed.
func New(b Basis, s Session, m Menu, a Aim) (*Planner, error) {
	for l := range s.Minutes {
		if s.Minutes[l] == 0 {
			s.Minutes[l] = s.Minutes[Expected]
		}
	}
	if err := errors.Join(checkBasis(b), checkSession(s), checkMenu(m), checkAim(a)); err != nil {
		return nil, err
	}
	p := &Planner{basis: b, session: s, menu: m, aim: a, limit: DeficitLimit(s.Heat)}
	for slot := range p.menu {
		if item := &p.menu[slot]; item.InUse && item.Most == 0 {
			item.Most = item.sliderEnd(Slot(slot), p.hours(Long))
		}
	}
	if a.Deficit.On {
		p.limit = a.Deficit.High
	}
	if b.Body.Hidden {
		p.hideLimit()
	}
	return p, nil
}

// hideLimit brings the limit of the deficit to coarse litres: from where a guard
// begins to speak, or a band ends, the mass could else be worked out.
func (p *Planner) hideLimit() {
	const step = evidence.HiddenLimitStep
	litres := p.limit / p.percent(1)
	p.limit = p.percent(max(step, math.Round(litres/step)*step))
	if p.aim.Deficit.On {
		p.aim.Deficit.High = max(p.aim.Deficit.Low, p.limit)
	}
}

// Basis returns what the plan is based on.
func (p *Planner) Basis() Basis { return p.basis }

// Session returns what the plan is for.
func (p *Planner) Session() Session { return p.session }

// OneBottle returns a planner whose schedules have one bottle at each break.
func (p *Planner) OneBottle() *Planner {
	one := *p
	one.session.OneBottle = true
	return &one
}

// Menu returns what may be taken, with the ends of the sliders.
func (p *Planner) Menu() Menu { return p.menu }

// Aim returns what a plan should meet.
func (p *Planner) Aim() Aim { return p.aim }

// hours of a length.
func (p *Planner) hours(l Length) float64 { return p.session.Minutes[l] / minutesPerHour }

// percent of body mass of a volume in L.
func (p *Planner) percent(litres float64) float64 { return 100 * litres / p.basis.Body.MassKg }

// problem is a refused value.
func problem(f evidence.Field, item int, code string, x float64) error {
	return evidence.Problem{Field: f, Item: item, Code: code, Severity: evidence.Refuses, Value: x}
}

// positive asks for a number above zero.
func positive(f evidence.Field, item int, x float64) error {
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return problem(f, item, evidence.CodeNotFinite, x)
	case x < 0:
		return problem(f, item, evidence.CodeNegative, x)
	case x == 0:
		return problem(f, item, evidence.CodeMissing, x)
	}
	return nil
}

// finite asks for a number.
func finite(f evidence.Field, x float64) error {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return problem(f, 0, evidence.CodeNotFinite, x)
	}
	return nil
}

// notNegative asks for zero or more.
func notNegative(f evidence.Field, x float64) error {
	if x == 0 {
		return nil
	}
	return positive(f, 0, x)
}

// ordered asks for low <= value <= high, none negative.
func ordered(f evidence.Field, r Ranged) error {
	for _, x := range [...]float64{r.Low, r.Value, r.High} {
		if err := notNegative(f, x); err != nil {
			return err
		}
	}
	if r.Low > r.Value || r.Value > r.High {
		return problem(f, 0, evidence.CodeOrder, r.Value)
	}
	return nil
}

func checkBasis(b Basis) error {
	var sodium error
	if b.Sodium.Known {
		sodium = ordered(evidence.PatchSodium, b.Sodium)
	}
	rate := positive(evidence.SweatRate, 0, b.SweatRate.Value)
	if rate == nil {
		rate = ordered(evidence.SweatRate, b.SweatRate)
	}
	return errors.Join(
		rate, sodium,
		notNegative(evidence.SweatRate, b.RespiratoryLH),
		finite(evidence.SweatRate, b.ExchangeLH),
		notNegative(evidence.PatchSodium, b.PotassiumMmolL),
		positive(evidence.BodyMass, 0, b.Body.MassKg),
		notNegative(evidence.Height, b.Body.HeightM),
		notNegative(evidence.Duration, b.Body.AgeYears),
		notNegative(evidence.DrinkingRate, b.Usual.LH),
	)
}

func checkSession(s Session) error {
	var list []error
	for i, minutes := range s.Minutes {
		list = append(list, positive(evidence.Duration, i+1, minutes))
	}
	if s.Minutes[Short] > s.Minutes[Expected] || s.Minutes[Expected] > s.Minutes[Long] {
		list = append(list, problem(evidence.Duration, 0, evidence.CodeOrder, s.Minutes[Expected]))
	}
	return errors.Join(append(list, notNegative(evidence.Duration, s.NextHours))...)
}

func checkMenu(m Menu) error {
	var list []error
	for s, item := range m {
		if item.InUse && !item.usable() {
			list = append(list, problem(evidence.FoodMass, s, evidence.CodeNotFinite, item.Most))
		}
	}
	return errors.Join(list...)
}

func checkAim(a Aim) error {
	bounds := []struct {
		field evidence.Field
		bound Bound
	}{
		{evidence.MassChange, a.Deficit}, {evidence.FoodMass, a.Carbohydrate}, {evidence.PatchSodium, a.Sodium},
		{evidence.DrinkingRate, a.Drinking}, {evidence.FoodMass, a.Strength},
	}
	var list []error
	for _, b := range bounds {
		if b.bound.On {
			list = append(list, ordered(b.field, Ranged{Value: b.bound.Low, Range: b.bound.Range}))
		}
	}
	return errors.Join(list...)
}
