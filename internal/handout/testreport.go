package handout

import (
	"slices"
	"strings"
	"time"

	"ebbwell/internal/figure"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
)

// TestReport is the report of one test: each figure with its range and what
// the evidence says beside it, and how it was calculated in small print.
type TestReport struct {
	Terms   Terms
	Athlete string
	Day     time.Time
	// Session is what was done, already worded: "In 95 minutes of hard play
	// at 31 °C".
	Session string
	// FilledInBy is who filled in the sheet.
	FilledInBy string
	Bar        Bar
	Findings   []Finding
	// Corrections are the values of the sheet that were put right, newest first.
	Corrections []Correction
	// Quality and Applied are sentences, worded: how it was measured, and what
	// was taken off the plain field method.
	Quality, Applied []string
	// Summary is what was found, in one sentence; Done what was done and measured,
	// Calculation how the main figures came about. Empty ones are left out.
	Summary     string
	Done        []Done
	Calculation []Calculated
	// Guess is the athlete's own estimate of the sweat loss; 0 where nobody asked.
	Guess quantity.Litres
	// Appendix prints formula and inputs of each figure.
	Appendix bool
	// Evidence is the version of the thresholds it was calculated by.
	Evidence string
}

// Finding is a figure with its name and what stands beside it, both worded.
type Finding struct {
	Name   string
	Figure figure.Figure
	// Decimals is how many the figure and its range are shown with; negative
	// ones round to tens.
	Decimals int
	// Further: it follows from the others, and stands in the appendix alone.
	Further bool
	// Reading is true for what was read off and has no range.
	Reading bool
	Beside  string
	Notes   []string
}

// Correction is a value of the sheet that was put right: what it is, from what
// to what, when and by whom, and why, all worded. Where body mass is hidden the
// words tell nothing of it.
type Correction struct{ What, Change, When, Why string }

// revealing reports whether a figure tells of body mass.
func (f Finding) revealing() bool {
	switch f.Figure.Unit {
	case quantity.Kilogram, quantity.Pound, quantity.PerCent, quantity.MillilitrePerKilogram,
		quantity.MillilitrePerKilogramPerHour, quantity.LitrePerKilogram, quantity.GramPerKilogram, quantity.Kilocalorie:
		return true
	}
	return false
}

// TestReport lays out the report: one side, unless the appendix is asked for.
func (p *Press) TestReport(r TestReport) paper.Document {
	lay := func(p *Press) (paper.Frame, []paper.Item) { return p.reportItems(r) }
	pages := p.pourBy([]way{{tight: 1}, {tight: 2}, {tight: 2, small: 0.94}, {tight: 2, small: 0.88}}, lay)
	return p.document(r.Terms, p.reportTitle(r), p.say.Say("handout.report.subject"), pages)
}

func (p *Press) reportTitle(r TestReport) string {
	return p.say.Say("handout.report.title", p.amounts(r.Terms).typed(r.Athlete))
}

// reportItems are the parts of the report in order.
func (p *Press) reportItems(r TestReport) (paper.Frame, []paper.Item) {
	am := p.amounts(r.Terms)
	title := p.reportTitle(r)
	h := head{title: title, under: am.typed(r.Session), right: p.say.Say("handout.report.day", p.say.Date(r.Day))}
	var small []string
	if r.FilledInBy != "" {
		small = append(small, p.say.Say("handout.report.by", clipRunes(am.typed(r.FilledInBy), 60)))
	}
	if r.Evidence != "" {
		small = append(small, p.say.Say("handout.report.evidence", r.Evidence))
	}
	fr := p.frame(r.Terms, h)
	w := fr.Inner()
	fr.Footer = p.reportFooter(r.Terms, w, small...)
	later := p.faces.Paragraph(smallStyle(), strings.Join(small, " "), w)
	fr.Later = &later
	list := r.Findings
	if am.hidden || !r.Appendix {
		list = slices.DeleteFunc(slices.Clone(list), func(f Finding) bool { return f.Further })
	}
	if am.hidden {
		list = shown(list)
	}
	var items []paper.Item
	items = append(items, p.ownFound(am.typed(r.Summary), w)...)
	items = append(items, p.cautions(w, r.allCautions(am, p)...)...)
	if r.Bar.Loss > 0 {
		items = append(items, p.reportBar(r, am, w)...)
	}
	items = append(items, p.doneTable(r.Done, am, w)...)
	items = append(items, p.findings(list, am, w)...)
	items = append(items, p.pair(p.remarks("handout.report.quality", r.Quality, am), p.remarks("handout.report.applied", p.applied(r, am), am), w)...)
	items = append(items, p.corrections(r.Corrections, am, w)...)
	if !am.hidden {
		items = append(items, p.calculated(r.Calculation, w)...)
	}
	if r.Appendix {
		items = append(items, p.calculation(list, am, w)...)
	} else {
		items = append(items, p.notesAndSources(list, am, w)...)
	}
	return fr, items
}

