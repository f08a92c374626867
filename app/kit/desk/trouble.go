package desk

import (
	"errors"
	"strconv"
	"strings"

	"ebbwell/internal/evidence"
	"ebbwell/internal/quantity"
	"ebbwell/internal/store"
	"ebbwell/internal/words"
)

// Trouble shows an error in words at the foot of the window.
func (d *Desk) Trouble(err error) {
	if err != nil {
		d.Say(Sentence(d.Words, err), "", nil)
	}
}

// Sentence says an error to a person: what happened, what is kept, what to do.
// An error without words of its own is shown as it is, after a sentence that
// says it was not expected.
func Sentence(w *words.Words, err error) string {
	var e *store.Error
	if errors.As(err, &e) {
		if e.Code == store.CodeAltered && e.Ref.ID != "" {
			return w.Say("store.altered.record")
		}
		return w.Say("store."+string(e.Code), e.Path)
	}
	return w.Say("trouble.unexpected", err.Error())
}

// ProblemSentence says what is wrong or odd about an entered value.
func ProblemSentence(w *words.Words, p evidence.Problem) string {
	name := FieldName(w, p.Field, p.Item)
	if p.Code == evidence.CodeOutside {
		key := "problem.outside.warns"
		if p.Severity == evidence.Refuses {
			key = "problem.outside.refuses"
		}
		return w.Say(key, name, value(w, p), plain(w, p.Limit.Low), plain(w, p.Limit.High), unit(p.Unit))
	}
	if p.Code == evidence.CodeOutOfFit {
		with := func(x float64) string { return plain(w, x) + unit(p.Unit) }
		return w.Say("problem."+p.Code, name, value(w, p)+unit(p.Unit), with(p.Limit.Low), with(p.Limit.High))
	}
	if key := "problem." + p.Code + "." + FieldKey(p.Field); w.Has(key) {
		return w.Say(key, name)
	}
	return w.Say("problem."+p.Code, name)
}

// FieldKey is the part of a key that names a field: "body-mass".
func FieldKey(f evidence.Field) string {
	return strings.ReplaceAll(strings.ToLower(string(f)), " ", "-")
}

// FieldName is the word for a field, with its number where there are several.
func FieldName(w *words.Words, f evidence.Field, item int) string {
	name := w.Say("measure." + FieldKey(f))
	if item > 0 {
		return w.Say("measure.numbered", name, strconv.Itoa(item))
	}
	return name
}

// TellsMass reports whether a problem of a field tells of body mass, which is not said
// where mass is hidden.
func TellsMass(f evidence.Field) bool {
	switch f {
	case evidence.MassBefore, evidence.MassAfter, evidence.MorningMass, evidence.BodyMass, evidence.MassChange, evidence.MassSpread, evidence.KitMass:
		return true
	}
	return false
}

// value writes the value of a problem: a share and a rate are worked out, so they have
// no more decimals than elsewhere, but enough to lie where they are said to lie.
func value(w *words.Words, p evidence.Problem) string {
	if p.Unit != quantity.PerCent && p.Unit != quantity.LitrePerHour {
		return plain(w, p.Value)
	}
	for d := quantity.Decimals(p.Unit); d < 3; d++ {
		if x := quantity.Round(p.Value, d); p.Limit.Contains(x) == p.Limit.Contains(p.Value) {
			return plain(w, x)
		}
	}
	return plain(w, p.Value)
}

// plain writes a number with as many decimals as it has, three at most.
func plain(w *words.Words, x float64) string {
	for d := range 3 {
		if quantity.Round(x, d) == quantity.Round(x, 3) {
			return w.Number(x, d)
		}
	}
	return w.Number(x, 3)
}

// unit is a unit behind a number, with its space.
func unit(u quantity.Unit) string {
	if u == quantity.None {
		return ""
	}
	return "\u00a0" + string(u)
}
