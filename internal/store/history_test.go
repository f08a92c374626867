package store

import (
	"context"
	"errors"
	"fmt"
	"math"
	"reflect"
	"testing"
	"time"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// told writes changes as "field: before > after (why)", oldest first.
func told(t testing.TB, s *Store, ref record.Ref) []string {
	t.Helper()
	changes := got(s.History(context.Background(), ref))(t)
	var lines []string
	for i := len(changes) - 1; i >= 0; i-- {
		c := changes[i]
		line := fmt.Sprintf("%s: %s > %s", c.Field, c.Before, c.After)
		if c.Why != "" {
			line += " (" + c.Why + ")"
		}
		lines = append(lines, line)
		if c.Kind != ref.Kind || c.Record != ref.ID || c.By == "" || c.At.IsZero() {
			t.Errorf("change without its record, name or time: %+v", c)
		}
	}
	return lines
}

func wantTold(t testing.TB, s *Store, ref record.Ref, want ...string) {
	t.Helper()
	if lines := told(t, s, ref); !reflect.DeepEqual(lines, want) {
		t.Fatalf("history\n got %q\nwant %q", lines, want)
	}
}

// sheet makes an athlete and an open test with one bottle.
func sheet(t testing.TB, s *Store) (record.Test, record.Ref) {
	t.Helper()
	ctx := context.Background()
	a := got(s.SaveAthlete(ctx, record.Athlete{Name: "Mira"}, Edit{}))(t)
	one := got(s.SaveTest(ctx, record.Test{AthleteID: a.ID, State: record.TestOpen,
		Bottles: []record.Bottle{{Name: "Bottle", Before: record.Num(812, quantity.Gram)}}}, Edit{}))(t)
	return one, record.Ref{Kind: record.KindTest, ID: one.ID}
}

func refill(grams float64) record.Refill {
	return record.Refill{Added: record.Num(grams, quantity.Gram)}
}

// TestHistoryOfFields: one change for each field, with the unit it was typed in.
func TestHistoryOfFields(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, ref := sheet(t, s)
	bottle := "bottles." + string(one.Bottles[0].ID)
	one.Air.Temperature = record.Num(30, quantity.DegreeFahrenheit) // 30 °C, typed as 86 °F
	one.Loss.NoUrine = true
	one.Bottles[0].Before = record.Num(815, quantity.Gram)
	one = got(s.SaveTest(ctx, one, Edit{Why: "read again"}))(t)
	one.Air.Temperature.Value = nil
	one.Bottles[0].Refills = append(one.Bottles[0].Refills, refill(250))
	s.SetBy("Nell")
	one = got(s.SaveTest(ctx, one, Edit{}))(t)
	wantTold(t, s, ref,
		":  > present",
		"air.temperature:  > 86 °F (read again)",
		"loss.noUrine: false > true (read again)",
		bottle+".before: 812 g > 815 g (read again)",
		"air.temperature: 86 °F > ",
		bottle+".refills."+string(one.Bottles[0].Refills[0].ID)+":  > present")
	if by := got(s.History(ctx, ref))(t)[0].By; by != "Nell" {
		t.Errorf("by %q, want the name that was set last", by)
	}
	if one.CreatedBy != "Kit" || one.ChangedBy != "Nell" || one.Bottles[0].ChangedBy != "Kit" {
		t.Errorf("stamps: created by %s, changed by %s, bottle by %s", one.CreatedBy, one.ChangedBy, one.Bottles[0].ChangedBy)
	}
}

// TestNumberText: numbers in the history read as they were typed.
func TestNumberText(t *testing.T) {
	tests := []struct {
		name string
		n    record.Number
		unit quantity.Unit
		want string
	}{
		{"nothing", record.Number{Unit: quantity.Kilogram}, quantity.Kilogram, ""},
		{"same unit", record.Num(72.4, quantity.Kilogram), quantity.Kilogram, "72.4 kg"},
		{"pounds there and back", record.Num(154.3*0.45359237, quantity.Pound), quantity.Kilogram, "154.3 lb"},
		{"centimetres", record.Num(1.78, quantity.Centimetre), quantity.Metre, "178 cm"},
		{"another kind of unit", record.Num(45, quantity.MilligramPerLitre), quantity.MillimolePerLitre, "45 mmol/L"},
		{"no unit", record.Num(7, quantity.None), quantity.None, "7"},
		{"unit not told", record.Num(7, quantity.None), quantity.Gram, "7 g"},
		{"small", record.Num(0.000001, quantity.Gram), quantity.Gram, "0.000001 g"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if text := numberText(tt.n, tt.unit); text != tt.want {
				t.Errorf("got %q, want %q", text, tt.want)
			}
		})
	}
}

