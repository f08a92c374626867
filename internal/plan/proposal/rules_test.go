package proposal

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ebbwell/internal/published"
)

// ruled is the case of a row: two hours in which 2 L are lost, 1.6 at the low end and 0.2
// by breath, by 70 kg of 30 years who drank half a litre of water and felt well; four breaks
// of a minute carry 1.5 L. A row says what differs.
type ruled struct {
	Case
	in    published.In
	names []string
}

// number reads an input that may differ; "none" is not known.
func (r *ruled) number(name string, usual float64) Known {
	switch {
	case !r.in.Has(name):
		return Is(usual)
	case r.in.Text(name) == "none":
		return Known{}
	}
	return Is(r.in.Number(name))
}

func (r *ruled) text(name, usual string) string {
	if !r.in.Has(name) {
		return usual
	}
	return r.in.Text(name)
}

func readRuled(in published.In) *ruled {
	r := &ruled{in: in}
	value := func(name string, usual float64) float64 { return r.number(name, usual).Value }
	flags := strings.Fields(r.text("flags", ""))
	is := func(flag string) bool { return slices.Contains(flags, flag) }
	r.Case = Case{
		Minutes: value("minutes", 120), LossML: 1000 * value("loss", 2), LowML: 1000 * value("low", 1.6), BreathML: 1000 * value("breath", 0.2),
		MassKg: value("kg", 70), DeficitAim: value("aim", 2), Age: r.number("age", 30), Stomach: r.number("stomach", 2), Confidence: r.number("confidence", 8),
		SodiumMmolL: r.number("sodium", 40), AdviceMost: 60, BreaksML: 1000 * value("breaks", 1.5),
		StepLH: value("step", 0), StepGH: value("stepg", 0), MostLH: value("mostlh", 0), MostStrength: value("moststrength", 0), SodiumMost: value("sodiummost", 0),
		DrinkStepML: value("drinkstep", 0), Light: is("light"), Running: is("running"), Hidden: is("hidden"), Gained: is("gained"), PastLowSodium: is("past-low"),
		AsksLess: is("asks-less"), NoMoreDrink: is("no-more"), NoFood: is("no-food"), Tested: !is("not-tested"), Cool: is("cool"), Closed: is("closed"), BreaksConfirmed: is("settled"),
	}
	if in.Has("carbohydrate") {
		r.Carbohydrate = Is(in.Number("carbohydrate"))
	}
	if in.Has("sodiumaim") {
		r.Sodium = Is(in.Number("sodiumaim"))
	}
	for _, size := range strings.Fields(r.text("bottles", "")) {
		r.Bottles = append(r.Bottles, r.parse(size))
	}
	list := things()
	list["strong11"] = Source{Kind: Drink, CarbohydrateG: 0.11}
	list["strong8"] = Source{Kind: Drink, CarbohydrateG: 0.08}
	list["strong85"] = Source{Kind: Drink, CarbohydrateG: 0.085}
	list["thingel"] = Source{Kind: Gel, FoodWaterML: 60}
	list["strongwater"] = Source{Kind: Water, CarbohydrateG: 0.11}
	list["salted"] = Source{Kind: Drink, SodiumMg: 0.7}
	list["salted350"] = Source{Kind: Drink, SodiumMg: 0.35}
	list["bar"] = Source{Kind: Food, CarbohydrateG: 30, BesideG: 35}
	list["one"] = Source{Kind: Food, CarbohydrateG: 25, OneSourceG: 25}
	r.names = strings.Fields(r.text("menu", "water sport6 gel banana salt"))
	for i, name := range r.names {
		r.Sources[i] = list[name]
	}
	if r.names[0] == "water" || in.Has("habit") {
		r.Habit = r.mix(r.text("habit", "500 water"))
	}
	if chances := r.text("chances", "60 60 60 60"); chances != "none" {
		for _, word := range strings.Fields(chances) {
			r.Chances = append(r.Chances, Chance{
				Seconds: r.parse(strings.TrimRight(word, "e?")), CanEat: strings.Contains(word, "e"), Certain: !strings.Contains(word, "?"),
			})
		}
	}
	return r
}

func (r *ruled) parse(text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		r.in.TB().Fatalf("%q is no number", text)
	}
	return x
}

// mix reads "500 water + 1 gel".
func (r *ruled) mix(text string) Mix {
	var m Mix
	for _, part := range strings.Split(text, " + ") {
		amount, name, ok := strings.Cut(part, " ")
		if !ok {
			continue // nothing
		}
		slot := slotOf(r.names, name)
		if slot < 0 {
			r.in.TB().Fatalf("%q is not on the menu", name)
		}
		m[slot] = r.parse(amount)
	}
	return m
}

func (r *ruled) words(m Mix) string {
	w := written{names: r.names, inputs: map[string]string{}}
	return w.mix(m)
}

func yes(is bool) string {
	if is {
		return "yes"
	}
	return "no"
}

// TestPublishedProposalRules holds each of our own rules against figures worked out by hand
// on either side of where it changes.
func TestPublishedProposalRules(t *testing.T) {
	published.WalkAll(t, "proposal_rules", func(in published.In) any {
		r := readRuled(in)
		for _, answer := range []func(r *ruled) any{(*ruled).asked, (*ruled).amount, (*ruled).limit, (*ruled).bound, (*ruled).judged, (*ruled).stepped} {
			if got := answer(r); got != nil {
				return got
			}
		}
		in.TB().Fatalf("case %q", in.Case())
		return nil
	})
}

