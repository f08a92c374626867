package practice

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"strings"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/consult"
	"ebbwell/internal/evidence"
	"ebbwell/internal/exchange"
	computed "ebbwell/internal/figure"
	"ebbwell/internal/record"
	"ebbwell/internal/store"
)

// exportRow are the buttons that write all records for other programs.
func (r *records) exportRow() fyne.CanvasObject {
	say, h := r.v.desk.Words.Say, r.v.desk.Host
	button := func(form string, write writer, ending string) *field.Button {
		return field.NewButton(h, "practice.export."+form, say("practice.export."+form), field.Outline, func() { r.askExport(write, ending) })
	}
	withMeanings := func(write func(io.Writer, exchange.Records, exchange.Results, exchange.Dictionary) error) writer {
		return func(to io.Writer, all exchange.Records, results exchange.Results) error {
			return write(to, all, results, exchange.NewDictionary(r.meaning))
		}
	}
	records := func(to io.Writer, all exchange.Records, _ exchange.Results) error { return exchange.WriteJSON(to, all) }
	return look.HBox(8, button("xlsx", withMeanings(exchange.WriteXLSX), ".xlsx"), button("csv", withMeanings(exchange.WriteCSV), ".zip"),
		button("json", records, ".json"))
}

// writer writes records and what was worked out of them.
type writer func(to io.Writer, all exchange.Records, results exchange.Results) error

// askExport asks where the file goes, and writes it.
func (r *records) askExport(write writer, ending string) {
	d := r.v.desk
	say := d.Words.Say
	if !r.v.b.FlushNow() {
		return
	}
	with := d.Calculate()
	saveto.Ask(d, r.v.canvas(), saveto.Request{
		Name: "practice.export.ask", Title: say("practice.export.title"), Sentence: say("practice.export.sentence"), Yes: say("practice.export.yes"),
		File: saveto.FileName(say("practice.export.file", string(d.Today())), ending),
		Write: func(ctx context.Context, path string) error {
			all, err := allRecords(ctx, d.Store)
			if err != nil {
				return err
			}
			results, err := resultsOf(ctx, d.Store, all.Athletes, with)
			if err != nil {
				return err
			}
			var out bytes.Buffer
			if err := write(&out, all, results); err != nil {
				return fmt.Errorf("export: %w", err)
			}
			return d.Store.WriteFile(ctx, path, out.Bytes())
		},
		Done: func(path string) { d.Say(say("practice.exported", path), "", nil) },
	})
}

// allRecords reads every record that is not deleted.
func allRecords(ctx context.Context, s *store.Store) (all exchange.Records, err error) {
	people, err := s.Athletes(ctx)
	if err != nil {
		return all, err
	}
	for _, p := range people {
		a, err := s.LoadAthlete(ctx, p.ID)
		if err != nil {
			return all, err
		}
		tests, err := s.Tests(ctx, p.ID)
		if err != nil {
			return all, err
		}
		plans, err := s.Plans(ctx, p.ID)
		if err != nil {
			return all, err
		}
		all.Athletes, all.Tests, all.Plans = append(all.Athletes, a), append(all.Tests, tests...), append(all.Plans, plans...)
	}
	for _, read := range []func() error{
		func() (err error) { all.Groups, err = s.Groups(ctx); return err },
		func() (err error) { all.Sessions, err = s.GroupSessions(ctx); return err },
		func() (err error) { all.Trips, err = s.Trips(ctx); return err },
		func() (err error) { all.Products, err = s.Products(ctx); return err },
	} {
		if err := read(); err != nil {
			return all, err
		}
	}
	return all, nil
}

// resultsOf works the tests of athletes out as every screen shows them: a closed one as
// it was closed.
func resultsOf(ctx context.Context, s *store.Store, people []record.Athlete, with consult.Setup) (list exchange.Results, err error) {
	for _, a := range people {
		sheets, err := s.SheetsBut(ctx, a.ID, nil)
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

// meaning says what a column means where the program has words for it, and what
// it takes without asking.
func (r *records) meaning(table string, c exchange.Column) (means, limits, source string) {
	w := r.v.desk.Words
	if table == exchange.ResultsName {
		return r.resultMeaning(c), "", ""
	}
	name := strings.TrimSuffix(c.Name, ".typed")
	key := "profile.field." + name
	path, sheet := sheetPath(table, name)
	switch f, known := record.SheetFieldOf(path); {
	case sheet && known:
		key = f.History()
		if c.Holds == exchange.HoldsNumber {
			limits, source = r.limitsOf(f)
		}
	case table != "athletes":
		return "", "", ""
	}
	if w.Has(key) {
		means = w.Say(key)
	}
	return means, limits, source
}

// resultMeaning says what a column of what was worked out means.
func (r *records) resultMeaning(c exchange.Column) string {
	name, end, _ := strings.Cut(c.Name, ".")
	if end != "" {
		name = end
	}
	return r.v.desk.Words.Say("practice.export.result." + name)
}

// limitsOf says between which values a field asks nothing, and whose rule that is.
func (r *records) limitsOf(f record.SheetField) (limits, source string) {
	w := r.v.desk.Words
	limit, ok := evidence.LimitOf(f.Evidence)
	if !ok {
		return "", ""
	}
	limits = w.Say("practice.export.between", w.Amount(limit.Warn.Low, limit.Unit), w.Amount(limit.Warn.High, limit.Unit))
	if limit.Sure == evidence.Proposal {
		source = w.Say("practice.export.own")
	}
	return limits, source
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
