package athlete

import (
	"ebbwell/app/kit/chart"
	"ebbwell/app/kit/look"
	"ebbwell/internal/consult"
	"ebbwell/internal/figure"
	"ebbwell/internal/quantity"
)

// lastBars are what went out and came in at the last test, and the deficit, as the
// findings draw them; ok is false while there is no sweat loss. agreed is the limit
// agreed with the athlete, %, nil where there is none.
func (sp speaker) lastBars(f consult.Findings, agreed *float64) (d chart.InOutData, ok bool) {
	fluid := f.Sweat.Fluid
	if f.Refused != nil || !fluid.Loss.Known {
		return d, false
	}
	in, beside := f.TakenIn(), f.Beside(sp.By.Hidden)
	d = chart.InOutData{Compact: true, Out: fluid.Loss.Value + beside, Beside: beside, In: []chart.Part{
		{Of: look.Water, Value: in.Water}, {Of: look.Drink, Value: in.Drink}, {Of: look.Food, Value: in.Food},
	}}
	d.OutWords = chart.Wording{Name: sp.Say("overview.bars.sweat"), Title: sp.By.Found(fluid.Loss), Note: sp.rateNote(fluid.Rate)}
	d.InWords = chart.Wording{Name: sp.Say("overview.bars.in"), Note: sp.Say("overview.bars.drunk", sp.By.Found(fluid.Drunk))}
	d.LeftWords = sp.deficitWords(f)
	if !sp.By.Hidden && fluid.DeficitShare.Known && fluid.Deficit.Value > 0 {
		d.Limit, d.LimitText = f.LimitDeficit(), sp.Say("overview.bars.limit", sp.percent(f.Limit))
		if agreed != nil {
			d.Limit, d.LimitText = f.DeficitAt(*agreed), sp.Say("overview.bars.limit.agreed", sp.percent(*agreed))
		}
	}
	d.Summary = d.OutWords.Title + ", " + d.InWords.Note + ", " + d.LeftWords.Name
	return d, true
}

// rateNote is a sweat rate with its range.
func (sp speaker) rateNote(rate figure.Figure) string {
	switch {
	case !rate.Known:
		return ""
	case !rate.Ranged:
		return sp.Say("overview.rate.provisional", sp.By.Found(rate))
	}
	return sp.Say("overview.bars.range", sp.By.Found(rate), sp.span(rate))
}

// deficitWords name the deficit, or the gain, in litres in the bar and beside it: in
// per cent, or in litres where body mass is hidden.
func (sp speaker) deficitWords(f consult.Findings) chart.Wording {
	deficit, share := f.Sweat.Fluid.Deficit, f.Sweat.Fluid.DeficitShare
	if !deficit.Known {
		return chart.Wording{}
	}
	if deficit.Value < 0 {
		gain := turned(deficit)
		return chart.Wording{Title: sp.Say("overview.bars.gain", sp.litres(gain.Value))}
	}
	w := chart.Wording{Name: sp.Say("overview.bars.deficit", sp.litres(deficit.Value)), Title: sp.By.Signed(-deficit.Value, quantity.Litre)}
	if !sp.By.Hidden && share.Known {
		w.Title = sp.By.Signed(-share.Value, quantity.PerCent)
		if share.Ranged {
			w.Note = sp.Say("overview.bars.to", sp.By.Number(-share.Range.Low, share.Unit), sp.By.Signed(-share.Range.High, share.Unit))
		}
	}
	return w
}

// litres writes a volume.
func (sp speaker) litres(x float64) string { return sp.By.Amount(x, quantity.Litre) }

// span is the range of a figure in one piece, so that no line ends within it.
func (sp speaker) span(f figure.Figure) string { return sp.By.Range(f) }

// turned is a deficit below zero as the gain it is.
func turned(f figure.Figure) figure.Figure {
	f.Value, f.Range = -f.Value, quantity.Range{Low: -f.Range.High, High: -f.Range.Low}
	return f
}
