package desk_test

import (
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/internal/exchange"
	"ebbwell/internal/record"
)

func TestColumnsAreNamedAsOnTheScreen(t *testing.T) {
	d, _ := apptest.Demo(t)
	for _, c := range []struct{ table, column, name string }{
		{"tests", "air.temperature", "air"}, {"tests.bottles", "before", "before"}, {"tests.bottles", "before.typed", "before"},
		{"athletes", "name", "name"}, {"plans", "name", ""}, {"tests", "createdAt", ""},
	} {
		got := strings.ToLower(d.ColumnOnScreen(c.table, exchange.Column{Name: c.column}))
		if !strings.Contains(got, c.name) || (got == "") != (c.name == "") {
			t.Errorf("%s.%s is %q on the screen", c.table, c.column, got)
		}
	}
}

func TestRecordsOfSome(t *testing.T) {
	d, _ := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Ravka")
	all, err := d.AllRecords(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	some, err := d.RecordsOf(t.Context(), []record.ID{a.ID})
	if err != nil {
		t.Fatal(err)
	}
	own := 0
	for _, test := range all.Tests {
		if test.AthleteID == a.ID {
			own++
		}
	}
	if len(some.Athletes) != 1 || len(some.Tests) != own || own == 0 || len(all.Athletes) < 5 || len(some.Trips) != len(all.Trips) {
		t.Errorf("%d athletes, %d tests of %d; %d athletes in all", len(some.Athletes), len(some.Tests), own, len(all.Athletes))
	}
}
