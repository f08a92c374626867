package findings

import (
	"slices"

	"ebbwell/app/kit/amount"
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// Row is one figure of the findings, worded.
type Row struct {
	// Key is stable: the figure's name in package consult, "marker.gravity",
	// "correction.respiratory".
	Key    string
	Name   string
	Found  string
	Range  string
	Beside string
	Figure figure.Figure
	// Decimals is how many the figure is shown with in its own unit; negative
	// ones round to tens.
	Decimals int
	// Reading is true for what was read off and has no range.
	Reading bool
	// Notes are the sentences of its why.
	Notes []string
}

// Rows lists what a sheet says, in the order it is talked about: what was
// lost, what was drunk, sodium, carbohydrate, markers, corrections.
func Rows(by amount.Speaker, in Input) []Row {
	sp := speaker{by}
	var list []Row
	for _, name := range order() {
		f := in.Findings.FigureNamed(name)
		if !keep(name, f, in) || sp.By.Hidden && revealing(name) {
			continue
		}
		r := sp.row(name, f)
		r.Beside = sp.beside(name, in)
		list = append(list, r)
	}
	list = append(list, sp.markers(in)...)
	list = append(list, sp.corrections(in)...)
	for i := range list {
		list[i].Notes = slices.Concat(sp.matters(list[i].Key, in), sp.segments(list[i].Key, in), sp.notes(list[i].Figure.Why))
	}
	return list
}

// Summary says in one sentence what was found; empty where there is no sweat rate.
func Summary(by amount.Speaker, in Input) string { return speaker{by}.summary(in) }

// Session says what was done: "In 95 minutes of hard field hockey at 31 °C".
func Session(by amount.Speaker, in Input) string { return speaker{by}.session(in) }

// Cautions are the red flags of a sheet, the gravest first.
func Cautions(by amount.Speaker, in Input) []Caution { return speaker{by}.cautions(in) }

// matters says why sodium is worth planning here. That is advice about salt
// and is withheld where such advice is.
func (sp speaker) matters(key string, in Input) []string {
	if key != "sodium-lost-rate" || len(in.Findings.Care.WithholdSalt) > 0 {
		return nil
	}
	var list []string
	for _, flag := range in.Findings.Sweat.Flags {
		switch flag.ID {
		case sweat.FlagSodiumRate:
			list = append(list, sp.Say(flag.ID, sp.By.Rounded(evidence.SodiumMattersRate, quantity.LitrePerHour, sp.RateDecimals())))
		case sweat.FlagSodiumSalty, sweat.FlagSodiumLong:
			list = append(list, sp.Say(flag.ID, sp.Words.Number(flag.Size, 0)))
		}
	}
	return list
}

// order is the figures of the table, by their names in package consult.
func order() []string {
	return []string{
		"sweat-rate", "sweat-loss", "deficit", "deficit-share", "drunk", "drinking-rate", "not-replaced",
		"sodium-concentration", "sodium-lost-rate", "sodium-lost", "sodium-in-rate", "sodium-in", "sodium-hold",
		"carbohydrate-rate", "carbohydrate", "sweat-rate-by-mass",
	}
}

// keep reports whether a figure belongs into the table: the first ones always,
// others once there is something to say. What would hold plasma sodium is
// advice about salt and is withheld where that is.
func keep(name string, f figure.Figure, in Input) bool {
	switch name {
	case "sweat-rate", "sweat-loss", "deficit":
		return true
	case "sodium-hold":
		return f.Known && f.Value > 0 && len(in.Findings.Care.WithholdSalt) == 0
	}
	return f.Known || f.Ranged
}

// revealing reports whether a figure tells of body mass.
func revealing(name string) bool {
	switch name {
	case "deficit-share", "sweat-rate-by-mass":
		return true
	}
	return false
}

// row words name, figure and range.
func (sp speaker) row(name string, f figure.Figure) Row {
	r := Row{Key: name, Name: sp.Say("findings.figure." + name), Figure: f, Decimals: decimals(f)}
	if (name == "deficit" || name == "deficit-share") && f.Known && f.Value < 0 {
		f = gained(f)
		r.Name, r.Figure = sp.gain(name), f
	}
	switch {
	case f.Known:
		r.Found = sp.By.Found(f)
	case f.Ranged:
		r.Found = sp.Say("findings.rangeonly")
	default:
		r.Found = sp.Say("findings.missing")
	}
	r.Range = sp.within(f)
	if f.Known && !f.Ranged {
		r.Range = sp.Say("findings.provisional")
	}
	return r
}

// gained is a deficit below zero as the gain it is.
func gained(f figure.Figure) figure.Figure {
	f.Value, f.Range = -f.Value, quantity.Range{Low: -f.Range.High, High: -f.Range.Low}
	return f
}

// gain names a deficit below zero.
func (sp speaker) gain(name string) string {
	if name == "deficit-share" {
		return sp.Say("findings.figure.gain-share")
	}
	return sp.Say("findings.figure.gain")
}

// change shows a deficit in per cent as the trade says it, as the change of
// body mass: below zero for a loss.
func (sp speaker) change(f figure.Figure) (found, within string) {
	found = sp.By.Signed(-f.Value, f.Unit)
	if f.Ranged {
		within = sp.Say("findings.to", sp.Words.Number(-f.Range.Low, quantity.Decimals(f.Unit)), sp.Words.Number(-f.Range.High, quantity.Decimals(f.Unit)))
	}
	return found, within
}

// within is the range of a figure. Where an end lies below zero it is said
// with a word: a stroke would read as a second minus.
func (sp speaker) within(f figure.Figure) string {
	if !f.Ranged || f.Range.Low >= 0 {
		return sp.By.Range(f)
	}
	return sp.Say("findings.to", sp.By.Number(f.Range.Low, f.Unit), sp.By.Number(f.Range.High, f.Unit))
}

// decimals is how many a figure is printed with in its own unit.
func decimals(f figure.Figure) int {
	const coarse = 500 // mg, from which sodium is rounded to tens
	switch f.Unit {
	case quantity.Milligram, quantity.MilligramPerHour:
		if f.Value >= coarse || !f.Known {
			return -1
		}
		return 0
	}
	return quantity.Decimals(f.Unit)
}

// markers are the urine markers and the first-morning mass.
func (sp speaker) markers(in Input) []Row {
	var list []Row
	for _, m := range in.Findings.Sweat.Markers {
		if m.Marker == evidence.MorningMassMarker {
			if !sp.By.Hidden {
				list = append(list, sp.morning(m))
			}
			continue
		}
		r := Row{
			Key: "marker." + string(m.Marker), Name: sp.markerName(m.Marker, in.Findings.Test), Figure: m.Figure, Reading: true,
			Decimals: markerDecimals(m.Marker),
		}
		r.Found = sp.Words.Number(m.Figure.Value, r.Decimals)
		r.Found = sp.withUnit(r.Found, m.Figure.Unit)
		if m.Band != "" {
			r.Beside = sp.Say("findings.band", sp.Say("band."+m.Band), m.Source.Name(sp.Words.Say))
		}
		list = append(list, r)
	}
	return list
}

// markerDecimals is how exactly a marker is read.
func markerDecimals(m evidence.Marker) int {
	if m == evidence.GravityMarker {
		return 3
	}
	return 0
}

// markerName is the marker and when it was taken.
func (sp speaker) markerName(m evidence.Marker, t record.Test) string {
	name := sp.Say("findings.marker." + string(m))
	if t.Urine.When == "" {
		return name
	}
	return sp.Say("findings.marker.when", name, sp.Say("findings.when."+string(t.Urine.When)))
}

// morning is today's mass against the mornings before.
func (sp speaker) morning(m sweat.MarkerResult) Row {
	r := sp.row("morning-mass", m.Figure)
	r.Key = "marker.morning-mass"
	if !m.Figure.Known {
		r.Found, r.Range = "", ""
	}
	if notes := sp.notes(m.Figure.Why); len(notes) > 0 {
		r.Beside = notes[0]
	}
	return r
}

// corrections are breath and gas exchange, each with its size and why it is
// taken off or not. Their size leads back to body mass.
func (sp speaker) corrections(in Input) []Row {
	var list []Row
	for _, c := range in.Findings.Sweat.Corrections {
		r := Row{Key: "correction." + c.ID, Name: sp.Say("correction." + c.ID), Figure: c.Size, Decimals: 2}
		if !sp.By.Hidden && c.Size.Known {
			r.Found, r.Range = sp.By.Found(c.Size), sp.By.Range(c.Size)
		}
		if sp.By.Hidden {
			r.Figure = figure.Figure{}
		}
		key := "findings.correction.left"
		if c.On {
			key = "findings.correction.taken"
		}
		r.Beside = sp.Say(key, sp.Say(c.Reason))
		list = append(list, r)
	}
	return list
}