// reportBar is the bar with what it adds up to in the words of a report.
func (p *Press) reportBar(r TestReport, am amounts, width float64) []paper.Item {
	items := p.bars([]Bar{r.Bar}, am, width)
	if r.Bar.gain() {
		return items
	}
	text := p.say.Say("handout.report.bar", am.volume(r.Bar.Loss))
	switch b := r.Bar; {
	case b.Urine > 0:
		text = p.say.Say("handout.report.bar.urine", am.volume(b.whole()), am.volume(b.Loss), am.volume(b.Breath), am.volume(b.Urine))
	case b.Breath > 0:
		text = p.say.Say("handout.report.bar.breath", am.volume(b.whole()), am.volume(b.Loss), am.volume(b.Breath))
	}
	if r.Guess > 0 {
		text += " " + p.say.Say("handout.report.bar.guess", am.volume(r.Guess))
	}
	note := p.faces.Paragraph(noteStyle(), text, width-barLabel-barGap).At(barLabel+barGap, 0)
	items[len(items)-1].Block = note
	return items
}

// reportFooter has the safety sentences in one paragraph: a report is for the file and
// for colleagues, and carries them for whom it is passed on to.
func (p *Press) reportFooter(t Terms, width float64, more ...string) paper.Block {
	const inner = 2.2
	list := stopSentences(p.say, t.Practice.Emergency)
	text := p.say.Say("handout.report.passed") + " " + strings.Join(list, " ")
	box := p.marked(noteStyle().In(paper.Black), text, width-2*inner).Framed(width, inner)
	small := p.faces.Paragraph(smallStyle(), strings.Join(slices.Concat(smallPrint(p.say), more, p.lackPrint()), " "), width)
	return box.Under(small, 1.6)
}

// ownFound is what was found in one sentence, in larger type.
func (p *Press) ownFound(s string, width float64) []paper.Item {
	if strings.TrimSpace(s) == "" {
		return nil
	}
	return lineItems(p.faces, quoteStyle(), s, width, p.gap())
}

func (r TestReport) allCautions(am amounts, p *Press) []string {
	return AthletePage{Terms: r.Terms, Bars: []Bar{r.Bar}}.allCautions(am, p)
}

// shown leaves out the figures that tell of body mass.
func shown(list []Finding) []Finding {
	var out []Finding
	for _, f := range list {
		if !f.revealing() {
			out = append(out, f)
		}
	}
	return out
}

// findings is the table of figures.
func (p *Press) findings(list []Finding, am amounts, width float64) []paper.Item {
	if len(list) == 0 {
		return nil
	}
	const found, spread = 25.0, 27.0
	say := p.say
	rest := width - found - spread
	t := table{small: true, columns: []col{
		{head: say.Say("handout.report.figure"), width: rest * 0.37},
		{head: say.Say("handout.report.found"), width: found, align: paper.Right, strong: true},
		{head: say.Say("handout.report.range"), width: spread, align: paper.Right},
		{head: say.Say("handout.report.beside"), width: rest * 0.63},
	}}
	if am.hidden {
		t.columns[2].head = say.Say("handout.report.range.hidden")
	}
	for _, f := range list {
		r := row{cells: []string{am.typed(f.Name), p.found(f, am), p.spread(f), am.typed(f.Beside)}}
		if f.Figure.Estimate {
			r.under = say.Say("handout.report.estimate")
		}
		t.rows = append(t.rows, r)
	}
	return append([]paper.Item{p.section(say.Say("handout.report.findings"), width)}, t.items(p, width)...)
}

// corrections is the table of the values that were put right.
func (p *Press) corrections(list []Correction, am amounts, width float64) []paper.Item {
	if len(list) == 0 {
		return nil
	}
	say := p.say
	t := table{small: true, columns: []col{
		{head: say.Say("handout.report.corrected"), width: width * 0.24},
		{head: say.Say("handout.report.correction"), width: width * 0.30},
		{head: say.Say("handout.report.correctedby"), width: width * 0.22},
		{head: say.Say("handout.report.why"), width: width * 0.24},
	}}
	for _, c := range list {
		t.rows = append(t.rows, row{cells: []string{am.typed(c.What), am.typed(c.Change), am.typed(c.When), am.typed(c.Why)}})
	}
	return append([]paper.Item{p.section(say.Say("handout.report.corrections"), width)}, t.items(p, width)...)
}