// TestHistoryOfVisit: the key strokes of one visit are one change.
func TestHistoryOfVisit(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, ref := sheet(t, s)
	visit := Edit{Visit: string(record.NewID())}
	for _, place := range []string{"P", "Pa", "Park"} {
		one.Session.Place = place
		one = got(s.SaveTest(ctx, one, visit))(t)
	}
	wantTold(t, s, ref, ":  > present", "session.place:  > Park")
	for _, place := range []string{"Par", "Park"} {
		one.Session.Place = place
		one = got(s.SaveTest(ctx, one, Edit{Visit: "second"}))(t)
	}
	wantTold(t, s, ref, ":  > present", "session.place:  > Park")
	one.Session.Place = "Track"
	got(s.SaveTest(ctx, one, Edit{Visit: "third", Why: "moved"}))(t)
	wantTold(t, s, ref, ":  > present", "session.place:  > Park", "session.place: Park > Track (moved)")
}

// TestHistoryOfRows: each row that goes and comes back is told; what is made in a visit has no earlier value in it.
func TestHistoryOfRows(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, ref := sheet(t, s)
	made := Edit{Visit: string(record.NewID())}
	id := record.NewID()
	path := "bottles." + string(id)
	with := one
	with.Bottles = append(with.Bottles, record.Bottle{Meta: record.Meta{ID: id}, Refills: []record.Refill{refill(100)}})
	with = got(s.SaveTest(ctx, with, made))(t)
	with.Bottles[1].Name = "Cup"
	with = got(s.SaveTest(ctx, with, made))(t)
	wantTold(t, s, ref, ":  > present", path+":  > present")

	without := with
	without.Bottles = with.Bottles[:1]
	without = got(s.SaveTest(ctx, without, Edit{}))(t)
	if loaded := got(s.LoadTest(ctx, one.ID))(t); len(loaded.Bottles) != 1 {
		t.Fatalf("got %d bottles after one was taken away", len(loaded.Bottles))
	}
	with.Meta = without.Meta // undo: the earlier struct on the present version
	back := got(s.SaveTest(ctx, with, Edit{}))(t)
	inner := path + ".refills." + string(with.Bottles[1].Refills[0].ID)
	wantTold(t, s, ref, ":  > present", path+":  > present", path+": present > ", inner+": present > ", path+":  > present", inner+":  > present")
	loaded := got(s.LoadTest(ctx, one.ID))(t)
	if !reflect.DeepEqual(back, loaded) || loaded.Bottles[1].Name != "Cup" || len(loaded.Bottles[1].Refills) != 1 {
		t.Errorf("undo brought back %+v", loaded.Bottles)
	}
	if created := loaded.Bottles[1].CreatedAt; !created.Equal(with.Bottles[1].CreatedAt) {
		t.Errorf("the bottle was made anew at %s", created)
	}
}

// TestHistoryOfRowBroughtBack: what a row held is known when it comes back, so
// a change of it is told, also in the visit that brought it back.
func TestHistoryOfRowBroughtBack(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, ref := sheet(t, s)
	path := "bottles." + string(one.Bottles[0].ID)
	without := one
	without.Bottles = nil
	without = got(s.SaveTest(ctx, without, Edit{}))(t)
	visit := Edit{Visit: "v"}
	back := one
	back.Meta = without.Meta
	back = got(s.SaveTest(ctx, back, visit))(t)
	back.Bottles[0].Before = record.Num(815, quantity.Gram)
	got(s.SaveTest(ctx, back, visit))(t)
	wantTold(t, s, ref, ":  > present", path+": present > ", path+":  > present", path+".before: 812 g > 815 g")

	must(t, s.Delete(ctx, ref, Edit{}))
	must(t, s.Undelete(ctx, ref, Edit{Visit: "w"}))
	whole := got(s.LoadTest(ctx, one.ID))(t)
	whole.Note = "after it came back"
	got(s.SaveTest(ctx, whole, Edit{Visit: "w"}))(t)
	if lines := told(t, s, ref); lines[len(lines)-1] != "note:  > after it came back" {
		t.Errorf("history ends with %q", lines[len(lines)-1])
	}
}

// TestHistoryOfRowThatNeverWas: made and taken away in one visit.
func TestHistoryOfRowThatNeverWas(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, ref := sheet(t, s)
	visit := Edit{Visit: "v"}
	with := one
	with.Foods = []record.FoodEaten{{Name: "Bar"}}
	with = got(s.SaveTest(ctx, with, visit))(t)
	with.Foods = nil
	got(s.SaveTest(ctx, with, visit))(t)
	wantTold(t, s, ref, ":  > present")
}

