package chart

import (
	"math"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/look"
)

func drinks(water, drink, food float64) []Part {
	return []Part{{look.Water, water}, {look.Drink, drink}, {look.Food, food}}
}

func carbohydrate() SourceData {
	return SourceData{
		Name: "Carbohydrate", Figure: "25 g/h", Parts: []Part{{look.Drink, 13}, {look.Food, 12}},
		Band: Span{30, 60}, Banded: true, Habit: 9, Marked: true, Max: 75,
		Notes: [2]string{"drink 13, bar 12 · advised 30–60"}, Summary: func() string { return "Carbohydrate 25 g/h, advised 30 to 60, habit 9" },
	}
}

func sodium() SourceData {
	return SourceData{
		Name: "Sodium", Figure: "163 mg/h", Parts: []Part{{look.Drink, 110}, {look.Food, 53}},
		Limit: 1190, Limited: true, Habit: 71, Marked: true, Max: 1250, Notes: [2]string{"14 % of the 1190 lost · habit 71"},
	}
}

func source(d SourceData) fyne.Widget {
	c := NewSourceBar()
	c.Set(d)
	return c
}

func sourceCases() []shown {
	long := carbohydrate()
	long.Name, long.Notes = "Carbohydrate from drinks, foods and gels", [2]string{"home-made blackcurrant drink 13, fig-and-almond bar 12", "advised 30–60 by ACSM, AND and DC 2016"}
	extreme := carbohydrate()
	extreme.Parts, extreme.Figure = []Part{{look.Drink, 900}, {look.Food, math.Inf(1)}, {look.Salt, math.NaN()}}, "900 g/h"
	one := sodium()
	one.Parts = one.Parts[:1]
	return []shown{
		{"typical", 214, 96, func() fyne.Widget { return source(carbohydrate()) }},
		{"with a limit", 214, 96, func() fyne.Widget { return source(sodium()) }},
		{"small", 150, 92, func() fyne.Widget { return source(carbohydrate()) }},
		{"one part", 214, 96, func() fyne.Widget { return source(one) }},
		{"long names", 214, 96, func() fyne.Widget { return source(long) }},
		{"extreme", 214, 96, func() fyne.Widget { return source(extreme) }},
		{"empty", 214, 96, func() fyne.Widget { return source(SourceData{Name: "Drinking", Figure: "–", Max: 1}) }},
	}
}

func balanceData() BalanceData {
	return BalanceData{
		Rows: []BalanceRow{
			{"body mass change", "1.60 kg", []Part{{look.Loss, 1.6}}},
			{"drunk", "0.55 L", []Part{{look.Water, 0.3}, {look.Drink, 0.25}}},
			{"eaten", "nothing", nil},
			{"urine", "missing", nil},
		},
		Total: BalanceRow{"sweat loss, provisional", "2.15 L", []Part{{look.Loss, 2.15}}}, Provisional: true, Max: 2.2,
		Summary: "Sweat loss 2.15 L, provisional",
	}
}

func balance(d BalanceData) fyne.Widget {
	c := NewBalanceBars()
	c.Set(d)
	return c
}

func balanceCases() []shown {
	urine := balanceData()
	urine.Rows[3] = BalanceRow{"urine", "0.21 L", []Part{{look.Salt, -0.21}}}
	urine.Total = BalanceRow{"sweat loss", "1.94 L", []Part{{look.Loss, 1.94}}}
	urine.Provisional = false
	long := balanceData()
	long.Rows[0].Name, long.Rows[1].Value = "body mass gone between the two weighings in little clothing", "0.55 L or a good deal more"
	extreme := balanceData()
	extreme.Rows[0].Parts = []Part{{look.Loss, 40}}
	extreme.Rows[1].Parts = []Part{{look.Water, -60}, {look.Drink, math.NaN()}}
	one := BalanceData{Rows: balanceData().Rows[:1], Total: balanceData().Total}
	return []shown{
		{"typical", 356, 270, func() fyne.Widget { return balance(balanceData()) }},
		{"with urine", 260, 270, func() fyne.Widget { return balance(urine) }},
		{"long names", 260, 270, func() fyne.Widget { return balance(long) }},
		{"extreme", 260, 270, func() fyne.Widget { return balance(extreme) }},
		{"one row", 260, 120, func() fyne.Widget { return balance(one) }},
		{"empty", 260, 60, func() fyne.Widget { return balance(BalanceData{Summary: "Nothing weighed yet"}) }},
	}
}

func inOutData() InOutData {
	return InOutData{
		Out: 2.15, In: []Part{{look.Water, 0.3}, {look.Drink, 0.25}}, Estimate: 0.8, EstimateText: "she guessed 0.8 L",
		Limit: 1.28, LimitText: "limit, 2 %",
		OutWords: Wording{"out", "2.15 L of sweat", "1.36 L/h"}, InWords: Wording{"in", "0.55 L drunk", "a quarter of what was lost"},
		LeftWords: Wording{"left over", "deficit 1.60 L, −2.5 %", "−2.3 to −2.7 %"},
		Summary:   "2.15 L lost, 0.55 L drunk, deficit 1.60 L",
	}
}

func inOut(d InOutData) fyne.Widget {
	c := NewInOutBars()
	c.Set(d)
	return c
}