// found writes a figure. The kilogram of an osmolality is one of urine; where
// mass is hidden it is left out all the same.
func (p *Press) found(f Finding, am amounts) string {
	if !f.Figure.Known {
		return p.say.Say("handout.report.missing")
	}
	s, unit := p.say.Number(f.Figure.Value, f.Decimals), string(f.Figure.Unit)
	if am.hidden {
		unit = strings.TrimSuffix(unit, "/"+string(quantity.Kilogram))
	}
	if unit == "" {
		return s
	}
	return s + "\u00a0" + unit
}

// spread writes its range, or says that it is provisional.
func (p *Press) spread(f Finding) string {
	switch {
	case !f.Figure.Known, f.Reading && !f.Figure.Ranged:
		return ""
	case !f.Figure.Ranged:
		return p.say.Say("handout.report.provisional")
	}
	return p.say.Between(f.Figure.Range, f.Decimals)
}

// calculation is the small print: formula, inputs, what the range is made of and
// sources. Where mass is hidden only the sources and notes are left, since the
// inputs hold the weighings.
func (p *Press) calculation(list []Finding, am amounts, width float64) []paper.Item {
	var items []paper.Item
	name := smallStyle().In(paper.Black).Heavy(paper.SemiBold)
	for _, f := range list {
		var lines []string
		if !am.hidden {
			lines = append(lines, p.formula(f.Figure.Why), p.budget(f.Figure.Why))
		}
		for _, n := range f.Notes {
			lines = append(lines, am.typed(n))
		}
		lines = append(lines, p.say.Semicolons(p.sources(f.Figure.Why)))
		text := strings.TrimSpace(strings.Join(lines, "\n"))
		if text == "" {
			continue
		}
		head := paper.Item{Block: p.faces.Paragraph(name, am.typed(f.Name), width), Gap: 1.6, Keep: true}
		items = append(items, head)
		items = append(items, lineItems(p.faces, smallStyle(), text, width, 0)...)
	}
	if len(items) == 0 {
		return nil
	}
	return append([]paper.Item{p.section(p.say.Say("handout.report.details"), width)}, items...)
}

// remarks is a column of sentences that run on.
func (p *Press) remarks(title string, list []string, am amounts) column {
	return column{title: p.say.Say(title), body: func(w float64) []paper.Block {
		text := am.typed(strings.Join(trim(list), " "))
		if text == "" {
			return nil
		}
		return []paper.Block{p.faces.Paragraph(noteStyle().In(paper.Black), text, w)}
	}}
}

// applied are the other losses, and what the range of the first figure is made of.
func (p *Press) applied(r TestReport, am amounts) []string {
	if am.hidden || r.Appendix || len(r.Findings) == 0 {
		return r.Applied
	}
	return append(slices.Clone(r.Applied), p.budget(r.Findings[0].Figure.Why))
}

// notesAndSources is what stands without the appendix: the notes of the figures, and
// each source once.
func (p *Press) notesAndSources(list []Finding, am amounts, width float64) []paper.Item {
	var lines []string
	seen := map[string]bool{}
	var from []string
	for _, f := range list {
		var notes []string
		for _, n := range f.Notes {
			if n = p.noteFor(n, am); n != "" && !seen[n] {
				seen[n] = true
				notes = append(notes, n)
			}
		}
		if text := strings.Join(trim(notes), " "); text != "" {
			lines = append(lines, p.say.Say("handout.report.note", am.typed(f.Name), text))
		}
		for _, s := range p.sources(f.Figure.Why) {
			if s != "" && !seen[s] {
				seen[s] = true
				from = append(from, s)
			}
		}
	}
	if len(from) > 0 {
		lines = append(lines, p.say.Say("handout.report.sources", p.say.Semicolons(from)))
	}
	lines = append(lines, p.say.Say("handout.report.appendix"))
	head := p.section(p.say.Say("handout.report.notes"), width)
	return append([]paper.Item{head}, lineItems(p.faces, smallStyle(), strings.Join(lines, " "), width, 0)...)
}

// noteFor is a note; where body mass is hidden without the sentences that hold a per cent
// or another figure that is not shown.
func (p *Press) noteFor(note string, am amounts) string {
	if !am.hidden {
		return note
	}
	var kept []string
	for _, s := range strings.SplitAfter(note, ". ") {
		if am.typed(s) == s {
			kept = append(kept, s)
		}
	}
	return strings.TrimSpace(strings.Join(kept, ""))
}
