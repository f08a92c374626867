package sweat

import (
	"cmp"
	"slices"

	"ebbwell/internal/evidence"
	"ebbwell/internal/uncertainty"
)

// Narrowing says, for the two headline figures, what would make their range
// narrower, best first.
type Narrowing struct {
	Rate   []Advice // sweat rate
	Sodium []Advice // sodium lost per hour
}

// Advice is one change at the next test and what it would do.
type Advice struct {
	ID string
	// Narrower is the share of the width of the range it would take away, 0 to
	// 1: small ones are listed too, so that one can say what hardly helps.
	Narrower float64
	// Worth is true when it takes away enough to be worth saying.
	Worth bool
}

// change is what one piece of advice leaves of the variance of each source.
type change struct {
	id    string
	leave map[string]float64
}

// narrowing tries every change that could be made to this test on the budget
// of both figures.
func (s *sheet) narrowing(b balance, c concentration) Narrowing {
	var n Narrowing
	if !b.rateKnown || !b.in {
		return n
	}
	weighing := s.weighingChanges()
	n.Rate = try(b.rate.q, weighing)
	switch {
	case !c.in:
	case c.known:
		n.Sodium = try(b.rate.q.Times(c.t.q), append(s.patchChanges(c), weighing...))
	case len(c.spans) > 0:
		n.Sodium = []Advice{{AdviceEquationSite, s.equationGain(b, c), true}}
	}
	return n
}

// try works out what each change would take off the width, largest first.
func try(q uncertainty.Quantity, changes []change) []Advice {
	var list []Advice
	for _, ch := range changes {
		narrower := 1 - q.Width(ch.leave)/q.Width(nil)
		if narrower > 0 {
			list = append(list, Advice{ch.id, narrower, narrower >= evidence.NarrowingWorth})
		}
	}
	slices.SortStableFunc(list, func(a, b Advice) int { return cmp.Compare(b.Narrower, a.Narrower) })
	return list
}

// weighingChanges are the changes to scale, bottles, clock and corrections.
func (s *sheet) weighingChanges() []change {
	step := s.body.step
	nBefore, nAfter := len(s.in.Body.Before), len(s.in.Body.After)
	ratio := func(better, now float64) float64 { return better * better / (now * now) }
	twice := map[string]float64{
		SourceBefore: ratio(ScaleU(step, nBefore+1), ScaleU(step, nBefore)),
		SourceAfter:  ratio(ScaleU(step, nAfter+1), ScaleU(step, nAfter)),
	}
	finer := map[string]float64{
		SourceBefore: ratio(ScaleU(0, nBefore), ScaleU(step, nBefore)),
		SourceAfter:  ratio(ScaleU(0, nAfter), ScaleU(step, nAfter)),
	}
	list := []change{
		{AdviceDuplicate, twice},
		{AdviceFinerScale, finer},
		{AdviceOneScale, map[string]float64{SourceOffset: 0}},
		{AdviceOwnBottle, map[string]float64{SourceShared: 0}},
		{AdviceWeighBottles, map[string]float64{SourcePoured: s.bottleRatio()}},
		{AdviceExactTimes, map[string]float64{SourceTime: evidence.ExactTimesRemain}},
	}
	if s.body.kitOn && !s.body.kitWeighed {
		list = append(list, change{AdviceMinimalClothing, map[string]float64{SourceTowel: ratio(evidence.TowelU, evidence.KitOnU)}})
	}
	switch {
	case s.fix.bias > 0:
		list = append(list, change{AdviceCorrect, map[string]float64{SourceUncorrected: 0}})
	case s.fix.wide:
		list = append(list, change{AdviceGiveEffort, map[string]float64{SourceCorrection: ratio(evidence.MetRelativeU, evidence.EffortRelativeU)}})
	}
	return list
}

// bottleRatio is what weighing would leave of the variance of volumes taken.
func (s *sheet) bottleRatio() float64 {
	volumes, weighed := 0.0, 0.0
	for _, b := range s.in.Intake.Bottles {
		if b.Volume != nil && b.Before == nil {
			u := evidence.PouredRelativeU * float64(*b.Volume)
			volumes += u * u
			weighed += 2 * evidence.BottleWeighingU * evidence.BottleWeighingU
		}
	}
	if volumes <= weighed {
		return 1
	}
	return weighed / volumes
}

// patchChanges are the changes to the patches. A second site is calculated as
// good as the thigh beside the forearm, or the other way round.
func (s *sheet) patchChanges(c concentration) []change {
	var list []change
	if len(c.sites) == 1 && c.sites[0] != evidence.FiveSiteMean {
		now, _ := evidence.AgreementOf(c.sites[0])
		other := evidence.Thigh
		if now.Site == other {
			other = evidence.ForearmDorsal
		}
		second, _ := evidence.AgreementOf(other)
		half := (1 + second.Limits*second.Limits/(now.Limits*now.Limits)) / 4
		list = append(list, change{AdviceSecondSite, map[string]float64{SourceEquation: half, SourceSite: half}})
	}
	if c.perSite == 1 && len(c.sites) > 0 && c.sites[0] != evidence.FiveSiteMean {
		list = append(list, change{AdviceSecondPatch, map[string]float64{SourceEquation: s.secondPatch(c)}})
	}
	if best := evidence.DirectElectrodeCV; len(c.methods) == 1 {
		if cv, _ := evidence.MethodCV(c.methods[0]); cv > best {
			list = append(list, change{AdviceLaboratory, map[string]float64{SourceLaboratory: best * best / (cv * cv)}})
		}
	}
	return list
}

// secondPatch is what a second patch on each site would leave of the variance
// of the equations: half of the local spread goes.
func (s *sheet) secondPatch(c concentration) float64 {
	whole, saved := 0.0, 0.0
	for _, r := range c.results {
		if !r.Used {
			continue
		}
		u := r.Agreement.Limits / evidence.CoverageFactor
		local := min(u, localU(r.Agreement, r.Raw))
		whole += u * u
		saved += local * local / 2
	}
	if whole == 0 {
		return 1
	}
	return 1 - saved/whole
}

// equationGain is how much narrower a forearm patch would make the range that
// the sites without an equation give.
func (s *sheet) equationGain(b balance, c concentration) float64 {
	raw := c.spans[0].t.q
	row, _ := evidence.AgreementOf(evidence.ForearmDorsal)
	better := uncertainty.Measured(raw.Value(), row.Limits/evidence.CoverageFactor, uncertainty.Source{Name: SourceEquation})
	return max(0, 1-b.rate.q.Times(better).Width(nil)/b.rate.q.Times(raw).Width(nil))
}
