package findings

import (
	"ebbwell/app/kit/desk"
	"ebbwell/internal/evidence"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
	"ebbwell/internal/sweat"
	"ebbwell/internal/words"
)

// Why is the reason for one figure in words.
type Why struct {
	Title string
	// Figure and Sure are the figure and its range.
	Figure, Sure string
	// Beside is what the evidence says beside it.
	Beside string
	// Formula is empty where it would lead back to body mass.
	Formula Formula
	// Budget is what the range is made of.
	Budget []Share
	// Narrower says what would make it narrower.
	Narrower []string
	// Places are its places in published groups; Parts what it was put
	// together from, a patch each.
	Places, Parts []string
	Notes         []string
	Sources       []string
}

// Formula is arithmetic in words, the same with its numbers in, and what went
// in, each with its doubt.
type Formula struct {
	Words, Numbers string
	Inputs         []Line
}

// Line is a name and a value.
type Line struct{ Name, Value string }

// Share is one thing a range is made of.
type Share struct {
	Name string
	Part float64
	Text string
}

// explain words the why of a row.
func (sp speaker) explain(r Row, in Input) Why {
	w := r.Figure.Why
	out := Why{Title: r.Name, Figure: r.Found, Sure: sp.sure(r), Beside: r.Beside, Notes: r.Notes, Sources: sp.sources(w)}
	if !sp.By.Hidden && w.Formula != "" {
		out.Formula.Words, out.Formula.Numbers = sp.inWords(w), sp.withNumbers(w)+" = "+sp.value(figure.Input{Value: r.Figure.Value, Unit: r.Figure.Unit})
		if len(w.Inputs) == 1 && w.Formula == w.Inputs[0].Symbol {
			out.Formula.Words, out.Formula.Numbers = "", ""
		}
	}
	if !sp.By.Hidden && out.Formula.Words != "" {
		for _, i := range w.Inputs {
			out.Formula.Inputs = append(out.Formula.Inputs, Line{words.AtStart(sp.symbol(i.Symbol)), sp.input(i)})
		}
	}
	if r.Figure.Ranged {
		for _, s := range w.Budget {
			out.Budget = append(out.Budget, Share{sp.Say("source." + s.Source), s.Part, sp.percent(s.Part)})
		}
	}
	if r.Key == "carbohydrate-rate" {
		advised := in.Findings.Advice
		out.Sources = append(out.Sources, sp.sources(figure.Why{Sources: []string{advised.HighID}})...)
		out.Notes = append(out.Notes, sp.alternatives(in)...)
	}
	out.Notes = append(out.Notes, sp.statements(r.Key, in)...)
	out.Narrower, out.Places, out.Parts = sp.narrower(r.Key, in), sp.allPlaces(r.Key, in), sp.parts(r.Key, in)
	return out
}

// percent is a share of a range.
func (sp speaker) percent(part float64) string {
	return sp.Words.Number(100*part, 0) + "\u00a0" + string(quantity.PerCent)
}

// sure is the range of a figure in words.
func (sp speaker) sure(r Row) string {
	switch {
	case r.Figure.Ranged && r.Figure.Estimate:
		return sp.Say("findings.sure.estimate", r.Range)
	case r.Figure.Ranged && sp.By.Hidden:
		return r.Range
	case r.Figure.Ranged:
		return sp.Say("findings.sure", r.Range)
	case r.Figure.Known && !r.Reading:
		return sp.Say("findings.sure.provisional")
	}
	return ""
}

// input is a value that went in, with its standard uncertainty.
func (sp speaker) input(in figure.Input) string {
	if in.U <= 0 {
		return sp.value(in)
	}
	return sp.withUnit(sp.significant(in.Value)+" ± "+sp.significant(quantity.Round(in.U, uDecimals(in.U))), in.Unit)
}

// uDecimals leaves two digits of an uncertainty.
func uDecimals(u float64) int {
	d := 0
	for x := u; x < 10 && d < 6; x *= 10 {
		d++
	}
	return d
}

