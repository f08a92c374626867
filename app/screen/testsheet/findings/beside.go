package findings

import (
	"math"

	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/fuel"
	"ebbwell/internal/quantity"
	"ebbwell/internal/sweat"
)

// beside is what stands beside a figure: its place in a published group, the
// advice, how much of the loss it is.
func (sp speaker) beside(name string, in Input) string {
	f := in.Findings
	switch name {
	case "sweat-rate":
		return sp.firstPlace(f.RatePlaces)
	case "sweat-loss":
		return sp.length(f.Minutes, f.Timed)
	case "deficit":
		return sp.limit(in, sp.By.Hidden)
	case "deficit-share":
		return sp.limit(in, false)
	case "drunk":
		return sp.share(f.Sweat.Fluid.Replaced)
	case "drinking-rate":
		if in.Athlete.UsualDrinking.Known() {
			return sp.Say("findings.usual", sp.By.Amount(*in.Athlete.UsualDrinking.Value, quantity.LitrePerHour))
		}
	case "sodium-concentration":
		return sp.firstPlace(sp.places(evidence.WholeBodyMeasure, f.Sweat.Sodium.Concentration))
	case "sodium-lost-rate":
		if len(f.SodiumPlaces) > 0 {
			return sp.firstPlace(f.SodiumPlaces)
		}
		return sp.mostOf(f.Sweat.Sodium.LossRate)
	case "sodium-in-rate":
		return sp.sodiumShare(f.Intake.SodiumShare)
	case "carbohydrate-rate":
		return sp.advice(f.Advice)
	case "sodium-hold":
		return sp.Say("findings.hold")
	case "sweat-rate-by-mass":
		return sp.firstPlace(sp.places(evidence.RateByMassMeasure, f.Sweat.Fluid.RateByMass))
	}
	return ""
}

// length says how long the session was.
func (sp speaker) length(minutes float64, timed bool) string {
	if !timed {
		return ""
	}
	return sp.Say("findings.in.minutes", sp.Words.Number(minutes, 0))
}

// places puts a figure into the groups of many sports.
func (sp speaker) places(m evidence.Measure, f figure.Figure) []sweat.Place {
	if !f.Known {
		return nil
	}
	var list []sweat.Place
	for _, g := range sweat.GroupsFor(m, "") {
		if p, ok := sweat.PlaceIn(g, f.Value); ok {
			list = append(list, p)
		}
	}
	return list
}

// firstPlace says the nearest group's place, short.
func (sp speaker) firstPlace(list []sweat.Place) string {
	if len(list) == 0 {
		return ""
	}
	p := list[0]
	group := sp.group(p)
	switch x := p.Below; {
	case math.Abs(x-0.5) <= placeMiddle:
		return sp.Say("findings.place.middle", group)
	case x >= placeFar:
		return sp.Say("findings.place.nearly-all", group)
	case x <= 1-placeFar:
		return sp.Say("findings.place.nearly-none", group)
	case x >= placeEnd:
		return sp.Say("findings.place.more", group)
	case x <= 1-placeEnd:
		return sp.Say("findings.place.less", group)
	case x > 0.5:
		return sp.Say("findings.place.more.about", sp.Words.Number(min(math.Round(10*x), 9), 0), group)
	default:
		return sp.Say("findings.place.less.about", sp.Words.Number(min(math.Round(10*(1-x)), 9), 0), group)
	}
}

// Shares of a group from which its place is said in other words.
const (
	placeMiddle = 0.05 // either side of one half
	placeEnd    = 0.95
	placeFar    = 0.99
)

// place says where a value stands in a group: "about 9 in 10 of 506 athletes
// lost less". It is approximate, and said in tenths.
func (sp speaker) place(p sweat.Place) string {
	tenths, of := math.Round(10*p.Below), 10.0
	switch {
	case p.Below >= placeFar || p.Below <= 1-placeFar:
		return sp.Say("findings.place.about", sp.firstPlace([]sweat.Place{p}))
	case p.Below >= placeEnd:
		tenths, of = 19, 20
	case p.Below <= 1-placeEnd:
		tenths, of = 1, 20
	}
	tenths = min(max(tenths, 1), of-1)
	return sp.Say("findings.place.below", sp.Words.Number(tenths, 0), sp.Words.Number(of, 0), sp.group(p))
}

