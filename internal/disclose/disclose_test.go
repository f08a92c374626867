package disclose

import (
	"bytes"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ebbwell/internal/exchange"
	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// today is the day of these tests.
func today() time.Time { return time.Date(2026, 5, 18, 12, 0, 0, 0, time.UTC) }

// practice is a small one: Ada consented to sharing, Bo's mass is hidden and he
// consented, Cleo did not consent; all three share a session and a trip.
func practice(mass float64) exchange.Records {
	meta := func(id string) record.Meta { return record.Meta{ID: record.ID(id)} }
	kg := func(x float64) record.Number { return record.Num(x, quantity.Kilogram) }
	person := func(id, name string, born record.Date, consents ...record.Purpose) record.Athlete {
		a := record.Athlete{Meta: meta(id), Name: name, Born: born, UsualMass: kg(mass), DeficitAim: record.Num(2, quantity.PerCent), Note: "plays away a lot"}
		a.Memberships = []record.Membership{{Meta: meta(id + "m"), AthleteID: a.ID, GroupID: "g"}}
		a.Flags = []record.Flag{{Meta: meta(id + "f"), AthleteID: a.ID, Kind: record.FlagLithium}}
		for i, c := range consents {
			a.Consents = append(a.Consents, record.Consent{Meta: meta(id + "c" + string(rune('0'+i))), AthleteID: a.ID, Purpose: c, Given: "2026-01-01"})
		}
		return a
	}
	r := exchange.Records{
		Athletes: []record.Athlete{person("ada", "Ada Fennick", "1999-02-03", record.ConsentCoach), person("bo", "Bo Harkwell", "2012-02-03", record.ConsentCoach),
			person("cleo", "Cleo Marrin", "1998-01-01")},
		Groups:   []record.Group{{Meta: meta("g"), Name: "First squad"}, {Meta: meta("other"), Name: "Nobody's"}},
		Products: []record.Product{{Meta: meta("used"), Name: "Cordial"}, {Meta: meta("unused"), Name: "Broth"}},
	}
	s := record.GroupSession{Meta: meta("s")}
	trip := record.Trip{Meta: meta("trip"), Stops: []record.Stop{{Meta: meta("stop"), TripID: "trip", Note: "Cleo shares a room"}}}
	for _, a := range r.Athletes {
		id := string(a.ID)
		t := record.Test{Meta: meta(id + "t"), AthleteID: a.ID, Note: "fine"}
		t.Session.Energy, t.Session.Power = record.Num(8*mass, quantity.Kilocalorie), record.Num(3*mass, quantity.Watt)
		t.Weighings = []record.Weighing{{Meta: meta(id + "w"), TestID: t.ID, Moment: record.Before, Mass: kg(mass + 0.4)}}
		t.Partway = []record.PartwayWeighing{{Meta: meta(id + "p"), TestID: t.ID, Mass: kg(mass), Drunk: record.Num(300, quantity.Millilitre)}}
		t.Bottles = []record.Bottle{{Meta: meta(id + "b"), TestID: t.ID, ProductID: "used", Before: record.Num(650, quantity.Gram)}}
		t.Feeling.Ill = true
		plan := record.Plan{Meta: meta(id + "pl"), AthleteID: a.ID, Target: record.Target{DeficitAim: record.Num(2, quantity.PerCent)}, Agreement: record.Agreement{Words: "I want less cramp"}}
		r.Tests, r.Plans = append(r.Tests, t), append(r.Plans, plan)
		s.Members = append(s.Members, record.Member{Meta: meta(id + "sm"), GroupSessionID: "s", AthleteID: a.ID, TestID: t.ID})
		trip.Travellers = append(trip.Travellers, record.Traveller{Meta: meta(id + "tt"), TripID: "trip", AthleteID: a.ID})
	}
	r.Sessions, r.Trips = []record.GroupSession{s}, []record.Trip{trip}
	return r
}

func left(g Given, k Kind) (Omission, bool) {
	i := slices.IndexFunc(g.Left, func(o Omission) bool { return o.Kind == k })
	if i < 0 {
		return Omission{}, false
	}
	return g.Left[i], true
}

func everyone() []record.ID { return []record.ID{"ada", "bo", "cleo"} }

// whole is what is given as it is written.
func whole(t interface{ Fatal(...any) }, r exchange.Records) string {
	var out bytes.Buffer
	if err := exchange.WriteJSON(&out, r); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// TestWhoDidNotConsentIsNotGiven: nothing of theirs is in what a coach gets, not even
// an id; the practitioner is told who it is.
func TestWhoDidNotConsentIsNotGiven(t *testing.T) {
	all := practice(61.3)
	g := Of(all, everyone(), ToCoach, today())
	text := strings.ToLower(whole(t, g.Records))
	if strings.Contains(text, "cleo") || !strings.Contains(text, "ada fennick") {
		t.Errorf("the coach gets %s", text)
	}
	for _, word := range []string{"lithium", "cramp", "plays away", "unused", "nobody's"} {
		if strings.Contains(text, word) {
			t.Errorf("the coach gets %q", word)
		}
	}
	o, ok := left(g, NoConsent)
	if !ok || o.Count != 1 || !slices.Equal(o.Athletes, []record.ID{"cleo"}) {
		t.Errorf("left out: %+v", g.Left)
	}
	if g.Records.Tests[0].Feeling.Ill || !all.Tests[0].Feeling.Ill {
		t.Error("a coach is told who was ill, or the practice's own records were changed")
	}
	withdrawn := practice(61.3)
	withdrawn.Athletes[0].Consents[0].Withdrawn = "2026-05-18"
	if g := Of(withdrawn, []record.ID{"ada"}, ToCoach, today()); len(g.Records.Athletes)+len(g.Records.Tests)+len(g.Records.Trips) > 0 {
		t.Error("who withdrew the consent is given all the same")
	}
}

// TestTheAthleteAlwaysGetsTheirOwn: without any consent, and nobody else's.
func TestTheAthleteAlwaysGetsTheirOwn(t *testing.T) {
	g := Of(practice(61.3), []record.ID{"cleo"}, ToAthlete, today())
	if len(g.Records.Athletes) != 1 || len(g.Records.Tests) != 1 || len(g.Records.Athletes[0].Flags) != 1 || !g.Records.Athletes[0].UsualMass.Known() {
		t.Errorf("they get %+v", g.Records)
	}
	text := whole(t, g.Records)
	for _, other := range []string{`"ada`, `"bo`, "Ada", "Bo Hark"} {
		if strings.Contains(text, other) {
			t.Errorf("of another they get %q", other)
		}
	}
	if o, ok := left(g, Others); !ok || o.Count != 4 {
		t.Errorf("left out: %+v", g.Left)
	}
}

// TestAHiddenMassChangesNothing: whatever the mass, what is given is the same to the
// last byte, so that nothing in it can tell.
func TestAHiddenMassChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		one, two := rapid.Float64Range(20, 160).Draw(t, "one"), rapid.Float64Range(20, 160).Draw(t, "two")
		to := rapid.SampledFrom([]Audience{ToAthlete, ToCoach}).Draw(t, "to")
		a, b := Of(practice(one), []record.ID{"bo"}, to, today()), Of(practice(two), []record.ID{"bo"}, to, today())
		if whole(t, a.Records) != whole(t, b.Records) {
			t.Fatalf("of %v and %v kg another file is given", one, two)
		}
		if o, ok := left(a, HiddenMass); !ok || o.Count != 1 {
			t.Fatalf("left out: %+v", a.Left)
		}
	})
	all := exchange.Results{{TestID: "adat", AthleteID: "ada"}, {TestID: "bot", AthleteID: "bo"}, {TestID: "cleot", AthleteID: "cleo"}}
	if got := Of(practice(61.3), everyone(), ToCoach, today()).Results(all); len(got) != 1 || got[0].TestID != "adat" {
		t.Errorf("of the results are given %+v", got)
	}
	if g := Of(practice(61.3), []record.ID{"ada"}, ToAthlete, today()); !g.Records.Tests[0].Weighings[0].Mass.Known() {
		t.Error("a mass that is not hidden is left out")
	}
}

func TestTextsThatTellAMass(t *testing.T) {
	for text, want := range map[string]bool{
		"weighed 61 on Monday": true, "was 135.2 at home": true, "60,9": true, "lost 0.4 kg": true, "8 stone 3": true, "52 kilos": true,
		"won 3 to 1": false, "drank 650 mL": false, "": false, "room 214": false, "played 90 minutes": false,
	} {
		if got := tellsMass(text, []float64{61.3}); got != want {
			t.Errorf("%q tells a mass of 61.3 kg: %v", text, got)
		}
	}
	if !tellsShare("2 % down") || !tellsShare("1,5\u202f% lighter") || tellsShare("2 down, all %") {
		t.Error("a share of the mass is not told from what is none")
	}
	r := practice(61.3)
	r.Athletes[1].Note, r.Tests[1].Bottles[0].Name = "down 2 % now", "Cordial 6 %"
	g := Of(r, []record.ID{"bo"}, ToAthlete, today())
	if o, ok := left(g, MassInText); !ok || o.Count != 1 || g.Records.Athletes[0].Note != "" || g.Records.Tests[0].Bottles[0].Name != "Cordial 6 %" {
		t.Errorf("%+v, %+v", g.Left, g.Records.Athletes[0])
	}
}
