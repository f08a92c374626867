package handout

import (
	"strconv"
	"strings"
	"time"

	"ebbwell/internal/fuel"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
)

// AthletePage is the page the athlete takes home. Empty parts are left out,
// but for the cautions, which are always there.
type AthletePage struct {
	Terms   Terms
	Heading Heading
	// Words are the athlete's own, why they agreed.
	Words string
	// Bars show what happened and what is planned: the test first.
	Bars []Bar
	// Options stand side by side where Compare asks for it.
	Options []Option
	Compare bool
	Before  Before
	Bag     []BagItem
	During  During
	// Gut is gut training week by week; empty leaves it out.
	Gut      []fuel.GutWeek
	Practise Practise
	After    After
	FollowUp FollowUp
	Basis    Basis
	// Sign is who signs the page.
	Sign Sign
}

// Sign says who signs an agreed page: the athlete, and a minor's guardian too.
type Sign struct{ Athlete, Guardian bool }

// Heading says whose page it is and what for.
type Heading struct {
	// Athlete is the name as it stands in the title.
	Athlete string
	// Session is what the plan is for, as one says it: "match".
	Session string
	// Step is the name of the step in force: "Step 1"; From its first day.
	Step string
	From time.Time
	// Minutes is the expected length; 0 when not known.
	Minutes quantity.Minutes
	// Air is the temperature the plan holds for, °C, when AirKnown.
	Air      quantity.Range
	AirKnown bool
	// Draft is true until what is printed is agreed, Replaced once another plan
	// is in force.
	Draft, Replaced bool
}

// Deficit is how far down the athlete is at the end; negative after a gain.
type Deficit struct {
	// Percent of body mass, when PercentKnown.
	Percent      quantity.Percent
	PercentKnown bool
	Litres       quantity.Litres
	// The 95 % ranges, when Ranged.
	PercentRange, LitresRange quantity.Range
	Ranged                    bool
}

// Bar is one session: what was or will be taken in, of what is lost.
type Bar struct {
	// Label is what stands before it: the day of the test, or "step 1".
	Label string
	Parts []Part
	// Loss is the whole sweat loss; LossRange its 95 % range when Ranged.
	Loss      quantity.Litres
	LossRange quantity.Range
	Ranged    bool
	// Breath is water breathed out and gas exchange, Urine what else left, Food
	// the mass of foods, each a kilogram a litre: with them the bar adds up to the
	// deficit. All are zero where body mass is hidden.
	Breath, Urine, Food quantity.Litres
	Deficit             Deficit
	// Planned is true for what has not happened yet, Estimate where the loss
	// was not measured in such air.
	Planned, Estimate bool
	// RangeAlone: the middle of the estimate is not to be written.
	RangeAlone bool
}

// Part is a share of a bar.
type Part struct {
	Substance Substance
	Name      string
	Litres    quantity.Litres
}

// whole is all that left the body.
func (b Bar) whole() quantity.Litres { return b.Loss + b.Breath + b.Urine }

// taken is all that was drunk and eaten.
func (b Bar) taken() quantity.Litres {
	sum := b.Food
	for _, part := range b.Parts {
		sum += part.Litres
	}
	return sum
}

// drawable returns the bar with volumes that have a length: what is below zero
// or no number counts as nothing.
func (b Bar) drawable() Bar {
	length := func(v quantity.Litres) quantity.Litres {
		if !(v > 0) || v > 1e6 {
			return 0
		}
		return v
	}
	parts := make([]Part, len(b.Parts))
	for i, part := range b.Parts {
		parts[i] = part
		parts[i].Litres = length(part.Litres)
	}
	b.Parts, b.Loss = parts, length(b.Loss)
	b.Breath, b.Urine, b.Food = length(b.Breath), length(b.Urine), length(b.Food)
	if high := length(quantity.Litres(b.LossRange.High)); !(b.LossRange.Low >= 0) || !(b.LossRange.Low <= float64(high)) {
		b.Ranged = false
	}
	return b
}

