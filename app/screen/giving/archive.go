package giving

import (
	"archive/zip"
	"bytes"
	"context"
	"fmt"
	"io"
	"strings"

	"ebbwell/app/kit/desk"
	"ebbwell/app/kit/saveto"
	"ebbwell/internal/consult"
	"ebbwell/internal/disclose"
	"ebbwell/internal/exchange"
	"ebbwell/internal/record"
	"ebbwell/internal/words"
)

// archive makes the zip that is given: the tables, the kept pages, and a text that
// says what was left out and why, all by d, whose texts are in the page's language; with
// is what results are worked out with.
func (s state) archive(ctx context.Context, d *desk.Desk, with consult.Setup) ([]byte, error) {
	g, err := s.pick(ctx, d)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	to := zip.NewWriter(&out)
	results, err := d.ResultsOf(ctx, g.Records.Athletes, with)
	if err != nil {
		return nil, err
	}
	if err := s.addTables(to, d, g.Records, g.Results(results)); err != nil {
		return nil, err
	}
	if s.withPages() {
		if err := s.addPages(ctx, to, d); err != nil {
			return nil, err
		}
	}
	// A mark at the beginning, by which every editor knows the encoding.
	text := "\ufeff" + leftOut(d, g.Left)
	if err := add(to, saveto.FileName(d.Words.Say("give.text.file"), ".txt"), func(w io.Writer) error {
		_, err := io.WriteString(w, text)
		return err
	}); err != nil {
		return nil, err
	}
	if err := to.Close(); err != nil {
		return nil, fmt.Errorf("put the records together: %w", err)
	}
	return out.Bytes(), nil
}

// add puts one file into the zip.
func add(to *zip.Writer, name string, write func(io.Writer) error) error {
	w, err := to.Create(name)
	if err == nil {
		err = write(w)
	}
	if err != nil {
		return fmt.Errorf("put %s into the file: %w", name, err)
	}
	return nil
}

// addTables writes the records in the form that was chosen.
func (s state) addTables(to *zip.Writer, d *desk.Desk, r exchange.Records, results exchange.Results) error {
	explained := exchange.NewDictionary(d.ColumnOnScreen)
	switch s.form {
	case formBook:
		return add(to, "records.xlsx", func(w io.Writer) error { return exchange.WriteXLSX(w, r, results, explained) })
	case formJSON:
		return add(to, "records.json", func(w io.Writer) error { return exchange.WriteJSON(w, r) })
	case formCSV:
	}
	return exchange.WriteCSVInto(to, r, results, explained)
}

// addPages writes the kept pages that may be given, in the order they were handed out.
func (s state) addPages(ctx context.Context, to *zip.Writer, d *desk.Desk) error {
	for i := len(s.prints) - 1; i >= 0; i-- {
		whole, err := d.Store.LoadPrint(ctx, s.prints[i].ID)
		if err != nil {
			return fmt.Errorf("read a kept page: %w", err)
		}
		name := saveto.FileName(d.Words.Say("give.page.file", len(s.prints)-i, pageName(d.Words, whole.Page), string(record.DateOf(whole.At))), whole.Ending())
		if err := add(to, name, func(w io.Writer) error {
			_, err := w.Write(whole.Bytes)
			return err
		}); err != nil {
			return err
		}
	}
	return nil
}

// pageName is the name of a sort of page.
func pageName(w *words.Words, page string) string {
	if key := "handoutview.page." + page; w.Has(key) {
		return w.Say(key)
	}
	return page
}

// leftOut is the text that says what was left out, and why: nobody's name is in it.
func leftOut(d *desk.Desk, left []disclose.Omission) string {
	w := d.Words
	lines := []string{w.Say("give.text.title"), "", w.Say("give.text.from", d.Practice().Name, w.Date(d.Now())), ""}
	for _, o := range left {
		lines = append(lines, sayLeft(w, o))
	}
	if len(left) == 0 {
		lines = append(lines, w.Say("give.left.nothing"))
	}
	return strings.Join(append(lines, w.Say("give.left.history"), ""), "\r\n")
}

// sayLeft says one thing that was left out.
func sayLeft(w *words.Words, o disclose.Omission) string {
	key := "give.left." + string(o.Kind)
	if o.Count == 0 {
		return w.Say(key)
	}
	return w.Say(key, o.Count)
}
