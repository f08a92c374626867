package heat

import (
	"errors"
	"slices"

	"ebbwell/app/kit/desk"
	"ebbwell/internal/climate"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// Trouble is what keeps a session from being calculated, and the field it
// belongs to; Field is empty where it belongs to none.
type Trouble struct {
	Field    evidence.Field
	Sentence string
}

// Troubles words the error of a calculation: what is wrong, at which field, and
// what to do. s is the stop the error is of.
func (sp Speaker) Troubles(err error, s record.Stop) []Trouble {
	var unknown climate.UnknownPlaceError
	switch {
	case err == nil:
		return nil
	case errors.Is(err, consult.ErrStopEnds):
		return []Trouble{{evidence.StopDates, sp.endsBefore(s)}}
	case errors.As(err, &unknown):
		return []Trouble{{evidence.PlaceField, sp.unknown(unknown)}}
	case errors.Is(err, consult.ErrNoAir):
		return []Trouble{{evidence.AirTemperature, sp.Say("heat.trouble.air", sp.Words.List(sp.lacking(s)))}}
	case errors.Is(err, consult.ErrTestGone):
		return []Trouble{{"", sp.Say("heat.trouble.testgone")}}
	case errors.Is(err, consult.ErrNoBasis):
		return []Trouble{{"", sp.Say("basis.none")}}
	}
	problems := climate.Problems(err)
	if len(problems) == 0 {
		return []Trouble{{"", desk.Sentence(sp.Words, err)}}
	}
	var list []Trouble
	for _, p := range problems {
		if p.Field == evidence.VapourPressure && p.Code == evidence.CodeOutside && len(problems) > 1 {
			continue // it follows from the temperature
		}
		list = append(list, Trouble{p.Field, sp.problem(p)})
	}
	return list
}

// endsBefore says that a stop ends before it begins, with its days.
func (sp Speaker) endsBefore(s record.Stop) string {
	from, ok1 := s.From.Time()
	until, ok2 := s.Until.Time()
	if !ok1 || !ok2 {
		return ""
	}
	return sp.Say("heat.trouble.ends", sp.Words.Date(from), sp.Words.Date(until))
}

// unknown says that the table has no such city, with what is like it.
func (sp Speaker) unknown(e climate.UnknownPlaceError) string {
	if len(e.Like) == 0 {
		return sp.Say("heat.trouble.city", e.Name)
	}
	var like []string
	for _, name := range e.Like {
		if !slices.Contains(like, name) {
			like = append(like, name)
		}
	}
	return sp.Say("heat.trouble.city.like", e.Name, sp.Words.Commas(like))
}

// lacking names what of the air is not there.
func (sp Speaker) lacking(s record.Stop) []string {
	var list []string
	for _, part := range []struct {
		there bool
		key   string
	}{
		{s.Air.Temperature.Known() || s.City != "", "heat.trouble.temperature"},
		{s.Air.Humidity.Known() || s.City != "", "heat.trouble.humidity"},
		{s.Air.Sun != "", "heat.trouble.sun"},
	} {
		if !part.there {
			list = append(list, sp.Say(part.key))
		}
	}
	return list
}

// problem words a value that cannot be. Mass and height are sent to the
// profile, where they are entered, and never written here: the screen may be
// one on which mass is hidden.
func (sp Speaker) problem(p evidence.Problem) string {
	switch p.Field {
	case evidence.BodyMass, evidence.Height:
		return sp.Say("heat.trouble.body")
	case evidence.Duration:
		if p.Value == 0 {
			return sp.Say("heat.trouble.minutes")
		}
	case evidence.EffortRating, evidence.MetabolicRate:
		if p.Code == evidence.CodeInWater {
			return sp.Say("basis.code." + climate.PlanInWater)
		}
		return sp.Say("heat.trouble.effort")
	case evidence.MonthField:
		return sp.Say("heat.trouble.month")
	case evidence.DewPointField, evidence.VapourPressure:
		if p.Code == evidence.CodeDewPoint {
			return sp.Say("heat.trouble.dewpoint")
		}
	case evidence.AirTemperature:
		if p.Code == evidence.CodeOutside {
			return sp.Say("heat.trouble.hot", sp.Degrees(p.Value), sp.Degrees(p.Limit.Low), sp.Degrees(p.Limit.High))
		}
	case evidence.SunField:
		return sp.Say("heat.trouble.nosun")
	}
	if p.Code == evidence.CodeOutside {
		return sp.outside("heat.trouble.outside", p)
	}
	return desk.ProblemSentence(sp.Words, p)
}

// outside says by a text that a value lies beyond its limits, in the units
// shown.
func (sp Speaker) outside(key string, p evidence.Problem) string {
	name := string(p.Field)
	if measure := "measure." + desk.FieldKey(p.Field); sp.Words.Has(measure) {
		name = sp.Say(measure)
	}
	end := func(x float64) string {
		shown, err := quantity.Convert(x, p.Unit, sp.By.Unit(p.Unit))
		if err != nil {
			shown = x // a unit of its own, such as "days"
		}
		text := sp.Words.Number(shown, digitsOf(shown, valueDigits))
		if u := sp.By.Unit(p.Unit); u != quantity.None {
			text += "\u00a0" + string(u)
		}
		return text
	}
	return sp.Say(key, words.AtStart(name), end(p.Value), end(p.Limit.Low), end(p.Limit.High))
}
