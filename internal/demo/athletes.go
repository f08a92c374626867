package demo

import (
	"context"

	"ebbwell/internal/consult"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// flagged is a condition with the end of the key of its note, and whether the
// invented physician agreed.
type flagged struct {
	kind      record.FlagKind
	note      string
	physician bool
}

// person is one invented athlete; position, group and the names of bottles are ends
// of keys of the catalogue.
type person struct {
	key, name, sport, position string
	sex                        record.Sex
	// age in years, height in m, mass in kg, usual drinking in L/h.
	age                 int
	height, mass, usual float64
	acclimatised        record.Acclimatised
	group               string
	flags               []flagged
	// guardian is "mother" or "father", with the name beside it.
	guardian, guardianName string
	massShown, tookTenML   float64
	// bottles are the athlete's own, measured.
	bottles []consult.OwnBottle
}

// people are the eleven athletes. massShown above zero settles that a junior's
// mass may be shown; tookTenML is ten mouthfuls weighed, mL.
func people() []person {
	return []person{
		{key: "ravka", name: "Ravka Oldenmoor", sport: "field-hockey", position: "midfield", sex: record.Female, age: 27,
			height: 1.71, mass: 64, usual: 0.70, acclimatised: record.AcclimatisedYes, group: "hockey", tookTenML: 380, bottles: squadBottles()},
		{key: "jorun", name: "Jorun Tallowby", sport: "road-cycling", position: "time-trial", sex: record.Male, age: 31,
			height: 1.82, mass: 71.5, usual: 0.75, acclimatised: record.AcclimatisedNo},
		{key: "sefa", name: "Sefa Quillonde", sport: "basketball", position: "guard", sex: record.Female, age: 24,
			height: 1.78, mass: 72.4, usual: 1.00, acclimatised: record.AcclimatisedNo, group: "basketball", bottles: hallBottles()},
		{key: "dorian", name: "Dorian Wexcombe", sport: "football", position: "full-back", sex: record.Male, age: 29,
			height: 1.80, mass: 77, usual: 0.50, acclimatised: record.AcclimatisedYes, bottles: squadBottles()},
		{key: "mirel", name: "Mirel Ashgarth", sport: "road-running", position: "5-and-10-km", sex: record.Female, age: 16,
			height: 1.66, mass: 52, usual: 0.35, acclimatised: record.AcclimatisedNo, guardian: "mother", guardianName: "Hanne Ashgarth"},
		{key: "odo", name: "Odo Brackwater", sport: "rowing", position: "stroke", sex: record.Male, age: 17,
			height: 1.88, mass: 82, usual: 0.60, acclimatised: record.AcclimatisedNo, guardian: "father", guardianName: "Piet Brackwater", massShown: 1},
		{key: "ilse", name: "Ilse Tarnholme", sport: "road-running", position: "marathon", sex: record.Female, age: 34,
			height: 1.62, mass: 51.5, usual: 0.55, acclimatised: record.AcclimatisedNo,
			flags: []flagged{{record.FlagHyponatraemia, "marathon", true}, {record.FlagNSAID, "knee", false}}},
		{key: "kester", name: "Kester Undermill", sport: "rugby-union", position: "prop", sex: record.Male, age: 22,
			height: 1.85, mass: 112, usual: 0.90, acclimatised: record.AcclimatisedYes,
			flags: []flagged{{record.FlagBloodPressure, "treated", true}}},
		{key: "nessa", name: "Nessa Quarrow", sport: "field-hockey", position: "forward", sex: record.Female, age: 25,
			height: 1.74, mass: 71.2, usual: 0.85, acclimatised: record.AcclimatisedNo, group: "hockey", tookTenML: 410},
		{key: "ottoline", name: "Ottoline Marsk", sport: "field-hockey", position: "defender", sex: record.Female, age: 22,
			height: 1.65, mass: 58.5, usual: 0.50, acclimatised: record.AcclimatisedNo, group: "hockey"},
		{key: "pia", name: "Pia Hollinside", sport: "field-hockey", position: "midfield", sex: record.Female, age: 17,
			height: 1.68, mass: 60.5, usual: 0.45, acclimatised: record.AcclimatisedNo, group: "hockey",
			guardian: "mother", guardianName: "Maud Hollinside"},
	}
}

// squadBottles are the two of a team's: water in the blue one, the drink in the green.
func squadBottles() []consult.OwnBottle {
	return []consult.OwnBottle{
		{Name: "blue", Full: 600, FullMM: 170, Low: 50, LowMM: 22}, {Name: "green", Full: 500, FullMM: 158, Low: 50, LowMM: 24},
	}
}

// hallBottles are two of one size, told by their colour.
func hallBottles() []consult.OwnBottle {
	return []consult.OwnBottle{{Name: "clear", Full: 750, FullMM: 190, Low: 50, LowMM: 20}, {Name: "red", Full: 750, FullMM: 190, Low: 50, LowMM: 20}}
}

// addAthletes writes groups and athletes.
func (f *filler) addAthletes(ctx context.Context) error {
	groups := map[string]record.ID{}
	for _, p := range people() {
		if _, ok := groups[p.group]; ok || p.group == "" {
			continue
		}
		g, err := f.store.SaveGroup(ctx, record.Group{Meta: record.Meta{ID: record.NewID()}, Name: f.names.Say("demo.group." + p.group)}, store.Edit{})
		if err != nil {
			return err
		}
		groups[p.group] = g.ID
	}
	for _, p := range people() {
		kept, err := f.store.SaveAthlete(ctx, f.athlete(p, groups[p.group]), store.Edit{})
		if err != nil {
			return err
		}
		f.athletes[p.key] = kept
	}
	return nil
}

// athlete is a person as kept.
func (f *filler) athlete(p person, group record.ID) record.Athlete {
	born := f.today.AddDate(-p.age, -4, -9)
	a := record.Athlete{
		Meta: record.Meta{ID: record.NewID()}, Name: p.name, Born: record.DateOf(born), Sex: p.sex,
		Height: record.Num(p.height, quantity.Metre), UsualMass: record.Num(p.mass, quantity.Kilogram),
		Sport: p.sport, Position: f.names.Say("demo.position." + p.position), Acclimatised: p.acclimatised,
		UsualDrinking: record.Num(p.usual, quantity.LitrePerHour),
	}
	if p.tookTenML > 0 {
		a.Mouthful = record.Num(p.tookTenML/10, quantity.Millilitre)
	}
	for i := range p.bottles {
		p.bottles[i].Name = f.names.Say("demo.bottle." + p.bottles[i].Name)
	}
	consult.SetOwnBottles(&a, p.bottles)
	by := p.name
	if p.guardian != "" {
		a.Guardian = f.names.Say("demo.guardian."+p.guardian, p.guardianName)
		by, a.Assent = a.Guardian, f.day(230)
		a.MassHidden, a.MassHiddenSettled = p.massShown == 0, true
	}
	for _, x := range p.flags {
		flag := record.Flag{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, Kind: x.kind, Note: f.names.Say("demo.flag." + x.note)}
		if x.physician {
			flag.Physician = f.names.Say("demo.physician")
		}
		a.Flags = append(a.Flags, flag)
	}
	for _, purpose := range []record.Purpose{record.ConsentTest, record.ConsentUrine} {
		a.Consents = append(a.Consents, record.Consent{
			Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, Purpose: purpose, Given: f.day(230), GivenBy: by,
		})
	}
	if group != "" {
		a.Memberships = []record.Membership{{Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, GroupID: group}}
		a.Consents = append(a.Consents, record.Consent{
			Meta: record.Meta{ID: record.NewID()}, AthleteID: a.ID, Purpose: record.ConsentCoach, Given: f.day(230), Until: f.day(-43), GivenBy: by,
		})
	}
	return a
}
