package desk

import (
	"context"
	"fmt"
	"strings"

	"ebbwell/internal/consult"
	"ebbwell/internal/exchange"
	computed "ebbwell/internal/figure"
	"ebbwell/internal/record"
)

// AllRecords reads every record that is not deleted.
func (d *Desk) AllRecords(ctx context.Context) (exchange.Records, error) {
	people, err := d.Store.Athletes(ctx)
	if err != nil {
		return exchange.Records{}, fmt.Errorf("read all records: %w", err)
	}
	ids := make([]record.ID, len(people))
	for i, p := range people {
		ids[i] = p.ID
	}
	return d.RecordsOf(ctx, ids)
}

// RecordsOf reads the records of some athletes, and all groups, sessions, trips and
// products.
func (d *Desk) RecordsOf(ctx context.Context, athletes []record.ID) (all exchange.Records, err error) {
	for _, id := range athletes {
		if err := d.addAthlete(ctx, &all, id); err != nil {
			return all, fmt.Errorf("read the records of an athlete: %w", err)
		}
	}
	for _, read := range []func() error{
		func() (err error) { all.Groups, err = d.Store.Groups(ctx); return err },
		func() (err error) { all.Sessions, err = d.Store.GroupSessions(ctx); return err },
		func() (err error) { all.Trips, err = d.Store.Trips(ctx); return err },
		func() (err error) { all.Products, err = d.Store.Products(ctx); return err },
	} {
		if err := read(); err != nil {
			return all, fmt.Errorf("read the practice's records: %w", err)
		}
	}
	return all, nil
}

// addAthlete adds one athlete with tests and plans.
func (d *Desk) addAthlete(ctx context.Context, all *exchange.Records, id record.ID) error {
	a, err := d.Store.LoadAthlete(ctx, id)
	if err != nil {
		return err
	}
	tests, err := d.Store.Tests(ctx, id)
	if err != nil {
		return err
	}
	plans, err := d.Store.Plans(ctx, id)
	all.Athletes, all.Tests, all.Plans = append(all.Athletes, a), append(all.Tests, tests...), append(all.Plans, plans...)
	return err
}

// ResultsOf works the tests of athletes out as every screen shows them: a closed one as
// it was closed.
func (d *Desk) ResultsOf(ctx context.Context, people []record.Athlete, with consult.Setup) (list exchange.Results, err error) {
	for _, a := range people {
		sheets, err := d.Store.SheetsBut(ctx, a.ID, nil)
		if err != nil {
			return nil, fmt.Errorf("work the tests out: %w", err)
		}
		for _, sheet := range sheets {
			f := consult.FindAsClosed(sheet.Test, a, sheet.Raw, sheet.Kept, with)
			fluid, method := f.Sweat.Fluid, record.MethodCorrected
			if fluid.Bias > 0 {
				method = record.MethodField
			}
			list = append(list, exchange.Result{
				TestID: f.Test.ID, AthleteID: a.ID, Day: f.Test.Session.Date, Method: method,
				Rate: measured(fluid.Rate), Loss: measured(fluid.Loss), Deficit: measured(fluid.DeficitShare), DeficitVolume: measured(fluid.Deficit),
			})
		}
	}
	return list, nil
}

// measured is a figure as a table has it.
func measured(f computed.Figure) (m exchange.Measured) {
	if f.Known {
		m.Value = &f.Value
	}
	if f.Ranged {
		m.Low, m.High = &f.Range.Low, &f.Range.High
	}
	return m
}

// ColumnOnScreen is what the screen calls a column of exported tables; empty where it
// calls it nothing.
func (d *Desk) ColumnOnScreen(table string, c exchange.Column) string {
	if table == exchange.ResultsName {
		_, end, ok := strings.Cut(c.Name, ".")
		if !ok {
			end = c.Name
		}
		return d.Words.Say("practice.export.result." + end)
	}
	name := strings.TrimSuffix(c.Name, ".typed")
	key := "profile.field." + name
	switch path, sheet := sheetPath(table, name); {
	case sheet:
		f, known := record.SheetFieldOf(path)
		if !known {
			return ""
		}
		key = f.History()
	case table != "athletes":
		return ""
	}
	if !d.Words.Has(key) {
		return ""
	}
	return d.Words.Say(key)
}

// sheetPath is the path of a column of a sheet's tables as its fields name it.
func sheetPath(table, name string) (string, bool) {
	lists, ok := strings.CutPrefix(table, "tests")
	if !ok {
		return "", false
	}
	path := ""
	for _, list := range strings.FieldsFunc(lists, func(r rune) bool { return r == '.' }) {
		path += list + ".*."
	}
	return path + name, true
}