// asked answers what is asked for, and what is said.
func (r *ruled) asked() any {
	switch r.in.Case() {
	case "carbohydrate aim g/h":
		return CarbohydrateAim(&r.Case)
	case "carbohydrate counted from g/h":
		return WantsOf(&r.Case).TargetGH
	case "sodium asked for":
		return yes(WantsOf(&r.Case).Sodium)
	case "aim proposed":
		p := Propose(&r.Case)
		return r.words(p.Picked().Aim)
	case "aim with food":
		p := Propose(&r.Case)
		return r.words(p.Routes[WithFood].Aim)
	case "sought below":
		p := r.search()
		p.from = r.SumOf(r.Habit)
		return yes(p.offIncrements(&Proposal{}))
	case "said":
		p := Propose(&r.Case)
		return yes(said(&p, "proposal."+r.in.Text("code")))
	case "figures of":
		for _, s := range Propose(&r.Case).Said {
			if s.Code == "proposal."+r.in.Text("code") {
				var words []string
				for _, x := range s.Figures {
					words = append(words, fmt.Sprintf("%.6g", x))
				}
				return strings.Join(words, " ")
			}
		}
		return "not said"
	}
	return nil
}

// amount answers what amounts there are of a source.
func (r *ruled) amount() any {
	g := r.grainsOf(r.text("rung", "") != "")
	switch r.in.Case() {
	case "water by mL":
		return g.water
	case "drinks by mL":
		return g.drink
	case "least of a drink mL":
		return g.least
	case "amounts":
		src := things()[r.in.Text("of")]
		return sorted(g.between(&src, r.in.Number("low"), r.in.Number("high"), r.in.Number("home")))
	case "amounts in bottles":
		r.in.Has("of")
		return sorted(bottleSums(r.Bottles, r.in.Number("high"), r.in.Number("home")))
	case "order of the search":
		p := r.search()
		var names []string
		for _, slot := range p.order() {
			names = append(names, r.names[slot])
		}
		return strings.Join(names, " ")
	case "least of a source":
		p := r.search()
		return p.leastOf(slotOf(r.names, r.in.Text("of")))
	case "most of a source":
		p := r.search()
		return p.mostOf(slotOf(r.names, r.in.Text("of")))
	}
	return nil
}

func sorted(list []float64) string {
	slices.Sort(list)
	return strings.Trim(fmt.Sprint(list), "[]")
}

// limit answers what bounds the fluid.
func (r *ruled) limit() any {
	l := LimitsOf(&r.Case)
	switch r.in.Case() {
	case "need mL":
		return l.NeedML
	case "limit mL":
		return l.LimitML
	case "reach mL":
		return l.ReachML
	case "next mL":
		return l.NextML
	case "stomach mL":
		return l.StomachML
	case "target mL":
		return l.TargetML
	case "bound":
		return [...]string{BoundLoss: "loss", BoundStomach: "stomach", BoundBreaks: "breaks"}[l.Bound]
	case "rule":
		return [...]string{Unsure: "unsure", Less: "less", Keep: "keep", NoRoom: "no room", More: "more"}[l.Case]
	case "cut":
		return r.words(r.cut(&l))
	}
	return nil
}

// search is the search for the aim, from the habit.
func (r *ruled) search() program {
	l, w := LimitsOf(&r.Case), WantsOf(&r.Case)
	p := r.aimed(&l, &w)
	p.base = r.Habit
	return p
}

// bound answers what no mix may pass.
func (r *ruled) bound() any {
	p := r.search()
	switch r.in.Case() {
	case "things at most":
		return float64(p.things)
	case "taken at most mL":
		return p.intakeML
	case "drunk at most mL":
		return p.mostML
	case "sodium at most mg":
		return p.mostSodiumMg
	case "strength at most g/mL":
		return p.strength
	case "gels at most":
		return p.gels
	case "portions at most":
		return p.portions
	case "carbohydrate at most g":
		return p.mostG
	case "one source at most g":
		return p.mostOneG
	case "water for a gel mL":
		return p.gelWater
	}
	return nil
}

// judged answers what a mix misses, lacks and costs.
func (r *ruled) judged() any {
	if !r.in.Has("mix") {
		return nil
	}
	p, mix := r.search(), r.mix(r.in.Text("mix"))
	sum := r.SumOf(mix)
	m := p.misses(&sum)
	switch r.in.Case() {
	case "cost":
		return p.costFrom(r.Habit, mix)
	case "missing":
		return fmt.Sprint(m.Fluid, m.Carbohydrate, m.Sodium)
	case "sodium missing":
		return float64(m.Sodium)
	case "fits":
		return yes(p.meets(&sum))
	case "crowded":
		return yes(sum.crowded(r.hours()))
	}
	return nil
}

// stepped answers how large steps are.
func (r *ruled) stepped() any {
	if r.in.Has("aim-mix") {
		var list []string
		steps := Ladder(&r.Case, r.mix(r.in.Text("aim-mix")))
		if r.in.Case() == "first step" {
			steps = steps[:1]
		}
		for _, s := range steps {
			word := r.words(s.Mix)
			for mark, is := range map[string]bool{" held": s.Held, " cut": s.Cut, " large": s.Large} {
				if is {
					word += mark
				}
			}
			list = append(list, word)
		}
		return strings.Join(list, " | ")
	}
	p, aim := r.search(), r.mix(r.text("mix", ""))
	u := climb{p: p, base: r.Habit, aim: aim, from: r.SumOf(r.Habit), to: r.SumOf(aim), mostG: p.mostG, stepG: r.stepG()}
	ml, g := u.most(r.Habit)
	switch r.in.Case() {
	case "steps at least":
		return float64(u.count())
	case "step to at most mL":
		return ml
	case "step to at most g":
		return g
	}
	return nil
}
