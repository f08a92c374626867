package consult

import (
	"slices"
	"testing"

	"ebbwell/internal/climate"
	"ebbwell/internal/evidence"
	"ebbwell/internal/plan"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/sweat"
)

// What the metabolic rate is taken from: the best that was typed, each equation
// only where it holds.
func TestEffortInput(t *testing.T) {
	activities, err := climate.LoadActivities()
	if err != nil {
		t.Fatal(err)
	}
	const mass = 72.4
	w, kmh := func(x float64) record.Number { return record.Num(x, quantity.Watt) }, record.Num(12, quantity.KilometrePerHour)
	kcal, met := record.Num(900, quantity.Kilocalorie), record.Num(8, quantity.Met)
	soccer, _ := activities.Find("soccer")
	for name, c := range map[string]struct {
		session record.Session
		uptake  float64 // L/min; 0 for none
		energy  bool
	}{
		"power on the bike":              {record.Session{Sport: "road-cycling", Power: w(200)}, sweat.FromCycling(200, mass).Litres, false},
		"power in the boat":              {record.Session{Sport: "rowing", Power: w(190)}, sweat.FromRowing(190).Litres, false},
		"power in another sport":         {record.Session{Sport: "football", Power: w(200)}, 0, false},
		"power, and MET, in another":     {record.Session{Sport: "football", Power: w(200), Met: met}, sweat.FromMet(8, mass).Litres, false},
		"power of a bicycle for runners": {record.Session{Sport: "road-running", Activity: "cycle-180w", Power: w(180)}, sweat.FromCycling(180, mass).Litres, false},
		"running speed":                  {record.Session{Sport: "road-running", Speed: kmh, Energy: kcal}, sweat.FromRunning(12, 0, mass).Litres, true},
		"running speed in a boat":        {record.Session{Sport: "rowing", Speed: kmh}, 0, false},
		"energy only":                    {record.Session{Sport: "football", Energy: kcal}, 0, true},
		"energy before the table":        {record.Session{Sport: "football", Activity: "soccer", Energy: kcal}, 0, true},
		"MET before energy":              {record.Session{Sport: "football", Met: met, Energy: kcal}, sweat.FromMet(8, mass).Litres, true},
		"the table":                      {record.Session{Sport: "football", Activity: "soccer"}, sweat.FromMet(soccer.Met, mass).Litres, false},
	} {
		t.Run(name, func(t *testing.T) {
			sheet, a := caseSheet()
			sheet.Session = c.session
			e := EffortInput(sheet, a, Setup{Activities: activities})
			got := 0.0
			if e.Oxygen != nil {
				got = *e.Oxygen
			}
			near(t, "uptake", got, c.uptake, 1e-12)
			if (e.Energy != nil) != c.energy {
				t.Errorf("energy %v", e.Energy)
			}
		})
	}
}

// 190 W at an efficiency of 0.19 are 1000 W, which is 60 000 J/min.
func TestRowingUptake(t *testing.T) {
	near(t, "L/min", sweat.FromRowing(190).Litres, 60000/sweat.EnergyPerOxygen(0.92), 1e-9)
}

// Where energy alone is known, 0.20 g/kcal (Cheuvront & Montain 2017) is what
// both corrections come to while the humidity is not known, and the two
// equations once it is.
func TestCorrectionByEnergyAlone(t *testing.T) {
	sheet, a := caseSheet()
	sheet.Session.Effort, sheet.Air.Humidity = record.Number{}, record.Number{}
	sheet.Session.Energy = record.Num(900, quantity.Kilocalorie)
	on := Find(sheet, a, nil, testSetup(t))
	sum := 0.0
	for _, c := range on.Sweat.Corrections {
		if !c.On || !c.Size.Known {
			t.Fatalf("%s is not taken off: %s", c.ID, c.Reason)
		}
		sum += c.Size.Value
	}
	near(t, "both corrections, kg", sum, 900*evidence.CombinedCorrection/1000, 1e-9)
	near(t, "loss, L", on.Sweat.Fluid.Loss.Value, 3.3-0.18, 0.005)
	sheet.Air.Humidity = record.Num(50, quantity.PerCent)
	humid := Find(sheet, a, nil, testSetup(t))
	if humid.Sweat.Fluid.Loss.Value == on.Sweat.Fluid.Loss.Value || !humid.Sweat.Corrections[0].On {
		t.Error("with the humidity known the two equations are not used")
	}
}

