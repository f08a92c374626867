package practice

import (
	"bytes"
	"context"
	"fmt"
	"io"

	"fyne.io/fyne/v2"

	"ebbwell/app/kit/field"
	"ebbwell/app/kit/look"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/exchange"
	"ebbwell/internal/store"
)

// exportRow are the buttons that write all records for other programs.
func (r *records) exportRow() fyne.CanvasObject {
	d := r.v.desk
	say, h := d.Words.Say, d.Host
	button := func(form string, write writer, ending string) *field.Button {
		return field.NewButton(h, "practice.export."+form, say("practice.export."+form), field.Outline, func() { r.askExport(write, ending) })
	}
	withMeanings := func(write func(io.Writer, exchange.Records, exchange.Results, exchange.Dictionary) error) writer {
		return func(to io.Writer, all exchange.Records, results exchange.Results) error {
			return write(to, all, results, exchange.NewDictionary(d.ColumnOnScreen))
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
			all, err := d.AllRecords(ctx)
			if err != nil {
				return err
			}
			results, err := d.ResultsOf(ctx, all.Athletes, with)
			if err != nil {
				return err
			}
			var out bytes.Buffer
			if err := write(&out, all, results); err != nil {
				return fmt.Errorf("export: %w", err)
			}
			return d.Store.WriteFile(ctx, path, out.Bytes(), store.Everyone)
		},
		Done: func(path string) { d.Say(say("practice.exported", path), "", nil) },
	})
}