// notes words the sentences beside a figure. Those that lead back to body mass,
// by energy or by breath, are left out where it is hidden.
func (sp speaker) notes(w figure.Why) []string {
	var list []string
	seen := map[string]bool{}
	for _, n := range w.Notes {
		text := desk.NoteSentence(sp.Speaker, n)
		if seen[text] || sp.By.Hidden && leadsToMass(n.ID) {
			continue
		}
		seen[text] = true
		list = append(list, text)
	}
	return list
}

// leadsToMass reports whether a sentence has a figure of breath or energy in it.
func leadsToMass(note string) bool {
	switch note {
	case sweat.NoteAsWeighed, sweat.NoteRateAsWeighed, sweat.NoteFieldMethod:
		return true
	}
	return false
}

// sources names the references of a figure, each once, with how surely it was
// read.
func (sp speaker) sources(w figure.Why) []string {
	var list []string
	seen := map[string]bool{}
	for _, id := range w.Sources {
		text := id
		if e, ok := evidence.Find(id); ok {
			text = sp.Say("findings.source", e.Source.Title(sp.Words.Say), desk.Sureness(sp.Words, e.Sure))
		} else if key := "findings.source." + id; sp.Words.Has(key) {
			text = sp.Say(key)
		}
		if !seen[text] {
			seen[text] = true
			list = append(list, text)
		}
	}
	return list
}

// narrower says what would make the range of a headline figure narrower: at
// most two changes that are worth it.
func (sp speaker) narrower(key string, in Input) []string {
	var list []sweat.Advice
	switch key {
	case "sweat-rate", "sweat-loss":
		list = in.Findings.Sweat.Narrowing.Rate
	case "sodium-concentration", "sodium-lost-rate", "sodium-lost":
		list = in.Findings.Sweat.Narrowing.Sodium
	}
	var out []string
	for _, a := range list {
		if a.Worth && len(out) < 2 {
			out = append(out, sp.Say(a.ID))
		}
	}
	return out
}

// allPlaces says every group a figure has a place in.
func (sp speaker) allPlaces(key string, in Input) []string {
	f := in.Findings
	var places []sweat.Place
	switch key {
	case "sweat-rate":
		places = f.RatePlaces
	case "sodium-lost-rate":
		places = f.SodiumPlaces
	case "sodium-concentration":
		places = sp.places(evidence.WholeBodyMeasure, f.Sweat.Sodium.Concentration)
	case "sweat-rate-by-mass":
		places = sp.places(evidence.RateByMassMeasure, f.Sweat.Fluid.RateByMass)
	}
	var list []string
	for _, p := range places {
		source := p.Group.Source.Short
		if p.Group.WholeStudy {
			source = sp.Say("findings.place.study", source, p.Group.N)
		}
		list = append(list, sp.Say("findings.place.source", words.AtStart(sp.place(p)), source))
	}
	if len(list) > 0 {
		list = append(list, sp.Say("findings.place.approximate"))
	}
	return list
}

// parts says each patch a sodium figure was put together from, those left out
// too, with the reason.
func (sp speaker) parts(key string, in Input) []string {
	switch key {
	case "sodium-concentration", "sodium-lost-rate", "sodium-lost":
	default:
		return nil
	}
	var list []string
	for _, p := range in.Findings.Sweat.Sodium.Patches {
		name := sp.Say("findings.patch", sp.Words.Number(float64(p.Item), 0), sp.Say("testsheet.site."+string(p.Site)))
		switch raw := sp.withUnit(sp.significant(p.Raw), quantity.MillimolePerLitre); {
		case p.Used && p.Predicted.Known:
			list = append(list, sp.Say("findings.patch.used", name, raw, sp.By.Found(p.Predicted)))
		case p.Raw > 0:
			list = append(list, sp.Say("findings.patch.left", name, raw, sp.Say(p.Reason)))
		default:
			list = append(list, sp.Say("findings.patch.waits", name, sp.Say(p.Reason)))
		}
	}
	return list
}
