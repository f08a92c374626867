package handout

import (
	"testing"
	"time"

	"golang.org/x/text/language"

	"ebbwell/internal/figure"
	"ebbwell/internal/handout/paper"
	"ebbwell/internal/quantity"
	"ebbwell/internal/words"
)

// english opens the English catalogue.
func english(t testing.TB) *words.Words {
	t.Helper()
	w, err := words.New(language.English)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// press makes a press for A4.
func press(t testing.TB) *Press {
	t.Helper()
	p, err := NewPress(english(t), paper.A4())
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// day is a day of 2026.
func day(month time.Month, d int) time.Time { return time.Date(2026, month, d, 0, 0, 0, 0, time.UTC) }

// practice is invented.
func practice() Practice {
	return Practice{
		Name: "Saltmarsh Practice (invented)", Practitioner: "A. Invented, dietitian",
		Registration: "reg. 00000", Telephone: "000 000 000", Emergency: "112",
	}
}

// water is where the bottle of water of the typical page stands.
func water(before, left quantity.Millilitres, line int) []Stand {
	return []Stand{{Holds: 600, Before: before, Left: left, Line: line}}
}

// match is a typical page; its figures are made up, but agree with each other.
func match() AthletePage {
	return AthletePage{
		Terms: Terms{Practice: practice()},
		Heading: Heading{
			Athlete: "Ravka", Session: "match", Step: "Step 1", From: day(5, 18),
			Minutes: 95, Air: quantity.Range{Low: 28, High: 33}, AirKnown: true,
		},
		Words: "I want legs left for the last quarter.",
		Bars: []Bar{
			{
				Label: "14 May", Loss: 2.01, Breath: 0.14, LossRange: quantity.Range{Low: 1.87, High: 2.15}, Ranged: true,
				Parts: []Part{{Water, "water", 0.30}, {Drink, "sports drink", 0.25}},
				Deficit: Deficit{
					Percent: 2.5, PercentKnown: true, Litres: 1.60, Ranged: true,
					PercentRange: quantity.Range{Low: 2.3, High: 2.7}, LitresRange: quantity.Range{Low: 1.49, High: 1.71},
				},
			},
			{
				Label: "Step 1", Loss: 2.01, Breath: 0.14, Planned: true,
				Parts: []Part{{Water, "water", 0.45}, {Drink, "sports drink", 0.30}},
				Deficit: Deficit{
					Percent: 2.2, PercentKnown: true, Litres: 1.40, Ranged: true,
					PercentRange: quantity.Range{Low: 1.4, High: 3.2}, LitresRange: quantity.Range{Low: 0.88, High: 2.05},
				},
			},
		},
		Before: Before{Early: 350, EarlyHours: 4, Late: 200, LateHours: 2},
		Bag: []BagItem{
			{Substance: Water, Name: "water", Count: 1, Volume: 600, Fill: 600},
			{Substance: Drink, Name: "sports drink", Count: 1, Volume: 500},
			{Substance: Food, Name: "fig bar", Portions: 0.5},
		},
		During: During{
			Drinks: []Column{{Water, "water"}, {Drink, "sports drink"}},
			Chances: []Chance{
				{Name: "end of warm-up", Volumes: []quantity.Millilitres{150, 0}, Mouthfuls: 4, Stands: water(600, 450, 1)},
				{Name: "after quarter 1", Volumes: []quantity.Millilitres{150, 0}, Mouthfuls: 4, Stands: water(450, 300, 2)},
				{
					Name: "half-time", Volumes: []quantity.Millilitres{0, 300}, Mouthfuls: 8, Foods: []Portion{{"fig bar", 0.5}},
					Stands: []Stand{{Drink: 1, Holds: 500, Before: 500, Left: 200, Line: 1}},
				},
				{Name: "after quarter 3", Volumes: []quantity.Millilitres{150, 0}, Mouthfuls: 4, Stands: water(300, 150, 3)},
				{Name: "on the bench, quarter 4", Volumes: []quantity.Millilitres{75, 0}, Mouthfuls: 2, Maybe: true, Stands: water(150, 75, 4)},
			},
			Total: []quantity.Millilitres{525, 300}, TotalMouthfuls: 22, TotalFoods: []Portion{{"fig bar", 0.5}}, Mouthful: 38, Carbohydrate: 23,
		},
		After:    After{Soon: true, PerKilogram: quantity.Range{Low: 1.25, High: 1.5}, Extra: quantity.Range{Low: 1.69, High: 2.03}},
		FollowUp: FollowUp{Review: day(6, 2), Sessions: 3},
		Practise: Practise{
			What: "150 mL more water; 50 mL more sports drink; ½ fig bar more (half-time)", From: day(5, 18), PerWeek: 3,
			Rule: StepRule{Sessions: 3, Next: day(6, 9)},
		},
		Basis: Basis{
			Day: day(5, 14), Tests: 1, Air: quantity.Range{Low: 31, High: 31}, AirKnown: true,
			Loss: 2.01, LossRange: quantity.Range{Low: 1.87, High: 2.15}, Ranged: true, DayToDay: 0.15,
		},
	}
}

// hidden is the typical page of somebody whose mass is hidden. What people
// typed speaks of mass, energy and per cent all the same.
func hidden() AthletePage {
	a := match()
	a.Terms.MassHidden = true
	a.Words = "At 61,5 kg I was fast, 2 % less would be 60kg. 1st quarter, 300 kcal."
	a.Terms.Cautions = []string{"Keep to food you know; 3 mL/kg was too much."}
	a.During.Drinks[1].Name = "sports drink 6 %"
	a.Bars[0].Parts[1].Name = "sports drink 6 %"
	a.Bag[1].Name = "sports drink 6 %"
	return a
}

// minor is the page of an athlete under 18.
func minor() AthletePage {
	a := match()
	a.Terms.MassHidden = true
	a.Terms.SaltWithheld = true
	a.Heading.Athlete = "Imri"
	a.Terms.Cautions = []string{
		"You are under 18: show this page to the adult who looks after you, and to your coach if you both agree.",
		"No extra salt: your doctor looks after your blood pressure.",
	}
	return a
}

// estimate is the page for air in which nobody tested.
func estimate() AthletePage {
	a := match()
	a.Heading.Air = quantity.Range{Low: 36, High: 36}
	a.Bars[1] = Bar{
		Label: "Chennai, July", Loss: 2.47, LossRange: quantity.Range{Low: 1.9, High: 3.17}, Ranged: true, Planned: true, Estimate: true,
		Parts: []Part{{Water, "water", 0.55}, {Drink, "sports drink", 0.55}},
		Deficit: Deficit{
			Percent: 2.1, PercentKnown: true, Litres: 1.37, Ranged: true,
			PercentRange: quantity.Range{Low: 1.3, High: 3.2}, LitresRange: quantity.Range{Low: 0.8, High: 2.07},
		},
	}
	a.Basis = Basis{
		Place: "Chennai in July", Air: quantity.Range{Low: 36, High: 36}, AirKnown: true, Estimate: true,
		Loss: 2.47, LossRange: quantity.Range{Low: 1.9, High: 3.17}, Ranged: true, DayToDay: 0.15,
	}
	a.Terms.Cautions = []string{"No hard sessions in this heat: move to a cooler hour, or cancel. Where the organiser's heat policy is stricter, it decides."}
	return a
}

// noChances is a sport without breaks.
func noChances() AthletePage {
	a := match()
	a.Heading.Session = "long run"
	a.During.Chances = nil
	a.During.PerHour = []quantity.Millilitres{280, 220}
	a.During.Foods, a.During.TotalFoods = []Portion{{"energy gel", 1}}, []Portion{{"energy gel", 1.5}}
	return a
}

// longNames tries what does not fit: long names, scripts and signs that the
// typeface lacks.
func longNames() AthletePage {
	a := match()
	a.Heading.Athlete = "Wilhelmina-Konstantinopolitana Featherstonehaugh-Oldenmoor-Ravka 🏑"
	a.Heading.Session = "seven-a-side indoor championship qualification match"
	a.Terms.Practice.Name = "Interdisciplinary Practice for Nutrition and Performance of Saltmarsh and District (invented)"
	a.Terms.Practice.Practitioner = "Dr Maximiliana Featherstonehaugh-Oldenmoor"
	a.Bars[0].Label = "14 May, third of the qualification rounds"
	a.Bars[0].Parts[1].Name = "home-made blackcurrant and rosehip sugar-salt drink, diluted to half 🧃"
	a.During.Drinks[1].Name = "home-made blackcurrant and rosehip sugar-salt drink"
	a.During.Chances[0].Name = "End of the warm-up, before the captains are called to the middle of the pitch"
	a.During.Chances[2].Foods = []Portion{{"fig-and-almond bar without added sugar, from the market", 0.5}, {"饭团", 1}}
	a.Bag[2].Name = "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaftsriegel"
	a.Words = "Ночью жарко, λέει ο προπονητής — 很热 🥵."
	return a
}

// twoSides has more than fits on one side.
func twoSides() AthletePage {
	a := match()
	a.Heading.Session = "long match"
	a.During.Chances = nil
	for _, name := range []string{"1–0", "2–1", "3–2", "4–3", "set 1", "1–0, set 2", "2–1, set 2", "3–2, set 2", "set 2", "3–2, set 3", "4–3, set 3"} {
		a.During.Chances = append(a.During.Chances, Chance{Name: "After " + name, Volumes: []quantity.Millilitres{60, 40}, Mouthfuls: 3})
	}
	a.During.Total, a.During.TotalMouthfuls = []quantity.Millilitres{660, 440}, 33
	a.Compare, a.Options = true, []Option{
		{Name: "Without food", Parts: a.Bars[1].Parts, Deficit: a.Bars[1].Deficit, Carbohydrate: 15},
		{Name: "With food", Chosen: true, Parts: a.Bars[1].Parts, Foods: []Portion{{"fig bar", 0.5}}, Deficit: a.Bars[1].Deficit, Carbohydrate: 25},
	}
	return a
}

// gain is a page of somebody who drank more than they lost.
func gain() AthletePage {
	a := match()
	a.Bars = a.Bars[:1]
	a.Bars[0].Loss, a.Bars[0].LossRange = 0.80, quantity.Range{Low: 0.7, High: 0.9}
	a.Bars[0].Parts = []Part{{Water, "water", 0.90}, {Drink, "sports drink", 0.25}}
	a.Bars[0].Deficit = Deficit{
		Percent: -0.5, PercentKnown: true, Litres: -0.35,
	}
	return a
}

// card is the kit-bag card of a page.
func card(a AthletePage) KitBagCard {
	return KitBagCard{
		Terms: a.Terms, Athlete: a.Heading.Athlete, Session: a.Heading.Session,
		Step: a.Heading.Step, From: a.Heading.From, During: a.During, Estimate: a.Basis.Estimate,
	}
}

// report is the report of the test of 14 May.
func report() TestReport {
	r := func(low, high float64) quantity.Range { return quantity.Range{Low: low, High: high} }
	rate := figure.Figure{
		Known: true, Value: 1.2695, Unit: quantity.LitrePerHour, U: 0.036, Range: r(1.199, 1.340), Ranged: true,
		Why: figure.Why{
			Formula: "loss/hours",
			Inputs:  []figure.Input{{Symbol: "loss", Value: 2.01, Unit: quantity.Litre, U: 0.055}, {Symbol: "hours", Value: 1.58333, Unit: quantity.Hour, U: 0.0167}},
			Budget:  []figure.Share{{Source: "weighing", Part: 0.8}, {Source: "time", Part: 0.2}},
			Sources: []string{"Baker 2017, Sports Med 47(S1):111"},
		},
	}
	sodium := figure.Figure{
		Known: true, Value: 1112, Unit: quantity.MilligramPerHour, Range: r(711, 1516), Ranged: true,
		Why: figure.Why{
			Formula: "rate*concentration*22.99",
			Inputs:  []figure.Input{{Symbol: "rate", Value: 1.2695, Unit: quantity.LitrePerHour, U: 0.036}, {Symbol: "concentration", Value: 38.1, Unit: quantity.MillimolePerLitre, U: 7.1}},
			Sources: []string{"Baker et al. 2016, J Sports Sci 34:358"},
		},
	}
	down := figure.Figure{Known: true, Value: 2.5, Unit: quantity.PerCent, Range: r(2.3, 2.7), Ranged: true, Why: figure.Why{
		Formula: "100*(before - after)/before",
		Inputs:  []figure.Input{{Symbol: "before", Value: 64, Unit: quantity.Kilogram, U: 0.06}, {Symbol: "after", Value: 62.4, Unit: quantity.Kilogram, U: 0.06}},
	}}
	urine := figure.Figure{Known: true, Value: 1.016}
	return TestReport{
		Terms: Terms{Practice: practice()}, Athlete: "Ravka Oldenmoor", Day: day(5, 14),
		Session: "In 95 minutes of hard play at 31 °C.", FilledInBy: "A. Invented", Evidence: "2026.1",
		Bar: match().Bars[0], Quality: []string{"Single weighings, not repeated."}, Applied: []string{"Breath and gas exchange: 0.14 L taken off."},
		Summary: "Sweat rate 1.27 L/h; a quarter of the loss was drunk, 2.5 % lighter at the end.",
		Done: []Done{
			{"Session", "95 min, 16:05 to 17:40"}, {"Air", "31 °C, full, high, 1.5 m/s"}, {"Heat", "not heat-acclimatised"}, {"Effort", "rated 8 of 10"},
			{"Body mass", "weighed, not shown"}, {"Bottles", "2 bottles, 2 weighed"}, {"Patch", "1 patch, 28 min on"}, {"Measured by", "A. Invented"},
		},
		Calculation: []Calculated{{"Total sweat loss", "body mass lost + fluid + food − urine − breath and gas exchange", "1.60 + 0.55 + 0 − 0 − 0.14 = 2.01 L"}},
		Findings: []Finding{
			{Name: "Sweat rate", Figure: rate, Decimals: 2, Beside: "more than about 6 in 10 of 506 athletes"},
			{Name: "Sodium lost", Figure: sodium, Decimals: -1, Beside: "near the middle of 506 athletes", Notes: []string{"The patch equation gives most of this range."}},
			{Name: "Deficit at the end", Figure: down, Decimals: 1, Beside: "past the limit of 2 % set with the athlete"},
			{Name: "Urine before", Figure: urine, Decimals: 3, Reading: true, Beside: "within 1.020, ACSM 2007"},
		},
	}
}

// noSodium is a report whose patch is still at the laboratory.
func noSodium() TestReport {
	r := report()
	r.Findings[1] = Finding{Name: "Sodium lost", Beside: "waiting for the laboratory"}
	r.Findings[0].Figure.Ranged = false
	return r
}

// trip is a page of two stops with a packing list.
func trip() TripPage {
	return TripPage{
		Terms: Terms{Practice: practice()}, Trip: "July, camp and tournament", Athlete: "Ravka Oldenmoor",
		Stops: []TripStop{
			{
				Place: "at home", From: day(7, 2), Until: day(7, 10), Air: quantity.Range{Low: 29, High: 29}, AirKnown: true,
				Verdict: "*Normal sessions.* WBGT about 22 °C, estimated.", Calm: true, Conditions: "match · 95 min · effort 8 of 10 · part cloud",
				Rests: "The test of 14 May holds here.",
				Rate:  StopRate{Rate: "1.27\u00a0L/h", Range: "0.9 to 1.7\u00a0L/h"},
				Plan: StopPlan{
					Session: "match", Minutes: 95, Parts: []Part{{Water, "water", 0.45}, {Drink, "sports drink", 0.35}}, Foods: []Portion{{"fig bar", 0.5}}, Carbohydrate: 31,
					Low: Deficit{Percent: 1.3, PercentKnown: true, Litres: 0.83}, High: Deficit{Percent: 3.2, PercentKnown: true, Litres: 2.05},
				},
			},
			{
				Place: "camp at the coast", From: day(7, 11), Until: day(7, 17), Humidity: 46, Air: quantity.Range{Low: 36, High: 36}, AirKnown: true,
				Verdict:    "*No hard sessions.* WBGT about 34 °C, estimated, not yet acclimatised.",
				Conditions: "match · 95 min · effort 8 of 10 · full sun, high · afternoon, July means for Chennai",
				Rests:      "No test holds: 5 °C hotter than any, and not yet acclimatised to heat.",
				Rate:       StopRate{Rate: "1.56\u00a0L/h", Range: "1.2 to 2.0\u00a0L/h", Estimate: true},
				Plan: StopPlan{
					Session: "match", Minutes: 95, Parts: []Part{{Water, "water", 0.55}, {Drink, "sports drink", 0.55}}, Foods: []Portion{{"fig bar", 0.5}}, Carbohydrate: 31,
					Low: Deficit{Percent: 1.3, PercentKnown: true, Litres: 0.8}, High: Deficit{Percent: 3.2, PercentKnown: true, Litres: 2.07},
				},
				Notes:    []string{"Weigh before and after the first two sessions. Test again about day 6, and again near day 12."},
				Cautions: []string{"At the high end, the deficit passes the limit. Play shorter or cooler; never drink more."},
			},
		},
		Packing: []PackLine{
			{What: "sports drink powder", Amount: "12 servings, 0.5 kg", Where: Stow, Lot: "L-0042", Supplement: true},
			{What: "energy gel", Amount: "8", Where: Carry, Supplement: true},
			{What: "bottles of 500 mL", Amount: "3", Where: Carry},
			{What: "safe water", Amount: "4 L a day", Where: Buy},
		},
		Notes:         []string{"On the flight drink when you are thirsty. Use sealed or boiled water for drinks and for teeth."},
		ClimateCredit: "Datenbasis: Deutscher Wetterdienst, eigene Bearbeitung",
	}
}