// group names a published group.
func (sp speaker) group(p sweat.Place) string {
	if p.Group.Sport != "" {
		return sp.Say("findings.group." + p.Group.Sport)
	}
	return sp.Say("findings.group.many", p.Group.N)
}

// limit compares the deficit with the limit; hidden leaves the per cent out.
func (sp speaker) limit(in Input, hidden bool) string {
	key := sp.standing(in)
	switch {
	case key == "":
		return ""
	case hidden || key == "gain":
		return sp.Say("findings.limit." + key + ".hidden")
	}
	return sp.Say("findings.limit."+key, sp.significant(in.Findings.Limit))
}

// standing is where the deficit lies to the limit: within, near, past, gain;
// empty where it is not known.
func (sp speaker) standing(in Input) string {
	f, limit := in.Findings.Sweat.Fluid.DeficitShare, in.Findings.Limit
	switch {
	case !f.Known:
		return ""
	case f.Ranged && f.Range.Contains(limit):
		return "near"
	case f.Value > limit:
		return "past"
	case f.Value < 0:
		return "gain"
	}
	return "within"
}

// fractions are the parts that are named, in per cent.
func fractions() []float64 { return []float64{10, 20, 25, 33, 40, 50, 60, 67, 75, 80, 90, 100} }

// Shares in per cent below which hardly anything, and above which more than
// all, is said.
const (
	hardlyAny = 5
	moreThan  = 105
)

// fraction says a share of what was lost in words: "about a quarter of what
// was lost".
func (sp speaker) fraction(share float64) string {
	switch {
	case share < hardlyAny:
		return sp.Say("findings.fraction.0")
	case share > moreThan:
		return sp.Say("findings.fraction.more")
	}
	nearest := fractions()[0]
	for _, x := range fractions() {
		if math.Abs(x-share) < math.Abs(nearest-share) {
			nearest = x
		}
	}
	return sp.Say("findings.fraction." + sp.Words.Number(nearest, 0))
}

// share says a share of the loss in words.
func (sp speaker) share(f figure.Figure) string {
	if !f.Known {
		return ""
	}
	return sp.fraction(f.Value)
}

// sodiumShare is sodium in against sodium out.
func (sp speaker) sodiumShare(f figure.Figure) string {
	switch {
	case !f.Known:
		return ""
	case sp.By.Hidden:
		return sp.fraction(f.Value)
	}
	return sp.Say("findings.sodium.share", sp.Words.Number(f.Value, 0))
}

// mostOf names what gives most of a range, where one thing does.
func (sp speaker) mostOf(f figure.Figure) string {
	const most = 0.5
	if !f.Ranged || len(f.Why.Budget) == 0 || f.Why.Budget[0].Part < most {
		return ""
	}
	return sp.Say("findings.mostof", sp.Say("source."+f.Why.Budget[0].Source))
}

// advice is the carbohydrate advised for such a session, with its source.
func (sp speaker) advice(a fuel.Advice) string {
	if !a.Says() {
		return ""
	}
	source := ""
	if e, ok := evidence.Find(a.HighID); ok {
		source = e.Source.Name(sp.Words.Say)
	}
	switch {
	case a.Code == fuel.FuelNone:
		return sp.Say("findings.advised.none")
	case a.Range.Low <= 0:
		return sp.Say("findings.advised.upto", sp.Words.Number(a.Range.High, 0), source)
	}
	return sp.Say("findings.advised", sp.Words.Between(a.Range, 0), source)
}

// alternatives are other ranges of carbohydrate in use for such a session.
func (sp speaker) alternatives(in Input) []string {
	t := in.Findings.Test
	sport := consult.SportOf(t.Session.Sport)
	var list []string
	for _, a := range fuel.CarbohydrateAlternatives(in.Findings.Minutes, fuel.EffortOf(t.Session.Effort.Or(-1)), sport.Intermittent) {
		list = append(list, sp.Say("findings.advised.other", sp.Words.Between(a.Range, 0), sp.Say(a.Code), sp.Say("sure."+string(a.Sure))))
	}
	return list
}