// What is known of the effort goes in, and where nothing is the usual MET of the
// sport, else 6 MET, taken as a rating.
func TestEffortOfTheSport(t *testing.T) {
	activities, err := climate.LoadActivities()
	if err != nil {
		t.Fatal(err)
	}
	sheet, a := caseSheet()
	sheet.Session.Effort = record.Number{}
	for sport, reason := range map[string]string{"handball": sweat.ReasonSport, "of no table": sweat.ReasonAssumed} {
		sheet.Session.Sport = sport
		d := testSetup(t)
		d.Activities = activities
		f := Find(sheet, a, nil, d)
		if c := f.Sweat.Corrections[0]; !c.On || c.Reason != reason {
			t.Errorf("%s: %+v", sport, c)
		}
	}
}

// TestOneEffort: whatever is known of a session, the heat balance works with the
// effort the test was corrected by: the same oxygen as power over the body's
// area, and as wide where it is a rating.
func TestOneEffort(t *testing.T) {
	d := testSetup(t)
	var err error
	if d.Activities, err = climate.LoadActivities(); err != nil {
		t.Fatal(err)
	}
	kcal := record.Num(900, quantity.Kilocalorie)
	for name, c := range map[string]struct {
		session record.Session
		kind    climate.EffortKind
		reason  string
	}{
		"energy only":             {record.Session{Sport: "football", Energy: kcal}, climate.ByEnergy, sweat.ReasonEnergy},
		"energy before a rating":  {record.Session{Sport: "football", Energy: kcal, Effort: record.Num(9, "")}, climate.ByEnergy, sweat.ReasonEnergy},
		"energy before the table": {record.Session{Sport: "football", Activity: "soccer", Energy: kcal}, climate.ByEnergy, sweat.ReasonEnergy},
		"MET before energy":       {record.Session{Sport: "football", Met: record.Num(8, quantity.Met), Energy: kcal}, climate.ByActivity, sweat.ReasonEffort},
		"the table":               {record.Session{Sport: "football", Activity: "soccer"}, climate.ByActivity, sweat.ReasonEffort},
		"running speed":           {record.Session{Sport: "road-running", Speed: record.Num(12, quantity.KilometrePerHour)}, climate.BySpeed, sweat.ReasonEffort},
		"a rating":                {record.Session{Sport: "football", Effort: record.Num(7, "")}, climate.ByRating, sweat.ReasonRating},
		"the sport":               {record.Session{Sport: "football"}, climate.ByRating, sweat.ReasonSport},
		"nothing":                 {record.Session{Sport: "american-football"}, climate.ByRating, sweat.ReasonAssumed},
		"nothing, not even sport": {record.Session{}, climate.ByRating, sweat.ReasonAssumed},
	} {
		t.Run(name, func(t *testing.T) {
			sheet, a := caseSheet()
			if c.session.Sport == "" {
				a.Sport = ""
			}
			c.session.Date, c.session.Start, c.session.End = sheet.Session.Date, sheet.Session.Start, sheet.Session.End
			sheet.Session = c.session
			f := Find(sheet, a, nil, d)
			b := BodyFor(a, &f.Test)
			effort, err := effortFor(Again(f), a, b, d)
			if err != nil || effort.Kind != c.kind {
				t.Fatalf("effort by %q, %v", effort.Kind, err)
			}
			for _, x := range f.Sweat.Corrections {
				if x.Reason != c.reason {
					t.Errorf("%s is sized by %q, not %q", x.ID, x.Reason, c.reason)
				}
			}
			swap := f.Sweat.Corrections[1].Size.Value // kg of carbon dioxide less oxygen
			perLitre := (evidence.CarbonDioxideMass*evidence.UsualRER - evidence.OxygenMass) / evidence.MolarGasVolume / 1000
			watts := swap / perLitre * sweat.EnergyPerOxygen(evidence.UsualRER) / (f.Minutes * 60)
			// the two go by 20.9 kJ and by the exchange ratio's own energy a litre
			tolerance := 0.005 * watts
			if c.kind != climate.ByEnergy {
				watts *= evidence.OxygenEnergy / sweat.EnergyPerOxygen(evidence.UsualRER)
				tolerance = 1e-6 * watts
			}
			near(t, "W", effort.Metabolic.Value*b.Area(), watts, tolerance)
		})
	}
}

// Every sport the program knows has chances to drink in the table.
func TestEverySportHasChances(t *testing.T) {
	table, err := plan.Sports()
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range Sports() {
		there := slices.ContainsFunc(table, func(row plan.Sport) bool { return row.Code == s.Chances && len(row.Chances(120, plan.Temperate)) > 0 })
		if !there {
			t.Errorf("%s has no chances to drink", s.Code)
		}
	}
}