// TestRefillMoves: a row may go to another row of the same record.
func TestRefillMoves(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	one, _ := sheet(t, s)
	one.Bottles = append(one.Bottles, record.Bottle{Name: "Other"})
	one.Bottles[0].Refills = []record.Refill{refill(100)}
	one = got(s.SaveTest(ctx, one, Edit{}))(t)
	one.Bottles[1].Refills, one.Bottles[0].Refills = one.Bottles[0].Refills, nil
	one = got(s.SaveTest(ctx, one, Edit{}))(t)
	if loaded := got(s.LoadTest(ctx, one.ID))(t); !reflect.DeepEqual(one, loaded) {
		t.Errorf("saved  %+v\nloaded %+v", one, loaded)
	}
}

// TestStaleSave: a struct that is not the kept one is refused, and nothing is wiped.
func TestStaleSave(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	first, ref := sheet(t, s)
	second := copyOf(first)
	first.Bottles[0].After = record.Num(200, quantity.Gram)
	first = got(s.SaveTest(ctx, first, Edit{}))(t)
	second.Note = "from another screen"
	_, err := s.SaveTest(ctx, second, Edit{})
	wantCode(t, err, CodeConflict)
	var own *Error
	if !errors.As(err, &own) || own.Ref != ref {
		t.Errorf("the error %v does not name the record", err)
	}
	if loaded := got(s.LoadTest(ctx, first.ID))(t); !reflect.DeepEqual(first, loaded) {
		t.Errorf("after the refusal: %+v", loaded)
	}
	second.Meta = first.Meta
	second.Bottles = first.Bottles
	got(s.SaveTest(ctx, second, Edit{}))(t)
	fresh := record.Test{Meta: record.Meta{ID: first.ID}, AthleteID: first.AthleteID}
	_, err = s.SaveTest(ctx, fresh, Edit{})
	wantCode(t, err, CodeConflict)
}

// TestStaleSaveOnSlowClock: two saves in one tick of the clock are two versions.
func TestStaleSaveOnSlowClock(t *testing.T) {
	at := newClock().now()
	s := got(Open(t.TempDir(), Options{Clock: func() time.Time { return at }}))(t)
	defer func() { must(t, s.Close()) }()
	ctx := context.Background()
	a := got(s.SaveGroup(ctx, record.Group{Name: "A"}, Edit{}))(t)
	b := a
	b.Name = "B"
	got(s.SaveGroup(ctx, b, Edit{}))(t)
	a.Name = "C"
	_, err := s.SaveGroup(ctx, a, Edit{})
	wantCode(t, err, CodeConflict)
}

// TestRefusedValues: what cannot be kept is refused whole, with the field's name.
func TestRefusedValues(t *testing.T) {
	s, ctx := open(t, t.TempDir(), newClock()), context.Background()
	good, ref := sheet(t, s)
	tests := []struct {
		name  string
		spoil func(*record.Test)
		code  Code
		field string
	}{
		{"not a number", func(x *record.Test) { x.Air.Wind = record.Num(math.NaN(), "m/s") }, CodeInvalid, "air.wind"},
		{"infinite", func(x *record.Test) { x.Bottles[0].After = record.Num(math.Inf(1), "g") }, CodeInvalid, "bottles." + string(good.Bottles[0].ID) + ".after"},
		{"unknown athlete", func(x *record.Test) { x.AthleteID = "nobody" }, CodeInvalid, ""},
		{"no athlete", func(x *record.Test) { x.AthleteID = "" }, CodeInvalid, ""},
		{"id twice", func(x *record.Test) { x.Bottles = append(x.Bottles, x.Bottles[0]) }, CodeInvalid, "bottles." + string(good.Bottles[0].ID)},
		{"another record's row", func(x *record.Test) { x.ID, x.Meta.ChangedAt = "new", time.Time{} }, CodeInvalid, "bottles." + string(good.Bottles[0].ID)},
		{"never kept", func(x *record.Test) { x.ID = "gone" }, CodeNotFound, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			bad := copyOf(good)
			bad.Note = "half of it"
			tt.spoil(&bad)
			_, err := s.SaveTest(ctx, bad, Edit{})
			wantCode(t, err, tt.code)
			var own *Error
			if errors.As(err, &own); own.Field != tt.field {
				t.Errorf("the error names field %q, want %q", own.Field, tt.field)
			}
			if loaded := got(s.LoadTest(ctx, good.ID))(t); !reflect.DeepEqual(good, loaded) {
				t.Errorf("half of it was kept: %+v", loaded)
			}
		})
	}
	wantTold(t, s, ref, ":  > present")
}