func inOutCases() []shown {
	gain := inOutData()
	gain.Out, gain.In = 0.8, []Part{{look.Water, 0.9}, {look.Drink, 0.4}}
	gain.EstimateText, gain.LimitText = "", ""
	gain.LeftWords = Wording{"left over", "gain 0.50 L, +0.8 %", "a warning sign"}
	long := inOutData()
	long.EstimateText = "she guessed 0.8 L before she was shown what the scale said"
	long.OutWords = Wording{"what went out", "2.15 L of sweat in the whole of the match", "1.36 L/h over ninety-five minutes"}
	long.InWords.Name = "what came in again"
	extreme := inOutData()
	extreme.In, extreme.Estimate, extreme.Limit = []Part{{look.Water, 1e-4}}, 50, 30
	return []shown{
		{"typical", 780, 226, func() fyne.Widget { return inOut(inOutData()) }},
		{"small", 470, 216, func() fyne.Widget { return inOut(inOutData()) }},
		{"gain", 470, 216, func() fyne.Widget { return inOut(gain) }},
		{"long names", 470, 216, func() fyne.Widget { return inOut(long) }},
		{"extreme", 470, 216, func() fyne.Widget { return inOut(extreme) }},
		{"empty", 470, 60, func() fyne.Widget { return inOut(InOutData{Summary: "Nothing weighed yet"}) }},
	}
}

func heatData() HeatData {
	d := HeatData{
		Points: []HeatPoint{
			{Heat: 19, Rate: 0.84, Range: Span{0.77, 0.91}, Name: "22 Feb"}, {Heat: 24, Rate: 1.11, Range: Span{1.03, 1.19}, Name: "9 Oct"}, {Heat: 31, Rate: 1.36, Range: Span{1.29, 1.43}, Name: "14 May"},
		},
		Estimates: []HeatPoint{{Heat: 36, Rate: 1.56, Range: Span{1.2, 2.0}, Name: "July, estimate"}},
		HeatText:  "air °C, with this humidity and sun", RateText: "L/h", Summary: "Sweat rate rises with heat",
	}
	for i, text := range []string{"10", "15", "20", "25", "30", "35", "40"} {
		d.Heats = append(d.Heats, Tick{10 + 5*float64(i), text})
	}
	for i, text := range []string{"0.0", "0.5", "1.0", "1.5", "2.0", "2.5"} {
		d.Rates = append(d.Rates, Tick{0.5 * float64(i), text})
	}
	for heat := 12.0; heat <= 38; heat += 2 {
		middle := 0.46 + (heat-12)*0.0445
		wide := 0.18 + 0.0011*(heat-24)*(heat-24)
		d.Band = append(d.Band, HeatBand{heat, middle, Span{middle - wide, middle + wide*1.15}, false})
	}
	return d
}

func heat(d HeatData) fyne.Widget {
	c := NewHeatScatter()
	c.Set(d)
	return c
}

func heatCases() []shown {
	one := heatData()
	one.Points, one.Band, one.Estimates = one.Points[2:], nil, nil
	long := heatData()
	long.Points[1].Name, long.Estimates[0].Name = "9 October, second half of the league match", "camp at the coast in July, estimate"
	extreme := heatData()
	extreme.Points = append(extreme.Points, HeatPoint{Heat: 55, Rate: 6, Range: Span{5, 7}, Name: "9 Aug"}, HeatPoint{Heat: 31.2, Rate: 1.38, Range: Span{1.3, 1.45}, Name: "15 May"}, HeatPoint{Heat: 30.8, Rate: 1.3, Range: Span{1.2, 1.4}, Name: "16 May"})
	return []shown{
		{"typical", 466, 310, func() fyne.Widget { return heat(heatData()) }},
		{"small", 300, 220, func() fyne.Widget { return heat(heatData()) }},
		{"long names", 300, 220, func() fyne.Widget { return heat(long) }},
		{"one point", 300, 220, func() fyne.Widget { return heat(one) }},
		{"extreme", 300, 220, func() fyne.Widget { return heat(extreme) }},
		{"empty", 300, 60, func() fyne.Widget { return heat(HeatData{Summary: "No test yet"}) }},
	}
}

func intakeData() IntakeCardData {
	return IntakeCardData{
		Name: "Step 1", Note: "now, since 18 May", DrinkText: "0.75 L", FuelText: "23 g/h", DrinkMax: 1.1, FuelMax: 60,
		Drink:  []Part{{look.Water, 0.45}, {look.Drink, 0.30}},
		Fuel:   []Part{{look.Drink, 11}, {look.Food, 12}},
		Advice: Span{30, 60}, Advised: true, Foot: "−2.2 % deficit", Change: "0.20 L and ½ bar more", ChangeShort: "0.20 L more", Summary: "Step 1: 0.75 L, 23 g/h",
	}
}

func intakeCard(d IntakeCardData) fyne.Widget {
	c := NewIntakeCard()
	c.Set(d)
	return c
}

func intakeCases() []shown {
	long := intakeData()
	long.Name, long.Note, long.Change, long.ChangeShort = "First step with food", "from the eighteenth of May", "0.20 L and 1½ × oat and date bar with salt more", "20.5 fl oz more than before"
	extreme := intakeData()
	extreme.Drink[0].Value, extreme.Fuel[1].Value, extreme.Advised = 30, -4, false
	return []shown{
		{"typical", 240, 110, func() fyne.Widget { return intakeCard(intakeData()) }},
		{"small", 180, 100, func() fyne.Widget { return intakeCard(intakeData()) }},
		{"long names", 180, 100, func() fyne.Widget { return intakeCard(long) }},
		{"extreme", 220, 100, func() fyne.Widget { return intakeCard(extreme) }},
	}
}
