package disclose

import (
	"math"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// person is one athlete with what is kept of them, all copies.
type person struct {
	athlete record.Athlete
	tests   []record.Test
	plans   []record.Plan
}

// withoutMass takes away every body mass, and what one could be worked out from:
// shares of it, energy used and power. Litres, millilitres and the grams of bottles
// stay, as they do on screen and paper.
func (p *person) withoutMass() {
	none := record.Number{}
	p.athlete.UsualMass, p.athlete.DeficitAim = none, none
	for i := range p.tests {
		t := &p.tests[i]
		t.Session.Energy, t.Session.Power = none, none
		for j := range t.Weighings {
			t.Weighings[j].Mass = none
		}
		for j := range t.Partway {
			t.Partway[j].Mass = none
		}
	}
	for i := range p.plans {
		p.plans[i].Target.DeficitAim = none
	}
}

// withoutMedical takes away what is between the athlete and who treats them.
func (p *person) withoutMedical() {
	p.athlete.Flags, p.athlete.Consents = nil, nil
	p.athlete.Guardian, p.athlete.Assent = "", ""
	for i := range p.tests {
		t := &p.tests[i]
		t.Urine, t.Feeling, t.Safety = record.Urine{}, record.Feeling{}, nil
		t.Loss.Urine, t.Loss.Stool, t.Loss.NoUrine, t.Loss.NoStool = record.Number{}, record.Number{}, false, false
		for j := range t.Partway {
			t.Partway[j].Urine = record.Number{}
		}
	}
	for i := range p.plans {
		p.plans[i].Agreement.Physician = ""
		for j := range p.plans[i].Reviews {
			p.plans[i].Reviews[j].Stomach = record.Number{}
		}
	}
}

// withoutNotes takes away what was written in free words.
func (p *person) withoutNotes() {
	p.athlete.Note = ""
	for i := range p.tests {
		p.tests[i].Note = ""
	}
	for i := range p.plans {
		plan := &p.plans[i]
		plan.Agreement.Words = ""
		for j := range plan.Options {
			plan.Options[j].Words = ""
		}
		for j := range plan.Reviews {
			plan.Reviews[j].Note = ""
		}
	}
}

// masses lists every body mass that is known of the athlete, kg.
func (p *person) masses() []float64 {
	var list []float64
	add := func(n record.Number) {
		if n.Known() {
			list = append(list, *n.Value)
		}
	}
	add(p.athlete.UsualMass)
	for _, t := range p.tests {
		for _, w := range t.Weighings {
			add(w.Mass)
		}
		for _, w := range t.Partway {
			add(w.Mass)
		}
	}
	return list
}

// withoutTexts empties every text that may tell a body mass, and counts them.
func (p *person) withoutTexts(masses []float64) (n int) {
	take := func(name string, text *string) {
		// the name of a drink holds its strength, "6 %"
		named := strings.HasSuffix(name, "Name")
		if tellsMass(*text, masses) || !named && tellsShare(*text) {
			*text = ""
			n++
		}
	}
	eachText(reflect.ValueOf(&p.athlete).Elem(), take)
	for i := range p.tests {
		eachText(reflect.ValueOf(&p.tests[i]).Elem(), take)
	}
	for i := range p.plans {
		eachText(reflect.ValueOf(&p.plans[i]).Elem(), take)
	}
	return n
}

// eachText hands over every text of a record that a person wrote in their own words:
// not its times and names of who wrote, not lists the program reads.
func eachText(v reflect.Value, do func(name string, text *string)) {
	for i := range v.NumField() {
		f, name := v.Field(i), v.Type().Field(i)
		switch {
		case name.Type == reflect.TypeFor[record.Meta](), name.Type == reflect.TypeFor[record.Number](), name.Type == reflect.TypeFor[time.Time]():
		case name.Type == reflect.TypeFor[record.StepRules](), name.Name == "PoolIDs", name.Name == "PageLanguage":
		case f.Kind() == reflect.Struct:
			eachText(f, do)
		case f.Kind() == reflect.Slice:
			for j := range f.Len() {
				eachText(f.Index(j), do)
			}
		case name.Type == reflect.TypeFor[string]():
			text := f.String()
			do(name.Name, &text)
			f.SetString(text)
		}
	}
}

// numberIn finds the numbers of a text, with a point or a comma, and the letters or
// the sign behind each.
var numberIn = regexp.MustCompile(`(\d+(?:[.,]\d+)?)[\s\x{a0}\x{202f}]*([\pL%]*)`)

// massUnits are the beginnings of words behind a number that say it is a mass, in the languages of the program.
func massUnits() []string {
	return []string{"kg", "kilo", "lb", "pound", "stone", "st", "pfund", "livre", "libra"}
}

// tellsShare reports whether a text has a number with a per cent sign, which with the
// litres of a loss tells a body mass.
func tellsShare(text string) bool {
	return slices.ContainsFunc(numberIn.FindAllStringSubmatch(text, -1), func(m []string) bool { return strings.HasPrefix(m[2], "%") })
}

// tellsMass reports whether a text may tell a body mass: a number with a unit of mass,
// or one within 15 % of a mass that was weighed, in kg or lb.
func tellsMass(text string, masses []float64) bool {
	for _, m := range numberIn.FindAllStringSubmatch(text, -1) {
		unit := strings.ToLower(m[2])
		if slices.ContainsFunc(massUnits(), func(u string) bool { return strings.HasPrefix(unit, u) }) {
			return true
		}
		x, err := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
		if err != nil {
			continue
		}
		near := func(mass float64) bool {
			pounds, err := quantity.Convert(mass, quantity.Kilogram, quantity.Pound)
			return math.Abs(x/mass-1) <= open || err == nil && math.Abs(x/pounds-1) <= open
		}
		if slices.ContainsFunc(masses, func(mass float64) bool { return mass > 0 && near(mass) }) {
			return true
		}
	}
	return false
}

// open is how far a hidden body mass is to stay open, as a share of it: nothing given
// narrows it to better (own rule).
const open = 0.15
