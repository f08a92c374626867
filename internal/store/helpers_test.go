package store

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"sync"
	"testing"
	"time"

	"gorm.io/gorm"

	"ebbwell/internal/quantity"
	"ebbwell/internal/record"
)

// clock is a clock that a test sets; every look moves it on by a millisecond.
type clock struct {
	sync.Mutex
	at time.Time
}

func newClock() *clock { return &clock{at: time.Date(2026, 5, 14, 10, 0, 0, 0, time.UTC)} }

func (c *clock) now() time.Time {
	c.Lock()
	defer c.Unlock()
	c.at = c.at.Add(time.Millisecond)
	return c.at
}

func (c *clock) add(d time.Duration) {
	c.Lock()
	defer c.Unlock()
	c.at = c.at.Add(d)
}

// open opens a store that is closed with the test.
func open(t testing.TB, dir string, c *clock) *Store {
	t.Helper()
	s, err := Open(dir, Options{Clock: c.now, By: "Kit"})
	must(t, err)
	t.Cleanup(func() {
		if err := s.Close(); err != nil {
			t.Errorf("close: %v", err)
		}
	})
	return s
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// got ends a call that must succeed: got(s.LoadTest(ctx, id))(t).
func got[T any](one T, err error) func(testing.TB) T {
	return func(t testing.TB) T {
		t.Helper()
		must(t, err)
		return one
	}
}

// wantCode fails unless an error has a code.
func wantCode(t testing.TB, err error, code Code) {
	t.Helper()
	if CodeOf(err) != code {
		t.Fatalf("got error %v, want code %q", err, code)
	}
}

// check that the open file is whole and no link leads nowhere.
func checkWhole(t testing.TB, s *Store) {
	t.Helper()
	must(t, check(context.Background(), s.files.writer))
	must(t, checkLinks(s.files.writer))
	wantUnaltered(t, s)
}

// wantUnaltered fails where a closed test, a frozen copy or a kept page is not as its
// digest says: whatever wrote it has to write that too.
func wantUnaltered(t testing.TB, s *Store) {
	t.Helper()
	var tests []record.ID
	must(t, s.read(context.Background(), "compare digests", func(tx *gorm.DB) error {
		err := tx.Model(&record.Test{}).Where("deleted_at IS NULL").Pluck("id", &tests).Error
		var kept []record.Frozen
		err = errors.Join(err, tx.Find(&kept).Error)
		unpack(kept)
		for _, f := range kept {
			if f.Altered || f.Sum == nil {
				t.Errorf("copy %s is said to be altered, or has no digest", f.ID)
			}
		}
		var pages []record.Print
		err = errors.Join(err, tx.Find(&pages).Error)
		for _, p := range pages {
			if altered(p.Sum, sumOfPage(p)) || p.Sum == nil {
				t.Errorf("page %s is said to be altered, or has no digest", p.ID)
			}
		}
		return err
	}))
	for _, id := range tests {
		if is := got(s.TestAltered(context.Background(), id))(t); is {
			t.Errorf("test %s is said to be altered", id)
		}
	}
}

// filler sets every field of a record to a value of its own. Links are taken
// by name; a link without a value fails the test.
type filler struct {
	t     testing.TB
	links map[string]record.ID
	n     int
}

// fill sets the fields of a struct, with two rows in every list.
func (f *filler) fill(v reflect.Value) {
	for i := range v.NumField() {
		field, name := v.Field(i), v.Type().Field(i).Name
		if v.Type().Field(i).Tag.Get("gorm") == "-" {
			continue // not kept
		}
		f.n++
		switch x := field.Addr().Interface().(type) {
		case *record.Meta:
			x.ID = record.NewID()
		case *record.ID:
			f.link(x, name)
		case *record.Number:
			*x = record.Num(float64(f.n)+0.25, quantity.Unit(fmt.Sprint("u", f.n)))
		case *time.Time:
			*x = time.Date(2026, 5, 1, 0, 0, f.n, 123456000, time.UTC)
		case **time.Time:
			at := time.Date(2026, 5, 1, 0, 0, f.n, 123456000, time.UTC)
			*x = &at
		case *[]byte:
			*x = fmt.Appendf(nil, "bytes %d", f.n)
		default:
			f.fillKind(field, name)
		}
	}
}

// link sets a link, unless it is to the row around it, which the store sets.
func (f *filler) link(x *record.ID, name string) {
	id, known := f.links[name]
	if !known {
		f.t.Fatalf("no value for link %s", name)
	}
	*x = id
}

// fillKind sets a field by its kind.
func (f *filler) fillKind(field reflect.Value, name string) {
	switch field.Kind() {
	case reflect.String:
		field.SetString(fmt.Sprintf("%s-%d", name, f.n))
	case reflect.Bool:
		field.SetBool(true)
	case reflect.Int:
		field.SetInt(int64(f.n))
	case reflect.Struct:
		f.fill(field)
	case reflect.Slice:
		field.Set(reflect.MakeSlice(field.Type(), 2, 2))
		for i := range 2 {
			f.fill(field.Index(i))
		}
	default:
		f.t.Fatalf("no way to fill %s of %s", name, field.Type())
	}
}

// wantFilled fails when a field is still at its zero value.
func wantFilled(t testing.TB, v reflect.Value, path string) {
	t.Helper()
	for i := range v.NumField() {
		field, name := v.Field(i), path+"."+v.Type().Field(i).Name
		switch {
		case field.Type() == reflect.TypeFor[record.Meta](), v.Type().Field(i).Tag.Get("gorm") == "-":
		case field.IsZero():
			t.Errorf("%s is not set", name)
		case field.Kind() == reflect.Struct && field.Type() != reflect.TypeFor[time.Time]():
			wantFilled(t, field, name)
		case field.Kind() == reflect.Slice && field.Type() != reflect.TypeFor[[]byte]():
			for j := range field.Len() {
				wantFilled(t, field.Index(j), name)
			}
		}
	}
}

// filled makes a record with every field set.
func filled[T any](t testing.TB, links map[string]record.ID) T {
	t.Helper()
	var one T
	(&filler{t: t, links: links}).fill(reflect.ValueOf(&one).Elem())
	return one
}

// world is a store with one filled record of every kind.
type world struct {
	practice record.Practice
	group    record.Group
	product  record.Product
	athlete  record.Athlete
	test     record.Test
	session  record.GroupSession
	trip     record.Trip
	plan     record.Plan
	print    record.Print
}

// makeWorld saves one filled record of every kind, with raw texts, a frozen
// copy and a print.
func makeWorld(t testing.TB, s *Store) world {
	t.Helper()
	ctx := context.Background()
	var w world
	w.practice = got(s.SavePractice(ctx, filled[record.Practice](t, nil), Edit{}))(t)
	w.group = got(s.SaveGroup(ctx, filled[record.Group](t, nil), Edit{}))(t)
	w.product = got(s.SaveProduct(ctx, filled[record.Product](t, nil), Edit{}))(t)
	links := map[string]record.ID{"AthleteID": "", "TestID": "", "BottleID": "", "PlanID": "", "TripID": "", "OptionID": "", "StepID": "",
		"GroupSessionID": "", "GroupID": w.group.ID, "ProductID": w.product.ID, "DrinkID": w.product.ID, "FoodID": w.product.ID,
		"ImportID": record.NewID()}
	w.athlete = got(s.SaveAthlete(ctx, filled[record.Athlete](t, links), Edit{}))(t)
	links["AthleteID"] = w.athlete.ID
	got(s.Import(ctx, Incoming{File: "tests.csv", Kind: record.ImportTests}))(t)
	got(s.SaveTemplate(ctx, filled[record.ImportTemplate](t, map[string]record.ID{"ID": record.NewID()})))(t)
	test := filled[record.Test](t, links)
	test.State = record.TestOpen
	w.test = got(s.SaveTest(ctx, test, Edit{}))(t)
	w.trip = got(s.SaveTrip(ctx, filled[record.Trip](t, links), Edit{}))(t)
	links["TestID"], links["StopID"] = w.test.ID, w.trip.Stops[0].ID
	w.session = got(s.SaveGroupSession(ctx, filled[record.GroupSession](t, links), Edit{}))(t)
	w.plan = got(s.SavePlan(ctx, filledPlan(t, links), Edit{}))(t)
	ref := record.Ref{Kind: record.KindTest, ID: w.test.ID}
	must(t, s.SetRaw(ctx, ref, "air.wind", "a light breeze", Edit{}))
	must(t, s.SetReason(ctx, ref, "air.wind", "no instrument", Edit{}))
	got(s.Freeze(ctx, ref, Freezing{Inputs: []byte(`{"a":1}`), Results: []byte(`{"b":2}`), Evidence: "2026.1", Why: "closed"}))(t)
	must(t, s.write(ctx, "keep where a file is", func(k *work) error {
		return k.keepPaths([]record.SavedFile{{AthleteID: w.athlete.ID, Path: "/pages/page.png", Sum: sumOfParts([]byte("PNG"))}})
	}))
	w.print = got(s.SavePrint(ctx, record.Print{AthleteID: w.athlete.ID, Kind: record.KindPlan, Record: w.plan.ID,
		Page: "athlete-page", Language: "en", Bytes: []byte("%PDF-1.7")}))(t)
	return w
}

// filledPlan is a draft plan whose steps, reviews and agreement point at its
// own options and steps.
func filledPlan(t testing.TB, links map[string]record.ID) record.Plan {
	t.Helper()
	p := filled[record.Plan](t, links)
	p.State = record.PlanDraft
	p.Agreement.OptionID = p.Options[0].ID
	for i := range p.Steps {
		p.Steps[i].OptionID = p.Options[i].ID
		p.Reviews[i].StepID = p.Steps[i].ID
	}
	return p
}