// gain reports whether more was taken in than lost.
func (b Bar) gain() bool { return b.Loss > 0 && (b.taken()-b.Food > b.Loss || b.Deficit.Litres < 0) }

// Basis is what the plan is based on.
type Basis struct {
	// Day of the test; Tests is how many were pooled, 1 for one test.
	Day   time.Time
	Tests int
	// Place is where an estimate is for.
	Place string
	Air   quantity.Range // °C, when AirKnown
	// AirKnown is false where the air was not written down.
	AirKnown  bool
	Loss      quantity.Litres
	LossRange quantity.Range // 95 %
	Ranged    bool
	Estimate  bool
	// RangeAlone: the middle of the estimate is not to be written.
	RangeAlone bool
	// Asked: the page is of a plan, so that a loss of nothing is a missing one.
	Asked bool
	// DayToDay is how much the rate differs between like days; 0 leaves it out.
	DayToDay quantity.LitresPerHour
}

// AthletePage lays out the athlete's page.
func (p *Press) AthletePage(a AthletePage) paper.Document {
	pages := p.pourOne(func(p *Press) (paper.Frame, []paper.Item) { return p.athleteItems(a) })
	return p.document(a.Terms, p.title(a), p.say.Say("handout.page.subject"), pages)
}

// athleteItems are the parts of the page in order.
func (p *Press) athleteItems(a AthletePage) (paper.Frame, []paper.Item) {
	am := p.amounts(a.Terms)
	h := head{title: p.title(a), under: p.heading(a, am)}
	switch {
	case !a.FollowUp.Review.IsZero():
		h.right = p.say.Say("handout.review", p.say.Day(a.FollowUp.Review))
	case a.Sign.Athlete:
		h.right = p.say.Say("handout.review.missing")
	}
	fr := p.frame(a.Terms, h, p.basis(a.Basis, am)...)
	w := fr.Inner()
	if a.gained() {
		fr.Footer = p.footer(a.Terms, w)
		return fr, p.cautions(w, a.allCautions(am, p)...)
	}
	var items []paper.Item
	if p.lean < leanest {
		items = append(items, p.ownWords(am.typed(a.Words), w)...)
	}
	items = append(items, p.cautions(w, a.allCautions(am, p)...)...)
	items = append(items, p.pageBars(a.Bars, am, w)...)
	items = append(items, p.during(a.During, am, w)...)
	if a.Compare {
		items = append(items, p.options(a.Options, am, w)...)
	}
	items = append(items, p.beforeAndAfter(a, am, w)...)
	items = append(items, p.stepRule(a.Practise, am, w)...)
	items = append(items, p.gut(a.Gut, w)...)
	return fr, append(items, p.signatures(a.Sign, w)...)
}

// beforeAndAfter is what is read at home.
func (p *Press) beforeAndAfter(a AthletePage, am amounts, width float64) []paper.Item {
	if p.lean > 0 {
		return p.leanParts(a, am, width)
	}
	items := p.pair(p.before(a.Before, am), p.bag(a.Bag, am), width)
	return append(items, p.pair(p.after(a.After, am), p.followUp(a.FollowUp, a.Practise, am), width)...)
}

// gained reports whether the athlete was heavier after the test: then there is no
// plan to print, only when to stop.
func (a AthletePage) gained() bool {
	for _, b := range a.Bars {
		if !b.Planned && b.gain() {
			return true
		}
	}
	return false
}

// PageCautions lists the sentences that stand on an athlete's page beside those
// that stand on every page: of the profile, of the heat, of the plan, and of a
// gain in mass.
func (p *Press) PageCautions(a AthletePage) []string { return a.allCautions(p.amounts(a.Terms), p) }

// SheetCautions lists those of a blank sheet.
func (p *Press) SheetCautions(b BlankSheet) []string { return b.cautions(p.amounts(b.Terms), p) }

