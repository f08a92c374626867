package testday

import (
	"slices"
	"strconv"
	"testing"

	"ebbwell/internal/consult"
	"ebbwell/internal/figure"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
	"ebbwell/internal/sweat"
)

func people() []store.Person {
	return []store.Person{
		{ID: "1", Name: "Ann Weirside", Groups: []string{"Squad", "Juniors"}}, {ID: "2", Name: "Bea Annings", Groups: []string{"Squad"}}, {ID: "3", Name: "Cid Ford"},
	}
}

func found(id, athlete record.ID, state record.TestState, missing ...sweat.Missing) consult.Findings {
	f := consult.Findings{Test: record.Test{Meta: record.Meta{ID: id}, AthleteID: athlete, State: state}}
	f.Sweat.Missing = missing
	f.Sweat.Fluid.Rate = figure.Figure{Known: true, Ranged: len(missing) == 0}
	return f
}

// with makes a day with the findings of unfinished tests.
func with(all ...consult.Findings) State {
	var open []store.ListedTest
	for _, f := range all {
		open = append(open, store.ListedTest{ID: f.Test.ID, AthleteID: f.Test.AthleteID, State: f.Test.State})
	}
	return NewState(people(), open).With(all, nil)
}

func TestSheetsSayWhatTheyMiss(t *testing.T) {
	s := with(
		found("a", "1", record.TestOpen, sweat.Missing{ID: sweat.MissingAfter}, sweat.Missing{ID: sweat.MissingSodium, Optional: true}, sweat.Missing{ID: sweat.MissingUrine, Optional: true}),
		found("b", "2", record.TestWaiting, sweat.Missing{ID: sweat.MissingSodium, Optional: true}),
		found("c", "9", record.TestOpen), // an athlete who is gone
		found("d", "3", record.TestOpen),
	)
	if len(s.Sheets) != 3 {
		t.Fatalf("%d sheets", len(s.Sheets))
	}
	if lacks := s.Sheets[0].Lacks; len(lacks) != 2 || lacks[0].ID != sweat.MissingAfter || lacks[1].ID != sweat.MissingSodium || s.Sheets[0].Ready {
		t.Errorf("lacks %+v", lacks)
	}
	if !s.Sheets[2].Ready || s.Sheets[1].Name != "Bea Annings" {
		t.Errorf("got %+v", s.Sheets)
	}
	if open, ok := s.Unfinished("1"); !ok || open != "a" {
		t.Error("the open sheet is not found")
	}
	if _, ok := s.Unfinished("2"); ok {
		t.Error("a sheet at the laboratory is one to go on with")
	}
}

// Of a long list as many sheets are worked out as are shown, in their order.
func TestLongListIsShownInParts(t *testing.T) {
	var all []consult.Findings
	for i := range 2*AtOnce + 7 {
		all = append(all, found(record.ID(strconv.Itoa(i)), "1", record.TestOpen))
	}
	s := with(all...)
	if len(s.Sheets) != AtOnce || s.More() != AtOnce+7 || len(s.Next()) != AtOnce || s.Next()[0] != record.ID(strconv.Itoa(AtOnce)) {
		t.Errorf("%d shown, %d more, next %v", len(s.Sheets), s.More(), s.Next())
	}
	s = s.With(all, nil).With(all, nil)
	if len(s.Sheets) != len(all) || s.More() != 0 || len(s.Next()) != 0 || s.Sheets[len(all)-1].ID != record.ID(strconv.Itoa(len(all)-1)) {
		t.Errorf("%d shown, %d more", len(s.Sheets), s.More())
	}
}

func TestMatch(t *testing.T) {
	s := NewState(people(), nil)
	names := func(list []store.Person) (out []record.ID) {
		for _, a := range list {
			out = append(out, a.ID)
		}
		return out
	}
	for text, want := range map[string][]record.ID{
		"": {"1", "2", "3"}, "ann": {"1", "2"}, "ANN bea": {"2"}, "squad": {"1", "2"}, "jun": {"1"}, "nobody": nil, "  cid ": {"3"},
	} {
		if got := names(s.Match(text)); !slices.Equal(got, want) {
			t.Errorf("%q: got %v, want %v", text, got, want)
		}
	}
}

func TestMarks(t *testing.T) {
	s := NewState(people(), nil)
	if got := s.Groups(); !slices.Equal(got, []string{"Juniors", "Squad"}) {
		t.Errorf("groups %v", got)
	}
	before := s
	s = s.InGroup("Squad").MarkListed(true)
	if len(s.Listed()) != 2 || s.Pages() != 2 || !s.IsMarked("2") || s.IsMarked("3") {
		t.Errorf("listed %v, %d pages", s.Listed(), s.Pages())
	}
	if before.Pages() != 0 {
		t.Error("a state that was left is changed")
	}
	s = s.InGroup("").Mark("3", true).Mark("1", false)
	s.Nameless = true
	if got := s.Marked(); len(got) != 2 || got[0].ID != "2" || s.Pages() != 3 {
		t.Errorf("marked %v, %d pages", got, s.Pages())
	}
	if s = s.MarkListed(false); s.Pages() != 1 {
		t.Errorf("%d pages left", s.Pages())
	}
}
