package plan

import "ebbwell/internal/evidence"

// OptionKind says what an option is.
type OptionKind string

// The kinds of option.
const (
	OptionHabit OptionKind = "habit"
	OptionFluid OptionKind = "fluid-only"
	OptionFood  OptionKind = "with-food"
	OptionOwn   OptionKind = "own"
	OptionAim   OptionKind = "aim"
)

// Option is one way to drink and eat in the session.
type Option struct {
	Kind OptionKind
	Mix  Mix
	// Met: the mix meets all aims and is the smallest change of its kind.
	// Otherwise it is the nearest there is, and Clash says what stood in the
	// way; the habit itself is offered as it is, with what it misses.
	Met   bool
	Clash Condition
}

// Offer returns the four options a consult starts from: the habit, fluid only
// (no food), with food (some of one at least), and the aim (whatever is the
// smallest change that meets all aims).
func (p *Planner) Offer(s Search) [4]Option {
	misses := p.Misses(s.Length, s.Habit)
	fluid, dry := *p, s
	for f := Food1; f <= Food4; f++ {
		fluid.menu.Clear(f)
		dry.Habit[f] = 0
	}
	return [4]Option{
		{Kind: OptionHabit, Mix: s.Habit, Met: misses == 0, Clash: misses},
		fluid.offered(OptionFluid, dry),
		p.withFood(s),
		p.offered(OptionAim, s),
	}
}

// offered suggests an option: where the aims clash, the nearest one, and where
// they clash twice over, the nearest one that asks for less carbohydrate: what the
// stomach and the breaks take comes before what is wanted.
func (p *Planner) offered(kind OptionKind, s Search) Option {
	found := p.Suggest(s)
	o := Option{Kind: kind, Mix: found.Mix, Met: found.Met, Clash: found.Clash}
	if found.Met {
		return o
	}
	const stomach = DrinkingMost | BreaksMost
	if mix, ok := p.nearest(s, found, stomach); ok {
		o.Mix = mix
	} else if less, ok := p.lessFuel(s); ok {
		o.Mix = less.offered(kind, s).Mix
	} else if mix, ok := p.nearest(s, found, 0); ok {
		o.Mix = mix
	}
	return o
}

// nearest is the mix with the first condition of a clash let go that leaves one,
// apart from those that are to stay. The best that can be done about a deficit is not hunted to the last 0.1 %:
// nobody eats five bars for the water in them.
func (p *Planner) nearest(s Search, found Suggestion, stay Condition) (mix Mix, ok bool) {
	for _, r := range found.Nearest {
		switch {
		case !r.Possible || stay.Has(r.Condition):
		case r.Condition == DeficitMost:
			return p.nearDeficit(s, r), true
		default:
			return r.Mix, true
		}
	}
	return Mix{}, false
}

// lessFuel is the planner with the carbohydrate asked for lowered to what can
// be taken where no drink at all is asked for; ok is false where it need not be.
func (p *Planner) lessFuel(s Search) (less *Planner, ok bool) {
	dry := *p
	dry.aim.Deficit.On = false
	for _, r := range dry.Suggest(s).Nearest {
		if r.Possible && r.Condition == CarbohydrateLeast && r.Missed > 0 {
			lower := *p
			lower.aim.Carbohydrate.Low = max(0, lower.aim.Carbohydrate.Low-r.Missed-evidence.MattersFuel)
			return &lower, true
		}
	}
	return nil, false
}

// nearDeficit is the smallest change that comes within 0.1 % of the least
// deficit there is.
func (p *Planner) nearDeficit(s Search, best Relaxed) Mix {
	near := *p
	near.aim.Deficit.High += best.Missed + evidence.MattersDeficit
	if again := near.Suggest(s); again.Met {
		return again.Mix
	}
	return best.Mix
}

// withFood is the smallest change that has an increment of some food at least.
func (p *Planner) withFood(s Search) Option {
	best, cost := Option{Kind: OptionFood, Mix: s.Habit}, 0.0
	for f := Food1; f <= Food4; f++ {
		if !p.menu[f].InUse || !p.aim.allows(f) && s.Habit[f] == 0 {
			continue
		}
		r := p.rowsOf(s.Length)
		q := p.problem(s, r.all(), false)
		some := q.Slots[f].Values
		for len(some) > 0 && some[0] == 0 {
			some = some[1:]
		}
		if len(some) == 0 {
			continue
		}
		q.Slots[f].Values = some
		answer := q.Solve()
		if answer.Found && (!best.Met || answer.Cost < cost) {
			best, cost = Option{Kind: OptionFood, Mix: mixOf(answer.Values), Met: true}, answer.Cost
		}
	}
	if !best.Met {
		best = p.offered(OptionFood, s)
		best.Met = false
	}
	return best
}

// Difference is how option b differs from a, b less a.
type Difference struct {
	Mix            Mix
	DeficitL       float64
	Deficit        float64 // % of body mass
	DrunkL         float64
	RateLH         float64
	CarbohydrateGH float64
	SodiumMgH      float64
	Strength       float64 // g per 100 mL
	// Gained are guards that speak for b and not for a; Lost the reverse.
	Gained, Lost Guard
}

// Compare returns how b differs from a.
func (p *Planner) Compare(l Length, a, b Mix) Difference {
	x, y := p.Evaluate(l, a), p.Evaluate(l, b)
	d := Difference{
		DeficitL:       y.DeficitL.Value - x.DeficitL.Value,
		Deficit:        y.Deficit.Value - x.Deficit.Value,
		DrunkL:         y.Fluid.DrunkL - x.Fluid.DrunkL,
		RateLH:         y.Fluid.RateLH - x.Fluid.RateLH,
		CarbohydrateGH: y.Carbohydrate.TotalGH - x.Carbohydrate.TotalGH,
		SodiumMgH:      y.Sodium.InMgH - x.Sodium.InMgH,
		Strength:       y.StrengthPercent - x.StrengthPercent,
		Gained:         y.Guards &^ x.Guards, Lost: x.Guards &^ y.Guards,
	}
	for s := range a {
		d.Mix[s] = b[s] - a[s]
	}
	return d
}
