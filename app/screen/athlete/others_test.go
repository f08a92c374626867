package athlete

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	"ebbwell/app/apptest"
	"ebbwell/app/kit/desk"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// shown are the texts of an overview.
func shown(t *testing.T, v *Overview) []string {
	t.Helper()
	return apptest.Texts(apptest.Window(t, v.Body(), 1366, 900, false, 100).Content())
}

// known is a desk on the same records that has read all tests of an athlete.
func known(t *testing.T, d *desk.Desk, a record.Athlete) *desk.Desk {
	t.Helper()
	other, err := desk.New(d.Store, d.Words, d.Now)
	if err == nil {
		_, err = other.AllFindings(context.Background(), a)
	}
	if err != nil {
		t.Fatal(err)
	}
	return other
}

// opened is the overview of an athlete.
func opened(t *testing.T, d *desk.Desk, a record.Athlete) *Overview {
	t.Helper()
	v, err := NewOverview(d, a.ID)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// The overview of an athlete of many tests stands before they are all read: what is due,
// the last test and the steps as they stay, the sweat rates once the others are read.
func TestManyTestsComeBeside(t *testing.T) {
	d, _ := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Ravka")
	const many = askedMost + 2
	withTests(t, d, a, many)
	all := shown(t, opened(t, known(t, d, a), a))
	by := &byHand{}
	d.Beside = by
	v := opened(t, d, a)
	if v.file.read != readSome || len(v.file.tests) >= many || by.work == nil {
		t.Fatalf("%d tests read at once", len(v.file.tests))
	}
	first := shown(t, v)
	reading := d.Words.Say("overview.reading", many-len(v.file.tests))
	if !slices.Contains(first, reading) || slices.Contains(all, reading) {
		t.Errorf("%q is not said in %q", reading, first)
	}
	for _, text := range first {
		if text != reading && !slices.Contains(all, text) {
			t.Errorf("%q stands there first, and not once all is read", text)
		}
	}
	by.goOn()
	if now := shown(t, v); !slices.Equal(now, all) {
		t.Errorf("once all is read it says\n%q\nread at once\n%q", now, all)
	}
	rates := apptest.Texts(v.sheets.Objects[1])
	for _, text := range all {
		if !slices.Contains(first, text) && !slices.Contains(rates, text) {
			t.Errorf("%q is neither there first nor of the sweat rates", text)
		}
	}
	v = opened(t, d, a)
	if again := shown(t, v); v.file.read != readAll || slices.Contains(again, reading) || len(again) >= len(all) {
		t.Errorf("opened again it says first\n%q", again)
	}
	by.goOn()
	if again := shown(t, v); !slices.Equal(again, all) {
		t.Errorf("opened again it says\n%q\nread at once\n%q", again, all)
	}
}

// A screen that was left takes nothing in, and what was being read for it is stopped; a
// reading that fails is said.
func TestReadingIsStopped(t *testing.T) {
	d, _ := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Ravka")
	withTests(t, d, a, 45)
	by, said := &byHand{}, ""
	d.Beside, d.Say = by, func(sentence, _ string, _ func()) { said = sentence }
	v := opened(t, d, a)
	v.Leave()
	if err := by.work(); !errors.Is(err, context.Canceled) {
		t.Errorf("left, the reading ends with %v", err)
	}
	before := shown(t, v)
	by.done(nil)
	if now := shown(t, v); !slices.Equal(now, before) || said != "" {
		t.Errorf("left, it says %q and becomes %q", said, now)
	}
	v = opened(t, d, a)
	by.done(&store.Error{Code: store.CodeDisk, Doing: "read", Err: errors.New("gone")})
	if now := shown(t, v); !slices.Contains(now, d.Words.Say("overview.reading.failed")) || said == "" {
		t.Errorf("after a failure it says %q and shows %q", said, now)
	}
}

// Where the page is said by too many tests, all of it waits for them.
func TestAPageOfManyTestsWaits(t *testing.T) {
	d, _ := apptest.Demo(t)
	a := apptest.AthleteNamed(t, d, "Ravka")
	ctx := context.Background()
	for range neededMost {
		if _, err := d.Store.SaveTest(ctx, record.Test{AthleteID: a.ID, State: record.TestOpen, Session: record.Session{Date: "2026-05-01"}}, store.Edit{}); err != nil {
			t.Fatal(err)
		}
	}
	by, headed := &byHand{}, 0
	d.Beside, d.HeadChanged = by, func() { headed++ }
	v := opened(t, d, a)
	if texts := strings.Join(shown(t, v), "\n"); texts != d.Words.Say("overview.reading", v.file.others) || v.file.others <= neededMost || len(v.Head().Spare) != 0 {
		t.Errorf("%d tests are to be read, it says %q", v.file.others, texts)
	}
	by.goOn()
	fresh, err := desk.New(d.Store, d.Words, d.Now)
	if err != nil {
		t.Fatal(err)
	}
	if now, all := shown(t, v), shown(t, opened(t, fresh, a)); !slices.Equal(now, all) || headed != 1 || len(v.Head().Spare) != 1 {
		t.Errorf("once all is read it says\n%q\nread at once\n%q; the head was drawn %d times", now, all, headed)
	}
}
