package colleague

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/bundle"
	"ebbwell/internal/consult"
	"ebbwell/internal/lock"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// looked is a bundle that was opened, with what would come of it.
type looked struct {
	in   store.Incomer
	here bundle.Here
	// gains are sheets that come with a gain in mass, a red flag.
	gains []record.Test
	// drafts are agreed plans that the guards do not let be agreed here.
	drafts []record.Plan
	// athletes are all of them as they would be.
	athletes map[record.ID]record.Athlete
}

// read opens a locked file.
func read(path, passphrase string) (b bundle.Bundle, err error) {
	f, err := saveto.OpenFile(path)
	if err != nil {
		return b, fmt.Errorf("open a colleague's file: %w", err)
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	plain, err := lock.Reader(f, passphrase)
	if err != nil {
		return b, fmt.Errorf("open a colleague's file: %w", err)
	}
	b, err = bundle.Read(plain)
	return b, err
}

// why is the end of the key of the sentence that says why a file is not taken; empty
// where none fits.
func why(err error) string {
	for _, c := range []struct {
		is  error
		why string
	}{
		{lock.ErrPassphrase, "passphrase"}, {lock.ErrNotLocked, "foreign"}, {lock.ErrDamaged, "damaged"},
		{bundle.ErrNewer, "newer"}, {bundle.ErrDamaged, "damaged"}, {bundle.ErrTooLarge, "large"},
		{bundle.ErrForeign, "foreign"}, {os.ErrNotExist, "nofile"}, {saveto.ErrNotAFile, "nofile"},
	} {
		if errors.Is(err, c.is) {
			return c.why
		}
	}
	return ""
}

// lookInto opens a file and works out what would come of it.
func lookInto(ctx context.Context, d *desk.Desk, path, passphrase string) (looked, error) {
	b, err := read(path, passphrase)
	if err != nil {
		return looked{}, err
	}
	l := looked{in: store.Incomer{Bundle: b, At: d.Now(), File: filepath.Base(path), Drafts: map[record.ID]bool{}}}
	if l.here, err = d.Store.HereOf(ctx, b); err != nil {
		return looked{}, err
	}
	l.in.Seen = bundle.Merge(l.here, b, l.in.At)
	l.people()
	return l, nil
}

// people are the athletes as they would be.
func (l *looked) people() {
	l.athletes = map[record.ID]record.Athlete{}
	for _, list := range [][]record.Athlete{l.here.Athletes, l.in.Seen.NewAthletes, l.in.Seen.Athletes} {
		for _, a := range list {
			l.athletes[a.ID] = a
		}
	}
}

// judge holds what would come against the program's guards: gains in mass, and plans
// that may not be agreed.
func (l *looked) judge(d *desk.Desk) {
	with := d.CalculateWith(l.in.Seen.NewProducts)
	r := l.in.Seen
	for id, a := range l.athletes {
		var tests []consult.Findings
		for _, t := range l.testsOf(id) {
			f := consult.FindAsClosed(t, a, l.rawOf(t.ID), l.keptOf(record.KindTest, t.ID), with)
			tests = append(tests, f)
			if _, gained := consult.GainOf(f, a, consult.TestDay(t)); gained && comes(t.ID, r.NewTests, r.Tests) {
				l.gains = append(l.gains, t)
			}
		}
		for _, p := range append(slices.Clone(r.NewPlans), r.Plans...) {
			if p.AthleteID == id && p.State == record.PlanAgreed && !l.mayAgree(d, p, a, tests, with) {
				l.drafts, l.in.Drafts[p.ID] = append(l.drafts, p), true
			}
		}
	}
	slices.SortFunc(l.gains, func(a, b record.Test) int {
		return cmp.Or(cmp.Compare(a.Session.Date, b.Session.Date), cmp.Compare(a.ID, b.ID))
	})
	slices.SortFunc(l.drafts, func(a, b record.Plan) int { return cmp.Or(cmp.Compare(a.Name, b.Name), cmp.Compare(a.ID, b.ID)) })
}

// comes reports whether a test is among those that come.
func comes(id record.ID, lists ...[]record.Test) bool {
	return slices.ContainsFunc(lists, func(list []record.Test) bool {
		return slices.ContainsFunc(list, func(t record.Test) bool { return t.ID == id })
	})
}

// mayAgree reports whether a plan could be agreed here as it comes.
func (l *looked) mayAgree(d *desk.Desk, p record.Plan, a record.Athlete, tests []consult.Findings, with consult.Setup) bool {
	c, err := consult.OpenPlan(p, a, tests, l.keptOf(record.KindPlan, p.ID), d.Now(), with)
	if err != nil {
		return false
	}
	for _, o := range p.Options {
		if o.ID == p.Agreement.OptionID {
			return c.MayAgree(o) == nil
		}
	}
	return len(c.AboveLimit()) == 0
}

// testsOf are an athlete's tests as they would be, the newest first.
func (l *looked) testsOf(athlete record.ID) []record.Test {
	by := map[record.ID]record.Test{}
	for _, list := range [][]record.Test{l.here.Tests, l.in.Seen.NewTests, l.in.Seen.Tests} {
		for _, t := range list {
			if t.AthleteID == athlete {
				by[t.ID] = t
			}
		}
	}
	var all []record.Test
	for _, t := range by {
		all = append(all, t)
	}
	slices.SortFunc(all, func(a, b record.Test) int {
		return cmp.Or(cmp.Compare(b.Session.Date, a.Session.Date), cmp.Compare(b.Session.Start, a.Session.Start), cmp.Compare(b.ID, a.ID))
	})
	return all
}

// rawOf are the unread texts and reasons of a test as they would be.
func (l *looked) rawOf(test record.ID) (list []record.RawText) {
	for _, r := range append(slices.Clone(l.here.Raw), l.in.Seen.Raw...) {
		if r.Kind == record.KindTest && r.Record == test {
			list = append(list, r)
		}
	}
	return list
}

// keptOf are the frozen copies of a record as they would be, the newest first.
func (l *looked) keptOf(kind record.Kind, id record.ID) (list []record.Frozen) {
	for _, f := range append(slices.Clone(l.here.Frozen), l.in.Seen.Frozen...) {
		if f.Kind == kind && f.Record == id {
			list = append(list, f)
		}
	}
	slices.SortFunc(list, func(a, b record.Frozen) int { return cmp.Compare(b.Number, a.Number) })
	return list
}