// title is "Ravka's match plan".
func (p *Press) title(a AthletePage) string {
	am := p.amounts(a.Terms)
	name, session := strings.TrimSpace(am.typed(a.Heading.Athlete)), strings.TrimSpace(am.typed(a.Heading.Session))
	if session == "" {
		session = p.say.Say("handout.session")
	}
	if name == "" {
		return p.say.Say("handout.page.title.unnamed", session)
	}
	return p.say.Say("handout.page.title", name, session)
}

// heading is the line under the title.
func (p *Press) heading(a AthletePage, am amounts) string {
	h, say := a.Heading, p.say
	var parts []string
	if h.Draft {
		parts = append(parts, say.Say("handout.draft"))
	}
	if h.Replaced {
		parts = append(parts, say.Say("handout.replaced"))
	}
	if h.Step != "" && !h.From.IsZero() {
		parts = append(parts, say.Say("handout.page.step", am.typed(h.Step), say.Day(h.From)))
	}
	minutes := strconv.Itoa(int(quantity.Round(float64(h.Minutes), 0)))
	switch {
	case h.Minutes > 0 && h.AirKnown:
		parts = append(parts, say.Say("handout.page.for.minutes.air", minutes, am.air(h.Air)))
	case h.Minutes > 0:
		parts = append(parts, say.Say("handout.page.for.minutes", minutes))
	case h.AirKnown:
		parts = append(parts, say.Say("handout.page.for.air", am.air(h.Air)))
	}
	if a.Basis.Estimate {
		parts = append(parts, say.Say("handout.page.estimate"))
	}
	return strings.Join(parts, " ")
}

// ownWords are the athlete's words, as a quotation.
func (p *Press) ownWords(s string, width float64) []paper.Item {
	if strings.TrimSpace(s) == "" {
		return nil
	}
	return lineItems(p.faces, quoteStyle(), p.say.Say("handout.quote", strings.TrimSpace(s)), width, p.gap())
}

// allCautions are those handed in, and a gain in mass, which is a red flag.
func (a AthletePage) allCautions(am amounts, p *Press) []string {
	var list []string
	for _, b := range a.Bars {
		switch {
		case !b.gain():
		case b.Planned:
			list = append(list, p.say.Say("handout.gain.planned", am.typed(b.Label)))
		default:
			list = append(list, p.say.Say("handout.gain.measured", am.typed(b.Label)))
		}
	}
	for _, s := range a.Terms.Cautions {
		list = append(list, am.typed(s))
	}
	return list
}

// basis is the small print about the test or the estimate.
func (p *Press) basis(b Basis, am amounts) []string {
	var list []string
	say := p.say
	if b.DayToDay > 0 {
		day := am.volume(quantity.Litres(b.DayToDay))
		list = append(list, say.Say("handout.basis.day", day))
	}
	loss, spread := am.volume(b.Loss), ""
	if b.Ranged {
		spread = am.volumes(b.LossRange)
	}
	air := say.Say("handout.basis.air.unknown")
	if b.AirKnown {
		air = am.air(b.Air)
	}
	switch {
	case b.Loss <= 0 && !b.Asked:
	case b.Loss <= 0:
		list = append(list, say.Say("handout.basis.missing"))
	case b.Estimate && b.Ranged:
		place := clipRunes(am.typed(b.Place), 80)
		if place == "" {
			place = say.Say("handout.basis.there")
		}
		if b.RangeAlone {
			list = append(list, say.Say("handout.basis.estimate.range", place, air, spread))
			break
		}
		list = append(list, say.Say("handout.basis.estimate", place, air, spread, loss))
	case b.Estimate:
		list = append(list, say.Say("handout.basis.estimate.noRange"))
	case b.Tests > 1 && b.Ranged:
		list = append(list, say.Say("handout.basis.pool", strconv.Itoa(b.Tests), loss, spread))
	case b.Ranged:
		list = append(list, say.Say("handout.basis.test", say.Day(b.Day), air, loss, spread))
	default:
		list = append(list, say.Say("handout.basis.provisional", say.Day(b.Day), air, loss))
	}
	return list
}
